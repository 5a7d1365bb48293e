/* Random cases: which inputs the property tests visit. Ranges stay inside the field table, so that
 * every case is valid; speeds and times are those of light aeroplanes to jets. */
#include "random_case.h"

static double circle(ox_random *r) { return ox_random_between(r, 0, 360); }

static double to_circle(double deg) {
  double d = fmod(deg, 360);
  return d < 0 ? d + 360 : d;
}

static void random_hold(ox_random *r, ox_case *c) {
  c->hold.inbound_deg = circle(r);
  c->hold.turns = (ox_turns)ox_random_below(r, 2);
  c->hold.altitude_ft = ox_random_between(r, -1000, 40000);
  if (ox_random_below(r, 3) == 0) {
    c->hold.leg_by = OX_LEG_BY_DISTANCE;
    c->hold.leg_nm = ox_random_between(r, 0.5, 20);
    c->hold.leg_end = (ox_leg_end)ox_random_below(r, 2);
  } else {
    static const double usual_s[] = {0, 60, 90, 120};
    c->hold.leg_by = OX_LEG_BY_TIME;
    c->hold.leg_s = ox_random_below(r, 2) ? usual_s[ox_random_below(r, 4)]
                                          : ox_random_between(r, 10, 600);
  }
}

static void random_aircraft(ox_random *r, ox_case *c) {
  if (ox_random_below(r, 5) == 0) {
    c->aircraft.ias_kt = ox_random_between(r, 60, 300);
    c->aircraft.isa_dev_c = ox_random_between(r, -30, 30);
  } else {
    c->aircraft.ias_kt = 0;
    c->aircraft.tas_kt = ox_random_between(r, 60, 450);
  }
  c->aircraft.rate_deg_s = ox_random_below(r, 2) ? 3 : ox_random_between(r, 0.5, 6);
  c->aircraft.max_bank_deg = ox_random_below(r, 2) ? 30 : ox_random_between(r, 5, 45);
}

static void random_wind(ox_random *r, ox_case *c, double wind_share) {
  double speed_kt = c->aircraft.tas_kt > 0 ? c->aircraft.tas_kt : c->aircraft.ias_kt;
  c->variation_deg = ox_random_below(r, 2) ? 0 : ox_random_between(r, -180, 180);
  c->wind_count = ox_random_below(r, 8) == 0 ? ox_random_below(r, 4) : 1;
  for (int i = 0; i < c->wind_count; i++) {
    c->wind[i].altitude_ft = -1000 + 15000 * i + ox_random_between(r, 0, 10000);
    c->wind[i].from_deg = circle(r);
    c->wind[i].kt = fmin(250, speed_kt * ox_random_between(r, 0, wind_share));
    c->wind[i].north = (ox_north)ox_random_below(r, 2);
  }
}

static void random_technique(ox_random *r, ox_case *c) {
  c->technique.timing = (ox_timing)ox_random_below(r, 2);
  c->technique.clock = (ox_clock)ox_random_below(r, 3);
  c->technique.drift = (ox_drift)ox_random_below(r, 6);
  c->technique.outbound = (ox_outbound)ox_random_below(r, 4);
  c->technique.intercept_deg = ox_random_between(r, 5, 90);
  c->technique.entry = (ox_entry_order)ox_random_below(r, 4);
  c->technique.sector = (ox_sector)ox_random_below(r, 2);
  c->technique.entry_s = ox_random_below(r, 2) ? 60 : ox_random_between(r, 10, 300);
  c->technique.roll_s = ox_random_below(r, 2) ? 0 : ox_random_between(r, 0, 15);
  c->technique.circuits = 1 + ox_random_below(r, 3);
  c->technique.reaction_s = ox_random_below(r, 3) ? 0 : ox_random_between(r, 0, 10);
  c->technique.entry_line = (ox_entry_line)ox_random_below(r, 2);
  c->technique.lead = ox_random_below(r, 4) ? OX_LEAD_EXACT : (ox_lead)ox_random_below(r, 3);
  c->technique.lead_deg = ox_random_between(r, 0.5, 30);
  c->aircraft.turn_by = (ox_turn_by)(ox_random_below(r, 4) == 0);
}

ox_case ox_random_case(ox_random *r, double wind_share) {
  ox_case c = ox_case_default();
  random_hold(r, &c);
  random_aircraft(r, &c);
  random_wind(r, &c, wind_share);
  random_technique(r, &c);
  c.arrival.heading_deg = circle(r);
  c.arrival.distance_nm = ox_random_below(r, 5) == 0 ? 0 : ox_random_between(r, 0, 30);
  return c;
}

ox_case ox_mirrored_case(const ox_case *c) {
  ox_case m = *c;
  m.hold.inbound_deg = to_circle(-c->hold.inbound_deg);
  m.hold.turns = c->hold.turns == OX_TURNS_RIGHT ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
  m.arrival.heading_deg = to_circle(-c->arrival.heading_deg);
  m.variation_deg = -c->variation_deg;
  m.hold.station.radial_deg = to_circle(-c->hold.station.radial_deg);
  if (c->hold.station.limiting_radial_deg > 0)
    m.hold.station.limiting_radial_deg = 360 - c->hold.station.limiting_radial_deg;
  for (int i = 0; i < c->wind_count; i++) m.wind[i].from_deg = to_circle(-c->wind[i].from_deg);
  return m;
}

ox_case ox_rotated_case(const ox_case *c, double by_deg) {
  ox_case turned = *c;
  turned.hold.inbound_deg = to_circle(c->hold.inbound_deg + by_deg);
  turned.arrival.heading_deg = to_circle(c->arrival.heading_deg + by_deg);
  turned.hold.station.radial_deg = to_circle(c->hold.station.radial_deg + by_deg);
  if (c->hold.station.limiting_radial_deg > 0)
    turned.hold.station.limiting_radial_deg = to_circle(c->hold.station.limiting_radial_deg + by_deg);
  for (int i = 0; i < c->wind_count; i++)
    turned.wind[i].from_deg = to_circle(c->wind[i].from_deg + by_deg);
  return turned;
}

void ox_case_to_line(const ox_case *c, char *buf, size_t bytes) {
  const ox_wind_row *w = &c->wind[0];
  snprintf(buf, bytes,
           "inbound %.17g turns %d leg by %d %.17g s %.17g nm end %d alt %.17g; arrival %.17g at "
           "%.17g; ias %.17g tas %.17g dev %.17g rate %.17g bank %.17g; %d wind %.17g/%.17g north "
           "%d var %.17g; timing %d clock %d drift %d outbound %d intercept %.17g entry %d sector "
           "%d entry_s %.17g roll %.17g circuits %d; ends %d climb %.17g at %.17g by bank %d line %d "
           "reaction %.17g lead %d station %d %.17g/%.17g %.17g ft "
           "limit %.17g at %d lead %.17g",
           c->hold.inbound_deg, (int)c->hold.turns, (int)c->hold.leg_by, c->hold.leg_s,
           c->hold.leg_nm, (int)c->hold.leg_end, c->hold.altitude_ft, c->arrival.heading_deg,
           c->arrival.distance_nm, c->aircraft.ias_kt, c->aircraft.tas_kt, c->aircraft.isa_dev_c,
           c->aircraft.rate_deg_s, c->aircraft.max_bank_deg, c->wind_count, w->from_deg, w->kt,
           (int)w->north, c->variation_deg, (int)c->technique.timing, (int)c->technique.clock,
           (int)c->technique.drift, (int)c->technique.outbound, c->technique.intercept_deg,
           (int)c->technique.entry, (int)c->technique.sector, c->technique.entry_s,
           c->technique.roll_s, c->technique.circuits, (int)c->hold.ends, c->hold.climb_to_ft,
           c->hold.climb_ft_min, (int)c->aircraft.turn_by, (int)c->technique.entry_line,
           c->technique.reaction_s, (int)c->technique.lead, (int)c->hold.station.given,
           c->hold.station.radial_deg, c->hold.station.nm, c->hold.station.elevation_ft,
           c->hold.station.limiting_radial_deg, (int)c->technique.at_radial, c->technique.lead_deg);
}
