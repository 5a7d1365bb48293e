/* Pictures in German: longer words, and still nothing on anything; the same figures, with a comma;
 * and the same bytes whatever the locale says of numbers. */
#include "label_check.h"
#include "ox_german.h"
#include "oxbow/export.h"
#include "oxbow/lesson.h"
#include "paint_cases.h"

enum { SEEDS = 160 };

static const double boards[][2] = {{700, 480}, {1400, 950}, {595, 842}, {1024, 700}};

static void german_labels_touch_nothing_in_any_seeded_case(void **state) {
  size_t placed = 0, all = 0;
  speak_german();
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(SEEDS); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    for (size_t s = 0; s < sizeof boards / sizeof *boards; s++) {
      ox_palette_id palette = (ox_palette_id)((seed + s) % OX_PALETTE_COUNT);
      ox_scene scene = paint_overlaid_scene(&c, palette, seed);
      if (seed % 2 == 0) scene.area = NULL;
      if (seed % 3 == 0) scene.compare = NULL;
      ox_picture *p = ox_picture_new(&scene, boards[s][0], boards[s][1]);
      assert_non_null(p);
      char where[64];
      snprintf(where, sizeof where, "German, seed %u, %gx%g", seed, boards[s][0], boards[s][1]);
      for (size_t i = 0; i < ox_picture_label_count(p); i++) {
        check_label(p, i, boards[s][0], boards[s][1], where);
        all++;
        placed += !ox_picture_label(p, i).dropped;
      }
      ox_picture_free(p);
    }
  }
  assert_true(all > (size_t)ox_test_least(7000));
  assert_true(placed * 10 > all * 6);
}

/* Names of fixes, and figures alone, are the same in both. */
static bool may_be_equal(const ox_case *c, const char *text) {
  if (strcmp(text, c->hold.fix) == 0) return true;
  for (const char *at = text; *at; at++)
    if (isalpha((unsigned char)*at) && !strstr(text, "parallel")) return false;
  return true;
}

/* The labels that are looked for are the same ones, in the same order, whether there is room for
 * them or not. */
static void every_label_is_translated_with_the_same_figures(void **state) {
  static char english[OX_LABELS_MAX][400];
  size_t compared = 0;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(SEEDS); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    for (int language = 0; language < 2; language++) {
      if (language == 0)
        speak_english();
      else
        speak_german();
      ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
      for (size_t i = 0; i < p->label_count; i++) {
        const char *text = ox_picture_label(p, i).text;
        if (language == 0)
          snprintf(english[i], sizeof english[i], "%s", text);
        else if (may_be_equal(&c, english[i]))
          assert_same_figures(english[i], text);
        else
          assert_german(english[i], text);
        compared += (size_t)language;
      }
      ox_picture_free(p);
    }
  }
  assert_true(compared > (size_t)ox_test_least(1500));
}

static void every_shipped_lesson_keeps_its_key_labels_in_german(void **state) {
  static const char *const names[] = {"demo", "adjusting", "high-and-fast", "distance"};
  size_t key = 0;
  speak_german();
  for (size_t n = 0; n < sizeof names / sizeof *names; n++) {
    char path[4096];
    snprintf(path, sizeof path, "%s/%s.oxbow", getenv("OXBOW_LESSONS"), names[n]);
    ox_lesson *lesson = NULL;
    ox_messages messages = {0};
    assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
    for (size_t k = 0; k < lesson->case_count; k++)
      for (size_t s = 0; s < sizeof boards / sizeof *boards; s++) {
        ox_picture *p = paint_picture(&lesson->cases[k].c, OX_PALETTE_LIGHT, boards[s][0],
                                      boards[s][1]);
        for (size_t i = 0; i < p->label_count; i++) {
          if (p->labels[i].priority != 1) continue;
          key++;
          if (p->labels[i].dropped)
            fail_msg("%s, %gx%g: \"%s\" is dropped", lesson->cases[k].c.name, boards[s][0],
                     boards[s][1], ox_picture_label(p, i).text);
        }
        ox_picture_free(p);
      }
    ox_lesson_free(lesson);
    ox_messages_clear(&messages);
  }
  assert_true(key > 150);
}

/* Which of the legend's words is wider depends on the language; none leaves the picture. */
static void the_legend_stays_in_its_room(void **state) {
  for (int language = 0; language < 2; language++) {
    if (language == 0)
      speak_english();
    else
      speak_german();
    for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(SEEDS); seed < seeds; seed++) {
      ox_case c = paint_seeded_case(seed);
      ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
      const ox_legend *l = &p->furniture.legend;
      const ox_rect *at = &p->furniture.legend_at;
      for (int i = 0; at->width > 0.0 && l->columns == 1 && i < l->count; i++)
        assert_true(l->words[l->row[i]].width + 3.4 * p->size.small <= at->width + 0.5);
      ox_picture_free(p);
    }
  }
}

/* --- exported ------------------------------------------------------------------------------ */

typedef struct {
  size_t count;
  char bytes[1 << 20];
} kept_file;

static ox_status keep(void *context, const void *bytes, size_t length) {
  kept_file *f = context;
  if (f->count + length >= sizeof f->bytes) return OX_ERROR;
  memcpy(f->bytes + f->count, bytes, length);
  f->count += length;
  f->bytes[f->count] = '\0';
  return OX_OK;
}

static void export_to(kept_file *f, ox_export_format format) {
  static ox_case c;
  c = paint_demo_case();
  strcpy(c.name, "Wind aus Nord");
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_PRINT);
  ox_export_options o = {.format = format, .width = 595, .height = 420, .t_s = 90};
  const char *error = NULL;
  f->count = 0;
  assert_int_equal(ox_export(&scene, 1, &o, keep, f, &error), OX_OK);
}

static void the_bytes_depend_on_the_language_and_not_on_the_locale_of_numbers(void **state) {
  static const ox_export_format formats[] = {OX_EXPORT_PNG, OX_EXPORT_SVG, OX_EXPORT_PDF};
  static kept_file comma, point, english;
  for (size_t i = 0; i < sizeof formats / sizeof *formats; i++) {
    speak_german();
    assert_non_null(setlocale(LC_NUMERIC, "de_DE.UTF-8"));
    export_to(&comma, formats[i]);
    assert_non_null(setlocale(LC_NUMERIC, "C"));
    export_to(&point, formats[i]);
    speak_english();
    export_to(&english, formats[i]);
    assert_int_equal(comma.count, point.count);
    assert_memory_equal(comma.bytes, point.bytes, comma.count);
    assert_true(english.count != comma.count ||
                memcmp(english.bytes, comma.bytes, comma.count) != 0);
  }
  assert_non_null(setlocale(LC_NUMERIC, "de_DE.UTF-8"));
}

/* Its title and description are for people: in their language, with the caution. */
static void an_svg_is_described_in_german(void **state) {
  static kept_file f;
  speak_german();
  export_to(&f, OX_EXPORT_SVG);
  const char *from = strstr(f.bytes, "<desc>"), *to = strstr(f.bytes, "</desc>");
  assert_true(from && to && to > from);
  char *words = strndup(from, (size_t)(to - from));
  assert_non_null(strstr(words, "Nur für den Unterricht, nicht zur Navigation"));
  assert_null(german_left_over(words));
  free(words);
}

static ox_status refuse(void *context, const void *bytes, size_t length) { return OX_ERROR; }

static void errors_are_told_in_german(void **state) {
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  const struct {
    size_t scenes;
    ox_export_options o;
  } rows[] = {{0, {.format = OX_EXPORT_PNG, .width = 9, .height = 9}},
              {1, {.format = OX_EXPORT_PNG, .width = 0, .height = 9}},
              {1, {.format = OX_EXPORT_SVG, .width = 20000, .height = 9}},
              {1, {.format = OX_EXPORT_APNG, .width = 9, .height = 9, .fps = 99, .speed = 1}},
              {1, {.format = OX_EXPORT_APNG, .width = 9, .height = 9, .fps = 60, .speed = 0.1}},
              {1, {.format = OX_EXPORT_GIF, .width = 9, .height = 9, .fps = 55, .speed = 1}},
              {1, {.format = OX_EXPORT_PNG, .width = 90, .height = 90}}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    const char *english = NULL, *german = NULL;
    speak_english();
    assert_int_equal(ox_export(&scene, rows[i].scenes, &rows[i].o, refuse, NULL, &english),
                     OX_ERROR);
    speak_german();
    assert_int_equal(ox_export(&scene, rows[i].scenes, &rows[i].o, refuse, NULL, &german),
                     OX_ERROR);
    assert_german(english, german);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(german_labels_touch_nothing_in_any_seeded_case),
      cmocka_unit_test(every_label_is_translated_with_the_same_figures),
      cmocka_unit_test(every_shipped_lesson_keeps_its_key_labels_in_german),
      cmocka_unit_test(the_legend_stays_in_its_room),
      cmocka_unit_test(the_bytes_depend_on_the_language_and_not_on_the_locale_of_numbers),
      cmocka_unit_test(an_svg_is_described_in_german),
      cmocka_unit_test(errors_are_told_in_german),
  };
  return cmocka_run_group_tests_name("german", tests, german_set_up, german_tear_down);
}
