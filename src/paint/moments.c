/* The key moments on a page: as many columns as make the pictures largest.
 *
 * All pictures show the same hold, so one is laid out and drawn as often as there are moments. */
#include "oxbow/moments_page.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/text.h"
#include "oxbow/words.h"
#include "paint_private.h"

static const double TRAIL_STEP_S = 2.0;
static const double TRAIL_SHARE = 0.03;   /* width of the bold line over the picture's side */
static const double PICTURE_TEXT = 1.9;   /* the aircraft is sized by the text */
static const double LEAST_PICTURE = 24.0; /* smaller than that the captions shrink instead */
static const double LEAST_TEXT = 3.0;

/* ---- one small picture ---------------------------------------------------------------------- */

ox_picture *ox_moment_picture_new(const ox_scene *scene, double width, double height) {
  ox_scene small = {.c = scene->c,
                    .flight = scene->flight,
                    .palette = scene->palette,
                    .text_scale = PICTURE_TEXT,
                    .layers = OX_LAYER_COURSE | OX_LAYER_TRACK | OX_LAYER_AIRCRAFT};
  return ox_picture_new(&small, width, height);
}

static void trail(const ox_picture *p, cairo_t *cr, double from_s, double t_s) {
  double steps = ceil(fmin((t_s - from_s) / TRAIL_STEP_S, 2000.0));
  cairo_rectangle(cr, p->map.x, p->map.y, p->map.width, p->map.height);
  cairo_clip(cr);
  cairo_new_path(cr);
  for (double i = 0.0; i <= steps; i++) {
    double at_s = from_s + (t_s - from_s) * i / steps;
    ox_vec at = ox_to_dev(p, ox_flight_at(p->scene.flight, at_s).p_nm);
    cairo_line_to(cr, at.x, at.y);
  }
  ox_hue_set(p, cr, OX_HUE_TRACK);
  cairo_set_dash(cr, NULL, 0, 0.0);
  cairo_set_line_width(cr, TRAIL_SHARE * fmin(p->width, p->height));
  cairo_set_line_cap(cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke(cr);
}

void ox_moment_picture_draw(ox_picture *picture, cairo_t *cr, double from_s, double t_s) {
  ox_picture_draw_still(picture, cr);
  if (t_s > from_s && picture->scene.flight->leg_count > 0) {
    cairo_save(cr);
    trail(picture, cr, from_s, t_s);
    cairo_restore(cr);
  }
  ox_picture_draw_moving(picture, cr, t_s);
}

/* ---- the page ------------------------------------------------------------------------------- */

typedef struct {
  const ox_scene *scene;
  const ox_moments *moments;
  const ox_palette *palette;
  ox_typesetter *typesetter;
  double width, height, margin, gap;
  double text;                   /* size of a caption */
  ox_lettering title, hold, caution;
  ox_lettering what[OX_MOMENTS_MAX], more[OX_MOMENTS_MAX];
  double captions;               /* height of the tallest */
  double top, bottom;            /* of the room for the tiles */
  int columns, rows;
  double tile_width, tile_height;
} page;

static void hue(const page *p, cairo_t *cr, ox_hue which) {
  const ox_rgb *c = &p->palette->ink[which];
  cairo_set_source_rgb(cr, c->r, c->g, c->b);
}

static void hold_words(const page *p, char *out, size_t bytes) {
  const ox_case *c = p->scene->c;
  const ox_setup *s = &p->scene->flight->setup;
  char inbound[4], course[16], from[4], altitude[24], tas[24], wind[24], blows[64];
  bool right = c->hold.turns == OX_TURNS_RIGHT, differs = c->variation_deg != 0.0;
  ox_words_bearing(inbound, c->hold.inbound_deg);
  snprintf(course, sizeof course, "%s%s%s", inbound, differs ? " " : "",
           differs ? ox_words_magnetic_mark() : "");
  ox_words_bearing(from, s->wind_from_true_deg);
  ox_number_text(altitude, sizeof altitude, c->hold.altitude_ft, 0);
  ox_number_text(tas, sizeof tas, s->tas_kt, 0);
  ox_number_text(wind, sizeof wind, s->wind_speed_kt, 0);
  if (s->wind_speed_kt < 0.5)
    snprintf(blows, sizeof blows, "%s", C_("the wind", "calm"));
  else
    snprintf(blows, sizeof blows, _("wind from %s T %s kt"), from, wind);
  /* translators: fix, course, altitude, true airspeed, wind */
  snprintf(out, bytes, right ? _("%s, inbound course %s, right turns, %s ft, %s kt true, %s")
                             : _("%s, inbound course %s, left turns, %s ft, %s kt true, %s"),
           c->hold.fix[0] ? c->hold.fix : C_("a place", "The fix"), course, altitude, tas, blows);
}

static void head(page *p) {
  char words[256], hold[512], facts[256];
  const char *title = p->scene->title, *name = p->scene->c->name;
  hold_words(p, facts, sizeof facts);
  snprintf(words, sizeof words, _("Key moments: %s"),
           *name ? name : C_("key moments of", "the hold"));
  snprintf(hold, sizeof hold, "%s%s%s", title ? title : "", title && *title ? "\n" : "", facts);
  double width = p->width - 2.0 * p->margin;
  ox_lettering_make(&p->title, p->typesetter, words, 1.45 * p->text,
                    OX_TEXT_BOLD | OX_TEXT_TWO_LINES, width);
  ox_lettering_make(&p->hold, p->typesetter, hold, p->text, OX_TEXT_PLAIN, width);
  ox_lettering_make(&p->caution, p->typesetter, ox_words_caution_line(), p->text, OX_TEXT_PLAIN,
                    width);
  p->top = p->margin + p->title.height + 0.3 * p->text + p->hold.height + p->text;
  p->bottom = p->height - 0.8 * p->margin - p->caution.height - 0.8 * p->text;
}

static void captions(page *p) {
  p->captions = 0.0;
  for (size_t i = 0; i < p->moments->count; i++) {
    const ox_moment *m = &p->moments->moment[i];
    char what[128], more[320];
    snprintf(what, sizeof what, "%zu  %s", i + 1, m->what);
    snprintf(more, sizeof more, "%s\n%s", m->figures, m->act);
    ox_lettering_make(&p->what[i], p->typesetter, what, 1.08 * p->text, OX_TEXT_BOLD,
                      p->tile_width);
    ox_lettering_make(&p->more[i], p->typesetter, more, p->text, OX_TEXT_PLAIN, p->tile_width);
    p->captions = fmax(p->captions, p->what[i].height + p->more[i].height);
  }
}

/* Room that the picture has in a tile when there are so many columns; captions are laid out. */
static double picture_side(page *p, int columns) {
  int count = (int)p->moments->count;
  p->columns = columns;
  p->rows = (count + columns - 1) / columns;
  p->tile_width = (p->width - 2.0 * p->margin - (columns - 1) * p->gap) / columns;
  p->tile_height = (p->bottom - p->top - (p->rows - 1) * p->gap) / p->rows;
  if (p->tile_width < 2.0 || p->tile_height < 2.0) return 0.0;
  captions(p);
  return fmin(1.6 * (p->tile_height - p->captions), p->tile_width);
}

static double choose_columns(page *p) {
  double best = 0.0;
  int columns = 1;
  for (int n = 1; n <= (int)p->moments->count; n++) {
    double side = picture_side(p, n);
    if (side > best + 0.5) {
      best = side;
      columns = n;
    }
  }
  return picture_side(p, columns);
}

static void lay_out(page *p) {
  double side = fmin(p->width, p->height);
  p->margin = 0.045 * side;
  p->gap = 0.03 * side;
  p->text = fmax(p->palette->label_share * side, fmin(p->palette->least_text, 0.02 * side));
  for (;;) {
    head(p);
    if (p->moments->count == 0 || choose_columns(p) >= fmin(LEAST_PICTURE, 0.1 * side)) return;
    if (p->text < LEAST_TEXT) return;
    p->text *= 0.9;
  }
}

static void tile(const page *p, cairo_t *cr, ox_picture *picture, size_t i, double height) {
  const ox_moments *m = p->moments;
  double x = p->margin + (double)((int)i % p->columns) * (p->tile_width + p->gap);
  double y = p->top + (double)((int)i / p->columns) * (p->tile_height + p->gap);
  cairo_save(cr);
  cairo_translate(cr, x, y);
  cairo_rectangle(cr, 0.0, 0.0, p->tile_width, height);
  cairo_clip(cr);
  ox_moment_picture_draw(picture, cr, i > 0 ? m->moment[i - 1].t_s : m->moment[i].t_s,
                         m->moment[i].t_s);
  cairo_restore(cr);
  hue(p, cr, OX_HUE_ROSE);
  cairo_set_line_width(cr, 0.06 * p->text);
  cairo_rectangle(cr, x, y, p->tile_width, height);
  cairo_stroke(cr);
  hue(p, cr, OX_HUE_TEXT);
  double below = y + height + 0.25 * p->text;
  ox_lettering_show(&p->what[i], cr, x, below);
  ox_lettering_show(&p->more[i], cr, x, below + p->what[i].height);
}

static void tiles(const page *p, cairo_t *cr) {
  double height = p->tile_height - p->captions - 0.3 * p->text;
  if (p->moments->count == 0 || !(height > 1.0) || !(p->tile_width > 1.0)) return;
  ox_picture *picture = ox_moment_picture_new(p->scene, p->tile_width, height);
  if (!picture) return;
  for (size_t i = 0; i < p->moments->count; i++) tile(p, cr, picture, i, height);
  ox_picture_free(picture);
}

static void draw(const page *p, cairo_t *cr) {
  cairo_set_operator(cr, CAIRO_OPERATOR_OVER);
  cairo_set_dash(cr, NULL, 0, 0.0);
  hue(p, cr, OX_HUE_BOARD);
  cairo_rectangle(cr, 0.0, 0.0, p->width, p->height);
  cairo_fill(cr);
  hue(p, cr, OX_HUE_TEXT);
  ox_lettering_show(&p->title, cr, p->margin, p->margin);
  ox_lettering_show(&p->hold, cr, p->margin, p->margin + p->title.height + 0.3 * p->text);
  ox_lettering_show(&p->caution, cr, p->margin,
                    p->height - 0.8 * p->margin - p->caution.height);
  tiles(p, cr);
}

void ox_moments_page_draw(cairo_t *cr, const ox_scene *scene, const ox_moments *moments,
                          double width, double height) {
  if (!(width > 0.0) || !(height > 0.0) || !isfinite(width) || !isfinite(height)) return;
  page p = {.scene = scene,
            .moments = moments,
            .palette = ox_palette_get(scene->palette),
            .typesetter = ox_typesetter_new(),
            .width = width,
            .height = height};
  lay_out(&p);
  cairo_save(cr);
  cairo_new_path(cr);
  draw(&p, cr);
  cairo_new_path(cr);
  cairo_restore(cr);
  ox_lettering *all[] = {&p.title, &p.hold, &p.caution};
  for (size_t i = 0; i < sizeof all / sizeof *all; i++) ox_lettering_clear(all[i]);
  for (size_t i = 0; i < moments->count; i++) {
    ox_lettering_clear(&p.what[i]);
    ox_lettering_clear(&p.more[i]);
  }
  ox_typesetter_free(p.typesetter);
}
