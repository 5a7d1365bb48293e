/* A deliberate mistake in words: what it is, what it causes, and what it does to this flight. */
#include <math.h>
#include <stdlib.h>

#include "gap.h"
#include "oxbow/angle.h"
#include "oxbow/flaws.h"
#include "oxbow/words.h"
#include "say.h"

static void put_back(words_say *s, const ox_flight *right, const ox_flight *wrong) {
  double a = words_back_s(right), b = words_back_s(wrong);
  if (b < 0.0)
    words_put(s, "%s",
              a < 0.0 ? _("; the fix is not regained, nor is it without the mistake.")
                      : _("; the fix is not regained."));
  else if (a < 0.0)
    words_put(s, _("; back over the fix after %s, where the right flight does not regain it."),
              words_time(b).text);
  else if (fabs(b - a) < 0.5)
    words_put(s, _("; back over the fix after %s, as without it."), words_time(b).text);
  else
    words_put(s,
              b > a ? _("; back over the fix after %s instead of %s, %s s later.")
                    : _("; back over the fix after %s instead of %s, %s s earlier."),
              words_time(b).text, words_time(a).text, words_number(fabs(b - a), 0).text);
}

static void put_figures(words_say *s, const ox_case *c, const ox_flight *right,
                        const ox_flight *wrong) {
  words_gap g = words_widest_gap(right, wrong);
  if (g.apart_nm < 0.005)
    words_put(s, _(" In this case the two tracks are the same until then"));
  else
    words_put(
        s,
        _(" In this case it leads at most %s NM away from where the aircraft should be, to the %s, "
          "%s after the fix"),
        words_number(g.apart_nm, 2).text,
        ox_words_eighth(ox_magnetic_deg(g.bearing_true_deg, c->variation_deg)),
        words_time(g.t_s).text);
  put_back(s, right, wrong);
}

static const char *why_not_shown(ox_mistake mistake) {
  switch (mistake) {
  case OX_MISTAKE_DRIFT_WRONG_SIDE:
    return _("it needs a correction for a wind across the course");
  case OX_MISTAKE_CLOCK_AT_FIX:
    return _("the leg is not flown by time");
  case OX_MISTAKE_TEARDROP_WRONG_SIDE:
    return _("the entry is not a teardrop");
  case OX_MISTAKE_PARALLEL_WRONG_TURN:
    return _("the entry is not parallel");
  case OX_MISTAKE_RADIAL_AS_COURSE:
  case OX_MISTAKE_LATE_SPEED:
  case OX_MISTAKE_COUNT:
    break;
  }
  return _("nothing of it is flown");
}

void ox_words_mistake(char *buf, size_t bytes, const ox_case *c, const ox_flight *right,
                      ox_mistake mistake) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  const char *name = _(ox_mistake_name(mistake));
  char first = name[0] >= 'a' && name[0] <= 'z' ? (char)(name[0] - 'a' + 'A') : name[0];
  words_put(&s, "%c%s. %s", first, name + 1, _(ox_mistake_effect(mistake)));
  if (!ox_mistake_shows(c, right, mistake)) {
    words_put(&s, _(" It does not show in this case: %s."), why_not_shown(mistake));
    return;
  }
  ox_flaws flaws = {.mistakes = 1u << (unsigned)mistake};
  ox_flight *wrong = malloc(sizeof *wrong);
  if (wrong && ox_flight_solve_flawed(c, &flaws, wrong) != OX_ERROR)
    put_figures(&s, c, right, wrong);
  free(wrong);
}
