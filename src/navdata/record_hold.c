/* A hold out of a record.
 *
 * Leg of a procedure (4.1.9):   7-10 airport · 14-19 procedure · 20 route type · 21-25 transition ·
 *   27-29 sequence · 30-34 fix · 35-36 its region · 37-38 its section · 44 turn · 48-49 path
 *   terminator · 71-74 course · 75-78 distance or time · 83 altitude description · 85-89 and 90-94
 *   altitudes · 100-102 speed limit · 118 its description
 * Enroute hold (4.1.5):         7-10 airport or ENRT · 30-38 as above · 40-43 course · 44 turn ·
 *   45-47 length · 48-49 time · 50-54 least and 55-59 greatest altitude · 60-62 speed */
#include <string.h>

#include "record.h"

/* Sections whose points belong to an airport. D may, and is looked for in both places. */
static bool belongs_to_airport(const char section[3]) {
  static const char *const own[] = {"D ", "PN", "PC", "HC", "PG"};
  for (size_t i = 0; i < sizeof own / sizeof *own; i++)
    if (strcmp(section, own[i]) == 0) return true;
  return false;
}

static bool read_fix(ox_record r, ox_published_hold *h) {
  ox_field_text(r, 30, 34, h->fix.ident);
  ox_field_text(r, 35, 36, h->fix.region);
  memcpy(h->fix.section, r + 36, 2);
  h->fix.section[2] = '\0';
  if (belongs_to_airport(h->fix.section)) strcpy(h->fix.airport, h->airport);
  return h->fix.ident[0] != '\0';
}

static bool read_turn(ox_record r, ox_published_hold *h) {
  /* 5.20: E is either direction, which says as little as a blank. */
  char code = (char)r[43];
  if (code != 'L' && code != 'R' && code != 'E' && code != ' ') return false;
  h->turns_given = code == 'L' || code == 'R';
  h->turns = code == 'L' ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
  return true;
}

static void set_leg(ox_published_hold *h, ox_leg_by by, double value) {
  h->leg_given = true;
  h->leg_by = by;
  if (by == OX_LEG_BY_TIME)
    h->leg_s = value;
  else
    h->leg_nm = value;
}

/* 5.27: tenths of a mile, or T and tenths of a minute. Blank or zero: nothing is said. */
static bool read_leg(ox_record r, ox_published_hold *h) {
  int tenths;
  if (ox_field_blank(r, 75, 78)) return true;
  bool by_time = r[74] == 'T';
  if (!ox_field_figures(r, by_time ? 76 : 75, 78, &tenths)) return false;
  if (tenths == 0) return true;
  if (by_time)
    set_leg(h, OX_LEG_BY_TIME, tenths * 6.0);
  else
    set_leg(h, OX_LEG_BY_DISTANCE, tenths / 10.0);
  return true;
}

/* 5.64 and 5.65: tenths of a mile, tenths of a minute; one of them is blank or zero. */
static bool read_enroute_leg(ox_record r, ox_published_hold *h) {
  int miles = 0, minutes = 0;
  if (!ox_field_blank(r, 45, 47) && !ox_field_figures(r, 45, 47, &miles)) return false;
  if (!ox_field_blank(r, 48, 49) && !ox_field_figures(r, 48, 49, &minutes)) return false;
  if (miles > 0)
    set_leg(h, OX_LEG_BY_DISTANCE, miles / 10.0);
  else if (minutes > 0)
    set_leg(h, OX_LEG_BY_TIME, minutes * 6.0);
  return true;
}

/* False only for columns that are neither blank, an altitude, nor said to be unknown. */
static bool read_altitude(ox_record r, int from, double *ft, bool *given) {
  *given = ox_field_altitude(r, from, ft);
  return *given || ox_field_blank(r, from, from + 4) || ox_field_is(r, from, from + 4, "UNKNN");
}

/* 5.29. For codes G, H, I, J (glide path) and V, X, Y (step-down) the first altitude is the one
 * flown; the second belongs to something else. */
static void describe_altitude(ox_published_hold *h, double first_ft, bool first, double second_ft,
                              bool second) {
  switch (h->altitude_code) {
  case '+': case 'H': case 'J': case 'V':
    h->altitude_kind = OX_ALTITUDE_AT_OR_ABOVE;
    h->altitude_low_ft = first_ft;
    break;
  case '-': case 'Y':
    h->altitude_kind = OX_ALTITUDE_AT_OR_BELOW;
    h->altitude_high_ft = first_ft;
    break;
  case 'C':
    h->altitude_kind = OX_ALTITUDE_AT_OR_ABOVE;
    h->altitude_low_ft = second_ft;
    first = second;
    break;
  case 'B':
    h->altitude_kind = OX_ALTITUDE_BETWEEN;
    h->altitude_high_ft = first_ft > second_ft ? first_ft : second_ft;
    h->altitude_low_ft = first_ft > second_ft ? second_ft : first_ft;
    first = first && second;
    break;
  default:
    h->altitude_kind = OX_ALTITUDE_AT;
    h->altitude_low_ft = h->altitude_high_ft = first_ft;
    break;
  }
  if (first) return;
  h->altitude_kind = OX_ALTITUDE_NONE;
  h->altitude_low_ft = h->altitude_high_ft = 0;
}

static bool read_altitudes(ox_record r, ox_published_hold *h) {
  double first_ft = 0, second_ft = 0;
  bool first, second;
  if (!read_altitude(r, 85, &first_ft, &first)) return false;
  if (!read_altitude(r, 90, &second_ft, &second)) return false;
  h->altitude_code = (char)r[82];
  describe_altitude(h, first_ft, first, second_ft, second);
  return true;
}

static bool read_enroute_altitudes(ox_record r, ox_published_hold *h) {
  bool low, high;
  if (!read_altitude(r, 50, &h->altitude_low_ft, &low)) return false;
  if (!read_altitude(r, 55, &h->altitude_high_ft, &high)) return false;
  h->altitude_code = ' ';
  h->altitude_kind = low && high ? OX_ALTITUDE_BETWEEN
                     : low       ? OX_ALTITUDE_AT_OR_ABOVE
                     : high      ? OX_ALTITUDE_AT_OR_BELOW
                                 : OX_ALTITUDE_NONE;
  return true;
}

static bool read_speed(ox_record r, int from, ox_published_hold *h) {
  int kias = 0;
  if (!ox_field_blank(r, from, from + 2) && !ox_field_figures(r, from, from + 2, &kias))
    return false;
  h->limit_kias = kias;
  return true;
}

static bool read_leg_record(ox_record r, ox_published_hold *h) {
  ox_field_text(r, 7, 10, h->airport);
  ox_field_text(r, 11, 12, h->airport_region);
  ox_field_text(r, 14, 19, h->procedure);
  h->route_type = (char)r[19];
  ox_field_text(r, 21, 25, h->transition);
  if (!ox_field_figures(r, 27, 29, &h->sequence)) h->sequence = -1;
  h->terminator = r[48] == 'M'   ? OX_TERMINATOR_HM
                  : r[48] == 'F' ? OX_TERMINATOR_HF
                                 : OX_TERMINATOR_HA;
  h->limit_code = (char)r[117];
  return read_fix(r, h) && read_turn(r, h) &&
         ox_field_course(r, 71, &h->inbound_deg, &h->inbound_north) && read_leg(r, h) &&
         read_altitudes(r, h) && read_speed(r, 100, h);
}

static bool read_hold_record(ox_record r, ox_published_hold *h) {
  if (!ox_field_is(r, 7, 10, "ENRT")) ox_field_text(r, 7, 10, h->airport);
  ox_field_text(r, 11, 12, h->airport_region);
  h->route_type = ' ';
  h->sequence = -1;
  h->terminator = OX_TERMINATOR_EP;
  h->limit_code = '-';
  return read_fix(r, h) && read_turn(r, h) &&
         ox_field_course(r, 40, &h->inbound_deg, &h->inbound_north) && read_enroute_leg(r, h) &&
         read_enroute_altitudes(r, h) && read_speed(r, 60, h);
}

bool ox_record_hold(ox_record r, ox_record_kind kind, ox_published_hold *out) {
  ox_published_hold h;
  memset(&h, 0, sizeof h);
  ox_record_section(r, h.section);
  if (!(kind == OX_KIND_HOLD ? read_hold_record(r, &h) : read_leg_record(r, &h))) return false;
  *out = h;
  return true;
}
