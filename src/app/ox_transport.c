/* The transport bar. The player knows the time; this shows it and feeds it the frame clock. */
#include "ox_transport.h"

#include "app_id.h"
#include "ox_instant_label.h"
#include "ox_stops.h"
#include "oxbow/text.h"

struct _OxTransport {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box;
  GtkButton *play_button;
  GtkWidget *previous_button, *next_button, *stop_button;
  GtkDropDown *speed;
  OxTimeLine *time_line;
  OxFigureRow *figures;
  OxInstantLabel *instant;

  /* owned */
  OxDocument *document;
  OxPlayer *player;

  guint tick; /* 0: not playing */
  unsigned stops; /* kinds of event, bits 1 << ox_event_kind */
};

G_DEFINE_FINAL_TYPE(OxTransport, ox_transport, GTK_TYPE_WIDGET)

/* ---- showing ---------------------------------------------------------------------------- */

static void show_time(OxTransport *self) {
  ox_instant_label_show(self->instant, ox_document_whole_flight(self->document),
                        ox_player_time_s(self->player));
}

static void show_stops(OxTransport *self) {
  double *t_s = g_new(double, OX_EVENTS_MAX);
  size_t count = ox_stops_make(ox_document_flight(self->document), self->stops, t_s);
  ox_player_set_stops(self->player, t_s, count);
  g_free(t_s);
}

static void show_flight(OxTransport *self) {
  const ox_flight *flight = ox_document_whole_flight(self->document);
  ox_player_set_range(self->player, ox_flight_begin_s(flight), ox_flight_end_s(flight));
  show_stops(self);
  show_time(self);
}

static void document_changed_cb(OxDocument *document, guint what, OxTransport *self) {
  show_flight(self);
  /* Another case begins at its beginning; an edit keeps the instant that is looked at. */
  if (what & OX_DOCUMENT_SELECTION)
    ox_player_seek(self->player, ox_player_begin_s(self->player));
}

static void moved_cb(OxTransport *self) { show_time(self); }

static gboolean tick_cb(GtkWidget *widget, GdkFrameClock *clock, gpointer data) {
  OxTransport *self = OX_TRANSPORT(widget);
  ox_player_tick(self->player, gdk_frame_clock_get_frame_time(clock));
  return G_SOURCE_CONTINUE; /* "notify::playing" removes it */
}

static void show_playing(OxTransport *self) {
  gboolean playing = ox_player_playing(self->player);
  const char *label = playing ? _("Pause") : _("Play");
  gtk_button_set_icon_name(self->play_button, playing ? "media-playback-pause-symbolic"
                                                      : "media-playback-start-symbolic");
  gtk_widget_set_tooltip_text(GTK_WIDGET(self->play_button), label);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->play_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 label, -1);
  if (playing && self->tick == 0)
    self->tick = gtk_widget_add_tick_callback(GTK_WIDGET(self), tick_cb, NULL, NULL);
  if (!playing && self->tick != 0) {
    gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->tick);
    self->tick = 0;
  }
}

static void show_speed(OxTransport *self) {
  size_t count;
  const guint *speeds = ox_player_speeds(&count);
  for (guint i = 0; i < count; i++)
    if (speeds[i] == ox_player_speed(self->player)) gtk_drop_down_set_selected(self->speed, i);
}

/* ---- hands ------------------------------------------------------------------------------ */

static void speed_chosen_cb(GtkDropDown *speed, GParamSpec *pspec, OxTransport *self) {
  size_t count;
  const guint *speeds = ox_player_speeds(&count);
  guint selected = gtk_drop_down_get_selected(speed);
  if (self->player && selected < count) ox_player_set_speed(self->player, speeds[selected]);
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxTransport *self = OX_TRANSPORT(object);
  if (self->tick != 0) gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->tick);
  self->tick = 0;
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  G_OBJECT_CLASS(ox_transport_parent_class)->dispose(object);
}

static void ox_transport_class_init(OxTransportClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  g_type_ensure(OX_TYPE_TIME_LINE);
  g_type_ensure(OX_TYPE_FIGURE_ROW);
  g_type_ensure(OX_TYPE_INSTANT_LABEL);
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_transport.ui");
  gtk_widget_class_bind_template_child(widget_class, OxTransport, box);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, play_button);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, previous_button);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, next_button);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, speed);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, time_line);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, figures);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, stop_button);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, instant);
  gtk_widget_class_bind_template_callback(widget_class, speed_chosen_cb);
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "transport");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_TOOLBAR);
}

static void set_label(GtkWidget *widget, const char *label) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void ox_transport_init(OxTransport *self) {
  gtk_widget_init_template(GTK_WIDGET(self));
  set_label(GTK_WIDGET(self), _("Flight"));
  set_label(GTK_WIDGET(self->play_button), _("Play"));
  set_label(self->previous_button, _("Previous Event"));
  set_label(self->next_button, _("Next Event"));
  set_label(GTK_WIDGET(self->speed), _("Speed"));
  set_label(self->stop_button, _("Stop at Events"));
}

void ox_transport_set_model(OxTransport *self, OxDocument *document, OxPlayer *player) {
  g_return_if_fail(OX_IS_TRANSPORT(self) && !self->document);
  self->document = g_object_ref(document);
  self->player = g_object_ref(player);
  g_signal_connect_object(document, "changed", G_CALLBACK(document_changed_cb), self, 0);
  g_signal_connect_object(player, "moved", G_CALLBACK(moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(player, "notify::playing", G_CALLBACK(show_playing), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(player, "notify::speed", G_CALLBACK(show_speed), self,
                          G_CONNECT_SWAPPED);
  show_flight(self);
  ox_time_line_set_model(self->time_line, document, player); /* after the player has its range */
  ox_figure_row_set_model(self->figures, document, player);
  ox_player_seek(player, ox_player_begin_s(player));
  show_playing(self);
  show_speed(self);
}

gboolean ox_transport_ticking(OxTransport *self) { return self->tick != 0; }

const char *ox_transport_instant(OxTransport *self) {
  return ox_instant_label_words(self->instant);
}

void ox_transport_set_stops(OxTransport *self, unsigned kinds) {
  self->stops = kinds;
  show_stops(self);
}

unsigned ox_transport_stops(OxTransport *self) { return self->stops; }

OxTimeLine *ox_transport_time_line(OxTransport *self) { return self->time_line; }

OxFigureRow *ox_transport_figures(OxTransport *self) { return self->figures; }
