/* A window's nodes in bundles: it looks the same, there are far fewer, and what did not change is
 * not recorded again. */
#include "app_test.h"

#include "ox_bundle.h"

enum { WIDTH = 1180, HEIGHT = 760 };

static GskRenderNode *node_of(GtkWidget *widget) {
  GdkPaintable *paintable = gtk_widget_paintable_new(widget);
  app_test_spin_ms(100);
  GtkSnapshot *snapshot = gtk_snapshot_new();
  gdk_paintable_snapshot(paintable, snapshot, gdk_paintable_get_intrinsic_width(paintable),
                         gdk_paintable_get_intrinsic_height(paintable));
  GskRenderNode *node = gtk_snapshot_free_to_node(snapshot);
  g_object_unref(paintable);
  assert_non_null(node);
  return node;
}

static cairo_surface_t *drawn(GskRenderNode *node) {
  cairo_surface_t *image = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create(image);
  gsk_render_node_draw(node, cr);
  assert_int_equal(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy(cr);
  cairo_surface_flush(image);
  return image;
}

static int difference(cairo_surface_t *a, cairo_surface_t *b) {
  const guchar *p = cairo_image_surface_get_data(a), *q = cairo_image_surface_get_data(b);
  int most = 0;
  for (int i = 0; i < HEIGHT * cairo_image_surface_get_stride(a); i++)
    most = MAX(most, abs(p[i] - q[i]));
  return most;
}

static guint count_of(GskRenderNode *node) {
  guint count = 1;
  switch (gsk_render_node_get_node_type(node)) {
  case GSK_CONTAINER_NODE:
    for (guint i = 0; i < gsk_container_node_get_n_children(node); i++)
      count += count_of(gsk_container_node_get_child(node, i));
    return count;
  case GSK_TRANSFORM_NODE: return count + count_of(gsk_transform_node_get_child(node));
  case GSK_CLIP_NODE: return count + count_of(gsk_clip_node_get_child(node));
  case GSK_ROUNDED_CLIP_NODE: return count + count_of(gsk_rounded_clip_node_get_child(node));
  case GSK_OPACITY_NODE: return count + count_of(gsk_opacity_node_get_child(node));
  case GSK_COLOR_MATRIX_NODE: return count + count_of(gsk_color_matrix_node_get_child(node));
  default: return count;
  }
}

static GtkWidget *content_of(OxWindow *window) {
  return gtk_window_get_child(GTK_WINDOW(window));
}

static void a_window_in_bundles_looks_the_same(void **state) {
  OxWindow *window = app_test_window(NULL);
  ox_bundle *bundle = ox_bundle_new();
  GskRenderNode *node = node_of(content_of(window)), *shown = ox_bundle_make(bundle, node);
  cairo_surface_t *want = drawn(node), *got = drawn(shown);
  assert_in_range(ox_bundle_recorded(bundle), 20, 400);
  assert_in_range(difference(want, got), 0, 2); /* a colour laid over another is rounded twice */
  cairo_surface_destroy(want);
  cairo_surface_destroy(got);
  gsk_render_node_unref(node);
  gsk_render_node_unref(shown);
  ox_bundle_free(bundle);
  app_test_close(window);
}

/* A column of rows, each with some nodes. */
static GskRenderNode *row_new(int i, float shade) {
  GskRenderNode *parts[6];
  for (int k = 0; k < 6; k++) {
    GdkRGBA colour = {shade, 0.1F * (float)k, 0.02F * (float)i, 1.0F};
    graphene_rect_t at = GRAPHENE_RECT_INIT((float)(20 * k), 0, 15, 12);
    parts[k] = gsk_color_node_new(&colour, &at);
  }
  GskRenderNode *row = gsk_container_node_new(parts, 6);
  for (int k = 0; k < 6; k++) gsk_render_node_unref(parts[k]);
  return row;
}

/* As GTK does it: the places of the rows are made anew with their parent, the rows are not. */
static GskRenderNode *column_new(GskRenderNode **rows, int count) {
  GskRenderNode **placed = g_new(GskRenderNode *, count);
  for (int i = 0; i < count; i++) {
    graphene_point_t at = GRAPHENE_POINT_INIT(5, (float)(16 * i));
    GskTransform *transform = gsk_transform_translate(NULL, &at);
    placed[i] = gsk_transform_node_new(rows[i], transform);
    gsk_transform_unref(transform);
  }
  GskRenderNode *column = gsk_container_node_new(placed, (guint)count);
  for (int i = 0; i < count; i++) gsk_render_node_unref(placed[i]);
  g_free(placed);
  return column;
}

static GskRenderNode *bundle_of(GskRenderNode *column, int row) {
  GskRenderNode *placed = gsk_container_node_get_child(column, (guint)row);
  assert_int_equal(gsk_render_node_get_node_type(placed), GSK_TRANSFORM_NODE);
  return gsk_transform_node_get_child(placed);
}

static void only_a_row_that_changed_is_recorded_again(void **state) {
  enum { ROWS = 30 };
  ox_bundle *bundle = ox_bundle_new();
  GskRenderNode *rows[ROWS], *kept[ROWS];
  for (int i = 0; i < ROWS; i++) rows[i] = row_new(i, 0.5F);
  GskRenderNode *column = column_new(rows, ROWS), *shown = ox_bundle_make(bundle, column);
  assert_int_equal(ox_bundle_recorded(bundle), ROWS);
  assert_in_range(count_of(shown), ROWS, 2 * ROWS + 1);
  for (int i = 0; i < ROWS; i++) {
    kept[i] = gsk_render_node_ref(bundle_of(shown, i));
    assert_int_equal(gsk_render_node_get_node_type(kept[i]), GSK_CAIRO_NODE);
  }
  for (int change = 0; change < 3; change++) {
    gsk_render_node_unref(rows[7]);
    rows[7] = row_new(7, 0.1F * (float)change);
    gsk_render_node_unref(column);
    gsk_render_node_unref(shown);
    column = column_new(rows, ROWS);
    shown = ox_bundle_make(bundle, column);
    assert_int_equal(ox_bundle_recorded(bundle), ROWS + change + 1);
    for (int i = 0; i < ROWS; i++)
      if (i == 7)
        assert_ptr_not_equal(bundle_of(shown, i), kept[i]);
      else
        assert_ptr_equal(bundle_of(shown, i), kept[i]);
  }
  GskRenderNode *again = ox_bundle_make(bundle, column);
  assert_ptr_equal(again, shown); /* nothing changed: nothing is to be drawn */
  gsk_render_node_unref(again);
  gsk_render_node_unref(shown);
  gsk_render_node_unref(column);
  for (int i = 0; i < ROWS; i++) {
    gsk_render_node_unref(rows[i]);
    gsk_render_node_unref(kept[i]);
  }
  ox_bundle_free(bundle);
}

/* What is drawn by cairo already is not recorded once more, however small what holds it is. */
static void a_drawing_is_left_as_it_is(void **state) {
  ox_bundle *bundle = ox_bundle_new();
  graphene_rect_t at = GRAPHENE_RECT_INIT(0, 0, 50, 50);
  GskRenderNode *parts[2] = {gsk_cairo_node_new(&at), row_new(0, 0.5F)};
  cairo_destroy(gsk_cairo_node_get_draw_context(parts[0]));
  GskRenderNode *both = gsk_container_node_new(parts, 2), *shown = ox_bundle_make(bundle, both);
  assert_int_equal(ox_bundle_recorded(bundle), 1);
  assert_ptr_equal(gsk_container_node_get_child(shown, 0), parts[0]);
  gsk_render_node_unref(shown);
  gsk_render_node_unref(both);
  gsk_render_node_unref(parts[0]);
  gsk_render_node_unref(parts[1]);
  ox_bundle_free(bundle);
  ox_bundle_free(NULL);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_window_in_bundles_looks_the_same),
      cmocka_unit_test(only_a_row_that_changed_is_recorded_again),
      cmocka_unit_test(a_drawing_is_left_as_it_is),
  };
  return cmocka_run_group_tests_name("bundle", tests, app_test_init, NULL);
}
