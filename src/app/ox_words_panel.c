/* The page of words: entering a clearance. What is said of the case is ox_said_box.c. */
#include "ox_words_panel.h"

#include <string.h>

#include "app_id.h"
#include "ox_clearance_fix.h"
#include "ox_clearance_words.h"
#include "ox_column_layout.h"
#include "ox_document_places.h"
#include "ox_said_box.h"
#include "ox_warning_box.h"
#include "oxbow/text.h"

struct _OxWordsPanel {
  GtkWidget parent_instance;

  /* template children */
  GtkWidget *scroller;
  GtkTextView *entry;
  GtkDropDown *wording;
  GtkButton *use_button;
  GtkLabel *meaning;
  GtkBox *list;
  OxSaidBox *said;

  /* owned */
  OxDocument *document;
  ox_clearance *reading;
  ox_case meant;     /* the case that was read */
  ox_fix meant_fix;  /* and where its fix is */
  char place[OX_REMARK_BYTES]; /* what is to be said of that; empty: nothing */
  char *text; /* what was read */

  GtkTextTag *tags[OX_SENSE_COUNT], *unused, *marked; /* borrowed: the buffer's */
  ox_feature pointed;
  guint listed;
};

enum { POINTED, UNDERSTOOD, WORDED, SIGNAL_COUNT };
static guint signals[SIGNAL_COUNT];

G_DEFINE_FINAL_TYPE(OxWordsPanel, ox_words_panel, GTK_TYPE_WIDGET)

/* ---- underlines ------------------------------------------------------------------------- */

/* Hues of Okabe and Ito as a tint, so that the text keeps its contrast in the light and in the
 * dark; the way of underlining tells them apart as well. The lines themselves have no colour: with
 * one, GTK 4.8.3 ends in a crash. */
static const struct {
  PangoUnderline underline;
  gboolean over; /* a line above as well */
  const char *colour;
} senses[OX_SENSE_COUNT] = {
    [OX_SENSE_PLACE] = {PANGO_UNDERLINE_SINGLE, FALSE, "#0072B2"},
    [OX_SENSE_LINE] = {PANGO_UNDERLINE_DOUBLE, FALSE, "#009E73"},
    [OX_SENSE_SHAPE] = {PANGO_UNDERLINE_ERROR, FALSE, "#D55E00"},
    [OX_SENSE_LIMIT] = {PANGO_UNDERLINE_LOW, FALSE, "#8A6D00"},
    [OX_SENSE_TIME] = {PANGO_UNDERLINE_SINGLE, TRUE, "#B8568F"},
};

static void make_tags(OxWordsPanel *self, GtkTextBuffer *buffer) {
  for (int i = 0; i < OX_SENSE_COUNT; i++) {
    GdkRGBA colour;
    gdk_rgba_parse(&colour, senses[i].colour);
    colour.alpha = 0.25f;
    self->tags[i] = gtk_text_buffer_create_tag(
        buffer, NULL, "underline", senses[i].underline, "background-rgba", &colour, "overline",
        senses[i].over ? PANGO_OVERLINE_SINGLE : PANGO_OVERLINE_NONE, NULL);
  }
  self->unused = gtk_text_buffer_create_tag(buffer, NULL, "strikethrough", TRUE, NULL);
  self->marked = gtk_text_buffer_create_tag(buffer, NULL, "weight", PANGO_WEIGHT_BOLD, NULL);
}

static void span_iters(OxWordsPanel *self, ox_span span, GtkTextIter *from, GtkTextIter *to) {
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->entry);
  glong begin = g_utf8_pointer_to_offset(self->text, self->text + span.at);
  glong end = g_utf8_pointer_to_offset(self->text, self->text + span.at + span.length);
  gtk_text_buffer_get_iter_at_offset(buffer, from, (int)begin);
  gtk_text_buffer_get_iter_at_offset(buffer, to, (int)end);
}

static void tag_span(OxWordsPanel *self, GtkTextTag *tag, ox_span span) {
  GtkTextIter from, to;
  span_iters(self, span, &from, &to);
  gtk_text_buffer_apply_tag(gtk_text_view_get_buffer(self->entry), tag, &from, &to);
}

static void show_tags(OxWordsPanel *self) {
  GtkTextIter from, to;
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->entry);
  gtk_text_buffer_get_bounds(buffer, &from, &to);
  gtk_text_buffer_remove_all_tags(buffer, &from, &to);
  for (size_t i = 0; i < self->reading->item_count; i++)
    tag_span(self, self->tags[ox_sense_of_item(self->reading->items[i].kind)],
             self->reading->items[i].words);
  for (size_t i = 0; i < self->reading->ignored_count; i++)
    tag_span(self, self->unused, self->reading->ignored[i]);
}

/* ---- what is listed --------------------------------------------------------------------- */

static void append_sentence(OxWordsPanel *self, const char *sentence, gboolean question) {
  GtkLabel *label;
  GtkWidget *row;
  if (question) {
    row = ox_warning_box_new("complaint", 34, &label);
  } else {
    row = gtk_label_new(NULL);
    label = GTK_LABEL(row);
    gtk_label_set_xalign(label, 0);
    gtk_label_set_wrap(label, TRUE);
    gtk_label_set_wrap_mode(label, PANGO_WRAP_WORD_CHAR);
    gtk_label_set_max_width_chars(label, 36);
    gtk_widget_add_css_class(row, "rule");
  }
  gtk_label_set_text(label, sentence);
  gtk_label_set_selectable(label, TRUE);
  gtk_box_append(self->list, row);
  self->listed++;
}

static void show_list(OxWordsPanel *self) {
  for (GtkWidget *old; (old = gtk_widget_get_first_child(GTK_WIDGET(self->list)));)
    gtk_box_remove(self->list, old);
  self->listed = 0;
  if (*self->text == '\0') return;
  char **questions = ox_clearance_questions(self->reading);
  char **remarks = ox_clearance_remarks(self->reading, self->text);
  for (char **at = questions; *at; at++) append_sentence(self, *at, TRUE);
  if (*self->place) append_sentence(self, self->place, FALSE);
  for (char **at = remarks; *at; at++) append_sentence(self, *at, FALSE);
  g_strfreev(questions);
  g_strfreev(remarks);
}

/* ---- understanding ---------------------------------------------------------------------- */

static ox_wording chosen_wording(OxWordsPanel *self) {
  return gtk_drop_down_get_selected(self->wording) == 1 ? OX_WORDING_ICAO : OX_WORDING_US;
}

static void point_at(OxWordsPanel *self, int item);

/* Minutes alone ("EFC 25") count from when the fix is crossed. */
static gboolean read_words(OxWordsPanel *self) {
  ox_clearance_options o = ox_clearance_options_default();
  const ox_case *base = ox_document_case(self->document);
  o.wording = chosen_wording(self);
  if (base->arrival.fix_at_s >= 0) o.now_min = base->arrival.fix_at_s / 60;
  return ox_clearance_read(self->text, base, &o, self->reading) != OX_ERROR;
}

/* The case and the place of its fix. */
static void mean(OxWordsPanel *self) {
  self->meant = self->reading->result;
  self->meant_fix = ox_clearance_fix(self->reading, &self->meant,
                                     ox_document_case(self->document)->hold.fix,
                                     ox_document_fix(self->document),
                                     ox_document_points(self->document), self->place,
                                     sizeof self->place);
}

static gboolean understand(OxWordsPanel *self) {
  *self->place = '\0';
  if (!read_words(self)) return FALSE;
  if (ox_clearance_understood(self->reading)) mean(self);
  return TRUE;
}

static void read_text(OxWordsPanel *self) {
  GtkTextIter from, to;
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->entry);
  gtk_text_buffer_get_bounds(buffer, &from, &to);
  g_free(self->text);
  self->text = gtk_text_buffer_get_text(buffer, &from, &to, FALSE);
  gboolean good = self->document && understand(self);
  if (!good) memset(self->reading, 0, sizeof *self->reading);
  show_tags(self);
  show_list(self);
  if (!good && *self->text != '\0')
    append_sentence(self, _("The text is too long for a clearance (2000 bytes)."), TRUE);
  gboolean usable = good && *self->text != '\0' && ox_clearance_understood(self->reading);
  gtk_widget_set_sensitive(GTK_WIDGET(self->use_button), usable);
  g_signal_emit(self, signals[UNDERSTOOD], 0, usable ? &self->meant : NULL);
  point_at(self, -1);
}

static void use_cb(OxWordsPanel *self) {
  if (!ox_clearance_understood(self->reading)) return;
  char why[OX_REMARK_BYTES];
  ox_case meant = self->meant;
  ox_fix fix = self->meant_fix;
  ox_clearance *heard = g_memdup2(self->reading, sizeof *heard);
  if (ox_document_set_fix(self->document, _("Clearance"), &meant, &fix, why, sizeof why) ==
      OX_ERROR) {
    /* The hold counts, also where its fix cannot be placed. */
    ox_document_begin_step(self->document, _("Clearance"));
    ox_document_edit(self->document, &meant, NULL);
    ox_document_end_step(self->document);
  }
  ox_said_box_set_heard(self->said, heard);
  g_free(heard);
}

/* ---- pointing --------------------------------------------------------------------------- */

static void tell_feature(OxWordsPanel *self, ox_feature feature) {
  if (feature == self->pointed) return;
  self->pointed = feature;
  g_signal_emit(self, signals[POINTED], 0, (int)feature);
}

static void point_at(OxWordsPanel *self, int item) {
  if (item < 0) {
    gtk_label_set_text(self->meaning, "");
    tell_feature(self, OX_FEATURE_NONE);
    return;
  }
  const ox_item *words = &self->reading->items[item];
  char *meaning = ox_item_meaning(words);
  gtk_label_set_text(self->meaning, meaning);
  g_free(meaning);
  tell_feature(self, ox_feature_of_item(words->kind));
}

static int item_at_iter(OxWordsPanel *self, const GtkTextIter *iter) {
  if (!self->text) return -1;
  glong length = g_utf8_strlen(self->text, -1), offset = gtk_text_iter_get_offset(iter);
  if (offset > length) return -1;
  const char *at = g_utf8_offset_to_pointer(self->text, offset);
  return ox_clearance_item_at(self->reading, (size_t)(at - self->text));
}

static void point_at_caret(OxWordsPanel *self) {
  GtkTextIter caret;
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->entry);
  gtk_text_buffer_get_iter_at_mark(buffer, &caret, gtk_text_buffer_get_insert(buffer));
  point_at(self, item_at_iter(self, &caret));
}

static void caret_cb(GtkTextBuffer *buffer, GParamSpec *pspec, OxWordsPanel *self) {
  if (gtk_widget_is_focus(GTK_WIDGET(self->entry))) point_at_caret(self);
}

static void hover_cb(GtkEventControllerMotion *motion, double x, double y, OxWordsPanel *self) {
  GtkTextIter iter;
  int buffer_x, buffer_y;
  gtk_text_view_window_to_buffer_coords(self->entry, GTK_TEXT_WINDOW_WIDGET, (int)x, (int)y,
                                        &buffer_x, &buffer_y);
  gboolean over = gtk_text_view_get_iter_at_location(self->entry, &iter, buffer_x, buffer_y);
  point_at(self, over ? item_at_iter(self, &iter) : -1);
}

static void unhover_cb(OxWordsPanel *self) {
  if (gtk_widget_is_focus(GTK_WIDGET(self->entry)))
    point_at_caret(self);
  else
    point_at(self, -1);
}

void ox_words_panel_mark_feature(OxWordsPanel *self, ox_feature feature) {
  GtkTextIter from, to;
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->entry);
  gtk_text_buffer_get_bounds(buffer, &from, &to);
  gtk_text_buffer_remove_tag(buffer, self->marked, &from, &to);
  for (size_t i = 0; i < self->reading->item_count && feature != OX_FEATURE_NONE; i++)
    if (ox_feature_of_item(self->reading->items[i].kind) == feature)
      tag_span(self, self->marked, self->reading->items[i].words);
}

/* ---- the object ------------------------------------------------------------------------- */

static void document_changed_cb(OxDocument *document, guint what, OxWordsPanel *self) {
  if (*self->text != '\0') read_text(self);
}

static void wording_cb(OxWordsPanel *self) {
  ox_said_box_set_wording(self->said, chosen_wording(self));
  if (self->document) read_text(self);
  g_signal_emit(self, signals[WORDED], 0);
}

void ox_words_panel_set_wording(OxWordsPanel *self, ox_wording wording) {
  gtk_drop_down_set_selected(self->wording, wording == OX_WORDING_ICAO ? 1 : 0);
}

ox_wording ox_words_panel_wording(OxWordsPanel *self) { return chosen_wording(self); }

static void dispose(GObject *object) {
  OxWordsPanel *self = OX_WORDS_PANEL(object);
  g_clear_pointer(&self->scroller, gtk_widget_unparent);
  g_clear_object(&self->document);
  G_OBJECT_CLASS(ox_words_panel_parent_class)->dispose(object);
}

static void finalize(GObject *object) {
  OxWordsPanel *self = OX_WORDS_PANEL(object);
  g_free(self->reading);
  g_free(self->text);
  G_OBJECT_CLASS(ox_words_panel_parent_class)->finalize(object);
}

static void ox_words_panel_class_init(OxWordsPanelClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  signals[POINTED] = g_signal_new("pointed", OX_TYPE_WORDS_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  signals[UNDERSTOOD] = g_signal_new("understood", OX_TYPE_WORDS_PANEL, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[WORDED] = g_signal_new("worded", OX_TYPE_WORDS_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
  g_type_ensure(OX_TYPE_SAID_BOX);
  gtk_widget_class_set_template_from_resource(widget_class, OX_RESOURCES "/ox_words_panel.ui");
  gtk_widget_class_bind_template_child(widget_class, OxWordsPanel, scroller);
  gtk_widget_class_bind_template_child(widget_class, OxWordsPanel, entry);
  gtk_widget_class_bind_template_child(widget_class, OxWordsPanel, wording);
  gtk_widget_class_bind_template_child(widget_class, OxWordsPanel, use_button);
  gtk_widget_class_bind_template_child(widget_class, OxWordsPanel, meaning);
  gtk_widget_class_bind_template_child(widget_class, OxWordsPanel, list);
  gtk_widget_class_bind_template_child(widget_class, OxWordsPanel, said);
  gtk_widget_class_set_layout_manager_type(widget_class, OX_TYPE_COLUMN_LAYOUT);
  gtk_widget_class_set_css_name(widget_class, "words");
}

static void name_widget(gpointer widget, const char *name) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void ox_words_panel_init(OxWordsPanel *self) {
  self->reading = g_new0(ox_clearance, 1);
  self->text = g_strdup("");
  gtk_widget_init_template(GTK_WIDGET(self));
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->entry);
  make_tags(self, buffer);
  name_widget(self->entry, _("Clearance"));
  name_widget(self->wording, _("Wording"));
  gtk_widget_set_sensitive(GTK_WIDGET(self->use_button), FALSE);
  g_signal_connect_object(buffer, "changed", G_CALLBACK(read_text), self, G_CONNECT_SWAPPED);
  g_signal_connect_object(buffer, "notify::cursor-position", G_CALLBACK(caret_cb), self, 0);
  g_signal_connect_object(self->use_button, "clicked", G_CALLBACK(use_cb), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(self->wording, "notify::selected", G_CALLBACK(wording_cb), self,
                          G_CONNECT_SWAPPED);
  GtkEventController *motion = gtk_event_controller_motion_new();
  g_signal_connect(motion, "motion", G_CALLBACK(hover_cb), self);
  g_signal_connect_swapped(motion, "leave", G_CALLBACK(unhover_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self->entry), motion);
  GtkEventController *focus = gtk_event_controller_focus_new();
  g_signal_connect_swapped(focus, "enter", G_CALLBACK(point_at_caret), self);
  g_signal_connect_swapped(focus, "leave", G_CALLBACK(unhover_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self->entry), focus);
}

void ox_words_panel_set_document(OxWordsPanel *self, OxDocument *document) {
  g_return_if_fail(OX_IS_WORDS_PANEL(self) && !self->document);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "settled", G_CALLBACK(document_changed_cb), self, 0);
  ox_said_box_set_document(self->said, document);
}

const ox_clearance *ox_words_panel_reading(OxWordsPanel *self) { return self->reading; }

GtkTextView *ox_words_panel_entry(OxWordsPanel *self) { return self->entry; }

GtkWidget *ox_words_panel_use_button(OxWordsPanel *self) { return GTK_WIDGET(self->use_button); }

const char *ox_words_panel_meaning(OxWordsPanel *self) {
  return gtk_label_get_text(self->meaning);
}

guint ox_words_panel_listed(OxWordsPanel *self) { return self->listed; }

const char *ox_words_panel_place(OxWordsPanel *self) { return self->place; }
