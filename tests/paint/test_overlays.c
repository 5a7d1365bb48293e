/* The overlays: another flight, the protected area, the band of a spread, and the chart. */
#include "ox_test.h"
#include "paint_cases.h"
#include "paint_private.h"

enum { WIDTH = 700, HEIGHT = 480 };

typedef struct {
  cairo_surface_t *surface;
  cairo_t *cr;
} canvas;

static canvas draw_on_canvas(ox_picture *p, int width, int height) {
  canvas k = {.surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height)};
  k.cr = cairo_create(k.surface);
  ox_picture_draw(p, k.cr, nan(""));
  assert_int_equal(cairo_status(k.cr), CAIRO_STATUS_SUCCESS);
  cairo_surface_flush(k.surface);
  return k;
}

static void canvas_end(canvas k) {
  cairo_destroy(k.cr);
  cairo_surface_destroy(k.surface);
}

static uint32_t pixel(canvas k, int x, int y) {
  assert_in_range(x, 0, cairo_image_surface_get_width(k.surface) - 1);
  assert_in_range(y, 0, cairo_image_surface_get_height(k.surface) - 1);
  const unsigned char *row = cairo_image_surface_get_data(k.surface) +
                             (ptrdiff_t)y * cairo_image_surface_get_stride(k.surface);
  uint32_t value;
  memcpy(&value, row + 4 * (ptrdiff_t)x, sizeof value);
  return value & 0xffffff;
}

static uint32_t packed(const ox_picture *p, ox_hue ink) {
  const ox_rgb *c = &p->palette->ink[ink];
  return (uint32_t)lround(c->r * 255) << 16 | (uint32_t)lround(c->g * 255) << 8 |
         (uint32_t)lround(c->b * 255);
}

static size_t pixels_of(canvas k, uint32_t colour) {
  size_t n = 0;
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++) n += pixel(k, x, y) == colour;
  return n;
}

static bool same_pixels(canvas a, canvas b) {
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      if (pixel(a, x, y) != pixel(b, x, y)) return false;
  return true;
}

static const ox_label *label_in(const ox_picture *p, ox_hue ink) {
  for (size_t i = 0; i < p->label_count; i++)
    if (p->labels[i].ink == ink) return &p->labels[i];
  return NULL;
}

static ox_scene plain_scene(const ox_case *c) {
  assert_int_not_equal(ox_flight_solve(c, &paint_flight), OX_ERROR);
  return paint_scene(c, &paint_flight, OX_PALETTE_LIGHT);
}

/* --- nothing ------------------------------------------------------------------------------- */

static void overlays_with_nothing_to_show_draw_the_bytes_of_none(void **state) {
  (void)state;
  static ox_flight no_legs;
  static uint32_t zeros[OX_SPREAD_CELLS * OX_SPREAD_CELLS];
  ox_case c = paint_demo_case();
  ox_scene none = plain_scene(&c);
  ox_scene empty = none;
  ox_spread spreads[] = {{.runs = 100, .cell_nm = 0.1, .cells = NULL},
                         {.runs = 100, .cell_nm = 0.1, .cells = zeros},
                         {.runs = 0, .cell_nm = 0.1, .cells = zeros},
                         {.runs = 100, .cell_nm = nan(""), .cells = zeros}};
  empty.compare = &no_legs;
  empty.compare_name = "nothing";
  ox_picture *p = ox_picture_new(&none, WIDTH, HEIGHT);
  canvas before = draw_on_canvas(p, WIDTH, HEIGHT);
  for (size_t i = 0; i < sizeof spreads / sizeof *spreads; i++) {
    empty.spread = &spreads[i];
    ox_picture *q = ox_picture_new(&empty, WIDTH, HEIGHT);
    canvas after = draw_on_canvas(q, WIDTH, HEIGHT);
    assert_true(same_pixels(before, after));
    assert_int_equal(ox_picture_label_count(p), ox_picture_label_count(q));
    canvas_end(after);
    ox_picture_free(q);
  }
  canvas_end(before);
  ox_picture_free(p);
}

/* --- the other flight ---------------------------------------------------------------------- */

static void two_flights_of_one_line_are_both_seen(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  for (int id = 0; id < OX_PALETTE_COUNT; id++) {
    ox_scene scene = plain_scene(&c);
    scene.palette = (ox_palette_id)id;
    scene.compare = &paint_flight; /* the same flight */
    scene.compare_name = "the same";
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    assert_true(p->size.compare < 0.8 * p->size.track);
    canvas k = draw_on_canvas(p, WIDTH, HEIGHT);
    size_t flown = 0, other = 0;
    ox_leg outbound = *ox_find_leg(&paint_flight, OX_LEG_OUTBOUND, 1);
    for (int i = 0; i <= 400; i++) {
      double t_s = outbound.t0_s + (outbound.t1_s - outbound.t0_s) * i / 400;
      ox_vec at = ox_to_dev(p, ox_leg_position(&outbound, t_s));
      uint32_t v = pixel(k, (int)at.x, (int)at.y);
      unsigned red = v >> 16 & 0xff, blue = v & 0xff;
      if (red > blue + 40) other++;
      if (blue > red + 40) flown++;
    }
    assert_true(flown > 40); /* in the gaps */
    assert_true(other > 120);
    canvas_end(k);
    ox_picture_free(p);
  }
}

static bool inside_map(const ox_picture *p, ox_vec world_nm) {
  return ox_rect_has(p->map, ox_to_dev(p, world_nm));
}

static void the_view_holds_both_flights(void **state) {
  (void)state;
  for (unsigned seed = 0; seed <= OX_MISTAKE_COUNT; seed++) {
    ox_case c = paint_demo_case();
    ox_scene scene = paint_overlaid_scene(&c, OX_PALETTE_LIGHT, seed);
    scene.area = NULL;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    const ox_flight *flights[] = {&paint_flight, &paint_other};
    for (size_t f = 0; f < 2; f++)
      for (size_t i = 0; i < flights[f]->leg_count; i++) {
        const ox_leg *leg = &flights[f]->legs[i];
        if (leg->part == OX_PART_ARRIVAL) continue;
        assert_true(inside_map(p, leg->p0_nm) && inside_map(p, leg->p1_nm));
      }
    ox_picture_free(p);
  }
}

static double distance_to(const ox_lines *lines, ox_vec p) {
  double best = HUGE_VAL;
  for (size_t i = 1; i < lines->count; i++) {
    if (lines->p[i].move) continue;
    ox_vec a = {lines->p[i - 1].x, lines->p[i - 1].y}, b = {lines->p[i].x, lines->p[i].y};
    ox_vec d = ox_vec_sub(b, a);
    double square = ox_vec_dot(d, d);
    double u = square > 0 ? ox_vec_dot(ox_vec_sub(p, a), d) / square : 0;
    u = fmin(fmax(u, 0), 1);
    best = fmin(best, ox_vec_length(ox_vec_sub(p, ox_vec_add(a, ox_vec_scale(d, u)))));
  }
  return best;
}

static void a_comparison_is_named_where_it_goes_its_own_way(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  c.arrival.heading_deg = 30; /* a teardrop, so that its mistake shows too */
  const ox_mistake mistakes[] = {OX_MISTAKE_DRIFT_WRONG_SIDE, OX_MISTAKE_TEARDROP_WRONG_SIDE};
  for (size_t i = 0; i < 2; i++) {
    ox_scene scene = paint_overlaid_scene(&c, OX_PALETTE_LIGHT, (unsigned)mistakes[i]);
    scene.area = NULL;
    ox_picture *p = ox_picture_new(&scene, 1400, 950);
    const ox_label *name = label_in(p, OX_HUE_COMPARE_TEXT);
    assert_non_null(name);
    assert_false(name->dropped);
    assert_string_equal(pango_layout_get_text(name->text.layout), ox_mistake_name(mistakes[i]));
    ox_vec named = name->has_leader ? name->leader_to : ox_rect_centre(name->box);
    double to_other = distance_to(&p->others[0].line, named);
    assert_true(to_other < distance_to(&p->lines.track, named));
    assert_true(to_other < 6 * p->size.label);
    ox_picture_free(p);
  }
}

static void a_comparison_without_a_name_has_a_line_and_no_label(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  const char *const names[] = {NULL, ""};
  for (size_t i = 0; i < 2; i++) {
    ox_scene scene = paint_overlaid_scene(&c, OX_PALETTE_LIGHT, 0);
    scene.area = NULL;
    scene.compare_name = names[i];
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    assert_true(p->others[0].line.count > 10);
    assert_null(label_in(p, OX_HUE_COMPARE_TEXT));
    ox_picture_free(p);
  }
}

static void a_name_of_any_length_or_bytes_leaves_the_board_right(void **state) {
  (void)state;
  char name[3000];
  memset(name, 'W', sizeof name - 1);
  name[sizeof name - 1] = '\0';
  name[1000] = '\xff';
  name[1500] = '\n';
  ox_case c = paint_demo_case();
  ox_scene scene = paint_overlaid_scene(&c, OX_PALETTE_LIGHT, 0);
  scene.compare_name = name;
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  assert_true(p->map.width > 0.5 * WIDTH);
  const ox_label *label = label_in(p, OX_HUE_COMPARE_TEXT);
  assert_non_null(label);
  assert_true(label->dropped || label->box.width < 0.5 * p->map.width);
  canvas_end(draw_on_canvas(p, WIDTH, HEIGHT));
  ox_picture_free(p);
}

/* --- the protected area -------------------------------------------------------------------- */

static void the_area_is_in_sight_and_called_illustrative(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene scene = paint_overlaid_scene(&c, OX_PALETTE_LIGHT, 0);
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  ox_vec corner[OX_AREA_SIDES];
  ox_area_outline(&paint_area, corner);
  for (int i = 0; i < OX_AREA_SIDES; i++) assert_true(inside_map(p, corner[i]));
  assert_int_equal(p->area.corner_count, OX_AREA_SIDES);
  for (size_t i = 0; i < p->area.corner_count; i++) { /* drawn where the engine says it is */
    ox_vec want = ox_to_dev(p, corner[i]);
    double nearest = HUGE_VAL;
    for (size_t k = 0; k < p->area.corner_count; k++)
      nearest = fmin(nearest, ox_vec_length(ox_vec_sub(p->area.corner[k], want)));
    assert_true(nearest < 1e-6);
  }
  const ox_label *label = label_in(p, OX_HUE_AREA);
  assert_non_null(label);
  assert_false(label->dropped);
  const char *words = pango_layout_get_text(label->text.layout);
  assert_non_null(strstr(words, "illustrative only"));
  assert_non_null(strstr(words, "not to scale"));
  ox_picture_free(p);
}

/* Whether anything of the area is seen on a board of these layers. */
static bool area_is_seen(ox_scene scene, unsigned layers) {
  scene.layers = layers;
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  canvas with = draw_on_canvas(p, WIDTH, HEIGHT);
  p->area.corner_count = 0;
  canvas without = draw_on_canvas(p, WIDTH, HEIGHT);
  bool seen = !same_pixels(with, without);
  canvas_end(with);
  canvas_end(without);
  ox_picture_free(p);
  return seen;
}

static void the_area_is_never_drawn_without_its_words(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene scene = paint_overlaid_scene(&c, OX_PALETTE_LIGHT, 0);
  assert_true(area_is_seen(scene, OX_LAYER_ALL));
  assert_true(area_is_seen(scene, OX_LAYER_TRACK | OX_LAYER_LABELS));
  assert_true(area_is_seen(scene, OX_LAYER_TRACK | OX_LAYER_FURNITURE));
  assert_false(area_is_seen(scene, OX_LAYER_TRACK | OX_LAYER_SIDES));
}

static void an_area_of_any_size_leaves_the_context_well(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene scene = paint_overlaid_scene(&c, OX_PALETTE_LIGHT, 0);
  const double reaches[] = {0, 1e-9, 50, 1e5, 1e12, 1e300, HUGE_VAL, nan(""), -3};
  for (size_t i = 0; i < sizeof reaches / sizeof *reaches; i++) {
    for (int k = 0; k < OX_AREA_SIDES; k++) paint_area.reach_nm[k] = reaches[i];
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    assert_non_null(p);
    canvas_end(draw_on_canvas(p, WIDTH, HEIGHT));
    ox_rect map = ox_rect_inset(p->map, -1e-3);
    for (size_t k = 0; k < p->area.corner_count; k++)
      assert_true(ox_rect_has(map, p->area.corner[k]));
    /* The hold is still seen, and a little of what is beyond it. */
    ox_leg still[4];
    ox_still_air_shape(&paint_flight.setup, still);
    assert_true(ox_vec_length(still[2].p0_nm) * ox_picture_viewport(p).dev_per_nm > 40);
    ox_picture_free(p);
  }
}

/* --- the band of a spread ------------------------------------------------------------------ */

static uint32_t cells[OX_SPREAD_CELLS * OX_SPREAD_CELLS];

/* A grid of 7.68 NM about the fix; the given share of 1000 runs in its north-eastern quarter. */
static ox_spread quarter(uint32_t runs_there) {
  memset(cells, 0, sizeof cells);
  for (int row = OX_SPREAD_CELLS / 2; row < OX_SPREAD_CELLS; row++)
    for (int column = OX_SPREAD_CELLS / 2; column < OX_SPREAD_CELLS; column++)
      cells[row * OX_SPREAD_CELLS + column] = runs_there;
  return (ox_spread){.runs = 1000, .cell_nm = 0.04, .origin_nm = {-3.84, -3.84}, .cells = cells};
}

static void the_band_lies_where_the_runs_went(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  for (int id = 0; id < OX_PALETTE_COUNT; id++) {
    ox_scene scene = plain_scene(&c);
    scene.palette = (ox_palette_id)id;
    scene.layers = OX_LAYER_STILL_AIR; /* the ground is bare but for a thin line */
    ox_spread spread = quarter(1000);
    scene.spread = &spread;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    canvas k = draw_on_canvas(p, WIDTH, HEIGHT);
    ox_vec fix = ox_to_dev(p, (ox_vec){0, 0});
    int far = (int)(3.5 * spread.cell_nm * p->view.dev_per_nm); /* clear of the soft edge */
    assert_int_equal(pixel(k, (int)fix.x + far, (int)fix.y - far), packed(p, OX_HUE_BAND));
    uint32_t board = packed(p, OX_HUE_BOARD);
    assert_int_equal(pixel(k, (int)fix.x - far, (int)fix.y - far), board);
    assert_int_equal(pixel(k, (int)fix.x - far, (int)fix.y + far), board);
    assert_int_equal(pixel(k, (int)fix.x + far, (int)fix.y + far), board);
    canvas_end(k);
    ox_picture_free(p);
  }
}

static void cells_of_fewer_than_one_in_twenty_runs_are_left_out(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene scene = plain_scene(&c);
  scene.layers = OX_LAYER_STILL_AIR;
  const struct {
    uint32_t runs;
    bool shown;
  } rows[] = {{49, false}, {50, true}, {300, true}};
  uint32_t before = 0xffffff;
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_spread spread = quarter(rows[i].runs);
    scene.spread = &spread;
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    canvas k = draw_on_canvas(p, WIDTH, HEIGHT);
    ox_vec fix = ox_to_dev(p, (ox_vec){0, 0});
    int far = (int)(3.5 * spread.cell_nm * p->view.dev_per_nm);
    uint32_t v = pixel(k, (int)fix.x + far, (int)fix.y - far);
    assert_int_equal(v != 0xffffff, rows[i].shown);
    if (rows[i].shown) assert_true((v >> 16) < (before >> 16)); /* the more, the stronger */
    if (rows[i].shown) before = v;
    canvas_end(k);
    ox_picture_free(p);
  }
}

static void the_band_lies_under_the_track_and_over_the_tint(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene scene = plain_scene(&c);
  ox_spread spread = quarter(1000);
  for (size_t i = 0; i < sizeof cells / sizeof *cells; i++) cells[i] = 1000; /* everywhere */
  scene.spread = &spread;
  ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
  canvas k = draw_on_canvas(p, WIDTH, HEIGHT);
  assert_int_equal(pixels_of(k, packed(p, OX_HUE_TINT)), 0);
  assert_true(pixels_of(k, packed(p, OX_HUE_BAND)) > WIDTH * HEIGHT / 4);
  assert_true(pixels_of(k, packed(p, OX_HUE_TRACK)) > 200);
  canvas_end(k);
  ox_picture_free(p);
}

static void a_band_at_any_scale_leaves_the_context_well(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  ox_scene scene = plain_scene(&c);
  const double sides[] = {1e-300, 1e-7, 1e-3, 1, 1e4, 1e300, HUGE_VAL, -1};
  const double origins[] = {0, -1e9, 1e300, nan("")};
  for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
    for (size_t k = 0; k < sizeof origins / sizeof *origins; k++) {
      ox_spread spread = quarter(1000);
      spread.cell_nm = sides[i];
      spread.origin_nm = (ox_vec){origins[k], origins[k]};
      scene.spread = &spread;
      ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
      canvas_end(draw_on_canvas(p, WIDTH, HEIGHT));
      ox_picture_free(p);
    }
}

/* --- the chart ----------------------------------------------------------------------------- */

static ox_case adjusting(int circuits) {
  ox_case c = paint_demo_case();
  c.technique.drift = OX_DRIFT_NONE;
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  c.wind[0].from_deg = 60; /* along the course */
  c.wind[0].north = OX_NORTH_MAGNETIC;
  c.technique.circuits = circuits;
  return c;
}

static void the_chart_is_there_only_where_there_is_something_to_see(void **state) {
  (void)state;
  ox_case few = adjusting(2), enough = adjusting(3), many = adjusting(40);
  ox_case steady = ox_case_default(), outbound = adjusting(5), distance = adjusting(5);
  steady.technique.circuits = 8;
  outbound.technique.timing = OX_TIMING_OUTBOUND;
  distance.hold.leg_by = OX_LEG_BY_DISTANCE;
  distance.hold.leg_nm = 4;
  const struct {
    const ox_case *c;
    bool chart;
    const char *what;
  } rows[] = {{&few, false, "two circuits"},        {&enough, true, "three circuits"},
              {&many, true, "forty circuits"},      {&steady, false, "all alike"},
              {&outbound, false, "timed outbound"}, {&distance, false, "flown by distance"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_scene scene = plain_scene(rows[i].c);
    ox_picture *p = ox_picture_new(&scene, 1400, 950);
    if ((p->furniture.chart_at.width > 0) != rows[i].chart) fail_msg("%s", rows[i].what);
    ox_picture_free(p);
    scene.layers &= ~(unsigned)OX_LAYER_CHART;
    p = ox_picture_new(&scene, 1400, 950);
    assert_true(p->furniture.chart_at.width <= 0);
    ox_picture_free(p);
  }
}

static void the_chart_holds_the_measured_times_and_the_goal(void **state) {
  (void)state;
  ox_case c = adjusting(7);
  ox_scene scene = plain_scene(&c);
  ox_picture *p = ox_picture_new(&scene, 1400, 950);
  const ox_chart *k = &p->furniture.chart;
  assert_int_equal(k->count, 7);
  assert_close(k->goal_s, 60, 0, "goal");
  for (int i = 0; i < 7; i++) assert_close(k->s[i], paint_flight.circuits[i].inbound_s, 0, "time");
  assert_true(k->least_s <= 60 && k->most_s >= 60);
  assert_int_equal(k->mark[0], 0);
  assert_int_equal(k->mark[k->mark_count - 1], 6);
  assert_string_equal(pango_layout_get_text(k->head.layout), "inbound, goal 1:00");
  ox_picture_free(p);
}

static void the_first_and_the_last_circuit_are_always_numbered(void **state) {
  (void)state;
  for (int circuits = 3; circuits <= OX_CIRCUITS_MAX; circuits++) {
    ox_case c = adjusting(circuits);
    ox_scene scene = plain_scene(&c);
    ox_picture *p = ox_picture_new(&scene, WIDTH, HEIGHT);
    const ox_chart *k = &p->furniture.chart;
    assert_int_equal(k->count, circuits);
    assert_true(k->mark_count >= 2 && k->mark_count <= OX_CHART_MARKS);
    assert_int_equal(k->mark[0], 0);
    assert_int_equal(k->mark[k->mark_count - 1], circuits - 1);
    for (int i = 1; i < k->mark_count; i++) assert_true(k->mark[i] > k->mark[i - 1]);
    ox_picture_free(p);
  }
}

static void in_a_column_the_legend_goes_before_the_chart(void **state) {
  (void)state;
  ox_case c = adjusting(5);
  ox_scene scene = plain_scene(&c);
  bool both = false, chart_only = false, neither = false;
  for (int height = 120; height <= 900; height += 20) {
    ox_picture *p = ox_picture_new(&scene, 1.5 * height, height);
    bool legend = p->furniture.legend_at.width > 0, chart = p->furniture.chart_at.width > 0;
    assert_false(legend && !chart);
    both = both || (legend && chart);
    chart_only = chart_only || (chart && !legend);
    neither = neither || !chart;
    ox_picture_free(p);
  }
  assert_true(both && chart_only && neither);
}

/* --- all of them --------------------------------------------------------------------------- */

static void every_size_is_drawn_with_all_overlays(void **state) {
  (void)state;
  const int sizes[] = {1, 16, 40, 90, 160, 300, 480, 700};
  const size_t n = sizeof sizes / sizeof *sizes;
  ox_spread spread = quarter(400);
  for (unsigned seed = 0; seed < 9; seed++) {
    ox_case c = paint_seeded_case(seed);
    ox_scene scene = paint_overlaid_scene(&c, (ox_palette_id)(seed % OX_PALETTE_COUNT), seed);
    scene.spread = &spread;
    for (size_t i = 0; i < n; i++)
      for (size_t j = 0; j < n; j++) {
        ox_picture *p = ox_picture_new(&scene, sizes[i], sizes[j]);
        assert_non_null(p);
        canvas_end(draw_on_canvas(p, sizes[i], sizes[j]));
        ox_picture_free(p);
      }
  }
}

static void without_a_title_the_case_name_stands_alone(void **state) {
  (void)state;
  ox_case c = paint_demo_case();
  const struct {
    const char *title, *words;
  } rows[] = {{NULL, "Twenty knots from the north"},
              {"", "Twenty knots from the north"},
              {"A lesson", "A lesson – Twenty knots from the north"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_scene scene = plain_scene(&c);
    scene.title = rows[i].title;
    ox_picture *p = ox_picture_new(&scene, 1400, 950);
    assert_string_equal(pango_layout_get_text(p->furniture.title.layout), rows[i].words);
    ox_picture_free(p);
  }
}

static void a_narrow_board_gives_the_map_most_of_its_room(void **state) {
  (void)state;
  const struct {
    double width, height, share;
  } rows[] = {{490, 610, 0.68}, {400, 700, 0.55}, {595, 842, 0.6}, {420, 560, 0.6}};
  ox_case c = paint_demo_case();
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_scene scene = plain_scene(&c);
    scene.title = NULL;
    ox_picture *p = ox_picture_new(&scene, rows[i].width, rows[i].height);
    double got = p->map.width * p->map.height / (rows[i].width * rows[i].height);
    if (got < rows[i].share) fail_msg("%gx%g: %.3f", rows[i].width, rows[i].height, got);
    if (p->furniture.legend_at.width <= 0 || p->furniture.scale_at.width <= 0)
      fail_msg("%gx%g: no legend or no scale", rows[i].width, rows[i].height);
    ox_picture_free(p);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(overlays_with_nothing_to_show_draw_the_bytes_of_none),
      cmocka_unit_test(two_flights_of_one_line_are_both_seen),
      cmocka_unit_test(the_view_holds_both_flights),
      cmocka_unit_test(a_comparison_is_named_where_it_goes_its_own_way),
      cmocka_unit_test(a_comparison_without_a_name_has_a_line_and_no_label),
      cmocka_unit_test(a_name_of_any_length_or_bytes_leaves_the_board_right),
      cmocka_unit_test(the_area_is_in_sight_and_called_illustrative),
      cmocka_unit_test(the_area_is_never_drawn_without_its_words),
      cmocka_unit_test(an_area_of_any_size_leaves_the_context_well),
      cmocka_unit_test(the_band_lies_where_the_runs_went),
      cmocka_unit_test(cells_of_fewer_than_one_in_twenty_runs_are_left_out),
      cmocka_unit_test(the_band_lies_under_the_track_and_over_the_tint),
      cmocka_unit_test(a_band_at_any_scale_leaves_the_context_well),
      cmocka_unit_test(the_chart_is_there_only_where_there_is_something_to_see),
      cmocka_unit_test(the_chart_holds_the_measured_times_and_the_goal),
      cmocka_unit_test(the_first_and_the_last_circuit_are_always_numbered),
      cmocka_unit_test(in_a_column_the_legend_goes_before_the_chart),
      cmocka_unit_test(every_size_is_drawn_with_all_overlays),
      cmocka_unit_test(without_a_title_the_case_name_stands_alone),
      cmocka_unit_test(a_narrow_board_gives_the_map_most_of_its_room),
  };
  return cmocka_run_group_tests_name("overlays", tests, NULL, NULL);
}
