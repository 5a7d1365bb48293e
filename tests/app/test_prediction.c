/* Predict, then see, without a window: what is hidden when, and what is forgotten. Needs no
 * display. */
#include "ox_test.h"

#include "ox_demo.h"
#include "ox_prediction.h"

static guint told;

static void told_cb(OxPrediction *prediction, gpointer unused) { told++; }

static OxPrediction *open_demo(OxDocument **document) {
  *document = ox_document_new();
  ox_document_take(*document, ox_demo_lesson(), NULL);
  OxPrediction *prediction = ox_prediction_new(*document);
  g_signal_connect(prediction, "changed", G_CALLBACK(told_cb), NULL);
  told = 0;
  return prediction;
}

static ox_ink *line(double to_x) {
  ox_ink *ink = ox_ink_new();
  ox_ink_begin(ink, OX_INK_BLUE, OX_INK_THIN, (ox_vec){0, 0});
  ox_ink_extend(ink, (ox_vec){to_x, 1});
  return ink;
}

static void the_answer_is_hidden_only_while_it_is_asked_for(void **state) {
  OxDocument *document;
  OxPrediction *prediction = open_demo(&document);
  const ox_case *shown = ox_document_case(document);
  ox_scene scene = {.c = shown};
  ox_prediction_dress(NULL, &scene);
  ox_prediction_dress(prediction, &scene);
  assert_false(scene.hide_answer);
  assert_ptr_equal(scene.c, shown);
  assert_false(ox_prediction_hides(NULL));
  ox_prediction_set_state(prediction, OX_PREDICTION_SHOWN); /* nothing was asked */
  assert_int_equal(ox_prediction_get_state(prediction), OX_PREDICTION_OFF);
  assert_int_equal(told, 0);
  ox_prediction_set_state(prediction, OX_PREDICTION_ASKED);
  ox_prediction_dress(prediction, &scene);
  assert_true(scene.hide_answer && ox_prediction_hides(prediction));
  assert_string_equal(scene.c->name, "Case 1"); /* its own tells */
  assert_int_equal(ox_prediction_report(prediction)->count, 0);
  ox_prediction_set_state(prediction, OX_PREDICTION_SHOWN);
  scene = (ox_scene){.c = shown};
  ox_prediction_dress(prediction, &scene);
  assert_false(scene.hide_answer);
  assert_ptr_equal(scene.c, shown);
  ox_prediction_set_state(prediction, OX_PREDICTION_OFF);
  assert_int_equal(told, 3);
  g_object_unref(prediction);
  g_object_unref(document);
}

static void answers_are_taken_while_asked_and_compared_when_shown(void **state) {
  OxDocument *document;
  OxPrediction *prediction = open_demo(&document);
  ox_guess guess = {OX_ENTRY_DIRECT, (double)NAN, 60, 50};
  ox_prediction_set_guess(prediction, &guess); /* not asked */
  assert_int_equal(ox_prediction_guess(prediction).entry, OX_ENTRY_NONE);
  ox_prediction_set_state(prediction, OX_PREDICTION_ASKED);
  ox_prediction_set_guess(prediction, &guess);
  ox_ink *sketch = line(2);
  ox_prediction_set_sketch(prediction, sketch);
  guint before = told;
  ox_prediction_set_guess(prediction, &guess); /* the same again tells nobody */
  ox_prediction_set_sketch(prediction, sketch);
  assert_int_equal(told, before);
  ox_prediction_set_state(prediction, OX_PREDICTION_SHOWN);
  const ox_guess_report *report = ox_prediction_report(prediction);
  assert_int_equal(report->count, 4);
  assert_string_equal(report->rows[3].what, "Track");
  assert_ptr_equal(ox_prediction_report(prediction)->rows, report->rows); /* worked out once */
  guess.entry = OX_ENTRY_TEARDROP;
  ox_prediction_set_guess(prediction, &guess); /* too late */
  assert_int_equal(ox_prediction_guess(prediction).entry, OX_ENTRY_DIRECT);
  assert_false(ox_prediction_take_back(prediction));
  ox_scene scene = {0};
  ox_prediction_dress(prediction, &scene);
  assert_int_equal(scene.path_count, 1);
  assert_int_equal(scene.paths[0].kind, OX_PATH_SKETCH);
  assert_int_equal(scene.paths[0].count, 2);
  ox_path route = {sketch->strokes[0].points_nm, 2, OX_PATH_ROUTE};
  scene = (ox_scene){.paths = &route, .path_count = 1};
  ox_prediction_dress(prediction, &scene); /* what was there stays */
  assert_int_equal(scene.path_count, 2);
  assert_int_equal(scene.paths[0].kind, OX_PATH_ROUTE);
  assert_int_equal(scene.paths[1].kind, OX_PATH_SKETCH);
  assert_null(ox_document_ink(document)); /* kept apart */
  assert_false(ox_document_modified(document));
  ox_ink_free(sketch);
  g_object_unref(prediction);
  g_object_unref(document);
}

static void strokes_of_the_sketch_are_taken_back_one_by_one(void **state) {
  OxDocument *document;
  OxPrediction *prediction = open_demo(&document);
  ox_prediction_set_state(prediction, OX_PREDICTION_ASKED);
  ox_ink *one = line(1), *two = line(2);
  ox_prediction_set_sketch(prediction, one);
  ox_prediction_set_sketch(prediction, two);
  assert_true(ox_ink_equal(ox_prediction_sketch(prediction), two));
  assert_true(ox_prediction_take_back(prediction));
  assert_true(ox_ink_equal(ox_prediction_sketch(prediction), one));
  assert_true(ox_prediction_take_back(prediction));
  assert_true(ox_ink_is_empty(ox_prediction_sketch(prediction)));
  assert_false(ox_prediction_take_back(prediction));
  ox_ink_free(one);
  ox_ink_free(two);
  g_object_unref(prediction);
  g_object_unref(document);
}

static void another_case_is_asked_anew_and_an_edit_is_compared_anew(void **state) {
  OxDocument *document;
  OxPrediction *prediction = open_demo(&document);
  ox_prediction_set_state(prediction, OX_PREDICTION_ASKED);
  ox_guess guess = {OX_ENTRY_NONE, (double)NAN, 60, (double)NAN};
  ox_prediction_set_guess(prediction, &guess);
  ox_prediction_set_state(prediction, OX_PREDICTION_SHOWN);
  char *first = g_strdup(ox_prediction_report(prediction)->rows[0].sentence);
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 200, NULL);
  assert_int_equal(ox_prediction_get_state(prediction), OX_PREDICTION_SHOWN);
  assert_string_not_equal(ox_prediction_report(prediction)->rows[0].sentence, first);
  g_free(first);
  ox_document_select(document, 1);
  assert_int_equal(ox_prediction_get_state(prediction), OX_PREDICTION_ASKED);
  assert_true(isnan(ox_prediction_guess(prediction).outbound_heading_deg));
  ox_prediction_set_state(prediction, OX_PREDICTION_OFF);
  ox_document_select(document, 0);
  assert_int_equal(ox_prediction_get_state(prediction), OX_PREDICTION_OFF);
  g_object_unref(prediction);
  g_object_unref(document);
}

/* ---- ink in the document ---------------------------------------------------------------- */

static void ink_is_a_step_of_its_case(void **state) {
  OxDocument *document;
  OxPrediction *prediction = open_demo(&document);
  ox_ink *ink = line(3);
  assert_null(ox_document_ink(document));
  ox_document_set_ink(document, "Pen", NULL); /* nothing differs: no step */
  assert_false(ox_document_can_undo(document));
  ox_document_set_ink(document, "Pen", ink);
  assert_true(ox_ink_equal(ox_document_ink(document), ink));
  assert_ptr_not_equal(ox_document_ink(document), ink);
  assert_true(ox_document_modified(document));
  assert_string_equal(ox_document_undo_name(document), "Pen");
  ox_document_select(document, 1);
  assert_null(ox_document_ink(document)); /* of one case only */
  ox_document_undo(document);
  assert_int_equal(ox_document_case_index(document), 0); /* shows what it undoes */
  assert_null(ox_document_ink(document));
  assert_false(ox_document_modified(document));
  ox_document_redo(document);
  assert_true(ox_ink_equal(ox_document_ink(document), ink));
  ox_document_set_field(document, ox_field_by_key("hold.inbound_deg"), 200, NULL);
  assert_true(ox_ink_equal(ox_document_ink(document), ink)); /* an edit keeps it */
  ox_document_duplicate_case(document, 0);
  assert_true(ox_ink_equal(ox_document_ink(document), ink)); /* and so does a copy */
  ox_document_set_ink(document, "Clear Pen Marks", NULL);
  assert_null(ox_document_ink(document));
  ox_ink_free(ink);
  g_object_unref(prediction);
  g_object_unref(document);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_answer_is_hidden_only_while_it_is_asked_for),
      cmocka_unit_test(answers_are_taken_while_asked_and_compared_when_shown),
      cmocka_unit_test(strokes_of_the_sketch_are_taken_back_one_by_one),
      cmocka_unit_test(another_case_is_asked_anew_and_an_edit_is_compared_anew),
      cmocka_unit_test(ink_is_a_step_of_its_case),
  };
  return cmocka_run_group_tests(tests, NULL, NULL);
}
