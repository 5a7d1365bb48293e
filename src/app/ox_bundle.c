/* Render nodes, bundled.
 *
 * A widget's node stays the same object until the widget is drawn anew, while those of its parents
 * are made anew with it. So a bundle is known by the node it was made of, and stays as long as the
 * tree of the call before holds it: an entry holds those of its parts, and the answer's entry is
 * held until the next answer. */
#include "ox_bundle.h"

#include <gsk/gskcairorenderer.h>

enum { MOST = 24 }; /* nodes in a bundle: a row of a panel, whose change draws the row anew */
enum { MOST_SIDE = 4096, MOST_PIXELS = 400000 }; /* of one */
static const float OVERHANG = 2; /* px: letters reach a little beyond the bounds of their node */

typedef struct entry entry;
struct entry {
  GskRenderNode *node, *shown; /* owned; what it is made of, and the same bundled */
  guint uses;
  guint count;
  entry *part[]; /* owned uses; NULL: that part is as it was */
};

struct ox_bundle {
  GHashTable *entries; /* by node; borrowed: an entry takes itself out */
  entry *last;
  guint recorded;
};

/* ---- entries ---------------------------------------------------------------------------- */

static void drop(ox_bundle *self, entry *e) {
  if (!e || --e->uses > 0) return;
  g_hash_table_remove(self->entries, e->node);
  for (guint i = 0; i < e->count; i++) drop(self, e->part[i]);
  gsk_render_node_unref(e->node);
  gsk_render_node_unref(e->shown);
  g_free(e);
}

static entry *entry_new(ox_bundle *self, GskRenderNode *node, guint parts) {
  entry *e = g_malloc0(sizeof *e + parts * sizeof e->part[0]);
  e->node = gsk_render_node_ref(node);
  e->uses = 1;
  e->count = parts;
  g_hash_table_insert(self->entries, node, e);
  return e;
}

/* ---- one picture of many nodes ---------------------------------------------------------- */

static GskRenderNode *child_of(GskRenderNode *node) {
  switch (gsk_render_node_get_node_type(node)) {
  case GSK_TRANSFORM_NODE: return gsk_transform_node_get_child(node);
  case GSK_CLIP_NODE: return gsk_clip_node_get_child(node);
  case GSK_ROUNDED_CLIP_NODE: return gsk_rounded_clip_node_get_child(node);
  case GSK_OPACITY_NODE: return gsk_opacity_node_get_child(node);
  case GSK_COLOR_MATRIX_NODE: return gsk_color_matrix_node_get_child(node);
  case GSK_SHADOW_NODE: return gsk_shadow_node_get_child(node);
  default: return NULL;
  }
}

/* What is a drawing already, or holds nodes of a kind not known here, is left as it is. */
static gboolean can_be_recorded(GskRenderNode *node) {
  switch (gsk_render_node_get_node_type(node)) {
  case GSK_COLOR_NODE: case GSK_LINEAR_GRADIENT_NODE: case GSK_BORDER_NODE:
  case GSK_TEXTURE_NODE: case GSK_INSET_SHADOW_NODE: case GSK_OUTSET_SHADOW_NODE:
  case GSK_TEXT_NODE: case GSK_CONTAINER_NODE:
    return TRUE;
  default:
    return child_of(node) != NULL;
  }
}

/* Takes the nodes off what there is room for; FALSE: there are more, or one cannot be recorded. */
static gboolean fits(GskRenderNode *node, guint *room) {
  if (*room == 0 || !can_be_recorded(node)) return FALSE;
  --*room;
  GskRenderNode *child = child_of(node);
  if (child) return fits(child, room);
  if (gsk_render_node_get_node_type(node) != GSK_CONTAINER_NODE) return TRUE;
  for (guint i = 0; i < gsk_container_node_get_n_children(node); i++)
    if (!fits(gsk_container_node_get_child(node, i), room)) return FALSE;
  return TRUE;
}

/* In pixels: as commands of cairo, letters whose base line lies between two rows of pixels lose
 * their uppermost row. */
static GskRenderNode *record(ox_bundle *self, GskRenderNode *node) {
  graphene_rect_t bounds;
  gsk_render_node_get_bounds(node, &bounds);
  graphene_rect_inset(&bounds, -OVERHANG, -OVERHANG);
  graphene_rect_round_extents(&bounds, &bounds);
  int width = (int)bounds.size.width, height = (int)bounds.size.height;
  if (width > MOST_SIDE || height > MOST_SIDE || width * height > MOST_PIXELS) return NULL;
  double x = (double)bounds.origin.x, y = (double)bounds.origin.y;
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create(image);
  cairo_translate(cr, -x, -y);
  gsk_render_node_draw(node, cr);
  cairo_destroy(cr);
  GskRenderNode *picture = gsk_cairo_node_new(&bounds);
  cr = gsk_cairo_node_get_draw_context(picture);
  cairo_set_source_surface(cr, image, x, y);
  cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_NEAREST);
  cairo_paint(cr);
  cairo_destroy(cr);
  cairo_surface_destroy(image);
  self->recorded++;
  return picture;
}

/* ---- the tree --------------------------------------------------------------------------- */

static entry *visit(ox_bundle *self, GskRenderNode *node);

static GskRenderNode *shown_of(const entry *e, GskRenderNode *node) { return e ? e->shown : node; }

static entry *visit_container(ox_bundle *self, GskRenderNode *node) {
  guint count = gsk_container_node_get_n_children(node);
  entry *e = entry_new(self, node, count);
  GskRenderNode **shown = g_new(GskRenderNode *, MAX(count, 1));
  for (guint i = 0; i < count; i++) {
    GskRenderNode *child = gsk_container_node_get_child(node, i);
    e->part[i] = visit(self, child);
    shown[i] = shown_of(e->part[i], child);
  }
  e->shown = gsk_container_node_new(shown, count);
  g_free(shown);
  return e;
}

static GskRenderNode *with_child(GskRenderNode *node, GskRenderNode *child) {
  switch (gsk_render_node_get_node_type(node)) {
  case GSK_TRANSFORM_NODE:
    return gsk_transform_node_new(child, gsk_transform_node_get_transform(node));
  case GSK_CLIP_NODE:
    return gsk_clip_node_new(child, gsk_clip_node_get_clip(node));
  case GSK_ROUNDED_CLIP_NODE:
    return gsk_rounded_clip_node_new(child, gsk_rounded_clip_node_get_clip(node));
  default:
    return gsk_render_node_ref(node);
  }
}

static entry *visit_wrapper(ox_bundle *self, GskRenderNode *node) {
  GskRenderNode *child = child_of(node);
  entry *e = entry_new(self, node, 1);
  e->part[0] = visit(self, child);
  e->shown = e->part[0] ? with_child(node, e->part[0]->shown) : gsk_render_node_ref(node);
  return e;
}

/* NULL: it is shown as it is. The place of a widget is its parent's, made anew with the parent, so
 * a bundle never begins with it. */
static entry *visit(ox_bundle *self, GskRenderNode *node) {
  GskRenderNodeType type = gsk_render_node_get_node_type(node);
  guint room = MOST;
  gboolean wraps = type == GSK_CLIP_NODE || type == GSK_ROUNDED_CLIP_NODE;
  if (type != GSK_TRANSFORM_NODE && type != GSK_CONTAINER_NODE && !wraps) return NULL;
  entry *e = g_hash_table_lookup(self->entries, node);
  if (e) {
    e->uses++;
    return e;
  }
  if (type != GSK_TRANSFORM_NODE && fits(node, &room)) {
    if (room == MOST - 1) return NULL; /* nothing in it */
    GskRenderNode *picture = record(self, node);
    if (picture) {
      e = entry_new(self, node, 0);
      e->shown = picture;
      return e;
    }
  }
  return type == GSK_CONTAINER_NODE ? visit_container(self, node) : visit_wrapper(self, node);
}

/* ---- the whole -------------------------------------------------------------------------- */

ox_bundle *ox_bundle_new(void) {
  ox_bundle *self = g_new0(ox_bundle, 1);
  self->entries = g_hash_table_new(NULL, NULL);
  return self;
}

void ox_bundle_free(ox_bundle *self) {
  if (!self) return;
  drop(self, self->last);
  g_hash_table_unref(self->entries);
  g_free(self);
}

GskRenderNode *ox_bundle_make(ox_bundle *self, GskRenderNode *node) {
  entry *e = visit(self, node);
  GskRenderNode *shown = gsk_render_node_ref(shown_of(e, node));
  drop(self, self->last);
  self->last = e;
  return shown;
}

guint ox_bundle_recorded(const ox_bundle *self) { return self->recorded; }

gboolean ox_bundle_serves(GtkWidget *window) {
  GskRenderer *renderer = gtk_native_get_renderer(GTK_NATIVE(window));
  return GSK_IS_CAIRO_RENDERER(renderer) && gtk_widget_get_scale_factor(window) == 1;
}
