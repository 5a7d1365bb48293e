/* Clock times: a date, the crossing of the fix, and the flight's own seconds. */
#include <math.h>
#include <stdio.h>

#include "trackout_private.h"

static bool leap(int year) { return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0; }

static int days_in(int year, int month) {
  static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return days[month - 1] + (month == 2 && leap(year) ? 1 : 0);
}

bool ox_trackout_date_valid(int year, int month, int day) {
  return year >= 1900 && year <= 2999 && month >= 1 && month <= 12 && day >= 1 &&
         day <= days_in(year, month);
}

/* One day on or back. */
static void step_day(int *year, int *month, int *day, int by) {
  *day += by;
  if (*day < 1) {
    if (--*month < 1) {
      *month = 12;
      --*year;
    }
    *day = days_in(*year, *month);
  } else if (*day > days_in(*year, *month)) {
    *day = 1;
    if (++*month > 12) {
      *month = 1;
      ++*year;
    }
  }
}

bool clock_text(const ox_trackout_options *o, const ox_case *c, double t_s,
                char text[CLOCK_BYTES]) {
  if (o->year == 0 || c->arrival.fix_at_s < 0) return false;
  int year = o->year, month = o->month, day = o->day;
  int64_t ms = llround(1000.0 * t_s) + 1000 * (int64_t)c->arrival.fix_at_s;
  const int64_t day_ms = INT64_C(86400000);
  for (; ms < 0; ms += day_ms)
    step_day(&year, &month, &day, -1);
  for (; ms >= day_ms; ms -= day_ms)
    step_day(&year, &month, &day, 1);
  int s = (int)(ms / 1000);
  snprintf(text, CLOCK_BYTES, "%04d-%02d-%02dT%02d:%02d:%02d.%03dZ", year, month, day, s / 3600,
           s / 60 % 60, s % 60, (int)(ms % 1000));
  return true;
}
