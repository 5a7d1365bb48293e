/* Ink: what an instructor draws by hand over the picture of a case.
 *
 * Points lie on the plane about the holding fix (NM, x east, y north, true), so that ink moves and
 * grows with the picture. They are whole ten-thousandths of a mile, which is what a lesson file
 * holds: ink that was written and read again is equal to what was written.
 *
 * Ownership: an ink made here is freed with ox_ink_free. Every function that can fail leaves the
 * ink as it was. Where an ink may be NULL, NULL is an ink without strokes. */
#ifndef OXBOW_INK_H
#define OXBOW_INK_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/angle.h"
#include "oxbow/status.h"

/* By role; the painter's palettes give the colours. Black is drawn white on a dark board. */
typedef enum {
  OX_INK_BLACK, OX_INK_VERMILLION, OX_INK_BLUE, OX_INK_COLOUR_COUNT
} ox_ink_colour;
typedef enum { OX_INK_THIN, OX_INK_BROAD, OX_INK_WIDTH_COUNT } ox_ink_width;

#define OX_INK_STROKES_MAX 1000  /* of one ink */
#define OX_INK_POINTS_MAX 20000  /* of all strokes of one ink */
#define OX_INK_REACH_NM 500.0    /* east or north of the fix, either way */
#define OX_INK_GRAIN_NM 1e-4     /* points are whole multiples of it */

/* One stroke; one of a single point is a dot. */
typedef struct {
  ox_ink_colour colour;
  ox_ink_width width;
  size_t count; /* >= 1 */
  ox_vec *points_nm;
  size_t room; /* points there is memory for; only for this library */
} ox_ink_stroke;

/* Strokes in the order they were drawn; all zero: none. */
typedef struct {
  size_t stroke_count;
  ox_ink_stroke *strokes;
  size_t room; /* strokes there is memory for; only for this library */
} ox_ink;

/* "black", "vermillion", "blue"; "thin", "broad": the words of lesson files. */
const char *ox_ink_colour_name(ox_ink_colour colour);
const char *ox_ink_width_name(ox_ink_width width);

/* NULL when memory is out. */
ox_ink *ox_ink_new(void);
/* A copy with memory of its own; NULL when memory is out. ink may be NULL. */
ox_ink *ox_ink_copy(const ox_ink *ink);
void ox_ink_free(ox_ink *ink); /* NULL is allowed */

/* Both may be NULL. The same strokes in the same order, point for point. */
bool ox_ink_equal(const ox_ink *a, const ox_ink *b);
bool ox_ink_is_empty(const ox_ink *ink);
/* Points of all strokes. ink may be NULL. */
size_t ox_ink_point_count(const ox_ink *ink);
/* The rectangle round all points; false without points (outputs untouched). */
bool ox_ink_bounds(const ox_ink *ink, ox_vec *min_nm, ox_vec *max_nm);

/* Begins a stroke at a point. OX_ERROR when memory is out, a limit is reached, or the point is not
 * finite or beyond OX_INK_REACH_NM. */
ox_status ox_ink_begin(ox_ink *ink, ox_ink_colour colour, ox_ink_width width, ox_vec point_nm);
/* Adds a point to the last stroke; the same errors, and without a stroke. A point on the one
 * before it adds nothing. */
ox_status ox_ink_extend(ox_ink *ink, ox_vec point_nm);
/* Adds a copy of a stroke; the same errors. */
ox_status ox_ink_append(ox_ink *ink, const ox_ink_stroke *stroke);
/* Takes the last stroke away, if there is one. */
void ox_ink_drop_last(ox_ink *ink);
void ox_ink_clear(ox_ink *ink);

/* Leaves out points of the last stroke that lie within a tolerance (NM, >= 0) of the line through
 * those that stay (Douglas and Peucker 1973). The ends stay. OX_ERROR when memory is out. */
ox_status ox_ink_simplify_last(ox_ink *ink, double tolerance_nm);

/* Takes away all ink nearer than radius_nm (> 0) to a path of count >= 1 points: strokes are cut
 * where they enter and leave, and fall apart. *touched (may be NULL) says whether anything went.
 * OX_ERROR when memory is out, a number is not finite, or the parts would exceed a limit. */
ox_status ox_ink_erase(ox_ink *ink, const ox_vec *path_nm, size_t count, double radius_nm,
                       bool *touched);

#endif
