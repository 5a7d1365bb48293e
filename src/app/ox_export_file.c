/* A picture into a file. */
#include "ox_export_file.h"

#include <math.h>
#include <string.h>

#include "oxbow/file.h"

#define PNG_WIDTH 1600
#define PNG_HEIGHT 1200
#define PNG_DPI 150
#define SVG_WIDTH 800
#define SVG_HEIGHT 600
/* A4 lying, in points */
#define SHEET_WIDTH 841.89
#define SHEET_HEIGHT 595.28

static ox_status sink(void *context, const void *bytes, size_t length) {
  return ox_file_write(context, bytes, length);
}

static gboolean has_ending(const char *path, const char *ending) {
  size_t length = strlen(path), tail = strlen(ending);
  return length > tail && g_ascii_strcasecmp(path + length - tail, ending) == 0;
}

static gboolean options_for(const char *path, double t_s, ox_export_options *options) {
  *options = (ox_export_options){.t_s = t_s};
  if (has_ending(path, ".png")) {
    options->format = OX_EXPORT_PNG;
    options->width = PNG_WIDTH;
    options->height = PNG_HEIGHT;
    options->dpi = PNG_DPI;
  } else if (has_ending(path, ".svg")) {
    options->format = OX_EXPORT_SVG;
    options->width = SVG_WIDTH;
    options->height = SVG_HEIGHT;
  } else if (has_ending(path, ".pdf")) {
    options->format = OX_EXPORT_PDF;
    options->width = SHEET_WIDTH;
    options->height = SHEET_HEIGHT;
    options->t_s = (double)NAN; /* a sheet shows the whole flight, not an instant */
  } else {
    return FALSE;
  }
  return TRUE;
}

/* What is laid over the picture in the window, and how it is turned. A sheet is laid out for
 * itself: its own scale, and no place that was panned to. */
static void take_shown(ox_scene *scene, const ox_scene *shown) {
  scene->compare = shown->compare;
  scene->compare_name = shown->compare_name;
  scene->area = shown->area;
  scene->spread = shown->spread;
  scene->others = shown->others;
  scene->other_count = shown->other_count;
  scene->ink = shown->ink;
  scene->marks = shown->marks;
  scene->mark_count = shown->mark_count;
  scene->paths = shown->paths;
  scene->path_count = shown->path_count;
  scene->hide_answer = shown->hide_answer;
  scene->view.up = shown->view.up;
  scene->view.air = shown->view.air;
}

/* Flies `count` cases from `first` on into scenes and flights. */
static void make_scenes(const ox_lesson *lesson, size_t first, size_t count, ox_palette_id palette,
                        ox_scene *scenes, ox_flight *flights) {
  for (size_t i = 0; i < count; i++) {
    const ox_case *c = &lesson->cases[first + i].c;
    if (ox_flight_solve(c, &flights[i]) == OX_ERROR) memset(&flights[i], 0, sizeof flights[i]);
    scenes[i] = (ox_scene){.c = c,
                           .flight = &flights[i],
                           .title = lesson->title,
                           .palette = palette,
                           .text_scale = 1,
                           .layers = OX_LAYER_ALL};
  }
}

ox_status ox_export_file(const ox_lesson *lesson, size_t index, const ox_scene *shown, double t_s,
                         const char *path, char **error) {
  ox_export_options options;
  char message[512] = "";
  const char *why = NULL;
  if (!options_for(path, t_s, &options)) {
    *error = g_strdup("The name of a picture ends in .png, .svg or .pdf.");
    return OX_ERROR;
  }
  ox_file_writer *writer = ox_file_begin(path, message, sizeof message);
  if (!writer) {
    *error = g_strdup(message);
    return OX_ERROR;
  }
  gboolean sheets = options.format == OX_EXPORT_PDF;
  size_t count = sheets ? lesson->case_count : 1;
  ox_scene *scenes = g_new0(ox_scene, count);
  ox_flight *flights = g_new0(ox_flight, count);
  make_scenes(lesson, sheets ? 0 : index, count, sheets ? OX_PALETTE_PRINT : OX_PALETTE_LIGHT,
              scenes, flights);
  if (shown) take_shown(&scenes[sheets ? index : 0], shown);
  ox_status status = ox_export(scenes, count, &options, sink, writer, &why);
  if (status == OX_ERROR) {
    ox_file_abandon(writer);
    *error = g_strdup(why ? why : "The picture could not be written.");
  } else {
    status = ox_file_commit(writer, message, sizeof message);
    if (status == OX_ERROR) *error = g_strdup(message);
  }
  g_free(scenes);
  g_free(flights);
  return status;
}
