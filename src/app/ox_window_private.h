/* What the files of the window share. */
#ifndef OX_WINDOW_PRIVATE_H
#define OX_WINDOW_PRIVATE_H

#include "ox_autosave.h"
#include "ox_bundle.h"
#include "ox_cases_panel.h"
#include "ox_export_file.h"
#include "ox_file_watch.h"
#include "ox_places_panel.h"
#include "ox_veil.h"
#include "ox_published.h"
#include "ox_window.h"

/* What is done once unsaved changes are dealt with. */
typedef enum {
  OX_THEN_NOTHING, OX_THEN_NEW, OX_THEN_OPEN, OX_THEN_OPEN_PATH, OX_THEN_CLOSE, OX_THEN_QUIT
} ox_window_then;

struct _OxWindow {
  GtkApplicationWindow parent_instance;

  /* template children */
  OxBoard *board;
  OxCaseBar *case_bar;
  OxInputsPanel *inputs;
  OxTransport *transport;
  OxWorkingPanel *working;
  GtkWidget *header, *left, *working_side;
  ox_bundle *bundle; /* how it is drawn; owned; NULL: as it is */
  OxCasesPanel *cases;
  GtkStack *left_pages;     /* "hold" and what else is entered */
  GtkWidget *left_switcher; /* shown once there is more than one page */
  GtkBox *above_board, *below_board; /* bars and strips of the board's column */
  GtkOverlay *board_overlay;         /* what floats over the board */
  GtkBox *boards;                    /* the board, and others beside it */
  OxPen *pen;             /* over the first board, while it is taken up */
  GtkWidget *pen_strip;
  OxAnswerPanel *answers;
  OxBoard *air_board;                /* the second one, with the air view; NULL: none */
  GtkWidget *open_button, *save_button, *working_button;
  GtkWidget *undo_button, *redo_button;
  GMenu *history_menu; /* "Undo …", "Redo …" */
  char *history_shown; /* by it; owned */
  GtkMenuButton *recent_button, *show_button, *menu_button;
  GtkLabel *caution;
  OxPlacesPanel *places;
  OxPublished *published; /* a window of its own, made when it is asked for; borrowed */

  GtkWidget *compare_panel;                  /* under the board */
  GtkWidget *case_views[OX_SCENE_OTHERS_MAX]; /* beside it; NULL: none */
  ox_fit boards_fit; /* of all boards that stand side by side */
  gboolean boards_beside, working_folded;     /* the working made room for them */
  gboolean inputs_aside; /* for the working, in a narrow window */
  int needed_for_all;    /* px of width, where both were last seen beside the board */
  /* ox_window_words.c: children */
  OxWordsPanel *words;
  OxCheckPanel *check;
  OxTimePanel *time;
  OxHighlight *highlight;
  OxFuelBar *fuel_bar;

  /* owned */
  OxDocument *document;
  OxPlayer *player;
  OxOverlays *overlays;
  OxPrediction *prediction;
  ox_prediction_state prediction_shown; /* what the window looks like */
  GMenu *comparisons; /* the section of the menu that goes by the case */
  guint comparisons_offered; /* bits 1 << ox_mistake, and one that is always set */
  GtkNativeDialog *chooser; /* the file chooser on screen */
  char *pending_path;       /* waits for "replace?" */
  char *then_path;          /* goes with OX_THEN_OPEN_PATH */
  OxAutosave *autosave;
  OxFileWatch *watch;       /* of the lesson's file */
  guint inhibit_cookie;     /* the session's end waits for unsaved changes; 0: it need not */

  GtkLabel *stop_reason;   /* why playing stopped, over the board; borrowed */
  OxMomentsStrip *moments; /* below the board; borrowed */
  struct ox_classroom *classroom;

  OxSettings *settings;     /* owned */
  GArray *handout_wanted;   /* gboolean of each case, for the file that is chosen; NULL: all */
  GtkPrintOperation *print; /* owned, while it goes on */
  GtkWidget *moving;        /* an OxMovingJob above the board; NULL: none */
  GtkWidget *board_menu;
  ox_vec menu_at;           /* where it was asked for, on the board */

  ox_window_then then; /* goes on after the chooser or the question */
  GtkWidget *question; /* the dialog about unsaved changes, borrowed; NULL: none */
};

/* ox_window_actions.c */
void ox_window_add_actions(OxWindow *self);
void ox_window_update_actions(OxWindow *self);

/* ox_window_history.c */
void ox_window_add_history(OxWindow *self);

/* ox_window_cases.c */
void ox_window_add_cases(OxWindow *self);

/* ox_window_keeping.c */
void ox_window_add_keeping(OxWindow *self);
void ox_window_end_keeping(OxWindow *self);

/* ox_window_recent.c: recent files, and files dropped on the window */
void ox_window_add_recent(OxWindow *self);
void ox_window_note_recent(OxWindow *self);

/* ox_window_overlays.c */
void ox_window_add_overlays(OxWindow *self);
void ox_window_update_overlays(OxWindow *self);

/* ox_window_views.c */
void ox_window_add_views(OxWindow *self);

/* ox_window_time.c */
void ox_window_add_time(OxWindow *self);
void ox_window_end_time(OxWindow *self);

/* ox_window_compare.c */
void ox_window_add_compare(OxWindow *self);
void ox_window_update_compare(OxWindow *self);

/* ox_window_pen.c */
void ox_window_add_pen(OxWindow *self);

/* ox_window_predict.c; after the overlays, whose menu it is in */
void ox_window_add_predict(OxWindow *self);
/* ox_window_places.c */
void ox_window_add_places(OxWindow *self);
/* Whether a point can be where the board's menu was asked for. */
void ox_window_update_point_here(OxWindow *self);

/* ox_window_narrow.c */
void ox_window_add_narrow(OxWindow *self);
/* Where the working stands in place of the inputs, the inputs are seen instead. */
void ox_window_bring_inputs(OxWindow *self);

/* ox_window_words.c */
void ox_window_add_words(OxWindow *self);

/* The settings are others, or their wording is. */
void ox_window_update_words(OxWindow *self);
/* The words are lit by this picture and the picture by the words: a board, or the view of another
 * case. To be taken out of the highlight before it goes. */
void ox_window_light_picture(OxWindow *self, GtkWidget *picture);

/* ox_window_published.c */
void ox_window_add_published(OxWindow *self);
/* ox_window_share.c: pictures out of the window */
void ox_window_add_share(OxWindow *self);
void ox_window_end_share(OxWindow *self);
/* What the window shows, with what was typed taken in, until the next change. shown has room for
 * the scene that it points to. */
ox_export_job ox_window_share_job(OxWindow *self, ox_scene *shown);

/* ox_window_drag.c */
void ox_window_add_drag(OxWindow *self);
void ox_window_export(OxWindow *self);

/* ox_window_files.c */
void ox_window_new_lesson(OxWindow *self);
void ox_window_open(OxWindow *self);
void ox_window_save(OxWindow *self);
void ox_window_save_as(OxWindow *self);
void ox_window_save_copy(OxWindow *self);
/* Opens a file in this window once its unsaved changes are dealt with. */
void ox_window_leave_for(OxWindow *self, const char *path);
/* Takes the chooser's answer, with the ending added where it is missing; NULL when it was
 * cancelled or there is no path, which a dialog explains. Freed with g_free. */
char *ox_window_take_answer(OxWindow *self, int response, const char *ending, gboolean *added);
/* Asks before a file is replaced that the chooser did not ask about; the path waits in
 * pending_path for the dialog's "response". */
gboolean ox_window_must_ask(OxWindow *self, const char *path, gboolean added, GCallback answered);
/* Asks first if there are unsaved changes, then goes on. */
void ox_window_leave(OxWindow *self, ox_window_then then);

#endif
