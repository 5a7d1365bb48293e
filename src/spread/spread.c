/* Many flights on all processors. Runs are dealt out by index, each writes its own numbers, and
 * the cells are whole counts, so neither order nor number of threads shows in the result. */
#include "oxbow/spread.h"

#include <math.h>
#include <pthread.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { CELLS = OX_SPREAD_CELLS * OX_SPREAD_CELLS, THREADS_MAX = 64 };
static const double STEP_NM = 0.5; /* of a cell: none on the way is jumped over */

typedef struct {
  float inbound_s, rollout_nm, nonholding_nm, farthest_nm;
  bool regained;
} outcome;

typedef struct {
  const ox_case *c;
  const ox_tolerances *tolerances;
  uint64_t seed;
  size_t first, last; /* runs [first, last) */
  ox_vec origin_nm;
  double cell_nm;
  outcome *outcomes;  /* shared, each run its own */
  uint32_t *cells;    /* of this worker */
  uint32_t *seen_in;  /* last run + 1 that was counted in a cell */
  ox_flight *flight;
} worker;

static void count_cell(worker *w, size_t run, ox_vec p) {
  double x = (p.x - w->origin_nm.x) / w->cell_nm, y = (p.y - w->origin_nm.y) / w->cell_nm;
  if (!(x >= 0.0 && x < OX_SPREAD_CELLS && y >= 0.0 && y < OX_SPREAD_CELLS)) return;
  size_t cell = (size_t)y * OX_SPREAD_CELLS + (size_t)x;
  uint32_t mark = (uint32_t)(run - w->first) + 1;
  if (w->seen_in[cell] == mark) return;
  w->seen_in[cell] = mark;
  w->cells[cell]++;
}

static void trace(worker *w, size_t run, outcome *o) {
  const ox_flight *f = w->flight;
  double farthest = 0.0;
  for (size_t i = 0; i < f->leg_count; i++) {
    const ox_leg *leg = &f->legs[i];
    if (leg->kind == OX_LEG_ARRIVAL) continue;
    double gs_kt = leg->tas_kt + ox_vec_length(leg->wind_kt);
    double step_s = fmax(0.25, STEP_NM * w->cell_nm / gs_kt * 3600.0);
    for (double t_s = leg->t0_s; t_s < leg->t1_s; t_s += step_s) {
      ox_vec p = ox_leg_position(leg, t_s);
      farthest = fmax(farthest, ox_vec_length(p));
      count_cell(w, run, p);
    }
  }
  o->farthest_nm = (float)farthest;
}

static void measure(const ox_flight *f, outcome *o) {
  double nonholding = 0.0;
  o->regained = true;
  for (size_t i = 0; i < f->advice_count; i++)
    if (f->advice[i].kind == OX_ADVICE_NOT_REGAINED) o->regained = false;
  for (size_t i = 0; i < f->circuit_count; i++)
    nonholding = fmax(nonholding, f->circuits[i].nonholding_nm);
  const ox_circuit *last = f->circuit_count ? &f->circuits[f->circuit_count - 1] : NULL;
  o->inbound_s = last ? (float)last->inbound_s : 0.0f;
  o->rollout_nm = last ? (float)last->rollout_offset_nm : 0.0f;
  o->nonholding_nm = (float)nonholding;
}

static void *work(void *context) {
  worker *w = context;
  ox_case sampled;
  ox_flaws flaws;
  for (size_t run = w->first; run < w->last; run++) {
    outcome *o = &w->outcomes[run];
    ox_spread_sample(w->c, w->tolerances, w->seed, run, &sampled, &flaws);
    if (ox_flight_solve_flawed(&sampled, &flaws, w->flight) == OX_ERROR) continue;
    measure(w->flight, o);
    trace(w, run, o);
  }
  return NULL;
}

/* --- the whole ------------------------------------------------------------------------------ */

/* A square about the flight as it is meant, with room for the scatter. */
static void frame_grid(const ox_flight *f, ox_vec *origin_nm, double *cell_nm) {
  ox_vec low = {0, 0}, high = {0, 0};
  for (size_t i = 0; i < f->leg_count; i++) {
    if (f->legs[i].kind == OX_LEG_ARRIVAL) continue;
    for (int k = 0; k <= 8; k++) {
      const ox_leg *leg = &f->legs[i];
      ox_vec p = ox_leg_position(leg, leg->t0_s + k / 8.0 * (leg->t1_s - leg->t0_s));
      low = (ox_vec){fmin(low.x, p.x), fmin(low.y, p.y)};
      high = (ox_vec){fmax(high.x, p.x), fmax(high.y, p.y)};
    }
  }
  double side = fmax(1.0, 1.6 * fmax(high.x - low.x, high.y - low.y));
  *cell_nm = side / OX_SPREAD_CELLS;
  *origin_nm = (ox_vec){0.5 * (low.x + high.x) - 0.5 * side, 0.5 * (low.y + high.y) - 0.5 * side};
}

static int by_value(const void *a, const void *b) {
  float x = *(const float *)a, y = *(const float *)b;
  return (x > y) - (x < y);
}

static ox_scatter scatter_of(float *values, size_t count) {
  if (count == 0) return (ox_scatter){0, 0, 0};
  qsort(values, count, sizeof *values, by_value);
  return (ox_scatter){(double)values[(count - 1) / 20], (double)values[(count - 1) / 2],
                      (double)values[(count - 1) - (count - 1) / 20]};
}

static void summarise(const outcome *outcomes, float *scratch, ox_spread *s) {
  size_t n = 0;
  for (size_t i = 0; i < s->runs; i++)
    if (outcomes[i].regained) scratch[n++] = outcomes[i].inbound_s;
  s->not_regained = s->runs - n;
  s->inbound_s = scatter_of(scratch, n);
  n = 0;
  for (size_t i = 0; i < s->runs; i++)
    if (outcomes[i].regained) scratch[n++] = outcomes[i].rollout_nm;
  s->rollout_nm = scatter_of(scratch, n);
  for (size_t i = 0; i < s->runs; i++) scratch[i] = outcomes[i].nonholding_nm;
  s->nonholding_nm = scatter_of(scratch, s->runs);
  for (size_t i = 0; i < s->runs; i++) scratch[i] = outcomes[i].farthest_nm;
  s->farthest_nm = scatter_of(scratch, s->runs);
}

static int thread_count(int asked, size_t runs) {
  long n = asked > 0 ? asked : sysconf(_SC_NPROCESSORS_ONLN);
  if (n < 1) n = 1;
  if (n > THREADS_MAX) n = THREADS_MAX;
  return (size_t)n > runs ? (int)runs : (int)n;
}

static void free_workers(worker *workers, int count) {
  for (int i = 0; i < count; i++) {
    free(workers[i].cells);
    free(workers[i].seen_in);
    free(workers[i].flight);
  }
}

static bool ready_workers(worker *workers, int count, const worker *model, size_t runs) {
  for (int i = 0; i < count; i++) {
    worker *w = &workers[i];
    *w = *model;
    w->first = runs * (size_t)i / (size_t)count;
    w->last = runs * (size_t)(i + 1) / (size_t)count;
    w->cells = calloc(CELLS, sizeof *w->cells);
    w->seen_in = calloc(CELLS, sizeof *w->seen_in);
    w->flight = malloc(sizeof *w->flight);
    if (!w->cells || !w->seen_in || !w->flight) {
      free_workers(workers, i + 1);
      return false;
    }
  }
  return true;
}

/* A thread that cannot be started has its share done here: slower, never less. */
static void run_workers(worker *workers, int count) {
  pthread_t threads[THREADS_MAX];
  bool started[THREADS_MAX] = {false};
  for (int i = 1; i < count; i++)
    started[i] = pthread_create(&threads[i], NULL, work, &workers[i]) == 0;
  work(&workers[0]);
  for (int i = 1; i < count; i++) {
    if (started[i])
      pthread_join(threads[i], NULL);
    else
      work(&workers[i]);
  }
}

ox_status ox_spread_make(const ox_case *c, const ox_tolerances *t, uint64_t seed, size_t runs,
                         int threads, ox_spread *out) {
  if (runs < 1 || runs > OX_SPREAD_RUNS_MAX || threads < 0 || threads > THREADS_MAX)
    return OX_ERROR;
  if (ox_case_check(c, NULL, 0) > 0) return OX_ERROR;
  ox_spread s = {.seed = seed, .runs = runs};
  worker workers[THREADS_MAX], model = {.c = c, .tolerances = t, .seed = seed};
  int count = thread_count(threads, runs);
  outcome *outcomes = calloc(runs, sizeof *outcomes);
  float *scratch = malloc(runs * sizeof *scratch);
  ox_flight *meant = malloc(sizeof *meant);
  s.cells = calloc(CELLS, sizeof *s.cells);
  model.outcomes = outcomes;
  bool ready = outcomes && scratch && meant && s.cells;
  if (ready) {
    ox_flight_solve(c, meant);
    frame_grid(meant, &s.origin_nm, &s.cell_nm);
    model.origin_nm = s.origin_nm;
    model.cell_nm = s.cell_nm;
    ready = ready_workers(workers, count, &model, runs);
  }
  if (ready) {
    run_workers(workers, count);
    for (int i = 0; i < count; i++)
      for (size_t k = 0; k < CELLS; k++) s.cells[k] += workers[i].cells[k];
    summarise(outcomes, scratch, &s);
    free_workers(workers, count);
    *out = s;
  } else {
    free(s.cells);
  }
  free(outcomes);
  free(scratch);
  free(meant);
  return ready ? OX_OK : OX_ERROR;
}

void ox_spread_free(ox_spread *spread) {
  free(spread->cells);
  memset(spread, 0, sizeof *spread);
}
