/* The list of the lesson's cases. Names may be long, so the button shortens them and the list
 * does not. */
#include "ox_case_bar.h"

#include "app_id.h"
#include "oxbow/text.h"

struct _OxCaseBar {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box;
  GtkDropDown *cases;
  GtkStringList *names;
  GtkWidget *list_button, *previous_button, *next_button;

  /* owned */
  OxDocument *document;
  OxPrediction *prediction; /* may be NULL */

  gboolean nameless; /* the names are hidden */
  gulong chosen_handler;
};

G_DEFINE_FINAL_TYPE(OxCaseBar, ox_case_bar, GTK_TYPE_WIDGET)

static char *item_name(OxCaseBar *self, size_t index) {
  if (self->nameless) return ox_prediction_neutral_name(index);
  return g_strdup_printf("%zu. %s", index + 1,
                         ox_document_lesson(self->document)->cases[index].c.name);
}

/* The shown case was given another name. */
static void show_name(OxCaseBar *self) {
  guint index = (guint)ox_document_case_index(self->document);
  char *name = item_name(self, index);
  if (g_strcmp0(gtk_string_list_get_string(self->names, index), name) != 0) {
    const char *one[] = {name, NULL};
    gtk_string_list_splice(self->names, index, 1, one);
  }
  g_free(name);
}

static void show_names(OxCaseBar *self) {
  size_t count = ox_document_case_count(self->document);
  GPtrArray *names = g_ptr_array_new_with_free_func(g_free);
  for (size_t i = 0; i < count; i++) g_ptr_array_add(names, item_name(self, i));
  g_ptr_array_add(names, NULL);
  guint old = g_list_model_get_n_items(G_LIST_MODEL(self->names));
  gtk_string_list_splice(self->names, 0, old, (const char *const *)names->pdata);
  g_ptr_array_unref(names);
}

static void document_changed_cb(OxDocument *document, guint what, OxCaseBar *self) {
  g_signal_handler_block(self->cases, self->chosen_handler);
  if (what & (OX_DOCUMENT_LESSON | OX_DOCUMENT_CASES))
    show_names(self);
  else
    show_name(self);
  gtk_drop_down_set_selected(self->cases, (guint)ox_document_case_index(document));
  g_signal_handler_unblock(self->cases, self->chosen_handler);
  gtk_widget_set_tooltip_text(GTK_WIDGET(self->cases),
                              self->nameless ? NULL : ox_document_case(document)->name);
}

/* It tells of every answer as well. */
static void prediction_changed_cb(OxCaseBar *self) {
  gboolean nameless = ox_prediction_hides(self->prediction);
  if (nameless == self->nameless) return;
  self->nameless = nameless;
  document_changed_cb(self->document, OX_DOCUMENT_LESSON, self);
}

static void chosen_cb(GtkDropDown *cases, GParamSpec *pspec, OxCaseBar *self) {
  guint selected = gtk_drop_down_get_selected(cases);
  if (selected != GTK_INVALID_LIST_POSITION) ox_document_select(self->document, selected);
}

static void short_name_setup_cb(GtkSignalListItemFactory *factory, GtkListItem *item,
                                OxCaseBar *self) {
  GtkWidget *label = gtk_label_new(NULL);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars(GTK_LABEL(label), 8);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 18);
  gtk_list_item_set_child(item, label);
}

static void name_setup_cb(GtkSignalListItemFactory *factory, GtkListItem *item, OxCaseBar *self) {
  GtkWidget *label = gtk_label_new(NULL);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 40);
  gtk_list_item_set_child(item, label);
}

static void name_bind_cb(GtkSignalListItemFactory *factory, GtkListItem *item, OxCaseBar *self) {
  GtkStringObject *name = GTK_STRING_OBJECT(gtk_list_item_get_item(item));
  gtk_label_set_text(GTK_LABEL(gtk_list_item_get_child(item)), gtk_string_object_get_string(name));
}

static void dispose(GObject *object) {
  OxCaseBar *self = OX_CASE_BAR(object);
  if (self->cases) g_clear_signal_handler(&self->chosen_handler, self->cases);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_object(&self->document);
  g_clear_object(&self->prediction);
  G_OBJECT_CLASS(ox_case_bar_parent_class)->dispose(object);
}

static void ox_case_bar_class_init(OxCaseBarClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_case_bar.ui");
  gtk_widget_class_bind_template_child(widget_class, OxCaseBar, box);
  gtk_widget_class_bind_template_child(widget_class, OxCaseBar, cases);
  gtk_widget_class_bind_template_child(widget_class, OxCaseBar, names);
  gtk_widget_class_bind_template_child(widget_class, OxCaseBar, list_button);
  gtk_widget_class_bind_template_child(widget_class, OxCaseBar, previous_button);
  gtk_widget_class_bind_template_child(widget_class, OxCaseBar, next_button);
  gtk_widget_class_bind_template_callback(widget_class, short_name_setup_cb);
  gtk_widget_class_bind_template_callback(widget_class, name_setup_cb);
  gtk_widget_class_bind_template_callback(widget_class, name_bind_cb);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "casebar");
}

static void set_label(GtkWidget *widget, const char *label) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void ox_case_bar_init(OxCaseBar *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  self->chosen_handler = g_signal_connect(self->cases, "notify::selected", G_CALLBACK(chosen_cb),
                                          self);
  set_label(GTK_WIDGET(self->cases), _("Case"));
  set_label(self->list_button, _("List of Cases"));
  set_label(self->previous_button, _("Previous Case"));
  set_label(self->next_button, _("Next Case"));
}

void ox_case_bar_set_prediction(OxCaseBar *self, OxPrediction *prediction) {
  g_return_if_fail(OX_IS_CASE_BAR(self) && !self->document && !self->prediction);
  self->prediction = g_object_ref(prediction);
  self->nameless = ox_prediction_hides(prediction);
}

void ox_case_bar_set_document(OxCaseBar *self, OxDocument *document) {
  g_return_if_fail(OX_IS_CASE_BAR(self) && !self->document);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  if (self->prediction)
    g_signal_connect_object(self->prediction, "changed", G_CALLBACK(prediction_changed_cb), self,
                            G_CONNECT_SWAPPED);
  document_changed_cb(document, OX_DOCUMENT_LESSON, self);
}
