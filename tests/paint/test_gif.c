/* The moving picture as GIF: its palette, and what other readers see. giflib takes it apart and
 * gdk-pixbuf, which has readers of its own, reads pictures back. */
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <gif_lib.h>

#include "colours.h"
#include "ox_test.h"
#include "oxbow/export.h"
#include "oxbow/words.h"
#include "paint_cases.h"

#define WIDTH 420
#define HEIGHT 300

static ox_case the_case;

static ox_scene the_scene(void) {
  the_case = paint_demo_case();
  the_case.technique.circuits = 1;
  assert_int_not_equal(ox_flight_solve(&the_case, &paint_flight), OX_ERROR);
  return paint_scene(&the_case, &paint_flight, OX_PALETTE_LIGHT);
}

static ox_status take(void *context, const void *bytes, size_t length) {
  g_string_append_len(context, bytes, (gssize)length);
  return OX_OK;
}

static GString *made(const ox_export_options *o) {
  ox_scene scene = the_scene();
  GString *file = g_string_new(NULL);
  const char *error = NULL;
  assert_int_equal(ox_export(&scene, 1, o, take, file, &error), OX_OK);
  assert_null(error);
  return file;
}

/* What the painter draws at an instant. */
static cairo_surface_t *wanted(double t_s) {
  ox_scene scene = the_scene();
  ox_picture *picture = ox_picture_new(&scene, WIDTH, HEIGHT);
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create(image);
  ox_picture_draw(picture, cr, t_s);
  cairo_destroy(cr);
  ox_picture_free(picture);
  cairo_surface_flush(image);
  return image;
}

static uint32_t pixel_of(cairo_surface_t *image, int x, int y) {
  uint32_t pixel;
  memcpy(&pixel, cairo_image_surface_get_data(image) +
                     y * cairo_image_surface_get_stride(image) + 4 * x, sizeof pixel);
  return pixel & 0xffffffu;
}

static uint32_t pixbuf_pixel(const GdkPixbuf *p, int x, int y) {
  const guint8 *at = gdk_pixbuf_read_pixels(p) + y * gdk_pixbuf_get_rowstride(p) +
                     x * gdk_pixbuf_get_n_channels(p);
  return (uint32_t)at[0] << 16 | (uint32_t)at[1] << 8 | at[2];
}

static int farthest_channel(uint32_t a, uint32_t b) {
  int most = 0;
  for (int shift = 0; shift <= 16; shift += 8) {
    int d = abs((int)(a >> shift & 0xffu) - (int)(b >> shift & 0xffu));
    most = d > most ? d : most;
  }
  return most;
}

/* --- colours ------------------------------------------------------------------------------- */

static void few_colours_stay_as_they_are(void **state) {
  uint32_t row[250];
  ox_colours c;
  ox_colours_open(&c);
  for (uint32_t i = 0; i < 250; i++) row[i] = 0xff000000u | (i * 65793u ^ 0x123456u);
  ox_colours_see(&c, row, 250);
  ox_colours_choose(&c);
  assert_int_equal(c.count, 250);
  for (int i = 0; i < 250; i++)
    assert_int_equal(c.colour[ox_colours_index(&c, row[i])], row[i] & 0xffffffu);
  ox_colours_close(&c);
}

/* The frequent ones exactly; all others near, for 255 colours in a cube of 16^3 shades. */
static void of_many_colours_the_frequent_ones_are_exact(void **state) {
  enum { MANY = 4096 };
  static uint32_t row[MANY], flat[500];
  for (uint32_t i = 0; i < MANY; i++)
    row[i] = (i & 15u) * 17u | (i >> 4 & 15u) * 17u << 8 | (i >> 8 & 15u) * 17u << 16;
  for (int i = 0; i < 500; i++) flat[i] = 0xfbf7eeu;
  uint32_t chosen[2][OX_COLOURS_MOST];
  for (int round = 0; round < 2; round++) {
    ox_colours c;
    ox_colours_open(&c);
    ox_colours_see(&c, row, MANY);
    ox_colours_see(&c, flat, 500);
    ox_colours_choose(&c);
    assert_int_equal(c.count, OX_COLOURS_MOST);
    assert_int_equal(c.colour[ox_colours_index(&c, 0xfffbf7eeu)], 0xfbf7eeu);
    int worst = 0;
    for (int i = 0; i < MANY; i++) {
      int off = farthest_channel(c.colour[ox_colours_index(&c, row[i])], row[i]);
      worst = off > worst ? off : worst;
    }
    assert_true(worst <= 64); /* a quarter of a channel; a cube of 6^3 colours has 26 */
    memcpy(chosen[round], c.colour, sizeof chosen[round]);
    ox_colours_close(&c);
  }
  assert_memory_equal(chosen[0], chosen[1], sizeof chosen[0]);
}

/* --- the file ------------------------------------------------------------------------------ */

typedef struct {
  const GString *bytes;
  size_t at;
} reader;

static int give(GifFileType *gif, GifByteType *to, int length) {
  reader *r = gif->UserData;
  size_t left = r->bytes->len - r->at, n = (size_t)length < left ? (size_t)length : left;
  memcpy(to, r->bytes->str + r->at, n);
  r->at += n;
  return (int)n;
}

static GifFileType *taken_apart(const GString *file) {
  static reader r;
  int error = 0;
  r = (reader){file, 0};
  GifFileType *gif = DGifOpen(&r, give, &error);
  assert_non_null(gif);
  assert_int_equal(DGifSlurp(gif), GIF_OK);
  assert_int_equal(r.at, file->len);
  return gif;
}

static void play(const GifFileType *gif, uint32_t *canvas) {
  for (int i = 0; i < gif->ImageCount; i++) {
    const SavedImage *s = &gif->SavedImages[i];
    const GifImageDesc *d = &s->ImageDesc;
    GraphicsControlBlock control;
    DGifSavedExtensionToGCB((GifFileType *)gif, i, &control);
    for (int k = 0; k < d->Width * d->Height; k++) {
      if (s->RasterBits[k] == control.TransparentColor) continue;
      GifColorType c = gif->SColorMap->Colors[s->RasterBits[k]];
      canvas[(d->Top + k / d->Width) * WIDTH + d->Left + k % d->Width] =
          (uint32_t)c.Red << 16 | (uint32_t)c.Green << 8 | c.Blue;
    }
  }
}

static void compare(const uint32_t *canvas, cairo_surface_t *want, int *exact, int *far_off) {
  *exact = *far_off = 0;
  for (int i = 0; i < WIDTH * HEIGHT; i++) {
    int off = farthest_channel(canvas[i], pixel_of(want, i % WIDTH, i / WIDTH));
    *exact += off == 0;
    *far_off += off > 24;
  }
}

static const ox_export_options standard = {.format = OX_EXPORT_GIF, .width = WIDTH,
                                           .height = HEIGHT, .t_s = 0, .fps = 8, .speed = 60};

static void the_last_frame_is_the_picture_of_the_last_instant(void **state) {
  static uint32_t canvas[WIDTH * HEIGHT];
  GString *file = made(&standard);
  GifFileType *gif = taken_apart(file);
  assert_int_equal(gif->SWidth, WIDTH);
  assert_int_equal(gif->SHeight, HEIGHT);
  assert_int_equal(gif->ImageCount, ox_export_frame_count(&paint_flight, &standard));
  assert_true(gif->ImageCount > 20);
  play(gif, canvas);
  cairo_surface_t *want = wanted(ox_flight_end_s(&paint_flight));
  int exact, far_off;
  compare(canvas, want, &exact, &far_off);
  print_message("# %.2f %% of the pixels exact, %d more than 24 off\n",
                100.0 * exact / (WIDTH * HEIGHT), far_off);
  assert_true(exact > 0.9 * WIDTH * HEIGHT);
  assert_true(far_off < 0.0005 * WIDTH * HEIGHT);
  cairo_surface_destroy(want);
  DGifCloseFile(gif, NULL);
  g_string_free(file, TRUE);
}

/* Hundredths of a second: 7 frames a second do not divide, yet nothing is lost. */
static void it_keeps_its_time_and_only_changes_what_moves(void **state) {
  ox_export_options o = standard;
  o.fps = 7;
  GString *file = made(&o);
  GifFileType *gif = taken_apart(file);
  int hundredths = 0;
  long moved = 0;
  for (int i = 0; i + 1 < gif->ImageCount; i++) {
    GraphicsControlBlock control;
    assert_int_equal(DGifSavedExtensionToGCB(gif, i, &control), GIF_OK);
    assert_int_equal(control.DisposalMode, DISPOSE_DO_NOT);
    hundredths += control.DelayTime;
    const GifImageDesc *d = &gif->SavedImages[i].ImageDesc;
    if (i > 0) moved += (long)d->Width * d->Height;
  }
  assert_close(hundredths, 100.0 * (gif->ImageCount - 1) / 7, 0.51, "hundredths");
  assert_true(moved < (long)WIDTH * HEIGHT * (gif->ImageCount - 2) / 2);
  DGifCloseFile(gif, NULL);
  g_string_free(file, TRUE);
}

static bool has(const GString *file, const char *bytes, size_t length) {
  for (size_t i = 0; i + length <= file->len; i++)
    if (memcmp(file->str + i, bytes, length) == 0) return true;
  return false;
}

static void it_goes_round_for_ever_and_carries_the_caution(void **state) {
  static const char loop[] = "\x21\xff\x0bNETSCAPE2.0\x03\x01\x00\x00";
  GString *file = made(&standard);
  assert_memory_equal(file->str, "GIF89a", 6);
  assert_true(has(file, loop, sizeof loop));
  assert_true(has(file, ox_words_caution_line(), strlen(ox_words_caution_line())));
  GString *again = made(&standard);
  assert_true(g_string_equal(file, again));
  g_string_free(again, TRUE);
  g_string_free(file, TRUE);
}

static GdkPixbuf *loaded(const GString *file) {
  GdkPixbufLoader *loader = gdk_pixbuf_loader_new();
  assert_true(gdk_pixbuf_loader_write(loader, (const guint8 *)file->str, file->len, NULL));
  assert_true(gdk_pixbuf_loader_close(loader, NULL));
  GdkPixbuf *p = gdk_pixbuf_copy(gdk_pixbuf_loader_get_pixbuf(loader));
  g_object_unref(loader);
  assert_int_equal(gdk_pixbuf_get_width(p), WIDTH);
  assert_int_equal(gdk_pixbuf_get_height(p), HEIGHT);
  return p;
}

/* PNG and the first frame of an APNG exactly; the first frame of a GIF in its colours. */
static void another_reader_sees_the_same(void **state) {
  const ox_export_format formats[] = {OX_EXPORT_PNG, OX_EXPORT_APNG, OX_EXPORT_GIF};
  for (int i = 0; i < 3; i++) {
    ox_export_options o = standard;
    o.format = formats[i];
    o.t_s = ox_flight_begin_s(&paint_flight);
    GString *file = made(&o);
    GdkPixbuf *p = loaded(file);
    cairo_surface_t *want = wanted(ox_flight_begin_s(&paint_flight));
    int exact = 0;
    for (int k = 0; k < WIDTH * HEIGHT; k++)
      exact += pixbuf_pixel(p, k % WIDTH, k / WIDTH) == pixel_of(want, k % WIDTH, k / WIDTH);
    if (formats[i] == OX_EXPORT_GIF)
      assert_true(exact > 0.9 * WIDTH * HEIGHT);
    else
      assert_int_equal(exact, WIDTH * HEIGHT);
    cairo_surface_destroy(want);
    g_object_unref(p);
    g_string_free(file, TRUE);
  }
}

/* --- what is refused ----------------------------------------------------------------------- */

static void more_frames_than_a_gif_can_show_are_refused(void **state) {
  ox_export_options o = standard;
  o.fps = 51;
  ox_scene scene = the_scene();
  GString *file = g_string_new(NULL);
  const char *error = NULL;
  assert_int_equal(ox_export(&scene, 1, &o, take, file, &error), OX_ERROR);
  assert_non_null(strstr(error, "at most 50"));
  o.fps = 50;
  o.speed = 0.1;
  assert_int_equal(ox_export(&scene, 1, &o, take, file, &error), OX_ERROR);
  assert_non_null(strstr(error, "more speed"));
  assert_int_equal(file->len, 0);
  g_string_free(file, TRUE);
}

typedef struct {
  size_t room, calls_when_full;
} small_disk;

static ox_status until_full(void *context, const void *bytes, size_t length) {
  small_disk *disk = context;
  if (length > disk->room) {
    disk->calls_when_full++;
    return OX_ERROR;
  }
  disk->room -= length;
  return OX_OK;
}

/* At every byte of what a PNG begins with, which comes in pieces, and at some of the rest; at some of
 * the others, which come whole. */
static void a_sink_that_is_full_is_reported_at_whatever_byte(void **state) {
  for (int format = OX_EXPORT_PNG; format <= OX_EXPORT_GIF; format++) {
    ox_export_options o = {.format = (ox_export_format)format, .width = 60, .height = 40,
                           .t_s = nan(""), .fps = 1, .speed = 600, .dpi = 96};
    GString *whole = made(&o);
    ox_scene scene = the_scene();
    size_t fine = format == OX_EXPORT_PNG ? 150 : 1, step = whole->len / 16 + 1;
    for (size_t room = 0; room < whole->len; room += room < fine ? 1 : step) {
      small_disk disk = {room, 0};
      const char *error = NULL;
      assert_int_equal(ox_export(&scene, 1, &o, until_full, &disk, &error), OX_ERROR);
      assert_non_null(error);
      assert_int_equal(disk.calls_when_full, 1);
    }
    small_disk enough = {whole->len, 0};
    assert_int_equal(ox_export(&scene, 1, &o, until_full, &enough, NULL), OX_OK);
    g_string_free(whole, TRUE);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(few_colours_stay_as_they_are),
      cmocka_unit_test(of_many_colours_the_frequent_ones_are_exact),
      cmocka_unit_test(the_last_frame_is_the_picture_of_the_last_instant),
      cmocka_unit_test(it_keeps_its_time_and_only_changes_what_moves),
      cmocka_unit_test(it_goes_round_for_ever_and_carries_the_caution),
      cmocka_unit_test(another_reader_sees_the_same),
      cmocka_unit_test(more_frames_than_a_gif_can_show_are_refused),
      cmocka_unit_test(a_sink_that_is_full_is_reported_at_whatever_byte),
  };
  return cmocka_run_group_tests_name("gif", tests, NULL, NULL);
}
