/* draw as a user runs it for handouts, GIFs and numbered frames. */
#include <sys/stat.h>

#include "cli_run.h"

/* The pages of a PDF as its page tree counts them. */
static int page_count(const char *pdf, size_t length) {
  for (size_t i = 0; i + 8 < length; i++)
    if (memcmp(pdf + i, "/Count ", 7) == 0) return atoi(pdf + i + 7);
  return -1;
}

static char *handout(size_t *length, const char *kind, const char *option, const char *value) {
  const char *path = in_folder("a.pdf");
  ran r = run_cli_for(0, "draw", lesson_path("demo.oxbow"), "-o", path, kind, option, value, NULL);
  assert_string_equal(r.out, "");
  ran_clear(&r);
  char *bytes = read_all(path, length);
  assert_non_null(bytes);
  assert_memory_equal(bytes, "%PDF-", 5);
  assert_int_equal(folder_count(), 1);
  assert_int_equal(remove(path), 0);
  return bytes;
}

/* The twelve holds of the lesson. */
static void handouts_have_the_pages_asked_for(void **state) {
  static const struct {
    const char *option, *value;
    int pages;
  } rows[] = {{"--per-page", "1", 12}, {"--per-page", "2", 6}, {"--per-page", "4", 3},
              {"--paper", "letter", 6}, {"--seed", "7", 6}, {"--case", "The same wind worked out "
                                                                       "exactly", 1}};
  for (int kind = 0; kind < 2; kind++)
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
      size_t length;
      char *pdf = handout(&length, kind ? "--key" : "--worksheet", rows[i].option, rows[i].value);
      assert_int_equal(page_count(pdf, length), rows[i].pages);
      free(pdf);
    }
}

static void the_same_seed_gives_the_same_bytes(void **state) {
  size_t first, second, other;
  char *a = handout(&first, "--key", "--seed", "11"), *b = handout(&second, "--key", "--seed",
                                                                   "11");
  char *c = handout(&other, "--key", "--seed", "12");
  assert_int_equal(first, second);
  assert_memory_equal(a, b, first);
  assert_false(other == first && memcmp(a, c, first) == 0);
  free(a);
  free(b);
  free(c);
}

static void wrong_options_are_usage_and_write_nothing(void **state) {
  static const struct {
    const char *name, *one, *two, *value, *says;
  } rows[] = {
      {"a.png", "--key", "--seed", "1", "written as .pdf"},
      {"a.pdf", "--key", "--per-page", "3", "1, 2 or 4"},
      {"a.pdf", "--key", "--per-page", "0", "1, 2 or 4"},
      {"a.pdf", "--key", "--per-page", "two", "1, 2 or 4"},
      {"a.pdf", "--worksheet", "--paper", "A3", "a4 or letter"},
      {"a.pdf", "--worksheet", "--seed", "-1", "--seed"},
      {"a.pdf", "--worksheet", "--size", "10x10", "--size is not for handouts"},
      {"a.pdf", "--worksheet", "--spread", "10", "--spread is not for handouts"},
      {"a.pdf", "--key", "--palette", "dark", "--palette is not for handouts"},
      {"a.pdf", "--area", "--paper", "a4", "--worksheet or --key"},
      {"a.pdf", "--area", "--per-page", "2", "--worksheet or --key"},
      {"a.pdf", "--area", "--seed", "2", "--spread, --worksheet or --key"},
      {"a.gif", "--area", "--fps", "51", "1 to 50"},
      {"a.gif", "--area", "--dpi", "96", "--dpi"},
      {"a.gif", "--area", "--at", "5", "stands still"},
      {"a.gif", "--moments", "--speed", "50", "stands still"},
      {"a.gif", "--transparent", "--speed", "50", "--transparent"},
      {"a%s.png", "--area", "--speed", "50", "one place for a number"},
      {"a%d%d.png", "--area", "--speed", "50", "one place for a number"},
      {"a%00d.png", "--area", "--speed", "50", "one place for a number"},
      {"a%5d.png", "--area", "--speed", "50", "one place for a number"},
      {"a%n.png", "--area", "--speed", "50", "one place for a number"},
      {"a%", "--area", "--speed", "50", "does not end in"},
      {"a%.png", "--area", "--speed", "50", "one place for a number"},
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    ran r = run_cli_for(2, "draw", lesson_path("demo.oxbow"), "-o", in_folder(rows[i].name),
                        rows[i].one, rows[i].two, rows[i].value, NULL);
    if (!strstr(r.err, rows[i].says)) fail_msg("\"%s\" is not in: %s", rows[i].says, r.err);
    ran_clear(&r);
    assert_int_equal(folder_count(), 0);
  }
  ran r = run_cli_for(2, "draw", lesson_path("demo.oxbow"), "-o", in_folder("a.pdf"),
                      "--worksheet", "--key", NULL);
  assert_non_null(strstr(r.err, "two files"));
  ran_clear(&r);
}

static void a_gif_is_a_gif(void **state) {
  const char *path = in_folder("a.GIF");
  ran r = run_cli_for(0, "draw", lesson_path("demo.oxbow"), "-o", path, "--speed", "200", "--size",
                      "320x200", NULL);
  ran_clear(&r);
  size_t length;
  char *gif = read_all(path, &length);
  assert_memory_equal(gif, "GIF89a\x40\x01\xc8\x00", 10); /* 320 by 200, low byte first */
  assert_int_equal(gif[length - 1], ';');
  free(gif);
}

static void frames_are_numbered_from_one(void **state) {
  ran r = run_cli_for(0, "draw", lesson_path("demo.oxbow"), "-o", in_folder("f%03d.png"),
                      "--speed", "500", "--fps", "2", "--size", "160x100", NULL);
  ran_clear(&r);
  int count = folder_count();
  assert_true(count >= 3);
  char name[32];
  for (int i = 1; i <= count; i++) {
    size_t length;
    snprintf(name, sizeof name, "f%03d.png", i);
    char *png = read_all(in_folder(name), &length);
    assert_non_null(png);
    assert_memory_equal(png, "\x89PNG\r\n\x1a\n", 8);
    assert_int_equal(png[19], (char)160);
    free(png);
  }
}

static void frames_need_a_folder_and_an_end(void **state) {
  ran r = run_cli_for(1, "draw", lesson_path("demo.oxbow"), "-o", in_folder("no/f%d.png"), NULL);
  assert_non_null(strstr(r.err, "no/f1.png"));
  ran_clear(&r);
  r = run_cli_for(1, "draw", lesson_path("demo.oxbow"), "-o", in_folder("f%d.png"), "--speed",
                  "0.1", "--fps", "60", NULL);
  assert_non_null(strstr(r.err, "--speed"));
  ran_clear(&r);
  assert_int_equal(folder_count(), 0);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test_setup_teardown(handouts_have_the_pages_asked_for, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(the_same_seed_gives_the_same_bytes, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(wrong_options_are_usage_and_write_nothing, folder_make,
                                      folder_remove),
      cmocka_unit_test_setup_teardown(a_gif_is_a_gif, folder_make, folder_remove),
      cmocka_unit_test_setup_teardown(frames_are_numbered_from_one, folder_make, folder_remove),
      cmocka_unit_test_setup_teardown(frames_need_a_folder_and_an_end, folder_make,
                                      folder_remove),
  };
  return cmocka_run_group_tests_name("draw-sheets", tests, NULL, NULL);
}
