/* What is told apart by colour, as it is seen with each kind of colour blindness. Every line also
 * differs in width or dashes (test_palette.c); what is checked here has no dashes to go by. */
#include "ox_test.h"
#include "paint_cases.h"
#include "paint_private.h"

typedef struct {
  double l, a, b;
} lab;

/* Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision
 * Deficiency" (2009), table 1, severity 1.0, for linear RGB; from memory, each row sums to 1. */
static const struct {
  const char *name;
  double row[3][3];
} visions[] = {
    {"full", {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
    {"protan",
     {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216},
      {-0.003882, -0.048116, 1.051998}}},
    {"deutan",
     {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413},
      {-0.011820, 0.042940, 0.968881}}},
    {"tritan",
     {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602},
      {0.004733, 0.691367, 0.303900}}},
};
enum { FULL, PROTAN, DEUTAN, TRITAN, VISIONS };

/* IEC 61966-2-1. */
static double linear(double c) {
  return c <= 0.04045 ? c / 12.92 : pow((c + 0.055) / 1.055, 2.4);
}

static double curve(double t) {
  return t > 216.0 / 24389.0 ? cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
}

/* As that vision sees it, in CIE L*a*b* of the white D65. */
static lab seen(ox_rgb c, int vision) {
  double in[3] = {linear(c.r), linear(c.g), linear(c.b)}, out[3];
  for (int i = 0; i < 3; i++) {
    const double *row = visions[vision].row[i];
    out[i] = fmin(fmax(row[0] * in[0] + row[1] * in[1] + row[2] * in[2], 0.0), 1.0);
  }
  double x = 0.4124564 * out[0] + 0.3575761 * out[1] + 0.1804375 * out[2];
  double y = 0.2126729 * out[0] + 0.7151522 * out[1] + 0.0721750 * out[2];
  double z = 0.0193339 * out[0] + 0.1191920 * out[1] + 0.9503041 * out[2];
  double fx = curve(x / 0.95047), fy = curve(y), fz = curve(z / 1.08883);
  return (lab){116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz)};
}

static double rad(double deg) { return deg * acos(-1.0) / 180.0; }

static double hue_deg(double a, double b) {
  double h = a == 0.0 && b == 0.0 ? 0.0 : atan2(b, a) / rad(1.0);
  return h < 0.0 ? h + 360.0 : h;
}

/* CIEDE2000: ISO/CIE 11664-6; Sharma, Wu and Dalal, "The CIEDE2000 Color-Difference Formula" (2005),
 * equations 2 to 22. */
static double difference(lab p, lab q) {
  double mean_c = (hypot(p.a, p.b) + hypot(q.a, q.b)) / 2.0, c7 = pow(mean_c, 7.0);
  double g = 0.5 * (1.0 - sqrt(c7 / (c7 + pow(25.0, 7.0))));
  double a1 = (1.0 + g) * p.a, a2 = (1.0 + g) * q.a;
  double c1 = hypot(a1, p.b), c2 = hypot(a2, q.b);
  double h1 = hue_deg(a1, p.b), h2 = hue_deg(a2, q.b), dh = h2 - h1, h = h1 + h2;
  bool grey = c1 * c2 == 0.0;
  if (grey)
    dh = 0.0;
  else if (fabs(h1 - h2) > 180.0) {
    dh += dh > 0.0 ? -360.0 : 360.0;
    h += h < 360.0 ? 360.0 : -360.0;
  }
  if (!grey) h /= 2.0;
  double l = (p.l + q.l) / 2.0, c = (c1 + c2) / 2.0;
  double t = 1.0 - 0.17 * cos(rad(h - 30.0)) + 0.24 * cos(rad(2.0 * h)) +
             0.32 * cos(rad(3.0 * h + 6.0)) - 0.20 * cos(rad(4.0 * h - 63.0));
  double l50 = (l - 50.0) * (l - 50.0), mean7 = pow(c, 7.0);
  double sl = 1.0 + 0.015 * l50 / sqrt(20.0 + l50), sc = 1.0 + 0.045 * c;
  double sh = 1.0 + 0.015 * c * t, turn = (h - 275.0) / 25.0;
  double rt = -sin(rad(60.0 * exp(-turn * turn))) * 2.0 * sqrt(mean7 / (mean7 + pow(25.0, 7.0)));
  double by_l = (q.l - p.l) / sl, by_c = (c2 - c1) / sc;
  double by_h = 2.0 * sqrt(c1 * c2) * sin(rad(dh / 2.0)) / sh;
  return sqrt(by_l * by_l + by_c * by_c + by_h * by_h + rt * by_c * by_h);
}

static ox_rgb hex(unsigned rgb) {
  return (ox_rgb){(rgb >> 16 & 255) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0};
}

/* Rows of table 1 of Sharma, Wu and Dalal (2005), from memory. */
static void the_difference_is_the_published_one(void **state) {
  (void)state;
  static const struct {
    lab p, q;
    double difference;
  } rows[] = {
      {{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
      {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
      {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
      {{50, 0, 0}, {50, -1, 2}, 2.3669},
      {{50, 2.49, -0.001}, {50, -2.49, 0.0009}, 7.1792},
      {{50, 2.49, -0.001}, {50, -2.49, 0.0011}, 7.2195},
      {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
      {{50, 2.5, 0}, {50, 3.2592, 0.335}, 1.0000},
      {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
      {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    assert_close(difference(rows[i].p, rows[i].q), rows[i].difference, 0.0001, "CIEDE2000");
}

/* The hues of Okabe and Ito, and what their weakest pairs come to in the model: blue and bluish
 * green 12 (tritan), vermillion and bluish green 18 (protan). */
static void the_model_gives_the_known_weak_pairs(void **state) {
  (void)state;
  ox_rgb blue = hex(0x0072b2), green = hex(0x009e73), vermillion = hex(0xd55e00);
  assert_close(difference(seen(blue, TRITAN), seen(green, TRITAN)), 12, 1.5, "blue and green");
  assert_close(difference(seen(vermillion, PROTAN), seen(green, PROTAN)), 18, 1.5,
               "vermillion and green");
  for (int v = 0; v < VISIONS; v++) {
    lab white = seen(hex(0xffffff), v), black = seen(hex(0x000000), v);
    assert_close(difference(white, black), 100, 0.1, visions[v].name);
  }
}

static void check(const ox_palette *p, ox_hue a, ox_hue b, double least) {
  for (int v = 0; v < VISIONS; v++) {
    double got = difference(seen(p->ink[a], v), seen(p->ink[b], v));
    if (got >= least) continue;
    print_error("%s: hues %d and %d differ by %.1f (%s), wanted %.0f\n", p->name, (int)a, (int)b,
                got, visions[v].name, least);
    fail();
  }
}

/* A difference of 10 is seen at a glance; the bound is our own choice. */
static void inks_of_the_pen_are_told_apart(void **state) {
  (void)state;
  for (int id = 0; id < OX_PALETTE_COUNT; id++) {
    const ox_palette *p = ox_palette_get((ox_palette_id)id);
    check(p, OX_HUE_PEN_BLACK, OX_HUE_PEN_BLUE, 10);
    check(p, OX_HUE_PEN_BLACK, OX_HUE_PEN_VERMILLION, 10);
    check(p, OX_HUE_PEN_BLUE, OX_HUE_PEN_VERMILLION, 10);
  }
}

static void check_all(const ox_hue (*pairs)[2], size_t count, double least) {
  for (int id = 0; id < OX_PALETTE_COUNT; id++)
    for (size_t i = 0; i < count; i++)
      check(ox_palette_get((ox_palette_id)id), pairs[i][0], pairs[i][1], least);
}

static void lines_without_dashes_are_told_apart(void **state) {
  (void)state;
  static const ox_hue pairs[][2] = {{OX_HUE_TRACK, OX_HUE_COURSE},
                                    {OX_HUE_TRACK, OX_HUE_GUESS},
                                    {OX_HUE_COURSE, OX_HUE_GUESS}};
  check_all(pairs, sizeof pairs / sizeof *pairs, 10);
}

/* These have dashes or say what they are about; half of it will do. The weakest are the words of
 * track and entry: 6.5 (tritan). */
static void the_rest_is_not_all_one(void **state) {
  (void)state;
  static const ox_hue pairs[][2] = {{OX_HUE_TRACK, OX_HUE_ENTRY},
                                    {OX_HUE_TRACK, OX_HUE_COMPARE},
                                    {OX_HUE_TRACK, OX_HUE_OTHER},
                                    {OX_HUE_ENTRY, OX_HUE_COMPARE},
                                    {OX_HUE_COMPARE, OX_HUE_OTHER},
                                    {OX_HUE_TRACK_TEXT, OX_HUE_ENTRY_TEXT},
                                    {OX_HUE_TRACK_TEXT, OX_HUE_COMPARE_TEXT},
                                    {OX_HUE_ENTRY_TEXT, OX_HUE_COMPARE_TEXT}};
  check_all(pairs, sizeof pairs / sizeof *pairs, 5);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_difference_is_the_published_one),
      cmocka_unit_test(the_model_gives_the_known_weak_pairs),
      cmocka_unit_test(inks_of_the_pen_are_told_apart),
      cmocka_unit_test(lines_without_dashes_are_told_apart),
      cmocka_unit_test(the_rest_is_not_all_one),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
