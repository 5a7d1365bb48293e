/* How fast a flight is solved in closed form, against the same flight integrated numerically to
 * the same accuracy (relative error 1e-9) in the same run. The integrator is given the legs, their
 * times and headings; it only has to find the positions. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "integrator.h"
#include "oxbow/flight.h"

enum { ROUNDS = 7 };

static ox_flight flight;
static ox_vec ends[OX_LEGS_MAX];

static double now_s(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

/* An entry and five circuits in a wind across and along the course. */
static ox_case bench_case(ox_entry_order entry) {
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.hold.inbound_deg = 240;
  c.arrival.heading_deg = 290;
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){.from_deg = 10, .kt = 25};
  c.technique.entry = entry;
  c.technique.circuits = 5;
  return c;
}

static void stop(const char *why) {
  fprintf(stderr, "bench_solve: %s\n", why);
  exit(1);
}

/* Seconds for one flight, the best of a few rounds. */
static double solve_s(const ox_case *c, int times) {
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    double begin = now_s();
    for (int i = 0; i < times; i++)
      if (ox_flight_solve(c, &flight) == OX_ERROR) stop("the case was refused");
    best = fmin(best, (now_s() - begin) / times);
  }
  return best;
}

static double integrate_s(int times) {
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    double begin = now_s();
    for (int i = 0; i < times; i++)
      if (!ox_integrate_flight(&flight, 1e-9, ends)) stop("the integrator failed");
    best = fmin(best, (now_s() - begin) / times);
  }
  return best;
}

int main(void) {
  static const struct {
    const char *name;
    ox_entry_order entry;
  } rows[] = {{"direct", OX_CHOOSE_DIRECT},
              {"parallel", OX_CHOOSE_PARALLEL},
              {"teardrop", OX_CHOOSE_TEARDROP}};
  printf("entry     legs  solved in closed form  integrated (1e-9)  ratio  flights/s  differ NM\n");
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = bench_case(rows[i].entry);
    double solved = solve_s(&c, 2000), integrated = integrate_s(200), worst = 0;
    if (flight.circuit_count != 5 || !flight.circuits[4].complete) stop("not five circuits");
    for (size_t k = 0; k < flight.leg_count; k++)
      worst = fmax(worst, hypot(ends[k].x - flight.legs[k].p1_nm.x,
                                ends[k].y - flight.legs[k].p1_nm.y));
    if (!(worst < 1e-6)) stop("the two do not agree");
    printf("%-8s  %4zu  %18.2f us  %14.2f us  %5.1f  %9.0f  %9.1e\n", rows[i].name,
           flight.leg_count, solved * 1e6, integrated * 1e6, integrated / solved, 1 / solved,
           worst);
  }
  return 0;
}
