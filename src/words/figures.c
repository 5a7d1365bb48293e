/* Bearings, corrections and times as people read them. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/text.h"
#include "oxbow/words.h"
#include "say.h"

void ox_words_bearing(char buf[4], double bearing_deg) {
  int shown = isfinite(bearing_deg) ? ox_shown_deg(bearing_deg) : 0;
  if (shown < 1 || shown > 360) {
    memcpy(buf, "---", 4);
    return;
  }
  buf[0] = (char)('0' + shown / 100);
  buf[1] = (char)('0' + shown / 10 % 10);
  buf[2] = (char)('0' + shown % 10);
  buf[3] = '\0';
}

void ox_words_correction(char *buf, size_t bytes, double correction_deg, int decimals) {
  if (!isfinite(correction_deg)) {
    snprintf(buf, bytes, "%s", _("unknown"));
    return;
  }
  double size_deg = fabs(correction_deg);
  /* 9.96 is 10 when a tenth is shown, so the choice looks at the rounded figure. */
  int places = decimals == 1 && round(size_deg * 10.0) < 100.0 ? 1 : 0;
  words_figure figure = words_short(size_deg, places);
  if (strcmp(figure.text, "0") == 0)
    snprintf(buf, bytes, "%s°", figure.text);
  else if (correction_deg < 0)
    snprintf(buf, bytes, C_("a correction to the left", "%s° L"), figure.text);
  else
    snprintf(buf, bytes, C_("a correction to the right", "%s° R"), figure.text);
}

void ox_words_min_s(char *buf, size_t bytes, double s) {
  if (!isfinite(s) || fabs(s) > 1e9) {
    snprintf(buf, bytes, "%s", _("unknown"));
    return;
  }
  long whole = lround(fabs(s));
  snprintf(buf, bytes, "%s%ld:%02ld", s < 0 && whole > 0 ? "-" : "", whole / 60, whole % 60);
}

const char *ox_words_turns(ox_turns turns) {
  return words_side(turns != OX_TURNS_LEFT);
}

const char *ox_words_turns_noun(ox_turns turns) {
  return turns == OX_TURNS_LEFT ? _("left turns") : _("right turns");
}

const char *ox_words_magnetic_mark(void) {
  return C_("behind a bearing: magnetic", "M");
}

const char *ox_words_entry_noun(ox_entry_kind kind) {
  switch (kind) {
  case OX_ENTRY_DIRECT:
    return _("direct entry");
  case OX_ENTRY_PARALLEL:
    return _("parallel entry");
  case OX_ENTRY_TEARDROP:
    return _("teardrop entry");
  }
  return _("unknown");
}

const char *ox_words_eighth(double bearing_deg) {
  if (!isfinite(bearing_deg)) return _("unknown");
  switch ((int)floor(ox_norm360_deg(bearing_deg) / 45.0 + 0.5) % 8) {
  case 0:
    return C_("where something lies", "north");
  case 1:
    return C_("where something lies", "north-east");
  case 2:
    return C_("where something lies", "east");
  case 3:
    return C_("where something lies", "south-east");
  case 4:
    return C_("where something lies", "south");
  case 5:
    return C_("where something lies", "south-west");
  case 6:
    return C_("where something lies", "west");
  default:
    return C_("where something lies", "north-west");
  }
}
