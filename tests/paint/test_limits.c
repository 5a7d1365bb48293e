/* What a DME station limits, on the picture: where the lines are, and what they are called. */
#include "ox_test.h"
#include "paint_cases.h"
#include "paint_private.h"

enum { WIDTH = 1000, HEIGHT = 700 };

/* AIM 5-3-8 j5, FIG 5-3-5: the fix at 10 DME, inbound towards the station, the outbound end at 15 DME. */
static ox_case towards(double radial_deg) {
  ox_case c = paint_demo_case();
  c.hold.inbound_deg = 90;
  c.arrival.heading_deg = 100;
  c.hold.altitude_ft = 10000;
  c.aircraft.ias_kt = 180;
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_nm = 5;
  c.hold.station.given = true;
  c.hold.station.nm = sqrt(100.0 - 10000.0 / 6076.12 * (10000.0 / 6076.12));
  c.hold.station.radial_deg = 90;
  c.hold.station.limiting_radial_deg = radial_deg;
  return c;
}

static ox_picture *picture_of(const ox_case *c, ox_scene *scene) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  scene->c = c;
  scene->flight = &paint_flight;
  ox_picture *p = ox_picture_new(scene, WIDTH, HEIGHT);
  assert_non_null(p);
  return p;
}

static const char *shown_label(const ox_picture *p, const char *begins) {
  for (size_t i = 0; i < ox_picture_label_count(p); i++) {
    ox_label_box box = ox_picture_label(p, i);
    if (!box.dropped && strncmp(box.text, begins, strlen(begins)) == 0) return box.text;
  }
  return NULL;
}

/* A line's points back in the world, from the station. */
static ox_vec from_station(const ox_picture *p, const ox_line_point *q) {
  ox_viewport v = ox_picture_viewport(p);
  ox_vec world = ox_viewport_to_world(&v, (ox_vec){q->x, q->y});
  return ox_vec_sub(world, p->scene.flight->setup.dme.at_nm);
}

static void the_lines_lie_where_the_station_puts_them_in_every_view(void **state) {
  (void)state;
  ox_case c = towards(255);
  for (int up = 0; up <= OX_UP_AIRCRAFT; up++)
    for (int zoom = 1; zoom <= 3; zoom += 2) {
      ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
      scene.view.up = (ox_up)up;
      scene.view.zoom = zoom == 1 ? 1.0 : 0.4;
      ox_picture *p = picture_of(&c, &scene);
      assert_true(p->limits.radial.count >= 2);
      assert_true(p->limits.distance.count >= 10);
      double radial_true_deg = 255 - 12; /* 12 degrees west */
      for (size_t i = 0; i < p->limits.radial.count; i++) {
        ox_vec q = from_station(p, &p->limits.radial.p[i]);
        if (ox_vec_length(q) < 0.01) continue; /* the station itself */
        assert_angle_close(ox_bearing_deg(q), radial_true_deg, 1e-6, "radial");
      }
      for (size_t i = 0; i < p->limits.distance.count; i++) /* 10 000 ft, 15 DME: 14.909 NM */
        assert_close(ox_vec_length(from_station(p, &p->limits.distance.p[i])), 14.909, 0.01,
                     "distance");
      ox_picture_free(p);
    }
}

static void they_are_named_with_their_figures_also_where_the_answer_is_hidden(void **state) {
  (void)state;
  ox_case c = towards(255);
  for (int hide = 0; hide <= 1; hide++)
    for (int id = 0; id < OX_PALETTE_COUNT; id++) {
      ox_scene scene = paint_scene(&c, &paint_flight, (ox_palette_id)id);
      scene.hide_answer = hide == 1;
      ox_picture *p = picture_of(&c, &scene);
      const char *radial = shown_label(p, "limiting radial");
      if (!radial) radial = shown_label(p, "limiting\nradial");
      assert_non_null(radial);
      assert_non_null(strstr(radial, "255 M"));
      const char *distance = shown_label(p, "limiting 15 DME");
      if (!distance) distance = shown_label(p, "limiting\n15 DME");
      assert_non_null(distance);
      const char *facts = pango_layout_get_text(p->furniture.facts.layout);
      assert_non_null(strstr(facts, "outbound to 15 DME or limiting radial 255 M"));
      ox_picture_free(p);
    }
}

static void the_legend_names_what_there_is(void **state) {
  (void)state;
  ox_case both = towards(255), distance = towards(0), radial = towards(150), timed = towards(255);
  radial.hold.station.radial_deg = 270; /* away, 4 NM off, a reading that is never seen */
  radial.hold.station.nm = 4;
  radial.hold.leg_nm = 3.6;
  timed.hold.leg_by = OX_LEG_BY_TIME;
  const ox_case *const cases[] = {&both, &distance, &radial, &timed};
  const char *const words[] = {"limiting radial, distance", "limiting distance",
                               "limiting radial", NULL};
  for (int i = 0; i < 4; i++) {
    ox_scene scene = paint_scene(cases[i], &paint_flight, OX_PALETTE_LIGHT);
    ox_picture *p = picture_of(cases[i], &scene);
    assert_int_equal(ox_legend_names(p, OX_LINE_LIMIT), words[i] != NULL);
    if (words[i])
      assert_string_equal(
          pango_layout_get_text(p->furniture.legend.words[OX_LINE_LIMIT].layout), words[i]);
    else
      assert_true(p->limits.radial.count == 0 && p->limits.distance.count == 0);
    ox_picture_free(p);
  }
  ox_scene scene = paint_scene(&both, &paint_flight, OX_PALETTE_LIGHT);
  scene.layers &= ~(unsigned)OX_LAYER_COURSE;
  ox_picture *p = picture_of(&both, &scene);
  assert_true(p->limits.radial.count == 0 && p->limits.distance.count == 0);
  assert_null(shown_label(p, "limiting"));
  ox_picture_free(p);
}

/* Drawn with its symbol where it is in the map, but not where a place of the lesson marks it. */
static void the_station_is_marked_once(void **state) {
  (void)state;
  ox_case c = towards(150);
  c.hold.station.radial_deg = 270;
  c.hold.station.nm = 4;
  c.hold.leg_nm = 3.6;
  ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
  ox_picture *p = picture_of(&c, &scene);
  assert_true(p->limits.shows_station);
  assert_non_null(shown_label(p, "DME station"));
  ox_picture_free(p);
  ox_mark mark = {paint_flight.setup.dme.at_nm, "OSIER", OX_MARK_STATION};
  scene.marks = &mark;
  scene.mark_count = 1;
  p = picture_of(&c, &scene);
  assert_false(p->limits.shows_station);
  assert_null(shown_label(p, "DME station"));
  ox_picture_free(p);
}

static bool crosses(ox_vec a, ox_vec b, ox_label_box box) {
  ox_rect r = {box.x, box.y, box.width, box.height};
  return ox_rect_clip(r, &a, &b);
}

/* Any station, any radial: everything is finite and in the map, and no label lies on the lines. */
static void no_label_lies_on_them_and_nothing_leaves_the_map(void **state) {
  (void)state;
  ox_random r = {31};
  int looked = 0;
  for (int i = 0; i < 120; i++) {
    ox_case c = towards(ox_random_between(&r, 0.1, 360));
    c.hold.inbound_deg = floor(ox_random_between(&r, 0, 360));
    c.hold.turns = i % 2 ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
    c.hold.station.radial_deg = ox_random_between(&r, 0, 360);
    c.hold.station.nm = i % 5 == 0 ? 0.0 : i % 5 == 1 ? 200.0 : ox_random_between(&r, 0, 30);
    c.hold.leg_nm = ox_random_between(&r, 2, 12);
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    ox_picture *p = picture_of(&c, &scene);
    ox_rect map = ox_rect_inset(p->map, -0.01);
    const ox_lines *lines[] = {&p->limits.radial, &p->limits.distance};
    for (int k = 0; k < 2; k++)
      for (size_t n = 0; n < lines[k]->count; n++) {
        ox_vec q = {lines[k]->p[n].x, lines[k]->p[n].y};
        assert_true(ox_rect_has(map, q));
        if (lines[k]->p[n].move) continue;
        ox_vec before = {lines[k]->p[n - 1].x, lines[k]->p[n - 1].y};
        for (size_t l = 0; l < ox_picture_label_count(p); l++) {
          ox_label_box box = ox_picture_label(p, l);
          if (!box.dropped) assert_false(crosses(before, q, box));
          looked++;
        }
      }
    ox_picture_free(p);
  }
  assert_true(looked > 5000);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_lines_lie_where_the_station_puts_them_in_every_view),
      cmocka_unit_test(they_are_named_with_their_figures_also_where_the_answer_is_hidden),
      cmocka_unit_test(the_legend_names_what_there_is),
      cmocka_unit_test(the_station_is_marked_once),
      cmocka_unit_test(no_label_lies_on_them_and_nothing_leaves_the_map),
  };
  return cmocka_run_group_tests_name("limits", tests, NULL, NULL);
}
