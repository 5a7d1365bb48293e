/* The time line: the flight as named stretches from left to right, coloured by what they are and
 * hatched where it is a turn; below them a mark for every event and the number of each circuit; and
 * the place of the aircraft, which mouse, touch and keys move.
 *
 * While a finger or a button is down, playing waits; it goes on when released. The stretches are
 * drawn once for a flight, a size and a theme; moving draws the play position only, and only when
 * that comes to lie on another place of the screen. */
#ifndef OX_TIME_LINE_H
#define OX_TIME_LINE_H

#include <gtk/gtk.h>

#include "ox_document.h"
#include "ox_player.h"

G_BEGIN_DECLS

#define OX_TYPE_TIME_LINE (ox_time_line_get_type())
G_DECLARE_FINAL_TYPE(OxTimeLine, ox_time_line, OX, TIME_LINE, GtkWidget)

/* Holds a reference to each. */
void ox_time_line_set_model(OxTimeLine *self, OxDocument *document, OxPlayer *player);

/* Between the flight's time (s) and a place across the widget (px); both clamped. */
double ox_time_line_x(OxTimeLine *self, double t_s);
double ox_time_line_time_s(OxTimeLine *self, double x);
/* What is at a place: the event within a few pixels, else the stretch; "" where there is no
 * flight. Freed by the caller. */
char *ox_time_line_words_at(OxTimeLine *self, double x);

/* For tests: how often the stretches and the play position were drawn, and the names shown. */
typedef struct {
  guint stretches, position;
} ox_time_line_counts;
ox_time_line_counts ox_time_line_get_counts(OxTimeLine *self);
typedef struct {
  const char *text; /* belongs to the time line, until it is drawn anew */
  double x, width;  /* as drawn */
  double from_x, to_x; /* of the stretch it stands in */
} ox_time_line_name;
size_t ox_time_line_name_count(OxTimeLine *self);
ox_time_line_name ox_time_line_get_name(OxTimeLine *self, size_t index);

G_END_DECLS

#endif
