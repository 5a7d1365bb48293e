/* Lessons for the verbs: read, said what is wrong with, and the case that was asked for. */
#include <string.h>

#include "cli_private.h"
#include "oxbow/text.h"

static void say_all(cli_io *io, ox_messages *messages) {
  for (size_t i = 0; i < messages->count; i++)
    fprintf(io->err, "%s\n", messages->text[i]);
  ox_messages_clear(messages);
}

static int no_such_case(cli_io *io, const cli_cases *cases, const char *name) {
  fprintf(io->err, _("%s: there is no case \"%s\"; the cases are:\n"), cases->path, name);
  for (size_t i = 0; i < cases->lesson->case_count; i++)
    fprintf(io->err, "  %s\n", cases->lesson->cases[i].c.name);
  return OX_CLI_INPUT;
}

int cli_cases_open(cli_io *io, const char *path, const char *case_name, cli_cases *out) {
  ox_messages messages = {0};
  *out = (cli_cases){.path = path};
  ox_status status = ox_lesson_read(path, &out->lesson, &messages);
  if (status == OX_ERROR && messages.count == 0) fprintf(io->err, _("%s: cannot be read\n"), path);
  say_all(io, &messages);
  if (status == OX_ERROR) return OX_CLI_INPUT;
  out->count = out->lesson->case_count;
  if (!case_name) return OX_CLI_DONE;
  for (size_t i = 0; i < out->lesson->case_count; i++) {
    if (strcmp(out->lesson->cases[i].c.name, case_name) != 0) continue;
    out->first = i;
    out->count = 1;
    return OX_CLI_DONE;
  }
  int code = no_such_case(io, out, case_name);
  cli_cases_close(out);
  return code;
}

void cli_cases_close(cli_cases *cases) {
  ox_lesson_free(cases->lesson);
  cases->lesson = NULL;
}

const ox_case *cli_case(const cli_cases *cases, size_t index) {
  return &cases->lesson->cases[cases->first + index].c;
}

const ox_ink *cli_ink(const cli_cases *cases, size_t index) {
  return cases->lesson->cases[cases->first + index].ink;
}

bool cli_fix_place(const cli_cases *cases, size_t index, ox_latlon *out) {
  const ox_lesson *lesson = cases->lesson;
  const ox_lesson_case *lc = &lesson->cases[cases->first + index];
  return ox_fix_has_place(&lesson->points, &lc->fix, &lc->c) &&
         ox_fix_place(&lesson->points, &lc->fix, &lc->c, out, NULL, 0) != OX_ERROR;
}

bool cli_solve(cli_io *io, const cli_cases *cases, size_t index, ox_flight *flight) {
  const ox_case *c = cli_case(cases, index);
  if (ox_flight_solve(c, flight) != OX_ERROR) return true;
  fprintf(io->err, _("%s: case \"%s\": it cannot be flown\n"), cases->path, c->name);
  return false;
}
