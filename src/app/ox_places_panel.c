/* The page of places. The document says what is; the two editors and the list change it. */
#include "ox_places_panel.h"

#include <stdio.h>
#include <string.h>

#include "ox_point_names.h"
#include "oxbow/text.h"

#define STATION_TIP _("The point whose DME ends the outbound leg")

struct _OxPlacesPanel {
  GtkWidget parent_instance;

  /* children */
  GtkWidget *scroller, *present, *station, *point_editor_box;
  OxPointEditor *fix_editor, *point_editor;
  OxRouteList *route;
  GtkLabel *fix_words, *point_words;
  GtkDropDown *points;
  GtkStringList *names, *presents, *stations;
  GtkWidget *delete_button;

  /* owned */
  OxDocument *document;
  char selected[OX_POINT_NAME_BYTES];
  gboolean showing;
};

G_DEFINE_FINAL_TYPE(OxPlacesPanel, ox_places_panel, GTK_TYPE_WIDGET)

/* --- showing --- */

/* In a list that begins with none of the points. */
static void select_point_or_none(GtkWidget *choice, const ox_points *points, const char *name) {
  guint at = ox_point_names_find(points, name);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(choice), at == GTK_INVALID_LIST_POSITION ? 0 : at + 1);
}

static void show_fix(OxPlacesPanel *self) {
  char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES];
  const ox_points *points = ox_document_points(self->document);
  const ox_fix *fix = ox_document_fix(self->document);
  const ox_case *c = ox_document_case(self->document);
  ox_latlon at;
  double track_deg, gs_kt = 0;
  gboolean placed = ox_fix_place(points, fix, c, &at, NULL, 0) != OX_ERROR;
  ox_fix_arrival(c, &track_deg, &gs_kt);
  ox_point_editor_show(self->fix_editor,
                       &(ox_point_editor_value){.name = c->hold.fix,
                                                .fix = *fix,
                                                .points = points,
                                                .place = placed ? &at : NULL,
                                                .ahead_nm = c->arrival.distance_nm,
                                                .gs_kt = gs_kt});
  GString *text = g_string_new(NULL);
  size_t count = ox_fix_words(points, fix, c, lines);
  for (size_t i = 0; i < count; i++)
    g_string_append_printf(text, "%s%s", i ? "\n" : "", lines[i]);
  if (count == 0)
    g_string_append_printf(text, _("Nothing says where %s is on the earth."), c->hold.fix);
  gtk_label_set_text(self->fix_words, text->str);
  g_string_free(text, TRUE);
  select_point_or_none(self->present, points, fix->present);
}

/* Which point is the DME station of the leg. Only a distance that ends the outbound leg is read
 * from one. */
static void show_station(OxPlacesPanel *self) {
  const ox_case *c = ox_document_case(self->document);
  gboolean read = c->hold.leg_by == OX_LEG_BY_DISTANCE && c->hold.leg_end == OX_LEG_END_OUTBOUND;
  select_point_or_none(self->station, ox_document_points(self->document),
                       ox_document_fix(self->document)->station);
  gtk_widget_set_sensitive(self->station, read);
  gtk_widget_set_tooltip_text(self->station,
                              read ? STATION_TIP : _("Only where a distance ends the outbound leg: "
                                                     "choose that on the page Hold"));
}

/* Where the selected point is, and how good that is. */
static void show_point_words(OxPlacesPanel *self, const ox_point *point, ox_status status,
                             const char *remark, ox_latlon at) {
  char where[OX_COORDINATES_BYTES] = "";
  ox_crossing crossing;
  GString *text = g_string_new(NULL);
  if (status != OX_ERROR && point->kind != OX_POINT_AT &&
      ox_latlon_print(at, OX_FORM_DEG_MIN, where, sizeof where) == OX_OK)
    g_string_append_printf(text, _("At %s."), where);
  if (point->kind == OX_POINT_CROSSING &&
      ox_point_crossing(ox_document_points(self->document), point, &crossing, NULL, 0) !=
          OX_ERROR)
    g_string_append_printf(text, _(" The radials cut at %.0f°."), crossing.cut_deg);
  if (status != OX_OK) g_string_append_printf(text, " %s", remark);
  gtk_label_set_text(self->point_words, text->str);
  gtk_widget_set_visible(GTK_WIDGET(self->point_words), text->len > 0);
  g_string_free(text, TRUE);
}

static void show_point(OxPlacesPanel *self) {
  const ox_points *points = ox_document_points(self->document);
  char remark[OX_REMARK_BYTES] = "";
  ox_latlon at = {0, 0};
  const ox_point *point = ox_points_find(points, self->selected);
  if (!point && points->count > 0) point = &points->points[0];
  g_strlcpy(self->selected, point ? point->name : "", sizeof self->selected);
  gtk_widget_set_visible(self->point_editor_box, point != NULL);
  gtk_widget_set_sensitive(self->delete_button, point != NULL);
  gtk_widget_set_sensitive(GTK_WIDGET(self->points), point != NULL);
  if (!point) return;
  gtk_drop_down_set_selected(self->points, ox_point_names_find(points, point->name));
  ox_status status = ox_points_place(points, point->name, &at, remark, sizeof remark);
  ox_point_editor_show(self->point_editor,
                       &(ox_point_editor_value){.name = point->name,
                                                .fix = {.kind = OX_FIX_POINT, .point = *point},
                                                .points = points,
                                                .place = status != OX_ERROR ? &at : NULL});
  show_point_words(self, point, status, remark, at);
}

static void show(OxPlacesPanel *self) {
  const ox_points *points = ox_document_points(self->document);
  self->showing = TRUE;
  ox_point_names_show(self->names, points, NULL);
  ox_point_names_show(self->presents, points, _("Not said"));
  ox_point_names_show(self->stations, points, _("No point"));
  show_fix(self);
  show_station(self);
  show_point(self);
  self->showing = FALSE;
}

/* --- changing --- */

static void fix_edited_cb(OxPointEditor *editor, OxPlacesPanel *self) {
  char remark[OX_REMARK_BYTES] = "";
  ox_case c = *ox_document_case(self->document);
  ox_fix fix = *ox_point_editor_fix(editor);
  if (self->showing) return;
  g_strlcpy(c.hold.fix, ox_point_editor_name(editor), sizeof c.hold.fix);
  ox_status status =
      ox_document_set_fix_more(self->document, _("Fix"), &c, &fix, remark, sizeof remark);
  ox_point_editor_say(editor, remark, status == OX_ERROR);
}

/* The point as it was given; its name goes its own way, since others use it. */
static ox_status take_point(OxPlacesPanel *self, const ox_point *given, char *remark,
                            size_t bytes) {
  const char *name = ox_point_editor_name(self->point_editor);
  ox_points points = *ox_document_points(self->document);
  guint index = ox_point_names_find(&points, self->selected);
  if (index == GTK_INVALID_LIST_POSITION) return OX_OK;
  if (strcmp(name, self->selected) != 0) {
    char old[OX_POINT_NAME_BYTES];
    g_strlcpy(old, self->selected, sizeof old);
    g_strlcpy(self->selected, name, sizeof self->selected);
    if (ox_document_rename_point(self->document, old, name, remark, bytes) != OX_ERROR)
      return OX_OK;
    g_strlcpy(self->selected, old, sizeof self->selected);
    return OX_ERROR;
  }
  ox_point *point = &points.points[index];
  gboolean inside = point->inside, unnamed = point->unnamed;
  *point = *given;
  g_strlcpy(point->name, self->selected, sizeof point->name);
  point->inside = inside;
  point->unnamed = unnamed;
  return ox_document_set_places_more(self->document, _("Point"), &points,
                                     ox_document_route(self->document), remark, bytes);
}

static void point_edited_cb(OxPointEditor *editor, OxPlacesPanel *self) {
  char remark[OX_REMARK_BYTES] = "";
  if (self->showing) return;
  ox_point given = ox_point_editor_fix(editor)->point;
  ox_status status = take_point(self, &given, remark, sizeof remark);
  ox_point_editor_say(editor, remark, status == OX_ERROR);
}

static void selected_cb(GtkDropDown *choice, GParamSpec *pspec, OxPlacesPanel *self) {
  const ox_points *points = ox_document_points(self->document);
  guint selected = gtk_drop_down_get_selected(choice);
  if (self->showing || selected >= points->count) return;
  ox_places_panel_select_point(self, points->points[selected].name);
}

/* The point that a user chose from such a list, empty: none of them; NULL: nobody chose. */
static const char *chosen_point_or_none(OxPlacesPanel *self, GtkDropDown *choice) {
  const ox_points *points = ox_document_points(self->document);
  guint selected = gtk_drop_down_get_selected(choice);
  if (self->showing || selected == GTK_INVALID_LIST_POSITION || selected > points->count)
    return NULL;
  return selected > 0 ? points->points[selected - 1].name : "";
}

static ox_status set_fix(OxPlacesPanel *self, const char *step, const ox_case *c,
                         const ox_fix *fix) {
  char remark[OX_REMARK_BYTES] = "";
  ox_status status = ox_document_set_fix(self->document, step, c, fix, remark, sizeof remark);
  ox_point_editor_say(self->fix_editor, remark, status == OX_ERROR);
  return status;
}

static void present_cb(GtkDropDown *choice, GParamSpec *pspec, OxPlacesPanel *self) {
  const char *name = chosen_point_or_none(self, choice);
  ox_fix fix = *ox_document_fix(self->document);
  if (!name) return;
  g_strlcpy(fix.present, name, sizeof fix.present);
  set_fix(self, _("Present Position"), ox_document_case(self->document), &fix);
}

/* A station that is no point any more stays where it was, by its bearing and distance. */
static void station_cb(GtkDropDown *choice, GParamSpec *pspec, OxPlacesPanel *self) {
  const char *name = chosen_point_or_none(self, choice);
  ox_case c = *ox_document_case(self->document);
  ox_fix fix = *ox_document_fix(self->document);
  if (!name) return;
  g_strlcpy(fix.station, name, sizeof fix.station);
  fix.station_elevation_given = FALSE;
  if (*name) c.hold.station.given = TRUE;
  if (set_fix(self, _("DME Station"), &c, &fix) != OX_ERROR) return;
  self->showing = TRUE;
  show_station(self);
  self->showing = FALSE;
}

void ox_places_panel_select_point(OxPlacesPanel *self, const char *name) {
  g_strlcpy(self->selected, name, sizeof self->selected);
  ox_point_editor_say(self->point_editor, "", FALSE);
  show(self);
}

/* Under the first free name. */
void ox_places_panel_add_point_at(OxPlacesPanel *self, ox_latlon at) {
  char remark[OX_REMARK_BYTES] = "";
  ox_points points = *ox_document_points(self->document);
  ox_point point = {.kind = OX_POINT_AT, .at = at};
  int number = 1;
  do snprintf(point.name, sizeof point.name, "POINT %d", number++);
  while (ox_points_find(&points, point.name));
  ox_status status = ox_points_add(&points, &point, remark, sizeof remark);
  if (status != OX_ERROR) {
    g_strlcpy(self->selected, point.name, sizeof self->selected);
    status = ox_document_set_places(self->document, _("Add Point"), &points,
                                    ox_document_route(self->document), remark, sizeof remark);
  }
  ox_point_editor_say(self->point_editor, remark, status == OX_ERROR);
}

/* At the fix where that has a place. */
void ox_places_panel_add_point(OxPlacesPanel *self) {
  ox_latlon at = {0};
  ox_fix_place(ox_document_points(self->document), ox_document_fix(self->document),
               ox_document_case(self->document), &at, NULL, 0);
  ox_places_panel_add_point_at(self, at);
}

void ox_places_panel_delete_point(OxPlacesPanel *self) {
  char remark[OX_REMARK_BYTES] = "";
  ox_status status =
      ox_document_remove_point(self->document, self->selected, remark, sizeof remark);
  ox_point_editor_say(self->point_editor, remark, status == OX_ERROR);
}

/* --- the widget --- */

static void document_changed_cb(OxDocument *document, guint what, OxPlacesPanel *self) {
  if (what & (OX_DOCUMENT_LESSON | OX_DOCUMENT_SELECTION)) {
    ox_point_editor_say(self->fix_editor, "", FALSE);
    ox_point_editor_say(self->point_editor, "", FALSE);
  }
  show(self);
}

void ox_places_panel_set_document(OxPlacesPanel *self, OxDocument *document) {
  g_return_if_fail(OX_IS_PLACES_PANEL(self) && !self->document);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  ox_route_list_set_document(self->route, document);
  show(self);
}

OxPointEditor *ox_places_panel_fix_editor(OxPlacesPanel *self) { return self->fix_editor; }
OxPointEditor *ox_places_panel_point_editor(OxPlacesPanel *self) { return self->point_editor; }
GtkDropDown *ox_places_panel_station(OxPlacesPanel *self) { return GTK_DROP_DOWN(self->station); }
OxRouteList *ox_places_panel_route(OxPlacesPanel *self) { return self->route; }

const char *ox_places_panel_fix_words(OxPlacesPanel *self) {
  return gtk_label_get_text(self->fix_words);
}

static void add_heading(GtkBox *box, const char *text) {
  GtkWidget *label = gtk_label_new(text);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_widget_add_css_class(label, "heading");
  gtk_widget_add_css_class(label, "group");
  gtk_box_append(box, label);
}

static GtkLabel *add_words(GtkBox *box) {
  GtkWidget *label = gtk_label_new("");
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 30);
  gtk_box_append(box, label);
  return GTK_LABEL(label);
}

static void set_label(GtkWidget *widget, const char *label) {
  gtk_widget_set_tooltip_text(widget, label);
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static GtkWidget *add_choice(GtkBox *box, const char *name, GtkStringList *list) {
  GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new_with_mnemonic(name);
  GtkWidget *choice = gtk_drop_down_new(g_object_ref(G_LIST_MODEL(list)), NULL);
  gtk_widget_set_hexpand(choice, TRUE);
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), choice);
  gtk_box_append(GTK_BOX(row), label);
  gtk_box_append(GTK_BOX(row), choice);
  gtk_box_append(box, row);
  return choice;
}

static void add_fix(OxPlacesPanel *self, GtkBox *box) {
  add_heading(box, _("Fix of this case"));
  self->fix_editor = OX_POINT_EDITOR(ox_point_editor_new(TRUE));
  g_signal_connect(self->fix_editor, "edited", G_CALLBACK(fix_edited_cb), self);
  gtk_box_append(box, GTK_WIDGET(self->fix_editor));
  self->presents = gtk_string_list_new(NULL);
  self->present = add_choice(box, _("Aircra_ft at"), self->presents);
  set_label(self->present,
            _("Present position of the aircraft: a fix ahead is counted from there"));
  g_signal_connect(self->present, "notify::selected", G_CALLBACK(present_cb), self);
  self->stations = gtk_string_list_new(NULL);
  self->station = add_choice(box, _("_DME station"), self->stations);
  set_label(self->station, STATION_TIP);
  g_signal_connect(self->station, "notify::selected", G_CALLBACK(station_cb), self);
  self->fix_words = add_words(box);
}

static void add_points(OxPlacesPanel *self, GtkBox *box) {
  add_heading(box, _("Points of the lesson"));
  GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  self->names = gtk_string_list_new(NULL);
  self->points = GTK_DROP_DOWN(gtk_drop_down_new(g_object_ref(G_LIST_MODEL(self->names)), NULL));
  gtk_widget_set_hexpand(GTK_WIDGET(self->points), TRUE);
  set_label(GTK_WIDGET(self->points), _("Point that is edited below"));
  g_signal_connect(self->points, "notify::selected", G_CALLBACK(selected_cb), self);
  GtkWidget *add = gtk_button_new_from_icon_name("list-add-symbolic");
  set_label(add, _("Add a point"));
  g_signal_connect_swapped(add, "clicked", G_CALLBACK(ox_places_panel_add_point), self);
  self->delete_button = gtk_button_new_from_icon_name("list-remove-symbolic");
  set_label(self->delete_button, _("Delete this point"));
  g_signal_connect_swapped(self->delete_button, "clicked",
                           G_CALLBACK(ox_places_panel_delete_point), self);
  gtk_box_append(GTK_BOX(row), GTK_WIDGET(self->points));
  gtk_box_append(GTK_BOX(row), add);
  gtk_box_append(GTK_BOX(row), self->delete_button);
  gtk_box_append(box, row);
  self->point_editor_box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  self->point_editor = OX_POINT_EDITOR(ox_point_editor_new(FALSE));
  g_signal_connect(self->point_editor, "edited", G_CALLBACK(point_edited_cb), self);
  gtk_box_append(GTK_BOX(self->point_editor_box), GTK_WIDGET(self->point_editor));
  self->point_words = add_words(GTK_BOX(self->point_editor_box));
  gtk_box_append(box, self->point_editor_box);
}

static void dispose(GObject *object) {
  OxPlacesPanel *self = OX_PLACES_PANEL(object);
  self->showing = TRUE;
  g_clear_pointer(&self->scroller, gtk_widget_unparent);
  g_clear_object(&self->names);
  g_clear_object(&self->presents);
  g_clear_object(&self->stations);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_places_panel_parent_class)->dispose(object);
}

static void ox_places_panel_class_init(OxPlacesPanelClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_layout_manager_type(GTK_WIDGET_CLASS(class), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(GTK_WIDGET_CLASS(class), "places");
}

static void ox_places_panel_init(OxPlacesPanel *self) {
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class(box, "groups");
  self->scroller = gtk_scrolled_window_new();
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(self->scroller), GTK_POLICY_NEVER,
                                 GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(self->scroller), box);
  gtk_widget_set_parent(self->scroller, GTK_WIDGET(self));
  self->showing = TRUE;
  add_fix(self, GTK_BOX(box));
  add_points(self, GTK_BOX(box));
  add_heading(GTK_BOX(box), _("Route"));
  self->route = g_object_new(OX_TYPE_ROUTE_LIST, NULL);
  gtk_box_append(GTK_BOX(box), GTK_WIDGET(self->route));
  self->showing = FALSE;
}
