/* A point out of a record, and the key that tells it from its namesakes.
 *
 *                ident   region  latitude  longitude  variation  elevation  name
 * D   (4.1.2)    14-17   20-21   33-41     42-51      75-79 (1)  80-84      94-118
 * DB PN (4.1.3)  14-17   20-21   33-41     42-51      75-79      -          94-118
 * EA PC HC       14-18   20-21   33-41     42-51      75-79      -          99-123
 * PA HA          7-10    11-12   33-41     42-51      52-56      57-61      94-123
 * PG  (4.1.10)   14-18   11-12   33-41     42-51      -          -          -
 * (1) the station's declination. A DME without a VOR has its position in 56-64 and 65-74. The
 * airport of a terminal point stands in 7-10. */
#include <string.h>

#include "record.h"

/* First and last columns; 0 where there is no such field. */
typedef struct {
  int ident_from, ident_to, region_from, variation_from, elevation_from, name_from, name_to;
} layout;

static layout layout_of(ox_record_kind kind) {
  switch (kind) {
  case OX_KIND_VHF:
    return (layout){14, 17, 20, 75, 80, 94, 118};
  case OX_KIND_NDB:
    return (layout){14, 17, 20, 75, 0, 94, 118};
  case OX_KIND_WAYPOINT:
    return (layout){14, 18, 20, 75, 0, 99, 123};
  case OX_KIND_AIRPORT:
    return (layout){7, 10, 11, 52, 57, 94, 123};
  default:
    return (layout){14, 18, 11, 0, 0, 0, 0};
  }
}

/* Whether the airport in 7-10 is part of the key. */
static bool has_airport(ox_record r, ox_record_kind kind) {
  if (kind == OX_KIND_VHF || kind == OX_KIND_RUNWAY) return true;
  return kind != OX_KIND_AIRPORT && (r[4] == 'P' || r[4] == 'H');
}

static bool position_of(ox_record r, ox_record_kind kind, ox_latlon *at) {
  if (ox_field_latlon(r, 33, 42, at)) return true;
  return kind == OX_KIND_VHF && ox_field_blank(r, 33, 51) && ox_field_latlon(r, 56, 65, at);
}

bool ox_record_point_usable(ox_record r, ox_record_kind kind) {
  layout l = layout_of(kind);
  ox_latlon unused;
  return !ox_field_blank(r, l.ident_from, l.ident_to) && position_of(r, kind, &unused);
}

bool ox_record_point(ox_record r, ox_record_kind kind, ox_published_point *out) {
  layout l = layout_of(kind);
  ox_published_point p;
  memset(&p, 0, sizeof p);
  if (!ox_record_point_usable(r, kind) || !position_of(r, kind, &p.at)) return false;
  ox_field_text(r, l.ident_from, l.ident_to, p.key.ident);
  ox_field_text(r, l.region_from, l.region_from + 1, p.key.region);
  ox_record_section(r, p.key.section);
  if (has_airport(r, kind)) ox_field_text(r, 7, 10, p.key.airport);
  if (kind == OX_KIND_VHF)
    p.declination_given = ox_field_variation(r, l.variation_from, &p.declination_deg);
  else if (l.variation_from)
    p.variation_given = ox_field_variation(r, l.variation_from, &p.variation_deg);
  if (l.elevation_from)
    p.elevation_given = ox_field_altitude(r, l.elevation_from, &p.elevation_ft);
  if (l.name_from) ox_field_text(r, l.name_from, l.name_to, p.name);
  *out = p;
  return true;
}

ox_packed_key ox_record_key(ox_record r, ox_record_kind kind) {
  layout l = layout_of(kind);
  ox_packed_key k = {"             "};
  char section[3];
  ox_record_section(r, section);
  memcpy(k.bytes, section, 2);
  if (has_airport(r, kind)) memcpy(k.bytes + 2, r + 6, 4);
  memcpy(k.bytes + 6, r + l.ident_from - 1, (size_t)(l.ident_to - l.ident_from + 1));
  memcpy(k.bytes + 11, r + l.region_from - 1, 2);
  return k;
}

static void pad(unsigned char *out, const char *text, size_t width) {
  size_t length = strlen(text);
  memcpy(out, text, length < width ? length : width);
}

ox_packed_key ox_pack_key(const ox_point_key *key, const char *airport) {
  ox_packed_key k = {"             "};
  pad(k.bytes, key->section, 2);
  pad(k.bytes + 2, airport, 4);
  pad(k.bytes + 6, key->ident, 5);
  pad(k.bytes + 11, key->region, 2);
  return k;
}
