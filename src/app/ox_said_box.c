/* What is said of the case. */
#include "ox_said_box.h"

#include "app_id.h"
#include "ox_choice.h"
#include "ox_clearance_words.h"
#include "oxbow/text.h"

struct _OxSaidBox {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box;
  GtkDropDown *which;
  GtkCheckButton *spoken;
  GtkButton *copy_button;
  GtkTextView *text;

  /* owned */
  OxDocument *document;
  ox_clearance *heard; /* the words that the hold came out of; NULL: none */

  ox_wording wording;
  gboolean stale; /* not shown: filled when it is */
};

G_DEFINE_FINAL_TYPE(OxSaidBox, ox_said_box, GTK_TYPE_WIDGET)

static void fill(OxSaidBox *self) {
  ox_say_options o = ox_say_options_default();
  guint which = gtk_drop_down_get_selected(self->which);
  if (!self->document || which >= OX_SAID_COUNT) return;
  o.wording = self->wording;
  o.heard = self->heard;
  o.spoken = gtk_check_button_get_active(self->spoken);
  char *words = ox_said_words((ox_said)which, ox_document_case(self->document),
                              ox_document_flight(self->document), &o);
  gtk_text_buffer_set_text(gtk_text_view_get_buffer(self->text), words, -1);
  self->stale = FALSE;
  g_free(words);
}

/* The words cost little, but while something is dragged on another page nothing. */
static void refresh(OxSaidBox *self) {
  if (gtk_widget_get_mapped(GTK_WIDGET(self)))
    fill(self);
  else
    self->stale = TRUE;
}

static void map(GtkWidget *widget) {
  GTK_WIDGET_CLASS(ox_said_box_parent_class)->map(widget);
  if (OX_SAID_BOX(widget)->stale) fill(OX_SAID_BOX(widget));
}

static void copy_cb(OxSaidBox *self) {
  char *text = ox_said_box_text(self);
  gdk_clipboard_set_text(gtk_widget_get_clipboard(GTK_WIDGET(self)), text);
  g_free(text);
}

static void dispose(GObject *object) {
  OxSaidBox *self = OX_SAID_BOX(object);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_said_box_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_free(OX_SAID_BOX(object)->heard);
  G_OBJECT_CLASS(ox_said_box_parent_class)->finalize(object);
}

static void ox_said_box_class_init(OxSaidBoxClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  widget_class->map = map;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_said_box.ui");
  gtk_widget_class_bind_template_child(widget_class, OxSaidBox, box);
  gtk_widget_class_bind_template_child(widget_class, OxSaidBox, which);
  gtk_widget_class_bind_template_child(widget_class, OxSaidBox, spoken);
  gtk_widget_class_bind_template_child(widget_class, OxSaidBox, copy_button);
  gtk_widget_class_bind_template_child(widget_class, OxSaidBox, text);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "said");
}

static void ox_said_box_init(OxSaidBox *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  GtkStringList *names = ox_choice_list(ox_said_names());
  gtk_drop_down_set_model(self->which, G_LIST_MODEL(names));
  g_object_unref(names);
  gtk_drop_down_set_selected(self->which, OX_SAID_READBACK);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->which), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("What Is Said"), -1);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->text), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("What Is Said"), -1);
  g_signal_connect_object(self->which, "notify::selected", G_CALLBACK(fill), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->spoken, "toggled", G_CALLBACK(fill), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(self->copy_button, "clicked", G_CALLBACK(copy_cb), self,
                          G_CONNECT_SWAPPED);
}

void ox_said_box_set_document(OxSaidBox *self, OxDocument *document) {
  g_return_if_fail(OX_IS_SAID_BOX(self) && !self->document);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "settled", G_CALLBACK(refresh), self, G_CONNECT_SWAPPED);
  fill(self);
}

void ox_said_box_set_wording(OxSaidBox *self, ox_wording wording) {
  self->wording = wording;
  fill(self);
}

void ox_said_box_set_heard(OxSaidBox *self, const ox_clearance *heard) {
  g_free(self->heard);
  self->heard = g_memdup2(heard, sizeof *heard);
  self->heard->result = *ox_document_case(self->document);
  refresh(self);
}

void ox_said_box_choose(OxSaidBox *self, guint said, gboolean spoken) {
  gtk_drop_down_set_selected(self->which, said);
  gtk_check_button_set_active(self->spoken, spoken);
}

char *ox_said_box_text(OxSaidBox *self) {
  GtkTextIter from, to;
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->text);
  if (self->stale) fill(self);
  gtk_text_buffer_get_bounds(buffer, &from, &to);
  return gtk_text_buffer_get_text(buffer, &from, &to, FALSE);
}
