/* Message bars. */
#include "ox_message_bar.h"

#define LABEL_KEY "oxbow-label"

GtkWidget *ox_message_bar_find(GtkBox *box, const char *kind) {
  for (GtkWidget *at = gtk_widget_get_first_child(GTK_WIDGET(box)); at;
       at = gtk_widget_get_next_sibling(at))
    if (GTK_IS_INFO_BAR(at) && g_strcmp0(gtk_widget_get_name(at), kind) == 0) return at;
  return NULL;
}

void ox_message_bar_hide(GtkBox *box, const char *kind) {
  GtkWidget *bar = ox_message_bar_find(box, kind);
  if (bar) gtk_box_remove(box, bar);
}

const char *ox_message_bar_text(GtkWidget *bar) {
  return gtk_label_get_text(g_object_get_data(G_OBJECT(bar), LABEL_KEY));
}

static void response_cb(GtkWidget *bar, int response, gpointer data) {
  GtkWidget *box = gtk_widget_get_parent(bar);
  if (box) gtk_box_remove(GTK_BOX(box), bar);
}

static GtkWidget *label_new(const char *text) {
  GtkWidget *label = gtk_label_new(text);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_wrap_mode(GTK_LABEL(label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_widget_set_hexpand(label, TRUE);
  return label;
}

GtkWidget *ox_message_bar_show(GtkBox *box, const char *kind, GtkMessageType type,
                               const char *text, const char *accept, const char *reject) {
  ox_message_bar_hide(box, kind);
  /* An alert is read out when it comes. */
  GtkWidget *bar = g_object_new(GTK_TYPE_INFO_BAR, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT,
                                "message-type", type, "name", kind, NULL);
  GtkWidget *label = label_new(text);
  gtk_info_bar_add_child(GTK_INFO_BAR(bar), label);
  g_object_set_data(G_OBJECT(bar), LABEL_KEY, label);
  gtk_accessible_update_property(GTK_ACCESSIBLE(bar), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  if (accept) gtk_info_bar_add_button(GTK_INFO_BAR(bar), accept, GTK_RESPONSE_ACCEPT);
  if (reject) gtk_info_bar_add_button(GTK_INFO_BAR(bar), reject, GTK_RESPONSE_REJECT);
  gtk_info_bar_set_show_close_button(GTK_INFO_BAR(bar), !accept || !reject);
  gtk_box_append(box, bar);
  g_signal_connect_after(bar, "response", G_CALLBACK(response_cb), NULL);
  return bar;
}
