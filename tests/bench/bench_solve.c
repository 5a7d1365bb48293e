/* How fast a flight is solved in closed form, against the same flight integrated numerically to
 * the same accuracy (relative error 1e-9) in the same run. Two baselines:
 *   positions  the integrator is given the legs, their times and headings, and only finds where
 *              the aircraft is
 *   solving    it also has to find what the engine finds, each circuit's outbound heading and time,
 *              by shooting from the rule of thumb; arrival and entry are left out of it */
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

/* The circuits by shooting, from triple drift and the nominal time, as a pilot would guess. */
static void shoot_circuits(double *worst_nm) {
  const ox_setup *s = &flight.setup;
  for (size_t i = 0; i < flight.circuit_count; i++) {
    ox_state over = ox_flight_at(&flight, flight.circuits[i].fix_t_s + 1e-9);
    ox_circuit_problem p = {over.heading_true_deg, s->inbound_true_deg,
                            flight.steady.inbound_heading_deg, flight.steady.inbound_gs_kt,
                            s->goal_value, s->sense, s->tas_kt, s->rate_deg_s, s->wind_kt};
    double deg = s->inbound_true_deg + 180 - 3 * flight.steady.inbound_wca_deg;
    double outbound_s = s->goal_value, miss_nm;
    if (!ox_shoot_circuit(&p, 1e-9, &deg, &outbound_s, &miss_nm)) stop("shooting failed");
    double heading_off = remainder(deg - flight.circuits[i].outbound_heading_true_deg, 360);
    if (fabs(heading_off) > 1e-4 || fabs(outbound_s - flight.circuits[i].outbound_s) > 1e-3)
      stop("shooting found another circuit");
    *worst_nm = fmax(*worst_nm, miss_nm);
  }
}

static double shoot_s(int times, double *worst_nm) {
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    double begin = now_s();
    for (int i = 0; i < times; i++) shoot_circuits(worst_nm);
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
  printf("entry     legs  closed form   positions  ratio    solving  ratio  flights/s  differ NM\n");
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_case c = bench_case(rows[i].entry);
    double solved = solve_s(&c, 2000), integrated = integrate_s(200), worst = 0, shot_nm = 0;
    if (flight.circuit_count != 5 || !flight.circuits[4].complete) stop("not five circuits");
    for (size_t k = 0; k < flight.leg_count; k++)
      worst = fmax(worst, hypot(ends[k].x - flight.legs[k].p1_nm.x,
                                ends[k].y - flight.legs[k].p1_nm.y));
    double shot = shoot_s(20, &shot_nm);
    if (!(worst < 1e-6) || !(shot_nm < 1e-6)) stop("the two do not agree");
    printf("%-8s  %4zu  %8.2f us  %7.2f us  %5.1f  %6.0f us  %5.1f  %9.0f  %9.1e\n",
           rows[i].name, flight.leg_count, solved * 1e6, integrated * 1e6, integrated / solved,
           shot * 1e6, shot / solved, 1 / solved, worst);
  }
  return 0;
}
