/* The lesson's points on the board: while they are shown to be moved, each symbol has a grip. One
 * press and release is one step of the document; with the keys, steps in quick succession are.
 *
 * The picture lies about the fix, which may itself be counted from the point that is moved: where
 * the pointer leads is worked out from how the drag began, as a place on the earth. */
#include "ox_board_private.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/text.h"

#define NAME_KEY "ox-point"
#define STEP_NM 0.1
#define MANY_STEPS 10.0

static const char *name_of(GtkWidget *grip) { return g_object_get_data(G_OBJECT(grip), NAME_KEY); }

static GtkWidget *grip_at(OxBoard *self, guint i) {
  return g_ptr_array_index(self->points.grips, i);
}

static gboolean is_dragged(OxBoard *self) { return self->drag.doing == OX_BOARD_MOVES_POINT; }

/* ---- places ----------------------------------------------------------------------------- */

static gboolean origin_of(OxBoard *self, ox_latlon *out) {
  return ox_fix_place(ox_document_points(self->document), ox_document_fix(self->document),
                      ox_document_case(self->document), out, NULL, 0) != OX_ERROR;
}

/* Where the symbol is; FALSE where the picture does not show it. */
static gboolean place_of(OxBoard *self, const char *name, ox_vec *out) {
  ox_picture *picture = ox_board_current_picture(self);
  ox_vec corner, size;
  if (!picture || !self->placed || self->view.air > 0.0) return FALSE;
  for (size_t i = 0; i < self->placed->mark_count; i++) {
    if (strcmp(self->placed->marks[i].name, name) != 0) continue;
    ox_viewport viewport = ox_board_viewport(self);
    *out = ox_viewport_to_dev(&viewport, self->placed->marks[i].at_nm);
    ox_picture_map(picture, &corner, &size);
    return out->x >= corner.x && out->x <= corner.x + size.x && out->y >= corner.y &&
           out->y <= corner.y + size.y;
  }
  return FALSE;
}

gboolean ox_board_point_place(OxBoard *self, const char *name, double *x, double *y) {
  ox_vec at = {0, 0};
  gboolean seen = self->points.shown && self->document && place_of(self, name, &at);
  *x = at.x;
  *y = at.y;
  return seen;
}

const char *ox_board_hit_point(OxBoard *self, double x, double y) {
  double nearest = OX_GRIP_TARGET / 2.0 * self->hand_scale;
  const char *hit = NULL;
  for (guint i = 0; i < self->points.grips->len; i++) {
    ox_vec at;
    const char *name = name_of(grip_at(self, i));
    if (!place_of(self, name, &at)) continue;
    double away = hypot(at.x - x, at.y - y);
    if (away > nearest) continue;
    nearest = away;
    hit = name;
  }
  return hit;
}

void ox_board_place_points(OxBoard *self, int width, int height) {
  for (guint i = 0; i < self->points.grips->len; i++) {
    GtkWidget *grip = grip_at(self, i);
    GtkRequisition wanted;
    ox_vec at = {0, 0};
    gboolean seen = place_of(self, name_of(grip), &at);
    ox_grip_set_seen(grip, seen);
    double edge = -2.0 * OX_GRIP_TARGET;
    at.x = CLAMP(at.x, edge, width - edge);
    at.y = CLAMP(at.y, edge, height - edge);
    gtk_widget_get_preferred_size(grip, NULL, &wanted);
    graphene_point_t corner =
        GRAPHENE_POINT_INIT((float)floor(at.x - wanted.width / 2.0),
                            (float)floor(at.y - wanted.height / 2.0));
    gtk_widget_allocate(grip, wanted.width, wanted.height, -1,
                        gsk_transform_translate(NULL, &corner));
  }
}

/* ---- words ------------------------------------------------------------------------------ */

static const char *told_of(OxBoard *self) {
  ox_board_points *p = &self->points;
  if (is_dragged(self)) return p->dragged;
  if (self->drag.doing != OX_BOARD_AT_REST) return NULL;
  if (p->selected[0]) return p->selected;
  if (self->selected != OX_HANDLE_COUNT || self->hovered != OX_HANDLE_COUNT) return NULL;
  return p->hovered[0] ? p->hovered : NULL;
}

gboolean ox_board_point_anchor(OxBoard *self, ox_vec *out) {
  const char *told = told_of(self);
  if (!told) return FALSE;
  if (is_dragged(self))
    *out = self->drag.pointer;
  else
    place_of(self, told, out);
  return TRUE;
}

/* How it is given; where it is given by its place, how it lies from the fix. */
static void append_given(OxBoard *self, const ox_point *point, ox_latlon at, GString *text) {
  const ox_case *c = ox_document_case(self->document);
  ox_latlon origin;
  ox_geodesic line;
  switch (point->kind) {
  case OX_POINT_RADIAL:
    g_string_append_c(text, '\n');
    /* translators: a point by its station, radial and distance */
    g_string_append_printf(text,
                           point->dme ? _("%s radial %03d, %.1f NM DME")
                                      : _("%s radial %03d, %.1f NM"),
                           point->from, ox_shown_deg(point->radial_deg), point->nm);
    break;
  case OX_POINT_CROSSING:
    g_string_append_c(text, '\n');
    g_string_append_printf(text, _("%s radial %03d, %s radial %03d"), point->from,
                           ox_shown_deg(point->radial_deg), point->and_from,
                           ox_shown_deg(point->and_radial_deg));
    break;
  default:
    if (!origin_of(self, &origin) || ox_geodesic_between(origin, at, &line) != OX_OK) break;
    g_string_append_c(text, '\n');
    /* translators: from a fix, a magnetic bearing and a distance */
    g_string_append_printf(
        text, _("from %s %03d M, %.1f NM"), c->hold.fix,
        ox_shown_deg(ox_magnetic_deg(line.from_bearing_deg, c->variation_deg)),
        line.distance_nm);
  }
}

static char *words_of(OxBoard *self, const char *name) {
  const ox_points *points = ox_document_points(self->document);
  const ox_point *point = ox_points_find(points, name);
  char where[OX_COORDINATES_BYTES] = "";
  ox_latlon at;
  GString *text = g_string_new(name);
  if (point && ox_points_place(points, name, &at, NULL, 0) != OX_ERROR &&
      ox_latlon_print(at, OX_FORM_DEG_MIN, where, sizeof where) == OX_OK) {
    g_string_append_printf(text, ": %s", where);
    append_given(self, point, at, text);
  }
  return g_string_free(text, FALSE);
}

void ox_board_show_points_looks(OxBoard *self) {
  const char *told = told_of(self);
  for (guint i = 0; i < self->points.grips->len; i++) {
    GtkWidget *grip = grip_at(self, i);
    gboolean meant = told && strcmp(name_of(grip), told) == 0;
    ox_grip_look look = meant ? is_dragged(self) ? OX_GRIP_HELD : OX_GRIP_HOVERED
                              : OX_GRIP_RESTING;
    if (self->drag.doing != OX_BOARD_AT_REST && !meant) look = OX_GRIP_HIDDEN;
    ox_grip_set_look(grip, look, self->palette, self->hand_scale);
  }
  if (!told) return;
  char *words = words_of(self, told);
  char *all = self->points.refusal[0] ? g_strdup_printf("%s\n%s", words, self->points.refusal)
                                      : g_strdup(words);
  ox_readout_say(OX_READOUT(self->readout), all);
  g_free(all);
  g_free(words);
}

/* ---- moving ----------------------------------------------------------------------------- */

static char *step_name(const char *point) {
  /* translators: a step to undo; %s is a point */
  return g_strdup_printf(_("Move %s"), point);
}

/* Moves it from where it was in `base`; what is refused is said, and it stays. */
static void move(OxBoard *self, const ox_points *base, const char *name, ox_latlon to,
                 gboolean fine) {
  ox_points *points = g_new(ox_points, 1);
  char *step = step_name(name), *refusal = self->points.refusal;
  size_t bytes = sizeof self->points.refusal;
  *points = *base;
  self->drag.editing = TRUE;
  ox_status status = ox_points_bring(points, name, to, fine, refusal, bytes);
  if (status != OX_ERROR)
    status = ox_document_set_places_more(self->document, step, points,
                                    ox_document_route(self->document), refusal, bytes);
  self->drag.editing = FALSE;
  if (status == OX_OK) refusal[0] = '\0';
  g_free(step);
  g_free(points);
  ox_board_show_looks(self);
}

void ox_board_begin_point(OxBoard *self, const char *name, ox_vec at) {
  ox_board_drag *d = &self->drag;
  ox_vec lies = at;
  if (!origin_of(self, &self->points.origin)) return;
  g_strlcpy(self->points.dragged, name, sizeof self->points.dragged);
  self->points.refusal[0] = '\0';
  g_clear_pointer(&self->points.base, g_free);
  self->points.base = g_memdup2(ox_document_points(self->document), sizeof(ox_points));
  ox_board_hold_world(self, TRUE);
  place_of(self, name, &lies);
  d->doing = OX_BOARD_MOVES_POINT;
  d->viewport = ox_board_viewport(self);
  d->pressed = d->pointer = at;
  d->offset = ox_vec_sub(lies, at);
  d->moved = FALSE;
  char *step = step_name(name);
  ox_document_begin_step(self->document, step);
  g_free(step);
  d->in_step = TRUE;
}

void ox_board_drag_point(OxBoard *self, gboolean fine) {
  ox_board_drag *d = &self->drag;
  ox_latlon to;
  ox_vec place = ox_viewport_to_world(&d->viewport, ox_vec_add(d->pointer, d->offset));
  if (ox_plane_to_place(self->points.origin, place, &to) == OX_ERROR) return;
  move(self, self->points.base, self->points.dragged, to, fine);
  ox_board_queue_placing(self);
}

/* ---- keys ------------------------------------------------------------------------------- */

/* One step in the direction of the eye. */
static gboolean arrow(guint key, ox_vec *out) {
  switch (key) {
  case GDK_KEY_Left: case GDK_KEY_KP_Left: *out = (ox_vec){-1, 0}; return TRUE;
  case GDK_KEY_Right: case GDK_KEY_KP_Right: *out = (ox_vec){1, 0}; return TRUE;
  case GDK_KEY_Up: case GDK_KEY_KP_Up: *out = (ox_vec){0, -1}; return TRUE;
  case GDK_KEY_Down: case GDK_KEY_KP_Down: *out = (ox_vec){0, 1}; return TRUE;
  default: return FALSE;
  }
}

static void nudge(OxBoard *self, const char *name, ox_vec by, double nm) {
  ox_viewport viewport = ox_board_viewport(self);
  ox_latlon at, origin, to;
  ox_vec here;
  if (ox_points_place(ox_document_points(self->document), name, &at, NULL, 0) == OX_ERROR ||
      !origin_of(self, &origin) || ox_plane_from_place(origin, at, &here) == OX_ERROR)
    return;
  ox_vec dev = ox_viewport_to_dev(&viewport, here);
  double px = nm * viewport.dev_per_nm;
  ox_vec there = ox_viewport_to_world(&viewport, (ox_vec){dev.x + px * by.x, dev.y + px * by.y});
  if (ox_plane_to_place(origin, there, &to) == OX_ERROR) return;
  move(self, ox_document_points(self->document), name, to, TRUE);
}

static gboolean restore(OxBoard *self, const char *name) {
  char *step, remark[OX_REMARK_BYTES];
  if (!self->points.focus ||
      ox_points_equal(self->points.focus, ox_document_points(self->document)))
    return FALSE;
  ox_document_seal_step(self->document);
  step = step_name(name);
  ox_document_set_places_more(self->document, step, self->points.focus,
                         ox_document_route(self->document), remark, sizeof remark);
  ox_document_seal_step(self->document);
  g_free(step);
  return TRUE;
}

gboolean ox_board_point_key(OxBoard *self, const char *name, guint key,
                            GdkModifierType modifiers) {
  ox_vec by;
  if (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) return FALSE;
  if (key == GDK_KEY_Escape) return restore(self, name);
  if (!arrow(key, &by)) return FALSE;
  nudge(self, name, by, (modifiers & GDK_SHIFT_MASK) ? MANY_STEPS * STEP_NM : STEP_NM);
  return TRUE;
}

static gboolean key_cb(GtkEventControllerKey *controller, guint key, guint code,
                       GdkModifierType modifiers, OxBoard *self) {
  GtkWidget *grip = gtk_event_controller_get_widget(GTK_EVENT_CONTROLLER(controller));
  return ox_board_point_key(self, name_of(grip), key, modifiers);
}

static void focus_cb(GtkWidget *grip, GParamSpec *pspec, OxBoard *self) {
  ox_board_points *p = &self->points;
  if (!self->document) return;
  if (gtk_widget_has_focus(grip)) {
    g_strlcpy(p->selected, name_of(grip), sizeof p->selected);
    g_clear_pointer(&p->focus, g_free);
    p->focus = g_memdup2(ox_document_points(self->document), sizeof(ox_points));
  } else if (strcmp(p->selected, name_of(grip)) == 0) {
    p->selected[0] = '\0';
    ox_document_seal_step(self->document);
  }
  p->refusal[0] = '\0';
  ox_board_show_looks(self);
}

static void clicked_cb(GtkWidget *grip, OxBoard *self) {
  ox_board_ask_for_point(self, name_of(grip));
}

/* ---- which there are -------------------------------------------------------------------- */

static void add_grip(OxBoard *self, const char *name) {
  GtkWidget *grip = ox_grip_new_point(name);
  GtkEventController *keys = gtk_event_controller_key_new();
  g_object_set_data_full(G_OBJECT(grip), NAME_KEY, g_strdup(name), g_free);
  g_signal_connect_object(keys, "key-pressed", G_CALLBACK(key_cb), self, 0);
  gtk_widget_add_controller(grip, keys);
  g_signal_connect_object(grip, "notify::has-focus", G_CALLBACK(focus_cb), self, 0);
  g_signal_connect_object(grip, "clicked", G_CALLBACK(clicked_cb), self, 0);
  gtk_widget_set_parent(grip, GTK_WIDGET(self));
  g_ptr_array_add(self->points.grips, grip);
}

/* The marks that are points of the lesson. */
static GPtrArray *names_of(OxBoard *self) {
  GPtrArray *names = g_ptr_array_new();
  if (!self->points.shown || !self->document || !ox_board_current_picture(self)) return names;
  for (size_t i = 0; i < self->placed->mark_count; i++)
    if (ox_placed_point(ox_document_points(self->document), &self->placed->marks[i]))
      g_ptr_array_add(names, (gpointer)self->placed->marks[i].name);
  return names;
}

static gboolean are_there(OxBoard *self, GPtrArray *names) {
  if (names->len != self->points.grips->len) return FALSE;
  for (guint i = 0; i < names->len; i++)
    if (strcmp(g_ptr_array_index(names, i), name_of(grip_at(self, i))) != 0) return FALSE;
  return TRUE;
}

void ox_board_renew_points(OxBoard *self) {
  if (self->points.grips->len == 0 && !self->points.shown) return;
  GPtrArray *names = names_of(self);
  if (!are_there(self, names)) {
    ox_board_remove_points(self);
    for (guint i = 0; i < names->len; i++) add_grip(self, g_ptr_array_index(names, i));
  }
  g_ptr_array_unref(names);
  for (guint i = 0; i < self->points.grips->len; i++) {
    char *words = words_of(self, name_of(grip_at(self, i)));
    gtk_accessible_update_property(GTK_ACCESSIBLE(grip_at(self, i)),
                                   GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
    g_free(words);
  }
}

void ox_board_remove_points(OxBoard *self) {
  ox_board_points *p = &self->points;
  p->selected[0] = p->hovered[0] = p->refusal[0] = '\0';
  for (guint i = 0; i < p->grips->len; i++) {
    GtkWidget *grip = grip_at(self, i);
    /* The focus must not be lost with it. */
    if (gtk_widget_has_focus(grip)) gtk_widget_grab_focus(GTK_WIDGET(self));
    gtk_widget_unparent(grip);
  }
  g_ptr_array_set_size(p->grips, 0);
}

void ox_board_show_points(OxBoard *self, gboolean shown) {
  if (self->points.shown == !!shown) return;
  if (is_dragged(self)) ox_board_finish_drag(self);
  self->points.shown = !!shown;
  if (self->document) ox_board_forget_picture(self); /* points that nothing uses come and go */
  ox_board_renew_points(self);
  ox_board_show_looks(self);
}

gboolean ox_board_hover_point(OxBoard *self, double x, double y) {
  const char *hit = ox_board_hit_point(self, x, y);
  if (strcmp(hit ? hit : "", self->points.hovered) == 0) return FALSE;
  g_strlcpy(self->points.hovered, hit ? hit : "", sizeof self->points.hovered);
  return TRUE;
}

GtkWidget *ox_board_point_grip(OxBoard *self, const char *name) {
  for (guint i = 0; i < self->points.grips->len; i++)
    if (strcmp(name_of(grip_at(self, i)), name) == 0) return grip_at(self, i);
  return NULL;
}
