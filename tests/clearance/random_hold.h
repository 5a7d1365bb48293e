/* Random cases that words can carry exactly, for the round trip and the mutations. */
#ifndef RANDOM_HOLD_H
#define RANDOM_HOLD_H

#include "ox_test.h"

#include "oxbow/clearance.h"

/* A random name that is a name in every wording: five letters, sometimes with a facility. */
static inline void random_plain_fix(ox_random *random, char fix[OX_FIX_NAME_BYTES]) {
  static const char consonants[] = "BCDFGHJKLMNPRSTVWZ", vowels[] = "AEIOU";
  static const char *const facilities[] = {"", "", " VOR", " VORTAC", " NDB", " intersection"};
  char name[6] = "";
  for (int i = 0; i < 5; i++)
    name[i] =
        i % 2 == 0 ? consonants[ox_random_below(random, 18)] : vowels[ox_random_below(random, 5)];
  snprintf(fix, OX_FIX_NAME_BYTES, "%s%s", name, facilities[ox_random_below(random, 6)]);
}

/* A name meant to be mistaken. */
static inline void random_odd_fix(ox_random *random, char fix[OX_FIX_NAME_BYTES]) {
  static const char *const parts[] = {
      "MAX",          "hold", "15 DME fix", "ABC 15 DME", "\"",          "R-240", "240",
      "VOR",          "FIX",  ",",          "north",      "L\u00c4RCHE", "of",    "the",
      "EFC 1825",     "Lake", "Henry",      "left turns", "no delay",    "5000",  ".",
      "\u00bd",       "d'Or", "V115",       "  ",         "larch",       "at",    "two",
      "as published", "(",    "\n",         "FL100"};
  size_t n = 0;
  int count = 1 + ox_random_below(random, 4);
  fix[0] = '\0';
  for (int i = 0; i < count; i++) {
    const char *part = parts[ox_random_below(random, (int)(sizeof parts / sizeof *parts))];
    const char *gap = i > 0 && ox_random_below(random, 3) > 0 ? " " : "";
    if (n + strlen(gap) + strlen(part) + 1 > OX_FIX_NAME_BYTES) break;
    n += (size_t)snprintf(fix + n, OX_FIX_NAME_BYTES - n, "%s%s", gap, part);
  }
}

/* What words can say: whole degrees, feet, seconds and knots, hundredths of a mile. */
static inline void random_said(ox_random *random, ox_case *c) {
  c->hold.inbound_deg = 1 + ox_random_below(random, 360);
  c->hold.turns = ox_random_below(random, 2) ? OX_TURNS_LEFT : OX_TURNS_RIGHT;
  c->hold.leg_by = ox_random_below(random, 2) ? OX_LEG_BY_DISTANCE : OX_LEG_BY_TIME;
  if (c->hold.leg_by == OX_LEG_BY_DISTANCE)
    c->hold.leg_nm = (50 + ox_random_below(random, 5951)) / 100.0;
  else
    c->hold.leg_s = ox_random_below(random, 3) ? 10 + ox_random_below(random, 591) : 0;
  int feet = ox_random_below(random, 46501) - 1500;
  c->hold.altitude_ft = ox_random_below(random, 2) ? feet : feet / 100 * 100;
  c->hold.limit_kias = ox_random_below(random, 2) ? 50 + ox_random_below(random, 351) : 0;
  c->hold.efc_min = ox_random_below(random, 4) ? ox_random_below(random, 1440) : -1;
}

static inline ox_case random_hold(ox_random *random, bool odd_fix) {
  ox_case c = ox_case_default();
  random_said(random, &c);
  do {
    if (odd_fix)
      random_odd_fix(random, c.hold.fix);
    else
      random_plain_fix(random, c.hold.fix);
  } while (!c.hold.fix[0]);
  c.technique.timing = ox_random_below(random, 2) ? OX_TIMING_OUTBOUND : OX_TIMING_INBOUND;
  c.hold.leg_end = ox_random_below(random, 2) ? OX_LEG_END_INBOUND : OX_LEG_END_OUTBOUND;
  return c;
}

#endif
