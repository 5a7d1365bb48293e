/* What the tests of the reader share. */
#include "navdata_support.h"

const char *excerpt_path(void) {
  static char path[1000];
  const char *folder = getenv("OXBOW_TEST_DATA");
  snprintf(path, sizeof path, "%s/navdata/cifp-excerpt.txt", folder ? folder : ".");
  return path;
}

char *excerpt_bytes(size_t *length) {
  FILE *file = fopen(excerpt_path(), "rb");
  if (!file) fail_msg("cannot read %s", excerpt_path());
  char *bytes = malloc(EXCERPT_BYTES + 1);
  assert_non_null(bytes);
  *length = fread(bytes, 1, EXCERPT_BYTES + 1, file);
  fclose(file);
  assert_int_equal(*length, EXCERPT_BYTES);
  return bytes;
}

ox_navdata *excerpt_open(void) {
  ox_navdata *data = NULL;
  char why[OX_REMARK_BYTES];
  if (ox_navdata_open(excerpt_path(), &data, why, sizeof why) != OX_OK)
    fail_msg("%s: %s", excerpt_path(), why);
  return data;
}

ox_navdata *open_bytes(const char *bytes, size_t length) {
  ox_navdata *data = NULL;
  char why[OX_REMARK_BYTES];
  if (ox_navdata_from_bytes(bytes, length, &data, why, sizeof why) != OX_OK) fail_msg("%s", why);
  return data;
}

size_t skipped_in_all(const ox_navdata *data) {
  const ox_navdata_report *report = ox_navdata_report_of(data);
  size_t sum = 0;
  for (int i = 0; i < OX_SKIP_COUNT; i++) {
    sum += report->skipped[i];
    assert_true((report->skipped[i] == 0) == (report->first_line[i] == 0));
    assert_true(report->first_line[i] <= report->lines);
  }
  assert_int_equal(report->lines, report->holds + report->points + sum);
  return sum;
}

void put_at(char record[RECORD_BYTES], int column, const char *text) {
  assert_true(column >= 1 && column - 1 + (int)strlen(text) <= 132);
  memcpy(record + column - 1, text, strlen(text));
}

void make_record(char record[RECORD_BYTES], const put *puts) {
  memset(record, ' ', 132);
  record[132] = '\n';
  record[133] = '\0';
  for (; puts->column > 0; puts++)
    put_at(record, puts->column, puts->text);
}

void copy_line(char record[RECORD_BYTES], int line) {
  size_t length;
  char *bytes = excerpt_bytes(&length);
  memcpy(record, bytes + (line - 1) * 133, 133);
  record[133] = '\0';
  free(bytes);
}
