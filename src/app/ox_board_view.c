/* How the board is looked at: which way is up, zoom and pan, over the ground or with the air. */
#include "ox_board_private.h"

#include <math.h>

#define ZOOM_STEP 1.25
#define PAN_SHARE 0.1   /* of the map a key press */
#define PASSAGE_S 0.3
#define US_PER_S 1e6

static gboolean same_view(const ox_view *a, const ox_view *b) {
  return a->up == b->up && a->zoom == b->zoom && a->air == b->air && a->pan_nm.x == b->pan_nm.x &&
         a->pan_nm.y == b->pan_nm.y;
}

void ox_board_set_view(OxBoard *self, ox_view view) {
  view = ox_view_limited(view);
  if (same_view(&view, &self->view)) return;
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
  ox_viewport now = ox_board_viewport(self);
  ox_board_set_view(self, ox_view_zoomed(self->view, &now, (ox_vec){x, y}, factor));
}

void ox_board_zoom(OxBoard *self, int steps) {
  if (!ox_board_current_picture(self)) return;
  ox_vec size, middle = middle_of_map(self, &size);
  ox_board_zoom_about(self, pow(ZOOM_STEP, steps), middle.x, middle.y);
}

void ox_board_zoom_fit(OxBoard *self) {
  ox_view view = self->view;
  view.zoom = 1.0;
  view.pan_nm = (ox_vec){0, 0};
  ox_board_set_view(self, view);
}

void ox_board_pan(OxBoard *self, int right, int down) {
  if (!ox_board_current_picture(self)) return;
  ox_vec size;
  middle_of_map(self, &size);
  ox_viewport now = ox_board_viewport(self);
  double px = PAN_SHARE * fmin(size.x, size.y);
  ox_vec by = {-right * px, -down * px}; /* the eye goes right, the world left */
  ox_board_set_view(self, ox_view_dragged(self->view, &now, by));
}

/* The scale and the part of the world that the fitted picture has now. */
static ox_fit fit_of_now(OxBoard *self) {
  ox_vec size, middle = middle_of_map(self, &size);
  /* As it stands without the aircraft: the air view moves what is fitted. */
  ox_viewport v = ox_picture_viewport_at(ox_board_current_picture(self), NAN);
  double zoom = self->view.zoom > 0.0 ? self->view.zoom : 1.0;
  double scale = v.dev_per_nm / zoom, s, c;
  ox_vec at = ox_vec_sub(ox_viewport_to_world(&v, middle), self->view.pan_nm);
  ox_vec half = ox_vec_scale(size, 0.5 / scale);
  ox_sincos_deg(v.up_deg, &s, &c);
  ox_vec seen = {at.x * c - at.y * s, at.x * s + at.y * c}; /* to the right and up */
  return (ox_fit){scale, ox_vec_sub(seen, half), ox_vec_add(seen, half)};
}

/* Held, it is the scale that the picture has anyway: nothing is drawn anew. */
void ox_board_hold_fit(OxBoard *self, gboolean hold) {
  if (self->fit_held == hold) return;
  if (hold) self->fit = fit_of_now(self);
  self->fit_held = hold;
  if (!hold && self->document) ox_board_forget_picture(self);
}

/* ---- the passage between ground and air ------------------------------------------------- */

/* Slow, fast, slow. */
static double eased(double share) { return share * share * (3.0 - 2.0 * share); }

static void set_air_share(OxBoard *self, double air) {
  ox_view view = self->view;
  view.air = air;
  ox_board_set_view(self, view);
}

static gboolean passage_cb(GtkWidget *widget, GdkFrameClock *clock, gpointer data) {
  OxBoard *self = OX_BOARD(widget);
  gint64 now_us = gdk_frame_clock_get_frame_time(clock);
  if (self->passage_us < 0) self->passage_us = now_us;
  double share = (double)(now_us - self->passage_us) / (PASSAGE_S * US_PER_S);
  if (share >= 1.0) {
    self->passage = 0;
    set_air_share(self, self->air_to);
    return G_SOURCE_REMOVE;
  }
  set_air_share(self, self->air_from + (self->air_to - self->air_from) * eased(share));
  return G_SOURCE_CONTINUE;
}

void ox_board_end_passage(OxBoard *self) {
  if (self->passage == 0) return;
  gtk_widget_remove_tick_callback(GTK_WIDGET(self), self->passage);
  self->passage = 0;
  set_air_share(self, self->air_to);
}

void ox_board_set_air(OxBoard *self, gboolean air) {
  gboolean animate = FALSE;
  if (self->air_to == (air ? 1.0 : 0.0)) return;
  self->air_from = self->view.air; /* from the middle of the passage the other way, if need be */
  self->air_to = air ? 1.0 : 0.0;
  g_object_get(gtk_widget_get_settings(GTK_WIDGET(self)), "gtk-enable-animations", &animate, NULL);
  if (!animate || !gtk_widget_get_mapped(GTK_WIDGET(self))) {
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
