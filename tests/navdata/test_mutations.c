/* 20 000 damaged copies of the excerpt: cut off, with bytes changed, bits turned over, pieces
 * moved, left out and put twice. Every one is read to its end, all lines are accounted for, and
 * whatever comes out is in range. Run it under the sanitizers too. */
#include "navdata_support.h"

enum { VARIANTS = 20000 };

static void turn_bits(ox_random *random, char *bytes, size_t length, int times) {
  while (times-- > 0 && length > 0) {
    size_t at = (size_t)ox_random_below(random, (int)length);
    bytes[at] = (char)((unsigned char)bytes[at] ^ (1u << ox_random_below(random, 8)));
  }
}

static void change_bytes(ox_random *random, char *bytes, size_t length, int times) {
  static const char likely[] = "0123456789 NSEWTHFMALR+-B\r\n\t\0\xff";
  while (times-- > 0 && length > 0)
    bytes[ox_random_below(random, (int)length)] =
        likely[ox_random_below(random, (int)sizeof likely)];
}

/* A piece is left out, or copied over another place. */
static size_t move_piece(ox_random *random, char *bytes, size_t length) {
  if (length < 4) return length;
  size_t from = (size_t)ox_random_below(random, (int)length);
  size_t to = (size_t)ox_random_below(random, (int)length);
  size_t most = length - (from > to ? from : to);
  size_t piece = (size_t)ox_random_below(random, (int)(most < 400 ? most : 400) + 1);
  if (ox_random_below(random, 2)) {
    memmove(bytes + to, bytes + from, piece);
    return length;
  }
  memmove(bytes + from, bytes + from + piece, length - from - piece);
  return length - piece;
}

static size_t mutate(ox_random *random, char *bytes, size_t length) {
  int times = 1 + ox_random_below(random, 30);
  switch (ox_random_below(random, 5)) {
  case 0:
    return (size_t)ox_random_below(random, (int)length + 1);
  case 1:
    turn_bits(random, bytes, length, times);
    return length;
  case 2:
    change_bytes(random, bytes, length, times * 10);
    return length;
  case 3:
    return move_piece(random, bytes, length);
  default:
    change_bytes(random, bytes, length, times);
    return move_piece(random, bytes, length - (size_t)ox_random_below(random, 200));
  }
}

static void check_point(const ox_navdata *data, const ox_point_key *key) {
  ox_published_point p;
  char why[OX_REMARK_BYTES];
  if (ox_navdata_point(data, key, &p, why, sizeof why) == OX_ERROR) {
    assert_true(strlen(why) > 10);
    return;
  }
  assert_true(ox_latlon_valid(p.at));
  assert_true(isfinite(p.variation_deg) && fabs(p.variation_deg) <= 180);
  assert_true(isfinite(p.declination_deg) && fabs(p.declination_deg) <= 180);
  assert_true(isfinite(p.elevation_ft) && strlen(p.name) < sizeof p.name);
}

static void check_hold(const ox_navdata *data, size_t index) {
  ox_published_hold h;
  ox_published_case c;
  char text[64];
  assert_int_equal(ox_navdata_hold(data, index, &h), OX_OK);
  assert_true(h.inbound_deg >= 0 && h.inbound_deg < 360);
  assert_true(isfinite(h.leg_s) && isfinite(h.leg_nm) && h.leg_s >= 0 && h.leg_nm >= 0);
  assert_true(h.leg_given == (h.leg_s + h.leg_nm > 0));
  assert_true(isfinite(h.altitude_low_ft) && isfinite(h.altitude_high_ft));
  assert_true(strlen(h.fix.ident) > 0);
  ox_published_altitude_text(&h, text, sizeof text);
  check_point(data, &h.fix);
  assert_int_not_equal(ox_navdata_case(data, index, &c, NULL, 0), OX_ERROR);
  assert_int_equal(ox_case_check(&c.c, NULL, 0), 0);
  size_t found;
  assert_true(ox_navdata_find(data, &(ox_hold_query){.fix = h.fix.ident}, index, &found));
  assert_int_equal(found, index);
}

static void any_damage_is_survived_and_counted(void **state) {
  (void)state;
  size_t whole;
  char *original = excerpt_bytes(&whole);
  ox_random random = {20000};
  size_t holds = 0, left_out = 0;
  for (int i = 0; i < VARIANTS; i++) {
    char *copy = malloc(whole);
    assert_non_null(copy);
    memcpy(copy, original, whole);
    size_t length = mutate(&random, copy, whole);
    /* Exactly as many bytes as there are, so that a sanitizer sees any byte too many. */
    char *exact = realloc(copy, length ? length : 1);
    assert_non_null(exact);
    ox_navdata *data = open_bytes(exact, length);
    left_out += skipped_in_all(data);
    for (size_t k = 0; k < ox_navdata_hold_count(data); k++)
      check_hold(data, k);
    holds += ox_navdata_hold_count(data);
    ox_navdata_close(data);
    free(exact);
  }
  free(original);
  /* The damage was neither nothing nor everything. */
  assert_true(holds > VARIANTS * 5 && holds < VARIANTS * 12);
  assert_true(left_out > VARIANTS * 20);
}

int main(void) {
  const struct CMUnitTest tests[] = {cmocka_unit_test(any_damage_is_survived_and_counted)};
  return cmocka_run_group_tests(tests, NULL, NULL);
}
