/* A fuzz target for the clearance reader: any text is read without harm, what comes out is whole
 * and can be said and read again (tests/clearance/hostile.h). Not part of the build; from the top
 * folder:
 *
 *   clang -g -O1 -fsanitize=fuzzer,address,undefined -ffp-contract=off -Iinclude \
 *     -Itests/clearance '-DOX_LOCALE_DIR="."' tests/fuzz/fuzz_clearance.c src/text/text.c \
 *     src/clearance/[a-z]*.c src/words/[a-z]*.c src/engine/[a-z]*.c src/places/[a-z]*.c \
 *     -lproj -lm -o fuzz_clearance
 *   mkdir -p corpus && ./fuzz_clearance -max_len=2100 corpus
 *
 * The first byte chooses the wording and the equipment, the second the time. */
#include <stdint.h>
#include <stdio.h>

#include "hostile.h"

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length);

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length) {
  static char text[OX_CLEARANCE_BYTES_MAX + 200];
  if (length < 2 || length - 2 >= sizeof text) return 0;
  memcpy(text, bytes + 2, length - 2);
  text[length - 2] = '\0';
  ox_clearance_options o = {.wording = bytes[0] & 1 ? OX_WORDING_ICAO : OX_WORDING_US,
                            .now_min = bytes[1] < 240 ? bytes[1] * 6 : -1,
                            .equipment = (ox_equipment)(bytes[0] / 2 % 3)};
  const char *why = hostile_wrong(text, &o);
  if (why) {
    fprintf(stderr, "%s: \"%s\"\n", why, text);
    abort();
  }
  return 0;
}
