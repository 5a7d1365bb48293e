/* Why a file could not be read or written, in plain words. */
#ifndef OX_STORE_ERRNO_TEXT_H
#define OX_STORE_ERRNO_TEXT_H

/* A clause such as "the disk is full"; valid until the next call in this thread. */
const char *ox_errno_text(int number);

#endif
