/* Published holds and points out of records of 132 columns (ARINC 424-18 layout).
 *
 * A file is mapped, and indexed once: only where the holds and points stand is kept, every field is
 * read from its columns when asked for. Records that cannot be used are left out and counted, with
 * the reason and the line of the first. While a file is open it must not be shortened; that is
 * noticed before each reading and refused.
 *
 * Instruction only, not for navigation: data grow old every 28 days, and this reader says nothing
 * of a procedure beyond its holds. */
#ifndef OXBOW_NAVDATA_H
#define OXBOW_NAVDATA_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/case.h"
#include "oxbow/fix.h"
#include "oxbow/place.h"
#include "oxbow/status.h"

typedef struct ox_navdata ox_navdata;

/* Why records were left out. The first two are no fault of the file. */
typedef enum {
  OX_SKIP_OTHER_KIND,   /* a record of a kind not used here (airways, airspace, other legs …) */
  OX_SKIP_CONTINUATION, /* continuation of a record of a kind used */
  OX_SKIP_EMPTY,        /* empty line */
  OX_SKIP_SHORT,        /* fewer than 132 columns: cut off */
  OX_SKIP_LONG,         /* more than 132 columns, not counting blanks at the end */
  OX_SKIP_BYTES,        /* a byte that is not a printable ASCII character */
  OX_SKIP_NO_RECORD,    /* neither a standard (S) nor a tailored (T) record: headers, comments */
  OX_SKIP_HOLD,         /* a hold without a fix or with a field that cannot be read */
  OX_SKIP_POINT,        /* a point without a name or whose position cannot be read */
  OX_SKIP_REPEATED,     /* a point given before: the first is kept */
  OX_SKIP_COUNT
} ox_skip;
/* A phrase for "N records: PHRASE". Static. */
const char *ox_skip_text(ox_skip reason);

typedef struct {
  size_t lines;        /* all of them; lines = holds + points + the sum of skipped */
  size_t holds, points;
  size_t skipped[OX_SKIP_COUNT];
  size_t first_line[OX_SKIP_COUNT]; /* from 1; 0: none */
} ox_navdata_report;

/* Maps and indexes a file. OX_ERROR: *out is untouched and remark says why (no such file, not a
 * regular file, 4 GiB or more, memory). A file with no usable record opens: see the report. */
ox_status ox_navdata_open(const char *path, ox_navdata **out, char *remark, size_t remark_bytes);
/* The same for bytes in memory, which stay the caller's and must outlive the result. */
ox_status ox_navdata_from_bytes(const void *bytes, size_t length, ox_navdata **out, char *remark,
                                size_t remark_bytes);
void ox_navdata_close(ox_navdata *data); /* NULL is allowed */

const ox_navdata_report *ox_navdata_report_of(const ox_navdata *data);
/* Bytes that the index itself takes, the mapped file not counted. */
size_t ox_navdata_index_bytes(const ox_navdata *data);

/* HM: until the pilot leaves; HF: one circuit, leaving at the fix; HA: until an altitude;
 * an enroute hold has a record of its own (EP). */
typedef enum {
  OX_TERMINATOR_HM, OX_TERMINATOR_HF, OX_TERMINATOR_HA, OX_TERMINATOR_EP
} ox_terminator;
/* "HM", "HF", "HA", "EP" */
const char *ox_terminator_name(ox_terminator terminator);

/* How a point is named in a record: everything that tells it from its namesakes. */
typedef struct {
  char ident[6];
  char region[3];  /* ICAO code: "K6" */
  char section[3]; /* "D ", "DB", "PN", "EA", "PC", "HC", "PA", "HA", "PG" */
  char airport[5]; /* whose terminal point it is; empty for enroute points */
} ox_point_key;

typedef enum {
  OX_ALTITUDE_NONE,
  OX_ALTITUDE_AT,
  OX_ALTITUDE_AT_OR_ABOVE,
  OX_ALTITUDE_AT_OR_BELOW,
  OX_ALTITUDE_BETWEEN, /* low and high */
} ox_altitude_kind;

typedef struct {
  char airport[5];    /* empty for an enroute hold */
  char airport_region[3]; /* ICAO code of the airport */
  char section[3];    /* "PD" departure, "PE" arrival, "PF" approach; "HD", "HE", "HF"; "EP" */
  char procedure[7];  /* "I01"; empty for an enroute hold */
  char route_type;    /* as coded */
  char transition[6]; /* may be empty */
  int sequence;       /* -1: not given */
  ox_point_key fix;
  ox_terminator terminator;
  double inbound_deg; /* [0, 360) in the north below */
  ox_north inbound_north;
  ox_turns turns;
  bool turns_given;   /* false: the record is silent, right is standard */
  bool leg_given;     /* false: the record is silent, the standard time applies */
  ox_leg_by leg_by;
  double leg_s;       /* with leg_by time */
  double leg_nm;      /* with leg_by distance */
  ox_altitude_kind altitude_kind;
  char altitude_code; /* as coded, ' ' when blank */
  double altitude_low_ft, altitude_high_ft; /* the one that the kind does not use is 0 */
  double limit_kias;  /* 0: none */
  char limit_code;    /* as coded: ' ' or '@' at, '-' at most, '+' at least */
} ox_published_hold;

size_t ox_navdata_hold_count(const ox_navdata *data);
/* Hold number 0..count-1, in the order of the file. OX_ERROR for another index, or when the file
 * has been shortened since. */
ox_status ox_navdata_hold(const ox_navdata *data, size_t index, ox_published_hold *out);

/* What to look for: NULL is anything; otherwise the whole name, capitals or not. */
typedef struct {
  const char *fix, *airport, *procedure;
} ox_hold_query;
/* The first hold from index `from` on that matches; its index goes to *found. False: none. */
bool ox_navdata_find(const ox_navdata *data, const ox_hold_query *query, size_t from,
                     size_t *found);

typedef struct {
  ox_point_key key;
  ox_latlon at;
  bool declination_given; /* navaids: by which radials are counted, east positive */
  double declination_deg;
  bool variation_given;   /* waypoints, airports, NDBs */
  double variation_deg;
  bool elevation_given;   /* DME antenna, airport */
  double elevation_ft;
  char name[31];
} ox_published_point;

/* A point by its key. A VHF navaid ("D ") is looked for among the enroute ones first and then
 * among the airport's own. OX_ERROR with a sentence when it is not in the file. */
ox_status ox_navdata_point(const ox_navdata *data, const ox_point_key *key,
                           ox_published_point *out, char *remark, size_t remark_bytes);

typedef enum {
  OX_VARIATION_OF_FIX,     /* the waypoint's own */
  OX_VARIATION_OF_STATION, /* the fix is a navaid: its declination */
  OX_VARIATION_OF_AIRPORT, /* the airport of the procedure */
  OX_VARIATION_UNKNOWN,    /* 0 is used */
} ox_variation_source;

/* A case of a published hold: fix, course (made magnetic when coded true), turns, leg, altitude,
 * speed limit and variation; everything else as in ox_case_default(). The arrival is along the
 * inbound course. */
typedef struct {
  ox_case c;
  bool placed; /* false: the fix is not in the file and stays at the origin */
  ox_latlon at;
  ox_variation_source variation;
} ox_published_case;
/* OX_ADVISORY, with sentences, when the fix has no place, there is no variation (0 is used) or a
 * value is outside what a case takes (its default is used). The case always passes ox_case_check.
 * An HF hold ends after the reversal, an HA hold at its altitude. OX_ERROR as ox_navdata_hold. */
ox_status ox_navdata_case(const ox_navdata *data, size_t index, ox_published_case *out,
                          char *remark, size_t remark_bytes);

/* A point of the file as a point of a lesson: its ident, its place, its declination as a station
 * (its variation where it is no navaid), its elevation. */
void ox_navdata_lesson_point(const ox_published_point *published, ox_point *out);
/* The same case for a lesson: its fix is added to the points, or named where it is one of them, or
 * has a place of its own where another point has its name. As ox_navdata_case otherwise. */
ox_status ox_navdata_lesson_case(const ox_navdata *data, size_t index, ox_points *points,
                                 ox_case *c, ox_fix *fix, char *remark, size_t remark_bytes);

/* "at or above 3200 ft", "between 4000 and 6000 ft", "" without an altitude. buf has room for 64
 * bytes. */
void ox_published_altitude_text(const ox_published_hold *hold, char *buf, size_t bytes);

#endif
