/* Words and resolution in a PNG, and the moving picture: its chunks, and what a viewer sees. */
#include "ox_test.h"
#include "oxbow/export.h"
#include "paint_cases.h"
#include "png_parts.h"

static ox_status take(void *context, const void *bytes, size_t length) {
  g_string_append_len(context, bytes, (gssize)length);
  return OX_OK;
}

static ox_case the_case;

static ox_scene the_scene(void) {
  the_case = paint_demo_case();
  the_case.technique.circuits = 1;
  assert_int_not_equal(ox_flight_solve(&the_case, &paint_flight), OX_ERROR);
  ox_scene scene = paint_scene(&the_case, &paint_flight, OX_PALETTE_LIGHT);
  scene.layers = OX_LAYER_ALL;
  return scene;
}

static GString *made(const ox_export_options *o) {
  ox_scene scene = the_scene();
  GString *file = g_string_new(NULL);
  const char *error = NULL;
  assert_int_equal(ox_export(&scene, 1, o, take, file, &error), OX_OK);
  assert_null(error);
  return file;
}

static uint32_t u32(const uint8_t *p) {
  return (uint32_t)p[0] << 24 | (uint32_t)p[1] << 16 | (uint32_t)p[2] << 8 | p[3];
}

static bool is(const png_part *part, const char *type) { return memcmp(part->type, type, 4) == 0; }

/* CRC-32 of "IEND": the four bytes that end every PNG (specification, 5.6). */
static void a_chunk_ends_with_its_check(void **state) {
  static const uint8_t iend[12] = {0, 0, 0, 0, 'I', 'E', 'N', 'D', 0xae, 0x42, 0x60, 0x82};
  GString *one = g_string_new(NULL);
  png_add_part(one, "IEND", NULL, 0);
  assert_int_equal(one->len, sizeof iend);
  assert_memory_equal(one->str, iend, sizeof iend);
  g_string_free(one, TRUE);
}

static void a_png_names_its_resolution_title_and_what_is_seen(void **state) {
  ox_export_options o = {.format = OX_EXPORT_PNG, .width = 400, .height = 300, .t_s = nan(""),
                         .dpi = 300};
  GString *png = made(&o);
  size_t at = 8;
  png_part part;
  bool title = false, description = false, physical = false, data = false;
  while (png_next_part(png, &at, &part)) {
    if (is(&part, "pHYs")) {
      physical = true;
      assert_int_equal(u32(part.data), 11811); /* 300 / 0.0254 */
      assert_int_equal(u32(part.data + 4), 11811);
      assert_int_equal(part.data[8], 1);
    }
    assert_false(data && is(&part, "pHYs")); /* before the data (specification, 5.6) */
    data = data || is(&part, "IDAT");
    if (!is(&part, "iTXt")) continue;
    title = title || memcmp(part.data, "Title", 6) == 0;
    if (memcmp(part.data, "Description", 12) != 0) continue;
    description = g_strstr_len((const char *)part.data + 16, (gssize)part.length - 16,
                               "not for navigation") != NULL;
  }
  assert_true(physical && title && description && data);
  assert_int_equal(at, png->len);
  g_string_free(png, TRUE);
}

static void a_png_can_be_without_a_ground(void **state) {
  ox_export_options o = {.format = OX_EXPORT_PNG, .width = 400, .height = 300, .t_s = nan("")};
  for (int clear = 0; clear <= 1; clear++) {
    o.transparent = clear;
    GString *png = made(&o);
    assert_int_equal(png->str[25], clear ? 6 : 2); /* colour type: with alpha or without */
    g_string_free(png, TRUE);
  }
}

/* --- the moving picture -------------------------------------------------------------------- */

typedef struct {
  const GString *bytes;
  size_t at;
} reader;

static cairo_status_t give(void *closure, unsigned char *data, unsigned length) {
  reader *r = closure;
  if (r->at + length > r->bytes->len) return CAIRO_STATUS_READ_ERROR;
  memcpy(data, r->bytes->str + r->at, length);
  r->at += length;
  return CAIRO_STATUS_SUCCESS;
}

/* A viewer: puts each frame over the one before. */
typedef struct {
  cairo_surface_t *canvas;
  uint8_t control[26];
  GString *frame;
  const uint8_t *head; /* of the file */
  int shown;
} viewer;

static void show_frame(viewer *v) {
  if (!v->frame) return;
  png_add_part(v->frame, "IEND", NULL, 0);
  reader r = {v->frame, 0};
  cairo_surface_t *part = cairo_image_surface_create_from_png_stream(give, &r);
  assert_int_equal(cairo_surface_status(part), CAIRO_STATUS_SUCCESS);
  cairo_t *cr = cairo_create(v->canvas);
  cairo_set_source_surface(cr, part, u32(v->control + 12), u32(v->control + 16));
  cairo_paint(cr);
  cairo_destroy(cr);
  cairo_surface_destroy(part);
  g_string_free(v->frame, TRUE);
  v->frame = NULL;
  v->shown++;
}

static void begin_frame(viewer *v, const png_part *control) {
  uint8_t head[13];
  memcpy(v->control, control->data, sizeof v->control);
  memcpy(head, v->head, sizeof head);
  memcpy(head, v->control + 4, 8); /* width and height */
  v->frame = g_string_new_len("\x89PNG\r\n\x1a\n", 8);
  png_add_part(v->frame, "IHDR", head, sizeof head);
}

static cairo_surface_t *last_frame_of(const GString *file, const ox_export_options *o, int *shown) {
  viewer v = {.canvas = cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)o->width,
                                                   (int)o->height)};
  size_t at = 8;
  png_part part;
  uint32_t sequence = 0, frames = 0;
  while (png_next_part(file, &at, &part)) {
    if (is(&part, "IHDR")) v.head = part.data;
    if (is(&part, "acTL")) frames = u32(part.data);
    if (is(&part, "fcTL")) {
      assert_int_equal(u32(part.data), sequence++);
      show_frame(&v);
      begin_frame(&v, &part);
    }
    if (is(&part, "IDAT")) png_add_part(v.frame, "IDAT", part.data, part.length);
    if (is(&part, "fdAT")) {
      assert_int_equal(u32(part.data), sequence++);
      png_add_part(v.frame, "IDAT", part.data + 4, part.length - 4);
    }
  }
  show_frame(&v);
  assert_int_equal(v.shown, frames);
  *shown = v.shown;
  cairo_surface_flush(v.canvas);
  return v.canvas;
}

static void the_last_frame_is_the_picture_of_the_last_instant(void **state) {
  ox_export_options o = {.format = OX_EXPORT_APNG, .width = 420, .height = 300, .t_s = nan(""),
                         .fps = 4, .speed = 60, .dpi = 96};
  GString *file = made(&o);
  int shown;
  cairo_surface_t *last = last_frame_of(file, &o, &shown);
  assert_int_equal(shown, ox_export_frame_count(&paint_flight, &o));
  assert_true(shown > 10);
  ox_scene scene = the_scene();
  ox_picture *picture = ox_picture_new(&scene, o.width, o.height);
  cairo_surface_t *want = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 420, 300);
  cairo_t *cr = cairo_create(want);
  ox_picture_draw(picture, cr, ox_flight_end_s(&paint_flight));
  cairo_destroy(cr);
  cairo_surface_flush(want);
  int differ = 0;
  for (int y = 0; y < 300; y++)
    for (int x = 0; x < 420; x++) {
      size_t i = (size_t)(y * cairo_image_surface_get_stride(want) + 4 * x);
      differ += memcmp(cairo_image_surface_get_data(want) + i,
                       cairo_image_surface_get_data(last) + i, 3) != 0;
    }
  assert_int_equal(differ, 0);
  cairo_surface_destroy(want);
  cairo_surface_destroy(last);
  ox_picture_free(picture);
  g_string_free(file, TRUE);
}

static void the_same_flight_gives_the_same_bytes(void **state) {
  ox_export_options o = {.format = OX_EXPORT_APNG, .width = 320, .height = 200, .t_s = nan(""),
                         .fps = 2, .speed = 60};
  GString *one = made(&o), *two = made(&o);
  assert_true(g_string_equal(one, two));
  g_string_free(one, TRUE);
  g_string_free(two, TRUE);
}

static void too_many_frames_are_refused_with_the_way_out(void **state) {
  ox_export_options o = {.format = OX_EXPORT_APNG, .width = 320, .height = 200, .t_s = nan(""),
                         .fps = 60, .speed = 0.1};
  ox_scene scene = the_scene();
  GString *file = g_string_new(NULL);
  const char *error = NULL;
  assert_int_equal(ox_export(&scene, 1, &o, take, file, &error), OX_ERROR);
  assert_non_null(strstr(error, "more speed"));
  o.fps = 0;
  assert_int_equal(ox_export(&scene, 1, &o, take, file, &error), OX_ERROR);
  assert_non_null(strstr(error, "1 to 60 frames"));
  assert_int_equal(file->len, 0);
  g_string_free(file, TRUE);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_chunk_ends_with_its_check),
      cmocka_unit_test(a_png_names_its_resolution_title_and_what_is_seen),
      cmocka_unit_test(a_png_can_be_without_a_ground),
      cmocka_unit_test(the_last_frame_is_the_picture_of_the_last_instant),
      cmocka_unit_test(the_same_flight_gives_the_same_bytes),
      cmocka_unit_test(too_many_frames_are_refused_with_the_way_out),
  };
  return cmocka_run_group_tests_name("frames", tests, NULL, NULL);
}
