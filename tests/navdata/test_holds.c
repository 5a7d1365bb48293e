/* The holds of the excerpt, against a list worked out by hand from the published field layout
 * (ARINC 424-18, 4.1.9: the columns over the list below), not by the program. */
#include "navdata_support.h"

#include <locale.h>

/* Columns, counted from 1:
 *   7-10   airport               14-19  procedure        20     route type
 *   21-25  transition            27-29  sequence         30-34  fix
 *   35-36  region of the fix     37-38  its section      44     turn
 *   48-49  path terminator       71-74  course: tenths of a degree, magnetic
 *   75-78  0040 is 4.0 NM, T010 is 1.0 minute            83     altitude description
 *   85-89  altitude, ft          100-102 speed limit: blank in all of them
 * Line 13 of the file, for one:
 *   SUSAP 1B1 K6FR03   R      050JAPUTK6PC0EE  R020HM … 20460040    + 03200
 *         ^7      ^14  ^20    ^27^30    ^37    ^45 ^48  ^71 ^75     ^83
 * (columns 45-47, 020, are the required navigation performance and no turn.) */
typedef struct {
  const char *airport, *procedure;
  char route_type;
  const char *transition;
  int sequence;
  const char *fix, *section;
  ox_terminator terminator;
  double inbound_deg;
  ox_turns turns;
  bool turns_given;
  ox_leg_by by;
  double leg; /* s or NM */
  double low_ft;
} expected;

#define HM OX_TERMINATOR_HM
#define HF OX_TERMINATOR_HF
#define RIGHT OX_TURNS_RIGHT, true
#define LEFT OX_TURNS_LEFT, true
#define NOT_SAID OX_TURNS_RIGHT, false
#define TIME OX_LEG_BY_TIME
#define DIST OX_LEG_BY_DISTANCE

static const expected by_hand[] = {
    /* line 13 */ {"1B1", "R03", 'R', "", 50, "JAPUT", "PC", HM, 204.6, RIGHT, DIST, 4, 3200},
    /* line 14 */ {"1B1", "R21", 'A', "JAPUT", 10, "JAPUT", "PC", HF, 204.6, RIGHT, DIST, 4, 3200},
    /* line 20 */ {"3N6", "S24", 'A', "COL", 30, "STENY", "PC", HF, 231.7, LEFT, TIME, 60, 1700},
    /* line 22 */ {"3N6", "S24", 'S', "", 60, "COL", "D ", HM, 190.0, RIGHT, TIME, 60, 2000},
    /* line 23 */ {"B19", "S06", 'A', "ENE", 10, "ENE", "D ", HF, 87.5, RIGHT, TIME, 60, 2300},
    /* line 27 */ {"B19", "S06", 'S', "", 60, "ENE", "D ", HM, 87.5, RIGHT, TIME, 60, 2300},
    /* line 36 */ {"KALB", "I01", 'A', "MUJIK", 10, "MUJIK", "PC", HF, 11.2, RIGHT, TIME, 60, 2600},
    /* line 42 */ {"KALB", "I01", 'I', "", 60, "CAM", "D ", HM, 160.2, RIGHT, TIME, 60, 5000},
    /* line 47 */ {"KSBY", "I32", 'A', "SBY", 30, "COLBE", "PC", HF, 318.7, LEFT, TIME, 60, 2000},
    /* line 50 */ {"KSBY", "I32", 'I', "", 70, "COLBE", "PC", HM, 318.7, LEFT, TIME, 60, 2000},
    /* line 53 */ {"KSWF", "I09", 'A', "IGN", 30, "SW", "PN", HF, 92.4, RIGHT, TIME, 60, 2300},
    /* line 55 */ {"KSWF", "I09", 'I', "", 60, "IGN", "D ", HM, 217.0, RIGHT, TIME, 60, 3000},
};
#define BY_HAND (sizeof by_hand / sizeof *by_hand)

static void compare(const ox_published_hold *h, const expected *want, size_t index) {
  char what[80];
  snprintf(what, sizeof what, "hold %zu, %s %s", index, want->airport, want->fix);
  assert_string_equal(h->airport, want->airport);
  assert_string_equal(h->airport_region, "K6");
  assert_string_equal(h->section, "PF");
  assert_string_equal(h->procedure, want->procedure);
  assert_int_equal(h->route_type, want->route_type);
  assert_string_equal(h->transition, want->transition);
  assert_int_equal(h->sequence, want->sequence);
  assert_string_equal(h->fix.ident, want->fix);
  assert_string_equal(h->fix.region, "K6");
  assert_string_equal(h->fix.section, want->section);
  assert_string_equal(h->fix.airport, want->airport);
  assert_int_equal(h->terminator, want->terminator);
  assert_close(h->inbound_deg, want->inbound_deg, 1e-12, what);
  assert_int_equal(h->inbound_north, OX_NORTH_MAGNETIC);
  assert_int_equal(h->turns, want->turns);
  assert_int_equal(h->turns_given, want->turns_given);
  assert_true(h->leg_given);
  assert_int_equal(h->leg_by, want->by);
  assert_close(want->by == TIME ? h->leg_s : h->leg_nm, want->leg, 1e-12, what);
  assert_close(want->by == TIME ? h->leg_nm : h->leg_s, 0, 0, what);
  assert_int_equal(h->altitude_kind, OX_ALTITUDE_AT_OR_ABOVE);
  assert_int_equal(h->altitude_code, '+');
  assert_close(h->altitude_low_ft, want->low_ft, 0, what);
  assert_close(h->altitude_high_ft, 0, 0, what);
  assert_close(h->limit_kias, 0, 0, what);
}

static void the_list_is_the_one_worked_out_by_hand(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  assert_int_equal(ox_navdata_hold_count(data), BY_HAND);
  for (size_t i = 0; i < BY_HAND; i++) {
    ox_published_hold h;
    assert_int_equal(ox_navdata_hold(data, i, &h), OX_OK);
    compare(&h, &by_hand[i], i);
  }
  ox_navdata_close(data);
}

static void every_line_is_accounted_for(void **state) {
  (void)state;
  /* By hand: points are lines 3-11, 28-32, 43 and 45; 12 lines are holds; the other 28 are airways
   * (1, 2), legs that are no holds, a localizer (44) and airspace (56). */
  ox_navdata *data = excerpt_open();
  const ox_navdata_report *report = ox_navdata_report_of(data);
  assert_int_equal(report->lines, EXCERPT_LINES);
  assert_int_equal(report->holds, 12);
  assert_int_equal(report->points, 16);
  assert_int_equal(report->skipped[OX_SKIP_OTHER_KIND], 28);
  assert_int_equal(report->first_line[OX_SKIP_OTHER_KIND], 1);
  assert_int_equal(skipped_in_all(data), 28);
  assert_true(ox_navdata_index_bytes(data) < 4096);
  ox_navdata_close(data);
}

static void a_number_beyond_the_last_is_refused(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  ox_published_hold h = {.sequence = 77};
  assert_int_equal(ox_navdata_hold(data, BY_HAND, &h), OX_ERROR);
  assert_int_equal(ox_navdata_hold(data, SIZE_MAX, &h), OX_ERROR);
  assert_int_equal(h.sequence, 77);
  ox_navdata_close(data);
}

/* Which of the list by hand a query finds, as a set of bits. */
static unsigned found_by(const ox_navdata *data, ox_hold_query query) {
  unsigned bits = 0;
  size_t i = 0;
  for (size_t from = 0; ox_navdata_find(data, &query, from, &i); from = i + 1) {
    assert_true(i >= from && i < BY_HAND);
    bits |= 1u << i;
  }
  return bits;
}

static void holds_are_found_by_fix_airport_and_procedure(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  assert_int_equal(found_by(data, (ox_hold_query){0}), 0xfff);
  assert_int_equal(found_by(data, (ox_hold_query){.fix = "JAPUT"}), 0x003);
  assert_int_equal(found_by(data, (ox_hold_query){.fix = "japut"}), 0x003);
  assert_int_equal(found_by(data, (ox_hold_query){.fix = "SW"}), 0x400);
  assert_int_equal(found_by(data, (ox_hold_query){.airport = "KALB"}), 0x0c0);
  assert_int_equal(found_by(data, (ox_hold_query){.airport = "3n6"}), 0x00c);
  assert_int_equal(found_by(data, (ox_hold_query){.procedure = "S06"}), 0x030);
  assert_int_equal(found_by(data, (ox_hold_query){"IGN", "KSWF", "I09"}), 0x800);
  ox_navdata_close(data);
}

static void what_is_not_there_is_not_found(void **state) {
  (void)state;
  ox_navdata *data = excerpt_open();
  size_t i = 99;
  assert_int_equal(found_by(data, (ox_hold_query){.fix = "JAPU"}), 0);
  assert_int_equal(found_by(data, (ox_hold_query){.fix = "JAPUTS"}), 0);
  assert_int_equal(found_by(data, (ox_hold_query){.fix = ""}), 0);
  assert_int_equal(found_by(data, (ox_hold_query){.fix = "\xc3\x89"}), 0);
  assert_int_equal(found_by(data, (ox_hold_query){.fix = "JAPUT", .airport = "KALB"}), 0);
  assert_false(ox_navdata_find(data, &(ox_hold_query){0}, BY_HAND, &i));
  assert_int_equal(i, 99);
  ox_navdata_close(data);
}

static void altitudes_are_written_in_words(void **state) {
  (void)state;
  static const struct {
    ox_altitude_kind kind;
    double low_ft, high_ft;
    const char *text;
  } rows[] = {{OX_ALTITUDE_NONE, 0, 0, ""},
              {OX_ALTITUDE_AT, 3000, 3000, "at 3000 ft"},
              {OX_ALTITUDE_AT_OR_ABOVE, 3200, 0, "at or above 3200 ft"},
              {OX_ALTITUDE_AT_OR_BELOW, 0, 12000, "at or below 12000 ft"},
              {OX_ALTITUDE_BETWEEN, 4000, 6000, "between 4000 and 6000 ft"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char text[64];
    ox_published_hold h = {.altitude_kind = rows[i].kind,
                           .altitude_low_ft = rows[i].low_ft,
                           .altitude_high_ft = rows[i].high_ft};
    ox_published_altitude_text(&h, text, sizeof text);
    assert_string_equal(text, rows[i].text);
  }
  assert_string_equal(ox_terminator_name(OX_TERMINATOR_HM), "HM");
  assert_string_equal(ox_terminator_name(OX_TERMINATOR_EP), "EP");
}

static void a_decimal_comma_locale_changes_nothing(void **state) {
  (void)state;
  if (!setlocale(LC_ALL, "de_DE.UTF-8")) fail_msg("the locale de_DE.UTF-8 is needed");
  the_list_is_the_one_worked_out_by_hand(state);
  setlocale(LC_ALL, "C");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_list_is_the_one_worked_out_by_hand),
      cmocka_unit_test(every_line_is_accounted_for),
      cmocka_unit_test(a_number_beyond_the_last_is_refused),
      cmocka_unit_test(holds_are_found_by_fix_airport_and_procedure),
      cmocka_unit_test(what_is_not_there_is_not_found),
      cmocka_unit_test(altitudes_are_written_in_words),
      cmocka_unit_test(a_decimal_comma_locale_changes_nothing),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
