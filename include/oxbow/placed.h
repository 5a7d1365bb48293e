/* A lesson's places as the painter wants them: marks and paths about the fix of a case. The one
 * thing that knows both places and pictures. A plain value, large: keep it on the heap. */
#ifndef OXBOW_PLACED_H
#define OXBOW_PLACED_H

#include "oxbow/journey.h"
#include "oxbow/picture.h"

#define OX_PLACED_MARKS_MAX (OX_ROUTE_POINTS_MAX + 8)
#define OX_PLACED_VERTICES_MAX 2048
#define OX_PLACED_PATHS_MAX 4

typedef struct {
  ox_mark marks[OX_PLACED_MARKS_MAX];
  size_t mark_count;
  ox_path paths[OX_PLACED_PATHS_MAX];
  size_t path_count;
  ox_journey journey; /* without points where there is none */
  char names[OX_PLACED_MARKS_MAX][OX_POINT_NAME_BYTES]; /* what the marks and paths point to */
  ox_vec vertices_nm[OX_PLACED_VERTICES_MAX];
  size_t vertex_count;
} ox_placed;

/* Fills it: the points of the route and those that the fix is counted from, the present position,
 * the route as it is flown, the missed approach, and who turns too early. Nothing where the fix has
 * no place, but for the present position of a fix ahead. Marks and paths point into *out: it must
 * stay where it is while a picture uses them. */
void ox_placed_make(const ox_points *points, const ox_route *route, const ox_fix *fix,
                    const ox_case *c, const ox_flight *flight, ox_placed *out);

/* And every other point of the lesson, as far as there is room: where points are placed, they are
 * to be seen before anything uses them. */
void ox_placed_add_points(const ox_points *points, const ox_fix *fix, const ox_case *c,
                          ox_placed *out);
/* The point of a mark, or NULL for one that is no point of the list. */
const ox_point *ox_placed_point(const ox_points *points, const ox_mark *mark);

#endif
