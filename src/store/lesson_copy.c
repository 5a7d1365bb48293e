/* Copies and comparisons of what a lesson is made of. Whoever adds a member to ox_lesson_case or
 * to ox_lesson adds its line here: undo, autosave and "modified" go by these functions. */
#include <cJSON.h>
#include <string.h>

#include "oxbow/lesson.h"

/* ---- kept keys -------------------------------------------------------------------------- */

static bool copy_kept(void **to, const void *from) {
  *to = from ? cJSON_Duplicate(from, true) : NULL;
  return !from || *to;
}

static bool kept_equal(const void *a, const void *b) {
  if (a == b) return true;
  return a && b && cJSON_Compare(a, b, true);
}

/* A rough measure: an item, its key and its text. */
static size_t kept_bytes(const cJSON *item) {
  size_t bytes = 0;
  for (; item; item = item->next) {
    bytes += sizeof *item;
    if (item->string) bytes += strlen(item->string) + 1;
    if (item->valuestring) bytes += strlen(item->valuestring) + 1;
    bytes += kept_bytes(item->child);
  }
  return bytes;
}

static bool copy_ink(ox_ink **to, const ox_ink *from) {
  *to = ox_ink_is_empty(from) ? NULL : ox_ink_copy(from);
  return ox_ink_is_empty(from) || *to;
}

/* ---- cases ------------------------------------------------------------------------------ */

bool ox_lesson_case_copy(ox_lesson_case *to, const ox_lesson_case *from) {
  *to = *from;
  to->ink = NULL;
  if (copy_kept(&to->kept, from->kept) && copy_ink(&to->ink, from->ink)) return true;
  ox_lesson_case_clear(to);
  memset(to, 0, sizeof *to);
  return false;
}

void ox_lesson_case_clear(ox_lesson_case *c) {
  cJSON_Delete(c->kept);
  c->kept = NULL;
  ox_ink_free(c->ink);
  c->ink = NULL;
}

bool ox_lesson_case_rest_equal(const ox_lesson_case *a, const ox_lesson_case *b) {
  return kept_equal(a->kept, b->kept) && ox_ink_equal(a->ink, b->ink) &&
         ox_fix_equal(&a->fix, &b->fix);
}

bool ox_lesson_case_equal(const ox_lesson_case *a, const ox_lesson_case *b) {
  return ox_case_equal(&a->c, &b->c) && ox_lesson_case_rest_equal(a, b);
}

size_t ox_lesson_case_bytes(const ox_lesson_case *c) {
  return sizeof *c + kept_bytes(c->kept) + ox_ink_point_count(c->ink) * sizeof(ox_vec);
}

/* ---- the lesson without its cases ------------------------------------------------------- */

ox_lesson *ox_lesson_copy_head(const ox_lesson *lesson) {
  ox_lesson *head = cJSON_malloc(sizeof *head);
  if (!head) return NULL;
  *head = *lesson;
  head->cases = NULL;
  head->case_count = 0;
  if (copy_kept(&head->kept, lesson->kept)) return head;
  cJSON_free(head);
  return NULL;
}

bool ox_lesson_head_equal(const ox_lesson *a, const ox_lesson *b) {
  return a == b || (strcmp(a->title, b->title) == 0 && a->read_only == b->read_only &&
                    ox_points_equal(&a->points, &b->points) &&
                    ox_route_equal(&a->route, &b->route) && kept_equal(a->kept, b->kept));
}

size_t ox_lesson_head_bytes(const ox_lesson *lesson) {
  return sizeof *lesson + kept_bytes(lesson->kept);
}
