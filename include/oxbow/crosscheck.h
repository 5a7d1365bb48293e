/* The cross-check: what the equipment shows of a hold beside what was cleared, item by item, and
 * the hold as the equipment would fly it. Plain values; nothing here allocates but the one sentence
 * that flies both. */
#ifndef OXBOW_CROSSCHECK_H
#define OXBOW_CROSSCHECK_H

#include "oxbow/flight.h"

typedef enum {
  OX_CHECK_FIX,
  OX_CHECK_DIRECTION, /* where the hold lies from the fix */
  OX_CHECK_COURSE,
  OX_CHECK_TURNS,
  OX_CHECK_LEG,
  OX_CHECK_EFC,
  OX_CHECK_ITEM_COUNT
} ox_check_item;

typedef enum { OX_CHECK_NOT_SHOWN, OX_CHECK_SAME, OX_CHECK_DIFFERS } ox_check_result;

typedef struct {
  ox_check_result result;
  char cleared[80], shown[80]; /* "inbound 240", "outbound 060" */
  char means[400];             /* what follows when it is flown; empty where nothing does */
} ox_check_row;

typedef struct {
  ox_check_row rows[OX_CHECK_ITEM_COUNT]; /* by ox_check_item */
  int shown, differ;       /* how many items */
  bool flown_otherwise;    /* the hold as shown has another track */
  ox_case flown;           /* the case as the equipment would fly it; ox_case_check accepts it */
} ox_crosscheck;

/* "Fix", "Course", … and "same", "differs", "not shown". Static. */
const char *ox_check_item_name(ox_check_item item);
const char *ox_check_result_name(ox_check_result result);

/* Whether anything is entered that the equipment shows. */
bool ox_shown_is_given(const ox_case *c);

/* Compares. A course is the same within 1 degree, a leg within 1 s or 0.05 NM; a length shown for
 * a leg cleared by time within a tenth of that time at the true airspeed in still air. OX_OK: the
 * same, or nothing shown; OX_ADVISORY: something differs; OX_ERROR (*out untouched) when
 * ox_case_check finds a fault. */
ox_status ox_crosscheck_make(const ox_case *c, ox_crosscheck *out);

/* The whole in a few sentences: how much differs, and in figures where the two tracks lead
 * (OX_CROSSCHECK_BYTES hold it). `flight` is that of the case as cleared. */
#define OX_CROSSCHECK_BYTES 800
void ox_words_crosscheck(char *buf, size_t bytes, const ox_case *c, const ox_flight *flight,
                         const ox_crosscheck *check);

#endif
