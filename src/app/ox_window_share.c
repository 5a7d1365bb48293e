/* Pictures out of the window: into the clipboard, into files, onto paper. */
#include "ox_window_private.h"

#include "ox_copy_picture.h"
#include "ox_dialogs.h"
#include "ox_export_dialog.h"
#include "ox_moving_job.h"
#include "ox_preference.h"
#include "ox_print.h"
#include "oxbow/text.h"

#define FOLDER_KEY "export-folder"

static const gboolean *wanted(OxWindow *self) {
  const GArray *all = self->handout_wanted;
  gboolean fits = all && all->len == ox_document_case_count(self->document);
  return fits ? (const gboolean *)(const void *)all->data : NULL;
}

static void commit(OxWindow *self) {
  ox_inputs_panel_commit(self->inputs);
  ox_cases_panel_commit(self->cases);
}

/* What the window shows, until the next change; shown has room for the scene it points to. */
static ox_export_job make_job(OxWindow *self, ox_scene *shown) {
  *shown = ox_board_scene(self->board);
  return (ox_export_job){.lesson = ox_document_lesson(self->document),
                         .index = ox_document_case_index(self->document),
                         .shown = shown,
                         .wanted = wanted(self),
                         .t_s = ox_player_time_s(self->player)};
}

ox_export_job ox_window_share_job(OxWindow *self, ox_scene *shown) {
  commit(self);
  return make_job(self, shown);
}

/* ---- the clipboard ---------------------------------------------------------------------- */

static void copy_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  ox_scene shown;
  char *error = NULL;
  commit(self);
  ox_export_job job = make_job(self, &shown);
  ox_palette_id palette = ox_preference_palette(self->settings);
  GdkContentProvider *content = ox_copy_picture(&job, palette, &error);
  if (content) {
    gdk_clipboard_set_content(gtk_widget_get_clipboard(GTK_WIDGET(self)), content);
    g_object_unref(content);
  } else {
    ox_dialog_error(GTK_WINDOW(self), _("The picture could not be copied"), error);
  }
  g_free(error);
}

/* ---- files ------------------------------------------------------------------------------ */

static void moving_done_cb(OxMovingJob *job, const char *error, OxWindow *self) {
  gboolean stopped = ox_moving_job_stopped(job);
  if (error && !stopped)
    ox_dialog_error(GTK_WINDOW(self), _("The moving picture could not be written"), error);
  self->moving = NULL;
  gtk_box_remove(self->above_board, GTK_WIDGET(job));
}

/* One at a time. Refused at once, or drawn from here on. */
static gboolean start_moving(OxWindow *self, const ox_export_job *job,
                             const ox_share_choice *choice, const char *path) {
  char *why = self->moving ? g_strdup(_("Another moving picture is being drawn."))
                           : ox_export_refusal(job, choice->what);
  if (why) {
    ox_dialog_error(GTK_WINDOW(self), _("The moving picture could not be written"), why);
    g_free(why);
    return FALSE;
  }
  ox_snapshot *snapshot = ox_document_snapshot(self->document);
  self->moving = ox_moving_job_new(snapshot, job->index, job->shown, choice, path);
  ox_snapshot_unref(snapshot);
  g_signal_connect_object(self->moving, "done", G_CALLBACK(moving_done_cb), self, 0);
  gtk_box_append(self->above_board, self->moving);
  return TRUE;
}

gboolean ox_window_export_choice(OxWindow *self, const ox_share_choice *choice, const char *path) {
  ox_scene shown;
  char *error = NULL;
  commit(self);
  ox_export_job job = make_job(self, &shown);
  if (choice->what == OX_SHARE_MOVING) return start_moving(self, &job, choice, path);
  ox_status status = ox_export_file(&job, choice, path, &error);
  if (status == OX_ERROR) {
    gboolean track = choice->what == OX_SHARE_TRACK, handout = ox_share_is_handout(choice->what);
    ox_dialog_error(GTK_WINDOW(self),
                    track     ? _("The track could not be written")
                    : handout ? _("The handout could not be written")
                              : _("The picture could not be written"),
                    error);
  }
  g_free(error);
  return status != OX_ERROR;
}

gboolean ox_window_export_path(OxWindow *self, const char *path) {
  ox_share_choice choice = ox_share_choice_default();
  if (!ox_share_format_of(path, &choice.format)) {
    ox_dialog_error(GTK_WINDOW(self), _("The picture could not be written"),
                    _("The name of a picture ends in .png, .svg or .pdf."));
    return FALSE;
  }
  if (choice.format == OX_SHARE_PDF) choice.what = OX_SHARE_CASES;
  return ox_window_export_choice(self, &choice, path);
}

/* ---- the dialog and the chooser --------------------------------------------------------- */

static ox_share_choice recall(OxWindow *self) {
  return ox_share_choice_recall(self->settings);
}

static void remember_folder(OxWindow *self, const char *path) {
  char *folder = g_path_get_dirname(path);
  char *uri = g_filename_to_uri(folder, NULL, NULL); /* a path is bytes, a setting is UTF-8 */
  if (uri) ox_settings_set_text(self->settings, FOLDER_KEY, uri);
  g_free(uri);
  g_free(folder);
}

static void export_to(OxWindow *self, const char *path) {
  ox_share_choice choice = recall(self);
  remember_folder(self, path);
  ox_window_export_choice(self, &choice, path);
}

static void replace_cb(GtkDialog *dialog, int response, OxWindow *self) {
  char *path = g_steal_pointer(&self->pending_path);
  ox_dialog_close(GTK_WIDGET(dialog));
  if (response == GTK_RESPONSE_ACCEPT) export_to(self, path);
  g_free(path);
}

static void file_chosen_cb(GtkNativeDialog *chooser, int response, OxWindow *self) {
  gboolean added;
  ox_share_choice choice = recall(self);
  char *path = ox_window_take_answer(self, response, ox_share_ending(choice.format), &added);
  if (path && !ox_window_must_ask(self, path, added, G_CALLBACK(replace_cb)))
    export_to(self, path);
  g_free(path);
}

static void remember_wanted(OxWindow *self, const gboolean *of_each) {
  g_clear_pointer(&self->handout_wanted, g_array_unref);
  self->handout_wanted = g_array_new(FALSE, FALSE, sizeof *of_each);
  g_array_append_vals(self->handout_wanted, of_each,
                      (guint)ox_document_case_count(self->document));
}

static char *file_title(const ox_share_choice *choice, const char *name) {
  if (choice->what == OX_SHARE_WORKSHEET)
    return g_strdup_printf(C_("name of a file", "%s worksheet"), name);
  if (choice->what == OX_SHARE_KEY)
    return g_strdup_printf(C_("name of a file", "%s answer key"), name);
  return g_strdup(name);
}

static void options_chosen_cb(OxExportDialog *dialog, OxWindow *self) {
  ox_share_choice choice = ox_export_dialog_choice(dialog);
  ox_share_choice_remember(&choice, self->settings);
  if (self->chooser) return;
  remember_wanted(self, ox_export_dialog_wanted(dialog));
  char *folder = ox_settings_text(self->settings, FOLDER_KEY);
  char *name = ox_prediction_case_name(self->prediction);
  gboolean all = choice.what == OX_SHARE_CASES || ox_share_is_handout(choice.what) || !*name;
  char *title = file_title(&choice, all ? ox_document_title(self->document) : name);
  self->chooser = ox_dialog_export(GTK_WINDOW(self), title,
                                   ox_share_format_name(choice.format),
                                   ox_share_ending(choice.format), folder);
  g_signal_connect_object(self->chooser, "response", G_CALLBACK(file_chosen_cb), self, 0);
  g_free(title);
  g_free(name);
  g_free(folder);
}

/* A handout begins where the last one ended. */
static void export_begin(OxWindow *self, gboolean handout) {
  if (self->chooser) return;
  ox_scene shown;
  char *refusals[OX_SHARE_WHAT_COUNT];
  commit(self);
  ox_export_job job = make_job(self, &shown);
  ox_export_facts facts = {.lesson = ox_document_snapshot(self->document)};
  facts.flight_s = ox_flight_end_s(shown.flight) - ox_flight_begin_s(shown.flight);
  for (int i = 0; i < OX_SHARE_WHAT_COUNT; i++)
    facts.refusals[i] = refusals[i] = ox_export_refusal(&job, (ox_share_what)i);
  ox_share_choice choice = recall(self);
  if (handout && !ox_share_is_handout(choice.what)) choice.what = OX_SHARE_WORKSHEET;
  ox_share_choice_settle(&choice);
  GtkWidget *dialog = ox_export_dialog_new(GTK_WINDOW(self), &facts, &choice);
  g_signal_connect_object(dialog, "chosen", G_CALLBACK(options_chosen_cb), self, 0);
  gtk_window_present(GTK_WINDOW(dialog));
  for (int i = 0; i < OX_SHARE_WHAT_COUNT; i++) g_free(refusals[i]);
  ox_snapshot_unref(facts.lesson);
}

void ox_window_export(OxWindow *self) { export_begin(self, FALSE); }

static void export_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  export_begin(OX_WINDOW(data), FALSE);
}

static void handout_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  export_begin(OX_WINDOW(data), TRUE);
}

/* ---- paper ------------------------------------------------------------------------------ */

static void print_done_cb(GtkPrintOperation *operation, GtkPrintOperationResult result,
                          OxWindow *self) {
  GError *fault = NULL;
  if (result == GTK_PRINT_OPERATION_RESULT_APPLY) {
    ox_print_choice choice = ox_print_choice_of(operation);
    ox_print_choice_remember(&choice, self->settings);
    ox_print_paper_remember(gtk_print_operation_get_default_page_setup(operation),
                            self->settings);
  } else if (result == GTK_PRINT_OPERATION_RESULT_ERROR) {
    gtk_print_operation_get_error(operation, &fault);
    ox_dialog_error(GTK_WINDOW(self), _("The lesson could not be printed"),
                    fault ? fault->message : _("The reason is not known."));
    g_clear_error(&fault);
  } else if (ox_print_refusal(operation)) {
    ox_dialog_error(GTK_WINDOW(self), _("The lesson could not be printed"),
                    ox_print_refusal(operation));
  }
  if (self->print == operation) g_clear_object(&self->print);
}

static void print(OxWindow *self, GtkPrintOperationAction action) {
  if (self->print) return; /* its dialog is on screen */
  commit(self);
  ox_print_choice choice = ox_print_choice_recall(self->settings);
  GtkPageSetup *paper = ox_print_paper_recall(self->settings);
  self->print = ox_print_new(self->document, self->board, &choice);
  gtk_print_operation_set_default_page_setup(self->print, paper);
  gtk_print_operation_set_allow_async(self->print, TRUE);
  g_signal_connect_object(self->print, "done", G_CALLBACK(print_done_cb), self, 0);
  g_object_unref(paper);
  g_object_ref(self->print);
  GtkPrintOperation *operation = self->print;
  gtk_print_operation_run(operation, action, GTK_WINDOW(self), NULL); /* "done" tells how it ends */
  g_object_unref(operation);
}

static void print_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  print(OX_WINDOW(data), GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG);
}

/* ---- the menu of the board -------------------------------------------------------------- */

static void show_menu_at(OxWindow *self, double x, double y) {
  graphene_point_t at;
  if (!gtk_widget_compute_point(GTK_WIDGET(self->board), GTK_WIDGET(self->board_overlay),
                                &GRAPHENE_POINT_INIT((float)x, (float)y), &at))
    return;
  gtk_popover_set_pointing_to(GTK_POPOVER(self->board_menu),
                              &(GdkRectangle){(int)at.x, (int)at.y, 1, 1});
  self->menu_at = (ox_vec){x, y};
  ox_window_update_point_here(self);
  gtk_popover_popup(GTK_POPOVER(self->board_menu));
}

static void pressed_cb(GtkGestureClick *gesture, int count, double x, double y, OxWindow *self) {
  gtk_gesture_set_state(GTK_GESTURE(gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  show_menu_at(self, x, y);
}

static void rested_cb(OxWindow *self, double x, double y) { show_menu_at(self, x, y); }

/* The key of the menu has no place of its own: the middle of the board. */
static void board_menu_cb(GSimpleAction *action, GVariant *parameter, gpointer data) {
  OxWindow *self = OX_WINDOW(data);
  show_menu_at(self, gtk_widget_get_width(GTK_WIDGET(self->board)) / 2.0,
               gtk_widget_get_height(GTK_WIDGET(self->board)) / 2.0);
}

static void add_board_menu(OxWindow *self) {
  GMenu *menu = g_menu_new();
  g_menu_append(menu, _("_Copy Picture"), "win.copy-picture");
  g_menu_append(menu, _("_Export…"), "win.export");
  g_menu_append(menu, _("_Print…"), "win.print");
  GMenu *points = g_menu_new();
  g_menu_append(points, _("_Add Point Here"), "win.add-point-here");
  g_menu_append_section(menu, NULL, G_MENU_MODEL(points));
  g_object_unref(points);
  self->board_menu = gtk_popover_menu_new_from_model(G_MENU_MODEL(menu));
  gtk_popover_set_has_arrow(GTK_POPOVER(self->board_menu), FALSE);
  gtk_widget_set_halign(self->board_menu, GTK_ALIGN_START);
  gtk_widget_set_parent(self->board_menu, GTK_WIDGET(self->board_overlay));
  GtkGesture *click = gtk_gesture_click_new();
  gtk_gesture_single_set_button(GTK_GESTURE_SINGLE(click), GDK_BUTTON_SECONDARY);
  g_signal_connect(click, "pressed", G_CALLBACK(pressed_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self->board), GTK_EVENT_CONTROLLER(click));
  GtkGesture *rest = gtk_gesture_long_press_new(); /* a finger has one button only */
  gtk_gesture_single_set_touch_only(GTK_GESTURE_SINGLE(rest), TRUE);
  g_signal_connect_swapped(rest, "pressed", G_CALLBACK(rested_cb), self);
  gtk_widget_add_controller(GTK_WIDGET(self->board), GTK_EVENT_CONTROLLER(rest));
  g_object_unref(menu);
}

/* ---- */

static const GActionEntry entries[] = {
    {.name = "copy-picture", .activate = copy_cb},
    {.name = "export", .activate = export_cb},
    {.name = "handout", .activate = handout_cb},
    {.name = "print", .activate = print_cb},
    {.name = "board-menu", .activate = board_menu_cb},
};

void ox_window_add_share(OxWindow *self) {
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  add_board_menu(self);
}

void ox_window_set_settings(OxWindow *self, OxSettings *settings) {
  g_signal_handlers_disconnect_by_data(self->settings, self);
  g_set_object(&self->settings, settings);
  char *signal = g_strconcat("changed::", ox_preference_key(OX_PREFER_WORDING), NULL);
  g_signal_connect_object(settings, signal, G_CALLBACK(ox_window_update_words), self,
                          G_CONNECT_SWAPPED);
  ox_window_update_words(self);
  g_free(signal);
}

void ox_window_end_share(OxWindow *self) {
  g_clear_pointer(&self->board_menu, gtk_widget_unparent);
  if (self->moving) ox_moving_job_stop(OX_MOVING_JOB(self->moving));
  self->moving = NULL;
  if (self->print) gtk_print_operation_cancel(self->print);
  g_clear_object(&self->print);
  g_clear_object(&self->settings);
  g_clear_pointer(&self->handout_wanted, g_array_unref);
}
