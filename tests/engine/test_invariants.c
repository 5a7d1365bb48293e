/* What is true of every flight: 120 000 seeded random cases, every technique and entry, with winds
 * up to 60 % of the airspeed and a sixth of them up to 150 %. The sweep runs once and records; each
 * test asks for its own property and prints the first case that broke it. */
#include "invariants.h"
#include "oxbow/units.h"
#include "random_case.h"

enum { CASES = 120000, IMAGES_EVERY = 4 };

static ox_sweep sweep;
static ox_flight flight, image;

/* Two flights compared at the same instants: the worst distance between them, as a share of how far
 * they reach. A roll-out within rounding of the course may be written as one leg or as three, so
 * the paths are compared and not the lists of legs. */
static bool same_flight(const ox_flight *a, const ox_flight *b, double mirror, double turned_deg,
                        double *worst) {
  double begin = ox_flight_begin_s(a), end = ox_flight_end_s(a), reach = 1, s, k;
  *worst = fabs(end - ox_flight_end_s(b)) / (1 + end - begin);
  if (a->circuit_count != b->circuit_count || a->flown != b->flown) return false;
  ox_sincos_deg(turned_deg, &s, &k);
  for (size_t i = 0; i < a->leg_count; i++)
    reach = fmax(reach, hypot(a->legs[i].p1_nm.x, a->legs[i].p1_nm.y));
  for (int i = 0; i <= 40; i++) {
    double t = begin + (end - begin) * i / 40;
    ox_vec p = ox_flight_at(a, t).p_nm, q = ox_flight_at(b, t).p_nm;
    p.x *= mirror;
    ox_vec turned = {p.x * k + p.y * s, p.y * k - p.x * s};
    *worst = fmax(*worst, hypot(turned.x - q.x, turned.y - q.y) / reach);
  }
  return *worst <= 1e-6;
}

static void check_images(const ox_case *c, ox_random *r) {
  double worst, by = ox_random_between(r, 0, 360);
  ox_case mirrored = ox_mirrored_case(c), rotated = ox_rotated_case(c, by);
  ox_flight_solve(&mirrored, &image);
  bool ok = same_flight(&flight, &image, -1, 0, &worst);
  ox_sweep_note(&sweep, OX_HOLDS_MIRROR, ok, c, "mirror image differs by %.3g of its reach",
                worst);
  ox_flight_solve(&rotated, &image);
  ok = same_flight(&flight, &image, 1, by, &worst);
  ox_sweep_note(&sweep, OX_HOLDS_ROTATION, ok, c, "turned by %.17g differs by %.3g of its reach",
                by, worst);
}

/* Exact drift and exact time: from the second circuit on each is the steady one. */
static void check_steady(const ox_case *c) {
  const ox_steady *s = &flight.steady;
  if (c->technique.drift != OX_DRIFT_EXACT || c->technique.outbound != OX_OUTBOUND_EXACT ||
      s->why != OX_STEADY_EXISTS)
    return;
  sweep.steady++;
  for (size_t i = 1; i < flight.circuit_count; i++) {
    const ox_circuit *k = &flight.circuits[i];
    /* Only a circuit begun on the course is steady: the one before must have ended established. */
    if (!flight.circuits[i - 1].complete) continue;
    ox_state over = ox_flight_at(&flight, k->fix_t_s - 1e-6);
    if (!ox_same_bearing(over.heading_true_deg, s->inbound_heading_deg, 1e-7)) continue;
    double near_s = 1e-6 + 1e-9 * s->circuit_s;
    bool ok = k->complete && fabs(k->inbound_s - s->inbound_s) <= near_s &&
              fabs(k->outbound_s - s->outbound_s) <= near_s &&
              fabs(k->rollout_offset_nm) <= 1e-8 &&
              fabs(k->end_t_s - k->fix_t_s - s->circuit_s) <= near_s &&
              ox_same_bearing(k->outbound_heading_true_deg, s->outbound_heading_deg, 1e-7);
    bool dme = flight.setup.goal == OX_GOAL_OUTBOUND_NM;
    ox_sweep_note(&sweep, dme ? OX_HOLDS_STEADY_DME : OX_HOLDS_STEADY, ok, c,
                  "circuit %zu: inbound %.9g for %.9g, outbound %.9g for %.9g, roll-out %.3g NM",
                  i + 1, k->inbound_s, s->inbound_s, k->outbound_s, s->outbound_s,
                  k->rollout_offset_nm);
  }
}

static int fly_the_sweep(void **state) {
  ox_random r = {2026};
  for (long i = 0, cases = ox_test_cases(CASES); i < cases; i++) {
    ox_case c = ox_random_case(&r, i % 6 == 0 ? 1.5 : 0.6);
    if (i % 5 == 0) {
      c.technique.drift = OX_DRIFT_EXACT;
      c.technique.outbound = OX_OUTBOUND_EXACT;
    }
    if (ox_flight_solve(&c, &flight) == OX_ERROR) return -1;
    sweep.flights++;
    if (flight.circuit_count == (size_t)c.technique.circuits &&
        flight.circuits[flight.circuit_count - 1].complete)
      sweep.complete++;
    ox_check_legs(&sweep, &c, &flight);
    ox_check_events(&sweep, &c, &flight);
    ox_check_circuits(&sweep, &c, &flight);
    check_steady(&c);
    if (i % IMAGES_EVERY == 0) check_images(&c, &r);
  }
  return 0;
}

static void holds(ox_property property, int at_least) {
  if (sweep.broken[property] > 0) {
    print_error("broken %ld of %ld times; first: %s\n", sweep.broken[property],
                sweep.checked[property], sweep.first[property]);
    fail();
  }
  assert_true(sweep.checked[property] >= ox_test_least(at_least));
}

static void the_sweep_flies_every_valid_case_and_completes_most(void **state) {
  assert_int_equal(sweep.flights, ox_test_least(CASES));
  assert_true(sweep.complete > ox_test_least(CASES / 2));
  assert_true(sweep.steady > ox_test_least(CASES / 20));
}

static void every_number_of_a_flight_is_finite(void **state) { holds(OX_HOLDS_FINITE, CASES); }
static void legs_meet_in_place_and_time(void **state) { holds(OX_HOLDS_LEGS_MEET, CASES); }
static void a_leg_evaluated_at_its_ends_gives_its_ends(void **state) {
  holds(OX_HOLDS_LEG_ENDS, CASES);
}
static void heading_is_continuous(void **state) { holds(OX_HOLDS_HEADINGS, CASES); }
static void airspeed_is_constant(void **state) { holds(OX_HOLDS_AIRSPEED, CASES); }
static void the_flight_at_a_time_is_the_leg_at_that_time(void **state) {
  holds(OX_HOLDS_QUERIES, CASES);
}
static void events_come_in_order_inside_the_flight(void **state) {
  holds(OX_HOLDS_EVENT_ORDER, CASES);
}
static void turns_begin_and_end_where_the_events_say(void **state) {
  holds(OX_HOLDS_TURN_EVENTS, CASES);
}
static void fix_passages_are_over_the_fix(void **state) { holds(OX_HOLDS_FIX, CASES); }
static void abeam_is_abeam_and_outbound(void **state) { holds(OX_HOLDS_ABEAM, CASES / 2); }
static void established_is_on_the_course_and_on_its_heading(void **state) {
  holds(OX_HOLDS_ESTABLISHED, CASES / 2);
}
static void the_clock_starts_where_the_technique_says(void **state) {
  holds(OX_HOLDS_CLOCK, CASES / 2);
}
static void the_measured_outbound_time_is_that_of_the_legs(void **state) {
  holds(OX_HOLDS_OUTBOUND_S, CASES / 2);
}
static void the_measured_inbound_time_runs_from_the_end_of_the_plain_turn(void **state) {
  holds(OX_HOLDS_INBOUND_S, CASES / 2);
}
static void the_rollout_offset_is_where_the_plain_turn_ends(void **state) {
  holds(OX_HOLDS_ROLLOUT, CASES / 2);
}
static void the_excursion_is_the_farthest_point_beyond_the_course(void **state) {
  holds(OX_HOLDS_NONHOLDING, CASES / 40);
}
static void an_exact_hold_repeats_itself(void **state) { holds(OX_HOLDS_STEADY, CASES / 40); }
static void an_exact_hold_to_a_distance_repeats_itself(void **state) {
  holds(OX_HOLDS_STEADY_DME, CASES / 100);
}
static void left_is_the_mirror_of_right(void **state) {
  holds(OX_HOLDS_MIRROR, CASES / IMAGES_EVERY);
}
static void rotating_every_direction_rotates_the_flight(void **state) {
  holds(OX_HOLDS_ROTATION, CASES / IMAGES_EVERY);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_sweep_flies_every_valid_case_and_completes_most),
      cmocka_unit_test(every_number_of_a_flight_is_finite),
      cmocka_unit_test(legs_meet_in_place_and_time),
      cmocka_unit_test(a_leg_evaluated_at_its_ends_gives_its_ends),
      cmocka_unit_test(heading_is_continuous),
      cmocka_unit_test(airspeed_is_constant),
      cmocka_unit_test(the_flight_at_a_time_is_the_leg_at_that_time),
      cmocka_unit_test(events_come_in_order_inside_the_flight),
      cmocka_unit_test(turns_begin_and_end_where_the_events_say),
      cmocka_unit_test(fix_passages_are_over_the_fix),
      cmocka_unit_test(abeam_is_abeam_and_outbound),
      cmocka_unit_test(established_is_on_the_course_and_on_its_heading),
      cmocka_unit_test(the_clock_starts_where_the_technique_says),
      cmocka_unit_test(the_measured_outbound_time_is_that_of_the_legs),
      cmocka_unit_test(the_measured_inbound_time_runs_from_the_end_of_the_plain_turn),
      cmocka_unit_test(the_rollout_offset_is_where_the_plain_turn_ends),
      cmocka_unit_test(the_excursion_is_the_farthest_point_beyond_the_course),
      cmocka_unit_test(an_exact_hold_repeats_itself),
      cmocka_unit_test(an_exact_hold_to_a_distance_repeats_itself),
      cmocka_unit_test(left_is_the_mirror_of_right),
      cmocka_unit_test(rotating_every_direction_rotates_the_flight),
  };
  return cmocka_run_group_tests_name("invariants", tests, fly_the_sweep, NULL);
}
