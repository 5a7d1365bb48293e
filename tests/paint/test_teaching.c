/* What is taught with: cases in step, ink, places and paths, an answer that is hidden. */
#include "ox_test.h"
#include "oxbow/export.h"
#include "oxbow/ink.h"
#include "paint_cases.h"
#include "paint_private.h"

typedef struct {
  cairo_surface_t *surface;
  cairo_t *cr;
} canvas;

enum { WIDTH = 1000, HEIGHT = 700 };

static canvas canvas_new(void) {
  canvas k = {.surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, WIDTH, HEIGHT)};
  k.cr = cairo_create(k.surface);
  return k;
}

static void canvas_end(canvas k) {
  assert_int_equal(cairo_status(k.cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(k.cr);
  cairo_surface_destroy(k.surface);
}

static bool has_hue(const canvas *k, const ox_picture *p, ox_hue hue, ox_vec at, double within) {
  cairo_surface_flush(k->surface);
  const unsigned char *data = cairo_image_surface_get_data(k->surface);
  const ox_rgb *c = &p->palette->ink[hue];
  for (int y = (int)(at.y - within); y <= (int)(at.y + within); y++)
    for (int x = (int)(at.x - within); x <= (int)(at.x + within); x++) {
      if (x < 0 || y < 0 || x >= WIDTH || y >= HEIGHT) continue;
      const unsigned char *q = data + y * cairo_image_surface_get_stride(k->surface) + 4 * x;
      if (fabs(q[2] - 255 * c->r) < 4 && fabs(q[1] - 255 * c->g) < 4 &&
          fabs(q[0] - 255 * c->b) < 4)
        return true;
    }
  return false;
}

static const ox_label_box *label_named(const ox_picture *p, const char *words) {
  static ox_label_box box;
  for (size_t i = 0; i < ox_picture_label_count(p); i++) {
    box = ox_picture_label(p, i);
    if (strstr(box.text, words)) return &box;
  }
  return NULL;
}

/* --- cases in step ------------------------------------------------------------------------- */

static ox_flight others[2];
static ox_case other_cases[2];

static ox_scene scene_in_step(const ox_case *c, ox_scene_other *in_step, ox_palette_id palette) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(c, &paint_flight, palette);
  other_cases[0] = other_cases[1] = *c;
  other_cases[0].technique.drift = OX_DRIFT_NONE;
  other_cases[1].aircraft.ias_kt = 150;
  for (int i = 0; i < 2; i++)
    assert_int_not_equal(ox_flight_solve(&other_cases[i], &others[i]), OX_ERROR);
  in_step[0] = (ox_scene_other){&other_cases[0], &others[0], "No drift"};
  in_step[1] = (ox_scene_other){&other_cases[1], &others[1], "Faster"};
  scene.others = in_step;
  scene.other_count = 2;
  return scene;
}

static void two_more_cases_have_lines_labels_and_rows_of_their_own(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene_other in_step[2];
  for (int id = 0; id < OX_PALETTE_COUNT; id++) {
    ox_scene scene = scene_in_step(&c, in_step, (ox_palette_id)id);
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    assert_int_equal(p->other_count, 2);
    for (int i = 0; i < 2; i++) {
      assert_true(p->others[i].line.count > 20);
      const ox_label_box *box = label_named(p, in_step[i].name);
      assert_non_null(box);
      assert_false(box->dropped);
    }
    if (id != OX_PALETTE_PROJECTOR) {
      assert_true(ox_legend_names(p, OX_LINE_OTHER_1));
      assert_true(ox_legend_names(p, OX_LINE_OTHER_2));
    }
    ox_picture_free(p);
  }
}

static void their_aircraft_fly_in_step(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene_other in_step[2];
  ox_scene scene = scene_in_step(&c, in_step, OX_PALETTE_LIGHT);
  scene.layers = OX_LAYER_AIRCRAFT;
  for (int air = 0; air < 2; air++) {
    scene.view.air = air;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    const ox_hue hues[2] = {OX_HUE_COMPARE, OX_HUE_OTHER};
    int looked = 0;
    for (double t = 40; t < 500; t += 60) {
      canvas k = canvas_new();
      ox_picture_draw(p, k.cr, t);
      ox_viewport v = ox_picture_viewport_at(p, t);
      for (int i = 0; i < 2; i++) {
        ox_vec at = ox_viewport_to_dev(&v, ox_flight_at(&others[i], t).p_nm);
        ox_vec shown = ox_viewport_to_dev(&v, ox_flight_at(&paint_flight, t).p_nm);
        ox_vec other = ox_viewport_to_dev(&v, ox_flight_at(&others[1 - i], t).p_nm);
        bool alone = ox_vec_length(ox_vec_sub(at, shown)) > 40 && /* none flies over it */
                     ox_vec_length(ox_vec_sub(at, other)) > 40;
        if (!alone || !ox_rect_has(ox_rect_inset(p->map, 20), at)) continue;
        assert_true(has_hue(&k, p, hues[i], at, 4));
        looked++;
      }
      canvas_end(k);
    }
    assert_true(looked >= 6);
    ox_picture_free(p);
  }
}

static void a_third_case_in_step_is_left_out(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene_other many[3];
  ox_scene scene = scene_in_step(&c, many, OX_PALETTE_LIGHT);
  many[2] = many[0];
  scene.other_count = 3;
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  assert_int_equal(p->other_count, OX_SCENE_OTHERS_MAX);
  ox_picture_free(p);
}

/* --- ink ----------------------------------------------------------------------------------- */

static void ink_lies_where_it_was_drawn_in_its_hue_at_every_zoom(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  const ox_hue hues[] = {OX_HUE_PEN_BLACK, OX_HUE_PEN_VERMILLION, OX_HUE_PEN_BLUE};
  for (int id = 0; id < OX_PALETTE_COUNT; id++)
    for (int zoom = 1; zoom <= 2; zoom++) {
      ox_ink *ink = ox_ink_new();
      for (int colour = 0; colour < 3; colour++) {
        ox_vec from = {0.3, 0.25 * colour};
        assert_int_equal(ox_ink_begin(ink, (ox_ink_colour)colour, OX_INK_BROAD, from), OX_OK);
        for (int i = 1; i <= 30; i++)
          assert_int_equal(ox_ink_extend(ink, (ox_vec){0.3 + 0.02 * i, 0.25 * colour}), OX_OK);
      }
      ox_scene scene = paint_scene(&c, &paint_flight, (ox_palette_id)id);
      scene.ink = ink;
      scene.view.zoom = zoom;
      ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
      canvas k = canvas_new();
      ox_picture_draw(p, k.cr, nan(""));
      ox_viewport v = ox_picture_viewport(p);
      for (int colour = 0; colour < 3; colour++)
        for (double x = 0.3; x <= 0.9; x += 0.1) {
          ox_vec at = ox_viewport_to_dev(&v, (ox_vec){x, 0.25 * colour});
          if (!ox_rect_has(ox_rect_inset(p->map, 3), at)) continue;
          assert_true(has_hue(&k, p, hues[colour], at, 1));
        }
      canvas_end(k);
      ox_picture_free(p);
      ox_ink_free(ink);
    }
}

static void the_pen_grows_with_the_text(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  scene.text_scale = 2;
  ox_picture *q = ox_picture_new(&scene, WIDTH, HEIGHT);
  assert_close(q->size.pen_thin, 2 * p->size.pen_thin, 1e-9, "thin");
  assert_close(q->size.pen_broad, 2 * p->size.pen_broad, 1e-9, "broad");
  assert_true(p->size.pen_broad > 2 * p->size.pen_thin);
  ox_picture_free(p);
  ox_picture_free(q);
}

static void odd_strokes_are_drawn_without_harm(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_vec dot = {0.4, 0.4}, far[3] = {{-499, 499}, {499, -499}, {0, 0}};
  ox_vec same[4] = {{1, 1}, {1, 1}, {1, 1}, {1, 1}}, none[2] = {{nan(""), 0}, {0, HUGE_VAL}};
  ox_ink_stroke strokes[] = {{.count = 1, .points_nm = &dot, .width = OX_INK_BROAD},
                             {.count = 3, .points_nm = far},
                             {.count = 4, .points_nm = same},
                             {.count = 2, .points_nm = none},
                             {.count = 0, .points_nm = NULL}};
  ox_ink ink = {.stroke_count = 5, .strokes = strokes};
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  scene.ink = &ink;
  for (int zoom = 0; zoom < 3; zoom++) {
    scene.view.zoom = zoom * 10;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    canvas k = canvas_new();
    ox_picture_draw(p, k.cr, 50);
    ox_viewport v = ox_picture_viewport(p);
    ox_vec at = ox_viewport_to_dev(&v, dot);
    if (zoom == 0) assert_true(has_hue(&k, p, OX_HUE_PEN_BLACK, at, 1)); /* a point is a dot */
    canvas_end(k);
    ox_picture_free(p);
  }
}

/* --- places and paths ---------------------------------------------------------------------- */

static const ox_mark marks[] = {{{1.9, -1.1}, "ALDER", OX_MARK_POINT},
                                {{-1.5, 1.4}, "BRINE", OX_MARK_STATION},
                                {{-1.0, -1.3}, "MAPt", OX_MARK_MISSED_APPROACH_POINT},
                                {{0.4, -1.6}, "you are here", OX_MARK_PRESENT_POSITION},
                                {{2.4, 0.3}, "my outbound end", OX_MARK_GUESS}};
static const ox_vec way[] = {{0, 0}, {1.9, -1.1}, {3.0, -1.1}};
static const ox_path paths[] = {{way, 3, OX_PATH_ROUTE},
                                {way, 3, OX_PATH_MISSED},
                                {way, 3, OX_PATH_ALTERNATIVE},
                                {way, 3, OX_PATH_SKETCH}};

static void marks_have_symbols_and_names_that_touch_nothing(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  for (int up = 0; up < 2; up++) {
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.view.up = (ox_up)up;
    scene.marks = marks;
    scene.mark_count = sizeof marks / sizeof *marks;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    canvas k = canvas_new();
    ox_picture_draw(p, k.cr, nan(""));
    ox_viewport v = ox_picture_viewport(p);
    for (size_t i = 0; i < scene.mark_count; i++) {
      ox_vec at = ox_viewport_to_dev(&v, marks[i].at_nm);
      assert_true(ox_rect_has(p->map, at));
      ox_hue hue = marks[i].kind == OX_MARK_GUESS ? OX_HUE_GUESS : OX_HUE_TEXT;
      assert_true(has_hue(&k, p, hue, at, p->size.label));
      const ox_label_box *box = label_named(p, marks[i].name);
      assert_non_null(box);
      assert_false(box->dropped);
      ox_rect ink = {box->x, box->y, box->width, box->height};
      for (size_t n = 0; n < ox_picture_obstacle_count(p); n++) {
        ox_vec a, b;
        ox_picture_obstacle(p, n, &a, &b);
        assert_false(ox_rect_clip(ox_rect_inset(ink, 0.5), &a, &b));
      }
    }
    canvas_end(k);
    ox_picture_free(p);
  }
}

static void every_kind_of_path_is_drawn_and_named_in_the_legend(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  for (size_t i = 0; i < OX_PATH_KIND_COUNT; i++) {
    static const ox_line_kind rows[] = {OX_LINE_ROUTE, OX_LINE_MISSED, OX_LINE_ALTERNATIVE,
                                        OX_LINE_SKETCH};
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_PRINT);
    scene.paths = &paths[i];
    scene.path_count = 1;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    assert_true(p->paths[paths[i].kind].count >= 3);
    assert_true(ox_legend_names(p, rows[i]));
    canvas k = canvas_new();
    ox_picture_draw(p, k.cr, 30);
    canvas_end(k);
    ox_picture_free(p);
  }
}

static void paths_without_points_or_numbers_are_harmless(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  const ox_vec bad[] = {{nan(""), 1}, {HUGE_VAL, 2}, {0, 0}};
  const ox_path odd[] = {{NULL, 0, OX_PATH_ROUTE}, {bad, 3, OX_PATH_MISSED},
                         {way, 1, OX_PATH_SKETCH}, {way, 3, (ox_path_kind)77}};
  const ox_mark nowhere[] = {{{nan(""), 0}, "lost", OX_MARK_POINT}, {{1, 1}, NULL, OX_MARK_STATION},
                             {{1, 0}, "\xff\xfe", (ox_mark_kind)99}};
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  scene.paths = odd;
  scene.path_count = 4;
  scene.marks = nowhere;
  scene.mark_count = 3;
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  canvas k = canvas_new();
  ox_picture_draw(p, k.cr, 30);
  assert_null(label_named(p, "lost"));
  canvas_end(k);
  ox_picture_free(p);
}

/* --- the hidden answer --------------------------------------------------------------------- */

static void a_hidden_answer_shows_what_is_given_and_nothing_else(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(40); seed < seeds; seed++) {
    ox_random r = {seed + 70u};
    ox_case c = paint_mild_case(&r);
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.hide_answer = true;
    scene.view.air = seed % 2;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    assert_int_equal(p->lines.track.count + p->lines.later.count + p->lines.entry.count, 0);
    assert_int_equal(p->lines.still_air.count + p->lines.ticks.count, 0);
    assert_true(p->course.line.count > 0);
    const char *answers[] = {"direct", "teardrop", "parallel", "shoot", "abeam", "circuit",
                             "timing", "1:"};
    for (size_t i = 0; i < sizeof answers / sizeof *answers; i++)
      assert_null(label_named(p, answers[i]));
    assert_non_null(label_named(p, "LARCH"));
    canvas k = canvas_new();
    ox_picture_draw(p, k.cr, 400); /* the aircraft waits at the fix */
    ox_viewport v = ox_picture_viewport_at(p, 400);
    ox_vec then = ox_viewport_to_dev(&v, ox_flight_at(&paint_flight, 400).p_nm);
    ox_vec fix = ox_viewport_to_dev(&v, (ox_vec){0, 0});
    assert_true(has_hue(&k, p, OX_HUE_AIRCRAFT, fix, 4));
    if (ox_vec_length(ox_vec_sub(then, fix)) > 60)
      assert_false(has_hue(&k, p, OX_HUE_TRACK, then, 3));
    canvas_end(k);
    /* The world stays where it is when the answer comes. */
    scene.hide_answer = false;
    scene.view.air = 0;
    ox_picture *told = ox_picture_new(&scene, WIDTH, HEIGHT);
    ox_viewport w = ox_picture_viewport(told);
    if (!p->furniture.chart.count && !told->furniture.chart.count &&
        told->furniture.notice_at.width <= 0.0) {
      assert_close(w.dev_per_nm, v.dev_per_nm, 1e-9, "the same scale");
      assert_close(w.centre_nm.x, v.centre_nm.x, 1e-9, "the same place");
    }
    ox_picture_free(told);
    ox_picture_free(p);
  }
}

static ox_status to_string(void *context, const void *bytes, size_t length) {
  g_string_append_len(context, bytes, (gssize)length);
  return OX_OK;
}

static void an_exported_picture_tells_no_hidden_answer_in_words(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_PRINT);
  ox_export_options o = {.format = OX_EXPORT_SVG, .width = 800, .height = 500};
  scene.marks = marks;
  scene.mark_count = 2;
  for (int hide = 0; hide < 2; hide++) {
    GString *svg = g_string_new(NULL);
    scene.hide_answer = hide;
    assert_int_equal(ox_export(&scene, 1, &o, to_string, svg, NULL), OX_OK);
    char *end = strstr(svg->str, "</desc>");
    assert_non_null(end);
    *end = 0;
    assert_int_equal(strstr(svg->str, "entry") != NULL, !hide);
    assert_non_null(strstr(svg->str, "Marked: ALDER, BRINE."));
    assert_non_null(strstr(svg->str, "not for navigation"));
    g_string_free(svg, TRUE);
  }
}

static void a_guess_is_shown_with_the_answer_and_without(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  for (int hide = 0; hide < 2; hide++) {
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_DARK);
    scene.hide_answer = hide;
    scene.marks = &marks[4];
    scene.mark_count = 1;
    scene.paths = &paths[3];
    scene.path_count = 1;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    canvas k = canvas_new();
    ox_picture_draw(p, k.cr, nan(""));
    ox_viewport v = ox_picture_viewport(p);
    ox_vec on = ox_viewport_to_dev(&v, (ox_vec){2.4, -1.1});
    assert_true(has_hue(&k, p, OX_HUE_GUESS, on, 3));
    assert_non_null(label_named(p, "my outbound end"));
    assert_int_equal(p->lines.track.count > 0, !hide);
    canvas_end(k);
    ox_picture_free(p);
  }
}

/* --- the typesetter ------------------------------------------------------------------------ */

static void a_shared_typesetter_changes_nothing_in_the_picture(void **state) {
  (void)state;
  ox_typesetter *shared = ox_typesetter_new();
  for (unsigned seed = 0; seed < 12; seed++) {
    ox_case c = paint_seeded_case(seed);
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    canvas a = canvas_new(), b = canvas_new();
    ox_picture *own = ox_picture_new(&scene, WIDTH, HEIGHT);
    scene.typesetter = shared;
    ox_picture *kept = ox_picture_new(&scene, WIDTH, HEIGHT);
    for (int i = 0; i < 3; i++) { /* the words of the triangle change */
      ox_picture_draw(own, a.cr, 60.0 * i);
      ox_picture_draw(kept, b.cr, 60.0 * i);
    }
    cairo_surface_flush(a.surface);
    cairo_surface_flush(b.surface);
    size_t bytes = (size_t)cairo_image_surface_get_stride(a.surface) * HEIGHT;
    assert_memory_equal(cairo_image_surface_get_data(a.surface),
                        cairo_image_surface_get_data(b.surface), bytes);
    ox_picture_free(own);
    ox_picture_free(kept);
    canvas_end(a);
    canvas_end(b);
  }
  ox_typesetter_free(shared);
}

static void a_typesetter_forgets_without_harm(void **state) {
  (void)state;
  ox_typesetter *t = ox_typesetter_new();
  ox_lettering first = {0}, text = {0}, again = {0};
  ox_lettering_make(&first, t, "LARCH", 12, OX_TEXT_BOLD, 0);
  for (int i = 0, cases = ox_test_cases(4000); i < cases; i++) {
    char words[24];
    snprintf(words, sizeof words, "hdg %d", i);
    ox_lettering_make(&text, t, words, 12, OX_TEXT_PLAIN, 0);
    assert_string_equal(pango_layout_get_text(text.layout), words);
  }
  ox_lettering_make(&again, t, "LARCH", 12, OX_TEXT_BOLD, 0);
  assert_close(again.width, first.width, 0, "the same words, the same width");
  assert_string_equal(pango_layout_get_text(first.layout), "LARCH");
  ox_lettering_clear(&first);
  ox_lettering_clear(&text);
  ox_lettering_clear(&again);
  ox_typesetter_free(t);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(two_more_cases_have_lines_labels_and_rows_of_their_own),
      cmocka_unit_test(their_aircraft_fly_in_step),
      cmocka_unit_test(a_third_case_in_step_is_left_out),
      cmocka_unit_test(ink_lies_where_it_was_drawn_in_its_hue_at_every_zoom),
      cmocka_unit_test(the_pen_grows_with_the_text),
      cmocka_unit_test(odd_strokes_are_drawn_without_harm),
      cmocka_unit_test(marks_have_symbols_and_names_that_touch_nothing),
      cmocka_unit_test(every_kind_of_path_is_drawn_and_named_in_the_legend),
      cmocka_unit_test(paths_without_points_or_numbers_are_harmless),
      cmocka_unit_test(a_hidden_answer_shows_what_is_given_and_nothing_else),
      cmocka_unit_test(an_exported_picture_tells_no_hidden_answer_in_words),
      cmocka_unit_test(a_guess_is_shown_with_the_answer_and_without),
      cmocka_unit_test(a_shared_typesetter_changes_nothing_in_the_picture),
      cmocka_unit_test(a_typesetter_forgets_without_harm),
  };
  return cmocka_run_group_tests_name("teaching", tests, NULL, NULL);
}
