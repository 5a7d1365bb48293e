/* solve LESSON: every number of each case as one JSON array. The keys and their order are a
 * contract; new ones go to the end of an object. */
#include <math.h>
#include <stdlib.h>

#include "cli_private.h"
#include "json.h"
#include "oxbow/angle.h"
#include "oxbow/crosscheck.h"
#include "oxbow/presets.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

static void put_setup(json *j, const ox_case *c, const ox_setup *s) {
  json_string(j, "case", c->name);
  json_number(j, "tas_kt", s->tas_kt);
  json_number(j, "bank_deg", s->bank_deg);
  json_number(j, "rate_deg_s", s->rate_deg_s);
  json_number(j, "radius_nm", s->radius_nm);
}

static void put_entry(json *j, const ox_case *c, const ox_flight *f) {
  int also = f->entry.also;
  json_open(j, "entry", '{');
  json_string(j, "kind", ox_entry_name(f->entry.kind));
  json_string(j, "also", also == OX_ENTRY_NONE ? NULL : ox_entry_name((ox_entry_kind)also));
  json_number(j, "boundary_deg", f->entry.boundary_deg);
  json_number(j, "heading_deg", ox_magnetic_deg(f->entry_heading_true_deg, c->variation_deg));
  json_close(j, '}');
  json_number(j, "speed_limit_kias", f->setup.speed_limit_kias);
}

static void put_steady(json *j, const ox_case *c, const ox_steady *s) {
  if (s->why != OX_STEADY_EXISTS) {
    json_string(j, "steady", NULL);
    json_string(j, "steady_why", ox_steady_why_name(s->why));
    return;
  }
  json_open(j, "steady", '{');
  json_number(j, "inbound_heading_deg", ox_magnetic_deg(s->inbound_heading_deg, c->variation_deg));
  json_number(j, "inbound_wca_deg", s->inbound_wca_deg);
  json_number(j, "inbound_gs_kt", s->inbound_gs_kt);
  json_number(j, "outbound_heading_deg",
              ox_magnetic_deg(s->outbound_heading_deg, c->variation_deg));
  json_number(j, "outbound_wca_deg", s->outbound_wca_deg);
  json_number(j, "outbound_s", s->outbound_s);
  json_number(j, "circuit_s", s->circuit_s);
  json_close(j, '}');
  json_string(j, "steady_why", NULL);
}

static void put_leg(json *j, const ox_leg *leg) {
  json_open_flat(j, NULL, '{');
  json_string(j, "name", ox_leg_name(leg->kind));
  json_whole(j, "circuit", leg->circuit);
  json_string(j, "shape", leg->shape == OX_SHAPE_TURN ? "turn" : "straight");
  json_number(j, "t0_s", leg->t0_s);
  json_number(j, "t1_s", leg->t1_s);
  json_number(j, "x0_nm", leg->p0_nm.x);
  json_number(j, "y0_nm", leg->p0_nm.y);
  json_number(j, "x1_nm", leg->p1_nm.x);
  json_number(j, "y1_nm", leg->p1_nm.y);
  json_number(j, "heading0_true_deg", leg->heading0_true_deg);
  json_number(j, "heading1_true_deg", leg->heading1_true_deg);
  json_close(j, '}');
}

static void put_flown(json *j, const ox_flight *f) {
  json_open(j, "legs", '[');
  for (size_t i = 0; i < f->leg_count; i++)
    put_leg(j, &f->legs[i]);
  json_close(j, ']');
  json_open(j, "events", '[');
  for (size_t i = 0; i < f->event_count; i++) {
    json_open_flat(j, NULL, '{');
    json_string(j, "kind", ox_event_name(f->events[i].kind));
    json_number(j, "t_s", f->events[i].t_s);
    json_close(j, '}');
  }
  json_close(j, ']');
}

static void put_circuits(json *j, const ox_flight *f) {
  json_open(j, "circuits", '[');
  for (size_t i = 0; i < f->circuit_count; i++) {
    const ox_circuit *m = &f->circuits[i];
    json_open_flat(j, NULL, '{');
    json_number(j, "outbound_s", m->outbound_s);
    json_number(j, "inbound_s", m->inbound_s);
    json_number(j, "rollout_offset_nm", m->rollout_offset_nm);
    json_number(j, "timed_s", m->timed_s);
    json_number(j, "fix_t_s", m->fix_t_s);
    json_number(j, "gate_deg", m->gate_deg);
    json_number(j, "inbound_error_s", m->inbound_error_s);
    json_number(j, "next_timed_s", m->next_timed_s);
    json_number(j, "nonholding_nm", m->nonholding_nm);
    json_close(j, '}');
  }
  json_close(j, ']');
}

static void put_advisories(json *j, const ox_case *c, const ox_flight *f) {
  char sentence[600];
  json_open(j, "advisories", '[');
  for (size_t i = 0; i < f->advice_count; i++) {
    ox_words_advice(sentence, sizeof sentence, c, &f->advice[i]);
    json_string(j, NULL, sentence);
  }
  json_close(j, ']');
}

static void put_orders(json *j, const ox_case *c, const ox_flight *f) {
  int preset = ox_preset_of(c);
  json_string(j, "preset", preset < 0 ? NULL : ox_preset_at((size_t)preset)->key);
  if (f->leave_t_s > 0.0)
    json_number(j, "leave_t_s", f->leave_t_s);
  else
    json_string(j, "leave_t_s", NULL);
}

/* Seconds after the first crossing as a clock, or null where none is given. */
static void put_clock(json *j, const char *key, const ox_case *c, double t_s) {
  char text[16];
  int s = (int)(ox_clock_utc_s(c, t_s) + 0.5) % 86400;
  snprintf(text, sizeof text, "%02d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
  json_string(j, key, ox_clock_is_known(c) ? text : NULL);
}

static void put_passages(json *j, const ox_case *c, const ox_flight *f, bool fuel) {
  ox_passage p[OX_PASSAGES_MAX];
  size_t count = ox_passages(c, f, p, OX_PASSAGES_MAX);
  json_open(j, "passages", '[');
  for (size_t i = 0; i < count; i++) {
    json_open_flat(j, NULL, '{');
    json_number(j, "t_s", p[i].t_s);
    put_clock(j, "utc", c, p[i].t_s);
    if (fuel) json_number(j, "fuel_left", p[i].left);
    if (fuel) json_string(j, "can_leave", p[i].can_leave ? "yes" : "no");
    json_close(j, '}');
  }
  json_close(j, ']');
}

static void put_efc(json *j, const ox_case *c, ox_flight *scratch) {
  static const char *const outcomes[] = {
      [OX_EFC_NOT_GIVEN] = "not given", [OX_EFC_NO_CLOCK] = "no clock",
      [OX_EFC_BEFORE] = "before",       [OX_EFC_MET] = "met",
      [OX_EFC_MISSED] = "missed",       [OX_EFC_NOT_REGAINED] = "not regained"};
  ox_efc_plan plan;
  if (ox_efc_plan_make(c, scratch, &plan) == OX_ERROR) return;
  json_open(j, "efc", '{');
  json_string(j, "outcome", outcomes[plan.outcome]);
  json_number(j, "after_s", plan.after_s);
  json_whole(j, "circuits", plan.circuits);
  json_number(j, "last_timed_s", plan.last_timed_s);
  json_close(j, '}');
}

static void put_when(json *j, const ox_case *c, const ox_flight *f, ox_flight *scratch) {
  static const char *const actions[] = {
      [OX_RADIO_NOT_DECIDED] = "not decided",
      [OX_RADIO_APPROACH_AT_EFC] = "approach at efc",
      [OX_RADIO_APPROACH_AT_ETA] = "approach at eta",
      [OX_RADIO_LEAVE_AT_EFC] = "leave at efc",
      [OX_RADIO_LEAVE_ON_ARRIVAL] = "leave on arrival"};
  ox_endurance e = ox_endurance_of(c);
  json_open(j, "when", '{');
  put_passages(j, c, f, e.known);
  put_efc(j, c, scratch);
  if (e.known)
    json_number(j, "leave_by_s", e.leave_by_s);
  else
    json_string(j, "leave_by_s", NULL);
  if (e.known)
    put_clock(j, "leave_by_utc", c, e.leave_by_s);
  else
    json_string(j, "leave_by_utc", NULL);
  json_string(j, "leave_by_caution", ox_words_no_reserve(c));
  json_string(j, "without_radio", actions[ox_lost_radio_of(c).action]);
  json_number(j, "slow_down_nm", ox_slow_down_of(f).nm);
  json_close(j, '}');
}

static void put_cross_check(json *j, const ox_case *c) {
  ox_crosscheck check;
  if (ox_crosscheck_make(c, &check) == OX_ERROR) return;
  json_open(j, "cross_check", '[');
  for (int i = 0; i < OX_CHECK_ITEM_COUNT && check.shown > 0; i++) {
    const ox_check_row *row = &check.rows[i];
    json_open_flat(j, NULL, '{');
    json_string(j, "item", ox_check_item_name((ox_check_item)i));
    json_string(j, "result", ox_check_result_name(row->result));
    json_string(j, "cleared", row->cleared);
    json_string(j, "shown", *row->shown ? row->shown : NULL);
    json_close(j, '}');
  }
  json_close(j, ']');
}

/* Only where something says where the fix is: most lessons know it by name alone. */
static void put_fix(json *j, const cli_cases *cases, size_t index) {
  ox_latlon at;
  if (!cli_fix_place(cases, index, &at)) return;
  json_open_flat(j, "fix", '{');
  json_string(j, "name", cli_case(cases, index)->hold.fix);
  json_number(j, "lat_deg", at.lat_deg);
  json_number(j, "lon_deg", at.lon_deg);
  json_close(j, '}');
}

/* Only where the outbound leg ends by a DME station. */
static void put_limits(json *j, const ox_case *c, const ox_flight *f) {
  static const char *const names[] = {[OX_ENDED_BY_DISTANCE] = "distance",
                                      [OX_ENDED_BY_RADIAL] = "radial",
                                      [OX_ENDED_OTHERWISE] = NULL};
  const ox_setup *s = &f->setup;
  if (s->goal != OX_GOAL_OUTBOUND_DME) return;
  const double none = (double)NAN; /* written null */
  bool seen = s->dme.end_ground_nm > 0.0;
  json_open(j, "limits", '{');
  json_number(j, "fix_dme_nm", s->dme_fix_nm);
  json_number(j, "outbound_dme_nm", seen ? s->goal_value : none);
  json_number(j, "outbound_ground_nm", seen ? s->dme.end_ground_nm : none);
  json_number(j, "limiting_radial_deg",
              s->dme.limited ? c->hold.station.limiting_radial_deg : none);
  json_open_flat(j, "ended_by", '[');
  for (size_t i = 0; i < f->circuit_count; i++)
    json_string(j, NULL, names[ox_outbound_ended_by(f, (int)i + 1)]);
  json_close(j, ']');
  json_close(j, '}');
}

static void put_case(json *j, const cli_cases *cases, size_t index, const ox_flight *f,
                     ox_flight *scratch) {
  const ox_case *c = cli_case(cases, index);
  json_open(j, NULL, '{');
  put_setup(j, c, &f->setup);
  put_entry(j, c, f);
  put_steady(j, c, &f->steady);
  put_flown(j, f);
  put_circuits(j, f);
  put_advisories(j, c, f);
  put_orders(j, c, f);
  put_when(j, c, f, scratch);
  bool before = ox_text_english(true);
  put_cross_check(j, c);
  ox_text_english(before);
  put_fix(j, cases, index);
  put_limits(j, c, f);
  json_close(j, '}');
}

static int put_all(cli_io *io, const cli_cases *cases) {
  ox_flight *flight = malloc(2 * sizeof *flight); /* and one to try things with */
  int code = OX_CLI_DONE;
  if (!flight) {
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
    return OX_CLI_INPUT;
  }
  json j = {.out = io->out, .first = true};
  json_open(&j, NULL, '[');
  for (size_t i = 0; i < cases->count; i++) {
    if (cli_solve(io, cases, i, flight))
      put_case(&j, cases, i, flight, flight + 1);
    else
      code = OX_CLI_INPUT;
  }
  json_close(&j, ']');
  fputc('\n', io->out);
  free(flight);
  return code;
}

int cli_solve_verb(cli_io *io, int argc, char **argv) {
  const char *case_name = NULL;
  const cli_option options[] = {{"--case", &case_name, NULL}};
  int files;
  if (!cli_options(io, argc, argv, options, 1, &files)) return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, _("solve needs one lesson"));
  cli_cases cases;
  int code = cli_cases_open(io, argv[0], case_name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = put_all(io, &cases);
  cli_cases_close(&cases);
  return code;
}
