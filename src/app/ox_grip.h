/* A grip: the widget over the board that stands for one handle, so that the keyboard and a screen
 * reader have something to hold. Where the handle has a value it is a range (role SLIDER), which
 * is also what assistive technology sets; else a button.
 *
 * A grip draws its ring and its focus ring, and nothing while it is hidden. It takes no pointer:
 * the board finds out by distance which handle is meant. */
#ifndef OX_GRIP_H
#define OX_GRIP_H

#include <gtk/gtk.h>

#include "oxbow/handles.h"
#include "oxbow/picture.h"

G_BEGIN_DECLS

#define OX_GRIP_RADIUS 9 /* px to its outer rim at normal text size, while it is not in hand */
#define OX_GRIP_TOUCH 44.0 /* px across, for fingers at a screen on the wall */
#define OX_GRIP_TARGET 28 /* px across at normal text size: what can be hit (24 at least) */

typedef enum {
  OX_GRIP_HIDDEN,  /* nothing but the focus ring */
  OX_GRIP_RESTING, /* a small ring */
  OX_GRIP_HOVERED, /* a large one */
  OX_GRIP_HELD,    /* filled */
} ox_grip_look;

/* sRGB; what the ring is drawn with on a palette: contrast 3:1 and more with every ground. */
typedef struct {
  GdkRGBA ring, ground, focus;
} ox_grip_colours;
ox_grip_colours ox_grip_colours_for(ox_palette_id palette);

/* A slider emits "value-changed" when assistive technology sets it, a button "clicked". */
GtkWidget *ox_grip_new(ox_handle handle);
/* One that stands for a point of the lesson: a button. The keys are the board's. */
GtkWidget *ox_grip_new_point(const char *name);
/* Emits nothing. scale is that of the text. */
void ox_grip_show(GtkWidget *grip, const ox_handle_range *range, const char *words);
void ox_grip_set_look(GtkWidget *grip, ox_grip_look look, ox_palette_id palette, double scale);
/* Whether its place is one that the picture shows; else nothing but the focus ring is drawn. */
void ox_grip_set_seen(GtkWidget *grip, gboolean seen);
ox_grip_look ox_grip_get_look(GtkWidget *grip);
/* Of a slider: what assistive technology made of the value. */
double ox_grip_value(GtkWidget *grip);

G_END_DECLS

#endif
