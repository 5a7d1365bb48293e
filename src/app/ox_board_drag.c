/* Taking hold of the board: dragging handles, and the empty board itself.
 *
 * The gestures only pass on where the pointer is; what happens is in functions that tests call as
 * well. One press and release is one step of the document, however it was moved meanwhile. */
#include "ox_board_private.h"

#include <math.h>

#define SLOP 3.0 /* px: less is a press, not a drag */

/* ---- handles ---------------------------------------------------------------------------- */

static void begin_drag(OxBoard *self, ox_handle handle, ox_vec at) {
  ox_board_drag *d = &self->drag;
  ox_vec lies = at;
  ox_board_hold_world(self, TRUE);
  ox_board_handle_at(self, handle, &lies);
  if (!d->flight) d->flight = g_new0(ox_flight, 1);
  if (!d->scratch) d->scratch = g_new0(ox_flight, 1);
  d->doing = OX_BOARD_DRAGS;
  d->handle = handle;
  d->base = *ox_document_case(self->document);
  *d->flight = *ox_document_flight(self->document);
  d->reach = ox_board_reach(self);
  d->viewport = ox_board_viewport(self);
  d->pressed = d->pointer = at;
  d->offset = ox_vec_sub(lies, at);
  d->moved = FALSE;
  ox_document_begin_step(self->document, ox_handle_name(handle));
  d->in_step = TRUE;
}

static void begin_pan(OxBoard *self, ox_vec at) {
  ox_board_drag *d = &self->drag;
  ox_board_end_settling(self);
  d->doing = OX_BOARD_PANS;
  d->viewport = ox_board_viewport(self);
  d->view = self->view;
  d->pressed = d->pointer = at;
  d->moved = FALSE;
}

/* What follows the end of every drag, however it came about. */
static void come_to_rest(OxBoard *self) {
  self->drag.doing = OX_BOARD_AT_REST;
  self->drag.in_step = FALSE;
  ox_board_hold_world(self, FALSE);
  ox_board_show_looks(self);
}

void ox_board_finish_drag(OxBoard *self) {
  if (self->drag.doing == OX_BOARD_AT_REST) return;
  gboolean in_step = self->drag.in_step;
  come_to_rest(self);
  if (in_step) ox_document_end_step(self->document);
}

void ox_board_cancel(OxBoard *self) {
  if (self->drag.doing == OX_BOARD_AT_REST) return;
  gboolean in_step = self->drag.in_step, panned = self->drag.doing == OX_BOARD_PANS;
  come_to_rest(self);
  if (panned) ox_board_set_view(self, self->drag.view);
  if (in_step) ox_document_cancel_step(self->document);
}

void ox_board_renew_drag(OxBoard *self) {
  ox_board_drag *d = &self->drag;
  ox_vec lies = d->pointer;
  if (d->doing == OX_BOARD_AT_REST) return;
  if (d->doing == OX_BOARD_PANS) {
    begin_pan(self, d->pointer);
    return;
  }
  if (d->doing == OX_BOARD_MOVES_POINT) { /* what was moved so far stays */
    ox_board_finish_drag(self);
    return;
  }
  ox_board_hold_world(self, TRUE);
  ox_board_handle_at(self, d->handle, &lies);
  d->reach = ox_board_reach(self);
  d->viewport = ox_board_viewport(self);
  d->offset = ox_vec_sub(lies, d->pointer);
}

static void drag_handle(OxBoard *self, gboolean fine) {
  ox_board_drag *d = &self->drag;
  ox_case made;
  ox_vec place = ox_viewport_to_world(&d->viewport, ox_vec_add(d->pointer, d->offset));
  ox_drag_grid grid = fine ? OX_DRAG_FINE : OX_DRAG_COARSE;
  if (ox_handle_drag(d->handle, &d->base, d->flight, &d->reach, place, grid, d->scratch, &made) ==
      OX_ERROR)
    return;
  d->editing = TRUE;
  ox_document_edit(self->document, &made, NULL);
  d->editing = FALSE;
  ox_board_queue_placing(self); /* the readout follows the pointer */
}

/* ---- press, drag, release --------------------------------------------------------------- */

gboolean ox_board_press(OxBoard *self, double x, double y) {
  if (!self->document || self->drag.doing != OX_BOARD_AT_REST || !isfinite(x) || !isfinite(y) ||
      !ox_board_current_picture(self))
    return FALSE;
  ox_handle hit = ox_board_hit(self, x, y);
  const char *point = hit == OX_HANDLE_COUNT ? ox_board_hit_point(self, x, y) : NULL;
  ox_board_end_passage(self);
  if (point) {
    gtk_widget_grab_focus(ox_board_point_grip(self, point));
    ox_board_begin_point(self, point, (ox_vec){x, y});
    ox_board_show_looks(self);
    return TRUE;
  }
  /* The grip takes the focus, and with it the keys go on where the pointer left off. */
  gtk_widget_grab_focus(hit == OX_HANDLE_COUNT ? GTK_WIDGET(self) : self->grips[hit]);
  if (hit == OX_HANDLE_COUNT)
    begin_pan(self, (ox_vec){x, y});
  else
    begin_drag(self, hit, (ox_vec){x, y});
  ox_board_show_looks(self);
  return hit != OX_HANDLE_COUNT;
}

void ox_board_drag_to(OxBoard *self, double x, double y, gboolean fine) {
  ox_board_drag *d = &self->drag;
  if (d->doing == OX_BOARD_AT_REST || !isfinite(x) || !isfinite(y)) return;
  d->pointer = (ox_vec){x, y};
  ox_vec by = ox_vec_sub(d->pointer, d->pressed);
  if (!d->moved && ox_vec_length(by) < SLOP) return;
  d->moved = TRUE;
  if (d->doing == OX_BOARD_DRAGS)
    drag_handle(self, fine);
  else if (d->doing == OX_BOARD_MOVES_POINT)
    ox_board_drag_point(self, fine);
  else
    ox_board_set_view(self, ox_view_dragged(d->view, &d->viewport, by));
}

void ox_board_release(OxBoard *self) { ox_board_finish_drag(self); }

gboolean ox_board_is_dragging(OxBoard *self) { return self->drag.doing != OX_BOARD_AT_REST; }

/* ---- gestures --------------------------------------------------------------------------- */

static gboolean is_over_readout(OxBoard *self, double x, double y) {
  GtkWidget *there = gtk_widget_pick(GTK_WIDGET(self), x, y, GTK_PICK_DEFAULT);
  return there && (there == self->readout || gtk_widget_is_ancestor(there, self->readout));
}

static void drag_begin_cb(GtkGestureDrag *gesture, double x, double y, OxBoard *self) {
  guint button = gtk_gesture_single_get_current_button(GTK_GESTURE_SINGLE(gesture));
  gboolean ours = button == GDK_BUTTON_PRIMARY || button == GDK_BUTTON_MIDDLE || button == 0;
  if (!ours || is_over_readout(self, x, y)) {
    gtk_gesture_set_state(GTK_GESTURE(gesture), GTK_EVENT_SEQUENCE_DENIED);
    return;
  }
  self->pointer_inside = TRUE;
  if (button == GDK_BUTTON_MIDDLE && self->document &&
      self->drag.doing == OX_BOARD_AT_REST && ox_board_current_picture(self))
    begin_pan(self, (ox_vec){x, y});
  else
    ox_board_press(self, x, y);
  gtk_widget_set_cursor_from_name(GTK_WIDGET(self), "grabbing");
}

static void drag_update_cb(GtkGestureDrag *gesture, double x, double y, OxBoard *self) {
  double from_x, from_y;
  GdkModifierType held =
      gtk_event_controller_get_current_event_state(GTK_EVENT_CONTROLLER(gesture));
  if (!gtk_gesture_drag_get_start_point(gesture, &from_x, &from_y)) return;
  ox_board_drag_to(self, from_x + x, from_y + y,
                   (held & (GDK_SHIFT_MASK | GDK_CONTROL_MASK)) != 0);
}

static void drag_end_cb(GtkGestureDrag *gesture, double x, double y, OxBoard *self) {
  gtk_widget_set_cursor(GTK_WIDGET(self), NULL);
  ox_board_release(self);
}

/* The grab was taken away. GTK tells of the end as well, before or after: whichever comes first
 * must be this. */
static void drag_cancel_cb(GtkGesture *gesture, GdkEventSequence *sequence, OxBoard *self) {
  gtk_widget_set_cursor(GTK_WIDGET(self), NULL);
  ox_board_cancel(self);
}

static void hover(OxBoard *self, ox_handle handle, gboolean inside, gboolean other_point) {
  if (self->hovered == handle && self->pointer_inside == inside && !other_point) return;
  gboolean anything = handle != OX_HANDLE_COUNT || self->points.hovered[0];
  self->hovered = handle;
  self->pointer_inside = inside;
  if (self->drag.doing == OX_BOARD_AT_REST)
    gtk_widget_set_cursor_from_name(GTK_WIDGET(self), anything ? "grab" : NULL);
  ox_board_show_looks(self);
}

void ox_board_point_at(OxBoard *self, double x, double y) {
  gboolean there = self->document && ox_board_current_picture(self) && isfinite(x) && isfinite(y);
  gboolean other = there && ox_board_hover_point(self, x, y);
  hover(self, there ? ox_board_hit(self, x, y) : OX_HANDLE_COUNT, TRUE, other);
}

static void motion_cb(GtkEventControllerMotion *motion, double x, double y, OxBoard *self) {
  if (self->drag.doing != OX_BOARD_AT_REST) return;
  if (is_over_readout(self, x, y))
    hover(self, OX_HANDLE_COUNT, TRUE, FALSE);
  else
    ox_board_point_at(self, x, y);
}

static void leave_cb(GtkEventControllerMotion *motion, OxBoard *self) {
  gboolean other = ox_board_hover_point(self, -HUGE_VAL, -HUGE_VAL);
  hover(self, OX_HANDLE_COUNT, FALSE, other);
}

/* Before anybody else: Escape during a drag is nothing but its end. */
static gboolean escape_cb(GtkEventControllerKey *controller, guint key, guint code,
                          GdkModifierType modifiers, OxBoard *self) {
  if (key != GDK_KEY_Escape || self->drag.doing == OX_BOARD_AT_REST) return FALSE;
  ox_board_cancel(self);
  return TRUE;
}

void ox_board_add_gestures(OxBoard *self) {
  GtkWidget *widget = GTK_WIDGET(self);
  GtkGesture *drag = gtk_gesture_drag_new();
  gtk_gesture_single_set_button(GTK_GESTURE_SINGLE(drag), 0);
  g_signal_connect(drag, "drag-begin", G_CALLBACK(drag_begin_cb), self);
  g_signal_connect(drag, "drag-update", G_CALLBACK(drag_update_cb), self);
  g_signal_connect(drag, "cancel", G_CALLBACK(drag_cancel_cb), self);
  g_signal_connect(drag, "drag-end", G_CALLBACK(drag_end_cb), self);
  gtk_widget_add_controller(widget, GTK_EVENT_CONTROLLER(drag));
  GtkEventController *motion = gtk_event_controller_motion_new();
  g_signal_connect(motion, "enter", G_CALLBACK(motion_cb), self);
  g_signal_connect(motion, "motion", G_CALLBACK(motion_cb), self);
  g_signal_connect(motion, "leave", G_CALLBACK(leave_cb), self);
  gtk_widget_add_controller(widget, motion);
  GtkEventController *keys = gtk_event_controller_key_new();
  gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
  g_signal_connect(keys, "key-pressed", G_CALLBACK(escape_cb), self);
  gtk_widget_add_controller(widget, keys);
}
