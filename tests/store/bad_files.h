/* Faulty lessons with what is said about each. */
#ifndef OX_STORE_BAD_FILES_H
#define OX_STORE_BAD_FILES_H

#include <stddef.h>

typedef struct {
  const char *what;
  const char *text;         /* WHOLE: the file; IN_CASE: members of a case for lesson_with() */
  enum { WHOLE, IN_CASE } place;
  enum { SEEN, BLIND } schema; /* BLIND: a JSON Schema cannot express this rule */
  const char *fragments[3]; /* all have to stand in the one message */
} bad_file;

const bad_file *bad_files(size_t *count);

#endif
