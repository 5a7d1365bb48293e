/* oxbow-cli: which verb, help and version; and whether everything written arrived. */
#include "cli.h"

#include <errno.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/text.h"
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

#define VERBS N_("solve, track, draw, check, spread, techniques, clearance, say, compare or holds")

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
  if (argc < 2) return cli_wrong(io, _("a verb is needed: %s"), _(VERBS));
  if (asks_for_help(argc, argv)) return cli_show_help(io->out);
  if (strcmp(argv[1], "--version") == 0) return show_version(io);
  for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++)
    if (strcmp(argv[1], verbs[i].name) == 0) return verbs[i].run(io, argc - 2, argv + 2);
  return cli_wrong(io, _("\"%s\" is not a verb (%s)"), argv[1], _(VERBS));
}

int ox_cli_main(int argc, char **argv, FILE *out, FILE *err) {
  cli_io io = {out, err};
  int code = run(&io, argc, argv);
  errno = 0;
  bool failed = fflush(out) != 0 || ferror(out);
  if (failed && code != OX_CLI_USAGE) {
    fprintf(err, _("oxbow-cli: the output could not be written: %s\n"),
            errno ? strerror(errno) : _("write error"));
    code = OX_CLI_INPUT;
  }
  fflush(err);
  return code;
}
