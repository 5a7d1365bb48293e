/* A number that is typed. GtkSpinButton loses a decimal sign in one locale or the other, turns an
 * empty field into 0, clamps without a word and rounds the value when the focus leaves; this
 * widget keeps its look and does none of that. */
#include "ox_number_field.h"

#include "app_id.h"
#include "oxbow/text.h"

/* Half-typed numbers are often out of range ("1" on the way to "120"): wait before saying so. */
#define PATIENCE_MS 700

struct _OxNumberField {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box;
  GtkText *text;
  GtkLabel *unit;
  GtkWidget *down_button, *up_button;

  /* owned */
  char *message;

  ox_number_style style;
  double value;
  double entered_value; /* what Escape brings back */
  double base_value;    /* held before the present text was typed */
  double suggestion;
  gboolean typed;             /* the text is the user's, not ours */
  const char *refused; /* borrowed, while "edited" is emitted */
  gulong changed_handler;
  guint patience;
};

enum { PROP_0, PROP_MESSAGE, PROP_COUNT };
static GParamSpec *properties[PROP_COUNT];
enum { EDITED, COMMITTED, SIGNAL_COUNT };
static guint signals[SIGNAL_COUNT];

G_DEFINE_FINAL_TYPE(OxNumberField, ox_number_field, GTK_TYPE_WIDGET)

/* ---- showing ---------------------------------------------------------------------------- */

static gboolean is_absent(OxNumberField *self, double value) {
  return self->style.can_be_absent && value == self->style.absent;
}

static void format(OxNumberField *self, double value, char out[OX_NUMBER_TEXT_BYTES]) {
  if (is_absent(self, value))
    out[0] = '\0';
  else
    ox_number_format(out, self->style.form, self->style.decimals, value);
}

static void tell_value(OxNumberField *self) {
  char text[OX_NUMBER_TEXT_BYTES];
  format(self, self->value, text);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_VALUE_NOW,
                                 self->value, GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text, -1);
}

static void show_value(OxNumberField *self) {
  char text[OX_NUMBER_TEXT_BYTES];
  format(self, self->value, text);
  self->typed = FALSE;
  tell_value(self);
  if (strcmp(text, gtk_editable_get_text(GTK_EDITABLE(self->text))) == 0) return;
  g_signal_handler_block(self->text, self->changed_handler);
  gtk_editable_set_text(GTK_EDITABLE(self->text), text);
  gtk_editable_set_position(GTK_EDITABLE(self->text), -1);
  g_signal_handler_unblock(self->text, self->changed_handler);
}

/* Takes the message (NULL: all is well). */
static void take_message(OxNumberField *self, char *message) {
  g_clear_handle_id(&self->patience, g_source_remove);
  if (g_strcmp0(message, self->message) == 0) {
    g_free(message);
    return;
  }
  g_free(self->message);
  self->message = message;
  if (message)
    gtk_widget_add_css_class(self->box, "error");
  else
    gtk_widget_remove_css_class(self->box, "error");
  GtkAccessibleInvalidState state =
      message ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE;
  gtk_accessible_update_state(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_STATE_INVALID, state, -1);
  gtk_accessible_update_state(GTK_ACCESSIBLE(self->text), GTK_ACCESSIBLE_STATE_INVALID, state, -1);
  g_object_notify_by_pspec(G_OBJECT(self), properties[PROP_MESSAGE]);
}

static char *complaint(OxNumberField *self) {
  const char *text = gtk_editable_get_text(GTK_EDITABLE(self->text));
  if (*text == '\0') return g_strdup_printf(_("Needed here: %s."), _(self->style.allowed));
  return g_strdup_printf(_("“%s” is not %s."), text,
                         _(self->refused ? self->refused : self->style.allowed));
}

static gboolean patience_over_cb(gpointer data) {
  OxNumberField *self = data;
  self->patience = 0;
  take_message(self, complaint(self));
  return G_SOURCE_REMOVE;
}

/* ---- taking ----------------------------------------------------------------------------- */

static gboolean accepts(OxNumberField *self, double value) {
  return is_absent(self, value) || (value >= self->style.min && value <= self->style.max);
}

/* What the text stands for; FALSE when it is nothing acceptable. */
static gboolean read_text(OxNumberField *self, double *value) {
  const char *text = gtk_editable_get_text(GTK_EDITABLE(self->text));
  switch (ox_number_parse(self->style.form, self->style.units, text, value)) {
  case OX_PARSE_OK:
    return accepts(self, *value);
  case OX_PARSE_EMPTY:
    *value = self->style.absent;
    return self->style.can_be_absent;
  case OX_PARSE_BAD:
    break;
  }
  return FALSE;
}

/* Whether the text says just what is shown for the value, so that 12.34 shown as 12.3 and typed
 * again is no edit. */
static gboolean text_is_value(OxNumberField *self) {
  char shown[OX_NUMBER_TEXT_BYTES];
  format(self, self->value, shown);
  return strcmp(shown, gtk_editable_get_text(GTK_EDITABLE(self->text))) == 0;
}

/* FALSE when a listener refused. */
static gboolean edit(OxNumberField *self, double value) {
  if (value == self->value) {
    take_message(self, NULL);
    return TRUE;
  }
  double kept = self->value;
  self->value = value;
  self->refused = NULL;
  g_signal_emit(self, signals[EDITED], 0, value);
  if (self->refused) {
    self->value = kept;
    take_message(self, complaint(self));
    self->refused = NULL;
    return FALSE;
  }
  take_message(self, NULL);
  tell_value(self);
  return TRUE;
}

/* The text is no good: what was held before it was typed holds, not the "37" that was on the way to
 * "370". */
static void fall_back(OxNumberField *self) {
  char *message = g_strdup(self->message);
  if (self->value != self->base_value) edit(self, self->base_value);
  take_message(self, message);
}

static void changed_cb(GtkEditable *editable, OxNumberField *self) {
  double value;
  if (!self->typed) self->base_value = self->value;
  self->typed = TRUE;
  if (text_is_value(self)) {
    take_message(self, NULL);
  } else if (read_text(self, &value)) {
    if (!edit(self, value)) fall_back(self);
  } else {
    gboolean complained = self->message != NULL;
    fall_back(self);
    if (complained)
      take_message(self, complaint(self));
    else
      self->patience = g_timeout_add(PATIENCE_MS, patience_over_cb, self);
  }
}

gboolean ox_number_field_commit(OxNumberField *self, gboolean give_up) {
  g_return_val_if_fail(OX_IS_NUMBER_FIELD(self), FALSE);
  double value;
  if (!self->typed) return TRUE;
  if (text_is_value(self) || (read_text(self, &value) && edit(self, value))) {
    take_message(self, NULL);
    show_value(self);
    return TRUE;
  }
  /* A listener's own reason is more precise than the field's; keep it. */
  char *message = self->message && read_text(self, &value) ? g_strdup(self->message)
                                                           : complaint(self);
  if (give_up) {
    char kept[OX_NUMBER_TEXT_BYTES];
    format(self, self->value, kept);
    char *whole = *kept ? g_strdup_printf(_("%s %s is kept."), message, kept) : g_strdup(message);
    g_free(message);
    message = whole;
    show_value(self);
  }
  take_message(self, message);
  return FALSE;
}

static void step(OxNumberField *self, double by) {
  ox_number_field_commit(self, TRUE);
  double next = is_absent(self, self->value)
                    ? self->suggestion
                    : ox_number_step(self->style.form, self->value, by, self->style.min,
                                     self->style.max);
  if (next == self->value) {
    gtk_widget_error_bell(GTK_WIDGET(self));
    return;
  }
  if (edit(self, next)) show_value(self);
}

static gboolean revert(OxNumberField *self) {
  if (!self->typed && self->value == self->entered_value && !self->message) return FALSE;
  if (self->value != self->entered_value) edit(self, self->entered_value);
  take_message(self, NULL);
  show_value(self);
  return TRUE;
}

/* ---- hands ------------------------------------------------------------------------------ */

static void activate_cb(GtkText *text, OxNumberField *self) {
  if (!ox_number_field_commit(self, FALSE)) return;
  self->entered_value = self->value;
  g_signal_emit(self, signals[COMMITTED], 0);
}

static void focus_entered_cb(GtkEventControllerFocus *controller, OxNumberField *self) {
  self->entered_value = self->value;
}

static void focus_left_cb(GtkEventControllerFocus *controller, OxNumberField *self) {
  ox_number_field_commit(self, TRUE);
}

static gboolean key_cb(GtkEventControllerKey *controller, guint key, guint code,
                       GdkModifierType state, OxNumberField *self) {
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) return FALSE;
  switch (key) {
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    step(self, self->style.step);
    return TRUE;
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    step(self, -self->style.step);
    return TRUE;
  case GDK_KEY_Page_Up:
  case GDK_KEY_KP_Page_Up:
    step(self, self->style.page);
    return TRUE;
  case GDK_KEY_Page_Down:
  case GDK_KEY_KP_Page_Down:
    step(self, -self->style.page);
    return TRUE;
  case GDK_KEY_Escape:
    return revert(self);
  default:
    return FALSE;
  }
}

static gboolean scroll_cb(GtkEventControllerScroll *controller, double dx, double dy,
                          OxNumberField *self) {
  /* The panel scrolls under the pointer; a value must not change on the way. */
  if (!gtk_widget_has_focus(GTK_WIDGET(self->text)) || dy == 0) return FALSE;
  step(self, dy < 0 ? self->style.step : -self->style.step);
  return TRUE;
}

static void up_cb(GtkButton *button, OxNumberField *self) { step(self, self->style.step); }

static void down_cb(GtkButton *button, OxNumberField *self) { step(self, -self->style.step); }

/* ---- the object ------------------------------------------------------------------------- */

static gboolean grab_focus(GtkWidget *widget) {
  return gtk_widget_grab_focus(GTK_WIDGET(OX_NUMBER_FIELD(widget)->text));
}

static void get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  if (id == PROP_MESSAGE)
    g_value_set_string(value, OX_NUMBER_FIELD(object)->message);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
}

static void dispose(GObject *object) {
  OxNumberField *self = OX_NUMBER_FIELD(object);
  g_clear_handle_id(&self->patience, g_source_remove);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS(ox_number_field_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  g_free(OX_NUMBER_FIELD(object)->message);
  G_OBJECT_CLASS(ox_number_field_parent_class)->finalize(object);
}

static void ox_number_field_class_init(OxNumberFieldClass *class) {
  GObjectClass *object_class = G_OBJECT_CLASS(class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  object_class->get_property = get_property;
  object_class->dispose = dispose;
  object_class->finalize = finalize;
  widget_class->grab_focus = grab_focus;
  properties[PROP_MESSAGE] =
      g_param_spec_string("message", NULL, NULL, NULL,
                          G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties(object_class, PROP_COUNT, properties);
  signals[EDITED] = g_signal_new("edited", OX_TYPE_NUMBER_FIELD, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
  signals[COMMITTED] = g_signal_new("committed", OX_TYPE_NUMBER_FIELD, G_SIGNAL_RUN_LAST, 0, NULL,
                                    NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_number_field.ui");
  gtk_widget_class_bind_template_child(widget_class, OxNumberField, box);
  gtk_widget_class_bind_template_child(widget_class, OxNumberField, text);
  gtk_widget_class_bind_template_child(widget_class, OxNumberField, unit);
  gtk_widget_class_bind_template_child(widget_class, OxNumberField, down_button);
  gtk_widget_class_bind_template_child(widget_class, OxNumberField, up_button);
  gtk_widget_class_bind_template_callback(widget_class, activate_cb);
  gtk_widget_class_bind_template_callback(widget_class, up_cb);
  gtk_widget_class_bind_template_callback(widget_class, down_cb);
  gtk_widget_class_bind_template_callback(widget_class, focus_entered_cb);
  gtk_widget_class_bind_template_callback(widget_class, focus_left_cb);
  gtk_widget_class_bind_template_callback(widget_class, key_cb);
  gtk_widget_class_bind_template_callback(widget_class, scroll_cb);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "numberfield");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_SPIN_BUTTON);
}

static void ox_number_field_init(OxNumberField *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  self->changed_handler = g_signal_connect(self->text, "changed", G_CALLBACK(changed_cb), self);
}

GtkWidget *ox_number_field_new(const ox_number_style *style) {
  OxNumberField *self = g_object_new(OX_TYPE_NUMBER_FIELD, NULL);
  self->style = *style;
  self->value = style->can_be_absent ? style->absent : style->min;
  self->suggestion = style->min;
  gtk_label_set_text(self->unit, style->unit ? style->unit : "");
  gtk_widget_set_visible(GTK_WIDGET(self->unit), style->unit != NULL);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_VALUE_MIN,
                                 style->min, GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, style->max, -1);
  show_value(self);
  return GTK_WIDGET(self);
}

static void set_label(GtkWidget *widget, const char *label) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void ox_number_field_set_name(OxNumberField *self, const char *name) {
  char *more = g_strdup_printf(_("Increase: %s"), name);
  char *less = g_strdup_printf(_("Decrease: %s"), name);
  set_label(GTK_WIDGET(self), name);
  set_label(GTK_WIDGET(self->text), name);
  set_label(self->up_button, more);
  set_label(self->down_button, less);
  g_free(more);
  g_free(less);
}

void ox_number_field_set_suggestion(OxNumberField *self, double value, const char *text) {
  self->suggestion = CLAMP(value, self->style.min, self->style.max);
  gtk_text_set_placeholder_text(self->text, text);
}

double ox_number_field_get_value(OxNumberField *self) { return self->value; }

void ox_number_field_set_value(OxNumberField *self, double value) {
  if (value != self->value) ox_number_field_reset(self, value);
}

void ox_number_field_reset(OxNumberField *self, double value) {
  self->value = value;
  self->entered_value = value;
  take_message(self, NULL);
  show_value(self);
}

void ox_number_field_refuse(OxNumberField *self, const char *allowed) { self->refused = allowed; }

const char *ox_number_field_get_message(OxNumberField *self) { return self->message; }

GtkWidget *ox_number_field_get_text(OxNumberField *self) { return GTK_WIDGET(self->text); }
