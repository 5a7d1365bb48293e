/* One leg of flight: positions and states against formulas written out here, and the still-air
 * geometry of the teardrop. */
#include "ox_test.h"
#include "oxbow/leg.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"

/* A leg with its end written by the formulas of this file, not by the engine's. */
static ox_leg make_leg(ox_vec from, double heading, double rate, double s, double tas, ox_vec w) {
  ox_leg leg = {.kind = OX_LEG_OUTBOUND, .part = OX_PART_CIRCUIT, .circuit = 1};
  leg.shape = rate == 0 ? OX_SHAPE_STRAIGHT : OX_SHAPE_TURN;
  leg.t0_s = 100;
  leg.t1_s = 100 + s;
  leg.p0_nm = from;
  leg.heading0_true_deg = heading;
  leg.heading1_true_deg = ox_norm360_deg(heading + rate * s);
  leg.rate_deg_s = rate;
  leg.tas_kt = tas;
  leg.wind_kt = w;
  double h = s / OX_S_PER_H, a = heading * OX_RAD_PER_DEG;
  double b = (heading + rate * s) * OX_RAD_PER_DEG;
  double air_x = tas * h * sin(a), air_y = tas * h * cos(a);
  if (rate != 0) {
    double v_over_omega = tas / OX_S_PER_H / (rate * OX_RAD_PER_DEG);
    air_x = v_over_omega * (cos(a) - cos(b));
    air_y = v_over_omega * (sin(b) - sin(a));
  }
  leg.p1_nm = (ox_vec){from.x + air_x + w.x * h, from.y + air_y + w.y * h};
  return leg;
}

static ox_leg random_leg(ox_random *r) {
  double rate = ox_random_below(r, 3) == 0 ? 0 : ox_random_between(r, -6, 6);
  double tas = ox_random_between(r, 30, 600);
  ox_vec from = {ox_random_between(r, -20, 20), ox_random_between(r, -20, 20)};
  ox_vec wind = ox_wind_velocity_kt(ox_random_between(r, 0, 360),
                                    tas * ox_random_between(r, 0, 1.2));
  double most_s = rate == 0 ? 900 : 359 / fabs(rate);
  return make_leg(from, ox_random_between(r, 0, 360), rate,
                  ox_random_between(r, 0.1, fmin(900, most_s)), tas, wind);
}

static void a_straight_leg_in_still_air_is_speed_times_time(void **state) {
  ox_leg leg = make_leg((ox_vec){1, 2}, 90, 0, 60, 120, (ox_vec){0, 0});
  ox_state end = ox_leg_at(&leg, 160), half = ox_leg_at(&leg, 130);
  assert_close(end.p_nm.x, 3, 1e-12, "east");
  assert_close(end.p_nm.y, 2, 1e-12, "north");
  assert_close(half.p_nm.x, 2, 1e-12, "half way");
  assert_close(end.gs_kt, 120, 1e-12, "ground speed");
  assert_angle_close(end.track_true_deg, 90, 1e-12, "track");
  assert_close(end.drift_deg, 0, 1e-12, "drift");
}

static void half_a_turn_in_still_air_ends_two_radii_abeam(void **state) {
  double radius = 120.0 / 3600 * 60 / OX_PI; /* V t / pi with t the minute of half a turn */
  ox_leg right = make_leg((ox_vec){0, 0}, 0, 3, 60, 120, (ox_vec){0, 0});
  ox_leg left = make_leg((ox_vec){0, 0}, 0, -3, 60, 120, (ox_vec){0, 0});
  assert_close(ox_leg_position(&right, 160).x, 2 * radius, 1e-12, "right");
  assert_close(ox_leg_position(&left, 160).x, -2 * radius, 1e-12, "left");
  assert_close(ox_leg_position(&right, 160).y, 0, 1e-12, "abeam");
  assert_close(ox_leg_position(&right, 130).x, radius, 1e-12, "quarter turn");
  assert_close(ox_leg_position(&right, 130).y, radius, 1e-12, "quarter turn");
  assert_angle_close(ox_leg_at(&right, 160).heading_true_deg, 180, 1e-12, "heading");
  assert_angle_close(ox_leg_at(&left, 130).heading_true_deg, 270, 1e-12, "heading");
}

static void random_legs_follow_the_formula_at_every_instant(void **state) {
  ox_random r = {71};
  for (int i = 0; i < 40000; i++) {
    ox_leg leg = random_leg(&r);
    double s = ox_random_between(&r, 0, 1) * (leg.t1_s - leg.t0_s);
    ox_leg part = make_leg(leg.p0_nm, leg.heading0_true_deg, leg.rate_deg_s, s, leg.tas_kt,
                           leg.wind_kt);
    /* The formula of this file cancels for slow turns: V/omega grows as the rate falls. */
    double near = 1e-10 + 1e-14 / fmax(fabs(leg.rate_deg_s), 1e-9) * leg.tas_kt;
    if (leg.rate_deg_s == 0) near = 1e-10;
    ox_state at = ox_leg_at(&leg, leg.t0_s + s);
    assert_close(at.p_nm.x, part.p1_nm.x, near, "east");
    assert_close(at.p_nm.y, part.p1_nm.y, near, "north");
    assert_angle_close(at.heading_true_deg, part.heading1_true_deg, 1e-9, "heading");
    assert_true(at.heading_true_deg >= 0 && at.heading_true_deg < 360);
    ox_vec p = ox_leg_position(&leg, leg.t0_s + s);
    assert_close(p.x, at.p_nm.x, 1e-12, "position alone");
    assert_close(p.y, at.p_nm.y, 1e-12, "position alone");
  }
}

static void the_state_is_the_triangle_of_velocities(void **state) {
  ox_random r = {72};
  for (int i = 0; i < 40000; i++) {
    ox_leg leg = random_leg(&r);
    ox_state at = ox_leg_at(&leg, ox_random_between(&r, leg.t0_s, leg.t1_s));
    double h = at.heading_true_deg * OX_RAD_PER_DEG, t = at.track_true_deg * OX_RAD_PER_DEG;
    assert_close(at.gs_kt * sin(t), leg.tas_kt * sin(h) + leg.wind_kt.x, 1e-9, "east speed");
    assert_close(at.gs_kt * cos(t), leg.tas_kt * cos(h) + leg.wind_kt.y, 1e-9, "north speed");
    assert_angle_close(at.heading_true_deg + at.drift_deg, at.track_true_deg, 1e-9, "drift");
    assert_true(at.gs_kt >= 0 && at.track_true_deg >= 0 && at.track_true_deg < 360);
  }
}

static void times_outside_the_leg_are_clamped_to_it(void **state) {
  ox_random r = {73};
  for (int i = 0; i < 2000; i++) {
    ox_leg leg = random_leg(&r);
    ox_state before = ox_leg_at(&leg, leg.t0_s - 1000), after = ox_leg_at(&leg, leg.t1_s + 1e9);
    assert_close(before.p_nm.x, leg.p0_nm.x, 0, "before");
    assert_close(before.p_nm.y, leg.p0_nm.y, 0, "before");
    assert_angle_close(before.heading_true_deg, leg.heading0_true_deg, 1e-12, "before");
    assert_close(after.p_nm.x, leg.p1_nm.x, 1e-8, "after");
    assert_close(after.p_nm.y, leg.p1_nm.y, 1e-8, "after");
    assert_angle_close(after.heading_true_deg, leg.heading1_true_deg, 1e-9, "after");
  }
}

static void a_leg_of_no_length_is_one_point(void **state) {
  ox_leg leg = make_leg((ox_vec){3, -4}, 359.9999, 3, 0, 120, (ox_vec){20, 0});
  ox_state at = ox_leg_at(&leg, leg.t0_s);
  assert_close(at.p_nm.x, 3, 0, "east");
  assert_close(at.p_nm.y, -4, 0, "north");
  assert_angle_close(at.heading_true_deg, 359.9999, 1e-12, "heading");
  assert_true(isfinite(at.gs_kt) && isfinite(at.track_true_deg) && isfinite(at.drift_deg));
}

static void a_turn_is_carried_by_the_wind_and_nothing_else(void **state) {
  ox_vec wind = {-20, 10};
  ox_leg calm = make_leg((ox_vec){0, 0}, 30, 3, 100, 120, (ox_vec){0, 0});
  ox_leg windy = make_leg((ox_vec){0, 0}, 30, 3, 100, 120, wind);
  for (double t = 100; t <= 200; t += 2.5) {
    ox_vec a = ox_leg_position(&calm, t), b = ox_leg_position(&windy, t);
    assert_close(b.x - a.x, wind.x * (t - 100) / 3600, 1e-12, "carried east");
    assert_close(b.y - a.y, wind.y * (t - 100) / 3600, 1e-12, "carried north");
  }
}

/* Where a teardrop of an angle and a time rolls out on the inbound heading, in still air with rate
 * one, inbound 360, right turns: east (the holding side) of the course is positive. */
static double teardrop_miss_nm(double tas, double angle, double s) {
  ox_leg out = make_leg((ox_vec){0, 0}, 180 - angle, 0, s, tas, (ox_vec){0, 0});
  ox_leg turn = make_leg(ox_leg_position(&out, out.t1_s), 180 - angle, 3, (180 + angle) / 3, tas,
                         (ox_vec){0, 0});
  assert_angle_close(ox_leg_at(&turn, turn.t1_s).heading_true_deg, 0, 1e-9, "inbound heading");
  return ox_leg_position(&turn, turn.t1_s).x;
}

/* 30 degrees for a minute, then rate one through 210 degrees: crosses the course by 0.001566 V:
 * 0.141 NM at 90 kt, 0.157 at 100, 0.188 at 120, 0.235 at 150 (C). */
static void a_one_minute_teardrop_overshoots_by_the_tabled_miss(void **state) {
  static const struct {
    double tas, miss;
  } rows[] = {{90, 0.141}, {100, 0.157}, {120, 0.188}, {150, 0.235}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    double miss = -teardrop_miss_nm(rows[i].tas, 30, 60);
    assert_close(miss, rows[i].miss, 0.00051, "printed");
    assert_close(miss, 0.001566 * rows[i].tas, 5.1e-7 * rows[i].tas, "0.001566 V");
  }
}

/* Tangent roll-out: 71.28 s at 30 degrees, or 35.31 degrees (2 atan(1/pi)) for 60 s (C). */
static void a_teardrop_is_tangent_after_71_seconds_or_at_35_degrees(void **state) {
  for (double tas = 80; tas <= 300; tas += 20) {
    assert_close(teardrop_miss_nm(tas, 30, 71.28), 0, 0.0051 * tas / 3600 * 0.5, "71.28 s");
    assert_close(teardrop_miss_nm(tas, 2 * atan(1 / OX_PI) / OX_RAD_PER_DEG, 60), 0, 1e-10 * tas,
                 "2 atan(1/pi)");
  }
  assert_close(2 * atan(1 / OX_PI) / OX_RAD_PER_DEG, 35.31, 0.0051, "35.31 degrees");
}

/* Gate angle: bearing of the still-air outbound end from the fix, timed from abeam:
 * 60 s 32.48, 90 s 23.00, 120 s 17.66, 180 s 11.98 degrees from the outbound course (C; the UK
 * note's 30-degree gate for one minute, f). */
static void the_outbound_end_is_seen_at_the_gate_angle(void **state) {
  static const struct {
    double s, gate;
  } rows[] = {{60, 32.48}, {90, 23.00}, {120, 17.66}, {180, 11.98}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_leg turn = make_leg((ox_vec){0, 0}, 0, 3, 60, 120, (ox_vec){0, 0});
    ox_leg out = make_leg(ox_leg_position(&turn, turn.t1_s), 180, 0, rows[i].s, 120,
                          (ox_vec){0, 0});
    ox_vec end = ox_leg_position(&out, out.t1_s);
    assert_close(180 - ox_bearing_deg(end), rows[i].gate, 0.0051, "gate");
  }
}

static void every_kind_of_leg_has_its_own_name(void **state) {
  for (int a = 0; a < OX_LEG_KIND_COUNT; a++) {
    assert_true(strlen(ox_leg_name((ox_leg_kind)a)) > 0);
    for (int b = 0; b < a; b++)
      assert_string_not_equal(ox_leg_name((ox_leg_kind)a), ox_leg_name((ox_leg_kind)b));
  }
  assert_string_equal(ox_leg_name(OX_LEG_ARRIVAL), "arrival");
  assert_string_equal(ox_leg_name(OX_LEG_ENTRY_TURN), "entry turn");
  assert_string_equal(ox_leg_name(OX_LEG_OUTBOUND_TURN), "outbound turn");
  assert_non_null(ox_leg_name(OX_LEG_KIND_COUNT));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_straight_leg_in_still_air_is_speed_times_time),
      cmocka_unit_test(half_a_turn_in_still_air_ends_two_radii_abeam),
      cmocka_unit_test(random_legs_follow_the_formula_at_every_instant),
      cmocka_unit_test(the_state_is_the_triangle_of_velocities),
      cmocka_unit_test(times_outside_the_leg_are_clamped_to_it),
      cmocka_unit_test(a_leg_of_no_length_is_one_point),
      cmocka_unit_test(a_turn_is_carried_by_the_wind_and_nothing_else),
      cmocka_unit_test(a_one_minute_teardrop_overshoots_by_the_tabled_miss),
      cmocka_unit_test(a_teardrop_is_tangent_after_71_seconds_or_at_35_degrees),
      cmocka_unit_test(the_outbound_end_is_seen_at_the_gate_angle),
      cmocka_unit_test(every_kind_of_leg_has_its_own_name),
  };
  return cmocka_run_group_tests_name("leg", tests, NULL, NULL);
}
