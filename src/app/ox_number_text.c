/* Numbers as people type and read them: both decimal signs, units, north as 360, clock times.
 *
 * The widget library's own number input drops a comma in one locale and a point in another, which
 * makes 1.5 into 15 without a word. Here a character that is not understood refuses the whole
 * text. */
#include "ox_number_text.h"

#include <ctype.h>
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <glib.h>

#include "oxbow/angle.h"

#define MINUTES_PER_DAY 1440.0
#define SECONDS_PER_DAY 86400.0

/* ---- writing ---------------------------------------------------------------------------- */

/* Fixed decimals in the C locale, trailing zeros and a negative zero dropped. */
static void plain_text(char *out, size_t bytes, int decimals, double value) {
  char format[8];
  g_snprintf(format, sizeof format, "%%.%df", CLAMP(decimals, 0, 6));
  g_ascii_formatd(out, (int)bytes, format, value);
  if (strchr(out, '.')) {
    size_t end = strlen(out);
    while (end > 0 && out[end - 1] == '0') end--;
    if (end > 0 && out[end - 1] == '.') end--;
    out[end] = '\0';
  }
  if (strcmp(out, "-0") == 0) strcpy(out, "0");
}

static void bearing_text(char *out, size_t bytes, int decimals, double value) {
  char figures[OX_NUMBER_TEXT_BYTES];
  plain_text(figures, sizeof figures, decimals, ox_norm360_deg(value));
  size_t whole = strcspn(figures, ".");
  /* Rounded first: 359.999 is north too, and north is 360. */
  if (strcmp(figures, "0") == 0) strcpy(figures, "360"), whole = 3;
  g_snprintf(out, (gulong)bytes, "%s%s", whole == 1 ? "00" : whole == 2 ? "0" : "", figures);
}

static void variation_text(char *out, size_t bytes, int decimals, double value) {
  char figures[OX_NUMBER_TEXT_BYTES];
  plain_text(figures, sizeof figures, decimals, fabs(value));
  bool none = strcmp(figures, "0") == 0;
  g_snprintf(out, (gulong)bytes, "%s%s", figures, none ? "" : value < 0 ? " W" : " E");
}

/* Puts the locale's decimal sign in place of the point. */
static void localise(char *text, size_t bytes) {
  const char *sign = localeconv()->decimal_point;
  char *point = strchr(text, '.');
  size_t length = strlen(sign);
  if (!point || strcmp(sign, ".") == 0 || strlen(text) + length > bytes) return;
  memmove(point + length, point + 1, strlen(point + 1) + 1);
  memcpy(point, sign, length);
}

void ox_number_format(char out[OX_NUMBER_TEXT_BYTES], ox_number_form form, int decimals,
                    double value) {
  size_t bytes = OX_NUMBER_TEXT_BYTES;
  if (!(fabs(value) < 1e15)) { /* NaN as well: no field accepts it */
    out[0] = '\0';
    return;
  }
  switch (form) {
  case OX_FORM_BEARING:
    bearing_text(out, bytes, decimals, value);
    break;
  case OX_FORM_VARIATION:
    variation_text(out, bytes, decimals, value);
    break;
  case OX_FORM_CLOCK: {
    int minutes = (int)fmod(fabs(floor(value)), MINUTES_PER_DAY);
    g_snprintf(out, (gulong)bytes, "%02d:%02d", minutes / 60, minutes % 60);
    return;
  }
  case OX_FORM_CLOCK_S: {
    int seconds = (int)fmod(fabs(floor(value)), SECONDS_PER_DAY);
    g_snprintf(out, (gulong)bytes, "%02d:%02d:%02d", seconds / 3600, seconds / 60 % 60,
               seconds % 60);
    return;
  }
  case OX_FORM_PLAIN:
  case OX_FORM_ALTITUDE:
  case OX_FORM_SECONDS:
    plain_text(out, bytes, decimals, value);
    break;
  }
  localise(out, bytes);
}

/* ---- reading ---------------------------------------------------------------------------- */

/* The text in ASCII, lower case, trimmed; minus sign, no-break space and degree sign made plain.
 * False when another character remains or it is too long for a number. */
static bool to_ascii(const char *text, char out[OX_NUMBER_TEXT_BYTES]) {
  static const struct {
    const char *utf8, *ascii;
  } plain[] = {{"\u2212", "-"}, {"\u00a0", " "}, {"\u202f", " "}, {"\u00b0", " deg"}};
  size_t n = 0;
  while (*text) {
    const char *add = NULL;
    size_t length = 1;
    for (size_t i = 0; i < G_N_ELEMENTS(plain) && !add; i++)
      if (g_str_has_prefix(text, plain[i].utf8)) {
        add = plain[i].ascii;
        length = strlen(plain[i].utf8);
      }
    char lower[2] = {g_ascii_tolower(*text), '\0'};
    if (!add) add = lower;
    if ((unsigned char)*add >= 0x80 || n + strlen(add) >= OX_NUMBER_TEXT_BYTES) return false;
    memcpy(out + n, add, strlen(add));
    n += strlen(add);
    text += length;
  }
  out[n] = '\0';
  g_strstrip(out);
  return true;
}

/* Whether `word` is one of the units; no word is fine. */
static bool is_unit(const char *units, const char *word) {
  if (*word == '\0') return true;
  if (!units) return false;
  size_t length = strlen(word);
  for (const char *at = units; *at; at += strcspn(at, "|"), at += *at == '|')
    if (strcspn(at, "|") == length && strncmp(at, word, length) == 0) return true;
  return false;
}

/* Reads a leading number with either decimal sign. With grouped, a sign before exactly three last
 * figures divides thousands. Returns what follows it, or NULL. */
static const char *leading_number(const char *text, bool grouped, double *value) {
  char figures[OX_NUMBER_TEXT_BYTES];
  size_t n = 0, digits = 0;
  const char *at = text;
  if (*at == '+' || *at == '-') figures[n++] = *at++;
  bool point = false, divided = false;
  for (; isdigit((unsigned char)*at) || *at == ',' || *at == '.' || *at == ' '; at++) {
    if (isdigit((unsigned char)*at)) {
      digits++;
      figures[n++] = *at;
      continue;
    }
    bool three = strspn(at + 1, "0123456789") == 3;
    if (grouped && three && digits > 0 && digits <= 3 && !divided) {
      divided = true;
      continue;
    }
    if (*at == ' ' || point || (divided && three)) break;
    point = true;
    figures[n++] = '.';
  }
  if (digits == 0) return NULL;
  figures[n] = '\0';
  *value = g_ascii_strtod(figures, NULL);
  if (!isfinite(*value)) return NULL;
  while (*at == ' ') at++;
  return at;
}

static ox_parse parse_clock(const char *text, double *value) {
  int hours = 0, minutes = 0;
  size_t figures = strspn(text, "0123456789");
  const char *after = text + figures;
  if (figures == 4) {
    hours = (text[0] - '0') * 10 + (text[1] - '0');
    minutes = (text[2] - '0') * 10 + (text[3] - '0');
  } else if ((figures == 1 || figures == 2) && (*after == ':' || *after == '.') &&
             strspn(after + 1, "0123456789") == 2) {
    for (const char *at = text; at < after; at++) hours = hours * 10 + (*at - '0');
    minutes = (after[1] - '0') * 10 + (after[2] - '0');
    after += 3;
  } else {
    return OX_PARSE_BAD;
  }
  while (*after == ' ') after++;
  if (!is_unit("z|utc", after) || hours > 23 || minutes > 59) return OX_PARSE_BAD;
  *value = hours * 60 + minutes;
  return OX_PARSE_OK;
}

/* "18:25:40", "182540"; without seconds as the clock above. */
static ox_parse parse_clock_s(const char *text, double *value) {
  size_t figures = strspn(text, "0123456789");
  char to_minute[OX_NUMBER_TEXT_BYTES];
  const char *seconds = figures == 6 ? text + 4 : NULL;
  if ((figures == 1 || figures == 2) && text[figures] != '\0') {
    const char *after = text + figures + 1;
    after += strspn(after, "0123456789");
    if (*after == ':' || *after == '.') seconds = after + 1;
  }
  if (!seconds) {
    ox_parse result = parse_clock(text, value);
    *value *= 60;
    return result;
  }
  if (strspn(seconds, "0123456789") != 2 || seconds[0] > '5') return OX_PARSE_BAD;
  /* What is before the seconds and the zone after them make the time to the minute. */
  size_t head = (size_t)(seconds - text) - (figures == 6 ? 0 : 1);
  g_snprintf(to_minute, sizeof to_minute, "%.*s%s", (int)head, text, seconds + 2);
  ox_parse result = parse_clock(to_minute, value);
  *value = *value * 60 + (seconds[0] - '0') * 10 + (seconds[1] - '0');
  return result;
}

static ox_parse parse_variation(const char *units, char *text, double *value) {
  double sign = 1;
  size_t length = strlen(text);
  bool before = *text == 'e' || *text == 'w';
  bool behind = length > 0 && (text[length - 1] == 'e' || text[length - 1] == 'w');
  if (before || behind) {
    char *letter = before ? text : text + length - 1;
    if (*letter == 'w') sign = -1;
    *letter = ' ';
    g_strstrip(text);
    if (*text == '-' || *text == '+') return OX_PARSE_BAD; /* "-12 W" says it twice */
  }
  const char *after = leading_number(text, false, value);
  if (!after || !is_unit(units, after)) return OX_PARSE_BAD;
  *value = *value == 0 ? 0 : sign * *value;
  return OX_PARSE_OK;
}

static ox_parse parse_seconds(const char *units, const char *text, double *value) {
  size_t figures = strspn(text, "0123456789");
  if (figures > 0 && figures <= 3 && text[figures] == ':') {
    const char *s = text + figures + 1;
    if (strlen(s) != 2 || strspn(s, "0123456789") != 2 || s[0] > '5') return OX_PARSE_BAD;
    *value = 60 * g_ascii_strtod(text, NULL) + g_ascii_strtod(s, NULL);
    return OX_PARSE_OK;
  }
  const char *after = leading_number(text, false, value);
  if (!after) return OX_PARSE_BAD;
  if (is_unit(units, after)) return OX_PARSE_OK;
  if (!is_unit("min|minute|minutes", after)) return OX_PARSE_BAD;
  *value *= 60;
  return OX_PARSE_OK;
}

static ox_parse parse_altitude(const char *units, const char *text, double *value) {
  bool level = g_str_has_prefix(text, "fl");
  if (level) text += 2;
  while (level && *text == ' ') text++;
  const char *after = leading_number(text, !level, value);
  if (!after || !is_unit(level ? NULL : units, after)) return OX_PARSE_BAD;
  if (level) *value *= 100;
  return OX_PARSE_OK;
}

ox_parse ox_number_parse(ox_number_form form, const char *units, const char *text, double *value) {
  char ascii[OX_NUMBER_TEXT_BYTES];
  double read = 0;
  if (!to_ascii(text, ascii)) return OX_PARSE_BAD;
  if (*ascii == '\0') return OX_PARSE_EMPTY;
  ox_parse result = OX_PARSE_BAD;
  switch (form) {
  case OX_FORM_CLOCK:
    result = parse_clock(ascii, &read);
    break;
  case OX_FORM_CLOCK_S:
    result = parse_clock_s(ascii, &read);
    break;
  case OX_FORM_VARIATION:
    result = parse_variation(units, ascii, &read);
    break;
  case OX_FORM_SECONDS:
    result = parse_seconds(units, ascii, &read);
    break;
  case OX_FORM_ALTITUDE:
    result = parse_altitude(units, ascii, &read);
    break;
  case OX_FORM_PLAIN:
  case OX_FORM_BEARING: {
    const char *after = leading_number(ascii, false, &read);
    if (after && is_unit(units, after)) result = OX_PARSE_OK;
    /* One north: 0 is understood and kept as 360. */
    if (form == OX_FORM_BEARING && read == 0) read = 360;
    break;
  }
  }
  if (result == OX_PARSE_OK) *value = read == 0 ? 0 : read; /* no negative zero */
  return result;
}

/* ---- steps ------------------------------------------------------------------------------ */

double ox_number_step(ox_number_form form, double value, double step, double min, double max) {
  double next = value + step;
  if (form == OX_FORM_BEARING) {
    next = ox_norm360_deg(next);
    return next == 0 ? 360 : next;
  }
  if (form == OX_FORM_CLOCK) {
    next = fmod(next, MINUTES_PER_DAY);
    return next < 0 ? next + MINUTES_PER_DAY : next;
  }
  if (form == OX_FORM_CLOCK_S) {
    next = fmod(next, SECONDS_PER_DAY);
    return next < 0 ? next + SECONDS_PER_DAY : next;
  }
  return CLAMP(next, min, max);
}
