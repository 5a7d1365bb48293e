/* The working of speed and turn, of the wind on the course, and of the published limits. */
#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/atmosphere.h"
#include "oxbow/limits.h"
#include "oxbow/area.h"
#include "oxbow/turn.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"
#include "rows.h"

#define TURN N_("Turn and speed")
#define WIND N_("Wind")
#define LIMITS N_("Limits")
#define SOURCE_LESSER_BANK N_("AIM 5-3-8 j8(b); ICAO Doc 8168 Vol I (lesser bank)")

static const double M_S_PER_KT = 1852.0 / 3600.0;

static words_phrase air_of(const ox_case *c) {
  words_phrase p;
  words_say s = words_into(p.text, sizeof p.text);
  words_put(&s, "%s ft, ISA", words_short(c->hold.altitude_ft, 0).text);
  if (c->aircraft.isa_dev_c != 0.0)
    words_put(&s, " %s °C", words_signed(c->aircraft.isa_dev_c, 1).text);
  return p;
}

static void add_tas(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  double sound_kt = ox_air_at(r->c->hold.altitude_ft, r->c->aircraft.isa_dev_c).sound_speed_kt;
  words_put(&value, "%s kt", words_number(s->tas_kt, 1).text);
  if (r->c->aircraft.tas_kt > 0.0)
    words_put(&why, _("given; at %s"), air_of(r->c).text);
  else
    words_put(&why, _("%s KIAS at %s"), words_short(s->ias_kt, 1).text, air_of(r->c).text);
  words_put(&why, _(": Mach %s × speed of sound %s kt"), words_number(s->tas_kt / sound_kt, 4).text,
            words_number(sound_kt, 1).text);
  rows_add(r, TURN, N_("True airspeed"), &value, &why, N_("ICAO Doc 7488 (standard atmosphere)"));
}

static void add_bank(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  words_put(&value, "%s°", words_number(s->bank_deg, 1).text);
  if (s->bank_limits)
    words_put(&why, _("the bank limit"));
  else
    words_put(&why, _("tan(bank) = V·ω ÷ g = %s m/s × %s rad/s ÷ 9.80665 m/s²"),
              words_number(s->tas_kt * M_S_PER_KT, 2).text,
              words_number(s->rate_deg_s * OX_RAD_PER_DEG, 5).text);
  rows_add(r, TURN, N_("Bank"), &value, &why, SOURCE_LESSER_BANK);
}

static void add_rate(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  words_put(&value, "%s°/s", words_number(s->rate_deg_s, 2).text);
  if (s->bank_limits)
    words_put(&why, _("ω = g·tan(bank) ÷ V = 9.80665 m/s² × tan(%s°) ÷ %s m/s"),
              words_number(s->bank_deg, 1).text, words_number(s->tas_kt * M_S_PER_KT, 2).text);
  else
    words_put(&why, _("the rate wanted; half a circle takes 180 ÷ %s = %s s"),
              words_number(s->rate_deg_s, 2).text, words_number(180.0 / s->rate_deg_s, 1).text);
  rows_add(r, TURN, N_("Rate of turn"), &value, &why, SOURCE_LESSER_BANK);
}

static void add_radius(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  words_put(&value, "%s NM", words_number(s->radius_nm, 2).text);
  words_put(&why, _("r = V ÷ (20π·ω) = %s ÷ (62.83 × %s); the still-air shape is %s NM wide"),
            words_number(s->tas_kt, 1).text, words_number(s->rate_deg_s, 2).text,
            words_number(2.0 * s->radius_nm, 2).text);
  rows_add(r, TURN, N_("Radius of turn"), &value, &why,
           N_("ICAO Doc 8168 Vol II (r = V/(62.83 R))"));
}

static void add_deciding(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  double wanted_deg_s = r->c->aircraft.rate_deg_s;
  words_put(&value, "%s", s->bank_limits ? _("the bank") : _("the rate"));
  if (r->c->aircraft.turn_by == OX_TURN_BY_BANK)
    words_put(&why, _("%s° of bank are flown whatever the rate"),
              words_short(r->c->aircraft.max_bank_deg, 1).text);
  else
    words_put(&why, _("%s°/s needs %s° of bank, the limit is %s°: the lesser bank is flown"),
              words_short(wanted_deg_s, 2).text,
              words_number(ox_bank_for_rate_deg(s->tas_kt, wanted_deg_s), 1).text,
              words_short(r->c->aircraft.max_bank_deg, 1).text);
  rows_add(r, TURN, N_("What decides"), &value, &why, SOURCE_LESSER_BANK);
}

static void add_climb(words_rows *r) {
  const ox_setup *s = &r->f->setup;
  if (!(s->climb_end_s > 0.0)) return;
  words_say value = {0}, why = {0};
  const ox_condition *last = &s->conditions[s->condition_count - 1];
  bool up = r->c->hold.climb_to_ft > r->c->hold.altitude_ft;
  words_put(&value, up ? _("climb to %s ft in %s") : _("descent to %s ft in %s"),
            words_short(r->c->hold.climb_to_ft, 0).text, words_time(s->climb_end_s).text);
  words_put(&why, _("from %s ft at %s ft a minute; the true airspeed goes from %s to %s kt"),
            words_short(r->c->hold.altitude_ft, 0).text,
            words_short(r->c->hold.climb_ft_min, 0).text, words_number(s->tas_kt, 1).text,
            words_number(last->tas_kt, 1).text);
  rows_add(r, TURN, N_("In the hold"), &value, &why, SOURCE_GIVEN);
}

void rows_turn(words_rows *r) {
  add_tas(r);
  add_bank(r);
  add_rate(r);
  add_radius(r);
  add_deciding(r);
  add_climb(r);
}

/* --- wind ---------------------------------------------------------------------------------- */

words_phrase words_wind(const ox_case *c, const ox_setup *setup) {
  words_phrase p;
  words_say s = words_into(p.text, sizeof p.text);
  words_figure from = words_shown(setup->wind_from_true_deg);
  words_figure kt = words_short(setup->wind_speed_kt, 1);
  if (setup->wind_speed_kt < 0.05)
    words_put(&s, "%s", C_("wind", "calm"));
  else if (c->variation_deg == 0.0)
    words_put(&s, _("%s at %s kt"), from.text, kt.text);
  else
    words_put(&s, _("%s true (%s magnetic) at %s kt"), from.text,
              words_magnetic(c, setup->wind_from_true_deg).text, kt.text);
  return p;
}

static void add_wind(words_rows *r) {
  words_say value = {0}, why = {0};
  words_put(&value, "%s", words_wind(r->c, &r->f->setup).text);
  if (r->c->wind_count == 0)
    words_put(&why, _("no wind is given: calm"));
  else if (r->c->wind_count == 1)
    words_put(&why, _("the wind given, from %s %s"), words_shown(r->c->wind[0].from_deg).text,
              words_north(r->c->wind[0].north));
  else
    words_put(&why, _("interpolated to %s ft between the %d rows given"),
              words_short(r->c->hold.altitude_ft, 0).text, r->c->wind_count);
  rows_add(r, WIND, N_("Wind"), &value, &why, SOURCE_GIVEN);
}

static void add_component(words_rows *r, double kt, bool along) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  double angle_deg = fabs(ox_turn_between_deg(s->inbound_true_deg, s->wind_from_true_deg));
  const char *label = along ? N_("Along the inbound course") : N_("Across the inbound course");
  if (fabs(kt) < 0.05) {
    words_put(&value, "%s", C_("wind component", "nothing"));
  } else if (along) {
    words_put(&value, kt > 0 ? _("%s kt tailwind") : _("%s kt headwind"),
              words_number(fabs(kt), 1).text);
  } else {
    bool from_left = kt > 0;
    words_put(&value,
              from_left == (s->sense < 0) ? _("%s kt from the %s, the holding side")
                                          : _("%s kt from the %s, the non-holding side"),
              words_number(fabs(kt), 1).text, words_side(!from_left));
  }
  words_put(&why, _("%s kt × %s(%s°), wind from %s against course %s"),
            words_short(s->wind_speed_kt, 1).text, along ? "cos" : "sin",
            words_short(angle_deg, 1).text, words_marked(r->c, s->wind_from_true_deg).text,
            words_marked(r->c, s->inbound_true_deg).text);
  rows_add(r, WIND, label, &value, &why, SOURCE_GEOMETRY);
}

static void add_change(words_rows *r, const ox_wind_change *change) {
  words_say value = {0}, why = {0};
  words_figure from = words_shown(change->from_deg), kt = words_short(change->kt, 1);
  if (r->c->variation_deg == 0.0)
    words_put(&value, _("from %s at %s kt"), from.text, kt.text);
  else
    words_put(&value, _("from %s %s at %s kt"), from.text, words_north(change->north), kt.text);
  words_put(&why, _("from %s after the first crossing of the fix on, at every height"),
            words_time(change->at_min * 60.0).text);
  rows_add(r, WIND, N_("Then the wind changes"), &value, &why, SOURCE_GIVEN);
}

void rows_wind(words_rows *r) {
  add_wind(r);
  for (int i = 0; i < r->c->wind_change_count; i++)
    add_change(r, &r->c->wind_changes[i]);
  const ox_setup *s = &r->f->setup;
  if (s->wind_speed_kt < 0.05) return;
  ox_triangle t = ox_triangle_for_course(s->inbound_true_deg, s->tas_kt, s->wind_kt);
  add_component(r, t.along_kt, true);
  add_component(r, t.cross_kt, false);
}

/* --- limits -------------------------------------------------------------------------------- */

static void add_speed_limit(words_rows *r) {
  words_say value = {0}, why = {0};
  double altitude_ft = r->c->hold.altitude_ft;
  bool charted = r->c->hold.limit_kias > 0.0;
  words_put(&value, "%s KIAS", words_short(r->f->setup.speed_limit_kias, 1).text);
  if (charted)
    words_put(&why, _("charted for this hold; the table gives %s KIAS at %s ft"),
              words_short(ox_us_speed_limit_kias(altitude_ft), 0).text,
              words_short(altitude_ft, 0).text);
  else
    words_put(&why, _("%s ft is in the band %s"), words_short(altitude_ft, 0).text,
              altitude_ft <= 6000.0    ? _("up to 6000 ft")
              : altitude_ft <= 14000.0 ? _("6001 to 14000 ft")
                                       : _("14001 ft and above"));
  rows_add(r, LIMITS, N_("Speed limit"), &value, &why,
           charted ? N_("the chart (AIM 5-3-8 j2, charted restriction)")
                   : N_("AIM 5-3-8 j2, holding speed table"));
}

static void add_airspeed(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_setup *s = &r->f->setup;
  double room_kt = s->speed_limit_kias - s->ias_kt;
  words_put(&value, "%s KIAS", words_short(s->ias_kt, 1).text);
  if (s->ias_kt < 90.0)
    words_put(&why, _("%s kt below the 90 KIAS recommended as the least"),
              words_short(90.0 - s->ias_kt, 1).text);
  else if (fabs(room_kt) < 0.05)
    words_put(&why, _("at the limit"));
  else
    words_put(&why,
              room_kt > 0 ? _("%s kt below the limit: %s − %s")
                          : _("%s kt above the limit: %s − %s"),
              words_short(fabs(room_kt), 1).text, words_short(s->speed_limit_kias, 1).text,
              words_short(s->ias_kt, 1).text);
  rows_add(r, LIMITS, N_("Airspeed"), &value, &why,
           s->ias_kt < 90.0 ? "AIM 5-3-8 j8(a)" : "AIM 5-3-8 j2");
}

static void add_efc(words_rows *r) {
  int efc_min = r->c->hold.efc_min;
  if (efc_min < 0) return;
  words_say value = {0}, why = {0};
  words_put(&value, "%02d:%02d UTC", efc_min / 60, efc_min % 60);
  words_put(&why,
            _("with communications failed: leave the fix then, or begin the approach then where "
              "one begins at this fix"));
  rows_add(r, LIMITS, N_("Expect further clearance"), &value, &why, "14 CFR 91.185(c)(3)");
}

/* Doc 8168 Vol II: for a hold towards the station, whose readings grow outbound. */
static void add_limiting_distance(words_rows *r) {
  const ox_setup *s = &r->f->setup;
  if (!s->has_dme || s->dme.outward < 0 || s->dme_fix_nm <= s->dme.height_nm) return;
  words_say value = {0}, why = {0};
  double rounded_nm, height_ft = s->dme.height_nm * OX_FT_PER_NM;
  double leg_s = ox_standard_leg_s(r->c->hold.altitude_ft);
  double limit_nm = ox_limiting_dme_nm(s->ias_kt, height_ft, s->dme_fix_nm, leg_s, &rounded_nm);
  words_put(&value, "%s DME", words_number(rounded_nm, 0).text);
  words_put(
      &why,
      _("√((Ds + ds)² + 4r² + 0.027h²) = %s, with %s DME over the fix, %s outbound at %s KIAS, ISA "
        "+ 15 and 25° of bank, %s ft above the station; the leg flown ends at %s DME"),
      words_number(limit_nm, 2).text, words_number(s->dme_fix_nm, 2).text, words_time(leg_s).text,
      words_short(s->ias_kt, 0).text, words_number(height_ft, 0).text,
      words_short(s->goal_value, 2).text);
  rows_add(r, LIMITS, N_("Limiting distance"), &value, &why,
           N_("ICAO Doc 8168 Vol II; the outbound length is from memory"));
}

void rows_limits(words_rows *r) {
  add_speed_limit(r);
  add_airspeed(r);
  add_limiting_distance(r);
  add_efc(r);
}
