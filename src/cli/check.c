/* check LESSON...: says what is wrong or worth a remark, or nothing. */
#include "cli_private.h"
#include "oxbow/text.h"

/* A remark is no fault: it does not change the exit status. */
static void say_remarks(cli_io *io, const cli_cases *cases) {
  ox_messages messages = {0};
  ox_lesson_remarks(cases->lesson, cases->path, &messages);
  for (size_t i = 0; i < messages.count; i++) fprintf(io->err, "%s\n", messages.text[i]);
  ox_messages_clear(&messages);
}

int cli_check(cli_io *io, int argc, char **argv) {
  int files, code = OX_CLI_DONE;
  if (!cli_options(io, argc, argv, NULL, 0, &files)) return OX_CLI_USAGE;
  if (files == 0) return cli_wrong(io, _("check needs a lesson"));
  for (int i = 0; i < files; i++) {
    cli_cases cases;
    if (cli_cases_open(io, argv[i], NULL, &cases) != OX_CLI_DONE) {
      code = OX_CLI_INPUT;
      continue;
    }
    say_remarks(io, &cases);
    cli_cases_close(&cases);
  }
  return code;
}
