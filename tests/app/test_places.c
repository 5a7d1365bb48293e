/* The page of places as a user works it: type, choose, press, and read back. */
#include "app_test.h"

#include "ox_number_field.h"
#include "ox_places_panel.h"

typedef struct {
  OxWindow *window;
  OxDocument *document;
  OxPlacesPanel *panel;
} place_page;

/* The window with the lesson of places, whose page is shown. */
static place_page open_page(void) {
  place_page p = {.window = app_test_window(NULL)};
  char *path = g_build_filename(g_getenv("OXBOW_LESSONS"), "places.oxbow", NULL);
  ox_messages messages = {0};
  p.document = ox_window_document(p.window);
  p.panel = ox_window_places(p.window);
  assert_int_equal(ox_document_open(p.document, path, &messages), OX_OK);
  GtkWidget *stack = gtk_widget_get_ancestor(GTK_WIDGET(p.panel), GTK_TYPE_STACK);
  gtk_stack_set_visible_child_name(GTK_STACK(stack), "places");
  app_test_spin_ms(50);
  g_free(path);
  return p;
}

static void type_text(OxPointEditor *editor, const char *key, const char *text) {
  GtkWidget *entry = ox_point_editor_input(editor, key);
  assert_true(gtk_widget_get_visible(entry));
  gtk_editable_set_text(GTK_EDITABLE(entry), text);
  g_signal_emit_by_name(entry, "activate");
}

static void type_number(OxPointEditor *editor, const char *key, const char *text) {
  GtkWidget *field = ox_point_editor_input(editor, key);
  assert_true(gtk_widget_get_visible(field));
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(OX_NUMBER_FIELD(field))), text);
}

static void choose(OxPointEditor *editor, const char *key, guint position) {
  gtk_drop_down_set_selected(GTK_DROP_DOWN(ox_point_editor_input(editor, key)), position);
}

static ox_latlon fix_place(place_page *p) {
  ox_latlon at = {0, 0};
  char why[OX_REMARK_BYTES];
  ox_fix_place(ox_document_points(p->document), ox_document_fix(p->document),
               ox_document_case(p->document), &at, why, sizeof why);
  return at;
}

static void a_fix_is_given_in_every_way_and_keeps_its_place(void **state) {
  place_page p = open_page();
  OxPointEditor *editor = ox_places_panel_fix_editor(p.panel);
  ox_latlon before = fix_place(&p), after;
  for (guint way = 0; way < 3; way++) {
    choose(editor, "by", way);
    assert_int_equal(ox_document_fix(p.document)->kind, OX_FIX_POINT);
    assert_int_equal(ox_document_fix(p.document)->point.kind, way);
    after = fix_place(&p);
    assert_close(after.lat_deg, before.lat_deg, 1e-7, "latitude");
    assert_close(after.lon_deg, before.lon_deg, 1e-7, "longitude");
    assert_string_equal(ox_document_undo_name(p.document), "Fix");
  }
  choose(editor, "by", 3);
  assert_int_equal(ox_document_fix(p.document)->kind, OX_FIX_NAMED);
  choose(editor, "by", 4);
  assert_int_equal(ox_document_fix(p.document)->kind, OX_FIX_AHEAD_NM);
  assert_close(ox_document_fix(p.document)->ahead_nm, 4, 1e-9, "the arrival's distance");
  type_number(editor, "ahead", "7");
  assert_close(ox_document_case(p.document)->arrival.distance_nm, 7, 1e-9, "follows");
  assert_non_null(strstr(ox_places_panel_fix_words(p.panel), "Each 10 s of delay"));
  app_test_close(p.window);
}

static void positions_are_typed_in_any_form_and_refused_in_words(void **state) {
  place_page p = open_page();
  OxPointEditor *editor = ox_places_panel_fix_editor(p.panel);
  choose(editor, "by", 0);
  type_text(editor, "position", "46-12-30N 072-30-00W");
  assert_close(fix_place(&p).lat_deg, 46 + 12.5 / 60, 1e-9, "latitude");
  assert_close(fix_place(&p).lon_deg, -72.5, 1e-9, "longitude");
  assert_string_equal(ox_places_panel_fix_words(p.panel),
                      "TARNS is at N46°12.500' W072°30.000'.");
  type_text(editor, "position", "somewhere");
  assert_close(fix_place(&p).lon_deg, -72.5, 1e-9, "kept");
  assert_true(strlen(ox_point_editor_sentence(editor)) > 10);
  app_test_close(p.window);
}

static void a_poor_cut_is_said_beside_the_fix(void **state) {
  place_page p = open_page();
  OxPointEditor *editor = ox_places_panel_fix_editor(p.panel);
  choose(editor, "by", 0);
  choose(editor, "by", 2);
  const ox_fix *fix = ox_document_fix(p.document);
  /* MAPLE and ALDER: the direction between them, a few degrees off either way */
  char text[16];
  ox_latlon from, and;
  ox_geodesic line;
  ox_points_place(ox_document_points(p.document), fix->point.from, &from, NULL, 0);
  ox_points_place(ox_document_points(p.document), fix->point.and_from, &and, NULL, 0);
  ox_geodesic_between(from, and, &line);
  g_snprintf(text, sizeof text, "%.0f", ox_norm360_deg(line.from_bearing_deg + 14 + 8));
  type_number(editor, "radial", text);
  g_snprintf(text, sizeof text, "%.0f", ox_norm360_deg(line.to_bearing_deg + 180 + 15 - 8));
  type_number(editor, "and_radial", text);
  assert_non_null(strstr(ox_places_panel_fix_words(p.panel), "cut at 1"));
  assert_true(strlen(ox_point_editor_sentence(editor)) > 10);
  app_test_close(p.window);
}

static void points_are_added_renamed_moved_and_deleted_unless_in_use(void **state) {
  place_page p = open_page();
  OxPointEditor *editor = ox_places_panel_point_editor(p.panel);
  size_t before = ox_document_points(p.document)->count;
  ox_places_panel_add_point(p.panel);
  assert_int_equal(ox_document_points(p.document)->count, before + 1);
  assert_string_equal(ox_point_editor_name(editor), "POINT 1");
  type_text(editor, "name", "CEDAR");
  assert_non_null(ox_points_find(ox_document_points(p.document), "CEDAR"));
  type_text(editor, "position", "46.5 -72.25");
  assert_close(ox_points_find(ox_document_points(p.document), "CEDAR")->at.lat_deg, 46.5, 0,
               "moved");
  type_number(editor, "declination", "15 W");
  assert_close(ox_points_find(ox_document_points(p.document), "CEDAR")->declination_deg, -15, 0,
               "declination");
  ox_places_panel_delete_point(p.panel);
  assert_null(ox_points_find(ox_document_points(p.document), "CEDAR"));
  ox_places_panel_select_point(p.panel, "MAPLE");
  ox_places_panel_delete_point(p.panel);
  assert_non_null(ox_points_find(ox_document_points(p.document), "MAPLE"));
  assert_non_null(strstr(ox_point_editor_sentence(editor), "MAPLE is used by LARCH, BIRCH"));
  assert_non_null(strstr(ox_point_editor_sentence(editor), "Thirteen and a half"));
  app_test_close(p.window);
}

static void renaming_a_point_reaches_the_route_and_the_cases(void **state) {
  place_page p = open_page();
  OxPointEditor *editor = ox_places_panel_point_editor(p.panel);
  ox_places_panel_select_point(p.panel, "TARNS");
  type_text(editor, "name", "CEDAR");
  assert_string_equal(ox_document_route(p.document)->names[2], "CEDAR");
  assert_string_equal(ox_document_case(p.document)->hold.fix, "CEDAR");
  ox_document_undo(p.document);
  assert_string_equal(ox_document_route(p.document)->names[2], "TARNS");
  assert_string_equal(ox_document_case(p.document)->hold.fix, "TARNS");
  assert_false(ox_document_modified(p.document));
  app_test_close(p.window);
}

static void holding_before_the_missed_approach_point_is_refused(void **state) {
  place_page p = open_page();
  OxRouteList *route = ox_places_panel_route(p.panel);
  ox_route_list_hold_here(route, 0);
  assert_non_null(strstr(ox_route_list_refusal(route), "must be after THRES"));
  assert_string_equal(ox_document_case(p.document)->hold.fix, "TARNS");
  ox_route_list_hold_here(route, 3);
  assert_string_equal(ox_document_case(p.document)->hold.fix, "LARCH");
  /* the route's leg to LARCH, and the arrival along it */
  ox_geodesic leg;
  ox_route_leg(ox_document_points(p.document), ox_document_route(p.document), 3, &leg, NULL, 0);
  const ox_case *c = ox_document_case(p.document);
  assert_angle_close(c->hold.inbound_deg, leg.to_bearing_deg - c->variation_deg, 0.06, "course");
  assert_non_null(strstr(ox_route_list_words(route), "is the end of that leg"));
  app_test_close(p.window);
}

static void the_route_is_put_together_with_buttons(void **state) {
  place_page p = open_page();
  OxRouteList *list = ox_places_panel_route(p.panel);
  ox_route_list_add(list, "BIRCH");
  assert_int_equal(ox_document_route(p.document)->count, 5);
  ox_route_list_move(list, 4, -1);
  assert_string_equal(ox_document_route(p.document)->names[3], "BIRCH");
  ox_route_list_remove(list, 0);
  assert_int_equal(ox_document_route(p.document)->missed_approach, 0);
  ox_route_list_mark_missed(list, 0);
  assert_int_equal(ox_document_route(p.document)->missed_approach, -1);
  GtkWidget *button = app_test_find_button(GTK_WIDGET(list), "Add to Route");
  assert_non_null(button);
  g_signal_emit_by_name(button, "clicked");
  assert_int_equal(ox_document_route(p.document)->count, 5);
  for (int i = 0; i < 5; i++) ox_document_undo(p.document);
  assert_int_equal(ox_document_route(p.document)->count, 4);
  assert_false(ox_document_modified(p.document));
  app_test_close(p.window);
}

/* The radial and distance of the case are those of the point, and follow it (design: places). */
static void a_point_is_the_station_of_the_leg(void **state) {
  place_page p = open_page();
  GtkDropDown *choice = ox_places_panel_station(p.panel);
  assert_false(gtk_widget_get_sensitive(GTK_WIDGET(choice)));
  ox_case c = *ox_document_case(p.document);
  c.hold.leg_by = OX_LEG_BY_DISTANCE;
  c.hold.leg_end = OX_LEG_END_OUTBOUND;
  c.hold.leg_nm = 4;
  assert_int_equal(ox_document_edit(p.document, &c, NULL), OX_OK);
  assert_true(gtk_widget_get_sensitive(GTK_WIDGET(choice)));
  gtk_drop_down_set_selected(choice, 1); /* MAPLE */
  const ox_case *now = ox_document_case(p.document);
  ox_latlon maple;
  ox_geodesic line;
  ox_points_place(ox_document_points(p.document), "MAPLE", &maple, NULL, 0);
  ox_geodesic_between(fix_place(&p), maple, &line);
  assert_string_equal(ox_document_fix(p.document)->station, "MAPLE");
  assert_true(now->hold.station.given);
  assert_close(now->hold.station.nm, line.distance_nm, 1e-9, "distance");
  assert_angle_close(now->hold.station.radial_deg, line.from_bearing_deg - now->variation_deg,
                     1e-9, "bearing, magnetic");
  assert_close(now->hold.station.elevation_ft, 620, 0, "the point's elevation");
  assert_string_equal(ox_document_undo_name(p.document), "DME Station");
  gtk_drop_down_set_selected(choice, 0);
  assert_string_equal(ox_document_fix(p.document)->station, "");
  assert_close(ox_document_case(p.document)->hold.station.nm, line.distance_nm, 1e-9, "stays");
  ox_document_undo(p.document);
  assert_int_equal(gtk_drop_down_get_selected(choice), 1);
  app_test_close(p.window);
}

static void the_board_says_the_places(void **state) {
  place_page p = open_page();
  assert_non_null(strstr(ox_route_list_words(ox_places_panel_route(p.panel)),
                         "After the hold: to LARCH"));
  assert_non_null(strstr(ox_route_list_words(ox_places_panel_route(p.panel)),
                         "Turning to TARNS before THRES"));
  app_test_close(p.window);
}

/* The player plays the route to the hold and on from it; events and circuits stay the hold's. */
static void the_route_is_flown_by_the_player(void **state) {
  place_page p = open_page();
  OxPlayer *player = ox_window_player(p.window);
  const ox_flight *flight = ox_document_flight(p.document);
  const ox_flight *whole = ox_document_whole_flight(p.document);
  assert_ptr_not_equal(whole, flight);
  assert_close(ox_player_begin_s(player), ox_flight_begin_s(whole), 1e-9, "begin");
  assert_close(ox_player_end_s(player), ox_flight_end_s(whole), 1e-9, "end");
  assert_true(ox_flight_begin_s(whole) < ox_flight_begin_s(flight) ||
              ox_flight_end_s(whole) > ox_flight_end_s(flight));
  guint solved = ox_document_solve_count(p.document);
  ox_player_seek(player, ox_player_begin_s(player));
  app_test_spin_ms(50);
  ox_player_seek(player, ox_player_end_s(player));
  app_test_spin_ms(50);
  assert_int_equal(ox_document_solve_count(p.document), solved);
  assert_ptr_equal(ox_document_whole_flight(p.document), whole);
  app_test_close(p.window);
}

static void a_lesson_without_a_route_flies_the_hold_alone(void **state) {
  OxDocument *document = ox_document_new();
  assert_ptr_equal(ox_document_whole_flight(document), ox_document_flight(document));
  g_object_unref(document);
}

static void a_document_refuses_what_would_leave_a_case_without_its_place(void **state) {
  OxDocument *document = ox_document_new();
  char remark[OX_REMARK_BYTES] = "";
  ox_case c = *ox_document_case(document);
  ox_fix fix = {.kind = OX_FIX_POINT,
                .point = {.kind = OX_POINT_RADIAL, .from = "OAK", .nm = 5}};
  assert_int_equal(ox_document_set_fix(document, "Fix", &c, &fix, remark, sizeof remark),
                   OX_ERROR);
  assert_non_null(strstr(remark, "OAK"));
  assert_false(ox_document_can_undo(document));
  ox_points points = {.count = 1, .points = {{.name = "OAK", .at = {46, 7}}}};
  ox_route route = {.missed_approach = -1};
  assert_int_equal(ox_document_set_places(document, "Add Point", &points, &route, remark,
                                          sizeof remark),
                   OX_OK);
  assert_int_equal(ox_document_set_fix(document, "Fix", &c, &fix, remark, sizeof remark), OX_OK);
  points.count = 0;
  assert_int_equal(ox_document_set_places(document, "Delete Point", &points, &route, remark,
                                          sizeof remark),
                   OX_ERROR);
  assert_int_equal(ox_document_points(document)->count, 1);
  g_object_unref(document);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(a_fix_is_given_in_every_way_and_keeps_its_place),
      cmocka_unit_test(positions_are_typed_in_any_form_and_refused_in_words),
      cmocka_unit_test(a_poor_cut_is_said_beside_the_fix),
      cmocka_unit_test(points_are_added_renamed_moved_and_deleted_unless_in_use),
      cmocka_unit_test(renaming_a_point_reaches_the_route_and_the_cases),
      cmocka_unit_test(holding_before_the_missed_approach_point_is_refused),
      cmocka_unit_test(the_route_is_put_together_with_buttons),
      cmocka_unit_test(a_point_is_the_station_of_the_leg),
      cmocka_unit_test(the_board_says_the_places),
      cmocka_unit_test(the_route_is_flown_by_the_player),
      cmocka_unit_test(a_lesson_without_a_route_flies_the_hold_alone),
      cmocka_unit_test(a_document_refuses_what_would_leave_a_case_without_its_place),
  };
  return cmocka_run_group_tests_name("places", tests, app_test_init, NULL);
}
