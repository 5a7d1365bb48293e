/* spread LESSON: how the numbers of each case scatter over many flights with the errors of a
 * competent pilot, as one JSON array. */
#include <math.h>

#include "cli_private.h"
#include "json.h"
#include "oxbow/spread.h"
#include "oxbow/text.h"

typedef struct {
  size_t runs;
  uint64_t seed;
  int threads;
} plan;

/* Seconds and miles to a millionth: the sample has no more in it. */
static void put_rounded(json *j, const char *key, double value) {
  json_number(j, key, round(value * 1e6) / 1e6);
}

/* Null where no flight has the number. */
static void put_scatter(json *j, const char *key, const ox_scatter *s, size_t flights) {
  if (flights == 0) {
    json_string(j, key, NULL);
    return;
  }
  json_open_flat(j, key, '{');
  put_rounded(j, "p5", s->low);
  put_rounded(j, "p50", s->middle);
  put_rounded(j, "p95", s->high);
  json_close(j, '}');
}

static void put_spread(json *j, const ox_case *c, const ox_spread *s) {
  size_t regained = s->runs - s->not_regained;
  json_open(j, NULL, '{');
  json_string(j, "case", c->name);
  json_count(j, "seed", s->seed);
  json_count(j, "runs", s->runs);
  json_count(j, "not_regained", s->not_regained);
  put_scatter(j, "inbound_s", &s->inbound_s, regained);
  put_scatter(j, "rollout_offset_nm", &s->rollout_nm, regained);
  put_scatter(j, "nonholding_nm", &s->nonholding_nm, s->runs);
  put_scatter(j, "farthest_nm", &s->farthest_nm, s->runs);
  json_close(j, '}');
}

static int put_all(cli_io *io, const cli_cases *cases, const plan *p) {
  ox_tolerances tolerances = ox_tolerances_standard();
  int code = OX_CLI_DONE;
  json j = {.out = io->out, .first = true};
  json_open(&j, NULL, '[');
  for (size_t i = 0; i < cases->count; i++) {
    const ox_case *c = cli_case(cases, i);
    ox_spread spread = {0};
    if (ox_spread_make(c, &tolerances, p->seed, p->runs, p->threads, &spread) == OX_ERROR) {
      fprintf(io->err, _("%s: case \"%s\": there is not enough memory for so many flights\n"),
              cases->path, c->name);
      code = OX_CLI_INPUT;
      continue;
    }
    put_spread(&j, c, &spread);
    ox_spread_free(&spread);
  }
  json_close(&j, ']');
  fputc('\n', io->out);
  return code;
}

static bool parse_threads(cli_io *io, const char *text, int *out) {
  uint64_t threads;
  if (!text) return true;
  if (!cli_parse_whole(text, 1, 64, &threads)) {
    cli_wrong(io, _("--threads: %s is not a number of threads (1 to 64)"), text);
    return false;
  }
  *out = (int)threads;
  return true;
}

int cli_spread_verb(cli_io *io, int argc, char **argv) {
  const char *case_name = NULL, *runs = NULL, *seed = NULL, *threads = NULL;
  const cli_option options[] = {{"--case", &case_name, NULL},
                                {"--runs", &runs, NULL},
                                {"--seed", &seed, NULL},
                                {"--threads", &threads, NULL}};
  plan p = {.runs = 1000, .seed = 1, .threads = 0};
  int files;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, _("spread needs one lesson"));
  if (!cli_parse_runs(io, "--runs", runs, &p.runs) || !cli_parse_seed(io, seed, &p.seed) ||
      !parse_threads(io, threads, &p.threads))
    return OX_CLI_USAGE;
  cli_cases cases;
  int code = cli_cases_open(io, argv[0], case_name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = put_all(io, &cases, &p);
  cli_cases_close(&cases);
  return code;
}
