#include "cli.h"

int main(int argc, char **argv) {
  return ox_cli_main(argc, argv, stdout, stderr);
}
