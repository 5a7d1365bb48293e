/* The figures a student is asked for. They are rows of the working, so that a key says what the
 * window says, with the same reasons and sources. */
#include "answers.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <pango/pango.h> /* for its GLib: figures */

#include "oxbow/endurance.h"
#include "oxbow/presets.h"
#include "oxbow/text.h"

static void put(char *buf, size_t bytes, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
static void put(char *buf, size_t bytes, const char *format, ...) {
  size_t used = strlen(buf);
  va_list arguments;
  va_start(arguments, format);
  vsnprintf(buf + used, bytes - used, format, arguments);
  va_end(arguments);
}

#define FIGURE_BYTES 32
#define DIRECTION_BYTES 16

static const double LEAST_WIND_KT = 0.05; /* as in the working */

/* A figure with at most one decimal, behind the decimal point of the reader's language. */
static void figure(char out[FIGURE_BYTES], double value) {
  char plain[FIGURE_BYTES];
  g_ascii_formatd(plain, sizeof plain, value == round(value) ? "%.0f" : "%.1f", value);
  char *point = strchr(plain, '.');
  if (point) *point++ = '\0';
  snprintf(out, FIGURE_BYTES, "%s%s%s", plain, point ? ox_text_decimal() : "",
           point ? point : "");
}

static const ox_working_row *row_of(const ox_working *w, const char *key) {
  for (size_t i = 0; i < w->count; i++)
    if (strcmp(w->rows[i].key, key) == 0) return &w->rows[i];
  return NULL;
}

/* --- what is asked ------------------------------------------------------------------------- */

typedef struct {
  const char *label; /* on paper */
  const char *row;   /* its key in the working */
} question;

static const question questions[] = {
    {N_("Entry"), "Entry"},
    {N_("Entry heading"), SHEET_ENTRY_HEADING},
    {N_("Outbound heading"), "Outbound heading flown first"},
    {N_("Outbound time"), "Outbound time flown first"},
    {N_("Inbound heading"), "Inbound heading"},
};

/* When the fix is left, or, where nothing says so, how long a circuit takes. */
static const question at_efc = {N_("Leave the fix"), "Leave the fix"};
static const question radio_failed = {N_("Leave, radio lost"), "Expect further clearance"};
static const question circuit = {N_("Whole circuit"), "Whole circuit"};

static bool ask(sheet_answers *a, const question *q) {
  const ox_working_row *row = row_of(&a->working, q->row);
  if (!row) return false;
  sheet_answer *answer = &a->answer[a->count++];
  *answer = (sheet_answer){
      .key = q->row, .label = _(q->label), .why = row->why, .source = row->source};
  /* Without what the label or the reason says anyway. */
  put(answer->value, sizeof answer->value, "%s", row->brief ? row->brief : row->value);
  return true;
}

/* The latest that alternate and reserve allow. False where no fuel is given. */
static bool ask_fuel(sheet_answers *a, const ox_case *c) {
  ox_endurance e = ox_endurance_of(c);
  if (!e.known) return false;
  char after[24], amount[4][FIGURE_BYTES];
  sheet_answer *answer = &a->answer[a->count++];
  *answer = (sheet_answer){
      .key = "Leave by", .label = _("Leave by"), .why = a->fuel_why,
      .source = _("given with the case")};
  ox_words_min_s(after, sizeof after, e.leave_by_s);
  int minute = (int)floor(ox_clock_utc_s(c, e.leave_by_s) / 60.0);
  if (e.leave_by_s < 0.0)
    put(answer->value, sizeof answer->value, "%s", C_("to leave", "too late"));
  else if (ox_clock_is_known(c))
    put(answer->value, sizeof answer->value, "%02d:%02d UTC", minute / 60, minute % 60);
  else
    put(answer->value, sizeof answer->value, _("%s after"), after);
  const double amounts[4] = {e.on_board, e.alternate, e.reserve, e.flow_h};
  for (int i = 0; i < 4; i++) figure(amount[i], amounts[i]);
  put(a->fuel_why, sizeof a->fuel_why,
      _("(on board %s − alternate %s − reserve %s) ÷ %s %s an hour: %s after the first "
        "crossing"),
      amount[0], amount[1], amount[2], amount[3], ox_words_fuel_unit(c->fuel.unit), after);
  const char *no_reserve = ox_words_no_reserve(c);
  if (no_reserve) put(a->fuel_why, sizeof a->fuel_why, ". %s", no_reserve);
  return true;
}

static void ask_all(sheet_answers *a, const ox_case *c) {
  for (size_t i = 0; i < sizeof questions / sizeof *questions; i++) ask(a, &questions[i]);
  if (ask(a, &at_efc) || ask_fuel(a, c)) return;
  if (!ask(a, &radio_failed)) ask(a, &circuit);
}

/* --- what is given ------------------------------------------------------------------------- */

static const char *value_of(const sheet_answers *a, const char *key) {
  const ox_working_row *row = row_of(&a->working, key);
  return row ? row->value : NULL;
}

/* With "M" behind it where magnetic and true differ. */
static void direction(char out[DIRECTION_BYTES], const ox_case *c, double magnetic_deg) {
  char bearing[4];
  ox_words_bearing(bearing, magnetic_deg);
  bool differs = c->variation_deg != 0.0;
  snprintf(out, DIRECTION_BYTES, "%s%s%s", bearing, differs ? " " : "",
           differs ? ox_words_magnetic_mark() : "");
}

static void give_hold(sheet_answers *a, const ox_case *c) {
  char course[DIRECTION_BYTES];
  const char *leg = value_of(a, "Leg asked for");
  bool right = c->hold.turns == OX_TURNS_RIGHT;
  direction(course, c, c->hold.inbound_deg);
  /* translators: fix, course, leg as in "1:00 inbound", altitude */
  put(a->given, sizeof a->given,
      right ? _("Hold at %s: inbound course %s, right turns, %s, %.0f ft")
            : _("Hold at %s: inbound course %s, left turns, %s, %.0f ft"),
      c->hold.fix[0] ? c->hold.fix : C_("a hold at", "the fix"), course,
      leg ? leg : _("standard leg"), c->hold.altitude_ft);
  if (c->hold.efc_min >= 0)
    put(a->given, sizeof a->given, _(", EFC %02d:%02d"), c->hold.efc_min / 60,
        c->hold.efc_min % 60);
}

static void give_arrival(sheet_answers *a, const ox_case *c, const ox_setup *s) {
  char heading[DIRECTION_BYTES], rate[FIGURE_BYTES], variation[FIGURE_BYTES];
  const char *wind = value_of(a, "Wind");
  direction(heading, c, c->arrival.heading_deg);
  figure(rate, round(s->rate_deg_s * 10.0) / 10.0);
  figure(variation, fabs(c->variation_deg));
  put(a->given, sizeof a->given,
      _(". Over the fix on heading %s, %.0f KIAS, TAS %.0f kt, turn %s°/s"), heading, s->ias_kt,
      s->tas_kt, rate);
  if (s->wind_speed_kt < LEAST_WIND_KT || !wind)
    put(a->given, sizeof a->given, "%s", _(". Wind calm"));
  else
    put(a->given, sizeof a->given, _(". Wind %s"), wind);
  if (c->variation_deg != 0.0)
    put(a->given, sizeof a->given,
        c->variation_deg < 0.0 ? _(". Variation %s° W") : _(". Variation %s° E"), variation);
}

static void give_fuel(sheet_answers *a, const ox_case *c) {
  ox_endurance e = ox_endurance_of(c);
  char amount[4][FIGURE_BYTES];
  const double amounts[4] = {e.on_board, e.flow_h, e.alternate, e.reserve};
  if (!e.known) return;
  for (int i = 0; i < 4; i++) figure(amount[i], amounts[i]);
  put(a->given, sizeof a->given,
      _(". Fuel: %s %s over the fix, %s an hour; %s to the alternate, %s reserve"), amount[0],
      ox_words_fuel_unit(c->fuel.unit), amount[1], amount[2], amount[3]);
}

static void give(sheet_answers *a, const ox_case *c, const ox_flight *flight) {
  const ox_working_row *flown = row_of(&a->working, "Flown as");
  give_hold(a, c);
  give_arrival(a, c, &flight->setup);
  give_fuel(a, c);
  if (flown)
    put(a->given, sizeof a->given, _(". Technique: %s"),
        ox_preset_of(c) < 0 ? flown->why : flown->value);
  put(a->given, sizeof a->given, ".");
}

/* The advice that changes what is seen: there is no steady hold, or the fix is not regained. */
static void remark(sheet_answers *a, const ox_case *c, const ox_flight *flight) {
  for (size_t i = 0; i < flight->advice_count; i++) {
    ox_advice_kind kind = flight->advice[i].kind;
    if (kind != OX_ADVICE_NO_STEADY && kind != OX_ADVICE_NOT_REGAINED) continue;
    ox_words_advice(a->remark, sizeof a->remark, c, &flight->advice[i]);
    return;
  }
}

bool sheet_answers_make(const ox_case *c, const ox_flight *flight, sheet_answers *out) {
  memset(out, 0, sizeof *out);
  out->working = ox_working_make(c, flight);
  if (out->working.count == 0) return false;
  ask_all(out, c);
  give(out, c, flight);
  remark(out, c, flight);
  return true;
}

void sheet_answers_clear(sheet_answers *answers) {
  ox_working_clear(&answers->working);
}
