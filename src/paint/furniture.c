/* The furniture's texts, and the bands above and below the map. The map gets what is left, so that
 * nothing here ever hides the track. The caution stays longest. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "facts.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

static const double BAND_MOST = 0.24; /* share of the height for either band */
static const double FRAMED_SCALE_EM = 7.0; /* most room for the scale bar among the legend */

/* --- texts --------------------------------------------------------------------------------- */

static void make_north(ox_picture *p) {
  ox_furniture *f = &p->furniture;
  double variation_deg = p->scene.c->variation_deg;
  if (variation_deg == 0.0) {
    ox_lettering_make(&f->north_true, p->typesetter, C_("an arrow to north", "N"),
                      p->size.small, OX_TEXT_BOLD, 0);
    ox_lettering_make(&f->variation, p->typesetter, _("var 0°"), p->size.small, OX_TEXT_PLAIN, 0);
    return;
  }
  char figure[24], words[40];
  bool whole = fabs(variation_deg - round(variation_deg)) < 0.05;
  ox_number_text(figure, sizeof figure, fabs(variation_deg), whole ? 0 : 1);
  /* translators: the magnetic variation, west or east, beside the arrow to north */
  snprintf(words, sizeof words, variation_deg < 0 ? _("var %s° W") : _("var %s° E"), figure);
  ox_lettering_make(&f->north_true, p->typesetter, C_("an arrow to true north", "T"),
                    p->size.small, OX_TEXT_BOLD, 0);
  ox_lettering_make(&f->north_magnetic, p->typesetter, C_("an arrow to magnetic north", "M"),
                    p->size.small, OX_TEXT_BOLD, 0);
  ox_lettering_make(&f->variation, p->typesetter, words, p->size.small, OX_TEXT_PLAIN, 0);
}

static void make_wind(ox_picture *p) {
  const ox_setup *s = &p->scene.flight->setup;
  char words[64], from[24], kt[16];
  ox_wind_from_text(p, from, sizeof from);
  ox_number_text(kt, sizeof kt, s->wind_speed_kt, 0);
  if (s->wind_speed_kt < 0.5)
    snprintf(words, sizeof words, "%s", C_("the wind", "calm"));
  else
    snprintf(words, sizeof words, _("%s\n%s kt"), from, kt);
  ox_lettering_make(&p->furniture.wind_words, p->typesetter, words, p->size.small,
                    OX_TEXT_BOLD | OX_TEXT_CENTRED, 0);
}

static void scale_text(char *buf, size_t bytes, double nm) {
  char figure[24];
  ox_number_text(figure, sizeof figure, nm, nm < 0.1 ? 2 : nm < 1.0 ? 1 : 0);
  snprintf(buf, bytes, "%s NM", figure);
}

static void make_texts(ox_picture *p) {
  ox_furniture *f = &p->furniture;
  char words[64], direction[24];
  if (ox_has_layer(p, OX_LAYER_FURNITURE)) {
    make_north(p);
    ox_legend_make(p);
    scale_text(words, sizeof words, 0.05);
    ox_lettering_make(&f->scale_words, p->typesetter, words, p->size.small, OX_TEXT_PLAIN, 0);
  }
  if (ox_has_layer(p, OX_LAYER_WIND)) make_wind(p);
  ox_chart_make(p);
  if (!ox_has_layer(p, OX_LAYER_TRIANGLE)) return;
  ox_lettering_make(&f->triangle_head, p->typesetter, _("triangle of velocities"),
                    p->size.small, OX_TEXT_BOLD, 0);
  snprintf(direction, sizeof direction, "888 %s", ox_words_magnetic_mark());
  snprintf(words, sizeof words, _("track %s  %s kt"), direction, "888");
  ox_lettering_make(&f->row_sample, p->typesetter, words, p->size.small, OX_TEXT_BOLD, 0);
  for (int i = 0; i < OX_TRIANGLE_ROWS; i++)
    ox_lettering_make(&f->row[i], p->typesetter, "", p->size.small, OX_TEXT_PLAIN, 0);
}

/* --- bands --------------------------------------------------------------------------------- */

/* The caution whole, in as many lines as it takes, smaller rather than cut. */
static double place_caution(ox_picture *p, double pad) {
  ox_furniture *f = &p->furniture;
  double width = p->width - 2 * pad, size = p->size.small;
  for (int attempt = 0; attempt < 12; attempt++, size *= 0.88) {
    ox_lettering_make(&f->caution, p->typesetter, ox_words_caution_line(), size, OX_TEXT_PLAIN,
                      width);
    if (f->caution.height <= 0.16 * p->height && f->caution.width <= width + 0.5 && size >= 4.0)
      break;
  }
  if (f->caution.height > 0.3 * p->height || width < 24.0) return 0.0;
  f->caution_at = (ox_rect){pad, p->height - 0.7 * pad - f->caution.height, width,
                            f->caution.height};
  return f->caution.height + 1.0 * pad;
}

/* Sets a line at *y where the band above the map has room for it, and moves *y below it. */
static void place_line(const ox_picture *p, const ox_lettering *text, ox_rect *at, double pad,
                       double *y) {
  double width = p->width - 2 * pad;
  if (text->width > width + 0.5 || *y + text->height + 0.5 * pad > BAND_MOST * p->height) return;
  *at = (ox_rect){pad, *y, width, text->height};
  *y += text->height + 0.15 * pad;
}

/* The facts in as much detail as the width takes. */
static void make_facts(ox_picture *p, double width) {
  char words[512];
  for (int detail = 3; detail >= 0; detail--) {
    ox_facts_words(p, words, sizeof words, detail);
    ox_lettering_make(&p->furniture.facts, p->typesetter, words, p->size.small, OX_TEXT_PLAIN, 0);
    if (p->furniture.facts.width <= width) return;
  }
}

/* Returns where the map may begin. */
static double place_title(ox_picture *p, double pad) {
  ox_furniture *f = &p->furniture;
  double width = p->width - 2 * pad, y = 0.7 * pad;
  if (width < 24.0) return pad;
  char words[512];
  ox_title_words(p, words, sizeof words);
  ox_lettering_make(&f->title, p->typesetter, words, p->size.title,
                    OX_TEXT_BOLD | OX_TEXT_ONE_LINE, width);
  place_line(p, &f->title, &f->title_at, pad, &y);
  make_facts(p, width);
  place_line(p, &f->facts, &f->facts_at, pad, &y);
  const char *notice = ox_notice_words(p);
  if (notice) {
    ox_lettering_make(&f->notice, p->typesetter, notice, p->size.label, OX_TEXT_BOLD, width);
    place_line(p, &f->notice, &f->notice_at, pad, &y);
  }
  return y + 0.25 * pad;
}

void ox_build_furniture(ox_picture *p) {
  double side = fmin(p->width, p->height);
  double pad = fmin(0.9 * p->size.label, 0.06 * side);
  ox_rect room = {pad, pad, p->width - 2 * pad, p->height - 2 * pad};
  make_texts(p);
  if (ox_has_layer(p, OX_LAYER_FURNITURE) && !p->scene.framed) {
    double bottom = place_caution(p, pad);
    room.y = fmax(pad, place_title(p, pad) + 0.2 * pad);
    room.height = p->height - room.y - fmax(pad, bottom + 0.5 * pad);
  }
  const ox_layout *held = ox_held_layout(p);
  if (held) {
    ox_layout_restore(p, held);
    return;
  }
  ox_place_blocks(p, &room);
  room.width = fmax(room.width, 1.0);
  room.height = fmax(room.height, 1.0);
  p->map = room;
}

void ox_build_scale(ox_picture *p) {
  ox_furniture *f = &p->furniture;
  double room = p->scene.framed ? FRAMED_SCALE_EM * p->size.small : f->scale_at.width;
  if (room <= 0.0) return;
  double most_nm = room / p->home.dev_per_nm;
  double decade = pow(10.0, floor(log10(most_nm)));
  double share = most_nm / decade;
  f->scale_nm = decade * (share >= 5.0 ? 5.0 : share >= 2.0 ? 2.0 : 1.0);
  char words[40];
  scale_text(words, sizeof words, f->scale_nm);
  ox_lettering_change(&f->scale_words, p->typesetter, words);
}

void ox_furniture_clear(ox_furniture *f) {
  ox_lettering *all[] = {&f->title, &f->facts, &f->notice, &f->caution, &f->north_true,
                    &f->north_magnetic, &f->variation, &f->wind_words, &f->triangle_head,
                    &f->scale_words, &f->row_sample};
  for (size_t i = 0; i < sizeof all / sizeof *all; i++) ox_lettering_clear(all[i]);
  for (int i = 0; i < OX_TRIANGLE_ROWS; i++) ox_lettering_clear(&f->row[i]);
  ox_legend_clear(&f->legend);
  ox_chart_clear(&f->chart);
}
