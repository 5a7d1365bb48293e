/* The working of the circuits as they were flown: a row for each, then what they teach together:
 * the next correction, where the inbound turn leads, the gate, the non-holding side, and whether
 * the times come nearer to what was asked. */
#include <math.h>
#include <stdio.h>

#include "oxbow/angle.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"
#include "rows.h"

#define GROUP N_("Circuits")

static const double LEAST_NM = 0.005; /* smaller distances are shown as none */
static const double LEAST_S = 0.5;

/* --- one circuit --------------------------------------------------------------------------- */

words_phrase words_rollout(double offset_nm) {
  words_phrase p;
  words_say s = words_into(p.text, sizeof p.text);
  words_figure off = words_number(fabs(offset_nm), 2);
  if (fabs(offset_nm) < LEAST_NM)
    words_put(&s, _("on the course"));
  else if (offset_nm > 0)
    words_put(&s, _("%s NM short of the course, on the holding side (undershoot)"), off.text);
  else
    words_put(&s, _("%s NM beyond the course, on the non-holding side (overshoot)"), off.text);
  return p;
}

static void put_error(words_say *s, double error_s) {
  if (fabs(error_s) < LEAST_S)
    words_put(s, _(" as asked"));
  else
    words_put(s, error_s > 0 ? _(", %s s too long") : _(", %s s too short"),
              words_number(fabs(error_s), 0).text);
}

static void put_inbound(words_say *value, words_say *why, const ox_setup *s, const ox_circuit *m) {
  if (!m->complete) {
    words_put(value, _(", the fix is not regained"));
    return;
  }
  words_put(value, _(", inbound %s"), words_time(m->inbound_s).text);
  if (s->goal != OX_GOAL_INBOUND_S) return;
  double error_s = m->inbound_s - s->goal_value;
  put_error(value, error_s);
  words_put(why, _("inbound %s s − %s s = %s s; "), words_number(m->inbound_s, 1).text,
            words_short(s->goal_value, 1).text, words_signed(error_s, 1).text);
  if (fabs(error_s) >= LEAST_S)
    words_put(why, _("one correction makes the next outbound time %s; "),
              words_time(m->next_timed_s).text);
}

static void put_measured(words_say *value, words_say *why, const ox_setup *s, const ox_circuit *m) {
  words_put(value, _("outbound %s"), words_time(m->timed_s).text);
  words_put(why, _("%s s from wings level to the inbound turn; "),
            words_number(m->outbound_s, 1).text);
  put_inbound(value, why, s, m);
  words_put(value, _(", rolls out %s"), words_rollout(m->rollout_offset_nm).text);
  words_put(why, _("the inbound turn begins %s° off the outbound course as seen from the fix; "),
            words_number(m->gate_deg, 0).text);
  if (m->nonholding_nm < LEAST_NM)
    words_put(why, _("never on the non-holding side"));
  else
    words_put(why, _("at most %s NM on the non-holding side"),
              words_number(m->nonholding_nm, 2).text);
}

/* The entry may be all there is to fly. */
static const char *why_no_circuit(const words_rows *r) {
  for (size_t i = 0; i < r->f->advice_count; i++)
    if (r->f->advice[i].kind == OX_ADVICE_NOT_REGAINED)
      return _("the fix is not regained from the entry");
  if (r->f->leave_t_s > 0.0) return _("the time to leave comes before another circuit");
  if (r->c->hold.ends == OX_HOLD_REVERSAL)
    return _("the course reversal is complete when established inbound after the entry");
  return _("the hold ends with the entry");
}

/* --- what they teach ----------------------------------------------------------------------- */

/* In a hold left at a time the last circuits are cut to fit: nothing is to be corrected. */
static bool timed_inbound(const words_rows *r, const ox_circuit *m) {
  return r->f->setup.goal == OX_GOAL_INBOUND_S && m->complete && !(r->f->leave_t_s > 0.0);
}

static void add_next(words_rows *r, const ox_circuit *m) {
  if (!timed_inbound(r, m)) return;
  words_say value = {0}, why = {0};
  double next_s = m->timed_s - m->inbound_error_s;
  if (fabs(m->inbound_error_s) < LEAST_S)
    words_put(&value, _("none: the inbound leg is as asked"));
  else
    words_put(&value, _("outbound %s"), words_time(m->next_timed_s).text);
  words_put(&why, _("outbound %s s %s error %s s = %s s"), words_number(m->timed_s, 1).text,
            m->inbound_error_s < 0 ? "+" : "−", words_number(fabs(m->inbound_error_s), 1).text,
            words_number(next_s, 1).text);
  if (m->next_timed_s > next_s + 0.05)
    words_put(&why, _(", but a first correction is not below %s s"),
              words_number(m->next_timed_s, 0).text);
  rows_add(r, GROUP, N_("Next correction"), &value, &why, N_("CNATRA P-871 p. 76 to 79"));
}

/* Where the inbound turn begins: off the course on the holding side, and outbound of the fix. */
static ox_vec turn_place(const ox_setup *s, const ox_circuit *m) {
  ox_vec side = ox_unit(s->inbound_true_deg + 90.0 * s->sense);
  ox_vec out = ox_unit(s->inbound_true_deg + 180.0);
  return (ox_vec){ox_vec_dot(m->outbound_end_nm, side), ox_vec_dot(m->outbound_end_nm, out)};
}

static bool course_is_held(const ox_setup *s, const ox_circuit *m) {
  double turn_t_s = m->complete ? m->end_t_s - m->inbound_s : m->fix_t_s;
  const ox_condition *k = words_condition_at(s, turn_t_s);
  return ox_triangle_for_course(s->inbound_true_deg, k->tas_kt, k->wind_kt).possible;
}

static void add_rollout(words_rows *r, const ox_circuit *m) {
  const ox_setup *s = &r->f->setup;
  if (!course_is_held(s, m)) return;
  words_say value = {0}, why = {0};
  double across_nm = turn_place(s, m).x;
  words_put(&value, "%s", words_rollout(m->rollout_offset_nm).text);
  words_put(&why,
            _("the turn begins %s NM from the course on the holding side and takes %s NM across, "
              "wind included: %s − %s = %s NM"),
            words_number(across_nm, 2).text, words_number(across_nm - m->rollout_offset_nm, 2).text,
            words_number(across_nm, 2).text, words_number(across_nm - m->rollout_offset_nm, 2).text,
            words_signed(m->rollout_offset_nm, 2).text);
  rows_add(r, GROUP, N_("Where the inbound turn rolls out"), &value, &why, SOURCE_GEOMETRY);
}

/* Bearing of the outbound end in still air, off the outbound course; 0 where a DME ends the leg. */
static double still_air_gate_deg(const ox_setup *s) {
  double leg_nm = s->leg_s > 0.0 ? s->tas_kt * s->leg_s / OX_S_PER_H : s->goal_value;
  if (s->has_dme || !(leg_nm > 0.0)) return 0.0;
  return atan2(2.0 * s->radius_nm, leg_nm) / OX_RAD_PER_DEG;
}

static void add_gate(words_rows *r, const ox_circuit *m) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  ox_vec at = turn_place(s, m);
  double still_deg = still_air_gate_deg(s);
  words_put(&value, _("%s° off the outbound course"), words_number(m->gate_deg, 1).text);
  words_put(&why, _("the inbound turn begins %s NM across and %s NM outbound of the fix"),
            words_number(at.x, 2).text, words_number(at.y, 2).text);
  if (still_deg > 0.0)
    words_put(&why, _("; in still air atan(2r ÷ leg) = %s°"), words_number(still_deg, 1).text);
  rows_add(r, GROUP, N_("Gate angle"), &value, &why,
           N_("geometry; the gate as a check: UK-style drift note (as quoted)"));
}

static void add_nonholding(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_flight *f = r->f;
  size_t worst = 0;
  for (size_t i = 1; i < f->circuit_count; i++)
    if (f->circuits[i].nonholding_nm > f->circuits[worst].nonholding_nm) worst = i;
  if (f->circuits[worst].nonholding_nm < LEAST_NM)
    words_put(&value, "%s", C_("on the non-holding side", "never"));
  else
    words_put(&value, _("%s NM, in circuit %zu"),
              words_number(f->circuits[worst].nonholding_nm, 2).text, worst + 1);
  words_put(&why,
            _("at right angles to the inbound course, over every leg and turn of the circuits; the "
              "entry is not counted"));
  rows_add(r, GROUP, N_("Farthest on the non-holding side"), &value, &why, SOURCE_MEASURED);
}

/* --- convergence --------------------------------------------------------------------------- */

enum { MOST_SHOWN = 6 };

static size_t complete_count(const ox_flight *f) {
  size_t n = 0;
  while (n < f->circuit_count && f->circuits[n].complete)
    n++;
  return n;
}

/* Of many, the first ones and the last. */
static bool is_shown(size_t i, size_t count) {
  return i + 1 < MOST_SHOWN || i + 1 == count;
}

static void put_separator(words_say *s, size_t i, size_t count) {
  if (i == 0) return;
  words_put(s, "%s", i + 1 == count && count > MOST_SHOWN ? " … " : "; ");
}

static void add_convergence(words_rows *r) {
  const ox_circuit *m = r->f->circuits;
  size_t count = complete_count(r->f);
  if (count < 2 || !timed_inbound(r, &m[0])) return;
  words_say value = {0}, why = {0};
  words_put(&why, _("errors "));
  for (size_t i = 0; i < count; i++) {
    if (!is_shown(i, count)) continue;
    put_separator(&value, i, count);
    put_separator(&why, i, count);
    words_put(&value, "%s", words_time(m[i].inbound_s).text);
    words_put(&why, "%s", words_signed(m[i].inbound_error_s, 1).text);
  }
  words_put(&why, " s");
  double before_s = m[count - 2].inbound_error_s, last_s = m[count - 1].inbound_error_s;
  if (fabs(before_s) >= LEAST_S)
    words_put(&why, _("; the last is %s of the one before"),
              words_number(last_s / before_s, 2).text);
  rows_add(r, GROUP, N_("Inbound times one after another"), &value, &why, SOURCE_MEASURED);
}

void rows_circuits(words_rows *r) {
  const ox_flight *f = r->f;
  for (size_t i = 0; i < f->circuit_count; i++) {
    words_say value = {0}, why = {0};
    char label[64];
    snprintf(label, sizeof label, _("Circuit %zu"), i + 1);
    put_measured(&value, &why, &f->setup, &f->circuits[i]);
    rows_add_labelled(r, GROUP, "Circuit", label, &value, &why, SOURCE_MEASURED);
  }
  if (f->circuit_count > 0) {
    const ox_circuit *last = &f->circuits[f->circuit_count - 1];
    add_next(r, last);
    add_rollout(r, last);
    add_gate(r, last);
    add_nonholding(r);
    add_convergence(r);
    return;
  }
  words_say value = {0}, why = {0};
  words_put(&value, _("none flown"));
  words_put(&why, "%s", why_no_circuit(r));
  rows_add(r, GROUP, N_("Circuits"), &value, &why, SOURCE_MEASURED);
}
