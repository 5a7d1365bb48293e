/* The transport bar. The player knows the time; this shows it and feeds it the frame clock. */
#include "ox_transport.h"

#include "app_id.h"
#include "ox_display.h"
#include "ox_keys.h"

/* More marks than this would touch each other. */
#define MARKS_MAX 40
#define NAMED_MARKS_MAX 8

struct _OxTransport {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *box;
  GtkButton *play_button;
  GtkWidget *previous_button, *next_button;
  GtkDropDown *speed;
  GtkScale *scale;
  GtkAdjustment *adjustment;
  GtkLabel *instant, *motion;

  /* owned */
  OxDocument *document;
  OxPlayer *player;

  guint tick; /* 0: not playing */
  gulong value_handler;
};

G_DEFINE_FINAL_TYPE(OxTransport, ox_transport, GTK_TYPE_WIDGET)

/* ---- showing ---------------------------------------------------------------------------- */

static void show_time(OxTransport *self) {
  char text[128];
  double t_s = ox_player_time_s(self->player);
  const ox_flight *flight = ox_document_flight(self->document);
  g_signal_handler_block(self->adjustment, self->value_handler);
  gtk_adjustment_set_value(self->adjustment, t_s);
  g_signal_handler_unblock(self->adjustment, self->value_handler);
  ox_display_instant(text, sizeof text, flight, t_s);
  gtk_label_set_text(self->instant, text);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->scale), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                 text, -1);
  ox_display_motion(text, sizeof text, ox_document_case(self->document), flight, t_s);
  gtk_label_set_text(self->motion, text);
}

/* Fix crossings below the line with their circuit, the other events as plain marks. */
static void show_marks(OxTransport *self) {
  const ox_flight *flight = ox_document_flight(self->document);
  gtk_scale_clear_marks(self->scale);
  gboolean all = flight->event_count <= MARKS_MAX;
  size_t fixes = 0, crossings = 0;
  for (size_t i = 0; i < flight->event_count; i++)
    if (flight->events[i].kind == OX_EVENT_FIX) crossings++;
  gboolean named = crossings <= NAMED_MARKS_MAX;
  for (size_t i = 0; i < flight->event_count; i++) {
    const ox_event *event = &flight->events[i];
    gboolean fix = event->kind == OX_EVENT_FIX;
    if (fix) fixes++;
    if (!fix && !all) continue;
    if (fixes > MARKS_MAX) break;
    gtk_scale_add_mark(self->scale, event->t_s, GTK_POS_BOTTOM, fix && named ? "Fix" : NULL);
  }
}

static void show_flight(OxTransport *self) {
  const ox_flight *flight = ox_document_flight(self->document);
  double begin_s = ox_flight_begin_s(flight), end_s = ox_flight_end_s(flight);
  ox_player_set_range(self->player, begin_s, end_s);
  g_signal_handler_block(self->adjustment, self->value_handler);
  gtk_adjustment_configure(self->adjustment, ox_player_time_s(self->player), begin_s, end_s, 1, 10,
                           0);
  g_signal_handler_unblock(self->adjustment, self->value_handler);
  show_marks(self);
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
  const char *label = playing ? "Pause" : "Play";
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

static void value_changed_cb(GtkAdjustment *adjustment, OxTransport *self) {
  ox_player_seek(self->player, gtk_adjustment_get_value(adjustment));
}

static void speed_chosen_cb(GtkDropDown *speed, GParamSpec *pspec, OxTransport *self) {
  size_t count;
  const guint *speeds = ox_player_speeds(&count);
  guint selected = gtk_drop_down_get_selected(speed);
  if (self->player && selected < count) ox_player_set_speed(self->player, speeds[selected]);
}

/* ---- the object ------------------------------------------------------------------------- */

static void dispose(GObject *object) {
  OxTransport *self = OX_TRANSPORT(object);
  if (self->adjustment) g_clear_signal_handler(&self->value_handler, self->adjustment);
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
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_transport.ui");
  gtk_widget_class_bind_template_child(widget_class, OxTransport, box);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, play_button);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, previous_button);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, next_button);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, speed);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, scale);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, adjustment);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, instant);
  gtk_widget_class_bind_template_child(widget_class, OxTransport, motion);
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
  self->value_handler = g_signal_connect(self->adjustment, "value-changed",
                                         G_CALLBACK(value_changed_cb), self);
  /* Before the time line pages by itself: Page Up and Page Down are for the cases everywhere. */
  ox_keys_add(GTK_WIDGET(self->scale), OX_KEYS_WINDOW, GTK_PHASE_CAPTURE);
  set_label(GTK_WIDGET(self), "Flight");
  set_label(GTK_WIDGET(self->play_button), "Play");
  set_label(self->previous_button, "Previous Event");
  set_label(self->next_button, "Next Event");
  set_label(GTK_WIDGET(self->speed), "Speed");
  set_label(GTK_WIDGET(self->scale), "Time line");
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
  ox_player_seek(player, ox_player_begin_s(player));
  show_playing(self);
  show_speed(self);
}

gboolean ox_transport_ticking(OxTransport *self) { return self->tick != 0; }

const char *ox_transport_instant(OxTransport *self) { return gtk_label_get_text(self->instant); }
