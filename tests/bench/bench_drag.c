/* How long a step of a drag keeps the window busy at 1920 x 1080: the edit, the solving, every
 * panel that follows, the layout and the frame, through the real widgets on a real display.
 *
 * The case has five circuits, ink on the board, and a comparison. There are two baselines, drawn
 * over and over in the same run: a frame of an empty GTK window of the same size, and of a window
 * that is one cairo picture of that size with nothing in it but a colour. They are what the toolkit
 * and the display take by themselves. Waiting for the next frame's time is not counted. Beside the
 * time on the clock stands the processor's, which other programs on the machine disturb less; all
 * threads count, so does what is put off until after a frame.
 *
 *   bench_drag [STEPS [alone]]      (2000; without the baselines) */
#include <gtk/gtk.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "ox_window.h"
#include "oxbow/ink.h"

enum { WIDTH = 1920, HEIGHT = 1080, BOARD_WIDTH = 954, BOARD_HEIGHT = 885, STEPS = 2000, EMPTY_FRAMES = 300, WARM_UP = 20 };

typedef struct {
  double wall, cpu; /* ms */
} cost;

typedef struct {
  cost begun, took;
  cost layout;   /* of what it took, until painting begins */
  cost snapshot; /* and of the painting, the window's taking stock of what is to be drawn */
  gboolean done;
} frame;

static double ms_of(clockid_t clock) {
  struct timespec t;
  clock_gettime(clock, &t);
  return 1e3 * (double)t.tv_sec + 1e-6 * (double)t.tv_nsec;
}

static cost now(void) { return (cost){ms_of(CLOCK_MONOTONIC), ms_of(CLOCK_PROCESS_CPUTIME_ID)}; }

static cost since(cost begun) {
  cost end = now();
  return (cost){end.wall - begun.wall, end.cpu - begun.cpu};
}

static void before_cb(GdkFrameClock *clock, frame *f) {
  f->begun = now();
  f->layout = f->snapshot = (cost){0, 0};
}

static void layout_cb(GdkFrameClock *clock, frame *f) { f->layout = since(f->begun); }

static void after_cb(GdkFrameClock *clock, frame *f) {
  f->took = since(f->begun);
  f->done = TRUE;
}

static void sizing_cb(GdkToplevel *surface, GdkToplevelSize *size, guint *count) { ++*count; }

static void listen(GtkWidget *window, frame *f) {
  GdkFrameClock *clock = gtk_widget_get_frame_clock(window);
  g_signal_connect(clock, "before-paint", G_CALLBACK(before_cb), f);
  g_signal_connect_after(clock, "update", G_CALLBACK(layout_cb), f);
  g_signal_connect_after(clock, "layout", G_CALLBACK(layout_cb), f); /* where there is any */
  g_signal_connect(clock, "after-paint", G_CALLBACK(after_cb), f);
}

/* The next frame that is drawn from now on: how long it kept the program busy. */
static cost next_frame(frame *f) {
  f->done = FALSE;
  while (!f->done) g_main_context_iteration(NULL, TRUE);
  return f->took;
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

/* One share of the values, which are sorted. */
static double share_of(double *values, int count, double share) {
  qsort(values, (size_t)count, sizeof *values, by_size);
  return values[MIN((int)(share * count), count - 1)];
}

typedef struct {
  double wall_median, wall_99, cpu_median, cpu_99, cpu_10;
} summary;

static summary summary_of(const cost *costs, int count) {
  double *values = g_new(double, count);
  summary s;
  for (int i = 0; i < count; i++) values[i] = costs[i].wall;
  s.wall_median = share_of(values, count, 0.5);
  s.wall_99 = share_of(values, count, 0.99);
  for (int i = 0; i < count; i++) values[i] = costs[i].cpu;
  s.cpu_median = share_of(values, count, 0.5);
  s.cpu_99 = share_of(values, count, 0.99);
  s.cpu_10 = share_of(values, count, 0.1);
  g_free(values);
  return s;
}

static void print(const char *what, summary s) {
  printf("drag: %s: on the clock %.2f ms (median) %.2f ms (99th of 100), "
         "of the processor %.2f ms %.2f ms, the quickest tenth below %.2f ms\n",
         what, s.wall_median, s.wall_99, s.cpu_median, s.cpu_99, s.cpu_10);
}

/* ---- the baselines ---------------------------------------------------------------------- */

static void draw_cb(GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data) {
  cairo_set_source_rgb(cr, 0.9, 0.9, 0.85);
  cairo_paint(cr);
}

static summary baseline(GtkWidget *child) {
  frame f = {0};
  cost took[EMPTY_FRAMES];
  GtkWidget *window = gtk_window_new();
  gtk_window_set_child(GTK_WINDOW(window), child);
  gtk_window_set_default_size(GTK_WINDOW(window), WIDTH, HEIGHT);
  gtk_window_present(GTK_WINDOW(window));
  settle(500);
  listen(window, &f);
  for (int i = -WARM_UP; i < EMPTY_FRAMES; i++) {
    gtk_widget_queue_draw(child);
    took[MAX(i, 0)] = next_frame(&f);
  }
  g_signal_handlers_disconnect_by_data(gtk_widget_get_frame_clock(window), &f);
  gtk_window_destroy(GTK_WINDOW(window));
  settle(100);
  return summary_of(took, EMPTY_FRAMES);
}

static summary empty_window(void) { return baseline(gtk_box_new(GTK_ORIENTATION_VERTICAL, 0)); }

/* Of a size (px); 0: the whole window. */
static summary plain_picture(int width, int height) {
  GtkWidget *area = gtk_drawing_area_new();
  gtk_drawing_area_set_draw_func(GTK_DRAWING_AREA(area), draw_cb, NULL, NULL);
  if (width > 0) {
    gtk_widget_set_size_request(area, width, height);
    gtk_widget_set_halign(area, GTK_ALIGN_CENTER);
    gtk_widget_set_valign(area, GTK_ALIGN_CENTER);
  }
  return baseline(area);
}

/* ---- the window ------------------------------------------------------------------------- */

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

static void (*window_snapshot)(GtkWidget *widget, GtkSnapshot *snapshot);
static frame *window_frame;

/* In the place of the window's own. The board's picture is drawn here; what comes after it is the
 * renderer's work. */
static void timed_snapshot(GtkWidget *widget, GtkSnapshot *snapshot) {
  cost begun = now();
  window_snapshot(widget, snapshot);
  window_frame->snapshot = since(begun);
}

static void time_snapshots(GtkWidget *window, frame *f) {
  window_frame = f;
  window_snapshot = GTK_WIDGET_GET_CLASS(window)->snapshot;
  GTK_WIDGET_GET_CLASS(window)->snapshot = timed_snapshot;
}

static cost sum(cost a, cost b) { return (cost){a.wall + b.wall, a.cpu + b.cpu}; }

/* Drags to and fro along the leg, so that every step is another case. */
static void drag(OxBoard *board, double x, double y, frame *f, int steps, cost *took,
                 cost *edits, cost *layouts, cost *snapshots, cost *ours) {
  for (int i = -WARM_UP; i < steps; i++) {
    double way = 60.0 * sin(0.21 * i);
    cost begun = now();
    ox_board_drag_to(board, x + way, y - way, TRUE);
    cost edit = since(begun), drawn = next_frame(f);
    edits[MAX(i, 0)] = edit;
    layouts[MAX(i, 0)] = f->layout;
    snapshots[MAX(i, 0)] = f->snapshot;
    ours[MAX(i, 0)] = sum(edit, sum(f->layout, f->snapshot));
    took[MAX(i, 0)] = (cost){edit.wall + drawn.wall, edit.cpu + drawn.cpu};
  }
}

int main(int argc, char **argv) {
  int steps = argc > 1 ? atoi(argv[1]) : STEPS;
  if (!gtk_init_check() || steps < 1) {
    fprintf(stderr, "there is no display, or no number of steps\n");
    return 1;
  }
#ifdef __GLIBC__
  mallopt(M_MMAP_THRESHOLD, 32 << 20); /* as the program does */
  mallopt(M_TRIM_THRESHOLD, 128 << 20);
#endif
  double x, y;
  summary empty = {0}, plain = {0}, small = {0};
  if (argc < 3) empty = empty_window(), plain = plain_picture(0, 0), small = plain_picture(BOARD_WIDTH, BOARD_HEIGHT);
  cost *took = g_new0(cost, steps), *edits = g_new0(cost, steps);
  cost *layouts = g_new0(cost, steps), *snapshots = g_new0(cost, steps);
  cost *ours = g_new0(cost, steps);
  frame f = {0};
  OxWindow *window = ox_window_new(NULL);
  OxBoard *board = ox_window_board(window);
  OxDocument *document = ox_window_document(window);
  gtk_window_set_default_size(GTK_WINDOW(window), WIDTH, HEIGHT);
  prepare(window);
  gtk_window_present(GTK_WINDOW(window));
  settle(1500);
  listen(GTK_WIDGET(window), &f);
  time_snapshots(GTK_WIDGET(window), &f);
  if (!ox_board_handle_place(board, OX_HANDLE_OUTBOUND, &x, &y) || !ox_board_press(board, x, y)) {
    fprintf(stderr, "the handle cannot be taken hold of\n");
    return 1;
  }
  guint solves = ox_document_solve_count(document), sizings = 0;
  g_signal_connect(gtk_native_get_surface(GTK_NATIVE(window)), "compute-size",
                   G_CALLBACK(sizing_cb), &sizings);
  cost all = now();
  drag(board, x, y, &f, steps, took, edits, layouts, snapshots, ours);
  all = since(all);
  solves = ox_document_solve_count(document) - solves;
  ox_board_release(board);
  summary step = summary_of(took, steps);
  printf("drag: %d steps at %d x %d, %u of them another case, board %d x %d, "
         "the window laid out %u times\n",
         steps, WIDTH, HEIGHT, solves, gtk_widget_get_width(GTK_WIDGET(board)),
         gtk_widget_get_height(GTK_WIDGET(board)), sizings);
  print("a step (aims 4 and 8)", step);
  print("of it until the edit is told to everybody", summary_of(edits, steps));
  print("of it laying out picture and window", summary_of(layouts, steps));
  print("of it drawing what changed, to be shown", summary_of(snapshots, steps));
  print("these three, which are the program's own", summary_of(ours, steps));
  printf("drag: all that ran meanwhile, a step of the processor %.2f ms\n",
         all.cpu / (steps + WARM_UP));
  print("a frame of an empty window", empty);
  print("a frame of one plain picture", plain);
  print("a frame of one as large as the board", small);
  printf("drag: ratio to an empty window %.2f (processor %.2f), to a plain picture %.2f (%.2f)\n",
         step.wall_median / empty.wall_median, step.cpu_median / empty.cpu_median,
         step.wall_median / plain.wall_median, step.cpu_median / plain.cpu_median);
  gtk_window_destroy(GTK_WINDOW(window));
  g_free(took);
  g_free(edits);
  g_free(layouts);
  g_free(snapshots);
  g_free(ours);
  return 0;
}
