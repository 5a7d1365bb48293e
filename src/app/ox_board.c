/* The board: shows the painter's picture in two layers, so that playing redraws the aircraft and
 * nothing else. Grips, dragging and views are in files of their own. */
#include "ox_board_private.h"

#include <math.h>
#include <stdlib.h>

#include "oxbow/text.h"
#include "oxbow/words.h"

#define LEAST_SIDE 240
#define GRIP_LABEL_PX 18.0 /* of labels, that grips of their normal size go with */
#define LEAST_EM_ACROSS 32.0 /* boards side by side get smaller labels, or nothing else fits */
#define NATURAL_WIDTH 640
#define NATURAL_HEIGHT 480

/* ---- a layer ---------------------------------------------------------------------------- */

#define OX_TYPE_BOARD_LAYER (ox_board_layer_get_type())
G_DECLARE_FINAL_TYPE(OxBoardLayer, ox_board_layer, OX, BOARD_LAYER, GtkWidget)

struct _OxBoardLayer {
  GtkWidget parent_instance;
  OxBoard *board; /* borrowed: the parent */
  void (*draw)(OxBoard *board, GtkSnapshot *snapshot, const graphene_rect_t *bounds);
};

G_DEFINE_FINAL_TYPE(OxBoardLayer, ox_board_layer, GTK_TYPE_WIDGET)

static void layer_snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  OxBoardLayer *self = OX_BOARD_LAYER(widget);
  int width = gtk_widget_get_width(widget), height = gtk_widget_get_height(widget);
  if (!self->draw || width <= 0 || height <= 0) return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT(0, 0, (float)width, (float)height);
  self->draw(self->board, snapshot, &bounds);
}

static void ox_board_layer_class_init(OxBoardLayerClass *class) {
  GTK_WIDGET_CLASS(class)->snapshot = layer_snapshot;
  gtk_widget_class_set_accessible_role(GTK_WIDGET_CLASS(class), GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void ox_board_layer_init(OxBoardLayer *self) {
  gtk_widget_set_can_target(GTK_WIDGET(self), FALSE);
}

static GtkWidget *layer_new(OxBoard *board, void (*draw)(OxBoard *, GtkSnapshot *,
                                                         const graphene_rect_t *)) {
  OxBoardLayer *layer = g_object_new(OX_TYPE_BOARD_LAYER, NULL);
  layer->board = board;
  layer->draw = draw;
  gtk_widget_set_parent(GTK_WIDGET(layer), GTK_WIDGET(board));
  return GTK_WIDGET(layer);
}

/* ---- the board -------------------------------------------------------------------------- */

static guint entry_signal, point_signal, looks_signal;

G_DEFINE_FINAL_TYPE(OxBoard, ox_board, GTK_TYPE_WIDGET)

void ox_board_drop_picture(OxBoard *self) {
  g_clear_pointer(&self->picture, ox_picture_free);
  gtk_widget_queue_draw(self->still);
  gtk_widget_queue_draw(self->moving);
  ox_board_queue_placing(self); /* the grips lie elsewhere */
}

void ox_board_forget_picture(OxBoard *self) {
  ox_board_drop_picture(self);
  g_signal_emit(self, looks_signal, 0);
}

static double picture_text_scale(OxBoard *self) {
  if (!(self->label_px > 0)) return self->text_scale;
  double width = gtk_widget_get_width(GTK_WIDGET(self));
  double height = gtk_widget_get_height(GTK_WIDGET(self));
  double label_px = fmin(self->label_px, width / LEAST_EM_ACROSS);
  return label_px / ox_picture_label_size(self->palette, width, height);
}

/* The wind's handle lies upwind of its arrow, where its words shall not be. While it is dragged
 * they stay where they are. */
static void place_wind_words(OxBoard *self) {
  const ox_setup *s = &ox_document_flight(self->document)->setup;
  double up_deg = self->view.up == OX_UP_INBOUND ? s->inbound_true_deg : 0.0;
  double sin_from, cos_from;
  if (self->is_held) return;
  ox_sincos_deg(s->wind_from_true_deg - up_deg, &sin_from, &cos_from);
  self->wind_words_above =
      self->view.up != OX_UP_AIRCRAFT && s->wind_speed_kt > 0.0 && cos_from < -0.1;
}

ox_scene ox_board_scene(OxBoard *self) {
  place_wind_words(self);
  ox_scene scene = {
      .c = ox_document_case(self->document),
      .flight = ox_document_flight(self->document),
      .title = NULL, /* the header bar has it */
      .palette = self->palette,
      .text_scale = picture_text_scale(self),
      .layers = OX_LAYER_ALL,
      .view = self->view,
      .fit = self->fit_shared ? &self->shared_fit : NULL,
      .held = self->is_held ? &self->held : NULL,
      .wind_words_above = self->wind_words_above,
      .keep_clear = {ox_board_keep_clear, self, OX_GRIP_RADIUS * self->hand_scale},
      .ink = ox_document_ink(self->document),
      .typesetter = self->typesetter,
  };
  if (self->overlays) {
    OxCompanions *companions = ox_overlays_companions(self->overlays);
    scene.compare = ox_overlays_flight(self->overlays, &scene.compare_name);
    scene.area = ox_overlays_area(self->overlays);
    scene.spread = ox_overlays_spread(self->overlays);
    if (!ox_companions_beside(companions))
      scene.others = ox_companions_others(companions, &scene.other_count);
  }
  if (!self->placed) self->placed = g_new(ox_placed, 1);
  ox_placed_make(ox_document_points(self->document), ox_document_route(self->document),
                 ox_document_fix(self->document), scene.c, scene.flight, self->placed);
  if (self->points.shown)
    ox_placed_add_points(ox_document_points(self->document), ox_document_fix(self->document),
                         scene.c, self->placed);
  scene.marks = self->placed->marks;
  scene.mark_count = self->placed->mark_count;
  scene.paths = self->placed->paths;
  scene.path_count = self->placed->path_count;
  scene.whole = ox_document_whole_flight(self->document);
  ox_prediction_dress(self->prediction, &scene);
  return scene;
}

static gboolean same_fit(const ox_fit *a, const ox_fit *b) {
  return a->dev_per_nm == b->dev_per_nm && a->low_nm.x == b->low_nm.x &&
         a->low_nm.y == b->low_nm.y && a->high_nm.x == b->high_nm.x &&
         a->high_nm.y == b->high_nm.y;
}

gboolean ox_board_is_held(OxBoard *self) { return self->is_held; }

void ox_board_share_fit(OxBoard *self, const ox_fit *fit, gboolean settle) {
  if (fit ? self->fit_shared && same_fit(&self->shared_fit, fit) : !self->fit_shared) return;
  gboolean goes = settle && fit && self->fit_shared && self->picture && !self->is_held &&
                  !ox_picture_moves(self->picture);
  ox_viewport from = {0};
  if (goes) from = ox_board_viewport(self);
  self->fit_shared = fit != NULL;
  if (fit) self->shared_fit = *fit;
  if (goes)
    ox_board_settle_from(self, &from);
  else
    ox_board_drop_picture(self);
}

ox_picture *ox_board_current_picture(OxBoard *self) {
  if (self->picture || !self->document) return self->picture;
  ox_scene scene = ox_board_scene(self);
  self->picture = ox_picture_new(&scene, gtk_widget_get_width(GTK_WIDGET(self)),
                                 gtk_widget_get_height(GTK_WIDGET(self)));
  self->counts.layouts++;
  /* Panned no farther than where something is to be seen: the next step starts from there. */
  if (self->picture) self->view.pan_nm = ox_picture_view(self->picture).pan_nm;
  return self->picture;
}

/* Where the world itself moves there is one image of both halves. */
static void draw_still(OxBoard *self, GtkSnapshot *snapshot, const graphene_rect_t *bounds) {
  ox_picture *picture = ox_board_current_picture(self);
  self->counts.still++;
  if (!picture) return;
  double t_s = ox_picture_moves(picture) ? ox_player_time_s(self->player) : (double)NAN;
  double scale = gtk_widget_get_scale_factor(GTK_WIDGET(self));
  gboolean draft = self->is_held && self->settling == 0;
  cairo_surface_t *image =
      self->canvas ? ox_canvas_draw(self->canvas, picture, scale, t_s, draft) : NULL;
  if (!image) { /* too large for one image */
    cairo_t *cr = gtk_snapshot_append_cairo(snapshot, bounds);
    ox_picture_draw_still(picture, cr);
    if (!isnan(t_s)) ox_picture_draw_moving(picture, cr, t_s);
    cairo_destroy(cr);
    return;
  }
  ox_tiles_update(self->tiles, image, bounds, ox_tiles_kind_for(GTK_WIDGET(self)));
  ox_tiles_append(self->tiles, snapshot);
}

typedef void (*draw_part)(ox_picture *picture, cairo_t *cr, double t_s);

/* The pixels that a part touches. */
static gboolean extents(OxBoard *self, draw_part draw, graphene_rect_t *out) {
  double x, y, width, height;
  cairo_surface_t *record = cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create(record);
  draw(self->picture, cr, ox_player_time_s(self->player));
  cairo_destroy(cr);
  cairo_recording_surface_ink_extents(record, &x, &y, &width, &height);
  cairo_surface_destroy(record);
  if (!(width > 0.0 && height > 0.0)) return FALSE;
  graphene_rect_init(out, (float)floor(x) - 1, (float)floor(y) - 1, (float)ceil(width) + 3,
                     (float)ceil(height) + 3);
  return TRUE;
}

static void append(OxBoard *self, draw_part draw, GtkSnapshot *snapshot,
                   const graphene_rect_t *bounds) {
  cairo_t *cr = gtk_snapshot_append_cairo(snapshot, bounds);
  draw(self->picture, cr, ox_player_time_s(self->player));
  cairo_destroy(cr);
}

/* No larger than it is: what lies beside it is not drawn again when it moves. */
static void append_tight(OxBoard *self, draw_part draw, GtkSnapshot *snapshot,
                         const graphene_rect_t *bounds) {
  graphene_rect_t touched, seen;
  if (extents(self, draw, &touched) && graphene_rect_intersection(&touched, bounds, &seen))
    append(self, draw, snapshot, &seen);
}

static void draw_moving(OxBoard *self, GtkSnapshot *snapshot, const graphene_rect_t *bounds) {
  ox_picture *picture = ox_board_current_picture(self);
  self->counts.moving++;
  if (!picture || ox_picture_moves(picture)) return;
  append_tight(self, ox_picture_draw_triangle, snapshot, bounds);
  append_tight(self, ox_picture_draw_aircraft, snapshot, bounds);
}

ox_viewport ox_board_viewport(OxBoard *self) {
  return ox_picture_viewport_at(ox_board_current_picture(self), ox_player_time_s(self->player));
}

gboolean ox_board_get_viewport(OxBoard *self, ox_viewport *out) {
  if (!ox_board_current_picture(self)) return FALSE;
  *out = ox_board_viewport(self);
  return TRUE;
}

gboolean ox_board_get_map(OxBoard *self, ox_vec *origin, ox_vec *size) {
  ox_picture *picture = ox_board_current_picture(self);
  if (picture) ox_picture_map(picture, origin, size);
  return picture != NULL;
}

/* What a screen reader must know beside the case itself. */
static const char *view_in_words(const ox_view *view) {
  static const char *const words[2][3] = {
      {NULL, N_("It is turned now so that the inbound course is up."),
       N_("It is turned now so that the aircraft flies up.")},
      {N_("It is carried with the air now."),
       N_("It is turned now so that the inbound course is up, and carried with the air."),
       N_("It is turned now so that the aircraft flies up, and carried with the air.")}};
  return words[view->air > 0.0][CLAMP((int)view->up, 0, 2)];
}

/* What the marks and paths show. */
static void describe_places(OxBoard *self, GString *all) {
  char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES], remark[OX_REMARK_BYTES];
  ox_journey *journey = g_new(ox_journey, 1);
  const ox_case *c = ox_document_case(self->document);
  size_t count = ox_fix_words(ox_document_points(self->document), ox_document_fix(self->document),
                              c, lines);
  for (size_t i = 0; i < count; i++) g_string_append_printf(all, " %s", lines[i]);
  if (ox_document_journey(self->document, journey, remark, sizeof remark) != OX_ERROR) {
    count = ox_journey_words(journey, c, lines);
    for (size_t i = 0; i < count; i++) g_string_append_printf(all, " %s", lines[i]);
  }
  g_free(journey);
}

void ox_board_describe(OxBoard *self) {
  if (!self->document) return;
  if (ox_prediction_hides(self->prediction)) {
    gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                   _("The flight is hidden until the answer is given."), -1);
    return;
  }
  const char *view = view_in_words(&self->view);
  char *words = ox_words_describe(ox_document_case(self->document),
                                  ox_document_flight(self->document));
  const char *const *more = self->overlays ? ox_overlays_sentences(self->overlays) : NULL;
  GString *all = g_string_new(words);
  for (const char *const *at = more; at && *at; at++) g_string_append_printf(all, " %s", *at);
  if (view) g_string_append_printf(all, " %s", _(view));
  describe_places(self, all);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                 all->str, -1);
  g_string_free(all, TRUE);
  free(words);
}

static void document_changed_cb(OxDocument *document, guint what, OxBoard *self) {
  if (!self->drag.editing) ox_board_finish_drag(self);
  if (what & (OX_DOCUMENT_SELECTION | OX_DOCUMENT_LESSON)) {
    ox_board_end_settling(self); /* that was another hold's */
    self->focus_case = *ox_document_case(document);
  }
  ox_board_forget_picture(self);
  ox_board_show_values(self);
}

static void document_settled_cb(OxDocument *document, guint what, OxBoard *self) {
  ox_board_describe(self);
}

static void overlays_changed_cb(OxBoard *self) {
  ox_board_forget_picture(self);
  if (!self->document || !ox_document_in_step(self->document)) ox_board_describe(self);
}

/* Where the world moves with the aircraft or the air, so do the grips. */
static void moved_cb(OxBoard *self) {
  gtk_widget_queue_draw(self->moving);
  if (!self->picture || !ox_picture_moves(self->picture)) return;
  gtk_widget_queue_draw(self->still);
  ox_board_queue_placing(self);
}

static void measure(GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline) {
  *minimum = LEAST_SIDE;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? NATURAL_WIDTH : NATURAL_HEIGHT;
}

static gboolean tell_of_looks_cb(gpointer data) {
  OxBoard *self = OX_BOARD(data);
  self->looks_source = 0;
  g_signal_emit(self, looks_signal, 0);
  return G_SOURCE_REMOVE;
}

/* What others do about it asks boards to be allocated anew, and GTK does not draw a widget for
 * which that was asked while it was being allocated. */
static void tell_of_looks_later(OxBoard *self) {
  if (self->document && self->looks_source == 0)
    self->looks_source = g_idle_add_full(G_PRIORITY_DEFAULT, tell_of_looks_cb, self, NULL);
}

static void size_allocate(GtkWidget *widget, int width, int height, int baseline) {
  OxBoard *self = OX_BOARD(widget);
  gboolean resized = width != gtk_widget_get_width(self->still) ||
                     height != gtk_widget_get_height(self->still);
  gtk_widget_allocate(self->still, width, height, -1, NULL);
  gtk_widget_allocate(self->moving, width, height, -1, NULL);
  if (resized) {
    g_clear_pointer(&self->picture, ox_picture_free);
    ox_board_stop_settling(self);
    self->is_held = FALSE;
    ox_board_renew_drag(self);
    gtk_widget_queue_draw(self->still);
    gtk_widget_queue_draw(self->moving);
    tell_of_looks_later(self);
  }
  ox_board_place_grips(self, width, height);
}

static gboolean focus(GtkWidget *widget, GtkDirectionType direction) {
  if (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD)
    return ox_board_tab(OX_BOARD(widget), direction == GTK_DIR_TAB_FORWARD);
  return GTK_WIDGET_CLASS(ox_board_parent_class)->focus(widget, direction);
}

/* Without a window there is no pointer that could end it. */
static void unmap(GtkWidget *widget) {
  ox_board_finish_drag(OX_BOARD(widget));
  ox_board_end_settling(OX_BOARD(widget));
  ox_board_end_passage(OX_BOARD(widget));
  GTK_WIDGET_CLASS(ox_board_parent_class)->unmap(widget);
}

/* Of a board in type of its own size: as large beside it as grips are beside the window's own, and
 * no smaller than a finger needs. */
static void choose_hand_scale(OxBoard *self) {
  double own = fmax(self->label_px / GRIP_LABEL_PX, OX_GRIP_TOUCH / OX_GRIP_TARGET);
  self->hand_scale = self->label_px > 0 ? fmax(self->text_scale, own) : self->text_scale;
}

/* Text that is larger on the desktop is larger on the board. */
static void text_scale_cb(OxBoard *self) {
  int dpi = 0;
  g_object_get(gtk_settings_get_default(), "gtk-xft-dpi", &dpi, NULL);
  double scale = dpi > 0 ? CLAMP(dpi / (96.0 * 1024.0), 0.5, 4.0) : 1.0;
  if (scale == self->text_scale) return;
  self->text_scale = scale;
  choose_hand_scale(self);
  ox_board_forget_picture(self);
  ox_board_show_looks(self);
}

static void choose_palette(OxBoard *self) {
  ox_palette_id palette =
      self->projector ? OX_PALETTE_PROJECTOR : ox_theme_palette(GTK_WIDGET(self));
  if (self->palette == palette) return;
  self->palette = palette;
  ox_board_forget_picture(self);
  ox_board_show_looks(self);
}

static void css_changed(GtkWidget *widget, GtkCssStyleChange *change) {
  GTK_WIDGET_CLASS(ox_board_parent_class)->css_changed(widget, change);
  choose_palette(OX_BOARD(widget));
}

static void dispose(GObject *object) {
  OxBoard *self = OX_BOARD(object);
  g_clear_handle_id(&self->looks_source, g_source_remove);
  g_clear_pointer(&self->picture, ox_picture_free);
  g_clear_pointer(&self->typesetter, ox_typesetter_free);
  g_clear_pointer(&self->canvas, ox_canvas_free);
  g_clear_pointer(&self->tiles, ox_tiles_free);
  g_clear_pointer(&self->held_layout, ox_layout_free);
  g_clear_pointer(&self->still, gtk_widget_unparent);
  g_clear_pointer(&self->moving, gtk_widget_unparent);
  ox_board_remove_grips(self);
  g_clear_pointer(&self->drag.flight, g_free);
  g_clear_pointer(&self->drag.scratch, g_free);
  g_clear_pointer(&self->points.base, g_free);
  g_clear_pointer(&self->points.focus, g_free);
  g_clear_object(&self->document);
  g_clear_object(&self->player);
  g_clear_object(&self->overlays);
  g_clear_object(&self->prediction);
  g_clear_pointer(&self->placed, g_free);
  G_OBJECT_CLASS(ox_board_parent_class)->dispose(object);
}

static void ox_board_class_init(OxBoardClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  widget_class->measure = measure;
  widget_class->size_allocate = size_allocate;
  widget_class->css_changed = css_changed;
  widget_class->unmap = unmap;
  widget_class->focus = focus;
  gtk_widget_class_set_css_name(widget_class, "board");
  gtk_widget_class_set_accessible_role(widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  entry_signal = g_signal_new("exact-entry", OX_TYPE_BOARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_STRING);
  point_signal = g_signal_new("point-entry", OX_TYPE_BOARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_STRING);
  looks_signal = g_signal_new("looks-changed", OX_TYPE_BOARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                              NULL, G_TYPE_NONE, 0);
}

static void ox_board_init(OxBoard *self) {
  gtk_widget_set_focusable(GTK_WIDGET(self), TRUE);
  gtk_widget_set_overflow(GTK_WIDGET(self), GTK_OVERFLOW_HIDDEN);
  self->still = layer_new(self, draw_still);
  self->moving = layer_new(self, draw_moving);
  self->typesetter = ox_typesetter_new();
  self->canvas = ox_canvas_new();
  self->tiles = ox_tiles_new();
  ox_board_add_grips(self);
  ox_board_add_gestures(self);
  ox_board_add_view_gestures(self);
  self->text_scale = self->hand_scale = 1.0;
  self->view.zoom = 1.0;
  g_signal_connect_object(gtk_settings_get_default(), "notify::gtk-xft-dpi",
                          G_CALLBACK(text_scale_cb), self, G_CONNECT_SWAPPED);
  text_scale_cb(self);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Holding pattern"), -1);
}

void ox_board_set_model(OxBoard *self, OxDocument *document, OxPlayer *player) {
  g_return_if_fail(OX_IS_BOARD(self) && !self->document);
  self->document = g_object_ref(document);
  self->player = g_object_ref(player);
  g_signal_connect_object(document, "changed", G_CALLBACK(document_changed_cb), self, 0);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_settled_cb), self, 0);
  g_signal_connect_object(player, "moved", G_CALLBACK(moved_cb), self, G_CONNECT_SWAPPED);
  ox_board_forget_picture(self);
  ox_board_describe(self);
  ox_board_show_values(self);
}

void ox_board_set_overlays(OxBoard *self, OxOverlays *overlays) {
  g_return_if_fail(OX_IS_BOARD(self) && !self->overlays && !self->document);
  self->overlays = g_object_ref(overlays);
  g_signal_connect_object(overlays, "changed", G_CALLBACK(overlays_changed_cb), self,
                          G_CONNECT_SWAPPED);
}

void ox_board_set_prediction(OxBoard *self, OxPrediction *prediction) {
  g_return_if_fail(OX_IS_BOARD(self) && !self->prediction && !self->document);
  self->prediction = g_object_ref(prediction);
  g_signal_connect_object(prediction, "changed", G_CALLBACK(overlays_changed_cb), self,
                          G_CONNECT_SWAPPED);
}

void ox_board_set_projector(OxBoard *self, gboolean projector) {
  self->projector = projector;
  choose_palette(self);
}

void ox_board_set_label_size(OxBoard *self, double px) {
  if (px == self->label_px) return;
  self->label_px = px;
  choose_hand_scale(self);
  ox_board_forget_picture(self);
  ox_board_show_looks(self);
}

ox_palette_id ox_board_palette(OxBoard *self) { return self->palette; }

void ox_board_ask_for_entry(OxBoard *self, ox_handle handle) {
  const char *key = ox_handle_key(handle, ox_document_case(self->document));
  g_signal_emit(self, entry_signal, 0, key);
}

void ox_board_ask_for_point(OxBoard *self, const char *name) {
  g_signal_emit(self, point_signal, 0, name);
}

GtkWidget *ox_board_grip(OxBoard *self, ox_handle handle) { return self->grips[handle]; }

const char *ox_board_readout(OxBoard *self) { return ox_readout_text(OX_READOUT(self->readout)); }

gboolean ox_board_handle_place(OxBoard *self, ox_handle handle, double *x, double *y) {
  ox_vec place = {0, 0};
  gboolean seen = FALSE;
  if (self->document) place = ox_board_shown_at(self, handle, &seen);
  *x = place.x;
  *y = place.y;
  return seen;
}

ox_board_counts ox_board_get_counts(OxBoard *self) { return self->counts; }
