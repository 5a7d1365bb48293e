/* say LESSON: clearance, read-back, briefing, cues and steps in words. */
#include <stdlib.h>

#include "cli_private.h"
#include "oxbow/clearance.h"
#include "oxbow/words.h"

static bool put_text(FILE *out, const char *heading, char *text) {
  if (text) fprintf(out, "%s\n  %s\n", heading, text);
  free(text);
  return text != NULL;
}

static void put_cues(FILE *out, const ox_case *c, const ox_flight *f, const ox_say_options *o) {
  ox_cue cues[OX_CUES];
  ox_say_cues(c, f, o, cues);
  fputs("At the fix\n", out);
  for (int i = 0; i < OX_CUES; i++) fprintf(out, "  %s: %s\n", cues[i].cue, cues[i].text);
}

static void put_steps(FILE *out, const ox_case *c, const ox_flight *f, const ox_say_options *o) {
  ox_step steps[OX_STEPS_MAX];
  size_t count = ox_say_steps(c, f, o, steps, OX_STEPS_MAX);
  fputs("Step by step\n", out);
  for (size_t i = 0; i < count; i++) fprintf(out, "  %zu. %s\n", i + 1, steps[i].text);
}

static bool put_case(FILE *out, const ox_case *c, const ox_flight *f, const ox_say_options *o) {
  fprintf(out, "%s\n\n", c->name);
  if (!put_text(out, "Clearance", ox_say_clearance(c, o)) ||
      !put_text(out, "Read-back", ox_say_readback(c, o)) ||
      !put_text(out, "Briefing", ox_say_briefing(c, f, OX_BRIEFING_LONG, o)))
    return false;
  put_cues(out, c, f, o);
  put_steps(out, c, f, o);
  fputc('\n', out);
  return true;
}

static int put_all(cli_io *io, const cli_cases *cases, const ox_say_options *o) {
  ox_flight *flight = malloc(sizeof *flight);
  bool ok = flight != NULL;
  for (size_t i = 0; ok && i < cases->count; i++) {
    if (!cli_solve(io, cases, i, flight)) {
      free(flight);
      return OX_CLI_INPUT;
    }
    ok = put_case(io->out, cli_case(cases, i), flight, o);
  }
  free(flight);
  if (!ok) fputs("oxbow-cli: there is not enough memory\n", io->err);
  if (ok) fprintf(io->out, "%s\n", ox_words_caution_line());
  return ok ? OX_CLI_DONE : OX_CLI_INPUT;
}

int cli_say(cli_io *io, int argc, char **argv) {
  const char *name = NULL, *wording = NULL;
  ox_say_options o = ox_say_options_default();
  const cli_option options[] = {{"--case", &name, NULL},
                                {"--wording", &wording, NULL},
                                {"--callsign", &o.callsign, NULL},
                                {"--spoken", NULL, &o.spoken}};
  int files = 0;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files) ||
      !cli_parse_wording(io, wording, &o.wording))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, "say takes one lesson");
  cli_cases cases;
  int code = cli_cases_open(io, argv[0], name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = put_all(io, &cases, &o);
  cli_cases_close(&cases);
  return code;
}
