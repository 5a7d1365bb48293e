/* The presets' table. A technique is data: adding one is adding a row.
 *
 * Sources are those of the reference tables (AIM 5-3-8; ICAO Doc 8168; Navy P-871; UK-style
 * textbook and note; Canadian, Australian and US Air Force texts). A row that rests on a quotation
 * or on memory says so in its source. */
#include "oxbow/presets.h"

#include "oxbow/limits.h"
#include "oxbow/mark.h"

typedef struct {
  ox_preset text;
  ox_timing timing;
  ox_clock clock;
  ox_drift drift;
  ox_outbound outbound;
  ox_entry_line entry_line;
  ox_turn_by turn_by;
  double max_bank_deg;
  bool entry_by_altitude; /* the entry leg lasts 60 or 90 s by altitude; otherwise 60 s */
} row;

static const row rows[] = {
    {{"exact", N_("Exact in this wind"),
      N_("Outbound heading and time so that the inbound turn rolls out on the course and the leg "
         "comes out as asked for."),
      N_("geometry: the hold that closes on itself")},
     OX_TIMING_INBOUND, OX_CLOCK_ABEAM_OR_LEVEL, OX_DRIFT_EXACT, OX_OUTBOUND_EXACT,
     OX_ENTRY_LINE_HEADING, OX_TURN_BY_LESSER, 30, false},
    {{"aim", N_("FAA: inbound timed, triple drift"),
      N_("Three times the inbound correction outbound; the first outbound leg timed from abeam, "
         "then adjusted for the inbound time; 3 degrees a second or 30 degrees of bank."),
      "AIM 5-3-8 j4, j8(b), j8(c)"},
     OX_TIMING_INBOUND, OX_CLOCK_ABEAM, OX_DRIFT_TRIPLE, OX_OUTBOUND_ADJUST, OX_ENTRY_LINE_HEADING,
     OX_TURN_BY_LESSER, 30, false},
    {{"aim-fd", N_("FAA with a flight director"),
      N_("As the FAA's, with at most 25 degrees of bank."), "AIM 5-3-8 j8(b)"},
     OX_TIMING_INBOUND, OX_CLOCK_ABEAM, OX_DRIFT_TRIPLE, OX_OUTBOUND_ADJUST, OX_ENTRY_LINE_HEADING,
     OX_TURN_BY_LESSER, 25, false},
    {{"doc8168", N_("ICAO: outbound timed, wind allowed for"),
      N_("Still-air outbound time, with allowance for the wind in heading and in timing; entries "
         "by track; at most 25 degrees of bank."),
      N_("ICAO Doc 8168 Vol I Part I Section 6 (as quoted)")},
     OX_TIMING_OUTBOUND, OX_CLOCK_ABEAM, OX_DRIFT_EXACT, OX_OUTBOUND_EXACT, OX_ENTRY_LINE_TRACK,
     OX_TURN_BY_LESSER, 25, true},
    {{"parallel-track", N_("Outbound track parallel"),
      N_("The outbound leg is flown as a track parallel to the inbound one, for the still-air "
         "time."),
      N_("Doc 8168 Vol I read literally; AIP Australia ENR 1.5 (as quoted)")},
     OX_TIMING_OUTBOUND, OX_CLOCK_ABEAM, OX_DRIFT_TRACK, OX_OUTBOUND_NOMINAL, OX_ENTRY_LINE_TRACK,
     OX_TURN_BY_LESSER, 25, true},
    {{"p871", N_("US Navy: triple drift, add the difference"),
      N_("Triple drift; timing from abeam or wings level, the later; the inbound error added to "
         "the next outbound time, not under 30 seconds."),
      N_("CNATRA P-871 p. 76 to 79")},
     OX_TIMING_INBOUND, OX_CLOCK_ABEAM_OR_LEVEL, OX_DRIFT_TRIPLE, OX_OUTBOUND_ADJUST,
     OX_ENTRY_LINE_HEADING, OX_TURN_BY_LESSER, 30, true},
    {{"uk", N_("UK-style: double drift, a second a knot"),
      N_("Double drift outbound; a second of outbound time for each knot along the course; timing "
         "from abeam or the end of the turn, the later; at most 25 degrees of bank."),
      N_("UK-style textbook and drift note (as quoted); the second a knot is common practice")},
     OX_TIMING_OUTBOUND, OX_CLOCK_ABEAM_OR_LEVEL, OX_DRIFT_DOUBLE, OX_OUTBOUND_RULE,
     OX_ENTRY_LINE_TRACK, OX_TURN_BY_LESSER, 25, true},
    {{"canada", N_("Canada: still-air outbound, then adjusted inbound"),
      N_("The first outbound leg at the still-air time, then changed so that the inbound leg comes "
         "out; timing from abeam or on attaining the outbound heading, the later."),
      N_("TC AIM RAC 10 (as reproduced); the triple drift is common practice")},
     OX_TIMING_INBOUND, OX_CLOCK_ABEAM_OR_LEVEL, OX_DRIFT_TRIPLE, OX_OUTBOUND_ADJUST,
     OX_ENTRY_LINE_TRACK, OX_TURN_BY_LESSER, 25, true},
    {{"no-correction", N_("No correction at all"),
      N_("The still-air headings and times flown in wind: what the corrections are for."),
      N_("for comparison; no publication asks for it")},
     OX_TIMING_INBOUND, OX_CLOCK_ABEAM_OR_LEVEL, OX_DRIFT_NONE, OX_OUTBOUND_NOMINAL,
     OX_ENTRY_LINE_HEADING, OX_TURN_BY_LESSER, 30, false},
};

enum { ROWS = sizeof rows / sizeof *rows };

size_t ox_preset_count(void) {
  return ROWS;
}

const ox_preset *ox_preset_at(size_t index) {
  return index < ROWS ? &rows[index].text : NULL;
}

bool ox_preset_apply(size_t index, ox_case *c) {
  if (index >= ROWS) return false;
  const row *r = &rows[index];
  c->technique.timing = r->timing;
  c->technique.clock = r->clock;
  c->technique.drift = r->drift;
  c->technique.outbound = r->outbound;
  c->technique.entry_line = r->entry_line;
  c->technique.entry_s = r->entry_by_altitude ? ox_standard_leg_s(c->hold.altitude_ft) : 60.0;
  c->aircraft.turn_by = r->turn_by;
  c->aircraft.rate_deg_s = 3.0;
  c->aircraft.max_bank_deg = r->max_bank_deg;
  return true;
}

int ox_preset_of(const ox_case *c) {
  for (size_t i = 0; i < ROWS; i++) {
    ox_case applied = *c;
    if (ox_preset_apply(i, &applied) && ox_case_equal(&applied, c)) return (int)i;
  }
  return -1;
}
