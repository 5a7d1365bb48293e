/* Looking at it otherwise: which way is up, closer and elsewhere, within limits. */
#include "ox_test.h"
#include "paint_cases.h"
#include "paint_private.h"

static ox_picture *seen(const ox_case *c, ox_view view, double width, double height) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(c, &paint_flight, OX_PALETTE_LIGHT);
  scene.view = view;
  ox_picture *p = ox_picture_new(&scene, width, height);
  assert_non_null(p);
  return p;
}

static void a_view_of_nothing_but_noughts_is_the_fitted_one(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = seen(&c, (ox_view){0}, 900, 650), *q = seen(&c, (ox_view){.zoom = 1}, 900, 650);
  ox_viewport a = ox_picture_viewport(p), b = ox_picture_viewport_at(q, 77);
  assert_close(a.dev_per_nm, b.dev_per_nm, 0, "scale");
  assert_close(a.centre_nm.x, b.centre_nm.x, 0, "x");
  assert_close(a.centre_nm.y, b.centre_nm.y, 0, "y");
  assert_close(a.up_deg, 0, 0, "north is up");
  assert_false(ox_picture_moves(p));
  ox_picture_free(p);
  ox_picture_free(q);
}

/* Ink on the outermost pixels of the map. */
static int ink_at_the_edge(cairo_surface_t *surface, const ox_picture *p) {
  const unsigned char *data = cairo_image_surface_get_data(surface);
  int stride = cairo_image_surface_get_stride(surface), count = 0;
  int left = (int)floor(p->map.x), top = (int)floor(p->map.y);
  int right = (int)ceil(p->map.x + p->map.width) - 1;
  int bottom = (int)ceil(p->map.y + p->map.height) - 1;
  for (int y = top; y <= bottom; y++)
    for (int x = left; x <= right; x++)
      if ((x == left || x == right || y == top || y == bottom) && data[y * stride + x] > 127)
        count++;
  return count;
}

/* On its way in over the map's edge: of what it is only the line ahead may be cut. */
static void the_aircraft_is_whole_wherever_it_is(void **state) {
  (void)state;
  int met = 0;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(12); seed < seeds; seed++) {
    ox_random r = {seed + 91u};
    ox_case c = paint_mild_case(&r);
    c.arrival.distance_nm = 12;
    assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_PROJECTOR);
    scene.text_scale = 1.6;
    ox_picture *p = ox_picture_new(&scene, 900, 520);
    double most = 4.0 * p->size.track + 6.0; /* the line ahead, aslant; an arrow's point */
    for (double t_s = ox_flight_begin_s(&paint_flight); t_s < 0; t_s += 2.0) {
      cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 900, 520);
      cairo_t *cr = cairo_create(surface);
      ox_picture_draw_aircraft(p, cr, t_s);
      cairo_surface_flush(surface);
      int count = ink_at_the_edge(surface, p);
      if (count > most) print_error("seed %u at %.0f s: %d px are cut\n", seed, t_s, count);
      assert_true(count <= most);
      if (count > 0) met++;
      cairo_destroy(cr);
      cairo_surface_destroy(surface);
    }
    ox_picture_free(p);
  }
  assert_true(met > 0);
}

/* The middle of all ink; false: there is none. */
static bool middle_of_ink(cairo_surface_t *surface, ox_vec *out) {
  const unsigned char *data = cairo_image_surface_get_data(surface);
  int stride = cairo_image_surface_get_stride(surface);
  double sum = 0.0;
  *out = (ox_vec){0, 0};
  for (int y = 0; y < cairo_image_surface_get_height(surface); y++)
    for (int x = 0; x < cairo_image_surface_get_width(surface); x++) {
      double ink = data[y * stride + x];
      *out = ox_vec_add(*out, (ox_vec){ink * (x + 0.5), ink * (y + 0.5)});
      sum += ink;
    }
  if (sum > 0.0) *out = ox_vec_scale(*out, 1.0 / sum);
  return sum > 0.0;
}

/* An arrival that is still off the map has its arrow where its line comes in. */
static void an_aircraft_that_comes_has_its_arrow_on_its_way(void **state) {
  (void)state;
  int met = 0;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(40); seed < seeds; seed++) {
    ox_random r = {seed + 17u};
    ox_case c = paint_mild_case(&r);
    c.arrival.distance_nm = 15;
    ox_picture *p = seen(&c, (ox_view){0}, 900, 520);
    ox_state s = ox_flight_at(&paint_flight, ox_flight_begin_s(&paint_flight));
    ox_vec at = ox_to_dev(p, s.p_nm), track = ox_dev_unit(ox_dev_bearing(p, s.track_true_deg));
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 900, 520);
    cairo_t *cr = cairo_create(surface);
    ox_vec ink;
    ox_picture_draw_aircraft(p, cr, ox_flight_begin_s(&paint_flight));
    cairo_surface_flush(surface);
    if (!ox_rect_has(p->map, at) && middle_of_ink(surface, &ink)) {
      ox_vec d = ox_vec_sub(ink, at);
      assert_close(d.x * track.y - d.y * track.x, 0, 1.0, "px beside the way");
      met++;
    }
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    ox_picture_free(p);
  }
  assert_true(met > 0);
}

/* The still-air shape of a steady case lies in the map whichever way is up. */
static void assert_hold_in_map(const ox_picture *p, double t_s) {
  ox_viewport v = ox_picture_viewport_at(p, t_s);
  ox_vec at, size;
  ox_picture_map(p, &at, &size);
  ox_leg still[4];
  ox_still_air_shape(&paint_flight.setup, still);
  for (int i = 0; i < 4; i++)
    for (int k = 0; k <= 8; k++) {
      double s = still[i].t0_s + (still[i].t1_s - still[i].t0_s) * k / 8;
      ox_vec q = ox_viewport_to_dev(&v, ox_leg_position(&still[i], s));
      assert_true(q.x >= at.x && q.x <= at.x + size.x);
      assert_true(q.y >= at.y && q.y <= at.y + size.y);
    }
}

static void inbound_up_turns_the_course_upwards_and_still_fits(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(60); seed < seeds; seed++) {
    ox_random r = {seed + 5u};
    ox_case c = paint_mild_case(&r);
    ox_picture *p = seen(&c, (ox_view){.up = OX_UP_INBOUND}, 900, 650);
    ox_viewport v = ox_picture_viewport(p);
    double inbound_deg = paint_flight.setup.inbound_true_deg;
    ox_vec fix = ox_viewport_to_dev(&v, (ox_vec){0, 0});
    ox_vec ahead = ox_viewport_to_dev(&v, ox_unit(inbound_deg));
    assert_close(ahead.x, fix.x, 1e-9 * v.dev_per_nm, "the course leads straight up");
    assert_true(ahead.y < fix.y);
    assert_hold_in_map(p, 0);
    assert_false(ox_picture_moves(p));
    ox_picture_free(p);
  }
}

static void aircraft_up_keeps_the_nose_up_and_the_aircraft_in_the_middle(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = seen(&c, (ox_view){.up = OX_UP_AIRCRAFT}, 900, 650);
  assert_true(ox_picture_moves(p));
  ox_vec at, size;
  ox_picture_map(p, &at, &size);
  for (double t = -100; t < 700; t += 13.7) {
    ox_viewport v = ox_picture_viewport_at(p, t);
    ox_state s = ox_flight_at(&paint_flight, t);
    ox_vec q = ox_viewport_to_dev(&v, s.p_nm);
    ox_vec nose = ox_viewport_to_dev(&v, ox_vec_add(s.p_nm, ox_unit(s.heading_true_deg)));
    assert_close(q.x, at.x + size.x / 2, 1e-6, "x of the aircraft");
    assert_close(q.y, at.y + size.y / 2, 1e-6, "y of the aircraft");
    assert_close(nose.x, q.x, 1e-6, "the nose is straight up");
    assert_true(nose.y < q.y);
  }
  ox_picture_free(p);
}

static void what_is_drawn_is_where_the_viewport_of_the_instant_says(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 900, 650);
  cairo_t *cr = cairo_create(surface);
  const ox_view views[] = {{.up = OX_UP_AIRCRAFT}, {.air = 1}, {.air = 0.4}, {.up = OX_UP_INBOUND}};
  for (int i = 0; i < 4; i++) {
    ox_picture *p = seen(&c, views[i], 900, 650);
    for (double t = -60; t < 900; t += 111.3) {
      ox_picture_draw_moving(p, cr, t);
      ox_viewport then = ox_picture_viewport_at(p, t), now = ox_picture_viewport(p);
      assert_memory_equal(&then, &now, sizeof now);
      assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
    }
    ox_picture_free(p);
  }
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
}

static void zooming_keeps_the_point_under_the_pointer(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  for (int up = 0; up < 2; up++) {
    ox_view view = {.up = (ox_up)up};
    ox_picture *p = seen(&c, view, 900, 650);
    for (int step = 0; step < 9; step++) {
      ox_viewport v = ox_picture_viewport(p);
      ox_vec pointer = {320 + 7.0 * step, 280}, world = ox_viewport_to_world(&v, pointer);
      view = ox_view_zoomed(ox_picture_view(p), &v, pointer, step < 5 ? 1.3 : 0.8);
      ox_picture_free(p);
      p = seen(&c, view, 900, 650);
      v = ox_picture_viewport(p);
      ox_vec again = ox_viewport_to_dev(&v, world);
      assert_close(again.x, pointer.x, 1e-6, "x");
      assert_close(again.y, pointer.y, 1e-6, "y");
    }
    ox_picture_free(p);
  }
}

static void dragging_carries_the_world_with_the_pointer(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  for (int up = 0; up < 2; up++) {
    ox_picture *p = seen(&c, (ox_view){.up = (ox_up)up, .zoom = 2}, 900, 650);
    ox_viewport v = ox_picture_viewport(p);
    ox_vec from = {300, 300}, by = {60, -35}, world = ox_viewport_to_world(&v, from);
    ox_view view = ox_view_dragged(ox_picture_view(p), &v, by);
    ox_picture_free(p);
    p = seen(&c, view, 900, 650);
    v = ox_picture_viewport(p);
    ox_vec to = ox_viewport_to_dev(&v, world);
    assert_close(to.x, from.x + by.x, 1e-6, "x");
    assert_close(to.y, from.y + by.y, 1e-6, "y");
    ox_picture_free(p);
  }
}

static void a_view_stays_within_its_limits(void **state) {
  (void)state;
  const double wild[] = {nan(""), HUGE_VAL, -HUGE_VAL, -3, 0, 0.001, 1e9};
  for (int i = 0; i < 7; i++)
    for (int k = 0; k < 7; k++) {
      ox_view v = ox_view_limited((ox_view){(ox_up)(k * 13), wild[i], {wild[k], wild[i]}, wild[k]});
      assert_true(v.zoom >= OX_ZOOM_LEAST && v.zoom <= OX_ZOOM_MOST);
      assert_true(fabs(v.pan_nm.x) <= OX_PAN_MOST_NM && fabs(v.pan_nm.y) <= OX_PAN_MOST_NM);
      assert_true(v.air >= 0 && v.air <= 1);
      assert_true(v.up == OX_UP_NORTH || v.up == OX_UP_INBOUND || v.up == OX_UP_AIRCRAFT);
    }
  ox_viewport now = ox_viewport_fit((ox_vec){-2, -1}, (ox_vec){2, 1}, (ox_vec){0, 0},
                                    (ox_vec){400, 300}, 10, 0);
  ox_view same = ox_view_zoomed((ox_view){.zoom = 3}, &now, (ox_vec){1, 2}, nan(""));
  assert_close(same.zoom, 3, 0, "no number: nothing changes");
  assert_close(ox_view_zoomed(same, &now, (ox_vec){0, 0}, 1e12).zoom, OX_ZOOM_MOST, 0, "most");
}

/* However far somebody pans, something of the hold can still be seen. */
static void the_hold_cannot_be_lost_by_panning(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.arrival.distance_nm = 0;
  for (int i = 0; i < 32; i++) {
    ox_vec far = ox_vec_scale(ox_unit(i * 11.25), 400);
    ox_view view = {.up = (ox_up)(i % 2), .zoom = i % 3 ? 1.0 : 6.0, .pan_nm = far};
    ox_picture *p = seen(&c, view, 900, 650);
    ox_vec at, size;
    ox_picture_map(p, &at, &size);
    ox_viewport v = ox_picture_viewport(p);
    double reach = fmax(size.x, size.y) / v.dev_per_nm;
    assert_true(ox_vec_length(v.centre_nm) < 8.0 + reach);
    assert_true(ox_vec_length(ox_picture_view(p).pan_nm) < 20.0);
    ox_picture_free(p);
  }
}

static void every_view_of_every_case_can_be_drawn(void **state) {
  (void)state;
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 420, 420);
  cairo_t *cr = cairo_create(surface);
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(150); seed < seeds; seed++) {
    ox_random r = {seed};
    ox_case c = paint_seeded_case(seed);
    ox_view view = {.up = (ox_up)ox_random_below(&r, 3), .zoom = ox_random_between(&r, 0.2, 22),
                    .pan_nm = {ox_random_between(&r, -9, 9), ox_random_between(&r, -9, 9)},
                    .air = ox_random_below(&r, 2) ? ox_random_between(&r, 0, 1) : seed % 2};
    ox_picture *p = seen(&c, view, 420, 420);
    double end_s = ox_flight_end_s(&paint_flight);
    const double times[] = {-1e9, -10, 0, 50, 0.5 * end_s, end_s, nan("")};
    for (int i = 0; i < 7; i++) {
      ox_picture_draw(p, cr, times[i]);
      assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
      ox_viewport v = ox_picture_viewport_at(p, times[i]);
      assert_true(isfinite(v.centre_nm.x + v.centre_nm.y + v.dev_per_nm + v.up_deg));
    }
    for (size_t i = 0; i < ox_picture_label_count(p); i++) {
      ox_label_box a = ox_picture_label(p, i);
      if (a.dropped) continue;
      assert_true(ox_rect_inside((ox_rect){a.x, a.y, a.width, a.height}, p->map));
    }
    ox_picture_free(p);
  }
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
}

static void pictures_side_by_side_share_one_scale_and_one_place(void **state) {
  (void)state;
  static ox_flight flights[2];
  ox_case c[2] = {paint_demo_case(), paint_demo_case()};
  c[1].aircraft.ias_kt = 190;
  c[1].arrival.heading_deg = 60;
  ox_scene scenes[2];
  for (int up = 0; up < 2; up++) {
    for (int i = 0; i < 2; i++) {
      assert_int_not_equal(ox_flight_solve(&c[i], &flights[i]), OX_ERROR);
      scenes[i] = paint_scene(&c[i], &flights[i], OX_PALETTE_LIGHT);
      scenes[i].view.up = (ox_up)up;
    }
    ox_fit fit = ox_picture_fit_of(scenes, 2, 600, 640);
    ox_picture *p[2], *alone = ox_picture_new(&scenes[1], 600, 640);
    for (int i = 0; i < 2; i++) {
      scenes[i].fit = &fit;
      p[i] = ox_picture_new(&scenes[i], 600, 640);
    }
    ox_viewport a = ox_picture_viewport(p[0]), b = ox_picture_viewport(p[1]);
    assert_close(a.dev_per_nm, b.dev_per_nm, 0, "one scale");
    assert_close(a.centre_nm.x, b.centre_nm.x, 1e-12, "x of the middle");
    assert_close(a.centre_nm.y, b.centre_nm.y, 1e-12, "y of the middle");
    assert_true(a.dev_per_nm <= ox_picture_viewport(alone).dev_per_nm);
    paint_flight = flights[1];
    assert_hold_in_map(p[1], 0);
    for (int i = 0; i < 2; i++) ox_picture_free(p[i]);
    ox_picture_free(alone);
  }
  ox_fit none = ox_picture_fit_of(NULL, 0, 600, 640);
  assert_close(none.dev_per_nm, 0, 0, "nothing to share");
}

/* ---- held, and kept clear --------------------------------------------------------------- */

static void a_held_world_stays_whatever_the_view_says(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_held held = {.world = {{1, 2}, {400, 300}, 55, 33}};
  ox_viewport now;
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  ox_viewport own;
  assert_true(ox_picture_viewport_of(&scene, 900, 650, 77, &own));
  scene.held = &held;
  for (int up = OX_UP_NORTH; up <= OX_UP_AIRCRAFT; up++) {
    scene.view = (ox_view){.up = (ox_up)up, .zoom = 2, .air = 1};
    ox_picture *p = ox_picture_new(&scene, 900, 650);
    now = ox_picture_viewport_at(p, 77);
    assert_close(now.dev_per_nm, held.world.dev_per_nm, 0, "scale");
    assert_close(now.up_deg, held.world.up_deg, 0, "up");
    assert_close(now.centre_nm.x, held.world.centre_nm.x, 0, "x");
    ox_picture_free(p);
  }
  scene.view = (ox_view){0};
  assert_true(ox_picture_viewport_of(&scene, 900, 650, 77, &now)); /* as if let go */
  assert_close(now.dev_per_nm, own.dev_per_nm, 0, "its own scale");
  assert_close(now.centre_nm.y, own.centre_nm.y, 0, "its own place");
  assert_false(ox_picture_viewport_of(&scene, (double)NAN, 650, 77, &now));
}

static size_t one_point(void *data, const ox_picture *picture, ox_vec *points, size_t most) {
  assert_true(most >= 1 && ox_picture_viewport(picture).dev_per_nm > 0);
  points[0] = *(const ox_vec *)data;
  return 1;
}

/* Wherever a label stands, it goes elsewhere when that place is asked to be left free. */
static void labels_leave_the_places_of_handles_free(void **state) {
  (void)state;
  enum { RADIUS = 9 };
  ox_case c = paint_demo_case();
  ox_picture *p = seen(&c, (ox_view){0}, 900, 650);
  size_t tried = 0;
  for (size_t i = 0; i < ox_picture_label_count(p); i++) {
    ox_label_box box = ox_picture_label(p, i);
    if (box.dropped) continue;
    ox_vec at = {box.x + box.width / 2, box.y + box.height / 2};
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.keep_clear = (ox_keep_clear){one_point, &at, RADIUS};
    ox_picture *q = ox_picture_new(&scene, 900, 650);
    for (size_t k = 0; k < ox_picture_label_count(q); k++) {
      ox_label_box b = ox_picture_label(q, k);
      bool apart = b.dropped || b.x > at.x + RADIUS || b.x + b.width < at.x - RADIUS ||
                   b.y > at.y + RADIUS || b.y + b.height < at.y - RADIUS;
      if (!apart) print_error("\"%s\" lies on the handle\n", b.text);
      assert_true(apart);
    }
    ox_picture_free(q);
    tried++;
  }
  assert_true(tried > 8);
  ox_picture_free(p);
}

static void the_words_of_the_wind_stand_above_or_below_its_arrow(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.wind[0] = (ox_wind_row){0, 180, 20, OX_NORTH_TRUE};
  ox_vec below, above;
  double reach, large;
  ox_picture *p = seen(&c, (ox_view){0}, 900, 650);
  assert_true(ox_picture_wind_arrow(p, &below, &reach));
  ox_picture_free(p);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  scene.wind_words_above = true;
  p = ox_picture_new(&scene, 900, 650);
  assert_true(ox_picture_wind_arrow(p, &above, &reach));
  assert_close(reach, 0.43 * 4.6 * p->size.small, 1e-9, "half the shaft");
  assert_true(above.y > below.y + 10);
  assert_close(above.x, below.x, 1e-9, "one block");
  ox_picture_free(p);
  scene.text_scale = 2.0;
  p = ox_picture_new(&scene, 900, 650);
  assert_true(ox_picture_wind_arrow(p, &above, &large));
  assert_close(large, 2 * reach, 1e-9, "with the type");
  ox_picture_free(p);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_view_of_nothing_but_noughts_is_the_fitted_one),
      cmocka_unit_test(the_aircraft_is_whole_wherever_it_is),
      cmocka_unit_test(an_aircraft_that_comes_has_its_arrow_on_its_way),
      cmocka_unit_test(inbound_up_turns_the_course_upwards_and_still_fits),
      cmocka_unit_test(aircraft_up_keeps_the_nose_up_and_the_aircraft_in_the_middle),
      cmocka_unit_test(what_is_drawn_is_where_the_viewport_of_the_instant_says),
      cmocka_unit_test(zooming_keeps_the_point_under_the_pointer),
      cmocka_unit_test(dragging_carries_the_world_with_the_pointer),
      cmocka_unit_test(a_view_stays_within_its_limits),
      cmocka_unit_test(the_hold_cannot_be_lost_by_panning),
      cmocka_unit_test(every_view_of_every_case_can_be_drawn),
      cmocka_unit_test(pictures_side_by_side_share_one_scale_and_one_place),
      cmocka_unit_test(a_held_world_stays_whatever_the_view_says),
      cmocka_unit_test(labels_leave_the_places_of_handles_free),
      cmocka_unit_test(the_words_of_the_wind_stand_above_or_below_its_arrow),
  };
  return cmocka_run_group_tests_name("views", tests, NULL, NULL);
}
