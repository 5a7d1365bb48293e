/* What the comparison with the exact hold and the spread say in figures. */
#include "ox_overlay_words.h"

#include <glib.h>

#include "ox_number_text.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

/* A line for each quantity that differs in the last circuit, which comes first. */
static size_t append_differences(GString *text, const ox_comparison *comparison) {
  size_t told = 0;
  for (size_t i = 0; i < comparison->count; i++) {
    const ox_comparison_row *row = &comparison->rows[i];
    if (row->circuit != comparison->rows[0].circuit) break;
    if (!row->differs) continue;
    if (told++ == 0) g_string_append_printf(text, "%s:", row->which);
    g_string_append_printf(text, _("\n%s %s, exact %s"), row->quantity, row->flown, row->exact);
  }
  return told;
}

char *ox_overlay_words_exact(const ox_case *c, const ox_flight *flight) {
  ox_comparison comparison = ox_comparison_make(c, flight);
  GString *text = g_string_new(_("Compared with the exact hold. "));
  if (comparison.none)
    g_string_append(text, comparison.none);
  else if (comparison.is_exact)
    g_string_append(text,
                    _("The technique of this case is the exact hold: there is no difference."));
  else if (append_differences(text, &comparison) == 0)
    g_string_append(text, _("No difference in the last circuit."));
  ox_comparison_clear(&comparison);
  return g_string_free(text, FALSE);
}

/* With a minus sign as wide as the figures, not a hyphen. */
static void put_nm(char out[OX_NUMBER_TEXT_BYTES + 4], double nm) {
  char figures[OX_NUMBER_TEXT_BYTES];
  ox_number_format(figures, OX_FORM_PLAIN, 2, nm);
  g_snprintf(out, OX_NUMBER_TEXT_BYTES + 4, "%s%s", *figures == '-' ? "\u2212" : "",
             *figures == '-' ? figures + 1 : figures);
}

typedef struct {
  char low[OX_NUMBER_TEXT_BYTES + 4], high[OX_NUMBER_TEXT_BYTES + 4];
} range;

static range range_of(const ox_scatter *scatter) {
  range r;
  put_nm(r.low, scatter->low);
  put_nm(r.high, scatter->high);
  return r;
}

char *ox_overlay_words_spread(const ox_spread *spread, unsigned runs) {
  char low[24], high[24];
  if (!spread)
    return g_strdup_printf(_("Spread: %u flights with a pilot's and a forecast's errors are being "
                             "flown."), runs);
  GString *text = g_string_new(NULL);
  range rollout = range_of(&spread->rollout_nm), over = range_of(&spread->nonholding_nm);
  range farthest = range_of(&spread->farthest_nm);
  ox_words_min_s(low, sizeof low, spread->inbound_s.low);
  ox_words_min_s(high, sizeof high, spread->inbound_s.high);
  g_string_printf(text,
                  _("Spread of %zu flights with a pilot's and a forecast's errors; nine in ten lie "
                    "between: last inbound leg %s to %s; roll-out off the course, positive on the "
                    "holding side %s to %s NM; over the non-holding side %s to %s NM; farthest "
                    "from the fix %s to %s NM."),
                  spread->runs, low, high, rollout.low, rollout.high, over.low, over.high,
                  farthest.low, farthest.high);
  if (spread->not_regained > 0)
    g_string_append_printf(text, _(" In %zu of them the fix is not regained."),
                           spread->not_regained);
  return g_string_free(text, FALSE);
}
