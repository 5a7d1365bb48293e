/* What kind of record it is, and the fields that many kinds share. Numbers of the form "5.x" are
 * the paragraphs of ARINC 424-18 that define a field. */
#include "record.h"

#include <string.h>

static bool is_figure(unsigned char c) { return c >= '0' && c <= '9'; }

/* --- kinds --- */

/* The subsection stands in column 6 for enroute sections and for terminal NDBs, in column 13 for
 * the rest of the airport and heliport sections. */
static unsigned char subsection_of(ox_record r) {
  bool terminal = r[4] == 'P' || r[4] == 'H';
  return terminal && r[5] == ' ' ? r[12] : r[5];
}

ox_record_kind ox_record_kind_of(ox_record r) {
  unsigned char sub = subsection_of(r);
  switch (r[4]) {
  case 'D':
    return sub == ' ' ? OX_KIND_VHF : sub == 'B' ? OX_KIND_NDB : OX_KIND_OTHER;
  case 'E':
    return sub == 'A' ? OX_KIND_WAYPOINT : sub == 'P' ? OX_KIND_HOLD : OX_KIND_OTHER;
  case 'P':
    if (sub == 'N') return OX_KIND_NDB;
    if (sub == 'G') return OX_KIND_RUNWAY;
    break;
  case 'H':
    break;
  default:
    return OX_KIND_OTHER;
  }
  if (sub == 'D' || sub == 'E' || sub == 'F') return OX_KIND_LEG;
  return sub == 'C' ? OX_KIND_WAYPOINT : sub == 'A' ? OX_KIND_AIRPORT : OX_KIND_OTHER;
}

void ox_record_section(ox_record r, char section[3]) {
  section[0] = (char)r[4];
  section[1] = (char)subsection_of(r);
  section[2] = '\0';
}

bool ox_record_is_primary(ox_record r, ox_record_kind kind) {
  /* 5.16: 0 alone, 1 the first of several, 2 to 9 and A to Z the rest. */
  unsigned char number = r[(kind == OX_KIND_LEG || kind == OX_KIND_HOLD ? 39 : 22) - 1];
  return number == '0' || number == '1' || number == ' ';
}

bool ox_record_leg_is_hold(ox_record r) {
  /* 5.21 path and termination, columns 48-49 */
  return r[47] == 'H' && (r[48] == 'M' || r[48] == 'F' || r[48] == 'A');
}

/* --- fields --- */

static int length_of(ox_record r, int from, int to) {
  while (to >= from && r[to - 1] == ' ')
    to--;
  return to - from + 1;
}

void ox_field_text(ox_record r, int from, int to, char *out) {
  int length = length_of(r, from, to);
  memcpy(out, r + from - 1, (size_t)length);
  out[length] = '\0';
}

bool ox_field_blank(ox_record r, int from, int to) { return length_of(r, from, to) == 0; }

static unsigned char capital(unsigned char c) {
  return c >= 'a' && c <= 'z' ? (unsigned char)(c - 'a' + 'A') : c;
}

bool ox_field_is(ox_record r, int from, int to, const char *text) {
  int length = length_of(r, from, to);
  if (strlen(text) != (size_t)length) return false;
  for (int i = 0; i < length; i++)
    if (capital(r[from - 1 + i]) != capital((unsigned char)text[i])) return false;
  return true;
}

bool ox_field_figures(ox_record r, int from, int to, int *out) {
  int value = 0;
  for (int i = from - 1; i < to; i++) {
    if (!is_figure(r[i])) return false;
    value = value * 10 + (r[i] - '0');
  }
  *out = value;
  return true;
}

bool ox_field_course(ox_record r, int from, double *course_deg, ox_north *north) {
  /* 5.26 outbound course, 5.62 inbound holding course */
  bool is_true = r[from + 2] == 'T';
  int units;
  if (!ox_field_figures(r, from, from + (is_true ? 2 : 3), &units)) return false;
  double degrees = is_true ? units : units / 10.0;
  if (degrees > 360) return false;
  *course_deg = degrees == 360 ? 0 : degrees;
  *north = is_true ? OX_NORTH_TRUE : OX_NORTH_MAGNETIC;
  return true;
}

/* Degrees (width figures), minutes, seconds and hundredths after a letter. */
static bool read_angle(ox_record r, int from, int width, char positive, char negative,
                       double *degrees) {
  int d, m, s;
  char letter = (char)r[from - 1];
  if (letter != positive && letter != negative) return false;
  if (!ox_field_figures(r, from + 1, from + width, &d)) return false;
  if (!ox_field_figures(r, from + width + 1, from + width + 2, &m) || m > 59) return false;
  if (!ox_field_figures(r, from + width + 3, from + width + 6, &s) || s > 5999) return false;
  double value = (d * 360000.0 + m * 6000.0 + s) / 360000.0;
  if (value > (width == 2 ? 90 : 180)) return false;
  *degrees = letter == negative ? 0.0 - value : value;
  return true;
}

bool ox_field_latlon(ox_record r, int lat_from, int lon_from, ox_latlon *out) {
  /* 5.36 latitude, 5.37 longitude */
  ox_latlon p;
  if (!read_angle(r, lat_from, 2, 'N', 'S', &p.lat_deg)) return false;
  if (!read_angle(r, lon_from, 3, 'E', 'W', &p.lon_deg)) return false;
  *out = p;
  return true;
}

bool ox_field_variation(ox_record r, int from, double *east_deg) {
  /* 5.39 magnetic variation, 5.66 station declination. G (grid north) has no use here. */
  int tenths;
  char letter = (char)r[from - 1];
  if (letter != 'E' && letter != 'W' && letter != 'T') return false;
  if (!ox_field_figures(r, from + 1, from + 4, &tenths) || tenths > 1800) return false;
  double degrees = letter == 'T' ? 0 : tenths / 10.0;
  *east_deg = letter == 'W' ? 0.0 - degrees : degrees;
  return true;
}

bool ox_field_altitude(ox_record r, int from, double *ft) {
  /* 5.30 */
  int value;
  if (r[from - 1] == 'F' && r[from] == 'L' && ox_field_figures(r, from + 2, from + 4, &value)) {
    *ft = value * 100.0;
    return true;
  }
  if (r[from - 1] == '-' && ox_field_figures(r, from + 1, from + 4, &value)) {
    *ft = 0.0 - value;
    return true;
  }
  if (!ox_field_figures(r, from, from + 4, &value)) return false;
  *ft = value;
  return true;
}
