/* The mark is an icon and a sentence, not a colour alone. */
#include "ox_warning_box.h"

GtkWidget *ox_warning_box_new(const char *css_class, int width_chars, GtkLabel **text) {
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *icon = gtk_image_new_from_icon_name("dialog-warning-symbolic");
  GtkWidget *label = gtk_label_new(NULL);
  gtk_widget_set_valign(icon, GTK_ALIGN_START);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars(GTK_LABEL(label), width_chars);
  gtk_widget_set_hexpand(label, TRUE);
  gtk_box_append(GTK_BOX(box), icon);
  gtk_box_append(GTK_BOX(box), label);
  gtk_widget_add_css_class(box, css_class);
  *text = GTK_LABEL(label);
  return box;
}
