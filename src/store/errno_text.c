/* The usual failures of files in words that help; the rest as the system says it. */
#include "errno_text.h"

#include <errno.h>
#include <string.h>

const char *ox_errno_text(int number) {
  switch (number) {
    case ENOENT: return "there is no such file or directory";
    case ENOTDIR: return "a part of the path is not a directory";
    case EISDIR: return "it is a directory";
    case EACCES:
    case EPERM: return "permission is denied";
    case EROFS: return "the disk is read-only";
    case ENOSPC: return "the disk is full";
    case EDQUOT: return "the disk quota is used up";
    case EFBIG: return "the file is too large for the disk";
    case EIO: return "the disk reports an error";
    case ELOOP: return "the symbolic links lead round in a circle";
    case ENAMETOOLONG: return "the name is too long";
    case EMFILE:
    case ENFILE: return "too many files are open";
    case ENOMEM: return "there is not enough memory";
    case ENXIO: return "nobody is at the other end of it";
    case EPIPE: return "the reader at the other end is gone";
    default: return strerror(number);
  }
}
