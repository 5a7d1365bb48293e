/* A route flown: to the arrival of a hold and on from it, in the plane about the fix.
 *
 * Legs between points are straight tracks in the plane, held by a heading into the wind at the
 * hold's altitude. A turn at a point begins before it, so that it rolls out on the next leg; where
 * the legs are too short for that, the point is flown over and the turn leads straight to the next
 * one. Every piece is an ox_leg, exact at any instant. Plain values, nothing allocates. */
#ifndef OXBOW_JOURNEY_H
#define OXBOW_JOURNEY_H

#include "oxbow/fix.h"
#include "oxbow/flight.h"

#define OX_JOURNEY_LEGS_MAX (3 * OX_ROUTE_POINTS_MAX)
#define OX_JOURNEY_WORDS_MAX 24
/* How far before the missed approach point the turn too early is shown. */
#define OX_JOURNEY_EARLY_NM 1.0
#define OX_JOURNEY_PATH_MAX 96
/* The arrival counts as that of the route when its track is within so many degrees of the leg. */
#define OX_JOURNEY_SAME_DEG 1.0

typedef struct {
  char name[OX_POINT_NAME_BYTES];
  ox_vec at_nm;            /* true, from the fix */
  double course_true_deg;  /* of the leg that arrives, at its end; of the first point that leaves */
  double nm;               /* length of that leg; 0 at the first point */
  double s;                /* time along it, 0 where it cannot be flown */
  bool climbs;             /* after the missed approach point: altitude_ft means something */
  double altitude_ft;      /* over the point, climbing at the case's rate from the elevation of the
                              missed approach point to the altitude of the hold */
} ox_journey_point;

typedef struct {
  size_t point_count;
  ox_journey_point points[OX_ROUTE_POINTS_MAX];
  int hold;                /* index of the point of the route that is the fix; -1: none */
  int missed;              /* of the missed approach point; -1: none */
  bool hold_allowed;
  bool joined;             /* the arrival of the case is the end of the arriving leg */
  double arriving_heading_true_deg; /* that makes good the arriving leg, where there is one */
  double arriving_nm;      /* its length */
  size_t leg_count, before; /* legs[0..before-1] end where the flight begins, in place and time; the
                              others begin where it ends, and lead to the last point of the route */
  ox_leg legs[OX_JOURNEY_LEGS_MAX];
  size_t early_count;      /* the way of who turns to the fix before the missed approach point */
  ox_vec early_nm[OX_JOURNEY_PATH_MAX];
  double early_course_true_deg; /* on it, at the fix */
  double early_off_nm;     /* farthest from the route */
} ox_journey;

/* OX_ERROR with the reason when a point or the fix has no place, or the case has a fault; a lesson
 * without a route gives a journey without points, OX_OK. OX_ADVISORY when the hold is at a point
 * where the route does not allow it. flight is that of the case. */
ox_status ox_journey_make(const ox_points *points, const ox_route *route, const ox_fix *fix,
                          const ox_case *c, const ox_flight *flight, ox_journey *out,
                          char *remark, size_t remark_bytes);

/* First and last instant (s), that of the flight between them included. */
double ox_journey_begin_s(const ox_journey *journey, const ox_flight *flight);
double ox_journey_end_s(const ox_journey *journey, const ox_flight *flight);
/* State at any instant (clamped): on the way to the flight, in it, or on from it. */
ox_state ox_journey_at(const ox_journey *journey, const ox_flight *flight, double t_s);

/* The flight with the legs of the route before and after it, as one flight: events, circuits and
 * everything else are the flight's own. Legs that it has no room for are left out at the ends. */
void ox_journey_flight(const ox_journey *journey, const ox_flight *flight, ox_flight *out);

/* What is to be said of the journey, one sentence a line: how the hold lies on the route, what the
 * arrival should be, the climb of the missed approach, a turn too early, where it goes on. */
size_t ox_journey_words(const ox_journey *journey, const ox_case *c,
                        char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES]);
/* What is to be said of a fix: its place, its cut and how good that is, how it moves with a delay.
 * Two or three lines; 0 where nothing says where it is. */
size_t ox_fix_words(const ox_points *points, const ox_fix *fix, const ox_case *c,
                    char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES]);
/* How far (NM) a fix ahead moves for each ten seconds that holding is delayed. */
double ox_fix_delay_nm(const ox_case *c);

#endif
