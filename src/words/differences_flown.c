/* What came of it: entry, headings, times and excursions of each flight. */
#include <math.h>

#include "differences.h"
#include "oxbow/angle.h"
#include "oxbow/words.h"
#include "rows.h"

typedef void put_text(words_say *s, const ox_case *c, const ox_flight *f);

static const ox_circuit *first(const ox_flight *f) {
  return f->circuit_count ? &f->circuits[0] : NULL;
}

static const ox_circuit *last(const ox_flight *f) {
  return f->circuit_count ? &f->circuits[f->circuit_count - 1] : NULL;
}

static void put_none(words_say *s) {
  words_put(s, "%s", _("no circuit"));
}

/* --- the entry ----------------------------------------------------------------------------- */

static void put_entry(words_say *s, const ox_case *c, const ox_flight *f) {
  words_put(s, "%s", _(ox_entry_name(f->flown)));
  if (c->technique.entry == OX_CHOOSE_AUTO && f->entry.also != OX_ENTRY_NONE)
    words_put(s, _(" (or %s)"), _(ox_entry_name((ox_entry_kind)f->entry.also)));
}

static void put_entry_heading(words_say *s, const ox_case *c, const ox_flight *f) {
  words_put(s, "%s", words_marked(c, f->entry_heading_true_deg).text);
}

static void put_boundary(words_say *s, const ox_case *c, const ox_flight *f) {
  double deg = f->entry.boundary_deg;
  words_put(s, "%s° %s", words_short(fabs(deg), 1).text, words_side(deg >= 0));
}

/* --- speed and turn ------------------------------------------------------------------------ */

static void put_tas(words_say *s, const ox_case *c, const ox_flight *f) {
  words_put(s, "%s kt", words_number(f->setup.tas_kt, 0).text);
}

static void put_turn(words_say *s, const ox_case *c, const ox_flight *f) {
  words_put(s, _("%s NM at %s° bank"), words_number(f->setup.radius_nm, 2).text,
            words_number(f->setup.bank_deg, 0).text);
}

/* --- headings ------------------------------------------------------------------------------ */

static void put_outbound(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_circuit *m = last(f);
  if (!m) {
    put_none(s);
    return;
  }
  double outbound_deg = f->setup.inbound_true_deg + 180.0;
  words_put_heading(s, c, m->outbound_heading_true_deg,
                    ox_turn_between_deg(outbound_deg, m->outbound_heading_true_deg));
}

static void put_inbound(words_say *s, const ox_case *c, const ox_flight *f) {
  if (f->steady.why == OX_STEADY_EXISTS)
    words_put_heading(s, c, f->steady.inbound_heading_deg, f->steady.inbound_wca_deg);
  else
    words_put(s, "%s", _(ox_steady_why_name(f->steady.why)));
}

static void put_exact(words_say *s, const ox_case *c, const ox_flight *f) {
  if (f->steady.why == OX_STEADY_EXISTS)
    words_put(s, C_("a heading for a time", "%s for %s"),
              words_marked(c, f->steady.outbound_heading_deg).text,
              words_time(f->steady.outbound_s).text);
  else
    words_put(s, "%s", C_("exact outbound leg", "none"));
}

/* --- times --------------------------------------------------------------------------------- */

static void put_outbound_s(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_circuit *m = last(f);
  if (m)
    words_put(s, "%s", words_time(m->timed_s).text);
  else
    put_none(s);
}

static void put_inbound_s(words_say *s, const ox_circuit *m) {
  if (!m)
    put_none(s);
  else if (!m->complete)
    words_put(s, "%s", _("fix not regained"));
  else
    words_put(s, "%s", words_time(m->inbound_s).text);
}

static void put_first_inbound_s(words_say *s, const ox_case *c, const ox_flight *f) {
  put_inbound_s(s, first(f));
}

static void put_last_inbound_s(words_say *s, const ox_case *c, const ox_flight *f) {
  put_inbound_s(s, last(f));
}

static void put_circuit_s(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_circuit *m = last(f);
  if (m && m->complete)
    words_put(s, "%s", words_time(m->end_t_s - m->fix_t_s).text);
  else if (m)
    words_put(s, "%s", _("fix not regained"));
  else
    put_none(s);
}

static void put_end(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_circuit *m = last(f);
  if (!m || !m->complete)
    words_put(s, "%s", _("not at the fix"));
  else if (c->arrival.fix_at_s >= 0)
    words_put_clock(s, c->arrival.fix_at_s + m->end_t_s);
  else
    words_put(s, _("%s after the first"), words_time(m->end_t_s).text);
}

/* --- where it goes ------------------------------------------------------------------------- */

static void put_rollout(words_say *s, const ox_case *c, const ox_flight *f) {
  const ox_circuit *m = first(f);
  if (m)
    words_put(s, "%s", words_rollout(m->rollout_offset_nm).text);
  else
    put_none(s);
}

static void put_nonholding(words_say *s, const ox_case *c, const ox_flight *f) {
  double most_nm = 0.0;
  for (size_t i = 0; i < f->circuit_count; i++)
    most_nm = fmax(most_nm, f->circuits[i].nonholding_nm);
  words_put(s, "%s NM", words_number(most_nm, 2).text);
}

static const struct {
  const char *label;
  put_text *put;
} flown[] = {
    {N_("Entry"), put_entry},
    {N_("Off the sector boundary"), put_boundary},
    {N_("Entry heading"), put_entry_heading},
    {N_("True airspeed"), put_tas},
    {N_("Turn radius"), put_turn},
    {N_("Inbound heading"), put_inbound},
    {N_("Outbound heading, last circuit"), put_outbound},
    {N_("Outbound time, last circuit"), put_outbound_s},
    {N_("Exact outbound leg"), put_exact},
    {N_("Inbound time, first circuit"), put_first_inbound_s},
    {N_("Inbound time, last circuit"), put_last_inbound_s},
    {N_("Last circuit in all"), put_circuit_s},
    {N_("Last over the fix"), put_end},
    {N_("Roll-out, first circuit"), put_rollout},
    {N_("Most on the non-holding side"), put_nonholding},
};

void differences_flown(differences *d) {
  for (size_t row = 0; row < sizeof flown / sizeof *flown; row++) {
    words_say texts[OX_DIFFERENCES_MAX] = {{0}};
    for (size_t i = 0; i < d->table.columns; i++)
      flown[row].put(&texts[i], d->cases[i], d->flights[i]);
    differences_add(d, false, flown[row].label, texts);
  }
}
