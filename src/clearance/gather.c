/* The second pass: parts become wholes. "two four zero" is 240, "one zero thousand" 10 000, "one
 * and a half" 1.5, "south west" a point of the compass; "R" is a radial beside a figure and
 * otherwise the right hand. */
#include <math.h>

#include "tokens.h"

typedef struct {
  double total, part; /* what the multipliers have closed, and what is open */
  int figures;
  bool any;     /* something was read */
  bool written; /* figures of more than one digit: only multipliers may follow */
} number;

enum { MOST_FIGURES = 9 };

static bool next_is(const clr_tokens *t, size_t i, clr_kind kind) {
  return i < t->count && t->tokens[i].kind == kind && !t->tokens[i].breaks;
}

static bool is_number_word(const clr_token *token) {
  return token->kind == T_DIGIT || token->kind == T_TEEN || token->kind == T_TENS;
}

static bool append(number *n, double value, int figures) {
  if (n->written || n->figures + figures > MOST_FIGURES) return false;
  n->part = n->part * (figures == 1 ? 10 : 100) + value;
  n->figures += figures;
  n->any = true;
  return true;
}

static bool multiply(number *n, double by) {
  if (!n->any) return false;
  n->total = by > 100 ? (n->total + n->part) * by : n->total + n->part * by;
  n->part = 0;
  n->written = false;
  return n->total <= 1e9;
}

/* "5k" is five thousand, "200k" is a speed: that K is left for the knots. */
static bool is_thousands(const number *n) {
  return n->any && n->total == 0 && n->part > 0 && n->part < 100;
}

/* One more token into the number: how many tokens were taken, 0 when the number has ended. */
static size_t take_one(const clr_tokens *t, size_t i, number *n) {
  const clr_token *token = &t->tokens[i];
  switch (token->kind) {
  case T_FIGURE:
    if (!n->any && (token->figures > 1 || token->value != floor(token->value))) {
      *n = (number){0, token->value, token->figures, true, true};
      return 1;
    }
    return token->figures == 1 && token->value == floor(token->value) &&
           append(n, token->value, 1);
  case T_DIGIT: return append(n, token->value, 1);
  case T_TEEN: return append(n, token->value, 2);
  case T_TENS: {
    bool unit = next_is(t, i + 1, T_DIGIT) && t->tokens[i + 1].value > 0;
    double value = token->value + (unit ? t->tokens[i + 1].value : 0);
    return append(n, value, 2) ? (unit ? 2 : 1) : 0;
  }
  case T_HUNDRED: return multiply(n, 100);
  case T_THOUSAND: return multiply(n, 1000);
  case T_K: return is_thousands(n) && multiply(n, 1000);
  case T_AND: /* "two hundred and ten" */
    return i > 0 && i + 1 < t->count && is_number_word(&t->tokens[i + 1]) &&
           !t->tokens[i + 1].breaks &&
           (t->tokens[i - 1].kind == T_HUNDRED || t->tokens[i - 1].kind == T_THOUSAND);
  default: return 0;
  }
}

/* "point five": the number of tokens. */
static size_t take_decimals(const clr_tokens *t, size_t i, number *n) {
  if (!n->any || !next_is(t, i, T_POINT)) return 0;
  size_t from = i++;
  double scale = 1, all = n->part;
  for (; next_is(t, i, T_DIGIT) && scale < 1e6; i++, scale *= 10)
    all = all * 10 + t->tokens[i].value;
  if (i == from + 1) return 0;
  n->part = all / scale;
  return i - from;
}

static bool is_part(const clr_tokens *t, size_t i) {
  return next_is(t, i, T_HALF) || next_is(t, i, T_FRACTION);
}

/* "three quarters of" before a minute or a mile: the number of tokens. A quarter without a unit is
 * one of the clock. */
static size_t quarters_at(const clr_tokens *t, size_t i) {
  size_t unit = i + 2 + next_is(t, i + 2, T_OF);
  if (i >= t->count || t->tokens[i].kind != T_DIGIT || !next_is(t, i + 1, T_QUARTER)) return 0;
  if (t->tokens[i].value != 1 && t->tokens[i].value != 3) return 0;
  return next_is(t, unit, T_MINUTE) || next_is(t, unit, T_MILE) ? unit - i : 0;
}

/* "and a half", "and one half", "1/2", "½", "and three quarters" after a number or alone: the
 * number of tokens. */
static size_t take_half(const clr_tokens *t, size_t i, number *n) {
  size_t from = i;
  if (n->any && next_is(t, i, T_AND)) i++;
  size_t quarters = n->any && !next_is(t, i, T_DIGIT) ? 0 : quarters_at(t, i);
  if (quarters) {
    n->part += t->tokens[i].value / 4;
    n->any = true;
    return i + quarters - from;
  }
  if (next_is(t, i, T_DIGIT) && t->tokens[i].value == 1 && is_part(t, i + 1)) i++;
  bool first = i < t->count && i == from && !n->any;
  bool part = first ? t->tokens[i].kind == T_HALF || t->tokens[i].kind == T_FRACTION
                    : is_part(t, i);
  if (!part) return 0;
  n->part += t->tokens[i].kind == T_HALF ? 0.5 : t->tokens[i].value;
  n->any = true;
  return i + 1 - from;
}

/* "one half" is a half, not one and a half. */
static bool is_one_half(const clr_tokens *t, size_t i) {
  return t->tokens[i].kind == T_DIGIT && t->tokens[i].value == 1 && next_is(t, i + 1, T_HALF);
}

size_t clr_gather_number(const clr_tokens *t, size_t i, clr_token *out) {
  number n = {0};
  size_t j = i;
  if (!is_one_half(t, i)) {
    while (j < t->count && (j == i || !t->tokens[j].breaks)) {
      /* The last figure of "one one half" belongs to the half, "three" to its quarters. */
      if ((n.any && is_one_half(t, j)) || quarters_at(t, j)) break;
      size_t taken = take_one(t, j, &n);
      if (!taken) break;
      j += taken;
    }
  } else {
    j++;
  }
  size_t decimals = take_decimals(t, j, &n);
  j += decimals;
  if (!decimals) j += take_half(t, j, &n);
  if (!n.any) return 0;
  double value = n.total + n.part;
  int figures = n.figures;
  if (n.total > 0) /* "eighteen hundred": as many as it has when written */
    figures = (int)floor(log10(value)) + 1;
  const clr_token *first = &t->tokens[i], *last = &t->tokens[j - 1];
  *out = (clr_token){.at = first->at, .length = last->at + last->length - first->at,
                     .value = value, .kind = T_FIGURE, .figures = figures,
                     .breaks = first->breaks};
  return j - i;
}

static bool is_direction(const clr_token *token) {
  return token->kind == T_DIR || token->kind == T_DIR1;
}

/* "south west", "north-east": north or south, then east or west. */
static size_t gather_direction(const clr_tokens *t, size_t i, clr_token *out) {
  const clr_token *a = &t->tokens[i];
  if (!is_direction(a) || i + 1 >= t->count) return 0;
  const clr_token *b = &t->tokens[i + 1];
  if (a->kind != b->kind || b->breaks) return 0;
  bool along = a->value == 0 || a->value == 180, across = b->value == 90 || b->value == 270;
  if (!along || !across) return 0;
  *out = *a;
  out->kind = T_DIR;
  out->length = b->at + b->length - a->at;
  out->value = a->value == 180 ? (b->value == 90 ? 135 : 225) : (b->value == 90 ? 45 : 315);
  return 2;
}

static size_t gather_level(const clr_tokens *t, size_t i, clr_token *out) {
  if (t->tokens[i].kind != T_FLIGHT || !next_is(t, i + 1, T_LEVEL)) return 0;
  *out = t->tokens[i];
  out->kind = T_FL;
  out->length = t->tokens[i + 1].at + t->tokens[i + 1].length - out->at;
  return 2;
}

static bool starts_number(const clr_tokens *t, size_t i) {
  return i < t->count && !t->tokens[i].breaks &&
         (t->tokens[i].kind == T_FIGURE || is_number_word(&t->tokens[i]));
}

static bool next_is_direction(const clr_tokens *t, size_t i) {
  return i < t->count && !t->tokens[i].breaks && is_direction(&t->tokens[i]);
}

/* The T of "L/T" and "R T": a turn behind the hand, where no number makes an airway of it. */
static bool is_turn(const clr_tokens *t, size_t i, const clr_token *before) {
  bool hand = before && (before->kind == T_LEFT || before->kind == T_RIGHT);
  return hand && !t->tokens[i].breaks && t->tokens[i].length == 1 && t->tokens[i].value == 'T' &&
         !starts_number(t, i + 1);
}

/* Letters whose meaning their neighbours decide. `before` is the token gathered before it. */
static clr_kind settle(const clr_tokens *t, size_t i, const clr_token *before) {
  const clr_token *token = &t->tokens[i];
  bool figure_before = before && before->kind == T_FIGURE && !token->breaks;
  switch (token->kind) {
  case T_R:
    if (next_is(t, i + 1, T_TURN) || next_is(t, i + 1, T_HAND) || next_is(t, i + 1, T_PATTERN))
      return T_RIGHT;
    if (starts_number(t, i + 1)) return T_RADIAL;
    return figure_before && before->figures == 3 && before->value <= 360 ? T_RADIAL : T_RIGHT;
  case T_M: return starts_number(t, i + 1) || next_is(t, i + 1, T_FL) ? T_MAINTAIN : T_OTHER;
  case T_D: return starts_number(t, i + 1) ? T_DME : T_OTHER;
  case T_H: return next_is_direction(t, i + 1) ? T_HOLD : T_OTHER;
  case T_AIRWAY_LETTER: return is_turn(t, i, before) ? T_TURN : T_AIRWAY_LETTER;
  case T_K: return figure_before ? T_KNOTS : T_OTHER;
  default: return token->kind;
  }
}

static void mark_ignored(clr_tokens *t, const clr_token *token) {
  for (size_t i = token->at; i < token->at + token->length; i++)
    t->mark[i] = CLR_MARK_IGNORED;
}

/* Articles and filler go first: nothing that follows has to step over them. */
static void drop_filler(clr_tokens *t) {
  size_t kept = 0;
  bool breaks = false;
  for (size_t i = 0; i < t->count; i++) {
    clr_token token = t->tokens[i];
    token.breaks = token.breaks || breaks;
    bool drop = token.kind == T_ARTICLE || token.kind == T_FILLER;
    if (token.kind == T_FILLER) mark_ignored(t, &token);
    breaks = drop && token.breaks;
    if (!drop) t->tokens[kept++] = token;
  }
  t->count = kept;
}

/* Whether the last of the tokens gathered so far announces a time: "EFC at", "until". */
static bool leads_to_time(const clr_token *gathered, size_t count) {
  if (count > 0 && (gathered[count - 1].kind == T_AT || gathered[count - 1].kind == T_NOW)) count--;
  if (count == 0) return false;
  clr_kind kind = gathered[count - 1].kind;
  return kind == T_EFC || kind == T_UNTIL || kind == T_TIME || kind == T_CLEARANCE;
}

void clr_gather(clr_tokens *t) {
  drop_filler(t);
  size_t kept = 0;
  for (size_t i = 0; i < t->count;) {
    clr_token whole;
    size_t taken = clr_gather_latlon(t, i, &whole);
    if (!taken) taken = clr_gather_clock(t, i, leads_to_time(t->tokens, kept), &whole);
    if (!taken) taken = clr_gather_number(t, i, &whole);
    if (!taken) taken = gather_direction(t, i, &whole);
    if (!taken) taken = gather_level(t, i, &whole);
    if (!taken) {
      whole = t->tokens[i];
      whole.kind = settle(t, i, kept > 0 ? &t->tokens[kept - 1] : NULL);
      taken = 1;
    }
    i += taken;
    t->tokens[kept++] = whole; /* never past i: a whole takes the place of its parts */
  }
  t->count = kept;
}
