/* Paper, pages and the order of the holds. */
#include "oxbow/sheets.h"

/* SplitMix64 (public domain algorithm): the same order on every machine. */
static uint64_t next(uint64_t *state) {
  uint64_t z = (*state += UINT64_C(0x9e3779b97f4a7c15));
  z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
  return z ^ (z >> 31);
}

const char *ox_paper_name(ox_paper paper) {
  return paper == OX_PAPER_LETTER ? "letter" : "a4";
}

ox_vec ox_sheets_size(const ox_sheets_options *o) {
  static const double PT_A_MM = 72.0 / 25.4;
  ox_vec upright = o->paper == OX_PAPER_LETTER ? (ox_vec){8.5 * 72.0, 11.0 * 72.0}
                                               : (ox_vec){210.0 * PT_A_MM, 297.0 * PT_A_MM};
  return o->across ? (ox_vec){upright.y, upright.x} : upright;
}

size_t ox_sheets_pages(size_t count, const ox_sheets_options *o) {
  size_t each = o->per_page > 0 ? (size_t)o->per_page : 1;
  return count / each + (count % each > 0);
}

/* Fisher and Yates, from the end. The remainder favours low numbers by less than 1 in 10^15. */
void ox_sheets_order(size_t *order, size_t count, const ox_sheets_options *o) {
  uint64_t state = o->seed;
  for (size_t i = 0; i < count; i++) order[i] = i;
  for (size_t i = count; o->shuffled && i > 1; i--) {
    size_t other = (size_t)(next(&state) % i), kept = order[i - 1];
    order[i - 1] = order[other];
    order[other] = kept;
  }
}
