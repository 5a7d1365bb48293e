/* Chunks of PNG: length, type, data, and a cyclic redundancy check over type and data. */
#include "png_parts.h"

#include <math.h>
#include <string.h>

/* Annex D of the specification, without its table: the files are small. */
static uint32_t crc_of(uint32_t crc, const uint8_t *bytes, size_t length) {
  for (size_t i = 0; i < length; i++) {
    crc ^= bytes[i];
    for (int bit = 0; bit < 8; bit++)
      crc = crc & 1u ? UINT32_C(0xedb88320) ^ (crc >> 1) : crc >> 1;
  }
  return crc;
}

static uint32_t u32_at(const uint8_t *p) {
  return (uint32_t)p[0] << 24 | (uint32_t)p[1] << 16 | (uint32_t)p[2] << 8 | (uint32_t)p[3];
}

void png_put_u32(uint8_t to[4], uint32_t value) {
  for (int i = 0; i < 4; i++) to[i] = (uint8_t)(value >> (24 - 8 * i));
}

void png_put_u16(uint8_t to[2], uint16_t value) {
  to[0] = (uint8_t)(value >> 8);
  to[1] = (uint8_t)value;
}

bool png_next_part(const GString *file, size_t *at, png_part *out) {
  const uint8_t *bytes = (const uint8_t *)file->str;
  if (*at + 12 > file->len) return false;
  size_t length = u32_at(bytes + *at);
  if (length > file->len - *at - 12) return false;
  *out = (png_part){(const char *)bytes + *at + 4, bytes + *at + 8, length};
  *at += length + 12;
  return true;
}

void png_add_part(GString *to, const char type[4], const void *data, size_t length) {
  uint8_t number[4];
  png_put_u32(number, (uint32_t)length);
  g_string_append_len(to, (const char *)number, 4);
  g_string_append_len(to, type, 4);
  if (length > 0) g_string_append_len(to, data, (gssize)length);
  uint32_t crc = crc_of(UINT32_C(0xffffffff), (const uint8_t *)type, 4);
  crc = crc_of(crc, data, length) ^ UINT32_C(0xffffffff);
  png_put_u32(number, crc);
  g_string_append_len(to, (const char *)number, 4);
}

static void add_text(GString *to, const char *keyword, const char *words) {
  GString *data = g_string_new(keyword);
  static const char uncompressed_no_language[5] = {0, 0, 0, 0, 0};
  g_string_append_len(data, uncompressed_no_language, 5);
  g_string_append(data, words);
  png_add_part(to, "iTXt", data->str, data->len);
  g_string_free(data, TRUE);
}

void png_add_words(GString *to, double dpi, const char *title, const char *description) {
  static const double INCHES_A_METRE = 1.0 / 0.0254;
  if (dpi > 0.0) {
    uint8_t physical[9];
    uint32_t a_metre = (uint32_t)lround(dpi * INCHES_A_METRE);
    png_put_u32(physical, a_metre);
    png_put_u32(physical + 4, a_metre);
    physical[8] = 1; /* the unit is the metre */
    png_add_part(to, "pHYs", physical, sizeof physical);
  }
  add_text(to, "Title", title);
  add_text(to, "Description", description);
  add_text(to, "Software", "Oxbow");
}
