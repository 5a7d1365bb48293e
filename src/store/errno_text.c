/* The usual failures of files in words that help; the rest as the system says it. */
#include "errno_text.h"

#include <errno.h>
#include <string.h>

#include "oxbow/text.h"

const char *ox_errno_text(int number) {
  switch (number) {
    case ENOENT: return _("there is no such file or directory");
    case ENOTDIR: return _("a part of the path is not a directory");
    case EISDIR: return _("it is a directory");
    case EACCES:
    case EPERM: return _("permission is denied");
    case EROFS: return _("the disk is read-only");
    case ENOSPC: return _("the disk is full");
    case EDQUOT: return _("the disk quota is used up");
    case EFBIG: return _("the file is too large for the disk");
    case EIO: return _("the disk reports an error");
    case ELOOP: return _("the symbolic links lead round in a circle");
    case ENAMETOOLONG: return _("the name is too long");
    case EMFILE:
    case ENFILE: return _("too many files are open");
    case ENOMEM: return _("there is not enough memory");
    case ENXIO: return _("nobody is at the other end of it");
    case EPIPE: return _("the reader at the other end is gone");
    default: return strerror(number);
  }
}
