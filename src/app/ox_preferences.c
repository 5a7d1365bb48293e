/* The window of preferences: a row for each, out of one table. */
#include "ox_preferences.h"

#include "oxbow/text.h"

#define WHY_CHARS 44

struct _OxPreferences {
  GtkWindow parent_instance;
  OxSettings *settings; /* owned */
  GtkWidget *inputs[OX_PREFERENCE_COUNT], *reset;
  gboolean showing; /* values are being put in: nobody chose anything */
};

G_DEFINE_FINAL_TYPE(OxPreferences, ox_preferences, GTK_TYPE_WINDOW)

#define CHOICES_MOST 4

static const struct {
  const char *label, *why;
  const char *choices[CHOICES_MOST + 1]; /* as ox_preference_words */
} rows[OX_PREFERENCE_COUNT] = {
    [OX_PREFER_APPEARANCE] = {N_("_Appearance"),
                              N_("Projector has broad lines and large text for a dim picture."),
                              {N_("Follow the desktop"), N_("Light"), N_("Dark"),
                               N_("Projector")}},
    [OX_PREFER_MOTION] = {N_("_Moving passages"),
                          N_("How the board settles and turns from one view to the other. The "
                             "flight is played in any case."),
                          {N_("Follow the desktop"), N_("Never")}},
    [OX_PREFER_WORDING] = {N_("_Wording of clearances"),
                           N_("How clearances are said and understood on the page Words."),
                           {N_("United States"), N_("ICAO")}},
    [OX_PREFER_PALETTE] = {N_("_Colours of pictures"),
                           N_("Of pictures that are copied or dragged out, and where the export "
                              "begins."),
                           {N_("Light"), N_("Dark"), N_("Projector"), N_("Print")}},
    [OX_PREFER_PAPER] = {N_("_Paper"),
                         N_("Where printing, sheets and handouts begin."),
                         {N_("As usual in your country"), N_("A4"), N_("Letter")}},
};

/* ---- what is chosen --------------------------------------------------------------------- */

static void show(OxPreferences *self) {
  self->showing = TRUE;
  for (int i = 0; i < OX_PREFERENCE_COUNT; i++)
    gtk_drop_down_set_selected(GTK_DROP_DOWN(self->inputs[i]),
                               ox_preference_get(self->settings, (ox_preference)i));
  self->showing = FALSE;
}

static void selected_cb(GtkDropDown *input, GParamSpec *pspec, OxPreferences *self) {
  guint selected = gtk_drop_down_get_selected(input);
  if (self->showing || selected == GTK_INVALID_LIST_POSITION) return;
  for (int i = 0; i < OX_PREFERENCE_COUNT; i++)
    if (self->inputs[i] == GTK_WIDGET(input))
      ox_preference_set(self->settings, (ox_preference)i, selected);
}

static void reset_cb(OxPreferences *self) { ox_preference_reset(self->settings); }

static void settings_changed_cb(OxPreferences *self) {
  if (!self->showing) show(self);
}

/* ---- putting together ------------------------------------------------------------------- */

static GtkWidget *input_new(OxPreferences *self, ox_preference which) {
  const char *choices[CHOICES_MOST + 1] = {NULL};
  for (int i = 0; rows[which].choices[i]; i++) choices[i] = _(rows[which].choices[i]);
  GtkWidget *input = gtk_drop_down_new_from_strings(choices);
  gtk_widget_set_hexpand(input, TRUE);
  g_signal_connect(input, "notify::selected", G_CALLBACK(selected_cb), self);
  return input;
}

static void add_row(OxPreferences *self, GtkGrid *grid, ox_preference which) {
  GtkWidget *input = self->inputs[which] = input_new(self, which);
  GtkWidget *label = gtk_label_new_with_mnemonic(_(rows[which].label));
  GtkWidget *why = gtk_label_new(_(rows[which].why));
  gtk_label_set_xalign(GTK_LABEL(label), 1);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), input);
  gtk_label_set_xalign(GTK_LABEL(why), 0);
  gtk_label_set_wrap(GTK_LABEL(why), TRUE);
  gtk_label_set_width_chars(GTK_LABEL(why), WHY_CHARS);
  gtk_label_set_max_width_chars(GTK_LABEL(why), WHY_CHARS);
  gtk_widget_add_css_class(why, "rule");
  gtk_widget_set_margin_bottom(why, 9);
  gtk_accessible_update_relation(GTK_ACCESSIBLE(input), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label,
                                 NULL, GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, why, NULL, -1);
  gtk_grid_attach(grid, label, 0, 2 * (int)which, 1, 1);
  gtk_grid_attach(grid, input, 1, 2 * (int)which, 1, 1);
  gtk_grid_attach(grid, why, 1, 2 * (int)which + 1, 1, 1);
}

static GtkWidget *rows_new(OxPreferences *self) {
  GtkWidget *grid = gtk_grid_new();
  gtk_grid_set_row_spacing(GTK_GRID(grid), 3);
  gtk_grid_set_column_spacing(GTK_GRID(grid), 12);
  gtk_widget_add_css_class(grid, "form");
  for (int i = 0; i < OX_PREFERENCE_COUNT; i++) add_row(self, GTK_GRID(grid), (ox_preference)i);
  self->reset = gtk_button_new_with_mnemonic(_("_Reset to Defaults"));
  gtk_widget_set_tooltip_text(self->reset, _("Everything in this window as at the first start"));
  gtk_widget_set_halign(self->reset, GTK_ALIGN_END);
  g_signal_connect_swapped(self->reset, "clicked", G_CALLBACK(reset_cb), self);
  gtk_grid_attach(GTK_GRID(grid), self->reset, 0, 2 * OX_PREFERENCE_COUNT, 2, 1);
  return grid;
}

static void dispose(GObject *object) {
  g_clear_object(&OX_PREFERENCES(object)->settings);
  G_OBJECT_CLASS(ox_preferences_parent_class)->dispose(object);
}

static void ox_preferences_class_init(OxPreferencesClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_add_binding_action(GTK_WIDGET_CLASS(class), GDK_KEY_Escape, 0, "window.close",
                                      NULL);
}

static void ox_preferences_init(OxPreferences *self) {
  gtk_window_set_title(GTK_WINDOW(self), _("Preferences"));
  gtk_window_set_titlebar(GTK_WINDOW(self), gtk_header_bar_new());
  gtk_window_set_resizable(GTK_WINDOW(self), FALSE);
  self->showing = TRUE;
  gtk_window_set_child(GTK_WINDOW(self), rows_new(self));
  self->showing = FALSE;
  gtk_window_set_focus(GTK_WINDOW(self), self->inputs[0]);
}

GtkWidget *ox_preferences_new(GtkApplication *application, OxSettings *settings) {
  OxPreferences *self = g_object_new(OX_TYPE_PREFERENCES, "application", application, NULL);
  self->settings = g_object_ref(settings);
  g_signal_connect_object(settings, "changed", G_CALLBACK(settings_changed_cb), self,
                          G_CONNECT_SWAPPED);
  show(self);
  return GTK_WIDGET(self);
}

GtkWidget *ox_preferences_input(OxPreferences *self, ox_preference which) {
  return self->inputs[which];
}

GtkWidget *ox_preferences_reset_button(OxPreferences *self) { return self->reset; }
