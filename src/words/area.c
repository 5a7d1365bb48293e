/* The protected area in one sentence: an illustration, and how far it can be trusted. */
#include "oxbow/area.h"

#include <math.h>

#include "oxbow/words.h"
#include "say.h"

void ox_words_area(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight) {
  if (bytes == 0) return;
  words_say s = words_into(buf, bytes);
  ox_area area = ox_area_make(c, &flight->setup, 0.0);
  double margin_nm = ox_area_flight_margin_nm(&area, flight);
  if (fabs(margin_nm) < 0.005)
    words_put(&s, _("Against the illustrated area, which is to scale for no chart, the flown track "
                    "just reaches the edge"));
  else if (margin_nm > 0.0)
    words_put(&s,
              _("Against the illustrated area, which is to scale for no chart, the flown track "
                "stays inside by at least %s NM"),
              words_number(margin_nm, 2).text);
  else
    words_put(&s,
              _("Against the illustrated area, which is to scale for no chart, the flown track "
                "goes outside by up to %s NM"),
              words_number(-margin_nm, 2).text);
  words_put(
      &s,
      _("; its wind of %s kt from any side, true airspeed of %s kt, rate of turn of %s°/s and "
        "tolerances are those of ICAO Doc 8168 Vol II, how the outline is drawn from them is from "
        "memory, and the areas for the entries and for the error of the fix are left out."),
      words_number(area.wind_kt, 0).text, words_number(area.tas_kt, 0).text,
      words_short(area.rate_deg_s, 2).text);
}
