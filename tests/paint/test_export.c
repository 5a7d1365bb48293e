/* PNG, SVG and PDF: what is in the bytes, and what happens when they cannot be written. */
#include <locale.h>

#include "ox_test.h"
#include "oxbow/export.h"
#include "paint_cases.h"

typedef struct {
  unsigned char *bytes;
  size_t count, room;
  size_t refuse_after; /* bytes; 0: never */
  size_t calls_after_refusal;
} heap_file;

static ox_status take(void *context, const void *bytes, size_t length) {
  heap_file *f = context;
  if (f->refuse_after && f->count + length > f->refuse_after) {
    f->calls_after_refusal++;
    return OX_ERROR;
  }
  if (f->count + length + 1 > f->room) {
    f->room = 2 * (f->count + length + 1);
    f->bytes = realloc(f->bytes, f->room);
    if (!f->bytes) abort();
  }
  memcpy(f->bytes + f->count, bytes, length);
  f->count += length;
  f->bytes[f->count] = '\0';
  return OX_OK;
}

static ox_case the_case;

static heap_file run(ox_export_format format, double width, double height, size_t scenes) {
  the_case = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&the_case, &paint_flight), OX_ERROR);
  ox_scene all[3];
  for (size_t i = 0; i < 3; i++) all[i] = paint_scene(&the_case, &paint_flight, OX_PALETTE_PRINT);
  ox_export_options o = {.format = format, .width = width, .height = height, .t_s = 90};
  heap_file f = {0};
  const char *error = NULL;
  assert_int_equal(ox_export(all, scenes, &o, take, &f, &error), OX_OK);
  assert_null(error);
  assert_true(f.count > 100);
  return f;
}

static bool contains(const heap_file *f, const char *words) {
  size_t n = strlen(words);
  for (size_t i = 0; i + n <= f->count; i++)
    if (memcmp(f->bytes + i, words, n) == 0) return true;
  return false;
}

static size_t big_endian(const unsigned char *p) {
  return (size_t)p[0] << 24 | (size_t)p[1] << 16 | (size_t)p[2] << 8 | p[3];
}

static void a_png_has_the_size_asked_for_and_no_transparency(void **state) {
  (void)state;
  heap_file f = run(OX_EXPORT_PNG, 640, 400, 1);
  assert_memory_equal(f.bytes, "\x89PNG\r\n\x1a\n", 8);
  assert_int_equal(big_endian(f.bytes + 16), 640);
  assert_int_equal(big_endian(f.bytes + 20), 400);
  assert_int_equal(f.bytes[25], 2); /* colour type: RGB without alpha */
  free(f.bytes);
}

static void an_svg_is_in_points_and_carries_its_words(void **state) {
  (void)state;
  heap_file f = run(OX_EXPORT_SVG, 842, 595, 1);
  assert_true(contains(&f, "width=\"842pt\" height=\"595pt\""));
  assert_true(contains(&f, "<title>Crosswind at the lake"));
  assert_true(contains(&f, "<desc>"));
  assert_true(contains(&f, "not for navigation"));
  assert_true(contains(&f, "</svg>"));
  free(f.bytes);
}

static void words_in_an_svg_are_escaped(void **state) {
  (void)state;
  the_case = paint_demo_case();
  strcpy(the_case.name, "a < b & \"c\" \x01");
  assert_int_not_equal(ox_flight_solve(&the_case, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&the_case, &paint_flight, OX_PALETTE_PRINT);
  scene.title = NULL;
  ox_export_options o = {.format = OX_EXPORT_SVG, .width = 300, .height = 200, .t_s = nan("")};
  heap_file f = {0};
  assert_int_equal(ox_export(&scene, 1, &o, take, &f, NULL), OX_OK);
  assert_true(contains(&f, "<title>a &lt; b &amp; &quot;c&quot;  </title>"));
  free(f.bytes);
}

static void a_pdf_has_a_sheet_a_scene(void **state) {
  (void)state;
  heap_file f = run(OX_EXPORT_PDF, 842, 595, 3);
  assert_memory_equal(f.bytes, "%PDF-1.", 7);
  assert_true(contains(&f, "/Count 3"));
  assert_true(contains(&f, "%%EOF"));
  free(f.bytes);
  f = run(OX_EXPORT_PDF, 842, 595, 1);
  assert_true(contains(&f, "/Count 1"));
  assert_false(contains(&f, "/Count 3"));
  free(f.bytes);
}

static void the_same_input_gives_the_same_bytes(void **state) {
  (void)state;
  for (int format = OX_EXPORT_PNG; format <= OX_EXPORT_PDF; format++) {
    heap_file a = run((ox_export_format)format, 600, 420, 2);
    heap_file b = run((ox_export_format)format, 600, 420, 2);
    assert_int_equal(a.count, b.count);
    assert_memory_equal(a.bytes, b.bytes, a.count);
    free(a.bytes);
    free(b.bytes);
  }
}

/* All overlays of one seed; the spread's counts are made up, its place is the hold's. */
static heap_file run_overlaid(ox_export_format format, double t_s, const double *t_s_of,
                              size_t scenes) {
  static uint32_t cells[OX_SPREAD_CELLS * OX_SPREAD_CELLS];
  for (uint32_t i = 0; i < OX_SPREAD_CELLS * OX_SPREAD_CELLS; i++) cells[i] = i % 997;
  ox_spread spread = {.runs = 1000, .cell_nm = 0.05, .origin_nm = {-4.8, -4.8}, .cells = cells};
  the_case = paint_demo_case();
  ox_scene all[2];
  for (size_t i = 0; i < 2; i++) {
    all[i] = paint_overlaid_scene(&the_case, OX_PALETTE_PRINT, 0);
    all[i].spread = &spread;
  }
  ox_export_options o = {
      .format = format, .width = 600, .height = 420, .t_s = t_s, .t_s_of = t_s_of};
  heap_file f = {0};
  assert_int_equal(ox_export(all, scenes, &o, take, &f, NULL), OX_OK);
  return f;
}

static void overlays_give_the_same_bytes_again(void **state) {
  (void)state;
  for (int format = OX_EXPORT_PNG; format <= OX_EXPORT_PDF; format++) {
    heap_file a = run_overlaid((ox_export_format)format, 90, NULL, 2);
    heap_file between = run((ox_export_format)format, 300, 200, 1);
    heap_file b = run_overlaid((ox_export_format)format, 90, NULL, 2);
    assert_int_equal(a.count, b.count);
    assert_memory_equal(a.bytes, b.bytes, a.count);
    free(between.bytes);
    free(a.bytes);
    free(b.bytes);
  }
}

static void the_words_of_an_svg_name_the_overlays(void **state) {
  (void)state;
  heap_file f = run_overlaid(OX_EXPORT_SVG, 90, NULL, 1);
  assert_true(contains(&f, ox_mistake_name((ox_mistake)0)));
  assert_true(contains(&f, "as an illustration only"));
  assert_true(contains(&f, "5 % or more of 1000 runs"));
  free(f.bytes);
  f = run(OX_EXPORT_SVG, 600, 420, 1);
  assert_false(contains(&f, "illustration"));
  assert_false(contains(&f, "runs went"));
  free(f.bytes);
}

static bool same_bytes(const heap_file *a, const heap_file *b) {
  return a->count == b->count && memcmp(a->bytes, b->bytes, a->count) == 0;
}

static void every_scene_may_have_its_own_instant(void **state) {
  (void)state;
  const double alike[] = {90, 90}, other_first[] = {40, 90}, other_second[] = {90, 40};
  for (int format = OX_EXPORT_PNG; format <= OX_EXPORT_PDF; format++) {
    ox_export_format k = (ox_export_format)format;
    heap_file one = run_overlaid(k, 90, NULL, 2), same = run_overlaid(k, -7, alike, 2);
    heap_file first = run_overlaid(k, 90, other_first, 2);
    heap_file second = run_overlaid(k, 90, other_second, 2);
    assert_true(same_bytes(&one, &same));
    assert_false(same_bytes(&one, &first));
    assert_int_equal(same_bytes(&one, &second), k != OX_EXPORT_PDF); /* only a PDF has a second */
    free(one.bytes);
    free(same.bytes);
    free(first.bytes);
    free(second.bytes);
  }
}

static void a_sink_that_refuses_makes_the_export_fail_and_is_not_asked_again(void **state) {
  (void)state;
  for (int format = OX_EXPORT_PNG; format <= OX_EXPORT_PDF; format++) {
    heap_file whole = run((ox_export_format)format, 600, 420, 2);
    const size_t limits[] = {1, 60, whole.count / 2, whole.count - 1};
    for (size_t i = 0; i < 4; i++) {
      ox_scene scenes[2];
      for (size_t k = 0; k < 2; k++)
        scenes[k] = paint_scene(&the_case, &paint_flight, OX_PALETTE_PRINT);
      ox_export_options o = {
          .format = (ox_export_format)format, .width = 600, .height = 420, .t_s = 90};
      heap_file f = {.refuse_after = limits[i]};
      const char *error = NULL;
      assert_int_equal(ox_export(scenes, 2, &o, take, &f, &error), OX_ERROR);
      assert_non_null(error);
      assert_int_equal(f.calls_after_refusal, 1);
      free(f.bytes);
    }
    free(whole.bytes);
  }
}

static void sizes_out_of_range_are_refused_with_a_sentence(void **state) {
  (void)state;
  the_case = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&the_case, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&the_case, &paint_flight, OX_PALETTE_LIGHT);
  const double bad[] = {0, -3, nan(""), HUGE_VAL, 16385, 40000};
  for (int format = OX_EXPORT_PNG; format <= OX_EXPORT_PDF; format++)
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
      for (int side = 0; side < 2; side++) {
        ox_export_options o = {.format = (ox_export_format)format,
                               .width = side ? bad[i] : 300,
                               .height = side ? 300 : bad[i],
                               .t_s = 90};
        heap_file f = {0};
        const char *error = NULL;
        assert_int_equal(ox_export(&scene, 1, &o, take, &f, &error), OX_ERROR);
        assert_non_null(strstr(error, "size"));
        assert_int_equal(f.count, 0);
      }
}

static void nothing_to_draw_is_refused(void **state) {
  (void)state;
  ox_export_options o = {.format = OX_EXPORT_PDF, .width = 300, .height = 300, .t_s = nan("")};
  heap_file f = {0};
  const char *error = NULL;
  assert_int_equal(ox_export(NULL, 0, &o, take, &f, &error), OX_ERROR);
  assert_non_null(error);
  assert_int_equal(f.count, 0);
}

static void the_caution_is_in_an_export_whatever_the_layers_say(void **state) {
  (void)state;
  the_case = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&the_case, &paint_flight), OX_ERROR);
  heap_file with[2] = {{0}, {0}};
  for (int i = 0; i < 2; i++) {
    ox_scene scene = paint_scene(&the_case, &paint_flight, OX_PALETTE_LIGHT);
    if (i == 1) scene.layers &= (unsigned)~OX_LAYER_FURNITURE;
    ox_export_options o = {.format = OX_EXPORT_PNG, .width = 500, .height = 350, .t_s = nan("")};
    assert_int_equal(ox_export(&scene, 1, &o, take, &with[i], NULL), OX_OK);
  }
  assert_int_equal(with[0].count, with[1].count);
  assert_memory_equal(with[0].bytes, with[1].bytes, with[0].count);
  free(with[0].bytes);
  free(with[1].bytes);
}

static void a_decimal_comma_changes_no_byte(void **state) {
  (void)state;
  heap_file plain = run(OX_EXPORT_SVG, 842, 595, 1);
  const char *names[] = {"de_DE.UTF-8", "fr_FR.UTF-8", "de_DE.utf8", "C.UTF-8"};
  const char *set = NULL;
  for (size_t i = 0; i < 4 && !set; i++) set = setlocale(LC_ALL, names[i]);
  assert_non_null(set);
  heap_file comma = run(OX_EXPORT_SVG, 842, 595, 1);
  setlocale(LC_ALL, "C");
  assert_int_equal(plain.count, comma.count);
  assert_memory_equal(plain.bytes, comma.bytes, plain.count);
  free(plain.bytes);
  free(comma.bytes);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_png_has_the_size_asked_for_and_no_transparency),
      cmocka_unit_test(an_svg_is_in_points_and_carries_its_words),
      cmocka_unit_test(words_in_an_svg_are_escaped),
      cmocka_unit_test(a_pdf_has_a_sheet_a_scene),
      cmocka_unit_test(the_same_input_gives_the_same_bytes),
      cmocka_unit_test(overlays_give_the_same_bytes_again),
      cmocka_unit_test(the_words_of_an_svg_name_the_overlays),
      cmocka_unit_test(every_scene_may_have_its_own_instant),
      cmocka_unit_test(a_sink_that_refuses_makes_the_export_fail_and_is_not_asked_again),
      cmocka_unit_test(sizes_out_of_range_are_refused_with_a_sentence),
      cmocka_unit_test(nothing_to_draw_is_refused),
      cmocka_unit_test(the_caution_is_in_an_export_whatever_the_layers_say),
      cmocka_unit_test(a_decimal_comma_changes_no_byte),
  };
  return cmocka_run_group_tests_name("export", tests, NULL, NULL);
}
