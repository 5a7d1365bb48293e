/* Where the fix of a case is on the earth, and what of the case follows from that.
 *
 * The case itself keeps the fix's name alone, and flies in the plane about it. How the fix is
 * given stands here: it may have no place (only a name), the place of the lesson's point of that
 * name, a place of its own, or one ahead of the aircraft on its present track. Plain values,
 * nothing allocates; remarks as in place.h. */
#ifndef OXBOW_FIX_H
#define OXBOW_FIX_H

#include "oxbow/case.h"
#include "oxbow/fields.h"
#include "oxbow/route.h"

#define OX_FIX_AHEAD_MAX_NM 100.0
#define OX_FIX_AHEAD_MAX_S 3600.0

typedef enum {
  OX_FIX_NAMED,    /* by name alone: placed when the lesson has a point of that name */
  OX_FIX_POINT,    /* as `point` says; the name is the case's */
  OX_FIX_AHEAD_NM, /* so many miles ahead on the arrival's track */
  OX_FIX_AHEAD_S,  /* so many seconds ahead at the arrival's ground speed */
} ox_fix_kind;

typedef struct {
  ox_fix_kind kind;
  ox_point point;                        /* OX_FIX_POINT */
  double ahead_nm;                       /* OX_FIX_AHEAD_NM: 0..OX_FIX_AHEAD_MAX_NM */
  double ahead_s;                        /* OX_FIX_AHEAD_S: 0..OX_FIX_AHEAD_MAX_S */
  char present[OX_POINT_NAME_BYTES];     /* the point where the aircraft is; empty: not said */
  char station[OX_POINT_NAME_BYTES];     /* the point where the DME station of the leg is; empty: as
                                            the case has it, by radial and distance */
  bool station_elevation_given;          /* else the elevation is that of the point */
  double station_elevation_ft;
} ox_fix;

/* A fix by name alone. */
ox_fix ox_fix_named(void);
bool ox_fix_equal(const ox_fix *a, const ox_fix *b);
bool ox_point_equal(const ox_point *a, const ox_point *b);
bool ox_points_equal(const ox_points *a, const ox_points *b);
bool ox_route_equal(const ox_route *a, const ox_route *b);

/* Whether something says where the fix is; ox_fix_place may still find that it has no place. */
bool ox_fix_has_place(const ox_points *points, const ox_fix *fix, const ox_case *c);
/* Where it is. OX_ADVISORY for a poor cut; OX_ERROR with the reason when nothing says where it is,
 * or when what says it has no place. */
ox_status ox_fix_place(const ox_points *points, const ox_fix *fix, const ox_case *c, ox_latlon *out,
                       char *remark, size_t remark_bytes);
/* Track (true) and ground speed (kt) of the arrival, by the case's heading, airspeed and wind.
 * OX_ERROR for a case that ox_case_check refuses. */
ox_status ox_fix_arrival(const ox_case *c, double *track_true_deg, double *gs_kt);

/* Puts into the case what follows from the place: the arrival's distance of a fix ahead, and the
 * radial, distance and elevation of a station that is a point. OX_ERROR with the reason, the case
 * untouched, when that is beyond what a case takes or the fix has no place. */
ox_status ox_fix_settle(const ox_points *points, const ox_fix *fix, ox_case *c, char *remark,
                        size_t remark_bytes);

/* Whether the fix is counted from a point, is it, or has it as present position or station. */
bool ox_fix_uses(const ox_points *points, const ox_fix *fix, const ox_case *c, const char *name);
/* Follows the renaming of a point, in the fix and, where the fix is that point, in the case. Call
 * it before ox_points_rename. */
void ox_fix_rename(const ox_points *points, ox_fix *fix, ox_case *c, const char *name,
                   const char *new_name);

/* Where a point is that need not be in the list, counted from those that are. */
ox_status ox_point_place(const ox_points *points, const ox_point *point, ox_latlon *out,
                         char *remark, size_t remark_bytes);
/* The crossing of a point given by two radials. OX_ERROR for another kind. */
ox_status ox_point_crossing(const ox_points *points, const ox_point *point, ox_crossing *out,
                            char *remark, size_t remark_bytes);
/* How far (NM) the crossing may be off when each radial may be off by so many degrees: the
 * root of the sum of squares of what each radial moves it along the other, by plane geometry
 * (distance * tangent of the error / sine of the cut). */
double ox_crossing_error_nm(const ox_crossing *crossing, double error_deg);

/* The numbers of a point, keys as in a lesson file ("radial_deg"); offsets are in ox_point. An
 * altitude_ft makes the distance a DME reading. Static. */
const ox_field *ox_point_fields(size_t *count);
const ox_field *ox_point_field_by_key(const char *key); /* or NULL */
/* Which of its numbers a point of a kind has; declination and elevation belong to all. */
bool ox_point_has_field(const ox_point *point, const ox_field *field);

#endif
