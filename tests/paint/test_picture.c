/* Drawing: no case, size or instant puts a context in error, loses state or leaves the board. */
#include "ox_test.h"
#include "paint_cases.h"
#include "paint_private.h"

typedef struct {
  cairo_surface_t *surface;
  cairo_t *cr;
} canvas;

static canvas canvas_new(int width, int height) {
  canvas k = {.surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height)};
  k.cr = cairo_create(k.surface);
  return k;
}

static void canvas_end(canvas k) {
  cairo_destroy(k.cr);
  cairo_surface_destroy(k.surface);
}

static uint32_t pixel(const canvas *k, int x, int y) {
  cairo_surface_flush(k->surface);
  const unsigned char *row = cairo_image_surface_get_data(k->surface) +
                             (ptrdiff_t)y * cairo_image_surface_get_stride(k->surface);
  uint32_t value;
  memcpy(&value, row + 4 * (ptrdiff_t)x, sizeof value);
  return value & 0xffffff;
}

static size_t pixels_unlike(const canvas *k, ox_rect r, uint32_t ground) {
  size_t n = 0;
  for (int y = (int)r.y; y < (int)(r.y + r.height); y++)
    for (int x = (int)r.x; x < (int)(r.x + r.width); x++) n += pixel(k, x, y) != ground;
  return n;
}

/* Sets a state that drawing must not change, and checks it afterwards. */
static void mark_state(cairo_t *cr) {
  cairo_set_source_rgb(cr, 0.25, 0.5, 0.75);
  cairo_set_line_width(cr, 3.25);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_SQUARE);
  double dashes[2] = {7, 3};
  cairo_set_dash(cr, dashes, 2, 1.5);
  cairo_move_to(cr, 1, 1);
}

static void check_state(cairo_t *cr, const char *what) {
  double r, g, b, a, dashes[2];
  if (cairo_status(cr) != CAIRO_STATUS_SUCCESS) {
    print_error("%s: %s\n", what, cairo_status_to_string(cairo_status(cr)));
    fail();
  }
  assert_int_equal(cairo_pattern_get_rgba(cairo_get_source(cr), &r, &g, &b, &a),
                   CAIRO_STATUS_SUCCESS);
  assert_close(r, 0.25, 0, what);
  assert_close(cairo_get_line_width(cr), 3.25, 0, what);
  assert_int_equal(cairo_get_line_cap(cr), CAIRO_LINE_CAP_SQUARE);
  assert_int_equal(cairo_get_dash_count(cr), 2);
  cairo_get_dash(cr, dashes, NULL);
  assert_close(dashes[0], 7, 0, what);
  double x0, y0, x1, y1;
  cairo_clip_extents(cr, &x0, &y0, &x1, &y1);
  assert_close(x1 - x0, 400, 0, what); /* the clip is as wide as the surface again */
}

static void every_layer_leaves_the_context_as_it_found_it(void **state) {
  (void)state;
  const struct {
    unsigned layer;
    const char *name;
  } layers[] = {{OX_LAYER_SIDES, "sides"},         {OX_LAYER_ROSE, "rose"},
                {OX_LAYER_COURSE, "course"},       {OX_LAYER_STILL_AIR, "still air"},
                {OX_LAYER_TRACK, "track"},         {OX_LAYER_AIRCRAFT, "aircraft"},
                {OX_LAYER_TRIANGLE, "triangle"},   {OX_LAYER_WIND, "wind"},
                {OX_LAYER_LABELS, "labels"},       {OX_LAYER_FURNITURE, "furniture"},
                {OX_LAYER_ALL, "all"},             {0, "none"}};
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(60); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    for (size_t i = 0; i < sizeof layers / sizeof *layers; i++) {
      ox_scene scene = paint_scene(&c, &paint_flight, (ox_palette_id)(seed % OX_PALETTE_COUNT));
      scene.layers = layers[i].layer;
      ox_picture *p = ox_picture_new(&scene, 400, 300);
      assert_non_null(p);
      canvas k = canvas_new(400, 300);
      mark_state(k.cr);
      ox_picture_draw(p, k.cr, ox_flight_end_s(&paint_flight) * 0.4);
      check_state(k.cr, layers[i].name);
      canvas_end(k);
      ox_picture_free(p);
    }
  }
}

static void any_size_from_sixteen_up_is_drawn(void **state) {
  (void)state;
  const int sizes[] = {1, 2, 16, 17, 40, 90, 160, 300, 480, 1000};
  const size_t n = sizeof sizes / sizeof *sizes;
  for (unsigned seed = 0; seed < 6; seed++)
    for (size_t i = 0; i < n; i++)
      for (size_t j = 0; j < n; j++) {
        ox_case c = paint_seeded_case(seed);
        ox_picture *p = paint_picture(&c, (ox_palette_id)(seed % OX_PALETTE_COUNT), sizes[i],
                                      sizes[j]);
        canvas k = canvas_new(sizes[i], sizes[j]);
        ox_picture_draw(p, k.cr, 30);
        assert_int_equal(cairo_status(k.cr), CAIRO_STATUS_SUCCESS);
        ox_viewport v = ox_picture_viewport(p);
        assert_true(isfinite(v.dev_per_nm) && v.dev_per_nm > 0);
        canvas_end(k);
        ox_picture_free(p);
      }
}

static void a_size_that_is_no_size_is_refused(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  const double bad[] = {0, -1, nan(""), HUGE_VAL, -HUGE_VAL};
  for (size_t i = 0; i < 5; i++) {
    assert_null(ox_picture_new(&scene, bad[i], 100));
    assert_null(ox_picture_new(&scene, 100, bad[i]));
  }
  ox_picture_free(NULL);
}

static bool all_inside(const ox_lines *lines, ox_rect r) {
  for (size_t i = 0; i < lines->count; i++)
    if (!isfinite(lines->p[i].x) || !isfinite(lines->p[i].y) ||
        !ox_rect_has(ox_rect_inset(r, -1e-6), (ox_vec){lines->p[i].x, lines->p[i].y}))
      return false;
  return true;
}

static void every_line_of_the_world_is_finite_and_inside_the_map(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(300); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
    const ox_lines *all[] = {&p->lines.track, &p->lines.later, &p->lines.entry,
                             &p->lines.arrival, &p->lines.still_air, &p->lines.ticks,
                             &p->course.line, &p->course.abeam, &p->hatch};
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) assert_true(all_inside(all[i], p->map));
    ox_picture_free(p);
  }
}

static void the_hold_stays_large_however_far_the_arrival_begins(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.arrival.distance_nm = 4;
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  double near_scale = ox_picture_viewport(p).dev_per_nm;
  ox_picture_free(p);
  c.arrival.distance_nm = 100;
  p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  assert_close(ox_picture_viewport(p).dev_per_nm, near_scale, 1e-6, "scale");
  ox_picture_free(p);
}

static void a_flight_that_is_blown_away_leaves_the_hold_in_sight(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.wind[0].kt = 250;
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  ox_leg still[4];
  ox_still_air_shape(&paint_flight.setup, still);
  double hold = ox_vec_length(still[2].p0_nm) * ox_picture_viewport(p).dev_per_nm;
  assert_true(hold > ox_test_least(90));
  ox_picture_free(p);
}

static void circuits_of_one_path_are_drawn_once(void **state) {
  (void)state;
  ox_case c = ox_case_default(); /* calm and straight in: every circuit is the same */
  c.technique.circuits = 2; /* the first begins with the direct entry, the second is whole */
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  size_t once = p->lines.track.count;
  ox_picture_free(p);
  c.technique.circuits = 40;
  p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  assert_int_equal(p->lines.track.count, once);
  assert_int_equal(p->lines.later.count, 0);
  ox_picture_free(p);
}

static void circuits_that_differ_are_all_drawn(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.technique.drift = OX_DRIFT_NONE;
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  c.technique.circuits = 4;
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  assert_true(p->lines.later.count > 20);
  ox_picture_free(p);
}

/* --- what the pixels show ------------------------------------------------------------------ */

static void the_wind_feathers_are_left_of_the_shaft_seen_downwind(void **state) {
  (void)state;
  /* WMO-No. 485: wind from the north, the circle below, feathers to the east; from the south to
   * the west. */
  for (int south = 0; south < 2; south++) {
    ox_case c = paint_demo_case();
    c.wind[0].from_deg = south ? 180 : 360;
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.layers = OX_LAYER_WIND;
    ox_picture *p = ox_picture_new(&scene, 1400, 950);
    canvas k = canvas_new(1400, 950);
    ox_picture_draw(p, k.cr, nan(""));
    ox_rect at = p->furniture.wind_at;
    double e = p->size.small, margin = 0.5 * e;
    ox_rect west = {at.x, at.y, at.width / 2 - margin, 5 * e};
    ox_rect east = {at.x + at.width / 2 + margin, at.y, at.width / 2 - margin, 5 * e};
    size_t in_west = pixels_unlike(&k, west, 0xffffff), in_east = pixels_unlike(&k, east, 0xffffff);
    assert_true(south ? in_west > 20 && in_east == 0 : in_east > 20 && in_west == 0);
    canvas_end(k);
    ox_picture_free(p);
  }
}

static void the_tint_lies_on_the_holding_side_only(void **state) {
  (void)state;
  for (int left = 0; left < 2; left++) {
    ox_case c = ox_case_default(); /* course due north: right turns hold to the east */
    c.hold.turns = left ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.layers = OX_LAYER_SIDES;
    ox_picture *p = ox_picture_new(&scene, 700, 480);
    canvas k = canvas_new(700, 480);
    ox_picture_draw(p, k.cr, nan(""));
    ox_vec fix = ox_viewport_to_dev(&p->view, (ox_vec){0, 0});
    uint32_t east = pixel(&k, (int)fix.x + 40, (int)fix.y - 20);
    uint32_t west = pixel(&k, (int)fix.x - 40, (int)fix.y - 20);
    assert_true(left ? west != 0xffffff && east == 0xffffff : east != 0xffffff && west == 0xffffff);
    canvas_end(k);
    ox_picture_free(p);
  }
}

static void only_aircraft_and_triangle_change_with_time(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  canvas a = canvas_new(700, 480), b = canvas_new(700, 480);
  ox_picture_draw(p, a.cr, 20);
  ox_picture_draw(p, b.cr, 140);
  ox_rect moving = ox_rect_inset(p->furniture.triangle_at, -4);
  ox_vec at[2] = {ox_to_dev(p, ox_flight_at(&paint_flight, 20).p_nm),
                  ox_to_dev(p, ox_flight_at(&paint_flight, 140).p_nm)};
  size_t changed = 0;
  for (int y = 0; y < 480; y++)
    for (int x = 0; x < 700; x++) {
      if (pixel(&a, x, y) == pixel(&b, x, y)) continue;
      changed++;
      bool near = ox_rect_has(moving, (ox_vec){x, y});
      for (int i = 0; i < 2; i++) near = near || hypot(x - at[i].x, y - at[i].y) < 80;
      assert_true(near);
    }
  assert_true(changed > 100);
  canvas_end(a);
  canvas_end(b);
  ox_picture_free(p);
}

/* What a window draws apart, so as to draw less, is the moving half and nothing else. */
static void triangle_and_aircraft_make_up_the_moving_half(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  canvas a = canvas_new(700, 480), b = canvas_new(700, 480);
  ox_picture_draw(p, a.cr, 140);
  ox_picture_draw_still(p, b.cr);
  ox_picture_draw_triangle(p, b.cr, 140);
  ox_picture_draw_aircraft(p, b.cr, 140);
  ox_picture_draw_triangle(p, b.cr, nan(""));
  ox_picture_draw_aircraft(p, b.cr, nan(""));
  for (int y = 0; y < 480; y++)
    for (int x = 0; x < 700; x++) assert_int_equal(pixel(&a, x, y), pixel(&b, x, y));
  canvas_end(a);
  canvas_end(b);
  ox_picture_free(p);
}

static void without_an_instant_there_is_no_aircraft(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  canvas a = canvas_new(700, 480), b = canvas_new(700, 480);
  ox_picture_draw(p, a.cr, nan(""));
  ox_picture_draw_still(p, b.cr);
  for (int y = 0; y < 480; y++)
    for (int x = 0; x < 700; x++) assert_int_equal(pixel(&a, x, y), pixel(&b, x, y));
  canvas_end(a);
  canvas_end(b);
  ox_picture_free(p);
}

static void instants_outside_the_flight_are_drawn_at_its_ends(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  const double times[] = {-1e9, 1e9, -HUGE_VAL, HUGE_VAL};
  for (size_t i = 0; i < 4; i++) {
    canvas k = canvas_new(700, 480);
    ox_picture_draw(p, k.cr, times[i]);
    assert_int_equal(cairo_status(k.cr), CAIRO_STATUS_SUCCESS);
    canvas_end(k);
  }
  ox_picture_free(p);
}

static void furniture_never_lies_on_the_map(void **state) {
  (void)state;
  const double sizes[][2] = {{700, 480}, {1400, 950}, {595, 842}, {480, 700}, {300, 200},
                             {490, 610}, {400, 700},  {842, 595}, {360, 800}, {1000, 1000}};
  for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++)
    for (int id = 0; id < 2 * OX_PALETTE_COUNT; id++) {
      ox_case c = paint_demo_case();
      c.technique.outbound = OX_OUTBOUND_ADJUST; /* with a chart */
      ox_palette_id palette = (ox_palette_id)(id % OX_PALETTE_COUNT);
      ox_scene scene = paint_overlaid_scene(&c, palette, (unsigned)id);
      if (id >= OX_PALETTE_COUNT) scene.compare = NULL, scene.area = NULL;
      ox_picture *p = ox_picture_new(&scene, sizes[i][0], sizes[i][1]);
      assert_non_null(p);
      const ox_furniture *f = &p->furniture;
      ox_rect board = {0, 0, sizes[i][0], sizes[i][1]};
      const ox_rect all[] = {f->title_at, f->facts_at, f->caution_at, f->compass_at,
                             f->notice_at,
                             f->wind_at, f->triangle_at, f->legend_at, f->scale_at, f->chart_at,
                             p->map};
      const size_t n = sizeof all / sizeof *all;
      for (size_t a = 0; a < n; a++) {
        if (all[a].width <= 0) continue;
        assert_true(ox_rect_inside(all[a], ox_rect_inset(board, -0.01)));
        for (size_t b = 0; b < a; b++)
          assert_false(all[b].width > 0 && ox_rect_overlaps(all[a], all[b]));
      }
      assert_true(f->caution_at.width > 0); /* the caution is on every board of this size */
      assert_true(p->map.width * p->map.height > 0.38 * sizes[i][0] * sizes[i][1]);
      ox_picture_free(p);
    }
}

static void text_takes_the_same_room_at_every_device_scale(void **state) {
  (void)state;
  ox_typesetter *typesetter = ox_typesetter_new();
  ox_lettering small = {0}, large = {0};
  ox_lettering_make(&small, typesetter, "hdg 245 M (5° R)", 11, OX_TEXT_BOLD, 0);
  ox_lettering_make(&large, typesetter, "hdg 245 M (5° R)", 110, OX_TEXT_BOLD, 0);
  assert_close(large.width, 10 * small.width, 0.5, "ten times the size, ten times as wide");
  ox_lettering_clear(&small);
  ox_lettering_clear(&large);
  ox_typesetter_free(typesetter);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_layer_leaves_the_context_as_it_found_it),
      cmocka_unit_test(any_size_from_sixteen_up_is_drawn),
      cmocka_unit_test(a_size_that_is_no_size_is_refused),
      cmocka_unit_test(every_line_of_the_world_is_finite_and_inside_the_map),
      cmocka_unit_test(the_hold_stays_large_however_far_the_arrival_begins),
      cmocka_unit_test(a_flight_that_is_blown_away_leaves_the_hold_in_sight),
      cmocka_unit_test(circuits_of_one_path_are_drawn_once),
      cmocka_unit_test(circuits_that_differ_are_all_drawn),
      cmocka_unit_test(the_wind_feathers_are_left_of_the_shaft_seen_downwind),
      cmocka_unit_test(the_tint_lies_on_the_holding_side_only),
      cmocka_unit_test(only_aircraft_and_triangle_change_with_time),
      cmocka_unit_test(triangle_and_aircraft_make_up_the_moving_half),
      cmocka_unit_test(without_an_instant_there_is_no_aircraft),
      cmocka_unit_test(instants_outside_the_flight_are_drawn_at_its_ends),
      cmocka_unit_test(furniture_never_lies_on_the_map),
      cmocka_unit_test(text_takes_the_same_room_at_every_device_scale),
  };
  return cmocka_run_group_tests_name("picture", tests, NULL, NULL);
}
