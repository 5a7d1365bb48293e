/* The window of published holds. */
#include "ox_published.h"

#include "ox_dialogs.h"
#include "ox_message_bar.h"
#include "ox_published_list.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

#define REMEMBERED "published-holds"
#define TEXT_BYTES 80

struct _OxPublished {
  GtkWindow parent_instance;

  /* children */
  GtkBox *messages;
  GtkStack *stack; /* "list", or "empty" with what can be done */
  GtkWidget *search, *view;
  GtkLabel *empty, *words;

  /* owned */
  OxPublishedList *list;
  GtkSingleSelection *selection;
  OxSettings *settings;
  ox_navdata *data;
  char *path;
  GtkNativeDialog *chooser;
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE(OxPublished, ox_published, GTK_TYPE_WINDOW)

/* ---- words ------------------------------------------------------------------------------ */

/* What was left out and why: the kinds that a file always has besides are no news. */
static void append_skipped(GString *text, const ox_navdata_report *report) {
  for (int i = 0; i < OX_SKIP_COUNT; i++)
    if (report->skipped[i] > 0) {
      if (text->len > 0) g_string_append(text, "; ");
      g_string_append_printf(text, _("%zu %s (first at line %zu)"), report->skipped[i],
                             ox_skip_text((ox_skip)i), report->first_line[i]);
    }
}

static void show_words(OxPublished *self) {
  guint shown = g_list_model_get_n_items(G_LIST_MODEL(self->list));
  gboolean empty = shown == 0;
  gtk_stack_set_visible_child_name(self->stack, empty ? "empty" : "list");
  if (!self->data) {
    gtk_label_set_text(self->empty, _("No file is open.\nOpen a file of navigation records in the "
                                      "layout of ARINC 424 (132 columns), or drop one here."));
    gtk_label_set_text(self->words, "");
    return;
  }
  const ox_navdata_report *report = ox_navdata_report_of(self->data);
  GString *left_out = g_string_new(NULL);
  append_skipped(left_out, report);
  char *name = g_filename_display_basename(self->path);
  char *text = g_strdup_printf(_("%u of %zu holds in %s. "), shown, report->holds, name);
  char *rest = left_out->len > 0 ? g_strdup_printf(_("Left out: %s."), left_out->str) : NULL;
  char *all = g_strconcat(text, rest, NULL);
  gtk_label_set_text(self->words, all);
  if (empty)
    gtk_label_set_text(self->empty, report->holds == 0
                                        ? _("There is no hold in this file. The line below says "
                                            "what was found in it.")
                                        : _("No hold has a fix, airport, procedure or transition "
                                            "that begins so."));
  g_free(all);
  g_free(rest);
  g_free(text);
  g_free(name);
  g_string_free(left_out, TRUE);
}

void ox_published_say(OxPublished *self, const char *sentence) {
  if (*sentence)
    ox_message_bar_show(self->messages, "published", GTK_MESSAGE_WARNING, sentence, NULL, NULL);
  else
    ox_message_bar_hide(self->messages, "published");
}

/* ---- the file --------------------------------------------------------------------------- */

static void remember(OxPublished *self) {
  char *absolute = g_canonicalize_filename(self->path, NULL);
  char *uri = g_filename_to_uri(absolute, NULL, NULL);
  if (uri && self->settings) ox_settings_set_text(self->settings, REMEMBERED, uri);
  g_free(uri);
  g_free(absolute);
}

gboolean ox_published_open(OxPublished *self, const char *path) {
  ox_navdata *data = NULL;
  char why[OX_REMARK_BYTES];
  if (ox_navdata_open(path, &data, why, sizeof why) == OX_ERROR) {
    char *name = g_filename_display_basename(path);
    char *sentence = g_strdup_printf(_("%s could not be opened: %s"), name, why);
    ox_published_say(self, sentence);
    g_free(sentence);
    g_free(name);
    return FALSE;
  }
  char *copy = g_strdup(path);
  g_free(self->path);
  self->path = copy;
  ox_published_list_set_data(self->list, data);
  ox_navdata_close(self->data);
  self->data = data;
  ox_published_say(self, "");
  remember(self);
  show_words(self);
  return TRUE;
}

void ox_published_open_remembered(OxPublished *self) {
  if (self->data || !self->settings) return;
  char *uri = ox_settings_text(self->settings, REMEMBERED);
  char *path = uri ? g_filename_from_uri(uri, NULL, NULL) : NULL;
  /* One that has gone is no fault. */
  if (path && g_file_test(path, G_FILE_TEST_IS_REGULAR)) ox_published_open(self, path);
  g_free(path);
  g_free(uri);
}

const ox_navdata *ox_published_data(OxPublished *self) { return self->data; }

static void chooser_cb(GtkNativeDialog *chooser, int response, OxPublished *self) {
  gboolean added;
  if (response == GTK_RESPONSE_ACCEPT) {
    char *path = ox_dialog_chosen_path(chooser, NULL, &added);
    if (path)
      ox_published_open(self, path);
    else
      ox_published_say(self, _("Files are read on this computer's file systems only."));
    g_free(path);
  }
  g_clear_object(&self->chooser);
}

static void open_cb(OxPublished *self) {
  if (self->chooser) return;
  self->chooser = ox_dialog_open_records(GTK_WINDOW(self), self->path);
  g_signal_connect_object(self->chooser, "response", G_CALLBACK(chooser_cb), self, 0);
}

static gboolean drop_cb(GtkDropTarget *target, const GValue *value, double x, double y,
                        OxPublished *self) {
  GSList *files = gdk_file_list_get_files(g_value_get_boxed(value));
  char *path = files ? g_file_get_path(files->data) : NULL;
  gboolean taken = path && ox_published_open(self, path);
  g_free(path);
  return taken;
}

/* ---- searching and choosing ------------------------------------------------------------- */

static void search_cb(GtkSearchEntry *entry, OxPublished *self) {
  ox_published_list_search(self->list, gtk_editable_get_text(GTK_EDITABLE(entry)));
  show_words(self);
}

static void choose(OxPublished *self, guint position) {
  OxPublishedRow *row = g_list_model_get_item(G_LIST_MODEL(self->list), position);
  if (!row) return;
  g_signal_emit(self, chosen_signal, 0, (gsize)ox_published_row_index(row));
  g_object_unref(row);
}

static void activate_cb(GtkColumnView *view, guint position, OxPublished *self) {
  choose(self, position);
}

/* Enter in the search takes what is selected: the first one, unless the arrows chose another. */
static void search_activate_cb(GtkSearchEntry *entry, OxPublished *self) {
  search_cb(entry, self); /* the search waits a moment for more typing */
  choose(self, gtk_single_selection_get_selected(self->selection));
}

static void stop_search_cb(GtkSearchEntry *entry, OxPublished *self) {
  if (*gtk_editable_get_text(GTK_EDITABLE(entry)))
    gtk_editable_set_text(GTK_EDITABLE(entry), "");
  else
    gtk_window_close(GTK_WINDOW(self));
}

/* Down leads from the search into the list. */
static gboolean search_key_cb(GtkEventControllerKey *keys, guint key, guint code,
                              GdkModifierType modifiers, OxPublished *self) {
  if (key != GDK_KEY_Down && key != GDK_KEY_KP_Down) return FALSE;
  return gtk_widget_grab_focus(self->view);
}

static gboolean window_key_cb(GtkEventControllerKey *keys, guint key, guint code,
                              GdkModifierType modifiers, OxPublished *self) {
  gboolean control = (modifiers & GDK_CONTROL_MASK) != 0;
  if (key == GDK_KEY_Escape || (control && key == GDK_KEY_w))
    gtk_window_close(GTK_WINDOW(self));
  else if (control && key == GDK_KEY_f)
    gtk_widget_grab_focus(self->search);
  else if (control && key == GDK_KEY_o)
    open_cb(self);
  else
    return FALSE;
  return TRUE;
}

void ox_published_present(OxPublished *self) {
  gtk_window_present(GTK_WINDOW(self));
  gtk_widget_grab_focus(self->search);
  gtk_editable_select_region(GTK_EDITABLE(self->search), 0, -1);
}

/* ---- the columns ------------------------------------------------------------------------ */

static void setup_cb(GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column) {
  GtkWidget *label = gtk_label_new(NULL);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  gtk_widget_add_css_class(label, "figures");
  gtk_list_item_set_child(item, label);
}

static void bind_cb(GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column) {
  char text[TEXT_BYTES];
  ox_published_row_text(gtk_list_item_get_item(item), (ox_published_column)GPOINTER_TO_INT(column),
                        text, sizeof text);
  gtk_label_set_text(GTK_LABEL(gtk_list_item_get_child(item)), text);
}

static GtkWidget *view_new(OxPublished *self) {
  GtkWidget *view = gtk_column_view_new(g_object_ref(GTK_SELECTION_MODEL(self->selection)));
  for (int i = 0; i < OX_PUBLISHED_COLUMNS; i++) {
    GtkListItemFactory *factory = gtk_signal_list_item_factory_new();
    g_signal_connect(factory, "setup", G_CALLBACK(setup_cb), GINT_TO_POINTER(i));
    g_signal_connect(factory, "bind", G_CALLBACK(bind_cb), GINT_TO_POINTER(i));
    GtkColumnViewColumn *column = gtk_column_view_column_new(
        ox_published_column_title((ox_published_column)i), factory);
    gtk_column_view_column_set_resizable(column, TRUE);
    gtk_column_view_column_set_expand(column, i == OX_PUBLISHED_ALTITUDE);
    gtk_column_view_append_column(GTK_COLUMN_VIEW(view), column);
    g_object_unref(column);
  }
  gtk_column_view_set_show_row_separators(GTK_COLUMN_VIEW(view), TRUE);
  gtk_accessible_update_property(GTK_ACCESSIBLE(view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Published holds"), -1);
  g_signal_connect_object(view, "activate", G_CALLBACK(activate_cb), self, 0);
  return view;
}

/* ---- the window ------------------------------------------------------------------------- */

static GtkLabel *label_new(const char *class) {
  GtkWidget *label = gtk_label_new(NULL);
  gtk_label_set_wrap(GTK_LABEL(label), TRUE);
  gtk_widget_add_css_class(label, class);
  return GTK_LABEL(label);
}

static void build_header(OxPublished *self) {
  GtkWidget *header = gtk_header_bar_new(), *open = gtk_button_new_with_mnemonic(_("_Open File…"));
  gtk_widget_set_tooltip_text(open, _("Open a File of Navigation Records"));
  g_signal_connect_object(open, "clicked", G_CALLBACK(open_cb), self, G_CONNECT_SWAPPED);
  gtk_header_bar_pack_start(GTK_HEADER_BAR(header), open);
  gtk_window_set_titlebar(GTK_WINDOW(self), header);
}

static void build_search(OxPublished *self, GtkBox *box) {
  GtkEventController *keys = gtk_event_controller_key_new();
  self->search = gtk_search_entry_new();
  g_object_set(self->search, "placeholder-text", _("Fix, airport or procedure"), NULL);
  gtk_accessible_update_property(GTK_ACCESSIBLE(self->search), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                 _("Search by fix, airport or procedure"), -1);
  gtk_widget_add_css_class(self->search, "published-search");
  g_signal_connect_object(self->search, "search-changed", G_CALLBACK(search_cb), self, 0);
  g_signal_connect_object(self->search, "activate", G_CALLBACK(search_activate_cb), self, 0);
  g_signal_connect_object(self->search, "stop-search", G_CALLBACK(stop_search_cb), self, 0);
  g_signal_connect_object(keys, "key-pressed", G_CALLBACK(search_key_cb), self, 0);
  gtk_event_controller_set_propagation_phase(keys, GTK_PHASE_CAPTURE);
  gtk_widget_add_controller(self->search, keys);
  gtk_box_append(box, self->search);
}

static void build(OxPublished *self) {
  GtkBox *box = GTK_BOX(gtk_box_new(GTK_ORIENTATION_VERTICAL, 0));
  GtkWidget *scroller = gtk_scrolled_window_new();
  GtkLabel *caution = label_new("caution");
  self->messages = GTK_BOX(gtk_box_new(GTK_ORIENTATION_VERTICAL, 0));
  self->stack = GTK_STACK(gtk_stack_new());
  self->empty = label_new("published-empty");
  self->words = label_new("published-words");
  self->view = view_new(self);
  gtk_label_set_justify(self->empty, GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars(self->empty, 56);
  gtk_label_set_xalign(self->words, 0);
  gtk_label_set_text(caution, ox_words_caution_line());
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(scroller), self->view);
  gtk_stack_add_named(self->stack, scroller, "list");
  gtk_stack_add_named(self->stack, GTK_WIDGET(self->empty), "empty");
  gtk_widget_set_vexpand(GTK_WIDGET(self->stack), TRUE);
  build_search(self, box);
  gtk_box_append(box, GTK_WIDGET(self->messages));
  gtk_box_append(box, GTK_WIDGET(self->stack));
  gtk_box_append(box, gtk_separator_new(GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append(box, GTK_WIDGET(self->words));
  gtk_box_append(box, GTK_WIDGET(caution));
  gtk_window_set_child(GTK_WINDOW(self), GTK_WIDGET(box));
}

static void dispose(GObject *object) {
  OxPublished *self = OX_PUBLISHED(object);
  if (self->chooser) gtk_native_dialog_destroy(self->chooser);
  g_clear_object(&self->chooser);
  if (self->list) ox_published_list_set_data(self->list, NULL);
  G_OBJECT_CLASS(ox_published_parent_class)->dispose(object);
  g_clear_object(&self->selection);
  g_clear_object(&self->list);
  g_clear_object(&self->settings);
}

static void finalize(GObject *object) {
  OxPublished *self = OX_PUBLISHED(object);
  ox_navdata_close(self->data);
  g_free(self->path);
  G_OBJECT_CLASS(ox_published_parent_class)->finalize(object);
}

static void ox_published_class_init(OxPublishedClass *class) {
  G_OBJECT_CLASS(class)->dispose = dispose;
  G_OBJECT_CLASS(class)->finalize = finalize;
  chosen_signal = g_signal_new("chosen", OX_TYPE_PUBLISHED, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 1, G_TYPE_ULONG);
}

static void ox_published_init(OxPublished *self) {
  GtkEventController *keys = gtk_event_controller_key_new();
  GtkDropTarget *target = gtk_drop_target_new(GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  self->list = ox_published_list_new();
  self->selection = gtk_single_selection_new(g_object_ref(G_LIST_MODEL(self->list)));
  gtk_window_set_title(GTK_WINDOW(self), _("Published Holds"));
  gtk_window_set_default_size(GTK_WINDOW(self), 860, 480);
  gtk_window_set_hide_on_close(GTK_WINDOW(self), TRUE);
  build_header(self);
  build(self);
  g_signal_connect_object(keys, "key-pressed", G_CALLBACK(window_key_cb), self, 0);
  gtk_widget_add_controller(GTK_WIDGET(self), keys);
  g_signal_connect_object(target, "drop", G_CALLBACK(drop_cb), self, 0);
  gtk_widget_add_controller(GTK_WIDGET(self), GTK_EVENT_CONTROLLER(target));
  show_words(self);
}

OxPublished *ox_published_new(GtkWindow *parent, OxSettings *settings) {
  OxPublished *self = g_object_new(OX_TYPE_PUBLISHED, "transient-for", parent,
                                   "destroy-with-parent", TRUE, NULL);
  if (settings) self->settings = g_object_ref(settings);
  return self;
}

/* ---- for tests -------------------------------------------------------------------------- */

GtkEditable *ox_published_search(OxPublished *self) { return GTK_EDITABLE(self->search); }

GListModel *ox_published_rows(OxPublished *self) { return G_LIST_MODEL(self->list); }

GtkWidget *ox_published_view(OxPublished *self) { return self->view; }

const char *ox_published_words(OxPublished *self) { return gtk_label_get_text(self->words); }

const char *ox_published_sentence(OxPublished *self) {
  GtkWidget *bar = ox_message_bar_find(self->messages, "published");
  return bar ? ox_message_bar_text(bar) : "";
}
