/* clearance "TEXT": a lesson out of the words of a holding clearance; what was asked, left open or
 * ignored goes to err. */
#include <stdlib.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/clearance.h"
#include "oxbow/text.h"

bool cli_parse_wording(cli_io *io, const char *text, ox_wording *out) {
  *out = OX_WORDING_US;
  if (!text || strcmp(text, "us") == 0) return true;
  if (strcmp(text, "icao") == 0) {
    *out = OX_WORDING_ICAO;
    return true;
  }
  cli_wrong(io, _("--wording: %s is not us or icao"), text);
  return false;
}

/* "HH:MM" as minutes after midnight. */
static bool parse_now(cli_io *io, const char *text, int *out) {
  *out = -1;
  if (!text) return true;
  uint64_t hours, minutes;
  char copy[6];
  if (strlen(text) == 5 && text[2] == ':') {
    memcpy(copy, text, sizeof copy);
    copy[2] = '\0';
    if (cli_parse_whole(copy, 0, 23, &hours) && cli_parse_whole(copy + 3, 0, 59, &minutes)) {
      *out = (int)(hours * 60 + minutes);
      return true;
    }
  }
  cli_wrong(io, _("--now: %s is not a time of day (00:00 to 23:59)"), text);
  return false;
}

static void put_remarks(FILE *err, const char *text, const ox_clearance *c) {
  char meaning[OX_SENTENCE_BYTES];
  for (size_t i = 0; i < c->question_count; i++) {
    fprintf(err, _("ask: %s\n"), c->questions[i].text);
    if (ox_question_meaning(meaning, sizeof meaning, &c->questions[i]))
      fprintf(err, "  (%s)\n", meaning);
  }
  for (size_t i = 0; i < c->default_count; i++)
    fprintf(err, "%s: %s\n", ox_item_name(c->defaults[i].kind), c->defaults[i].reason);
  for (size_t i = 0; i < c->ignored_count; i++)
    fprintf(err, _("ignored: %.*s\n"), (int)c->ignored[i].length, text + c->ignored[i].at);
}

/* What a pilot reads back of it: said on the radio, so in English. */
static void put_readback(FILE *err, const ox_clearance *c, ox_wording wording) {
  ox_say_options o = ox_say_options_default();
  if (!ox_clearance_tells(c, &c->result)) return;
  o.wording = wording;
  o.heard = c;
  char *words = ox_say_readback(&c->result, &o);
  if (words) fprintf(err, _("read back: %s\n"), words);
  free(words);
}

/* A lesson with the one case. */
static int put_lesson(cli_io *io, const ox_case *c) {
  ox_lesson *lesson = ox_lesson_new();
  char *text = NULL;
  if (lesson) {
    lesson->cases[0].c = *c;
    strcpy(lesson->title, _("A clearance"));
    strcpy(lesson->cases[0].c.name, _("As cleared"));
    text = ox_lesson_to_text(lesson);
  }
  ox_lesson_free(lesson);
  if (!text) {
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
    return OX_CLI_INPUT;
  }
  fputs(text, io->out);
  free(text);
  return OX_CLI_DONE;
}

static bool was_understood(const ox_clearance *c) {
  for (size_t i = 0; i < c->question_count; i++)
    if (c->questions[i].kind == OX_ASK_SAY_AGAIN) return false;
  return true;
}

int cli_clearance(cli_io *io, int argc, char **argv) {
  const char *wording = NULL, *now = NULL;
  const cli_option options[] = {{"--wording", &wording, NULL}, {"--now", &now, NULL}};
  ox_clearance_options o = ox_clearance_options_default();
  int texts = 0;
  if (!cli_options(io, argc, argv, options, sizeof options / sizeof *options, &texts) ||
      !cli_parse_wording(io, wording, &o.wording) || !parse_now(io, now, &o.now_min))
    return OX_CLI_USAGE;
  if (texts != 1) return cli_wrong(io, _("clearance takes one text, in quotation marks"));
  ox_clearance *c = malloc(sizeof *c);
  int code = OX_CLI_INPUT;
  if (!c) {
    fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
  } else if (ox_clearance_read(argv[0], NULL, &o, c) == OX_ERROR) {
    fputs(_("oxbow-cli: the text is too long for a clearance (2000 bytes)\n"), io->err);
  } else {
    put_remarks(io->err, argv[0], c);
    if (was_understood(c)) {
      put_readback(io->err, c, o.wording);
      code = put_lesson(io, &c->result);
    }
  }
  free(c);
  return code;
}
