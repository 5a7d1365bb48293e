/* A fuzz target for the reader of navigation records: any bytes are indexed, every line is counted
 * once, every hold becomes a case that the engine accepts, and a lesson made of them reads back.
 * Not part of the build; from the top folder:
 *
 *   clang -g -O1 -fsanitize=fuzzer,address,undefined -ffp-contract=off -Iinclude \
 *     $(pkg-config --cflags proj) '-DOX_LOCALE_DIR="."' tests/fuzz/fuzz_navdata.c \
 *     src/navdata/[a-z]*.c src/places/[a-z]*.c src/engine/[a-z]*.c src/text/text.c \
 *     $(pkg-config --libs proj) -lm -o fuzz_navdata
 *   mkdir -p corpus && cp tests/data/navdata/cifp-excerpt.txt corpus
 *   ./fuzz_navdata -max_len=8192 corpus
 */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "oxbow/fields.h"
#include "oxbow/navdata.h"

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length);

static void check_report(const ox_navdata *data) {
  const ox_navdata_report *r = ox_navdata_report_of(data);
  size_t sum = r->holds + r->points;
  for (int i = 0; i < OX_SKIP_COUNT; i++) {
    sum += r->skipped[i];
    if ((r->skipped[i] > 0) != (r->first_line[i] > 0)) abort();
    if (r->first_line[i] > r->lines) abort();
  }
  if (sum != r->lines) abort();
}

static void check_hold(const ox_navdata *data, size_t index, ox_points *points) {
  char remark[OX_REMARK_BYTES], text[64];
  ox_published_hold hold;
  ox_case c;
  ox_fix fix;
  ox_latlon at;
  if (ox_navdata_hold(data, index, &hold) != OX_OK) abort();
  if (!(hold.inbound_deg >= 0.0 && hold.inbound_deg < 360.0)) abort();
  ox_published_altitude_text(&hold, text, sizeof text);
  ox_status status =
      ox_navdata_lesson_case(data, index, points, &c, &fix, remark, sizeof remark);
  if (status == OX_ERROR || (status == OX_ADVISORY) != (remark[0] != '\0')) abort();
  if (ox_case_check(&c, NULL, 0) != 0) abort();
  if (ox_fix_has_place(points, &fix, &c) &&
      (ox_fix_place(points, &fix, &c, &at, remark, sizeof remark) == OX_ERROR ||
       !ox_latlon_valid(at)))
    abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length) {
  static ox_points points;
  ox_navdata *data = NULL;
  char remark[OX_REMARK_BYTES];
  points.count = 0;
  if (ox_navdata_from_bytes(bytes, length, &data, remark, sizeof remark) == OX_ERROR) return 0;
  check_report(data);
  for (size_t i = 0; i < ox_navdata_hold_count(data); i++) check_hold(data, i, &points);
  ox_navdata_close(data);
  return 0;
}
