/* Sentences that grow, and figures that follow the catalogue's language, not the locale. */
#include "say.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/words.h"

#define MINUS "−"

static const double LARGEST = 1e12; /* beyond any quantity here; keeps the rounding in range */

words_say words_into(char *buf, size_t bytes) {
  buf[0] = '\0';
  return (words_say){.text = buf, .capacity = bytes, .fixed = true};
}

static bool make_room(words_say *s, size_t more) {
  size_t need = s->length + more + 1;
  if (need <= s->capacity) return true;
  if (s->fixed) return false;
  size_t capacity = s->capacity ? s->capacity : 64;
  while (capacity < need)
    capacity *= 2;
  char *text = realloc(s->text, capacity);
  if (!text) {
    s->failed = true;
    return false;
  }
  s->text = text;
  s->capacity = capacity;
  return true;
}

/* A cut never leaves the beginning of a character of several bytes behind. */
static size_t whole_characters(const char *text, size_t length) {
  size_t at = length;
  while (at > 0 && ((unsigned char)text[at - 1] & 0xc0u) == 0x80u)
    at--;
  if (at == 0) return 0;
  unsigned char lead = (unsigned char)text[at - 1];
  size_t needs = lead < 0x80u ? 1 : lead >= 0xf0u ? 4 : lead >= 0xe0u ? 3 : 2;
  return length - (at - 1) >= needs ? length : at - 1;
}

void words_put(words_say *s, const char *format, ...) {
  if (s->failed) return;
  va_list arguments, again;
  va_start(arguments, format);
  va_copy(again, arguments);
  int needs = vsnprintf(NULL, 0, format, arguments);
  va_end(arguments);
  bool room = needs >= 0 && make_room(s, (size_t)needs);
  if (needs >= 0 && (room || (s->fixed && s->length < s->capacity)))
    vsnprintf(s->text + s->length, s->capacity - s->length, format, again);
  va_end(again);
  if (room) {
    s->length += (size_t)needs;
  } else if (s->fixed) {
    s->length = whole_characters(s->text, strlen(s->text));
    s->text[s->length] = '\0';
    s->failed = true;
  }
}

char *words_take(words_say *s) {
  words_put(s, "%s", "");
  char *text = s->failed ? NULL : s->text;
  if (s->failed) free(s->text);
  *s = (words_say){0};
  return text;
}

void words_put_clock(words_say *s, double s_after_midnight) {
  if (!isfinite(s_after_midnight)) {
    words_put(s, "%s", _("unknown"));
    return;
  }
  double in_day_s = fmod(s_after_midnight, 86400.0);
  long whole = lround(in_day_s < 0 ? in_day_s + 86400.0 : in_day_s) % 86400;
  words_put(s, "%02ld:%02ld:%02ld", whole / 3600, whole / 60 % 60, whole % 60);
}

static bool rounds_to_zero(double value, int decimals) {
  return fabs(value) * pow(10.0, decimals) < 0.5;
}

words_figure words_number(double value, int decimals) {
  words_figure f;
  if (!isfinite(value)) {
    snprintf(f.text, sizeof f.text, "%s", _("unknown"));
    return f;
  }
  long long scale = 1;
  for (int i = 0; i < decimals && i < 6; i++)
    scale *= 10;
  double size = fabs(value) > LARGEST ? LARGEST : fabs(value);
  long long units = llround(size * (double)scale);
  const char *sign = value < 0 && units > 0 ? MINUS : "";
  if (scale == 1)
    snprintf(f.text, sizeof f.text, "%s%lld", sign, units);
  else
    snprintf(f.text, sizeof f.text, "%s%lld%.4s%0*lld", sign, units / scale, ox_text_decimal(),
             decimals, units % scale);
  return f;
}

words_figure words_short(double value, int most_decimals) {
  words_figure f = words_number(value, most_decimals);
  if (most_decimals < 1 || !isfinite(value)) return f;
  size_t length = strlen(f.text), figures = 0;
  while (figures < (size_t)most_decimals && f.text[length - 1 - figures] == '0')
    figures++;
  length -= figures;
  if (figures == (size_t)most_decimals) length -= strlen(ox_text_decimal());
  f.text[length] = '\0';
  return f;
}

words_figure words_signed(double value, int decimals) {
  words_figure f = words_short(value, decimals);
  if (!(value > 0.0) || rounds_to_zero(value, decimals) || !isfinite(value)) return f;
  words_figure with;
  snprintf(with.text, sizeof with.text, "+%.30s", f.text);
  return with;
}

words_figure words_shown(double bearing_deg) {
  words_figure f;
  char three[4];
  ox_words_bearing(three, bearing_deg);
  snprintf(f.text, sizeof f.text, "%s", three);
  return f;
}

words_figure words_magnetic(const ox_case *c, double true_deg) {
  return words_shown(ox_magnetic_deg(true_deg, c->variation_deg));
}

words_figure words_marked(const ox_case *c, double true_deg) {
  return words_given(c, ox_magnetic_deg(true_deg, c->variation_deg));
}

words_figure words_given(const ox_case *c, double magnetic_deg) {
  words_figure f = words_shown(magnetic_deg);
  if (c->variation_deg == 0.0) return f;
  words_figure marked;
  snprintf(marked.text, sizeof marked.text, "%.3s %.24s", f.text, ox_words_magnetic_mark());
  return marked;
}

words_figure words_correction(double correction_deg) {
  words_figure f;
  ox_words_correction(f.text, sizeof f.text, correction_deg, 1);
  return f;
}

words_figure words_time(double s) {
  words_figure f;
  ox_words_min_s(f.text, sizeof f.text, s);
  return f;
}

const char *words_side(bool right) {
  return right ? C_("the side of a turn", "right") : C_("the side of a turn", "left");
}

const char *words_north(ox_north north) {
  return north == OX_NORTH_MAGNETIC ? C_("behind a direction", "magnetic")
                                    : C_("behind a direction", "true");
}

const char *words_crossing(const ox_case *c) {
  return c->technique.sector == OX_SECTOR_TRACK ? C_("the sector goes by it", "track")
                                                : C_("the sector goes by it", "heading");
}
