/* The index: where the holds and the points of a file stand, and nothing else. */
#ifndef OX_NAVDATA_INDEX_H
#define OX_NAVDATA_INDEX_H

#include <stdint.h>

#include "record.h"

/* Offsets take 4 bytes: files stay below 4 GiB. */
#define OX_NAVDATA_BYTES_MAX ((size_t)UINT32_MAX)
/* A line longer than this is no record with blanks after it, but something else. */
#define OX_NAVDATA_LINE_MAX ((size_t)65536)

/* A point in the table: open addressing by the hash of its key. */
typedef struct {
  uint32_t place; /* offset of the record + 1; 0: free */
  uint32_t hash;
} ox_slot;

struct ox_navdata {
  const unsigned char *bytes;
  size_t length;
  int file;    /* of a mapped file; -1 for bytes in memory */
  bool mapped; /* an empty file is not */
  uint32_t *holds; /* offsets, in the order of the file */
  size_t hold_room;
  ox_slot *slots;
  size_t slot_count; /* a power of two, or 0 */
  ox_navdata_report report;
};

/* Adds the whole lines of a piece of the file that begins with a line, at an offset; with `last`
 * also what stands after the last line feed. *used is how many bytes that was. False when memory
 * is out. data->bytes must be readable. */
bool ox_index_add(ox_navdata *data, const unsigned char *piece, size_t length, size_t offset,
                  bool last, size_t *used);
/* Counts a line that is too long to be looked at. */
void ox_index_add_long_line(ox_navdata *data);
/* The record of the point with that key, or NULL. */
ox_record ox_index_point(const ox_navdata *data, const ox_packed_key *key);

/* Whether the mapped bytes may still be read. */
bool ox_navdata_whole(const ox_navdata *data);
/* ox_navdata_point without that question. */
ox_status ox_navdata_point_there(const ox_navdata *data, const ox_point_key *key,
                                 ox_published_point *out, char *remark, size_t remark_bytes);

#endif
