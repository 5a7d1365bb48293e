/* Handouts: order, pages, borders, what is refused, and the same bytes again. */
#include "sheets_support.h"

/* --- order --------------------------------------------------------------------------------- */

static void without_a_seed_the_order_is_the_lessons(void **state) {
  ox_sheets_options o = {.per_page = 2, .seed = 99};
  size_t order[20];
  ox_sheets_order(order, 20, &o);
  for (size_t i = 0; i < 20; i++) assert_int_equal(order[i], i);
}

static void every_order_has_every_hold_once(void **state) {
  ox_random r = {4711};
  for (int round = 0; round < 500; round++) {
    size_t order[40], count = 1 + (size_t)ox_random_below(&r, 40);
    bool seen[40] = {false};
    ox_sheets_options o = {.per_page = 4, .shuffled = true, .seed = ox_random_bits(&r)};
    ox_sheets_order(order, count, &o);
    for (size_t i = 0; i < count; i++) {
      assert_true(order[i] < count);
      assert_false(seen[order[i]]);
      seen[order[i]] = true;
    }
  }
}

/* Over 6000 seeds each of three holds comes first, second and third 2000 times, give or take five
 * standard deviations (36.5 each, binomial). */
static void no_place_is_favoured(void **state) {
  int met[3][3] = {{0}};
  for (uint64_t seed = 0; seed < 6000; seed++) {
    size_t order[3];
    ox_sheets_options o = {.per_page = 1, .shuffled = true, .seed = seed};
    ox_sheets_order(order, 3, &o);
    for (int i = 0; i < 3; i++) met[i][order[i]]++;
  }
  for (int i = 0; i < 3; i++)
    for (int k = 0; k < 3; k++) assert_close(met[i][k], 2000, 183, "times in a place");
}

/* Pinned: a worksheet printed last year still has its key. */
static void an_order_never_changes_with_its_seed(void **state) {
  static const size_t pinned[8] = {1, 4, 5, 2, 6, 0, 3, 7};
  size_t order[8], other[8];
  ox_sheets_options o = {.per_page = 1, .shuffled = true, .seed = 7};
  ox_sheets_order(order, 8, &o);
  assert_memory_equal(order, pinned, sizeof order);
  o.kind = OX_SHEETS_KEY;
  o.per_page = 4;
  o.paper = OX_PAPER_LETTER;
  ox_sheets_order(other, 8, &o);
  assert_memory_equal(order, other, sizeof order);
}

/* --- pages --------------------------------------------------------------------------------- */

/* ISO 216; ANSI/ASME Y14.1: 8.5 by 11 inches. */
static void paper_has_its_size(void **state) {
  ox_sheets_options o = {.paper = OX_PAPER_A4};
  assert_close(ox_sheets_size(&o).x, 210 / 25.4 * 72, 1e-9, "A4 width");
  assert_close(ox_sheets_size(&o).y, 297 / 25.4 * 72, 1e-9, "A4 height");
  o.across = true;
  assert_close(ox_sheets_size(&o).x, 297 / 25.4 * 72, 1e-9, "A4 across");
  o.paper = OX_PAPER_LETTER;
  assert_close(ox_sheets_size(&o).x, 792, 1e-9, "Letter across");
  assert_close(ox_sheets_size(&o).y, 612, 1e-9, "Letter across");
}

static void pages_hold_what_they_are_asked_to(void **state) {
  static const struct {
    size_t count;
    int per_page;
    size_t pages;
  } rows[] = {{1, 1, 1}, {1, 4, 1}, {4, 4, 1}, {5, 4, 2}, {12, 1, 12}, {12, 2, 6}, {13, 2, 7}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_sheets_options o = {.per_page = rows[i].per_page};
    assert_int_equal(ox_sheets_pages(rows[i].count, &o), rows[i].pages);
  }
}

/* A page in pixels, two to a point. */
static cairo_surface_t *page_image(const sheets_holds *h, const ox_sheets_options *o, size_t page) {
  ox_vec size = ox_sheets_size(o);
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)(2 * size.x),
                                                      (int)(2 * size.y));
  cairo_t *cr = cairo_create(image);
  cairo_scale(cr, 2, 2);
  const char *error = NULL;
  assert_int_equal(ox_sheets_draw(cr, h->scenes, h->count, o, page, &error), OX_OK);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(cr);
  cairo_surface_flush(image);
  return image;
}

static bool is_white(cairo_surface_t *image, int x, int y) {
  const unsigned char *p = cairo_image_surface_get_data(image) +
                           y * cairo_image_surface_get_stride(image) + 4 * x;
  return p[0] == 255 && p[1] == 255 && p[2] == 255;
}

/* How many pixels within a border are not white, and how many there are elsewhere. */
static void count_ink(cairo_surface_t *image, int border, int *in_border, int *inside) {
  int width = cairo_image_surface_get_width(image), height = cairo_image_surface_get_height(image);
  *in_border = *inside = 0;
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++) {
      bool outer = x < border || y < border || x >= width - border || y >= height - border;
      if (!is_white(image, x, y)) ++*(outer ? in_border : inside);
    }
}

/* 10 mm are 28.3 points. Mild holds and wild ones, every lay-out. */
static void nothing_is_printed_within_ten_millimetres_of_the_edge(void **state) {
  static const int per_page[] = {1, 2, 4};
  for (unsigned round = 0; round < 24; round++) {
    sheets_holds *h = sheets_make_holds(4, 100 + round);
    ox_random r = {round};
    ox_case wild = paint_wild_case(&r);
    memset(wild.name, 'W', sizeof wild.name - 1);
    sheets_scene(h, 0, &wild);
    ox_sheets_options o = {.kind = round & 1 ? OX_SHEETS_KEY : OX_SHEETS_WORKSHEET,
                           .paper = round & 2 ? OX_PAPER_LETTER : OX_PAPER_A4,
                           .across = round & 4,
                           .per_page = per_page[round % 3],
                           .program = "Oxbow"};
    int in_border, inside;
    cairo_surface_t *image = page_image(h, &o, 0);
    count_ink(image, 56, &in_border, &inside);
    assert_int_equal(in_border, 0);
    assert_true(inside > 5000);
    cairo_surface_destroy(image);
  }
}

/* --- bytes --------------------------------------------------------------------------------- */

static void the_same_holds_give_the_same_bytes(void **state) {
  sheets_holds *h = sheets_make_holds(5, 1);
  for (int kind = 0; kind < 2; kind++) {
    ox_sheets_options o = {.kind = (ox_sheets_kind)kind, .per_page = 2, .shuffled = true,
                           .seed = 3};
    GString *one = sheets_pdf(h, &o), *two = sheets_pdf(h, &o);
    assert_true(g_string_equal(one, two));
    o.seed = 5;
    GString *other = sheets_pdf(h, &o);
    assert_false(g_string_equal(one, other));
    g_string_free(one, TRUE);
    g_string_free(two, TRUE);
    g_string_free(other, TRUE);
  }
}

typedef struct {
  size_t room, calls;
} small_disk;

static ox_status until_full(void *context, const void *bytes, size_t length) {
  small_disk *disk = context;
  disk->calls++;
  if (length > disk->room) return OX_ERROR;
  disk->room -= length;
  return OX_OK;
}

static void a_sink_that_refuses_is_reported_whenever_it_does(void **state) {
  sheets_holds *h = sheets_make_holds(1, 1);
  ox_sheets_options o = {.per_page = 1};
  GString *whole = sheets_pdf(h, &o);
  const size_t rooms[] = {0, 1, 2, 3, whole->len / 2, whole->len - 2, whole->len - 1};
  for (size_t i = 0; i < sizeof rooms / sizeof *rooms; i++) {
    small_disk disk = {rooms[i], 0};
    const char *error = NULL;
    assert_int_equal(ox_sheets_make(h->scenes, 1, &o, until_full, &disk, &error), OX_ERROR);
    assert_string_equal(error, "The pages could not be written.");
    assert_int_equal(disk.calls, 1);
  }
  small_disk enough = {whole->len, 0};
  assert_int_equal(ox_sheets_make(h->scenes, 1, &o, until_full, &enough, NULL), OX_OK);
  g_string_free(whole, TRUE);
}

static void what_cannot_be_done_is_said_and_nothing_is_written(void **state) {
  static const struct {
    size_t count;
    int per_page, paper;
    const char *says;
  } rows[] = {{0, 1, OX_PAPER_A4, "nothing to draw"}, {1, 0, OX_PAPER_A4, "1, 2 or 4"},
              {1, 3, OX_PAPER_A4, "1, 2 or 4"},       {1, -4, OX_PAPER_A4, "1, 2 or 4"},
              {1, 8, OX_PAPER_A4, "1, 2 or 4"},       {1, 1, OX_PAPER_COUNT, "A4 or Letter"}};
  sheets_holds *h = sheets_make_holds(1, 1);
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_sheets_options o = {.per_page = rows[i].per_page, .paper = (ox_paper)rows[i].paper};
    const char *error = "";
    GString *pdf = g_string_new(NULL);
    assert_int_equal(ox_sheets_make(h->scenes, rows[i].count, &o, sheets_take, pdf, &error),
                     OX_ERROR);
    if (!strstr(error, rows[i].says)) fail_msg("row %zu: \"%s\"", i, error);
    assert_int_equal(pdf->len, 0);
    g_string_free(pdf, TRUE);
  }
  ox_sheets_options o = {.per_page = 1};
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 10, 10);
  cairo_t *cr = cairo_create(image);
  const char *error = "";
  assert_int_equal(ox_sheets_draw(cr, h->scenes, 1, &o, 1, &error), OX_ERROR);
  assert_string_equal(error, "There is no such page.");
  cairo_destroy(cr);
  cairo_surface_destroy(image);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(without_a_seed_the_order_is_the_lessons),
      cmocka_unit_test(every_order_has_every_hold_once),
      cmocka_unit_test(no_place_is_favoured),
      cmocka_unit_test(an_order_never_changes_with_its_seed),
      cmocka_unit_test(paper_has_its_size),
      cmocka_unit_test(pages_hold_what_they_are_asked_to),
      cmocka_unit_test(nothing_is_printed_within_ten_millimetres_of_the_edge),
      cmocka_unit_test(the_same_holds_give_the_same_bytes),
      cmocka_unit_test(a_sink_that_refuses_is_reported_whenever_it_does),
      cmocka_unit_test(what_cannot_be_done_is_said_and_nothing_is_written),
  };
  return cmocka_run_group_tests_name("sheets", tests, NULL, NULL);
}
