/* The air view is exact: turns of one radius, straight legs, and agreement with the ground view at
 * the aircraft's own place. Everything here follows from the definition: a point flown at t' is
 * seen at t where it is less the wind between t and t'. */
#include "air.h"
#include "ox_test.h"
#include "oxbow/units.h"
#include "paint_cases.h"
#include "paint_private.h"

static ox_flight flight, seen;

static void see(const ox_case *c, double t_s, double air) {
  assert_int_not_equal(ox_flight_solve(c, &flight), OX_ERROR);
  seen = flight;
  ox_air_see(&flight, t_s, air, &seen);
}

static ox_case gusty_case(unsigned seed) {
  ox_random r = {seed + 900u};
  ox_case c = paint_mild_case(&r);
  if (seed % 2) {
    c.wind_change_count = 1; /* conditions that change under way */
    c.wind_changes[0].at_min = 3;
    c.wind_changes[0].from_deg = floor(ox_random_between(&r, 0, 360));
    c.wind_changes[0].kt = 30;
    c.wind_changes[0].north = OX_NORTH_TRUE;
  }
  return c;
}

static void in_the_air_turns_are_circles_and_legs_straight(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(60); seed < seeds; seed++) {
    ox_case c = gusty_case(seed);
    see(&c, 200.0, 1.0);
    for (size_t i = 0; i < seen.leg_count; i++) {
      const ox_leg *leg = &seen.legs[i];
      double v_nm_s = leg->tas_kt / OX_S_PER_H, whole_s = leg->t1_s - leg->t0_s;
      for (int k = 0; k <= 10; k++) {
        double t = leg->t0_s + whole_s * k / 10;
        ox_vec q = ox_leg_position(leg, t);
        if (leg->shape == OX_SHAPE_STRAIGHT) {
          ox_vec along = ox_vec_scale(ox_unit(leg->heading0_true_deg), v_nm_s * (t - leg->t0_s));
          ox_vec want = ox_vec_add(leg->p0_nm, along);
          assert_close(q.x, want.x, 1e-9, "x on a straight leg");
          assert_close(q.y, want.y, 1e-9, "y on a straight leg");
        } else {
          double radius_nm = v_nm_s / (fabs(leg->rate_deg_s) * OX_RAD_PER_DEG); /* V / omega */
          double side_deg = leg->rate_deg_s > 0 ? 90.0 : -90.0;
          ox_vec middle = ox_vec_add(
              leg->p0_nm, ox_vec_scale(ox_unit(leg->heading0_true_deg + side_deg), radius_nm));
          assert_close(ox_vec_length(ox_vec_sub(q, middle)), radius_nm, 1e-9, "radius of a turn");
        }
      }
    }
  }
}

static void legs_still_join_at_every_fraction(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(40); seed < seeds; seed++) {
    ox_case c = gusty_case(seed);
    for (int k = 0; k <= 4; k++) {
      see(&c, 77.0 * k, 0.25 * k);
      for (size_t i = 1; i < seen.leg_count; i++) {
        ox_vec gap = ox_vec_sub(seen.legs[i].p0_nm, seen.legs[i - 1].p1_nm);
        ox_vec was = ox_vec_sub(flight.legs[i].p0_nm, flight.legs[i - 1].p1_nm);
        assert_close(ox_vec_length(ox_vec_sub(gap, was)), 0, 1e-9, "no new gap");
        ox_vec end = ox_leg_position(&seen.legs[i], seen.legs[i].t1_s);
        assert_close(ox_vec_length(ox_vec_sub(end, seen.legs[i].p1_nm)), 0, 1e-8, "its own end");
      }
    }
  }
}

static void both_views_agree_where_the_aircraft_is(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(60); seed < seeds; seed++) {
    ox_case c = gusty_case(seed);
    see(&c, 0.0, 0.0);
    double begin_s = ox_flight_begin_s(&flight), end_s = ox_flight_end_s(&flight);
    for (int k = 0; k <= 12; k++) {
      double t = begin_s + (end_s - begin_s) * k / 12;
      ox_air_see(&flight, t, 0.2 + 0.8 * (k % 3) / 2, &seen);
      ox_vec a = ox_flight_at(&flight, t).p_nm, b = ox_flight_at(&seen, t).p_nm;
      assert_close(ox_vec_length(ox_vec_sub(a, b)), 0, 1e-9, "the aircraft's own place");
    }
  }
}

static void air_zero_changes_nothing(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  see(&c, 321.0, 0.0);
  for (size_t i = 0; i < flight.leg_count; i++) {
    assert_close(seen.legs[i].p0_nm.x, flight.legs[i].p0_nm.x, 0, "x");
    assert_close(seen.legs[i].p1_nm.y, flight.legs[i].p1_nm.y, 0, "y");
    assert_close(seen.legs[i].wind_kt.y, flight.legs[i].wind_kt.y, 0, "wind");
  }
}

/* In a calm both views are one and the racetrack closes. With wind it closes over the ground, on
 * the fix, so that in the air it is open by the way of the air in a circuit. */
static void a_racetrack_is_open_in_the_air_by_wind_times_time(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.wind[0].kt = 0;
  c.arrival.heading_deg = 240;
  c.technique.circuits = 2;
  see(&c, 100.0, 1.0);
  const ox_circuit *k = &flight.circuits[1];
  ox_vec from = ox_flight_at(&seen, k->fix_t_s).p_nm, to = ox_flight_at(&seen, k->end_t_s).p_nm;
  assert_close(ox_vec_length(ox_vec_sub(from, to)), 0, 1e-6, "closed");
  c.wind[0].kt = 25;
  c.technique.drift = OX_DRIFT_EXACT;
  c.technique.outbound = OX_OUTBOUND_EXACT;
  see(&c, 100.0, 1.0);
  k = &flight.circuits[1];
  from = ox_flight_at(&seen, k->fix_t_s).p_nm;
  to = ox_flight_at(&seen, k->end_t_s).p_nm;
  double way_nm = 25.0 * (k->end_t_s - k->fix_t_s) / OX_S_PER_H;
  assert_close(ox_vec_length(ox_vec_sub(from, to)), way_nm, 1e-6, "open by wind times time");
}

static void the_ground_slides_with_the_wind_s_speed_through_most_of_a_circuit(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.technique.circuits = 3;
  see(&c, 0, 0);
  const ox_circuit *k = &flight.circuits[1];
  double middle_s = 0.5 * (k->fix_t_s + k->end_t_s);
  ox_vec there = ox_air_camera(&flight, middle_s);
  assert_close(ox_vec_length(there), 0, 1e-9, "half-way the fix is in its place");
  for (double t = k->fix_t_s + 25; t + 10 < k->end_t_s; t += 10) {
    ox_vec d = ox_vec_sub(ox_air_camera(&flight, t + 10), ox_air_camera(&flight, t));
    assert_close(ox_vec_length(d), 20.0 * 10 / OX_S_PER_H, 1e-9, "20 kt for 10 s");
    assert_angle_close(ox_bearing_deg(d), 180, 1e-6, "the middle goes with the wind");
  }
}

static void the_middle_of_the_picture_never_jumps(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(30); seed < seeds; seed++) {
    ox_case c = gusty_case(seed);
    c.technique.circuits = 3;
    see(&c, 0, 0);
    double end_s = ox_flight_end_s(&flight), step = 0.05;
    ox_vec last = ox_air_camera(&flight, -20);
    for (double t = -20 + step; t < fmin(end_s, 900); t += step) {
      ox_vec now = ox_air_camera(&flight, t);
      assert_true(ox_vec_length(ox_vec_sub(now, last)) < 0.03);
      last = now;
    }
  }
}

/* So that the entry comes to its place where the fix is crossed, and nothing glides there. */
static void the_fix_waits_on_the_arrival_where_the_first_stretch_begins(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  see(&c, 0, 0);
  ox_vec at_fix = ox_air_camera(&flight, 0.0);
  ox_stretch first = ox_air_stretch(&flight, 0.0);
  double half_s = 0.5 * (first.to_s - first.from_s);
  assert_close(ox_vec_length(at_fix), 20.0 * half_s / OX_S_PER_H, 1e-9, "half of its way");
  assert_angle_close(ox_bearing_deg(at_fix), 360, 1e-6, "up the wind");
  for (double t = ox_flight_begin_s(&flight); t < 0; t += 10) {
    ox_vec d = ox_vec_sub(ox_air_camera(&flight, t), at_fix);
    assert_close(ox_vec_length(d), 0, 1e-9, "it stands still");
  }
  ox_vec d = ox_vec_sub(ox_air_camera(&flight, 10), at_fix);
  assert_close(ox_vec_length(d), 20.0 * 10 / OX_S_PER_H, 1e-9, "from the fix on with the air");
}

static bool is_whole(const ox_picture *p) {
  for (size_t i = 0; i < p->flown->leg_count; i++) {
    const ox_leg *leg = &p->flown->legs[i];
    if (leg->part == OX_PART_ARRIVAL || !ox_stretch_has(&p->named, leg)) continue;
    for (int k = 0; k <= 16; k++) {
      double t_s = leg->t0_s + (leg->t1_s - leg->t0_s) * k / 16;
      if (!ox_rect_has(p->map, ox_to_dev(p, ox_leg_position(leg, t_s)))) return false;
    }
  }
  return true;
}

/* A seeded case carried with the air; one at a time. */
static ox_picture *carried_along(unsigned seed, double text_scale) {
  static ox_case c;
  ox_random r = {seed * 7919u + 17u};
  c = paint_mild_case(&r);
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  scene.view.air = 1.0;
  scene.text_scale = text_scale;
  return ox_picture_new(&scene, 900, 620);
}

static void what_is_flown_next_lies_in_the_map_on_the_arrival(void **state) {
  (void)state;
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 900, 620);
  cairo_t *cr = cairo_create(surface);
  int looked = 0;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(40); seed < seeds; seed++) {
    ox_picture *p = carried_along(seed, 1.0);
    for (double t = fmax(ox_flight_begin_s(&paint_flight), -120); t < 0; t += 20, looked++) {
      ox_picture_draw_moving(p, cr, t);
      assert_true(is_whole(p));
      assert_true(ox_rect_has(p->map, ox_to_dev(p, (ox_vec){0, 0})));
    }
    ox_picture_free(p);
  }
  assert_true(looked > ox_test_least(40));
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
}

static double leader_em(const ox_picture *p, const ox_label *label) {
  if (label->dropped || !label->has_leader) return 0.0;
  return ox_vec_length(ox_vec_sub(label->leader_to, label->leader_from)) / p->size.label;
}

/* In large type, where there is least room: a leader is long only at a label of first rank. */
static void labels_are_not_left_behind_by_what_they_name(void **state) {
  (void)state;
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 900, 620);
  cairo_t *cr = cairo_create(surface);
  int leaders = 0, of_length = 0;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(12); seed < seeds; seed++) {
    ox_picture *p = carried_along(seed, 2.0);
    for (double t = -100; t < 400; t += 20) {
      ox_picture_draw_moving(p, cr, t);
      for (size_t i = 0; i < p->label_count; i++) {
        double em = leader_em(p, &p->labels[i]);
        leaders += em > 0.0;
        of_length += em > 6.0;
        assert_true(p->labels[i].priority == 1 || em <= 7.0);
      }
    }
    ox_picture_free(p);
  }
  assert_true(leaders > ox_test_least(100));
  assert_true(of_length * 7 < leaders); /* left in place, one in five was */
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
}

static void every_instant_is_in_a_stretch_that_holds_it(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(60); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    see(&c, 0, 0);
    double begin_s = ox_flight_begin_s(&flight), end_s = ox_flight_end_s(&flight);
    for (int i = 0; i <= 40; i++) {
      double t = begin_s + (end_s - begin_s) * i / 40;
      ox_stretch s = ox_air_stretch(&flight, t);
      assert_true(t >= s.from_s - 1e-9 && t <= s.to_s + 1e-9);
      assert_true(s.circuit >= -1 && s.circuit <= (int)flight.circuit_count);
      ox_vec carried = ox_air_camera(&flight, t);
      assert_true(isfinite(carried.x) && isfinite(carried.y));
    }
  }
}

/* Interrupted at any fraction, the picture is the same as one that was asked for it. */
static void the_passage_moves_the_track_evenly(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_vec at[5];
  for (int k = 0; k < 5; k++) {
    see(&c, 150.0, 0.25 * k);
    at[k] = ox_flight_at(&seen, 400.0).p_nm;
  }
  for (int k = 1; k < 4; k++) {
    ox_vec half = ox_vec_scale(ox_vec_add(at[k - 1], at[k + 1]), 0.5);
    assert_close(ox_vec_length(ox_vec_sub(half, at[k])), 0, 1e-9, "evenly");
  }
  assert_close(ox_vec_length(ox_vec_sub(at[4], at[0])), 20.0 * 250 / OX_S_PER_H, 1e-9,
               "in all, the wind's way in 250 s");
}

static void labels_stay_beside_what_they_name_while_the_world_moves(void **state) {
  (void)state;
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 1000, 700);
  cairo_t *cr = cairo_create(surface);
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  for (int turning = 0; turning < 2; turning++) {
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.view.up = turning ? OX_UP_AIRCRAFT : OX_UP_NORTH;
    scene.view.air = turning ? 0.0 : 1.0;
    ox_picture *p = ox_picture_new(&scene, 1000, 700);
    int kept = 0, moved = 0;
    ox_vec last = {0, 0};
    for (double t = 60; t < 160; t += 0.2) {
      ox_picture_draw_moving(p, cr, t);
      for (size_t i = 0; i < ox_picture_label_count(p); i++) {
        ox_label_box b = ox_picture_label(p, i);
        if (b.dropped || strcmp(b.text, "LARCH") != 0) continue;
        ox_viewport v = ox_picture_viewport(p);
        ox_vec fix = ox_viewport_to_dev(&v, (ox_vec){0, 0});
        ox_vec off = {b.x + b.width / 2 - fix.x, b.y + b.height / 2 - fix.y};
        if (ox_vec_length(ox_vec_sub(off, last)) < 2.0) kept++; else moved++;
        last = off;
      }
    }
    assert_true(kept > 400);
    assert_true(moved < 25);
    ox_picture_free(p);
  }
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(in_the_air_turns_are_circles_and_legs_straight),
      cmocka_unit_test(legs_still_join_at_every_fraction),
      cmocka_unit_test(both_views_agree_where_the_aircraft_is),
      cmocka_unit_test(air_zero_changes_nothing),
      cmocka_unit_test(a_racetrack_is_open_in_the_air_by_wind_times_time),
      cmocka_unit_test(the_ground_slides_with_the_wind_s_speed_through_most_of_a_circuit),
      cmocka_unit_test(the_middle_of_the_picture_never_jumps),
      cmocka_unit_test(the_fix_waits_on_the_arrival_where_the_first_stretch_begins),
      cmocka_unit_test(what_is_flown_next_lies_in_the_map_on_the_arrival),
      cmocka_unit_test(labels_are_not_left_behind_by_what_they_name),
      cmocka_unit_test(every_instant_is_in_a_stretch_that_holds_it),
      cmocka_unit_test(the_passage_moves_the_track_evenly),
      cmocka_unit_test(labels_stay_beside_what_they_name_while_the_world_moves),
  };
  return cmocka_run_group_tests_name("air view", tests, NULL, NULL);
}
