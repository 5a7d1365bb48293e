/* Bank, rate and radius of a level turn. Tables: still air, g = 9.80665 (C; the last radius at 250
 * KTAS is 1.57745 and cut, not rounded, in the table); published pairs with their source. */
#include "ox_test.h"
#include "oxbow/turn.h"
#include "oxbow/units.h"

static const struct {
  double tas, bank3, radius3, rate25, radius25, rate30, radius30;
} turns[] = {
    {80, 12.39, 0.4244, 6.366, 0.2000, 7.882, 0.1615},
    {90, 13.89, 0.4775, 5.659, 0.2531, 7.007, 0.2044},
    {100, 15.36, 0.5305, 5.093, 0.3125, 6.306, 0.2524},
    {110, 16.81, 0.5836, 4.630, 0.3781, 5.733, 0.3054},
    {120, 18.24, 0.6366, 4.244, 0.4500, 5.255, 0.3634},
    {130, 19.65, 0.6897, 3.918, 0.5281, 4.851, 0.4265},
    {140, 21.03, 0.7427, 3.638, 0.6125, 4.504, 0.4947},
    {150, 22.39, 0.7958, 3.395, 0.7031, 4.204, 0.5679},
    {160, 23.72, 0.8488, 3.183, 0.8000, 3.941, 0.6461},
    {170, 25.03, 0.9019, 2.996, 0.9031, 3.709, 0.7294},
    {180, 26.31, 0.9549, 2.829, 1.0125, 3.503, 0.8177},
    {200, 28.78, 1.0610, 2.547, 1.2500, 3.153, 1.0096},
    {220, 31.14, 1.1671, 2.315, 1.5125, 2.866, 1.2216},
    {250, 34.48, 1.3263, 2.037, 1.9531, 2.522, 1.5774},
    {265, 36.05, 1.4059, 1.922, 2.1945, 2.380, 1.7724},
};

static void bank_rate_and_radius_match_the_table(void **state) {
  for (size_t i = 0; i < sizeof turns / sizeof *turns; i++) {
    double tas = turns[i].tas;
    double rate25 = ox_rate_for_bank_deg_s(tas, 25), rate30 = ox_rate_for_bank_deg_s(tas, 30);
    char what[24];
    snprintf(what, sizeof what, "%.0f KTAS", tas);
    assert_close(ox_bank_for_rate_deg(tas, 3), turns[i].bank3, 0.0051, what);
    assert_close(ox_radius_nm(tas, 3), turns[i].radius3, 0.000051, what);
    assert_close(rate25, turns[i].rate25, 0.00051, what);
    assert_close(ox_radius_nm(tas, rate25), turns[i].radius25, 0.000051, what);
    assert_close(rate30, turns[i].rate30, 0.00051, what);
    assert_close(ox_radius_nm(tas, rate30), turns[i].radius30, 0.00006, what);
  }
}

/* PHAK ch. 5 (M): 120 kt, 30 degrees 2 215 ft and 5.25 deg/s; 240 kt 8 861 ft and 2.62 deg/s;
 * the handbook's constants are rounded: 11.26 stands for 11.294 (0.31 %), 1 091 for 1 092.2. */
static void the_handbook_examples_come_out(void **state) {
  static const struct {
    double tas, ft, deg_s;
  } rows[] = {{120, 2215, 5.25}, {240, 8861, 2.62}};
  for (size_t i = 0; i < 2; i++) {
    double rate = ox_rate_for_bank_deg_s(rows[i].tas, 30);
    assert_close(rate, rows[i].deg_s, 0.0035 * rows[i].deg_s, "rate");
    assert_close(ox_radius_nm(rows[i].tas, rate) * OX_FT_PER_NM, rows[i].ft, 0.0035 * rows[i].ft,
                 "radius");
  }
}

/* ICAO Doc 8168 Vol II: R = 3431 tan(bank) / (pi V), at 25 degrees 509.26 / V; r = V / (20 pi R)
 * (F). 3431 is 68 625 / 20 rounded (3431.25), hence 1e-4. */
static void the_icao_design_formulas_come_out(void **state) {
  for (double tas = 60; tas <= 400; tas += 20)
    for (double bank = 5; bank <= 45; bank += 5) {
      double rate = ox_rate_for_bank_deg_s(tas, bank);
      double design = 3431 * tan(bank * OX_RAD_PER_DEG) / (OX_PI * tas);
      assert_close(rate, design, 1.5e-4 * design, "rate");
      assert_close(ox_radius_nm(tas, rate), tas / (20 * OX_PI * rate), 1e-12 * tas, "radius");
    }
  assert_close(ox_rate_for_bank_deg_s(157.23, 25), 3.24, 0.0051, "Table App C-1 line 4 (F)");
  assert_close(ox_radius_nm(157.23, 3), 0.83, 0.0051, "Table App C-1 line 5 (F)");
}

/* CNATRA P-340 p. 55 (F), standard-rate and half-rate banks at the printed TAS; +-1 degree, +-2
 * in the last two cells. 154 *sic* is taken as the 164 it should be. */
static void published_banks_come_out(void **state) {
  static const struct {
    double tas, rate, bank, tolerance;
  } rows[] = {
      {101, 3, 15, 1},   {122, 3, 18, 1}, {152, 1.5, 12, 1}, {152, 3, 23, 1},
      {108, 3, 16, 1},   {130, 3, 20, 1}, {162, 1.5, 12, 1}, {162, 3, 24, 1},
      {117, 3, 18, 1},   {140, 3, 21, 1}, {175, 1.5, 13, 1}, {175, 3, 26, 1},
      {127, 3, 19, 1},   {152, 3, 23, 1}, {190, 1.5, 15, 1}, {190, 3, 29, 2},
      {137, 3, 21, 1},   {164, 3, 25, 1}, {205, 1.5, 15, 1}, {205, 3, 31, 2},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(ox_bank_for_rate_deg(rows[i].tas, rows[i].rate), rows[i].bank,
                 rows[i].tolerance, "P-340 p. 55");
}

/* Rules of thumb (F): V/10 + 7 and 15 % of the TAS, at 110 and 120 kt; exact 18.24 at 120 (C). */
static void the_rules_of_thumb_are_near(void **state) {
  assert_close(ox_bank_for_rate_deg(110, 3), 110 / 10.0 + 7, 1.5, "V/10 + 7 at 110");
  assert_close(ox_bank_for_rate_deg(120, 3), 120 * 0.15, 1, "15 % at 120");
  assert_close(ox_bank_for_rate_deg(120, 3), 120 / 10.0 + 7, 1, "V/10 + 7 at 120");
  assert_close(ox_bank_for_rate_deg(120, 3), 18.24, 0.0051, "exact at 120");
}

/* Rate one needs 25 degrees at 169.8 KTAS and 30 at 210.2 (C); ICAO: above 170 kt always 25 (F). */
static void the_least_bank_crosses_over_at_170_and_210_knots(void **state) {
  assert_close(ox_bank_for_rate_deg(169.8, 3), 25, 0.01, "25 degrees");
  assert_close(ox_bank_for_rate_deg(210.2, 3), 30, 0.01, "30 degrees");
  static const struct {
    double tas, max_bank;
    bool limited;
  } rows[] = {{169.7, 25, false}, {170, 25, true}, {210, 30, false}, {210.4, 30, true},
              {90, 25, false},    {400, 30, true}, {120, 15, true}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_turn_rate t = ox_turn_rate_for(rows[i].tas, 3, rows[i].max_bank);
    assert_int_equal(t.bank_limits, rows[i].limited);
    if (rows[i].limited) {
      assert_close(t.bank_deg, rows[i].max_bank, 1e-12, "the bank limit");
      assert_true(t.rate_deg_s < 3);
    } else {
      assert_close(t.rate_deg_s, 3, 1e-12, "the wanted rate");
      assert_true(t.bank_deg <= rows[i].max_bank);
    }
  }
}

static void the_three_numbers_of_a_turn_belong_together(void **state) {
  ox_random r = {41};
  for (int i = 0; i < 20000; i++) {
    double tas = ox_random_between(&r, 30, 600);
    double wanted = ox_random_between(&r, 0.5, 6), bank = ox_random_between(&r, 5, 45);
    ox_turn_rate t = ox_turn_rate_for(tas, wanted, bank);
    assert_true(t.bank_deg <= bank + 1e-12 && t.rate_deg_s <= wanted + 1e-12);
    assert_close(ox_bank_for_rate_deg(tas, t.rate_deg_s), t.bank_deg, 1e-9, "bank");
    assert_close(ox_radius_nm(tas, t.rate_deg_s), t.radius_nm, 1e-9, "radius");
    assert_close(ox_rate_for_bank_deg_s(tas, t.bank_deg), t.rate_deg_s, 1e-9, "rate");
    /* Arc length in a full turn is TAS times the time of it. */
    assert_close(2 * OX_PI * t.radius_nm, tas / OX_S_PER_H * 360 / t.rate_deg_s, 1e-9, "arc");
  }
}

/* Standard rate: 360 degrees in 2 min; half rate 90 degrees in 60 s (P-1215, F). The width of the
 * hold is two radii: 0.955, 1.061, 1.273, 1.592 NM at 90, 100, 120, 150 kt (C). */
static void the_width_of_a_rate_one_hold_is_two_radii(void **state) {
  static const struct {
    double tas, width;
  } rows[] = {{90, 0.955}, {100, 1.061}, {120, 1.273}, {150, 1.592}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(2 * ox_radius_nm(rows[i].tas, 3), rows[i].width, 0.00051, "width");
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(bank_rate_and_radius_match_the_table),
      cmocka_unit_test(the_handbook_examples_come_out),
      cmocka_unit_test(the_icao_design_formulas_come_out),
      cmocka_unit_test(published_banks_come_out),
      cmocka_unit_test(the_rules_of_thumb_are_near),
      cmocka_unit_test(the_least_bank_crosses_over_at_170_and_210_knots),
      cmocka_unit_test(the_three_numbers_of_a_turn_belong_together),
      cmocka_unit_test(the_width_of_a_rate_one_hold_is_two_radii),
  };
  return cmocka_run_group_tests_name("turn", tests, NULL, NULL);
}
