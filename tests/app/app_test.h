/* What the window's tests share: GTK on a display, whose absence fails the test; waiting for
 * frames; a directory of their own. */
#ifndef APP_TEST_H
#define APP_TEST_H

#include <gtk/gtk.h>

#include "ox_test.h"
#include "ox_window.h"

/* Group set-up of display tests: -1 (every test fails) where there is no display. */
int app_test_init(void **state);

/* Runs the main loop for a while, or until *flag is TRUE (at most ms). */
void app_test_spin_ms(guint ms);
gboolean app_test_spin_until(const gboolean *flag, guint ms);
/* Runs the main loop until a condition holds; FALSE when it does not within ms. */
gboolean app_test_wait(gboolean (*holds)(gpointer data), gpointer data, guint ms);

/* Shows a window with the demo lesson at 1024 x 600 and waits until its first frame is drawn. */
OxWindow *app_test_window(GtkApplication *application);
/* Closes it, answering no question, and checks that it is finalised. */
void app_test_close(OxWindow *window);

/* The first widget of a type below a widget, or with this text; NULL. */
GtkWidget *app_test_find(GtkWidget *top, GType type);
GtkWidget *app_test_find_type_name(GtkWidget *top, const char *type_name);
GtkWidget *app_test_find_button(GtkWidget *top, const char *icon_or_label);
/* The first label below a widget with just this text; NULL. */
GtkWidget *app_test_find_label(GtkWidget *top, const char *text);
/* Whether the text is bold at an offset. */
gboolean app_test_is_bold(GtkTextView *view, int offset);
/* The window of a type that is on screen, or NULL. */
GtkWidget *app_test_top(GType type);
/* The dialog on screen, or NULL. */
GtkWidget *app_test_dialog(void);

/* A path in a fresh directory; freed with g_free. app_test_clean, a group tear-down, removes them
 * all. */
char *app_test_path(const char *name);
int app_test_clean(void **state);

#endif
