/* What follows when the hold is flown as the equipment shows it. */
#include <math.h>
#include <stdlib.h>

#include "crosscheck.h"
#include "gap.h"
#include "oxbow/angle.h"
#include "oxbow/limits.h"
#include "oxbow/units.h"
#include "oxbow/words.h"
#include "say.h"

static const double RECIPROCAL_DEG = 175.0, NEAR_VARIATION_DEG = 1.0, LEAST_VARIATION_DEG = 2.0;
static const double SEEN_NM = 0.5; /* from this gap on the two tracks are told apart at a glance */

/* --- item by item -------------------------------------------------------------------------- */

static double leg_nm(const ox_case *c, const ox_setup *setup) {
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE) return c->hold.leg_nm;
  double leg_s = c->hold.leg_s > 0.0 ? c->hold.leg_s : ox_standard_leg_s(c->hold.altitude_ft);
  return setup->tas_kt * leg_s / OX_S_PER_H;
}

static void put_course(words_say *s, const ox_case *c, const ox_setup *setup) {
  double off_deg = ox_turn_between_deg(c->hold.inbound_deg, words_shown_inbound_deg(&c->shown));
  double variation_deg = c->variation_deg, half_sin, half_cos;
  ox_sincos_deg(off_deg / 2.0, &half_sin, &half_cos);
  if (fabs(off_deg) >= RECIPROCAL_DEG) {
    words_put(s, _("Inbound and outbound are exchanged: the hold lies on the opposite side of the "
                   "fix, in airspace that was not cleared."));
    return;
  }
  words_put(s,
            _("The hold is turned %s° to the %s about the fix; at the far end of the leg that is "
              "%s NM."),
            words_short(fabs(off_deg), 1).text, words_side(off_deg > 0),
            words_number(2.0 * leg_nm(c, setup) * fabs(half_sin), 1).text);
  if (fabs(variation_deg) >= LEAST_VARIATION_DEG &&
      fabs(fabs(off_deg) - fabs(variation_deg)) <= NEAR_VARIATION_DEG)
    words_put(s, _(" It is as much as the variation: one of the two is likely true, the other "
                   "magnetic."));
}

static void put_direction(words_say *s, const ox_case *c) {
  double shown_deg = ((int)c->shown.direction - 1) * 45.0;
  double off_deg = ox_turn_between_deg(c->hold.inbound_deg + 180.0, shown_deg);
  words_put(s, _("The hold lies to the %s of the fix instead of the %s%s."),
            ox_words_eighth(shown_deg), ox_words_eighth(c->hold.inbound_deg + 180.0),
            fabs(off_deg) > 150.0 ? _(", on the opposite side") : "");
  if (c->shown.course_deg == 0.0) return;
  double own_deg = words_shown_inbound_deg(&c->shown) + 180.0;
  if (fabs(ox_turn_between_deg(own_deg, shown_deg)) > 23.0)
    words_put(s, _(" It does not go with the course shown either."));
}

static void put_leg(words_say *s, const ox_case *c, const ox_setup *setup) {
  double nm_per_s = setup->tas_kt / OX_S_PER_H, cleared_nm = leg_nm(c, setup);
  bool time = c->shown.leg_s > 0.0 && (c->shown.leg_nm == 0.0 || c->hold.leg_by == OX_LEG_BY_TIME);
  double more_nm = (time ? c->shown.leg_s * nm_per_s : c->shown.leg_nm) - cleared_nm;
  words_put(s,
            more_nm > 0 ? _("In still air each leg is %s NM longer, and a circuit takes %s longer.")
                        : _("In still air each leg is %s NM shorter, and a circuit takes %s less."),
            words_number(fabs(more_nm), 1).text, words_time(2.0 * fabs(more_nm) / nm_per_s).text);
  if (more_nm > 0.0) words_put(s, _(" The far end is outside what was cleared."));
}

static void put_efc(words_say *s, const ox_case *c) {
  if (c->hold.efc_min < 0) {
    words_put(s, _("No time was given: ask for one rather than go by this."));
    return;
  }
  int late_min = c->shown.efc_min - c->hold.efc_min;
  if (late_min > 720) late_min -= 1440;
  if (late_min < -720) late_min += 1440;
  words_put(s,
            late_min > 0 ? _("Flown to it the fix is left %d min too late; without radio, later "
                             "than the rule allows.")
                         : _("Flown to it the fix is left %d min too early; without radio, before "
                             "the rule allows."),
            abs(late_min));
}

void words_check_means(const ox_case *c, const ox_setup *setup, ox_check_item item,
                       ox_check_row *row) {
  words_say s = words_into(row->means, sizeof row->means);
  switch (item) {
  case OX_CHECK_FIX:
    words_put(&s, _("The hold is flown at another place, which this picture does not show: correct "
                    "the fix first."));
    break;
  case OX_CHECK_DIRECTION: put_direction(&s, c); break;
  case OX_CHECK_COURSE: put_course(&s, c, setup); break;
  case OX_CHECK_TURNS:
    words_put(&s, _("The circuit lies on the other side of the inbound course, all of it on the "
                    "non-holding side; the entry changes as well."));
    break;
  case OX_CHECK_LEG: put_leg(&s, c, setup); break;
  case OX_CHECK_EFC: put_efc(&s, c); break;
  case OX_CHECK_ITEM_COUNT: break;
  }
}

/* --- the whole ----------------------------------------------------------------------------- */

static double first_apart_s(const ox_flight *right, const ox_flight *wrong, double end_s) {
  for (double t_s = 0.0; t_s < end_s; t_s += 0.5)
    if (ox_vec_length(ox_vec_sub(ox_flight_at(wrong, t_s).p_nm, ox_flight_at(right, t_s).p_nm)) >=
        SEEN_NM)
      return t_s;
  return -1.0;
}

static void put_tracks(words_say *s, const ox_case *c, const ox_flight *right,
                       const ox_flight *wrong) {
  words_gap g = words_widest_gap(right, wrong);
  if (wrong->flown != right->flown)
    words_put(s, _(" The entry is %s instead of %s."), _(ox_entry_name(wrong->flown)),
              _(ox_entry_name(right->flown)));
  words_put(s,
            _(" Flown as shown the aircraft is up to %s NM %s of where it should be, %s after the "
              "fix"),
            words_number(g.apart_nm, 1).text,
            ox_words_eighth(ox_magnetic_deg(g.bearing_true_deg, c->variation_deg)),
            words_time(g.t_s).text);
  double apart_s = first_apart_s(right, wrong, g.t_s);
  if (apart_s >= 0.0)
    words_put(s, _("; it is seen, half a mile off, after %s"), words_time(apart_s).text);
  words_put(s, ".");
}

void ox_words_crosscheck(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight,
                         const ox_crosscheck *check) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  if (check->shown == 0) {
    words_put(&s, _("Nothing is entered that the equipment shows."));
    return;
  }
  if (check->differ == 0)
    words_put(&s, _("What is shown is what was cleared: %d of %d items agree."), check->shown,
              check->shown);
  else
    words_put(&s,
              ox_text_count("%d of %d items shown differs from what was cleared.",
                            "%d of %d items shown differ from what was cleared.",
                            (unsigned long)check->differ),
              check->differ, check->shown);
  if (check->shown < OX_CHECK_ITEM_COUNT)
    words_put(&s, _(" %d of %d not shown."), OX_CHECK_ITEM_COUNT - check->shown,
              OX_CHECK_ITEM_COUNT);
  if (!check->flown_otherwise) return;
  ox_flight *wrong = malloc(sizeof *wrong);
  if (wrong && ox_flight_solve(&check->flown, wrong) != OX_ERROR)
    put_tracks(&s, c, flight, wrong);
  free(wrong);
}
