/* compare LESSON --with WHAT: cases side by side, as CSV; what is given differently and what came
 * of it. */
#include <stdlib.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/differences.h"
#include "oxbow/text.h"
#include "oxbow/variants.h"

/* The cases and flights of the columns. */
typedef struct {
  size_t count;
  ox_case cases[OX_DIFFERENCES_MAX];
  ox_flight *flights; /* OX_DIFFERENCES_MAX of them */
} columns;

static bool find_case(const ox_lesson *lesson, const char *name, ox_case *out) {
  for (size_t i = 0; i < lesson->case_count; i++) {
    if (strcmp(lesson->cases[i].c.name, name) != 0) continue;
    *out = lesson->cases[i].c;
    return true;
  }
  return false;
}

/* A variant of the first column, named after what was changed. */
static bool find_variant(cli_io *io, const char *path, const char *key, const columns *c,
                         ox_case *out) {
  for (int i = 0; i < OX_VARIANT_COUNT; i++) {
    ox_variant variant = (ox_variant)i;
    if (strcmp(ox_variant_key(variant), key) != 0) continue;
    if (ox_variant_make(variant, &c->cases[0], &c->flights[0], out)) {
      snprintf(out->name, sizeof out->name, "%s", ox_variant_name(variant));
      return true;
    }
    fprintf(io->err, _("%s: case \"%s\": there is no other case to make by %s\n"), path,
            c->cases[0].name, key);
    return false;
  }
  fprintf(io->err, _("%s: there is no case \"%s\", and no change of one by that name\n"), path,
          key);
  return false;
}

static bool add_column(cli_io *io, const char *path, const ox_case *added, columns *c) {
  size_t at = c->count;
  c->cases[at] = *added;
  if (ox_flight_solve(&c->cases[at], &c->flights[at]) == OX_ERROR) {
    fprintf(io->err, _("%s: case \"%s\": cannot be flown\n"), path, c->cases[at].name);
    return false;
  }
  c->count++;
  return true;
}

static bool add_named(cli_io *io, const cli_cases *cases, const char *name, columns *c) {
  ox_case found;
  if (!find_case(cases->lesson, name, &found) &&
      !find_variant(io, cases->path, name, c, &found))
    return false;
  return add_column(io, cases->path, &found, c);
}

/* --- the table ----------------------------------------------------------------------------- */

static void put_table(FILE *out, const columns *c, const ox_differences *d) {
  fputs("kind,quantity", out);
  for (size_t i = 0; i < c->count; i++) {
    fputc(',', out);
    cli_put_field(out, c->cases[i].name);
  }
  fputs(",differs\n", out);
  for (size_t r = 0; r < d->count; r++) {
    const ox_difference_row *row = &d->rows[r];
    fprintf(out, "%s,", row->given ? "given" : "flown");
    cli_put_field(out, row->label);
    for (size_t i = 0; i < c->count; i++) {
      fputc(',', out);
      cli_put_field(out, row->value[i]);
    }
    fprintf(out, ",%s\n", row->differs ? "yes" : "no");
  }
}

static int put_columns(cli_io *io, const columns *c) {
  const ox_case *cases[OX_DIFFERENCES_MAX];
  const ox_flight *flights[OX_DIFFERENCES_MAX];
  for (size_t i = 0; i < c->count; i++) {
    cases[i] = &c->cases[i];
    flights[i] = &c->flights[i];
  }
  bool before = ox_text_english(true);
  ox_differences d = ox_differences_make(cases, flights, c->count);
  ox_text_english(before);
  if (d.count == 0) {
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
    return OX_CLI_INPUT;
  }
  put_table(io->out, c, &d);
  ox_differences_clear(&d);
  return OX_CLI_DONE;
}

static int compare(cli_io *io, const cli_cases *cases, const char *with, const char *and) {
  columns c = {.flights = calloc(OX_DIFFERENCES_MAX, sizeof *c.flights)};
  int code = OX_CLI_INPUT;
  if (!c.flights)
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
  else if (add_column(io, cases->path, cli_case(cases, 0), &c) && add_named(io, cases, with, &c) &&
           (!and || add_named(io, cases, and, &c)))
    code = put_columns(io, &c);
  free(c.flights);
  return code;
}

int cli_compare(cli_io *io, int argc, char **argv) {
  const char *case_name = NULL, *with = NULL, *and = NULL;
  const cli_option options[] = {
      {"--case", &case_name, NULL}, {"--with", &with, NULL}, {"--and", &and, NULL}};
  int files;
  if (!cli_options(io, argc, argv, options, 3, &files)) return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, _("compare needs one lesson"));
  if (!with) return cli_wrong(io, _("compare needs --with, the name of a case or of a change"));
  cli_cases cases;
  int code = cli_cases_open(io, argv[0], case_name, &cases);
  if (code != OX_CLI_DONE) return code;
  code = compare(io, &cases, with, and);
  cli_cases_close(&cases);
  return code;
}
