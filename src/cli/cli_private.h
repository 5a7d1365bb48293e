/* What the verbs share: arguments, lessons, figures. Private to the command line. */
#ifndef OX_CLI_PRIVATE_H
#define OX_CLI_PRIVATE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include "cli.h"
#include "oxbow/clearance.h"
#include "oxbow/flight.h"
#include "oxbow/lesson.h"
#include "oxbow/picture.h"

typedef struct {
  FILE *out, *err;
} cli_io;

/* --- arguments (options.c) ----------------------------------------------------------------- */

/* An option a verb takes: its name with the dashes, and where its value goes (NULL before); or,
 * of one without a value, what becomes true. */
typedef struct {
  const char *name;
  const char **value;
  bool *flag;
} cli_option;

/* Reads argv[0..argc-1], the arguments after the verb: options (`--step 5`, `--step=5`, `--area`)
 * in any order, `--` ends them; the others are files and are moved to the front of
 * argv, *files of them. False after a message on err. */
bool cli_options(cli_io *io, int argc, char **argv, const cli_option *options, size_t count,
                 int *files);
/* --help (help.c); returns OX_CLI_DONE. */
int cli_show_help(FILE *out);
/* One line of what is wrong and a pointer to --help; returns OX_CLI_USAGE. */
int cli_wrong(cli_io *io, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* Figures with a decimal point whatever the locale, nothing before or after: "5", "-0.25". */
bool cli_parse_number(const char *text, double *out);
/* Nothing but figures, min..max. */
bool cli_parse_whole(const char *text, uint64_t min, uint64_t max, uint64_t *out);
/* --seed: 0..CLI_SEED_MAX, which every reader of JSON keeps exactly; --runs. False after a message
 * on err that names the option. NULL leaves *out. */
#define CLI_SEED_MAX UINT64_C(9007199254740991)
bool cli_parse_seed(cli_io *io, const char *text, uint64_t *out);
bool cli_parse_runs(cli_io *io, const char *option, const char *text, size_t *out);

/* --- lessons (load.c) ---------------------------------------------------------------------- */

/* Cases to work on: all of a lesson, or the one named. */
typedef struct {
  ox_lesson *lesson;
  const char *path;
  size_t first, count;
} cli_cases;

/* Reads the lesson, with its messages to err, and finds the case (case_name may be NULL: all
 * of them). OX_CLI_DONE, or the exit code after a message. */
int cli_cases_open(cli_io *io, const char *path, const char *case_name, cli_cases *out);
void cli_cases_close(cli_cases *cases);
const ox_case *cli_case(const cli_cases *cases, size_t index);
/* What is drawn over its picture, or NULL. */
const ox_ink *cli_ink(const cli_cases *cases, size_t index);
/* Where its fix is; false when nothing says so. */
bool cli_fix_place(const cli_cases *cases, size_t index, ox_latlon *out);
/* Solves one into *flight; false after a message. */
bool cli_solve(cli_io *io, const cli_cases *cases, size_t index, ox_flight *flight);

/* --- figures (figures.c) ------------------------------------------------------------------- */

typedef struct {
  char text[32];
} cli_figure;

/* The shortest text that reads back as the same double, from 15 significant digits up, with a
 * decimal point in every locale; 0 for -0. "null" where it is not finite. */
cli_figure cli_number(double value);
/* With so many decimals, for columns. */
cli_figure cli_fixed(double value, int decimals);
/* A field of CSV (RFC 4180): in quotes where it must be. */
void cli_put_field(FILE *out, const char *text);

/* --- mistakes and overlays (overlays.c) ---------------------------------------------------- */

/* The key of a deliberate mistake, for --compare: "clock-at-fix". Stable; static. */
const char *cli_mistake_key(ox_mistake mistake);

/* What is drawn over a picture beside the flight itself. */
typedef struct {
  int preset;  /* the comparison: index of a preset, or -1 */
  int mistake; /* an ox_mistake, or -1 */
  bool shown;  /* as the equipment shows it */
  bool area;
  size_t spread_runs; /* 0: no band */
  uint64_t seed;
} cli_overlay_plan;

/* What one scene borrows of them. */
typedef struct {
  ox_flight *compare;
  ox_area area;
  ox_spread spread;
} cli_overlays;

/* --compare exact|PRESET-KEY|MISTAKE-KEY|shown; false when there is no such key. */
bool cli_parse_compare(const char *text, cli_overlay_plan *plan);
/* Computes them for the scene's case and flight, and sets them in the scene; remarks, with the
 * path, go to err. False after a message. Freed with cli_overlays_clear in either case. */
bool cli_overlays_make(cli_io *io, const char *path, const cli_overlay_plan *plan, ox_scene *scene,
                       cli_overlays *out);
void cli_overlays_clear(cli_overlays *overlays);

/* --wording us|icao, NULL is us; false after a message (clearance.c). */
bool cli_parse_wording(cli_io *io, const char *text, ox_wording *out);

/* --- the verbs, one file each -------------------------------------------------------------- */

int cli_check(cli_io *io, int argc, char **argv);
int cli_clearance(cli_io *io, int argc, char **argv);
int cli_compare(cli_io *io, int argc, char **argv);
int cli_draw(cli_io *io, int argc, char **argv);
int cli_holds(cli_io *io, int argc, char **argv);
int cli_say(cli_io *io, int argc, char **argv);
int cli_solve_verb(cli_io *io, int argc, char **argv);
int cli_spread_verb(cli_io *io, int argc, char **argv);
int cli_techniques(cli_io *io, int argc, char **argv);
int cli_track(cli_io *io, int argc, char **argv);

#endif
