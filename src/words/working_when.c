/* The working of time and fuel: when to slow down, when the fix is crossed, how the EFC is met,
 * what the fuel allows and what is done without radio. */
#include "oxbow/endurance.h"

#include <stdlib.h>

#include "rows.h"
#include "when.h"

#define GROUP N_("Time and fuel")
#define SOURCE_RADIO N_("14 CFR 91.185(c)(3); other States differ")

static void add_slow_down(words_rows *r) {
  words_say value = {0}, why = {0};
  ox_slow_down slow = ox_slow_down_of(r->f);
  words_put(&value, _("%s NM before the fix"), words_number(slow.nm, 1).text);
  words_put(&why, _("3 minutes × %s kt over the ground ÷ 60, at the holding speed"),
            words_number(slow.gs_kt, 1).text);
  rows_add(r, GROUP, N_("Begin to slow down"), &value, &why, "AIM 5-3-8 d");
}

static void add_passages(words_rows *r) {
  enum { NAMED = 4 };
  ox_passage p[OX_PASSAGES_MAX];
  size_t count = ox_passages(r->c, r->f, p, OX_PASSAGES_MAX);
  if (!ox_clock_is_known(r->c) || count == 0) return;
  words_say value = {0}, why = {0};
  for (size_t i = 0; i < count && i < NAMED; i++) {
    if (i > 0) words_put(&value, ", ");
    words_put_clock(&value, ox_clock_utc_s(r->c, p[i].t_s));
  }
  words_put(&value, count > NAMED ? " … UTC" : " UTC");
  words_put(&why,
            ox_text_count("%zu passage, the first as given", "%zu passages, the first as given",
                          (unsigned long)count),
            count);
  if (count > 1) words_put(&why, _(", the last at %s"), words_moment(r->c, p[count - 1].t_s).text);
  rows_add(r, GROUP, N_("Over the fix"), &value, &why, SOURCE_MEASURED);
}

static void add_plan(words_rows *r) {
  char text[OX_WHEN_BYTES];
  ox_efc_plan plan;
  if (r->c->hold.efc_min < 0 || !ox_clock_is_known(r->c)) return;
  ox_flight *scratch = malloc(sizeof *scratch);
  if (!scratch) {
    r->failed = true;
    return;
  }
  if (ox_efc_plan_make(r->c, scratch, &plan) != OX_ERROR) {
    words_say value = {0}, why = {0};
    if (plan.outcome == OX_EFC_MET)
      words_put(&value, _("%d, the last one %s outbound"), plan.circuits,
                words_time(plan.last_timed_s).text);
    else
      words_put(&value, _("not met"));
    ox_words_efc(text, sizeof text, r->c, &plan);
    words_put(&why, "%s", text);
    rows_add(r, GROUP, N_("Circuits to the EFC"), &value, &why, "AIM 5-3-8 k");
  }
  free(scratch);
}

static void add_fuel(words_rows *r) {
  ox_endurance e = ox_endurance_of(r->c);
  if (!e.known) return;
  words_say value = {0}, why = {0};
  if (e.leave_by_s < 0.0)
    words_put(&value, "%s", C_("leave the fix", "at once"));
  else
    words_put(&value, "%s", words_moment(r->c, e.leave_by_s).text);
  words_put(&why, _("(%s − %s − %s) ÷ %s an hour: on board, alternate, reserve and flow in %s"),
            words_short(e.on_board, 1).text, words_short(e.alternate, 1).text,
            words_short(e.reserve, 1).text, words_short(e.flow_h, 1).text,
            ox_words_fuel_unit(r->c->fuel.unit));
  if (e.leave_by_s >= 0.0) words_put(&why, _("; that is %s"), words_lasting(e.leave_by_s).text);
  const char *no_reserve = ox_words_no_reserve(r->c);
  if (no_reserve) words_put(&why, ". %s", no_reserve);
  rows_add(r, GROUP, N_("Leave the fix by"), &value, &why, SOURCE_GIVEN);
}

static void add_radio(words_rows *r) {
  static const char *const values[] = {
      [OX_RADIO_NOT_DECIDED] = N_("not decided"),
      [OX_RADIO_APPROACH_AT_EFC] = N_("begin the approach at the EFC"),
      [OX_RADIO_APPROACH_AT_ETA] = N_("begin the approach at the ETA"),
      [OX_RADIO_LEAVE_AT_EFC] = N_("leave the fix at the EFC"),
      [OX_RADIO_LEAVE_ON_ARRIVAL] = N_("leave the fix on arrival"),
  };
  char text[OX_WHEN_BYTES];
  ox_lost_radio radio = ox_lost_radio_of(r->c);
  if (radio.action == OX_RADIO_NOT_DECIDED) return;
  words_say value = {0}, why = {0};
  words_put(&value, "%s", _(values[radio.action]));
  ox_words_lost_radio(text, sizeof text, r->c);
  words_put(&why, "%s", text);
  rows_add(r, GROUP, N_("Without radio"), &value, &why, SOURCE_RADIO);
}

void rows_when(words_rows *r) {
  add_slow_down(r);
  add_passages(r);
  add_plan(r);
  add_fuel(r);
  add_radio(r);
}
