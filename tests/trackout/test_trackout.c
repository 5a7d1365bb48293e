/* The track for maps: read back with cJSON, by distance and bearing from the fix, and by what the
 * standards ask for. */
#include "ox_test.h"

#include <locale.h>

#include <cjson/cJSON.h>

#include "oxbow/trackout.h"

typedef struct {
  char *text;
  size_t length, room, fail_after; /* 0: never */
} buffer;

static ox_status take(void *context, const void *bytes, size_t length) {
  buffer *b = context;
  if (b->fail_after && b->length + length > b->fail_after) return OX_ERROR;
  if (b->length + length + 1 > b->room) {
    b->room = 2 * (b->length + length + 1);
    b->text = realloc(b->text, b->room);
    assert_non_null(b->text);
  }
  memcpy(b->text + b->length, bytes, length);
  b->length += length;
  b->text[b->length] = '\0';
  return OX_OK;
}

#define CAUTION "Not for <navigation>."
#define FIX ((ox_latlon){47.5, 11.25})

static ox_flight flight;
static ox_case windy;

static ox_trackout_case solved(void) {
  windy = ox_case_default();
  snprintf(windy.name, sizeof windy.name, "Wind & \"weather\" <ÄÖ>");
  snprintf(windy.hold.fix, sizeof windy.hold.fix, "LARCH");
  windy.wind_count = 1;
  windy.wind[0] = (ox_wind_row){.from_deg = 300, .kt = 25};
  windy.arrival.fix_at_s = 86390; /* ten seconds to midnight */
  assert_int_not_equal(ox_flight_solve(&windy, &flight), OX_ERROR);
  return (ox_trackout_case){&windy, &flight, FIX};
}

static buffer written(ox_trackout_format format, ox_latlon fix, double step_s, bool dated) {
  buffer b = {0};
  const char *error = NULL;
  ox_trackout_case c = solved();
  c.fix = fix;
  ox_trackout_options o = {.format = format, .step_s = step_s, .title = "Title", .caution = CAUTION};
  if (dated) o.year = 2024, o.month = 2, o.day = 28;
  if (ox_trackout_write(&c, 1, &o, take, &b, &error) != OX_OK) fail_msg("%s", error);
  return b;
}

/* --- GeoJSON ------------------------------------------------------------------------------- */

static void check_position(const cJSON *position, const ox_leg *leg, double t_s, ox_latlon fix) {
  double lon = cJSON_GetArrayItem(position, 0)->valuedouble;
  double lat = cJSON_GetArrayItem(position, 1)->valuedouble;
  ox_vec want = ox_leg_position(leg, t_s), got;
  assert_int_equal(ox_plane_from_place(fix, (ox_latlon){lat, lon}, &got), OX_OK);
  assert_close(got.x, want.x, 2e-6, "east");
  assert_close(got.y, want.y, 2e-6, "north");
}

/* With a step longer than any leg there is a point at every end of a leg and no other: the points
 * are the flight's own, to the figures written. */
static void every_end_of_a_leg_is_where_the_flight_has_it(void **state) {
  buffer b = written(OX_TRACKOUT_GEOJSON, FIX, 3600, false);
  cJSON *json = cJSON_Parse(b.text);
  assert_non_null(json);
  assert_string_equal(cJSON_GetObjectItem(json, "type")->valuestring, "FeatureCollection");
  assert_string_equal(cJSON_GetObjectItem(json, "caution")->valuestring, CAUTION);
  const cJSON *feature;
  size_t leg = 0, lines = 0;
  cJSON_ArrayForEach(feature, cJSON_GetObjectItem(json, "features")) {
    const cJSON *geometry = cJSON_GetObjectItem(feature, "geometry");
    const cJSON *at = cJSON_GetObjectItem(geometry, "coordinates");
    assert_string_equal(
        cJSON_GetObjectItem(cJSON_GetObjectItem(feature, "properties"), "case")->valuestring,
        windy.name);
    if (strcmp(cJSON_GetObjectItem(geometry, "type")->valuestring, "LineString") != 0) continue;
    lines++;
    for (const cJSON *p = at->child->next; p; p = p->next) {
      while (flight.legs[leg].t1_s <= flight.legs[leg].t0_s)
        leg++;
      check_position(p, &flight.legs[leg], flight.legs[leg].t1_s, FIX);
      leg++;
    }
  }
  assert_int_equal(leg, flight.leg_count);
  assert_true(lines >= 1 + flight.circuit_count);
  cJSON_Delete(json);
  free(b.text);
}

/* RFC 7946, 3.1.9: a line over the antimeridian is cut there; no piece may cross it. */
static void a_line_over_the_antimeridian_is_cut(void **state) {
  buffer b = written(OX_TRACKOUT_GEOJSON, (ox_latlon){-17, 179.995}, 5, false);
  cJSON *json = cJSON_Parse(b.text);
  assert_non_null(json);
  int cuts = 0;
  const cJSON *feature, *line, *position;
  cJSON_ArrayForEach(feature, cJSON_GetObjectItem(json, "features")) {
    const cJSON *geometry = cJSON_GetObjectItem(feature, "geometry");
    if (strcmp(cJSON_GetObjectItem(geometry, "type")->valuestring, "MultiLineString") != 0) continue;
    cuts++;
    cJSON_ArrayForEach(line, cJSON_GetObjectItem(geometry, "coordinates")) {
      double side = 0;
      assert_true(cJSON_GetArraySize(line) >= 2);
      cJSON_ArrayForEach(position, line) {
        double lon = cJSON_GetArrayItem(position, 0)->valuedouble;
        if (fabs(lon) < 180 && side == 0) side = lon;
        assert_true(side == 0 || lon * side > 0);
      }
    }
  }
  assert_true(cuts > 0);
  cJSON_Delete(json);
  free(b.text);
}

/* --- XML ----------------------------------------------------------------------------------- */

static void names_are_escaped_and_the_caution_is_there(void **state) {
  for (int i = 0; i < OX_TRACKOUT_COUNT; i++) {
    buffer b = written((ox_trackout_format)i, FIX, 10, false);
    bool json = i == OX_TRACKOUT_GEOJSON;
    assert_non_null(strstr(b.text, json ? CAUTION : "Not for &lt;navigation&gt;."));
    assert_non_null(strstr(b.text, json ? "Wind & \\\"weather\\\" <ÄÖ>"
                                        : "Wind &amp; &quot;weather&quot; &lt;ÄÖ&gt;"));
    assert_null(strstr(b.text, "nan"));
    free(b.text);
  }
}

/* 2024 is a leap year: ten seconds after 23:59:50 on the 28th it is the 29th of February. */
static void clock_times_cross_midnight_and_a_leap_day(void **state) {
  buffer b = written(OX_TRACKOUT_GPX, FIX, 10, true);
  assert_non_null(strstr(b.text, "<time>2024-02-28T23:59:50.000Z</time>"));
  assert_non_null(strstr(b.text, "<time>2024-02-29T00:0"));
  assert_null(strstr(b.text, "2024-03"));
  free(b.text);
  b = written(OX_TRACKOUT_GPX, FIX, 10, false);
  assert_null(strstr(b.text, "<time>"));
  free(b.text);
}

/* gpx.xsd 1.1, longitudeType: 180 is outside, -180 is inside. */
static void a_gpx_longitude_is_below_180(void **state) {
  buffer b = written(OX_TRACKOUT_GPX, (ox_latlon){10, 180}, 10, false);
  assert_null(strstr(b.text, "lon=\"180."));
  assert_non_null(strstr(b.text, "lon=\"-180.00000000\""));
  free(b.text);
}

/* --- all ----------------------------------------------------------------------------------- */

static void the_same_bytes_in_every_locale(void **state) {
  for (int i = 0; i < OX_TRACKOUT_COUNT; i++) {
    buffer a = written((ox_trackout_format)i, FIX, 7, true);
    assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
    buffer b = written((ox_trackout_format)i, FIX, 7, true);
    setlocale(LC_ALL, "C");
    assert_int_equal(a.length, b.length);
    assert_memory_equal(a.text, b.text, a.length);
    free(a.text);
    free(b.text);
  }
}

static void a_sink_that_fails_anywhere_stops_the_writing(void **state) {
  ox_trackout_case c = solved();
  for (int i = 0; i < OX_TRACKOUT_COUNT; i++) {
    buffer whole = written((ox_trackout_format)i, FIX, 60, false);
    for (size_t at = 1; at < whole.length; at += at < 600 ? 1 : 97) {
      buffer b = {.fail_after = at};
      const char *error = NULL;
      ox_trackout_options o = {
          .format = (ox_trackout_format)i, .step_s = 60, .title = "Title", .caution = CAUTION};
      assert_int_equal(ox_trackout_write(&c, 1, &o, take, &b, &error), OX_ERROR);
      assert_string_equal(error, "the file could not be written");
      assert_memory_equal(b.text ? b.text : "", whole.text, b.length);
      free(b.text);
    }
    free(whole.text);
  }
}

static void what_cannot_be_written_is_refused(void **state) {
  static const struct {
    double step_s, lat_deg;
    int year, month, day;
    const char *error;
  } rows[] = {
      {0.05, 0, 0, 0, 0, "the step is not 0.1 to 3600 seconds"},
      {(double)NAN, 0, 0, 0, 0, "the step is not 0.1 to 3600 seconds"},
      {1, 90.5, 0, 0, 0, "the fix is not on the earth"},
      {1, (double)NAN, 0, 0, 0, "the fix is not on the earth"},
      {1, 0, 2023, 2, 29, "there is no such date"},
      {1, 0, 1900, 2, 29, "there is no such date"}, /* no leap year: divisible by 100 */
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    buffer b = {0};
    const char *error = NULL;
    ox_trackout_case c = solved();
    c.fix.lat_deg = rows[i].lat_deg;
    ox_trackout_options o = {.step_s = rows[i].step_s, .caution = CAUTION, .year = rows[i].year,
                             .month = rows[i].month, .day = rows[i].day};
    assert_int_equal(ox_trackout_write(&c, 1, &o, take, &b, &error), OX_ERROR);
    assert_string_equal(error, rows[i].error);
    assert_int_equal(b.length, 0);
  }
  assert_true(ox_trackout_date_valid(2000, 2, 29));
}

/* At the poles every direction is one of the two; still figures, still the right distance. */
static void a_fix_at_a_pole_has_a_track(void **state) {
  for (int i = 0; i < OX_TRACKOUT_COUNT; i++) {
    buffer b = written((ox_trackout_format)i, (ox_latlon){90, 0}, 20, false);
    assert_true(b.length > 1000);
    assert_null(strstr(b.text, "nan"));
    free(b.text);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_end_of_a_leg_is_where_the_flight_has_it),
      cmocka_unit_test(a_line_over_the_antimeridian_is_cut),
      cmocka_unit_test(names_are_escaped_and_the_caution_is_there),
      cmocka_unit_test(clock_times_cross_midnight_and_a_leap_day),
      cmocka_unit_test(a_gpx_longitude_is_below_180),
      cmocka_unit_test(the_same_bytes_in_every_locale),
      cmocka_unit_test(a_sink_that_fails_anywhere_stops_the_writing),
      cmocka_unit_test(what_cannot_be_written_is_refused),
      cmocka_unit_test(a_fix_at_a_pole_has_a_track),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
