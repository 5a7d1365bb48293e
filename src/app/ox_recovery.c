/* Work from before a crash, offered. */
#include "ox_recovery.h"

#include "ox_message_bar.h"
#include "oxbow/text.h"

#define BAR "recovery"

struct ox_recovery {
  GtkApplication *application; /* borrowed: it owns this */
  GPtrArray *found;            /* the next one comes last */
};

ox_recovery *ox_recovery_new(GtkApplication *application, const char *directory) {
  ox_recovery *self = g_new0(ox_recovery, 1);
  char *standard = directory ? NULL : ox_kept_directory();
  self->application = application;
  self->found = ox_kept_find(directory ? directory : standard);
  g_free(standard);
  return self;
}

void ox_recovery_free(ox_recovery *self) {
  if (!self) return;
  g_ptr_array_unref(self->found); /* leaves what was not answered */
  g_free(self);
}

/* Into the window that shows the file it comes from, or where it was offered, when nothing is lost
 * there; else into a new one. */
static void restore(ox_recovery *self, OxWindow *window, ox_kept *kept) {
  OxWindow *same = ox_window_find(self->application, kept->path, NULL);
  if (same && !ox_document_modified(ox_window_document(same))) {
    window = same;
  } else if (!ox_window_is_pristine(window)) {
    window = ox_window_new(self->application);
    gtk_window_present(GTK_WINDOW(window));
  }
  ox_window_restore(window, kept);
}

typedef struct {
  ox_recovery *recovery;
  OxWindow *window;
} offer;

static void offer_free(gpointer data, GClosure *closure) { g_free(data); }

static void response_cb(GtkInfoBar *bar, int response, offer *o) {
  ox_recovery *self = o->recovery;
  OxWindow *window = o->window;
  if (self->found->len == 0 || response == GTK_RESPONSE_CLOSE) return;
  ox_kept *kept = g_ptr_array_steal_index(self->found, 0);
  if (response == GTK_RESPONSE_ACCEPT)
    restore(self, window, kept);
  else
    ox_kept_discard(kept);
  ox_recovery_offer(self, window);
}

static char *sentence(const ox_kept *kept, guint more) {
  GDateTime *at = g_date_time_new_from_unix_local(kept->at_s);
  char *when = at ? g_date_time_format(at, _("%-e %B %Y, %H:%M")) : g_strdup(_("an unknown time"));
  GString *text = g_string_new(NULL);
  g_string_printf(text, _("Unsaved changes of “%s” from %s were found."), kept->title, when);
  if (more > 0) g_string_append_printf(text, _(" %u more after that."), more);
  g_free(when);
  if (at) g_date_time_unref(at);
  return g_string_free(text, FALSE);
}

void ox_recovery_offer(ox_recovery *self, OxWindow *window) {
  if (self->found->len == 0) return;
  char *text = sentence(g_ptr_array_index(self->found, 0), self->found->len - 1);
  GtkWidget *bar = ox_message_bar_show(ox_window_messages(window), BAR, GTK_MESSAGE_QUESTION, text,
                                       _("_Restore"), _("_Discard"));
  offer *o = g_new(offer, 1);
  *o = (offer){self, window};
  g_signal_connect_data(bar, "response", G_CALLBACK(response_cb), o, offer_free, 0);
  g_free(text);
}
