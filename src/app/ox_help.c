/* The help window: a list of pages that can be searched, and the page. */
#include "ox_help.h"

#include <string.h>

#include "app_id.h"
#include "oxbow/text.h"

#define PAGES OX_RESOURCES "/help"

typedef struct {
  char *title, *source, *folded;
} help_page;

struct _OxHelp {
  GtkWindow parent_instance;

  /* children */
  GtkWidget *search;
  GtkListBox *list;
  GtkTextView *view;

  GPtrArray *pages; /* of help_page, owned */
  char *wanted;     /* what is looked for, folded; owned */
};

G_DEFINE_FINAL_TYPE(OxHelp, ox_help, GTK_TYPE_WINDOW)

/* ---- pages ------------------------------------------------------------------------------ */

static void page_free(gpointer data) {
  help_page *page = data;
  g_free(page->title);
  g_free(page->source);
  g_free(page->folded);
  g_free(page);
}

static int by_name(const void *a, const void *b) {
  return strcmp(*(const char *const *)a, *(const char *const *)b);
}

/* The names of the pages in a language, in their order: they begin with a number. NULL where there
 * are none. */
static char **names_in(const char *language) {
  char *folder = g_build_path("/", PAGES, language, NULL);
  char **names = g_resources_enumerate_children(folder, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_free(folder);
  if (names) qsort(names, g_strv_length(names), sizeof *names, by_name);
  return names;
}

static void load_pages(OxHelp *self) {
  /* translators: the language of the help pages, which is the name of their folder in data/help;
   * en as long as there are none in yours */
  const char *language = C_("the language of the help pages", "en");
  char **names = names_in(language);
  if (!names) {
    language = "en";
    names = names_in(language);
  }
  for (char **name = names; name && *name; name++) {
    char *path = g_build_path("/", PAGES, language, *name, NULL);
    GBytes *bytes = g_resources_lookup_data(path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
    g_free(path);
    if (!bytes) continue;
    gsize length;
    const char *text = g_bytes_get_data(bytes, &length);
    help_page *page = g_new0(help_page, 1);
    page->source = g_strndup(text, length);
    page->title = g_strndup(page->source, strcspn(page->source, "\n"));
    page->folded = g_utf8_casefold(page->source, -1);
    g_ptr_array_add(self->pages, page);
    g_bytes_unref(bytes);
  }
  g_strfreev(names);
}

/* ---- setting a page --------------------------------------------------------------------- */

static void put(GtkTextBuffer *buffer, const char *text, gssize length, const char *tag,
                const char *more) {
  GtkTextIter end;
  gtk_text_buffer_get_end_iter(buffer, &end);
  char *run = g_strndup(text, length < 0 ? strlen(text) : (gsize)length);
  gtk_text_buffer_insert_with_tags_by_name(buffer, &end, run, -1, tag, more, NULL);
  g_free(run);
}

/* What stands between backquotes is set as a key. */
static void put_runs(GtkTextBuffer *buffer, const char *text, const char *tag) {
  for (gboolean key = FALSE; *text; key = !key) {
    gsize length = strcspn(text, "`");
    if (length > 0) put(buffer, text, (gssize)length, tag, key ? "key" : NULL);
    text += length;
    if (*text) text++;
  }
}

static void put_page(GtkTextBuffer *buffer, const char *source) {
  char **lines = g_strsplit(source, "\n", -1);
  gtk_text_buffer_set_text(buffer, "", -1);
  put(buffer, lines[0], -1, "title", NULL);
  gboolean open = FALSE; /* a paragraph or item that goes on in the next line */
  for (char **line = lines[0] ? lines + 1 : lines; *line; line++) {
    gboolean heading = g_str_has_prefix(*line, "## "), item = g_str_has_prefix(*line, "- ");
    if (**line == '\0') {
      open = FALSE;
      continue;
    }
    if (open && !heading && !item) {
      put(buffer, " ", -1, "text", NULL);
      put_runs(buffer, *line, "text");
      continue;
    }
    put(buffer, "\n", -1, "text", NULL);
    if (heading) {
      put(buffer, *line + 3, -1, "heading", NULL);
    } else if (item) {
      put(buffer, "•\u2002", -1, "item", NULL);
      put_runs(buffer, *line + 2, "item");
    } else {
      put_runs(buffer, *line, "text");
    }
    open = !heading;
  }
  g_strfreev(lines);
}

static void add_tags(GtkTextBuffer *buffer) {
  gtk_text_buffer_create_tag(buffer, "text", "pixels-above-lines", 9, NULL);
  gtk_text_buffer_create_tag(buffer, "item", "pixels-above-lines", 5, "left-margin", 24, "indent",
                             -14, NULL);
  gtk_text_buffer_create_tag(buffer, "heading", "weight", PANGO_WEIGHT_BOLD, "scale", 1.15,
                             "pixels-above-lines", 18, NULL);
  gtk_text_buffer_create_tag(buffer, "title", "weight", PANGO_WEIGHT_BOLD, "scale", 1.5, NULL);
  gtk_text_buffer_create_tag(buffer, "key", "weight", PANGO_WEIGHT_BOLD, NULL);
}

/* ---- the list --------------------------------------------------------------------------- */

static gboolean is_wanted(GtkListBoxRow *row, gpointer data) {
  OxHelp *self = OX_HELP(data);
  help_page *page = g_ptr_array_index(self->pages, (guint)gtk_list_box_row_get_index(row));
  return !self->wanted || !*self->wanted || strstr(page->folded, self->wanted) != NULL;
}

static void fill_list(OxHelp *self) {
  for (guint i = 0; i < self->pages->len; i++) {
    help_page *page = g_ptr_array_index(self->pages, i);
    GtkWidget *label = gtk_label_new(page->title);
    gtk_label_set_xalign(GTK_LABEL(label), 0);
    gtk_label_set_wrap(GTK_LABEL(label), TRUE);
    gtk_label_set_width_chars(GTK_LABEL(label), 8); /* else GTK warns of a width below none */
    gtk_list_box_append(self->list, label);
  }
}

static void selected_cb(GtkListBox *list, GtkListBoxRow *row, OxHelp *self) {
  if (!row) return;
  guint index = (guint)gtk_list_box_row_get_index(row);
  help_page *page = g_ptr_array_index(self->pages, index);
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->view);
  GtkTextIter start;
  put_page(buffer, page->source);
  gtk_text_buffer_get_start_iter(buffer, &start);
  gtk_text_buffer_place_cursor(buffer, &start);
  gtk_text_view_scroll_to_iter(self->view, &start, 0, FALSE, 0, 0);
}

static GtkListBoxRow *first_found(OxHelp *self) {
  for (guint i = 0; i < self->pages->len; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index(self->list, (int)i);
    if (is_wanted(row, self)) return row;
  }
  return NULL;
}

void ox_help_search(OxHelp *self, const char *words) {
  g_free(self->wanted);
  self->wanted = g_utf8_casefold(words, -1);
  gtk_list_box_invalidate_filter(self->list);
  GtkListBoxRow *row = gtk_list_box_get_selected_row(self->list);
  if (row && is_wanted(row, self)) return;
  row = first_found(self);
  if (row) gtk_list_box_select_row(self->list, row);
}

static void searched_cb(GtkSearchEntry *entry, OxHelp *self) {
  ox_help_search(self, gtk_editable_get_text(GTK_EDITABLE(entry)));
}

/* ---- the window ------------------------------------------------------------------------- */

static void finalize(GObject *object) {
  OxHelp *self = OX_HELP(object);
  g_ptr_array_unref(self->pages);
  g_free(self->wanted);
  G_OBJECT_CLASS(ox_help_parent_class)->finalize(object);
}

static void ox_help_class_init(OxHelpClass *class) {
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS(class);
  G_OBJECT_CLASS(class)->finalize = finalize;
  gtk_widget_class_add_binding_action(widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action(widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close",
                                      NULL);
}

static GtkWidget *scrolled(GtkWidget *child) {
  GtkWidget *window = gtk_scrolled_window_new();
  gtk_scrolled_window_set_policy(GTK_SCROLLED_WINDOW(window), GTK_POLICY_NEVER,
                                 GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child(GTK_SCROLLED_WINDOW(window), child);
  gtk_widget_set_vexpand(window, TRUE);
  return window;
}

static void set_label(GtkWidget *widget, const char *label) {
  gtk_accessible_update_property(GTK_ACCESSIBLE(widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static GtkWidget *contents_new(OxHelp *self) {
  GtkWidget *side = gtk_box_new(GTK_ORIENTATION_VERTICAL, 6);
  self->search = gtk_search_entry_new();
  set_label(self->search, _("Search the help"));
  g_signal_connect(self->search, "search-changed", G_CALLBACK(searched_cb), self);
  self->list = GTK_LIST_BOX(gtk_list_box_new());
  set_label(GTK_WIDGET(self->list), _("Pages"));
  gtk_list_box_set_selection_mode(self->list, GTK_SELECTION_BROWSE);
  gtk_list_box_set_filter_func(self->list, is_wanted, self, NULL);
  g_signal_connect(self->list, "row-selected", G_CALLBACK(selected_cb), self);
  gtk_widget_add_css_class(side, "help-contents");
  gtk_widget_set_size_request(side, 220, -1);
  gtk_box_append(GTK_BOX(side), self->search);
  gtk_box_append(GTK_BOX(side), scrolled(GTK_WIDGET(self->list)));
  return side;
}

static GtkWidget *page_new(OxHelp *self) {
  self->view = GTK_TEXT_VIEW(gtk_text_view_new());
  gtk_text_view_set_editable(self->view, FALSE);
  gtk_text_view_set_wrap_mode(self->view, GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_left_margin(self->view, 24);
  gtk_text_view_set_right_margin(self->view, 24);
  gtk_text_view_set_top_margin(self->view, 18);
  gtk_text_view_set_bottom_margin(self->view, 24);
  gtk_widget_set_hexpand(GTK_WIDGET(self->view), TRUE);
  set_label(GTK_WIDGET(self->view), _("Page"));
  add_tags(gtk_text_view_get_buffer(self->view));
  return scrolled(GTK_WIDGET(self->view));
}

static void ox_help_init(OxHelp *self) {
  self->pages = g_ptr_array_new_with_free_func(page_free);
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *contents = contents_new(self);
  gtk_box_append(GTK_BOX(box), contents);
  gtk_box_append(GTK_BOX(box), gtk_separator_new(GTK_ORIENTATION_VERTICAL));
  gtk_box_append(GTK_BOX(box), page_new(self));
  gtk_window_set_child(GTK_WINDOW(self), box);
  char *title = g_strdup_printf(_("%s Help"), OX_APP_NAME);
  gtk_window_set_title(GTK_WINDOW(self), title);
  g_free(title);
  gtk_window_set_default_size(GTK_WINDOW(self), 820, 560);
  load_pages(self);
  fill_list(self);
  ox_help_show(self, 0);
  gtk_window_set_focus(GTK_WINDOW(self), GTK_WIDGET(self->list));
}

GtkWidget *ox_help_new(GtkApplication *application) {
  return g_object_new(OX_TYPE_HELP, "application", application, NULL);
}

guint ox_help_page_count(OxHelp *self) { return self->pages->len; }

const char *ox_help_title(OxHelp *self, guint page) {
  return ((help_page *)g_ptr_array_index(self->pages, page))->title;
}

const char *ox_help_source(OxHelp *self, guint page) {
  return ((help_page *)g_ptr_array_index(self->pages, page))->source;
}

void ox_help_show(OxHelp *self, guint page) {
  GtkListBoxRow *row = gtk_list_box_get_row_at_index(self->list, (int)page);
  if (row) gtk_list_box_select_row(self->list, row);
}

guint ox_help_found(OxHelp *self) {
  guint found = 0;
  for (guint i = 0; i < self->pages->len; i++)
    if (is_wanted(gtk_list_box_get_row_at_index(self->list, (int)i), self)) found++;
  return found;
}

char *ox_help_text(OxHelp *self) {
  GtkTextBuffer *buffer = gtk_text_view_get_buffer(self->view);
  GtkTextIter start, end;
  gtk_text_buffer_get_bounds(buffer, &start, &end);
  return gtk_text_buffer_get_text(buffer, &start, &end, FALSE);
}
