/* How long a clearance takes to be understood, against only cutting the same text at blanks with
 * strtok_r in the same run: what any reader has to pay before it understands anything. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "oxbow/clearance.h"

enum { ROUNDS = 7, TIMES = 2000 };

static double now_s(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static const struct {
  const char *name, *text;
} rows[] = {
    {"shorthand", "hold SW of LARCH on the 240 radial, 1 min legs, L turns, EFC 1825z, maintain "
                  "5000, max 200 kt"},
    {"full words", "Cleared to the LARCH VOR, hold southwest on the two four zero radial, left "
                   "turns, one and one half minute legs, expect further clearance one eight two "
                   "five, maintain one zero thousand"},
    {"ICAO", "hold at ZAG VOR, FL100, inbound track 218 degrees, right hand pattern, outbound time "
             "1 minute, expected approach time 1825"},
    {"does not fit",
     "hold southwest of LARCH on the 045 radial, left turns, right turns, 250 kt at "
     "5000"},
};

static double read_s(const char *text) {
  static ox_clearance c;
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    double begin = now_s();
    for (int i = 0; i < TIMES; i++)
      if (ox_clearance_read(text, NULL, NULL, &c) == OX_ERROR || c.item_count < 5) {
        fprintf(stderr, "bench_clearance: not understood: %s\n", text);
        exit(1);
      }
    best = fmin(best, (now_s() - begin) / TIMES);
  }
  return best;
}

static double strtok_s(const char *text, size_t *words) {
  char copy[OX_CLEARANCE_BYTES_MAX + 1];
  double best = HUGE_VAL;
  for (int round = 0; round < ROUNDS; round++) {
    double begin = now_s();
    for (int i = 0; i < TIMES; i++) {
      memcpy(copy, text, strlen(text) + 1);
      char *rest;
      *words = 0;
      for (char *w = strtok_r(copy, " ,.", &rest); w; w = strtok_r(NULL, " ,.", &rest))
        ++*words;
    }
    best = fmin(best, (now_s() - begin) / TIMES);
  }
  return best;
}

int main(void) {
  printf("clearance     bytes  words  understood  strtok_r only  ratio\n");
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    size_t words;
    double cut = strtok_s(rows[i].text, &words), understood = read_s(rows[i].text);
    printf("%-12s  %5zu  %5zu  %7.2f us  %10.2f us  %5.1f\n", rows[i].name, strlen(rows[i].text),
           words, understood * 1e6, cut * 1e6, understood / cut);
  }
  return 0;
}
