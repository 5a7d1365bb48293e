/* A student's numbers beside the flight, in sentences: how far apart, in which sense, and what the
 * right one goes by. Never a verdict alone. */
#include "oxbow/guess.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "oxbow/words.h"
#include "say.h"

ox_guess ox_guess_none(void) {
  return (ox_guess){OX_ENTRY_NONE, (double)NAN, (double)NAN, (double)NAN};
}

const char *ox_guess_tolerances(void) {
  return _("Near enough is within 5° of heading, 10 s of time and 0.2 NM of the track. This is "
           "common practice in training, not a regulation.");
}

/* --- the measures --------------------------------------------------------------------------- */

static bool heading_off(const ox_case *c, double guess_deg, double flown_true_deg,
                        double *off_deg) {
  if (!isfinite(guess_deg)) return false;
  *off_deg = ox_turn_between_deg(flown_true_deg, ox_true_deg(guess_deg, c->variation_deg));
  return true;
}

static bool is_flown(const ox_flight *flight) {
  return flight->leg_count > 0 && flight->circuit_count > 0;
}

bool ox_guess_first_heading_off(const ox_case *c, const ox_flight *flight, const ox_guess *guess,
                                double *off_deg) {
  return flight->leg_count > 0 && heading_off(c, guess->first_heading_deg,
                                              flight->entry_heading_true_deg, off_deg);
}

bool ox_guess_heading_off(const ox_case *c, const ox_flight *flight, const ox_guess *guess,
                          double *off_deg) {
  return is_flown(flight) && heading_off(c, guess->outbound_heading_deg,
                                         flight->circuits[0].outbound_heading_true_deg, off_deg);
}

/* What the stopwatch showed; where nothing was timed, how long it was level. */
static double flown_s(const ox_flight *flight) {
  const ox_circuit *first = &flight->circuits[0];
  return first->timed_s > 0.0 ? first->timed_s : first->outbound_s;
}

bool ox_guess_time_off(const ox_flight *flight, const ox_guess *guess, double *off_s) {
  if (!is_flown(flight) || !isfinite(guess->outbound_s)) return false;
  *off_s = guess->outbound_s - flown_s(flight);
  return true;
}

bool ox_guess_entry_fits(const ox_flight *flight, const ox_guess *guess) {
  return guess->entry != OX_ENTRY_NONE &&
         (guess->entry == (int)flight->entry.kind || guess->entry == flight->entry.also);
}

/* --- the sentences -------------------------------------------------------------------------- */

typedef struct {
  ox_guess_report report;
  bool failed;
} builder;

typedef struct {
  words_say yours, flown, sentence;
} cells;

static void row_clear(ox_guess_row *row) {
  free(row->yours);
  free(row->flown);
  free(row->sentence);
}

static void add(builder *b, const char *what, bool near, cells *x) {
  ox_guess_row row = {what, words_take(&x->yours), words_take(&x->flown), near,
                      words_take(&x->sentence)};
  size_t count = b->report.count;
  ox_guess_row *rows = realloc(b->report.rows, (count + 1) * sizeof *rows);
  if (rows) b->report.rows = rows;
  if (rows && row.yours && row.flown && row.sentence) {
    b->report.rows[b->report.count++] = row;
    return;
  }
  row_clear(&row);
  b->failed = true;
}

/* Where the heading lies to the boundary nearest to it. */
static void put_boundary(words_say *s, const ox_case *c, const ox_flight *flight) {
  const ox_entry_choice *entry = &flight->entry;
  bool by_track = c->technique.sector == OX_SECTOR_TRACK;
  double crossing_deg = by_track ? flight->setup.arrival_track_true_deg
                                 : flight->setup.arrival_heading_true_deg;
  words_figure crossing = words_marked(c, crossing_deg);
  const char *sector = _(ox_entry_name(entry->kind));
  if (fabs(entry->boundary_deg) < 0.05)
    words_put(s, _(" The %s on crossing, %s, lies on the boundary of the %s sector."),
              words_crossing(c), crossing.text, sector);
  else
    words_put(s,
              _(" The %s on crossing, %s, lies %s° to the %s of the boundary at %s, in the %s "
                "sector."),
              words_crossing(c), crossing.text, words_short(fabs(entry->boundary_deg), 1).text,
              words_side(entry->boundary_deg > 0.0), words_marked(c, entry->boundary_at_deg).text,
              sector);
}

static void add_entry(builder *b, const ox_case *c, const ox_flight *flight,
                      const ox_guess *guess) {
  if (guess->entry == OX_ENTRY_NONE || flight->leg_count == 0) return;
  cells x = {0};
  const char *yours = ox_words_entry_noun((ox_entry_kind)guess->entry);
  bool by_sector = guess->entry == (int)flight->entry.kind;
  bool fits = ox_guess_entry_fits(flight, guess);
  words_put(&x.yours, "%s", _(ox_entry_name((ox_entry_kind)guess->entry)));
  words_put(&x.flown, "%s", _(ox_entry_name(flight->flown)));
  /* translators: %s is "direct entry" etc. */
  if (by_sector)
    words_put(&x.sentence, _("The %s is right."), yours);
  else if (fits)
    words_put(&x.sentence,
              _("The %s is right as well: within 5° of a boundary either is accepted."), yours);
  else
    words_put(&x.sentence, _("You chose the %s; the %s is the one of the sector."), yours,
              _(ox_entry_name(flight->entry.kind)));
  put_boundary(&x.sentence, c, flight);
  if ((int)flight->flown != guess->entry && (fits || flight->flown != flight->entry.kind))
    words_put(&x.sentence, _(" This case is flown with the %s."),
              ox_words_entry_noun(flight->flown));
  add(b, _("Entry"), fits, &x);
}

/* What the outbound heading is made of: the outbound course, what the wind asks for, and what is
 * asked for by a turn outbound that does not begin on the heading of the inbound leg. */
static void put_made_of(words_say *s, const ox_case *c, const ox_flight *flight) {
  const ox_circuit *first = &flight->circuits[0];
  double outbound_deg = flight->setup.inbound_true_deg + 180.0;
  double whole_deg = ox_turn_between_deg(outbound_deg, first->outbound_heading_true_deg), wind_deg;
  words_figure outbound = words_marked(c, outbound_deg);
  if (!ox_guess_wind_part(c, flight, &wind_deg)) {
    words_put(s,
              _(" The outbound course is %s. The wind and the way the fix is crossed together ask "
                "for %s."),
              outbound.text, words_correction(whole_deg).text);
    return;
  }
  if (ox_vec_length(flight->setup.wind_kt) > 0.0 || wind_deg != 0.0)
    words_put(s, _(" The outbound course is %s, and the correction for the wind %s."),
              outbound.text, words_correction(wind_deg).text);
  else
    words_put(s, _(" The outbound course is %s, and there is no wind to correct for."),
              outbound.text);
  if (fabs(whole_deg - wind_deg) < 0.5) return;
  double crossed_deg = ox_flight_at(flight, first->fix_t_s).heading_true_deg;
  words_put(s,
            _(" The entry asks for %s: the turn outbound begins on %s and not on the heading of "
              "the inbound leg, and this leg makes good the difference."),
            words_correction(whole_deg - wind_deg).text, words_marked(c, crossed_deg).text);
}

static void put_heading_off(words_say *s, words_figure shown, words_figure flown, double off_deg,
                            bool usual) {
  words_figure off = words_number(fabs(off_deg), 0);
  const char *side = words_side(off_deg > 0.0);
  if (fabs(off_deg) < 0.5)
    words_put(s, _("%s is what is flown."), shown.text);
  else if (fabs(off_deg) <= OX_GUESS_HEADING_DEG)
    words_put(s, _("Near enough: %s is %s° to the %s of what is flown, %s."), shown.text, off.text,
              side, flown.text);
  else if (usual)
    words_put(s,
              _("%s is right: it is the usual answer, the outbound course with the correction for "
                "the wind. It is %s° to the %s of what is flown here, %s."),
              shown.text, off.text, side, flown.text);
  else
    words_put(s, _("%s is %s° to the %s of what is flown, %s."), shown.text, off.text, side,
              flown.text);
}

/* outbound: it is a heading of the first circuit's outbound leg. */
static void add_heading(builder *b, const char *what, const ox_case *c, const ox_flight *flight,
                        double guess_deg, double flown_true_deg, double off_deg, bool outbound) {
  cells x = {0};
  bool usual = outbound && ox_guess_is_usual_heading(c, flight, guess_deg);
  words_figure shown = words_marked(c, ox_true_deg(guess_deg, c->variation_deg));
  words_figure flown = words_marked(c, flown_true_deg);
  words_put(&x.yours, "%s", shown.text);
  words_put(&x.flown, "%s", flown.text);
  put_heading_off(&x.sentence, shown, flown, off_deg, usual);
  if (outbound) put_made_of(&x.sentence, c, flight);
  add(b, what, usual || fabs(off_deg) <= OX_GUESS_HEADING_DEG, &x);
}

/* After a direct entry the first heading is that of the outbound leg; it is explained once. */
static void add_first_heading(builder *b, const ox_case *c, const ox_flight *flight,
                              const ox_guess *guess) {
  double off_deg;
  if (!ox_guess_first_heading_off(c, flight, guess, &off_deg)) return;
  bool outbound = flight->flown == OX_ENTRY_DIRECT && is_flown(flight) &&
                  fabs(off_deg) > OX_GUESS_HEADING_DEG;
  add_heading(b, _("First heading"), c, flight, guess->first_heading_deg,
              flight->entry_heading_true_deg, off_deg, outbound);
}

static void add_outbound(builder *b, const ox_case *c, const ox_flight *flight,
                         const ox_guess *guess) {
  double off_deg;
  if (!ox_guess_heading_off(c, flight, guess, &off_deg)) return;
  add_heading(b, _("Outbound heading"), c, flight, guess->outbound_heading_deg,
              flight->circuits[0].outbound_heading_true_deg, off_deg, true);
}

static void put_time_off(words_say *s, double guess_s, double flown_time_s, bool usual) {
  double off_s = guess_s - flown_time_s;
  words_figure yours = words_time(guess_s), off = words_number(fabs(off_s), 0);
  words_figure flown = words_time(flown_time_s);
  if (fabs(off_s) < 0.5) {
    words_put(s, _("%s is what is flown."), yours.text);
    return;
  }
  if (fabs(off_s) <= OX_GUESS_TIME_S)
    words_put(s, _("Near enough: "));
  else if (usual)
    words_put(s, _("%s is right: the first outbound leg is usually flown for that long. Here the "
                   "time is worked out beforehand. "),
              yours.text);
  words_put(s,
            off_s > 0.0 ? _("%s is %s s longer than what is flown, %s.")
                        : _("%s is %s s shorter than what is flown, %s."),
            yours.text, off.text, flown.text);
}

static void add_time(builder *b, const ox_flight *flight, const ox_guess *guess) {
  double off_s;
  if (!ox_guess_time_off(flight, guess, &off_s)) return;
  cells x = {0};
  words_put(&x.yours, "%s", words_time(guess->outbound_s).text);
  words_put(&x.flown, "%s", words_time(flown_s(flight)).text);
  bool usual = ox_guess_is_usual_time(flight, guess->outbound_s);
  put_time_off(&x.sentence, guess->outbound_s, flown_s(flight), usual);
  const ox_circuit *first = &flight->circuits[0];
  if (first->complete)
    words_put(&x.sentence, _(" What is flown makes the inbound leg %s."),
              words_time(first->inbound_s).text);
  add(b, _("Outbound time"), usual || fabs(off_s) <= OX_GUESS_TIME_S, &x);
}

/* "on the non-holding side" of the inbound course. */
static const char *side_of(const ox_flight *flight, ox_vec at_nm) {
  double left = ox_vec_cross(ox_unit(flight->setup.inbound_true_deg), at_nm);
  if (fabs(left) < 0.05) return _("on the inbound course");
  return (left < 0.0) == (flight->setup.sense > 0) ? _("on the holding side")
                                                   : _("on the non-holding side");
}

static words_phrase percent(double share) {
  words_phrase p;
  snprintf(p.text, sizeof p.text, "%s\u00a0%%", words_number(100.0 * share, 0).text);
  return p;
}

static void add_sketch(builder *b, const ox_flight *flight, const ox_ink *sketch) {
  ox_sketch_fit fit;
  if (!ox_guess_fit(flight, sketch, &fit)) return;
  cells x = {0};
  bool near = fit.most_nm <= OX_GUESS_SKETCH_NM && fit.missed_nm <= OX_GUESS_SKETCH_NM;
  words_put(&x.yours, _("%s within 0.2 NM of it"), percent(fit.near_share).text);
  words_put(&x.flown, _("%s within 0.2 NM of yours"), percent(fit.covered_share).text);
  words_put(&x.sentence, _("Your track lies %s NM from the flown one on average and %s NM at most"),
            words_number(fit.mean_nm, 1).text, words_number(fit.most_nm, 1).text);
  if (fit.most_nm > OX_GUESS_SKETCH_NM) {
    ox_vec off = ox_vec_sub(fit.most_at_nm, fit.most_track_nm);
    words_put(&x.sentence, _(", where it is too far %s, %s"), ox_words_eighth(ox_bearing_deg(off)),
              side_of(flight, fit.most_at_nm));
  }
  words_put(&x.sentence, _("; %s of it is within 0.2 NM."), percent(fit.near_share).text);
  if (fit.covered_share < 0.95) {
    words_put(&x.sentence, _(" What it does not show lies up to %s NM from it, %s of the fix."),
              words_number(fit.missed_nm, 1).text,
              ox_words_eighth(ox_bearing_deg(fit.missed_at_nm)));
  }
  add(b, C_("a guess", "Track"), near, &x);
}

ox_guess_report ox_guess_compare(const ox_case *c, const ox_flight *flight, const ox_guess *guess,
                                 const ox_ink *sketch) {
  builder b = {0};
  add_entry(&b, c, flight, guess);
  add_first_heading(&b, c, flight, guess);
  add_outbound(&b, c, flight, guess);
  add_time(&b, flight, guess);
  add_sketch(&b, flight, sketch);
  if (b.failed) ox_guess_report_clear(&b.report);
  return b.report;
}

void ox_guess_report_clear(ox_guess_report *report) {
  for (size_t i = 0; i < report->count; i++) row_clear(&report->rows[i]);
  free(report->rows);
  *report = (ox_guess_report){0};
}
