/* Sentences, and the ways numbers are written and spoken.
 *
 * Spoken figures: courses, times, speeds and levels figure by figure, altitudes in thousands and
 * hundreds (AIM 4-2-8 to 4-2-11, ICAO Annex 10 Vol II 5.2.1.4). Both were written from memory: no
 * copy was at hand. Of the pronunciations only those are spelt that sound different from the
 * everyday word: tree, fower, fife, niner, and tousand in the ICAO wording. */
#include "text.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/text.h"
#include "reading.h"

clr_text clr_into(char *buf, size_t bytes) {
  buf[0] = '\0';
  return (clr_text){.text = buf, .capacity = bytes, .fixed = true};
}

static bool make_room(clr_text *t, size_t more) {
  size_t need = t->length + more + 1;
  if (need <= t->capacity) return true;
  if (t->fixed) return false;
  size_t capacity = t->capacity ? t->capacity : 128;
  while (capacity < need)
    capacity *= 2;
  char *text = realloc(t->text, capacity);
  if (!text) return false;
  t->text = text;
  t->capacity = capacity;
  return true;
}

static size_t whole_characters(const char *text, size_t length) {
  size_t at = length;
  while (at > 0 && ((unsigned char)text[at - 1] & 0xc0) == 0x80)
    at--;
  if (at == 0) return 0;
  unsigned char lead = (unsigned char)text[at - 1];
  size_t needs = lead < 0x80 ? 1 : lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
  return length - (at - 1) >= needs ? length : at - 1;
}

void clr_put(clr_text *t, const char *format, ...) {
  if (t->failed) return;
  va_list arguments, again;
  va_start(arguments, format);
  va_copy(again, arguments);
  int needs = vsnprintf(NULL, 0, format, arguments);
  va_end(arguments);
  bool room = needs >= 0 && make_room(t, (size_t)needs);
  if (room || (needs >= 0 && t->fixed))
    vsnprintf(t->text + t->length, t->capacity - t->length, format, again);
  va_end(again);
  if (room) {
    t->length += (size_t)needs;
    return;
  }
  t->failed = true;
  if (!t->fixed) return;
  t->length = whole_characters(t->text, strlen(t->text));
  t->text[t->length] = '\0';
}

char *clr_take(clr_text *t) {
  clr_put(t, "%s", "");
  char *text = t->failed ? NULL : t->text;
  if (t->failed) free(t->text);
  *t = (clr_text){0};
  return text;
}

void clr_sentence(clr_text *t) {
  if (t->failed || t->length == 0) return;
  if (t->text[0] >= 'a' && t->text[0] <= 'z') t->text[0] = (char)(t->text[0] - 'a' + 'A');
  clr_put(t, ".");
}

void clr_next(clr_text *t) {
  if (t->length > 0) clr_put(t, " ");
}

/* A marked word as the text wants it. */
static const char *word(const clr_text *t, const char *english) {
  return t->for_people ? _(english) : english;
}

/* translators: these are figures spoken one by one, as in "heading two four zero" */
static const char *const figure_words[10] = {N_("zero"), N_("one"),  N_("two"), N_("tree"),
                                             N_("fower"), N_("fife"), N_("six"), N_("seven"),
                                             N_("eight"), N_("niner")};

static const char *point_word(const clr_text *t, const ox_say_options *o) {
  if (o->wording != OX_WORDING_US) return word(t, N_("decimal"));
  return t->for_people ? C_("in a figure that is spoken", "point") : "point";
}

void clr_put_figures(clr_text *t, const ox_say_options *o, const char *figures) {
  if (!o->spoken) {
    for (const char *f = figures; *f; f++)
      if (*f == '.' && t->for_people)
        clr_put(t, "%s", ox_text_decimal());
      else
        clr_put(t, "%c", *f);
    return;
  }
  const char *gap = "";
  for (const char *f = figures; *f; f++) {
    if (*f >= '0' && *f <= '9')
      clr_put(t, "%s%s", gap, word(t, figure_words[*f - '0']));
    else if (*f == '.')
      clr_put(t, "%s%s", gap, point_word(t, o));
    else if (*f == '-')
      clr_put(t, "%s%s", gap, word(t, N_("minus")));
    gap = " ";
  }
}

/* A whole number as text; the value is kept to what fits. */
static void whole_text(char out[16], double value) {
  double kept = isfinite(value) ? fmax(-1e6, fmin(1e6, round(value))) : 0;
  snprintf(out, 16, "%d", (int)kept);
}

void clr_put_whole(clr_text *t, const ox_say_options *o, double value) {
  char figures[16];
  whole_text(figures, value);
  clr_put_figures(t, o, figures);
}

void clr_put_bearing(clr_text *t, const ox_say_options *o, double bearing_deg) {
  char figures[16];
  snprintf(figures, sizeof figures, "%03d",
           isfinite(bearing_deg) ? ox_shown_deg(bearing_deg) : 360);
  clr_put_figures(t, o, figures);
}

void clr_put_decimal(clr_text *t, const ox_say_options *o, double value) {
  int hundredths = isfinite(value) ? (int)fmax(0, fmin(1e8, round(value * 100))) : 0;
  char figures[24];
  if (hundredths % 100 == 0)
    snprintf(figures, sizeof figures, "%d", hundredths / 100);
  else if (hundredths % 10 == 0)
    snprintf(figures, sizeof figures, "%d.%d", hundredths / 100, hundredths / 10 % 10);
  else
    snprintf(figures, sizeof figures, "%d.%02d", hundredths / 100, hundredths % 100);
  clr_put_figures(t, o, figures);
}

static double transition_ft(const ox_say_options *o) {
  if (o->transition_ft > 0) return o->transition_ft;
  return o->wording == OX_WORDING_US ? 18000 : 10000;
}

static void put_spoken_altitude(clr_text *t, const ox_say_options *o, int feet) {
  const char *thousand = o->wording == OX_WORDING_US ? N_("thousand") : N_("tousand");
  if (feet % 100 != 0 || feet == 0) {
    clr_put_whole(t, o, feet);
    return;
  }
  if (feet >= 1000) {
    clr_put_whole(t, o, feet / 1000);
    clr_put(t, " %s", word(t, thousand));
  }
  int hundreds = feet % 1000 / 100;
  if (hundreds == 0) return;
  if (feet >= 1000) clr_put(t, " ");
  clr_put(t, "%s %s", word(t, figure_words[hundreds]), word(t, N_("hundred")));
}

void clr_put_altitude(clr_text *t, const ox_say_options *o, double altitude_ft) {
  int feet = isfinite(altitude_ft) ? (int)fmax(-1e6, fmin(1e6, round(altitude_ft))) : 0;
  if (feet >= transition_ft(o) && feet % 100 == 0) {
    char level[16];
    snprintf(level, sizeof level, "%03d", feet / 100);
    clr_put(t, "%s", word(t, o->spoken ? N_("flight level ") : N_("FL")));
    clr_put_figures(t, o, level);
    return;
  }
  if (feet < 0) clr_put(t, "%s ", word(t, N_("minus")));
  feet = abs(feet);
  if (o->spoken)
    put_spoken_altitude(t, o, feet);
  else if (o->wording == OX_WORDING_US && feet >= 1000)
    /* translators: an altitude without its unit, 5,000; a language that would take the comma for
     * a decimal may write "%d%03d ft" */
    clr_put(t, t->for_people ? _("%d,%03d") : "%d,%03d", feet / 1000, feet % 1000);
  else
    clr_put(t, "%d", feet);
  /* Without "feet" the short figures would be read as hundreds or thousands. */
  if (o->wording == OX_WORDING_ICAO || feet < 1000) clr_put(t, "%s", word(t, N_(" feet")));
}

void clr_put_clock(clr_text *t, const ox_say_options *o, int minute) {
  int of_day = ((minute % 1440) + 1440) % 1440;
  char figures[16];
  snprintf(figures, sizeof figures, "%02d%02d", of_day / 60, of_day % 60);
  clr_put_figures(t, o, figures);
}

void clr_put_leg_time(clr_text *t, const ox_say_options *o, double leg_s, bool plural) {
  int s = isfinite(leg_s) ? (int)fmax(0, fmin(1e6, round(leg_s))) : 0;
  bool minutes = s >= 60 && s % 30 == 0;
  if (!minutes) {
    clr_put_whole(t, o, s);
    clr_put(t, " second%s", plural ? "s" : "");
    return;
  }
  clr_put_whole(t, o, s / 60);
  if (s % 60 != 0) clr_put(t, "%s", o->spoken ? " and one half" : " 1/2");
  clr_put(t, " minute%s", plural && s != 60 ? "s" : "");
}

void clr_put_knots(clr_text *t, const ox_say_options *o, double kt) {
  clr_put_whole(t, o, kt);
  clr_put(t, " knots");
}

const char *clr_eighth_word(double bearing_deg) {
  static const char *const words[8] = {"north", "northeast", "east", "southeast",
                                       "south", "southwest", "west", "northwest"};
  if (!isfinite(bearing_deg)) return words[0];
  return words[(int)floor(ox_norm360_deg(bearing_deg) / 45 + 0.5) % 8];
}

ox_say_options ox_say_options_default(void) {
  return (ox_say_options){.wording = OX_WORDING_US};
}

ox_say_options clr_options(const ox_say_options *o) {
  return o ? *o : ox_say_options_default();
}
