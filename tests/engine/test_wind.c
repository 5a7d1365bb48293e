/* Wind and the triangle of velocities. Published numbers stand beside their source; F read in a
 * copy of the document, C computed here. */
#include "ox_test.h"
#include "oxbow/units.h"
#include "oxbow/wind.h"

static void wind_is_named_by_where_it_comes_from(void **state) {
  static const struct {
    double from, kt, x, y;
  } rows[] = {{360, 20, 0, -20}, {0, 20, 0, -20}, {90, 20, -20, 0}, {180, 7, 0, 7},
              {270, 30, 30, 0},  {45, 0, 0, 0}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_vec w = ox_wind_velocity_kt(rows[i].from, rows[i].kt);
    assert_close(w.x, rows[i].x, 0, "to the east");
    assert_close(w.y, rows[i].y, 0, "to the north");
  }
}

/* Crab and ground speed of the steady-hold rows W2 to W18 (C, general mathematics). */
static const struct {
  double tas, from, kt, course, wca, gs;
} triangles[] = {
    {120, 360, 10, 360, 0, 110.0},      {120, 360, 20, 360, 0, 100.0},
    {120, 180, 10, 360, 0, 130.0},      {120, 180, 20, 360, 0, 140.0},
    {120, 90, 10, 360, 4.78, 119.58},   {120, 90, 20, 360, 9.59, 118.32},
    {120, 90, 30, 360, 14.48, 116.19},  {120, 270, 20, 360, -9.59, 118.32},
    {120, 45, 20, 360, 6.77, 105.02},   {120, 135, 20, 360, 6.77, 133.31},
    {120, 30, 25, 270, 10.39, 130.53},  {150, 90, 20, 360, 7.66, 148.66},
    {90, 90, 20, 360, 12.84, 87.75},    {180, 90, 30, 360, 9.59, 177.48},
    {100, 60, 18, 330, 10.37, 98.37},   {150, 310, 35, 45, -13.44, 148.94},
};

static void the_triangle_gives_the_tabled_crab_and_ground_speed(void **state) {
  for (size_t i = 0; i < sizeof triangles / sizeof *triangles; i++) {
    ox_triangle t =
        ox_triangle_for_course(triangles[i].course, triangles[i].tas,
                               ox_wind_velocity_kt(triangles[i].from, triangles[i].kt));
    assert_true(t.possible);
    assert_close(t.wca_deg, triangles[i].wca, 0.005 + 1e-9, "correction");
    assert_close(t.gs_kt, triangles[i].gs, 0.005 + 1e-9, "ground speed");
    assert_angle_close(t.heading_deg, triangles[i].course + t.wca_deg, 1e-12, "heading");
  }
}

/* Crab = crosswind / (TAS in NM a minute): 5 kt at 180 KTAS is about 2 degrees.
 * CNATRA P-869 ch. 5 (F). */
static void five_knots_across_at_180_is_about_two_degrees(void **state) {
  ox_triangle t = ox_triangle_for_course(360, 180, ox_wind_velocity_kt(90, 5));
  assert_close(t.wca_deg, 5.0 / (180.0 / 60.0), 0.1, "rule");
  assert_int_equal(lround(t.wca_deg), 2);
}

/* Inbound 090, heading 090, wind from the right (south): the aircraft drifts north.
 * CNATRA P-801 Fig 32 (F). */
static void wind_from_the_right_drifts_the_aircraft_left(void **state) {
  ox_made_good m = ox_made_good_on(90, 120, ox_wind_velocity_kt(180, 20));
  assert_true(m.drift_deg < 0);
  assert_true(m.track_deg < 90);
  assert_close(m.drift_deg, -atan2(20, 120) / OX_RAD_PER_DEG, 1e-12, "drift");
  assert_close(m.gs_kt, hypot(20, 120), 1e-12, "ground speed");
}

/* 6 NM in one minute is 360 kt: P-1265 p. 2-13 (F); here as 330 kt with 30 on the tail. */
static void a_tailwind_adds_and_a_headwind_subtracts(void **state) {
  assert_close(ox_made_good_on(40, 330, ox_wind_velocity_kt(220, 30)).gs_kt, 360, 1e-10, "tail");
  assert_close(ox_made_good_on(40, 330, ox_wind_velocity_kt(40, 30)).gs_kt, 300, 1e-10, "head");
  ox_triangle t = ox_triangle_for_course(40, 330, ox_wind_velocity_kt(40, 30));
  assert_close(t.along_kt, -30, 1e-12, "along");
  assert_close(t.cross_kt, 0, 1e-12, "across");
}

static void the_wind_across_is_positive_from_the_left(void **state) {
  ox_triangle t = ox_triangle_for_course(360, 100, ox_wind_velocity_kt(270, 25));
  assert_close(t.cross_kt, 25, 0, "from the left");
  assert_true(t.wca_deg < 0);
  t = ox_triangle_for_course(360, 100, ox_wind_velocity_kt(90, 25));
  assert_close(t.cross_kt, -25, 0, "from the right");
  assert_true(t.wca_deg > 0);
}

static void no_heading_holds_a_course_when_the_wind_across_is_the_airspeed(void **state) {
  static const struct {
    double kt;
    bool possible;
  } rows[] = {{99.999999, true}, {100, false}, {100.000001, false}, {250, false}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    for (double from = 90; from <= 270; from += 180) {
      ox_triangle t = ox_triangle_for_course(360, 100, ox_wind_velocity_kt(from, rows[i].kt));
      assert_int_equal(t.possible, rows[i].possible);
      assert_true(isfinite(t.heading_deg) && isfinite(t.wca_deg) && isfinite(t.gs_kt));
      assert_close(fabs(t.cross_kt), rows[i].kt, 1e-12, "across");
    }
}

static void a_headwind_above_the_airspeed_gives_a_negative_ground_speed(void **state) {
  ox_triangle t = ox_triangle_for_course(360, 100, ox_wind_velocity_kt(360, 130));
  assert_true(t.possible);
  assert_close(t.gs_kt, -30, 1e-12, "backwards");
  t = ox_triangle_for_course(360, 100, ox_wind_velocity_kt(360, 100));
  assert_close(t.gs_kt, 0, 1e-12, "standing");
}

static void flying_the_heading_makes_good_the_course(void **state) {
  ox_random r = {21};
  for (int i = 0; i < 50000; i++) {
    double course = ox_random_between(&r, 0, 360), tas = ox_random_between(&r, 30, 600);
    ox_vec wind = ox_wind_velocity_kt(ox_random_between(&r, 0, 360),
                                      tas * ox_random_between(&r, 0, 0.95));
    ox_triangle t = ox_triangle_for_course(course, tas, wind);
    assert_true(t.possible && t.gs_kt > 0);
    assert_true(t.heading_deg >= 0 && t.heading_deg < 360);
    ox_made_good m = ox_made_good_on(t.heading_deg, tas, wind);
    assert_angle_close(m.track_deg, course, 1e-9, "track");
    assert_close(m.gs_kt, t.gs_kt, 1e-9 * tas, "ground speed");
    assert_close(m.drift_deg, -t.wca_deg, 1e-9, "drift undoes the correction");
    assert_close(hypot(t.along_kt, t.cross_kt), ox_vec_length(wind), 1e-9 * tas, "components");
  }
}

static void drift_is_within_half_a_turn_in_any_wind(void **state) {
  ox_random r = {22};
  for (int i = 0; i < 20000; i++) {
    double tas = ox_random_between(&r, 30, 600);
    ox_made_good m = ox_made_good_on(ox_random_between(&r, 0, 360), tas,
                                     ox_wind_velocity_kt(ox_random_between(&r, 0, 360),
                                                         tas * ox_random_between(&r, 0, 3)));
    assert_true(m.drift_deg > -180 && m.drift_deg <= 180);
    assert_true(m.track_deg >= 0 && m.track_deg < 360);
    assert_true(m.gs_kt >= 0);
  }
  ox_made_good standing = ox_made_good_on(360, 100, ox_wind_velocity_kt(360, 100));
  assert_close(standing.gs_kt, 0, 0, "no way over the ground");
  assert_true(isfinite(standing.track_deg) && isfinite(standing.drift_deg));
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(wind_is_named_by_where_it_comes_from),
      cmocka_unit_test(the_triangle_gives_the_tabled_crab_and_ground_speed),
      cmocka_unit_test(five_knots_across_at_180_is_about_two_degrees),
      cmocka_unit_test(wind_from_the_right_drifts_the_aircraft_left),
      cmocka_unit_test(a_tailwind_adds_and_a_headwind_subtracts),
      cmocka_unit_test(the_wind_across_is_positive_from_the_left),
      cmocka_unit_test(no_heading_holds_a_course_when_the_wind_across_is_the_airspeed),
      cmocka_unit_test(a_headwind_above_the_airspeed_gives_a_negative_ground_speed),
      cmocka_unit_test(flying_the_heading_makes_good_the_course),
      cmocka_unit_test(drift_is_within_half_a_turn_in_any_wind),
  };
  return cmocka_run_group_tests_name("wind", tests, NULL, NULL);
}
