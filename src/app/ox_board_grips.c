/* The board's grips: where they lie, how they look, and what the keyboard and assistive technology
 * do with them. */
#include "ox_board_private.h"

#include <math.h>

#include "ox_readout_place.h"

/* Lengths in px at normal text size. */
#define RIM_SHARE 0.205   /* of the map's smaller side: just outside the rose */
#define RIM_LEAST 56.0
#define RIMS_APART 36.0   /* arrival and course never lie on each other */
#define WIND_RIM 18.0
#define WIND_PER_KT 0.7
#define WIND_TIP 22.0    /* of the arrow, from its middle */
#define EDGE 14.0
#define READOUT_AWAY 20.0

static gboolean is_wind(ox_handle handle) {
  return handle == OX_HANDLE_WIND_FROM || handle == OX_HANDLE_WIND_KT;
}

/* ---- places ----------------------------------------------------------------------------- */

static ox_handle_reach reach_on(OxBoard *self, const ox_picture *picture,
                                const ox_viewport *viewport) {
  ox_vec origin, size, arrow;
  double nm = 1.0 / viewport->dev_per_nm, scale = self->hand_scale, tip = 0.0;
  ox_picture_map(picture, &origin, &size);
  if (!ox_picture_wind_arrow(picture, &arrow, &tip))
    arrow = (ox_vec){gtk_widget_get_width(GTK_WIDGET(self)) - 3 * EDGE * scale, 3 * EDGE * scale};
  /* In large type the arrow is large, and its grip lies upwind of the tip all the same. */
  double wind = fmax(scale, tip / WIND_TIP);
  double rim = fmax(RIM_SHARE * fmin(size.x, size.y), RIM_LEAST);
  return (ox_handle_reach){.arrival_nm = rim * nm,
                           .inbound_nm = (rim + RIMS_APART * scale) * nm,
                           .wind_at_nm = ox_viewport_to_world(viewport, arrow),
                           .wind_nm = WIND_RIM * wind * nm,
                           .wind_nm_per_kt = WIND_PER_KT * wind * nm};
}

ox_handle_reach ox_board_reach(OxBoard *self) {
  ox_picture *picture = ox_board_current_picture(self);
  ox_viewport viewport = ox_board_viewport(self);
  return reach_on(self, picture, &viewport);
}

/* In the air view tracks lie elsewhere than over the ground; what belongs to the fix and to the
 * wind does not. */
static gboolean belongs_to_the_ground(ox_handle handle) {
  return handle == OX_HANDLE_ARRIVAL || handle == OX_HANDLE_OUTBOUND;
}

/* Whether a handle is on the picture at all, as it is looked at now. */
static gboolean is_shown(OxBoard *self, ox_handle handle) {
  /* Where the outbound leg ends is part of the answer. */
  if (handle == OX_HANDLE_OUTBOUND && ox_prediction_hides(self->prediction)) return FALSE;
  return !(self->view.air > 0.0 && belongs_to_the_ground(handle));
}

size_t ox_board_keep_clear(void *board, const ox_picture *picture, ox_vec *points, size_t most) {
  static const ox_handle handles[] = {OX_HANDLE_INBOUND, OX_HANDLE_ARRIVAL, OX_HANDLE_OUTBOUND,
                                      OX_HANDLE_TURNS};
  OxBoard *self = board;
  ox_viewport viewport = ox_picture_viewport(picture);
  ox_handle_reach reach = reach_on(self, picture, &viewport);
  size_t count = 0;
  for (size_t i = 0; i < G_N_ELEMENTS(handles) && count < most; i++) {
    if (!is_shown(self, handles[i])) continue;
    ox_vec place = ox_handle_place(handles[i], ox_document_case(self->document),
                                   ox_document_flight(self->document), &reach);
    points[count++] = ox_viewport_to_dev(&viewport, place);
  }
  return count;
}

gboolean ox_board_handle_at(OxBoard *self, ox_handle handle, ox_vec *place_dev) {
  ox_picture *picture = ox_board_current_picture(self);
  if (!picture) return FALSE;
  ox_handle_reach reach = ox_board_reach(self);
  ox_viewport viewport = ox_board_viewport(self);
  ox_vec origin, size;
  ox_vec place = ox_handle_place(handle, ox_document_case(self->document),
                                 ox_document_flight(self->document), &reach);
  *place_dev = ox_viewport_to_dev(&viewport, place);
  if (is_wind(handle)) return TRUE;
  if (!is_shown(self, handle)) return FALSE;
  ox_picture_map(picture, &origin, &size);
  return place_dev->x >= origin.x && place_dev->x <= origin.x + size.x &&
         place_dev->y >= origin.y && place_dev->y <= origin.y + size.y;
}

static ox_vec kept_within(ox_vec place, int width, int height, double edge) {
  return (ox_vec){CLAMP(place.x, edge, fmax(edge, width - edge)),
                  CLAMP(place.y, edge, fmax(edge, height - edge))};
}

/* Where the grip is shown: a strong wind's stays on the board, and off the lines of words at its
 * top. */
ox_vec ox_board_shown_at(OxBoard *self, ox_handle handle, gboolean *seen) {
  ox_vec place = {0, 0};
  *seen = ox_board_handle_at(self, handle, &place);
  if (!is_wind(handle)) return place;
  if (ox_board_current_picture(self)) {
    ox_vec origin, size;
    ox_picture_map(ox_board_current_picture(self), &origin, &size);
    place.y = fmax(place.y, origin.y + OX_GRIP_RADIUS * self->hand_scale);
  }
  return kept_within(place, gtk_widget_get_width(GTK_WIDGET(self)),
                     gtk_widget_get_height(GTK_WIDGET(self)), EDGE * self->hand_scale);
}

ox_handle ox_board_hit(OxBoard *self, double x, double y) {
  double nearest = OX_GRIP_TARGET / 2.0 * self->hand_scale;
  ox_handle hit = OX_HANDLE_COUNT;
  for (ox_handle h = OX_HANDLE_INBOUND; h < OX_HANDLE_COUNT; h++) {
    gboolean seen;
    if (h == OX_HANDLE_WIND_KT) continue; /* one grip for both */
    ox_vec at = ox_board_shown_at(self, h, &seen);
    double away = hypot(at.x - x, at.y - y);
    if (!seen || away > nearest) continue;
    nearest = away;
    hit = h;
  }
  return hit;
}

static void allocate_at(GtkWidget *child, double x, double y, int width, int height) {
  graphene_point_t at = GRAPHENE_POINT_INIT((float)floor(x), (float)floor(y));
  gtk_widget_allocate(child, width, height, -1, gsk_transform_translate(NULL, &at));
}

/* At rest it stays in the corner that it came in: its buttons are pressed again and again, and the
 * labels move as they are. */
static void put_readout(OxBoard *self, ox_vec anchor, ox_vec size, ox_vec room) {
  bool kept = self->drag.doing == OX_BOARD_AT_REST && self->readout_corner != OX_READOUT_ANYWHERE;
  ox_vec at = ox_readout_place(anchor, READOUT_AWAY * self->hand_scale, size, room,
                               kept ? NULL : self->picture, &self->readout_corner);
  allocate_at(self->readout, at.x, at.y, (int)size.x, (int)size.y);
}

static void place_readout(OxBoard *self, int width, int height) {
  if (!gtk_widget_get_visible(self->readout)) {
    self->readout_corner = OX_READOUT_ANYWHERE;
    return;
  }
  GtkRequisition wanted;
  gboolean seen;
  ox_vec anchor = {0, 0};
  if (self->drag.doing == OX_BOARD_DRAGS)
    anchor = self->drag.pointer;
  else if (!ox_board_point_anchor(self, &anchor))
    anchor = ox_board_shown_at(
        self, self->selected != OX_HANDLE_COUNT ? self->selected : self->hovered, &seen);
  gtk_widget_get_preferred_size(self->readout, NULL, &wanted);
  int w = MAX(MIN(wanted.width, width - 2 * (int)OX_READOUT_EDGE), 1);
  int h = MAX(MIN(wanted.height, height - 2 * (int)OX_READOUT_EDGE), 1);
  put_readout(self, anchor, (ox_vec){w, h}, (ox_vec){width, height});
}

void ox_board_place_grips(OxBoard *self, int width, int height) {
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    GtkRequisition wanted;
    gboolean seen = FALSE;
    ox_vec at = self->document ? ox_board_shown_at(self, h, &seen) : (ox_vec){0, 0};
    ox_grip_set_seen(self->grips[h], seen);
    /* Far outside it still has the focus; coordinates of a long zoom would not. */
    at = kept_within(at, width, height, -2.0 * OX_GRIP_TARGET);
    gtk_widget_get_preferred_size(self->grips[h], NULL, &wanted);
    allocate_at(self->grips[h], at.x - wanted.width / 2.0, at.y - wanted.height / 2.0,
                wanted.width, wanted.height);
  }
  ox_board_place_points(self, width, height);
  place_readout(self, width, height);
}

static gboolean place_cb(GtkWidget *widget, GdkFrameClock *clock, gpointer data) {
  OxBoard *self = OX_BOARD(widget);
  int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
  self->placing = 0;
  if (width > 0 && height > 0) ox_board_place_grips(self, width, height);
  return G_SOURCE_REMOVE;
}

void ox_board_queue_placing(OxBoard *self) {
  if (self->placing == 0)
    self->placing = gtk_widget_add_tick_callback(GTK_WIDGET(self), place_cb, NULL, NULL);
}

/* ---- looks ------------------------------------------------------------------------------ */

static ox_grip_look look_of(OxBoard *self, ox_handle handle) {
  gboolean wind = is_wind(handle);
  if (handle == OX_HANDLE_WIND_KT && self->selected != handle) return OX_GRIP_HIDDEN;
  if (self->drag.doing == OX_BOARD_DRAGS)
    return handle == self->drag.handle ? OX_GRIP_HELD : OX_GRIP_HIDDEN;
  if (handle == self->selected || handle == self->hovered) return OX_GRIP_HOVERED;
  if (wind && is_wind(self->selected)) return OX_GRIP_HIDDEN;
  return self->pointer_inside ? OX_GRIP_RESTING : OX_GRIP_HIDDEN;
}

static ox_handle told_of(OxBoard *self) {
  if (self->drag.doing == OX_BOARD_DRAGS) return self->drag.handle;
  if (self->drag.doing != OX_BOARD_AT_REST) return OX_HANDLE_COUNT;
  return self->selected != OX_HANDLE_COUNT ? self->selected : self->hovered;
}

void ox_board_show_looks(OxBoard *self) {
  if (!self->document) return;
  char words[80] = "";
  ox_handle told = told_of(self);
  gboolean buttons = self->drag.doing == OX_BOARD_AT_REST && told == self->selected;
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++)
    ox_grip_set_look(self->grips[h], look_of(self, h), self->palette, self->hand_scale);
  if (told != OX_HANDLE_COUNT)
    ox_handle_words(words, sizeof words, told, ox_document_case(self->document),
                    ox_document_flight(self->document));
  if (told != self->readout_told) self->readout_corner = OX_READOUT_ANYWHERE;
  self->readout_told = told;
  ox_readout_show(OX_READOUT(self->readout), told, words, buttons);
  if (told == OX_HANDLE_COUNT) ox_board_show_points_looks(self);
  ox_board_queue_placing(self);
}

void ox_board_show_values(OxBoard *self) {
  const ox_case *c = ox_document_case(self->document);
  const ox_flight *flight = ox_document_flight(self->document);
  self->showing = TRUE;
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    char words[80];
    ox_handle_range range = ox_handle_range_of(h, c, flight);
    ox_handle_words(words, sizeof words, h, c, flight);
    ox_grip_show(self->grips[h], &range, words);
  }
  self->showing = FALSE;
  ox_board_renew_points(self);
  ox_board_show_looks(self);
}

/* ---- keys ------------------------------------------------------------------------------- */

static ox_handle handle_of(OxBoard *self, GtkWidget *grip) {
  ox_handle h = 0;
  while (h < OX_HANDLE_COUNT && self->grips[h] != grip) h++;
  return h;
}

static void edit(OxBoard *self, ox_status made, const ox_case *c) {
  if (made != OX_ERROR) ox_document_edit_more(self->document, c, NULL);
}

static void step(OxBoard *self, ox_handle handle, int steps) {
  ox_case c;
  edit(self,
       ox_handle_step(handle, ox_document_case(self->document),
                      ox_document_flight(self->document), steps, &c),
       &c);
}

static void set(OxBoard *self, ox_handle handle, double value) {
  ox_case c;
  edit(self,
       ox_handle_set(handle, ox_document_case(self->document), ox_document_flight(self->document),
                     value, &c),
       &c);
}

static gboolean restore(OxBoard *self) {
  if (ox_case_equal(&self->focus_case, ox_document_case(self->document))) return FALSE;
  ox_document_seal_step(self->document);
  ox_document_edit(self->document, &self->focus_case, NULL);
  return TRUE;
}

static gboolean is_enter(guint key) {
  return key == GDK_KEY_Return || key == GDK_KEY_KP_Enter || key == GDK_KEY_ISO_Enter;
}

static int steps_of(guint key, gboolean ten) {
  switch (key) {
  case GDK_KEY_Left: case GDK_KEY_KP_Left: case GDK_KEY_Down: case GDK_KEY_KP_Down:
    return ten ? -10 : -1;
  case GDK_KEY_Right: case GDK_KEY_KP_Right: case GDK_KEY_Up: case GDK_KEY_KP_Up:
    return ten ? 10 : 1;
  case GDK_KEY_Page_Down: case GDK_KEY_KP_Page_Down:
    return -10;
  case GDK_KEY_Page_Up: case GDK_KEY_KP_Page_Up:
    return 10;
  default:
    return 0;
  }
}

/* Left and Right name the side. */
static gboolean turns_key(OxBoard *self, guint key) {
  gboolean left = key == GDK_KEY_Left || key == GDK_KEY_KP_Left;
  gboolean right = key == GDK_KEY_Right || key == GDK_KEY_KP_Right;
  if (!left && !right) return FALSE;
  set(self, OX_HANDLE_TURNS, left ? 1 : 0);
  return TRUE;
}

gboolean ox_board_key(OxBoard *self, ox_handle handle, guint key, GdkModifierType modifiers) {
  if (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) return FALSE;
  if (key == GDK_KEY_Escape) return restore(self);
  if (handle == OX_HANDLE_TURNS) return turns_key(self, key);
  if (!ox_handle_is_slider(handle)) return FALSE;
  ox_handle_range range = ox_handle_range_of(handle, ox_document_case(self->document),
                                             ox_document_flight(self->document));
  int steps = steps_of(key, (modifiers & GDK_SHIFT_MASK) != 0);
  if (steps != 0)
    step(self, handle, steps);
  else if (key == GDK_KEY_Home || key == GDK_KEY_KP_Home)
    set(self, handle, range.min);
  else if (key == GDK_KEY_End || key == GDK_KEY_KP_End)
    set(self, handle, range.max);
  else if (is_enter(key))
    ox_board_ask_for_entry(self, handle);
  else
    return FALSE;
  return TRUE;
}

static gboolean key_cb(GtkEventControllerKey *controller, guint key, guint code,
                       GdkModifierType modifiers, OxBoard *self) {
  GtkWidget *grip = gtk_event_controller_get_widget(GTK_EVENT_CONTROLLER(controller));
  return ox_board_key(self, handle_of(self, grip), key, modifiers);
}

/* ---- focus, assistive technology, buttons ----------------------------------------------- */

static void focus_cb(GtkWidget *grip, GParamSpec *pspec, OxBoard *self) {
  ox_handle handle = handle_of(self, grip);
  if (!self->document) return;
  if (gtk_widget_has_focus(grip)) {
    self->selected = handle;
    self->focus_case = *ox_document_case(self->document);
  } else if (self->selected == handle) {
    self->selected = OX_HANDLE_COUNT;
    ox_document_seal_step(self->document);
  }
  ox_board_show_looks(self);
}

static void value_changed_cb(GtkWidget *grip, OxBoard *self) {
  if (!self->showing) set(self, handle_of(self, grip), ox_grip_value(grip));
}

static void clicked_cb(GtkWidget *grip, OxBoard *self) {
  ox_handle handle = handle_of(self, grip);
  if (handle == OX_HANDLE_TURNS)
    step(self, handle, 1);
  else
    ox_board_ask_for_entry(self, handle);
}

static void readout_step_cb(GtkWidget *readout, guint handle, int steps, OxBoard *self) {
  step(self, (ox_handle)handle, steps);
}

static GtkWidget *nth_grip(OxBoard *self, int at) {
  return at < OX_HANDLE_COUNT ? self->grips[at]
                              : g_ptr_array_index(self->points.grips, at - OX_HANDLE_COUNT);
}

/* GTK would walk the grips by where they happen to lie. The points come last. */
gboolean ox_board_tab(OxBoard *self, gboolean forwards) {
  int at = -1; /* the board itself */
  int count = OX_HANDLE_COUNT + (int)self->points.grips->len;
  GtkWidget *focus = gtk_root_get_focus(gtk_widget_get_root(GTK_WIDGET(self)));
  gboolean inside = focus && (focus == GTK_WIDGET(self) ||
                              gtk_widget_is_ancestor(focus, GTK_WIDGET(self)));
  if (!inside) at = forwards ? -2 : count;
  for (int h = 0; h < count; h++)
    if (nth_grip(self, h) == focus) at = h;
  at += forwards ? 1 : -1;
  if (at < -1 || at >= count) return FALSE;
  return gtk_widget_grab_focus(at < 0 ? GTK_WIDGET(self) : nth_grip(self, at));
}

void ox_board_add_grips(OxBoard *self) {
  self->hovered = self->selected = OX_HANDLE_COUNT;
  self->points.grips = g_ptr_array_new();
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++) {
    GtkWidget *grip = self->grips[h] = ox_grip_new(h);
    GtkEventController *keys = gtk_event_controller_key_new();
    g_signal_connect_object(keys, "key-pressed", G_CALLBACK(key_cb), self, 0);
    gtk_widget_add_controller(grip, keys);
    g_signal_connect_object(grip, "notify::has-focus", G_CALLBACK(focus_cb), self, 0);
    if (ox_handle_is_slider(h))
      g_signal_connect_object(grip, "value-changed", G_CALLBACK(value_changed_cb), self, 0);
    else
      g_signal_connect_object(grip, "clicked", G_CALLBACK(clicked_cb), self, 0);
    gtk_widget_set_parent(grip, GTK_WIDGET(self));
  }
  self->readout = ox_readout_new();
  gtk_widget_set_parent(self->readout, GTK_WIDGET(self));
  g_signal_connect_object(self->readout, "step", G_CALLBACK(readout_step_cb), self, 0);
}

void ox_board_remove_grips(OxBoard *self) {
  if (self->points.grips) ox_board_remove_points(self);
  g_clear_pointer(&self->points.grips, g_ptr_array_unref);
  for (ox_handle h = 0; h < OX_HANDLE_COUNT; h++)
    g_clear_pointer(&self->grips[h], gtk_widget_unparent);
  g_clear_pointer(&self->readout, gtk_widget_unparent);
}
