/* The flight as a moving picture in GIF (GIF89a specification, 1990), with giflib.
 *
 * One palette serves all frames. Each frame after the first is the rectangle that differs from the
 * frame before, in which what stays is transparent: that is what the compression likes. */
#include "export_frames.h"

#include <gif_lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "colours.h"
#include "film.h"
#include "oxbow/mark.h"
#include "oxbow/words.h"

#define SAMPLES 24
#define TRANSPARENT OX_COLOURS_MOST
static const char CANNOT_MAKE[] = N_("The picture could not be made.");

typedef struct {
  ox_film film;
  ox_colours colours;
  GifByteType *now, *before; /* indices, a byte a pixel */
  GifByteType *line;         /* of a frame's rectangle */
  GifFileType *gif;
} maker;

static int keep(GifFileType *gif, const GifByteType *bytes, int length) {
  g_string_append_len(gif->UserData, (const char *)bytes, length);
  return length;
}

/* --- colours ------------------------------------------------------------------------------- */

static void choose_colours(maker *m) {
  size_t step = m->film.count / SAMPLES + 1;
  for (size_t i = 0; i < m->film.count && !m->film.failed; i += step) {
    ox_film_draw(&m->film, i);
    for (int y = 0; y < m->film.height; y++)
      ox_colours_see(&m->colours, ox_film_row(m->film.now, y), m->film.width);
  }
  ox_colours_choose(&m->colours);
}

static void index_frame(maker *m) {
  size_t width = (size_t)m->film.width;
  for (int y = 0; y < m->film.height; y++) {
    const uint32_t *row = ox_film_row(m->film.now, y);
    GifByteType *to = m->now + (size_t)y * width;
    for (size_t x = 0; x < width; x++)
      to[x] = x > 0 && row[x] == row[x - 1] ? to[x - 1]
                                            : (GifByteType)ox_colours_index(&m->colours, row[x]);
  }
}

static const void *row_of(const void *images, int image, int y) {
  const maker *m = images;
  return (image == 0 ? m->before : m->now) + (size_t)y * (size_t)m->film.width;
}

/* --- the file ------------------------------------------------------------------------------ */

static bool put_screen(maker *m) {
  GifColorType table[256] = {{0, 0, 0}};
  for (int i = 0; i < m->colours.count; i++) {
    uint32_t c = m->colours.colour[i];
    table[i] = (GifColorType){(GifByteType)(c >> 16), (GifByteType)(c >> 8 & 0xffu),
                              (GifByteType)(c & 0xffu)};
  }
  ColorMapObject *map = GifMakeMapObject(256, table);
  if (!map) return false;
  EGifSetGifVersion(m->gif, true);
  int done = EGifPutScreenDesc(m->gif, m->film.width, m->film.height, 8, 0, map);
  GifFreeMapObject(map);
  return done == GIF_OK;
}

/* For ever: the application extension that viewers have agreed on. */
static bool put_loop(maker *m) {
  static const GifByteType again[3] = {1, 0, 0};
  return EGifPutExtensionLeader(m->gif, APPLICATION_EXT_FUNC_CODE) == GIF_OK &&
         EGifPutExtensionBlock(m->gif, 11, "NETSCAPE2.0") == GIF_OK &&
         EGifPutExtensionBlock(m->gif, 3, again) == GIF_OK &&
         EGifPutExtensionTrailer(m->gif) == GIF_OK &&
         EGifPutComment(m->gif, ox_words_caution_line()) == GIF_OK;
}

/* Hundredths of a second, so shared out that the whole keeps its time. */
static int delay_of(const maker *m, size_t index) {
  double fps = round(m->film.o->fps);
  if (index + 1 == m->film.count) return 100 * OX_FILM_LAST_HELD_S;
  return (int)(lround(100.0 * (double)(index + 1) / fps) - lround(100.0 * (double)index / fps));
}

static bool put_control(maker *m, size_t index) {
  GraphicsControlBlock control = {.DisposalMode = DISPOSE_DO_NOT,
                                  .UserInputFlag = false,
                                  .DelayTime = delay_of(m, index),
                                  .TransparentColor = index == 0 ? NO_TRANSPARENT_COLOR
                                                                 : TRANSPARENT};
  GifByteType bytes[4];
  size_t length = EGifGCBToExtension(&control, bytes);
  return EGifPutExtension(m->gif, GRAPHICS_EXT_FUNC_CODE, (int)length, bytes) == GIF_OK;
}

static bool put_frame(maker *m, size_t index) {
  ox_patch at = {0, 0, m->film.width, m->film.height};
  if (index > 0) at = ox_film_changed(&m->film, row_of, m, 1);
  if (!put_control(m, index) ||
      EGifPutImageDesc(m->gif, at.x, at.y, at.width, at.height, false, NULL) != GIF_OK)
    return false;
  for (int y = 0; y < at.height; y++) {
    size_t from = (size_t)(at.y + y) * (size_t)m->film.width + (size_t)at.x;
    for (size_t x = 0; x < (size_t)at.width; x++) {
      bool stays = index > 0 && m->now[from + x] == m->before[from + x];
      m->line[x] = stays ? TRANSPARENT : m->now[from + x];
    }
    if (EGifPutLine(m->gif, m->line, at.width) != GIF_OK) return false;
  }
  return true;
}

static bool put_all(maker *m) {
  if (!put_screen(m) || !put_loop(m)) return false;
  for (size_t i = 0; i < m->film.count; i++) {
    ox_film_draw(&m->film, i);
    if (m->film.failed) return false;
    index_frame(m);
    if (!put_frame(m, i)) return false;
    GifByteType *swap = m->before;
    m->before = m->now;
    m->now = swap;
  }
  return true;
}

static const char *make(maker *m, GString *out) {
  size_t pixels = (size_t)m->film.width * (size_t)m->film.height;
  int error = 0;
  m->now = malloc(pixels);
  m->before = malloc(pixels);
  m->line = malloc((size_t)m->film.width);
  if (!m->now || !m->before || !m->line)
    return N_("There is not enough memory for a picture of this size.");
  choose_colours(m);
  m->gif = EGifOpen(out, keep, &error);
  if (!m->gif) return CANNOT_MAKE;
  bool good = put_all(m);
  good = EGifCloseFile(m->gif, &error) == GIF_OK && good;
  return good ? NULL : CANNOT_MAKE;
}

const char *ox_export_gif(const ox_scene *scene, const ox_export_options *o, GString *out) {
  maker m = {0};
  if (o->fps > OX_GIF_FPS_MOST) return N_("A GIF has at most 50 frames a second.");
  const char *fault = ox_film_open(&m.film, scene, o);
  if (fault) return fault;
  ox_colours_open(&m.colours);
  fault = make(&m, out);
  ox_colours_close(&m.colours);
  free(m.now);
  free(m.before);
  free(m.line);
  ox_film_close(&m.film);
  return m.film.stopped ? ox_film_fault(&m.film) : fault;
}
