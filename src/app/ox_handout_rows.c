/* Rows that say what a handout is like. */
#include "ox_handout_rows.h"

#include <math.h>

#include "ox_number_field.h"
#include "oxbow/text.h"

#define LIST_LEAST 72
#define LIST_MOST 118

struct _OxHandoutRows {
  GObject parent_instance;

  /* borrowed: the grid's */
  GtkWidget *labels[OX_HANDOUT_ROW_COUNT], *cells[OX_HANDOUT_ROW_COUNT];
  GtkWidget *per_page, *order, *seed, *another, *all, *none;

  GPtrArray *cases; /* check buttons, owned */
  gboolean *wanted; /* as many */
  ox_handout_choice choice;
  gboolean visible;
  gboolean setting; /* many at once: told once */
};

enum { ROW_PER_PAGE, ROW_ORDER, ROW_SEED, ROW_CASES };

G_DEFINE_FINAL_TYPE(OxHandoutRows, ox_handout_rows, G_TYPE_OBJECT)

static guint changed_signal;

static const int per_page_values[] = {1, 2, 4};

static void show(OxHandoutRows *self) {
  for (int row = 0; row < OX_HANDOUT_ROW_COUNT; row++) {
    gboolean shown = self->visible;
    if (row == ROW_SEED && !self->choice.shuffled) shown = FALSE;
    if (row == ROW_CASES && self->cases->len < 2) shown = FALSE;
    gtk_widget_set_visible(self->labels[row], shown);
    gtk_widget_set_visible(self->cells[row], shown);
  }
}

static void changed(OxHandoutRows *self) {
  show(self);
  g_signal_emit(self, changed_signal, 0);
}

/* ---- what is chosen --------------------------------------------------------------------- */

static void selected_cb(OxHandoutRows *self) {
  guint per_page = gtk_drop_down_get_selected(GTK_DROP_DOWN(self->per_page));
  if (per_page < G_N_ELEMENTS(per_page_values))
    self->choice.per_page = per_page_values[per_page];
  self->choice.shuffled = gtk_drop_down_get_selected(GTK_DROP_DOWN(self->order)) == 1;
  changed(self);
}

static const char *seed_allowed(void) { return _("a seed (a whole number, 0 to 999999)"); }

static void seed_cb(OxNumberField *field, double value, OxHandoutRows *self) {
  if (value != floor(value)) {
    ox_number_field_refuse(field, seed_allowed());
    return;
  }
  self->choice.seed = (guint)value;
  changed(self);
}

static void another_cb(OxHandoutRows *self) {
  guint seed = (guint)g_random_int_range(0, OX_HANDOUT_SEED_MOST + 1);
  self->choice.seed = seed == self->choice.seed ? seed ^ 1u : seed;
  ox_number_field_reset(OX_NUMBER_FIELD(self->seed), self->choice.seed);
  changed(self);
}

static void case_cb(OxHandoutRows *self) {
  if (self->setting) return;
  for (guint i = 0; i < self->cases->len; i++)
    self->wanted[i] = gtk_check_button_get_active(g_ptr_array_index(self->cases, i));
  changed(self);
}

static void want_all(OxHandoutRows *self, gboolean wanted) {
  self->setting = TRUE;
  for (guint i = 0; i < self->cases->len; i++)
    gtk_check_button_set_active(g_ptr_array_index(self->cases, i), wanted);
  self->setting = FALSE;
  case_cb(self);
}

static void all_cb(OxHandoutRows *self) { want_all(self, TRUE); }
static void none_cb(OxHandoutRows *self) { want_all(self, FALSE); }

/* ---- putting together ------------------------------------------------------------------- */

static GtkWidget *drop_down_new(OxHandoutRows *self, const char *const *texts, guint selected) {
  GtkWidget *input = gtk_drop_down_new_from_strings(texts);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(input), selected);
  g_signal_connect_object(input, "notify::selected", G_CALLBACK(selected_cb), self,
                          G_CONNECT_SWAPPED);
  return input;
}

static GtkWidget *button_new(OxHandoutRows *self, const char *label, GCallback pressed) {
  GtkWidget *button = gtk_button_new_with_mnemonic(label);
  g_signal_connect_object(button, "clicked", pressed, self, G_CONNECT_SWAPPED);
  return button;
}

static GtkWidget *seed_new(OxHandoutRows *self) {
  static const ox_number_style style = {.form = OX_FORM_PLAIN, .step = 1, .page = 10, .min = 0,
                                        .max = OX_HANDOUT_SEED_MOST};
  ox_number_style named = style;
  named.allowed = seed_allowed();
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  self->seed = ox_number_field_new(&named);
  ox_number_field_set_name(OX_NUMBER_FIELD(self->seed), _("Seed of the order"));
  ox_number_field_set_value(OX_NUMBER_FIELD(self->seed), self->choice.seed);
  gtk_widget_set_tooltip_text(self->seed,
                              _("The same seed gives the same order; it stands on the page"));
  gtk_widget_set_hexpand(self->seed, TRUE);
  g_signal_connect_object(self->seed, "edited", G_CALLBACK(seed_cb), self, 0);
  self->another = button_new(self, _("A_nother"), G_CALLBACK(another_cb));
  gtk_widget_set_tooltip_text(self->another, _("Another seed, by chance"));
  gtk_box_append(GTK_BOX(box), self->seed);
  gtk_box_append(GTK_BOX(box), self->another);
  return box;
}

static void add_case(OxHandoutRows *self, GtkBox *list, size_t number, const char *name) {
  char *text = g_strdup_printf("%zu. %s", number, name);
  GtkWidget *button = gtk_check_button_new_with_label(text);
  GtkWidget *label = gtk_widget_get_last_child(button);
  if (GTK_IS_LABEL(label)) gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_tooltip_text(button, name);
  gtk_check_button_set_active(GTK_CHECK_BUTTON(button), TRUE);
  g_signal_connect_object(button, "toggled", G_CALLBACK(case_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append(list, button);
  g_ptr_array_add(self->cases, g_object_ref(button));
  g_free(text);
}

static GtkWidget *cases_new(OxHandoutRows *self, const ox_lesson *lesson) {
  GtkWidget *all = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *scroller = gtk_scrolled_window_new();
  GtkWidget *list = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *buttons = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  self->wanted = g_new(gboolean, MAX(lesson->case_count, 1));
  for (size_t i = 0; i < lesson->case_count; i++) {
    self->wanted[i] = TRUE;
    add_case(self, GTK_BOX(list), i + 1, lesson->cases[i].c.name);
  }
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), list);
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(scroller), GTK_POLICY_NEVER,
                                 GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height(GTK_SCROLLED_WINDOW(scroller), LIST_LEAST);
  gtk_scrolled_window_set_max_content_height(GTK_SCROLLED_WINDOW(scroller), LIST_MOST);
  gtk_scrolled_window_set_propagate_natural_height(GTK_SCROLLED_WINDOW(scroller), TRUE);
  gtk_scrolled_window_set_has_frame(GTK_SCROLLED_WINDOW(scroller), TRUE);
  self->all = button_new(self, _("_All"), G_CALLBACK(all_cb));
  self->none = button_new(self, C_("of the cases", "Non_e"), G_CALLBACK(none_cb));
  gtk_box_append(GTK_BOX(buttons), self->all);
  gtk_box_append(GTK_BOX(buttons), self->none);
  gtk_box_append(GTK_BOX(all), scroller);
  gtk_box_append(GTK_BOX(all), buttons);
  return all;
}

/* The label is of the widget that takes the keys in its cell. */
static void put(OxHandoutRows *self, GtkGrid *grid, int at, int row, const char *text,
                GtkWidget *cell, GtkWidget *input) {
  GtkWidget *label = gtk_label_new_with_mnemonic(text);
  gtk_label_set_xalign(GTK_LABEL(label), 1);
  if (row == ROW_CASES) gtk_widget_set_valign(label, GTK_ALIGN_START);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), input);
  gtk_accessible_update_relation(GTK_ACCESSIBLE(input), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label,
                                 NULL, -1);
  gtk_widget_set_hexpand(cell, TRUE);
  gtk_grid_attach(grid, label, 0, at + row, 1, 1);
  gtk_grid_attach(grid, cell, 1, at + row, 1, 1);
  self->labels[row] = label;
  self->cells[row] = cell;
}

static void fill(OxHandoutRows *self, GtkGrid *grid, int at, const ox_lesson *lesson) {
  const char *per_page[] = {C_("holds a page", "1"), C_("holds a page", "2"),
                            C_("holds a page", "4"), NULL};
  const char *order[] = {_("As in the lesson"), _("Shuffled"), NULL};
  guint selected = 0;
  while (selected + 1 < G_N_ELEMENTS(per_page_values) &&
         per_page_values[selected] != self->choice.per_page)
    selected++;
  self->per_page = drop_down_new(self, per_page, selected);
  self->order = drop_down_new(self, order, self->choice.shuffled ? 1 : 0);
  GtkWidget *seed = seed_new(self), *cases = cases_new(self, lesson);
  put(self, grid, at, ROW_PER_PAGE, _("_Holds a page"), self->per_page, self->per_page);
  put(self, grid, at, ROW_ORDER, _("Or_der"), self->order, self->order);
  put(self, grid, at, ROW_SEED, _("S_eed"), seed, ox_number_field_get_text(
                                                      OX_NUMBER_FIELD(self->seed)));
  put(self, grid, at, ROW_CASES, _("Cases"), cases,
      gtk_scrolled_window_get_child(GTK_SCROLLED_WINDOW(gtk_widget_get_first_child(cases))));
}

static void finalize(GObject *object) {
  OxHandoutRows *self = OX_HANDOUT_ROWS(object);
  g_ptr_array_unref(self->cases);
  g_free(self->wanted);
  G_OBJECT_CLASS(ox_handout_rows_parent_class)->finalize(object);
}

static void ox_handout_rows_class_init(OxHandoutRowsClass *class) {
  G_OBJECT_CLASS(class)->finalize = finalize;
  changed_signal = g_signal_new("changed", OX_TYPE_HANDOUT_ROWS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
}

static void ox_handout_rows_init(OxHandoutRows *self) {
  self->cases = g_ptr_array_new_with_free_func(g_object_unref);
}

OxHandoutRows *ox_handout_rows_new(GtkGrid *grid, int at, const ox_lesson *lesson,
                                   const ox_handout_choice *choice) {
  OxHandoutRows *self = g_object_new(OX_TYPE_HANDOUT_ROWS, NULL);
  self->choice = *choice;
  fill(self, grid, at, lesson);
  show(self);
  return self;
}

void ox_handout_rows_set_visible(OxHandoutRows *self, gboolean visible) {
  self->visible = visible;
  show(self);
}

ox_handout_choice ox_handout_rows_choice(OxHandoutRows *self) { return self->choice; }

const gboolean *ox_handout_rows_wanted(OxHandoutRows *self) { return self->wanted; }

size_t ox_handout_rows_wanted_count(OxHandoutRows *self) {
  size_t count = 0;
  for (guint i = 0; i < self->cases->len; i++)
    if (self->wanted[i]) count++;
  return count;
}

gboolean ox_handout_rows_commit(OxHandoutRows *self) {
  OxNumberField *seed = OX_NUMBER_FIELD(self->seed);
  if (!self->visible || !self->choice.shuffled || ox_number_field_commit(seed, FALSE)) return TRUE;
  gtk_widget_grab_focus(ox_number_field_get_text(seed));
  return FALSE;
}

GtkWidget *ox_handout_rows_input(OxHandoutRows *self, const char *key) {
  const struct {
    const char *key;
    GtkWidget *input;
  } inputs[] = {{"per-page", self->per_page}, {"order", self->order}, {"seed", self->seed},
                {"another", self->another},   {"all", self->all},     {"none", self->none}};
  for (size_t i = 0; i < G_N_ELEMENTS(inputs); i++)
    if (g_str_equal(key, inputs[i].key)) return inputs[i].input;
  return NULL;
}

GtkWidget *ox_handout_rows_case(OxHandoutRows *self, size_t index) {
  return g_ptr_array_index(self->cases, (guint)index);
}
