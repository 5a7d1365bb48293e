/* Hands on the pen: mouse, finger, stylus and keys. All of them end in press, move and release. */
#include "ox_pen_private.h"

#define KEY_STEP_PX 12.0
#define FINE_STEP_PX 2.0

const double *ox_pen_rgb(ox_palette_id palette, ox_ink_colour colour) {
  static const double inks[OX_PALETTE_COUNT][OX_INK_COLOUR_COUNT][3] = {
      [OX_PALETTE_LIGHT] = {{0.09, 0.10, 0.11}, {0.835, 0.369, 0.0}, {0.122, 0.310, 0.639}},
      [OX_PALETTE_DARK] = {{0.95, 0.95, 0.95}, {0.941, 0.478, 0.165}, {0.498, 0.698, 1.0}},
      [OX_PALETTE_PROJECTOR] = {{0.0, 0.0, 0.0}, {0.753, 0.310, 0.0}, {0.039, 0.239, 0.569}},
      [OX_PALETTE_PRINT] = {{0.0, 0.0, 0.0}, {0.792, 0.345, 0.0}, {0.122, 0.310, 0.639}},
      [OX_PALETTE_CONTRAST] = {{0.0, 0.0, 0.0}, {0.541, 0.2, 0.0}, {0.039, 0.239, 0.569}},
      [OX_PALETTE_CONTRAST_DARK] = {{1.0, 1.0, 1.0}, {1.0, 0.659, 0.4}, {0.659, 0.8, 1.0}},
  };
  return inks[palette][colour];
}

/* ---- mouse and finger ------------------------------------------------------------------- */

/* A stylus has its own gesture, which knows its ends. */
static gboolean is_stylus(GtkGesture *gesture) {
  GdkEventSequence *sequence =
      gtk_gesture_single_get_current_sequence(GTK_GESTURE_SINGLE(gesture));
  GdkEvent *event = gtk_gesture_get_last_event(gesture, sequence);
  return event && gdk_event_get_device_tool(event) != NULL;
}

static void drag_begin_cb(GtkGestureDrag *gesture, double x, double y, OxPen *self) {
  gtk_widget_grab_focus(GTK_WIDGET(self));
  if (self->stylus_down || is_stylus(GTK_GESTURE(gesture))) {
    gtk_gesture_set_state(GTK_GESTURE(gesture), GTK_EVENT_SEQUENCE_DENIED);
    return;
  }
  self->by_keys = FALSE;
  self->eraser_end = FALSE;
  ox_pen_press(self, x, y);
  ox_pen_move(self, x, y);
}

static void drag_update_cb(GtkGestureDrag *gesture, double dx, double dy, OxPen *self) {
  double x, y;
  if (gtk_gesture_drag_get_start_point(gesture, &x, &y)) ox_pen_move(self, x + dx, y + dy);
}

static void drag_end_cb(GtkGestureDrag *gesture, double dx, double dy, OxPen *self) {
  if (!self->stylus_down) ox_pen_release(self);
}

/* ---- stylus ----------------------------------------------------------------------------- */

static void stylus_down_cb(GtkGestureStylus *gesture, double x, double y, OxPen *self) {
  GdkDeviceTool *tool = gtk_gesture_stylus_get_device_tool(gesture);
  ox_pen_cancel(self); /* the heel of the hand was there before the stylus */
  self->stylus_down = TRUE;
  self->by_keys = FALSE;
  self->eraser_end =
      tool && gdk_device_tool_get_tool_type(tool) == GDK_DEVICE_TOOL_TYPE_ERASER;
  gtk_widget_grab_focus(GTK_WIDGET(self));
  ox_pen_press(self, x, y);
  ox_pen_move(self, x, y);
}

static void stylus_motion_cb(GtkGestureStylus *gesture, double x, double y, OxPen *self) {
  ox_pen_move(self, x, y);
}

static void stylus_up_cb(GtkGestureStylus *gesture, double x, double y, OxPen *self) {
  ox_pen_move(self, x, y);
  ox_pen_release(self);
  self->stylus_down = FALSE;
  self->eraser_end = FALSE;
}

static void cancel_cb(GtkGesture *gesture, GdkEventSequence *sequence, OxPen *self) {
  ox_pen_cancel(self);
}

static void stylus_cancel_cb(GtkGesture *gesture, GdkEventSequence *sequence, OxPen *self) {
  self->stylus_down = FALSE;
  ox_pen_cancel(self);
}

/* ---- pointing --------------------------------------------------------------------------- */

static void motion_cb(GtkEventControllerMotion *motion, double x, double y, OxPen *self) {
  if (ox_pen_is_down(self)) return; /* the gestures tell */
  if (self->by_keys && self->inside && self->at.x == x && self->at.y == y) return;
  self->by_keys = FALSE;
  ox_pen_move(self, x, y);
}

static void leave_cb(GtkEventControllerMotion *motion, OxPen *self) {
  if (self->by_keys) return;
  self->inside = FALSE;
  gtk_widget_queue_draw(GTK_WIDGET(self));
}

/* ---- keys ------------------------------------------------------------------------------- */

static void step(OxPen *self, double dx, double dy) {
  double width = gtk_widget_get_width(GTK_WIDGET(self));
  double height = gtk_widget_get_height(GTK_WIDGET(self));
  ox_vec from = self->inside ? self->at : (ox_vec){width / 2, height / 2};
  self->by_keys = TRUE;
  ox_pen_move(self, CLAMP(from.x + dx, 0, width), CLAMP(from.y + dy, 0, height));
}

static void put_down_or_lift(OxPen *self) {
  if (ox_pen_is_down(self)) {
    ox_pen_release(self);
    return;
  }
  step(self, 0, 0);
  self->eraser_end = FALSE;
  ox_pen_press(self, self->at.x, self->at.y);
}

static void take_back_or_leave(OxPen *self) {
  if (!ox_pen_cancel(self)) gtk_widget_activate_action(GTK_WIDGET(self), "win.pen", NULL);
}

static gboolean key_cb(GtkEventControllerKey *controller, guint key, guint code,
                       GdkModifierType modifiers, OxPen *self) {
  if (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) return FALSE;
  double px = modifiers & GDK_SHIFT_MASK ? FINE_STEP_PX : KEY_STEP_PX;
  switch (key) {
  case GDK_KEY_Left: step(self, -px, 0); return TRUE;
  case GDK_KEY_Right: step(self, px, 0); return TRUE;
  case GDK_KEY_Up: step(self, 0, -px); return TRUE;
  case GDK_KEY_Down: step(self, 0, px); return TRUE;
  case GDK_KEY_space: put_down_or_lift(self); return TRUE;
  case GDK_KEY_Escape: take_back_or_leave(self); return TRUE;
  default: return FALSE;
  }
}

/* ---- together --------------------------------------------------------------------------- */

static void add_drag(OxPen *self) {
  GtkGesture *drag = gtk_gesture_drag_new();
  gtk_gesture_single_set_button(GTK_GESTURE_SINGLE(drag), GDK_BUTTON_PRIMARY);
  gtk_gesture_single_set_exclusive(GTK_GESTURE_SINGLE(drag), TRUE); /* the first finger only */
  g_signal_connect(drag, "drag-begin", G_CALLBACK(drag_begin_cb), self);
  g_signal_connect(drag, "drag-update", G_CALLBACK(drag_update_cb), self);
  g_signal_connect(drag, "drag-end", G_CALLBACK(drag_end_cb), self);
  g_signal_connect(drag, "cancel", G_CALLBACK(cancel_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(drag));
}

static void add_stylus(OxPen *self) {
  GtkGesture *stylus = gtk_gesture_stylus_new();
  g_signal_connect(stylus, "down", G_CALLBACK(stylus_down_cb), self);
  g_signal_connect(stylus, "motion", G_CALLBACK(stylus_motion_cb), self);
  g_signal_connect(stylus, "up", G_CALLBACK(stylus_up_cb), self);
  g_signal_connect(stylus, "cancel", G_CALLBACK(stylus_cancel_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(stylus));
}

void ox_pen_add_hands(OxPen *self) {
  add_stylus(self);
  add_drag(self);
  GtkEventController *motion = gtk_event_controller_motion_new();
  g_signal_connect(motion, "motion", G_CALLBACK(motion_cb), self);
  g_signal_connect(motion, "leave", G_CALLBACK(leave_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), motion);
  GtkEventController *keys = gtk_event_controller_key_new();
  g_signal_connect(keys, "key-pressed", G_CALLBACK(key_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self), keys);
}
