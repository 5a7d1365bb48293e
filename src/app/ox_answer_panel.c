/* Answers in, comparisons out. */
#include "ox_answer_panel.h"

#include <math.h>

#include "app_id.h"
#include "ox_number_field.h"
#include "oxbow/text.h"

#define ABSENT (-1.0)
#define RESULT_CHARS 24

typedef enum { FIRST, HEADING, TIME, FIELD_COUNT } field_index;
static const char *const field_names[FIELD_COUNT] = {"first", "heading", "time"};

struct _OxAnswerPanel {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box, *form, *fly, *again;
  GtkLabel *guide;
  GtkToggleButton *direct, *parallel, *teardrop;
  GtkLabel *first_label, *heading_label, *time_label;
  GtkBox *first_box, *heading_box, *time_box, *results;

  OxNumberField *fields[FIELD_COUNT];
  OxPrediction *prediction; /* owned */
  gboolean showing;         /* values are being shown: not an answer by anybody */
  size_t result_count;
};

G_DEFINE_FINAL_TYPE(OxAnswerPanel, ox_answer_panel, GTK_TYPE_WIDGET)

GtkWidget *ox_answer_panel_entry(OxAnswerPanel *self, ox_entry_kind kind) {
  GtkToggleButton *const entries[] = {self->direct, self->parallel, self->teardrop};
  return GTK_WIDGET(entries[kind]);
}

/* ---- answers ---------------------------------------------------------------------------- */

static double number_or_nan(OxNumberField *field) {
  double value = ox_number_field_get_value(field);
  return value == ABSENT ? (double)NAN : value;
}

static void take_answers(OxAnswerPanel *self) {
  if (self->showing) return;
  ox_guess guess = {
      .entry = OX_ENTRY_NONE,
      .first_heading_deg = number_or_nan(self->fields[FIRST]),
      .outbound_heading_deg = number_or_nan(self->fields[HEADING]),
      .outbound_s = number_or_nan(self->fields[TIME]),
  };
  for (int i = 0; i < 3; i++)
    if (gtk_toggle_button_get_active(
            GTK_TOGGLE_BUTTON(ox_answer_panel_entry(self, (ox_entry_kind)i))))
      guess.entry = i;
  ox_prediction_set_guess(self->prediction, &guess);
}

/* One entry at most: the others are let go. Pressed again, it is no answer. */
static void entry_toggled_cb(GtkToggleButton *button, OxAnswerPanel *self) {
  if (self->showing) return;
  if (gtk_toggle_button_get_active(button)) {
    self->showing = TRUE;
    for (int i = 0; i < 3; i++) {
      GtkWidget *other = ox_answer_panel_entry(self, (ox_entry_kind)i);
      if (other != GTK_WIDGET(button))
        gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(other), FALSE);
    }
    self->showing = FALSE;
  }
  take_answers(self);
}

static void edited_cb(OxNumberField *field, double value, OxAnswerPanel *self) {
  take_answers(self);
}

/* ---- showing ---------------------------------------------------------------------------- */

static void show_number(OxNumberField *field, double value) {
  ox_number_field_set_value(field, isfinite(value) ? value : ABSENT);
}

static void show_answers(OxAnswerPanel *self) {
  ox_guess guess = ox_prediction_guess(self->prediction);
  self->showing = TRUE;
  for (int i = 0; i < 3; i++)
    gtk_toggle_button_set_active(
        GTK_TOGGLE_BUTTON(ox_answer_panel_entry(self, (ox_entry_kind)i)), guess.entry == i);
  show_number(self->fields[FIRST], guess.first_heading_deg);
  show_number(self->fields[HEADING], guess.outbound_heading_deg);
  show_number(self->fields[TIME], guess.outbound_s);
  self->showing = FALSE;
}

static GtkLabel *add_line(GtkBox *box, const char *text, const char *css_class) {
  GtkWidget *label = gtk_label_new(text);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_width_chars(GTK_LABEL(label), RESULT_CHARS);
  gtk_widget_set_focusable(label, FALSE);
  if (css_class) gtk_widget_add_css_class(label, css_class);
  gtk_box_append(box, label);
  return GTK_LABEL(label);
}

/* The mark says it without colour. */
static void add_result(OxAnswerPanel *self, const ox_guess_row *row) {
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 3);
  gtk_widget_add_css_class(box, "answer");
  gtk_widget_add_css_class(box, row->near ? "near" : "far");
  char *head = g_strdup_printf("%s %s", row->near ? "✓" : "↔", row->what);
  char *values = g_strdup_printf(_("Yours: %s · Flown: %s"), row->yours, row->flown);
  add_line(GTK_BOX(box), head, "heading");
  add_line(GTK_BOX(box), values, "figures");
  add_line(GTK_BOX(box), row->sentence, NULL);
  gtk_box_append(self->results, box);
  g_free(head);
  g_free(values);
}

static void show_results(OxAnswerPanel *self) {
  const ox_guess_report *report = ox_prediction_report(self->prediction);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child(GTK_WIDGET(self->results))))
    gtk_box_remove(self->results, child);
  for (size_t i = 0; i < report->count; i++) add_result(self, &report->rows[i]);
  self->result_count = report->count;
  if (report->count > 0) add_line(self->results, ox_guess_tolerances(), "rule");
}

static const char *guide_for(OxAnswerPanel *self, gboolean asked) {
  if (asked)
    return _("Note what you expect, as much of it as you like, and sketch the track over the "
             "picture. Then fly it.");
  return ox_prediction_report(self->prediction)->count > 0
             ? _("What you expected, beside what is flown:")
             : _("Nothing was noted this time; the flight is shown.");
}

static void show(OxAnswerPanel *self) {
  gboolean asked = ox_prediction_get_state(self->prediction) == OX_PREDICTION_ASKED;
  show_answers(self);
  show_results(self);
  gtk_label_set_text(self->guide, guide_for(self, asked));
  gtk_widget_set_visible(self->form, asked);
  gtk_widget_set_visible(self->fly, asked);
  gtk_widget_set_visible(self->again, !asked);
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxAnswerPanel *self = OX_ANSWER_PANEL(object);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_object(&self->prediction);
  G_OBJECT_CLASS(ox_answer_panel_parent_class)->dispose(object);
}

static void ox_answer_panel_class_init(OxAnswerPanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_answer_panel.ui");
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, box);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, form);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, fly);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, again);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, guide);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, direct);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, parallel);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, teardrop);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, first_label);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, heading_label);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, time_label);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, first_box);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, heading_box);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, time_box);
  gtk_widget_class_bind_template_child(widget_class, OxAnswerPanel, results);
  gtk_widget_class_bind_template_callback(widget_class, entry_toggled_cb);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "answers");
}

/* The complaint about what was typed stands below the field. */
static void message_cb(OxNumberField *field, GParamSpec *pspec, GtkLabel *complaint) {
  char *message;
  g_object_get(field, "message", &message, NULL);
  gtk_label_set_text(complaint, message ? message : "");
  gtk_widget_set_visible(GTK_WIDGET(complaint), message != NULL);
  g_free(message);
}

static void add_field(OxAnswerPanel *self, field_index index, GtkBox *box, GtkLabel *label,
                      gboolean time) {
  ox_number_style style = {
      .form = time ? OX_FORM_SECONDS : OX_FORM_BEARING,
      .unit = time ? "s" : "°",
      .units = time ? "s|sec|seconds" : "°|deg",
      .step = time ? 5 : 1,
      .page = time ? 30 : 10,
      .min = time ? 1 : 0,
      .max = time ? 900 : 360,
      .can_be_absent = TRUE,
      .absent = ABSENT,
      .allowed = time ? N_("a time (1 to 900 seconds)") : N_("a heading (0 to 360)"),
  };
  GtkWidget *field = ox_number_field_new(&style);
  GtkLabel *complaint = add_line(box, "", "rule");
  gtk_widget_set_visible(GTK_WIDGET(complaint), FALSE);
  gtk_box_prepend(box, field);
  gtk_label_set_mnemonic_widget(label, field);
  self->fields[index] = OX_NUMBER_FIELD(field);
  ox_number_field_set_suggestion(self->fields[index], time ? 60 : 360, _("not answered"));
  ox_number_field_set_name(self->fields[index], gtk_label_get_text(label));
  ox_number_field_set_value(self->fields[index], ABSENT);
  g_signal_connect(field, "edited", G_CALLBACK(edited_cb), self);
  g_signal_connect_object(field, "notify::message", G_CALLBACK(message_cb), complaint, 0);
}

static void ox_answer_panel_init(OxAnswerPanel *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  add_field(self, FIRST, self->first_box, self->first_label, FALSE);
  add_field(self, HEADING, self->heading_box, self->heading_label, FALSE);
  add_field(self, TIME, self->time_box, self->time_label, TRUE);
}

GtkWidget *ox_answer_panel_new(OxPrediction *prediction) {
  OxAnswerPanel *self = g_object_new(OX_TYPE_ANSWER_PANEL, NULL);
  self->prediction = g_object_ref(prediction);
  g_signal_connect_object(prediction, "changed", G_CALLBACK(show), self, G_CONNECT_SWAPPED);
  show(self);
  return GTK_WIDGET(self);
}

void ox_answer_panel_commit(OxAnswerPanel *self) {
  for (int i = 0; i < FIELD_COUNT; i++) ox_number_field_commit(self->fields[i], TRUE);
  take_answers(self);
}

void ox_answer_panel_grab(OxAnswerPanel *self) { gtk_widget_grab_focus(GTK_WIDGET(self->direct)); }

GtkWidget *ox_answer_panel_field(OxAnswerPanel *self, const char *name) {
  for (int i = 0; i < FIELD_COUNT; i++)
    if (g_str_equal(name, field_names[i])) return GTK_WIDGET(self->fields[i]);
  return NULL;
}

size_t ox_answer_panel_result_count(OxAnswerPanel *self) { return self->result_count; }
