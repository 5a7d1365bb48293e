/* The list of line pieces that labels keep clear of. */
#include <stdlib.h>

#include "labels.h"

void ox_segments_add(ox_segments *list, ox_vec a, ox_vec b) {
  if (list->count == list->room) {
    size_t room = list->room ? list->room * 2 : 256;
    ox_segment *grown = realloc(list->s, room * sizeof *grown);
    if (!grown) return;
    list->s = grown;
    list->room = room;
  }
  list->s[list->count++] = (ox_segment){a, b};
}

void ox_segments_add_lines(ox_segments *list, const ox_lines *lines) {
  for (size_t i = 1; i < lines->count; i++) {
    const ox_line_point *p = &lines->p[i - 1], *q = &lines->p[i];
    if (!q->move) ox_segments_add(list, (ox_vec){p->x, p->y}, (ox_vec){q->x, q->y});
  }
}

void ox_segments_add_rect(ox_segments *list, ox_rect r) {
  ox_vec p[4] = {{r.x, r.y},
                 {r.x + r.width, r.y},
                 {r.x + r.width, r.y + r.height},
                 {r.x, r.y + r.height}};
  for (int i = 0; i < 4; i++) ox_segments_add(list, p[i], p[(i + 1) % 4]);
}

void ox_segments_clear(ox_segments *list) {
  free(list->s);
  *list = (ox_segments){0};
}
