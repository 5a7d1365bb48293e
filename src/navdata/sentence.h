/* A sentence for people, and the status that goes with it. */
#ifndef OX_NAVDATA_SENTENCE_H
#define OX_NAVDATA_SENTENCE_H

#include <stddef.h>

#include "oxbow/status.h"

/* Only %s, %d and %c: other conversions depend on the locale. */
ox_status ox_say(ox_status status, char *remark, size_t bytes, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

#endif
