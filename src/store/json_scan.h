/* JSON read strictly: what RFC 8259 does not allow is refused with its line and column. */
#ifndef OX_STORE_JSON_SCAN_H
#define OX_STORE_JSON_SCAN_H

#include <stdbool.h>
#include <stddef.h>

#define OX_JSON_DEPTH_MAX 64
#define OX_JSON_NUMBER_BYTES_MAX 63 /* what cJSON reads of a number */

typedef struct {
  size_t at;          /* byte offset of the fault */
  char sentence[200]; /* what is wrong there, without the place */
} ox_json_fault;

/* Whether the bytes are one JSON document in UTF-8; when not, *fault says where and why. */
bool ox_json_scan(const char *bytes, size_t length, ox_json_fault *fault);
/* Line and column (characters), both from 1, of a byte offset. */
void ox_json_place(const char *bytes, size_t length, size_t at, size_t *line, size_t *column);

#endif
