/* Named points and a route through them: what a lesson keeps of places.
 *
 * A point is given by latitude and longitude, by radial and distance from another point, or by two
 * crossing radials; the points that it is counted from are named. Plain values, nothing allocates.
 * Remarks as in place.h: a sentence for OX_ERROR and OX_ADVISORY, empty for OX_OK, NULL allowed. */
#ifndef OXBOW_ROUTE_H
#define OXBOW_ROUTE_H

#include <stdbool.h>

#include "oxbow/place.h"

#define OX_POINT_NAME_BYTES 64 /* UTF-8 with the closing nul */
#define OX_POINTS_MAX 128
#define OX_ROUTE_POINTS_MAX 32

typedef enum { OX_POINT_AT, OX_POINT_RADIAL, OX_POINT_CROSSING } ox_point_kind;

typedef struct {
  char name[OX_POINT_NAME_BYTES];
  ox_point_kind kind;
  ox_latlon at;                   /* OX_POINT_AT */
  char from[OX_POINT_NAME_BYTES]; /* OX_POINT_RADIAL and OX_POINT_CROSSING */
  double radial_deg;              /* magnetic by the declination of `from` */
  double nm;                      /* OX_POINT_RADIAL: over the ground, or the DME reading */
  bool dme;                       /* nm is slant range, read at altitude_ft */
  double altitude_ft;
  char and_from[OX_POINT_NAME_BYTES]; /* OX_POINT_CROSSING */
  double and_radial_deg;
  double declination_deg;         /* of this point as a station, east positive */
  double elevation_ft;            /* of its DME antenna */
  bool inside;                    /* a lesson file has it where it is used, not in its list */
  bool unnamed;                   /* inside, and the name is ours: not written */
} ox_point;

typedef struct {
  size_t count;
  ox_point points[OX_POINTS_MAX];
} ox_points;

typedef struct {
  size_t count;
  char names[OX_ROUTE_POINTS_MAX][OX_POINT_NAME_BYTES];
  int missed_approach; /* index of the missed approach point, -1: none */
} ox_route;

/* By name, or NULL. */
const ox_point *ox_points_find(const ox_points *points, const char *name);

/* Where a point is, following what it is counted from. OX_ADVISORY for a poor cut anywhere on the
 * way; OX_ERROR for an unknown name, a point counted from itself, and whatever place.h refuses. */
ox_status ox_points_place(const ox_points *points, const char *name, ox_latlon *out, char *remark,
                          size_t remark_bytes);

/* Gives a point other numbers, in the way in which it is given, so that it comes to lie at a place:
 * minutes to a tenth, radials to a degree, distances to a tenth of a mile; fine: ten times as fine.
 * Status as ox_points_place; OX_ERROR: nothing has changed. Points counted from it move along. */
ox_status ox_points_bring(ox_points *points, const char *name, ox_latlon to, bool fine,
                          char *remark, size_t remark_bytes);

/* The same of every point of the list and of the route: OX_ERROR with the first that has no place.
 * An unknown name anywhere is an error too. */
ox_status ox_points_check(const ox_points *points, const ox_route *route, char *remark,
                          size_t remark_bytes);

/* Adds a point. OX_ERROR when the name is empty, taken or has control characters, when the list is
 * full, or when the point has no place; nothing is changed then. */
ox_status ox_points_add(ox_points *points, const ox_point *point, char *remark,
                        size_t remark_bytes);
/* Puts a point elsewhere: it is given by latitude and longitude from then on. OX_ERROR when it is
 * unknown, or when a point counted from it would lose its place; nothing is changed then. */
ox_status ox_points_move(ox_points *points, const char *name, ox_latlon at, char *remark,
                         size_t remark_bytes);
/* Gives a point another name, here and wherever it is named. route may be NULL. */
ox_status ox_points_rename(ox_points *points, ox_route *route, const char *name,
                           const char *new_name, char *remark, size_t remark_bytes);
/* Removes a point. Refused, with the names of its users, while another point is counted from it or
 * the route (may be NULL) leads over it, or `also_used_by` (may be NULL or empty) names others. */
ox_status ox_points_remove(ox_points *points, const ox_route *route, const char *name,
                           const char *also_used_by, char *remark, size_t remark_bytes);

/* The leg that arrives at a point of the route, index 1..count-1. */
ox_status ox_route_leg(const ox_points *points, const ox_route *route, size_t index,
                       ox_geodesic *out, char *remark, size_t remark_bytes);
/* The inbound course proposed for a hold at a point of the route: the course on which the arriving
 * leg ends, magnetic by the variation there (degrees, -180..180). At the first point it is the
 * course of the first leg, and an OX_ADVISORY. */
ox_status ox_route_inbound_deg(const ox_points *points, const ox_route *route, size_t index,
                               double variation_deg, double *inbound_deg, char *remark,
                               size_t remark_bytes);
/* Whether a hold may be at that point of the route: with a missed approach point, only after it. */
ox_status ox_route_hold_allowed(const ox_route *route, size_t index, char *remark,
                                size_t remark_bytes);

#endif
