/* Printing. The job keeps the lesson as it was when printing began: a lesson that another program
 * changes meanwhile does not change half of the pages. */
#include "ox_print.h"

#include "ox_case_scene.h"
#include "ox_choice.h"
#include "ox_preference.h"
#include "ox_print_page.h"
#include "oxbow/text.h"

#define JOB_KEY "oxbow-print-job"

typedef struct {
  OxDocument *document;  /* owned */
  OxBoard *board;        /* weak */
  ox_print_choice choice;
  ox_snapshot *snapshot; /* owned; NULL: printing has not begun */
  ox_lesson lesson;      /* a view of it */
  size_t index;          /* the shown case */
  char *date;
  ox_handout *handout;   /* of worksheet and key; owned */
  gboolean *wanted;      /* of each case that the dialog asked about; NULL: all */
  size_t wanted_count;
  GtkDropDown *what;     /* in the dialog; NULL: not on screen */
  GtkCheckButton *marks;
  OxHandoutRows *rows;   /* owned */
} print_job;

static void forget_lesson(print_job *job) {
  g_clear_pointer(&job->handout, ox_handout_free);
  if (job->snapshot) ox_snapshot_view_clear(&job->lesson);
  g_clear_pointer(&job->snapshot, ox_snapshot_unref);
  g_clear_pointer(&job->date, g_free);
}

static void job_free(gpointer data) {
  print_job *job = data;
  forget_lesson(job);
  g_clear_weak_pointer(&job->board);
  g_clear_object(&job->rows);
  g_free(job->wanted);
  g_object_unref(job->document);
  g_free(job);
}

static print_job *job_of(GtkPrintOperation *operation) {
  return g_object_get_data(G_OBJECT(operation), JOB_KEY);
}

/* ---- pages ------------------------------------------------------------------------------ */

/* The board's scene, where it still shows what is printed. */
static gboolean get_shown(const print_job *job, ox_scene *out) {
  ox_snapshot *now = ox_document_snapshot(job->document);
  gboolean same = job->board && now == job->snapshot &&
                  ox_document_case_index(job->document) == job->index;
  ox_snapshot_unref(now);
  if (same) *out = ox_board_scene(job->board);
  return same;
}

static gboolean is_handout(ox_print_what what) {
  return what == OX_PRINT_WORKSHEET || what == OX_PRINT_KEY;
}

/* An answer that is hidden has no moments to print, and no key. */
static ox_print_what settled_what(const print_job *job) {
  ox_scene shown;
  if (!get_shown(job, &shown) || !shown.hide_answer) return job->choice.what;
  switch (job->choice.what) {
  case OX_PRINT_MOMENTS:
    return OX_PRINT_CASE;
  case OX_PRINT_KEY:
    return OX_PRINT_WORKSHEET;
  default:
    return job->choice.what;
  }
}

/* Handouts are laid out for A4 or Letter, whichever is more like the paper; any other paper takes
 * them smaller or larger. */
static ox_paper nearer_paper(double width, double height) {
  double long_side = MAX(width, height), short_side = MIN(width, height);
  double ratio = short_side > 0.0 ? long_side / short_side : 1.0;
  return ratio < (11.0 / 8.5 + 297.0 / 210.0) / 2.0 ? OX_PAPER_LETTER : OX_PAPER_A4;
}

static void make_handout(print_job *job, double width, double height) {
  const gboolean *wanted = job->wanted_count == job->lesson.case_count ? job->wanted : NULL;
  job->handout = ox_handout_new(&job->lesson, wanted, &job->choice.handout,
                                job->choice.what == OX_PRINT_KEY ? OX_SHEETS_KEY
                                                                 : OX_SHEETS_WORKSHEET,
                                nearer_paper(width, height), width > height);
}

static gboolean lacks_cases(const print_job *job) {
  return job->handout && ox_handout_holds(job->handout) == 0;
}

const char *ox_print_refusal(GtkPrintOperation *operation) {
  return lacks_cases(job_of(operation)) ? _("No case is chosen for the handout.") : NULL;
}

static int count_pages(const print_job *job) {
  if (job->handout) return MAX(1, (int)ox_handout_pages(job->handout)); /* GTK wants one */
  return job->choice.what == OX_PRINT_CASES ? (int)job->lesson.case_count : 1;
}

static void draw_handout(const print_job *job, cairo_t *cr, double width, double height,
                         size_t page) {
  ox_vec size = ox_handout_size(job->handout);
  double scale = MIN(width / size.x, height / size.y);
  cairo_save(cr);
  cairo_translate(cr, (width - size.x * scale) / 2.0, (height - size.y * scale) / 2.0);
  cairo_scale(cr, scale, scale);
  ox_handout_draw(job->handout, cr, page, NULL);
  cairo_restore(cr);
}

static char *today(void) {
  GDateTime *now = g_date_time_new_now_local();
  char *date = g_date_time_format(now, "%Y-%m-%d");
  g_date_time_unref(now);
  return date;
}

static void begin_cb(GtkPrintOperation *operation, GtkPrintContext *context, print_job *job) {
  forget_lesson(job);
  job->snapshot = ox_document_snapshot(job->document);
  ox_snapshot_view(job->snapshot, &job->lesson);
  job->index = ox_document_case_index(job->document);
  job->date = today();
  job->choice.what = settled_what(job);
  if (is_handout(job->choice.what))
    make_handout(job, gtk_print_context_get_width(context), gtk_print_context_get_height(context));
  gtk_print_operation_set_n_pages(operation, count_pages(job));
  if (lacks_cases(job)) gtk_print_operation_cancel(operation);
}

static void draw_cb(GtkPrintOperation *operation, GtkPrintContext *context, int number,
                    print_job *job) {
  GtkPageSetup *paper = gtk_print_context_get_page_setup(context);
  gboolean all = job->choice.what == OX_PRINT_CASES;
  size_t index = all ? (size_t)number : job->index;
  double width = gtk_print_context_get_width(context);
  double height = gtk_print_context_get_height(context);
  if (job->handout) {
    draw_handout(job, gtk_print_context_get_cairo_context(context), width, height, (size_t)number);
    return;
  }
  const double borders[4] = {gtk_page_setup_get_left_margin(paper, GTK_UNIT_POINTS),
                             gtk_page_setup_get_right_margin(paper, GTK_UNIT_POINTS),
                             gtk_page_setup_get_top_margin(paper, GTK_UNIT_POINTS),
                             gtk_page_setup_get_bottom_margin(paper, GTK_UNIT_POINTS)};
  ox_scene shown;
  gboolean has_shown = index == job->index && get_shown(job, &shown);
  ox_case_scene *made = ox_case_scene_new(&job->lesson, index, OX_PALETTE_PRINT,
                                          job->choice.pen_marks, has_shown ? &shown : NULL);
  ox_print_page page = {.scene = &made->scene,
                        .moments = job->choice.what == OX_PRINT_MOMENTS,
                        .name = ox_document_title(job->document),
                        .date = job->date,
                        .page = number + 1,
                        .pages = all ? (int)job->lesson.case_count : 1};
  ox_print_page_draw(gtk_print_context_get_cairo_context(context), &page, width, height, borders);
  g_free(made);
}

/* ---- the page in the dialog ------------------------------------------------------------- */

static const char *const whats[] = {N_("This case"), N_("All cases, a sheet each"),
                                    N_("Key moments"), N_("Worksheet to fill in"),
                                    N_("Answer key"), NULL};

static void show_rows(print_job *job) {
  gboolean handout = is_handout((ox_print_what)gtk_drop_down_get_selected(job->what));
  gtk_widget_set_visible(GTK_WIDGET(job->marks), !handout);
  ox_handout_rows_set_visible(job->rows, handout);
}

static void selected_cb(GtkDropDown *what, GParamSpec *pspec, print_job *job) { show_rows(job); }

static void add_rows(print_job *job, GtkGrid *grid, int at) {
  g_clear_object(&job->rows);
  job->rows = ox_handout_rows_new(grid, at, ox_document_lesson(job->document),
                                  &job->choice.handout);
  g_signal_connect(job->what, "notify::selected", G_CALLBACK(selected_cb), job);
  show_rows(job);
}

static GtkWidget *create_widget_cb(GtkPrintOperation *operation, print_job *job) {
  GtkWidget *grid = gtk_grid_new();
  GtkWidget *label = gtk_label_new_with_mnemonic(_("_What"));
  GtkWidget *what = ox_choice_new(whats);
  GtkWidget *marks = gtk_check_button_new_with_mnemonic(_("With pen mar_ks"));
  gtk_label_set_mnemonic_widget(GTK_LABEL(label), what);
  gtk_accessible_update_relation(GTK_ACCESSIBLE(what), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label,
                                 NULL, -1);
  gtk_drop_down_set_selected(GTK_DROP_DOWN(what), (guint)job->choice.what);
  gtk_check_button_set_active(GTK_CHECK_BUTTON(marks), job->choice.pen_marks);
  gtk_grid_set_row_spacing(GTK_GRID(grid), 6);
  gtk_grid_set_column_spacing(GTK_GRID(grid), 12);
  gtk_widget_add_css_class(grid, "form");
  gtk_grid_attach(GTK_GRID(grid), label, 0, 0, 1, 1);
  gtk_grid_attach(GTK_GRID(grid), what, 1, 0, 1, 1);
  gtk_grid_attach(GTK_GRID(grid), marks, 1, 1, 1, 1);
  job->what = GTK_DROP_DOWN(what);
  job->marks = GTK_CHECK_BUTTON(marks);
  add_rows(job, GTK_GRID(grid), 2);
  return grid;
}

static void apply_widget_cb(GtkPrintOperation *operation, GtkWidget *widget, print_job *job) {
  guint what = gtk_drop_down_get_selected(job->what);
  if (what < OX_PRINT_WHAT_COUNT) job->choice.what = (ox_print_what)what;
  job->choice.pen_marks = gtk_check_button_get_active(job->marks);
  ox_handout_rows_commit(job->rows);
  job->choice.handout = ox_handout_rows_choice(job->rows);
  g_free(job->wanted);
  job->wanted_count = ox_document_case_count(job->document);
  job->wanted = g_memdup2(ox_handout_rows_wanted(job->rows),
                          job->wanted_count * sizeof *job->wanted);
}

/* ---- the operation ---------------------------------------------------------------------- */

GtkPrintOperation *ox_print_new(OxDocument *document, OxBoard *board,
                                const ox_print_choice *choice) {
  GtkPrintOperation *operation = gtk_print_operation_new();
  print_job *job = g_new0(print_job, 1);
  job->document = g_object_ref(document);
  g_set_weak_pointer(&job->board, board);
  job->choice = *choice;
  g_object_set_data_full(G_OBJECT(operation), JOB_KEY, job, job_free);
  gtk_print_operation_set_job_name(operation, ox_document_title(document));
  gtk_print_operation_set_unit(operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page(operation, TRUE); /* the borders are ours */
  gtk_print_operation_set_embed_page_setup(operation, TRUE);
  gtk_print_operation_set_custom_tab_label(operation, _("Lesson"));
  g_signal_connect(operation, "begin-print", G_CALLBACK(begin_cb), job);
  g_signal_connect(operation, "draw-page", G_CALLBACK(draw_cb), job);
  g_signal_connect(operation, "create-custom-widget", G_CALLBACK(create_widget_cb), job);
  g_signal_connect(operation, "custom-widget-apply", G_CALLBACK(apply_widget_cb), job);
  return operation;
}

ox_print_choice ox_print_choice_of(GtkPrintOperation *operation) {
  return job_of(operation)->choice;
}

OxHandoutRows *ox_print_handout(GtkPrintOperation *operation) { return job_of(operation)->rows; }

/* ---- settings --------------------------------------------------------------------------- */

static const char *const what_words[] = {"case", "cases", "moments", "worksheet", "key",
                                         NULL};
static const char *const yes_words[] = {"yes", "no", NULL};
static const char *const across_words[] = {"across", "upright", NULL};

ox_print_choice ox_print_choice_recall(OxSettings *settings) {
  ox_print_choice choice = {.what = OX_PRINT_CASE};
  const char *word = ox_settings_word(settings, "print-what", what_words);
  while (what_words[choice.what] != word) choice.what++;
  choice.pen_marks = ox_settings_word(settings, "print-pen-marks", yes_words) == yes_words[0];
  choice.handout = ox_handout_choice_recall(settings);
  return choice;
}

void ox_print_choice_remember(const ox_print_choice *choice, OxSettings *settings) {
  ox_settings_set_word(settings, "print-what", what_words[choice->what]);
  ox_settings_set_word(settings, "print-pen-marks", yes_words[choice->pen_marks ? 0 : 1]);
  ox_handout_choice_remember(&choice->handout, settings);
}

#define PAPER_LEAST_MM 70.0

/* A paper by its name in PWG 5101.1, which may hold its size; NULL for what nobody prints on. */
static GtkPaperSize *named_paper(const char *name) {
  GtkPaperSize *paper = name && g_ascii_isalpha(name[0]) ? gtk_paper_size_new(name) : NULL;
  if (paper && (gtk_paper_size_get_width(paper, GTK_UNIT_MM) < PAPER_LEAST_MM ||
                gtk_paper_size_get_height(paper, GTK_UNIT_MM) < PAPER_LEAST_MM))
    g_clear_pointer(&paper, gtk_paper_size_free);
  return paper;
}

GtkPageSetup *ox_print_paper_recall(OxSettings *settings) {
  GtkPageSetup *setup = gtk_page_setup_new();
  char *name = ox_settings_text(settings, "print-paper");
  GtkPaperSize *paper = named_paper(name);
  gboolean across = ox_settings_word(settings, "print-orientation", across_words) ==
                    across_words[0];
  if (!paper)
    paper = gtk_paper_size_new(ox_preference_paper(settings) == OX_PAPER_LETTER
                                   ? GTK_PAPER_NAME_LETTER
                                   : GTK_PAPER_NAME_A4);
  gtk_page_setup_set_paper_size_and_default_margins(setup, paper);
  gtk_paper_size_free(paper);
  gtk_page_setup_set_orientation(setup, across ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                               : GTK_PAGE_ORIENTATION_PORTRAIT);
  g_free(name);
  return setup;
}

void ox_print_paper_remember(GtkPageSetup *setup, OxSettings *settings) {
  GtkPageOrientation orientation = gtk_page_setup_get_orientation(setup);
  gboolean across = orientation == GTK_PAGE_ORIENTATION_LANDSCAPE ||
                    orientation == GTK_PAGE_ORIENTATION_REVERSE_LANDSCAPE;
  ox_settings_set_text(settings, "print-paper",
                       gtk_paper_size_get_name(gtk_page_setup_get_paper_size(setup)));
  ox_settings_set_word(settings, "print-orientation", across_words[across ? 0 : 1]);
}
