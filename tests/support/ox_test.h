/* What every test includes: cmocka in the order it wants, and checks on doubles that print what
 * they wanted, what they got and by how much they differ. */
#ifndef OX_TEST_H
#define OX_TEST_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* |got - want| <= tolerance; NaN never passes. `what` names the row or quantity. */
#define assert_close(got, want, tolerance, what)                                               \
  ox_assert_close((got), (want), (tolerance), (what), __FILE__, __LINE__)
/* The same for bearings in degrees: 359.9 and 0.1 are 0.2 apart. */
#define assert_angle_close(got, want, tolerance, what)                                         \
  ox_assert_angle_close((got), (want), (tolerance), (what), __FILE__, __LINE__)

static inline void ox_assert_close(double got, double want, double tolerance, const char *what,
                                   const char *file, int line) {
  if (fabs(got - want) <= tolerance) return;
  print_error("%s: want %.12g, got %.12g, off by %.3g (allowed %.3g)\n", what, want, got,
              got - want, tolerance);
  _fail(file, line);
}

static inline void ox_assert_angle_close(double got, double want, double tolerance,
                                         const char *what, const char *file, int line) {
  double difference = remainder(got - want, 360.0);
  if (fabs(difference) <= tolerance) return;
  print_error("%s: want %.12g deg, got %.12g deg, off by %.3g (allowed %.3g)\n", what, want, got,
              difference, tolerance);
  _fail(file, line);
}

/* --- how many of the seeded cases are run -------------------------------------------------- */

/* The plain build runs them all. Under AddressSanitizer, which looks at the memory and not at the
 * figures, one in four; where $OXBOW_TEST_SHARE is N, one in N: the setup for valgrind sets it. */
static inline int ox_test_share(void) {
  const char *share = getenv("OXBOW_TEST_SHARE");
  if (share) {
    int n = atoi(share);
    if (n < 1) fail_msg("OXBOW_TEST_SHARE is \"%s\"; a whole number from 1 is wanted", share);
    return n;
  }
#if defined(__SANITIZE_ADDRESS__)
  return 4;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
  return 4;
#endif
#endif
  return 1;
}

/* How many of `all` seeded cases to run; says so where it is not all of them. Never under `fewest`:
 * what one case in a hundred meets needs some hundreds, whatever the share. */
static inline int ox_test_cases_from(int fewest, int all) {
  int cases = all / ox_test_share();
  if (cases < fewest) cases = all < fewest ? all : fewest;
  if (cases < all) print_message("# %d of %d seeded cases\n", cases, all);
  return cases;
}

/* The same, where eight are enough to mean something. */
static inline int ox_test_cases(int all) { return ox_test_cases_from(8, all); }

/* How many of a thing must have been met in those cases, where it is `all` in all of them. */
static inline int ox_test_least(int all) { return all / ox_test_share(); }

/* A small seeded generator (SplitMix64, public domain algorithm): the same numbers everywhere. */
typedef struct {
  uint64_t state;
} ox_random;

static inline uint64_t ox_random_bits(ox_random *r) {
  uint64_t z = (r->state += UINT64_C(0x9e3779b97f4a7c15));
  z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
  return z ^ (z >> 31);
}
/* Uniform in [low, high). */
static inline double ox_random_between(ox_random *r, double low, double high) {
  return low + (high - low) * ((double)(ox_random_bits(r) >> 11) * 0x1.0p-53);
}
/* Whole number in 0..count-1. */
static inline int ox_random_below(ox_random *r, int count) {
  return (int)(ox_random_bits(r) % (uint64_t)count);
}

#endif
