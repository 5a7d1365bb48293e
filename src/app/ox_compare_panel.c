/* Choosing cases to compare with, and the table of what differs. */
#include "ox_compare_panel.h"

#include <string.h>

#include "oxbow/text.h"

#define TABLE_HEIGHT 138
#define VALUE_CHARS 12 /* a longer text wraps */
#define CHOICE_CHARS 9 /* a longer name is cut in the button; the list shows it whole */

struct _OxComparePanel {
  GtkWidget parent_instance;

  /* children */
  GtkWidget *box, *beside, *scrolled, *heads, *nothing;
  GtkDropDown *choices[OX_SCENE_OTHERS_MAX];
  GtkListBox *rows;

  /* owned */
  OxDocument *document;
  OxCompanions *companions;
  GPtrArray *words;                           /* of the rows */
  GtkSizeGroup *columns[2];                   /* mark and label; the values share the rest */
  char *offered;                              /* the names in the choices, to see a change */

  gboolean showing; /* the choices are being set: nobody has chosen */
  guint fill_count;
};

G_DEFINE_FINAL_TYPE(OxComparePanel, ox_compare_panel, GTK_TYPE_WIDGET)

/* ---- what can be chosen ----------------------------------------------------------------- */

/* Nothing, the changes, then the cases of the lesson. */
static guint position_of(ox_companion choice) {
  switch (choice.kind) {
  case OX_COMPANION_VARIANT:
    return 1 + choice.index;
  case OX_COMPANION_CASE:
    return 1 + OX_VARIANT_COUNT + choice.index;
  default:
    return 0;
  }
}

static ox_companion choice_at(guint position) {
  if (position == 0 || position == GTK_INVALID_LIST_POSITION) return (ox_companion){0};
  if (position <= OX_VARIANT_COUNT)
    return (ox_companion){OX_COMPANION_VARIANT, position - 1};
  return (ox_companion){OX_COMPANION_CASE, position - 1 - OX_VARIANT_COUNT};
}

static char **offered_names(OxDocument *document) {
  const ox_lesson *lesson = ox_document_lesson(document);
  GPtrArray *names = g_ptr_array_new();
  g_ptr_array_add(names, g_strdup(_("Nothing")));
  for (int i = 0; i < OX_VARIANT_COUNT; i++)
    g_ptr_array_add(names, g_strdup(_(ox_variant_name((ox_variant)i))));
  for (size_t i = 0; i < lesson->case_count; i++)
    g_ptr_array_add(names, g_strdup_printf(_("Case %zu: %s"), i + 1, lesson->cases[i].c.name));
  g_ptr_array_add(names, NULL);
  return (char **)g_ptr_array_free(names, FALSE);
}

/* The lists are made anew only when a name in them has changed: a list that is open stays. */
static void show_choices(OxComparePanel *self) {
  char **names = offered_names(self->document);
  char *offered = g_strjoinv("\n", names);
  gboolean other = g_strcmp0(offered, self->offered) != 0;
  self->showing = TRUE;
  for (guint i = 0; i < OX_SCENE_OTHERS_MAX; i++) {
    guint position = position_of(ox_companions_chosen(self->companions, i));
    if (other) {
      GtkStringList *list = gtk_string_list_new((const char *const *)names);
      gtk_drop_down_set_model(self->choices[i], G_LIST_MODEL(list));
      g_object_unref(list);
    }
    if (gtk_drop_down_get_selected(self->choices[i]) != position)
      gtk_drop_down_set_selected(self->choices[i], position);
  }
  gtk_check_button_set_active(GTK_CHECK_BUTTON(self->beside),
                              ox_companions_beside(self->companions));
  self->showing = FALSE;
  g_free(self->offered);
  self->offered = offered;
  g_strfreev(names);
}

static void chosen_cb(OxComparePanel *self) {
  if (self->showing) return;
  for (guint i = 0; i < OX_SCENE_OTHERS_MAX; i++)
    ox_companions_choose(self->companions, i,
                         choice_at(gtk_drop_down_get_selected(self->choices[i])));
}

static void beside_cb(OxComparePanel *self) {
  if (self->showing) return;
  ox_companions_set_beside(self->companions,
                           gtk_check_button_get_active(GTK_CHECK_BUTTON(self->beside)));
}

/* ---- the table -------------------------------------------------------------------------- */

static void add_cell(OxComparePanel *self, GtkWidget *row, guint column, const char *text,
                     gboolean strong) {
  GtkWidget *label = gtk_label_new(text);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_widget_add_css_class(label, "figures");
  if (strong) gtk_widget_add_css_class(label, "differs");
  if (column < G_N_ELEMENTS(self->columns)) {
    gtk_size_group_add_widget(self->columns[column], label);
  } else {
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_width_chars(GTK_LABEL(label), VALUE_CHARS);
    gtk_label_set_max_width_chars(GTK_LABEL(label), VALUE_CHARS);
    row = gtk_widget_get_last_child(row); /* the values, each as wide as the other */
  }
  gtk_box_append(GTK_BOX(row), label);
}

static void add_values_box(GtkWidget *row) {
  GtkWidget *values = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_box_set_homogeneous(GTK_BOX(values), TRUE);
  gtk_widget_set_hexpand(values, TRUE);
  gtk_box_append(GTK_BOX(row), values);
}

static GtkWidget *new_row(void) { return gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 12); }

static void show_heads(OxComparePanel *self) {
  size_t count;
  const ox_scene_other *others = ox_companions_others(self->companions, &count);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child(self->heads)))
    gtk_box_remove(GTK_BOX(self->heads), child);
  if (count == 0) return;
  add_cell(self, self->heads, 0, "", TRUE);
  add_cell(self, self->heads, 1, "", TRUE);
  add_values_box(self->heads);
  add_cell(self, self->heads, 2, ox_document_case(self->document)->name, TRUE);
  for (size_t i = 0; i < count; i++)
    add_cell(self, self->heads, (guint)i + 3, others[i].name, TRUE);
}

static char *words_of_row(OxComparePanel *self, const ox_difference_row *row, size_t columns) {
  size_t count;
  const ox_scene_other *others = ox_companions_others(self->companions, &count);
  GString *words = g_string_new(NULL);
  g_string_printf(words, "%s: %s", row->label, row->value[0]);
  for (size_t i = 1; i < columns; i++)
    g_string_append_printf(words, "; %s: %s", others[i - 1].name, row->value[i]);
  g_string_append(words, row->differs ? _(". Differs.") : _(". The same."));
  return g_string_free(words, FALSE);
}

static void add_row(OxComparePanel *self, const ox_difference_row *row, size_t columns) {
  GtkWidget *box = new_row(), *item = gtk_list_box_row_new();
  char *words = words_of_row(self, row, columns);
  add_cell(self, box, 0, row->differs ? "≠" : "", row->differs);
  add_cell(self, box, 1, row->label, FALSE);
  add_values_box(box);
  for (size_t i = 0; i < columns; i++)
    add_cell(self, box, (guint)i + 2, row->value[i], row->differs);
  gtk_list_box_row_set_child(GTK_LIST_BOX_ROW(item), box);
  gtk_list_box_row_set_activatable(GTK_LIST_BOX_ROW(item), FALSE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(item), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_list_box_append(self->rows, item);
  g_ptr_array_add(self->words, words);
}

static const char *why_nothing(OxComparePanel *self) {
  for (guint i = 0; i < OX_SCENE_OTHERS_MAX; i++)
    if (ox_companions_chosen(self->companions, i).kind != OX_COMPANION_NONE)
      return _("What is chosen changes nothing of the case shown.");
  return _("Choose a change, or another case of the lesson, to see what differs.");
}

static void fill(OxComparePanel *self) {
  const ox_differences *table = ox_companions_table(self->companions);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child(GTK_WIDGET(self->rows))))
    gtk_list_box_remove(self->rows, child);
  g_ptr_array_set_size(self->words, 0);
  self->fill_count++;
  show_heads(self);
  for (size_t i = 0; i < table->count; i++) add_row(self, &table->rows[i], table->columns);
  gtk_widget_set_visible(self->scrolled, table->count > 0);
  gtk_widget_set_visible(self->nothing, table->count == 0);
  gtk_label_set_text(GTK_LABEL(self->nothing), why_nothing(self));
}

/* A panel that is not seen is filled when it comes up. */
static void refresh(OxComparePanel *self) {
  if (!gtk_widget_get_mapped(GTK_WIDGET(self))) return;
  show_choices(self);
  fill(self);
}

static void document_changed_cb(OxDocument *document, guint what, OxComparePanel *self) {
  refresh(self);
}

static void map(GtkWidget *widget) {
  GTK_WIDGET_CLASS(ox_compare_panel_parent_class)->map(widget);
  refresh(OX_COMPARE_PANEL(widget));
}

/* ---- the widget ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxComparePanel *self = OX_COMPARE_PANEL(object);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_object(&self->document);
  g_clear_object(&self->companions);
  for (size_t i = 0; i < G_N_ELEMENTS(self->columns); i++) g_clear_object(&self->columns[i]);
  G_OBJECT_CLASS(ox_compare_panel_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxComparePanel *self = OX_COMPARE_PANEL(object);
  g_ptr_array_unref(self->words);
  g_free(self->offered);
  G_OBJECT_CLASS(ox_compare_panel_parent_class)->finalize(object);
}

static void ox_compare_panel_class_init(OxComparePanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  widget_class->map = map;
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "comparepanel");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void name_setup_cb(GtkListItemFactory *factory, GtkListItem *item) {
  GtkWidget *label = gtk_label_new(NULL);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars(GTK_LABEL(label), CHOICE_CHARS);
  gtk_list_item_set_child(item, label);
}

static void whole_name_setup_cb(GtkListItemFactory *factory, GtkListItem *item) {
  GtkWidget *label = gtk_label_new(NULL);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_list_item_set_child(item, label);
}

static void name_bind_cb(GtkListItemFactory *factory, GtkListItem *item) {
  GtkStringObject *name = gtk_list_item_get_item(item);
  gtk_label_set_text(GTK_LABEL(gtk_list_item_get_child(item)), gtk_string_object_get_string(name));
}

/* A long name must not make the window wider. */
static GtkListItemFactory *factory_new(GCallback setup) {
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new();
  g_signal_connect(factory, "setup", setup, NULL);
  g_signal_connect(factory, "bind", G_CALLBACK(name_bind_cb), NULL);
  return factory;
}

static void set_factories(GtkDropDown *choice) {
  GtkListItemFactory *button = factory_new(G_CALLBACK(name_setup_cb));
  GtkListItemFactory *list = factory_new(G_CALLBACK(whole_name_setup_cb));
  gtk_drop_down_set_factory(choice, button);
  gtk_drop_down_set_list_factory(choice, list);
  g_object_unref(button);
  g_object_unref(list);
}

static GtkWidget *labelled_choice(OxComparePanel *self, GtkWidget *head, guint place,
                                  const char *text) {
  GtkWidget *label = gtk_label_new_with_mnemonic(text), *choice = gtk_drop_down_new(NULL, NULL);
  GtkExpression *name = gtk_property_expression_new(GTK_TYPE_STRING_OBJECT, NULL, "string");
  self->choices[place] = GTK_DROP_DOWN(choice);
  gtk_drop_down_set_expression(self->choices[place], name); /* which search needs */
  gtk_expression_unref(name);
  gtk_drop_down_set_enable_search(self->choices[place], TRUE);
  set_factories(self->choices[place]);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), choice);
  gtk_accessible_update_relation(GTK_ACCESSIBLE(choice), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                 label, NULL, -1);
  gtk_widget_set_hexpand(choice, TRUE);
  gtk_box_append(GTK_BOX(head), label);
  gtk_box_append(GTK_BOX(head), choice);
  g_signal_connect_swapped(choice, "notify::selected", G_CALLBACK(chosen_cb), self);
  return choice;
}

static GtkWidget *head_new(OxComparePanel *self) {
  GtkWidget *head = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  labelled_choice(self, head, 0, _("Compare _with"));
  labelled_choice(self, head, 1, _("an_d"));
  self->beside = gtk_check_button_new_with_mnemonic(_("Side b_y side"));
  g_signal_connect_swapped(self->beside, "toggled", G_CALLBACK(beside_cb), self);
  gtk_box_append(GTK_BOX(head), self->beside);
  return head;
}

static void ox_compare_panel_init(OxComparePanel *self) {
  self->words = g_ptr_array_new_with_free_func(g_free);
  for (size_t i = 0; i < G_N_ELEMENTS(self->columns); i++)
    self->columns[i] = gtk_size_group_new(GTK_SIZE_GROUP_HORIZONTAL);
  self->box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent(self->box, GTK_WIDGET(self));
  gtk_box_append(GTK_BOX(self->box), head_new(self));
  self->nothing = gtk_label_new(NULL);
  gtk_label_set_wrap(GTK_LABEL(self->nothing), TRUE);
  gtk_label_set_xalign(GTK_LABEL(self->nothing), 0);
  gtk_box_append(GTK_BOX(self->box), self->nothing);
  GtkWidget *table = gtk_box_new(GTK_ORIENTATION_VERTICAL, 3);
  self->heads = new_row();
  gtk_widget_add_css_class(self->heads, "heads");
  self->rows = GTK_LIST_BOX(gtk_list_box_new());
  gtk_list_box_set_selection_mode(self->rows, GTK_SELECTION_NONE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->rows), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("What differs"), -1);
  gtk_box_append(GTK_BOX(table), self->heads);
  gtk_box_append(GTK_BOX(table), GTK_WIDGET(self->rows));
  self->scrolled = gtk_scrolled_window_new();
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(self->scrolled), table);
  gtk_scrolled_window_set_min_content_height(GTK_SCROLLED_WINDOW(self->scrolled), TABLE_HEIGHT);
  gtk_box_append(GTK_BOX(self->box), self->scrolled);
}

GtkWidget *ox_compare_panel_new(OxDocument *document, OxCompanions *companions) {
  OxComparePanel *self = g_object_new(OX_TYPE_COMPARE_PANEL, NULL);
  self->document = g_object_ref(document);
  self->companions = g_object_ref(companions);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  g_signal_connect_object(companions, "changed", G_CALLBACK(refresh), self, G_CONNECT_SWAPPED);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Compare cases"), -1);
  return GTK_WIDGET(self);
}

void ox_compare_panel_enter(OxComparePanel *self) {
  gtk_widget_grab_focus(GTK_WIDGET(self->choices[0]));
}

GtkDropDown *ox_compare_panel_choice(OxComparePanel *self, guint place) {
  return place < OX_SCENE_OTHERS_MAX ? self->choices[place] : NULL;
}

guint ox_compare_panel_row_count(OxComparePanel *self) { return self->words->len; }

const char *ox_compare_panel_row_words(OxComparePanel *self, guint row) {
  return row < self->words->len ? g_ptr_array_index(self->words, row) : NULL;
}

guint ox_compare_panel_fill_count(OxComparePanel *self) { return self->fill_count; }
