/* A test speaks German with the project's own catalogue, in $OXBOW_TEST_LOCALE; and what must hold
 * of a sentence in two languages: the same figures, and no English left. */
#ifndef OX_GERMAN_H
#define OX_GERMAN_H

#include <ctype.h>
#include <locale.h>

#include "ox_test.h"
#include "oxbow/text.h"

static inline void speak_german(void) { ox_text_open(getenv("OXBOW_TEST_LOCALE")); }
static inline void speak_english(void) { ox_text_open(NULL); }

/* cmocka setup and teardown of a group; without locale or catalogue the group fails. */
static inline int german_set_up(void **state) {
  unsetenv("LANGUAGE"); /* it would go before the locale */
  return setlocale(LC_ALL, "de_DE.UTF-8") && getenv("OXBOW_TEST_LOCALE") ? 0 : -1;
}
static inline int german_tear_down(void **state) {
  speak_english();
  return setlocale(LC_ALL, "C") ? 0 : -1;
}

/* --- figures ------------------------------------------------------------------------------- */

enum { GERMAN_FIGURES = 128, GERMAN_FIGURE_BYTES = 40 };

typedef struct {
  size_t count;
  char figure[GERMAN_FIGURES][GERMAN_FIGURE_BYTES];
} german_figures;

static inline int german_by_text(const void *a, const void *b) { return strcmp(a, b); }

/* Figures with what stands between their digits, "14:30" or "0.12", a decimal comma as a point; in
 * the order of their characters, for a translation may put them in another one. */
static inline german_figures german_figures_of(const char *text) {
  german_figures f = {0};
  for (const char *at = text; *at; at++) {
    if (!isdigit((unsigned char)*at)) continue;
    assert_true(f.count < GERMAN_FIGURES);
    char *out = f.figure[f.count++];
    for (int i = 0; isdigit((unsigned char)*at) ||
                    (*at && strchr(".,:", *at) && isdigit((unsigned char)at[1]));
         at++)
      if (++i < GERMAN_FIGURE_BYTES) *out++ = *at == ',' ? '.' : *at;
    at--;
  }
  qsort(f.figure, f.count, sizeof f.figure[0], german_by_text);
  return f;
}

static inline void assert_same_figures(const char *english, const char *german) {
  german_figures a = german_figures_of(english), b = german_figures_of(german);
  bool same = a.count == b.count;
  for (size_t i = 0; same && i < a.count; i++) same = strcmp(a.figure[i], b.figure[i]) == 0;
  if (!same) fail_msg("other figures in \"%s\" than in \"%s\"", german, english);
}

/* --- words --------------------------------------------------------------------------------- */

/* Small words that every English sentence has one of, and no German one. Keys of files are not
 * among them. */
static inline const char *german_left_over(const char *german) {
  static const char *const words[] = {" the ", " is ",  " are ",  " of ",     " not ",  " needed",
                                      " a ",   " which ", " with ", " cannot ", " there", " has ",
                                      " have ", " no ", " its ",  " than ",   " must "};
  for (size_t i = 0; i < sizeof words / sizeof *words; i++)
    if (strstr(german, words[i])) return words[i];
  return NULL;
}

/* A sentence and its translation. */
static inline void assert_german(const char *english, const char *german) {
  const char *word = german_left_over(german);
  if (strcmp(english, german) == 0) fail_msg("\"%s\" is not translated", english);
  if (word) fail_msg("\"%s\" is left in \"%s\"", word, german);
  assert_same_figures(english, german);
}

#endif
