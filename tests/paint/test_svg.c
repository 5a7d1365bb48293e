/* Words in an SVG: all that the painter shows, in its order, as text, whatever the names are. */
#include <glib/gstdio.h>
#include <locale.h>

#include "oxbow/moments_page.h"
#include "oxbow/text.h"
#include "svg_scenes.h"
#include "svg_texts.h"

/* --- what the painter shows ---------------------------------------------------------------- */

typedef struct {
  char *words;
  bool cut;  /* with an ellipsis */
  bool seen; /* some of its ink is on the page */
} shown;

static void free_shown(gpointer data) {
  shown *s = data;
  g_free(s->words);
  g_free(s);
}

static void note(void *data, cairo_t *cr, PangoLayout *layout, double x, double y) {
  PangoRectangle ink;
  pango_layout_get_extents(layout, &ink, NULL);
  double x0 = x + (double)ink.x / PANGO_SCALE, y0 = y + (double)ink.y / PANGO_SCALE;
  double x1 = x0 + (double)ink.width / PANGO_SCALE, y1 = y0 + (double)ink.height / PANGO_SCALE;
  cairo_user_to_device(cr, &x0, &y0);
  cairo_user_to_device(cr, &x1, &y1);
  shown *s = g_new0(shown, 1);
  s->words = svg_normal(pango_layout_get_text(layout));
  s->cut = pango_layout_is_ellipsized(layout);
  s->seen = x1 > 0 && y1 > 0 && x0 < SVG_WIDTH && y0 < SVG_HEIGHT && s->words[0] != '\0';
  g_ptr_array_add(data, s);
}

static GPtrArray *shown_by(const ox_scene *scene, double t_s, bool moments) {
  GPtrArray *all = g_ptr_array_new_with_free_func(free_shown);
  ox_text_sink sink = {note, all};
  cairo_surface_t *surface =
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, SVG_WIDTH, SVG_HEIGHT);
  ox_text_sink_set(surface, &sink);
  cairo_t *cr = cairo_create(surface);
  if (moments) {
    ox_moments m = ox_moments_make(scene->c, scene->flight, 0, 1);
    ox_moments_page_draw(cr, scene, &m, SVG_WIDTH, SVG_HEIGHT);
  } else {
    ox_picture *p = svg_picture(scene, SVG_WIDTH, SVG_HEIGHT);
    ox_picture_draw(p, cr, t_s);
    ox_picture_free(p);
  }
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
  return all;
}

static bool same_words(const shown *s, const char *words) {
  if (!s->cut) return strcmp(s->words, words) == 0;
  const char *dots = strstr(words, "…");
  return dots && strncmp(s->words, words, (size_t)(dots - words)) == 0;
}

/* Every text of the SVG is the next that the painter shows, and nothing on the page is missing. */
static void assert_same_texts(const svg_read *read, const GPtrArray *all) {
  guint next = 0;
  for (guint i = 0; i < read->texts->len; i++) {
    const char *words = ((svg_words *)g_ptr_array_index(read->texts, i))->words;
    for (;; next++) {
      if (next == all->len) fail_msg("\"%s\" is not shown", words);
      const shown *s = g_ptr_array_index(all, next);
      if (same_words(s, words)) break;
      if (s->seen) fail_msg("\"%s\" is missing before \"%s\"", s->words, words);
    }
    next++;
  }
  for (; next < all->len; next++) {
    const shown *s = g_ptr_array_index(all, next);
    if (s->seen) fail_msg("\"%s\" is missing", s->words);
  }
}

static void check_scene(const ox_scene *scene, double t_s, bool moments, const char *file) {
  GString *svg = svg_export(scene, SVG_WIDTH, SVG_HEIGHT, t_s, moments);
  svg_read *read = svg_read_new(svg->str, svg->len);
  GPtrArray *all = shown_by(scene, t_s, moments);
  assert_true(all->len >= 3);
  assert_same_texts(read, all);
  assert_true(g_file_set_contents(file, svg->str, (gssize)svg->len, NULL));
  GString *again = svg_export(scene, SVG_WIDTH, SVG_HEIGHT, t_s, moments);
  assert_true(g_string_equal(svg, again));
  g_string_free(again, TRUE);
  g_string_free(svg, TRUE);
  g_ptr_array_free(all, TRUE);
  svg_read_free(read);
}

static void lint_and_clear(char *folder) {
  svg_lint(folder);
  GDir *files = g_dir_open(folder, 0, NULL);
  const char *name;
  while ((name = g_dir_read_name(files)) != NULL) {
    char *path = g_build_filename(folder, name, NULL);
    g_remove(path);
    g_free(path);
  }
  g_dir_close(files);
  g_rmdir(folder);
  g_free(folder);
}

static void every_text_shown_is_in_the_svg_in_order(void **state) {
  (void)state;
  char *folder = g_dir_make_tmp("oxbow-svg-XXXXXX", NULL);
  assert_non_null(folder);
  for (unsigned seed = 1; seed <= 80; seed++) {
    ox_scene scene = svg_random_scene(seed);
    char name[32];
    g_snprintf(name, sizeof name, "%u.svg", seed);
    char *file = g_build_filename(folder, name, NULL);
    check_scene(&scene, seed % 3 ? 10.0 * seed : (double)NAN, seed % 8 == 0, file);
    g_free(file);
  }
  lint_and_clear(folder);
}

static ox_scene demo_scene(void) {
  svg_case = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&svg_case, &paint_flight), OX_ERROR);
  return paint_scene(&svg_case, &paint_flight, OX_PALETTE_PRINT);
}

static void every_label_that_is_placed_is_found(void **state) {
  (void)state;
  for (unsigned seed = 1; seed <= 12; seed++) {
    svg_case = paint_seeded_case(seed);
    ox_scene scene = paint_overlaid_scene(&svg_case, OX_PALETTE_LIGHT, seed);
    GString *svg = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, (double)NAN, false);
    svg_read *read = svg_read_new(svg->str, svg->len);
    ox_picture *p = svg_picture(&scene, SVG_WIDTH, SVG_HEIGHT);
    size_t placed = 0;
    for (size_t i = 0; i < ox_picture_label_count(p); i++) {
      ox_label_box label = ox_picture_label(p, i);
      if (label.dropped || !label.text[0]) continue;
      placed++;
      assert_true(svg_count(read, label.text) > 0);
    }
    assert_true(placed > 0);
    ox_picture_free(p);
    svg_read_free(read);
    g_string_free(svg, TRUE);
  }
}

static void no_letter_is_an_outline(void **state) {
  (void)state;
  ox_scene scene = demo_scene();
  GString *outlined = svg_outlined(&scene, SVG_WIDTH, SVG_HEIGHT, 30);
  assert_non_null(strstr(outlined->str, "glyph")); /* so cairo names them */
  for (int moments = 0; moments < 2; moments++) {
    GString *svg = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, 30, moments);
    assert_null(strstr(svg->str, "glyph0"));
    assert_null(strstr(svg->str, "<symbol"));
    assert_null(strstr(svg->str, "oxbow-words"));
    g_string_free(svg, TRUE);
  }
  g_string_free(outlined, TRUE);
}

static void the_file_is_less_than_a_third_of_one_with_outlines(void **state) {
  (void)state;
  for (unsigned seed = 0; seed < OX_PALETTE_COUNT; seed++) {
    svg_case = paint_demo_case();
    ox_scene scene = paint_overlaid_scene(&svg_case, (ox_palette_id)seed, seed);
    GString *svg = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, 30, false);
    GString *outlined = svg_outlined(&scene, SVG_WIDTH, SVG_HEIGHT, 30);
    print_message("# %zu bytes, with outlines %zu\n", (size_t)svg->len, (size_t)outlined->len);
    assert_true(3 * svg->len < outlined->len);
    g_string_free(svg, TRUE);
    g_string_free(outlined, TRUE);
  }
}

/* --- what a text says ---------------------------------------------------------------------- */

static void every_text_says_its_size_colour_and_width(void **state) {
  (void)state;
  ox_scene scene = demo_scene();
  GString *svg = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, 30, false);
  svg_read *read = svg_read_new(svg->str, svg->len);
  size_t bold = 0, wrapped = 0;
  for (guint i = 0; i < read->texts->len; i++) {
    const svg_words *w = g_ptr_array_index(read->texts, i);
    assert_true(w->keeps_width && w->lines > 0);
    assert_true(g_ascii_strtod(w->size, NULL) >= 4.0);
    assert_true(w->fill[0] == '#' && strlen(w->fill) == 7);
    bold += w->weight != NULL;
    wrapped += w->lines > 1;
  }
  assert_true(bold > 0 && bold < read->texts->len && wrapped > 0);
  assert_string_equal(read->language, "en");
  assert_non_null(strstr(read->font, "DejaVu Sans"));
  assert_true(g_str_has_suffix(read->font, ", sans-serif"));
  assert_true(g_str_has_prefix(read->title, "Crosswind at the lake"));
  svg_read_free(read);
  g_string_free(svg, TRUE);
}

/* With the catalogue as it was built, in a locale with a decimal comma. */
static void the_language_is_that_of_the_open_catalogue(void **state) {
  (void)state;
  char tag[16], small[2];
  ox_text_language(tag, sizeof tag);
  assert_string_equal(tag, "en");
  unsetenv("LANGUAGE");
  assert_non_null(setlocale(LC_ALL, "de_DE.utf8"));
  ox_text_open(ox_text_folder());
  ox_text_language(tag, sizeof tag);
  ox_text_language(small, sizeof small); /* no room: "en" cut short, never half a tag of another */
  ox_scene scene = demo_scene();
  GString *svg = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, 30, false);
  ox_text_open(NULL);
  setlocale(LC_ALL, "C");
  assert_string_equal(tag, "de");
  assert_string_equal(small, "e");
  svg_read *read = svg_read_new(svg->str, svg->len);
  assert_string_equal(read->language, "de");
  svg_read_free(read);
  g_string_free(svg, TRUE);
}

static void names_of_every_script_are_found_and_their_markup_is_none(void **state) {
  (void)state;
  static const char *const names[] = {
      "a < b & \"c\" 'd' > e]]>", "الانتظار فوق LARCH من الشمال", "שהייה 240", "等待航線 ABC",
      "zero\xef\xbf\xbfone", "tab\there", "\xe2\x80\xaeright to left", "#image1 \"surface1\""};
  for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
    ox_scene scene = demo_scene();
    strcpy(svg_case.name, names[i]);
    scene.title = NULL;
    GString *svg = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, 30, false);
    svg_read *read = svg_read_new(svg->str, svg->len);
    if (svg_count(read, names[i]) == 0) fail_msg("%s", names[i]);
    char *title = svg_normal(read->title), *wanted = svg_normal(names[i]);
    assert_string_equal(title, wanted);
    g_free(title);
    g_free(wanted);
    svg_read_free(read);
    g_string_free(svg, TRUE);
  }
}

static void a_hidden_answer_has_no_words(void **state) {
  (void)state;
  ox_scene scene = demo_scene();
  GString *open = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, (double)NAN, false);
  scene.hide_answer = true;
  GString *hidden = svg_export(&scene, SVG_WIDTH, SVG_HEIGHT, (double)NAN, false);
  svg_read *read = svg_read_new(hidden->str, hidden->len);
  assert_non_null(strstr(open->str, ">circuit 1"));
  assert_null(strstr(hidden->str, "circuit 1"));
  assert_int_equal(svg_count(read, "LARCH"), 1); /* what is given stays */
  svg_read_free(read);
  g_string_free(open, TRUE);
  g_string_free(hidden, TRUE);
}

/* --- the words of one layout --------------------------------------------------------------- */

static svg_read *read_of_words(const char *words, unsigned style, double width,
                               const cairo_matrix_t *m) {
  GString *made = g_string_new(NULL), *whole = g_string_new(NULL);
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream(svg_keep, made, 400, 300);
  ox_svg_texts *texts = ox_svg_texts_new(surface);
  ox_typesetter *typesetter = ox_typesetter_new();
  ox_lettering text = {0};
  ox_lettering_make(&text, typesetter, words, 12.0, style, width);
  cairo_t *cr = cairo_create(surface);
  cairo_set_matrix(cr, m);
  cairo_set_source_rgba(cr, 1.0, 0.5, 0.0, 0.25);
  ox_lettering_show(&text, cr, 20.0, 30.0);
  cairo_matrix_t after;
  cairo_get_matrix(cr, &after);
  assert_memory_equal(&after, m, sizeof after);
  cairo_destroy(cr);
  cairo_surface_finish(surface);
  cairo_surface_destroy(surface);
  ox_svg_texts_put(texts, whole, made->str);
  svg_read *read = svg_read_new(whole->str, whole->len);
  if (read->texts->len > 0) assert_non_null(strstr(whole->str, "fill-opacity=\"0.25\""));
  ox_svg_texts_free(texts);
  ox_lettering_clear(&text);
  ox_typesetter_free(typesetter);
  g_string_free(made, TRUE);
  g_string_free(whole, TRUE);
  return read;
}

static const svg_words *only_text(const svg_read *read) {
  assert_int_equal(read->texts->len, 1);
  return g_ptr_array_index(read->texts, 0);
}

static void turned_words_are_turned_and_moved_words_only_moved(void **state) {
  (void)state;
  cairo_matrix_t m;
  cairo_matrix_init_translate(&m, 5.0, 7.0);
  svg_read *read = read_of_words("moved", OX_TEXT_PLAIN, 0.0, &m);
  assert_null(only_text(read)->transform);
  assert_close(only_text(read)->x, 25.0, 0.001, "x");
  assert_true(only_text(read)->y > 37.0 && only_text(read)->y < 37.0 + 16.0);
  assert_string_equal(only_text(read)->fill, "#ff8000");
  svg_read_free(read);
  cairo_matrix_init(&m, 0.0, 2.0, -2.0, 0.0, 200.0, 50.0);
  read = read_of_words("turned", OX_TEXT_PLAIN, 0.0, &m);
  assert_string_equal(only_text(read)->transform, "matrix(0,2,-2,0,200,50)");
  assert_close(only_text(read)->x, 20.0, 0.001, "x");
  svg_read_free(read);
}

static void lines_join_to_the_words_as_they_were(void **state) {
  (void)state;
  static const struct {
    const char *words, *want;
    unsigned style;
    double width;
    size_t lines;
  } rows[] = {
      {"one  two ", "one two", OX_TEXT_PLAIN, 0, 1},
      {"one two three", "one two three", OX_TEXT_PLAIN, 40, 3},
      {"Donaudampfschifffahrt", "Donaudampfschifffahrt", OX_TEXT_PLAIN, 80, 2},
      {"above\n\nbelow", "above below", OX_TEXT_CENTRED, 0, 2},
      {"a line that is too long", "a line t…", OX_TEXT_ONE_LINE, 60, 1},
      {"   ", NULL, OX_TEXT_PLAIN, 0, 0},
      {"", NULL, OX_TEXT_PLAIN, 0, 0},
  };
  cairo_matrix_t m;
  cairo_matrix_init_identity(&m);
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    svg_read *read = read_of_words(rows[i].words, rows[i].style, rows[i].width, &m);
    if (!rows[i].want) {
      assert_int_equal(read->texts->len, 0);
    } else {
      assert_string_equal(only_text(read)->words, rows[i].want);
      assert_int_equal(only_text(read)->lines, rows[i].lines);
      assert_true(only_text(read)->keeps_width);
    }
    svg_read_free(read);
  }
}

static void words_off_the_page_are_left_out(void **state) {
  (void)state;
  cairo_matrix_t m;
  cairo_matrix_init_translate(&m, 1000.0, 0.0);
  svg_read *read = read_of_words("away", OX_TEXT_PLAIN, 0.0, &m);
  assert_int_equal(read->texts->len, 0);
  svg_read_free(read);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_text_shown_is_in_the_svg_in_order),
      cmocka_unit_test(every_label_that_is_placed_is_found),
      cmocka_unit_test(no_letter_is_an_outline),
      cmocka_unit_test(the_file_is_less_than_a_third_of_one_with_outlines),
      cmocka_unit_test(every_text_says_its_size_colour_and_width),
      cmocka_unit_test(the_language_is_that_of_the_open_catalogue),
      cmocka_unit_test(names_of_every_script_are_found_and_their_markup_is_none),
      cmocka_unit_test(a_hidden_answer_has_no_words),
      cmocka_unit_test(turned_words_are_turned_and_moved_words_only_moved),
      cmocka_unit_test(lines_join_to_the_words_as_they_were),
      cmocka_unit_test(words_off_the_page_are_left_out),
  };
  return cmocka_run_group_tests_name("svg", tests, NULL, NULL);
}
