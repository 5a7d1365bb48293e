/* Places as a user of the command line meets them: where the fix is, remarks, latitude and
 * longitude of a track, and lessons made of published holds. */
#include <cJSON.h>

#include "cli_run.h"
#include "oxbow/lesson.h"

static const char *records(void) {
  static char path[4096];
  snprintf(path, sizeof path, "%s/navdata/cifp-excerpt.txt", getenv("OXBOW_TEST_DATA"));
  return path;
}

static cJSON *solved(const char *path) {
  ran r = run_cli_for(0, "solve", path, NULL);
  cJSON *array = cJSON_Parse(r.out);
  assert_non_null(array);
  ran_clear(&r);
  return array;
}

static double number(const cJSON *object, const char *key) {
  const cJSON *item = cJSON_GetObjectItemCaseSensitive(object, key);
  assert_true(cJSON_IsNumber(item));
  return item->valuedouble;
}

static void solve_says_where_a_fix_is_that_has_a_place(void **state) {
  cJSON *all = solved(lesson_path("places.oxbow"));
  int placed = 0;
  for (const cJSON *one = all->child; one; one = one->next) {
    const cJSON *fix = cJSON_GetObjectItemCaseSensitive(one, "fix");
    assert_true(cJSON_IsObject(fix));
    assert_close(number(fix, "lat_deg"), 46.2, 0.3, "latitude");
    assert_close(number(fix, "lon_deg"), -72.0, 0.4, "longitude");
    placed++;
  }
  assert_int_equal(placed, 4);
  cJSON_Delete(all);
  all = solved(lesson_path("demo.oxbow"));
  assert_null(cJSON_GetObjectItemCaseSensitive(all->child, "fix"));
  cJSON_Delete(all);
}

static void check_says_a_poor_cut_and_is_content(void **state) {
  const char *path = in_folder("cut.oxbow");
  write_text(path, "{\"format\":\"oxbow-lesson\",\"version\":1,\"cases\":[{\"hold\":{"
                   "\"inbound_deg\":1,\"fix\":{\"name\":\"LARCH\",\"from\":{\"lat_deg\":0,"
                   "\"lon_deg\":10},\"radial_deg\":80,\"and\":{\"lat_deg\":0,\"lon_deg\":11},"
                   "\"and_radial_deg\":280}},\"arrival\":{\"heading_deg\":1},\"aircraft\":"
                   "{\"ias_kt\":100}}]}");
  ran r = run_cli("check", path, NULL);
  assert_int_equal(r.code, 0);
  assert_string_equal(r.out, "");
  assert_non_null(strstr(r.err, "hold.fix: LARCH: "));
  ran_clear(&r);
}

/* The first and last row of a track: the fix is where the track crosses x = y = 0. */
static void track_gives_latitude_and_longitude_when_asked(void **state) {
  ran r = run_cli_for(0, "track", lesson_path("places.oxbow"), "--case", "Hold present position",
                      "--latlon", "--step", "1000", NULL);
  static const char header[] =
      "case,t_s,x_nm,y_nm,heading_true_deg,track_true_deg,gs_kt,leg,lat_deg,lon_deg\n";
  assert_int_equal(strncmp(r.out, header, strlen(header)), 0);
  /* The arrival ends over the fix. */
  const char *row = strstr(r.out, ",arrival,");
  double lat_deg, lon_deg;
  for (const char *next; (next = strstr(row + 1, ",arrival,"));) row = next;
  assert_int_equal(sscanf(row, ",arrival,%lf,%lf", &lat_deg, &lon_deg), 2);
  cJSON *all = solved(lesson_path("places.oxbow"));
  const cJSON *fix = cJSON_GetObjectItemCaseSensitive(cJSON_GetArrayItem(all, 3), "fix");
  assert_close(lat_deg, number(fix, "lat_deg"), 1e-8, "latitude");
  assert_close(lon_deg, number(fix, "lon_deg"), 1e-8, "longitude");
  cJSON_Delete(all);
  ran_clear(&r);
}

static void track_refuses_latitude_where_nothing_says_where_the_fix_is(void **state) {
  ran r = run_cli("track", lesson_path("demo.oxbow"), "--latlon", NULL);
  assert_int_equal(r.code, 1);
  assert_non_null(strstr(r.err, "--latlon needs a fix with a place"));
  ran_clear(&r);
}

/* MUJIK by the columns of its record: N42330321 W073474698, variation W0133. */
static void published_holds_become_a_lesson_with_their_points(void **state) {
  char path[4096];
  snprintf(path, sizeof path, "%s", in_folder("holds.oxbow"));
  ran r = run_cli_for(0, "holds", records(), "--fix", "MUJIK", "-o", path, NULL);
  assert_string_equal(r.out, "");
  ran_clear(&r);
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
  assert_int_equal(lesson->case_count, 1);
  assert_int_equal(lesson->points.count, 1);
  assert_string_equal(lesson->points.points[0].name, "MUJIK");
  assert_close(lesson->points.points[0].at.lat_deg, 42 + 33 / 60.0 + 18.21 / 3600, 1e-9, "lat");
  assert_close(lesson->cases[0].c.variation_deg, -13.3, 1e-12, "variation");
  assert_close(lesson->cases[0].c.hold.inbound_deg, 11.2, 1e-12, "course");
  ox_lesson_free(lesson);
  cJSON *all = solved(path);
  assert_non_null(cJSON_GetObjectItemCaseSensitive(all->child, "fix"));
  cJSON_Delete(all);
}

static void no_lesson_is_written_where_nothing_matches(void **state) {
  char path[4096];
  snprintf(path, sizeof path, "%s", in_folder("nothing.oxbow"));
  ran r = run_cli("holds", records(), "--fix", "XXXXX", "-o", path, NULL);
  assert_int_equal(r.code, 1);
  assert_null(fopen(path, "rb"));
  ran_clear(&r);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(solve_says_where_a_fix_is_that_has_a_place),
      cmocka_unit_test(check_says_a_poor_cut_and_is_content),
      cmocka_unit_test(track_gives_latitude_and_longitude_when_asked),
      cmocka_unit_test(track_refuses_latitude_where_nothing_says_where_the_fix_is),
      cmocka_unit_test(published_holds_become_a_lesson_with_their_points),
      cmocka_unit_test(no_lesson_is_written_where_nothing_matches),
  };
  return cmocka_run_group_tests(tests, folder_make, folder_remove);
}
