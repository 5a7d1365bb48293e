#include "words_check.h"

#include <ctype.h>
#include <locale.h>

static bool is_letter(char c) {
  return isalpha((unsigned char)c) != 0;
}
static bool is_figure(char c) {
  return c >= '0' && c <= '9';
}

/* A whole word, whatever its case. */
static bool has_word(const char *text, const char *word) {
  size_t length = strlen(word);
  for (const char *at = text; *at; at++) {
    size_t i = 0;
    while (i < length && tolower((unsigned char)at[i]) == word[i])
      i++;
    if (i == length && (at == text || !is_letter(at[-1])) && !is_letter(at[i])) return true;
  }
  return false;
}

void assert_sound(const char *text, const char *what) {
  static const char *const bad[] = {"nan", "inf", "unknown", "null"};
  if (!text || !*text) fail_msg("%s: there is no text", what);
  for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
    if (has_word(text, bad[i])) fail_msg("%s: \"%s\" in: %s", what, bad[i], text);
  if (strstr(text, "---")) fail_msg("%s: no bearing in: %s", what, text);
  for (const char *at = text; *at; at++) {
    if ((unsigned char)*at < 0x20) fail_msg("%s: a control character in: %s", what, text);
    if (*at == ',' && at > text && is_figure(at[-1]) && is_figure(at[1]))
      fail_msg("%s: a decimal comma in: %s", what, text);
  }
}

void assert_has(const char *text, const char *part, const char *what) {
  if (!strstr(text, part)) fail_msg("%s: \"%s\" is not in: %s", what, part, text);
}

const ox_working_row *find_row(const ox_working *w, const char *label) {
  for (size_t i = 0; i < w->count; i++)
    if (strcmp(w->rows[i].label, label) == 0) return &w->rows[i];
  fail_msg("there is no row \"%s\"", label);
  return NULL;
}

void enter_german(void) {
  assert_non_null(setlocale(LC_ALL, "de_DE.UTF-8"));
}
void leave_german(void) {
  assert_non_null(setlocale(LC_ALL, "C"));
}
