/* The pages as a PDF, made in memory and given away whole. Dates are fixed, so that the same input
 * gives the same bytes. */
#include <cairo-pdf.h>
#include <stdio.h>

#include <pango/pango.h> /* for its GLib: strings */

#include "oxbow/sheets.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

static const char FIXED_DATE[] = "2000-01-01T00:00:00Z";

static cairo_status_t keep(void *closure, const unsigned char *data, unsigned length) {
  g_string_append_len(closure, (const char *)data, (gssize)length);
  return CAIRO_STATUS_SUCCESS;
}

static void metadata(cairo_surface_t *surface, const ox_scene *scenes, size_t count,
                     const ox_sheets_options *o) {
  const char *kind = o->kind == OX_SHEETS_KEY ? _("answer key") : _("worksheet");
  bool titled = scenes[0].title && *scenes[0].title;
  const char *lesson = titled ? scenes[0].title : _("Holding patterns");
  char *valid = g_utf8_make_valid(lesson, -1);
  char *title = g_strdup_printf("%s – %s", valid, kind);
  char *subject = g_strdup_printf(ox_text_count("%zu hold. %s", "%zu holds. %s", count), count,
                                  ox_words_caution_line());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_SUBJECT, subject);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Oxbow");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_AUTHOR, "Oxbow");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_KEYWORDS,
                                 _("holding pattern, instruction, not for navigation"));
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, FIXED_DATE);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, FIXED_DATE);
  g_free(valid);
  g_free(title);
  g_free(subject);
}

/* The list of contents beside the pages: the holds by their numbers, and on the key by the names
 * that may tell the answer. */
static void outline(cairo_surface_t *surface, const ox_scene *scenes, size_t count,
                    const ox_sheets_options *o) {
  size_t *order = g_new(size_t, count);
  ox_sheets_order(order, count, o);
  for (size_t i = 0; i < count; i++) {
    char number[64], link[32];
    snprintf(number, sizeof number, _("Hold %zu"), i + 1);
    snprintf(link, sizeof link, "page=%zu", i / (size_t)o->per_page + 1);
    const char *name = o->kind == OX_SHEETS_KEY ? scenes[order[i]].c->name : "";
    char *words = g_strdup_printf("%s%s%s", number, *name ? "  " : "", name);
    char *valid = g_utf8_make_valid(words, -1);
    cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, valid, link,
                                  CAIRO_PDF_OUTLINE_FLAG_OPEN);
    g_free(words);
    g_free(valid);
  }
  g_free(order);
}

static bool draw_pages(cairo_surface_t *surface, const ox_scene *scenes, size_t count,
                       const ox_sheets_options *o, const char **fault) {
  cairo_t *cr = cairo_create(surface);
  bool good = true;
  for (size_t page = 0; good && page < ox_sheets_pages(count, o); page++) {
    good = ox_sheets_draw(cr, scenes, count, o, page, fault) == OX_OK;
    cairo_show_page(cr);
  }
  if (good && cairo_status(cr) != CAIRO_STATUS_SUCCESS) {
    *fault = _("The pages could not be drawn.");
    good = false;
  }
  cairo_destroy(cr);
  return good;
}

ox_status ox_sheets_make(const ox_scene *scenes, size_t count, const ox_sheets_options *o,
                         ox_export_sink sink, void *context, const char **error) {
  const char *fault = NULL;
  GString *made = g_string_new(NULL);
  ox_vec size = ox_sheets_size(o);
  if (count == 0) {
    fault = _("There is nothing to draw.");
  } else {
    cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(keep, made, size.x, size.y);
    metadata(surface, scenes, count, o);
    if (draw_pages(surface, scenes, count, o, &fault)) outline(surface, scenes, count, o);
    cairo_surface_finish(surface);
    if (!fault && cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS)
      fault = _("The pages could not be made.");
    cairo_surface_destroy(surface);
  }
  if (!fault && sink(context, made->str, made->len) != OX_OK)
    fault = _("The pages could not be written.");
  g_string_free(made, TRUE);
  if (fault && error) *error = fault;
  return fault ? OX_ERROR : OX_OK;
}
