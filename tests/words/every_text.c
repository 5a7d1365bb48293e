#include "every_text.h"

#include "oxbow/crosscheck.h"
#include "oxbow/differences.h"
#include "oxbow/fields.h"
#include "oxbow/guess.h"
#include "oxbow/moments.h"
#include "oxbow/presets.h"
#include "oxbow/words.h"

/* --- cases --------------------------------------------------------------------------------- */

static bool one_in(ox_random *r, int many) { return ox_random_below(r, many) == 0; }

/* Now and then exactly along the course or on the boundary of a sector. */
static void random_arrival(ox_random *r, ox_case *c) {
  static const double off_deg[] = {0, 180, 70, 110, 290, 250};
  if (one_in(r, 2)) c->variation_deg = 0;
  c->hold.inbound_deg = floor(c->hold.inbound_deg) + 1;
  c->arrival.heading_deg = fmod(c->hold.inbound_deg + off_deg[ox_random_below(r, 6)], 360);
  c->technique.sector = OX_SECTOR_HEADING;
  c->technique.entry = OX_CHOOSE_AUTO;
}

static void random_station(ox_random *r, ox_case *c) {
  c->hold.leg_by = OX_LEG_BY_DISTANCE;
  c->hold.leg_nm = ox_random_between(r, 2, 12);
  c->hold.station.given = true;
  c->hold.station.radial_deg = fmod(c->hold.inbound_deg + (one_in(r, 2) ? 180 : 0), 360);
  c->hold.station.nm = ox_random_between(r, 0, 40);
  c->hold.station.elevation_ft = ox_random_between(r, 0, 3000);
  if (one_in(r, 2)) c->hold.station.limiting_radial_deg = ox_random_between(r, 1, 360);
  c->technique.at_radial = (ox_at_radial)ox_random_below(r, 2);
}

static void random_end(ox_random *r, ox_case *c) {
  /* Holds that end at their EFC are searched for, which takes long: a few are enough. */
  c->hold.ends = one_in(r, 12) ? OX_HOLD_TO_EFC : (ox_hold_ends)ox_random_below(r, 3);
  c->hold.efc_min = one_in(r, 3) ? -1 : 720 + ox_random_below(r, 40);
  c->arrival.fix_at_s = one_in(r, 3) ? -1 : 43200 + ox_random_below(r, 900);
  c->clock.utc_offset_min = one_in(r, 2) ? 0 : -300;
  if (one_in(r, 3)) c->hold.climb_to_ft = fmax(-1000, c->hold.altitude_ft - 2500);
  if (one_in(r, 3)) c->hold.climb_to_ft = fmin(44000, c->hold.altitude_ft + 3000);
  if (one_in(r, 4)) c->hold.limit_kias = 210;
  c->lost_radio.limit_starts_approach = (ox_limit_kind)ox_random_below(r, 3);
  c->lost_radio.eta_min = one_in(r, 2) ? -1 : 725 + ox_random_below(r, 40);
}

static void random_fuel(ox_random *r, ox_case *c) {
  c->fuel.on_board = ox_random_between(r, 5, 40);
  c->fuel.flow_h = ox_random_between(r, 8, 20);
  c->fuel.alternate_min = ox_random_between(r, 1, 40);
  c->fuel.reserve = ox_random_between(r, 1, 8);
  c->fuel.unit = (ox_fuel_unit)ox_random_below(r, 4);
}

static void random_shown(ox_random *r, ox_case *c) {
  if (one_in(r, 2)) strcpy(c->shown.fix, one_in(r, 2) ? "LARCH" : "ALDER");
  c->shown.direction = (ox_shown_direction)ox_random_below(r, 9);
  if (one_in(r, 3)) c->shown.course_deg = fmax(c->hold.inbound_deg, 1);
  if (one_in(r, 3)) c->shown.course_deg = ox_random_between(r, 1, 360);
  c->shown.course_is = (ox_course_kind)ox_random_below(r, 2);
  c->shown.turns = (ox_shown_turns)ox_random_below(r, 3);
  if (one_in(r, 2)) c->shown.leg_s = ox_random_between(r, 30, 150);
  if (one_in(r, 2)) c->shown.leg_nm = ox_random_between(r, 1, 9);
  c->shown.efc_min = one_in(r, 2) ? -1 : 725 + ox_random_below(r, 20);
}

ox_case ox_talkative_case(ox_random *r) {
  ox_case c = ox_random_case(r, one_in(r, 6) ? 1.1 : one_in(r, 6) ? 0.0 : 0.4);
  strcpy(c.name, "E2");
  strcpy(c.hold.fix, one_in(r, 8) ? "" : "LARCH");
  if (one_in(r, 6)) random_arrival(r, &c);
  if (one_in(r, 4)) random_station(r, &c);
  if (one_in(r, 2)) random_end(r, &c);
  if (one_in(r, 2)) random_fuel(r, &c);
  if (one_in(r, 2)) random_shown(r, &c);
  if (one_in(r, 3)) ox_preset_apply((size_t)ox_random_below(r, (int)ox_preset_count()), &c);
  if (one_in(r, 4)) c.aircraft.ias_kt = ox_random_between(r, 70, 260);
  c.wind_change_count = one_in(r, 5) ? 1 : 0;
  c.wind_changes[0] = (ox_wind_change){4.5, 130, 12, (ox_north)ox_random_below(r, 2)};
  return c;
}

/* --- the list ------------------------------------------------------------------------------ */

static void add_of(ox_told_list *list, const char *what, const char *text, size_t most) {
  assert_non_null(text);
  if (list->count == list->capacity) {
    list->capacity = list->capacity ? 2 * list->capacity : 256;
    list->texts = realloc(list->texts, list->capacity * sizeof *list->texts);
    assert_non_null(list->texts);
  }
  ox_told *t = &list->texts[list->count++];
  snprintf(t->what, sizeof t->what, "%s", what);
  t->text = malloc(strlen(text) + 1);
  assert_non_null(t->text);
  strcpy(t->text, text);
  t->most = most;
}

static void add(ox_told_list *list, const char *what, const char *text) {
  add_of(list, what, text, 0);
}

void ox_told_clear(ox_told_list *list) {
  for (size_t i = 0; i < list->count; i++) free(list->texts[i].text);
  free(list->texts);
  *list = (ox_told_list){0};
}

/* --- what is told -------------------------------------------------------------------------- */

static ox_flight flight, other_flight;

static void tell_working(const ox_case *c, ox_told_list *list) {
  ox_working w = ox_working_make(c, &flight);
  assert_true(w.count > 0);
  for (size_t i = 0; i < w.count; i++) {
    add(list, "working, group", w.rows[i].group);
    add(list, "working, label", w.rows[i].label);
    add(list, "working, value", w.rows[i].value);
    add(list, "working, why", w.rows[i].why);
    add(list, "working, source", w.rows[i].source);
  }
  ox_working_clear(&w);
}

static void tell_comparison(const ox_case *c, ox_told_list *list) {
  ox_comparison t = ox_comparison_make(c, &flight);
  if (t.none) add(list, "comparison, none", t.none);
  for (size_t i = 0; i < t.count; i++) {
    add(list, "comparison, which", t.rows[i].which);
    add(list, "comparison, quantity", t.rows[i].quantity);
    add(list, "comparison, flown", t.rows[i].flown);
    add(list, "comparison, exact", t.rows[i].exact);
    add(list, "comparison, difference", t.rows[i].difference);
    add(list, "comparison, why", t.rows[i].why);
  }
  ox_comparison_clear(&t);
}

static void tell_differences(const ox_case *c, ox_told_list *list) {
  ox_case other = ox_case_default();
  assert_int_not_equal(ox_flight_solve(&other, &other_flight), OX_ERROR);
  const ox_case *cases[] = {c, &other};
  const ox_flight *flights[] = {&flight, &other_flight};
  ox_differences d = ox_differences_make(cases, flights, 2);
  for (size_t i = 0; i < d.count; i++) {
    add(list, "differences, label", d.rows[i].label);
    add(list, "differences, value", d.rows[i].value[0]);
    add(list, "differences, the other", d.rows[i].value[1]);
  }
  ox_differences_clear(&d);
}

static void tell_moments(const ox_case *c, ox_told_list *list) {
  ox_moments m = ox_moments_make(c, &flight, 0, 1);
  for (size_t i = 0; i < m.count; i++) {
    add_of(list, "moment, what", m.moment[i].what, sizeof m.moment[i].what);
    add_of(list, "moment, figures", m.moment[i].figures, sizeof m.moment[i].figures);
    add_of(list, "moment, act", m.moment[i].act, sizeof m.moment[i].act);
  }
}

static void tell_crosscheck(const ox_case *c, ox_told_list *list) {
  static ox_crosscheck k;
  char text[OX_CROSSCHECK_BYTES];
  assert_int_not_equal(ox_crosscheck_make(c, &k), OX_ERROR);
  for (int i = 0; i < OX_CHECK_ITEM_COUNT; i++) {
    const ox_check_row *row = &k.rows[i];
    add(list, "cross-check, item", ox_check_item_name((ox_check_item)i));
    add(list, "cross-check, result", ox_check_result_name(row->result));
    add_of(list, "cross-check, cleared", row->cleared, sizeof row->cleared);
    add_of(list, "cross-check, shown", row->shown, sizeof row->shown);
    add_of(list, "cross-check, means", row->means, sizeof row->means);
  }
  ox_words_crosscheck(text, sizeof text, c, &flight, &k);
  add_of(list, "cross-check", text, sizeof text);
}

static void tell_guess(const ox_case *c, uint64_t seed, ox_told_list *list) {
  ox_random r = {seed};
  ox_guess guess = {ox_random_below(&r, 4) - 1, floor(ox_random_between(&r, 1, 360)),
                    floor(ox_random_between(&r, 1, 360)), floor(ox_random_between(&r, 30, 200))};
  if (one_in(&r, 3)) guess.first_heading_deg =
      fmod(flight.entry_heading_true_deg - c->variation_deg + 3 + 720, 360);
  ox_ink *ink = ox_ink_new();
  assert_non_null(ink);
  ox_ink_begin(ink, OX_INK_BLACK, OX_INK_THIN, (ox_vec){0, 0});
  ox_ink_extend(ink, (ox_vec){ox_random_between(&r, -3, 3), ox_random_between(&r, -3, 3)});
  ox_guess_report report = ox_guess_compare(c, &flight, &guess, seed % 4 == 0 ? ink : NULL);
  for (size_t i = 0; i < report.count; i++) {
    add(list, "guess, what", report.rows[i].what);
    add(list, "guess, yours", report.rows[i].yours);
    add(list, "guess, flown", report.rows[i].flown);
    add(list, "guess, sentence", report.rows[i].sentence);
  }
  ox_guess_report_clear(&report);
  ox_ink_free(ink);
}

static void tell_times(const ox_case *c, ox_told_list *list) {
  char text[OX_WHEN_BYTES];
  ox_efc_plan plan;
  ox_words_slow_down(text, sizeof text, c, &flight);
  add_of(list, "slow down", text, sizeof text);
  if (ox_efc_plan_make(c, &other_flight, &plan) != OX_ERROR) {
    ox_words_efc(text, sizeof text, c, &plan);
    add_of(list, "efc", text, sizeof text);
  }
  ox_words_endurance(text, sizeof text, c, &flight);
  add_of(list, "endurance", text, sizeof text);
  ox_words_lost_radio(text, sizeof text, c);
  add_of(list, "lost radio", text, sizeof text);
}

static void tell_sentences(const ox_case *c, ox_told_list *list) {
  char text[800];
  for (size_t i = 0; i < flight.advice_count; i++) {
    ox_words_advice(text, 600, c, &flight.advice[i]);
    add_of(list, "advice", text, 600);
  }
  ox_words_area(text, 500, c, &flight);
  add_of(list, "area", text, 500);
  for (int i = 0; i < OX_MISTAKE_COUNT; i++) {
    ox_words_mistake(text, sizeof text, c, &flight, (ox_mistake)i);
    add_of(list, "mistake", text, sizeof text);
  }
  char *whole = ox_words_describe(c, &flight);
  add(list, "description", whole);
  free(whole);
}

bool ox_tell_everything(const ox_case *c, uint64_t seed, ox_told_list *list) {
  if (ox_flight_solve(c, &flight) == OX_ERROR) return false;
  tell_working(c, list);
  tell_comparison(c, list);
  tell_differences(c, list);
  tell_moments(c, list);
  tell_crosscheck(c, list);
  tell_guess(c, seed, list);
  tell_times(c, list);
  tell_sentences(c, list);
  return true;
}
