/* What the verbs share: arguments, lessons, figures. Private to the command line. */
#ifndef OX_CLI_PRIVATE_H
#define OX_CLI_PRIVATE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#include "cli.h"
#include "oxbow/flight.h"
#include "oxbow/lesson.h"

typedef struct {
  FILE *out, *err;
} cli_io;

/* --- arguments (options.c) ----------------------------------------------------------------- */

/* An option a verb takes: its name with the dashes, and where its value goes (NULL before). */
typedef struct {
  const char *name;
  const char **value;
} cli_option;

/* Reads argv[0..argc-1], the arguments after the verb: options with a value (`--step 5` or
 * `--step=5`) in any order, `--` ends them; the others are files and are moved to the front of
 * argv, *files of them. False after a message on err. */
bool cli_options(cli_io *io, int argc, char **argv, const cli_option *options, size_t count,
                 int *files);
/* One line of what is wrong and a pointer to --help; returns OX_CLI_USAGE. */
int cli_wrong(cli_io *io, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* Figures with a decimal point whatever the locale, nothing before or after: "5", "-0.25". */
bool cli_parse_number(const char *text, double *out);

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

/* --- the verbs, one file each -------------------------------------------------------------- */

int cli_check(cli_io *io, int argc, char **argv);
int cli_draw(cli_io *io, int argc, char **argv);
int cli_solve_verb(cli_io *io, int argc, char **argv);
int cli_track(cli_io *io, int argc, char **argv);

#endif
