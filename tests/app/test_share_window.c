/* Pictures out of the window as a user gets them: the clipboard, the dialog of the export, moving
 * pictures, and what is remembered. */
#include "app_test.h"

#include "ox_dialogs.h"
#include "ox_export_dialog.h"
#include "ox_moving_job.h"
#include "ox_number_field.h"
#include "oxbow/words.h"

static void act(OxWindow *window, const char *action) {
  g_action_group_activate_action(G_ACTION_GROUP(window), action, NULL);
  app_test_spin_ms(60);
}

/* ---- the clipboard ---------------------------------------------------------------------- */

typedef struct {
  GdkTexture *texture;
  gboolean done;
} pasted;

static void pasted_cb(GObject *clipboard, GAsyncResult *result, gpointer data) {
  pasted *p = data;
  p->texture = gdk_clipboard_read_texture_finish(GDK_CLIPBOARD(clipboard), result, NULL);
  p->done = TRUE;
}

static void assert_opaque(GdkTexture *texture) {
  size_t width = (size_t)gdk_texture_get_width(texture);
  size_t height = (size_t)gdk_texture_get_height(texture);
  guint32 *pixels = g_new(guint32, width * height);
  gdk_texture_download(texture, (guchar *)pixels, width * sizeof *pixels);
  size_t light = 0;
  for (size_t i = 0; i < width * height; i++) {
    assert_int_equal(pixels[i] >> 24, 255);
    if ((pixels[i] & 0xff) > 200) light++;
  }
  assert_true(light > width * height / 2); /* on light ground whatever the window's theme */
  g_free(pixels);
}

static void the_picture_is_pasted_opaque_on_light_ground(void **state) {
  OxWindow *window = app_test_window(NULL);
  GdkClipboard *clipboard = gtk_widget_get_clipboard(GTK_WIDGET(window));
  pasted p = {0};
  g_object_set(gtk_settings_get_default(), "gtk-application-prefer-dark-theme", TRUE, NULL);
  app_test_spin_ms(100);
  act(window, "copy-picture");
  gdk_clipboard_read_texture_async(clipboard, NULL, pasted_cb, &p);
  assert_true(app_test_spin_until(&p.done, 5000));
  assert_non_null(p.texture);
  assert_int_equal(gdk_texture_get_width(p.texture), 1600);
  assert_int_equal(gdk_texture_get_height(p.texture), 1200);
  assert_opaque(p.texture);
  g_object_unref(p.texture);
  g_object_set(gtk_settings_get_default(), "gtk-application-prefer-dark-theme", FALSE, NULL);
  app_test_close(window);
}

typedef struct {
  GByteArray *bytes;
  char buffer[8192];
  gboolean done;
} read_job;

static void chunk_cb(GObject *stream, GAsyncResult *result, gpointer data) {
  read_job *job = data;
  gssize length = g_input_stream_read_finish(G_INPUT_STREAM(stream), result, NULL);
  if (length > 0) {
    g_byte_array_append(job->bytes, (const guint8 *)job->buffer, (guint)length);
    g_input_stream_read_async(G_INPUT_STREAM(stream), job->buffer, sizeof job->buffer, 0, NULL,
                              chunk_cb, job);
  } else {
    job->done = TRUE;
  }
}

static void opened_cb(GObject *clipboard, GAsyncResult *result, gpointer data) {
  read_job *job = data;
  GInputStream *stream =
      gdk_clipboard_read_finish(GDK_CLIPBOARD(clipboard), result, NULL, NULL);
  assert_non_null(stream);
  g_input_stream_read_async(stream, job->buffer, sizeof job->buffer, 0, NULL, chunk_cb, job);
  g_object_unref(stream);
}

/* As another program asks for it. */
static GByteArray *paste_as(GdkClipboard *clipboard, const char *type) {
  const char *types[] = {type, NULL};
  read_job job = {.bytes = g_byte_array_new()};
  gdk_clipboard_read_async(clipboard, types, 0, NULL, opened_cb, &job);
  assert_true(app_test_spin_until(&job.done, 10000));
  return job.bytes;
}

static void programs_that_take_drawings_get_one_with_its_words(void **state) {
  OxWindow *window = app_test_window(NULL);
  GdkClipboard *clipboard = gtk_widget_get_clipboard(GTK_WIDGET(window));
  act(window, "copy-picture");
  GByteArray *svg = paste_as(clipboard, "image/svg+xml");
  assert_memory_equal(svg->data, "<?xml", 5);
  assert_non_null(g_strstr_len((const char *)svg->data, svg->len, ox_words_caution_line()));
  g_byte_array_unref(svg);
  GByteArray *png = paste_as(clipboard, "image/png");
  assert_memory_equal(png->data, "\x89PNG", 4);
  assert_memory_equal(png->data + 37, "pHYs", 4); /* with its resolution: ours, not GDK's */
  g_byte_array_unref(png);
  app_test_close(window);
}

/* ---- dragging out ----------------------------------------------------------------------- */

/* The handle in the header bar: a button, so that keys and a screen reader find it too. */
static GtkDragSource *handle_of(OxWindow *window) {
  GtkWidget *button = app_test_find_button(gtk_window_get_titlebar(GTK_WINDOW(window)),
                                           "image-x-generic-symbolic");
  GtkDragSource *found = NULL;
  assert_non_null(button);
  assert_string_equal(gtk_actionable_get_action_name(GTK_ACTIONABLE(button)), "win.copy-picture");
  GListModel *all = gtk_widget_observe_controllers(button);
  for (guint i = 0; i < g_list_model_get_n_items(all); i++) {
    gpointer controller = g_list_model_get_item(all, i);
    if (GTK_IS_DRAG_SOURCE(controller)) found = controller;
    g_object_unref(controller); /* the button keeps it */
  }
  g_object_unref(all);
  assert_non_null(found);
  return found;
}

static GFile *file_of(GdkContentProvider *content) {
  GValue value = G_VALUE_INIT;
  g_value_init(&value, GDK_TYPE_FILE_LIST);
  assert_true(gdk_content_provider_get_value(content, &value, NULL));
  GSList *files = gdk_file_list_get_files(g_value_get_boxed(&value));
  assert_int_equal(g_slist_length(files), 1);
  GFile *file = g_object_ref(files->data);
  g_slist_free(files);
  g_value_unset(&value);
  return file;
}

static void the_picture_is_dragged_out_as_pixels_as_a_drawing_and_as_a_file(void **state) {
  OxWindow *window = app_test_window(NULL);
  GdkContentProvider *content = NULL;
  char *bytes, *name;
  gsize length;
  g_signal_emit_by_name(handle_of(window), "prepare", 4.0, 4.0, &content);
  assert_non_null(content);
  GdkContentFormats *bare = gdk_content_provider_ref_formats(content);
  GdkContentFormats *formats = gdk_content_formats_union_serialize_mime_types(bare);
  assert_true(gdk_content_formats_contain_mime_type(formats, "image/png"));
  assert_true(gdk_content_formats_contain_mime_type(formats, "image/svg+xml"));
  assert_true(gdk_content_formats_contain_mime_type(formats, "text/uri-list"));
  gdk_content_formats_unref(formats);
  GFile *file = file_of(content);
  char *path = g_file_get_path(file);
  name = g_path_get_basename(path);
  char *wanted = ox_dialog_file_name(ox_document_case(ox_window_document(window))->name, ".png");
  assert_string_equal(name, wanted); /* it says which case it shows */
  g_free(wanted);
  assert_true(g_file_get_contents(path, &bytes, &length, NULL));
  assert_memory_equal(bytes, "\x89PNG", 4);
  g_free(bytes);
  g_free(name);
  g_free(path);
  g_object_unref(file);
  g_object_unref(content);
  app_test_close(window);
}

/* ---- the dialog ------------------------------------------------------------------------- */

static OxExportDialog *dialog_of(OxWindow *window) {
  act(window, "export");
  GtkWidget *dialog = app_test_top(OX_TYPE_EXPORT_DIALOG);
  assert_non_null(dialog);
  return OX_EXPORT_DIALOG(dialog);
}

static void select_row(OxExportDialog *dialog, const char *key, guint index) {
  gtk_drop_down_set_selected(GTK_DROP_DOWN(ox_export_dialog_input(dialog, key)), index);
  app_test_spin_ms(20);
}

static void type(OxExportDialog *dialog, const char *key, const char *text) {
  OxNumberField *field = OX_NUMBER_FIELD(ox_export_dialog_input(dialog, key));
  gtk_editable_set_text(GTK_EDITABLE(ox_number_field_get_text(field)), text);
  app_test_spin_ms(20);
}

static gboolean can_choose(OxExportDialog *dialog) {
  return gtk_widget_get_sensitive(ox_export_dialog_input(dialog, "choose"));
}

static gboolean is_shown(OxExportDialog *dialog, const char *key) {
  return gtk_widget_get_mapped(ox_export_dialog_input(dialog, key));
}

static void assert_says(OxExportDialog *dialog, const char *part) {
  const char *sentence = ox_export_dialog_sentence(dialog);
  if (!strstr(sentence, part)) fail_msg("%s", sentence);
}

static void only_what_means_something_is_shown(void **state) {
  static const struct {
    ox_share_what what;
    const char *shown, *hidden;
  } rows[] = {
      {OX_SHARE_PICTURE, "unit width height colours transparent marks", "paper speed fps"},
      {OX_SHARE_CASES, "paper colours marks", "unit width transparent speed fps"},
      {OX_SHARE_MOMENTS, "unit width height colours", "paper transparent marks speed fps"},
      {OX_SHARE_MOVING, "width height colours marks speed fps", "paper transparent"},
      {OX_SHARE_TRACK, "what format", "unit width paper colours transparent marks speed fps"},
      {OX_SHARE_WORKSHEET, "paper", "unit width colours transparent marks speed fps"},
      {OX_SHARE_KEY, "paper", "unit width colours transparent marks speed fps"},
  };
  OxWindow *window = app_test_window(NULL);
  OxExportDialog *dialog = dialog_of(window);
  for (size_t i = 0; i < G_N_ELEMENTS(rows); i++) {
    select_row(dialog, "what", rows[i].what);
    select_row(dialog, "format", 0);
    app_test_spin_ms(100);
    char **shown = g_strsplit(rows[i].shown, " ", -1);
    char **hidden = g_strsplit(rows[i].hidden, " ", -1);
    for (char **key = shown; *key; key++)
      if (!is_shown(dialog, *key)) fail_msg("%zu: %s is not shown", i, *key);
    for (char **key = hidden; *key; key++)
      if (is_shown(dialog, *key)) fail_msg("%zu: %s is shown", i, *key);
    g_strfreev(shown);
    g_strfreev(hidden);
  }
  gtk_window_destroy(GTK_WINDOW(dialog));
  app_test_close(window);
}

static void the_dialog_says_what_it_comes_to_or_why_not(void **state) {
  OxWindow *window = app_test_window(NULL);
  OxExportDialog *dialog = dialog_of(window);
  assert_says(dialog, "1600 × 1200 pixels");
  select_row(dialog, "unit", OX_SHARE_CM_300);
  assert_says(dialog, "1890 × 1417 pixels, 16.0 × 12.0 cm");
  type(dialog, "width", "20");
  assert_says(dialog, "2362 × 1417 pixels"); /* 20 / 2.54 * 300 = 2362.2 */
  type(dialog, "width", "2000"); /* refused: as it was before the typing */
  assert_close(ox_export_dialog_choice(dialog).size[OX_SHARE_SIZE_CM][0], 16, 0, "width");
  gtk_widget_activate(ox_export_dialog_input(dialog, "choose"));
  app_test_spin_ms(500); /* GTK shows the press for a quarter of a second first */
  assert_true(gtk_widget_get_visible(GTK_WIDGET(dialog))); /* not before it is good */
  assert_non_null(ox_number_field_get_message(
      OX_NUMBER_FIELD(ox_export_dialog_input(dialog, "width"))));
  type(dialog, "width", "20");
  select_row(dialog, "what", OX_SHARE_MOVING);
  type(dialog, "speed", "1");
  type(dialog, "fps", "30");
  assert_says(dialog, "more than 6000");
  assert_false(can_choose(dialog));
  type(dialog, "speed", "10");
  assert_says(dialog, "frames that last");
  assert_true(can_choose(dialog));
  select_row(dialog, "what", OX_SHARE_TRACK);
  assert_says(dialog, "no latitude and longitude");
  assert_false(can_choose(dialog));
  gtk_window_destroy(GTK_WINDOW(dialog));
  app_test_close(window);
}

static void every_input_has_a_name_and_a_key_of_its_own(void **state) {
  static const char *const keys[] = {"what", "format", "unit", "paper", "colours"};
  OxWindow *window = app_test_window(NULL);
  OxExportDialog *dialog = dialog_of(window);
  for (size_t i = 0; i < G_N_ELEMENTS(keys); i++) {
    GtkWidget *input = ox_export_dialog_input(dialog, keys[i]);
    assert_true(gtk_test_accessible_has_relation(GTK_ACCESSIBLE(input),
                                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY));
    GList *labels = gtk_widget_list_mnemonic_labels(input);
    assert_int_equal(g_list_length(labels), 1);
    g_list_free(labels);
  }
  gtk_window_destroy(GTK_WINDOW(dialog));
  app_test_close(window);
}

/* What is asked for is chosen once and stays, in this window and in the next. */
static void the_choice_is_remembered_when_the_file_is_chosen(void **state) {
  char *path = app_test_path("window-settings");
  OxSettings *settings = ox_settings_new(path);
  OxWindow *window = app_test_window(NULL);
  ox_window_set_settings(window, settings);
  OxExportDialog *dialog = dialog_of(window);
  select_row(dialog, "what", OX_SHARE_CASES);
  select_row(dialog, "paper", OX_SHARE_LETTER_UPRIGHT);
  gtk_window_destroy(GTK_WINDOW(dialog)); /* cancelled: forgotten */
  dialog = dialog_of(window);
  assert_int_equal(ox_export_dialog_choice(dialog).what, OX_SHARE_PICTURE);
  select_row(dialog, "what", OX_SHARE_CASES);
  select_row(dialog, "paper", OX_SHARE_LETTER_UPRIGHT);
  gtk_widget_activate(ox_export_dialog_input(dialog, "choose"));
  app_test_spin_ms(600); /* the chooser is on screen; the window closes it */
  app_test_close(window);
  g_object_unref(settings);
  settings = ox_settings_new(path);
  assert_int_equal(ox_share_choice_recall(settings).what, OX_SHARE_CASES);
  assert_int_equal(ox_share_choice_recall(settings).paper, OX_SHARE_LETTER_UPRIGHT);
  g_object_unref(settings);
  g_free(path);
}

/* ---- moving pictures -------------------------------------------------------------------- */

static gboolean no_bar(gpointer window) {
  return app_test_find(GTK_WIDGET(ox_window_messages(window)), OX_TYPE_MOVING_JOB) == NULL;
}

static ox_share_choice moving(double side) {
  ox_share_choice choice = ox_share_choice_default();
  choice.what = OX_SHARE_MOVING;
  choice.format = OX_SHARE_APNG;
  choice.speed = 50;
  choice.size[OX_SHARE_SIZE_MOVING][0] = choice.size[OX_SHARE_SIZE_MOVING][1] = side;
  return choice;
}

static void a_moving_picture_is_drawn_while_the_window_goes_on(void **state) {
  OxWindow *window = app_test_window(NULL);
  char *path = app_test_path("moving.apng"), *bytes = NULL;
  ox_share_choice choice = moving(200);
  size_t length;
  ox_overlays_show_area(ox_window_overlays(window), TRUE);
  assert_true(ox_window_export_choice(window, &choice, path));
  assert_false(no_bar(window));
  assert_false(ox_window_export_choice(window, &choice, path)); /* one at a time */
  GtkWidget *complaint = app_test_dialog();
  assert_non_null(complaint);
  gtk_dialog_response(GTK_DIALOG(complaint), GTK_RESPONSE_CLOSE);
  /* another lesson meanwhile is no harm */
  ox_document_set_field(ox_window_document(window), ox_field_by_key("hold.inbound_deg"), 77, NULL);
  assert_true(app_test_wait(no_bar, window, 60000));
  assert_true(g_file_get_contents(path, &bytes, &length, NULL));
  assert_true(length > 200);
  assert_memory_equal(bytes + 37, "acTL", 4); /* right after the head (PNG third edition, 11.3.6) */
  assert_null(app_test_dialog());
  g_free(bytes);
  g_free(path);
  app_test_close(window);
}

static void a_moving_picture_that_is_stopped_leaves_no_file(void **state) {
  OxWindow *window = app_test_window(NULL);
  char *path = app_test_path("stopped.apng");
  ox_share_choice choice = moving(1500);
  choice.speed = 10;
  assert_true(ox_window_export_choice(window, &choice, path));
  GtkWidget *bar = app_test_find(GTK_WIDGET(ox_window_messages(window)), OX_TYPE_MOVING_JOB);
  GtkWidget *stop = app_test_find_button(bar, "_Stop");
  assert_non_null(stop);
  gtk_widget_activate(stop);
  assert_true(app_test_wait(no_bar, window, 60000));
  assert_false(g_file_test(path, G_FILE_TEST_EXISTS));
  assert_null(app_test_dialog());
  g_free(path);
  app_test_close(window);
}

static void a_window_that_closes_stops_what_it_draws(void **state) {
  OxWindow *window = app_test_window(NULL);
  char *path = app_test_path("closed.apng");
  ox_share_choice choice = moving(1500);
  choice.speed = 10;
  assert_true(ox_window_export_choice(window, &choice, path));
  app_test_close(window);
  app_test_spin_ms(1500);
  assert_false(g_file_test(path, G_FILE_TEST_EXISTS));
  g_free(path);
}

static void the_board_has_a_menu_that_keys_reach(void **state) {
  OxWindow *window = app_test_window(NULL);
  act(window, "board-menu");
  app_test_spin_ms(100);
  GtkWidget *overlay = gtk_widget_get_ancestor(GTK_WIDGET(ox_window_board(window)),
                                               GTK_TYPE_OVERLAY);
  GtkWidget *child = gtk_widget_get_first_child(overlay);
  while (child && !GTK_IS_POPOVER_MENU(child)) child = gtk_widget_get_next_sibling(child);
  assert_non_null(child);
  assert_true(gtk_widget_get_mapped(child));
  gtk_popover_popdown(GTK_POPOVER(child));
  app_test_close(window);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_picture_is_pasted_opaque_on_light_ground),
      cmocka_unit_test(programs_that_take_drawings_get_one_with_its_words),
      cmocka_unit_test(the_picture_is_dragged_out_as_pixels_as_a_drawing_and_as_a_file),
      cmocka_unit_test(only_what_means_something_is_shown),
      cmocka_unit_test(the_dialog_says_what_it_comes_to_or_why_not),
      cmocka_unit_test(every_input_has_a_name_and_a_key_of_its_own),
      cmocka_unit_test(the_choice_is_remembered_when_the_file_is_chosen),
      cmocka_unit_test(a_moving_picture_is_drawn_while_the_window_goes_on),
      cmocka_unit_test(a_moving_picture_that_is_stopped_leaves_no_file),
      cmocka_unit_test(a_window_that_closes_stops_what_it_draws),
      cmocka_unit_test(the_board_has_a_menu_that_keys_reach),
  };
  return cmocka_run_group_tests_name("share in the window", tests, app_test_init, app_test_clean);
}
