/* Title, facts, caution, scale bar and the north arrows. */
#include <math.h>

#include "paint_private.h"

static void show(const ox_picture *p, cairo_t *cr, const ox_lettering *text, ox_rect at,
                 ox_hue ink) {
  if (at.width <= 0.0) return;
  ox_hue_set(p, cr, ink);
  ox_lettering_show(text, cr, at.x, at.y);
}

static void show_centred(const ox_picture *p, cairo_t *cr, const ox_lettering *text, ox_vec at,
                         ox_hue ink) {
  ox_hue_set(p, cr, ink);
  ox_lettering_show_ink(text, cr, at.x - text->ink.width / 2, at.y - text->ink.height / 2);
}

/* An arrow from its foot along a device bearing; a half head says magnetic. */
static void north_arrow(const ox_picture *p, cairo_t *cr, ox_vec foot, double bearing_deg,
                        double length, bool magnetic) {
  ox_vec u = ox_dev_unit(bearing_deg), tip = ox_vec_add(foot, ox_vec_scale(u, length));
  double head = 0.75 * p->size.small, width = 0.34 * head;
  ox_vec back = ox_vec_add(tip, ox_vec_scale(u, -head)), across = {-u.y * width, u.x * width};
  int outer = p->scene.c->variation_deg < 0.0 ? -1 : 1; /* the half away from true north */
  cairo_move_to(cr, foot.x, foot.y);
  cairo_line_to(cr, tip.x, tip.y);
  cairo_set_line_width(cr, p->size.course * 1.2);
  cairo_stroke(cr);
  cairo_move_to(cr, tip.x, tip.y);
  if (!magnetic || outer > 0) cairo_line_to(cr, back.x + across.x, back.y + across.y);
  if (magnetic) cairo_line_to(cr, back.x, back.y);
  if (!magnetic || outer < 0) cairo_line_to(cr, back.x - across.x, back.y - across.y);
  cairo_close_path(cr);
  cairo_fill(cr);
}

static void compass(const ox_picture *p, cairo_t *cr) {
  const ox_furniture *f = &p->furniture;
  ox_rect at = f->compass_at;
  if (at.width <= 0.0) return;
  double e = p->size.small, variation_deg = p->scene.c->variation_deg;
  double true_deg = ox_dev_bearing(p, 0.0), magnetic_deg = ox_dev_bearing(p, variation_deg);
  ox_vec foot = {at.x + at.width / 2, at.y + 4.55 * e};
  bool any_way = fabs(variation_deg) > 80.0 || true_deg != 0.0; /* not only upwards */
  if (any_way) foot.y -= 2.0 * e;
  double length = any_way ? 1.7 * e : 3.5 * e;
  ox_hue_set(p, cr, OX_HUE_TEXT);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash(cr, NULL, 0, 0.0);
  north_arrow(p, cr, foot, true_deg, length, false);
  ox_vec tip = ox_vec_add(foot, ox_vec_scale(ox_dev_unit(true_deg), length + 0.62 * e));
  show_centred(p, cr, &f->north_true, tip, OX_HUE_TEXT);
  if (variation_deg != 0.0) {
    double m = 0.86 * length;
    ox_hue_set(p, cr, OX_HUE_TEXT);
    north_arrow(p, cr, foot, magnetic_deg, m, true);
    /* Set aside from the tip, away from true north, however small the angle is. */
    double aside = variation_deg < 0 ? -90.0 : 90.0;
    ox_vec u = ox_dev_unit(magnetic_deg), w = ox_dev_unit(magnetic_deg + aside);
    ox_vec letter = ox_vec_add(ox_vec_scale(u, m - 0.35 * e), ox_vec_scale(w, 0.95 * e));
    letter = ox_vec_add(foot, letter);
    show_centred(p, cr, &f->north_magnetic, letter, OX_HUE_TEXT);
  }
  ox_hue_set(p, cr, OX_HUE_QUIET);
  ox_lettering_show(&f->variation, cr, at.x + (at.width - f->variation.width) / 2, at.y + 4.95 * e);
}

void ox_scale_bar_draw(const ox_picture *p, cairo_t *cr, double x, double y) {
  double e = p->size.small, length = p->furniture.scale_nm * p->view.dev_per_nm;
  cairo_move_to(cr, x, y - 0.45 * e);
  cairo_line_to(cr, x, y);
  cairo_line_to(cr, x + length, y);
  cairo_line_to(cr, x + length, y - 0.45 * e);
  cairo_move_to(cr, x + length / 2, y);
  cairo_line_to(cr, x + length / 2, y - 0.3 * e);
  ox_hue_set(p, cr, OX_HUE_TEXT);
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_SQUARE);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_width(cr, 1.2 * p->size.course);
  cairo_stroke(cr);
}

static void scale_bar(const ox_picture *p, cairo_t *cr) {
  const ox_furniture *f = &p->furniture;
  if (f->scale_at.width <= 0.0) return;
  double e = p->size.small, y = f->scale_at.y + f->scale_at.height - 0.15 * e;
  ox_scale_bar_draw(p, cr, f->scale_at.x, y);
  ox_lettering_show(&f->scale_words, cr, f->scale_at.x, y - 0.5 * e - f->scale_words.height);
}

/* Only where it turns with the board; otherwise it stands with the furniture. */
void ox_layer_compass(const ox_picture *p, cairo_t *cr) {
  if (p->turns) compass(p, cr);
}

void ox_layer_furniture(const ox_picture *p, cairo_t *cr) {
  const ox_furniture *f = &p->furniture;
  show(p, cr, &f->title, f->title_at, OX_HUE_TEXT);
  show(p, cr, &f->facts, f->facts_at, OX_HUE_QUIET);
  show(p, cr, &f->notice, f->notice_at, OX_HUE_TEXT);
  show(p, cr, &f->caution, f->caution_at, OX_HUE_QUIET);
  if (!p->turns) compass(p, cr);
  ox_legend_draw(p, cr);
  scale_bar(p, cr);
}
