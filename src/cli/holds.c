/* holds NAVFILE: published holds out of navigation records, as CSV or as a lesson; what was left
 * out, to err. */
#include <string.h>

#include "cli_private.h"
#include "oxbow/navdata.h"
#include "oxbow/text.h"

#define REMARK_BYTES 400

/* Terminal or enroute, and who it belongs to. */
static void put_names(FILE *out, const ox_published_hold *h) {
  const char *const names[] = {h->airport, h->procedure, h->transition, h->fix.ident,
                               ox_terminator_name(h->terminator)};
  for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
    cli_put_field(out, names[i]);
    fputc(',', out);
  }
}

/* The course as coded: a T where it is a true one, as the records write it. */
static void put_hold(FILE *out, const ox_published_hold *h) {
  char altitude[64];
  bool by_time = h->leg_by == OX_LEG_BY_TIME;
  put_names(out, h);
  fprintf(out, "%s%s,%s,", cli_number(h->inbound_deg).text,
          h->inbound_north == OX_NORTH_TRUE ? "T" : "",
          h->turns == OX_TURNS_LEFT ? "left" : "right");
  if (h->leg_given)
    fprintf(out, "%s,%s,", by_time ? "time" : "distance",
            cli_number(by_time ? h->leg_s : h->leg_nm).text);
  else
    fputs(",,", out);
  bool before = ox_text_english(true);
  ox_published_altitude_text(h, altitude, sizeof altitude);
  ox_text_english(before);
  cli_put_field(out, altitude);
  fputc('\n', out);
}

static void put_skipped(cli_io *io, const char *path, const ox_navdata_report *r) {
  for (int i = 0; i < OX_SKIP_COUNT; i++) {
    if (r->skipped[i] == 0) continue;
    fprintf(io->err, _("%s: %zu left out: %s (first at line %zu)\n"), path, r->skipped[i],
            ox_skip_text((ox_skip)i), r->first_line[i]);
  }
}

static int put_all(cli_io *io, const char *path, const ox_navdata *data,
                   const ox_hold_query *query) {
  size_t from = 0, at, count = 0;
  ox_published_hold hold;
  fputs("airport,procedure,transition,fix,terminator,inbound_deg,turns,by,value,altitude\n",
        io->out);
  for (; ox_navdata_find(data, query, from, &at); from = at + 1, count++) {
    if (ox_navdata_hold(data, at, &hold) == OX_ERROR) {
      fprintf(io->err, _("oxbow-cli: %s: the file has changed while it was read\n"), path);
      return OX_CLI_INPUT;
    }
    put_hold(io->out, &hold);
  }
  put_skipped(io, path, ox_navdata_report_of(data));
  if (count > 0) return OX_CLI_DONE;
  fprintf(io->err, _("oxbow-cli: %s: no hold matches\n"), path);
  return OX_CLI_INPUT;
}

static void say_all(cli_io *io, ox_messages *messages) {
  for (size_t i = 0; i < messages->count; i++) fprintf(io->err, "%s\n", messages->text[i]);
  ox_messages_clear(messages);
}

static int out_of_memory(cli_io *io) {
  fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
  return OX_CLI_INPUT;
}

/* Every hold that matches as a case; what a case leaves open goes to err. */
static int fill_lesson(cli_io *io, const char *path, const ox_navdata *data,
                       const ox_hold_query *query, ox_lesson *lesson) {
  size_t from = 0, at, count = 0;
  for (; ox_navdata_find(data, query, from, &at); from = at + 1, count++) {
    char remark[REMARK_BYTES];
    ox_lesson_case made = {.kept = NULL};
    if (count == OX_LESSON_CASES_MAX) {
      fprintf(io->err, _("oxbow-cli: %s: more than %d holds match: ask for fewer\n"), path,
              OX_LESSON_CASES_MAX);
      return OX_CLI_INPUT;
    }
    ox_status status = ox_navdata_lesson_case(data, at, &lesson->points, &made.c, &made.fix,
                                              remark, sizeof remark);
    if (status != OX_OK) fprintf(io->err, "%s: %s: %s\n", path, made.c.name, remark);
    if (status == OX_ERROR) return OX_CLI_INPUT;
    if (count == 0) {
      lesson->cases[0].c = made.c;
      lesson->cases[0].fix = made.fix;
    } else if (ox_lesson_insert(lesson, count, &made.c, &made) != OX_OK) {
      return out_of_memory(io);
    }
  }
  if (count > 0) return OX_CLI_DONE;
  fprintf(io->err, _("oxbow-cli: %s: no hold matches\n"), path);
  return OX_CLI_INPUT;
}

static int put_lesson(cli_io *io, const char *path, const ox_navdata *data,
                      const ox_hold_query *query, const char *out) {
  ox_lesson *lesson = ox_lesson_new();
  if (!lesson) return out_of_memory(io);
  ox_messages messages = {0};
  snprintf(lesson->title, sizeof lesson->title, "%s", _("Published holds"));
  int code = fill_lesson(io, path, data, query, lesson);
  if (code == OX_CLI_DONE && ox_lesson_write(lesson, out, &messages) == OX_ERROR)
    code = OX_CLI_INPUT;
  say_all(io, &messages);
  ox_lesson_free(lesson);
  return code;
}

int cli_holds(cli_io *io, int argc, char **argv) {
  ox_hold_query query = {NULL, NULL, NULL};
  const char *out = NULL;
  const cli_option options[] = {{"--fix", &query.fix, NULL},
                                {"--airport", &query.airport, NULL},
                                {"--procedure", &query.procedure, NULL},
                                {"-o", &out, NULL}};
  int files = 0;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &files))
    return OX_CLI_USAGE;
  if (files != 1) return cli_wrong(io, _("holds takes one file of navigation records"));
  ox_navdata *data = NULL;
  char remark[REMARK_BYTES];
  if (ox_navdata_open(argv[0], &data, remark, sizeof remark) == OX_ERROR) {
    fprintf(io->err, "%s: %s\n", argv[0], remark);
    return OX_CLI_INPUT;
  }
  int code = out ? put_lesson(io, argv[0], data, &query, out)
                 : put_all(io, argv[0], data, &query);
  ox_navdata_close(data);
  return code;
}
