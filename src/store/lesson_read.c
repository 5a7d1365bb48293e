/* Text to lesson: the document, its head, and its cases one by one. Faults are collected over the
 * whole file, in the order of the file, so that one look mends them all. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "json.h"
#include "oxbow/text.h"
#include "reading.h"

#define FORMAT "oxbow-lesson"
#define VERSION_ALLOWED N_("a version (a whole number from 1)")
#define CASES_ALLOWED N_("a list of 1 to 200 cases")

static void say_syntax(ox_reading *r, const char *bytes, size_t length,
                       const ox_json_fault *fault) {
  size_t line, column;
  char sentence[sizeof fault->sentence + 80];
  ox_json_place(bytes, length, fault->at, &line, &column);
  snprintf(sentence, sizeof sentence, _("line %zu, column %zu: %s"), line, column, fault->sentence);
  ox_reading_say(r, "", "", sentence);
}

/* The version when it is a sound one, 0 otherwise. */
static double version_of(const cJSON *tree) {
  const cJSON *version = ox_json_member(tree, "version");
  if (!cJSON_IsNumber(version) || !isfinite(version->valuedouble)) return 0.0;
  double number = version->valuedouble;
  return number >= 1.0 && number == floor(number) ? number : 0.0;
}

static bool is_lesson(const cJSON *tree) {
  const cJSON *format = ox_json_member(tree, "format");
  return cJSON_IsString(format) && strcmp(format->valuestring, FORMAT) == 0;
}

static bool is_newer(const cJSON *tree) {
  return is_lesson(tree) && version_of(tree) > OX_LESSON_VERSION;
}

static void read_format(ox_reading *r, const cJSON *value) {
  if (!cJSON_IsString(value) || strcmp(value->valuestring, FORMAT) != 0)
    ox_reading_refuse(r, "", "format", value, "\"" FORMAT "\"");
}

/* The cases are taken out of the tree: each lesson case keeps its own object. A newer lesson may
 * have something else than an object among them; that one is left out. */
static void read_cases(ox_reading *r, cJSON *list, ox_lesson *lesson, bool newer) {
  int count = cJSON_IsArray(list) ? cJSON_GetArraySize(list) : 0;
  if (count < 1) {
    ox_reading_refuse(r, "", "cases", list, CASES_ALLOWED);
    return;
  }
  if (count > OX_LESSON_CASES_MAX) {
    char sentence[OX_READING_SENTENCE_BYTES];
    snprintf(sentence, sizeof sentence, _("%d cases is not a list of 1 to 200 cases"), count);
    ox_reading_say(r, "", "cases", sentence);
    count = OX_LESSON_CASES_MAX;
  }
  lesson->cases = cJSON_malloc((size_t)count * sizeof *lesson->cases);
  if (!lesson->cases) {
    r->no_memory = true;
    return;
  }
  for (int i = 0; i < count && !r->no_memory; i++) {
    cJSON *value = cJSON_DetachItemViaPointer(list, list->child);
    ox_lesson_case *into = &lesson->cases[lesson->case_count];
    ox_reading_case(r, value, (size_t)i + 1, &into->c, &into->fix);
    into->ink = r->ink;
    r->ink = NULL;
    ox_reading_forget_strokes(value);
    if (newer && !cJSON_IsObject(value)) {
      cJSON_Delete(value);
      continue;
    }
    into->kept = value;
    lesson->case_count++;
  }
}

static void check_present(ox_reading *r, const cJSON *tree, const char *key, const char *needed) {
  if (!ox_json_member(tree, key)) ox_reading_say_missing(r, "", key, needed);
}

/* The points come before the cases that name them, wherever they stand in the file. */
static void read_places(ox_reading *r, const cJSON *tree, ox_lesson *lesson) {
  const cJSON *points = ox_json_member(tree, "points"), *route = ox_json_member(tree, "route");
  const cJSON *missed = ox_json_member(tree, "missed_approach_point");
  if (points) ox_reading_points(r, points);
  if (route) ox_reading_route(r, route, &lesson->route);
  if (missed) ox_reading_missed_approach(r, missed, &lesson->route);
}

static void read_tree(ox_reading *r, cJSON *tree, ox_lesson *lesson) {
  bool newer = is_newer(tree);
  read_places(r, tree, lesson);
  for (cJSON *child = tree->child; child && !r->no_memory; child = child->next) {
    if (!ox_reading_first(r, "", tree, child)) continue;
    if (strcmp(child->string, "format") == 0)
      read_format(r, child);
    else if (strcmp(child->string, "version") == 0 && version_of(tree) == 0.0)
      ox_reading_refuse(r, "", "version", child, VERSION_ALLOWED);
    else if (strcmp(child->string, "title") == 0)
      ox_reading_line(r, "title", child, lesson->title, sizeof lesson->title,
                      N_("a title of one line and at most 199 bytes"));
    else if (strcmp(child->string, "cases") == 0)
      read_cases(r, child, lesson, newer);
  }
  check_present(r, tree, "format", "\"" FORMAT "\"");
  check_present(r, tree, "version", VERSION_ALLOWED);
  check_present(r, tree, "cases", CASES_ALLOWED);
  if (!r->no_memory) ox_reading_look_up(r, lesson);
}

/* What a newer program wrote is shown as far as it is understood; the remarks say what is not. */
static void say_newer(ox_reading *r, const cJSON *tree) {
  ox_growing t = {0};
  char sentence[OX_READING_SENTENCE_BYTES];
  ox_json_print_short(&t, ox_json_member(tree, "version"), 20);
  snprintf(
      sentence, sizeof sentence,
      _("version %s is newer than this program knows (%d): it is read-only here, and what is not "
        "understood stands at its default"),
      t.bytes ? t.bytes : "?", OX_LESSON_VERSION);
  ox_growing_clear(&t);
  ox_reading_say(r, "", "", sentence);
}

/* The lesson of a document, which becomes part of it; or NULL, the document still the caller's. */
static ox_lesson *read_document(ox_reading *r, cJSON *tree) {
  if (!ox_reading_object(r, "", "", tree)) return NULL;
  ox_lesson *lesson = cJSON_malloc(sizeof *lesson);
  if (!lesson) {
    r->no_memory = true;
    return NULL;
  }
  memset(lesson, 0, sizeof *lesson);
  lesson->route.missed_approach = -1;
  r->points = &lesson->points;
  bool newer = is_newer(tree);
  if (newer) say_newer(r, tree);
  read_tree(r, tree, lesson);
  bool usable = newer ? lesson->case_count > 0 : r->fault_count == 0;
  if (r->no_memory || !usable) {
    ox_lesson_free(lesson);
    return NULL;
  }
  lesson->read_only = newer;
  lesson->kept = tree;
  return lesson;
}

static ox_lesson *read_text(ox_reading *r, const char *bytes, size_t length) {
  ox_json_fault fault;
  if (length >= 3 && memcmp(bytes, "\xef\xbb\xbf", 3) == 0) bytes += 3, length -= 3;
  cJSON *tree = ox_json_parse(bytes, length, &fault);
  if (!tree) {
    if (fault.sentence[0])
      say_syntax(r, bytes, length, &fault);
    else
      r->no_memory = true;
    return NULL;
  }
  ox_lesson *lesson = read_document(r, tree);
  if (!lesson) cJSON_Delete(tree);
  return lesson;
}

ox_status ox_lesson_parse(const char *bytes, size_t length, const char *name, ox_lesson **out,
                          ox_messages *messages) {
  ox_reading r = {.name = name ? name : _("lesson"), .messages = messages};
  if (length == 0) {
    ox_messages_say(messages, r.name, _("the file is empty"));
    return OX_ERROR;
  }
  if (length > OX_LESSON_FILE_MAX_BYTES) {
    ox_messages_say(messages, r.name, _("the file is larger than a lesson may be (4 MiB)"));
    return OX_ERROR;
  }
  ox_lesson *lesson = read_text(&r, bytes, length);
  if (r.no_memory) ox_messages_say(messages, r.name, _("there is not enough memory to read it"));
  if (!lesson) return OX_ERROR;
  *out = lesson;
  return lesson->read_only ? OX_ADVISORY : OX_OK;
}
