/* The window: one lesson, its board, inputs, transport bar and working. */
#ifndef OX_WINDOW_H
#define OX_WINDOW_H

#include <gtk/gtk.h>

#include "ox_answer_panel.h"
#include "ox_board.h"
#include "ox_case_bar.h"
#include "ox_cases_panel.h"
#include "ox_document.h"
#include "ox_inputs_panel.h"
#include "ox_kept.h"
#include "ox_overlays.h"
#include "ox_places_panel.h"
#include "ox_moments_strip.h"
#include "ox_pen.h"
#include "ox_player.h"
#include "ox_prediction.h"
#include "ox_check_panel.h"
#include "ox_fuel_bar.h"
#include "ox_highlight.h"
#include "ox_settings.h"
#include "ox_share_choice.h"
#include "ox_time_panel.h"
#include "ox_published.h"
#include "ox_transport.h"
#include "ox_words_panel.h"
#include "ox_working_panel.h"

G_BEGIN_DECLS

#define OX_TYPE_WINDOW (ox_window_get_type())
G_DECLARE_FINAL_TYPE(OxWindow, ox_window, OX, WINDOW, GtkApplicationWindow)

/* Opens with the demo lesson. */
OxWindow *ox_window_new(GtkApplication *application);

/* Opens a file; faults are shown in a dialog and the open lesson stays. A file that another window
 * shows is shown there. */
gboolean ox_window_open_path(OxWindow *self, const char *path);
/* The window of an application that shows a file, other than `but` (NULL: none); or NULL. */
OxWindow *ox_window_find(GtkApplication *application, const char *path, OxWindow *but);
/* Shows what was kept before a crash, as unsaved changes. Takes it; where it cannot be read, a
 * dialog says so, the open lesson stays and so do the files. */
gboolean ox_window_restore(OxWindow *self, ox_kept *kept);
/* Writes the lesson elsewhere; it stays with its own file. */
gboolean ox_window_save_copy_path(OxWindow *self, const char *path);
/* Saves; FALSE when the file could not be written, which a dialog explains. */
gboolean ox_window_save_path(OxWindow *self, const char *path);
/* Writes the picture, or all cases into a PDF; the format goes by the file's ending, and all else
 * is as usual. FALSE as above. */
gboolean ox_window_export_path(OxWindow *self, const char *path);
/* Writes what a choice says. A moving picture is only begun: a bar above the board shows how far it
 * is. FALSE as above. */
gboolean ox_window_export_choice(OxWindow *self, const ox_share_choice *choice, const char *path);
/* Where the choices of exporting and printing are remembered; before, the window's own, which
 * nobody keeps. */
void ox_window_set_settings(OxWindow *self, OxSettings *settings);

/* Whether the window shows a lesson that was neither opened from a file nor changed: another may
 * take its place. */
gboolean ox_window_is_pristine(OxWindow *self);
/* Asks what becomes of unsaved changes; when they are dealt with, the window closes and the
 * application is asked to quit again. */
void ox_window_ask_and_quit(OxWindow *self);
void ox_window_set_projector(OxWindow *self, gboolean projector);
/* The type of the pictures' labels (px); 0: by the boards' sizes. */
void ox_window_set_label_size(OxWindow *self, double px);

/* The parts, borrowed. */
OxDocument *ox_window_document(OxWindow *self);
OxPlayer *ox_window_player(OxWindow *self);
OxBoard *ox_window_board(OxWindow *self);
OxInputsPanel *ox_window_inputs(OxWindow *self);
OxTransport *ox_window_transport(OxWindow *self);
OxPlacesPanel *ox_window_places(OxWindow *self);
OxPublished *ox_window_published(OxWindow *self); /* NULL until it is asked for */
OxWorkingPanel *ox_window_working(OxWindow *self);
OxOverlays *ox_window_overlays(OxWindow *self);
OxCasesPanel *ox_window_cases(OxWindow *self);
GtkBox *ox_window_messages(OxWindow *self); /* where ox_message_bar_show puts its bars */
OxMomentsStrip *ox_window_moments(OxWindow *self);
OxPen *ox_window_pen(OxWindow *self);
OxPrediction *ox_window_prediction(OxWindow *self);
OxAnswerPanel *ox_window_answers(OxWindow *self);
struct ox_classroom *ox_window_classroom(OxWindow *self); /* see ox_classroom.h */
GMenuModel *ox_window_show_menu(OxWindow *self);
OxWordsPanel *ox_window_words(OxWindow *self);
OxCheckPanel *ox_window_check(OxWindow *self);
OxTimePanel *ox_window_time(OxWindow *self);
OxHighlight *ox_window_highlight(OxWindow *self);
OxFuelBar *ox_window_fuel_bar(OxWindow *self);

G_END_DECLS

#endif
