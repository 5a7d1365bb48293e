/* Lessons in memory: making, freeing, and the list of cases. */
#include "oxbow/lesson.h"

#include <cJSON.h>
#include <string.h>

ox_lesson *ox_lesson_new(void) {
  ox_lesson *lesson = cJSON_malloc(sizeof *lesson);
  if (!lesson) return NULL;
  memset(lesson, 0, sizeof *lesson);
  lesson->route.missed_approach = -1;
  ox_case standard = ox_case_default();
  if (ox_lesson_insert(lesson, 0, &standard, NULL) == OX_OK) return lesson;
  ox_lesson_free(lesson);
  return NULL;
}

void ox_lesson_free(ox_lesson *lesson) {
  if (!lesson) return;
  for (size_t i = 0; i < lesson->case_count; i++)
    ox_lesson_case_clear(&lesson->cases[i]);
  cJSON_free(lesson->cases);
  cJSON_Delete(lesson->kept);
  cJSON_free(lesson);
}

/* Both `c` and `like` may stand in the list itself: they are copied before it moves. */
ox_status ox_lesson_insert(ox_lesson *lesson, size_t index, const ox_case *c,
                           const ox_lesson_case *like) {
  size_t count = lesson->case_count;
  if (index > count || count >= OX_LESSON_CASES_MAX) return OX_ERROR;
  ox_case values = *c;
  ox_lesson_case made = {.fix = ox_fix_named()};
  if (like && !ox_lesson_case_copy(&made, like)) return OX_ERROR;
  made.c = values;
  ox_lesson_case *cases = cJSON_malloc((count + 1) * sizeof *cases);
  if (!cases) {
    ox_lesson_case_clear(&made);
    return OX_ERROR;
  }
  if (index > 0) memcpy(cases, lesson->cases, index * sizeof *cases);
  cases[index] = made;
  if (index < count)
    memcpy(cases + index + 1, lesson->cases + index, (count - index) * sizeof *cases);
  cJSON_free(lesson->cases);
  lesson->cases = cases;
  lesson->case_count = count + 1;
  return OX_OK;
}

ox_status ox_lesson_remove(ox_lesson *lesson, size_t index) {
  if (index >= lesson->case_count || lesson->case_count == 1) return OX_ERROR;
  ox_lesson_case_clear(&lesson->cases[index]);
  memmove(lesson->cases + index, lesson->cases + index + 1,
          (lesson->case_count - index - 1) * sizeof *lesson->cases);
  lesson->case_count--;
  return OX_OK;
}
