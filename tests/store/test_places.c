/* Places in lesson files: every form of a fix, read, placed, written back the same; what follows
 * from a place put into the case; nothing lost when the lesson changes. */
#include "oxbow/flight.h"
#include "store_support.h"

/* A lesson with members of the top level and of its one case. */
static const char *lesson_at(const char *top, const char *members) {
  static char text[12000];
  const char *inner = lesson_with(members);
  snprintf(text, sizeof text, "{ %s%s%s", top, *top ? ", " : "", inner + 2);
  return text;
}

static ox_latlon place_of_first(const ox_lesson *lesson) {
  char why[OX_REMARK_BYTES];
  ox_latlon at = {0, 0};
  const ox_lesson_case *lc = &lesson->cases[0];
  if (ox_fix_place(&lesson->points, &lc->fix, &lc->c, &at, why, sizeof why) == OX_ERROR)
    print_error("%s\n", why);
  return at;
}

/* Written, read and written again: the same lesson, the same bytes. */
static char *assert_round_trip(const ox_lesson *lesson, const char *what) {
  char *text = ox_lesson_to_text(lesson);
  assert_non_null(text);
  ox_lesson *again = parse_sound(text, what);
  assert_lessons_equal(lesson, again, what);
  assert_true(ox_points_equal(&lesson->points, &again->points));
  assert_true(ox_route_equal(&lesson->route, &again->route));
  for (size_t i = 0; i < lesson->case_count; i++)
    assert_true(ox_fix_equal(&lesson->cases[i].fix, &again->cases[i].fix));
  char *text_again = ox_lesson_to_text(again);
  assert_string_equal(text_again, text);
  free(text_again);
  ox_lesson_free(again);
  return text;
}

#define OAK "\"name\": \"OAK\", \"lat_deg\": 42.7, \"lon_deg\": -73.8"
#define ELM "\"name\": \"ELM\", \"lat_deg\": 42.2, \"lon_deg\": -73.2, \"declination_deg\": -13"
#define POINTS "\"points\": [ { " OAK ", \"declination_deg\": -12, \"elevation_ft\": 400 }, { " ELM " } ]"

static void every_form_of_a_fix_is_read_placed_and_written_back(void **state) {
  static const struct {
    const char *what, *top, *fix;
    bool placed;
  } rows[] = {
      {"a name", "", "\"LARCH\"", false},
      {"a name in the list", POINTS, "\"OAK\"", true},
      {"latitude and longitude", "", "{ \"name\": \"LARCH\", \"lat_deg\": 42, \"lon_deg\": -73 }",
       true},
      {"no name", "", "{ \"lat_deg\": 42, \"lon_deg\": -73 }", true},
      {"radial and distance", POINTS,
       "{ \"name\": \"LARCH\", \"from\": \"OAK\", \"radial_deg\": 214, \"nm\": 13.5 }", true},
      {"radial and DME", POINTS,
       "{ \"from\": \"OAK\", \"radial_deg\": 214, \"nm\": 13.5, \"altitude_ft\": 9000 }", true},
      {"radial from a point inside", "",
       "{ \"name\": \"LARCH\", \"from\": { " OAK " }, \"radial_deg\": 214, \"nm\": 13.5 }", true},
      {"radial from a point without a name", "",
       "{ \"from\": { \"lat_deg\": 42.7, \"lon_deg\": -73.8 }, \"radial_deg\": 214, \"nm\": 9 }",
       true},
      {"crossing radials", POINTS,
       "{ \"name\": \"LARCH\", \"from\": \"OAK\", \"radial_deg\": 190, \"and\": \"ELM\","
       " \"and_radial_deg\": 280 }",
       true},
      {"crossing radials of points inside", "",
       "{ \"from\": { " OAK " }, \"radial_deg\": 190, \"and\": { " ELM " },"
       " \"and_radial_deg\": 280 }",
       true},
      {"a point inside a point inside", "",
       "{ \"from\": { \"name\": \"ASH\", \"from\": { " OAK " }, \"radial_deg\": 1, \"nm\": 2 },"
       " \"radial_deg\": 214, \"nm\": 13.5 }",
       true},
      {"miles ahead", "", "{ \"ahead_nm\": 1.5 }", false},
      {"seconds ahead", "", "{ \"name\": \"HERE\", \"ahead_s\": 45 }", false},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char members[1024];
    snprintf(members, sizeof members, "\"hold\": { \"inbound_deg\": 240, \"fix\": %s }",
             rows[i].fix);
    ox_lesson *lesson = parse_sound(lesson_at(rows[i].top, members), rows[i].what);
    const ox_lesson_case *lc = &lesson->cases[0];
    assert_int_equal(ox_fix_has_place(&lesson->points, &lc->fix, &lc->c), rows[i].placed);
    if (rows[i].placed) assert_true(place_of_first(lesson).lat_deg > 40);
    free(assert_round_trip(lesson, rows[i].what));
    ox_lesson_free(lesson);
  }
}

static void the_places_are_those_of_the_library(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_at(POINTS, "\"hold\": { \"inbound_deg\": 1, \"fix\": { \"from\": \"OAK\","
                        " \"radial_deg\": 214, \"nm\": 13.5, \"altitude_ft\": 9000 } }"),
      "DME");
  double ground_nm;
  ox_latlon want, got = place_of_first(lesson);
  assert_int_equal(ox_slant_to_ground_nm(13.5, 400, 9000, &ground_nm, NULL, 0), OX_OK);
  /* radial 214 with 12 west is 202 true */
  assert_int_equal(ox_place_along((ox_latlon){42.7, -73.8}, 202, ground_nm, &want, NULL, NULL, 0),
                   OX_OK);
  assert_close(got.lat_deg, want.lat_deg, 1e-12, "latitude");
  assert_close(got.lon_deg, want.lon_deg, 1e-12, "longitude");
  ox_lesson_free(lesson);
}

static void the_arrival_of_a_fix_ahead_begins_that_far_before_it(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"hold\": { \"inbound_deg\": 1, \"fix\": { \"ahead_nm\": 1.5 } }"), "miles");
  assert_close(lesson->cases[0].c.arrival.distance_nm, 1.5, 0, "distance");
  ox_lesson_free(lesson);
  /* 120 kt true straight into 30 kt: 90 kt over the ground, 45 s are 1.125 NM (by hand) */
  lesson = parse_sound(
      lesson_with("\"hold\": { \"inbound_deg\": 1, \"fix\": { \"ahead_s\": 45 } },"
                  " \"arrival\": { \"heading_deg\": 360, \"distance_nm\": 70 },"
                  " \"aircraft\": { \"tas_kt\": 120 },"
                  " \"wind\": { \"from_deg\": 360, \"kt\": 30 }"),
      "seconds");
  assert_close(lesson->cases[0].c.arrival.distance_nm, 1.125, 1e-12, "distance");
  free(assert_round_trip(lesson, "seconds"));
  ox_lesson_free(lesson);
}

static void a_fix_ahead_of_a_present_position_has_a_place(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"hold\": { \"inbound_deg\": 1, \"fix\": { \"ahead_nm\": 6 } },"
                  " \"arrival\": { \"heading_deg\": 360, \"present\": { \"lat_deg\": 10,"
                  " \"lon_deg\": 20 } }"),
      "present");
  ox_latlon at = place_of_first(lesson), want;
  ox_place_along((ox_latlon){10, 20}, 360, 6, &want, NULL, NULL, 0);
  assert_close(at.lat_deg, want.lat_deg, 1e-12, "latitude");
  assert_close(at.lon_deg, 20, 1e-12, "longitude");
  char *text = assert_round_trip(lesson, "present");
  assert_non_null(strstr(text, "\"present\": { \"lat_deg\": 10, \"lon_deg\": 20 }"));
  free(text);
  ox_lesson_free(lesson);
}

static void a_station_that_is_a_point_gives_its_radial_and_distance(void **state) {
  static const char *const stations[] = {
      "{ \"name\": \"OAK\" }",
      "{ \"name\": \"OAK\", \"elevation_ft\": 400 }",
      "{ \"lat_deg\": 42.7, \"lon_deg\": -73.8, \"elevation_ft\": 400 }",
  };
  for (size_t i = 0; i < sizeof stations / sizeof *stations; i++) {
    char members[1024];
    snprintf(members, sizeof members,
             "\"hold\": { \"inbound_deg\": 240, \"fix\": { \"lat_deg\": 42.5, \"lon_deg\":"
             " -73.8 }, \"leg\": { \"by\": \"distance\", \"nm\": 5, \"station\": %s } },"
             " \"variation_deg\": -12",
             stations[i]);
    ox_lesson *lesson = parse_sound(lesson_at(i < 2 ? POINTS : "", members), stations[i]);
    const ox_case *c = &lesson->cases[0].c;
    ox_geodesic line;
    ox_geodesic_between((ox_latlon){42.5, -73.8}, (ox_latlon){42.7, -73.8}, &line);
    assert_true(c->hold.station.given);
    assert_close(c->hold.station.nm, line.distance_nm, 1e-12, "distance");
    assert_angle_close(c->hold.station.radial_deg, 12, 1e-9, "radial"); /* north, 12 west */
    assert_close(c->hold.station.elevation_ft, 400, 0, "elevation");
    free(assert_round_trip(lesson, stations[i]));
    ox_lesson_free(lesson);
  }
}

static void a_station_that_is_a_point_may_have_a_limiting_radial(void **state) {
  static const char *const stations[] = {
      "{ \"name\": \"OAK\", \"limiting_radial_deg\": 200 }",
      "{ \"lat_deg\": 42.7, \"lon_deg\": -73.8, \"limiting_radial_deg\": 200 }"};
  for (size_t i = 0; i < 2; i++) {
    char members[512];
    snprintf(members, sizeof members,
             "\"hold\": { \"inbound_deg\": 240, \"fix\": { \"lat_deg\": 42.5, \"lon_deg\":"
             " -73.8 }, \"leg\": { \"by\": \"distance\", \"nm\": 5, \"station\": %s } }",
             stations[i]);
    ox_lesson *lesson = parse_sound(lesson_at(i == 0 ? POINTS : "", members), stations[i]);
    assert_close(lesson->cases[0].c.hold.station.limiting_radial_deg, 200, 0, "radial");
    free(assert_round_trip(lesson, stations[i]));
    ox_lesson_free(lesson);
  }
}

static void points_and_route_stand_between_title_and_cases(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_at(POINTS ", \"route\": [\"OAK\", \"ELM\"], \"missed_approach_point\": \"OAK\"", NULL),
      "route");
  assert_int_equal(lesson->route.count, 2);
  assert_int_equal(lesson->route.missed_approach, 0);
  char *text = assert_round_trip(lesson, "route");
  assert_non_null(strstr(text, "\"title\": \"\",\n"
                               "  \"points\": [\n"
                               "    {\n"
                               "      \"name\": \"OAK\",\n"));
  assert_non_null(strstr(text, "  \"route\": [\"OAK\", \"ELM\"],\n"
                               "  \"missed_approach_point\": \"OAK\",\n"
                               "  \"cases\": [\n"));
  free(text);
  ox_lesson_free(lesson);
}

static void unknown_keys_of_places_are_kept(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_at("\"points\": [ { " OAK ", \"note\": 1 } ]",
                "\"hold\": { \"inbound_deg\": 1, \"leg\": { \"by\": \"distance\", \"nm\": 4,"
                " \"station\": { \"name\": \"OAK\", \"note\": 5 } }, \"fix\": { \"note\": 2,"
                " \"from\": { " ELM ", \"note\": 3 }, \"radial_deg\": 1, \"nm\": 2 } },"
                " \"arrival\": { \"heading_deg\": 1, \"present\": { \"lat_deg\": 42, \"lon_deg\":"
                " -73, \"note\": 4 } }"),
      "notes");
  char *text = assert_round_trip(lesson, "notes");
  static const char *const notes[] = {"\"note\": 1", "\"note\": 2", "\"note\": 3", "\"note\": 4",
                                      "\"note\": 5"};
  for (size_t i = 0; i < sizeof notes / sizeof *notes; i++) {
    const char *at = strstr(text, notes[i]);
    assert_non_null(at);
    assert_null(strstr(at + 1, notes[i]));
  }
  free(text);
  ox_lesson_free(lesson);
}

static void a_point_inside_is_not_lost_with_what_used_it(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"hold\": { \"inbound_deg\": 1, \"fix\": { \"from\": { " OAK " },"
                  " \"radial_deg\": 214, \"nm\": 13.5 } }"),
      "inside");
  assert_int_equal(lesson->points.count, 1);
  lesson->cases[0].fix = ox_fix_named();
  char *text = ox_lesson_to_text(lesson);
  assert_non_null(strstr(text, "\"points\": [{ \"name\": \"OAK\""));
  ox_lesson *again = parse_sound(text, "in the list");
  assert_int_equal(again->points.count, 1);
  ox_lesson_free(again);
  free(text);
  ox_lesson_free(lesson);
}

static void a_station_that_was_a_point_leaves_nothing_of_it(void **state) {
  ox_lesson *lesson = parse_sound(
      lesson_with("\"hold\": { \"inbound_deg\": 1, \"fix\": { \"lat_deg\": 42, \"lon_deg\": -73 },"
                  " \"leg\": { \"by\": \"distance\", \"nm\": 4, \"station\": { \"lat_deg\": 42.1,"
                  " \"lon_deg\": -73 } } }"),
      "station");
  lesson->cases[0].fix.station[0] = '\0';
  char *text = ox_lesson_to_text(lesson);
  ox_lesson *again = parse_sound(text, "radial and distance");
  assert_string_equal(again->cases[0].fix.station, "");
  assert_true(ox_case_equal(&again->cases[0].c, &lesson->cases[0].c));
  ox_lesson_free(again);
  free(text);
  ox_lesson_free(lesson);
}

static void a_poor_cut_is_a_remark_and_a_good_one_is_none(void **state) {
  static const struct {
    double and_radial_deg;
    size_t remarks;
  } rows[] = {{280, 0}, {210, 1}};
  for (size_t i = 0; i < 2; i++) {
    char members[512];
    ox_messages messages = {0};
    snprintf(members, sizeof members,
             "\"hold\": { \"inbound_deg\": 1, \"fix\": { \"name\": \"LARCH\", \"from\": \"OAK\","
             " \"radial_deg\": 190, \"and\": \"ELM\", \"and_radial_deg\": %g } }",
             rows[i].and_radial_deg);
    ox_lesson *lesson = parse_sound(lesson_at(POINTS, members), "cut");
    assert_int_equal(ox_lesson_remarks(lesson, "x.oxbow", &messages),
                     rows[i].remarks ? OX_ADVISORY : OX_OK);
    assert_int_equal(messages.count, rows[i].remarks);
    if (messages.count)
      assert_non_null(strstr(messages.text[0], "x.oxbow: case \"Case 1\": hold.fix: LARCH: "));
    ox_messages_clear(&messages);
    ox_lesson_free(lesson);
  }
}

static void visit_twice(const char *path, void *context) {
  size_t length;
  char *text = file_text(path, &length);
  ox_lesson *lesson = parse_sound(text, path);
  char *once = ox_lesson_to_text(lesson);
  ox_lesson *again = parse_sound(once, path);
  char *twice = ox_lesson_to_text(again);
  assert_string_equal(once, twice);
  free(once);
  free(twice);
  free(text);
  ox_lesson_free(again);
  ox_lesson_free(lesson);
}

static void the_examples_come_back_byte_for_byte(void **state) {
  assert_true(each_lesson(getenv("OXBOW_LESSONS"), visit_twice, NULL) >= 5);
}

/* --- random lessons --- */

static void random_point(ox_random *r, const ox_lesson *lesson, int number, ox_point *out) {
  memset(out, 0, sizeof *out);
  snprintf(out->name, sizeof out->name, "P%d", number);
  out->kind = number == 0 ? OX_POINT_AT : (ox_point_kind)ox_random_below(r, 2);
  out->at.lat_deg = ox_random_between(r, 40, 41);
  out->at.lon_deg = ox_random_between(r, -70, -69);
  if (out->kind == OX_POINT_RADIAL) {
    size_t from = (size_t)ox_random_below(r, (int)lesson->points.count);
    strcpy(out->from, lesson->points.points[from].name);
    out->at = (ox_latlon){0, 0};
    out->radial_deg = ox_random_between(r, 0, 360);
    out->nm = ox_random_between(r, 5, 20);
    out->dme = ox_random_below(r, 2) == 0;
    if (out->dme) out->altitude_ft = floor(ox_random_between(r, 1000, 9000));
  }
  if (ox_random_below(r, 2) == 0) out->declination_deg = ox_random_between(r, -20, 20);
  if (ox_random_below(r, 2) == 0) out->elevation_ft = floor(ox_random_between(r, 0, 900));
  out->inside = ox_random_below(r, 3) == 0;
}

/* Points that stand inside come back in another order in memory: the text tells. */
static void random_lessons_come_back_equal(void **state) {
  ox_random r = {20};
  for (int i = 0, cases = ox_test_cases(2000); i < cases; i++) {
    ox_lesson *lesson = ox_lesson_new();
    for (int n = ox_random_below(&r, 9); n >= 0; n--) {
      ox_point point;
      random_point(&r, lesson, (int)lesson->points.count, &point);
      assert_int_not_equal(ox_points_add(&lesson->points, &point, NULL, 0), OX_ERROR);
    }
    ox_lesson_case *lc = &lesson->cases[0];
    random_point(&r, lesson, 99, &lc->fix.point);
    lc->fix.kind = (ox_fix_kind)ox_random_below(&r, 4);
    lc->fix.point.inside = false;
    lc->fix.ahead_nm = ox_random_between(&r, 0, 50);
    lc->fix.ahead_s = floor(ox_random_between(&r, 0, 900));
    if (ox_random_below(&r, 2)) strcpy(lc->fix.present, "P0");
    assert_int_equal(ox_fix_settle(&lesson->points, &lc->fix, &lc->c, NULL, 0), OX_OK);
    char *text = ox_lesson_to_text(lesson);
    ox_lesson *again = parse_sound(text, text);
    assert_lessons_equal(lesson, again, text);
    assert_int_equal(again->points.count, lesson->points.count);
    for (size_t p = 0; p < lesson->points.count; p++) {
      ox_latlon a, b;
      const char *name = lesson->points.points[p].name;
      assert_int_equal(ox_points_place(&lesson->points, name, &a, NULL, 0), OX_OK);
      assert_int_equal(ox_points_place(&again->points, name, &b, NULL, 0), OX_OK);
      assert_memory_equal(&a, &b, sizeof a);
    }
    char *text_again = ox_lesson_to_text(again);
    assert_string_equal(text, text_again);
    free(text);
    free(text_again);
    ox_lesson_free(again);
    ox_lesson_free(lesson);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_form_of_a_fix_is_read_placed_and_written_back),
      cmocka_unit_test(the_places_are_those_of_the_library),
      cmocka_unit_test(the_arrival_of_a_fix_ahead_begins_that_far_before_it),
      cmocka_unit_test(a_fix_ahead_of_a_present_position_has_a_place),
      cmocka_unit_test(a_station_that_is_a_point_gives_its_radial_and_distance),
      cmocka_unit_test(a_station_that_is_a_point_may_have_a_limiting_radial),
      cmocka_unit_test(points_and_route_stand_between_title_and_cases),
      cmocka_unit_test(unknown_keys_of_places_are_kept),
      cmocka_unit_test(a_point_inside_is_not_lost_with_what_used_it),
      cmocka_unit_test(a_station_that_was_a_point_leaves_nothing_of_it),
      cmocka_unit_test(a_poor_cut_is_a_remark_and_a_good_one_is_none),
      cmocka_unit_test(the_examples_come_back_byte_for_byte),
      cmocka_unit_test(random_lessons_come_back_equal),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
