/* oxbow-cli as a function: what it does depends on nothing but its arguments, so tests call it as
 * a user would. Needs no display and no locale. */
#ifndef OX_CLI_CLI_H
#define OX_CLI_CLI_H

#include <stdio.h>

/* Exit codes. */
#define OX_CLI_DONE 0
#define OX_CLI_INPUT 1 /* the lesson is at fault, or something could not be written */
#define OX_CLI_USAGE 2

/* Runs one command. Results go to `out`, messages to `err`; both are flushed and neither is
 * closed. A failure to write `out` is exit code 1. */
int ox_cli_main(int argc, char **argv, FILE *out, FILE *err);

#endif
