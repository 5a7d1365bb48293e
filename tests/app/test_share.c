/* What is exported, without a window: choices, what they come to, what is refused. */
#include "app_test.h"

#include <math.h>

#include "ox_case_scene.h"
#include "ox_export_file.h"
#include "ox_print_page.h"
#include "oxbow/words.h"

static ox_lesson *lesson_read(const char *name) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  char *path = g_build_filename(g_getenv("OXBOW_LESSONS"), name, NULL);
  assert_int_not_equal(ox_lesson_read(path, &lesson, &messages), OX_ERROR);
  ox_messages_clear(&messages);
  g_free(path);
  return lesson;
}

static ox_share_choice chosen(ox_share_what what, ox_share_format format) {
  ox_share_choice choice = ox_share_choice_default();
  choice.what = what;
  choice.format = format;
  return choice;
}

static char *contents(const char *path, size_t *length) {
  char *bytes = NULL;
  assert_true(g_file_get_contents(path, &bytes, length, NULL));
  return bytes;
}

/* ---- choices ---------------------------------------------------------------------------- */

static void a_choice_is_remembered_whole(void **state) {
  char *path = app_test_path("chosen");
  for (int what = 0; what < OX_SHARE_WHAT_COUNT; what++) {
    size_t count;
    const ox_share_format *formats = ox_share_formats((ox_share_what)what, &count);
    assert_true(count >= 1);
    ox_share_choice c = chosen((ox_share_what)what, formats[count - 1]);
    c.unit = OX_SHARE_CM_300;
    c.size[OX_SHARE_SIZE_PIXELS][0] = 1920;
    c.size[OX_SHARE_SIZE_CM][1] = 9.5;
    c.size[OX_SHARE_SIZE_MOVING][0] = 640;
    c.paper = OX_SHARE_LETTER_UPRIGHT;
    c.palette = OX_PALETTE_PROJECTOR;
    c.sheet_palette = OX_PALETTE_LIGHT;
    c.transparent = TRUE;
    c.pen_marks = FALSE;
    c.fps = 12;
    c.speed = 25;
    OxSettings *settings = ox_settings_new(path);
    ox_share_choice_remember(&c, settings);
    g_object_unref(settings);
    settings = ox_settings_new(path);
    ox_share_choice back = ox_share_choice_recall(settings);
    g_object_unref(settings);
    assert_int_equal(back.what, c.what);
    assert_int_equal(back.format, c.format);
    assert_int_equal(back.unit, c.unit);
    assert_int_equal(back.paper, c.paper);
    assert_int_equal(back.palette, c.palette);
    assert_int_equal(back.sheet_palette, c.sheet_palette);
    assert_int_equal(back.transparent, c.transparent);
    assert_int_equal(back.pen_marks, c.pen_marks);
    assert_true(back.fps == c.fps && back.speed == c.speed);
    for (int i = 0; i < OX_SHARE_SIZE_COUNT; i++)
      for (int side = 0; side < 2; side++) assert_true(back.size[i][side] == c.size[i][side]);
  }
  g_free(path);
}

static void what_makes_no_sense_is_as_usual(void **state) {
  char *path = app_test_path("odd");
  assert_true(g_file_set_contents(
      path,
      "[oxbow]\nexport-what=moving\nexport-format=pdf\nexport-width-px=7\nexport-height-mm=x\n"
      "export-fps=9999\nexport-palette=purple\nexport-sheet-palette=\nexport-unit=ell\n",
      -1, NULL));
  OxSettings *settings = ox_settings_new(path);
  ox_share_choice c = ox_share_choice_recall(settings), usual = ox_share_choice_default();
  assert_int_equal(c.what, OX_SHARE_MOVING);
  assert_int_equal(c.format, OX_SHARE_APNG); /* there is no moving PDF */
  assert_int_equal(c.unit, OX_SHARE_PIXELS);
  assert_int_equal(c.palette, OX_PALETTE_LIGHT);
  assert_int_equal(c.sheet_palette, OX_PALETTE_PRINT);
  assert_true(c.size[0][0] == usual.size[0][0] && c.size[1][1] == usual.size[1][1]);
  assert_true(c.fps == usual.fps);
  g_object_unref(settings);
  g_free(path);
}

/* An inch is 2.54 cm and 72 points by definition; a pixel of SVG is 1/96 inch (CSS 2.1, 4.3.2). */
static void sizes_come_out_as_they_were_asked_for(void **state) {
  static const struct {
    ox_share_format format;
    ox_share_unit unit;
    double width, height, want_width, want_height, want_dpi;
  } rows[] = {
      {OX_SHARE_PNG, OX_SHARE_PIXELS, 1600, 1200, 1600, 1200, 150},
      {OX_SHARE_PNG, OX_SHARE_CM_150, 16, 12, 945, 709, 150},    /* 16 / 2.54 * 150 = 944.9 */
      {OX_SHARE_PNG, OX_SHARE_CM_300, 16, 12, 1890, 1417, 300},  /* 1889.8, 1417.3 */
      {OX_SHARE_SVG, OX_SHARE_PIXELS, 960, 720, 720, 540, 0},
      {OX_SHARE_SVG, OX_SHARE_CM_300, 25.4, 12.7, 720, 360, 0},
  };
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    ox_share_choice c = chosen(OX_SHARE_PICTURE, rows[i].format);
    c.unit = rows[i].unit;
    ox_share_size size = ox_share_choice_size(&c);
    c.size[size][0] = rows[i].width;
    c.size[size][1] = rows[i].height;
    ox_export_options o = ox_share_options(&c, 0);
    assert_close(o.width, rows[i].want_width, 1e-9, "size");
    assert_close(o.height, rows[i].want_height, 1e-9, "size");
    assert_close(o.dpi, rows[i].want_dpi, 1e-9, "size");
  }
  /* ISO 216: A4 is 210 mm x 297 mm; Letter is 8.5 in x 11 in. */
  ox_share_choice c = chosen(OX_SHARE_CASES, OX_SHARE_PDF);
  c.paper = OX_SHARE_A4_UPRIGHT;
  assert_close(ox_share_options(&c, 0).width, 210 / 25.4 * 72, 0.01, "size");
  assert_close(ox_share_options(&c, 0).height, 297 / 25.4 * 72, 0.01, "size");
  c.paper = OX_SHARE_LETTER_ACROSS;
  assert_close(ox_share_options(&c, 0).width, 11 * 72, 0.01, "size");
  assert_close(ox_share_options(&c, 0).height, 8.5 * 72, 0.01, "size");
  assert_true(isnan(ox_share_options(&c, 0).t_s));
}

/* ---- files ------------------------------------------------------------------------------ */

static void everything_is_written_in_each_of_its_formats(void **state) {
  static const char *const starts[OX_SHARE_FORMAT_COUNT] = {
      [OX_SHARE_PNG] = "\x89PNG", [OX_SHARE_SVG] = "<?xml", [OX_SHARE_PDF] = "%PDF-",
      [OX_SHARE_APNG] = "\x89PNG", [OX_SHARE_GIF] = "GIF89a", [OX_SHARE_GEOJSON] = "{",
      [OX_SHARE_KML] = "<?xml", [OX_SHARE_GPX] = "<?xml"};
  ox_lesson *lesson = lesson_read("places.oxbow");
  ox_export_job job = {.lesson = lesson, .t_s = 30};
  for (int what = 0; what < OX_SHARE_WHAT_COUNT; what++) {
    size_t count;
    const ox_share_format *formats = ox_share_formats((ox_share_what)what, &count);
    for (size_t i = 0; i < count; i++) {
      ox_share_choice c = chosen((ox_share_what)what, formats[i]);
      c.size[OX_SHARE_SIZE_MOVING][0] = 160;
      c.size[OX_SHARE_SIZE_MOVING][1] = 120;
      c.speed = 100;
      char *error = NULL, *path = app_test_path("all");
      if (ox_export_file(&job, &c, path, &error) == OX_ERROR)
        fail_msg("%d as %s: %s", what, ox_share_ending(formats[i]), error);
      assert_null(error);
      size_t length;
      char *bytes = contents(path, &length);
      assert_true(length > 300);
      assert_memory_equal(bytes, starts[formats[i]], strlen(starts[formats[i]]));
      g_free(bytes);
      g_free(path);
    }
  }
  ox_lesson_free(lesson);
}

static void the_png_has_the_size_and_the_ground_asked_for(void **state) {
  ox_lesson *lesson = lesson_read("places.oxbow");
  ox_export_job job = {.lesson = lesson, .t_s = 30};
  for (int transparent = 0; transparent <= 1; transparent++) {
    ox_share_choice c = chosen(OX_SHARE_PICTURE, OX_SHARE_PNG);
    c.unit = OX_SHARE_CM_150;
    c.size[OX_SHARE_SIZE_CM][0] = 10;
    c.size[OX_SHARE_SIZE_CM][1] = 6;
    c.transparent = transparent;
    char *error = NULL, *path = app_test_path("sized.png");
    assert_int_equal(ox_export_file(&job, &c, path, &error), OX_OK);
    cairo_surface_t *read = cairo_image_surface_create_from_png(path);
    assert_int_equal(cairo_image_surface_get_width(read), 591); /* 10 / 2.54 * 150 = 590.6 */
    assert_int_equal(cairo_image_surface_get_height(read), 354);
    assert_int_equal(cairo_image_surface_get_format(read) == CAIRO_FORMAT_ARGB32, transparent);
    cairo_surface_destroy(read);
    g_free(path);
  }
  ox_lesson_free(lesson);
}

static size_t png_bytes(const ox_export_job *job, gboolean pen_marks) {
  ox_share_choice c = chosen(OX_SHARE_PICTURE, OX_SHARE_SVG);
  char *error = NULL;
  c.pen_marks = pen_marks;
  GBytes *bytes = ox_export_bytes(job, &c, &error);
  assert_non_null(bytes);
  size_t length;
  const char *text = g_bytes_get_data(bytes, &length);
  assert_int_equal(g_strstr_len(text, (gssize)length, "With marks of a pen") != NULL, pen_marks);
  g_bytes_unref(bytes);
  return length;
}

static void pen_marks_are_there_or_not_as_chosen(void **state) {
  ox_lesson *lesson = lesson_read("places.oxbow");
  ox_ink *ink = ox_ink_new();
  assert_int_equal(ox_ink_begin(ink, OX_INK_BLUE, OX_INK_BROAD, (ox_vec){0, 0}), OX_OK);
  for (int i = 1; i < 30; i++)
    assert_int_equal(ox_ink_extend(ink, (ox_vec){0.1 * i, sin(0.5 * i)}), OX_OK);
  ox_ink_free(lesson->cases[0].ink);
  lesson->cases[0].ink = ink;
  ox_export_job job = {.lesson = lesson, .t_s = 30};
  assert_true(png_bytes(&job, TRUE) > png_bytes(&job, FALSE));
  ox_lesson_free(lesson);
}

/* ---- what is refused -------------------------------------------------------------------- */

static void assert_refused(const ox_export_job *job, const ox_share_choice *c, const char *part) {
  char *path = app_test_path("refused"), *error = NULL;
  assert_true(g_file_set_contents(path, "as it was", -1, NULL));
  assert_int_equal(ox_export_file(job, c, path, &error), OX_ERROR);
  assert_non_null(error);
  if (!strstr(error, part)) fail_msg("%s", error);
  size_t length;
  char *bytes = contents(path, &length);
  assert_string_equal(bytes, "as it was");
  g_free(bytes);
  g_free(error);
  g_free(path);
}

static void a_hidden_answer_is_not_given_away(void **state) {
  static const ox_share_what gives_away[] = {OX_SHARE_MOMENTS, OX_SHARE_MOVING, OX_SHARE_TRACK};
  ox_lesson *lesson = lesson_read("places.oxbow");
  ox_case_scene *made = ox_case_scene_new(lesson, 0, OX_PALETTE_LIGHT, TRUE, NULL);
  made->scene.hide_answer = true;
  ox_export_job job = {.lesson = lesson, .shown = &made->scene, .t_s = 30};
  for (size_t i = 0; i < G_N_ELEMENTS(gives_away); i++) {
    ox_share_choice c = chosen(gives_away[i], OX_SHARE_PNG);
    ox_share_choice_settle(&c);
    assert_refused(&job, &c, "hidden");
  }
  char *error = NULL;
  ox_share_choice c = chosen(OX_SHARE_PICTURE, OX_SHARE_SVG);
  GBytes *bytes = ox_export_bytes(&job, &c, &error);
  size_t length;
  const char *text = g_bytes_get_data(bytes, &length);
  assert_non_null(g_strstr_len(text, (gssize)length, "how it is flown is not shown"));
  assert_null(g_strstr_len(text, (gssize)length, lesson->cases[0].c.name));
  assert_non_null(g_strstr_len(text, (gssize)length, "Case 1"));
  g_bytes_unref(bytes);
  g_free(made);
  ox_lesson_free(lesson);
}

static void a_track_needs_a_place(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  ox_export_job job = {.lesson = lesson};
  ox_share_choice c = chosen(OX_SHARE_TRACK, OX_SHARE_KML);
  assert_refused(&job, &c, "latitude and longitude");
  ox_lesson_free(lesson);
}

static bool stop_after_some(void *data, double share) {
  assert_true(share >= 0 && share < 1);
  return ++*(int *)data < 5;
}

static void a_moving_picture_that_is_stopped_leaves_nothing(void **state) {
  ox_lesson *lesson = ox_lesson_new();
  for (int format = OX_SHARE_APNG; format <= OX_SHARE_GIF; format++) {
    int asked = 0;
    ox_export_job job = {.lesson = lesson, .go_on = stop_after_some, .data = &asked};
    ox_share_choice c = chosen(OX_SHARE_MOVING, (ox_share_format)format);
    c.size[OX_SHARE_SIZE_MOVING][0] = c.size[OX_SHARE_SIZE_MOVING][1] = 100;
    assert_refused(&job, &c, "stopped");
    assert_in_range(asked, 5, 6);
  }
  ox_lesson_free(lesson);
}

static void overlays_are_kept_apart_from_the_window(void **state) {
  ox_lesson *lesson = lesson_read("places.oxbow");
  ox_case_scene *made = ox_case_scene_new(lesson, 0, OX_PALETTE_LIGHT, TRUE, NULL);
  ox_scene_other other = {&lesson->cases[0].c, &made->flight, "the other"};
  char *name = g_strdup("compared");
  made->scene.compare = &made->flight;
  made->scene.compare_name = name;
  made->scene.others = &other;
  made->scene.other_count = 1;
  ox_laid_over *kept = ox_laid_over_copy(&made->scene);
  ox_flight flight = made->flight;
  g_free(name);
  g_free(made);
  const ox_scene *scene = ox_laid_over_scene(kept);
  assert_string_equal(scene->compare_name, "compared");
  assert_memory_equal(scene->compare, &flight, sizeof flight);
  assert_int_equal(scene->other_count, 1);
  assert_string_equal(scene->others[0].name, "the other");
  assert_true(ox_case_equal(scene->others[0].c, &lesson->cases[0].c));
  ox_laid_over_free(kept);
  ox_lesson_free(lesson);
}

/* ---- paper ------------------------------------------------------------------------------ */

/* 1 NM is 1852 m exactly (BIPM); 72 points are 25.4 mm. */
static void a_mile_on_paper_is_told_in_millimetres_and_as_a_ratio(void **state) {
  static const struct {
    double points_per_nm;
    const char *want;
  } rows[] = {{72.0 / 25.4 * 18.52, "1 NM is 18.5 mm, 1 : 100\u202f000"},
              {72.0 / 25.4 * 10.0, "1 NM is 10.0 mm, 1 : 185\u202f200"},
              {72.0 / 25.4 * 1.0, "1 NM is 1.0 mm, 1 : 1\u202f852\u202f000"},
              {72.0 / 25.4 * 7.4, "1 NM is 7.4 mm, 1 : 250\u202f300"}}; /* 250 270 */
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    char *words = ox_print_scale_words(rows[i].points_per_nm);
    assert_string_equal(words, rows[i].want);
    g_free(words);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_choice_is_remembered_whole),
      cmocka_unit_test(what_makes_no_sense_is_as_usual),
      cmocka_unit_test(sizes_come_out_as_they_were_asked_for),
      cmocka_unit_test(everything_is_written_in_each_of_its_formats),
      cmocka_unit_test(the_png_has_the_size_and_the_ground_asked_for),
      cmocka_unit_test(pen_marks_are_there_or_not_as_chosen),
      cmocka_unit_test(a_hidden_answer_is_not_given_away),
      cmocka_unit_test(a_track_needs_a_place),
      cmocka_unit_test(a_moving_picture_that_is_stopped_leaves_nothing),
      cmocka_unit_test(overlays_are_kept_apart_from_the_window),
      cmocka_unit_test(a_mile_on_paper_is_told_in_millimetres_and_as_a_ratio),
  };
  return cmocka_run_group_tests_name("share", tests, NULL, app_test_clean);
}
