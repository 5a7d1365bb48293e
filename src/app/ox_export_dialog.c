/* Options of an export: a grid of inputs of which those of the choice are shown. */
#include "ox_export_dialog.h"

#include <math.h>
#include <string.h>

#include "ox_choice.h"
#include "ox_number_field.h"
#include "oxbow/text.h"

#define SENTENCE_CHARS 46
#define FRAMES_MOST 6000

typedef enum {
  ROW_WHAT, ROW_FORMAT, ROW_SIZE, ROW_PAPER, ROW_COLOURS, ROW_SPEED, ROW_FPS, ROW_TRANSPARENT,
  ROW_MARKS, ROW_COUNT
} row;

static const struct {
  const char *key, *label, *tip;
} styles[ROW_COUNT] = {
    [ROW_WHAT] = {"what", N_("_What"), N_("What is exported")},
    [ROW_FORMAT] = {"format", N_("_Format"), N_("The format of the file")},
    [ROW_SIZE] = {"unit", N_("_Size in"), N_("In pixels, or in centimetres at a resolution")},
    [ROW_PAPER] = {"paper", N_("_Paper"), N_("The size of a sheet")},
    [ROW_COLOURS] = {"colours", N_("C_olours"), N_("Print is for black and white too")},
    [ROW_SPEED] = {"speed", N_("Ti_mes as fast"), N_("Ten times: a minute takes six seconds")},
    [ROW_FPS] = {"fps", N_("F_rames a second"), N_("More frames make a larger file")},
    [ROW_TRANSPARENT] = {"transparent", N_("_Transparent ground"),
                         N_("Nothing is painted where nothing is drawn")},
    [ROW_MARKS] = {"marks", N_("With pen mar_ks"), N_("What was drawn by hand over the picture")},
};

static const char *const whats[] = {N_("This case"),         N_("All cases, a sheet each"),
                                    N_("Key moments"),       N_("Moving picture of the flight"),
                                    N_("Track for maps"),    N_("Worksheet to fill in"),
                                    N_("Answer key"),        NULL};
static const char *const units[] = {N_("pixels"), N_("cm at 150 dots an inch"),
                                    N_("cm at 300 dots an inch"), NULL};
static const char *const papers[] = {N_("A4 across"), N_("A4 upright"), N_("Letter across"),
                                     N_("Letter upright"), NULL};

struct _OxExportDialog {
  GtkWindow parent_instance;

  /* children */
  GtkGrid *grid;
  GtkWidget *labels[ROW_COUNT], *inputs[ROW_COUNT];
  GtkWidget *sizes[OX_SHARE_SIZE_COUNT];              /* boxes of width and height */
  OxNumberField *fields[OX_SHARE_SIZE_COUNT][2];
  GtkStringList *formats;
  GtkLabel *sentence;
  GtkWidget *choose;
  OxHandoutRows *handout; /* owned */
  OxHandoutView *page;

  char *refusals[OX_SHARE_WHAT_COUNT]; /* owned */
  ox_snapshot *snapshot; /* owned */
  ox_lesson lesson;      /* a view of it */
  double flight_s;
  ox_share_choice choice;
  gboolean showing; /* values are being put in: nobody chose anything */
};

G_DEFINE_FINAL_TYPE(OxExportDialog, ox_export_dialog, GTK_TYPE_WINDOW)

static guint chosen_signal;

/* ---- what is shown ---------------------------------------------------------------------- */

static gboolean row_is_shown(const ox_share_choice *c, row r) {
  gboolean track = c->what == OX_SHARE_TRACK, sheet = c->format == OX_SHARE_PDF;
  gboolean handout = ox_share_is_handout(c->what);
  switch (r) {
  case ROW_SIZE:
    return !track && !sheet;
  case ROW_PAPER:
    return !track && sheet;
  case ROW_COLOURS:
    return !track && !handout;
  case ROW_SPEED:
  case ROW_FPS:
    return c->what == OX_SHARE_MOVING;
  case ROW_TRANSPARENT:
    return c->what == OX_SHARE_PICTURE && c->format == OX_SHARE_PNG;
  case ROW_MARKS:
    return !track && !handout && c->what != OX_SHARE_MOMENTS;
  default:
    return TRUE;
  }
}

static size_t frames(const OxExportDialog *self) {
  double count = ceil(self->flight_s / self->choice.speed * round(self->choice.fps));
  return 1 + (size_t)CLAMP(count, 0.0, 1e9);
}

static char *moving_sentence(const OxExportDialog *self) {
  double lasts_s = self->flight_s / self->choice.speed;
  return g_strdup_printf(_("%zu frames that last %.0f seconds"), frames(self), lasts_s);
}

static ox_handout *make_handout(OxExportDialog *self) {
  const ox_share_choice *c = &self->choice;
  gboolean across;
  ox_paper paper = ox_share_sheets_paper(c->handout_paper, &across);
  return ox_handout_new(&self->lesson, ox_handout_rows_wanted(self->handout), &c->handout,
                        ox_share_sheets_kind(c->what), paper, across);
}

static char *handout_sentence(const OxExportDialog *self) {
  size_t holds = ox_handout_rows_wanted_count(self->handout);
  size_t pages = ox_sheets_pages(
      holds, &(ox_sheets_options){.per_page = self->choice.handout.per_page});
  char *on = g_strdup_printf(ox_text_count("%zu page", "%zu pages", pages), pages);
  char *of = g_strdup_printf(ox_text_count("%zu hold", "%zu holds", holds), holds);
  char *text = self->choice.what == OX_SHARE_KEY
                   ? g_strdup_printf(_("%s, %s, with every answer and its source"), on, of)
                   : g_strdup_printf(_("%s, %s; an answer key with the same choices has each "
                                       "hold in the same place"), on, of);
  g_free(of);
  g_free(on);
  return text;
}

/* What the choice comes to. */
static char *describe(const OxExportDialog *self) {
  const ox_share_choice *c = &self->choice;
  ox_export_options o = ox_share_options(c, 0);
  if (c->what == OX_SHARE_TRACK)
    return g_strdup(_("The ground track, a point a second, with heights above sea level"));
  if (c->what == OX_SHARE_MOVING) return moving_sentence(self);
  if (ox_share_is_handout(c->what)) return handout_sentence(self);
  if (c->format == OX_SHARE_PDF) {
    size_t sheets = c->what == OX_SHARE_CASES ? self->lesson.case_count : 1;
    return g_strdup_printf(ox_text_count("%zu sheet", "%zu sheets", sheets), sheets);
  }
  if (c->format == OX_SHARE_SVG)
    return g_strdup_printf(_("%.1f × %.1f cm, sharp at any size"), o.width / 72 * 2.54,
                           o.height / 72 * 2.54);
  return g_strdup_printf(_("%.0f × %.0f pixels, %.1f × %.1f cm in print"), o.width, o.height,
                         o.width / o.dpi * 2.54, o.height / o.dpi * 2.54);
}

static void show_sentence(OxExportDialog *self) {
  const char *refusal = self->refusals[self->choice.what];
  gboolean too_many = self->choice.what == OX_SHARE_MOVING && frames(self) > FRAMES_MOST;
  gboolean none = ox_share_is_handout(self->choice.what) &&
                  ox_handout_rows_wanted_count(self->handout) == 0;
  char *text = refusal ? g_strdup(refusal)
               : none  ? g_strdup(_("No case is chosen."))
               : too_many
                   ? g_strdup_printf(_("%zu frames are more than %d: more speed or fewer frames a "
                                       "second are needed."), frames(self), FRAMES_MOST)
                   : describe(self);
  gtk_label_set_text(self->sentence, text);
  gtk_widget_set_sensitive(self->choose, !refusal && !none && !too_many);
  /* a screen reader reads it where the hands are */
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->inputs[ROW_WHAT]),
                                 GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  g_free(text);
}

/* A list must not change while its own selection is being told. */
static gboolean lists_just(GtkStringList *list, const char *const *names) {
  guint count = g_list_model_get_n_items(G_LIST_MODEL(list));
  if (count != g_strv_length((char **)names)) return FALSE;
  for (guint i = 0; i < count; i++)
    if (strcmp(gtk_string_list_get_string(list, i), names[i]) != 0) return FALSE;
  return TRUE;
}

static void show_formats(OxExportDialog *self) {
  size_t count;
  const ox_share_format *list = ox_share_formats(self->choice.what, &count);
  const char *names[OX_SHARE_FORMAT_COUNT + 1] = {NULL};
  guint at = 0;
  for (size_t i = 0; i < count; i++) {
    names[i] = ox_share_format_name(list[i]);
    if (list[i] == self->choice.format) at = (guint)i;
  }
  if (!lists_just(self->formats, names))
    gtk_string_list_splice(self->formats, 0, g_list_model_get_n_items(G_LIST_MODEL(self->formats)),
                           names);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(self->inputs[ROW_FORMAT]), at);
  gtk_widget_set_sensitive(self->inputs[ROW_FORMAT], count > 1);
}

static void show_selected(OxExportDialog *self, row r, guint index) {
  gtk_drop_down_set_selected(GTK_DROP_DOWN(self->inputs[r]), index);
}

/* The moving picture's size is in pixels, whatever the unit of others. */
static void show_sizes(OxExportDialog *self, gboolean shown) {
  ox_share_size size = ox_share_choice_size(&self->choice);
  gboolean moving = size == OX_SHARE_SIZE_MOVING;
  show_selected(self, ROW_SIZE, moving ? OX_SHARE_PIXELS : (guint)self->choice.unit);
  gtk_widget_set_sensitive(self->inputs[ROW_SIZE], !moving);
  for (int i = 0; i < OX_SHARE_SIZE_COUNT; i++) {
    gtk_widget_set_visible(self->sizes[i], shown && i == (int)size);
    for (int side = 0; side < 2; side++)
      ox_number_field_set_value(self->fields[i][side], self->choice.size[i][side]);
  }
}

/* An answer that is hidden is not shown here either. */
static void show_handout(OxExportDialog *self) {
  gboolean shown = ox_share_is_handout(self->choice.what);
  gboolean drawn = shown && !self->refusals[self->choice.what];
  ox_handout_rows_set_visible(self->handout, shown);
  gtk_widget_set_visible(GTK_WIDGET(self->page), shown);
  ox_handout_view_take(self->page, drawn ? make_handout(self) : NULL);
}

static void show(OxExportDialog *self) {
  const ox_share_choice *c = &self->choice;
  self->showing = TRUE;
  show_selected(self, ROW_WHAT, (guint)c->what);
  show_formats(self);
  show_selected(self, ROW_PAPER,
                (guint)(ox_share_is_handout(c->what) ? c->handout_paper : c->paper));
  show_selected(self, ROW_COLOURS, (guint)ox_share_palette(c));
  gtk_check_button_set_active(GTK_CHECK_BUTTON(self->inputs[ROW_TRANSPARENT]), c->transparent);
  gtk_check_button_set_active(GTK_CHECK_BUTTON(self->inputs[ROW_MARKS]), c->pen_marks);
  ox_number_field_set_value(OX_NUMBER_FIELD(self->inputs[ROW_SPEED]), c->speed);
  ox_number_field_set_value(OX_NUMBER_FIELD(self->inputs[ROW_FPS]), c->fps);
  for (row r = ROW_WHAT; r < ROW_COUNT; r++) {
    gboolean shown = row_is_shown(c, r);
    if (self->labels[r]) gtk_widget_set_visible(self->labels[r], shown);
    gtk_widget_set_visible(self->inputs[r], shown);
  }
  show_sizes(self, row_is_shown(c, ROW_SIZE));
  show_handout(self);
  show_sentence(self);
  self->showing = FALSE;
}

/* ---- what is chosen --------------------------------------------------------------------- */

static guint selected(OxExportDialog *self, row r) {
  guint index = gtk_drop_down_get_selected(GTK_DROP_DOWN(self->inputs[r]));
  return index == GTK_INVALID_LIST_POSITION ? 0 : index;
}

static void take_format(OxExportDialog *self) {
  size_t count;
  const ox_share_format *list = ox_share_formats(self->choice.what, &count);
  guint index = selected(self, ROW_FORMAT);
  if (index < count) self->choice.format = list[index];
}

static void selected_cb(GtkWidget *input, GParamSpec *pspec, OxExportDialog *self) {
  ox_share_choice *c = &self->choice;
  if (self->showing) return;
  if (input == self->inputs[ROW_WHAT]) {
    c->what = (ox_share_what)selected(self, ROW_WHAT);
    ox_share_choice_settle(c);
  } else if (input == self->inputs[ROW_FORMAT]) {
    take_format(self);
  } else if (input == self->inputs[ROW_SIZE]) {
    c->unit = (ox_share_unit)selected(self, ROW_SIZE);
  } else if (input == self->inputs[ROW_PAPER] && ox_share_is_handout(c->what)) {
    c->handout_paper = (ox_share_paper)selected(self, ROW_PAPER);
  } else if (input == self->inputs[ROW_PAPER]) {
    c->paper = (ox_share_paper)selected(self, ROW_PAPER);
  } else if (c->format == OX_SHARE_PDF) {
    c->sheet_palette = (ox_palette_id)selected(self, ROW_COLOURS);
  } else {
    c->palette = (ox_palette_id)selected(self, ROW_COLOURS);
  }
  show(self);
}

static void toggled_cb(GtkCheckButton *button, OxExportDialog *self) {
  if (self->showing) return;
  self->choice.transparent =
      gtk_check_button_get_active(GTK_CHECK_BUTTON(self->inputs[ROW_TRANSPARENT]));
  self->choice.pen_marks = gtk_check_button_get_active(GTK_CHECK_BUTTON(self->inputs[ROW_MARKS]));
}

static void edited_cb(OxNumberField *field, double value, OxExportDialog *self) {
  if (GTK_WIDGET(field) == self->inputs[ROW_SPEED]) self->choice.speed = value;
  if (GTK_WIDGET(field) == self->inputs[ROW_FPS]) self->choice.fps = value;
  for (int i = 0; i < OX_SHARE_SIZE_COUNT; i++)
    for (int side = 0; side < 2; side++)
      if (field == self->fields[i][side]) self->choice.size[i][side] = value;
  show_sentence(self);
}

static void handout_cb(OxExportDialog *self) {
  self->choice.handout = ox_handout_rows_choice(self->handout);
  show_handout(self);
  show_sentence(self);
}

/* What is typed must be good before it counts; the first that is not says why. */
static gboolean commit(OxExportDialog *self) {
  ox_share_size size = ox_share_choice_size(&self->choice);
  GtkWidget *typed[] = {GTK_WIDGET(self->fields[size][0]), GTK_WIDGET(self->fields[size][1]),
                        self->inputs[ROW_SPEED], self->inputs[ROW_FPS]};
  for (size_t i = 0; i < G_N_ELEMENTS(typed); i++) {
    if (!gtk_widget_get_mapped(typed[i])) continue;
    if (ox_number_field_commit(OX_NUMBER_FIELD(typed[i]), FALSE)) continue;
    gtk_widget_grab_focus(ox_number_field_get_text(OX_NUMBER_FIELD(typed[i])));
    return FALSE;
  }
  return ox_handout_rows_commit(self->handout);
}

static void choose_cb(GtkWidget *button, OxExportDialog *self) {
  if (!gtk_widget_get_sensitive(self->choose) || !commit(self)) return;
  g_object_ref(self);
  g_signal_emit(self, chosen_signal, 0);
  gtk_window_destroy(GTK_WINDOW(self));
  g_object_unref(self);
}

static void committed_cb(OxNumberField *field, OxExportDialog *self) {
  choose_cb(self->choose, self);
}

/* ---- putting together ------------------------------------------------------------------- */

#define FIELD(unit_, decimals_, step_, page_, least_, most_, allowed_)                         \
  {.form = OX_FORM_PLAIN, .unit = (unit_), .units = (unit_), .decimals = (decimals_),          \
   .step = (step_), .page = (page_), .min = (least_), .max = (most_), .allowed = (allowed_)}

static const ox_number_style size_styles[OX_SHARE_SIZE_COUNT] = {
    FIELD("px", 0, 10, 100, OX_SHARE_PIXELS_LEAST, OX_SHARE_PIXELS_MOST,
          N_("a size (100 to 8000 pixels)")),
    FIELD("cm", 1, 0.5, 5, OX_SHARE_CM_LEAST, OX_SHARE_CM_MOST, N_("a size (2 to 60 cm)")),
    FIELD("px", 0, 10, 100, OX_SHARE_PIXELS_LEAST, OX_SHARE_MOVING_MOST,
          N_("a size of a moving picture (100 to 2000 pixels)")),
};
static const ox_number_style speed_style =
    FIELD(NULL, 0, 1, 10, 1, OX_SHARE_SPEED_MOST, N_("a speed (1 to 100 times)"));
static const ox_number_style fps_style =
    FIELD(NULL, 0, 1, 5, 1, OX_SHARE_FPS_MOST, N_("a number of frames (1 to 30 a second)"));

static GtkWidget *number_new(OxExportDialog *self, const ox_number_style *style,
                             const char *name) {
  GtkWidget *field = ox_number_field_new(style);
  ox_number_field_set_name(OX_NUMBER_FIELD(field), name);
  g_signal_connect(field, "edited", G_CALLBACK(edited_cb), self);
  g_signal_connect(field, "committed", G_CALLBACK(committed_cb), self);
  return field;
}

static GtkWidget *drop_down_new(OxExportDialog *self, GtkStringList *list) {
  GtkWidget *input = gtk_drop_down_new(G_LIST_MODEL(list), NULL);
  g_signal_connect(input, "notify::selected", G_CALLBACK(selected_cb), self);
  return input;
}

static GtkWidget *check_new(OxExportDialog *self, row r) {
  GtkWidget *input = gtk_check_button_new_with_mnemonic(_(styles[r].label));
  g_signal_connect(input, "toggled", G_CALLBACK(toggled_cb), self);
  return input;
}

/* "Print" alone could be what is done, not what it looks like. */
static GtkStringList *palettes_list(void) {
  const char *names[] = {_("Light"), _("Dark"), _("Projector"), C_("colours", "Print"), NULL};
  return gtk_string_list_new(names);
}

static GtkWidget *input_new(OxExportDialog *self, row r) {
  switch (r) {
  case ROW_WHAT:
    return drop_down_new(self, ox_choice_list(whats));
  case ROW_FORMAT:
    self->formats = gtk_string_list_new(NULL);
    return drop_down_new(self, self->formats);
  case ROW_SIZE:
    return drop_down_new(self, ox_choice_list(units));
  case ROW_PAPER:
    return drop_down_new(self, ox_choice_list(papers));
  case ROW_COLOURS:
    return drop_down_new(self, palettes_list());
  case ROW_SPEED:
    return number_new(self, &speed_style, _("Times as fast"));
  case ROW_FPS:
    return number_new(self, &fps_style, _("Frames a second"));
  default:
    return check_new(self, r);
  }
}

/* Width and height of each kind in one cell; one of them is shown. */
static GtkWidget *sizes_new(OxExportDialog *self) {
  static const char *const names[] = {N_("Width"), N_("Height")};
  GtkWidget *all = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 0);
  for (int i = 0; i < OX_SHARE_SIZE_COUNT; i++) {
    GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 6);
    for (int side = 0; side < 2; side++) {
      GtkWidget *field = number_new(self, &size_styles[i], _(names[side]));
      self->fields[i][side] = OX_NUMBER_FIELD(field);
      gtk_widget_set_tooltip_text(field, _(names[side]));
      if (side == 1) gtk_box_append(GTK_BOX(box), gtk_label_new("×"));
      gtk_box_append(GTK_BOX(box), field);
    }
    self->sizes[i] = box;
    gtk_box_append(GTK_BOX(all), box);
  }
  return all;
}

static void add_row(OxExportDialog *self, row r, int at) {
  GtkWidget *input = input_new(self, r);
  self->inputs[r] = input;
  gtk_widget_set_tooltip_text(input, _(styles[r].tip));
  gtk_widget_set_hexpand(input, TRUE);
  if (!GTK_IS_CHECK_BUTTON(input)) {
    GtkWidget *label = gtk_label_new_with_mnemonic(_(styles[r].label));
    gtk_label_set_xalign(GTK_LABEL(label), 1);
    gtk_label_set_mnemonic_widget(GTK_LABEL(label), input);
    gtk_accessible_update_relation(GTK_ACCESSIBLE(input), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                   label, NULL, -1);
    gtk_grid_attach(self->grid, label, 0, at, 1, 1);
    self->labels[r] = label;
  }
  gtk_grid_attach(self->grid, input, 1, at, 1, 1);
}

static void add_rows(OxExportDialog *self) {
  int at = 0;
  for (row r = ROW_WHAT; r < ROW_COUNT; r++) {
    add_row(self, r, at++);
    if (r == ROW_SIZE) gtk_grid_attach(self->grid, sizes_new(self), 1, at++, 1, 1);
  }
  self->sentence = GTK_LABEL(gtk_label_new(NULL));
  gtk_label_set_xalign(self->sentence, 0);
  gtk_label_set_wrap(self->sentence, TRUE);
  gtk_label_set_width_chars(self->sentence, SENTENCE_CHARS);
  gtk_label_set_max_width_chars(self->sentence, SENTENCE_CHARS);
  self->handout = ox_handout_rows_new(self->grid, at, &self->lesson, &self->choice.handout);
  g_signal_connect_object(self->handout, "changed", G_CALLBACK(handout_cb), self,
                          G_CONNECT_SWAPPED);
  at += OX_HANDOUT_ROW_COUNT;
  gtk_grid_attach(self->grid, GTK_WIDGET(self->sentence), 0, at, 2, 1);
}

static void add_header(OxExportDialog *self) {
  GtkWidget *bar = gtk_header_bar_new();
  GtkWidget *cancel = gtk_button_new_with_mnemonic(_("_Cancel"));
  self->choose = gtk_button_new_with_mnemonic(_("Choose Fi_le…"));
  gtk_header_bar_set_show_title_buttons(GTK_HEADER_BAR(bar), FALSE);
  gtk_header_bar_pack_start(GTK_HEADER_BAR(bar), cancel);
  gtk_header_bar_pack_end(GTK_HEADER_BAR(bar), self->choose);
  gtk_widget_add_css_class(self->choose, "suggested-action");
  gtk_window_set_titlebar(GTK_WINDOW(self), bar);
  g_signal_connect_swapped(cancel, "clicked", G_CALLBACK(gtk_window_destroy), self);
  g_signal_connect(self->choose, "clicked", G_CALLBACK(choose_cb), self);
  gtk_window_set_default_widget(GTK_WINDOW(self), self->choose);
}

/* The page is drawn from the lesson, which goes. */
static void dispose(GObject *object) {
  OxExportDialog *self = OX_EXPORT_DIALOG(object);
  if (self->page) ox_handout_view_take(self->page, NULL);
  self->page = NULL;
  g_clear_object(&self->handout);
  if (self->snapshot) ox_snapshot_view_clear(&self->lesson);
  g_clear_pointer(&self->snapshot, ox_snapshot_unref);
  G_OBJECT_CLASS(ox_export_dialog_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxExportDialog *self = OX_EXPORT_DIALOG(object);
  for (int i = 0; i < OX_SHARE_WHAT_COUNT; i++) g_free(self->refusals[i]);
  G_OBJECT_CLASS(ox_export_dialog_parent_class)->finalize(object);
}

static void ox_export_dialog_class_init(OxExportDialogClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  chosen_signal = g_signal_new("chosen", OX_TYPE_EXPORT_DIALOG, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 0);
  gtk_widget_class_add_binding_action(GTK_WIDGET_CLASS(class), GDK_KEY_Escape, 0, "window.close",
                                      NULL);
}

static void ox_export_dialog_init(OxExportDialog *self) {
  self->grid = GTK_GRID(gtk_grid_new());
  gtk_grid_set_row_spacing(self->grid, 6);
  gtk_grid_set_column_spacing(self->grid, 12);
  gtk_widget_add_css_class(GTK_WIDGET(self->grid), "form");
  gtk_window_set_title(GTK_WINDOW(self), _("Export"));
  gtk_window_set_modal(GTK_WINDOW(self), TRUE);
  gtk_window_set_resizable(GTK_WINDOW(self), FALSE);
  gtk_window_set_destroy_with_parent(GTK_WINDOW(self), TRUE);
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 0);
  self->page = OX_HANDOUT_VIEW(ox_handout_view_new());
  gtk_widget_set_hexpand(GTK_WIDGET(self->grid), TRUE);
  gtk_box_append(GTK_BOX(box), GTK_WIDGET(self->grid));
  gtk_box_append(GTK_BOX(box), GTK_WIDGET(self->page));
  gtk_window_set_child(GTK_WINDOW(self), box);
  add_header(self);
}

GtkWidget *ox_export_dialog_new(GtkWindow *parent, const ox_export_facts *facts,
                                const ox_share_choice *choice) {
  OxExportDialog *self = g_object_new(OX_TYPE_EXPORT_DIALOG, "transient-for", parent, NULL);
  for (int i = 0; i < OX_SHARE_WHAT_COUNT; i++) self->refusals[i] = g_strdup(facts->refusals[i]);
  self->snapshot = ox_snapshot_ref(facts->lesson);
  ox_snapshot_view(self->snapshot, &self->lesson);
  self->flight_s = facts->flight_s;
  self->choice = *choice;
  self->showing = TRUE;
  add_rows(self);
  show(self);
  gtk_window_set_focus(GTK_WINDOW(self), self->inputs[ROW_WHAT]);
  return GTK_WIDGET(self);
}

ox_share_choice ox_export_dialog_choice(OxExportDialog *self) { return self->choice; }

const gboolean *ox_export_dialog_wanted(OxExportDialog *self) {
  return ox_handout_rows_wanted(self->handout);
}

OxHandoutRows *ox_export_dialog_handout(OxExportDialog *self) { return self->handout; }

OxHandoutView *ox_export_dialog_page(OxExportDialog *self) { return self->page; }

const char *ox_export_dialog_sentence(OxExportDialog *self) {
  return gtk_label_get_text(self->sentence);
}

GtkWidget *ox_export_dialog_input(OxExportDialog *self, const char *key) {
  ox_share_size size = ox_share_choice_size(&self->choice);
  if (g_str_equal(key, "choose")) return self->choose;
  if (g_str_equal(key, "width")) return GTK_WIDGET(self->fields[size][0]);
  if (g_str_equal(key, "height")) return GTK_WIDGET(self->fields[size][1]);
  for (row r = ROW_WHAT; r < ROW_COUNT; r++)
    if (g_str_equal(key, styles[r].key)) return self->inputs[r];
  return NULL;
}
