/* Fitting one phrase to the tokens at one place, and finding where a name ends. */
#include <string.h>

#include "phrases.h"

static bool in_set(int set, clr_kind kind) {
  switch (set) {
  case E_BOUND: return kind == T_INBOUND || kind == T_OUTBOUND;
  case E_CLOCK: return kind == T_FIGURE || kind == T_CLOCK;
  case E_EIGHTH: return kind == T_DIR || kind == T_DIR1;
  case E_FROM_OF: return kind == T_FROM || kind == T_OF;
  case E_GO: return kind == T_CLEARED || kind == T_PROCEED || kind == T_DIRECT;
  case E_HANDED: return kind == T_TURN || kind == T_HAND || kind == T_PATTERN;
  case E_LENGTH: return kind == T_MINUTE || kind == T_SECOND || kind == T_MILE;
  case E_SIDE: return kind == T_LEFT || kind == T_RIGHT;
  case E_SPAN: return kind == T_MINUTE || kind == T_HOUR;
  case E_TIME_OF: return kind == T_TIME || kind == T_LENGTH;
  case E_TYPE: return kind == T_STATION || kind == T_POINT_TYPE;
  case E_ZONE: return kind == T_UTC || kind == T_LOCAL;
  default: return false;
  }
}

static bool fits(int element, clr_kind kind) {
  return element < E_NAME ? (clr_kind)element == kind : in_set(element, kind);
}

/* "Sandy Point VOR": a point is a decimal one only beside figures. */
static bool is_name_word(const clr_token *token) {
  return token->kind == T_OTHER || token->kind == T_CODE || token->kind == T_POINT;
}

static bool starts_upper(const clr_tokens *t, const clr_token *token) {
  unsigned char c = (unsigned char)t->text[token->at];
  return (c >= 'A' && c <= 'Z') || c >= 0x80;
}

enum { NAME_WORDS_MAX = 4 };

/* A name without a facility ends where a point is said. */
static size_t words_before_point(const clr_tokens *t, size_t i, size_t words) {
  size_t before = 0;
  while (before < words && t->tokens[i + before].kind != T_POINT) before++;
  return before > 1 ? 1 : before;
}

/* How many words without a facility make the name. More than one only where a facility follows
 * ("Lake Henry VOR"), or where capitals tell names from other words and they all have one. */
static size_t name_words(const clr_tokens *t, size_t i) {
  size_t words = 0, capitals = 0;
  bool telling = t->has_upper && t->has_lower, point = false;
  if (i < t->count && t->tokens[i].kind == T_PLACE) return 1;
  while (words < NAME_WORDS_MAX && i + words < t->count &&
         (words == 0 || !t->tokens[i + words].breaks) && is_name_word(&t->tokens[i + words])) {
    if (telling && capitals == words && starts_upper(t, &t->tokens[i + words])) capitals++;
    point = point || t->tokens[i + words].kind == T_POINT;
    words++;
  }
  bool facility = i + words < t->count && !t->tokens[i + words].breaks &&
                  in_set(E_TYPE, t->tokens[i + words].kind);
  if (point && (!facility || words == 1)) return words_before_point(t, i, words);
  if (words <= 1 || facility) return words;
  return capitals > 0 ? capitals : 1;
}

static ox_facility facility_of(clr_kind kind) {
  return kind == T_STATION ? OX_FACILITY_STATION : OX_FACILITY_POINT;
}

static bool is_type_at(const clr_tokens *t, size_t i, bool may_break) {
  return i < t->count && (may_break || !t->tokens[i].breaks) && in_set(E_TYPE, t->tokens[i].kind);
}

/* A word of the lexicon can be the name of a fix too ("MAX"): after "of", and after "to" or "at"
 * where capitals tell names, it is one if the sentence goes on behind it as behind a fix. Numbers
 * and small words are not. */
static bool is_name_by_place(const clr_tokens *t, size_t i) {
  const clr_token *token = &t->tokens[i];
  clr_kind before = i > 0 ? t->tokens[i - 1].kind : T_END;
  bool telling = t->has_upper && t->has_lower && starts_upper(t, token);
  bool place = before == T_OF || (telling && (before == T_TO || before == T_AT));
  if (!place || token->breaks || token->kind <= T_LAST_JOINING || token->kind == T_PUBLISHED)
    return false;
  if (i + 1 == t->count) return true;
  return t->tokens[i + 1].breaks || t->tokens[i + 1].kind == T_ON;
}

/* "waypoint ALDER", "NDB WOODY": the facility first. How many words of a name follow it. */
static size_t named_words(const clr_tokens *t, size_t i) {
  if (!is_type_at(t, i, true) || i + 1 >= t->count || t->tokens[i + 1].breaks) return 0;
  const clr_token *name = &t->tokens[i + 1];
  bool telling = t->has_upper && t->has_lower;
  if (name->kind != T_OTHER || (telling && !starts_upper(t, name))) return 0;
  return name_words(t, i + 1);
}

/* Tokens of the name at i, 0 for none. */
static size_t take_name(const clr_tokens *t, size_t i, clr_catch *caught) {
  size_t words = 0;
  if (i >= t->count) return 0;
  size_t named = named_words(t, i);
  if (named > 0) {
    const clr_token *from = &t->tokens[i + 1], *to = &t->tokens[i + named];
    caught->quoted = false;
    caught->facility = facility_of(t->tokens[i].kind);
    caught->name = (ox_span){from->at, to->at + to->length - from->at};
    return named + 1;
  }
  caught->quoted = t->tokens[i].kind == T_QUOTED;
  if (caught->quoted)
    words = 1;
  else if (!is_type_at(t, i, true))
    words = name_words(t, i);
  if (words == 0 && !is_type_at(t, i, true) && is_name_by_place(t, i)) words = 1;
  caught->facility = OX_FACILITY_UNSAID;
  size_t end = i + words;
  /* "VOR DME" and "NDB fix" are facilities of two words; the first tells. */
  while (!caught->quoted && is_type_at(t, end, words == 0 && end == i)) {
    if (caught->facility == OX_FACILITY_UNSAID)
      caught->facility = facility_of(t->tokens[end].kind);
    end++;
  }
  if (end == i) return 0;
  const clr_token *first = &t->tokens[i], *last = &t->tokens[end - 1];
  caught->name = (ox_span){first->at, last->at + last->length - first->at};
  return end - i;
}

static bool ends_tail(clr_kind kind) {
  return kind == T_HOLD || kind == T_EXPECT || kind == T_EFC || kind == T_MAINTAIN ||
         kind == T_CLIMB;
}

static size_t take_tail(const clr_tokens *t, size_t i, clr_catch *caught) {
  size_t end = i;
  while (end < t->count && !t->tokens[end].breaks && !ends_tail(t->tokens[end].kind))
    end++;
  if (end == i) return 0;
  const clr_token *last = &t->tokens[end - 1];
  caught->name = (ox_span){t->tokens[i].at, last->at + last->length - t->tokens[i].at};
  return end - i;
}

static void note(clr_catch *caught, const clr_token *token) {
  caught->seen[caught->seen_count++] = token->kind;
  if (in_set(E_CLOCK, token->kind) && caught->figure_count < 3)
    caught->figures[caught->figure_count++] = *token;
  if (in_set(E_EIGHTH, token->kind)) caught->eighth_deg = token->value;
  /* An airway's letter travels in the place of the direction, which no airway has. */
  if (token->kind == T_AIRWAY_LETTER) caught->eighth_deg = token->value;
  if (token->kind == T_CODE) caught->name = (ox_span){token->at, token->length};
}

bool clr_saw(const clr_catch *caught, clr_kind kind) {
  for (size_t i = 0; i < caught->seen_count; i++)
    if (caught->seen[i] == kind) return true;
  return false;
}

bool clr_try(const clr_tokens *t, size_t i, const clr_phrase *phrase, clr_catch *caught) {
  caught->phrase = phrase;
  caught->figure_count = 0;
  caught->seen_count = 0;
  caught->name = (ox_span){0, 0};
  caught->quoted = false;
  caught->facility = OX_FACILITY_UNSAID;
  caught->eighth_deg = 0;
  size_t j = i;
  for (const uint16_t *e = phrase->elements; *e != T_END; e++) {
    int element = *e & E_KIND;
    bool reachable = j < t->count && (j == i || !t->tokens[j].breaks || (*e & E_CROSSES));
    size_t taken = 0;
    if (reachable && element == E_NAME) {
      taken = take_name(t, j, caught);
    } else if (reachable && element == E_TAIL) {
      taken = take_tail(t, j, caught);
    } else if (reachable && fits(element, t->tokens[j].kind)) {
      note(caught, &t->tokens[j]);
      taken = 1;
    }
    if (taken == 0 && !(*e & E_OPTIONAL)) return false;
    j += taken;
  }
  caught->tokens = j - i;
  return caught->tokens > 0;
}
