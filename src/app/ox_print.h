/* The lesson on paper: the print operation, its own page in the print dialog, and its pages. What
 * is previewed, printed and written into a PDF goes through the same drawing. */
#ifndef OX_PRINT_H
#define OX_PRINT_H

#include "ox_board.h"
#include "ox_handout_rows.h"
#include "ox_settings.h"

G_BEGIN_DECLS

typedef enum {
  OX_PRINT_CASE,
  OX_PRINT_CASES,
  OX_PRINT_MOMENTS,
  OX_PRINT_WORKSHEET,
  OX_PRINT_KEY,
  OX_PRINT_WHAT_COUNT
} ox_print_what;

typedef struct {
  ox_print_what what;
  gboolean pen_marks;
  ox_handout_choice handout; /* how a worksheet or a key is laid out */
} ox_print_choice;

ox_print_choice ox_print_choice_recall(OxSettings *settings);
void ox_print_choice_remember(const ox_print_choice *choice, OxSettings *settings);

/* The paper printed on last, or that of the locale, across. */
GtkPageSetup *ox_print_paper_recall(OxSettings *settings);
void ox_print_paper_remember(GtkPageSetup *paper, OxSettings *settings);

/* An operation that prints the document as it is when printing begins, the shown case as the board
 * has it. The board may go meanwhile. */
GtkPrintOperation *ox_print_new(OxDocument *document, OxBoard *board,
                                const ox_print_choice *choice);
/* What was chosen in its dialog. */
ox_print_choice ox_print_choice_of(GtkPrintOperation *operation);
/* Why it was cancelled by itself, or NULL. Static. */
const char *ox_print_refusal(GtkPrintOperation *operation);
/* The rows of a handout in its dialog: for tests. */
OxHandoutRows *ox_print_handout(GtkPrintOperation *operation);

G_END_DECLS

#endif
