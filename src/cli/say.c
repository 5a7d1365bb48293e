/* say LESSON: clearance, read-back, briefing, cues, steps, time and fuel in words; and, asked for,
 * the cross-check of the equipment, the protected area and what mistakes would do. */
#include <stdlib.h>

#include "cli_private.h"
#include "oxbow/clearance.h"
#include "oxbow/crosscheck.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

static bool put_text(FILE *out, const char *heading, char *text) {
  if (text) fprintf(out, "%s\n  %s\n", heading, text);
  free(text);
  return text != NULL;
}

static void put_cues(FILE *out, const ox_case *c, const ox_flight *f, const ox_say_options *o) {
  ox_cue cues[OX_CUES];
  ox_say_cues(c, f, o, cues);
  fprintf(out, "%s\n", _("At the fix"));
  for (int i = 0; i < OX_CUES; i++) fprintf(out, "  %s: %s\n", cues[i].cue, cues[i].text);
}

static void put_steps(FILE *out, const ox_case *c, const ox_flight *f, const ox_say_options *o) {
  ox_step steps[OX_STEPS_MAX];
  size_t count = ox_say_steps(c, f, o, steps, OX_STEPS_MAX);
  fprintf(out, "%s\n", _("Step by step"));
  for (size_t i = 0; i < count; i++) fprintf(out, "  %zu. %s\n", i + 1, steps[i].text);
}

/* A sentence a line. */
static bool put_when(FILE *out, const ox_case *c, const ox_flight *f) {
  char *text = ox_words_when(c, f);
  if (!text) return false;
  fprintf(out, "%s\n  ", _("Time and fuel"));
  for (const char *at = text; *at; at++) {
    fputc(*at, out);
    if (*at == '\n') fputs("  ", out);
  }
  fputc('\n', out);
  free(text);
  return true;
}

static void put_check(FILE *out, const ox_case *c, const ox_flight *f) {
  ox_crosscheck check;
  char text[OX_CROSSCHECK_BYTES];
  if (ox_crosscheck_make(c, &check) == OX_ERROR) return;
  ox_words_crosscheck(text, sizeof text, c, f, &check);
  fprintf(out, "%s\n  %s\n", _("Cross-check"), text);
  for (int i = 0; i < OX_CHECK_ITEM_COUNT && check.shown > 0; i++) {
    const ox_check_row *row = &check.rows[i];
    fprintf(out, "  %s: %s", ox_check_item_name((ox_check_item)i),
            ox_check_result_name(row->result));
    fprintf(out, _(", cleared %s"), row->cleared);
    if (*row->shown) fprintf(out, _(", shown %s"), row->shown);
    fprintf(out, ".%s%s\n", *row->means ? " " : "", row->means);
  }
}

static void put_area(FILE *out, const ox_case *c, const ox_flight *f) {
  char text[500];
  ox_words_area(text, sizeof text, c, f);
  fprintf(out, "%s\n  %s\n", _("Protected area"), text);
}

/* Those that do not show in the case are said to be so. */
static void put_mistakes(FILE *out, const ox_case *c, const ox_flight *f) {
  char text[800];
  fprintf(out, "%s\n", _("Mistakes"));
  for (int i = 0; i < OX_MISTAKE_COUNT; i++) {
    ox_words_mistake(text, sizeof text, c, f, (ox_mistake)i);
    fprintf(out, "  %s\n", text);
  }
}

typedef struct {
  ox_say_options o;
  bool check, area, mistakes;
} wanted;

static bool put_case(FILE *out, const ox_case *c, const ox_flight *f, const wanted *w) {
  const ox_say_options *o = &w->o;
  fprintf(out, "%s\n\n", c->name);
  if (!put_text(out, _("Clearance"), ox_say_clearance(c, o)) ||
      !put_text(out, _("Read-back"), ox_say_readback(c, o)) ||
      !put_text(out, _("Briefing"), ox_say_briefing(c, f, OX_BRIEFING_LONG, o)))
    return false;
  put_cues(out, c, f, o);
  put_steps(out, c, f, o);
  if (!put_when(out, c, f)) return false;
  if (w->check || ox_shown_is_given(c)) put_check(out, c, f);
  if (w->area) put_area(out, c, f);
  if (w->mistakes) put_mistakes(out, c, f);
  fputc('\n', out);
  return true;
}

static int put_all(cli_io *io, const cli_cases *cases, const wanted *w) {
  ox_flight *flight = malloc(sizeof *flight);
  bool ok = flight != NULL;
  for (size_t i = 0; ok && i < cases->count; i++) {
    if (!cli_solve(io, cases, i, flight)) {
      free(flight);
      return OX_CLI_INPUT;
    }
    ok = put_case(io->out, cli_case(cases, i), flight, w);
  }
  free(flight);
  if (!ok) fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
  if (ok) fprintf(io->out, "%s\n", ox_words_caution_line());
  return ok ? OX_CLI_DONE : OX_CLI_INPUT;
}

int cli_say(cli_io *io, int argc, char **argv) {
  const char *name = NULL, *wording = NULL;
  wanted w = {.o = ox_say_options_default()};
  const cli_option options[] = {{"--case", &name, NULL},
                                {"--wording", &wording, NULL},
                                {"--callsign", &w.o.callsign, NULL},
                                {"--spoken", NULL, &w.o.spoken},
                                {"--cross-check", NULL, &w.check},
                                {"--area", NULL, &w.area},
                                {"--mistakes", NULL, &w.mistakes}};
  int files = 0;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files) ||
      !cli_parse_wording(io, wording, &w.o.wording))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, _("say takes one lesson"));
  cli_cases cases;
  int code = cli_cases_open(io, argv[0], name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = put_all(io, &cases, &w);
  cli_cases_close(&cases);
  return code;
}
