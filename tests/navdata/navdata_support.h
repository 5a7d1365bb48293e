/* What the tests of the reader share: the excerpt, and records made for one test. */
#ifndef OX_NAVDATA_SUPPORT_H
#define OX_NAVDATA_SUPPORT_H

#include "ox_test.h"
#include "oxbow/navdata.h"

#define EXCERPT_LINES 56
#define EXCERPT_BYTES (EXCERPT_LINES * 133)

/* Path of the excerpt in the test data; static. */
const char *excerpt_path(void);
/* Its bytes, malloc'd; fails the test when they cannot be read. */
char *excerpt_bytes(size_t *length);
/* Opens it from its file. */
ox_navdata *excerpt_open(void);

/* Opens bytes; fails the test when that is refused. */
ox_navdata *open_bytes(const char *bytes, size_t length);
/* The number of skipped lines, and lines = holds + points + skipped. */
size_t skipped_in_all(const ox_navdata *data);

/* A record: 132 blanks with texts put at columns (from 1), then a line feed. The first text of a
 * row {column, text} with column 0 ends the list. */
typedef struct {
  int column;
  const char *text;
} put;
#define RECORD_BYTES 134
void make_record(char record[RECORD_BYTES], const put *puts);
/* The excerpt's records are handy to begin from: line number from 1, 132 columns and a feed. */
void copy_line(char record[RECORD_BYTES], int line);
void put_at(char record[RECORD_BYTES], int column, const char *text);

#endif
