/* The open lesson and the flight's clock. Needs no display. */
#include "ox_test.h"

#include <glib.h>
#include <glib/gstdio.h>

#include "ox_document.h"
#include "ox_player.h"

typedef struct {
  guint changes, modified_notes;
  guint last;
} heard;

static void changed_cb(OxDocument *document, guint what, heard *h) {
  h->changes++;
  h->last = what;
}

static void modified_cb(OxDocument *document, GParamSpec *pspec, heard *h) { h->modified_notes++; }

static OxDocument *new_document(heard *h) {
  OxDocument *document = ox_document_new();
  *h = (heard){0};
  g_signal_connect(document, "changed", G_CALLBACK(changed_cb), h);
  g_signal_connect(document, "notify::modified", G_CALLBACK(modified_cb), h);
  return document;
}

static void changed_is_emitted_only_on_a_real_change(void **state) {
  heard h;
  OxDocument *document = new_document(&h);
  const ox_field *course = ox_field_by_key("hold.inbound_deg");
  double before = ox_document_case(document)->hold.inbound_deg;

  assert_int_equal(ox_document_set_field(document, course, before, NULL), OX_OK);
  assert_int_equal(h.changes, 0);
  assert_false(ox_document_modified(document));

  assert_int_equal(ox_document_set_field(document, course, 240, NULL), OX_OK);
  assert_int_equal(h.changes, 1);
  assert_int_equal(h.last, OX_DOCUMENT_CASE);
  assert_true(ox_document_modified(document));
  assert_int_equal(h.modified_notes, 1);

  assert_int_equal(ox_document_set_field(document, course, 240, NULL), OX_OK);
  assert_int_equal(h.changes, 1);
  g_object_unref(document);
}

/* ---- settled ---------------------------------------------------------------------------- */

static void set_course(OxDocument *document, double deg) {
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), deg, NULL);
}

/* Whatever is due in the next while. */
static void wait_ms(guint ms) {
  gint64 end_us = g_get_monotonic_time() + (gint64)ms * 1000;
  while (g_get_monotonic_time() < end_us) {
    g_main_context_iteration(NULL, FALSE);
    g_usleep(500);
  }
}

static void without_a_step_settled_comes_with_every_change(void **state) {
  heard all, h = {0};
  OxDocument *document = new_document(&all);
  g_signal_connect(document, "settled", G_CALLBACK(changed_cb), &h);
  set_course(document, 240);
  set_course(document, 240);
  assert_int_equal(h.changes, 1);
  assert_int_equal(h.last, OX_DOCUMENT_CASE);
  ox_document_undo(document);
  assert_int_equal(h.changes, 2);
  wait_ms(300);
  assert_int_equal(h.changes, 2);
  g_object_unref(document);
}

static void a_step_settles_once_at_its_end_with_all_that_changed(void **state) {
  heard all, h = {0};
  OxDocument *document = new_document(&all);
  g_signal_connect(document, "settled", G_CALLBACK(changed_cb), &h);
  ox_document_begin_step(document, "Drag");
  assert_true(ox_document_in_step(document));
  for (int i = 0; i < 50; i++) set_course(document, 10 + i);
  ox_document_set_title(document, "Another title", NULL);
  assert_int_equal(all.changes, 51);
  assert_int_equal(h.changes, 0);
  ox_document_end_step(document);
  assert_false(ox_document_in_step(document));
  assert_int_equal(h.changes, 1);
  assert_int_equal(h.last, OX_DOCUMENT_CASE | OX_DOCUMENT_EXTRAS);
  wait_ms(300);
  assert_int_equal(h.changes, 1);
  g_object_unref(document);
}

static void a_step_that_pauses_settles_before_its_end(void **state) {
  heard all, h = {0};
  OxDocument *document = new_document(&all);
  g_signal_connect(document, "settled", G_CALLBACK(changed_cb), &h);
  ox_document_begin_step(document, "Drag");
  for (int i = 0; i < 20; i++) set_course(document, 10 + i);
  wait_ms(400);
  assert_int_equal(h.changes, 1);
  wait_ms(400);
  assert_int_equal(h.changes, 1); /* nothing changed any more */
  ox_document_end_step(document);
  assert_int_equal(h.changes, 1);
  g_object_unref(document);
}

static void a_step_broken_off_settles_to_what_was(void **state) {
  heard all, h = {0};
  OxDocument *document = new_document(&all);
  double before = ox_document_case(document)->hold.inbound_deg;
  g_signal_connect(document, "settled", G_CALLBACK(changed_cb), &h);
  ox_document_begin_step(document, "Drag");
  set_course(document, 240);
  ox_document_cancel_step(document);
  assert_int_equal(h.changes, 1);
  /* The last edit had led back already, and whoever was told of the pause must hear of it. */
  ox_document_begin_step(document, "Drag");
  set_course(document, 240);
  wait_ms(400);
  assert_int_equal(h.changes, 2);
  set_course(document, before);
  ox_document_cancel_step(document);
  assert_int_equal(h.changes, 3);
  /* A document that goes while it waits. */
  ox_document_begin_step(document, "Drag");
  set_course(document, 240);
  g_object_unref(document);
  wait_ms(300);
  assert_int_equal(h.changes, 3);
}

static void there_and_back_again_is_no_modification(void **state) {
  heard h;
  OxDocument *document = new_document(&h);
  const ox_field *course = ox_field_by_key("hold.inbound_deg");
  double before = ox_document_case(document)->hold.inbound_deg;
  ox_document_set_field(document, course, 240, NULL);
  ox_document_set_field(document, course, before, NULL);
  assert_int_equal(h.changes, 2);
  assert_false(ox_document_modified(document));
  assert_int_equal(h.modified_notes, 2);
  g_object_unref(document);
}

static void a_faulty_case_is_refused_and_nothing_changes(void **state) {
  heard h;
  OxDocument *document = new_document(&h);
  ox_case before = *ox_document_case(document), bad = before;
  ox_fault fault;
  bad.hold.inbound_deg = 400;
  assert_int_equal(ox_document_edit(document, &bad, &fault), OX_ERROR);
  assert_string_equal(fault.key, "hold.inbound_deg");
  assert_string_equal(fault.value, "400");
  assert_int_equal(
      ox_document_set_field(document, ox_field_by_key("aircraft.ias_kt"), (double)NAN, &fault),
      OX_ERROR);
  assert_string_equal(fault.key, "aircraft.ias_kt");
  assert_int_equal(h.changes, 0);
  assert_true(ox_case_equal(ox_document_case(document), &before));
  assert_false(ox_document_modified(document));
  g_object_unref(document);
}

static void one_edit_is_one_solve_however_often_the_flight_is_asked_for(void **state) {
  heard h;
  OxDocument *document = new_document(&h);
  ox_document_flight(document);
  ox_document_flight(document);
  assert_int_equal(ox_document_solve_count(document), 1);
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 90, NULL);
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 90, NULL);
  const ox_flight *flight = ox_document_flight(document);
  ox_document_flight(document);
  assert_int_equal(ox_document_solve_count(document), 2);
  assert_close(flight->setup.inbound_true_deg, 90, 1e-9, "the flight is of the edited case");
  g_object_unref(document);
}

static ox_lesson *two_cases(void) {
  ox_lesson *lesson = ox_lesson_new();
  ox_case second = lesson->cases[0].c;
  strcpy(second.name, "Second");
  second.hold.inbound_deg = 90;
  assert_int_equal(ox_lesson_insert(lesson, 1, &second, NULL), OX_OK);
  return lesson;
}

static void selecting_a_case_shows_its_flight_and_stops_at_the_last(void **state) {
  heard h;
  OxDocument *document = new_document(&h);
  ox_document_take(document, two_cases(), NULL);
  assert_true(h.last & OX_DOCUMENT_LESSON);
  ox_document_select(document, 1);
  assert_int_equal(h.changes, 2);
  assert_string_equal(ox_document_case(document)->name, "Second");
  assert_close(ox_document_flight(document)->setup.inbound_true_deg, 90, 1e-9, "inbound");
  ox_document_select(document, 7);
  assert_int_equal(h.changes, 2);
  assert_int_equal(ox_document_case_index(document), 1);
  assert_false(ox_document_modified(document));
  g_object_unref(document);
}

static void saved_and_opened_again_it_is_the_same_lesson(void **state) {
  heard h;
  OxDocument *document = new_document(&h), *again = ox_document_new();
  ox_messages messages = {0};
  char *directory = g_dir_make_tmp("oxbow-test-XXXXXX", NULL);
  char *path = g_build_filename(directory, "lesson.oxbow", NULL);
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 240.5, NULL);
  assert_int_equal(ox_document_save(document, path, &messages), OX_OK);
  assert_false(ox_document_modified(document));
  assert_string_equal(ox_document_path(document), path);
  assert_int_equal(ox_document_open(again, path, &messages), OX_OK);
  assert_true(ox_case_equal(ox_document_case(document), ox_document_case(again)));
  assert_int_equal(messages.count, 0);
  g_unlink(path);
  g_rmdir(directory);
  g_free(path);
  g_free(directory);
  g_object_unref(document);
  g_object_unref(again);
}

static void a_file_that_cannot_be_read_leaves_the_open_lesson(void **state) {
  heard h;
  OxDocument *document = new_document(&h);
  const ox_lesson *before = ox_document_lesson(document);
  ox_messages messages = {0};
  assert_int_equal(ox_document_open(document, "/nowhere/at/all.oxbow", &messages), OX_ERROR);
  assert_true(messages.count > 0);
  assert_ptr_equal(ox_document_lesson(document), before);
  assert_int_equal(h.changes, 0);
  ox_messages_clear(&messages);
  g_object_unref(document);
}

static void a_lesson_of_a_newer_program_is_never_saved_over(void **state) {
  heard h;
  OxDocument *document = new_document(&h);
  ox_lesson *lesson = ox_lesson_new();
  ox_messages messages = {0};
  char *directory = g_dir_make_tmp("oxbow-test-XXXXXX", NULL);
  char *path = g_build_filename(directory, "newer.oxbow", NULL);
  lesson->read_only = true;
  ox_document_take(document, lesson, path);
  assert_int_equal(
      ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 123, NULL), OX_OK);
  assert_false(ox_document_modified(document));
  assert_int_equal(ox_document_save(document, path, &messages), OX_ERROR);
  assert_true(messages.count > 0);
  assert_false(g_file_test(path, G_FILE_TEST_EXISTS));
  ox_messages_clear(&messages);
  g_rmdir(directory);
  g_free(path);
  g_free(directory);
  g_object_unref(document);
}

/* ---- the player ------------------------------------------------------------------------- */

#define FRAME_S 1000000

static void the_time_does_not_depend_on_the_frame_rate(void **state) {
  static const int rates_hz[] = {7, 15, 60, 144};
  for (size_t i = 0; i < G_N_ELEMENTS(rates_hz); i++) {
    OxPlayer *player = ox_player_new();
    ox_player_set_range(player, -100, 900);
    ox_player_seek(player, -100);
    ox_player_set_speed(player, 10);
    ox_player_set_playing(player, TRUE);
    for (int frame = 0; frame <= rates_hz[i] * 60; frame++)
      ox_player_tick(player, 5000 + (gint64)frame * FRAME_S / rates_hz[i]);
    /* 60 s at ten seconds a second from -100 */
    assert_close(ox_player_time_s(player), 500, 1e-6, "after a minute");
    g_object_unref(player);
  }
}

static void the_flight_stops_at_its_end_and_starts_over(void **state) {
  OxPlayer *player = ox_player_new();
  ox_player_set_range(player, 0, 10);
  ox_player_set_playing(player, TRUE);
  ox_player_tick(player, 0);
  ox_player_tick(player, 60 * FRAME_S);
  assert_false(ox_player_playing(player));
  assert_close(ox_player_time_s(player), 10, 0, "end");
  ox_player_set_playing(player, TRUE);
  assert_close(ox_player_time_s(player), 0, 0, "start");
  g_object_unref(player);
}

static void changes_while_it_plays_leave_no_jump(void **state) {
  OxPlayer *player = ox_player_new();
  ox_player_set_range(player, 0, 1000);
  ox_player_set_speed(player, 2);
  ox_player_set_playing(player, TRUE);
  ox_player_tick(player, 0);
  ox_player_tick(player, 10 * FRAME_S);
  assert_close(ox_player_time_s(player), 20, 1e-9, "at twice the speed");
  ox_player_change_speed(player, 1);
  assert_int_equal(ox_player_speed(player), 6);
  ox_player_tick(player, 11 * FRAME_S);
  ox_player_tick(player, 12 * FRAME_S);
  assert_close(ox_player_time_s(player), 26, 1e-9, "at six times the speed from there");
  ox_player_set_range(player, 0, 25);
  assert_close(ox_player_time_s(player), 25, 0, "a shorter flight");
  ox_player_tick(player, 13 * FRAME_S);
  assert_true(ox_player_time_s(player) <= 25);
  ox_player_seek(player, (double)NAN);
  assert_close(ox_player_time_s(player), 0, 0, "no NaN");
  g_object_unref(player);
}

static void a_flight_without_length_does_not_play(void **state) {
  OxPlayer *player = ox_player_new();
  ox_player_set_range(player, 0, 0);
  ox_player_set_playing(player, TRUE);
  assert_false(ox_player_playing(player));
  g_object_unref(player);
}

static void the_speeds_end_at_one_and_twenty(void **state) {
  OxPlayer *player = ox_player_new();
  for (int i = 0; i < 9; i++) ox_player_change_speed(player, 1);
  assert_int_equal(ox_player_speed(player), 20);
  for (int i = 0; i < 9; i++) ox_player_change_speed(player, -1);
  assert_int_equal(ox_player_speed(player), 1);
  g_object_unref(player);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(changed_is_emitted_only_on_a_real_change),
      cmocka_unit_test(without_a_step_settled_comes_with_every_change),
      cmocka_unit_test(a_step_settles_once_at_its_end_with_all_that_changed),
      cmocka_unit_test(a_step_that_pauses_settles_before_its_end),
      cmocka_unit_test(a_step_broken_off_settles_to_what_was),
      cmocka_unit_test(there_and_back_again_is_no_modification),
      cmocka_unit_test(a_faulty_case_is_refused_and_nothing_changes),
      cmocka_unit_test(one_edit_is_one_solve_however_often_the_flight_is_asked_for),
      cmocka_unit_test(selecting_a_case_shows_its_flight_and_stops_at_the_last),
      cmocka_unit_test(saved_and_opened_again_it_is_the_same_lesson),
      cmocka_unit_test(a_file_that_cannot_be_read_leaves_the_open_lesson),
      cmocka_unit_test(a_lesson_of_a_newer_program_is_never_saved_over),
      cmocka_unit_test(the_time_does_not_depend_on_the_frame_rate),
      cmocka_unit_test(the_flight_stops_at_its_end_and_starts_over),
      cmocka_unit_test(changes_while_it_plays_leave_no_jump),
      cmocka_unit_test(a_flight_without_length_does_not_play),
      cmocka_unit_test(the_speeds_end_at_one_and_twenty),
  };
  return cmocka_run_group_tests_name("document", tests, NULL, NULL);
}
