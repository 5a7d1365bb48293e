/* Opening. The index is made from pieces that are read, not from the mapping: a page costs less to
 * read than to map, and only the pages that are asked for later come to stand in memory. Reading a
 * mapped file that another program has shortened would end this one; so its length is asked for
 * before each reading. */
#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include "index.h"
#include "oxbow/text.h"
#include "sentence.h"

enum { PIECE_BYTES = 1 << 18 };

static ox_status refuse(const char *why, char *remark, size_t bytes) {
  return ox_say(OX_ERROR, remark, bytes, "%s", why);
}

/* --- the index of a file --- */

typedef struct {
  unsigned char *bytes; /* PIECE_BYTES */
  size_t have;          /* bytes in it, from the beginning of a line */
  size_t offset;        /* of its first byte in the file */
  bool in_long_line;    /* until the next line feed everything is thrown away */
} piece;

/* Drops what is in front of the next line feed, when in a long line. */
static void drop_long_line(piece *p) {
  if (!p->in_long_line || p->have == 0) return;
  const unsigned char *feed = memchr(p->bytes, '\n', p->have);
  size_t drop = feed ? (size_t)(feed - p->bytes) + 1 : p->have;
  p->in_long_line = feed == NULL;
  p->have -= drop;
  p->offset += drop;
  memmove(p->bytes, p->bytes + drop, p->have);
}

static bool add_piece(ox_navdata *data, piece *p, bool last) {
  size_t used = 0;
  drop_long_line(p);
  if (!ox_index_add(data, p->bytes, p->have, p->offset, last, &used)) return false;
  if (used == 0 && p->have == PIECE_BYTES) {
    ox_index_add_long_line(data);
    p->in_long_line = true;
    drop_long_line(p);
    return true;
  }
  p->have -= used;
  p->offset += used;
  memmove(p->bytes, p->bytes + used, p->have);
  return true;
}

/* NULL, or why it cannot be read. */
static const char *index_file(ox_navdata *data) {
  piece p = {.bytes = malloc(PIECE_BYTES)};
  const char *why = p.bytes ? NULL : _("There is not enough memory for the index.");
  for (bool last = false; !why && !last;) {
    size_t at = p.offset + p.have, room = PIECE_BYTES - p.have;
    if (room > data->length - at) room = data->length - at;
    ssize_t got = room > 0 ? pread(data->file, p.bytes + p.have, room, (off_t)at) : 0;
    if (got < 0) {
      why = _("The file cannot be read to its end.");
      break;
    }
    p.have += (size_t)got;
    last = got == 0;
    if (!add_piece(data, &p, last)) why = _("There is not enough memory for the index.");
  }
  free(p.bytes);
  return why;
}

static const char *index_bytes(ox_navdata *data) {
  size_t used;
  if (ox_index_add(data, data->bytes, data->length, 0, true, &used)) return NULL;
  return _("There is not enough memory for the index.");
}

/* Takes over the mapping and the file. */
static ox_status build(ox_navdata from, ox_navdata **out, char *remark, size_t remark_bytes) {
  ox_navdata *data = malloc(sizeof *data);
  if (!data) {
    if (from.mapped) munmap((void *)(uintptr_t)from.bytes, from.length);
    if (from.file >= 0) close(from.file);
    return refuse(_("There is not enough memory for the index."), remark, remark_bytes);
  }
  *data = from;
  const char *why = data->file >= 0 ? index_file(data) : index_bytes(data);
  if (why) {
    ox_navdata_close(data);
    return refuse(why, remark, remark_bytes);
  }
  *out = data;
  return ox_say(OX_OK, remark, remark_bytes, "%s", "");
}

/* --- opening and closing --- */

static ox_status refuse_open(int number, char *remark, size_t bytes) {
  const char *why = number == ENOENT   ? _("There is no such file.")
                    : number == EACCES ? _("The file may not be read.")
                    : number == ENOTDIR ? _("A part of the path is not a folder.")
                                        : _("The file cannot be opened.");
  return refuse(why, remark, bytes);
}

static const char *refuse_kind(const struct stat *s) {
  if (S_ISDIR(s->st_mode)) return _("That is a folder, not a file.");
  if (!S_ISREG(s->st_mode))
    return _("That is not a regular file: save the records to a file first.");
  if (s->st_size < 0 || (uint64_t)s->st_size >= OX_NAVDATA_BYTES_MAX)
    return _("The file is too large: 4 GiB is the limit.");
  return NULL;
}

ox_status ox_navdata_open(const char *path, ox_navdata **out, char *remark, size_t remark_bytes) {
  /* Without O_NONBLOCK, opening a pipe that nobody writes to would never return. */
  int file = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (file < 0) return refuse_open(errno, remark, remark_bytes);
  struct stat s;
  const char *why = fstat(file, &s) == 0 ? refuse_kind(&s) : _("The file cannot be examined.");
  ox_navdata from = {.bytes = (const unsigned char *)"", .file = file};
  if (!why && s.st_size > 0) {
    from.length = (size_t)s.st_size;
    void *bytes = mmap(NULL, from.length, PROT_READ, MAP_PRIVATE, file, 0);
    from.mapped = bytes != MAP_FAILED;
    from.bytes = bytes;
    if (!from.mapped) why = _("The file cannot be mapped into memory.");
  }
  if (!why) return build(from, out, remark, remark_bytes);
  close(file);
  return refuse(why, remark, remark_bytes);
}

ox_status ox_navdata_from_bytes(const void *bytes, size_t length, ox_navdata **out, char *remark,
                                size_t remark_bytes) {
  if (length >= OX_NAVDATA_BYTES_MAX)
    return refuse(_("The data are too large: 4 GiB is the limit."), remark, remark_bytes);
  /* Nothing has no address, and arithmetic on NULL is not defined. */
  const void *from = length > 0 ? bytes : "";
  return build((ox_navdata){.bytes = from, .length = length, .file = -1}, out, remark,
               remark_bytes);
}

void ox_navdata_close(ox_navdata *data) {
  if (!data) return;
  if (data->mapped) munmap((void *)(uintptr_t)data->bytes, data->length);
  if (data->file >= 0) close(data->file);
  free(data->holds);
  free(data->slots);
  free(data);
}

bool ox_navdata_whole(const ox_navdata *data) {
  struct stat s;
  if (data->file < 0) return true;
  return fstat(data->file, &s) == 0 && s.st_size >= 0 && (size_t)s.st_size >= data->length;
}
