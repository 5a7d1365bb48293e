/* Undo and redo of the open lesson, and its list of cases. Needs no display. */
#include "ox_test.h"

#include <cJSON.h>
#include <glib.h>

#include "ox_document.h"
#include "ox_history.h"
#include "ox_input.h"
#include "ox_step_name.h"

static OxDocument *open_bytes(const char *bytes) {
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  ox_status status = ox_lesson_parse(bytes, strlen(bytes), "test", &lesson, &messages);
  for (size_t i = 0; i < messages.count; i++) print_error("%s\n", messages.text[i]);
  assert_int_equal(status, OX_OK);
  OxDocument *document = ox_document_new();
  ox_document_take(document, lesson, NULL);
  return document;
}

#define FLOWN "\"arrival\": {\"heading_deg\": 90}, \"aircraft\": {\"ias_kt\": 100}"

static const char three_cases[] =
    "{\"format\": \"oxbow-lesson\", \"version\": 1, \"title\": \"Three\", \"colour\": [1, 2],"
    " \"cases\": ["
    "{\"name\": \"A\", \"hold\": {\"fix\": \"LARCH\", \"inbound_deg\": 90, \"note\": \"kept\"},"
    FLOWN "},"
    "{\"name\": \"B\", \"hold\": {\"fix\": \"ALDER\", \"inbound_deg\": 180}, \"extra\": {\"x\": 1},"
    FLOWN "},"
    "{\"name\": \"C\", \"hold\": {\"fix\": \"HAZEL\", \"inbound_deg\": 270}," FLOWN ","
    " \"wind\": {\"from_deg\": 360, \"kt\": 20, \"gusts\": 30}}]}";

static char *bytes_of(OxDocument *document) {
  char *text = ox_lesson_to_text(ox_document_lesson(document));
  assert_non_null(text);
  char *copy = g_strdup(text);
  cJSON_free(text);
  return copy;
}

static void assert_bytes(OxDocument *document, const char *want) {
  char *got = bytes_of(document);
  assert_string_equal(got, want);
  g_free(got);
}

static void set_course(OxDocument *document, double deg) {
  assert_int_equal(
      ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), deg, NULL), OX_OK);
}

static double course(OxDocument *document) { return ox_document_case(document)->hold.inbound_deg; }

/* ---- single steps ----------------------------------------------------------------------- */

static void an_edit_is_undone_and_redone_by_its_name(void **state) {
  OxDocument *document = open_bytes(three_cases);
  assert_false(ox_document_can_undo(document));
  assert_null(ox_document_undo_name(document));
  set_course(document, 100);
  assert_string_equal(ox_document_undo_name(document), "Inbound Course");
  assert_false(ox_document_can_redo(document));
  ox_document_undo(document);
  assert_close(course(document), 90, 0, "undone");
  assert_false(ox_document_can_undo(document));
  assert_string_equal(ox_document_redo_name(document), "Inbound Course");
  ox_document_redo(document);
  assert_close(course(document), 100, 0, "redone");
  ox_document_redo(document); /* there is no more */
  assert_close(course(document), 100, 0, "still");
  g_object_unref(document);
}

static void a_new_edit_forgets_what_was_undone(void **state) {
  OxDocument *document = open_bytes(three_cases);
  set_course(document, 100);
  set_course(document, 110);
  ox_document_undo(document);
  set_course(document, 120);
  assert_false(ox_document_can_redo(document));
  ox_document_undo(document);
  assert_close(course(document), 100, 0, "the step before");
  g_object_unref(document);
}

static void two_edits_at_once_are_two_steps(void **state) {
  OxDocument *document = open_bytes(three_cases);
  ox_document_set_clock(document, 0);
  set_course(document, 100);
  set_course(document, 110);
  ox_document_undo(document);
  assert_close(course(document), 100, 0, "one of two");
  g_object_unref(document);
}

static void undo_back_to_the_saved_state_is_no_modification(void **state) {
  OxDocument *document = open_bytes(three_cases);
  set_course(document, 100);
  assert_true(ox_document_modified(document));
  ox_document_undo(document);
  assert_false(ox_document_modified(document));
  ox_document_redo(document);
  assert_true(ox_document_modified(document));
  ox_document_delete_case(document, 1);
  ox_document_undo(document);
  ox_document_undo(document);
  assert_false(ox_document_modified(document));
  g_object_unref(document);
}

static void opening_another_lesson_forgets_the_history(void **state) {
  OxDocument *document = open_bytes(three_cases);
  set_course(document, 100);
  ox_document_begin_step(document, "Drag");
  ox_document_take(document, ox_lesson_new(), NULL);
  ox_document_end_step(document); /* of the lesson before: nothing */
  assert_false(ox_document_can_undo(document));
  ox_document_undo(document);
  assert_int_equal(ox_document_case_count(document), 1);
  g_object_unref(document);
}

/* ---- grouped ---------------------------------------------------------------------------- */

static void what_is_edited_between_begin_and_end_is_one_step(void **state) {
  OxDocument *document = open_bytes(three_cases);
  ox_document_begin_step(document, "Drag Course");
  for (int i = 1; i <= 200; i++) set_course(document, 90 + i * 0.5);
  assert_false(ox_document_can_undo(document)); /* not while it is dragged */
  ox_document_undo(document);
  assert_close(course(document), 190, 0, "undo waits for the end");
  ox_document_end_step(document);
  assert_string_equal(ox_document_undo_name(document), "Drag Course");
  ox_document_undo(document);
  assert_close(course(document), 90, 0, "before the press");
  assert_false(ox_document_can_undo(document));
  ox_document_redo(document);
  assert_close(course(document), 190, 0, "at the release");
  g_object_unref(document);
}

static void a_step_that_ends_where_it_began_is_none(void **state) {
  OxDocument *document = open_bytes(three_cases);
  ox_document_begin_step(document, "Drag Course");
  set_course(document, 120);
  set_course(document, 90);
  ox_document_end_step(document);
  assert_false(ox_document_can_undo(document));
  ox_document_end_step(document); /* without a begin */
  ox_document_cancel_step(document);
  assert_false(ox_document_can_undo(document));
  g_object_unref(document);
}

static void cancelling_restores_and_leaves_no_step(void **state) {
  OxDocument *document = open_bytes(three_cases);
  char *before = bytes_of(document);
  set_course(document, 100);
  ox_document_undo(document);
  ox_document_begin_step(document, "Drag Course");
  set_course(document, 120);
  ox_document_delete_case(document, 2);
  ox_document_cancel_step(document);
  assert_bytes(document, before);
  assert_false(ox_document_can_undo(document));
  assert_true(ox_document_can_redo(document)); /* a cancelled drag costs nothing */
  assert_false(ox_document_modified(document));
  g_free(before);
  g_object_unref(document);
}

static void edit_more(OxDocument *document, gint64 at_ms, const char *key, double value) {
  ox_case edited = *ox_document_case(document);
  ox_document_set_clock(document, at_ms * 1000);
  ox_field_set(ox_field_by_key(key), &edited, value);
  assert_int_equal(ox_document_edit_more(document, &edited, NULL), OX_OK);
}

static void presses_in_quick_succession_are_one_step(void **state) {
  OxDocument *document = open_bytes(three_cases);
  edit_more(document, 0, "hold.inbound_deg", 91);
  edit_more(document, 900, "hold.inbound_deg", 92);
  edit_more(document, 1900, "hold.inbound_deg", 93); /* a second after the last, not the first */
  ox_document_undo(document);
  assert_close(course(document), 90, 0, "three presses at once");
  g_object_unref(document);
}

static void a_pause_another_field_or_another_focus_begins_a_new_step(void **state) {
  OxDocument *document = open_bytes(three_cases);
  edit_more(document, 0, "hold.inbound_deg", 91);
  edit_more(document, 1001, "hold.inbound_deg", 92); /* too late */
  edit_more(document, 1002, "aircraft.ias_kt", 101); /* another field */
  edit_more(document, 1003, "hold.inbound_deg", 93);
  ox_document_seal_step(document); /* another focus */
  edit_more(document, 1004, "hold.inbound_deg", 94);
  set_course(document, 95); /* no succession */
  edit_more(document, 1005, "hold.inbound_deg", 96);
  const double want[] = {95, 94, 93, 92, 92, 91, 90};
  for (size_t i = 0; i < G_N_ELEMENTS(want); i++) {
    ox_document_undo(document);
    assert_close(course(document), want[i], 0, "one step back");
  }
  assert_false(ox_document_can_undo(document));
  g_object_unref(document);
}

static void presses_up_and_down_again_are_no_step(void **state) {
  OxDocument *document = open_bytes(three_cases);
  set_course(document, 100);
  edit_more(document, 0, "aircraft.ias_kt", 150);
  double ias = ox_document_case(document)->aircraft.ias_kt;
  edit_more(document, 10, "hold.inbound_deg", 101);
  edit_more(document, 20, "hold.inbound_deg", 100);
  assert_string_equal(ox_document_undo_name(document), "Indicated Speed");
  assert_close(ox_document_case(document)->aircraft.ias_kt, ias, 0, "speed stays");
  g_object_unref(document);
}

static void edits_of_two_cases_do_not_merge(void **state) {
  OxDocument *document = open_bytes(three_cases);
  edit_more(document, 0, "hold.inbound_deg", 91);
  ox_document_select(document, 1);
  edit_more(document, 1, "hold.inbound_deg", 181);
  ox_document_undo(document);
  assert_int_equal(ox_document_case_index(document), 1);
  assert_close(course(document), 180, 0, "second case");
  ox_document_undo(document);
  assert_int_equal(ox_document_case_index(document), 0);
  assert_close(course(document), 90, 0, "first case");
  g_object_unref(document);
}

/* ---- signals ---------------------------------------------------------------------------- */

typedef struct {
  guint changes, what, history;
} heard;

static void changed_cb(OxDocument *document, guint what, heard *h) {
  h->changes++;
  h->what = what;
}

static void history_cb(OxDocument *document, heard *h) { h->history++; }

static void undo_says_what_became_different_and_no_more(void **state) {
  heard h = {0};
  OxDocument *document = open_bytes(three_cases);
  g_signal_connect(document, "changed", G_CALLBACK(changed_cb), &h);
  g_signal_connect(document, "history", G_CALLBACK(history_cb), &h);
  set_course(document, 100);
  assert_int_equal(h.what, OX_DOCUMENT_CASE);
  ox_document_undo(document);
  assert_int_equal(h.what, OX_DOCUMENT_CASE);
  assert_int_equal(h.changes, 2);
  assert_int_equal(h.history, 2);
  ox_document_redo(document);
  ox_document_select(document, 2);
  assert_int_equal(h.what & OX_DOCUMENT_SELECTION, OX_DOCUMENT_SELECTION);
  ox_document_undo(document); /* of the first case: it is shown again */
  assert_int_equal(ox_document_case_index(document), 0);
  assert_true(h.what & OX_DOCUMENT_SELECTION);
  assert_false(h.what & OX_DOCUMENT_CASES);

  ox_document_rename_case(document, 0, "Anders", NULL);
  assert_int_equal(h.what, OX_DOCUMENT_CASE | OX_DOCUMENT_CASES);
  ox_document_set_title(document, "Other", NULL);
  assert_int_equal(h.what, OX_DOCUMENT_EXTRAS);
  assert_string_equal(ox_document_title(document), "Other");
  ox_document_undo(document);
  assert_string_equal(ox_document_title(document), "Three");
  g_object_unref(document);
}

static void undo_solves_once_and_a_new_title_not_at_all(void **state) {
  OxDocument *document = open_bytes(three_cases);
  set_course(document, 100);
  ox_document_flight(document);
  guint solves = ox_document_solve_count(document);
  ox_document_undo(document);
  assert_close(ox_document_flight(document)->setup.inbound_true_deg, 90, 1e-9, "its own flight");
  ox_document_flight(document);
  assert_int_equal(ox_document_solve_count(document), solves + 1);
  ox_document_set_title(document, "Other", NULL);
  ox_document_flight(document);
  assert_int_equal(ox_document_solve_count(document), solves + 1);
  g_object_unref(document);
}

/* ---- cases ------------------------------------------------------------------------------ */

/* The names, as "A|B|C". */
static char *names(OxDocument *document) {
  GString *all = g_string_new(NULL);
  const ox_lesson *lesson = ox_document_lesson(document);
  for (size_t i = 0; i < lesson->case_count; i++)
    g_string_append_printf(all, "%s%s", i > 0 ? "|" : "", lesson->cases[i].c.name);
  return g_string_free(all, FALSE);
}

static void assert_names(OxDocument *document, const char *want, size_t shown) {
  char *got = names(document);
  assert_string_equal(got, want);
  g_free(got);
  assert_int_equal(ox_document_case_index(document), shown);
}

static void cases_are_added_duplicated_moved_and_deleted(void **state) {
  OxDocument *document = open_bytes(three_cases);
  assert_int_equal(ox_document_add_case(document, 0), OX_OK);
  assert_names(document, "A|New case|B|C", 1);
  assert_int_equal(ox_document_add_case(document, 1), OX_OK);
  assert_names(document, "A|New case|New case 2|B|C", 2);
  assert_int_equal(ox_document_duplicate_case(document, 4), OX_OK);
  assert_names(document, "A|New case|New case 2|B|C|C, copy", 5);
  assert_int_equal(ox_document_duplicate_case(document, 5), OX_OK);
  assert_names(document, "A|New case|New case 2|B|C|C, copy|C, copy 2", 6);
  assert_int_equal(ox_document_move_case(document, 6, 0), OX_OK);
  assert_names(document, "C, copy 2|A|New case|New case 2|B|C|C, copy", 0);
  assert_int_equal(ox_document_move_case(document, 1, 6), OX_OK);
  assert_names(document, "C, copy 2|New case|New case 2|B|C|C, copy|A", 6);
  assert_int_equal(ox_document_delete_case(document, 6), OX_OK);
  assert_names(document, "C, copy 2|New case|New case 2|B|C|C, copy", 5);
  assert_int_equal(ox_document_delete_case(document, 0), OX_OK);
  assert_names(document, "New case|New case 2|B|C|C, copy", 4);
  assert_string_equal(ox_document_undo_name(document), "Delete Case");
  ox_document_undo(document);
  assert_names(document, "C, copy 2|New case|New case 2|B|C|C, copy", 0);
  ox_document_undo(document);
  ox_document_undo(document);
  assert_names(document, "C, copy 2|A|New case|New case 2|B|C|C, copy", 1);
  assert_string_equal(ox_document_undo_name(document), "Move Case");
  g_object_unref(document);
}

static void a_duplicate_has_the_unknown_keys_of_its_case(void **state) {
  OxDocument *document = open_bytes(three_cases);
  ox_document_duplicate_case(document, 2);
  char *text = bytes_of(document);
  const char *first = strstr(text, "\"gusts\"");
  assert_non_null(first);
  assert_non_null(strstr(first + 1, "\"gusts\""));
  g_free(text);
  g_object_unref(document);
}

static void the_last_case_stays_and_there_are_never_too_many(void **state) {
  OxDocument *document = ox_document_new();
  assert_int_equal(ox_document_delete_case(document, 0), OX_ERROR);
  assert_int_equal(ox_document_delete_case(document, 7), OX_ERROR);
  assert_int_equal(ox_document_move_case(document, 0, 1), OX_ERROR);
  assert_int_equal(ox_document_duplicate_case(document, 1), OX_ERROR);
  assert_false(ox_document_can_undo(document));
  for (size_t i = 1; i < OX_LESSON_CASES_MAX; i++)
    assert_int_equal(ox_document_duplicate_case(document, i - 1), OX_OK);
  assert_int_equal(ox_document_case_count(document), OX_LESSON_CASES_MAX);
  assert_int_equal(ox_document_duplicate_case(document, 0), OX_ERROR);
  assert_int_equal(ox_document_add_case(document, 0), OX_ERROR);
  const ox_lesson *lesson = ox_document_lesson(document);
  for (size_t i = 0; i < lesson->case_count; i++)
    for (size_t j = 0; j < i; j++)
      assert_string_not_equal(lesson->cases[i].c.name, lesson->cases[j].c.name);
  g_object_unref(document);
}

static void bad_names_are_refused_with_a_sentence(void **state) {
  OxDocument *document = open_bytes(three_cases);
  char *longest = g_strnfill(OX_CASE_NAME_BYTES, 'x'), *before = bytes_of(document);
  const char *const bad[] = {"", "  ", "two\nlines", "\xff\xfe", longest};
  for (size_t i = 0; i < G_N_ELEMENTS(bad); i++) {
    const char *why = NULL;
    assert_int_equal(ox_document_rename_case(document, 1, bad[i], &why), OX_ERROR);
    assert_non_null(why);
  }
  const char *why = NULL;
  assert_int_equal(ox_document_set_title(document, "a\tb", &why), OX_ERROR);
  assert_non_null(why);
  assert_bytes(document, before);
  longest[OX_CASE_NAME_BYTES - 1] = '\0';
  assert_int_equal(ox_document_rename_case(document, 1, longest, &why), OX_OK);
  assert_int_equal(ox_document_duplicate_case(document, 1), OX_OK); /* a copy's name fits too */
  assert_int_equal(ox_document_set_title(document, "", NULL), OX_OK);
  g_free(longest);
  g_free(before);
  g_object_unref(document);
}

static void a_long_name_is_cut_at_a_character(void **state) {
  OxDocument *document = ox_document_new();
  GString *name = g_string_new("x");
  while (name->len + 2 < OX_CASE_NAME_BYTES) g_string_append(name, "ä");
  assert_int_equal(ox_document_rename_case(document, 0, name->str, NULL), OX_OK);
  for (int i = 0; i < 12; i++) {
    ox_document_duplicate_case(document, 0);
    assert_true(g_utf8_validate(ox_document_case(document)->name, -1, NULL));
  }
  g_string_free(name, TRUE);
  g_object_unref(document);
}

/* ---- names of steps --------------------------------------------------------------------- */

static void every_field_has_a_step_name_of_its_own(void **state) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  for (size_t i = 0; i < count; i++) {
    ox_case before = ox_case_default(), after = before;
    double value = ox_field_get(&fields[i], &before);
    ox_field_set(&fields[i], &after, value == fields[i].min ? fields[i].max : fields[i].min);
    char *name = ox_step_name(&before, &after);
    if (strcmp(name, "Change") == 0) print_error("%s has no name\n", fields[i].key);
    assert_string_not_equal(name, "Change");
    g_free(name);
  }
}

static void steps_are_named_as_the_panel_names_its_inputs(void **state) {
  ox_case before = ox_case_default(), after = before;
  char *name;
  strcpy(after.name, "Other");
  name = ox_step_name(&before, &after);
  assert_string_equal(name, "Case Name");
  g_free(name);

  after = before;
  ox_input_apply(ox_input_by_key("wind.kt"), &after, 20);
  name = ox_step_name(&before, &after);
  assert_string_equal(name, "Wind Speed");
  g_free(name);
  ox_input_apply(ox_input_by_key("wind.from_deg"), &after, 90);
  name = ox_step_name(&before, &after);
  assert_string_equal(name, "Wind");
  g_free(name);

  after = before;
  after.technique.drift = OX_DRIFT_TRIPLE;
  after.technique.circuits = 7;
  name = ox_step_name(&before, &after);
  assert_string_equal(name, "Technique");
  g_free(name);

  after = before;
  after.hold.efc_min = 100;
  name = ox_step_name(&before, &after);
  assert_string_equal(name, "EFC");
  g_free(name);
}

/* ---- random ----------------------------------------------------------------------------- */

static void random_edit(OxDocument *document, ox_random *r) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  const ox_field *field = &fields[ox_random_below(r, (int)count)];
  double value = ox_random_between(r, field->min, field->max);
  if (field->kind != OX_FIELD_NUMBER) value = floor(value + 0.5);
  ox_case edited = *ox_document_case(document);
  ox_field_set(field, &edited, value);
  if (ox_random_below(r, 2) == 0)
    ox_document_edit(document, &edited, NULL); /* may be refused: nothing happens */
  else
    ox_document_edit_more(document, &edited, NULL);
}

static void random_wind(OxDocument *document, ox_random *r) {
  ox_case edited = *ox_document_case(document);
  edited.wind_count = ox_random_below(r, 4);
  for (int i = 0; i < edited.wind_count; i++)
    edited.wind[i] = (ox_wind_row){.altitude_ft = 1000.0 * (i + 1),
                                   .from_deg = ox_random_between(r, 0, 360),
                                   .kt = ox_random_between(r, 0, 60)};
  ox_document_edit(document, &edited, NULL);
}

static void random_change(OxDocument *document, ox_random *r) {
  size_t count = ox_document_case_count(document);
  size_t one = (size_t)ox_random_below(r, (int)count), other = (size_t)ox_random_below(r, (int)count);
  char name[32];
  g_snprintf(name, sizeof name, "Name %d", ox_random_below(r, 1000));
  switch (ox_random_below(r, 11)) {
  case 0: ox_document_add_case(document, one); break;
  case 1: ox_document_duplicate_case(document, one); break;
  case 2: ox_document_delete_case(document, one); break;
  case 3: ox_document_move_case(document, one, other); break;
  case 4: ox_document_rename_case(document, one, name, NULL); break;
  case 5: ox_document_set_title(document, name, NULL); break;
  case 6: random_wind(document, r); break;
  case 7: ox_document_select(document, one); break;
  default: random_edit(document, r);
  }
}

static void random_step(OxDocument *document, ox_random *r) {
  int kind = ox_random_below(r, 6);
  ox_document_set_clock(document, ox_random_below(r, 4) * 400000);
  if (kind > 1) {
    random_change(document, r);
    return;
  }
  ox_document_begin_step(document, "Several");
  for (int i = ox_random_below(r, 5); i > 0; i--) random_change(document, r);
  if (kind == 0)
    ox_document_end_step(document);
  else
    ox_document_cancel_step(document);
}

/* Undo all: the bytes of the beginning. Redo all: the bytes of the end. And every state in
 * between is the same both ways. */
static void whatever_was_done_all_of_it_is_undone_and_redone(void **state) {
  for (uint64_t seed = 1; seed <= 60; seed++) {
    ox_random r = {seed};
    OxDocument *document = open_bytes(three_cases);
    GPtrArray *down = g_ptr_array_new_with_free_func(g_free);
    char *first = bytes_of(document);
    for (int i = 0; i < 80; i++) {
      random_step(document, &r);
      if (ox_random_below(&r, 8) == 0) ox_document_undo(document);
      if (ox_random_below(&r, 9) == 0) ox_document_redo(document);
    }
    while (ox_document_can_redo(document)) ox_document_redo(document);
    char *last = bytes_of(document);
    while (ox_document_can_undo(document)) {
      g_ptr_array_add(down, bytes_of(document));
      ox_document_undo(document);
      assert_true(ox_document_case_index(document) < ox_document_case_count(document));
    }
    assert_bytes(document, first);
    assert_false(ox_document_modified(document));
    for (guint i = down->len; i > 0; i--) {
      ox_document_redo(document);
      assert_bytes(document, g_ptr_array_index(down, i - 1));
    }
    assert_bytes(document, last);
    assert_false(ox_document_can_redo(document));
    g_ptr_array_unref(down);
    g_free(first);
    g_free(last);
    g_object_unref(document);
  }
}

/* ---- bounds ----------------------------------------------------------------------------- */

static void the_oldest_steps_go_when_there_are_too_many(void **state) {
  OxDocument *document = ox_document_new();
  for (int i = 0; i < OX_HISTORY_STEPS_MAX + 50; i++) set_course(document, 1 + i * 0.25);
  int undone = 0;
  while (ox_document_can_undo(document)) {
    ox_document_undo(document);
    undone++;
  }
  assert_int_equal(undone, OX_HISTORY_STEPS_MAX);
  assert_close(course(document), 1 + 49 * 0.25, 0, "as far back as it goes");
  g_object_unref(document);
}

/* A lesson with a large unknown key: its values are edited without copying the key, and copies of
 * the whole are bounded in memory. */
static void the_history_is_bounded_in_memory(void **state) {
  ox_history *history = ox_history_new();
  GString *text = g_string_new("{\"format\": \"oxbow-lesson\", \"version\": 1, \"title\": \"L\","
                               " \"cases\": [{\"name\": \"A\", \"large\": \"");
  for (int i = 0; i < 1024 * 1024; i++) g_string_append_c(text, 'x');
  g_string_append(text, "\", \"hold\": {\"fix\": \"LARCH\", \"inbound_deg\": 90}," FLOWN "}]}");
  OxDocument *document = open_bytes(text->str);
  g_autoptr(ox_snapshot) start = ox_document_snapshot(document);
  assert_true(ox_snapshot_own_bytes(start) > 1024 * 1024);
  ox_snapshot *now = ox_snapshot_ref(start);
  for (int i = 0; i < 300; i++) {
    ox_lesson_case c = *ox_snapshot_case(now, 0);
    c.c.hold.inbound_deg = 90 + i * 0.5 + 0.5;
    ox_snapshot *next = i % 2 ? ox_snapshot_with_case(now, 0, &c)
                              : ox_snapshot_with_values(now, 0, &c.c);
    if (i % 2 == 0) assert_true(ox_snapshot_own_bytes(next) < 8192);
    ox_history_add(history, (ox_step){.name = g_strdup("x"), .before = now,
                                      .after = ox_snapshot_ref(next)});
    now = next;
  }
  ox_snapshot_unref(now);
  assert_true(ox_history_bytes(history) <= OX_HISTORY_BYTES_MAX);
  assert_in_range(ox_history_count(history), 100, 140);
  ox_history_clear(history);
  assert_int_equal(ox_history_bytes(history), 0);
  assert_int_equal(ox_history_count(history), 0);
  ox_history_free(history);
  g_string_free(text, TRUE);
  g_object_unref(document);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(an_edit_is_undone_and_redone_by_its_name),
      cmocka_unit_test(a_new_edit_forgets_what_was_undone),
      cmocka_unit_test(two_edits_at_once_are_two_steps),
      cmocka_unit_test(undo_back_to_the_saved_state_is_no_modification),
      cmocka_unit_test(opening_another_lesson_forgets_the_history),
      cmocka_unit_test(what_is_edited_between_begin_and_end_is_one_step),
      cmocka_unit_test(a_step_that_ends_where_it_began_is_none),
      cmocka_unit_test(cancelling_restores_and_leaves_no_step),
      cmocka_unit_test(presses_in_quick_succession_are_one_step),
      cmocka_unit_test(a_pause_another_field_or_another_focus_begins_a_new_step),
      cmocka_unit_test(presses_up_and_down_again_are_no_step),
      cmocka_unit_test(edits_of_two_cases_do_not_merge),
      cmocka_unit_test(undo_says_what_became_different_and_no_more),
      cmocka_unit_test(undo_solves_once_and_a_new_title_not_at_all),
      cmocka_unit_test(cases_are_added_duplicated_moved_and_deleted),
      cmocka_unit_test(a_duplicate_has_the_unknown_keys_of_its_case),
      cmocka_unit_test(the_last_case_stays_and_there_are_never_too_many),
      cmocka_unit_test(bad_names_are_refused_with_a_sentence),
      cmocka_unit_test(a_long_name_is_cut_at_a_character),
      cmocka_unit_test(every_field_has_a_step_name_of_its_own),
      cmocka_unit_test(steps_are_named_as_the_panel_names_its_inputs),
      cmocka_unit_test(whatever_was_done_all_of_it_is_undone_and_redone),
      cmocka_unit_test(the_oldest_steps_go_when_there_are_too_many),
      cmocka_unit_test(the_history_is_bounded_in_memory),
  };
  return cmocka_run_group_tests_name("history", tests, NULL, NULL);
}
