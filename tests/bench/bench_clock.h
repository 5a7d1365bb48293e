/* What the painter's benchmarks share: the processor's time of this thread, and medians. */
#ifndef BENCH_CLOCK_H
#define BENCH_CLOCK_H

#include <stdlib.h>
#include <time.h>

static inline double now_ms(void) {
  struct timespec t;
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t); /* what others do meanwhile does not count */
  return (double)t.tv_sec * 1e3 + (double)t.tv_nsec * 1e-6;
}

static inline int by_size(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Sorts them. */
static inline double median(double *v, size_t n) {
  qsort(v, n, sizeof *v, by_size);
  return v[n / 2];
}

#endif
