/* The working of the technique: which published one it is, and what it gives beside the exact
 * hold. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/fields.h"
#include "oxbow/presets.h"
#include "rows.h"

#define GROUP N_("Technique")
#define EXACT N_("Against the exact hold")

static const char *choice_word(const ox_case *c, const char *key) {
  const ox_field *field = ox_field_by_key(key);
  if (!field || !field->choices) return _("as given");
  return words_choice(field->choices[(int)ox_field_get(field, c)]);
}

static void put_own(words_say *s, const ox_case *c) {
  words_put(s, _("timing %s, clock from %s, drift %s, outbound time %s, entry legs as %s, "),
            choice_word(c, "technique.timing"), choice_word(c, "technique.clock"),
            choice_word(c, "technique.drift"), choice_word(c, "technique.outbound"),
            choice_word(c, "technique.entry_line"));
  if (c->aircraft.turn_by == OX_TURN_BY_BANK)
    words_put(s, _("%s° of bank"), words_short(c->aircraft.max_bank_deg, 1).text);
  else
    words_put(s, _("%s°/s or %s° of bank"), words_short(c->aircraft.rate_deg_s, 2).text,
              words_short(c->aircraft.max_bank_deg, 1).text);
}

void rows_technique(words_rows *r) {
  words_say value = {0}, why = {0};
  int index = ox_preset_of(r->c);
  const ox_preset *preset = index < 0 ? NULL : ox_preset_at((size_t)index);
  if (preset) {
    words_put(&value, "%s", _(preset->name));
    words_put(&why, "%s", _(preset->rule));
  } else {
    words_put(&value, _("one of its own"));
    put_own(&why, r->c);
  }
  rows_add(r, GROUP, N_("Flown as"), &value, &why, preset ? preset->source : SOURCE_GIVEN);
}

/* --- against the exact hold ---------------------------------------------------------------- */

/* The preset brings its own leg and bank: where those differ the table must say so. */
static void put_terms(words_say *s, const words_rows *r) {
  ox_case exact = words_exact_case(r->c);
  ox_setup setup;
  words_put(s, _("the same case with heading and time outbound worked out"));
  if (ox_setup_make(&exact, &setup) == OX_ERROR) return;
  const ox_setup *flown = &r->f->setup;
  if (setup.goal != flown->goal || setup.goal_value != flown->goal_value)
    words_put(s, _("; its leg is %s, that asked for here %s"), words_leg(&setup).text,
              words_leg(flown).text);
  if (fabs(setup.bank_deg - flown->bank_deg) >= 0.05)
    words_put(s, _("; its bank is %s°, here %s°"), words_number(setup.bank_deg, 1).text,
              words_number(flown->bank_deg, 1).text);
}

static void add_heading(words_rows *r, const ox_comparison *table) {
  words_say value = {0}, why = {0};
  if (table->none) {
    words_put(&value, _("nothing to compare with"));
    words_put(&why, "%s", table->none);
  } else if (table->is_exact) {
    words_put(&value, _("it is flown here"));
    words_put(&why, _("the technique is that of the exact hold, so there is no difference"));
  } else {
    words_put(&value, _("flown beside it"));
    put_terms(&why, r);
  }
  rows_add(r, EXACT, N_("The exact hold"), &value, &why, SOURCE_GEOMETRY);
}

static void add_row(words_rows *r, const ox_comparison_row *row) {
  words_say value = {0}, why = {0};
  char label[160];
  snprintf(label, sizeof label, "%s (%d): %s", row->which, row->circuit, row->quantity);
  words_put(&value, _("%s; exact %s; difference %s"), row->flown, row->exact, row->difference);
  words_put(&why, "%s", row->why);
  rows_add_labelled(r, EXACT, "comparison", label, &value, &why, N_("measured on the two flights"));
}

void rows_against_exact(words_rows *r) {
  ox_comparison table = ox_comparison_make(r->c, r->f);
  add_heading(r, &table);
  for (size_t i = 0; i < table.count && !table.is_exact; i++)
    add_row(r, &table.rows[i]);
  ox_comparison_clear(&table);
}
