#include "cli.h"

#include <locale.h>

#include "oxbow/text.h"

int main(int argc, char **argv) {
  /* Not LC_NUMERIC: figures for machines have a point. */
  setlocale(LC_CTYPE, "");
  setlocale(LC_MESSAGES, "");
  ox_text_open(ox_text_folder());
  return ox_cli_main(argc, argv, stdout, stderr);
}
