/* Brent's root finder (R. P. Brent, Algorithms for Minimization without Derivatives, 1973, ch. 4):
 * inverse quadratic interpolation or secant while they behave, bisection otherwise. */
#include "root.h"

#include <float.h>
#include <math.h>

typedef struct {
  double a, fa; /* the previous best */
  double b, fb; /* the best */
  double c, fc; /* on the other side of the root from b */
} bracket;

/* Makes b the end with the smaller value. */
static void put_best_in_b(bracket *k) {
  if (fabs(k->fc) >= fabs(k->fb)) return;
  k->a = k->b;
  k->b = k->c;
  k->c = k->a;
  k->fa = k->fb;
  k->fb = k->fc;
  k->fc = k->fa;
}

/* Interpolated step from b as p / q; q is 0 when there is none to be had. */
static void interpolate(const bracket *k, double half, double *p, double *q) {
  double s = k->fb / k->fa;
  if (k->a == k->c) {
    *p = 2.0 * half * s;
    *q = 1.0 - s;
  } else {
    double r = k->fa / k->fc, t = k->fb / k->fc;
    *p = s * (2.0 * half * r * (r - t) - (k->b - k->a) * (t - 1.0));
    *q = (r - 1.0) * (t - 1.0) * (s - 1.0);
  }
  if (*p > 0.0) *q = -*q;
  *p = fabs(*p);
}

double ox_root(ox_function f, void *context, double a, double b, double fa, double fb) {
  if (fa == 0.0) return a;
  bracket k = {a, fa, b, fb, a, fa};
  double step = b - a, before = step;
  for (int i = 0; i < 200 && k.fb != 0.0; i++) {
    if ((k.fb > 0.0) == (k.fc > 0.0)) {
      k.c = k.a;
      k.fc = k.fa;
      step = before = k.b - k.a;
    }
    put_best_in_b(&k);
    double tolerance = 2.0 * DBL_EPSILON * fabs(k.b) + DBL_MIN;
    double half = 0.5 * (k.c - k.b);
    if (fabs(half) <= tolerance) break;
    if (fabs(before) >= tolerance && fabs(k.fa) > fabs(k.fb)) {
      double p, q;
      interpolate(&k, half, &p, &q);
      if (2.0 * p < fmin(3.0 * half * q - fabs(tolerance * q), fabs(before * q))) {
        before = step;
        step = p / q;
      } else {
        step = before = half;
      }
    } else {
      step = before = half;
    }
    k.a = k.b;
    k.fa = k.fb;
    k.b += fabs(step) > tolerance ? step : copysign(tolerance, half);
    k.fb = f(k.b, context);
  }
  return k.b;
}
