/* Words for what a record holds and for what was left out. */
#include <math.h>
#include <stdarg.h>
#include <stdio.h>

#include "oxbow/navdata.h"
#include "oxbow/text.h"
#include "sentence.h"

ox_status ox_say(ox_status status, char *remark, size_t bytes, const char *format, ...) {
  if (remark && bytes > 0) {
    va_list list;
    va_start(list, format);
    vsnprintf(remark, bytes, format, list);
    va_end(list);
  }
  return status;
}

const char *ox_skip_text(ox_skip reason) {
  switch (reason) {
  case OX_SKIP_OTHER_KIND:
    return _("of a kind that is not used here");
  case OX_SKIP_CONTINUATION:
    return _("continuing a record that is used");
  case OX_SKIP_EMPTY:
    return _("empty");
  case OX_SKIP_SHORT:
    return _("shorter than 132 columns");
  case OX_SKIP_LONG:
    return _("longer than 132 columns");
  case OX_SKIP_BYTES:
    return _("with a byte that is not a printable ASCII character");
  case OX_SKIP_NO_RECORD:
    return _("neither a standard nor a tailored record");
  case OX_SKIP_HOLD:
    return _("a hold with a field that cannot be read");
  case OX_SKIP_POINT:
    return _("a point whose name or position cannot be read");
  case OX_SKIP_REPEATED:
    return _("a point that was given before");
  default:
    return _("left out");
  }
}

const char *ox_terminator_name(ox_terminator terminator) {
  static const char *const names[] = {"HM", "HF", "HA", "EP"};
  unsigned i = (unsigned)terminator;
  return i < sizeof names / sizeof *names ? names[i] : "";
}

void ox_published_altitude_text(const ox_published_hold *hold, char *buf, size_t bytes) {
  int low_ft = (int)lround(hold->altitude_low_ft), high_ft = (int)lround(hold->altitude_high_ft);
  switch (hold->altitude_kind) {
  case OX_ALTITUDE_AT:
    snprintf(buf, bytes, _("at %d ft"), low_ft);
    break;
  case OX_ALTITUDE_AT_OR_ABOVE:
    snprintf(buf, bytes, _("at or above %d ft"), low_ft);
    break;
  case OX_ALTITUDE_AT_OR_BELOW:
    snprintf(buf, bytes, _("at or below %d ft"), high_ft);
    break;
  case OX_ALTITUDE_BETWEEN:
    snprintf(buf, bytes, _("between %d and %d ft"), low_ft, high_ft);
    break;
  default:
    snprintf(buf, bytes, "%s", "");
    break;
  }
}
