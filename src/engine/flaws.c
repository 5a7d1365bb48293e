/* Mistakes and random errors. The flight code asks the pilot for its flaws at the few places
 * where they act; here they are named and drawn. */
#include "oxbow/flaws.h"

#include <math.h>
#include <stddef.h>

#include "oxbow/angle.h"
#include "oxbow/mark.h"

typedef struct {
  const char *name, *effect;
} mistake_text;

static const mistake_text texts[OX_MISTAKE_COUNT] = {
    [OX_MISTAKE_DRIFT_WRONG_SIDE] = {N_("drift corrected on the wrong side"),
                                     N_("The wind and the correction add up: the inbound turn "
                                        "rolls out far from the course, on the side the wind blows "
                                        "to.")},
    [OX_MISTAKE_CLOCK_AT_FIX] =
        {N_("timing started at the fix"),
         N_("The turn is counted as part of the outbound leg, which comes out about a minute too "
            "short, and so does the inbound leg.")},
    [OX_MISTAKE_TEARDROP_WRONG_SIDE] = {N_("teardrop on the wrong side"),
                                        N_("Thirty degrees to the wrong side lead over the "
                                           "non-holding side, where the airspace is smaller, and "
                                           "the turn back crosses the course.")},
    [OX_MISTAKE_PARALLEL_WRONG_TURN] =
        {N_("parallel entry turned the wrong way"),
         N_("The turn away from the holding side takes the aircraft farther into the non-holding "
            "side before it comes back.")},
    [OX_MISTAKE_RADIAL_AS_COURSE] =
        {N_("radial flown as the inbound course"),
         N_("The whole hold lies on the opposite side of the fix, in airspace that nobody keeps "
            "clear.")},
    [OX_MISTAKE_LATE_SPEED] =
        {N_("speed reduced too late"),
         N_("At the higher speed the first turn is wide and the first outbound leg long: the "
            "aircraft may leave the protected airspace.")},
};

const char *ox_mistake_name(ox_mistake mistake) {
  unsigned i = (unsigned)mistake;
  return i < OX_MISTAKE_COUNT ? texts[i].name : "unknown";
}

const char *ox_mistake_effect(ox_mistake mistake) {
  unsigned i = (unsigned)mistake;
  return i < OX_MISTAKE_COUNT ? texts[i].effect : "unknown";
}

bool ox_mistake_shows(const ox_case *c, const ox_flight *flight, ox_mistake mistake) {
  switch (mistake) {
  case OX_MISTAKE_DRIFT_WRONG_SIDE:
    return c->technique.drift != OX_DRIFT_NONE &&
           fabs(flight->steady.inbound_wca_deg) >= 0.5 && flight->steady.why == OX_STEADY_EXISTS;
  case OX_MISTAKE_CLOCK_AT_FIX: return c->hold.leg_by == OX_LEG_BY_TIME;
  case OX_MISTAKE_TEARDROP_WRONG_SIDE: return flight->flown == OX_ENTRY_TEARDROP;
  case OX_MISTAKE_PARALLEL_WRONG_TURN: return flight->flown == OX_ENTRY_PARALLEL;
  case OX_MISTAKE_RADIAL_AS_COURSE:
  case OX_MISTAKE_LATE_SPEED: return true;
  case OX_MISTAKE_COUNT: break;
  }
  return false;
}

ox_tolerances ox_tolerances_standard(void) {
  return (ox_tolerances){.outbound_s = 10, .reaction_s = 6, .roll_s = 5, .heading_deg = 5,
                         .bank_deg = 3, .wind_kt = 5, .wind_from_deg = 15};
}

/* SplitMix64 (Steele, Lea, Flood 2014): each draw hashes seed, index and its own number, so a
 * sample does not depend on which others were drawn. */
static uint64_t mix(uint64_t z) {
  z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
  return z ^ (z >> 31);
}

typedef struct {
  uint64_t state;
} dice;

/* Uniform in [-1, 1). */
static double throw_dice(dice *d) {
  uint64_t bits = mix(d->state += UINT64_C(0x9e3779b97f4a7c15));
  return (double)(bits >> 11) * 0x1.0p-52 - 1.0;
}

static double clamp(double x, double low, double high) {
  return x < low ? low : x > high ? high : x;
}

void ox_spread_sample(const ox_case *c, const ox_tolerances *t, uint64_t seed, uint64_t index,
                      ox_case *sampled, ox_flaws *flaws) {
  dice d = {mix(seed ^ UINT64_C(0x6f78626f77)) ^ mix(index + 1)};
  *sampled = *c;
  *flaws = (ox_flaws){0};
  flaws->outbound_s = t->outbound_s * throw_dice(&d);
  flaws->entry_s = t->outbound_s * throw_dice(&d);
  flaws->outbound_heading_deg = t->heading_deg * throw_dice(&d);
  double reaction_s = t->reaction_s * 0.5 * (1.0 + throw_dice(&d));
  double roll_s = t->roll_s * 0.5 * (1.0 + throw_dice(&d));
  sampled->technique.reaction_s = clamp(c->technique.reaction_s + reaction_s, 0, 15);
  sampled->technique.roll_s = clamp(c->technique.roll_s + roll_s, 0, 15);
  sampled->aircraft.max_bank_deg =
      clamp(c->aircraft.max_bank_deg + t->bank_deg * throw_dice(&d), 5, 45);
  /* A bank error of a rate-limited turn is an error of its rate, in the same proportion. */
  double rate_share = t->bank_deg / c->aircraft.max_bank_deg * throw_dice(&d);
  sampled->aircraft.rate_deg_s = clamp(c->aircraft.rate_deg_s * (1.0 + rate_share), 0.5, 6);
  double wind_kt = t->wind_kt * throw_dice(&d), wind_from_deg = t->wind_from_deg * throw_dice(&d);
  for (int i = 0; i < c->wind_count && i < OX_WIND_ROWS_MAX; i++) {
    sampled->wind[i].kt = clamp(c->wind[i].kt + wind_kt, 0, 250);
    sampled->wind[i].from_deg = ox_norm360_deg(c->wind[i].from_deg + wind_from_deg);
  }
}
