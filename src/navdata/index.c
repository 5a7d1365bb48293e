/* One pass over the file, piece by piece. A line of exactly 132 printable characters, as nearly
 * all are, is found with seventeen 8-byte words and no search for its end; every other line goes
 * the slow way, which also finds out what is wrong with it. */
#include "index.h"

#include <stdlib.h>
#include <string.h>

#define ONES UINT64_C(0x0101010101010101)
#define HIGHS UINT64_C(0x8080808080808080)

/* --- lines --- */

static uint64_t word_at(const unsigned char *p) {
  uint64_t w;
  memcpy(&w, p, sizeof w);
  return w;
}

/* High bits where a byte is 0x80 or more, or some byte is below 0x20. Exact as a whole: a borrow
 * only ever starts at a byte below 0x20. */
static uint64_t bad_bits(uint64_t w) { return (w | (w - ONES * 0x20)) & HIGHS; }

static bool printable_record(const unsigned char *p) {
  uint64_t bad = bad_bits(word_at(p + OX_RECORD_COLUMNS - 8));
  for (size_t i = 0; i < OX_RECORD_COLUMNS / 8; i++)
    bad |= bad_bits(word_at(p + 8 * i));
  return bad == 0;
}

/* Length without blanks and a carriage return at the end. */
static size_t without_blanks(const unsigned char *p, size_t length) {
  while (length > 0 && (p[length - 1] == ' ' || p[length - 1] == '\r'))
    length--;
  return length;
}

/* What is wrong with a line found the slow way; OX_SKIP_COUNT when nothing is. */
static ox_skip fault_of(const unsigned char *p, size_t length) {
  if (length > OX_NAVDATA_LINE_MAX) return OX_SKIP_LONG;
  if (without_blanks(p, length) == 0) return OX_SKIP_EMPTY;
  if (length < OX_RECORD_COLUMNS) return OX_SKIP_SHORT;
  if (without_blanks(p, length) > OX_RECORD_COLUMNS) return OX_SKIP_LONG;
  return printable_record(p) ? OX_SKIP_COUNT : OX_SKIP_BYTES;
}

/* --- points --- */

static uint64_t mix(uint64_t h) {
  h = (h ^ (h >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
  h = (h ^ (h >> 27)) * UINT64_C(0x94d049bb133111eb);
  return h ^ (h >> 31);
}

static uint32_t hash_of(const ox_packed_key *k) {
  return (uint32_t)mix(word_at(k->bytes) + mix(word_at(k->bytes + 8)));
}

static bool same_key(ox_record r, const ox_packed_key *key) {
  ox_packed_key there = ox_record_key(r, ox_record_kind_of(r));
  return memcmp(there.bytes, key->bytes, sizeof there.bytes) == 0;
}

/* The slot with that key, or the free one where it belongs. At least one slot is free. A record is
 * looked at only when the hashes agree, so that few pages of the file are touched. */
static ox_slot *slot_for(const ox_navdata *data, const ox_packed_key *key, uint32_t hash) {
  size_t mask = data->slot_count - 1;
  for (size_t i = hash & mask;; i = (i + 1) & mask) {
    ox_slot *slot = &data->slots[i];
    if (slot->place == 0) return slot;
    if (slot->hash == hash && same_key(data->bytes + (slot->place - 1), key)) return slot;
  }
}

static bool grow_slots(ox_navdata *data) {
  size_t old_count = data->slot_count, count = old_count ? old_count * 2 : 256, mask = count - 1;
  ox_slot *slots = calloc(count, sizeof *slots);
  if (!slots) return false;
  for (size_t i = 0; i < old_count; i++) {
    ox_slot slot = data->slots[i];
    if (slot.place == 0) continue;
    size_t at = slot.hash & mask;
    while (slots[at].place != 0)
      at = (at + 1) & mask;
    slots[at] = slot;
  }
  free(data->slots);
  data->slots = slots;
  data->slot_count = count;
  return true;
}

static void skip(ox_navdata *data, ox_skip reason) {
  ox_navdata_report *report = &data->report;
  if (report->skipped[reason]++ == 0) report->first_line[reason] = report->lines;
}

static bool add_point(ox_navdata *data, ox_record r, ox_record_kind kind, size_t offset) {
  /* Three quarters full at most. */
  if (data->report.points * 4 >= data->slot_count * 3 && !grow_slots(data)) return false;
  ox_packed_key key = ox_record_key(r, kind);
  uint32_t hash = hash_of(&key);
  ox_slot *slot = slot_for(data, &key, hash);
  if (slot->place != 0) {
    skip(data, OX_SKIP_REPEATED);
  } else if (!ox_record_point_usable(r, kind)) {
    skip(data, OX_SKIP_POINT);
  } else {
    *slot = (ox_slot){.place = (uint32_t)offset + 1, .hash = hash};
    data->report.points++;
  }
  return true;
}

/* --- holds --- */

static bool add_hold(ox_navdata *data, ox_record r, ox_record_kind kind, size_t offset) {
  ox_published_hold unused;
  if (!ox_record_hold(r, kind, &unused)) {
    skip(data, OX_SKIP_HOLD);
    return true;
  }
  if (data->report.holds == data->hold_room) {
    size_t room = data->hold_room ? data->hold_room * 2 : 256;
    uint32_t *holds = realloc(data->holds, room * sizeof *holds);
    if (!holds) return false;
    data->holds = holds;
    data->hold_room = room;
  }
  data->holds[data->report.holds++] = (uint32_t)offset;
  return true;
}

/* --- the pass --- */

static bool add_record(ox_navdata *data, ox_record r, size_t offset) {
  ox_record_kind kind = ox_record_kind_of(r);
  if (r[0] != 'S' && r[0] != 'T')
    skip(data, OX_SKIP_NO_RECORD);
  else if (kind == OX_KIND_OTHER || (kind == OX_KIND_LEG && !ox_record_leg_is_hold(r)))
    skip(data, OX_SKIP_OTHER_KIND);
  else if (!ox_record_is_primary(r, kind))
    skip(data, OX_SKIP_CONTINUATION);
  else if (kind == OX_KIND_LEG || kind == OX_KIND_HOLD)
    return add_hold(data, r, kind, offset);
  else
    return add_point(data, r, kind, offset);
  return true;
}

/* A line that is not plainly a record and its line feed. */
static bool add_line(ox_navdata *data, const unsigned char *p, size_t length, size_t offset) {
  data->report.lines++;
  if (length > 0 && p[length - 1] == '\r') length--;
  ox_skip fault = fault_of(p, length);
  if (fault == OX_SKIP_COUNT) return add_record(data, p, offset);
  skip(data, fault);
  return true;
}

void ox_index_add_long_line(ox_navdata *data) {
  data->report.lines++;
  skip(data, OX_SKIP_LONG);
}

bool ox_index_add(ox_navdata *data, const unsigned char *piece, size_t length, size_t offset,
                  bool last, size_t *used) {
  size_t at = 0;
  while (at < length) {
    const unsigned char *p = piece + at;
    size_t left = length - at;
    if (left > OX_RECORD_COLUMNS && p[OX_RECORD_COLUMNS] == '\n' && printable_record(p)) {
      data->report.lines++;
      if (!add_record(data, p, offset + at)) return false;
      at += OX_RECORD_COLUMNS + 1;
      continue;
    }
    const unsigned char *feed = memchr(p, '\n', left);
    if (!feed && !last) break;
    size_t line = feed ? (size_t)(feed - p) : left;
    if (!add_line(data, p, line, offset + at)) return false;
    at += feed ? line + 1 : line;
  }
  *used = at;
  return true;
}

ox_record ox_index_point(const ox_navdata *data, const ox_packed_key *key) {
  if (data->slot_count == 0) return NULL;
  const ox_slot *slot = slot_for(data, key, hash_of(key));
  return slot->place ? data->bytes + (slot->place - 1) : NULL;
}
