/* oxbow-cli: which verb, help and version; and whether everything written arrived. */
#include "cli.h"

#include <errno.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/words.h"

typedef struct {
  const char *name;
  int (*run)(cli_io *io, int argc, char **argv);
} verb;

static const verb verbs[] = {
    {"solve", cli_solve_verb}, {"track", cli_track},        {"draw", cli_draw},
    {"check", cli_check},      {"spread", cli_spread_verb}, {"techniques", cli_techniques},
    {"clearance", cli_clearance}, {"say", cli_say},         {"holds", cli_holds},
    {"compare", cli_compare},
};

#define VERBS "solve, track, draw, check, spread, techniques, clearance, say, compare or holds"

static const char help[] =
    "Usage: oxbow-cli VERB LESSON [OPTION]...\n"
    "Holding patterns from lesson files, without a window.\n"
    "\n"
    "  solve LESSON [--case NAME]     every number of each case as one JSON array\n"
    "  track LESSON [--case NAME] [--step S] [--latlon]\n"
    "                                 the ground track as CSV, a row every S seconds (1) and at\n"
    "                                 the end of each leg; with latitude and longitude where the\n"
    "                                 fix has a place\n"
    "      --format csv|geojson|kml|gpx [-o FILE]\n"
    "                                 the same for maps, about the fix's latitude and longitude\n"
    "      --fix-at PLACE             where the fix is, in any form a chart uses: \"42.5 -73.8\"\n"
    "      --date YYYY-MM-DD          UTC date of the first crossing of the fix: with it, and the\n"
    "                                 lesson's arrival.fix_at, points have clock times\n"
    "  draw LESSON -o FILE.png|FILE.apng|FILE.gif|FILE.svg|FILE.pdf\n"
    "                                 the picture; a PDF has a sheet for each case, the others\n"
    "                                 show the first\n"
    "      --case NAME                only this case\n"
    "      --size WxH                 pixels of a PNG (1600x1000), points of an SVG (960x600) or\n"
    "                                 of a PDF sheet (842x595, A4 across); or WxHcm\n"
    "      --dpi N                    resolution that a PNG names, 10 to 2400 (150)\n"
    "      --transparent              a PNG without a ground\n"
    "      --fps N --speed X          of the moving picture, an APNG or GIF of the flight, or its\n"
    "                                 frames as NAME%04d.png: frames a second (10), times as\n"
    "                                 fast as flown (10)\n"
    "      --palette light|dark|projector|print\n"
    "                                 colours (PNG: light, SVG and PDF: print)\n"
    "      --at SECONDS|none          where the aircraft is, in seconds from the first crossing\n"
    "                                 of the fix (half-way along the first leg flown outbound)\n"
    "      --compare KEY              a second flight beside it: a technique by its key (exact is\n"
    "                                 one; see techniques), \"shown\" as the equipment would fly\n"
    "                                 it, or a mistake:\n"
    "                                 ";

static const char help_end[] =
    "\n"
    "      --area                     the protected area, an illustration only\n"
    "      --ink                      with what was drawn by hand over the picture\n"
    "      --moments                  a strip of key moments instead of the picture: entry and\n"
    "                                 first circuit, what to do at each\n"
    "      --spread N [--seed S]      a band of N flights with a good pilot's errors (seed 1)\n"
    "      --worksheet, --key         handouts as PDF: holds to draw and blanks to fill in; the\n"
    "                                 same with answers and reasons\n"
    "      --per-page 1|2|4           holds on a page (2)\n"
    "      --paper a4|letter          (a4), upright or with --across\n"
    "      --seed S                   shuffles the holds, alike on worksheet and key\n"
    "  check LESSON...                what is wrong with the lessons, or nothing\n"
    "  spread LESSON [--case NAME] [--runs N] [--seed S] [--threads T]\n"
    "                                 how the numbers of N flights (1000) with such errors\n"
    "                                 scatter, as JSON; the same seed (1) gives the same numbers\n"
    "                                 on any number of threads (one a processor, at most 64)\n"
    "  techniques                     the techniques of publications as CSV: key, name, rule,\n"
    "                                 source\n"
    "  clearance \"TEXT\" [--wording us|icao] [--now HH:MM]\n"
    "                                 a lesson from the words of a holding clearance; questions\n"
    "                                 to the controller and what was left open on stderr\n"
    "  say LESSON [--case NAME] [--wording us|icao] [--spoken] [--callsign C]\n"
    "                                 clearance, read-back, briefing, cues, steps, time and fuel\n"
    "                                 in words\n"
    "      --cross-check              what the equipment shows beside what was cleared (always\n"
    "                                 said where the lesson has it)\n"
    "      --area, --mistakes         what they say of the case\n"
    "  compare LESSON [--case NAME] --with WHAT [--and WHAT]\n"
    "                                 two or three cases side by side, as CSV: what is given\n"
    "                                 differently and what came of it; WHAT is the name of a case\n"
    "                                 or a change of the first one: calm, wind-doubled,\n"
    "                                 wind-turned, other-turns, single-drift, triple-drift,\n"
    "                                 boundary-left, boundary-right\n"
    "  holds NAVFILE [--fix F] [--airport A] [--procedure P] [-o LESSON]\n"
    "                                 published holds in a file of ARINC 424 records, as CSV; a T\n"
    "                                 after the course: true as coded; with -o a lesson of them\n"
    "\n"
    "  --help, --version\n"
    "\n"
    "Exit status: 0 done, 1 a lesson is at fault or something could not be read or written,\n"
    "2 wrong usage. Directions are magnetic unless their name says true.\n";

static int show_help(cli_io *io) {
  fputs(help, io->out);
  for (int i = 0; i < OX_MISTAKE_COUNT; i++)
    fprintf(io->out, "%s%s",
            i == 0   ? ""
            : i == 3 ? ",\n                                 "
                     : ", ",
            cli_mistake_key((ox_mistake)i));
  fprintf(io->out, "%s\n%s\n", help_end, ox_words_caution());
  return OX_CLI_DONE;
}

static int show_version(cli_io *io) {
  fprintf(io->out, "oxbow-cli %s\n%s\n", OX_VERSION, ox_words_caution_line());
  return OX_CLI_DONE;
}

static bool asks_for_help(int argc, char **argv) {
  for (int i = 1; i < argc && strcmp(argv[i], "--") != 0; i++)
    if (strcmp(argv[i], "--help") == 0 || strcmp(argv[i], "-h") == 0) return true;
  return false;
}

static int run(cli_io *io, int argc, char **argv) {
  if (argc < 2) return cli_wrong(io, "a verb is needed: " VERBS);
  if (asks_for_help(argc, argv)) return show_help(io);
  if (strcmp(argv[1], "--version") == 0) return show_version(io);
  for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++)
    if (strcmp(argv[1], verbs[i].name) == 0) return verbs[i].run(io, argc - 2, argv + 2);
  return cli_wrong(io, "\"%s\" is not a verb (" VERBS ")", argv[1]);
}

int ox_cli_main(int argc, char **argv, FILE *out, FILE *err) {
  cli_io io = {out, err};
  int code = run(&io, argc, argv);
  errno = 0;
  bool failed = fflush(out) != 0 || ferror(out);
  if (failed && code != OX_CLI_USAGE) {
    fprintf(err, "oxbow-cli: the output could not be written: %s\n",
            errno ? strerror(errno) : "write error");
    code = OX_CLI_INPUT;
  }
  fflush(err);
  return code;
}
