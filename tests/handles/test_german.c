/* The handles in German: names and values are translated and keep their figures. */
#include "handles_support.h"
#include "ox_german.h"
#include "random_case.h"

static void every_name_is_translated(void **state) {
  for (int h = 0; h < OX_HANDLE_COUNT; h++) {
    speak_english();
    const char *english = ox_handle_name((ox_handle)h);
    speak_german();
    assert_string_not_equal(english, ox_handle_name((ox_handle)h));
  }
  speak_english();
}

static void values_have_the_same_figures_with_a_comma(void **state) {
  ox_random r = {20261125};
  int commas = 0, translated = 0;
  for (int i = 0; i < 600; i++) {
    ox_case c = ox_random_case(&r, 0.6);
    if (ox_flight_solve(&c, &flight) == OX_ERROR) continue;
    for (int h = 0; h < OX_HANDLE_COUNT; h++) {
      char english[80], german[80];
      speak_english();
      ox_handle_words(english, sizeof english, (ox_handle)h, &c, &flight);
      speak_german();
      ox_handle_words(german, sizeof german, (ox_handle)h, &c, &flight);
      speak_english();
      assert_same_figures(english, german);
      translated += strcmp(english, german) != 0;
      if (h == OX_HANDLE_FIX) continue;
      commas += strchr(german, ',') != NULL;
      assert_null(strchr(german, '.'));
    }
  }
  assert_true(commas > 100);
  assert_true(translated > 1000);
}

static void some_values_to_the_letter(void **state) {
  char words[80];
  ox_case c = larch();
  c.hold.inbound_deg = 240.5;
  fly(&c);
  speak_german();
  ox_handle_words(words, sizeof words, OX_HANDLE_INBOUND, &c, &flight);
  assert_string_equal(words, "240,5° missweisend");
  ox_handle_words(words, sizeof words, OX_HANDLE_WIND_FROM, &c, &flight);
  assert_string_equal(words, "aus 330° rechtweisend, 20 kt");
  ox_handle_words(words, sizeof words, OX_HANDLE_TURNS, &c, &flight);
  assert_string_equal(words, "Rechtskurven");
  c.hold.fix[0] = '\0';
  ox_handle_words(words, sizeof words, OX_HANDLE_FIX, &c, &flight);
  assert_string_equal(words, "ohne Namen");
  speak_english();
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(every_name_is_translated),
      cmocka_unit_test(values_have_the_same_figures_with_a_comma),
      cmocka_unit_test(some_values_to_the_letter),
  };
  return cmocka_run_group_tests(tests, german_set_up, german_tear_down);
}
