/* PNG, SVG and PDF through a byte sink.
 *
 * A sheet is made in memory and given away only when its surface is finished without an error: a
 * failing sink then never meets cairo, whose PDF surface does not survive a write error. PNG is
 * streamed, for it may be very large. Dates are fixed, so that the same input gives the same
 * bytes. */
#include "oxbow/export.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <pango/pango.h> /* for its GLib: strings and hash tables */

#include "oxbow/moments_page.h"
#include "oxbow/text.h"
#include "oxbow/words.h"
#include "export_frames.h"
#include "png_parts.h"
#include "svg_words.h"

#define PNG_MOST 16384
static const double PAGE_LEAST = 1.0, PAGE_MOST = 14400.0; /* 200 inches, the limit of PDF */
static const char FIXED_DATE[] = "2000-01-01T00:00:00Z";

typedef struct {
  ox_export_sink sink;
  void *context;
  bool refused;
} stream;

static bool to_sink(stream *s, const void *bytes, size_t length) {
  if (!s->refused && s->sink(s->context, bytes, length) != OX_OK) s->refused = true;
  return !s->refused;
}

/* A PNG on its way out: its words go in after the head. */
typedef struct {
  stream *out;
  size_t passed;
  GString *words;
} png_stream;

static cairo_status_t write_png(void *closure, const unsigned char *data, unsigned length) {
  png_stream *png = closure;
  size_t head = png->passed < PNG_HEAD_BYTES ? PNG_HEAD_BYTES - png->passed : 0;
  bool reaches = head > 0 && length >= head;
  png->passed += length;
  bool good = !reaches ? to_sink(png->out, data, length)
                       : to_sink(png->out, data, head) &&
                             to_sink(png->out, png->words->str, png->words->len) &&
                             (length == head || to_sink(png->out, data + head, length - head));
  return good ? CAIRO_STATUS_SUCCESS : CAIRO_STATUS_WRITE_ERROR;
}

static cairo_status_t write_memory(void *closure, const unsigned char *data, unsigned length) {
  g_string_append_len(closure, (const char *)data, (gssize)length);
  return CAIRO_STATUS_SUCCESS;
}

static const char *draw_moments(cairo_surface_t *surface, const ox_scene *scene, double width,
                                double height) {
  ox_moments moments = ox_moments_make(scene->c, scene->flight, 0, 1);
  cairo_t *cr = cairo_create(surface);
  ox_moments_page_draw(cr, scene, &moments, width, height);
  bool bad = cairo_status(cr) != CAIRO_STATUS_SUCCESS;
  cairo_destroy(cr);
  return bad ? N_("The picture could not be drawn.") : NULL;
}

/* Draws a scene with its caution. */
static const char *draw_picture(cairo_surface_t *surface, const ox_scene *scene, double width,
                                double height, double t_s) {
  ox_scene whole = *scene;
  whole.layers |= OX_LAYER_FURNITURE;
  ox_picture *picture = ox_picture_new(&whole, width, height);
  if (!picture) return N_("The picture cannot be laid out at this size.");
  cairo_t *cr = cairo_create(surface);
  ox_picture_draw(picture, cr, t_s);
  bool bad = cairo_status(cr) != CAIRO_STATUS_SUCCESS;
  cairo_destroy(cr);
  ox_picture_free(picture);
  return bad ? N_("The picture could not be drawn.") : NULL;
}

static const char *draw(cairo_surface_t *surface, const ox_scene *scene, double width,
                        double height, const ox_export_options *o, size_t index) {
  if (o->moments) return draw_moments(surface, scene, width, height);
  double t_s = o->t_s_of ? o->t_s_of[index] : o->t_s;
  return draw_picture(surface, scene, width, height, t_s);
}

/* The words of a scene's title; freed by the caller, never NULL. */
static char *title_of(const ox_scene *scene) {
  const char *name = scene->c->name, *title = scene->title ? scene->title : "";
  char *both = *title && *name ? g_strdup_printf("%s – %s", title, name)
                               : g_strdup(*title ? title : name);
  char *valid = g_utf8_make_valid(both, -1);
  g_free(both);
  return valid;
}

static char *moments_in_words(const ox_scene *scene) {
  ox_moments moments = ox_moments_make(scene->c, scene->flight, 0, 1);
  GString *all = g_string_new(_("Key moments of entry and first circuit."));
  for (size_t i = 0; i < moments.count; i++) {
    const ox_moment *m = &moments.moment[i];
    g_string_append_printf(all, " %zu. %s, %s: %s.", i + 1, m->what, m->figures, m->act);
  }
  g_string_append_printf(all, " %s", ox_words_caution_line());
  return g_string_free(all, FALSE);
}

static const char *name_or(const char *name, const char *otherwise) {
  return name && *name ? name : otherwise;
}

/* What is laid over the answer. */
static void describe_overlays(GString *all, const ox_scene *scene) {
  if (scene->compare) /* translators: %s is the name of a comparison */
    g_string_append_printf(all, _(" Beside it, in dashes and dots: %s."),
                           name_or(scene->compare_name, C_("beside it", "another flight")));
  for (size_t i = 0; i < scene->other_count && i < OX_SCENE_OTHERS_MAX; i++)
    g_string_append_printf(all, _(" In step with it: %s."),
                           name_or(scene->others[i].name, C_("in step with it", "another case")));
  if (scene->area)
    g_string_append(all, _(" Around it the protected area, as an illustration only."));
  if (scene->spread)
    g_string_append_printf(all, _(" Under it the band where 5 %% or more of %zu runs went."),
                           scene->spread->runs);
}

static void describe_marks(GString *all, const ox_scene *scene) {
  GString *names = g_string_new(NULL);
  for (size_t i = 0; i < scene->mark_count; i++)
    if (scene->marks[i].name && *scene->marks[i].name)
      g_string_append_printf(names, "%s%s", names->len > 0 ? ", " : "", scene->marks[i].name);
  if (names->len > 0) /* translators: names of points, with commas between */
    g_string_append_printf(all, _(" Marked: %s."), names->str);
  g_string_free(names, TRUE);
}

/* A hidden answer is hidden in the words too. */
static char *description_of(const ox_scene *scene, const ox_export_options *o) {
  if (o->moments) return moments_in_words(scene);
  GString *all = g_string_new(NULL);
  if (scene->hide_answer) {
    const char *fix = scene->c->hold.fix;
    g_string_append_printf(all, _("A hold at %s as it is given; how it is flown is not shown."),
                           name_or(fix, C_("a hold at", "the fix")));
  } else {
    char *words = ox_words_describe(scene->c, scene->flight);
    g_string_append(all, name_or(words, ""));
    free(words);
    describe_overlays(all, scene);
  }
  describe_marks(all, scene);
  if (scene->ink && scene->ink->stroke_count > 0)
    g_string_append(all, _(" With marks of a pen."));
  g_string_append_printf(all, " %s", ox_words_caution_line());
  char *valid = g_utf8_make_valid(all->str, -1);
  g_string_free(all, TRUE);
  return valid;
}

static const char CANNOT_MAKE[] = N_("The picture could not be made.");
static const char CANNOT_WRITE[] = N_("The picture could not be written.");

/* Ends a surface and says what went wrong, or NULL. */
static const char *finish(cairo_surface_t *surface, const char *fault) {
  cairo_surface_finish(surface);
  bool bad = cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS;
  cairo_surface_destroy(surface);
  return fault ? fault : bad ? CANNOT_MAKE : NULL;
}

static const char *export_png(const ox_scene *scene, const ox_export_options *o, stream *out) {
  int width = (int)lround(o->width), height = (int)lround(o->height);
  cairo_format_t format = o->transparent ? CAIRO_FORMAT_ARGB32 : CAIRO_FORMAT_RGB24;
  cairo_surface_t *surface = cairo_image_surface_create(format, width, height);
  if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS) {
    cairo_surface_destroy(surface);
    return N_("There is not enough memory for a picture of this size.");
  }
  ox_scene shown = *scene;
  shown.no_ground = o->transparent;
  const char *fault = draw(surface, &shown, width, height, o, 0);
  char *title = title_of(scene), *description = description_of(scene, o);
  png_stream png = {out, 0, g_string_new(NULL)};
  png_add_words(png.words, o->dpi, title, description);
  if (!fault && cairo_surface_write_to_png_stream(surface, write_png, &png) != CAIRO_STATUS_SUCCESS)
    fault = out->refused ? CANNOT_WRITE : CANNOT_MAKE;
  g_string_free(png.words, TRUE);
  g_free(title);
  g_free(description);
  fault = finish(surface, fault);
  return fault ? fault : out->refused ? CANNOT_WRITE : NULL;
}

static const char *export_svg(const ox_scene *scene, const ox_export_options *o, stream *out) {
  GString *made = g_string_new(NULL);
  cairo_surface_t *surface =
      cairo_svg_surface_create_for_stream(write_memory, made, o->width, o->height);
  cairo_svg_surface_set_document_unit(surface, CAIRO_SVG_UNIT_PT);
  ox_svg_texts *texts = ox_svg_texts_new(surface);
  const char *fault = finish(surface, draw(surface, scene, o->width, o->height, o, 0));
  if (!fault) {
    char *title = title_of(scene), *description = description_of(scene, o), language[16];
    ox_text_language(language, sizeof language);
    GString *whole = ox_svg_with_words(made, texts, title, description, language);
    if (!to_sink(out, whole->str, whole->len)) fault = CANNOT_WRITE;
    g_string_free(whole, TRUE);
    g_free(title);
    g_free(description);
  }
  ox_svg_texts_free(texts);
  g_string_free(made, TRUE);
  return fault;
}

static void pdf_metadata(cairo_surface_t *surface, const ox_scene *scenes, size_t count,
                         const ox_export_options *o) {
  char *title = title_of(&scenes[0]);
  GString *subject = g_string_new(NULL);
  for (size_t i = 0; i < count; i++) {
    char *words = description_of(&scenes[i], o);
    g_string_append_printf(subject, "%s%s", i > 0 ? "\n\n" : "", words);
    g_free(words);
  }
  const char *lesson = scenes[0].title && *scenes[0].title && count > 1 ? scenes[0].title : title;
  char *valid = g_utf8_make_valid(lesson, -1);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, valid);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_SUBJECT, subject->str);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Oxbow");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_AUTHOR, "Oxbow");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_KEYWORDS,
                                 _("holding pattern, instruction, not for navigation"));
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, FIXED_DATE);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, FIXED_DATE);
  g_free(valid);
  g_free(title);
  g_string_free(subject, TRUE);
}

/* The list of contents beside the sheets: the lesson's title would be the same in every line. */
static void outline(cairo_surface_t *surface, const ox_scene *scene, size_t index) {
  char link[32], *whole = title_of(scene);
  char *name = g_utf8_make_valid(scene->c->name, -1);
  snprintf(link, sizeof link, "page=%zu", index + 1);
  cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, *name ? name : whole, link,
                                CAIRO_PDF_OUTLINE_FLAG_OPEN);
  g_free(name);
  g_free(whole);
}

static const char *export_pdf(const ox_scene *scenes, size_t count, const ox_export_options *o,
                              stream *out) {
  GString *made = g_string_new(NULL);
  cairo_surface_t *surface =
      cairo_pdf_surface_create_for_stream(write_memory, made, o->width, o->height);
  pdf_metadata(surface, scenes, count, o);
  const char *fault = NULL;
  for (size_t i = 0; i < count && !fault; i++) {
    if (count > 1) outline(surface, &scenes[i], i);
    fault = draw(surface, &scenes[i], o->width, o->height, o, i);
    cairo_surface_show_page(surface);
  }
  fault = finish(surface, fault);
  if (!fault && !to_sink(out, made->str, made->len)) fault = CANNOT_WRITE;
  g_string_free(made, TRUE);
  return fault;
}

static const char *export_gif(const ox_scene *scene, const ox_export_options *o, stream *out) {
  GString *made = g_string_new(NULL);
  const char *fault = ox_export_gif(scene, o, made);
  if (!fault && !to_sink(out, made->str, made->len)) fault = CANNOT_WRITE;
  g_string_free(made, TRUE);
  return fault;
}

static const char *export_apng(const ox_scene *scene, const ox_export_options *o, stream *out) {
  char *title = title_of(scene), *description = description_of(scene, o);
  GString *made = g_string_new(NULL);
  const char *fault = ox_export_frames(scene, o, title, description, made);
  if (!fault && !to_sink(out, made->str, made->len)) fault = CANNOT_WRITE;
  g_string_free(made, TRUE);
  g_free(title);
  g_free(description);
  return fault;
}

static const char *check(const ox_scene *scenes, size_t count, const ox_export_options *o) {
  if (!scenes || count == 0) return N_("There is nothing to draw.");
  bool pixels = o->format != OX_EXPORT_SVG && o->format != OX_EXPORT_PDF;
  double least = pixels ? 1.0 : PAGE_LEAST;
  double most = pixels ? PNG_MOST : PAGE_MOST;
  bool fits = o->width >= least && o->width <= most && o->height >= least && o->height <= most;
  if (fits) return NULL;
  return pixels ? N_("The size of a picture in pixels is 1 to 16384 pixels each way.")
                : N_("The size of a sheet is 1 to 14400 points each way.");
}

ox_status ox_export(const ox_scene *scenes, size_t count, const ox_export_options *options,
                    ox_export_sink sink, void *context, const char **error) {
  stream out = {.sink = sink, .context = context};
  const char *fault = check(scenes, count, options);
  if (!fault) switch (options->format) {
    case OX_EXPORT_PNG: fault = export_png(&scenes[0], options, &out); break;
    case OX_EXPORT_SVG: fault = export_svg(&scenes[0], options, &out); break;
    case OX_EXPORT_APNG: fault = export_apng(&scenes[0], options, &out); break;
    case OX_EXPORT_GIF: fault = export_gif(&scenes[0], options, &out); break;
    case OX_EXPORT_PDF: fault = export_pdf(scenes, count, options, &out); break;
    default: fault = N_("This format is not known."); break;
    }
  if (fault && error) *error = _(fault);
  return fault ? OX_ERROR : OX_OK;
}
