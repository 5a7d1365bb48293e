/* check LESSON...: says what is wrong, or nothing. */
#include "cli_private.h"

int cli_check(cli_io *io, int argc, char **argv) {
  int files, code = OX_CLI_DONE;
  if (!cli_options(io, argc, argv, NULL, 0, &files)) return OX_CLI_USAGE;
  if (files == 0) return cli_wrong(io, "check needs a lesson");
  for (int i = 0; i < files; i++) {
    cli_cases cases;
    if (cli_cases_open(io, argv[i], NULL, &cases) != OX_CLI_DONE)
      code = OX_CLI_INPUT;
    else
      cli_cases_close(&cases);
  }
  return code;
}
