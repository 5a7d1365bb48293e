/* How long a step of a drag keeps the window busy at 1920 x 1080: the edit, the solving, every
 * panel that follows, the layout and the frame, through the real widgets on a real display.
 *
 * The case has five circuits, ink on the board, and a comparison. The baseline is a frame of an
 * empty GTK window of the same size, drawn over and over in the same run: what the toolkit and the
 * display take by themselves. Waiting for the next frame's time is not counted.
 *
 *   bench_drag [STEPS]      (2000) */
#include <gtk/gtk.h>

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "ox_window.h"
#include "oxbow/ink.h"

enum { WIDTH = 1920, HEIGHT = 1080, STEPS = 2000, EMPTY_FRAMES = 300, WARM_UP = 20 };

typedef struct {
  gint64 begun_us, took_us;
  gboolean done;
} frame;

static void before_cb(GdkFrameClock *clock, frame *f) { f->begun_us = g_get_monotonic_time(); }

static void after_cb(GdkFrameClock *clock, frame *f) {
  f->took_us = g_get_monotonic_time() - f->begun_us;
  f->done = TRUE;
}

static void listen(GtkWidget *window, frame *f) {
  GdkFrameClock *clock = gtk_widget_get_frame_clock(window);
  g_signal_connect(clock, "before-paint", G_CALLBACK(before_cb), f);
  g_signal_connect(clock, "after-paint", G_CALLBACK(after_cb), f);
}

/* The next frame that is drawn from now on: how long it kept the program busy (ms). */
static double frame_ms(frame *f) {
  f->done = FALSE;
  while (!f->done) g_main_context_iteration(NULL, TRUE);
  return (double)f->took_us / 1e3;
}

static void settle(guint ms) {
  gint64 end_us = g_get_monotonic_time() + (gint64)ms * 1000;
  while (g_get_monotonic_time() < end_us) {
    g_main_context_iteration(NULL, FALSE);
    g_usleep(500);
  }
}

static int by_size(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static double share_of(double *sorted, int count, double share) {
  return sorted[MIN((int)(share * count), count - 1)];
}

static double empty_ms(double *took) {
  frame f = {0};
  GtkWidget *window = gtk_window_new(), *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
  gtk_window_set_child(GTK_WINDOW(window), box);
  gtk_window_set_default_size(GTK_WINDOW(window), WIDTH, HEIGHT);
  gtk_window_present(GTK_WINDOW(window));
  settle(500);
  listen(window, &f);
  for (int i = -WARM_UP; i < EMPTY_FRAMES; i++) {
    gtk_widget_queue_draw(window);
    took[MAX(i, 0)] = frame_ms(&f);
  }
  g_signal_handlers_disconnect_by_data(gtk_widget_get_frame_clock(window), &f);
  gtk_window_destroy(GTK_WINDOW(window));
  settle(100);
  qsort(took, EMPTY_FRAMES, sizeof *took, by_size);
  return share_of(took, EMPTY_FRAMES, 0.5);
}

/* Ten strokes of sixty points round the hold. */
static void write_on(OxDocument *document) {
  ox_ink *ink = ox_ink_new();
  for (int s = 0; ink && s < 10; s++)
    for (int i = 0; i < 60; i++) {
      double a = 0.1 * i, r = 0.5 + 0.2 * s;
      ox_vec at = {r * cos(a) + 0.05 * sin(9 * a), r * sin(a)};
      if (i == 0)
        ox_ink_begin(ink, OX_INK_BLUE, OX_INK_BROAD, at);
      else
        ox_ink_extend(ink, at);
    }
  ox_document_set_ink(document, "Ink", ink);
  ox_ink_free(ink);
}

static void prepare(OxWindow *window) {
  OxDocument *document = ox_window_document(window);
  ox_document_select(document, 1);
  ox_case c = *ox_document_case(document);
  c.technique.circuits = 5;
  c.technique.drift = OX_DRIFT_TRIPLE;
  c.technique.outbound = OX_OUTBOUND_ADJUST;
  ox_document_edit(document, &c, NULL);
  write_on(document);
  ox_overlays_set_compare(ox_window_overlays(window), OX_COMPARE_EXACT);
}

int main(int argc, char **argv) {
  int steps = argc > 1 ? atoi(argv[1]) : STEPS;
  if (!gtk_init_check() || steps < 1) {
    fprintf(stderr, "there is no display, or no number of steps\n");
    return 1;
  }
  double *took = g_new0(double, MAX(steps, EMPTY_FRAMES)), *edits = g_new0(double, steps), x, y;
  double empty = empty_ms(took);
  frame f = {0};
  OxWindow *window = ox_window_new(NULL);
  OxBoard *board = ox_window_board(window);
  gtk_window_set_default_size(GTK_WINDOW(window), WIDTH, HEIGHT);
  prepare(window);
  gtk_window_present(GTK_WINDOW(window));
  settle(1500);
  listen(GTK_WIDGET(window), &f);
  if (!ox_board_handle_place(board, OX_HANDLE_OUTBOUND, &x, &y) || !ox_board_press(board, x, y)) {
    fprintf(stderr, "the handle cannot be taken hold of\n");
    return 1;
  }
  guint solves = ox_document_solve_count(ox_window_document(window));
  for (int i = -WARM_UP; i < steps; i++) {
    /* To and fro along the leg, so that every step is another case. */
    double way = 60.0 * sin(0.21 * i);
    gint64 begun_us = g_get_monotonic_time();
    ox_board_drag_to(board, x + way, y - way, TRUE);
    double edit_ms = (double)(g_get_monotonic_time() - begun_us) / 1e3;
    edits[MAX(i, 0)] = edit_ms;
    took[MAX(i, 0)] = edit_ms + frame_ms(&f);
  }
  solves = ox_document_solve_count(ox_window_document(window)) - solves;
  ox_board_release(board);
  qsort(took, (size_t)steps, sizeof *took, by_size);
  qsort(edits, (size_t)steps, sizeof *edits, by_size);
  double median = share_of(took, steps, 0.5);
  printf("drag: %d steps at %d x %d, %u of them another case, board %d x %d\n", steps, WIDTH, HEIGHT,
         solves, gtk_widget_get_width(GTK_WIDGET(board)),
         gtk_widget_get_height(GTK_WIDGET(board)));
  printf("drag: a step %.2f ms (median), %.2f ms (99th of 100); aims 4 and 8\n", median,
         share_of(took, steps, 0.99));
  printf("drag: of it until the edit is told to everybody %.2f ms (median)\n",
         share_of(edits, steps, 0.5));
  printf("drag: an empty window's frame %.2f ms, ratio %.2f\n", empty, median / empty);
  gtk_window_destroy(GTK_WINDOW(window));
  g_free(took);
  g_free(edits);
  return 0;
}
