/* The working of the headings: inbound, the exact outbound that makes the circuit close, and the
 * outbound heading that the technique flies. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/wind.h"
#include "rows.h"

#define GROUP N_("Headings")

static const double LEAST_CORRECTION_DEG = 0.05; /* smaller ones are shown as none */

void words_put_heading(words_say *s, const ox_case *c, double true_deg, double correction_deg) {
  words_put(s, "%s", words_marked(c, true_deg).text);
  if (fabs(correction_deg) < LEAST_CORRECTION_DEG)
    words_put(s, _(" (no correction)"));
  else
    words_put(s, " (%s)", words_correction(correction_deg).text);
}

void rows_set_brief_heading(words_rows *r, double true_deg, double correction_deg) {
  if (fabs(correction_deg) < LEAST_CORRECTION_DEG)
    rows_set_brief(r, words_marked(r->c, true_deg).text);
}

static ox_triangle inbound_triangle(const ox_setup *s) {
  return ox_triangle_for_course(s->inbound_true_deg, s->tas_kt, s->wind_kt);
}

static void add_inbound(words_rows *r, const ox_triangle *t) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  if (t->possible)
    words_put_heading(&value, r->c, t->heading_deg, t->wca_deg);
  else
    words_put(&value, _("none holds the course"));
  words_put(&why, _("sin(correction) = wind across ÷ TAS = %s ÷ %s"),
            words_number(fabs(t->cross_kt), 1).text, words_number(s->tas_kt, 1).text);
  if (t->possible)
    words_put(&why, _(", into the wind; course %s"), words_marked(r->c, s->inbound_true_deg).text);
  else
    words_put(&why, _(", which is not below 1"));
  rows_add(r, GROUP, N_("Inbound heading"), &value, &why, SOURCE_GEOMETRY);
  if (t->possible) rows_set_brief_heading(r, t->heading_deg, t->wca_deg);
}

static void add_ground_speed(words_rows *r, const ox_triangle *t) {
  if (!t->possible) return;
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  words_put(&value, "%s kt", words_number(t->gs_kt, 1).text);
  words_put(&why, _("%s × cos(%s°) %s %s"), words_number(s->tas_kt, 1).text,
            words_short(fabs(t->wca_deg), 1).text, t->along_kt < 0 ? "−" : "+",
            words_number(fabs(t->along_kt), 1).text);
  rows_add(r, GROUP, N_("Inbound ground speed"), &value, &why, SOURCE_GEOMETRY);
}

static void add_outbound(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_steady *steady = &r->f->steady;
  const ox_setup *s = &r->f->setup;
  if (steady->why == OX_STEADY_EXISTS) {
    double turns_s = 360.0 / s->rate_deg_s;
    words_put_heading(&value, r->c, steady->outbound_heading_deg, steady->outbound_wca_deg);
    words_put(&why,
              _("undoes the wind of the whole circuit but the inbound leg: %s kt for %s s of turns "
                "and %s s outbound is %s NM"),
              words_short(s->wind_speed_kt, 1).text, words_number(turns_s, 0).text,
              words_number(steady->outbound_s, 0).text,
              words_number(s->wind_speed_kt * (turns_s + steady->outbound_s) / 3600.0, 2).text);
  } else {
    words_put(&value, _("none makes the circuit close"));
    words_put(&why, _("%s Wind component %s kt"), _(ox_steady_why_name(steady->why)),
              words_number(steady->component_kt, 1).text);
    if (steady->limit_kt > 0.0)
      words_put(&why, _(", limit %s kt"), words_number(steady->limit_kt, 1).text);
  }
  rows_add(r, GROUP, N_("Exact outbound heading"), &value, &why, SOURCE_GEOMETRY);
}

static void add_ratio(words_rows *r) {
  const ox_steady *steady = &r->f->steady;
  if (steady->why != OX_STEADY_EXISTS) return;
  words_say value = {0}, why = {0};
  double in_deg = fabs(steady->inbound_wca_deg), out_deg = fabs(steady->outbound_wca_deg);
  if (in_deg < LEAST_CORRECTION_DEG) {
    words_put(&value, _("no correction to multiply"));
    words_put(&why, _("nothing blows across the course"));
  } else {
    words_put(&value, _("%s times, to the other side"), words_number(out_deg / in_deg, 2).text);
    words_put(&why, _("%s° outbound ÷ %s° inbound; the rule of thumb is three times"),
              words_number(out_deg, 1).text, words_number(in_deg, 1).text);
  }
  rows_add(r, GROUP, N_("Outbound to inbound correction"), &value, &why,
           N_("AIM 5-3-8 j8(c): three times, on the opposite side"));
}

/* --- as flown ------------------------------------------------------------------------------ */

static const char *drift_source(ox_drift drift) {
  switch (drift) {
  case OX_DRIFT_TRIPLE:
    return "AIM 5-3-8 j8(c)";
  case OX_DRIFT_DOUBLE:
    return N_("common practice (CNATRA P-1244: two to three times)");
  case OX_DRIFT_TRACK:
    return N_("ICAO Doc 8168 Vol I (procedures depict tracks)");
  case OX_DRIFT_EXACT:
    return SOURCE_GEOMETRY;
  case OX_DRIFT_NONE:
  case OX_DRIFT_SINGLE:
    break;
  }
  return SOURCE_PRACTICE;
}

static bool is_capped(const ox_flight *f) {
  for (size_t i = 0; i < f->advice_count; i++)
    if (f->advice[i].kind == OX_ADVICE_DRIFT_CAPPED) return true;
  return false;
}

static void put_multiple(words_say *s, const ox_triangle *t, double times, const char *word,
                         bool capped, double flown_deg) {
  double in_deg = fabs(t->wca_deg);
  if (t->possible && in_deg < LEAST_CORRECTION_DEG) {
    words_put(s, _("%s: nothing blows across, so there is nothing to correct"), word);
    return;
  }
  /* translators: the first %s is "triple correction" etc. */
  words_put(s, _("%s: %s × %s° = %s°, on the other side"), word, words_short(times, 0).text,
            words_number(in_deg, 1).text, words_number(times * in_deg, 1).text);
  if (capped && times * in_deg > fabs(flown_deg) + 0.1)
    words_put(s, _("; no more than %s° is flown"), words_number(fabs(flown_deg), 0).text);
}

static void put_technique(words_say *s, const words_rows *r, const ox_triangle *t,
                          double flown_deg) {
  const ox_case *c = r->c;
  bool capped = is_capped(r->f);
  switch (c->technique.drift) {
  case OX_DRIFT_NONE:
    words_put(s, _("no correction: the outbound course as heading"));
    break;
  case OX_DRIFT_SINGLE:
    put_multiple(s, t, 1.0, _("single correction"), capped, flown_deg);
    break;
  case OX_DRIFT_DOUBLE:
    put_multiple(s, t, 2.0, _("double correction"), capped, flown_deg);
    break;
  case OX_DRIFT_TRIPLE:
    put_multiple(s, t, 3.0, _("triple correction"), capped, flown_deg);
    break;
  case OX_DRIFT_TRACK:
    words_put(s, _("the track parallel to the course: the inbound correction, mirrored, %s°"),
              words_number(fabs(t->wca_deg), 1).text);
    break;
  case OX_DRIFT_EXACT:
    words_put(s, _("so that a plain turn rolls out on the inbound course, from this fix passage"));
    break;
  }
}

/* The wind of the moment may be another than that of the arrival. */
static ox_triangle triangle_at(const ox_setup *s, double t_s) {
  const ox_condition *k = words_condition_at(s, t_s);
  return ox_triangle_for_course(s->inbound_true_deg, k->tas_kt, k->wind_kt);
}

static void add_flown(words_rows *r) {
  words_say value = {0}, why = {0};
  const char *source = drift_source(r->c->technique.drift);
  if (r->f->circuit_count == 0) {
    words_put(&value, _("not flown"));
    words_put(&why, _("the flight ends before a first circuit"));
    rows_add(r, GROUP, N_("Outbound heading flown first"), &value, &why, source);
  } else {
    ox_triangle t = triangle_at(&r->f->setup, r->f->circuits[0].fix_t_s);
    double heading_deg = r->f->circuits[0].outbound_heading_true_deg;
    double flown_deg = ox_turn_between_deg(r->f->setup.inbound_true_deg + 180.0, heading_deg);
    words_put_heading(&value, r->c, heading_deg, flown_deg);
    put_technique(&why, r, &t, flown_deg);
    rows_add(r, GROUP, N_("Outbound heading flown first"), &value, &why, source);
    rows_set_brief_heading(r, heading_deg, flown_deg);
  }
}

void rows_headings(words_rows *r) {
  ox_triangle t = inbound_triangle(&r->f->setup);
  add_inbound(r, &t);
  add_ground_speed(r, &t);
  add_outbound(r);
  add_ratio(r);
  add_flown(r);
}
