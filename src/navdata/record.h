/* One record of 132 columns and the fields in it. Columns count from 1, as in the specification,
 * and both ends are included. Nothing here allocates. */
#ifndef OX_NAVDATA_RECORD_H
#define OX_NAVDATA_RECORD_H

#include "oxbow/navdata.h"

#define OX_RECORD_COLUMNS 132

/* The first of 132 printable ASCII characters. */
typedef const unsigned char *ox_record;

typedef enum {
  OX_KIND_OTHER,
  OX_KIND_LEG,      /* PD, PE, PF, HD, HE, HF */
  OX_KIND_HOLD,     /* EP */
  OX_KIND_VHF,      /* D */
  OX_KIND_NDB,      /* DB, PN */
  OX_KIND_WAYPOINT, /* EA, PC, HC */
  OX_KIND_AIRPORT,  /* PA, HA */
  OX_KIND_RUNWAY,   /* PG */
} ox_record_kind;

ox_record_kind ox_record_kind_of(ox_record r);
/* "PF", "D ": section and subsection, wherever the subsection stands. */
void ox_record_section(ox_record r, char section[3]);
/* Whether it is the first record of its kind and not a continuation. */
bool ox_record_is_primary(ox_record r, ox_record_kind kind);
/* Whether a leg's path terminator is HM, HF or HA. */
bool ox_record_leg_is_hold(ox_record r);

/* Columns from..to without the blanks at the end; out has room for to - from + 2 bytes. */
void ox_field_text(ox_record r, int from, int to, char *out);
bool ox_field_blank(ox_record r, int from, int to);
/* Same text as the columns without the blanks at the end, capitals or not. */
bool ox_field_is(ox_record r, int from, int to, const char *text);

/* Each returns false, with *out untouched, when the columns do not hold such a field. */
bool ox_field_figures(ox_record r, int from, int to, int *out);
/* Four columns: tenths of a degree magnetic, or three figures and T for whole degrees true. */
bool ox_field_course(ox_record r, int from, double *course_deg, ox_north *north);
/* Nine columns of latitude and ten of longitude, to the hundredth of a second. */
bool ox_field_latlon(ox_record r, int lat_from, int lon_from, ox_latlon *out);
/* Five columns: E or W and tenths of a degree; T (true north) is 0. */
bool ox_field_variation(ox_record r, int from, double *east_deg);
/* Five columns: feet (a minus allowed) or FL and hundreds of feet. */
bool ox_field_altitude(ox_record r, int from, double *ft);

/* The hold of a leg or of a hold record; false when a field cannot be read. */
bool ox_record_hold(ox_record r, ox_record_kind kind, ox_published_hold *out);
/* The point of a record; false when it has no name or no position. */
bool ox_record_point(ox_record r, ox_record_kind kind, ox_published_point *out);
/* The same without everything but name and position, for the index. */
bool ox_record_point_usable(ox_record r, ox_record_kind kind);

/* A key as bytes to hash and compare: section 2, airport 4, ident 5, region 2, padded with
 * blanks; the last three are 0. */
typedef struct {
  unsigned char bytes[16];
} ox_packed_key;
ox_packed_key ox_record_key(ox_record r, ox_record_kind kind);
ox_packed_key ox_pack_key(const ox_point_key *key, const char *airport);

#endif
