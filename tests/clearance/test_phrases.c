/* The tables themselves: the lexicon is in order, and every phrase of the grammar is reached by a
 * sentence made of its own elements. */
#include "ox_test.h"

#include "phrases.h"

static void the_lexicon_is_in_alphabetic_order(void **state) {
  (void)state;
  size_t count;
  const clr_word *words = clr_lexicon(&count);
  assert_true(count > 200);
  for (size_t i = 1; i < count; i++)
    assert_true(strcmp(words[i - 1].word, words[i].word) < 0);
}

static void every_word_is_found_in_either_case_and_no_other(void **state) {
  (void)state;
  size_t count;
  const clr_word *words = clr_lexicon(&count);
  for (size_t i = 0; i < count; i++) {
    char upper[32] = "";
    for (size_t k = 0; words[i].word[k]; k++) {
      char c = words[i].word[k];
      upper[k] = c >= 'a' && c <= 'z' ? (char)(c - 'a' + 'A') : c;
    }
    assert_ptr_equal(clr_lookup(upper, strlen(upper)), &words[i]);
  }
  assert_null(clr_lookup("larch", 5));
  assert_null(clr_lookup("", 0));
  assert_null(clr_lookup("anextraordinarilylongword", 25));
}

/* A word for an element of a phrase; NULL for one that only gathering makes. */
static const char *word_for(int element) {
  switch (element) {
  case E_NAME:
    return "LARCH";
  case E_TAIL:
    return "BIRCH";
  case E_BOUND:
    return "inbound";
  case E_EIGHTH:
    return "southwest";
  case E_FROM_OF:
    return "of";
  case E_GO:
    return "cleared";
  case E_HANDED:
    return "turns";
  case E_LENGTH:
    return "minute";
  case E_SIDE:
    return "left";
  case E_SPAN:
    return "minute";
  case E_TIME_OF:
    return "time";
  case E_TYPE:
    return "fix";
  case E_CLOCK:
    return "1825";
  case E_ZONE:
    return "UTC";
  case T_FIGURE:
    return "240";
  case T_CODE:
    return "UL607";
  default:
    break;
  }
  size_t count;
  const clr_word *words = clr_lexicon(&count);
  for (size_t i = 0; i < count; i++)
    if ((int)words[i].kind == element) return words[i].word;
  return NULL;
}

/* With all optional elements or with none. */
static bool sentence_for(const clr_phrase *phrase, bool whole, char text[200]) {
  text[0] = '\0';
  for (const uint16_t *e = phrase->elements; *e != T_END; e++) {
    if ((*e & E_OPTIONAL) && !whole) continue;
    const char *word = word_for(*e & E_KIND);
    if (!word) return false;
    strcat(text, text[0] ? " " : "");
    strcat(text, word);
  }
  return true;
}

static void every_phrase_fits_the_sentence_made_of_its_elements(void **state) {
  (void)state;
  static clr_tokens tokens;
  size_t count, tried = 0;
  const clr_phrase *phrases = clr_phrases(&count);
  for (size_t i = 0; i < 2 * count; i++) {
    char text[200];
    if (!sentence_for(&phrases[i / 2], i % 2 == 0, text)) continue;
    clr_lex(&tokens, text, strlen(text));
    clr_gather(&tokens);
    clr_catch caught;
    bool fits = tokens.count > 0 && clr_try(&tokens, 0, &phrases[i / 2], &caught);
    if (!fits || caught.tokens != tokens.count)
      print_error("phrase %zu does not fit \"%s\"\n", i / 2, text);
    assert_true(fits);
    assert_int_equal(caught.tokens, tokens.count);
    tried++;
  }
  assert_true(tried > count);
}

static void no_phrase_begins_with_what_may_be_missing(void **state) {
  (void)state;
  size_t count;
  const clr_phrase *phrases = clr_phrases(&count);
  for (size_t i = 0; i < count; i++) {
    assert_int_not_equal(phrases[i].elements[0], T_END);
    assert_int_equal(phrases[i].elements[0] & E_OPTIONAL, 0);
    assert_int_equal(phrases[i].elements[CLR_PHRASE_ELEMENTS], T_END);
  }
}

static void spoken_numbers_are_gathered(void **state) {
  (void)state;
  static const struct {
    const char *text;
    double value;
    int figures;
  } rows[] = {{"two four zero", 240, 3},
              {"two forty", 240, 3},
              {"one eight two five", 1825, 4},
              {"eighteen twenty five", 1825, 4},
              {"eighteen hundred", 1800, 4},
              {"zero zero one fife", 15, 4},
              {"niner", 9, 1},
              {"one zero thousand", 10000, 5},
              {"one two thousand five hundred", 12500, 5},
              {"two hundred and ten", 210, 3},
              {"one point five", 1.5, 1},
              {"one and a half", 1.5, 1},
              {"one and one half", 1.5, 1},
              {"half", 0.5, 0},
              {"one half", 0.5, 0},
              {"1 1/2", 1.5, 1},
              {"3/4", 0.75, 0},
              {"1\u00bd", 1.5, 1},
              {"18:25", 1825, 4},
              {"9:05", 905, 4},
              {"5,000", 5000, 4},
              {"12,500", 12500, 5},
              {"1,5", 1.5, 1},
              {"7.25", 7.25, 1},
              {"5k", 5000, 4},
              {"2 4 0", 240, 3},
              {"045", 45, 3}};
  static clr_tokens tokens;
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    clr_lex(&tokens, rows[i].text, strlen(rows[i].text));
    clr_gather(&tokens);
    if (tokens.count != 1) print_error("\"%s\" makes %zu tokens\n", rows[i].text, tokens.count);
    assert_int_equal(tokens.count, 1);
    assert_int_equal(tokens.tokens[0].kind, T_FIGURE);
    assert_close(tokens.tokens[0].value, rows[i].value, 0, rows[i].text);
    assert_int_equal(tokens.tokens[0].figures, rows[i].figures);
    assert_int_equal(tokens.tokens[0].length, strlen(rows[i].text));
  }
}

static void numbers_beside_each_other_stay_apart(void **state) {
  (void)state;
  static const struct {
    const char *text;
    double first, second;
  } rows[] = {{"240 060", 240, 60},      {"240, 1", 240, 1},       {"two four zero, one", 240, 1},
              {"1825 5000", 1825, 5000}, {"one minute two", 1, 2}, {"15 and 20", 15, 20},
              {"240,1", 240, 1},         {"30-20", 30, 20}};
  static clr_tokens tokens;
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    clr_lex(&tokens, rows[i].text, strlen(rows[i].text));
    clr_gather(&tokens);
    assert_true(tokens.count >= 2);
    assert_close(tokens.tokens[0].value, rows[i].first, 0, rows[i].text);
    assert_close(tokens.tokens[tokens.count - 1].value, rows[i].second, 0, rows[i].text);
  }
}

/* One letter, several meanings: what stands beside it decides. */
static void letters_are_settled_by_their_neighbours(void **state) {
  (void)state;
  static const struct {
    const char *text;
    size_t at;
    clr_kind kind;
  } rows[] = {{"240 R", 1, T_RADIAL},     {"R 240", 0, T_RADIAL}, {"R two four zero", 0, T_RADIAL},
              {"1825 R", 1, T_RIGHT},     {"400 R", 1, T_RIGHT},  {"240 R turns", 1, T_RIGHT},
              {"R", 0, T_RIGHT},          {"240, R", 1, T_RIGHT}, {"M 5000", 0, T_MAINTAIN},
              {"M FL180", 0, T_MAINTAIN}, {"M", 0, T_OTHER},      {"D 15", 0, T_DME},
              {"D", 0, T_OTHER},          {"200 K", 1, T_KNOTS},  {"K", 0, T_OTHER},
              {"15 s", 1, T_DIR1},        {"15s", 1, T_SECOND},   {"V115", 0, T_AIRWAY_LETTER},
              {"UL607", 0, T_CODE},       {"CF27R", 0, T_OTHER},  {"15ABC", 0, T_OTHER}};
  static clr_tokens tokens;
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    clr_lex(&tokens, rows[i].text, strlen(rows[i].text));
    clr_gather(&tokens);
    assert_true(rows[i].at < tokens.count);
    if (tokens.tokens[rows[i].at].kind != rows[i].kind)
      print_error("\"%s\": kind %d\n", rows[i].text, (int)tokens.tokens[rows[i].at].kind);
    assert_int_equal(tokens.tokens[rows[i].at].kind, rows[i].kind);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_lexicon_is_in_alphabetic_order),
      cmocka_unit_test(every_word_is_found_in_either_case_and_no_other),
      cmocka_unit_test(every_phrase_fits_the_sentence_made_of_its_elements),
      cmocka_unit_test(no_phrase_begins_with_what_may_be_missing),
      cmocka_unit_test(spoken_numbers_are_gathered),
      cmocka_unit_test(letters_are_settled_by_their_neighbours),
      cmocka_unit_test(numbers_beside_each_other_stay_apart),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
