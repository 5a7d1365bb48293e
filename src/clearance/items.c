/* From what a phrase caught to an item with its value in its unit: courses, times, altitudes and
 * names have each their own way of being written short. */
#include <math.h>
#include <string.h>

#include "oxbow/fix.h"
#include "phrases.h"
#include "text.h"

static bool whole(double value) {
  return value == floor(value);
}

/* "065 from ALDER" is a bearing with its three figures; "R-090 LARCH VOR" has its station behind it
 * only where the name says that it is one. */
static bool may_name_line(const clr_catch *caught) {
  bool called = clr_saw(caught, T_BEARING) || clr_saw(caught, T_RADIAL);
  if (clr_saw(caught, T_FROM) && !called) return caught->figures[0].figures == 3;
  bool behind = caught->phrase->elements[0] == T_RADIAL && caught->name.length > 0;
  bool joined = clr_saw(caught, T_FROM) || clr_saw(caught, T_OF);
  return !behind || joined || caught->facility == OX_FACILITY_STATION;
}

/* North is 360, and 0 is north too. */
static bool make_bearing(const clr_catch *caught, ox_item *item) {
  double value = caught->figures[0].value;
  if (!may_name_line(caught)) return false;
  item->unit = OX_UNIT_DEG;
  item->value = value == 0 ? 360 : value;
  item->sound = whole(value) && value >= 0 && value <= 360;
  return caught->figure_count > 0;
}

/* "in 10 minutes", "in an hour", "in one hour and a half". */
static bool make_time_ahead(const clr_catch *caught, ox_item *item) {
  double value = 0;
  bool open = false; /* a figure whose unit has not come yet */
  int figure = 0;
  for (size_t i = 0; i < caught->seen_count; i++) {
    clr_kind kind = caught->seen[i];
    if (kind == T_FIGURE) value = caught->figures[figure++].value;
    if (kind == T_MINUTE) item->value += value;
    if (kind == T_HOUR) item->value += 60 * (open ? value : 1);
    if (kind == T_FIGURE || kind == T_MINUTE || kind == T_HOUR) open = kind == T_FIGURE;
  }
  if (open && value >= 1) return false;
  if (open) item->value += 60 * value;
  item->unit = OX_UNIT_MIN_AHEAD;
  item->sound = whole(item->value) && item->value <= 720;
  return true;
}

/* 1825 is a time of day, 925 too; one or two figures are minutes of an hour. */
static bool make_time(const clr_catch *caught, ox_item *item) {
  if (clr_saw(caught, T_IN) || clr_saw(caught, T_MINUTE) || clr_saw(caught, T_HOUR))
    return make_time_ahead(caught, item);
  if (caught->figure_count == 0) return false;
  const clr_token *figure = &caught->figures[0];
  item->sound = whole(figure->value) && figure->value >= 0 && figure->figures <= 4;
  item->unit = figure->figures <= 2 ? OX_UNIT_MIN_OF_HOUR : OX_UNIT_MIN_OF_DAY;
  item->value = figure->value;
  if (item->unit == OX_UNIT_MIN_OF_HOUR) {
    item->sound = item->sound && figure->value < 60;
  } else if (item->sound) {
    double hours = floor(figure->value / 100), minutes = figure->value - 100 * hours;
    item->sound = (hours < 24 && minutes < 60) || (hours == 24 && minutes == 0);
    item->value = fmod(hours, 24) * 60 + minutes;
    if (!item->sound) item->value = figure->value;
  }
  if (figure->half_day && !clr_saw(caught, T_UTC)) item->value2 = 1;
  if (item->unit == OX_UNIT_MIN_OF_DAY && item->sound && clr_saw(caught, T_LOCAL)) {
    item->value2 = -1; /* nobody said how far that is from UTC */
    item->sound = false;
  }
  return true;
}

/* A number with nothing beside it that can only be an altitude: 12 000 has more figures than a time
 * of day and is in hundreds. */
static bool stands_alone(const clr_token *figure) {
  return figure->figures == 5 && fmod(figure->value, 100) == 0 && figure->value <= 45000;
}

/* Three figures without a unit are hundreds of feet and one or two thousands, as pilots note them;
 * after "at" such figures are no altitude, for they may be a time. */
static bool make_altitude(const clr_catch *caught, ox_item *item) {
  if (caught->figure_count == 0) return false;
  const clr_token *figure = &caught->figures[0];
  if (caught->seen_count == 1 && !stands_alone(figure)) return false;
  bool level = clr_saw(caught, T_FL) || (clr_saw(caught, T_LEVEL) && !clr_saw(caught, T_FEET));
  double feet = figure->value;
  item->unit = level ? OX_UNIT_FL : OX_UNIT_FT;
  if (level) {
    feet *= 100;
  } else if (!clr_saw(caught, T_FEET) && !clr_saw(caught, T_MINUS) && feet < 1000 &&
             figure->figures <= 3) {
    if (clr_saw(caught, T_AT)) return false;
    feet *= figure->figures == 3 ? 100 : 1000;
  }
  item->value = clr_saw(caught, T_MINUS) ? -feet : feet;
  item->sound = item->value >= -1500 && item->value <= 45000; /* the range of hold.altitude_ft */
  return true;
}

static double bound_of(const clr_catch *caught) {
  if (clr_saw(caught, T_INBOUND)) return 1;
  return clr_saw(caught, T_OUTBOUND) ? -1 : 0;
}

static bool make_leg(const clr_catch *caught, ox_item *item) {
  item->value2 = bound_of(caught);
  item->value = caught->figure_count > 0 ? caught->figures[0].value : 1;
  bool miles = clr_saw(caught, T_MILE) || clr_saw(caught, T_DME);
  item->unit = miles ? OX_UNIT_NM : OX_UNIT_S;
  if (miles) {
    item->sound = item->value >= 0.5 && item->value <= 60; /* the range of hold.leg.nm */
    return true;
  }
  if (clr_saw(caught, T_MINUTE)) item->value *= 60;
  if (caught->figure_count > 1) item->value += caught->figures[1].value;
  item->sound = item->value >= 10 && item->value <= 600; /* the range of hold.leg.s */
  return true;
}

static bool make_turns(const clr_catch *caught, ox_item *item) {
  bool left = clr_saw(caught, T_LEFT), right = clr_saw(caught, T_RIGHT);
  bool standard = clr_saw(caught, T_STANDARD) && !clr_saw(caught, T_NON);
  bool nonstandard = clr_saw(caught, T_NONSTANDARD) || clr_saw(caught, T_NON);
  item->value = left || (nonstandard && !right) ? -1 : 1;
  /* "standard left turns" contradicts itself. */
  item->sound = !(standard && left) && !(nonstandard && right);
  return true;
}

static bool make_delay(const clr_catch *caught, ox_item *item) {
  item->unit = OX_UNIT_MIN;
  if (clr_saw(caught, T_UNKNOWN))
    item->value = -1;
  else if (caught->figure_count == 0 && clr_saw(caught, T_FURTHER))
    item->value2 = 1; /* none beyond the time given */
  else if (caught->figure_count > 0)
    item->value = caught->figures[0].value * (clr_saw(caught, T_HOUR) ? 60 : 1);
  item->sound = item->value <= 24 * 60;
  return true;
}

static bool make_speed(const clr_catch *caught, ox_item *item) {
  item->unit = OX_UNIT_KT;
  item->value = caught->figures[0].value;
  item->sound = item->value >= 50 && item->value <= 400; /* the range of hold.limit_kias */
  return caught->figure_count > 0;
}

static bool make_dme(const clr_catch *caught, ox_item *item) {
  item->unit = OX_UNIT_NM;
  item->value = caught->figures[0].value;
  item->sound = item->value > 0 && item->value <= 200;
  if (item->kind != OX_ITEM_DME_RANGE) return caught->figure_count > 0;
  if (caught->figure_count < 2) return false;
  item->value = fmin(caught->figures[0].value, caught->figures[1].value);
  item->value2 = fmax(caught->figures[0].value, caught->figures[1].value);
  double length_nm = item->value2 - item->value;
  item->sound = item->value > 0 && item->value2 <= 200 && length_nm >= 0.5 && length_nm <= 60;
  return true;
}

/* "Hold on the arc" makes a place of it, "join the arc" a way. */
static bool make_arc(const clr_catch *caught, ox_item *item) {
  bool figure = caught->figure_count > 0;
  item->unit = OX_UNIT_NM;
  item->value = figure ? caught->figures[0].value : 0;
  item->sound = !figure || (item->value > 0 && item->value <= 200);
  static const clr_kind words[] = {T_HOLD, T_ON, T_AT, T_CLEARED, T_PROCEED, T_DIRECT};
  bool here = false;
  for (size_t i = 0; i < sizeof words / sizeof *words; i++)
    here = here || clr_saw(caught, words[i]);
  item->value2 = here ? 1 : 0;
  return true;
}

typedef struct {
  char *to;
  size_t length;
} name_out;

static void put_byte(name_out *out, char c) {
  if (out->length + 1 < OX_FIX_NAME_BYTES) out->to[out->length++] = c;
}

/* A name that had to be cut never ends within a character. */
static void close_name(name_out *out) {
  size_t at = out->length;
  if (out->length + 1 == OX_FIX_NAME_BYTES) {
    while (at > 0 && ((unsigned char)out->to[at - 1] & 0xc0) == 0x80)
      at--;
    unsigned char lead = at > 0 ? (unsigned char)out->to[at - 1] : 0;
    size_t needs = lead < 0x80 ? 1 : lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
    if (at > 0 && out->length - (at - 1) < needs) out->length = at - 1;
  }
  out->to[out->length] = '\0';
}

static void quoted_name(const char *bytes, size_t length, name_out *out) {
  for (size_t i = 1; i + 1 < length; i++) {
    put_byte(out, bytes[i]);
    if (bytes[i] == '"') i++;
  }
}

/* White space becomes single blanks; where nobody wrote a capital, names get theirs. */
static void plain_name(const char *bytes, size_t length, bool capitals, name_out *out) {
  bool blank = false;
  for (size_t i = 0; i < length; i++) {
    char c = bytes[i];
    if (c == ' ' || c == '\t' || c == '\r' || c == '\n') {
      blank = out->length > 0;
      continue;
    }
    if (blank) put_byte(out, ' ');
    blank = false;
    put_byte(out, capitals && c >= 'a' && c <= 'z' ? (char)(c - 'a' + 'A') : c);
  }
}

static void make_name(const clr_tokens *t, const clr_catch *caught, ox_item *item) {
  name_out out = {item->name, 0};
  const char *bytes = t->text + caught->name.at;
  if (clr_place_name(bytes, caught->name.length, item->name)) {
    item->facility = OX_FACILITY_POINT;
    return;
  }
  if (caught->quoted)
    quoted_name(bytes, caught->name.length, &out);
  else
    plain_name(bytes, caught->name.length, !t->has_upper, &out);
  close_name(&out);
  item->facility = caught->facility;
}

static bool make_airway(const clr_catch *caught, ox_item *item) {
  if (clr_saw(caught, T_LOCALIZER)) strcpy(item->name, "localizer");
  if (clr_saw(caught, T_FINAL)) strcpy(item->name, "final approach course");
  if (!clr_saw(caught, T_AIRWAY_LETTER)) return item->name[0] != '\0';
  if (caught->figure_count == 0) return false;
  double number = caught->figures[0].value;
  item->sound = whole(number) && number >= 1 && number <= 999;
  int digits = item->sound ? (int)number : 0;
  name_out out = {item->name, 0};
  put_byte(&out, (char)caught->eighth_deg);
  if (digits >= 100) put_byte(&out, (char)('0' + digits / 100));
  if (digits >= 10) put_byte(&out, (char)('0' + digits / 10 % 10));
  put_byte(&out, (char)('0' + digits % 10));
  close_name(&out);
  return true;
}

/* "Ten miles ahead of your present position". */
static bool make_ahead(const clr_catch *caught, ox_item *item) {
  double value = caught->figures[0].value;
  bool miles = clr_saw(caught, T_MILE), minutes = clr_saw(caught, T_MINUTE);
  item->facility = OX_FACILITY_POINT;
  item->unit = miles ? OX_UNIT_NM : OX_UNIT_S;
  item->value = minutes ? 60 * value : value;
  item->sound = value > 0 && item->value <= (miles ? OX_FIX_AHEAD_MAX_NM : OX_FIX_AHEAD_MAX_S);
  clr_text name = clr_into(item->name, sizeof item->name);
  clr_put(&name, "%g %s AHEAD", value, miles ? "NM" : minutes ? "MIN" : "S");
  return true;
}

static bool make_place(const clr_catch *caught, ox_item *item) {
  if (clr_saw(caught, T_AHEAD)) return make_ahead(caught, item);
  if (!clr_saw(caught, T_PRESENT) || item->kind == OX_ITEM_LIMIT) return item->name[0] != '\0';
  strcpy(item->name, OX_PRESENT_POSITION);
  item->facility = OX_FACILITY_POINT;
  return true;
}

bool clr_make_item(const clr_tokens *t, const clr_catch *caught, ox_item *item) {
  *item = (ox_item){.kind = caught->phrase->item, .sound = true};
  if (caught->name.length > 0) make_name(t, caught, item);
  switch (item->kind) {
  case OX_ITEM_DIRECTION:
    item->unit = OX_UNIT_DEG;
    item->value = caught->eighth_deg;
    return true;
  case OX_ITEM_RADIAL:
  case OX_ITEM_BEARING:
  case OX_ITEM_COURSE:
  case OX_ITEM_INBOUND:
  case OX_ITEM_OUTBOUND: return make_bearing(caught, item);
  case OX_ITEM_FIX_DME:
  case OX_ITEM_DME_RANGE: return make_dme(caught, item);
  case OX_ITEM_ARC: return make_arc(caught, item);
  case OX_ITEM_LIMIT:
  case OX_ITEM_FIX: return make_place(caught, item);
  case OX_ITEM_AIRWAY: return make_airway(caught, item);
  case OX_ITEM_LEG: return make_leg(caught, item);
  case OX_ITEM_TURNS: return make_turns(caught, item);
  case OX_ITEM_EFC:
  case OX_ITEM_NOW: return make_time(caught, item);
  case OX_ITEM_ALTITUDE: return make_altitude(caught, item);
  case OX_ITEM_SPEED: return make_speed(caught, item);
  case OX_ITEM_DELAY: return make_delay(caught, item);
  default: return true;
  }
}
