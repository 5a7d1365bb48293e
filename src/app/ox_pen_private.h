/* What the files of the pen share. */
#ifndef OX_PEN_PRIVATE_H
#define OX_PEN_PRIVATE_H

#include "ox_pen.h"

struct _OxPen {
  GtkWidget parent_instance;

  /* owned */
  ox_ink *growing; /* one stroke at most: being drawn, or the way of the eraser */

  ox_pen_paper paper;
  ox_pen_tool tool;
  ox_ink_colour colour;
  ox_ink_width width;
  gboolean erasing;     /* what is growing is the way of the eraser */
  gboolean eraser_end;  /* the stylus was turned round */
  gboolean stylus_down; /* fingers are not listened to */
  gboolean by_keys;     /* the keys moved the pen last: it is shown as a cross */
  gboolean inside;      /* `at` is known */
  ox_vec at;            /* px */
  guint drawn;
};

/* Of the painter's palettes: what grows looks as it will. */
const double *ox_pen_rgb(ox_palette_id palette, ox_ink_colour colour);

/* ox_pen_hands.c */
void ox_pen_add_hands(OxPen *self);

#endif
