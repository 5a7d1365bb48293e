/* What must not move: map and furniture while a hand drags a line of the hold, and the legend
 * while the world moves on the board. */
#include "ox_test.h"
#include "paint_cases.h"
#include "paint_private.h"

static const double SIZES[][2] = {{900, 650}, {560, 510}, {480, 700}, {1400, 700}, {330, 500}};
enum { SIZE_COUNT = sizeof SIZES / sizeof *SIZES };

/* What a drag may bring and take: other circuits, no wind, a wind too strong, a chart. */
static void drag(ox_random *r, ox_case *c) {
  c->hold.inbound_deg = floor(ox_random_between(r, 1, 361));
  c->hold.leg_s = floor(ox_random_between(r, 30, 180));
  c->wind[0].kt = (double[]){0, 12, 30, 60, 140}[ox_random_below(r, 5)];
  c->wind[0].from_deg = floor(ox_random_between(r, 0, 360));
  c->arrival.heading_deg = floor(ox_random_between(r, 1, 361));
}

static const ox_rect *furniture_of(const ox_picture *p, int index) {
  const ox_furniture *f = &p->furniture;
  const ox_rect *all[] = {&f->title_at, &f->caution_at, &f->compass_at,  &f->wind_at,
                          &f->scale_at, &f->legend_at,  &f->triangle_at, &f->chart_at};
  return index < (int)(sizeof all / sizeof *all) ? all[index] : NULL;
}

static bool same_rect(const ox_rect *a, const ox_rect *b) {
  return a->x == b->x && a->y == b->y && a->width == b->width && a->height == b->height;
}

static ox_vec place_of_row(const ox_picture *p, ox_line_kind kind) {
  const ox_legend *l = &p->furniture.legend;
  for (int i = 0; i < l->count; i++)
    if (l->row[i] == kind && l->used[kind]) return l->place[i];
  return (ox_vec){-1, -1};
}

static void assert_stayed(const ox_picture *was, const ox_picture *p, const char *what) {
  const ox_rect *at;
  if (!same_rect(&was->map, &p->map)) fail_msg("%s: the map moved", what);
  for (int i = 0; (at = furniture_of(was, i)) != NULL; i++)
    if (!same_rect(at, furniture_of(p, i))) fail_msg("%s: block %d moved", what, i);
  for (int k = 0; k < OX_LINE_COUNT; k++) {
    ox_vec a = place_of_row(was, (ox_line_kind)k), b = place_of_row(p, (ox_line_kind)k);
    if (b.x < 0) continue; /* not there now */
    if (a.x < 0) fail_msg("%s: row %d came", what, k);
    if (a.x != b.x || a.y != b.y) fail_msg("%s: row %d moved", what, k);
  }
}

static bool laid_out_alike(const ox_picture *a, const ox_picture *b) {
  for (int i = 0; i < OX_LINE_COUNT; i++) {
    ox_vec p = place_of_row(a, (ox_line_kind)i), q = place_of_row(b, (ox_line_kind)i);
    if (p.x != q.x || p.y != q.y) return false;
  }
  return same_rect(&a->map, &b->map);
}

static void nothing_but_the_hold_moves_under_the_hand(void **state) {
  (void)state;
  int otherwise = 0;
  for (unsigned seed = 0; seed < 40; seed++) {
    ox_random r = {seed + 3u};
    ox_case c = paint_mild_case(&r);
    const double *size = SIZES[seed % SIZE_COUNT];
    ox_picture *was = paint_picture(&c, OX_PALETTE_LIGHT, size[0], size[1]);
    ox_layout *layout = ox_layout_of(was);
    ox_held held = {ox_picture_viewport(was), layout};
    for (int step = 0; step < 8; step++) {
      char what[64];
      snprintf(what, sizeof what, "seed %u, step %d", seed, step);
      if (step > 0) drag(&r, &c); /* the first: taken hold of, and not moved yet */
      if (ox_flight_solve(&c, &paint_flight) == OX_ERROR) continue;
      ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
      ox_picture *let_go = ox_picture_new(&scene, size[0], size[1]);
      scene.held = &held;
      ox_picture *p = ox_picture_new(&scene, size[0], size[1]);
      assert_stayed(was, p, what);
      if (step == 0) assert_true(laid_out_alike(was, p));
      otherwise += !laid_out_alike(was, let_go);
      ox_picture_free(p);
      ox_picture_free(let_go);
    }
    ox_layout_free(layout);
    ox_picture_free(was);
  }
  if (otherwise < 60) fail_msg("only %d of the layouts differ once they are let go", otherwise);
}

static void a_notice_that_comes_takes_the_line_of_the_facts(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *was = paint_picture(&c, OX_PALETTE_LIGHT, 900, 650);
  ox_layout *layout = ox_layout_of(was);
  ox_held held = {ox_picture_viewport(was), layout};
  assert_true(was->furniture.facts_at.width > 0 && was->furniture.notice_at.width <= 0);
  c.wind[0].kt = 140; /* stronger than the aircraft is fast */
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  scene.held = &held;
  ox_picture *p = ox_picture_new(&scene, 900, 650);
  const ox_furniture *f = &p->furniture;
  assert_true(same_rect(&f->notice_at, &was->furniture.facts_at));
  assert_true(f->facts_at.width <= 0);
  assert_true(f->notice.layout && f->notice.width <= f->notice_at.width + 0.5);
  assert_true(f->notice_at.y + f->notice.height <= p->map.y);
  ox_picture_free(p);
  ox_picture_free(was);
  ox_layout_free(layout);
}

static void a_layout_of_another_board_is_not_used(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *was = paint_picture(&c, OX_PALETTE_LIGHT, 900, 650);
  ox_layout *layout = ox_layout_of(was);
  ox_held held = {ox_picture_viewport(was), layout};
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  for (int i = 0; i < 2; i++) {
    double width = i == 0 ? 700 : 900;
    scene.text_scale = i == 0 ? 1.0 : 1.3;
    scene.held = NULL;
    ox_picture *own = ox_picture_new(&scene, width, 650);
    scene.held = &held;
    ox_picture *p = ox_picture_new(&scene, width, 650);
    assert_true(same_rect(&own->map, &p->map));
    assert_true(laid_out_alike(own, p));
    ox_picture_free(p);
    ox_picture_free(own);
  }
  ox_layout_free(layout);
  ox_picture_free(was);
}

/* The still half, drawn after the moving one was at an instant. */
static cairo_surface_t *still_after(ox_picture *p, double t_s) {
  cairo_surface_t *unseen = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 560, 510);
  cairo_surface_t *still = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 560, 510);
  cairo_t *cr = cairo_create(unseen);
  ox_picture_draw_moving(p, cr, t_s);
  cairo_destroy(cr);
  cr = cairo_create(still);
  ox_picture_draw_still(p, cr);
  cairo_destroy(cr);
  cairo_surface_destroy(unseen);
  cairo_surface_flush(still);
  return still;
}

static void the_still_half_does_not_depend_on_the_instant(void **state) {
  (void)state;
  const ox_view views[] = {{.up = OX_UP_AIRCRAFT, .zoom = 3}, {.air = 1, .zoom = 3}, {.air = 0.4},
                           {.up = OX_UP_AIRCRAFT, .air = 1}};
  ox_case c = paint_demo_case();
  c.technique.circuits = 3;
  c.arrival.distance_nm = 12;
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  for (size_t i = 0; i < sizeof views / sizeof *views; i++) {
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.view = views[i];
    ox_picture *p = ox_picture_new(&scene, 560, 510);
    cairo_surface_t *first = still_after(p, 0);
    size_t bytes = (size_t)cairo_image_surface_get_stride(first) * 510;
    for (double t_s = ox_flight_begin_s(&paint_flight); t_s < ox_flight_end_s(&paint_flight);
         t_s += 61.7) {
      cairo_surface_t *now = still_after(p, t_s);
      if (memcmp(cairo_image_surface_get_data(first), cairo_image_surface_get_data(now), bytes))
        fail_msg("view %zu at %g s: the still half is another one", i, t_s);
      cairo_surface_destroy(now);
    }
    cairo_surface_destroy(first);
    ox_picture_free(p);
  }
}

/* Their room is kept for when the answer comes. */
static void a_hidden_answer_has_no_rows(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  scene.hide_answer = true;
  for (int up = OX_UP_NORTH; up <= OX_UP_AIRCRAFT; up++) {
    scene.view.up = (ox_up)up;
    ox_picture *p = ox_picture_new(&scene, 900, 650);
    const ox_legend *l = &p->furniture.legend;
    for (int i = 0; i < OX_LINE_COUNT; i++)
      assert_int_equal(l->used[i], i == OX_LINE_ARRIVAL || i == OX_LINE_ABEAM);
    ox_picture_free(p);
  }
}

/* The board of a small window with text at 200 %. */
static void large_type_leaves_room_for_the_hold(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  scene.text_scale = 2.0;
  ox_picture *p = ox_picture_new(&scene, 550, 500);
  assert_true(fmin(p->map.width, p->map.height) > 0.5 * 500);
  assert_true(p->furniture.wind_at.width > 0 && p->furniture.caution_at.width > 0);
  assert_false(ox_rect_overlaps(p->furniture.wind_at, p->map));
  assert_false(ox_is_upright(p));
  ox_picture_free(p);
  scene.text_scale = 1.0;
  p = ox_picture_new(&scene, 550, 500);
  assert_true(ox_is_upright(p));
  ox_picture_free(p);
}

/* Rows of pixels above the wind's words, which its feathers must leave blank, from any direction. */
static void the_wind_arrow_keeps_off_its_words(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  for (int from_deg = 5; from_deg <= 360; from_deg += 5)
    for (int kt = 5; kt <= 95; kt += 15) {
      c.wind[0] = (ox_wind_row){0, from_deg, kt, OX_NORTH_TRUE};
      c.aircraft.ias_kt = 180;
      ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 900);
      cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 1400, 900);
      cairo_t *cr = cairo_create(surface);
      ox_layer_wind(p, cr);
      cairo_surface_flush(surface);
      const unsigned char *data = cairo_image_surface_get_data(surface);
      int stride = cairo_image_surface_get_stride(surface), inked = 0;
      double words = p->furniture.wind_at.y + 5.2 * p->size.small;
      for (int y = (int)ceil(words - 0.12 * p->size.small); y < (int)floor(words); y++)
        for (int x = 0; x < 1400; x++) inked += data[y * stride + x] > 63;
      if (inked > 0) print_error("from %d at %d kt: %d px touch\n", from_deg, kt, inked);
      assert_int_equal(inked, 0);
      cairo_destroy(cr);
      cairo_surface_destroy(surface);
      ox_picture_free(p);
    }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(nothing_but_the_hold_moves_under_the_hand),
      cmocka_unit_test(a_notice_that_comes_takes_the_line_of_the_facts),
      cmocka_unit_test(a_layout_of_another_board_is_not_used),
      cmocka_unit_test(the_still_half_does_not_depend_on_the_instant),
      cmocka_unit_test(a_hidden_answer_has_no_rows),
      cmocka_unit_test(large_type_leaves_room_for_the_hold),
      cmocka_unit_test(the_wind_arrow_keeps_off_its_words),
  };
  return cmocka_run_group_tests_name("layout", tests, NULL, NULL);
}
