/* The index: where the holds and the points of a file stand, and nothing else. */
#ifndef OX_NAVDATA_INDEX_H
#define OX_NAVDATA_INDEX_H

#include <stdint.h>

#include "record.h"

/* Offsets take 4 bytes: files stay below 4 GiB. */
#define OX_NAVDATA_BYTES_MAX ((size_t)UINT32_MAX)

struct ox_navdata {
  const unsigned char *bytes;
  size_t length;
  int file;    /* of a mapped file; -1 for bytes in memory */
  bool mapped; /* an empty file is not */
  uint32_t *holds; /* offsets, in the order of the file */
  size_t hold_room;
  uint32_t *slots; /* points by key, open addressing: offset + 1, 0 is free */
  size_t slot_count; /* a power of two */
  ox_navdata_report report;
};

/* Fills holds, slots and report from bytes. False when memory is out. */
bool ox_index_build(ox_navdata *data);
/* The record of the point with that key, or NULL. */
ox_record ox_index_point(const ox_navdata *data, const ox_packed_key *key);
/* Whether the mapped bytes may still be read. */
bool ox_navdata_whole(const ox_navdata *data);

#endif
