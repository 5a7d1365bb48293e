/* Latitude and longitude among the words: "4230N 07348W", "N42 30 W073 48", "42 degrees 30 minutes
 * north 073 degrees 48 minutes west". They are the name of a fix, whatever their letters mean in
 * other places. */
#include <stdio.h>
#include <string.h>

#include "oxbow/place.h"
#include "tokens.h"

enum { MOST_TOKENS = 24, SCRATCH = 96 };

typedef struct {
  char text[SCRATCH];
  size_t length;
  bool north_south, east_west; /* a letter or word of each was there */
} figures;

static bool put(figures *f, const char *bytes, size_t length) {
  if (f->length + length + 2 > sizeof f->text) return false;
  memcpy(f->text + f->length, bytes, length);
  f->length += length;
  f->text[f->length++] = ' ';
  f->text[f->length] = '\0';
  return true;
}

static bool is_digit(char c) { return c >= '0' && c <= '9'; }

/* "4230N", "N42": figures and one letter of the compass, before or behind. */
static bool put_code(figures *f, const char *bytes, size_t length) {
  size_t letters = 0;
  for (size_t i = 0; i < length; i++) {
    if (is_digit(bytes[i])) continue;
    char c = bytes[i];
    if (!strchr("NSEWnsew", c) || ++letters > 2) return false;
    if (strchr("NSns", c))
      f->north_south = true;
    else
      f->east_west = true;
  }
  return letters > 0 && letters < length && put(f, bytes, length);
}

static bool put_direction(figures *f, const clr_token *token) {
  static const char letters[] = "NESW";
  int quarter = (int)(token->value / 90);
  if (token->value != 90 * quarter || quarter > 3) return false;
  if (quarter % 2 == 0)
    f->north_south = true;
  else
    f->east_west = true;
  return put(f, &letters[quarter], 1);
}

/* One more of the tokens, or one more number of them: how many were taken, 0 where it is no part of
 * a place. */
static size_t put_one(const clr_tokens *t, size_t i, figures *f) {
  const clr_token *token = &t->tokens[i];
  clr_token number;
  switch (token->kind) {
  case T_OTHER:
  case T_CODE: return put_code(f, t->text + token->at, token->length);
  case T_DIR:
  case T_DIR1: return put_direction(f, token);
  case T_DEGREES:
  case T_MINUTE:
  case T_SECOND: return f->length > 0;
  case T_FIGURE: return put(f, t->text + token->at, token->length);
  default: break;
  }
  size_t taken = clr_gather_number(t, i, &number);
  char written[32];
  int length = taken ? snprintf(written, sizeof written, "%.*g", 10, number.value) : 0;
  return length > 0 && put(f, written, (size_t)length) ? taken : 0;
}

size_t clr_gather_latlon(const clr_tokens *t, size_t i, clr_token *out) {
  figures f = {.length = 0};
  char remark[OX_REMARK_BYTES];
  ox_latlon place;
  size_t best = 0;
  for (size_t j = i; j < t->count && j < i + MOST_TOKENS;) {
    size_t taken = put_one(t, j, &f);
    if (taken == 0) break;
    j += taken;
    if (f.north_south && f.east_west &&
        ox_latlon_parse(f.text, &place, remark, sizeof remark) != OX_ERROR)
      best = j;
  }
  if (best == 0) return 0;
  const clr_token *first = &t->tokens[i], *last = &t->tokens[best - 1];
  *out = (clr_token){.at = first->at, .length = last->at + last->length - first->at,
                     .kind = T_PLACE, .breaks = first->breaks};
  return best - i;
}

bool clr_place_name(const char *bytes, size_t length, char name[OX_FIX_NAME_BYTES]) {
  clr_tokens t;
  figures f = {.length = 0};
  char remark[OX_REMARK_BYTES];
  ox_latlon place;
  clr_lex(&t, bytes, length);
  for (size_t i = 0, taken; i < t.count; i += taken)
    if ((taken = put_one(&t, i, &f)) == 0) return false;
  return ox_latlon_parse(f.text, &place, remark, sizeof remark) != OX_ERROR &&
         ox_latlon_print(place, OX_FORM_DEG_MIN, name, OX_FIX_NAME_BYTES) == OX_OK;
}
