/* The flight of a case beside the same case flown by the preset "exact": what the technique costs
 * in this wind, circuit by circuit, in one table. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/presets.h"
#include "oxbow/words.h"
#include "rows.h"

/* What each difference counts by where the worst circuit is looked for: from there on it is
 * remarked on in the advisories. */
static const double SAID_S = 10.0, SAID_NM = 0.1;

typedef struct {
  ox_comparison table;
  size_t capacity;
  bool failed;
  const ox_case *c;
  const ox_flight *flown, *exact;
  const char *which;
  size_t circuit; /* from 0 */
} builder;

/* One quantity of two circuits as sentences. */
typedef struct {
  words_say flown, exact, difference, why;
} cells;

static void row_clear(ox_comparison_row *row) {
  free(row->flown);
  free(row->exact);
  free(row->difference);
  free(row->why);
}

static bool make_room(builder *b) {
  if (b->table.count < b->capacity) return true;
  size_t capacity = b->capacity + 16;
  ox_comparison_row *rows = realloc(b->table.rows, capacity * sizeof *rows);
  if (!rows) return false;
  b->table.rows = rows;
  b->capacity = capacity;
  return true;
}

static const char *none(void) {
  return C_("difference", "none");
}

static void add(builder *b, const char *quantity, cells *x) {
  ox_comparison_row row = {.which = _(b->which),
                           .circuit = (int)b->circuit + 1,
                           .quantity = _(quantity),
                           .flown = words_take(&x->flown),
                           .exact = words_take(&x->exact),
                           .difference = words_take(&x->difference),
                           .why = words_take(&x->why)};
  row.differs = row.difference && strcmp(row.difference, none()) != 0;
  if (row.flown && row.exact && row.difference && row.why && make_room(b)) {
    b->table.rows[b->table.count++] = row;
    return;
  }
  row_clear(&row);
  b->failed = true;
}

/* --- the quantities ------------------------------------------------------------------------ */

static void put_why(cells *x, double flown, double exact, int decimals, const char *unit) {
  words_figure taken = words_number(exact, decimals);
  bool negative = exact < 0.0 && strcmp(taken.text, words_number(-exact, decimals).text) != 0;
  words_put(&x->why, "%s%s − %s%s%s%s = %s%s", words_number(flown, decimals).text, unit,
            negative ? "(" : "", taken.text, unit, negative ? ")" : "",
            words_signed(flown - exact, decimals).text, unit);
}

static void add_heading(builder *b, const ox_circuit *m, const ox_circuit *e) {
  cells x = {0};
  double outbound_deg = b->flown->setup.inbound_true_deg + 180.0;
  double flown_deg = ox_turn_between_deg(outbound_deg, m->outbound_heading_true_deg);
  double exact_deg = ox_turn_between_deg(outbound_deg, e->outbound_heading_true_deg);
  double more_deg = flown_deg - exact_deg;
  words_put_heading(&x.flown, b->c, m->outbound_heading_true_deg, flown_deg);
  words_put_heading(&x.exact, b->c, e->outbound_heading_true_deg, exact_deg);
  if (fabs(more_deg) < 0.05)
    words_put(&x.difference, "%s", none());
  else
    words_put(&x.difference, _("%s° to the %s"), words_short(fabs(more_deg), 1).text,
              words_side(more_deg > 0));
  words_put(&x.why, _("corrections, right positive: "));
  put_why(&x, flown_deg, exact_deg, 1, "°");
  add(b, N_("Outbound heading"), &x);
}

static void add_time(builder *b, const char *quantity, double flown_s, double exact_s) {
  cells x = {0};
  double more_s = flown_s - exact_s;
  words_put(&x.flown, "%s", words_time(flown_s).text);
  words_put(&x.exact, "%s", words_time(exact_s).text);
  if (fabs(more_s) < 0.5)
    words_put(&x.difference, "%s", none());
  else
    words_put(&x.difference, more_s > 0 ? _("%s s longer") : _("%s s shorter"),
              words_number(fabs(more_s), 0).text);
  put_why(&x, flown_s, exact_s, 1, " s");
  add(b, quantity, &x);
}

/* Times that only a circuit back to the fix has. */
static void add_time_back(builder *b, const char *quantity, const ox_circuit *m,
                          const ox_circuit *e, double flown_s, double exact_s) {
  if (m->complete && e->complete) {
    add_time(b, quantity, flown_s, exact_s);
    return;
  }
  cells x = {0};
  words_put(&x.flown, "%s", m->complete ? words_time(flown_s).text : _("fix not regained"));
  words_put(&x.exact, "%s", e->complete ? words_time(exact_s).text : _("fix not regained"));
  words_put(&x.difference, "%s", m->complete == e->complete ? none() : _("the fix is lost"));
  words_put(&x.why, "%s",
            m->complete ? _("the exact technique does not come back to the fix")
                        : _("the flown circuit does not come back to the fix"));
  add(b, quantity, &x);
}

static void add_rollout(builder *b, const ox_circuit *m, const ox_circuit *e) {
  cells x = {0};
  double more_nm = m->rollout_offset_nm - e->rollout_offset_nm;
  words_put(&x.flown, "%s", words_rollout(m->rollout_offset_nm).text);
  words_put(&x.exact, "%s", words_rollout(e->rollout_offset_nm).text);
  if (fabs(more_nm) < 0.005)
    words_put(&x.difference, "%s", none());
  else
    words_put(&x.difference,
              more_nm > 0 ? _("%s NM towards the holding side")
                          : _("%s NM towards the non-holding side"),
              words_number(fabs(more_nm), 2).text);
  words_put(&x.why, _("holding side positive: "));
  put_why(&x, m->rollout_offset_nm, e->rollout_offset_nm, 2, " NM");
  add(b, N_("Roll-out"), &x);
}

/* A quantity that is more or less than the exact hold's; below half the last figure, "none". */
static void add_amount(builder *b, const char *label, double flown, double exact, int decimals,
                       const char *unit) {
  cells x = {0};
  double more = flown - exact;
  words_put(&x.flown, "%s%s", words_number(flown, decimals).text, unit);
  words_put(&x.exact, "%s%s", words_number(exact, decimals).text, unit);
  if (fabs(more) < 0.5 * pow(10.0, -decimals))
    words_put(&x.difference, "%s", none());
  else
    /* translators: a figure and its unit */
    words_put(&x.difference, more > 0 ? _("%s%s more") : _("%s%s less"),
              words_short(fabs(more), decimals).text, unit);
  put_why(&x, flown, exact, decimals, unit);
  add(b, label, &x);
}

static void add_gate(builder *b, const ox_circuit *m, const ox_circuit *e) {
  add_amount(b, N_("Gate angle"), m->gate_deg, e->gate_deg, 1, "°");
}

static void add_nonholding(builder *b, const ox_circuit *m, const ox_circuit *e) {
  add_amount(b, N_("On the non-holding side"), m->nonholding_nm, e->nonholding_nm, 2, " NM");
}

/* --- the circuits -------------------------------------------------------------------------- */

/* The exact circuit of the same number, or its last: it repeats itself. */
static const ox_circuit *counterpart(const builder *b, size_t circuit) {
  size_t last = b->exact->circuit_count - 1;
  return &b->exact->circuits[circuit < last ? circuit : last];
}

static void add_circuit(builder *b, size_t circuit, const char *which) {
  const ox_circuit *m = &b->flown->circuits[circuit], *e = counterpart(b, circuit);
  b->which = which;
  b->circuit = circuit;
  add_heading(b, m, e);
  add_time(b, N_("Outbound time"), m->timed_s, e->timed_s);
  add_time_back(b, N_("Inbound time"), m, e, m->inbound_s, e->inbound_s);
  add_time_back(b, N_("Whole circuit"), m, e, m->end_t_s - m->fix_t_s, e->end_t_s - e->fix_t_s);
  add_rollout(b, m, e);
  add_gate(b, m, e);
  add_nonholding(b, m, e);
}

static double badness(const builder *b, size_t circuit) {
  const ox_circuit *m = &b->flown->circuits[circuit], *e = counterpart(b, circuit);
  if (!m->complete) return HUGE_VAL;
  return fabs(m->inbound_s - e->inbound_s) / SAID_S +
         fabs(m->rollout_offset_nm - e->rollout_offset_nm) / SAID_NM;
}

static void add_circuits(builder *b) {
  size_t last = b->flown->circuit_count - 1, worst = last;
  /* Of circuits that are as bad to a hair the last one is named. */
  for (size_t i = 0; i < last; i++)
    if (badness(b, i) > badness(b, worst) + 1e-6) worst = i;
  add_circuit(b, last, worst == last ? N_("Last and worst circuit") : N_("Last circuit"));
  if (worst != last) add_circuit(b, worst, N_("Worst circuit"));
}

/* --- the whole ----------------------------------------------------------------------------- */

ox_case words_exact_case(const ox_case *c) {
  ox_case exact = *c;
  for (size_t i = 0; i < ox_preset_count(); i++)
    if (strcmp(ox_preset_at(i)->key, "exact") == 0) ox_preset_apply(i, &exact);
  return exact;
}

static const char *nothing_to_compare(const ox_flight *flown, const ox_flight *exact) {
  if (flown->circuit_count == 0) return _("No circuit is flown.");
  if (exact->circuit_count == 0) return _("The exact technique flies no circuit here.");
  /* In a wind that stays, what does not exist cannot be compared with. */
  if (exact->steady.why != OX_STEADY_EXISTS && exact->setup.condition_count == 1)
    return _(ox_steady_why_name(exact->steady.why));
  return NULL;
}

ox_comparison ox_comparison_make(const ox_case *c, const ox_flight *flown) {
  const char *no_memory = _("There is not enough memory.");
  ox_case exact_case = words_exact_case(c);
  ox_flight *exact = malloc(sizeof *exact);
  builder b = {.c = c, .flown = flown, .exact = exact};
  b.table.is_exact = ox_case_equal(&exact_case, c);
  if (!exact) {
    b.table.none = no_memory;
    return b.table;
  }
  if (ox_flight_solve(&exact_case, exact) == OX_ERROR)
    b.table.none = _("The exact technique cannot be flown with this case.");
  else
    b.table.none = nothing_to_compare(flown, exact);
  if (!b.table.none) add_circuits(&b);
  free(exact);
  if (b.failed) {
    ox_comparison_clear(&b.table);
    b.table.none = no_memory;
  }
  return b.table;
}

void ox_comparison_clear(ox_comparison *comparison) {
  for (size_t i = 0; i < comparison->count; i++)
    row_clear(&comparison->rows[i]);
  free(comparison->rows);
  *comparison = (ox_comparison){0};
}
