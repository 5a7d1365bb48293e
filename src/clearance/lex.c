/* The first pass: bytes become words and numbers. Figures may carry a decimal point, commas
 * between thousands, a colon in a time, a half; letters glued to them ("1825z", "R240") are cut
 * off where they are known, and otherwise make a name. Bytes above 127 count as letters, so that
 * names in UTF-8 stay whole. */
#include <string.h>

#include "tokens.h"

static bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

static bool is_word_byte(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '\'' ||
         (unsigned char)c >= 0x80;
}

static char at(const clr_tokens *t, size_t p) {
  return p < t->length ? t->text[p] : '\0';
}

static bool digits_follow(const clr_tokens *t, size_t p, size_t count) {
  for (size_t i = 0; i < count; i++)
    if (!is_digit(at(t, p + i))) return false;
  return !is_digit(at(t, p + count));
}

/* Symbols of several bytes. */
typedef struct {
  const char *bytes;
  clr_kind kind; /* T_END: white space, T_POINT: punctuation */
} symbol;

static const symbol symbols[] = {
    {"\u00a0", T_END}, {"\u00b0", T_DEGREES}, {"\u00ba", T_DEGREES},  {"\u00bd", T_HALF},
    {"\u2010", T_END}, {"\u2011", T_END},     {"\u2013", T_TO},       {"\u2014", T_POINT},
    {"\u2212", T_MINUS}, {"\u201c", T_POINT}, {"\u201d", T_POINT},    {"\u202f", T_END},
};

static const symbol *symbol_at(const clr_tokens *t, size_t p) {
  if ((unsigned char)at(t, p) < 0x80) return NULL;
  for (size_t i = 0; i < sizeof symbols / sizeof *symbols; i++) {
    size_t n = strlen(symbols[i].bytes);
    if (p + n <= t->length && memcmp(t->text + p, symbols[i].bytes, n) == 0) return &symbols[i];
  }
  return NULL;
}

static clr_token *add(clr_tokens *t, clr_kind kind, size_t from, size_t to, bool *breaks) {
  clr_token *token = &t->tokens[t->count++];
  *token = (clr_token){.at = from, .length = to - from, .kind = kind, .breaks = *breaks};
  *breaks = false;
  return token;
}

/* Reads digits; more than fifteen no longer change the value, which is out of every range. */
static size_t read_digits(const clr_tokens *t, size_t p, double *value, int *figures) {
  for (; is_digit(at(t, p)); p++) {
    if (*figures < 15) *value = *value * 10 + (at(t, p) - '0');
    ++*figures;
  }
  return p;
}

/* One division at the end gives the double nearest to what is written: 51.79 is 5179 / 100. */
static size_t read_decimals(const clr_tokens *t, size_t p, double *value) {
  double scale = 1;
  for (; is_digit(at(t, p)); p++) {
    if (scale >= 1e6) continue;
    *value = *value * 10 + (at(t, p) - '0');
    scale *= 10;
  }
  *value /= scale;
  return p;
}

/* "1/2" of one figure over another; 0 when it is none. */
static size_t lex_fraction(clr_tokens *t, size_t p, bool *breaks) {
  char above = at(t, p), below = at(t, p + 2);
  if (!is_digit(above) || at(t, p + 1) != '/' || !digits_follow(t, p + 2, 1)) return 0;
  if (above == '0' || below <= above) return 0;
  add(t, T_FRACTION, p, p + 3, breaks)->value = (double)(above - '0') / (below - '0');
  return p + 3;
}

static size_t lex_number(clr_tokens *t, size_t p, bool *breaks) {
  size_t from = p;
  double value = 0;
  int figures = 0;
  p = read_digits(t, p, &value, &figures);
  if (figures <= 2 && at(t, p) == ':' && digits_follow(t, p + 1, 2)) {
    p = read_digits(t, p + 1, &value, &figures);
    figures = 4;
  } else {
    while (figures <= 9 && (p - from) >= 1 && (p > from + 3 || figures <= 3) && at(t, p) == ',' &&
           digits_follow(t, p + 1, 3))
      p = read_digits(t, p + 1, &value, &figures);
    /* A comma for the decimal point only where nothing else makes sense: "1,5". */
    bool comma = figures == 1 && at(t, p) == ',' && digits_follow(t, p + 1, 1);
    if ((at(t, p) == '.' || comma) && is_digit(at(t, p + 1)))
      p = read_decimals(t, p + 1, &value);
  }
  clr_token *number = add(t, T_FIGURE, from, p, breaks);
  number->value = value;
  number->figures = figures;
  return p;
}

static size_t word_end(const clr_tokens *t, size_t p) {
  while (p < t->length && is_word_byte(t->text[p]) && !symbol_at(t, p))
    p++;
  return p;
}

/* Words that are understood when they are glued to the end of a number. */
static bool is_unit(clr_kind kind) {
  return kind == T_UTC || kind == T_MILE || kind == T_KNOTS || kind == T_MINUTE || kind == T_R ||
         kind == T_SECOND || kind == T_DEGREES || kind == T_K || kind == T_DME || kind == T_FEET ||
         kind == T_HOUR || kind == T_RADIAL;
}

/* And those before one. */
static bool is_prefix(clr_kind kind) {
  return kind == T_FL || kind == T_R || kind == T_M || kind == T_D || kind == T_EFC ||
         kind == T_MAX || kind == T_DME || kind == T_ALTITUDE || kind == T_COURSE ||
         kind == T_RADIAL || kind == T_QDM || kind == T_QDR || kind == T_AIRWAY_LETTER;
}

/* Where capitals tell names from other words, and it has none. */
static bool is_no_name(const clr_tokens *t, size_t from, size_t to) {
  if (!t->has_upper || !t->has_lower) return false;
  for (size_t i = from; i < to; i++)
    if (t->text[i] < 'a' || t->text[i] > 'z') return false;
  return true;
}

static void add_word(clr_tokens *t, size_t from, size_t to, bool *breaks) {
  const clr_word *word = clr_lookup(t->text + from, to - from);
  if (!word && is_no_name(t, from, to)) word = clr_lookup_misspelt(t->text + from, to - from);
  clr_token *token = add(t, word ? word->kind : T_OTHER, from, to, breaks);
  token->value = word ? word->value : 0;
}

/* A run that begins with a figure: a number, a number with its unit, or a name. */
static size_t lex_figure_run(clr_tokens *t, size_t p, size_t end, bool *breaks) {
  size_t split = p;
  while (split < end && is_digit(t->text[split]))
    split++;
  if (split == end) {
    size_t past = lex_fraction(t, p, breaks);
    return past ? past : lex_number(t, p, breaks);
  }
  const clr_word *unit = clr_lookup(t->text + split, end - split);
  bool latitude = t->text[split] == 'S' && (split - p == 4 || split - p == 6); /* "3355S" */
  bool seconds = end - split == 1 && (t->text[split] == 's' || t->text[split] == 'S') && !latitude;
  if (!seconds && !(unit && is_unit(unit->kind))) {
    add(t, T_OTHER, p, end, breaks);
    return end;
  }
  lex_number(t, p, breaks);
  add_word(t, split, end, breaks);
  if (seconds) t->tokens[t->count - 1].kind = T_SECOND;
  return end;
}

/* A run that begins with a letter: a word, a letter code with figures, or a name. */
static size_t lex_letter_run(clr_tokens *t, size_t p, size_t end, bool *breaks) {
  size_t split = end;
  while (split > p && is_digit(t->text[split - 1]))
    split--;
  size_t letters = split - p, figures = end - split;
  if (figures == 0 || letters > 6) {
    add_word(t, p, end, breaks);
    return end;
  }
  const clr_word *prefix = clr_lookup(t->text + p, letters);
  if (prefix && is_prefix(prefix->kind)) {
    add_word(t, p, split, breaks);
    return lex_number(t, split, breaks);
  }
  add(t, letters <= 2 && figures <= 3 ? T_CODE : T_OTHER, p, end, breaks);
  return end;
}

/* A name in quotation marks, where a doubled mark stands for itself; an open one is punctuation. */
static size_t lex_quoted(clr_tokens *t, size_t p, bool *breaks) {
  size_t end = p + 1;
  while (end < t->length && (t->text[end] != '"' || at(t, end + 1) == '"'))
    end += t->text[end] == '"' ? 2 : 1;
  if (end >= t->length || end == p + 1) {
    *breaks = true;
    return p + 1;
  }
  add(t, T_QUOTED, p, end + 1, breaks);
  return end + 1;
}

static size_t lex_symbol(clr_tokens *t, size_t p, const symbol *s, bool *breaks) {
  size_t end = p + strlen(s->bytes);
  bool between = p > 0 && is_digit(t->text[p - 1]) && is_digit(at(t, end));
  if (s->kind == T_TO && !between)
    *breaks = *breaks || at(t, p + 3) == ' ';
  else if (s->kind == T_POINT)
    *breaks = true;
  else if (s->kind != T_END)
    add(t, s->kind, p, end, breaks)->value = s->kind == T_HALF ? 0.5 : 0;
  return end;
}

static bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Whether a single letter stands to the left of p, and a letter to the right. */
static bool joins_letters(const clr_tokens *t, size_t p) {
  bool single = p > 0 && is_letter(t->text[p - 1]) && (p == 1 || !is_word_byte(t->text[p - 2]));
  return single && is_letter(at(t, p + 1));
}

static size_t lex_punctuation(clr_tokens *t, size_t p, bool *breaks) {
  char c = t->text[p];
  if (c == '@') {
    add(t, T_AT, p, p + 1, breaks);
  } else if (c == '-') {
    bool between = p > 0 && is_digit(t->text[p - 1]) && is_digit(at(t, p + 1));
    if (between && at(t, p + 2) == '/') between = false; /* "1-1/2" */
    if (between) add(t, T_TO, p, p + 1, breaks);
    if (at(t, p + 1) == ' ' && p > 0 && t->text[p - 1] == ' ') *breaks = true;
  } else if (c == '/' && joins_letters(t, p)) {
    return p + 1; /* "H/W", "L/T": shorthand of two letters is one phrase */
  } else if (c != ' ' && c != '\t' && c != '\r' && c != ':' && c != '=') {
    *breaks = true;
  }
  return p + 1;
}

static void look_at_letters(clr_tokens *t) {
  for (size_t i = 0; i < t->length; i++) {
    if (t->text[i] >= 'a' && t->text[i] <= 'z') t->has_lower = true;
    if (t->text[i] >= 'A' && t->text[i] <= 'Z') t->has_upper = true;
  }
}

void clr_lex(clr_tokens *t, const char *text, size_t length) {
  t->text = text;
  t->length = length;
  t->count = 0;
  t->has_upper = t->has_lower = false;
  memset(t->mark, CLR_MARK_NONE, length);
  look_at_letters(t);
  bool breaks = false;
  for (size_t p = 0; p < length;) {
    const symbol *s = symbol_at(t, p);
    if (s) {
      p = lex_symbol(t, p, s, &breaks);
    } else if (text[p] == '"') {
      p = lex_quoted(t, p, &breaks);
    } else if (is_word_byte(text[p])) {
      size_t end = word_end(t, p);
      p = is_digit(text[p]) ? lex_figure_run(t, p, end, &breaks)
                            : lex_letter_run(t, p, end, &breaks);
    } else {
      p = lex_punctuation(t, p, &breaks);
    }
  }
}
