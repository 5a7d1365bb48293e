/* A small chart of what adjusting does: the inbound time of every circuit against the time it is
 * to take. It stands with the furniture, not in the map. */
#include <math.h>
#include <stdio.h>

#include "oxbow/text.h"
#include "oxbow/units.h"
#include "oxbow/words.h"
#include "paint_private.h"

static const int LEAST_CIRCUITS = 3;
static const double LEAST_CHANGE_S = 1.0; /* below it the chart is a straight line */
static const double HEAD_EM = 1.7, NUMBERS_EM = 1.4, PLOT_EM = 5.8, VALUE_EM = 1.15;
/* Between the points and the plot's edge, with values to write there and without. */
static const double VALUE_ROOM_EM = 1.75, BARE_EM = 0.5;

/* --- what is in it ------------------------------------------------------------------------- */

static void collect(ox_chart *k, const ox_flight *f) {
  k->goal_s = k->least_s = k->most_s = f->setup.goal_value;
  double least_s = HUGE_VAL, most_s = 0.0;
  for (size_t i = 0; i < f->circuit_count && i < OX_CIRCUITS_MAX; i++) {
    double s = f->circuits[i].inbound_s;
    if (!f->circuits[i].complete || !(s > 0.0)) break; /* the fix was lost: no time to show */
    k->s[k->count++] = s;
    least_s = fmin(least_s, s);
    most_s = fmax(most_s, s);
  }
  if (k->count < LEAST_CIRCUITS || most_s - least_s <= LEAST_CHANGE_S) k->count = 0;
  k->least_s = fmin(k->goal_s, least_s);
  k->most_s = fmax(k->goal_s, most_s);
}

/* The first, the last, and as many between as can be told apart. */
static void choose_marks(ox_chart *k) {
  int step = 1;
  while ((k->count - 1 + step - 1) / step + 1 > OX_CHART_MARKS) step++;
  for (int i = 0; i < k->count - 1; i += step)
    if (i == 0 || k->count - 1 - i > step / 2) k->mark[k->mark_count++] = i;
  k->mark[k->mark_count++] = k->count - 1;
}

void ox_chart_make(ox_picture *p) {
  ox_chart *k = &p->furniture.chart;
  const ox_flight *f = p->scene.flight;
  if (!ox_has_layer(p, OX_LAYER_CHART) || f->setup.goal != OX_GOAL_INBOUND_S) return;
  if (p->scene.hide_answer) return;
  if (f->leave_t_s > 0.0) return; /* the last circuits are cut on purpose: nothing is adjusted */
  collect(k, f);
  if (k->count == 0) return;
  choose_marks(k);
  char words[64], time[24];
  ox_words_min_s(time, sizeof time, k->goal_s);
  /* translators: over the little chart of inbound times; %s is the time wanted, as 1:00 */
  snprintf(words, sizeof words, _("inbound, goal %s"), time);
  ox_lettering_make(&k->head, p->typesetter, words, p->size.small, OX_TEXT_BOLD, 0.0);
  for (int i = 0; i < k->mark_count; i++) {
    snprintf(words, sizeof words, "%d", k->mark[i] + 1);
    ox_lettering_make(&k->number[i], p->typesetter, words, p->size.small, OX_TEXT_PLAIN, 0.0);
    ox_words_min_s(time, sizeof time, k->s[k->mark[i]]);
    ox_lettering_make(&k->value[i], p->typesetter, time, p->size.small, OX_TEXT_PLAIN, 0.0);
  }
}

void ox_chart_clear(ox_chart *k) {
  ox_lettering_clear(&k->head);
  for (int i = 0; i < OX_CHART_MARKS; i++) {
    ox_lettering_clear(&k->number[i]);
    ox_lettering_clear(&k->value[i]);
  }
}

ox_extent ox_chart_extent(const ox_picture *p) {
  const ox_chart *k = &p->furniture.chart;
  double e = p->size.small;
  if (k->count == 0) return (ox_extent){0.0, 0.0};
  return (ox_extent){fmax(10.0 * e, k->head.width), (HEAD_EM + PLOT_EM + NUMBERS_EM) * e};
}

/* --- drawing ------------------------------------------------------------------------------- */

typedef struct {
  const ox_chart *chart;
  ox_rect plot; /* that the points lie in */
} axes;

static ox_vec point(const axes *a, int circuit) {
  const ox_chart *k = a->chart;
  double across = (double)circuit / (k->count - 1);
  double up = (k->s[circuit] - k->least_s) / (k->most_s - k->least_s);
  return (ox_vec){a->plot.x + across * a->plot.width,
                  a->plot.y + (1.0 - up) * a->plot.height};
}

static double goal_y(const axes *a) {
  const ox_chart *k = a->chart;
  double up = (k->goal_s - k->least_s) / (k->most_s - k->least_s);
  return a->plot.y + (1.0 - up) * a->plot.height;
}

static void lines(const ox_picture *p, cairo_t *cr, const axes *a) {
  double r = 0.26 * p->size.small, out = 0.8 * p->size.small, y = goal_y(a);
  cairo_move_to(cr, a->plot.x - out, y);
  cairo_line_to(cr, a->plot.x + a->plot.width + out, y);
  ox_line_style_set(p, cr, OX_LINE_COURSE);
  cairo_stroke(cr);
  for (int i = 0; i < a->chart->count; i++) {
    ox_vec at = point(a, i);
    cairo_line_to(cr, at.x, at.y);
  }
  ox_line_style_set(p, cr, OX_LINE_LATER);
  cairo_stroke(cr);
  for (int i = 0; i < a->chart->count; i++) {
    ox_vec at = point(a, i);
    cairo_new_sub_path(cr);
    cairo_arc(cr, at.x, at.y, r, 0.0, 2.0 * OX_PI);
  }
  cairo_fill(cr);
}

static void show_centred(cairo_t *cr, const ox_lettering *text, double x, double y) {
  ox_lettering_show_ink(text, cr, x - text->ink.width / 2, y - text->ink.height / 2);
}

/* Numbers under the plot; the times away from the goal, where there is room beside each other. */
static void figures(const ox_picture *p, cairo_t *cr, const axes *a, double numbers_y) {
  const ox_chart *k = a->chart;
  double e = p->size.small, free_from = -HUGE_VAL;
  ox_vec last = point(a, k->mark[k->mark_count - 1]);
  double last_from = last.x - k->value[k->mark_count - 1].ink.width / 2;
  for (int i = 0; i < k->mark_count; i++) {
    ox_vec at = point(a, k->mark[i]);
    double half = k->value[i].ink.width / 2, gap = 0.5 * e;
    bool ends = i == 0 || i == k->mark_count - 1;
    ox_hue_set(p, cr, OX_HUE_QUIET);
    show_centred(cr, &k->number[i], at.x, numbers_y);
    bool settled = fabs(k->s[k->mark[i]] - k->s[k->count - 1]) < 0.5;
    if (!ends && (settled || at.x - half < free_from || at.x + half + gap > last_from)) continue;
    free_from = at.x + half + gap;
    /* At the goal, to the second that is shown, a time stands above the line. */
    double away = k->s[k->mark[i]] < k->goal_s - 0.5 ? VALUE_EM * e : -VALUE_EM * e;
    ox_hue_set(p, cr, OX_HUE_TRACK_TEXT);
    show_centred(cr, &k->value[i], at.x, at.y + away);
  }
}

void ox_layer_chart(const ox_picture *p, cairo_t *cr) {
  const ox_rect *at = &p->furniture.chart_at;
  const ox_chart *k = &p->furniture.chart;
  if (at->width <= 0.0 || k->count == 0) return;
  double e = p->size.small, side = 1.5 * e;
  double above = VALUE_ROOM_EM * e;
  double below = (k->least_s < k->goal_s ? VALUE_ROOM_EM : BARE_EM) * e;
  axes a = {k, {at->x + side, at->y + HEAD_EM * e + above, at->width - 2.0 * side, 0.0}};
  a.plot.height = at->y + at->height - NUMBERS_EM * e - below - a.plot.y;
  if (!(a.plot.height > 0.0) || !(a.plot.width > 0.0)) return;
  ox_hue_set(p, cr, OX_HUE_TEXT);
  ox_lettering_show(&k->head, cr, at->x, at->y);
  lines(p, cr, &a);
  figures(p, cr, &a, at->y + at->height - 0.6 * e);
}
