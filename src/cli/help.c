/* --help: verbs and options as they are typed, and beside them in the reader's language what they
 * do. The manual page and the completion are made from it, by its columns. */
#include <string.h>

#include "cli_private.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

enum { TEXT_COLUMN = 33, TEXT_WIDTH = 59 };

/* In the place of a term: what can be flown wrong, by its keys. */
static const char LIST_OF_MISTAKES[] = "";

typedef struct {
  const char *term; /* as it is typed; verbs begin in column 2, their options in column 6 */
  const char *text;
} row;

static const row rows[] = {
    {"  solve LESSON [--case NAME]",
     N_("every number of each case as one JSON array")},
    {"  track LESSON [--case NAME] [--step S] [--latlon]",
     N_("the ground track as CSV, a row every S seconds (1) and at the end of each leg; with "
        "latitude and longitude where the fix has a place")},
    {"      --format csv|geojson|kml|gpx [-o FILE]",
     N_("the same for maps, about the fix's latitude and longitude")},
    {"      --fix-at PLACE",
     N_("where the fix is, in any form a chart uses: \"42.5 -73.8\"")},
    {"      --date YYYY-MM-DD",
     N_("UTC date of the first crossing of the fix: with it, and the lesson's arrival.fix_at, "
        "points have clock times")},
    {"  draw LESSON -o FILE.png|FILE.apng|FILE.gif|FILE.svg|FILE.pdf",
     N_("the picture; a PDF has a sheet for each case, the others show the first")},
    {"      --case NAME",
     N_("only this case")},
    {"      --size WxH",
     N_("pixels of a PNG (1600x1000), points of an SVG (960x600) or of a PDF sheet (842x595, A4 "
        "across); or WxHcm")},
    {"      --dpi N",
     N_("resolution that a PNG names, 10 to 2400 (150)")},
    {"      --transparent",
     N_("a PNG without a ground")},
    {"      --fps N --speed X",
     /* xgettext:no-c-format */
     N_("of the moving picture, an APNG or GIF of the flight, or its frames as NAME%04d.png: "
        "frames a second (10), times as fast as flown (10)")},
    {"      --palette light|dark|projector|print",
     N_("colours (PNG: light, SVG and PDF: print)")},
    {"      --at SECONDS|none",
     N_("where the aircraft is, in seconds from the first crossing of the fix (half-way along "
        "the first leg flown outbound)")},
    {"      --compare KEY",
     N_("a second flight beside it: a technique by its key (exact is one; see techniques), "
        "\"shown\" as the equipment would fly it, or a mistake:")},
    {LIST_OF_MISTAKES, NULL},
    {"      --area",
     N_("the protected area, an illustration only")},
    {"      --ink",
     N_("with what was drawn by hand over the picture")},
    {"      --moments",
     N_("a strip of key moments instead of the picture: entry and first circuit, what to do at "
        "each")},
    {"      --spread N [--seed S]",
     N_("a band of N flights with a good pilot's errors (seed 1)")},
    {"      --worksheet, --key",
     N_("handouts as PDF: holds to draw and blanks to fill in; the same with answers and "
        "reasons")},
    {"      --per-page 1|2|4",
     N_("holds on a page (2)")},
    {"      --paper a4|letter",
     N_("(a4), upright or with --across")},
    {"      --seed S",
     N_("shuffles the holds, alike on worksheet and key")},
    {"  check LESSON...",
     N_("what is wrong with the lessons, or nothing")},
    {"  spread LESSON [--case NAME] [--runs N] [--seed S] [--threads T]",
     N_("how the numbers of N flights (1000) with such errors scatter, as JSON; the same seed "
        "(1) gives the same numbers on any number of threads (one a processor, at most 64)")},
    {"  techniques",
     N_("the techniques of publications as CSV: key, name, rule, source")},
    {"  clearance \"TEXT\" [--wording us|icao] [--now HH:MM]",
     N_("a lesson from the words of a holding clearance; questions to the controller and what "
        "was left open on stderr")},
    {"  say LESSON [--case NAME] [--wording us|icao] [--spoken] [--callsign C]",
     N_("clearance, read-back, briefing, cues, steps, time and fuel in words")},
    {"      --cross-check",
     N_("what the equipment shows beside what was cleared (always said where the lesson has it)")},
    {"      --area, --mistakes",
     N_("what they say of the case")},
    {"  compare LESSON [--case NAME] --with WHAT [--and WHAT]",
     N_("two or three cases side by side, as CSV: what is given differently and what came of "
        "it; WHAT is the name of a case or a change of the first one: calm, wind-doubled, "
        "wind-turned, other-turns, single-drift, triple-drift, boundary-left, boundary-right")},
    {"  holds NAVFILE [--fix F] [--airport A] [--procedure P] [-o LESSON]",
     N_("published holds in a file of ARINC 424 records, as CSV; a T after the course: true as "
        "coded; with -o a lesson of them")},
};

/* Columns that UTF-8 takes; every character here is one wide. */
static int width_of(const char *text, size_t bytes) {
  int width = 0;
  for (size_t i = 0; i < bytes; i++)
    if (((unsigned char)text[i] & 0xc0) != 0x80) width++;
  return width;
}

static void begin_line(FILE *out) { fprintf(out, "\n%*s", TEXT_COLUMN, ""); }

/* The words of a text on as many lines as they need; the first is begun. */
static void put_words(FILE *out, const char *text) {
  int at = 0;
  while (*text) {
    size_t bytes = strcspn(text, " ");
    int width = width_of(text, bytes);
    if (at > 0 && at + 1 + width > TEXT_WIDTH) {
      begin_line(out);
      at = 0;
    }
    fprintf(out, "%s%.*s", at > 0 ? " " : "", (int)bytes, text);
    at += width + (at > 0 ? 1 : 0);
    text += bytes;
    text += strspn(text, " ");
  }
}

static void put_mistakes(FILE *out) {
  char keys[400] = "";
  for (int i = 0; i < OX_MISTAKE_COUNT; i++) {
    size_t length = strlen(keys);
    snprintf(keys + length, sizeof keys - length, "%s%s", i > 0 ? ", " : "",
             cli_mistake_key((ox_mistake)i));
  }
  fprintf(out, "%*s", TEXT_COLUMN, "");
  put_words(out, keys);
}

static void put_row(FILE *out, const row *r) {
  if (r->term == LIST_OF_MISTAKES) {
    put_mistakes(out);
  } else {
    int length = (int)strlen(r->term);
    fputs(r->term, out);
    if (length + 2 <= TEXT_COLUMN)
      fprintf(out, "%*s", TEXT_COLUMN - length, "");
    else
      begin_line(out);
    put_words(out, _(r->text));
  }
  fputc('\n', out);
}

int cli_show_help(FILE *out) {
  fprintf(out, "%s\n%s\n\n", _("Usage: oxbow-cli VERB LESSON [OPTION]..."),
          _("Holding patterns from lesson files, without a window."));
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) put_row(out, &rows[i]);
  fprintf(out, "\n  --help, --version\n\n%s\n\n%s\n",
          _("Exit status: 0 done, 1 a lesson is at fault or something could not be read or "
            "written,\n2 wrong usage. Directions are magnetic unless their name says true."),
          ox_words_caution());
  return OX_CLI_DONE;
}
