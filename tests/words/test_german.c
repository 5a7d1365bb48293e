/* The words in German: the same figures as in English, with decimal commas, and nothing left in
 * English. The catalogue is the project's own, in $OXBOW_TEST_LOCALE. */
#include <ctype.h>
#include <locale.h>

#include "every_text.h"
#include "oxbow/crosscheck.h"
#include "oxbow/differences.h"
#include "oxbow/fields.h"
#include "oxbow/guess.h"
#include "oxbow/moments.h"
#include "oxbow/presets.h"
#include "oxbow/text.h"
#include "oxbow/variants.h"
#include "oxbow/words.h"
#include "words_check.h"

enum { CASES = 2400 };

static void speak_german(void) { ox_text_open(getenv("OXBOW_TEST_LOCALE")); }
static void speak_english(void) { ox_text_open(NULL); }

static int set_up(void **state) {
  unsetenv("LANGUAGE"); /* it would go before the locale */
  return setlocale(LC_ALL, "de_DE.UTF-8") && getenv("OXBOW_TEST_LOCALE") ? 0 : -1;
}

static int tear_down(void **state) {
  speak_english();
  return 0;
}

/* --- figures ------------------------------------------------------------------------------- */

static bool is_figure(char c) { return c >= '0' && c <= '9'; }

/* Figures with what stands between their digits, "14:30" or "0.12", a comma as a point. */
typedef struct {
  size_t count;
  char figure[128][24];
} figures;

static const char *figure_end(const char *at) {
  while (is_figure(*at) || (strchr(".,:", *at) && *at && is_figure(at[1]))) at++;
  return at;
}

static int by_text(const void *a, const void *b) { return strcmp(a, b); }

static figures figures_of(const char *text) {
  figures f = {0};
  for (const char *at = text; *at; at++) {
    if (!is_figure(*at)) continue;
    const char *end = figure_end(at);
    assert_true(f.count < 128 && end - at < 24);
    char *out = f.figure[f.count++];
    for (; at < end; at++) *out++ = *at == ',' ? '.' : *at;
    at--;
  }
  qsort(f.figure, f.count, sizeof f.figure[0], by_text);
  return f;
}

static void assert_same_figures(const ox_told *english, const ox_told *german) {
  figures a = figures_of(english->text), b = figures_of(german->text);
  bool same = a.count == b.count;
  for (size_t i = 0; same && i < a.count; i++) same = strcmp(a.figure[i], b.figure[i]) == 0;
  if (!same) fail_msg("%s: \"%s\" and \"%s\"", english->what, english->text, german->text);
}

/* Paragraphs of publications have points and keep them. */
static bool is_paragraph(const char *figure) {
  static const char *const paragraphs[] = {"91.185", "7110.65", "1.5 ("};
  for (size_t i = 0; i < sizeof paragraphs / sizeof *paragraphs; i++)
    if (strncmp(figure, paragraphs[i], strlen(paragraphs[i])) == 0) return true;
  return false;
}

/* The number of decimal commas. */
static size_t count_commas(const ox_told *german) {
  size_t commas = 0;
  for (const char *at = german->text; *at; at++) {
    if (!is_figure(*at)) continue;
    const char *end = figure_end(at);
    for (const char *c = at; c < end && !is_paragraph(at); c++) {
      if (*c == '.') fail_msg("%s: a decimal point in \"%s\"", german->what, german->text);
      commas += *c == ',';
    }
    at = end - 1;
  }
  return commas;
}

/* --- words --------------------------------------------------------------------------------- */

static bool is_letter(char c) { return isalpha((unsigned char)c) || (unsigned char)c >= 0x80; }

static bool is_one_of(const char *word, size_t length, const char *const *words) {
  for (; *words; words++)
    if (strlen(*words) == length && strncmp(*words, word, length) == 0) return true;
  return false;
}

/* The first word of a text that is, or is not, on a list; NULL where there is none. */
static const char *find_word(const char *text, const char *const *words, bool listed) {
  for (const char *at = text; *at; at++) {
    if (!isalpha((unsigned char)*at) || (at > text && is_letter(at[-1]))) continue;
    size_t length = 0;
    while (is_letter(at[length])) length++;
    if (is_one_of(at, length, words) == listed) return at;
    at += length - 1;
  }
  return NULL;
}

/* English words that are none in German, and such as our German has another word for. */
static const char *const english_words[] = {
    "the",     "The",     "of",      "and",      "with",    "from",    "to",      "at",
    "is",      "are",     "for",     "not",      "Not",     "by",      "on",      "that",
    "which",   "where",   "when",    "until",    "than",    "as",      "it",      "It",
    "no",      "No",      "none",    "never",    "left",    "right",   "turn",    "turns",
    "Turn",    "Turns",   "heading", "Heading",  "course",  "Course",  "track",   "Track",
    "time",    "Time",    "leg",     "Leg",      "circuit", "Circuit", "side",    "north",
    "south",   "east",    "west",    "entry",    "Entry",   "hold",    "Hold",    "given",
    "flown",   "bank",    "Bank",    "wings",    "level",   "abeam",   "clock",   "true",
    "magnetic", "calm",   "unknown", "longer",   "shorter", "more",    "less",    "direct",
    "common",  "practice", "geometry", "fuel",   "local",   "error",   "M",       "teardrop",
    "exact",   "same",    "shown",   "aircraft", "holding", "quoted",  NULL};

/* What reads the same in both languages. */
static const char *const both_words[] = {
    "NM",  "kt",   "ft",   "KIAS", "DME",  "UTC",   "min",      "h",      "s",       "L",
    "R",   "C",    "ISA",  "Mach", "EFC",  "Fix",   "FIX",      "LARCH",  "ALDER",   "Wind",
    "E",   "AIM",  "ICAO", "Doc",  "Vol",  "I",     "II",       "Part",   "Section", "Chapter",
    "CFR", "TAS",  "lb",   "kg",   "US",   "gal",   "parallel", "inbound", "outbound", "j",
    "d",   "k",    "a",    "b",    "c",    "CNATRA", "P",       "cos",    "sin",     "Vorhalt",
    "Reserve", "l", NULL};

static void assert_german(const char *what, const char *english, const char *german) {
  const char *found = find_word(german, english_words, true);
  if (found) fail_msg("%s: English at \"%.20s\" in \"%s\"", what, found, german);
  bool has_words = find_word(english, both_words, false) != NULL;
  if (has_words && strcmp(english, german) == 0) fail_msg("%s: \"%s\" is the same", what, german);
}

/* --- every sentence of many cases ---------------------------------------------------------- */

static void many_cases_say_the_same_in_both_languages(void **state) {
  ox_random r = {20260};
  size_t flown = 0, texts = 0, commas = 0;
  for (uint64_t i = 0, cases = (uint64_t)ox_test_cases(CASES); i < cases; i++) {
    ox_told_list english = {0}, german = {0};
    ox_case c = ox_talkative_case(&r);
    speak_english();
    flown += ox_tell_everything(&c, i, &english);
    speak_german();
    ox_tell_everything(&c, i, &german);
    assert_int_equal(english.count, german.count);
    for (size_t k = 0; k < german.count; k++) {
      const ox_told *a = &english.texts[k], *b = &german.texts[k];
      assert_string_equal(a->what, b->what);
      assert_same_figures(a, b);
      assert_german(b->what, a->text, b->text);
      commas += count_commas(b);
      if (b->most && strlen(b->text) + 1 >= b->most) fail_msg("%s is cut: %s", b->what, b->text);
    }
    texts += german.count;
    ox_told_clear(&english);
    ox_told_clear(&german);
  }
  print_message("# %zu cases, %zu texts, %zu decimal commas\n", flown, texts, commas);
  assert_true(flown >= (size_t)ox_test_least(2000) && commas > 100 * flown);
}

/* --- tables -------------------------------------------------------------------------------- */

static void assert_table_text(const char *what, const char *english) {
  speak_german();
  ox_told a = {.text = (char *)(uintptr_t)english};
  ox_told b = {.text = (char *)(uintptr_t)ox_text(english)};
  snprintf(a.what, sizeof a.what, "%s", what);
  assert_german(what, a.text, b.text);
  assert_same_figures(&a, &b);
}

/* The values stay those of a lesson file. */
static void assert_allowed(const ox_field *fields, size_t count) {
  for (size_t i = 0; i < count; i++) {
    if (strcmp(ox_text(fields[i].allowed), fields[i].allowed) == 0)
      fail_msg("%s: %s", fields[i].key, fields[i].allowed);
    for (const char *const *word = fields[i].choices; word && *word; word++)
      assert_has(ox_text(fields[i].allowed), *word, fields[i].key);
    if (!fields[i].choices) assert_table_text(fields[i].key, fields[i].allowed);
  }
}

static void the_tables_of_the_engine_are_translated(void **state) {
  size_t count;
  speak_german();
  const ox_field *fields = ox_fields(&count);
  assert_allowed(fields, count);
  fields = ox_wind_fields(&count);
  assert_allowed(fields, count);
  fields = ox_wind_change_fields(&count);
  assert_allowed(fields, count);
  for (int i = 0; i < OX_MISTAKE_COUNT; i++) {
    assert_table_text("mistake", ox_mistake_name((ox_mistake)i));
    assert_table_text("mistake", ox_mistake_effect((ox_mistake)i));
  }
  for (int i = 0; i < OX_VARIANT_COUNT; i++)
    assert_table_text("variant", ox_variant_name((ox_variant)i));
  for (size_t i = 0; i < ox_preset_count(); i++) {
    assert_table_text("preset, name", ox_preset_at(i)->name);
    assert_table_text("preset, rule", ox_preset_at(i)->rule);
    assert_table_text("preset, source", ox_preset_at(i)->source);
  }
  for (int i = OX_STEADY_EXISTS; i <= OX_STEADY_STATION; i++)
    assert_table_text("steady", ox_steady_why_name((ox_steady_why)i));
  for (int i = 0; i < OX_LEG_KIND_COUNT; i++)
    assert_table_text("leg", ox_leg_name((ox_leg_kind)i));
}

/* Each is static and translated as it is returned. */
static void the_tables_of_the_words_are_translated(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++) {
    speak_english();
    const char *label = ox_differences_label(fields[i].key);
    speak_german();
    assert_german(fields[i].key, label, ox_differences_label(fields[i].key));
  }
  for (int i = 0; i < OX_EVENT_KIND_COUNT; i++) {
    speak_english();
    const char *event = ox_moments_event((ox_event_kind)i);
    speak_german();
    assert_german("event", event, ox_moments_event((ox_event_kind)i));
  }
  for (int i = 0; i < 8; i++) {
    speak_english();
    const char *eighth = ox_words_eighth(45.0 * i);
    speak_german();
    assert_german("eighth", eighth, ox_words_eighth(45.0 * i));
  }
  assert_string_equal(ox_words_eighth(45), "nordöstlich");
  assert_string_equal(ox_words_turns_noun(OX_TURNS_LEFT), "Linkskurven");
  assert_string_equal(ox_words_fuel_unit(OX_FUEL_L), "Liter");
  assert_string_equal(ox_words_entry_noun(OX_ENTRY_PARALLEL), "Paralleleinflug");
  assert_has(ox_words_caution_line(), "Nur für den Unterricht, nicht zur Navigation.", "caution");
  assert_has(ox_words_caution(), "lizenzierter Fluglehrer", "caution");
  assert_true(strlen(ox_words_caution_line()) <= 150);
  assert_has(ox_guess_tolerances(), "0,2 NM", "tolerances");
}

/* The first value of the row of a field that differs between the two cases. */
static void value_of_choice(const ox_field *field, int choice, char *out, size_t bytes) {
  static ox_flight flight;
  ox_case c = ox_case_default(), other = c;
  c.hold.station.given = other.hold.station.given = true;
  ox_field_set(field, &c, choice);
  ox_field_set(field, &other, choice == 0 ? 1 : 0);
  const ox_case *cases[] = {&c, &other};
  const ox_flight *flights[] = {&flight, &flight};
  ox_differences d = ox_differences_make(cases, flights, 2);
  out[0] = '\0';
  for (size_t i = 0; i < d.count; i++)
    if (strcmp(d.rows[i].label, ox_differences_label(field->key)) == 0)
      snprintf(out, bytes, "%s", d.rows[i].value[0]);
  ox_differences_clear(&d);
}

/* In English it is the word of the lesson file. */
static void every_choice_of_a_case_has_its_word(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++)
    for (int k = 0; fields[i].choices && fields[i].choices[k]; k++) {
      char english[64], german[64], word[64];
      snprintf(word, sizeof word, "%s", fields[i].choices[k]);
      for (char *at = word; *at; at++)
        if (*at == '_') *at = ' ';
      speak_english();
      value_of_choice(&fields[i], k, english, sizeof english);
      speak_german();
      value_of_choice(&fields[i], k, german, sizeof german);
      assert_string_equal(english, word);
      assert_german(fields[i].key, english, german);
    }
}

/* --- figures and plurals ------------------------------------------------------------------- */

static void figures_have_the_decimal_comma(void **state) {
  char text[16];
  speak_german();
  ox_words_correction(text, sizeof text, -8.44, 1);
  assert_string_equal(text, "8,4° L");
  ox_words_correction(text, sizeof text, 8.0, 1);
  assert_string_equal(text, "8° R");
  ox_words_correction(text, sizeof text, 27.76, 1);
  assert_string_equal(text, "28° R");
  speak_english();
  ox_words_correction(text, sizeof text, -8.44, 1);
  assert_string_equal(text, "8.4° L");
}

static void one_and_two_have_their_plurals(void **state) {
  static ox_flight scratch;
  char text[OX_WHEN_BYTES];
  ox_efc_plan plan;
  ox_case c = ox_case_default();
  c.aircraft.ias_kt = 0;
  c.aircraft.tas_kt = 120;
  c.arrival.fix_at_s = 12 * 3600;
  speak_german();
  for (int circuits = 1; circuits <= 2; circuits++) {
    c.hold.efc_min = 12 * 60 + 4 * circuits;
    assert_int_not_equal(ox_efc_plan_make(&c, &scratch, &plan), OX_ERROR);
    ox_words_efc(text, sizeof text, &c, &plan);
    assert_has(text, circuits == 1 ? "wird 1 Umlauf geflogen" : "werden 2 Umläufe geflogen",
               "plural");
  }
}

/* What code goes by stays English; what people read does not. */
static void a_row_is_found_by_its_english_key(void **state) {
  static ox_flight flight;
  ox_case c = ox_case_default();
  assert_int_not_equal(ox_flight_solve(&c, &flight), OX_ERROR);
  speak_german();
  ox_working w = ox_working_make(&c, &flight);
  const ox_working_row *found = NULL;
  for (size_t i = 0; i < w.count; i++)
    if (strcmp(w.rows[i].key, "Outbound time flown first") == 0) found = &w.rows[i];
  assert_non_null(found);
  assert_string_equal(found->label, "Zuerst geflogene Outbound-Zeit");
  assert_string_equal(found->value, "1:00 gestoppt");
  assert_string_equal(found->brief, "1:00");
  assert_string_equal(found->source, "Geometrie");
  ox_working_clear(&w);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(many_cases_say_the_same_in_both_languages),
      cmocka_unit_test(the_tables_of_the_engine_are_translated),
      cmocka_unit_test(the_tables_of_the_words_are_translated),
      cmocka_unit_test(every_choice_of_a_case_has_its_word),
      cmocka_unit_test(figures_have_the_decimal_comma),
      cmocka_unit_test(one_and_two_have_their_plurals),
      cmocka_unit_test(a_row_is_found_by_its_english_key),
  };
  return cmocka_run_group_tests(tests, set_up, tear_down);
}
