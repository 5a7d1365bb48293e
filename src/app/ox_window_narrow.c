/* A window too narrow for inputs, board and working: very large text, or a small screen. The
 * working then stands in place of the inputs, which come back when it is closed, when there is room
 * again, or when something in them is asked for. */
#include "ox_window_private.h"

#include "ox_classroom.h"

/* Both of the content, whose edges are the window's. */
static int width_needed(OxWindow *self) {
  int least;
  gtk_widget_measure(gtk_window_get_child(GTK_WINDOW(self)), GTK_ORIENTATION_HORIZONTAL, -1, &least,
                     NULL, NULL, NULL);
  return least;
}

static int width_there(OxWindow *self) {
  return gtk_widget_get_width(gtk_window_get_child(GTK_WINDOW(self)));
}

static gboolean is_in_inputs(OxWindow *self, GtkWidget *widget) {
  return widget && (widget == self->left || gtk_widget_is_ancestor(widget, self->left));
}

/* A name that is being typed is taken in as the focus leaves it, which may have it come back. */
static void move_focus(OxWindow *self) {
  GtkWidget *focus = gtk_window_get_focus(GTK_WINDOW(self));
  if (!focus || is_in_inputs(self, focus)) gtk_widget_grab_focus(GTK_WIDGET(self->board));
}

static void put_aside(OxWindow *self, gboolean aside) {
  if (aside) move_focus(self);
  ox_veil_set(self->left, OX_VEIL_NO_ROOM, aside);
  ox_veil_set(gtk_widget_get_next_sibling(self->left), OX_VEIL_NO_ROOM, aside);
  if (aside) move_focus(self);
  self->inputs_aside = aside; /* from now on the focus brings them back */
}

/* How wide all three must be is known while all three are seen. */
static void make_room(OxWindow *self) {
  gboolean working = gtk_widget_get_visible(self->working_side);
  int width = width_there(self);
  if (ox_classroom_is_on(self->classroom)) return;
  if (self->inputs_aside) {
    if (!working || width >= self->needed_for_all) put_aside(self, FALSE);
  } else if (working && width > 0) {
    self->needed_for_all = width_needed(self);
    if (width < self->needed_for_all) put_aside(self, TRUE);
  }
}

static void layout_cb(GdkSurface *surface, int width, int height, OxWindow *self) {
  if (self->inputs_aside) make_room(self);
}

static void realize_cb(OxWindow *self) {
  g_signal_connect_object(gtk_native_get_surface(GTK_NATIVE(self)), "layout",
                          G_CALLBACK(layout_cb), self, G_CONNECT_AFTER);
}

/* Whatever sent the focus there wants it seen. */
static void focus_cb(OxWindow *self) {
  if (self->inputs_aside && is_in_inputs(self, gtk_window_get_focus(GTK_WINDOW(self))))
    ox_window_bring_inputs(self);
}

void ox_window_bring_inputs(OxWindow *self) {
  if (self->inputs_aside)
    g_action_group_change_action_state(G_ACTION_GROUP(self), "working",
                                       g_variant_new_boolean(FALSE));
}

void ox_window_add_narrow(OxWindow *self) {
  g_signal_connect_object(self->working_side, "notify::visible", G_CALLBACK(make_room), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self, "realize", G_CALLBACK(realize_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(self, "notify::focus-widget", G_CALLBACK(focus_cb), self,
                          G_CONNECT_SWAPPED);
}
