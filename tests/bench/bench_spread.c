/* How many circuits are flown a second, on one processor and on two, against the GSL integrator
 * finding the positions of the same circuits in the same run (relative error 1e-9). */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "integrator.h"
#include "oxbow/spread.h"

enum { RUNS = 4000, CIRCUITS = 5, ROUNDS = 5 };

static double now_s(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void stop(const char *why) {
  fprintf(stderr, "bench_spread: %s\n", why);
  exit(1);
}

static ox_case bench_case(void) {
  ox_case c = ox_case_default();
  c.arrival.heading_deg = 30;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 60, .kt = 20};
  c.technique.circuits = CIRCUITS;
  return c;
}

static double spread_s(const ox_case *c, int threads) {
  ox_tolerances t = ox_tolerances_standard();
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    ox_spread s;
    double begin = now_s();
    if (ox_spread_make(c, &t, 7, RUNS, threads, &s) != OX_OK) stop("no spread");
    best = fmin(best, now_s() - begin);
    ox_spread_free(&s);
  }
  return best;
}

static double solve_s(const ox_case *c, ox_flight *flight) {
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    double begin = now_s();
    for (int i = 0; i < RUNS; i++) ox_flight_solve(c, flight);
    best = fmin(best, (now_s() - begin) / RUNS);
  }
  return best;
}

static double integrate_s(const ox_flight *flight) {
  static ox_vec ends[OX_LEGS_MAX];
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    double begin = now_s();
    for (int i = 0; i < RUNS / 20; i++)
      if (!ox_integrate_flight(flight, 1e-9, ends)) stop("the integrator failed");
    best = fmin(best, (now_s() - begin) / (RUNS / 20));
  }
  return best;
}

int main(void) {
  static ox_flight flight;
  ox_case c = bench_case();
  double solved = solve_s(&c, &flight), integrated = integrate_s(&flight);
  printf("solved: %.0f circuits a second on one processor; integrated, positions only: %.0f; "
         "ratio %.1f\n",
         CIRCUITS / solved, CIRCUITS / integrated, integrated / solved);
  double one = spread_s(&c, 1), two = spread_s(&c, 2);
  printf("spread of %d runs, each traced into the cells: one thread %.3f s (%.0f circuits/s), two "
         "threads %.3f s (%.0f circuits/s); ratio %.2f\n",
         RUNS, one, RUNS * CIRCUITS / one, two, RUNS * CIRCUITS / two, one / two);
  return 0;
}
