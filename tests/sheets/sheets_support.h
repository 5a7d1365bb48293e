/* Holds to put on paper, and a sink that keeps what it gets. */
#ifndef SHEETS_SUPPORT_H
#define SHEETS_SUPPORT_H

#include <pango/pango.h> /* for its GLib: strings */

#include "oxbow/sheets.h"
#include "paint_cases.h"

#define SHEETS_MOST 12

typedef struct {
  size_t count;
  ox_case cases[SHEETS_MOST];
  ox_flight flights[SHEETS_MOST];
  ox_scene scenes[SHEETS_MOST];
} sheets_holds;

static sheets_holds the_holds; /* large, so not on the stack */

static inline void sheets_scene(sheets_holds *h, size_t i, const ox_case *c) {
  h->cases[i] = *c;
  assert_int_not_equal(ox_flight_solve(&h->cases[i], &h->flights[i]), OX_ERROR);
  h->scenes[i] = paint_scene(&h->cases[i], &h->flights[i], OX_PALETTE_PRINT);
}

/* Mild holds, no two alike, named "Case A", "Case B" … */
static inline sheets_holds *sheets_make_holds(size_t count, unsigned seed) {
  ox_random r = {seed};
  the_holds.count = count;
  for (size_t i = 0; i < count; i++) {
    ox_case c = paint_mild_case(&r);
    snprintf(c.name, sizeof c.name, "Case %c", (char)('A' + (int)i));
    sheets_scene(&the_holds, i, &c);
  }
  return &the_holds;
}

static inline ox_status sheets_take(void *context, const void *bytes, size_t length) {
  g_string_append_len(context, bytes, (gssize)length);
  return OX_OK;
}

static inline GString *sheets_pdf(const sheets_holds *h, const ox_sheets_options *o) {
  GString *pdf = g_string_new(NULL);
  const char *error = NULL;
  assert_int_equal(ox_sheets_make(h->scenes, h->count, o, sheets_take, pdf, &error), OX_OK);
  assert_null(error);
  return pdf;
}

#endif
