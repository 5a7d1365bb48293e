/* What must hold for any text whatever: shared by the mutations and the fuzz target. Returns the
 * reason why it does not, or NULL. */
#ifndef HOSTILE_H
#define HOSTILE_H

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "oxbow/clearance.h"

static inline const char *ranges_wrong(const char *text, const ox_clearance *c) {
  size_t length = strlen(text), end = 0;
  for (size_t i = 0; i < c->item_count; i++) {
    ox_span words = c->items[i].words;
    if (words.length == 0 || words.at < end || words.at + words.length > length)
      return "the words of the items overlap or lie outside of the text";
    end = words.at + words.length;
    if (!memchr(c->items[i].name, '\0', sizeof c->items[i].name)) return "a name without end";
    if (!isfinite(c->items[i].value) || !isfinite(c->items[i].value2)) return "not finite";
  }
  end = 0;
  for (size_t i = 0; i < c->ignored_count; i++) {
    ox_span words = c->ignored[i];
    if (words.length == 0 || words.at < end || words.at + words.length > length)
      return "the ignored words overlap or lie outside of the text";
    end = words.at + words.length;
  }
  return NULL;
}

static inline const char *questions_wrong(ox_status status, const ox_clearance *c) {
  if ((status == OX_ADVISORY) != (c->question_count > 0)) return "status against questions";
  for (size_t i = 0; i < c->question_count; i++) {
    const ox_question *q = &c->questions[i];
    if (!q->text[0] || !memchr(q->text, '\0', sizeof q->text)) return "a question without words";
    if (q->first >= (int)c->item_count || q->second >= (int)c->item_count)
      return "a question about an item that is not there";
  }
  return NULL;
}

/* What was understood can be said and is understood again. */
static inline const char *saying_wrong(const ox_case *c) {
  for (int i = 0; i < 4; i++) {
    ox_say_options o = {.wording = i & 1 ? OX_WORDING_ICAO : OX_WORDING_US, .spoken = i >= 2};
    char *words = ox_say_clearance(c, &o);
    ox_clearance again;
    ox_status status = words ? ox_clearance_read(words, c, NULL, &again) : OX_ERROR;
    bool same_fix = status != OX_ERROR && strcmp(again.result.hold.fix, c->hold.fix) == 0;
    free(words);
    if (status == OX_ERROR) return "words of our own are refused";
    if (!o.spoken && c->hold.fix[0] && !same_fix) return "the fix of our own words is another";
  }
  return NULL;
}

static inline const char *hostile_wrong(const char *text, const ox_clearance_options *o) {
  static ox_clearance c;
  ox_status status = ox_clearance_read(text, NULL, o, &c);
  if (strlen(text) > OX_CLEARANCE_BYTES_MAX)
    return status == OX_ERROR ? NULL : "too long and not refused";
  if (status == OX_ERROR) return "refused";
  if (ox_case_check(&c.result, NULL, 0) != 0) return "the case has faults";
  const char *why = ranges_wrong(text, &c);
  if (!why) why = questions_wrong(status, &c);
  return why ? why : saying_wrong(&c.result);
}

#endif
