/* draw as a user runs it: whole files of the kind asked for, or none. */
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include "cli_run.h"
#include "oxbow/lesson.h"

#define CASE "The same wind worked out exactly"

static unsigned big_endian(const char *at) {
  const unsigned char *b = (const unsigned char *)at;
  return (unsigned)b[0] << 24 | (unsigned)b[1] << 16 | (unsigned)b[2] << 8 | b[3];
}

/* Draws, checks that only the file came to be, and returns it; freed by the caller. */
static char *drawn(const char *name, size_t *length, const char *option, const char *value) {
  const char *path = in_folder(name);
  ran r = option
              ? run_cli_for(0, "draw", lesson_path("demo.oxbow"), "-o", path, option, value, NULL)
              : run_cli_for(0, "draw", lesson_path("demo.oxbow"), "-o", path, NULL);
  assert_string_equal(r.out, "");
  ran_clear(&r);
  char *bytes = read_all(path, length);
  assert_non_null(bytes);
  assert_int_equal(folder_count(), 1);
  assert_int_equal(remove(path), 0);
  return bytes;
}

static void centimetres_are_pixels_at_the_resolution(void **state) {
  size_t length;
  char *png = drawn("a.png", &length, "--size", "10x5cm"); /* 150 to the inch */
  assert_int_equal(big_endian(png + 16), 591);
  assert_int_equal(big_endian(png + 20), 295);
  free(png);
}

static void a_moving_picture_is_an_animated_png(void **state) {
  size_t length;
  char *png = drawn("a.apng", &length, "--speed", "100");
  assert_memory_equal(png, "\x89PNG\r\n\x1a\n", 8);
  assert_memory_equal(png + 37, "acTL", 4);
  assert_true(big_endian(png + 41) > 50);
  free(png);
}

/* The same where other files are about. */
static char *drawn_beside(const char *name, size_t *length) {
  const char *path = in_folder(name);
  ran r = run_cli_for(0, "draw", lesson_path("demo.oxbow"), "-o", path, NULL);
  ran_clear(&r);
  char *bytes = read_all(path, length);
  assert_non_null(bytes);
  assert_int_equal(remove(path), 0);
  return bytes;
}

static void a_png_is_a_png_of_the_size_asked_for(void **state) {
  size_t length;
  char *png = drawn("a.png", &length, NULL, NULL);
  assert_memory_equal(png, "\x89PNG\r\n\x1a\n", 8);
  assert_int_equal(big_endian(png + 16), 1600);
  assert_int_equal(big_endian(png + 20), 1000);
  free(png);
  png = drawn("a.PNG", &length, "--size", "640x480");
  assert_int_equal(big_endian(png + 16), 640);
  assert_int_equal(big_endian(png + 20), 480);
  free(png);
}

static void an_svg_is_an_svg_with_a_decimal_point(void **state) {
  size_t length;
  char *svg = drawn("a.svg", &length, "--size", "800.5x600");
  assert_non_null(strstr(svg, "<svg"));
  assert_non_null(strstr(svg, "</svg>"));
  assert_non_null(strstr(svg, "800.5"));
  assert_non_null(strstr(svg, "For instruction only, not for navigation."));
  free(svg);
}

/* The pages of a PDF as its page tree counts them. */
static int page_count(const char *pdf, size_t length) {
  for (size_t i = 0; i + 8 < length; i++)
    if (memcmp(pdf + i, "/Count ", 7) == 0) return atoi(pdf + i + 7);
  return -1;
}

static void a_pdf_has_a_sheet_for_each_case(void **state) {
  size_t length;
  char *pdf = drawn("a.pdf", &length, NULL, NULL);
  assert_memory_equal(pdf, "%PDF-", 5);
  assert_int_equal(page_count(pdf, length), 12);
  free(pdf);
  pdf = drawn("a.pdf", &length, "--case", CASE);
  assert_int_equal(page_count(pdf, length), 1);
  free(pdf);
}

static void the_same_command_gives_the_same_bytes(void **state) {
  static const char *const names[] = {"a.png", "a.svg", "a.pdf"};
  for (size_t i = 0; i < 3; i++) {
    size_t first, second;
    char *a = drawn(names[i], &first, "--case", CASE),
         *b = drawn(names[i], &second, "--case", CASE);
    assert_int_equal(first, second);
    assert_memory_equal(a, b, first);
    free(a);
    free(b);
  }
}

/* Each option shows: the bytes differ from those of the standard. */
static void options_change_the_picture(void **state) {
  static const struct {
    const char *option, *value;
  } rows[] = {
      {"--case", CASE},       {"--palette", "dark"},   {"--palette", "projector"},
      {"--palette", "print"}, {"--at", "none"},        {"--at", "-20.5"},
      {"--at", "0"},          {"--size", "1600x1001"},
  };
  size_t length, other;
  char *standard = drawn("a.png", &length, NULL, NULL);
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    char *bytes = drawn("a.png", &other, rows[i].option, rows[i].value);
    assert_true(other != length || memcmp(bytes, standard, length) != 0);
    free(bytes);
  }
  char *same = drawn("a.png", &other, "--palette", "light");
  assert_int_equal(other, length);
  assert_memory_equal(same, standard, length);
  free(same);
  free(standard);
}

static void the_locale_changes_nothing(void **state) {
  size_t plain, german;
  char *a = drawn("a.svg", &plain, "--case", CASE);
  assert_int_equal(enter_german(state), 0);
  char *b = drawn("a.svg", &german, "--case", CASE);
  assert_int_equal(leave_german(state), 0);
  assert_int_equal(plain, german);
  assert_memory_equal(a, b, plain);
  free(a);
  free(b);
}

/* A lesson with a red stroke across the picture of each of its cases. */
static void write_drawn_on(const char *path) {
  ox_messages messages = {0};
  ox_lesson *lesson = NULL;
  assert_int_equal(ox_lesson_read(lesson_path("demo.oxbow"), &lesson, &messages), OX_OK);
  for (size_t i = 0; i < lesson->case_count; i++) {
    lesson->cases[i].ink = ox_ink_new();
    ox_ink_begin(lesson->cases[i].ink, OX_INK_VERMILLION, OX_INK_BROAD, (ox_vec){-1, -1});
    ox_ink_extend(lesson->cases[i].ink, (ox_vec){1, 1});
  }
  assert_int_equal(ox_lesson_write(lesson, path, &messages), OX_OK);
  ox_lesson_free(lesson);
}

/* Pen marks are drawn where they are asked for, on every sheet, and not elsewhere. */
static void pen_marks_are_drawn_when_asked_for(void **state) {
  char *lesson = strdup(in_folder("drawn.oxbow")), *plain_path = strdup(in_folder("p.svg"));
  char *inked_path = strdup(in_folder("i.svg"));
  write_drawn_on(lesson);
  size_t length;
  ran r = run_cli_for(0, "draw", lesson, "-o", plain_path, NULL);
  ran_clear(&r);
  r = run_cli_for(0, "draw", lesson, "--ink", "-o", inked_path, NULL);
  ran_clear(&r);
  char *plain = read_all(plain_path, &length), *inked = read_all(inked_path, &length);
  char *bare = drawn_beside("b.svg", &length);
  assert_string_equal(plain, bare); /* the ink of a lesson shows on wish only */
  assert_string_not_equal(inked, plain);
  assert_true(strlen(inked) > strlen(plain));
  free(plain);
  free(inked);
  free(bare);
  assert_int_equal(remove(lesson) | remove(plain_path) | remove(inked_path), 0);
  free(lesson);
  free(plain_path);
  free(inked_path);
}

/* The strip of key moments in each format, a page a case in a PDF, with its words in the SVG. */
static void the_moments_are_drawn_in_every_format(void **state) {
  static const char *const names[] = {"m.png", "m.svg", "m.pdf"};
  for (size_t i = 0; i < 3; i++) {
    size_t plain, strip;
    const char *path = in_folder(names[i]);
    char *picture = drawn(names[i], &plain, NULL, NULL);
    ran r = run_cli_for(0, "draw", lesson_path("demo.oxbow"), "--moments", "-o", path, NULL);
    ran_clear(&r);
    char *bytes = read_all(path, &strip);
    assert_non_null(bytes);
    assert_true(plain != strip || memcmp(picture, bytes, plain) != 0);
    if (i == 1) {
      assert_non_null(strstr(bytes, "1. Over the fix, 0:00, heading "));
      assert_non_null(strstr(bytes, "For instruction only, not for navigation."));
    }
    if (i == 2) assert_int_equal(page_count(bytes, strip), 12);
    free(picture);
    free(bytes);
    assert_int_equal(remove(path), 0);
  }
}

static void wrong_options_are_usage_and_write_nothing(void **state) {
  static const struct {
    const char *name, *option, *value, *says;
  } rows[] = {
      {"a.bmp", "--at", "0", ".png, .apng, .gif, .svg or .pdf"},
      {"png", "--at", "0", ".png, .apng, .gif, .svg or .pdf"},
      {".png", "--at", "0", ".png, .apng, .gif, .svg or .pdf"},
      {"a.png", "--size", "0x100", "1 to 16384"},
      {"a.png", "--size", "100", "1 to 16384"},
      {"a.png", "--size", "100x", "1 to 16384"},
      {"a.png", "--size", "x100", "1 to 16384"},
      {"a.png", "--size", "100x100x100", "1 to 16384"},
      {"a.png", "--size", "99999x10", "1 to 16384"},
      {"a.png", "--size", "-5x10", "1 to 16384"},
      {"a.png", "--size", "10.5x10", "1 to 16384"},
      {"a.svg", "--size", "20000x10", "1 to 14400"},
      {"a.png", "--dpi", "5", "10 to 2400"},
      {"a.pdf", "--dpi", "300", "in pixels"},
      {"a.png", "--fps", "10", "FILE.apng"},
      {"a.apng", "--fps", "61", "1 to 60"},
      {"a.apng", "--speed", "0", "0.1 to 1000"},
      {"a.png", "--size", "10x999cm", "WxHcm"},
      {"a.png", "--palette", "pink", "light, dark, projector or print"},
      {"a.png", "--at", "soon", "seconds"},
      {"a.png", "--at", "1,5", "seconds"},
      {"a.png", "--zoom", "2", "--zoom"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ran r = run_cli_for(2, "draw", lesson_path("demo.oxbow"), "-o", in_folder(rows[i].name),
                        rows[i].option, rows[i].value, NULL);
    if (!strstr(r.err, rows[i].says)) fail_msg("\"%s\" is not in: %s", rows[i].says, r.err);
    assert_non_null(strstr(r.err, "--help"));
    ran_clear(&r);
    assert_int_equal(folder_count(), 0);
  }
  ran r = run_cli_for(2, "draw", lesson_path("demo.oxbow"), NULL);
  assert_non_null(strstr(r.err, "-o FILE"));
  ran_clear(&r);
}

static void where_nothing_can_be_written_it_says_so(void **state) {
  ran r = run_cli_for(1, "draw", lesson_path("demo.oxbow"), "-o", in_folder("no/a.png"), NULL);
  assert_non_null(strstr(r.err, "no/a.png"));
  ran_clear(&r);
  assert_int_equal(mkdir(in_folder("folder.png"), 0700), 0);
  r = run_cli_for(1, "draw", lesson_path("demo.oxbow"), "-o", in_folder("folder.png"), NULL);
  ran_clear(&r);
  assert_int_equal(folder_count(), 1);
  assert_int_equal(remove(in_folder("folder.png")), 0);
}

static void a_bad_lesson_leaves_the_old_picture(void **state) {
  const char *lesson = write_lesson("bad.oxbow", "{}"), *path = in_folder("a.png");
  write_text(path, "the old picture");
  ran r = run_cli_for(1, "draw", lesson, "-o", path, NULL);
  ran_clear(&r);
  char *bytes = read_all(path, NULL);
  assert_string_equal(bytes, "the old picture");
  free(bytes);
  assert_int_equal(remove(path), 0);
  assert_int_equal(remove(in_folder("bad.oxbow")), 0);
}

/* Files may not grow beyond a few kilobytes: the write fails half-way, as on a full disk. */
static void a_full_disk_leaves_the_old_picture_and_no_other_file(void **state) {
  static const char *const names[] = {"a.png", "a.svg", "a.pdf"};
  struct rlimit before, low;
  for (size_t i = 0; i < 3; i++) {
    const char *path = in_folder(names[i]);
    write_text(path, "the old picture");
    assert_int_equal(getrlimit(RLIMIT_FSIZE, &before), 0);
    low = before;
    low.rlim_cur = 4096;
    signal(SIGXFSZ, SIG_IGN);
    assert_int_equal(setrlimit(RLIMIT_FSIZE, &low), 0);
    ran r = run_cli("draw", lesson_path("demo.oxbow"), "-o", path, NULL);
    int restored = setrlimit(RLIMIT_FSIZE, &before);
    signal(SIGXFSZ, SIG_DFL);
    assert_int_equal(restored, 0);
    assert_int_equal(r.code, 1);
    assert_non_null(strstr(r.err, names[i]));
    ran_clear(&r);
    char *bytes = read_all(path, NULL);
    assert_string_equal(bytes, "the old picture");
    free(bytes);
    assert_int_equal(folder_count(), 1);
    assert_int_equal(remove(path), 0);
  }
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_png_is_a_png_of_the_size_asked_for),
      cmocka_unit_test(centimetres_are_pixels_at_the_resolution),
      cmocka_unit_test(a_moving_picture_is_an_animated_png),
      cmocka_unit_test(an_svg_is_an_svg_with_a_decimal_point),
      cmocka_unit_test(a_pdf_has_a_sheet_for_each_case),
      cmocka_unit_test(the_same_command_gives_the_same_bytes),
      cmocka_unit_test(options_change_the_picture),
      cmocka_unit_test(pen_marks_are_drawn_when_asked_for),
      cmocka_unit_test(the_moments_are_drawn_in_every_format),
      cmocka_unit_test_teardown(the_locale_changes_nothing, leave_german),
      cmocka_unit_test(wrong_options_are_usage_and_write_nothing),
      cmocka_unit_test(where_nothing_can_be_written_it_says_so),
      cmocka_unit_test(a_bad_lesson_leaves_the_old_picture),
      cmocka_unit_test(a_full_disk_leaves_the_old_picture_and_no_other_file),
  };
  return cmocka_run_group_tests(tests, folder_make, folder_remove);
}
