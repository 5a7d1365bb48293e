/* Root of a continuous function in a bracket. Private to the engine. */
#ifndef OX_ENGINE_ROOT_H
#define OX_ENGINE_ROOT_H

typedef double (*ox_function)(double x, void *context);

/* x in [a, b] with f(x) = 0 to the last figures of x, given f(a) and f(b) of opposite sign (or one
 * of them zero). Brent's method: never leaves the bracket, ends after at most 200 evaluations. */
double ox_root(ox_function f, void *context, double a, double b, double fa, double fb);

#endif
