/* What the page of words shows of a clearance. */
#include "ox_clearance_words.h"

#include <string.h>

#include <glib.h>

#include "ox_feature.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

ox_sense ox_sense_of_item(ox_item_kind kind) {
  switch (ox_feature_of_item(kind)) {
  case OX_FEATURE_FIX:
  case OX_FEATURE_NONE:
  case OX_FEATURE_COUNT:
    break;
  case OX_FEATURE_DIRECTION:
  case OX_FEATURE_COURSE:
    return OX_SENSE_LINE;
  case OX_FEATURE_TURNS:
  case OX_FEATURE_LEG:
    return OX_SENSE_SHAPE;
  case OX_FEATURE_LIMITS:
    return OX_SENSE_LIMIT;
  case OX_FEATURE_TIME:
    return OX_SENSE_TIME;
  }
  return OX_SENSE_PLACE;
}

const char *ox_ask_severity(ox_ask_kind kind) {
  switch (kind) {
  case OX_ASK_SAY_AGAIN:
    return _("Not understood");
  case OX_ASK_FIX:
  case OX_ASK_LINE:
  case OX_ASK_DIRECTION:
  case OX_ASK_EFC:
    return _("Missing");
  case OX_ASK_DIRECTION_AGAINST_LINE:
  case OX_ASK_INBOUND_AGAINST_OUTBOUND:
  case OX_ASK_INBOUND_AGAINST_LINE:
  case OX_ASK_LEG_AGAINST_DME:
  case OX_ASK_FIX_AGAINST_LIMIT:
  case OX_ASK_TWO_VALUES:
  case OX_ASK_EFC_AGAINST_NO_DELAY:
    return _("Contradiction");
  case OX_ASK_EFC_PAST:
  case OX_ASK_ARC:
  case OX_ASK_SPEED_ABOVE_LIMIT:
  case OX_ASK_OUT_OF_RANGE:
    return _("Cannot be");
  case OX_ASK_LEG_UNIT:
  case OX_ASK_EFC_HOUR:
  case OX_ASK_KIND_COUNT:
    break;
  }
  return _("Doubt");
}

int ox_clearance_item_at(const ox_clearance *c, size_t byte) {
  for (size_t i = 0; i < c->item_count; i++)
    if (byte >= c->items[i].words.at && byte < c->items[i].words.at + c->items[i].words.length)
      return (int)i;
  return -1;
}

char *ox_item_meaning(const ox_item *item) {
  const char *feature = ox_feature_name(ox_feature_of_item(item->kind));
  const char *unsound = item->sound ? "" : _("; it cannot be so and is not used");
  if (*feature == '\0') return g_strdup_printf("%s%s", ox_item_name(item->kind), unsound);
  return g_strdup_printf("%s: %s%s", ox_item_name(item->kind), feature, unsound);
}

bool ox_clearance_understood(const ox_clearance *c) {
  for (size_t i = 0; i < c->question_count; i++)
    if (c->questions[i].kind == OX_ASK_SAY_AGAIN) return false;
  return c->field_count > 0;
}

/* The phrase is English; in another language what is in doubt stands behind it. */
static char *question_words(const ox_question *question) {
  char meaning[OX_SENTENCE_BYTES];
  char *ask = g_strdup_printf(_("%s. Ask: %s"), ox_ask_severity(question->kind), question->text);
  if (!ox_question_meaning(meaning, sizeof meaning, question)) return ask;
  char *both = g_strdup_printf("%s (%s)", ask, meaning);
  g_free(ask);
  return both;
}

char **ox_clearance_questions(const ox_clearance *c) {
  char **all = g_new0(char *, c->question_count + 1);
  for (size_t i = 0; i < c->question_count; i++)
    all[i] = question_words(&c->questions[i]);
  return all;
}

char **ox_clearance_remarks(const ox_clearance *c, const char *text) {
  GPtrArray *all = g_ptr_array_new();
  for (size_t i = 0; i < c->default_count; i++)
    g_ptr_array_add(all, g_strdup_printf(_("Left open, %s: %s"), ox_item_name(c->defaults[i].kind),
                                         c->defaults[i].reason));
  GString *unused = g_string_new(NULL);
  for (size_t i = 0; i < c->ignored_count; i++) {
    char *words = g_strndup(text + c->ignored[i].at, c->ignored[i].length);
    if (i > 0) g_string_append(unused, ", ");
    g_string_append_printf(unused, _("“%s”"), words);
    g_free(words);
  }
  if (unused->len > 0) g_ptr_array_add(all, g_strdup_printf(_("Not used: %s"), unused->str));
  g_string_free(unused, TRUE);
  g_ptr_array_add(all, NULL);
  return (char **)g_ptr_array_free(all, FALSE);
}

/* ---- saying ----------------------------------------------------------------------------- */

const char *const *ox_said_names(void) {
  static const char *const names[] = {N_("Clearance"),      N_("Read-back"),  N_("Reports"),
                                      N_("Short briefing"), N_("Briefing"),   N_("At the fix"),
                                      N_("Step by step"),   N_("Time and fuel"), NULL};
  return names;
}

/* From malloc's memory to g_free's. */
static char *taken(char *words) {
  char *copy = g_strdup(words ? words : "");
  free(words);
  return copy;
}

static char *reports(const ox_case *c, const ox_flight *flight, const ox_say_options *o) {
  int enter_min = -1, leave_min = c->hold.efc_min;
  if (ox_clock_is_known(c)) {
    enter_min = c->arrival.fix_at_s / 60;
    if (leave_min < 0) leave_min = (int)(ox_clock_utc_s(c, ox_flight_end_s(flight)) / 60);
  }
  char *entering = taken(ox_say_entering(c, enter_min, o));
  char *leaving = taken(ox_say_leaving(c, leave_min, o));
  char *both = g_strdup_printf(_("Reaching the fix: %s\n\nLeaving it: %s"), entering, leaving);
  g_free(entering);
  g_free(leaving);
  return both;
}

static char *cues(const ox_case *c, const ox_flight *flight, const ox_say_options *o) {
  ox_cue cue[OX_CUES];
  GString *all = g_string_new(NULL);
  ox_say_cues(c, flight, o, cue);
  for (int i = 0; i < OX_CUES; i++)
    g_string_append_printf(all, "%s%s: %s", i > 0 ? "\n" : "", cue[i].cue, cue[i].text);
  return g_string_free(all, FALSE);
}

static char *steps(const ox_case *c, const ox_flight *flight, const ox_say_options *o) {
  ox_step *step = g_new0(ox_step, OX_STEPS_MAX);
  GString *all = g_string_new(NULL);
  size_t count = ox_say_steps(c, flight, o, step, OX_STEPS_MAX);
  for (size_t i = 0; i < count; i++)
    g_string_append_printf(all, "%s%zu. %s", i > 0 ? "\n" : "", i + 1, step[i].text);
  g_free(step);
  return g_string_free(all, FALSE);
}

/* A blank line between the sentences. */
static char *when(const ox_case *c, const ox_flight *flight) {
  char *lines = taken(ox_words_when(c, flight));
  char **line = g_strsplit(lines, "\n", -1);
  char *all = g_strjoinv("\n\n", line);
  g_strfreev(line);
  g_free(lines);
  return all;
}

char *ox_said_words(ox_said said, const ox_case *c, const ox_flight *flight,
                    const ox_say_options *options) {
  switch (said) {
  case OX_SAID_CLEARANCE:
    return taken(ox_say_clearance(c, options));
  case OX_SAID_READBACK:
    return taken(ox_say_readback(c, options));
  case OX_SAID_REPORTS:
    return reports(c, flight, options);
  case OX_SAID_SHORT:
    return taken(ox_say_briefing(c, flight, OX_BRIEFING_SHORT, options));
  case OX_SAID_LONG:
    return taken(ox_say_briefing(c, flight, OX_BRIEFING_LONG, options));
  case OX_SAID_CUES:
    return cues(c, flight, options);
  case OX_SAID_STEPS:
    return steps(c, flight, options);
  case OX_SAID_WHEN:
    return when(c, flight);
  case OX_SAID_COUNT:
    break;
  }
  return g_strdup("");
}
