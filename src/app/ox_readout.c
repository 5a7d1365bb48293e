/* The readout's label and its buttons. The buttons take no focus: the grip keeps it, and with it
 * the keys that do the same. */
#include "ox_readout.h"

#include "ox_steady_words.h"
#include "oxbow/text.h"

typedef struct {
  GtkWidget *box, *what, *less, *more;
  ox_handle handle;
} stepper;

struct _OxReadout {
  GtkWidget parent_instance;
  GtkWidget *box, *label, *flip;
  stepper first, second;
  ox_handle handle;
};

static guint step_signal;

G_DEFINE_FINAL_TYPE(OxReadout, ox_readout, GTK_TYPE_WIDGET)

static void emit(OxReadout *self, ox_handle handle, int steps) {
  g_signal_emit(self, step_signal, 0, (guint)handle, steps);
}

static void less_cb(OxReadout *self, GtkWidget *button) {
  emit(self, button == self->first.less ? self->first.handle : self->second.handle, -1);
}

static void more_cb(OxReadout *self, GtkWidget *button) {
  emit(self, button == self->first.more ? self->first.handle : self->second.handle, 1);
}

static void flip_cb(OxReadout *self) { emit(self, self->handle, 1); }

static GtkWidget *button_new(const char *icon, GCallback pressed, OxReadout *self) {
  GtkWidget *button = gtk_button_new_from_icon_name(icon);
  gtk_widget_set_focusable(button, FALSE);
  gtk_widget_set_size_request(button, 28, 28);
  g_signal_connect_object(button, "clicked", pressed, self, G_CONNECT_SWAPPED);
  return button;
}

static void build_stepper(OxReadout *self, stepper *s) {
  s->box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  s->what = gtk_label_new(NULL);
  s->less = button_new("list-remove-symbolic", G_CALLBACK(less_cb), self);
  s->more = button_new("list-add-symbolic", G_CALLBACK(more_cb), self);
  gtk_widget_set_hexpand(s->what, TRUE);
  gtk_label_set_xalign(GTK_LABEL(s->what), 0);
  gtk_box_append(GTK_BOX(s->box), s->what);
  gtk_box_append(GTK_BOX(s->box), s->less);
  gtk_box_append(GTK_BOX(s->box), s->more);
  gtk_box_append(GTK_BOX(self->box), s->box);
}

static void name_button(GtkWidget *button, const char *what, const char *change) {
  char *name = g_strdup_printf("%s %s", what, change);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_tooltip_text(button, name);
  g_free(name);
}

static void set_stepper(stepper *s, ox_handle handle, const char *what) {
  if (gtk_widget_get_visible(s->box) && s->handle == handle) return;
  s->handle = handle;
  gtk_label_set_text(GTK_LABEL(s->what), what);
  gtk_widget_set_visible(s->what, *what != '\0');
  name_button(s->less, ox_handle_name(handle), _("Less"));
  name_button(s->more, ox_handle_name(handle), _("More"));
  gtk_widget_set_visible(s->box, TRUE);
}

void ox_readout_show(OxReadout *self, ox_handle handle, const char *words, gboolean with_buttons) {
  gtk_widget_set_visible(GTK_WIDGET(self), handle != OX_HANDLE_COUNT);
  self->handle = handle;
  if (handle == OX_HANDLE_COUNT) {
    ox_steady_words_set(OX_STEADY_WORDS(self->label), "");
    return;
  }
  gboolean wind = handle == OX_HANDLE_WIND_FROM || handle == OX_HANDLE_WIND_KT;
  /* "from 330° true, 20 kt" is more than a direction. */
  const char *name = handle == OX_HANDLE_WIND_FROM ? _("Wind") : ox_handle_name(handle);
  char *text = g_strdup_printf("%s: %s", name, words);
  ox_steady_words_set(OX_STEADY_WORDS(self->label), text);
  g_free(text);
  gtk_widget_set_visible(self->flip, with_buttons && handle == OX_HANDLE_TURNS);
  if (with_buttons && wind) {
    set_stepper(&self->first, OX_HANDLE_WIND_FROM, _("Direction"));
    set_stepper(&self->second, OX_HANDLE_WIND_KT, _("Speed"));
    return;
  }
  gtk_widget_set_visible(self->second.box, FALSE);
  if (with_buttons && ox_handle_is_slider(handle))
    set_stepper(&self->first, handle, "");
  else
    gtk_widget_set_visible(self->first.box, FALSE);
}

void ox_readout_say(OxReadout *self, const char *words) {
  self->handle = OX_HANDLE_COUNT;
  ox_steady_words_set(OX_STEADY_WORDS(self->label), words);
  gtk_widget_set_visible(self->first.box, FALSE);
  gtk_widget_set_visible(self->second.box, FALSE);
  gtk_widget_set_visible(self->flip, FALSE);
  gtk_widget_set_visible(GTK_WIDGET(self), TRUE);
}

const char *ox_readout_text(OxReadout *self) {
  return ox_steady_words_get(OX_STEADY_WORDS(self->label));
}

static void dispose(GObject *object) {
  g_clear_pointer(&OX_READOUT(object)->box, gtk_widget_unparent);
  G_OBJECT_CLASS(ox_readout_parent_class)->dispose(object);
}

static void ox_readout_class_init(OxReadoutClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "readout");
  step_signal = g_signal_new("step", OX_TYPE_READOUT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                             G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_INT);
}

static void ox_readout_init(OxReadout *self) {
  self->handle = OX_HANDLE_COUNT;
  self->box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 3);
  gtk_widget_set_parent(self->box, GTK_WIDGET(self));
  self->label = ox_steady_words_new();
  gtk_box_append(GTK_BOX(self->box), self->label);
  build_stepper(self, &self->first);
  build_stepper(self, &self->second);
  self->flip = gtk_button_new_with_label(_("Other Side"));
  gtk_widget_set_focusable(self->flip, FALSE);
  g_signal_connect_object(self->flip, "clicked", G_CALLBACK(flip_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append(GTK_BOX(self->box), self->flip);
  gtk_widget_set_visible(GTK_WIDGET(self), FALSE);
}

GtkWidget *ox_readout_new(void) { return g_object_new(OX_TYPE_READOUT, NULL); }
