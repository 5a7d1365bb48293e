/* Opening: the file is mapped and stays so until it is closed. Reading a mapped file that another
 * program has shortened would end this one; so its length is asked for before each reading. */
#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include "index.h"
#include "sentence.h"

static ox_status out_of_memory(ox_navdata *data, char *remark, size_t bytes) {
  ox_navdata_close(data);
  return ox_say(OX_ERROR, remark, bytes, "There is not enough memory for the index.");
}

/* Takes over the mapping and the file. */
static ox_status build(const unsigned char *bytes, size_t length, int file, bool mapped,
                       ox_navdata **out, char *remark, size_t remark_bytes) {
  ox_navdata *data = calloc(1, sizeof *data);
  if (!data) {
    if (mapped) munmap((void *)(uintptr_t)bytes, length);
    if (file >= 0) close(file);
    return out_of_memory(NULL, remark, remark_bytes);
  }
  /* An empty file has no address, and arithmetic on NULL is not defined. */
  data->bytes = length > 0 ? bytes : (const unsigned char *)"";
  data->length = length;
  data->file = file;
  data->mapped = mapped;
  if (!ox_index_build(data)) return out_of_memory(data, remark, remark_bytes);
  *out = data;
  return ox_say(OX_OK, remark, remark_bytes, "%s", "");
}

static ox_status refuse_open(int number, char *remark, size_t bytes) {
  const char *why = number == ENOENT   ? "There is no such file."
                    : number == EACCES ? "The file may not be read."
                    : number == ENOTDIR ? "A part of the path is not a folder."
                                        : "The file cannot be opened.";
  return ox_say(OX_ERROR, remark, bytes, "%s", why);
}

static const char *refuse_kind(const struct stat *s) {
  if (S_ISDIR(s->st_mode)) return "That is a folder, not a file.";
  if (!S_ISREG(s->st_mode)) return "That is not a regular file: save the records to a file first.";
  if (s->st_size < 0 || (uint64_t)s->st_size >= OX_NAVDATA_BYTES_MAX)
    return "The file is too large: 4 GiB is the limit.";
  return NULL;
}

ox_status ox_navdata_open(const char *path, ox_navdata **out, char *remark, size_t remark_bytes) {
  /* Without O_NONBLOCK, opening a pipe that nobody writes to would never return. */
  int file = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (file < 0) return refuse_open(errno, remark, remark_bytes);
  struct stat s;
  const char *why = fstat(file, &s) == 0 ? refuse_kind(&s) : "The file cannot be examined.";
  if (why) {
    close(file);
    return ox_say(OX_ERROR, remark, remark_bytes, "%s", why);
  }
  size_t length = (size_t)s.st_size;
  if (length == 0) return build(NULL, 0, file, false, out, remark, remark_bytes);
  void *bytes = mmap(NULL, length, PROT_READ, MAP_PRIVATE | MAP_POPULATE, file, 0);
  if (bytes == MAP_FAILED) {
    close(file);
    return ox_say(OX_ERROR, remark, remark_bytes, "The file cannot be mapped into memory.");
  }
  return build(bytes, length, file, true, out, remark, remark_bytes);
}

ox_status ox_navdata_from_bytes(const void *bytes, size_t length, ox_navdata **out, char *remark,
                                size_t remark_bytes) {
  if (length >= OX_NAVDATA_BYTES_MAX)
    return ox_say(OX_ERROR, remark, remark_bytes, "The data are too large: 4 GiB is the limit.");
  return build(bytes, length, -1, false, out, remark, remark_bytes);
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
