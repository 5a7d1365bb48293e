/* Outcomes of every fallible function in Oxbow.
 *
 * Three outcomes, not two: a teaching tool must still draw what is flown wrongly and say that
 * it is wrong, so an advisory comes with a complete result. */
#ifndef OXBOW_STATUS_H
#define OXBOW_STATUS_H

typedef enum {
  OX_OK = 0,       /* the result is computed and there is nothing to remark */
  OX_ADVISORY = 1, /* the result is computed and something should be said about it */
  OX_ERROR = -1,   /* the input was refused; every output is as it was before the call */
} ox_status;

#endif
