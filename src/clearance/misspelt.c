/* A word of the lexicon with one slip of the keys in it: "soutwest", "radail", "futher". */
#include <string.h>

#include "tokens.h"

enum { SHORTEST = 6 }; /* letters: of shorter words too many are one slip from each other */

static char lower(char c) { return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c; }

static bool same(const char *bytes, const char *word, size_t length) {
  for (size_t i = 0; i < length; i++)
    if (lower(bytes[i]) != word[i]) return false;
  return true;
}

/* A letter left out, put in, taken for another, or two of them changed round. */
static bool one_slip(const char *bytes, size_t length, const char *word, size_t word_length) {
  size_t at = 0;
  while (at < length && at < word_length && lower(bytes[at]) == word[at]) at++;
  const char *rest = bytes + at, *want = word + at;
  size_t left = length - at, wanted = word_length - at;
  if (left + 1 == wanted) return same(rest, want + 1, left);
  if (left == wanted + 1) return same(rest + 1, want, wanted);
  if (left != wanted || left == 0) return false;
  if (same(rest + 1, want + 1, left - 1)) return true;
  return left > 1 && lower(rest[0]) == want[1] && lower(rest[1]) == want[0] &&
         same(rest + 2, want + 2, left - 2);
}

const clr_word *clr_lookup_misspelt(const char *bytes, size_t length) {
  size_t count;
  const clr_word *words = clr_lexicon(&count), *found = NULL;
  if (length < SHORTEST) return NULL;
  for (size_t i = 0; i < count; i++) {
    size_t word_length = strlen(words[i].word);
    if (word_length < SHORTEST || !one_slip(bytes, length, words[i].word, word_length)) continue;
    bool differs = found && (found->kind != words[i].kind || found->value != words[i].value);
    if (differs) return NULL;
    found = &words[i];
  }
  return found;
}
