/* Every allocation of our own code fails in turn, in reading and writing lessons, in the working, in
 * tracks and in pictures: each ends as a failure that is said, or in full, and never in a crash.
 * What libraries allocate for themselves succeeds, but for cJSON, which asks here too. Linked so that malloc, calloc, realloc and
 * strdup of our libraries come here first; leaks are the sanitizer's to find. */
#include "ox_test.h"

#include <cjson/cJSON.h>

#include "oxbow/differences.h"
#include "oxbow/export.h"
#include "oxbow/lesson.h"
#include "oxbow/trackout.h"
#include "oxbow/words.h"

void *__real_malloc(size_t bytes);
void *__real_calloc(size_t count, size_t bytes);
void *__real_realloc(void *memory, size_t bytes);
char *__real_strdup(const char *text);
void *__wrap_malloc(size_t bytes);
void *__wrap_calloc(size_t count, size_t bytes);
void *__wrap_realloc(void *memory, size_t bytes);
char *__wrap_strdup(const char *text);

static long until_failure = -1; /* allocations that still succeed; negative: all do */
static bool failed;

static bool fails_now(void) {
  if (until_failure < 0) return false;
  if (until_failure > 0) {
    until_failure--;
    return false;
  }
  failed = true; /* this one and all after it, as when memory is really out */
  return true;
}

void *__wrap_malloc(size_t bytes) { return fails_now() ? NULL : __real_malloc(bytes); }

void *__wrap_calloc(size_t count, size_t bytes) {
  return fails_now() ? NULL : __real_calloc(count, bytes);
}

void *__wrap_realloc(void *memory, size_t bytes) {
  return fails_now() ? NULL : __real_realloc(memory, bytes);
}

char *__wrap_strdup(const char *text) { return fails_now() ? NULL : __real_strdup(text); }

/* --- the works ----------------------------------------------------------------------------- */

static char *demo; /* the text of a lesson */
static ox_lesson *lesson;
static ox_flight flight;

static size_t taken;
static ox_status take(void *context, const void *bytes, size_t length) {
  taken += length;
  return OX_OK;
}

static bool parse(void) {
  ox_lesson *read = NULL;
  ox_messages messages = {0};
  ox_status status = ox_lesson_parse(demo, strlen(demo), "demo", &read, &messages);
  assert_true((status == OX_ERROR) == (read == NULL));
  ox_lesson_free(read);
  ox_messages_clear(&messages);
  return status != OX_ERROR;
}

static bool print(void) {
  char *text = ox_lesson_to_text(lesson);
  bool done = text != NULL;
  if (done) assert_string_equal(text, demo);
  free(text);
  return done;
}

static bool work_out(void) {
  ox_working working = ox_working_make(&lesson->cases[1].c, &flight);
  bool done = working.count > 0;
  ox_working_clear(&working);
  return done;
}

static bool describe(void) {
  char *words = ox_words_describe(&lesson->cases[1].c, &flight);
  bool done = words != NULL;
  free(words);
  return done;
}

static bool compare(void) {
  const ox_case *cases[] = {&lesson->cases[1].c, &lesson->cases[2].c};
  const ox_flight *flights[] = {&flight, &flight};
  ox_differences table = ox_differences_make(cases, flights, 2);
  bool done = table.count > 0;
  ox_differences_clear(&table);
  return done;
}

static bool track(ox_trackout_format format) {
  ox_trackout_case c = {&lesson->cases[1].c, &flight, {47, 11}};
  ox_trackout_options o = {.format = format, .step_s = 5, .caution = "caution"};
  const char *error = NULL;
  ox_status status = ox_trackout_write(&c, 1, &o, take, NULL, &error);
  assert_true(status == OX_OK || error);
  return status == OX_OK;
}

static bool track_geojson(void) { return track(OX_TRACKOUT_GEOJSON); }
static bool track_gpx(void) { return track(OX_TRACKOUT_GPX); }

static bool draw(ox_export_format format) {
  ox_scene scene = {.c = &lesson->cases[1].c,
                    .flight = &flight,
                    .title = "Title",
                    .palette = OX_PALETTE_PRINT,
                    .text_scale = 1,
                    .layers = OX_LAYER_ALL};
  ox_export_options o = {.format = format, .width = 500, .height = 360, .t_s = 30};
  const char *error = NULL;
  ox_status status = ox_export(&scene, 1, &o, take, NULL, &error);
  assert_true(status == OX_OK || error);
  return status == OX_OK;
}

static bool draw_png(void) { return draw(OX_EXPORT_PNG); }
static bool draw_svg(void) { return draw(OX_EXPORT_SVG); }
static bool draw_pdf(void) { return draw(OX_EXPORT_PDF); }

/* --- each of them, with memory running out ever later --------------------------------------- */

/* Every allocation up to `all`, then every `step`-th: a picture has thousands. */
static void fail_in_turn(bool (*work)(void), const char *what, long all, long step) {
  long runs = 0;
  assert_true(work()); /* warm: what libraries keep for good is there */
  for (long n = 0;; n += n < all ? 1 : step, runs++) {
    until_failure = n;
    failed = false;
    bool done = work();
    until_failure = -1;
    if (!failed) {
      assert_true(done);
      break;
    }
  }
  assert_true(runs > 0);
  print_message("# %s: %ld failures survived\n", what, runs);
}

static void lessons_are_read_and_printed(void **state) {
  (void)state;
  fail_in_turn(parse, "parse", 4000, 7);
  fail_in_turn(print, "print", 4000, 7);
}

static void words_are_made(void **state) {
  (void)state;
  fail_in_turn(work_out, "working", 2000, 7);
  fail_in_turn(describe, "describe", 2000, 7);
  fail_in_turn(compare, "differences", 2000, 7);
}

static void tracks_are_written(void **state) {
  (void)state;
  fail_in_turn(track_geojson, "GeoJSON", 2000, 7);
  fail_in_turn(track_gpx, "GPX", 2000, 7);
}

static void pictures_are_drawn(void **state) {
  (void)state;
  fail_in_turn(draw_png, "PNG", 60, 41);
  fail_in_turn(draw_svg, "SVG", 60, 41);
  fail_in_turn(draw_pdf, "PDF", 60, 41);
}

static int set_up(void **state) {
  cJSON_InitHooks(&(cJSON_Hooks){.malloc_fn = __wrap_malloc, .free_fn = free});
  char path[600];
  ox_messages messages = {0};
  snprintf(path, sizeof path, "%s/demo.oxbow", getenv("OXBOW_LESSONS"));
  if (ox_lesson_read(path, &lesson, &messages) == OX_ERROR) return -1;
  demo = ox_lesson_to_text(lesson);
  return ox_flight_solve(&lesson->cases[1].c, &flight) == OX_ERROR ? -1 : 0;
}

static int tear_down(void **state) {
  ox_lesson_free(lesson);
  free(demo);
  return 0;
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(lessons_are_read_and_printed),
      cmocka_unit_test(words_are_made),
      cmocka_unit_test(tracks_are_written),
      cmocka_unit_test(pictures_are_drawn),
  };
  return cmocka_run_group_tests(tests, set_up, tear_down);
}
