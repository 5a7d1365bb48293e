/* Times as they are read off the face of a clock: "half past one", "ten to seven", "the top of the
 * hour", "two o'clock in the afternoon". A face has twelve hours: unless the words tell which half
 * of the day it is, a time twelve hours later can be meant as well. */
#include <math.h>

#include "tokens.h"

enum { NO_HOUR = -1, HALF_DAY_MIN = 720, DAY_MIN = 1440 };

typedef struct {
  double hour;   /* NO_HOUR: of any hour */
  double offset; /* minutes from it, before it when negative */
  bool face;     /* the hour is one of the twelve of a clock's face */
} face_time;

static bool next_is(const clr_tokens *t, size_t i, clr_kind kind) {
  return i < t->count && t->tokens[i].kind == kind && !t->tokens[i].breaks;
}

/* A whole number of at most `most`; "zero one" is an hour of twenty-four. */
static size_t take_whole(const clr_tokens *t, size_t i, double most, clr_token *number) {
  if (i >= t->count || t->tokens[i].breaks) return 0;
  size_t taken = clr_gather_number(t, i, number);
  bool fits = taken > 0 && number->figures >= 1 && number->figures <= 2 &&
              number->value == floor(number->value) && number->value <= most;
  return fits ? taken : 0;
}

static void set_hour(face_time *time, const clr_token *number) {
  time->hour = number->value;
  time->face = number->value >= 1 && number->value <= 12 &&
               (number->figures == 1 || number->value >= 10);
}

/* "hour", or the number of one; 0 for neither. */
static size_t take_hour(const clr_tokens *t, size_t i, face_time *time) {
  clr_token number;
  if (next_is(t, i, T_HOUR)) return 1;
  size_t taken = take_whole(t, i, 99, &number);
  if (taken > 0) set_hour(time, &number);
  if (taken > 0 && next_is(t, i + taken, T_OCLOCK)) taken++;
  return taken;
}

/* "half", "quarter", "ten", "ten minutes" before "past" and "to"; 0 for none. */
static size_t take_offset(const clr_tokens *t, size_t i, face_time *time) {
  clr_token number;
  bool part = t->tokens[i].kind == T_HALF || t->tokens[i].kind == T_QUARTER;
  if (part) {
    time->offset = t->tokens[i].kind == T_HALF ? 30 : 15;
    return 1;
  }
  /* Punctuation before the first token is no matter of the time. */
  size_t taken = clr_gather_number(t, i, &number);
  bool fits = taken > 0 && number.figures >= 1 && number.figures <= 2 && number.value < 60 &&
              number.value == floor(number.value);
  if (!fits) return 0;
  time->offset = number.value;
  return taken + next_is(t, i + taken, T_MINUTE);
}

/* "half past one", "30 past the hour"; "to" stands in many other places, so that before it only
 * a quarter is plain, and other numbers where a time is expected. */
static size_t take_past(const clr_tokens *t, size_t i, bool expected, face_time *time) {
  size_t j = i + take_offset(t, i, time);
  if (j == i) return 0;
  bool part = t->tokens[i].kind == T_HALF || t->tokens[i].kind == T_QUARTER;
  bool past = next_is(t, j, T_PAST);
  bool to = next_is(t, j, T_TO) && t->tokens[i].kind != T_HALF;
  if (!past && !(to && (expected || part))) return 0;
  if (to) time->offset = -time->offset;
  size_t hour = take_hour(t, j + 1, time);
  bool alone = past && (expected || part); /* "EFC 30 past" */
  return hour > 0 || alone ? j + 1 + hour - i : 0;
}

/* "half one", as it is said in Britain for half past one. */
static size_t take_half_hour(const clr_tokens *t, size_t i, face_time *time) {
  clr_token number;
  size_t taken = t->tokens[i].kind == T_HALF ? take_whole(t, i + 1, 12, &number) : 0;
  if (taken == 0 || number.value == 0) return 0;
  size_t end = i + 1 + taken;
  bool length = next_is(t, end, T_MINUTE) || next_is(t, end, T_MILE) || next_is(t, end, T_HOUR);
  if (length) return 0;
  set_hour(time, &number);
  time->offset = 30;
  return end - i;
}

/* "on the hour", "the top of the hour", and 30 minutes past it, the bottom. */
static size_t take_top(const clr_tokens *t, size_t i, face_time *time) {
  clr_kind kind = t->tokens[i].kind;
  if (kind == T_ON) return next_is(t, i + 1, T_HOUR) ? 2 : 0;
  if (kind != T_TOP && kind != T_BOTTOM) return 0;
  size_t j = i + 1 + next_is(t, i + 1, T_OF);
  time->offset = kind == T_BOTTOM ? 30 : 0;
  return next_is(t, j, T_HOUR) ? j + 1 - i : 0;
}

/* "two o'clock", and figures where the half of the day follows them: "1:30 pm". */
static size_t take_figures(const clr_tokens *t, size_t i, face_time *time) {
  clr_token number;
  size_t taken = clr_gather_number(t, i, &number);
  if (taken == 0 || number.value != floor(number.value) || number.figures > 4) return 0;
  size_t j = i + taken;
  bool clock = number.figures <= 2 && next_is(t, j, T_OCLOCK);
  size_t part = j + next_is(t, j, T_IN);
  if (!clock && !next_is(t, part, T_DAYPART)) return 0;
  bool minutes = number.figures > 2;
  time->hour = minutes ? floor(number.value / 100) : number.value;
  time->offset = minutes ? number.value - 100 * time->hour : 0;
  time->face = time->hour >= 1 && time->hour <= 12;
  return time->hour > 24 || time->offset > 59 ? 0 : taken + clock;
}

/* "in the afternoon", "pm": half the day on. */
static size_t take_part_of_day(const clr_tokens *t, size_t i, face_time *time) {
  size_t j = i + next_is(t, i, T_IN);
  if (time->hour == NO_HOUR || !next_is(t, j, T_DAYPART)) return 0;
  double on = t->tokens[j].value;
  if (time->face) time->hour = fmod(time->hour, 12) + on;
  time->face = false;
  return j + 1 - i;
}

/* As a token that reads like the figures of a time; an hour that cannot be stays one. */
static void put_time(clr_token *out, const face_time *time) {
  out->figures = time->hour == NO_HOUR ? 2 : 4;
  out->half_day = time->face;
  if (time->hour == NO_HOUR) {
    out->value = fmod(time->offset + 60, 60);
  } else if (time->hour > 24) {
    out->value = 100 * time->hour + fabs(time->offset);
  } else {
    double day_min = time->face ? HALF_DAY_MIN : DAY_MIN;
    double minutes = fmod(60 * time->hour + time->offset + day_min, day_min);
    out->value = 100 * floor(minutes / 60) + fmod(minutes, 60);
  }
}

size_t clr_gather_clock(const clr_tokens *t, size_t i, bool expected, clr_token *out) {
  face_time time = {.hour = NO_HOUR};
  size_t taken = take_past(t, i, expected, &time);
  if (!taken) time = (face_time){.hour = NO_HOUR};
  if (!taken && expected) taken = take_half_hour(t, i, &time);
  if (!taken) taken = take_top(t, i, &time);
  if (!taken) taken = take_figures(t, i, &time);
  if (!taken) return 0;
  taken += take_part_of_day(t, i + taken, &time);
  const clr_token *first = &t->tokens[i], *last = &t->tokens[i + taken - 1];
  *out = (clr_token){.at = first->at, .length = last->at + last->length - first->at,
                     .kind = T_CLOCK, .breaks = first->breaks};
  put_time(out, &time);
  return taken;
}
