/* How a place is given: a grid of inputs of which those of the chosen way are shown. */
#include "ox_point_editor.h"

#include <math.h>
#include <string.h>

#include "ox_choice.h"
#include "ox_number_field.h"
#include "ox_point_names.h"
#include "oxbow/text.h"

/* The ways, in the order of the choice; those of a point of the list come first. */
typedef enum { BY_POSITION, BY_RADIAL, BY_CROSSING, BY_NAME, BY_NM, BY_SECONDS, WAY_COUNT } way;
static const char *const way_names[] = {N_("Latitude, longitude"), N_("Radial, distance"),
                                        N_("Crossing radials"),    N_("Name alone"),
                                        N_("Miles ahead"),         N_("Seconds ahead"),
                                        NULL};
static const char *const point_way_names[] = {N_("Latitude, longitude"), N_("Radial, distance"),
                                              N_("Crossing radials"), NULL};

typedef enum {
  ROW_NAME, ROW_BY, ROW_POSITION, ROW_FROM, ROW_RADIAL, ROW_NM, ROW_DME, ROW_ALTITUDE, ROW_AND,
  ROW_AND_RADIAL, ROW_AHEAD_NM, ROW_AHEAD_S, ROW_DECLINATION, ROW_ELEVATION, ROW_COUNT
} row;

typedef struct {
  const char *key, *label, *tip;
  const char *field; /* of ox_point_fields: a number */
  ox_number_form form;
  const char *unit;
  double step, page;
} row_style;

static const row_style styles[ROW_COUNT] = {
    [ROW_NAME] = {"name", N_("_Name"), N_("The name of the point"), NULL, 0, NULL, 0, 0},
    [ROW_BY] = {"by", N_("Given _by"), N_("How its place is given"), NULL, 0, NULL, 0, 0},
    [ROW_POSITION] = {"position", N_("_Position"),
                      N_("In any form a chart uses: N42°44.8' W073°48.2', 42.747 -73.803, …"), NULL,
                      0, NULL, 0, 0},
    [ROW_FROM] = {"from", N_("_From"), N_("The point that the radial is counted from"), NULL, 0,
                  NULL, 0, 0},
    [ROW_RADIAL] = {"radial", N_("_Radial"), N_("Magnetic, by the declination of that point"),
                    "radial_deg", OX_FORM_BEARING, "°M", 1, 10},
    [ROW_NM] = {"nm", N_("Dis_tance"), N_("Over the ground, or the DME reading"), "nm",
                OX_FORM_PLAIN, "NM", 0.5, 5},
    [ROW_DME] = {"dme", N_("Read by DME"), N_("The distance is slant range, read at an altitude"),
                 NULL, 0, NULL, 0, 0},
    [ROW_ALTITUDE] = {"altitude", N_("Read at"), N_("The altitude at which the DME is read"),
                      "altitude_ft", OX_FORM_ALTITUDE, "ft", 100, 1000},
    [ROW_AND] = {"and", N_("_And from"), N_("The other point"), NULL, 0, NULL, 0, 0},
    [ROW_AND_RADIAL] = {"and_radial", N_("Other ra_dial"),
                        N_("Magnetic, by the declination of the other point"), "and_radial_deg",
                        OX_FORM_BEARING, "°M", 1, 10},
    [ROW_AHEAD_NM] = {"ahead", N_("A_head"), N_("On the present track"), NULL, OX_FORM_PLAIN, "NM",
                      0.5, 5},
    [ROW_AHEAD_S] = {"ahead_s", N_("A_head"),
                     N_("On the present track at the present ground speed"), NULL, OX_FORM_SECONDS,
                     "s", 5, 30},
    [ROW_DECLINATION] =
        {"declination", N_("Decl_ination"),
         N_("Of the point as a station, as 12 W or 3.5 E: its radials count from it. "
            "Not the variation at the fix"),
         "declination_deg", OX_FORM_VARIATION, NULL, 1, 5},
    [ROW_ELEVATION] =
        {"elevation", N_("Ele_vation"),
         N_("Of its DME antenna; of a missed approach point the height that the climb "
            "begins at"),
         "elevation_ft", OX_FORM_ALTITUDE, "ft", 100, 1000},
};

struct _OxPointEditor {
  GtkWidget parent_instance;

  /* children */
  GtkGrid *grid;
  GtkWidget *labels[ROW_COUNT], *inputs[ROW_COUNT];
  GtkLabel *sentence;
  GtkStringList *names; /* of the points */

  gboolean of_fix;
  gboolean showing; /* values are being put in: nobody edited anything */
  char name[OX_POINT_NAME_BYTES];
  ox_fix fix;
  ox_points points;
  gboolean placed;
  ox_latlon place;
  double ahead_nm, gs_kt;
};

G_DEFINE_FINAL_TYPE(OxPointEditor, ox_point_editor, GTK_TYPE_WIDGET)

static guint edited_signal;

static way way_of(const ox_fix *fix) {
  switch (fix->kind) {
    case OX_FIX_NAMED: return BY_NAME;
    case OX_FIX_AHEAD_NM: return BY_NM;
    case OX_FIX_AHEAD_S: return BY_SECONDS;
    case OX_FIX_POINT: break;
  }
  return fix->point.kind == OX_POINT_RADIAL     ? BY_RADIAL
         : fix->point.kind == OX_POINT_CROSSING ? BY_CROSSING
                                                : BY_POSITION;
}

static gboolean row_is_shown(const OxPointEditor *self, row r) {
  way w = way_of(&self->fix);
  switch (r) {
    case ROW_NAME:
    case ROW_BY: return TRUE;
    case ROW_POSITION: return w == BY_POSITION;
    case ROW_FROM:
    case ROW_RADIAL: return w == BY_RADIAL || w == BY_CROSSING;
    case ROW_NM:
    case ROW_DME: return w == BY_RADIAL;
    case ROW_ALTITUDE: return w == BY_RADIAL && self->fix.point.dme;
    case ROW_AND:
    case ROW_AND_RADIAL: return w == BY_CROSSING;
    case ROW_AHEAD_NM: return w == BY_NM;
    case ROW_AHEAD_S: return w == BY_SECONDS;
    case ROW_DECLINATION:
    case ROW_ELEVATION: return !self->of_fix;
    case ROW_COUNT: break;
  }
  return FALSE;
}

/* --- showing --- */

void ox_point_editor_say(OxPointEditor *self, const char *sentence, gboolean wrong) {
  gtk_label_set_text(self->sentence, sentence);
  gtk_widget_set_visible(GTK_WIDGET(self->sentence), sentence[0] != '\0');
  if (wrong)
    gtk_widget_add_css_class(GTK_WIDGET(self->sentence), "error");
  else
    gtk_widget_remove_css_class(GTK_WIDGET(self->sentence), "error");
}

const char *ox_point_editor_sentence(OxPointEditor *self) {
  return gtk_label_get_text(self->sentence);
}

static void show_text(GtkWidget *entry, const char *text) {
  if (strcmp(gtk_editable_get_text(GTK_EDITABLE(entry)), text) != 0)
    gtk_editable_set_text(GTK_EDITABLE(entry), text);
}

static void show_point_of(GtkWidget *choice, const OxPointEditor *self, const char *name) {
  gtk_drop_down_set_selected(GTK_DROP_DOWN(choice), ox_point_names_find(&self->points, name));
}

static double row_value(const OxPointEditor *self, row r) {
  if (r == ROW_AHEAD_NM) return self->fix.ahead_nm;
  if (r == ROW_AHEAD_S) return self->fix.ahead_s;
  return ox_field_get(ox_point_field_by_key(styles[r].field), &self->fix.point);
}

static void show_rows(OxPointEditor *self) {
  char position[OX_COORDINATES_BYTES] = "";
  self->showing = TRUE;
  for (int r = 0; r < ROW_COUNT; r++) {
    gboolean shown = row_is_shown(self, (row)r);
    gtk_widget_set_visible(self->labels[r], shown);
    gtk_widget_set_visible(self->inputs[r], shown);
    if (OX_IS_NUMBER_FIELD(self->inputs[r]))
      ox_number_field_set_value(OX_NUMBER_FIELD(self->inputs[r]), row_value(self, (row)r));
  }
  show_text(self->inputs[ROW_NAME], self->name);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(self->inputs[ROW_BY]), (guint)way_of(&self->fix));
  if (way_of(&self->fix) == BY_POSITION)
    ox_latlon_print(self->fix.point.at, OX_FORM_DEG_MIN, position, sizeof position);
  show_text(self->inputs[ROW_POSITION], position);
  show_point_of(self->inputs[ROW_FROM], self, self->fix.point.from);
  show_point_of(self->inputs[ROW_AND], self, self->fix.point.and_from);
  gtk_check_button_set_active(GTK_CHECK_BUTTON(self->inputs[ROW_DME]), self->fix.point.dme);
  self->showing = FALSE;
}

static void show_names(OxPointEditor *self) {
  self->showing = TRUE;
  ox_point_names_show(self->names, &self->points, NULL);
  self->showing = FALSE;
}

void ox_point_editor_show(OxPointEditor *self, const ox_point_editor_value *value) {
  g_strlcpy(self->name, value->name, sizeof self->name);
  self->fix = value->fix;
  self->points = *value->points;
  self->placed = value->place != NULL;
  if (value->place) self->place = *value->place;
  self->ahead_nm = value->ahead_nm;
  self->gs_kt = value->gs_kt;
  show_names(self);
  show_rows(self);
}

const char *ox_point_editor_name(OxPointEditor *self) { return self->name; }
const ox_fix *ox_point_editor_fix(OxPointEditor *self) { return &self->fix; }

GtkWidget *ox_point_editor_input(OxPointEditor *self, const char *key) {
  for (int r = 0; r < ROW_COUNT; r++)
    if (g_str_equal(styles[r].key, key)) return self->inputs[r];
  return NULL;
}

/* --- editing --- */

static void edited(OxPointEditor *self) {
  ox_point_editor_say(self, "", FALSE);
  g_signal_emit(self, edited_signal, 0);
}

/* The points that a radial may be counted from: not the point itself. */
static const ox_point *other_point(const OxPointEditor *self, const char *but) {
  for (size_t i = 0; i < self->points.count; i++) {
    const ox_point *p = &self->points.points[i];
    gboolean itself = !self->of_fix && strcmp(p->name, self->name) == 0;
    if (!itself && strcmp(p->name, but) != 0) return p;
  }
  return NULL;
}

/* Radial and distance that lead to where the place is now. */
static void keep_place(OxPointEditor *self, const ox_point *from, double *radial_deg, double *nm) {
  ox_latlon at;
  if (!self->placed || ox_points_place(&self->points, from->name, &at, NULL, 0) == OX_ERROR)
    return;
  ox_station station = {at, from->declination_deg};
  ox_radial_of(station, self->place, radial_deg, nm);
}

static gboolean go_by_radial(OxPointEditor *self, gboolean crossing) {
  const ox_point *from = other_point(self, ""), *and = from ? other_point(self, from->name) : NULL;
  ox_point *p = &self->fix.point;
  if (!from || (crossing && !and)) {
    ox_point_editor_say(self,
                        crossing ? _("Two other points are needed: add them below.")
                                 : _("Another point is needed: add it below."),
                        TRUE);
    return FALSE;
  }
  p->kind = crossing ? OX_POINT_CROSSING : OX_POINT_RADIAL;
  g_strlcpy(p->from, from->name, sizeof p->from);
  p->nm = 10;
  keep_place(self, from, &p->radial_deg, &p->nm);
  p->dme = FALSE;
  if (!crossing) return TRUE;
  g_strlcpy(p->and_from, and->name, sizeof p->and_from);
  keep_place(self, and, &p->and_radial_deg, NULL);
  return TRUE;
}

static gboolean go_by(OxPointEditor *self, way w) {
  self->fix.kind = w == BY_NAME      ? OX_FIX_NAMED
                   : w == BY_NM      ? OX_FIX_AHEAD_NM
                   : w == BY_SECONDS ? OX_FIX_AHEAD_S
                                     : OX_FIX_POINT;
  if (w == BY_RADIAL || w == BY_CROSSING) return go_by_radial(self, w == BY_CROSSING);
  self->fix.point.kind = OX_POINT_AT;
  if (w == BY_POSITION && self->placed) self->fix.point.at = self->place;
  self->fix.ahead_nm = self->ahead_nm;
  self->fix.ahead_s = self->gs_kt > 0 ? round(3600 * self->ahead_nm / self->gs_kt) : 60;
  if (self->fix.ahead_s > OX_FIX_AHEAD_MAX_S) self->fix.ahead_s = OX_FIX_AHEAD_MAX_S;
  return TRUE;
}

static void way_cb(GtkDropDown *choice, GParamSpec *pspec, OxPointEditor *self) {
  guint selected = gtk_drop_down_get_selected(choice);
  ox_fix before = self->fix;
  if (self->showing || selected >= WAY_COUNT || selected == (guint)way_of(&self->fix)) return;
  if (go_by(self, (way)selected)) {
    edited(self);
  } else {
    self->fix = before;
  }
  show_rows(self);
}

static void point_cb(GtkDropDown *choice, GParamSpec *pspec, OxPointEditor *self) {
  guint selected = gtk_drop_down_get_selected(choice);
  if (self->showing || selected >= self->points.count) return;
  char *name = GTK_WIDGET(choice) == self->inputs[ROW_FROM] ? self->fix.point.from
                                                            : self->fix.point.and_from;
  g_strlcpy(name, self->points.points[selected].name, OX_POINT_NAME_BYTES);
  edited(self);
}

static void number_cb(OxNumberField *field, double value, OxPointEditor *self) {
  if (self->showing) return;
  for (int r = 0; r < ROW_COUNT; r++) {
    if (self->inputs[r] != GTK_WIDGET(field)) continue;
    if (r == ROW_AHEAD_NM)
      self->fix.ahead_nm = value;
    else if (r == ROW_AHEAD_S)
      self->fix.ahead_s = value;
    else
      ox_field_set(ox_point_field_by_key(styles[r].field), &self->fix.point, value);
  }
  edited(self);
}

static void dme_cb(GtkCheckButton *button, OxPointEditor *self) {
  if (self->showing) return;
  self->fix.point.dme = gtk_check_button_get_active(button);
  edited(self);
  show_rows(self);
}

static void take_name(OxPointEditor *self) {
  const char *text = gtk_editable_get_text(GTK_EDITABLE(self->inputs[ROW_NAME]));
  if (self->showing || g_str_equal(text, self->name)) return;
  char *bare = g_strstrip(g_strdup(text));
  if (!*bare || strlen(bare) >= sizeof self->name) {
    ox_point_editor_say(self, _("A name has 1 to 63 bytes."), TRUE);
  } else {
    g_strlcpy(self->name, bare, sizeof self->name);
    edited(self);
  }
  g_free(bare);
}

static void take_position(OxPointEditor *self) {
  char remark[OX_REMARK_BYTES], shown[OX_COORDINATES_BYTES] = "";
  ox_latlon at;
  const char *text = gtk_editable_get_text(GTK_EDITABLE(self->inputs[ROW_POSITION]));
  if (self->showing || way_of(&self->fix) != BY_POSITION) return;
  ox_latlon_print(self->fix.point.at, OX_FORM_DEG_MIN, shown, sizeof shown);
  if (g_str_equal(text, shown)) return; /* printed figures are rounded: nothing was typed */
  if (ox_latlon_parse(text, &at, remark, sizeof remark) == OX_ERROR) {
    ox_point_editor_say(self, remark, TRUE);
    return;
  }
  self->fix.point.at = at;
  edited(self);
  show_rows(self);
}

/* --- the widget --- */

static void add_focus_leave(GtkWidget *widget, GCallback leave, OxPointEditor *self) {
  GtkEventController *focus = gtk_event_controller_focus_new();
  g_signal_connect_swapped(focus, "leave", leave, self);
  gtk_widget_add_controller(widget, focus);
}

static GtkWidget *new_entry(OxPointEditor *self, void (*take)(OxPointEditor *)) {
  GtkWidget *entry = gtk_entry_new();
  gtk_editable_set_width_chars(GTK_EDITABLE(entry), 12);
  g_signal_connect_swapped(entry, "activate", G_CALLBACK(take), self);
  add_focus_leave(entry, G_CALLBACK(take), self);
  return entry;
}

static GtkWidget *new_number(OxPointEditor *self, row r) {
  const row_style *s = &styles[r];
  const ox_field *field = s->field ? ox_point_field_by_key(s->field) : NULL;
  gboolean seconds = r == ROW_AHEAD_S;
  ox_number_style style = {
      .form = s->form, .unit = s->unit, .decimals = seconds ? 0 : 2, .step = s->step,
      .page = s->page, .min = field ? field->min : 0,
      .max = field ? field->max : seconds ? OX_FIX_AHEAD_MAX_S : OX_FIX_AHEAD_MAX_NM,
      .units = g_strcmp0(s->unit, "NM") == 0 ? "nm|nmi" : NULL,
      .allowed = field ? field->allowed
                 : seconds ? N_("a time (0 to 3600 seconds)")
                           : N_("a distance (0 to 100 NM)")};
  GtkWidget *number = ox_number_field_new(&style);
  g_signal_connect(number, "edited", G_CALLBACK(number_cb), self);
  return number;
}

static GtkWidget *new_choice(OxPointEditor *self, GListModel *model, GCallback chosen) {
  GtkWidget *choice = gtk_drop_down_new(g_object_ref(model), NULL);
  g_signal_connect(choice, "notify::selected", chosen, self);
  return choice;
}

static GtkWidget *new_input(OxPointEditor *self, row r) {
  switch (r) {
    case ROW_NAME: return new_entry(self, take_name);
    case ROW_POSITION: return new_entry(self, take_position);
    case ROW_BY: {
      GtkStringList *ways = ox_choice_list(self->of_fix ? way_names : point_way_names);
      GtkWidget *choice = new_choice(self, G_LIST_MODEL(ways), G_CALLBACK(way_cb));
      g_object_unref(ways);
      return choice;
    }
    case ROW_FROM:
    case ROW_AND: return new_choice(self, G_LIST_MODEL(self->names), G_CALLBACK(point_cb));
    case ROW_DME: {
      GtkWidget *check = gtk_check_button_new_with_label(_("slant range"));
      g_signal_connect(check, "toggled", G_CALLBACK(dme_cb), self);
      return check;
    }
    default: return new_number(self, r);
  }
}

static void name_input(GtkWidget *input, const char *label) {
  char **parts = g_strsplit(label, "_", -1);
  char *plain = g_strjoinv("", parts);
  if (OX_IS_NUMBER_FIELD(input))
    ox_number_field_set_name(OX_NUMBER_FIELD(input), plain);
  else
    gtk_accessible_update_property(GTK_ACCESSIBLE(input), GTK_ACCESSIBLE_PROPERTY_LABEL, plain,
                                   -1);
  g_free(plain);
  g_strfreev(parts);
}

static void add_rows(OxPointEditor *self) {
  for (int r = 0; r < ROW_COUNT; r++) {
    const char *label = r == ROW_NAME && self->of_fix ? _("Fi_x") : _(styles[r].label);
    GtkWidget *text = gtk_label_new_with_mnemonic(label), *input = new_input(self, (row)r);
    gtk_label_set_xalign(GTK_LABEL(text), 0);
    gtk_label_set_mnemonic_widget(GTK_LABEL(text), input);
    gtk_widget_set_tooltip_text(input, _(styles[r].tip));
    gtk_widget_set_hexpand(input, TRUE);
    name_input(input, label);
    gtk_grid_attach(self->grid, text, 0, r, 1, 1);
    gtk_grid_attach(self->grid, input, 1, r, 1, 1);
    self->labels[r] = text;
    self->inputs[r] = input;
  }
  self->sentence = GTK_LABEL(gtk_label_new(""));
  gtk_label_set_wrap(self->sentence, TRUE);
  gtk_label_set_xalign(self->sentence, 0);
  gtk_label_set_max_width_chars(self->sentence, 30);
  gtk_widget_set_visible(GTK_WIDGET(self->sentence), FALSE);
  gtk_grid_attach(self->grid, GTK_WIDGET(self->sentence), 0, ROW_COUNT, 2, 1);
}

static void dispose(GObject *object) {
  OxPointEditor *self = OX_POINT_EDITOR(object);
  self->showing = TRUE; /* widgets that go tell of their last values */
  if (self->grid) gtk_widget_unparent(GTK_WIDGET(self->grid));
  self->grid = NULL;
  g_clear_object(&self->names);
  G_OBJECT_CLASS(ox_point_editor_parent_class)->dispose(object);
}

static void ox_point_editor_class_init(OxPointEditorClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  gtk_widget_class_set_layout_manager_type(widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "inputs");
  edited_signal = g_signal_new("edited", OX_TYPE_POINT_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 0);
}

static void ox_point_editor_init(OxPointEditor *self) {
  self->names = gtk_string_list_new(NULL);
  self->grid = GTK_GRID(gtk_grid_new());
  gtk_grid_set_row_spacing(self->grid, 6);
  gtk_grid_set_column_spacing(self->grid, 12);
  gtk_widget_set_parent(GTK_WIDGET(self->grid), GTK_WIDGET(self));
}

GtkWidget *ox_point_editor_new(gboolean of_fix) {
  OxPointEditor *self = g_object_new(OX_TYPE_POINT_EDITOR, NULL);
  self->of_fix = of_fix;
  self->fix.kind = OX_FIX_POINT;
  add_rows(self);
  return GTK_WIDGET(self);
}
