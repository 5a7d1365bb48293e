/* The arguments after a verb. */
#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/text.h"

int cli_wrong(cli_io *io, const char *format, ...) {
  va_list arguments;
  va_start(arguments, format);
  fputs("oxbow-cli: ", io->err);
  vfprintf(io->err, format, arguments);
  fprintf(io->err, "\n%s\n", _("Try 'oxbow-cli --help'."));
  va_end(arguments);
  return OX_CLI_USAGE;
}

/* The option that an argument names, with or without "=VALUE". */
static const cli_option *find(const char *argument, const cli_option *options, size_t count) {
  size_t length = strcspn(argument, "=");
  for (size_t i = 0; i < count; i++)
    if (strlen(options[i].name) == length && strncmp(argument, options[i].name, length) == 0)
      return &options[i];
  return NULL;
}

/* The value of an option, from its own argument or the next one. */
static bool take(cli_io *io, const cli_option *option, int argc, char **argv, int *at) {
  const char *equals = strchr(argv[*at], '=');
  if (option->flag ? *option->flag : *option->value != NULL) {
    cli_wrong(io, _("%s is given twice"), option->name);
    return false;
  }
  if (option->flag) {
    if (equals) cli_wrong(io, _("%s takes no value"), option->name);
    *option->flag = true;
    return !equals;
  }
  if (!equals && *at + 1 == argc) {
    cli_wrong(io, _("%s needs a value"), option->name);
    return false;
  }
  *option->value = equals ? equals + 1 : argv[++*at];
  return true;
}

bool cli_options(cli_io *io, int argc, char **argv, const cli_option *options, size_t count,
                 int *files) {
  int kept = 0;
  bool only_files = false;
  for (int i = 0; i < argc; i++) {
    char *argument = argv[i];
    if (only_files || argument[0] != '-' || argument[1] == '\0') {
      argv[kept++] = argument;
      continue;
    }
    if (strcmp(argument, "--") == 0) {
      only_files = true;
      continue;
    }
    const cli_option *option = find(argument, options, count);
    if (!option) {
      cli_wrong(io, _("there is no option %s here"), argument);
      return false;
    }
    if (!take(io, option, argc, argv, &i)) return false;
  }
  *files = kept;
  return true;
}

/* Digits into a whole number and a power of ten; 15 digits are exact in a double. */
bool cli_parse_number(const char *text, double *out) {
  const char *at = text;
  double whole = 0.0, scale = 1.0;
  int digits = 0;
  bool negative = *at == '-', point = false;
  if (*at == '-' || *at == '+') at++;
  for (; *at; at++) {
    if (*at == '.' && !point) {
      point = true;
      continue;
    }
    if (*at < '0' || *at > '9' || ++digits > 15) return false;
    whole = whole * 10.0 + (*at - '0');
    if (point) scale *= 10.0;
  }
  if (digits == 0) return false;
  *out = (negative ? -whole : whole) / scale + 0.0;
  return true;
}

bool cli_parse_whole(const char *text, uint64_t min, uint64_t max, uint64_t *out) {
  uint64_t whole = 0;
  if (!*text) return false;
  for (const char *at = text; *at; at++) {
    if (*at < '0' || *at > '9') return false;
    uint64_t figure = (uint64_t)(*at - '0');
    if (whole > (UINT64_MAX - figure) / 10) return false;
    whole = whole * 10 + figure;
  }
  if (whole < min || whole > max) return false;
  *out = whole;
  return true;
}

bool cli_parse_seed(cli_io *io, const char *text, uint64_t *out) {
  if (!text || cli_parse_whole(text, 0, CLI_SEED_MAX, out)) return true;
  cli_wrong(io, _("--seed: %s is not a seed (a whole number, 0 to 9007199254740991)"), text);
  return false;
}

bool cli_parse_runs(cli_io *io, const char *option, const char *text, size_t *out) {
  uint64_t runs;
  if (!text) return true;
  if (!cli_parse_whole(text, 1, OX_SPREAD_RUNS_MAX, &runs)) {
    cli_wrong(io, _("%s: %s is not a number of flights (1 to %u)"), option, text,
              OX_SPREAD_RUNS_MAX);
    return false;
  }
  *out = (size_t)runs;
  return true;
}
