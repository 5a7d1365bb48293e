/* The page of time and fuel. */
#include "ox_time_panel.h"

#include <string.h>

#include "app_id.h"
#include "ox_clearance_words.h"
#include "ox_column_layout.h"
#include "ox_field_rows.h"
#include "ox_number_text.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

/* More than these are counted below the table. */
#define ROWS_MAX 16

struct _OxTimePanel {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *scroller;
  GtkGrid *times, *fuel, *table;
  GtkLabel *words;

  /* owned */
  OxDocument *document;
  ox_field_rows *time_rows, *fuel_rows;

  gboolean stale;
};

G_DEFINE_FINAL_TYPE(OxTimePanel, ox_time_panel, GTK_TYPE_WIDGET)

static const ox_field_row_plan time_plans[] = {
    {"arrival.fix_at", N_("_Over the fix at"), N_("When the fix is crossed first, UTC"),
     OX_FORM_CLOCK_S, "UTC", NULL, 0, 10, 60},
    {"hold.efc", N_("_EFC"), N_("Expect further clearance, UTC"), OX_FORM_CLOCK, "UTC", NULL, 0, 1,
     10},
    {"clock.utc_offset_min", N_("_Local less UTC"),
     N_("Minutes from UTC to local time, west of Greenwich negative: −300 for five hours behind"),
     OX_FORM_PLAIN, "min", "min|minutes", 0, 30, 60},
    {"lost_radio.limit_starts_approach", N_("_Approach begins"),
     N_("Whether an approach begins at the fix that is the clearance limit (14 CFR 91.185)"),
     OX_FORM_PLAIN, NULL, NULL, 0, 0, 0},
    {"lost_radio.eta", N_("E_TA"),
     N_("Estimated time over the fix from which the approach begins, by the time en route filed or "
        "amended, UTC"),
     OX_FORM_CLOCK, "UTC", NULL, 0, 1, 10},
};

static const ox_field_row_plan fuel_plans[] = {
    {"fuel.unit", N_("_Unit"), N_("The unit of every amount and of the flow"), OX_FORM_PLAIN, NULL,
     NULL, 0, 0, 0},
    {"fuel.on_board", N_("On _board"), N_("On the first crossing of the fix"), OX_FORM_PLAIN, NULL,
     "lb|kg|gal|l", 1, 10, 100},
    {"fuel.flow_h", N_("_Flow an hour"), N_("What is burnt an hour in the hold"), OX_FORM_PLAIN,
     NULL, "lb|kg|gal|l", 1, 1, 10},
    {"fuel.alternate", N_("Alter_nate"), N_("From the fix to landing at the alternate"),
     OX_FORM_PLAIN, NULL, "lb|kg|gal|l", 1, 1, 10},
    {"fuel.alternate_min", N_("… as time"), N_("The same as minutes at the flow; an amount wins"),
     OX_FORM_PLAIN, "min", "min|minutes", 1, 1, 10},
    {"fuel.reserve", N_("_Reserve"), N_("What is kept to the last"), OX_FORM_PLAIN, NULL,
     "lb|kg|gal|l", 1, 1, 10},
    {"fuel.reserve_min", N_("… as time"), N_("The same as minutes at the flow; an amount wins"),
     OX_FORM_PLAIN, "min", "min|minutes", 1, 5, 15},
};

/* ---- the table -------------------------------------------------------------------------- */

static void put_cell(OxTimePanel *self, int column, int row, const char *text, gboolean strong) {
  GtkWidget *label = gtk_label_new(text);
  gtk_label_set_xalign(GTK_LABEL(label), column == 4 ? 0 : 1);
  gtk_widget_add_css_class(label, "figures");
  if (strong) gtk_widget_add_css_class(label, "heading");
  gtk_grid_attach(self->table, label, column, row, 1, 1);
}

static void put_clock(OxTimePanel *self, int column, int row, double s) {
  char text[16];
  int whole = (int)(s + 0.5) % 86400;
  g_snprintf(text, sizeof text, "%02d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
  put_cell(self, column, row, text, FALSE);
}

/* Words, not a colour: what the passage is worth for leaving. */
static const char *verdict(const ox_passage *p, int leave_by) {
  if (!p->can_leave) return _("too late");
  return p->number == leave_by ? _("last in time") : "";
}

static void put_passage(OxTimePanel *self, const ox_case *c, const ox_passage *p, int row,
                        int leave_by) {
  char text[OX_NUMBER_TEXT_BYTES + 24];
  gboolean local = c->clock.utc_offset_min != 0, fuel = ox_endurance_of(c).known;
  g_snprintf(text, sizeof text, "%d", p->number);
  put_cell(self, 0, row, text, FALSE);
  if (ox_clock_is_known(c)) put_clock(self, 1, row, ox_clock_utc_s(c, p->t_s));
  if (ox_clock_is_known(c) && local) put_clock(self, 2, row, ox_clock_local_s(c, p->t_s));
  if (!ox_clock_is_known(c)) {
    ox_words_min_s(text, sizeof text, p->t_s);
    put_cell(self, 1, row, text, FALSE);
  }
  if (!fuel) return;
  ox_number_format(text, OX_FORM_PLAIN, 1, p->left);
  put_cell(self, 3, row, text, FALSE);
  put_cell(self, 4, row, verdict(p, leave_by), FALSE);
}

static void put_head(OxTimePanel *self, const ox_case *c) {
  put_cell(self, 0, 0, _("No."), TRUE);
  put_cell(self, 1, 0, ox_clock_is_known(c) ? "UTC" : _("After"), TRUE);
  if (ox_clock_is_known(c) && c->clock.utc_offset_min != 0) put_cell(self, 2, 0, _("Local"), TRUE);
  if (ox_endurance_of(c).known) put_cell(self, 3, 0, ox_words_fuel_unit(c->fuel.unit), TRUE);
}

static void show_table(OxTimePanel *self, const ox_case *c, const ox_flight *flight) {
  ox_passage p[OX_PASSAGES_MAX];
  size_t count = ox_passages(c, flight, p, OX_PASSAGES_MAX);
  int leave_by = ox_passage_leave_by(p, count);
  for (GtkWidget *old; (old = gtk_widget_get_first_child(GTK_WIDGET(self->table)));)
    gtk_grid_remove(self->table, old);
  put_head(self, c);
  for (size_t i = 0; i < count && i < ROWS_MAX; i++)
    put_passage(self, c, &p[i], (int)i + 1, leave_by);
  if (count <= ROWS_MAX) return;
  char *more = g_strdup_printf(_("and %zu more"), count - ROWS_MAX);
  GtkWidget *label = gtk_label_new(more);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_grid_attach(self->table, label, 0, ROWS_MAX + 1, 5, 1);
  g_free(more);
}

/* ---- showing ---------------------------------------------------------------------------- */

static void fill(OxTimePanel *self) {
  const ox_case *c = ox_document_case(self->document);
  const ox_flight *flight = ox_document_flight(self->document);
  char *words = ox_said_words(OX_SAID_WHEN, c, flight, NULL);
  gtk_label_set_text(self->words, words);
  g_free(words);
  show_table(self, c, flight);
  self->stale = FALSE;
}

static void document_changed_cb(OxDocument *document, guint what, OxTimePanel *self) {
  gboolean fresh = (what & OX_DOCUMENT_SELECTION) != 0;
  ox_field_rows_show(self->time_rows, fresh);
  ox_field_rows_show(self->fuel_rows, fresh);
  if (gtk_widget_get_mapped(GTK_WIDGET(self)))
    fill(self);
  else
    self->stale = TRUE;
}

static void map(GtkWidget *widget) {
  GTK_WIDGET_CLASS(ox_time_panel_parent_class)->map(widget);
  if (OX_TIME_PANEL(widget)->stale) fill(OX_TIME_PANEL(widget));
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxTimePanel *self = OX_TIME_PANEL(object);
  g_clear_pointer(&self->time_rows, ox_field_rows_free);
  g_clear_pointer(&self->fuel_rows, ox_field_rows_free);
  g_clear_pointer(&self->scroller, gtk_widget_unparent);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_time_panel_parent_class)->dispose(object);
}

static void ox_time_panel_class_init(OxTimePanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->map = map;
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_time_panel.ui");
  gtk_widget_class_bind_template_child(widget_class, OxTimePanel, scroller);
  gtk_widget_class_bind_template_child(widget_class, OxTimePanel, times);
  gtk_widget_class_bind_template_child(widget_class, OxTimePanel, fuel);
  gtk_widget_class_bind_template_child(widget_class, OxTimePanel, table);
  gtk_widget_class_bind_template_child(widget_class, OxTimePanel, words);
  gtk_widget_class_set_layout_manager_type(widget_class, OX_TYPE_COLUMN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "inputs");
}

static void ox_time_panel_init(OxTimePanel *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  self->time_rows = ox_field_rows_new(self->times, time_plans, G_N_ELEMENTS(time_plans));
  self->fuel_rows = ox_field_rows_new(self->fuel, fuel_plans, G_N_ELEMENTS(fuel_plans));
}

void ox_time_panel_set_document(OxTimePanel *self, OxDocument *document) {
  g_return_if_fail(OX_IS_TIME_PANEL(self) && !self->document);
  self->document = g_object_ref(document);
  ox_field_rows_set_document(self->time_rows, document);
  ox_field_rows_set_document(self->fuel_rows, document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  fill(self);
}

GtkWidget *ox_time_panel_editor(OxTimePanel *self, const char *key) {
  GtkWidget *editor = ox_field_rows_editor(self->time_rows, key);
  return editor ? editor : ox_field_rows_editor(self->fuel_rows, key);
}

const char *ox_time_panel_words(OxTimePanel *self) { return gtk_label_get_text(self->words); }

const char *ox_time_panel_cell(OxTimePanel *self, int column, int row) {
  GtkWidget *cell = gtk_grid_get_child_at(self->table, column, row);
  return cell ? gtk_label_get_text(GTK_LABEL(cell)) : NULL;
}
