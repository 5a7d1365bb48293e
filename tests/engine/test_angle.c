/* Degrees, bearings and plane vectors: the ground everything else stands on. The tables are
 * plain arithmetic of the circle; what matters is the edges (-0, 360, just below 360). */
#include "ox_test.h"
#include "oxbow/angle.h"
#include "oxbow/units.h"

static void norm360_maps_any_angle_into_the_circle(void **state) {
  static const struct {
    double in, out;
  } rows[] = {
      {0, 0},         {359.9999, 359.9999}, {360, 0},    {360.5, 0.5}, {720, 0},
      {-360, 0},      {-0.25, 359.75},      {-90, 270},  {-720, 0},    {539, 179},
      {-180, 180},    {1e6 + 40, 320},      {-1080, 0},  {45, 45},     {360.0 * 1e9, 0},
      {270.5, 270.5}, {180, 180},           {3600, 0},   {-1, 359},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(ox_norm360_deg(rows[i].in), rows[i].out, 0, "norm360");
}

static void norm360_never_returns_360_or_minus_zero(void **state) {
  static const double hard[] = {-0.0,     -1e-20, -1e-300, -5e-324, -1e-14, -360.0,
                                -720.0,   360.0,  1e-300,  1e300,   -1e300, 359.99999999999997,
                                -1e-13,   0x1.0p1023, -0x1.0p1023};
  for (size_t i = 0; i < sizeof hard / sizeof *hard; i++) {
    double got = ox_norm360_deg(hard[i]);
    assert_true(got >= 0 && got < 360);
    assert_false(signbit(got));
  }
}

static void norm180_maps_any_angle_into_the_half_open_circle(void **state) {
  static const struct {
    double in, out;
  } rows[] = {
      {0, 0},     {180, 180},   {-180, 180},  {181, -179}, {-181, 179},  {360, 0},
      {540, 180}, {-540, 180},  {359, -1},    {-359, 1},   {179.5, 179.5}, {-179.5, -179.5},
      {720, 0},   {1e6 + 40, -40}, {-90, -90}, {270, -90},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(ox_norm180_deg(rows[i].in), rows[i].out, 0, "norm180");
}

static void the_turn_between_bearings_is_the_short_way(void **state) {
  static const struct {
    double from, to, turn;
  } rows[] = {
      {350, 10, 20}, {10, 350, -20}, {0, 180, 180},   {180, 0, 180}, {90, 270, 180},
      {360, 0, 0},   {0, 360, 0},    {359.5, 0.5, 1}, {45, 225, 180}, {100, 99, -1},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(ox_turn_between_deg(rows[i].from, rows[i].to), rows[i].turn, 0, "turn between");
}

static void a_turn_in_a_sense_goes_all_the_way_round_if_it_must(void **state) {
  static const struct {
    double from, to;
    int sense;
    double turn;
  } rows[] = {
      {350, 10, +1, 20}, {350, 10, -1, 340}, {10, 350, +1, 340}, {10, 350, -1, 20},
      {0, 180, +1, 180}, {0, 180, -1, 180},  {90, 90, +1, 0},    {90, 90, -1, 0},
      {0, 360, +1, 0},   {360, 0, -1, 0},    {30, 29, +1, 359},  {29, 30, -1, 359},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(ox_turn_in_sense_deg(rows[i].from, rows[i].to, rows[i].sense), rows[i].turn, 0,
                 "turn in sense");
}

static void a_turn_in_a_sense_is_never_negative_nor_full(void **state) {
  ox_random r = {11};
  for (int i = 0; i < 20000; i++) {
    double from = ox_random_between(&r, -720, 720);
    double to = i % 2 ? ox_random_between(&r, -720, 720) : nextafter(from, i % 4 ? -1e9 : 1e9);
    for (int sense = -1; sense <= 1; sense += 2) {
      double turn = ox_turn_in_sense_deg(from, to, sense);
      assert_true(turn >= 0 && turn < 360);
      assert_angle_close(from + sense * turn, to, 1e-9, "where the turn ends");
    }
  }
}

static void sines_are_exact_at_quarter_turns(void **state) {
  static const double sines[4] = {0, 1, 0, -1}, cosines[4] = {1, 0, -1, 0};
  for (int quarter = -4000; quarter <= 4000; quarter++) {
    double s = 9, c = 9;
    ox_sincos_deg(90.0 * quarter, &s, &c);
    int i = ((quarter % 4) + 4) % 4;
    assert_true(s == sines[i]);
    assert_true(c == cosines[i]);
  }
}

static void sines_agree_with_the_library_in_the_first_turn(void **state) {
  ox_random r = {12};
  for (int i = 0; i < 20000; i++) {
    double a = ox_random_between(&r, -360, 360), s, c;
    ox_sincos_deg(a, &s, &c);
    assert_close(s, sin(a * OX_RAD_PER_DEG), 2e-15, "sine");
    assert_close(c, cos(a * OX_RAD_PER_DEG), 2e-15, "cosine");
    assert_close(s * s + c * c, 1, 4e-16, "sine and cosine squared");
  }
}

static void sines_stay_sines_for_huge_angles(void **state) {
  static const double huge[] = {1e9, -1e12, 1e18, 1e300, -1.7e308};
  for (size_t i = 0; i < sizeof huge / sizeof *huge; i++) {
    double s, c;
    ox_sincos_deg(huge[i], &s, &c);
    assert_close(s * s + c * c, 1, 4e-16, "sine and cosine squared");
  }
}

static void a_unit_vector_points_along_its_bearing(void **state) {
  static const struct {
    double bearing, x, y;
  } rows[] = {{0, 0, 1}, {90, 1, 0}, {180, 0, -1}, {270, -1, 0}, {360, 0, 1}, {-90, -1, 0}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_vec u = ox_unit(rows[i].bearing);
    assert_true(u.x == rows[i].x && u.y == rows[i].y);
  }
  ox_vec u = ox_unit(30);
  assert_close(u.x, 0.5, 1e-15, "east of 030");
  assert_close(u.y, sqrt(3) / 2, 1e-15, "north of 030");
}

static void the_bearing_of_a_vector_undoes_the_unit_vector(void **state) {
  ox_random r = {13};
  for (int i = 0; i < 20000; i++) {
    double bearing = ox_random_between(&r, 0, 360);
    ox_vec v = ox_vec_scale(ox_unit(bearing), ox_random_between(&r, 1e-6, 1e6));
    double got = ox_bearing_deg(v);
    assert_true(got >= 0 && got < 360);
    assert_angle_close(got, bearing, 1e-12, "bearing");
  }
}

static void bearings_of_hard_vectors_stay_in_the_circle(void **state) {
  static const struct {
    ox_vec v;
    double bearing;
  } rows[] = {{{0, 0}, 0},   {{-0.0, -0.0}, 0}, {{-0.0, 1}, 0},   {{1, -0.0}, 90},
              {{0, -1}, 180}, {{-1, 0}, 270},    {{-1, -0.0}, 270}, {{-0.0, -2}, 180}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    double got = ox_bearing_deg(rows[i].v);
    assert_close(got, rows[i].bearing, 0, "bearing");
    assert_false(signbit(got));
  }
  double just_west = ox_bearing_deg((ox_vec){-1e-300, 1});
  assert_true(just_west >= 0 && just_west < 360);
}

static void vector_arithmetic_is_the_usual_one(void **state) {
  ox_vec a = {3, 4}, b = {-4, 3};
  ox_vec sum = ox_vec_add(a, b), difference = ox_vec_sub(a, b), twice = ox_vec_scale(a, 2);
  assert_true(sum.x == -1 && sum.y == 7);
  assert_true(difference.x == 7 && difference.y == 1);
  assert_true(twice.x == 6 && twice.y == 8);
  assert_true(ox_vec_dot(a, b) == 0);
  assert_true(ox_vec_length(a) == 5);
  assert_true(ox_vec_length((ox_vec){0, 0}) == 0);
}

static void the_cross_product_is_positive_to_the_left(void **state) {
  ox_vec north = {0, 1}, west = {-1, 0}, east = {1, 0};
  assert_true(ox_vec_cross(north, west) == 1);
  assert_true(ox_vec_cross(north, east) == -1);
  assert_true(ox_vec_cross(north, north) == 0);
}

/* AIM 4-2-10: directions as three figures of magnetic bearing; north is spoken 360. */
static void shown_bearings_are_1_to_360(void **state) {
  static const struct {
    double bearing;
    int shown;
  } rows[] = {
      {0, 360},      {-0.0, 360},  {360, 360},  {0.2, 360},  {359.6, 360}, {359.4, 359},
      {0.4999, 360}, {0.6, 1},     {1, 1},      {89.7, 90},  {90.4, 90},   {180, 180},
      {720, 360},    {-1, 359},    {-0.3, 360}, {361, 1},    {359.9999, 360}, {7, 7},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_int_equal(ox_shown_deg(rows[i].bearing), rows[i].shown);
  for (double bearing = -800; bearing < 800; bearing += 0.0625) {
    int shown = ox_shown_deg(bearing);
    assert_in_range(shown, 1, 360);
    assert_true(fabs(ox_norm180_deg(shown - bearing)) <= 0.5);
  }
}

/* East is least: magnetic = true - easterly variation. */
static void easterly_variation_makes_magnetic_less(void **state) {
  static const struct {
    double true_deg, variation, magnetic;
  } rows[] = {{100, 10, 90}, {100, -10, 110}, {5, 10, 355}, {355, -10, 5},
              {360, 0, 0},   {0, 180, 180},   {10, -180, 190}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    assert_close(ox_magnetic_deg(rows[i].true_deg, rows[i].variation), rows[i].magnetic, 0,
                 "magnetic");
    assert_angle_close(ox_true_deg(rows[i].magnetic, rows[i].variation), rows[i].true_deg, 0,
                       "true");
  }
}

static void true_and_magnetic_undo_each_other(void **state) {
  ox_random r = {14};
  for (int i = 0; i < 20000; i++) {
    double bearing = ox_random_between(&r, 0, 360), variation = ox_random_between(&r, -180, 180);
    double magnetic = ox_magnetic_deg(bearing, variation);
    assert_true(magnetic >= 0 && magnetic < 360);
    assert_angle_close(ox_true_deg(magnetic, variation), bearing, 1e-12, "there and back");
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(norm360_maps_any_angle_into_the_circle),
      cmocka_unit_test(norm360_never_returns_360_or_minus_zero),
      cmocka_unit_test(norm180_maps_any_angle_into_the_half_open_circle),
      cmocka_unit_test(the_turn_between_bearings_is_the_short_way),
      cmocka_unit_test(a_turn_in_a_sense_goes_all_the_way_round_if_it_must),
      cmocka_unit_test(a_turn_in_a_sense_is_never_negative_nor_full),
      cmocka_unit_test(sines_are_exact_at_quarter_turns),
      cmocka_unit_test(sines_agree_with_the_library_in_the_first_turn),
      cmocka_unit_test(sines_stay_sines_for_huge_angles),
      cmocka_unit_test(a_unit_vector_points_along_its_bearing),
      cmocka_unit_test(the_bearing_of_a_vector_undoes_the_unit_vector),
      cmocka_unit_test(bearings_of_hard_vectors_stay_in_the_circle),
      cmocka_unit_test(vector_arithmetic_is_the_usual_one),
      cmocka_unit_test(the_cross_product_is_positive_to_the_left),
      cmocka_unit_test(shown_bearings_are_1_to_360),
      cmocka_unit_test(easterly_variation_makes_magnetic_less),
      cmocka_unit_test(true_and_magnetic_undo_each_other),
  };
  return cmocka_run_group_tests_name("angle", tests, NULL, NULL);
}
