/* A warning that is read without colour: a mark and a sentence that wraps. */
#ifndef OX_WARNING_BOX_H
#define OX_WARNING_BOX_H

#include <gtk/gtk.h>

/* *text is the label inside, for the sentence. */
GtkWidget *ox_warning_box_new(const char *css_class, int width_chars, GtkLabel **text);

#endif
