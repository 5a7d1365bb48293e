/* The chunks of a PNG file (PNG specification, third edition; ISO/IEC 15948), as far as words,
 * resolution and moving pictures need them. Private to the painter. */
#ifndef OX_PAINT_PNG_PARTS_H
#define OX_PAINT_PNG_PARTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <pango/pango.h> /* for its GLib: strings */

/* Signature and IHDR: what stands before the first chunk that can be added. */
#define PNG_HEAD_BYTES 33u

typedef struct {
  const char *type; /* four letters */
  const uint8_t *data;
  size_t length;
} png_part;

/* The next chunk of a whole file in memory; *at begins at 8. False at the end, or where the bytes
 * are no chunk. */
bool png_next_part(const GString *file, size_t *at, png_part *out);

void png_put_u32(uint8_t to[4], uint32_t value);
void png_put_u16(uint8_t to[2], uint16_t value);
void png_add_part(GString *to, const char type[4], const void *data, size_t length);

/* pHYs (pixels a metre from dots an inch; none where dpi is 0) and the words as iTXt, UTF-8. */
void png_add_words(GString *to, double dpi, const char *title, const char *description);

#endif
