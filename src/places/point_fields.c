/* The numbers of a point: key, range and the phrase for what is allowed stand here and nowhere
 * else. */
#include <string.h>

#include "oxbow/fix.h"
#include "oxbow/mark.h"

#define NUMBER(key, member, min, max, allowed)                                                   \
  {key, OX_FIELD_NUMBER, offsetof(ox_point, member), min, max, false, allowed, NULL}

static const ox_field fields[] = {
    NUMBER("lat_deg", at.lat_deg, -90, 90, N_("a latitude (-90 to 90 degrees, north positive)")),
    NUMBER("lon_deg", at.lon_deg, -180, 180,
           N_("a longitude (-180 to 180 degrees, east positive)")),
    NUMBER("radial_deg", radial_deg, 0, 360, N_("a radial (0 to 360)")),
    NUMBER("nm", nm, 0, 1000, N_("a distance (0 to 1000 NM)")),
    NUMBER("altitude_ft", altitude_ft, -1500, 60000, N_("an altitude (-1500 to 60000 ft)")),
    NUMBER("and_radial_deg", and_radial_deg, 0, 360, N_("a radial (0 to 360)")),
    NUMBER("declination_deg", declination_deg, -180, 180,
           N_("a declination (-180 to 180, east positive)")),
    NUMBER("elevation_ft", elevation_ft, -1500, 20000, N_("an elevation (-1500 to 20000 ft)")),
};

const ox_field *ox_point_fields(size_t *count) {
  *count = sizeof fields / sizeof *fields;
  return fields;
}

const ox_field *ox_point_field_by_key(const char *key) {
  for (size_t i = 0; i < sizeof fields / sizeof *fields; i++)
    if (strcmp(fields[i].key, key) == 0) return &fields[i];
  return NULL;
}

bool ox_point_has_field(const ox_point *point, const ox_field *field) {
  const char *key = field->key;
  bool at = point->kind == OX_POINT_AT, radial = point->kind == OX_POINT_RADIAL;
  if (strcmp(key, "lat_deg") == 0 || strcmp(key, "lon_deg") == 0) return at;
  if (strcmp(key, "radial_deg") == 0) return !at;
  if (strcmp(key, "nm") == 0) return radial;
  if (strcmp(key, "altitude_ft") == 0) return radial && point->dme;
  if (strcmp(key, "and_radial_deg") == 0) return point->kind == OX_POINT_CROSSING;
  return true;
}
