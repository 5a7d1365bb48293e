/* The route: rows made anew when the route is another one, words below them. */
#include "ox_route_list.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "ox_point_names.h"
#include "oxbow/text.h"

struct _OxRouteList {
  GtkWidget parent_instance;

  /* children */
  GtkWidget *box, *rows, *add_row, *arrival_button;
  GtkDropDown *choice;
  GtkLabel *words, *refusal;
  GtkStringList *names;

  /* owned */
  OxDocument *document;
  ox_route shown;
};

G_DEFINE_FINAL_TYPE(OxRouteList, ox_route_list, GTK_TYPE_WIDGET)

static const char index_key[] = "ox-route-index";

static size_t index_of(GtkWidget *button) {
  return GPOINTER_TO_SIZE(g_object_get_data(G_OBJECT(button), index_key));
}

/* --- what the buttons do --- */

static void say_refusal(OxRouteList *self, const char *sentence) {
  gtk_label_set_text(self->refusal, sentence);
  gtk_widget_set_visible(GTK_WIDGET(self->refusal), sentence[0] != '\0');
}

static void put(OxRouteList *self, const char *step, const ox_route *route) {
  char remark[OX_REMARK_BYTES] = "";
  ox_document_set_places(self->document, step, ox_document_points(self->document), route, remark,
                         sizeof remark);
  say_refusal(self, remark);
}

void ox_route_list_add(OxRouteList *self, const char *name) {
  ox_route route = *ox_document_route(self->document);
  if (route.count >= OX_ROUTE_POINTS_MAX) {
    say_refusal(self, _("A route has at most 32 points."));
    return;
  }
  if (route.count > 0 && strcmp(route.names[route.count - 1], name) == 0) {
    say_refusal(self, _("The route ends there already."));
    return;
  }
  g_strlcpy(route.names[route.count++], name, OX_POINT_NAME_BYTES);
  put(self, _("Add to Route"), &route);
}

void ox_route_list_move(OxRouteList *self, size_t index, int by) {
  ox_route route = *ox_document_route(self->document);
  char name[OX_POINT_NAME_BYTES];
  if (index >= route.count || (by < 0 && index == 0) || (by > 0 && index + 1 >= route.count))
    return;
  size_t to = by < 0 ? index - 1 : index + 1;
  memcpy(name, route.names[index], sizeof name);
  memcpy(route.names[index], route.names[to], sizeof name);
  memcpy(route.names[to], name, sizeof name);
  if (route.missed_approach == (int)index)
    route.missed_approach = (int)to;
  else if (route.missed_approach == (int)to)
    route.missed_approach = (int)index;
  put(self, _("Move in Route"), &route);
}

void ox_route_list_remove(OxRouteList *self, size_t index) {
  ox_route route = *ox_document_route(self->document);
  if (index >= route.count) return;
  route.count--;
  memmove(route.names[index], route.names[index + 1],
          (route.count - index) * sizeof route.names[0]);
  memset(route.names[route.count], 0, sizeof route.names[0]);
  if (route.missed_approach == (int)index)
    route.missed_approach = -1;
  else if (route.missed_approach > (int)index)
    route.missed_approach--;
  put(self, _("Remove from Route"), &route);
}

void ox_route_list_mark_missed(OxRouteList *self, size_t index) {
  ox_route route = *ox_document_route(self->document);
  if (index >= route.count) return;
  route.missed_approach = route.missed_approach == (int)index ? -1 : (int)index;
  put(self, _("Missed Approach Point"), &route);
}

/* The heading that makes good the course a route arrives on, and no arrival longer than its leg. */
static void arrive(ox_case *c, double inbound_true_deg, double leg_nm) {
  double track_deg, gs_kt;
  c->arrival.heading_deg = ox_magnetic_deg(inbound_true_deg, c->variation_deg);
  /* The heading changes by the drift: twice is exact to a hundredth of a degree. */
  for (int i = 0; i < 4; i++) {
    if (ox_fix_arrival(c, &track_deg, &gs_kt) == OX_ERROR) return;
    double off_deg = ox_turn_between_deg(track_deg, inbound_true_deg);
    c->arrival.heading_deg = ox_norm360_deg(c->arrival.heading_deg + off_deg);
  }
  if (leg_nm > 0 && c->arrival.distance_nm > leg_nm) c->arrival.distance_nm = leg_nm;
}

void ox_route_list_hold_here(OxRouteList *self, size_t index) {
  const ox_points *points = ox_document_points(self->document);
  const ox_route *route = ox_document_route(self->document);
  char remark[OX_REMARK_BYTES] = "", leg_remark[OX_REMARK_BYTES];
  ox_case c = *ox_document_case(self->document);
  ox_fix fix = ox_fix_named();
  ox_geodesic leg = {0};
  double inbound_deg;
  if (index >= route->count) return;
  if (ox_route_hold_allowed(route, index, remark, sizeof remark) == OX_ERROR ||
      ox_route_inbound_deg(points, route, index, c.variation_deg, &inbound_deg, remark,
                           sizeof remark) == OX_ERROR) {
    say_refusal(self, remark);
    return;
  }
  g_strlcpy(fix.station, ox_document_fix(self->document)->station, sizeof fix.station);
  g_strlcpy(c.hold.fix, route->names[index], sizeof c.hold.fix);
  c.hold.inbound_deg = round(10 * inbound_deg) / 10;
  if (c.hold.inbound_deg == 0) c.hold.inbound_deg = 360;
  if (index > 0)
    ox_route_leg(points, route, index, &leg, leg_remark, sizeof leg_remark);
  arrive(&c, inbound_deg + c.variation_deg, leg.distance_nm);
  ox_document_set_fix(self->document, _("Hold Here"), &c, &fix, remark, sizeof remark);
  say_refusal(self, remark);
}

void ox_route_list_take_arrival(OxRouteList *self) {
  char remark[OX_REMARK_BYTES] = "";
  ox_journey *journey = g_new(ox_journey, 1);
  ox_case c = *ox_document_case(self->document);
  if (ox_document_journey(self->document, journey, remark, sizeof remark) != OX_ERROR) {
    remark[0] = '\0';
    if (journey->hold > 0)
      arrive(&c, journey->points[journey->hold].course_true_deg, journey->arriving_nm);
    else
      g_strlcpy(remark, _("No leg of the route arrives at the fix."), sizeof remark);
  }
  if (!remark[0])
    ox_document_set_fix(self->document, _("Arrival by the Route"), &c,
                        ox_document_fix(self->document), remark, sizeof remark);
  g_free(journey);
  say_refusal(self, remark);
}

/* --- rows --- */

static void up_cb(GtkButton *button, OxRouteList *self) {
  ox_route_list_move(self, index_of(GTK_WIDGET(button)), -1);
}

static void down_cb(GtkButton *button, OxRouteList *self) {
  ox_route_list_move(self, index_of(GTK_WIDGET(button)), 1);
}

static void remove_cb(GtkButton *button, OxRouteList *self) {
  ox_route_list_remove(self, index_of(GTK_WIDGET(button)));
}

static void missed_cb(GtkToggleButton *button, OxRouteList *self) {
  ox_route_list_mark_missed(self, index_of(GTK_WIDGET(button)));
}

static void hold_cb(GtkButton *button, OxRouteList *self) {
  ox_route_list_hold_here(self, index_of(GTK_WIDGET(button)));
}

static void add_button(GtkWidget *row, GtkWidget *button, size_t index, const char *name,
                       const char *what) {
  char *label = g_strdup_printf("%s: %s", name, what);
  gtk_widget_add_css_class(button, "flat");
  gtk_widget_set_tooltip_text(button, what);
  gtk_accessible_update_property(GTK_ACCESSIBLE(button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_object_set_data(G_OBJECT(button), index_key, GSIZE_TO_POINTER(index));
  gtk_box_append(GTK_BOX(row), button);
  g_free(label);
}

static GtkWidget *icon_button(OxRouteList *self, const char *icon, GCallback clicked) {
  GtkWidget *button = gtk_button_new_from_icon_name(icon);
  g_signal_connect(button, "clicked", clicked, self);
  return button;
}

static void add_row(OxRouteList *self, size_t index) {
  const char *name = self->shown.names[index];
  GtkWidget *row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 0);
  char *text = g_strdup_printf("%zu. %s", index + 1, name);
  GtkWidget *label = gtk_label_new(text);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand(label, TRUE);
  gtk_box_append(GTK_BOX(row), label);
  GtkWidget *hold = gtk_button_new_with_label(C_("a button of the route", "Hold"));
  g_signal_connect(hold, "clicked", G_CALLBACK(hold_cb), self);
  add_button(row, hold, index, name, _("Hold here, on the course of the arriving leg"));
  GtkWidget *missed = gtk_toggle_button_new_with_label(_("MAP"));
  gtk_toggle_button_set_active(GTK_TOGGLE_BUTTON(missed),
                               self->shown.missed_approach == (int)index);
  g_signal_connect(missed, "toggled", G_CALLBACK(missed_cb), self);
  add_button(row, missed, index, name, _("The missed approach point"));
  GtkWidget *up = icon_button(self, "go-up-symbolic", G_CALLBACK(up_cb));
  gtk_widget_set_sensitive(up, index > 0);
  add_button(row, up, index, name, _("Earlier in the route"));
  GtkWidget *down = icon_button(self, "go-down-symbolic", G_CALLBACK(down_cb));
  gtk_widget_set_sensitive(down, index + 1 < self->shown.count);
  add_button(row, down, index, name, _("Later in the route"));
  GtkWidget *remove = icon_button(self, "list-remove-symbolic", G_CALLBACK(remove_cb));
  add_button(row, remove, index, name, _("Remove from the route"));
  gtk_box_append(GTK_BOX(self->rows), row);
  g_free(text);
}

/* Which button of which row has the focus, so that it has it again in the new rows. */
static int focus_place(OxRouteList *self, int *row) {
  GtkRoot *root = gtk_widget_get_root(GTK_WIDGET(self));
  GtkWidget *focus = root ? gtk_root_get_focus(root) : NULL;
  *row = 0;
  for (GtkWidget *r = gtk_widget_get_first_child(self->rows); r;
       r = gtk_widget_get_next_sibling(r), (*row)++) {
    int place = 0;
    for (GtkWidget *b = gtk_widget_get_first_child(r); b; b = gtk_widget_get_next_sibling(b)) {
      if (b == focus) return place;
      place++;
    }
  }
  return -1;
}

static GtkWidget *nth_child(GtkWidget *of, int n) {
  GtkWidget *child = gtk_widget_get_first_child(of);
  while (child && n-- > 0) child = gtk_widget_get_next_sibling(child);
  return child;
}

static void show_rows(OxRouteList *self) {
  const ox_route *route = ox_document_route(self->document);
  int focus_row, place;
  if (ox_route_equal(route, &self->shown)) return;
  self->shown = *route;
  place = focus_place(self, &focus_row);
  for (GtkWidget *row; (row = gtk_widget_get_first_child(self->rows));)
    gtk_box_remove(GTK_BOX(self->rows), row);
  for (size_t i = 0; i < self->shown.count; i++) add_row(self, i);
  if (place < 0) return;
  GtkWidget *row = nth_child(self->rows, MIN(focus_row, (int)self->shown.count - 1));
  GtkWidget *button = row ? nth_child(row, place) : NULL;
  gtk_widget_grab_focus(button && gtk_widget_get_sensitive(button) ? button
                                                                   : GTK_WIDGET(self->choice));
}

static void show_choice(OxRouteList *self) {
  const ox_points *points = ox_document_points(self->document);
  gtk_widget_set_sensitive(self->add_row, points->count > 0);
  ox_point_names_show(self->names, points, NULL);
}

static void show_words(OxRouteList *self) {
  char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES], remark[OX_REMARK_BYTES] = "";
  ox_journey *journey = g_new(ox_journey, 1);
  GString *text = g_string_new(NULL);
  const ox_route *route = ox_document_route(self->document);
  if (route->count == 0) {
    g_string_assign(text, _("Add points in the order they are flown."));
  } else if (route->count == 1) {
    g_string_assign(text, _("A route needs a second point."));
  } else if (ox_document_journey(self->document, journey, remark, sizeof remark) == OX_ERROR) {
    g_string_assign(text, remark);
  } else {
    size_t count = ox_journey_words(journey, ox_document_case(self->document), lines);
    for (size_t i = 0; i < count; i++)
      g_string_append_printf(text, "%s%s", i ? "\n" : "", lines[i]);
  }
  gtk_label_set_text(self->words, text->str);
  gtk_widget_set_visible(self->arrival_button, journey->hold > 0 && !journey->joined);
  g_string_free(text, TRUE);
  g_free(journey);
}

static void show(OxRouteList *self) {
  show_rows(self);
  show_choice(self);
  show_words(self);
}

static void document_changed_cb(OxDocument *document, guint what, OxRouteList *self) {
  if (what & OX_DOCUMENT_LESSON) say_refusal(self, "");
  show(self);
}

void ox_route_list_set_document(OxRouteList *self, OxDocument *document) {
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  show(self);
}

const char *ox_route_list_words(OxRouteList *self) { return gtk_label_get_text(self->words); }
const char *ox_route_list_refusal(OxRouteList *self) { return gtk_label_get_text(self->refusal); }

/* --- the widget --- */

static void add_cb(GtkButton *button, OxRouteList *self) {
  guint selected = gtk_drop_down_get_selected(self->choice);
  const char *name = gtk_string_list_get_string(self->names, selected);
  if (name) ox_route_list_add(self, name);
}

static GtkLabel *new_label(OxRouteList *self, const char *css_class) {
  GtkWidget *label = gtk_label_new("");
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 30);
  if (css_class) gtk_widget_add_css_class(label, css_class);
  gtk_box_append(GTK_BOX(self->box), label);
  return GTK_LABEL(label);
}

static void dispose(GObject *object) {
  OxRouteList *self = OX_ROUTE_LIST(object);
  g_clear_pointer(&self->box, gtk_widget_unparent);
  g_clear_object(&self->names);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_route_list_parent_class)->dispose(object);
}

static void ox_route_list_class_init(OxRouteListClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_layout_manager_type(GTK_WIDGET_CLASS(class), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(GTK_WIDGET_CLASS(class), "routelist");
}

static void ox_route_list_init(OxRouteList *self) {
  self->shown.missed_approach = -1;
  self->names = gtk_string_list_new(NULL);
  self->box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent(self->box, GTK_WIDGET(self));
  self->rows = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append(GTK_BOX(self->box), self->rows);
  self->add_row = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
  self->choice = GTK_DROP_DOWN(gtk_drop_down_new(g_object_ref(G_LIST_MODEL(self->names)), NULL));
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Point to add to the route"), -1);
  gtk_widget_set_hexpand(GTK_WIDGET(self->choice), TRUE);
  GtkWidget *add = gtk_button_new_with_label(_("Add to Route"));
  g_signal_connect(add, "clicked", G_CALLBACK(add_cb), self);
  gtk_box_append(GTK_BOX(self->add_row), GTK_WIDGET(self->choice));
  gtk_box_append(GTK_BOX(self->add_row), add);
  gtk_box_append(GTK_BOX(self->box), self->add_row);
  self->refusal = new_label(self, "error");
  gtk_widget_set_visible(GTK_WIDGET(self->refusal), FALSE);
  self->words = new_label(self, NULL);
  self->arrival_button = gtk_button_new_with_label(_("Arrive by the Route"));
  gtk_widget_set_tooltip_text(self->arrival_button,
                              _("Heading and distance of the arrival from the leg that arrives"));
  g_signal_connect_swapped(self->arrival_button, "clicked",
                           G_CALLBACK(ox_route_list_take_arrival), self);
  gtk_box_append(GTK_BOX(self->box), self->arrival_button);
}
