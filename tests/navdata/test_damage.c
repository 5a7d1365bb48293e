/* Damaged, odd and foreign files: what can be used is used, the rest is counted with the reason. */
#include "navdata_support.h"

#include <sys/stat.h>
#include <unistd.h>

/* A text that grows; freed by its user. */
typedef struct {
  char *bytes;
  size_t length;
} text;

static void append(text *t, const char *bytes, size_t length) {
  t->bytes = realloc(t->bytes, t->length + length + 1);
  assert_non_null(t->bytes);
  memcpy(t->bytes + t->length, bytes, length);
  t->length += length;
}

static const ox_navdata_report *report_of(const ox_navdata *data) {
  skipped_in_all(data);
  return ox_navdata_report_of(data);
}

static void crlf_changes_nothing(void **state) {
  (void)state;
  size_t length;
  char *bytes = excerpt_bytes(&length);
  text t = {0};
  for (size_t i = 0; i < EXCERPT_LINES; i++) {
    append(&t, bytes + 133 * i, 132);
    append(&t, "\r\n", 2);
  }
  ox_navdata *plain = open_bytes(bytes, length), *crlf = open_bytes(t.bytes, t.length);
  assert_memory_equal(report_of(plain), report_of(crlf), sizeof(ox_navdata_report));
  for (size_t i = 0; i < 12; i++) {
    ox_published_hold a, b;
    assert_int_equal(ox_navdata_hold(plain, i, &a), OX_OK);
    assert_int_equal(ox_navdata_hold(crlf, i, &b), OX_OK);
    assert_string_equal(a.fix.ident, b.fix.ident);
    assert_true(a.inbound_deg == b.inbound_deg);
  }
  ox_navdata_close(plain);
  ox_navdata_close(crlf);
  free(bytes);
  free(t.bytes);
}

static void the_last_line_needs_no_line_feed(void **state) {
  (void)state;
  char record[RECORD_BYTES];
  copy_line(record, 13);
  for (size_t length = 131; length <= 133; length++) {
    /* Exactly as many bytes as it says, so that a sanitizer sees any byte too many. */
    char *exact = malloc(length);
    assert_non_null(exact);
    memcpy(exact, record, length);
    ox_navdata *data = open_bytes(exact, length);
    assert_int_equal(report_of(data)->holds, length >= 132 ? 1 : 0);
    assert_int_equal(report_of(data)->skipped[OX_SKIP_SHORT], length >= 132 ? 0 : 1);
    ox_navdata_close(data);
    free(exact);
  }
}

static void empty_data_open_and_hold_nothing(void **state) {
  (void)state;
  ox_navdata *data = open_bytes(NULL, 0);
  ox_point_key key = {"ALB", "K6", "D ", ""};
  ox_published_point p;
  assert_int_equal(report_of(data)->lines, 0);
  assert_int_equal(ox_navdata_hold_count(data), 0);
  assert_int_equal(ox_navdata_point(data, &key, &p, NULL, 0), OX_ERROR);
  ox_navdata_close(data);
  ox_navdata_close(NULL);
}

/* Each line, what becomes of it, and where. */
static void each_reason_is_counted_with_its_first_line(void **state) {
  (void)state;
  char hold[RECORD_BYTES], record[RECORD_BYTES];
  copy_line(hold, 13);
  text t = {0};
  append(&t, "HDR01 a header\n", 15);           /* 1 short */
  append(&t, hold, 133);                         /* 2 a hold */
  append(&t, hold, 100);                         /* 3 cut off; its line feed is the next */
  append(&t, "\n\r\n   \n", 7);                  /* 4 and 5 empty */
  append(&t, hold, 132);
  append(&t, "    \r\n", 6);                     /* 6 blanks after it: a hold */
  append(&t, hold, 132);
  append(&t, "X\n", 2);                          /* 7 long */
  copy_line(record, 13);
  record[100] = (char)0xe9;
  append(&t, record, 133);                       /* 8 Latin-1 */
  copy_line(record, 13);
  record[110] = '\t';
  append(&t, record, 133);                       /* 9 a tabulator */
  copy_line(record, 13);
  record[50] = '\0';
  append(&t, record, 133);                       /* 10 a nul */
  copy_line(record, 13);
  put_at(record, 1, "HDR");
  append(&t, record, 133);                       /* 11 no record */
  copy_line(record, 13);
  put_at(record, 39, "2");
  append(&t, record, 133);                       /* 12 continuation of a hold */
  copy_line(record, 3);
  put_at(record, 22, "3");
  append(&t, record, 133);                       /* 13 continuation of a navaid */
  copy_line(record, 13);
  put_at(record, 71, "9999");
  append(&t, record, 133);                       /* 14 a hold with a course of 999.9 */
  copy_line(record, 3);
  append(&t, record, 133);                       /* 15 a point */
  append(&t, record, 133);                       /* 16 the same again */
  put_at(record, 14, "BAD");
  put_at(record, 33, "N91");
  append(&t, record, 133);                       /* 17 latitude 91 */
  put_at(record, 5, "QQ");
  append(&t, record, 133);                       /* 18 a kind that does not exist */
  copy_line(record, 13);
  put_at(record, 1, "T");
  append(&t, record, 133);                       /* 19 a tailored hold */
  ox_navdata *data = open_bytes(t.bytes, t.length);
  const ox_navdata_report *r = report_of(data);
  static const struct {
    ox_skip reason;
    size_t count, first;
  } want[] = {{OX_SKIP_OTHER_KIND, 1, 18}, {OX_SKIP_CONTINUATION, 2, 12}, {OX_SKIP_EMPTY, 2, 4},
              {OX_SKIP_SHORT, 2, 1},       {OX_SKIP_LONG, 1, 7},          {OX_SKIP_BYTES, 3, 8},
              {OX_SKIP_NO_RECORD, 1, 11},  {OX_SKIP_HOLD, 1, 14},         {OX_SKIP_POINT, 1, 17},
              {OX_SKIP_REPEATED, 1, 16}};
  assert_int_equal(r->lines, 19);
  assert_int_equal(r->holds, 3);
  assert_int_equal(r->points, 1);
  for (size_t i = 0; i < sizeof want / sizeof *want; i++) {
    size_t count = r->skipped[want[i].reason], first = r->first_line[want[i].reason];
    if (count == want[i].count && first == want[i].first) continue;
    fail_msg("%s: %zu, first in line %zu", ox_skip_text(want[i].reason), count, first);
  }
  ox_navdata_close(data);
  free(t.bytes);
}

static void a_bad_byte_in_any_column_leaves_the_record_out(void **state) {
  (void)state;
  static const unsigned char bad[] = {0, 1, '\t', '\r', 0x1f, 0x80, 0xa0, 0xff};
  for (size_t column = 1; column <= 132; column++)
    for (size_t i = 0; i < sizeof bad; i++) {
      char record[RECORD_BYTES];
      copy_line(record, 13);
      record[column - 1] = (char)bad[i];
      /* A carriage return at the end belongs to the line's end: 131 columns are left. */
      bool cut = column == 132 && bad[i] == '\r';
      ox_navdata *data = open_bytes(record, 133);
      assert_int_equal(report_of(data)->skipped[OX_SKIP_BYTES], cut ? 0 : 1);
      assert_int_equal(report_of(data)->skipped[OX_SKIP_SHORT], cut ? 1 : 0);
      ox_navdata_close(data);
    }
}

static void ident_of(char ident[6], int number) {
  static const char figures[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
  for (int i = 0; i < 5; i++, number /= 36)
    ident[i] = figures[number % 36];
  ident[5] = '\0';
}

/* So many that some pairs share the 32 bits which the index keeps of a key. */
static void many_points_are_all_found_again(void **state) {
  (void)state;
  enum { POINTS = 150000 };
  char *bytes = malloc((size_t)POINTS * 133), record[RECORD_BYTES], ident[6];
  assert_non_null(bytes);
  copy_line(record, 8);
  for (int i = 0; i < POINTS; i++) {
    char latitude[16];
    ident_of(ident, i);
    snprintf(latitude, sizeof latitude, "N29%02d%04d", i / 6000, i % 6000);
    put_at(record, 14, ident);
    put_at(record, 33, latitude);
    memcpy(bytes + (size_t)i * 133, record, 133);
  }
  ox_navdata *data = open_bytes(bytes, (size_t)POINTS * 133);
  assert_int_equal(report_of(data)->points, POINTS);
  for (int i = 0; i < POINTS; i++) {
    ox_point_key key = {.region = "K4", .section = "EA"};
    ox_published_point p;
    ident_of(key.ident, i);
    assert_int_equal(ox_navdata_point(data, &key, &p, NULL, 0), OX_OK);
    assert_close(p.at.lat_deg, 29 + i / 360000.0, 1e-12, key.ident);
  }
  ox_navdata_close(data);
  free(bytes);
}

static void a_continuation_may_follow_a_first_record(void **state) {
  (void)state;
  /* 5.16: 1 is the first of several */
  char record[RECORD_BYTES];
  copy_line(record, 13);
  put_at(record, 39, "1");
  ox_navdata *data = open_bytes(record, 133);
  assert_int_equal(report_of(data)->holds, 1);
  ox_navdata_close(data);
}

static void a_record_cut_anywhere_is_survived(void **state) {
  (void)state;
  size_t length;
  char *bytes = excerpt_bytes(&length);
  for (size_t cut = 0; cut <= length; cut += 7) {
    char *exact = malloc(cut ? cut : 1);
    assert_non_null(exact);
    memcpy(exact, bytes, cut);
    ox_navdata *data = open_bytes(exact, cut);
    skipped_in_all(data);
    size_t whole = cut / 133, left = cut % 133;
    const ox_navdata_report *r = report_of(data);
    assert_int_equal(r->lines, whole + (left > 0));
    assert_int_equal(r->skipped[OX_SKIP_SHORT] + r->skipped[OX_SKIP_EMPTY],
                     left > 0 && left < 132);
    ox_navdata_close(data);
    free(exact);
  }
  free(bytes);
}

static void every_reason_has_its_own_words(void **state) {
  (void)state;
  for (int i = 0; i < OX_SKIP_COUNT; i++)
    for (int k = 0; k < i; k++)
      assert_string_not_equal(ox_skip_text((ox_skip)i), ox_skip_text((ox_skip)k));
}

/* --- files --- */

static void temporary(char path[64], const char *bytes, size_t length) {
  strcpy(path, "ox-navdata-XXXXXX");
  int file = mkstemp(path);
  assert_true(file >= 0);
  assert_int_equal(write(file, bytes, length), (ssize_t)length);
  close(file);
}

static void what_is_no_file_is_refused_with_a_reason(void **state) {
  (void)state;
  char fifo[64];
  snprintf(fifo, sizeof fifo, "ox-navdata-fifo-%d", (int)getpid());
  assert_int_equal(mkfifo(fifo, 0600), 0);
  const struct {
    const char *path, *says;
  } rows[] = {{"no-such-file.txt", "no such file"}, {"", "no such file"}, {".", "a folder"},
              {fifo, "regular file"},               {"/dev/null", "regular file"}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ox_navdata *data = NULL;
    char why[OX_REMARK_BYTES] = "";
    ox_status status = ox_navdata_open(rows[i].path, &data, why, sizeof why);
    if (status != OX_ERROR || !strstr(why, rows[i].says)) {
      unlink(fifo);
      fail_msg("%s: \"%s\"", rows[i].path, why);
    }
    assert_null(data);
    assert_int_equal(ox_navdata_open(rows[i].path, &data, NULL, 0), OX_ERROR);
  }
  unlink(fifo);
}

static void an_empty_file_opens(void **state) {
  (void)state;
  char path[64];
  temporary(path, "", 0);
  ox_navdata *data = NULL;
  ox_status status = ox_navdata_open(path, &data, NULL, 0);
  unlink(path);
  assert_int_equal(status, OX_OK);
  assert_int_equal(report_of(data)->lines, 0);
  ox_navdata_close(data);
}

static void a_file_of_whole_pages_is_not_read_beyond(void **state) {
  (void)state;
  /* 65 536 bytes end with a page, and the last record with the last byte. */
  enum { WHOLE = 65536 };
  char record[RECORD_BYTES], *bytes = malloc(WHOLE), path[64];
  assert_non_null(bytes);
  copy_line(record, 13);
  memset(bytes, '\n', WHOLE);
  memcpy(bytes + WHOLE - 132, record, 132);
  temporary(path, bytes, WHOLE);
  ox_navdata *data = NULL;
  ox_status status = ox_navdata_open(path, &data, NULL, 0);
  unlink(path);
  assert_int_equal(status, OX_OK);
  assert_int_equal(report_of(data)->holds, 1);
  assert_int_equal(report_of(data)->skipped[OX_SKIP_EMPTY], WHOLE - 132);
  ox_navdata_close(data);
  free(bytes);
}

/* Lines of 1 byte to 3 pieces of 256 KiB, with a hold before, between and after them. */
static void long_lines_are_one_line_from_a_file_as_from_memory(void **state) {
  (void)state;
  static const size_t lengths[] = {1,      131,    133,    65535,  65536,  65537,
                                   262143, 262144, 262145, 524288, 800000};
  char hold[RECORD_BYTES], path[64];
  text t = {0};
  copy_line(hold, 13);
  char *filler = malloc(800000);
  assert_non_null(filler);
  memset(filler, 'x', 800000);
  size_t count = sizeof lengths / sizeof *lengths;
  for (size_t i = 0; i < count; i++) {
    append(&t, hold, 133);
    append(&t, filler, lengths[i]);
    append(&t, "\n", 1);
  }
  append(&t, hold, 133);
  append(&t, filler, 300000);
  temporary(path, t.bytes, t.length);
  ox_navdata *file = NULL, *memory = open_bytes(t.bytes, t.length);
  ox_status status = ox_navdata_open(path, &file, NULL, 0);
  unlink(path);
  assert_int_equal(status, OX_OK);
  assert_memory_equal(report_of(file), report_of(memory), sizeof(ox_navdata_report));
  assert_int_equal(report_of(file)->lines, 2 * count + 2);
  assert_int_equal(report_of(file)->holds, count + 1);
  assert_int_equal(report_of(file)->skipped[OX_SKIP_SHORT], 2);
  assert_int_equal(report_of(file)->skipped[OX_SKIP_LONG], count - 1);
  for (size_t i = 0; i <= count; i++) {
    ox_published_hold h;
    assert_int_equal(ox_navdata_hold(file, i, &h), OX_OK);
    assert_string_equal(h.fix.ident, "JAPUT");
  }
  ox_navdata_close(file);
  ox_navdata_close(memory);
  free(filler);
  free(t.bytes);
}

/* Several pieces: a record lies across every end of a piece, somewhere. */
static void a_file_of_many_pieces_reads_as_from_memory(void **state) {
  (void)state;
  size_t length;
  char *bytes = excerpt_bytes(&length), path[64];
  text t = {0};
  for (int i = 0; i < 150; i++)
    append(&t, bytes, length);
  free(bytes);
  temporary(path, t.bytes, t.length);
  ox_navdata *file = NULL, *memory = open_bytes(t.bytes, t.length);
  ox_status status = ox_navdata_open(path, &file, NULL, 0);
  unlink(path);
  assert_int_equal(status, OX_OK);
  assert_memory_equal(report_of(file), report_of(memory), sizeof(ox_navdata_report));
  assert_int_equal(report_of(file)->holds, 150 * 12);
  assert_int_equal(report_of(file)->points, 16);
  assert_int_equal(report_of(file)->skipped[OX_SKIP_REPEATED], 149 * 16);
  for (size_t i = 0; i < 150 * 12; i++) {
    ox_published_hold a, b;
    assert_int_equal(ox_navdata_hold(file, i, &a), OX_OK);
    assert_int_equal(ox_navdata_hold(memory, i % 12, &b), OX_OK);
    assert_string_equal(a.fix.ident, b.fix.ident);
    assert_int_equal(a.sequence, b.sequence);
  }
  ox_navdata_close(file);
  ox_navdata_close(memory);
  free(t.bytes);
}

static void a_file_that_was_shortened_is_refused_and_not_read(void **state) {
  (void)state;
  size_t length;
  char *bytes = excerpt_bytes(&length), path[64], why[OX_REMARK_BYTES];
  temporary(path, bytes, length);
  free(bytes);
  ox_navdata *data = NULL;
  ox_published_hold h;
  ox_published_point p;
  ox_published_case c;
  size_t found;
  assert_int_equal(ox_navdata_open(path, &data, NULL, 0), OX_OK);
  assert_int_equal(ox_navdata_hold(data, 11, &h), OX_OK);
  assert_int_equal(truncate(path, 0), 0);
  ox_status hold = ox_navdata_hold(data, 11, &h);
  ox_status point = ox_navdata_point(data, &h.fix, &p, why, sizeof why);
  ox_status as_case = ox_navdata_case(data, 11, &c, NULL, 0);
  bool find = ox_navdata_find(data, &(ox_hold_query){0}, 0, &found);
  unlink(path);
  assert_int_equal(hold, OX_ERROR);
  assert_int_equal(point, OX_ERROR);
  assert_non_null(strstr(why, "shortened"));
  assert_int_equal(as_case, OX_ERROR);
  assert_false(find);
  ox_navdata_close(data);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(crlf_changes_nothing),
      cmocka_unit_test(the_last_line_needs_no_line_feed),
      cmocka_unit_test(empty_data_open_and_hold_nothing),
      cmocka_unit_test(each_reason_is_counted_with_its_first_line),
      cmocka_unit_test(a_bad_byte_in_any_column_leaves_the_record_out),
      cmocka_unit_test(many_points_are_all_found_again),
      cmocka_unit_test(a_continuation_may_follow_a_first_record),
      cmocka_unit_test(a_record_cut_anywhere_is_survived),
      cmocka_unit_test(every_reason_has_its_own_words),
      cmocka_unit_test(what_is_no_file_is_refused_with_a_reason),
      cmocka_unit_test(an_empty_file_opens),
      cmocka_unit_test(a_file_of_whole_pages_is_not_read_beyond),
      cmocka_unit_test(long_lines_are_one_line_from_a_file_as_from_memory),
      cmocka_unit_test(a_file_of_many_pieces_reads_as_from_memory),
      cmocka_unit_test(a_file_that_was_shortened_is_refused_and_not_read),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
