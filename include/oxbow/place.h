/* Places on the earth: WGS 84 latitude and longitude, radial and distance, crossing radials, a
 * point ahead, and the exact local plane about a fix.
 *
 * Every line is a geodesic (PROJ's geodesic.h). Radials are magnetic by the declination of the
 * station, which is a figure of its own and not the variation at the fix. Where a function takes
 * `remark`, it puts a sentence there for OX_ERROR (what is allowed) and for OX_ADVISORY, and an
 * empty one for OX_OK; it may be NULL with 0 bytes. No function keeps state or uses the locale. */
#ifndef OXBOW_PLACE_H
#define OXBOW_PLACE_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/angle.h"
#include "oxbow/status.h"

#define OX_REMARK_BYTES 240          /* holds every sentence of places and navdata */
#define OX_COORDINATES_BYTES 64      /* holds every printed form */
#define OX_PLACE_DISTANCE_MAX_NM 1000.0
#define OX_CUT_POOR_DEG 30.0         /* below this a crossing is an advisory */
#define OX_CUT_LEAST_DEG 1.0         /* below this radials count as parallel */

typedef struct {
  double lat_deg; /* north positive, -90..90 */
  double lon_deg; /* east positive, -180..180 */
} ox_latlon;

/* Finite and in range. */
bool ox_latlon_valid(ox_latlon p);

typedef enum {
  OX_FORM_DECIMAL,         /* 42.747278, -73.803186 */
  OX_FORM_DECIMAL_LETTERS, /* 42.747278N 073.803186W */
  OX_FORM_DEG_MIN,         /* N42°44.837' W073°48.191' */
  OX_FORM_DEG_MIN_SEC,     /* N42°44'50.20" W073°48'11.47" */
  OX_FORM_HYPHENS,         /* 42-44-50.20N 073-48-11.47W */
  OX_FORM_PACKED_DEG,      /* 43N074W: flight plan, whole degrees */
  OX_FORM_PACKED_DEG_MIN,  /* 4245N07348W: flight plan, whole minutes */
  OX_FORM_PACKED_SEC,      /* 424450N0734811W: whole seconds */
  OX_FORM_ARINC,           /* N42445020W073481147: hundredths of seconds */
  OX_FORM_COUNT
} ox_coordinates_form;

/* Reads a latitude and longitude in any of those forms and their common variants: the letters
 * before or after, in either order; spaces, hyphens, colons or symbols between the figures; signs
 * instead of letters (latitude first); packed figures with decimals. Decimal point, never comma. */
ox_status ox_latlon_parse(const char *text, ox_latlon *out, char *remark, size_t remark_bytes);

/* Prints a place; rounding carries (59.9996' is the next degree). OX_ERROR for a place out of
 * range, an unknown form or a buffer too small (OX_COORDINATES_BYTES is enough). */
ox_status ox_latlon_print(ox_latlon p, ox_coordinates_form form, char *buf, size_t bytes);

/* The geodesic between two valid places. */
typedef struct {
  double distance_nm;
  double from_bearing_deg; /* true, leaving the first place, [0, 360) */
  double to_bearing_deg;   /* true, arriving at the second, [0, 360) */
} ox_geodesic;
/* OX_ERROR when a place is out of range. At distance 0 both bearings are the same. */
ox_status ox_geodesic_between(ox_latlon from, ox_latlon to, ox_geodesic *out);

/* A place along a true bearing (degrees, any finite) at 0..OX_PLACE_DISTANCE_MAX_NM.
 * arriving_deg (may be NULL) is the true bearing of the line at that place, [0, 360). */
ox_status ox_place_along(ox_latlon from, double bearing_true_deg, double distance_nm,
                         ox_latlon *out, double *arriving_deg, char *remark, size_t remark_bytes);
/* Ahead on the present track (true) after a time (s, 0..36 000) at a ground speed (kt,
 * 0..2 000). */
ox_status ox_place_ahead(ox_latlon from, double track_true_deg, double gs_kt, double s,
                         ox_latlon *out, char *remark, size_t remark_bytes);

/* Ground distance (NM) for a DME reading (slant, NM, 0..1 000) of a station at an elevation (ft)
 * from an altitude (ft). A reading that is less than the height is an error. */
ox_status ox_slant_to_ground_nm(double dme_nm, double elevation_ft, double altitude_ft,
                                double *ground_nm, char *remark, size_t remark_bytes);
/* The DME reading (NM) over a ground distance (NM, >= 0). NaN-free for finite input. */
double ox_ground_to_slant_nm(double ground_nm, double elevation_ft, double altitude_ft);

/* A station that radials are counted from. */
typedef struct {
  ox_latlon at;
  double declination_deg; /* east positive, -180..180: radial = true bearing - declination */
} ox_station;

/* The place on a radial (magnetic degrees, -360..720) at a ground distance (NM). */
ox_status ox_radial_place(ox_station from, double radial_deg, double ground_nm, ox_latlon *out,
                          char *remark, size_t remark_bytes);
/* The radial ([0, 360)) and ground distance of a place. Either output may be NULL. */
ox_status ox_radial_of(ox_station from, ox_latlon place, double *radial_deg, double *ground_nm);

typedef struct {
  ox_latlon at;
  double a_nm, b_nm; /* from each station along its radial */
  double cut_deg;    /* between the lines at the crossing, 0..90 */
} ox_crossing;

/* Where two radials cross, to 1e-9 NM. OX_ADVISORY for a cut below OX_CUT_POOR_DEG; OX_ERROR with
 * the reason for parallel or diverging radials, for one place twice, and for a crossing farther
 * than OX_PLACE_DISTANCE_MAX_NM from a station. */
ox_status ox_radials_cross(ox_station a, double radial_a_deg, ox_station b, double radial_b_deg,
                           ox_crossing *out, char *remark, size_t remark_bytes);

/* The local plane about an origin (azimuthal equidistant by the geodesic): distance and true
 * bearing from the origin are exact. NM, x east, y north. OX_ERROR when a place is out of range;
 * for the way back also when the point is farther than OX_PLACE_DISTANCE_MAX_NM. */
ox_status ox_plane_from_place(ox_latlon origin, ox_latlon place, ox_vec *out);
ox_status ox_plane_to_place(ox_latlon origin, ox_vec point_nm, ox_latlon *out);

#endif
