/* Which entry. Rule: AIM 5-3-8 j3 with the sector sizes of CNATRA P-821 and P-801 (F). Rows tagged
 * F were read in the document, f in a secondary copy, M from memory, C derived here from the
 * published rule. An exact boundary belongs to both sectors: either answer is accepted there, and
 * the other must be named. */
#include "ox_test.h"
#include "oxbow/entry.h"
#include "oxbow/angle.h"

enum { R = +1, L = -1 };
enum { D = OX_ENTRY_DIRECT, P = OX_ENTRY_PARALLEL, T = OX_ENTRY_TEARDROP, NONE = OX_ENTRY_NONE };

typedef struct {
  int number; /* of the row in the list of tests */
  double inbound;
  int sense;
  double heading;
  int kind, also;
  bool boundary; /* exactly on it: kind and also may be swapped */
  const char *source;
} row;

static void check_row(const row *r) {
  ox_entry_choice choice = ox_entry_choose(r->inbound, r->sense, r->heading);
  int kind = (int)choice.kind, also = choice.also;
  bool swapped = r->boundary && kind == r->also && also == r->kind;
  if (!swapped && (kind != r->kind || also != r->also)) {
    print_error("row %d (%s): inbound %.4f %c heading %.4f: want %d also %d, got %d also %d\n",
                r->number, r->source, r->inbound, r->sense > 0 ? 'R' : 'L', r->heading, r->kind,
                r->also, kind, also);
    fail();
  }
  if (r->boundary) assert_close(choice.boundary_deg, 0, 0, "on the boundary");
}

static void check_rows(const row *rows, size_t count) {
  for (size_t i = 0; i < count; i++) check_row(&rows[i]);
}
#define CHECK_ROWS(rows) check_rows((rows), sizeof(rows) / sizeof *(rows))

static void published_single_headings_give_their_entry(void **state) {
  static const row rows[] = {
      {1, 10, R, 30, D, NONE, false, "question bank, f"},
      {8, 152, L, 10, T, NONE, false, "study card, f"},
      {13, 86, L, 350, D, NONE, false, "FAA question bank, M"},
  };
  CHECK_ROWS(rows);
}

/* Inbound 010, right: offset 120-190, parallel 190-300, direct 300-120 (question bank, f). */
static void published_ranges_hold_to_the_degree(void **state) {
  for (int heading = 0; heading < 360; heading++) {
    int kind = (int)ox_entry_choose(10, R, heading).kind;
    if (heading > 120 && heading < 190) assert_int_equal(kind, T);
    if (heading > 190 && heading < 300) assert_int_equal(kind, P);
    if (heading > 300 || heading < 120) assert_int_equal(kind, D);
  }
  static const row ends[] = {
      {2, 10, R, 120, D, T, true, "question bank, f"},
      {3, 10, R, 190, T, P, true, "question bank, f"},
      {4, 10, R, 300, D, P, true, "question bank, f"},
  };
  CHECK_ROWS(ends);
}

/* Row 5, published case: the holding radial 75 degrees right of the heading, standard turns:
 * teardrop or direct. P-821 (F). */
static void seventy_five_degrees_right_of_the_nose_is_teardrop_or_direct(void **state) {
  for (int inbound = 0; inbound < 360; inbound += 15) {
    ox_entry_choice choice = ox_entry_choose(inbound, R, inbound + 180 - 75);
    assert_int_equal(choice.kind, D);
    assert_int_equal(choice.also, T);
  }
}

/* Rows 6 and 7: the outbound course located from the heading. P-821, P-801, P-1204 (F). */
static void the_outbound_course_seen_from_the_heading_decides(void **state) {
  for (int right_of_nose = -179; right_of_nose <= 180; right_of_nose++)
    for (int sense = -1; sense <= 1; sense += 2) {
      int seen = sense * right_of_nose; /* a left pattern is the mirror image */
      int want = D;
      if (seen > 0 && seen < 70) want = T;
      if (seen < 0 && seen > -110) want = P;
      if (seen == 0 || seen == 70 || seen == -110) continue; /* boundaries: their own rows */
      double inbound = 227, heading = inbound + 180 - right_of_nose;
      assert_int_equal(ox_entry_choose(inbound, sense, heading).kind, want);
    }
}

/* Rows 14 to 47: derived from the published rule (C; rule F). */
static const row derived[] = {
    {14, 10, R, 150, T, NONE, false, "C"},  {15, 10, R, 189, T, P, false, "C"},
    {16, 10, R, 191, P, T, false, "C"},     {17, 10, R, 250, P, NONE, false, "C"},
    {18, 10, R, 299, P, D, false, "C"},     {19, 10, R, 301, D, P, false, "C"},
    {20, 10, R, 0, D, NONE, false, "C"},    {21, 10, R, 119, D, T, false, "C"},
    {22, 10, R, 121, T, D, false, "C"},     {23, 152, L, 330, P, T, false, "C"},
    {24, 152, L, 200, D, NONE, false, "C"}, {25, 86, L, 300, T, NONE, false, "C"},
    {26, 86, L, 200, P, NONE, false, "C"},  {27, 86, L, 80, D, NONE, false, "C"},
    {28, 270, R, 20, D, T, true, "C"},      {29, 270, R, 85, T, P, false, "C"},
    {30, 270, R, 205, D, P, false, "C"},    {31, 270, R, 130, P, NONE, false, "C"},
    {32, 270, R, 270, D, NONE, false, "C"}, {33, 360, R, 90, D, NONE, false, "C"},
    {34, 360, R, 110, D, T, true, "C"},     {35, 360, R, 180, T, P, true, "C"},
    {36, 360, R, 285, P, D, false, "C"},    {37, 360, R, 290, D, P, true, "C"},
    {38, 360, R, 295, D, P, false, "C"},    {39, 360, L, 270, D, NONE, false, "C"},
    {40, 360, L, 250, D, T, true, "C"},     {41, 360, L, 75, P, D, false, "C"},
    {42, 360, L, 65, D, P, false, "C"},     {43, 360, L, 180, T, P, true, "C"},
    {44, 225, R, 45, T, P, true, "C"},      {45, 225, R, 310, D, NONE, false, "C"},
    {46, 225, R, 160, D, P, false, "C"},    {47, 270, R, 200, D, P, true, "C"},
};

static void derived_rows_give_their_entry_and_the_other_within_five_degrees(void **state) {
  CHECK_ROWS(derived);
}

/* Every row again for another north and as its mirror image: nothing may change. */
static void rotating_or_mirroring_a_row_changes_nothing(void **state) {
  for (size_t i = 0; i < sizeof derived / sizeof *derived; i++) {
    row turned = derived[i], mirrored = derived[i];
    mirrored.inbound = -mirrored.inbound;
    mirrored.heading = -mirrored.heading;
    mirrored.sense = -mirrored.sense;
    check_row(&mirrored);
    for (int by = 0; by < 360; by += 30) {
      turned.inbound = derived[i].inbound + by;
      turned.heading = derived[i].heading + by;
      check_row(&turned);
    }
  }
}

static void on_an_exact_boundary_the_simpler_entry_is_named_first(void **state) {
  assert_int_equal(ox_entry_choose(360, R, 110).kind, D);
  assert_int_equal(ox_entry_choose(360, R, 290).kind, D);
  assert_int_equal(ox_entry_choose(360, L, 250).kind, D);
  assert_int_equal(ox_entry_choose(360, L, 70).kind, D);
}

static void the_other_entry_is_named_to_five_degrees_and_no_farther(void **state) {
  static const double boundaries[3] = {110, 180, 290}; /* inbound 360, right turns */
  for (int i = 0; i < 3; i++)
    for (int side = -1; side <= 1; side += 2) {
      assert_int_not_equal(ox_entry_choose(360, R, boundaries[i] + side * 4.99).also, NONE);
      assert_int_not_equal(ox_entry_choose(360, R, boundaries[i] + side * 5.0).also, NONE);
      assert_int_equal(ox_entry_choose(360, R, boundaries[i] + side * 5.01).also, NONE);
      /* The pair is the same from both sides. */
      ox_entry_choice near = ox_entry_choose(360, R, boundaries[i] + side * 2);
      ox_entry_choice far = ox_entry_choose(360, R, boundaries[i] - side * 2);
      assert_int_equal((int)near.kind, far.also);
      assert_int_equal(near.also, (int)far.kind);
    }
}

static void the_distance_to_the_boundary_is_signed_as_the_pilot_sees_it(void **state) {
  static const struct {
    double inbound;
    int sense;
    double heading, relative, boundary, at;
  } rows[] = {
      {360, R, 120, -60, +10, 110}, {360, R, 100, -80, -10, 110}, {360, R, 170, -10, -10, 180},
      {360, R, 190, 10, +10, 180},  {360, R, 280, 100, -10, 290}, {360, R, 300, 120, +10, 290},
      {360, L, 240, -60, -10, 250}, {360, L, 260, -80, +10, 250}, {360, L, 170, 10, -10, 180},
      {360, L, 80, 100, +10, 70},   {90, R, 270, 0, 0, 270},      {90, R, 0, 90, -20, 20},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_entry_choice c = ox_entry_choose(rows[i].inbound, rows[i].sense, rows[i].heading);
    assert_close(c.relative_deg, rows[i].relative, 1e-12, "relative");
    assert_close(c.boundary_deg, rows[i].boundary, 1e-12, "to the boundary");
    assert_angle_close(c.boundary_at_deg, rows[i].at, 1e-12, "boundary");
  }
}

static void sectors_measure_70_110_and_180_degrees(void **state) {
  for (int sense = -1; sense <= 1; sense += 2)
    for (int inbound = 0; inbound < 360; inbound += 37) {
      int count[3] = {0, 0, 0};
      for (int i = 0; i < 3600; i++)
        count[ox_entry_choose(inbound, sense, 0.1 * i + 0.05).kind]++;
      assert_int_equal(count[T], 700);
      assert_int_equal(count[P], 1100);
      assert_int_equal(count[D], 1800);
    }
}

static void any_finite_angles_give_a_whole_answer(void **state) {
  ox_random r = {51};
  for (int i = 0; i < 50000; i++) {
    double scale = pow(10, ox_random_between(&r, 0, 12));
    double inbound = ox_random_between(&r, -scale, scale);
    double heading = ox_random_between(&r, -scale, scale);
    ox_entry_choice c = ox_entry_choose(inbound, i % 2 ? R : L, heading);
    assert_in_range(c.kind, 0, 2);
    assert_true(c.also >= NONE && c.also <= 2 && c.also != (int)c.kind);
    assert_true(c.relative_deg > -180 && c.relative_deg <= 180);
    assert_true(c.boundary_at_deg >= 0 && c.boundary_at_deg < 360);
    assert_true(fabs(c.boundary_deg) <= 90);
    assert_true((c.also != NONE) == (fabs(c.boundary_deg) <= OX_ENTRY_FLEXIBILITY_DEG));
    assert_angle_close(c.boundary_at_deg + c.boundary_deg, heading, 1e-9 + 1e-15 * scale,
                       "boundary plus distance is the heading");
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(published_single_headings_give_their_entry),
      cmocka_unit_test(published_ranges_hold_to_the_degree),
      cmocka_unit_test(seventy_five_degrees_right_of_the_nose_is_teardrop_or_direct),
      cmocka_unit_test(the_outbound_course_seen_from_the_heading_decides),
      cmocka_unit_test(derived_rows_give_their_entry_and_the_other_within_five_degrees),
      cmocka_unit_test(rotating_or_mirroring_a_row_changes_nothing),
      cmocka_unit_test(on_an_exact_boundary_the_simpler_entry_is_named_first),
      cmocka_unit_test(the_other_entry_is_named_to_five_degrees_and_no_farther),
      cmocka_unit_test(the_distance_to_the_boundary_is_signed_as_the_pilot_sees_it),
      cmocka_unit_test(sectors_measure_70_110_and_180_degrees),
      cmocka_unit_test(any_finite_angles_give_a_whole_answer),
  };
  return cmocka_run_group_tests_name("entry", tests, NULL, NULL);
}
