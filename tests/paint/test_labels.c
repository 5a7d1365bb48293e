/* Labels touch nothing: no line, no symbol, no other label, not the edge. */
#include "label_check.h"
#include "ox_test.h"
#include "oxbow/lesson.h"
#include "paint_cases.h"
#include "paint_private.h"

enum { SEEDS = 240 };

static const struct {
  double width, height;
} sizes[] = {{700, 480}, {1400, 950}, {595, 842}, {1920, 1080}};

static void no_label_touches_anything_in_any_seeded_case(void **state) {
  (void)state;
  size_t placed = 0, all = 0;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(SEEDS); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    for (size_t s = 0; s < sizeof sizes / sizeof *sizes; s++) {
      ox_palette_id palette = (ox_palette_id)((seed + s) % OX_PALETTE_COUNT);
      ox_picture *p = paint_picture(&c, palette, sizes[s].width, sizes[s].height);
      char where[64];
      snprintf(where, sizeof where, "seed %u, %gx%g, %s", seed, sizes[s].width, sizes[s].height,
               ox_palette_name(palette));
      for (size_t i = 0; i < ox_picture_label_count(p); i++) {
        check_label(p, i, sizes[s].width, sizes[s].height, where);
        all++;
        placed += !ox_picture_label(p, i).dropped;
      }
      ox_picture_free(p);
    }
  }
  assert_true(all > (size_t)ox_test_least(10000));
  assert_true(placed * 10 > all * 6); /* dropping everything would pass the rest of this test */
}

static void no_label_touches_an_overlay_in_any_seeded_case(void **state) {
  (void)state;
  static const double overlaid[][2] = {{1000, 700}, {490, 610}};
  size_t named = 0, pictures = 0;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(SEEDS); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    for (size_t s = 0; s < sizeof overlaid / sizeof *overlaid; s++) {
      ox_palette_id palette = (ox_palette_id)((seed / 7 + s) % OX_PALETTE_COUNT);
      ox_scene scene = paint_overlaid_scene(&c, palette, seed);
      if (seed % 4 == 1) scene.area = NULL; /* and the comparison alone, at a larger scale */
      ox_picture *p = ox_picture_new(&scene, overlaid[s][0], overlaid[s][1]);
      assert_non_null(p);
      char where[64];
      snprintf(where, sizeof where, "seed %u, %gx%g, %s, overlaid", seed, overlaid[s][0],
               overlaid[s][1], ox_palette_name(palette));
      for (size_t i = 0; i < ox_picture_label_count(p); i++) {
        check_label(p, i, overlaid[s][0], overlaid[s][1], where);
        named += p->labels[i].ink == OX_HUE_COMPARE_TEXT && !p->labels[i].dropped;
      }
      pictures++;
      ox_picture_free(p);
    }
  }
  assert_true(named * 10 > pictures * 8);
}

static void what_is_drawn_over_the_labels_is_among_the_obstacles(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  const ox_lines *drawn[] = {&p->lines.track, &p->lines.later, &p->lines.entry,
                             &p->lines.arrival, &p->lines.still_air, &p->rose.ring,
                             &p->rose.ticks, &p->rose.spokes, &p->course.line,
                             &p->course.abeam, &p->course.head, &p->lines.heads_track};
  for (size_t k = 0; k < sizeof drawn / sizeof *drawn; k++) {
    assert_true(drawn[k]->count > 1);
    ox_line_point mid = drawn[k]->p[1];
    bool found = false;
    for (size_t i = 0; i < ox_picture_obstacle_count(p) && !found; i++) {
      ox_vec a, b;
      ox_picture_obstacle(p, i, &a, &b);
      found = fabs(b.x - mid.x) < 1e-9 && fabs(b.y - mid.y) < 1e-9;
    }
    assert_true(found);
  }
  ox_picture_free(p);
}

static const double boards[][2] = {{700, 480}, {800, 560},  {1024, 700}, {1400, 950}, {1920, 1080},
                                   {842, 595}, {792, 612}, {595, 842},  {3840, 2160}};

/* Counts the labels of first rank and fails where one is dropped. */
static int count_key_labels(const ox_case *c, ox_palette_id palette, const double board[2]) {
  ox_picture *p = paint_picture(c, palette, board[0], board[1]);
  int key = 0;
  for (size_t i = 0; i < p->label_count; i++) {
    if (p->labels[i].priority != 1) continue;
    key++;
    if (!p->labels[i].dropped) continue;
    print_error("%s, %gx%g %s: \"%s\" is dropped\n", c->name, board[0], board[1],
                ox_palette_name(palette), ox_picture_label(p, i).text);
    fail();
  }
  ox_picture_free(p);
  return key;
}

static void every_shipped_lesson_keeps_its_key_labels(void **state) {
  (void)state;
  static const char *const names[] = {"demo", "adjusting", "high-and-fast", "outbound-timing"};
  int cases = 0;
  for (size_t n = 0; n < sizeof names / sizeof *names; n++) {
    char path[4096];
    snprintf(path, sizeof path, "%s/%s.oxbow", getenv("OXBOW_LESSONS"), names[n]);
    ox_lesson *lesson = NULL;
    ox_messages messages = {0};
    assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
    for (size_t k = 0; k < lesson->case_count; k++, cases++)
      for (size_t s = 0; s < sizeof boards / sizeof *boards; s++)
        for (int id = 0; id < OX_PALETTE_COUNT; id++) {
          int key = count_key_labels(&lesson->cases[k].c, (ox_palette_id)id, boards[s]);
          assert_true(key >= 3); /* course, fix, outbound; inbound where it is flown */
        }
    ox_lesson_free(lesson);
    ox_messages_clear(&messages);
  }
  assert_true(cases >= 12);
}

static void every_shipped_lesson_keeps_the_name_of_a_comparison(void **state) {
  (void)state;
  static const char *const names[] = {"demo", "adjusting", "high-and-fast", "outbound-timing"};
  static const double narrow[][2] = {{490, 610}, {700, 480}, {1400, 950}};
  for (size_t n = 0; n < sizeof names / sizeof *names; n++) {
    char path[4096];
    snprintf(path, sizeof path, "%s/%s.oxbow", getenv("OXBOW_LESSONS"), names[n]);
    ox_lesson *lesson = NULL;
    ox_messages messages = {0};
    assert_int_equal(ox_lesson_read(path, &lesson, &messages), OX_OK);
    for (size_t k = 0; k < lesson->case_count; k++)
      for (unsigned seed = 0; seed <= OX_MISTAKE_COUNT; seed++)
        for (size_t s = 0; s < 3; s++) {
          ox_scene scene = paint_overlaid_scene(&lesson->cases[k].c, OX_PALETTE_LIGHT, seed);
          ox_picture *p = ox_picture_new(&scene, narrow[s][0], narrow[s][1]);
          const ox_label *name = NULL, *area = NULL;
          for (size_t i = 0; i < p->label_count; i++) {
            if (p->labels[i].ink == OX_HUE_COMPARE_TEXT) name = &p->labels[i];
            if (p->labels[i].ink == OX_HUE_AREA) area = &p->labels[i];
          }
          if (!name || name->dropped || !area || area->dropped) {
            print_error("%s, %gx%g: \"%s\" or the area is not named\n", lesson->cases[k].c.name,
                        narrow[s][0], narrow[s][1], scene.compare_name);
            fail();
          }
          ox_picture_free(p);
        }
    ox_lesson_free(lesson);
    ox_messages_clear(&messages);
  }
}

static void every_entry_keeps_its_key_labels(void **state) {
  (void)state;
  static const ox_entry_order orders[] = {OX_CHOOSE_AUTO, OX_CHOOSE_DIRECT, OX_CHOOSE_PARALLEL,
                                          OX_CHOOSE_TEARDROP};
  for (size_t o = 0; o < 4; o++)
    for (size_t s = 0; s < sizeof boards / sizeof *boards; s++)
      for (int id = 0; id < OX_PALETTE_COUNT; id++) {
        ox_case c = paint_demo_case();
        c.technique.entry = orders[o];
        /* course, fix, outbound, inbound */
        assert_int_equal(count_key_labels(&c, (ox_palette_id)id, boards[s]), 4);
      }
}

static void a_dropped_label_has_no_leader(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(60); seed < seeds; seed++) {
    ox_case c = paint_seeded_case(seed);
    ox_picture *p = paint_picture(&c, OX_PALETTE_PROJECTOR, 700, 480);
    for (size_t i = 0; i < p->label_count; i++)
      assert_false(p->labels[i].dropped && p->labels[i].has_leader);
    ox_picture_free(p);
  }
}

/* --- the words ----------------------------------------------------------------------------- */

static const ox_label *find(const ox_picture *p, const char *words) {
  for (size_t i = 0; i < p->label_count; i++)
    if (strstr(ox_picture_label(p, i).text, words)) return &p->labels[i];
  return NULL;
}

static void labels_say_magnetic_only_where_the_norths_differ(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  assert_non_null(find(p, "240 M"));
  ox_picture_free(p);
  c.variation_deg = 0;
  p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  assert_null(find(p, "240 M"));
  assert_non_null(find(p, "240"));
  assert_non_null(find(p, "360 M")); /* the rose always says which north it counts from */
  ox_picture_free(p);
}

static void the_still_air_headings_and_times_are_written_out(void **state) {
  (void)state;
  ox_case c = ox_case_default(); /* 360 inbound, right, calm, arriving on 360: direct */
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  assert_non_null(find(p, "hdg 180\n1:00"));
  assert_non_null(find(p, "hdg 360\n1:00"));
  assert_non_null(find(p, "direct entry"));
  assert_non_null(find(p, "holding side"));
  ox_picture_free(p);
}

static void circuits_are_told_apart_only_where_they_differ(void **state) {
  (void)state;
  ox_case c = paint_demo_case(); /* a direct entry from the side: the next circuit settles */
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  const ox_label *first = find(p, "circuit 1\nhdg "), *label = find(p, "circuits 2 to 3\nhdg ");
  assert_non_null(first);
  assert_false(first->dropped);
  assert_non_null(label);
  assert_false(label->dropped);
  ox_picture_free(p);
  c.technique.circuits = 2;
  p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  assert_non_null(find(p, "circuit 2\nhdg "));
  ox_picture_free(p);
  c = ox_case_default(); /* straight in and calm: all circuits are one */
  p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
  assert_null(find(p, "circuit"));
  ox_picture_free(p);
}

static void text_scale_makes_labels_larger_and_nonsense_is_normal(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  assert_int_not_equal(ox_flight_solve(&c, &paint_flight), OX_ERROR);
  const double scales[] = {1, 2, 0, -1, nan(""), HUGE_VAL};
  double size[6];
  for (size_t i = 0; i < 6; i++) {
    ox_scene scene = paint_scene(&c, &paint_flight, OX_PALETTE_LIGHT);
    scene.text_scale = scales[i];
    ox_picture *p = ox_picture_new(&scene, 1400, 950);
    assert_non_null(p);
    size[i] = p->size.key;
    ox_picture_free(p);
  }
  assert_close(size[1], 2 * size[0], 1e-9, "twice the scale");
  for (size_t i = 2; i < 6; i++) assert_close(size[i], size[0], 0, "nonsense");
}

static void each_sector_is_named_on_the_side_you_arrive_from(void **state) {
  (void)state;
  /* 360 inbound. Right turns: heading 090 is parallel, 150 teardrop, 300 direct (AIM 5-3-8 j3);
   * these aircraft come from 270, 330 and 120. Left turns mirror it. */
  for (int left = 0; left < 2; left++) {
    ox_case c = ox_case_default();
    c.hold.turns = left ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
    ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
    const struct {
      const char *name;
      double from, to; /* bearing from the fix, right turns */
    } rows[] = {{"parallel", 0, 110}, {"teardrop", 290, 360}, {"direct", 110, 290}};
    for (size_t i = 0; i < 3; i++) {
      const ox_label *label = NULL;
      for (size_t k = 0; k < p->label_count; k++)
        if (strcmp(ox_picture_label(p, k).text, rows[i].name) == 0) label = &p->labels[k];
      assert_non_null(label);
      assert_false(label->dropped);
      ox_vec d = ox_vec_sub(ox_rect_centre(label->box), p->rose.centre);
      double bearing = ox_bearing_deg((ox_vec){d.x, -d.y});
      if (left) bearing = ox_norm360_deg(-bearing);
      assert_true(bearing > rows[i].from && bearing < rows[i].to);
    }
    ox_picture_free(p);
  }
}

static void the_sides_are_named_on_their_sides(void **state) {
  (void)state;
  for (unsigned seed = 0, seeds = (unsigned)ox_test_cases(40); seed < seeds; seed++) {
    ox_random r = {seed};
    ox_case c = paint_mild_case(&r);
    ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 1400, 950);
    const ox_setup *s = &paint_flight.setup;
    ox_vec side = ox_unit(s->inbound_true_deg + 90 * s->sense);
    for (size_t i = 0; i < p->label_count; i++) {
      const char *text = ox_picture_label(p, i).text;
      bool holding = strcmp(text, "holding side") == 0;
      if (p->labels[i].dropped || (!holding && strcmp(text, "non-holding side") != 0)) continue;
      ox_vec world = ox_viewport_to_world(&p->view, ox_rect_centre(p->labels[i].box));
      assert_true((ox_vec_dot(world, side) > 0) == holding);
    }
    ox_picture_free(p);
  }
}

static void left_is_the_mirror_of_right(void **state) {
  (void)state;
  ox_case right = ox_case_default(), left = right;
  left.hold.turns = OX_TURNS_LEFT;
  ox_picture *p = paint_picture(&right, OX_PALETTE_LIGHT, 1400, 950);
  double most = 0, least = 0;
  for (size_t i = 0; i < p->lines.track.count; i++)
    most = fmax(most, p->lines.track.p[i].x - p->rose.centre.x);
  ox_picture_free(p);
  p = paint_picture(&left, OX_PALETTE_LIGHT, 1400, 950);
  for (size_t i = 0; i < p->lines.track.count; i++)
    least = fmin(least, p->lines.track.p[i].x - p->rose.centre.x);
  ox_picture_free(p);
  assert_true(most > 50);
  assert_close(most, -least, 1e-6, "width of the hold");
}

static void a_name_that_is_no_utf8_or_far_too_long_is_still_drawn(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  memset(c.hold.fix, 'W', sizeof c.hold.fix - 1);
  c.hold.fix[sizeof c.hold.fix - 1] = '\0';
  strcpy(c.name, "bad \xff\xfe bytes\nand lines");
  ox_picture *p = paint_picture(&c, OX_PALETTE_LIGHT, 700, 480);
  assert_false(p->labels[1].dropped);
  assert_true(p->labels[1].box.width < 0.45 * 700);
  check_label(p, 1, 700, 480, "long name");
  ox_picture_free(p);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(no_label_touches_anything_in_any_seeded_case),
      cmocka_unit_test(no_label_touches_an_overlay_in_any_seeded_case),
      cmocka_unit_test(every_shipped_lesson_keeps_the_name_of_a_comparison),
      cmocka_unit_test(what_is_drawn_over_the_labels_is_among_the_obstacles),
      cmocka_unit_test(every_shipped_lesson_keeps_its_key_labels),
      cmocka_unit_test(every_entry_keeps_its_key_labels),
      cmocka_unit_test(a_dropped_label_has_no_leader),
      cmocka_unit_test(labels_say_magnetic_only_where_the_norths_differ),
      cmocka_unit_test(the_still_air_headings_and_times_are_written_out),
      cmocka_unit_test(circuits_are_told_apart_only_where_they_differ),
      cmocka_unit_test(text_scale_makes_labels_larger_and_nonsense_is_normal),
      cmocka_unit_test(each_sector_is_named_on_the_side_you_arrive_from),
      cmocka_unit_test(the_sides_are_named_on_their_sides),
      cmocka_unit_test(left_is_the_mirror_of_right),
      cmocka_unit_test(a_name_that_is_no_utf8_or_far_too_long_is_still_drawn),
  };
  return cmocka_run_group_tests_name("labels", tests, NULL, NULL);
}
