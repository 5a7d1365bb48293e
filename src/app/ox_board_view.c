/* How the board is looked at: which way is up, zoom and pan, over the ground or with the air. */
#include "ox_board_private.h"

#include <math.h>

#include "ox_passage.h"

#define ZOOM_STEP 1.25
#define PAN_SHARE 0.1   /* of the map a key press */

static gboolean same_view(const ox_view *a, const ox_view *b) {
  return a->up == b->up && a->zoom == b->zoom && a->air == b->air && a->pan_nm.x == b->pan_nm.x &&
         a->pan_nm.y == b->pan_nm.y;
}

void ox_board_set_view(OxBoard *self, ox_view view) {
  view = ox_view_limited(view);
  if (same_view(&view, &self->view)) return;
  ox_board_end_settling(self);
  gboolean said = view.up != self->view.up || (view.air > 0.0) != (self->view.air > 0.0);
  self->view = view;
  ox_board_forget_picture(self);
  if (said) ox_board_describe(self);
  if (self->document) ox_board_show_looks(self);
}

ox_view ox_board_view(OxBoard *self) { return self->view; }

void ox_board_set_up(OxBoard *self, ox_up up) {
  ox_view view = self->view;
  view.up = up;
  ox_board_set_view(self, view);
}

/* ---- zoom and pan ----------------------------------------------------------------------- */

static ox_vec middle_of_map(OxBoard *self, ox_vec *size) {
  ox_vec origin;
  ox_picture_map(ox_board_current_picture(self), &origin, size);
  return ox_vec_add(origin, ox_vec_scale(*size, 0.5));
}

void ox_board_zoom_about(OxBoard *self, double factor, double x, double y) {
  if (!ox_board_current_picture(self) || !(factor > 0.0) || !isfinite(factor) || !isfinite(x) ||
      !isfinite(y))
    return;
  ox_board_end_settling(self);
  ox_viewport now = ox_board_viewport(self);
  ox_board_set_view(self, ox_view_zoomed(self->view, &now, (ox_vec){x, y}, factor));
}

void ox_board_zoom(OxBoard *self, int steps) {
  if (!ox_board_current_picture(self)) return;
  ox_vec size, middle = middle_of_map(self, &size);
  ox_board_zoom_about(self, pow(ZOOM_STEP, steps), middle.x, middle.y);
}

void ox_board_zoom_fit(OxBoard *self) {
  ox_board_end_settling(self);
  ox_view view = self->view;
  view.zoom = 1.0;
  view.pan_nm = (ox_vec){0, 0};
  ox_board_set_view(self, view);
}

void ox_board_pan(OxBoard *self, int right, int down) {
  if (!ox_board_current_picture(self)) return;
  ox_vec size;
  ox_board_end_settling(self);
  middle_of_map(self, &size);
  ox_viewport now = ox_board_viewport(self);
  double px = PAN_SHARE * fmin(size.x, size.y);
  ox_vec by = {-right * px, -down * px}; /* the eye goes right, the world left */
  ox_board_set_view(self, ox_view_dragged(self->view, &now, by));
}

/* ---- held and settling ------------------------------------------------------------------ */

static gboolean where_it_belongs(OxBoard *self, ox_viewport *out) {
  ox_scene scene = ox_board_scene(self);
  return ox_picture_viewport_of(&scene, gtk_widget_get_width(GTK_WIDGET(self)),
                                gtk_widget_get_height(GTK_WIDGET(self)),
                                ox_player_time_s(self->player), out);
}

void ox_board_stop_settling(OxBoard *self) {
  if (self->settling == 0) return;
  gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->settling);
  self->settling = 0;
}

void ox_board_end_settling(OxBoard *self) {
  if (self->settling == 0) return;
  ox_board_stop_settling(self);
  self->is_held = FALSE;
  ox_board_forget_picture(self);
}

static gboolean settle_cb(GtkWidget *widget, GdkFrameClock *clock, gpointer data) {
  OxBoard *self = OX_BOARD(widget);
  gint64 now_us = gdk_frame_clock_get_frame_time(clock);
  ox_viewport to;
  if (self->settle_us < 0) self->settle_us = now_us;
  double share = ox_passage_share(self->settle_us, now_us);
  if (share >= 1.0 || !where_it_belongs(self, &to)) {
    ox_board_end_settling(self);
    return G_SOURCE_REMOVE;
  }
  self->held.world = ox_passage_viewport(&self->settles_from, &to, share);
  ox_board_drop_picture(self);
  return G_SOURCE_CONTINUE;
}

/* The layout of the picture that is shown stays, or that of the next one comes. */
static void hold_layout(OxBoard *self, gboolean hold) {
  ox_layout *layout = hold ? ox_layout_of(self->picture) : NULL;
  ox_layout_free(self->held_layout);
  self->held.layout = self->held_layout = layout;
}

/* While it is still held, others with the same scale may give it another one. */
static void let_go(OxBoard *self) {
  ox_viewport to;
  ox_board_forget_picture(self);
  if (!ox_passage_may_move(GTK_WIDGET(self)) || !where_it_belongs(self, &to) ||
      ox_passage_same_viewport(&self->held.world, &to)) {
    self->is_held = FALSE;
    ox_board_forget_picture(self);
    return;
  }
  self->settles_from = self->held.world;
  self->settle_us = -1;
  self->settling = gtk_widget_add_tick_callback(GTK_WIDGET(self), settle_cb, NULL, NULL);
}

/* The shared scale is another one: it goes there, as the board that was let go does. */
void ox_board_settle_from(OxBoard *self, const ox_viewport *from) {
  self->held.world = *from;
  self->is_held = TRUE;
  let_go(self);
}

void ox_board_hold_world(OxBoard *self, gboolean hold) {
  if (!hold) {
    hold_layout(self, FALSE);
    if (self->is_held && self->settling == 0 && self->document) let_go(self);
    return;
  }
  ox_board_stop_settling(self); /* taken hold of again on the way */
  self->held.world = ox_board_viewport(self);
  hold_layout(self, TRUE);
  self->is_held = TRUE;
  /* The world of such a picture does not go on. */
  if (self->picture && ox_picture_moves(self->picture)) ox_board_drop_picture(self);
}

/* ---- the passage between ground and air ------------------------------------------------- */

static void set_air_share(OxBoard *self, double air) {
  ox_view view = self->view;
  view.air = air;
  ox_board_set_view(self, view);
}

static gboolean passage_cb(GtkWidget *widget, GdkFrameClock *clock, gpointer data) {
  OxBoard *self = OX_BOARD(widget);
  gint64 now_us = gdk_frame_clock_get_frame_time(clock);
  if (self->passage_us < 0) self->passage_us = now_us;
  double share = ox_passage_share(self->passage_us, now_us);
  if (share >= 1.0) {
    self->passage = 0;
    set_air_share(self, self->air_to);
    return G_SOURCE_REMOVE;
  }
  set_air_share(self, ox_passage_between(self->air_from, self->air_to, share));
  return G_SOURCE_CONTINUE;
}

void ox_board_end_passage(OxBoard *self) {
  if (self->passage == 0) return;
  gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->passage);
  self->passage = 0;
  set_air_share(self, self->air_to);
}

void ox_board_set_air(OxBoard *self, gboolean air) {
  if (self->air_to == (air ? 1.0 : 0.0)) return;
  self->air_from = self->view.air; /* from the middle of the passage the other way, if need be */
  self->air_to = air ? 1.0 : 0.0;
  if (!ox_passage_may_move(GTK_WIDGET(self))) {
    ox_board_end_passage(self);
    set_air_share(self, self->air_to);
    return;
  }
  self->passage_us = -1;
  if (self->passage == 0)
    self->passage = gtk_widget_add_tick_callback(GTK_WIDGET(self), passage_cb, NULL, NULL);
}

gboolean ox_board_air(OxBoard *self) { return self->air_to > 0.0; }

/* ---- wheel and pinch -------------------------------------------------------------------- */

static void pointer_of(GtkEventController *controller, OxBoard *self, double *x, double *y) {
  GdkEvent *event = gtk_event_controller_get_current_event(controller);
  GtkNative *native = gtk_widget_get_native(GTK_WIDGET(self));
  double window_x, window_y, shift_x, shift_y;
  *x = gtk_widget_get_width(GTK_WIDGET(self)) / 2.0;
  *y = gtk_widget_get_height(GTK_WIDGET(self)) / 2.0;
  if (!event || !gdk_event_get_position(event, &window_x, &window_y)) return;
  gtk_native_get_surface_transform(native, &shift_x, &shift_y);
  gtk_widget_translate_coordinates(GTK_WIDGET(native), GTK_WIDGET(self), window_x - shift_x,
                                   window_y - shift_y, x, y);
}

static gboolean scroll_cb(GtkEventControllerScroll *controller, double dx, double dy,
                          OxBoard *self) {
  double x, y;
  if (self->drag.doing != OX_BOARD_AT_REST || dy == 0.0) return FALSE;
  pointer_of(GTK_EVENT_CONTROLLER(controller), self, &x, &y);
  ox_board_zoom_about(self, pow(ZOOM_STEP, -dy), x, y);
  return TRUE;
}

static void pinch_begin_cb(GtkGesture *gesture, GdkEventSequence *sequence, OxBoard *self) {
  ox_board_cancel(self); /* the first finger had begun something else */
  ox_board_end_settling(self);
  self->pinch_view = self->view;
  if (ox_board_current_picture(self)) self->pinch_viewport = ox_board_viewport(self);
}

static void pinch_cb(GtkGestureZoom *gesture, double scale, OxBoard *self) {
  double x, y;
  if (!(self->pinch_viewport.dev_per_nm > 0.0) ||
      !gtk_gesture_get_bounding_box_center(GTK_GESTURE(gesture), &x, &y))
    return;
  ox_board_set_view(self, ox_view_zoomed(self->pinch_view, &self->pinch_viewport,
                                         (ox_vec){x, y}, scale));
}

void ox_board_add_view_gestures(OxBoard *self) {
  GtkEventController *wheel =
      gtk_event_controller_scroll_new(GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  g_signal_connect(wheel, "scroll", G_CALLBACK(scroll_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), wheel);
  GtkGesture *pinch = gtk_gesture_zoom_new();
  g_signal_connect(pinch, "begin", G_CALLBACK(pinch_begin_cb), self);
  g_signal_connect(pinch, "scale-changed", G_CALLBACK(pinch_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(pinch));
}
