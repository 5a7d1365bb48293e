/* The ink of a case: strokes as lists of numbers, x and y in turn. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "json.h"
#include "oxbow/text.h"
#include "reading.h"

#define STROKES_ALLOWED N_("a list of at most 1000 strokes")
#define POINTS_ALLOWED N_("a list of x and y in turn, of one point or more")

/* Index of a word among count names, or -1. */
static int word_index(const cJSON *value, const char *(*name)(int), int count) {
  for (int i = 0; cJSON_IsString(value) && i < count; i++)
    if (strcmp(value->valuestring, name(i)) == 0) return i;
  return -1;
}

static const char *colour_name(int i) { return ox_ink_colour_name((ox_ink_colour)i); }
static const char *width_name(int i) { return ox_ink_width_name((ox_ink_width)i); }

/* The point that begins with this number; false where it is none, or too far out. */
static bool read_point(ox_reading *r, const char *prefix, const cJSON *x, ox_vec *out) {
  const cJSON *pair[2] = {x, x->next};
  for (int i = 0; i < 2; i++) {
    if (cJSON_IsNumber(pair[i]) && fabs(pair[i]->valuedouble) <= OX_INK_REACH_NM) continue;
    ox_reading_refuse(r, prefix, "points_nm", pair[i],
                      N_("a distance from the fix (-500 to 500 NM)"));
    return false;
  }
  *out = (ox_vec){pair[0]->valuedouble, pair[1]->valuedouble};
  return true;
}

static bool read_points(ox_reading *r, const char *prefix, const cJSON *list, ox_ink *ink,
                        ox_ink_stroke *stroke) {
  int count = cJSON_IsArray(list) ? cJSON_GetArraySize(list) : 0;
  if (count < 2 || count % 2 != 0) {
    ox_reading_refuse(r, prefix, "points_nm", list, POINTS_ALLOWED);
    return false;
  }
  stroke->count = (size_t)count / 2;
  if (stroke->count > OX_INK_POINTS_MAX ||
      ox_ink_point_count(ink) > OX_INK_POINTS_MAX - stroke->count) {
    ox_reading_say(r, prefix, "points_nm", _("there are more than 20000 points in the strokes"));
    return false;
  }
  stroke->points_nm = malloc(stroke->count * sizeof *stroke->points_nm);
  if (!stroke->points_nm) {
    r->no_memory = true;
    return false;
  }
  size_t i = 0;
  for (const cJSON *x = list->child; x; x = x->next->next)
    if (!read_point(r, prefix, x, &stroke->points_nm[i++])) return false;
  return true;
}

/* One of the words, or the first when it is not given. */
static bool read_word(ox_reading *r, const char *prefix, const cJSON *stroke, const char *key,
                      const char *(*name)(int), int count, const char *allowed, int *out) {
  const cJSON *value = ox_json_member(stroke, key);
  *out = value ? word_index(value, name, count) : 0;
  if (*out >= 0) return true;
  ox_reading_refuse(r, prefix, key, value, allowed);
  return false;
}

static void read_stroke(ox_reading *r, const cJSON *value, size_t index, ox_ink *ink) {
  char prefix[32];
  snprintf(prefix, sizeof prefix, "ink.strokes[%zu]", index);
  if (!ox_reading_object(r, "", prefix, value)) return;
  ox_ink_stroke stroke = {0};
  int colour, width;
  bool ok = true;
  for (const cJSON *child = value->child; child; child = child->next)
    ok = ox_reading_first(r, prefix, value, child) && ok;
  ok = read_word(r, prefix, value, "ink", colour_name, OX_INK_COLOUR_COUNT,
                 N_("\"black\", \"vermillion\" or \"blue\""), &colour) && ok;
  ok = read_word(r, prefix, value, "width", width_name, OX_INK_WIDTH_COUNT,
                 N_("\"thin\" or \"broad\""), &width) && ok;
  const cJSON *points = ox_json_member(value, "points_nm");
  if (!points) {
    ox_reading_say_missing(r, prefix, "points_nm", POINTS_ALLOWED);
    ok = false;
  } else {
    ok = read_points(r, prefix, points, ink, &stroke) && ok;
  }
  if (ok) {
    stroke.colour = (ox_ink_colour)colour;
    stroke.width = (ox_ink_width)width;
    /* Everything else was judged above: only memory is left to fail. */
    if (ox_ink_append(ink, &stroke) == OX_ERROR) r->no_memory = true;
  }
  free(stroke.points_nm);
}

static void read_strokes(ox_reading *r, const cJSON *list, ox_ink *ink) {
  char sentence[OX_READING_SENTENCE_BYTES];
  int count = cJSON_IsArray(list) ? cJSON_GetArraySize(list) : -1;
  if (count < 0) {
    ox_reading_refuse(r, "ink", "strokes", list, STROKES_ALLOWED);
  } else if (count > OX_INK_STROKES_MAX) {
    snprintf(sentence, sizeof sentence, _("%d strokes is not a list of at most 1000 strokes"),
             count);
    ox_reading_say(r, "ink", "strokes", sentence);
  } else {
    size_t index = 0;
    for (const cJSON *stroke = list->child; stroke && !r->no_memory; stroke = stroke->next)
      read_stroke(r, stroke, index++, ink);
  }
}

void ox_reading_ink(ox_reading *r, const cJSON *value) {
  if (cJSON_IsNull(value) || !ox_reading_object(r, "", "ink", value)) return;
  ox_ink *ink = ox_ink_new();
  if (!ink) {
    r->no_memory = true;
    return;
  }
  for (const cJSON *child = value->child; child; child = child->next)
    if (ox_reading_first(r, "ink", value, child) && strcmp(child->string, "strokes") == 0)
      read_strokes(r, child, ink);
  ox_ink_free(r->ink);
  r->ink = NULL;
  if (ox_ink_is_empty(ink))
    ox_ink_free(ink);
  else
    r->ink = ink;
}

/* The strokes stand in the ink from now on: what is kept would only double them. */
void ox_reading_forget_strokes(cJSON *kept_case) {
  cJSON *ink = cJSON_IsObject(kept_case) ? ox_json_member(kept_case, "ink") : NULL;
  if (!cJSON_IsObject(ink)) return;
  cJSON_DeleteItemFromObjectCaseSensitive(ink, "strokes");
  if (!ink->child) cJSON_Delete(cJSON_DetachItemViaPointer(kept_case, ink));
}
