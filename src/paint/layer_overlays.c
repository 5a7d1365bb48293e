/* What is laid under one flight to learn from: the protected area as an illustration, and the band
 * in which many flights with everyday errors went. */
#include <math.h>

#include "oxbow/units.h"
#include "paint_private.h"

/* --- the protected area -------------------------------------------------------------------- */

static const double FARTHEST_DEV = 1e9;

typedef struct {
  ox_vec *corner;
  size_t count;
} polygon;

/* The part of a convex polygon where (q - on) . inwards >= 0; one corner more at most. */
static void cut(polygon *g, ox_vec on, ox_vec inwards) {
  ox_vec kept[OX_AREA_SIDES + 4];
  size_t count = 0;
  for (size_t i = 0; i < g->count; i++) {
    ox_vec a = g->corner[i], b = g->corner[(i + 1) % g->count];
    double da = ox_vec_dot(ox_vec_sub(a, on), inwards);
    double db = ox_vec_dot(ox_vec_sub(b, on), inwards);
    if (da >= 0.0 && count < sizeof kept / sizeof *kept) kept[count++] = a;
    if ((da >= 0.0) != (db >= 0.0) && count < sizeof kept / sizeof *kept)
      kept[count++] = ox_vec_add(a, ox_vec_scale(ox_vec_sub(b, a), da / (da - db)));
  }
  for (size_t i = 0; i < count; i++) g->corner[i] = kept[i];
  g->count = count;
}

void ox_build_area(ox_picture *p) {
  if (!p->scene.area) return;
  ox_area_shape *shape = &p->area;
  shape->corner_count = 0;
  polygon g = {shape->corner, OX_AREA_SIDES};
  ox_vec outline[OX_AREA_SIDES];
  ox_area_outline(p->scene.area, outline);
  for (int i = 0; i < OX_AREA_SIDES; i++) {
    shape->corner[i] = ox_to_dev(p, outline[i]);
    if (!(fabs(shape->corner[i].x) < FARTHEST_DEV) || !(fabs(shape->corner[i].y) < FARTHEST_DEV))
      return; /* cutting it to the map would lose its corners to rounding */
  }
  for (int i = 0; i < OX_AREA_SIDES; i++)
    ox_lines_clipped(&shape->edge, p->map, shape->corner[i],
                     shape->corner[(i + 1) % OX_AREA_SIDES]);
  ox_vec low = {p->map.x, p->map.y}, high = {low.x + p->map.width, low.y + p->map.height};
  cut(&g, low, (ox_vec){1, 0});
  cut(&g, low, (ox_vec){0, 1});
  cut(&g, high, (ox_vec){-1, 0});
  cut(&g, high, (ox_vec){0, -1});
  shape->corner_count = g.count;
}

/* Never without its words: an area that nobody is told to be an illustration is not shown. */
static bool is_named(const ox_picture *p) {
  if (ox_legend_names(p, OX_LINE_AREA)) return true;
  for (size_t i = 0; i < p->label_count; i++)
    if (p->labels[i].ink == OX_HUE_AREA && !p->labels[i].dropped) return true;
  return false;
}

void ox_layer_area(const ox_picture *p, cairo_t *cr) {
  const ox_area_shape *shape = &p->area;
  if (shape->corner_count < 3 || !is_named(p)) return;
  const ox_rgb *c = &p->palette->ink[OX_HUE_AREA];
  for (size_t i = 0; i < shape->corner_count; i++)
    cairo_line_to(cr, shape->corner[i].x, shape->corner[i].y);
  cairo_close_path(cr);
  cairo_set_source_rgba(cr, c->r, c->g, c->b, OX_AREA_FILL_ALPHA);
  cairo_fill(cr);
  ox_path_add(cr, &shape->edge);
  ox_line_style_set(p, cr, OX_LINE_AREA);
  cairo_stroke(cr);
}

/* --- the band of a spread ------------------------------------------------------------------ */

static const double LEAST_SHARE = 0.05; /* of the runs, as the legend says */
static const double LEAST_ALPHA = 0.35, RIM_ALPHA = 6.0 / 255.0;

/* The mean over a cell and its neighbours, near ones counting more: the scatter of the count
 * itself is not to be seen. */
static double smooth_count(const ox_spread *s, int row, int column) {
  static const double weight[3] = {0.25, 0.5, 0.25};
  double sum = 0.0;
  for (int dr = -1; dr <= 1; dr++)
    for (int dc = -1; dc <= 1; dc++) {
      int r = row + dr, c = column + dc;
      if (r < 0 || c < 0 || r >= OX_SPREAD_CELLS || c >= OX_SPREAD_CELLS) continue;
      sum += weight[dr + 1] * weight[dc + 1] * s->cells[r * OX_SPREAD_CELLS + c];
    }
  return sum;
}

/* How strong the band is, 0 to 255, for a share of the runs. */
static unsigned char strength(double share) {
  if (share < LEAST_SHARE) return 0;
  double more = sqrt(fmin((share - LEAST_SHARE) / (1.0 - LEAST_SHARE), 1.0));
  return (unsigned char)lround(255.0 * (LEAST_ALPHA + (1.0 - LEAST_ALPHA) * more));
}

static unsigned char strongest_about(const unsigned char *band, int row, int column) {
  unsigned char most = 0;
  for (int r = row - 1; r <= row + 1; r++)
    for (int c = column - 1; c <= column + 1; c++)
      if (r >= 0 && c >= 0 && r < OX_SPREAD_CELLS && c < OX_SPREAD_CELLS &&
          band[r * OX_SPREAD_CELLS + c] > most)
        most = band[r * OX_SPREAD_CELLS + c];
  return most;
}

static uint32_t premultiplied(const ox_rgb *ink, double alpha) {
  uint32_t a = (uint32_t)lround(255.0 * alpha), r = (uint32_t)lround(255.0 * alpha * ink->r);
  uint32_t g = (uint32_t)lround(255.0 * alpha * ink->g);
  return a << 24 | r << 16 | g << 8 | (uint32_t)lround(255.0 * alpha * ink->b);
}

/* A PDF smooths colour and transparency apart, so that the black of what is wholly transparent
 * would show as a dark rim: cells next to the band get its colour, too weak to be seen. */
static void fill_surface(cairo_surface_t *surface, const unsigned char *band, const ox_rgb *ink) {
  for (int row = 0; row < OX_SPREAD_CELLS; row++) {
    unsigned char *bytes = cairo_image_surface_get_data(surface);
    int stride = cairo_image_surface_get_stride(surface);
    uint32_t *pixels = (uint32_t *)(void *)(bytes + row * stride);
    for (int column = 0; column < OX_SPREAD_CELLS; column++) {
      double alpha = band[row * OX_SPREAD_CELLS + column] / 255.0;
      if (alpha == 0.0 && strongest_about(band, row, column) > 0) alpha = RIM_ALPHA;
      pixels[column] = premultiplied(ink, alpha);
    }
  }
  cairo_surface_mark_dirty(surface);
}

void ox_build_spread(ox_picture *p) {
  const ox_spread *s = p->scene.spread;
  if (!s || !s->cells || s->runs == 0 || p->scene.hide_answer) return;
  if (!(s->cell_nm > 0.0) || !isfinite(s->cell_nm)) return;
  unsigned char band[OX_SPREAD_CELLS * OX_SPREAD_CELLS]; /* rows from the north */
  bool any = false;
  for (int row = 0; row < OX_SPREAD_CELLS; row++)
    for (int column = 0; column < OX_SPREAD_CELLS; column++) {
      double runs = smooth_count(s, OX_SPREAD_CELLS - 1 - row, column);
      band[row * OX_SPREAD_CELLS + column] = strength(runs / (double)s->runs);
      any = any || band[row * OX_SPREAD_CELLS + column] > 0;
    }
  if (!any) return;
  p->spread = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, OX_SPREAD_CELLS, OX_SPREAD_CELLS);
  if (cairo_surface_status(p->spread) == CAIRO_STATUS_SUCCESS) {
    fill_surface(p->spread, band, &p->palette->ink[OX_HUE_BAND]);
    return;
  }
  cairo_surface_destroy(p->spread); /* out of memory: no band */
  p->spread = NULL;
}

void ox_layer_spread(const ox_picture *p, cairo_t *cr) {
  const ox_spread *s = p->scene.spread;
  if (!p->spread) return;
  double cell_dev = s->cell_nm * p->view.dev_per_nm, side_nm = s->cell_nm * OX_SPREAD_CELLS;
  ox_vec corner = ox_to_dev(p, (ox_vec){s->origin_nm.x, s->origin_nm.y + side_nm});
  /* A picture so small or so close that cairo's fixed point would not hold shows no band. */
  bool drawable = cell_dev > 0.02 && cell_dev < 2000.0 && fabs(corner.x) < 1e6 &&
                  fabs(corner.y) < 1e6;
  if (!drawable) return;
  cairo_translate(cr, corner.x, corner.y);
  cairo_rotate(cr, -p->view.up_deg * OX_RAD_PER_DEG);
  cairo_scale(cr, cell_dev, cell_dev);
  cairo_set_source_surface(cr, p->spread, 0.0, 0.0);
  cairo_pattern_set_filter(cairo_get_source(cr),
                           cell_dev < 1.0 ? CAIRO_FILTER_GOOD : CAIRO_FILTER_BILINEAR);
  cairo_paint(cr);
}
