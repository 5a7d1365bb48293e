/* The layout of map and furniture, kept from one picture to the next: while a hand drags a line of
 * the hold, rows of the legend, the chart or a notice come and go, and the map must not jump. */
#include <stdlib.h>

#include "facts.h"
#include "paint_private.h"

#define PLACES 10

struct ox_layout {
  double width, height, text; /* of the board, and the size of its small type */
  ox_rect map;
  ox_rect place[PLACES]; /* of the furniture, as places_of has them */
  ox_legend legend;      /* without its words */
};

static void places_of(ox_furniture *f, ox_rect *out[PLACES]) {
  ox_rect *all[PLACES] = {&f->title_at, &f->facts_at,    &f->notice_at, &f->caution_at,
                          &f->compass_at, &f->wind_at,   &f->triangle_at, &f->chart_at,
                          &f->legend_at, &f->scale_at};
  for (int i = 0; i < PLACES; i++) out[i] = all[i];
}

ox_layout *ox_layout_of(const ox_picture *p) {
  ox_layout *l = calloc(1, sizeof *l);
  if (!l) return NULL;
  ox_furniture f = p->furniture; /* only its places are looked at */
  ox_rect *place[PLACES];
  places_of(&f, place);
  for (int i = 0; i < PLACES; i++) l->place[i] = *place[i];
  l->width = p->width;
  l->height = p->height;
  l->text = p->size.small;
  l->map = p->map;
  l->legend = f.legend;
  for (int i = 0; i < OX_LINE_COUNT; i++) l->legend.words[i] = (ox_lettering){0};
  return l;
}

void ox_layout_free(ox_layout *layout) { free(layout); }

const ox_layout *ox_held_layout(const ox_picture *p) {
  const ox_layout *l = p->scene.held ? p->scene.held->layout : NULL;
  bool fits = l && l->width == p->width && l->height == p->height && l->text == p->size.small;
  return fits ? l : NULL;
}

/* A notice that was not there before takes the line of the facts, in one line. */
static void place_notice(ox_picture *p) {
  ox_furniture *f = &p->furniture;
  if (!f->notice.layout || f->notice_at.width > 0.0 || !(f->facts_at.width > 0.0)) return;
  ox_lettering_make(&f->notice, p->typesetter, ox_notice_words(p), p->size.small,
                    OX_TEXT_BOLD | OX_TEXT_ONE_LINE, f->facts_at.width);
  f->notice_at = f->facts_at;
  f->facts_at = (ox_rect){0, 0, 0, 0};
}

void ox_layout_restore(ox_picture *p, const ox_layout *l) {
  ox_rect *place[PLACES];
  places_of(&p->furniture, place);
  for (int i = 0; i < PLACES; i++) *place[i] = l->place[i];
  p->map = l->map;
  place_notice(p);
  ox_legend_hold(p, &l->legend);
}
