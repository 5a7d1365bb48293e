/* What the comparison with the exact hold and the spread say in figures. */
#include "ox_overlay_words.h"

#include <glib.h>

#include "ox_number_text.h"
#include "oxbow/words.h"

char *ox_overlay_words_exact(const ox_case *c, const ox_flight *flight) {
  ox_comparison comparison = ox_comparison_make(c, flight);
  GString *text = g_string_new("Compared with the exact hold. ");
  const char *which = NULL;
  if (comparison.none) g_string_append(text, comparison.none);
  for (size_t i = 0; i < comparison.count; i++) {
    const ox_comparison_row *row = &comparison.rows[i];
    if (g_strcmp0(which, row->which) != 0)
      g_string_append_printf(text, "%s%s:", i > 0 ? ". " : "", row->which);
    else
      g_string_append_c(text, ';');
    which = row->which;
    char *quantity = g_strdup(row->quantity);
    quantity[0] = g_ascii_tolower(quantity[0]);
    g_string_append_printf(text, " %s %s, exact %s (%s)", quantity, row->flown, row->exact,
                           row->difference);
    g_free(quantity);
  }
  if (comparison.count > 0) g_string_append_c(text, '.');
  ox_comparison_clear(&comparison);
  return g_string_free(text, FALSE);
}

static void append_range_nm(GString *text, const char *what, const ox_scatter *scatter) {
  char low[OX_NUMBER_TEXT_BYTES], high[OX_NUMBER_TEXT_BYTES];
  ox_number_format(low, OX_FORM_PLAIN, 2, scatter->low);
  ox_number_format(high, OX_FORM_PLAIN, 2, scatter->high);
  g_string_append_printf(text, "; %s %s to %s NM", what, low, high);
}

char *ox_overlay_words_spread(const ox_spread *spread, unsigned runs) {
  char low[24], high[24];
  if (!spread)
    return g_strdup_printf("Spread: %u flights with a pilot's and a forecast's errors are being "
                           "flown.", runs);
  GString *text = g_string_new(NULL);
  ox_words_min_s(low, sizeof low, spread->inbound_s.low);
  ox_words_min_s(high, sizeof high, spread->inbound_s.high);
  g_string_printf(text,
                  "Spread of %zu flights with a pilot's and a forecast's errors; nine in ten lie "
                  "between: last inbound leg %s to %s",
                  spread->runs, low, high);
  append_range_nm(text, "roll-out off the course, positive on the holding side",
                  &spread->rollout_nm);
  append_range_nm(text, "over the non-holding side", &spread->nonholding_nm);
  append_range_nm(text, "farthest from the fix", &spread->farthest_nm);
  if (spread->not_regained > 0)
    g_string_append_printf(text, ". In %zu of them the fix is not regained", spread->not_regained);
  g_string_append_c(text, '.');
  return g_string_free(text, FALSE);
}
