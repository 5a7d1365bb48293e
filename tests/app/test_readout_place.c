/* Where the readout stands: seeded cases and places of the pointer, against a count of its own of
 * what each corner would cover. That labels are to be kept free, and that words which follow a hand
 * do not hop, is our own choice; there is no source. */
#include "../paint/paint_cases.h"
#include "ox_readout_place.h"

static const double WIDTH = 900, HEIGHT = 640, AWAY = 20;
static const ox_vec SIZE = {170, 58};

static ox_picture *picture_of(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(c, &paint_flight, OX_PALETTE_LIGHT);
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  assert_non_null(p);
  return p;
}

/* Pixels of labels under the readout. */
static int hidden(const ox_picture *p, ox_vec at) {
  int count = 0;
  for (size_t i = 0; i < ox_picture_label_count(p); i++) {
    ox_label_box l = ox_picture_label(p, i);
    if (l.dropped) continue;
    for (double y = at.y + 0.5; y < at.y + SIZE.y; y += 1)
      for (double x = at.x + 0.5; y >= l.y && y < l.y + l.height && x < at.x + SIZE.x; x += 1)
        count += x >= l.x && x < l.x + l.width;
  }
  return count;
}

static ox_vec corner_at(ox_vec anchor, int corner) {
  return (ox_vec){corner & OX_READOUT_TO_THE_LEFT ? anchor.x - AWAY - SIZE.x : anchor.x + AWAY,
                  corner & OX_READOUT_ABOVE ? anchor.y - AWAY - SIZE.y : anchor.y + AWAY};
}

static ox_vec place(ox_vec anchor, const ox_picture *p, int *corner) {
  return ox_readout_place(anchor, AWAY, SIZE, (ox_vec){WIDTH, HEIGHT}, p, corner);
}

static void without_labels_it_stands_below_to_the_right_if_there_is_room(void **state) {
  const struct {
    ox_vec anchor;
    int corner;
  } rows[] = {{{450, 320}, 0},
              {{WIDTH - 100, 320}, OX_READOUT_TO_THE_LEFT},
              {{450, HEIGHT - 30}, OX_READOUT_ABOVE},
              {{WIDTH - 5, HEIGHT - 5}, OX_READOUT_TO_THE_LEFT | OX_READOUT_ABOVE},
              {{0, 0}, 0}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    int corner = OX_READOUT_ANYWHERE;
    ox_vec at = place(rows[i].anchor, NULL, &corner), want = corner_at(rows[i].anchor, corner);
    assert_int_equal(corner, rows[i].corner);
    assert_close(at.x, want.x, 1e-9, "x");
    assert_close(at.y, want.y, 1e-9, "y");
  }
}

/* Wherever there is room on all sides, so that the edge has no say. */
static void of_four_corners_the_one_that_covers_least_is_taken(void **state) {
  ox_random r = {20261126};
  int cases = ox_test_cases(60), covering = 0, moved = 0;
  for (int i = 0; i < cases; i++) {
    ox_case c = paint_mild_case(&r);
    ox_picture *p = picture_of(&c);
    for (int k = 0; k < 12; k++) {
      ox_vec anchor = {ox_random_between(&r, 200, WIDTH - 200),
                       ox_random_between(&r, 90, HEIGHT - 90)};
      int corner = OX_READOUT_ANYWHERE, least = -1;
      ox_vec at = place(anchor, p, &corner);
      for (int q = 0; q < OX_READOUT_CORNERS; q++) {
        int covers = hidden(p, corner_at(anchor, q));
        if (least < 0 || covers < least) least = covers;
      }
      /* two in a hundred of its area, and what counting in whole pixels rounds */
      assert_true(hidden(p, at) <= least + (int)(0.02 * SIZE.x * SIZE.y + 2 * (SIZE.x + SIZE.y)));
      covering += hidden(p, corner_at(anchor, 0)) > 0;
      moved += corner != 0;
    }
    ox_picture_free(p);
  }
  print_message("# of %d places %d had a label below to the right, %d readouts moved\n",
                12 * cases, covering, moved);
  assert_true(covering > cases && moved > cases / 2);
}

static void it_stays_in_its_corner_while_no_label_is_there(void **state) {
  ox_case c = paint_demo_case();
  ox_picture *p = picture_of(&c);
  size_t stayed = 0;
  for (int corner = 0; corner < OX_READOUT_CORNERS; corner++)
    for (double y = 90; y < HEIGHT - 90; y += 23)
      for (double x = 200; x < WIDTH - 200; x += 31) {
        int now = corner;
        if (hidden(p, corner_at((ox_vec){x, y}, corner)) > 0) continue;
        place((ox_vec){x, y}, p, &now);
        assert_int_equal(now, corner);
        stayed++;
      }
  assert_true(stayed > 100);
  ox_picture_free(p);
}

static void it_never_leaves_the_board_nor_covers_the_pointer(void **state) {
  ox_random r = {7};
  ox_case c = paint_demo_case();
  ox_picture *p = picture_of(&c);
  int corner = OX_READOUT_ANYWHERE;
  for (int i = 0; i < 2000; i++) {
    ox_vec anchor = {ox_random_between(&r, 0, WIDTH), ox_random_between(&r, 0, HEIGHT)};
    ox_vec at = place(anchor, p, &corner);
    assert_true(at.x >= OX_READOUT_EDGE && at.x + SIZE.x <= WIDTH - OX_READOUT_EDGE);
    assert_true(at.y >= OX_READOUT_EDGE && at.y + SIZE.y <= HEIGHT - OX_READOUT_EDGE);
    assert_false(anchor.x > at.x && anchor.x < at.x + SIZE.x && anchor.y > at.y &&
                 anchor.y < at.y + SIZE.y);
  }
  ox_picture_free(p);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(without_labels_it_stands_below_to_the_right_if_there_is_room),
      cmocka_unit_test(of_four_corners_the_one_that_covers_least_is_taken),
      cmocka_unit_test(it_stays_in_its_corner_while_no_label_is_there),
      cmocka_unit_test(it_never_leaves_the_board_nor_covers_the_pointer),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
