/* The list of cases. Rows are places: when cases move, the rows show other names, so no row goes
 * away under the hand that moves it. */
#include "ox_cases_panel.h"

#include "app_id.h"
#include "ox_warning_box.h"
#include "oxbow/text.h"

#define NAME_CHARS 22

typedef struct {
  OxCasesPanel *panel;
  GtkWidget *row, *number, *handle;
  GtkStack *pages; /* the name, or the entry to change it */
  GtkLabel *name;
  GtkEntry *entry;
} case_row;

struct _OxCasesPanel {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box, *buttons;
  GtkEntry *title;
  GtkListBox *list;

  GtkWidget *complaint_box;
  GtkLabel *complaint;

  /* owned */
  OxDocument *document;
  GPtrArray *rows; /* of case_row */

  gboolean showing; /* selections then come from the document */
};

G_DEFINE_FINAL_TYPE(OxCasesPanel, ox_cases_panel, GTK_TYPE_WIDGET)

static case_row *row_at(OxCasesPanel *self, size_t index) {
  return index < self->rows->len ? g_ptr_array_index(self->rows, index) : NULL;
}

static size_t index_of(case_row *row) {
  return (size_t)gtk_list_box_row_get_index(GTK_LIST_BOX_ROW(row->row));
}

static void complain(OxCasesPanel *self, const char *why) {
  gtk_label_set_text(self->complaint, why ? why : "");
  gtk_widget_set_visible(self->complaint_box, why != NULL);
}

/* ---- renaming --------------------------------------------------------------------------- */

static gboolean is_renaming(case_row *row) {
  return gtk_stack_get_visible_child(row->pages) == GTK_WIDGET(row->entry);
}

static void stop_renaming(case_row *row) {
  gboolean focused = gtk_widget_get_focus_child(GTK_WIDGET(row->pages)) != NULL;
  gtk_stack_set_visible_child(row->pages, GTK_WIDGET(row->name));
  if (focused) gtk_widget_grab_focus(row->row);
}

/* A refused name leaves the entry open, with the sentence below the list. */
static void take_name(case_row *row) {
  OxCasesPanel *self = row->panel;
  const char *why = NULL;
  if (!is_renaming(row)) return;
  const char *text = gtk_editable_get_text(GTK_EDITABLE(row->entry));
  ox_status status = ox_document_rename_case(self->document, index_of(row), text, &why);
  complain(self, why);
  if (status != OX_ERROR) stop_renaming(row);
}

static void entry_done_cb(GtkEntry *entry, case_row *row) { take_name(row); }

/* Leaving takes a good name; a bad one is given up. */
static void entry_left_cb(GtkEventControllerFocus *focus, case_row *row) {
  if (!is_renaming(row)) return;
  take_name(row);
  if (is_renaming(row)) stop_renaming(row);
  complain(row->panel, NULL);
}

static gboolean entry_key_cb(GtkEventControllerKey *key, guint value, guint code,
                             GdkModifierType modifiers, case_row *row) {
  if (value != GDK_KEY_Escape) return GDK_EVENT_PROPAGATE;
  complain(row->panel, NULL);
  gtk_editable_set_text(GTK_EDITABLE(row->entry), gtk_label_get_text(row->name));
  stop_renaming(row);
  return GDK_EVENT_STOP;
}

static void start_renaming(case_row *row) {
  gtk_editable_set_text(GTK_EDITABLE(row->entry), gtk_label_get_text(row->name));
  gtk_stack_set_visible_child(row->pages, GTK_WIDGET(row->entry));
  gtk_widget_grab_focus(GTK_WIDGET(row->entry));
  gtk_editable_select_region(GTK_EDITABLE(row->entry), 0, -1);
}

/* ---- dragging --------------------------------------------------------------------------- */

static GdkContentProvider *drag_prepare_cb(GtkDragSource *source, double x, double y,
                                           case_row *row) {
  return gdk_content_provider_new_typed(G_TYPE_INT, (int)index_of(row));
}

static void drag_begin_cb(GtkDragSource *source, GdkDrag *drag, case_row *row) {
  GdkPaintable *picture = gtk_widget_paintable_new(row->row);
  gtk_drag_source_set_icon(source, picture, 12, 12);
  g_object_unref(picture);
}

static gboolean drop_cb(GtkDropTarget *target, const GValue *value, double x, double y,
                        case_row *row) {
  int from = g_value_get_int(value);
  return from >= 0 && ox_document_move_case(row->panel->document, (size_t)from, index_of(row)) ==
                          OX_OK;
}

static void add_dragging(case_row *row) {
  GtkDragSource *source = gtk_drag_source_new();
  gtk_drag_source_set_actions(source, GDK_ACTION_MOVE);
  g_signal_connect(source, "prepare", G_CALLBACK(drag_prepare_cb), row);
  g_signal_connect(source, "drag-begin", G_CALLBACK(drag_begin_cb), row);
  gtk_widget_add_controller(row->handle, GTK_EVENT_CONTROLLER(source));
  GtkDropTarget *target = gtk_drop_target_new(G_TYPE_INT, GDK_ACTION_MOVE);
  g_signal_connect(target, "drop", G_CALLBACK(drop_cb), row);
  gtk_widget_add_controller(row->row, GTK_EVENT_CONTROLLER(target));
}

/* ---- rows ------------------------------------------------------------------------------- */

static void add_entry(case_row *row) {
  row->entry = GTK_ENTRY(gtk_entry_new());
  gtk_editable_set_width_chars(GTK_EDITABLE(row->entry), 8);
  gtk_editable_set_max_width_chars(GTK_EDITABLE(row->entry), NAME_CHARS);
  g_object_set(row->entry, "enable-undo", FALSE, "truncate-multiline", TRUE, NULL);
  g_signal_connect(row->entry, "activate", G_CALLBACK(entry_done_cb), row);
  GtkEventController *focus = gtk_event_controller_focus_new();
  g_signal_connect(focus, "leave", G_CALLBACK(entry_left_cb), row);
  gtk_widget_add_controller(GTK_WIDGET(row->entry), focus);
  GtkEventController *key = gtk_event_controller_key_new();
  gtk_event_controller_set_propagation_phase(key, GTK_PHASE_CAPTURE);
  g_signal_connect(key, "key-pressed", G_CALLBACK(entry_key_cb), row);
  gtk_widget_add_controller(GTK_WIDGET(row->entry), key);
  gtk_stack_add_child(row->pages, GTK_WIDGET(row->entry));
}

static case_row *row_new(OxCasesPanel *self) {
  case_row *row = g_new0(case_row, 1);
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  row->panel = self;
  row->handle = gtk_image_new_from_icon_name("list-drag-handle-symbolic");
  gtk_widget_set_size_request(row->handle, 24, 24);
  gtk_widget_set_tooltip_text(row->handle, _("Drag to Move the Case"));
  row->number = gtk_label_new(NULL);
  gtk_widget_add_css_class(row->number, "figures");
  gtk_label_set_width_chars(GTK_LABEL(row->number), 3);
  gtk_label_set_xalign(GTK_LABEL(row->number), 1);
  row->pages = GTK_STACK(gtk_stack_new());
  gtk_widget_set_hexpand(GTK_WIDGET(row->pages), TRUE);
  gtk_stack_set_vhomogeneous(row->pages, FALSE);
  row->name = GTK_LABEL(gtk_label_new(NULL));
  gtk_label_set_xalign(row->name, 0);
  gtk_label_set_wrap(row->name, TRUE);
  gtk_label_set_wrap_mode(row->name, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars(row->name, NAME_CHARS);
  gtk_label_set_max_width_chars(row->name, NAME_CHARS);
  gtk_stack_add_child(row->pages, GTK_WIDGET(row->name));
  add_entry(row);
  gtk_box_append(GTK_BOX(box), row->handle);
  gtk_box_append(GTK_BOX(box), row->number);
  gtk_box_append(GTK_BOX(box), GTK_WIDGET(row->pages));
  row->row = gtk_list_box_row_new();
  gtk_list_box_row_set_child(GTK_LIST_BOX_ROW(row->row), box);
  add_dragging(row);
  gtk_list_box_append(self->list, row->row);
  return row;
}

static void show_row(case_row *row, size_t index, const char *name) {
  char *number = g_strdup_printf("%zu.", index + 1);
  char *spoken = g_strdup_printf("%zu. %s", index + 1, name);
  char *entry = g_strdup_printf(_("Name of case %zu"), index + 1);
  gtk_label_set_text(GTK_LABEL(row->number), number);
  gtk_label_set_text(row->name, name);
  gtk_accessible_update_property(GTK_ACCESSIBLE(row->row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                 -1);
  gtk_accessible_update_property(GTK_ACCESSIBLE(row->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, entry,
                                 -1);
  g_free(number);
  g_free(spoken);
  g_free(entry);
}

static void show_rows(OxCasesPanel *self) {
  const ox_lesson *lesson = ox_document_lesson(self->document);
  while (self->rows->len > lesson->case_count) {
    case_row *last = row_at(self, self->rows->len - 1);
    gtk_stack_set_visible_child(last->pages, GTK_WIDGET(last->name)); /* takes no name */
    gtk_list_box_remove(self->list, last->row);
    g_ptr_array_set_size(self->rows, (int)self->rows->len - 1);
  }
  while (self->rows->len < lesson->case_count) g_ptr_array_add(self->rows, row_new(self));
  for (size_t i = 0; i < lesson->case_count; i++)
    show_row(row_at(self, i), i, lesson->cases[i].c.name);
}

/* ---- the document ----------------------------------------------------------------------- */

static void show_title(OxCasesPanel *self) {
  const char *title = ox_document_lesson(self->document)->title;
  if (g_strcmp0(gtk_editable_get_text(GTK_EDITABLE(self->title)), title) == 0) return;
  gboolean before = self->showing;
  self->showing = TRUE;
  gtk_editable_set_text(GTK_EDITABLE(self->title), title);
  self->showing = before;
}

static void document_changed_cb(OxDocument *document, guint what, OxCasesPanel *self) {
  gboolean focused = gtk_widget_get_focus_child(GTK_WIDGET(self->list)) != NULL;
  self->showing = TRUE;
  if (what & (OX_DOCUMENT_LESSON | OX_DOCUMENT_CASES)) show_rows(self);
  if (what & (OX_DOCUMENT_LESSON | OX_DOCUMENT_EXTRAS)) show_title(self);
  case_row *shown = row_at(self, ox_document_case_index(document));
  gtk_list_box_select_row(self->list, GTK_LIST_BOX_ROW(shown->row));
  if (focused && !is_renaming(shown)) gtk_widget_grab_focus(shown->row);
  self->showing = FALSE;
}

static void row_selected_cb(GtkListBox *list, GtkListBoxRow *row, OxCasesPanel *self) {
  if (row && !self->showing)
    ox_document_select(self->document, (size_t)gtk_list_box_row_get_index(row));
}

static void row_activated_cb(GtkListBox *list, GtkListBoxRow *row, OxCasesPanel *self) {
  start_renaming(row_at(self, (size_t)gtk_list_box_row_get_index(row)));
}

static void title_edited_cb(GtkEditable *entry, OxCasesPanel *self) {
  if (self->showing || !self->document) return;
  const char *why = NULL, *text = gtk_editable_get_text(entry);
  ox_document_set_title(self->document, text, &why);
  complain(self, why);
}

/* What was refused is given up. */
static void title_left_cb(GtkEventControllerFocus *focus, OxCasesPanel *self) {
  if (!self->document) return;
  complain(self, NULL);
  show_title(self);
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxCasesPanel *self = OX_CASES_PANEL(object);
  for (guint i = 0; self->rows && i < self->rows->len; i++) {
    case_row *row = row_at(self, i);
    g_signal_handlers_disconnect_by_data(row->entry, row);
    /* Focus that leaves a dying entry takes no name. */
    gtk_stack_set_visible_child(row->pages, GTK_WIDGET(row->name));
  }
  g_clear_object(&self->document);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS(ox_cases_panel_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_ptr_array_unref(OX_CASES_PANEL(object)->rows);
  G_OBJECT_CLASS(ox_cases_panel_parent_class)->finalize(object);
}

static void ox_cases_panel_class_init(OxCasesPanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_cases_panel.ui");
  gtk_widget_class_bind_template_child(widget_class, OxCasesPanel, box);
  gtk_widget_class_bind_template_child(widget_class, OxCasesPanel, buttons);
  gtk_widget_class_bind_template_child(widget_class, OxCasesPanel, title);
  gtk_widget_class_bind_template_child(widget_class, OxCasesPanel, list);
  gtk_widget_class_bind_template_callback(widget_class, row_selected_cb);
  gtk_widget_class_bind_template_callback(widget_class, row_activated_cb);
  gtk_widget_class_bind_template_callback(widget_class, title_edited_cb);
  gtk_widget_class_bind_template_callback(widget_class, title_left_cb);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "cases");
}

/* Buttons without a text have the tooltip for a name. */
static void name_buttons(OxCasesPanel *self) {
  for (GtkWidget *at = gtk_widget_get_first_child(self->buttons); at;
       at = gtk_widget_get_next_sibling(at))
    gtk_accessible_update_property(GTK_ACCESSIBLE(at), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                   gtk_widget_get_tooltip_text(at), -1);
}

static void ox_cases_panel_init(OxCasesPanel *self) {
  self->rows = g_ptr_array_new_with_free_func(g_free);
  gtk_widget_init_template(GTK_WIDGET(self));
  self->complaint_box = ox_warning_box_new("complaint", 28, &self->complaint);
  gtk_widget_set_visible(self->complaint_box, FALSE);
  gtk_box_append(GTK_BOX(self->box), self->complaint_box);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Cases"), -1);
  name_buttons(self);
}

void ox_cases_panel_set_document(OxCasesPanel *self, OxDocument *document) {
  g_return_if_fail(OX_IS_CASES_PANEL(self) && !self->document);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  document_changed_cb(document, OX_DOCUMENT_LESSON, self);
}

void ox_cases_panel_rename(OxCasesPanel *self) {
  start_renaming(row_at(self, ox_document_case_index(self->document)));
}

void ox_cases_panel_focus(OxCasesPanel *self) {
  gtk_widget_grab_focus(row_at(self, ox_document_case_index(self->document))->row);
}

void ox_cases_panel_commit(OxCasesPanel *self) {
  for (guint i = 0; i < self->rows->len; i++) take_name(row_at(self, i));
}

GtkListBoxRow *ox_cases_panel_row(OxCasesPanel *self, size_t index) {
  case_row *row = row_at(self, index);
  return row ? GTK_LIST_BOX_ROW(row->row) : NULL;
}

GtkEntry *ox_cases_panel_entry(OxCasesPanel *self, size_t index) {
  case_row *row = row_at(self, index);
  return row ? row->entry : NULL;
}
