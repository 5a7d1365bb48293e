/* Bearings, corrections and times as people read them. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/angle.h"
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
    snprintf(buf, bytes, "unknown");
    return;
  }
  double size_deg = fabs(correction_deg);
  /* 9.96 is 10 when a tenth is shown, so the choice looks at the rounded figure. */
  int places = decimals == 1 && round(size_deg * 10.0) < 100.0 ? 1 : 0;
  words_figure figure = words_short(size_deg, places);
  const char *side = strcmp(figure.text, "0") == 0 ? "" : correction_deg < 0 ? " L" : " R";
  snprintf(buf, bytes, "%s°%s", figure.text, side);
}

void ox_words_min_s(char *buf, size_t bytes, double s) {
  if (!isfinite(s) || fabs(s) > 1e9) {
    snprintf(buf, bytes, "unknown");
    return;
  }
  long whole = lround(fabs(s));
  snprintf(buf, bytes, "%s%ld:%02ld", s < 0 && whole > 0 ? "-" : "", whole / 60, whole % 60);
}

const char *ox_words_turns(ox_turns turns) {
  return turns == OX_TURNS_LEFT ? "left" : "right";
}

const char *ox_words_eighth(double bearing_deg) {
  static const char *const names[] = {"north", "north-east", "east", "south-east",
                                      "south", "south-west", "west", "north-west"};
  if (!isfinite(bearing_deg)) return "unknown";
  int eighth = (int)floor(ox_norm360_deg(bearing_deg) / 45.0 + 0.5);
  return names[eighth % 8];
}
