/* Rows of clearances with the case they mean, for several tests. */
#ifndef CLEARANCE_ROWS_H
#define CLEARANCE_ROWS_H

#include "ox_test.h"

#include "oxbow/clearance.h"

/* What a row expects. NULL, 0 and KEPT stand for what the base has. */
#define KEPT (-2)
#define NONE (-1)
typedef struct {
  const char *source;
  const char *text;
  const char *fix;    /* NULL: kept */
  double inbound_deg; /* 0: kept */
  char turns;         /* 'R', 'L' or 'K' kept */
  double leg;         /* seconds, or miles when negative; 0: standard; KEPT_LEG */
  double altitude_ft; /* 0: kept */
  double limit_kias;  /* 0: none */
  int efc;            /* hhmm, NONE or KEPT */
  const char *asks;   /* letters of question_letters, in alphabetic order */
} clearance_row;
#define KEPT_LEG 9999.0

/* Letters for kinds of questions, in the order of ox_ask_kind. */
static const char question_letters[] = "SFDLEdorpnugsxtzha";

/* A base that no row could be mistaken for. */
static inline ox_case row_base(void) {
  ox_case base = ox_case_default();
  strcpy(base.hold.fix, "BASE");
  base.hold.inbound_deg = 137;
  base.hold.turns = OX_TURNS_LEFT;
  base.hold.leg_s = 77;
  base.hold.altitude_ft = 6100;
  base.hold.limit_kias = 188;
  base.hold.efc_min = 61;
  return base;
}

static inline void asked_letters(const ox_clearance *c, char out[64]) {
  size_t n = 0;
  for (const char *l = question_letters; *l; l++)
    for (size_t i = 0; i < c->question_count && n < 63; i++)
      if (c->questions[i].kind == (ox_ask_kind)(l - question_letters)) out[n++] = *l;
  out[n] = '\0';
}

/* Same letters, whatever their order. */
static inline bool same_letters(const char *a, const char *b) {
  if (strlen(a) != strlen(b)) return false;
  for (const char *l = question_letters; *l; l++) {
    size_t in_a = 0, in_b = 0;
    for (const char *p = a; *p; p++)
      in_a += *p == *l;
    for (const char *p = b; *p; p++)
      in_b += *p == *l;
    if (in_a != in_b) return false;
  }
  return true;
}

static inline bool leg_is(const clearance_row *row, const ox_case *c, const ox_case *base) {
  if (row->leg == KEPT_LEG)
    return c->hold.leg_by == base->hold.leg_by && c->hold.leg_s == base->hold.leg_s;
  if (row->leg < 0)
    return c->hold.leg_by == OX_LEG_BY_DISTANCE && fabs(c->hold.leg_nm + row->leg) < 1e-9;
  return c->hold.leg_by == OX_LEG_BY_TIME && c->hold.leg_s == row->leg;
}

static inline bool turns_are(const clearance_row *row, const ox_case *c, const ox_case *base) {
  if (row->turns == 'K') return c->hold.turns == base->hold.turns;
  return c->hold.turns == (row->turns == 'L' ? OX_TURNS_LEFT : OX_TURNS_RIGHT);
}

/* Prints what differs; true when nothing does. */
static inline bool row_holds(const clearance_row *row, const ox_clearance_options *options) {
  ox_case base = row_base();
  ox_clearance c;
  ox_status status = ox_clearance_read(row->text, &base, options, &c);
  char asked[64] = "refused";
  bool good = status != OX_ERROR;
  if (good) {
    const ox_case *r = &c.result;
    int efc = row->efc == KEPT ? base.hold.efc_min
              : row->efc < 0   ? -1
                               : row->efc / 100 * 60 + row->efc % 100;
    double inbound_deg = row->inbound_deg == 0 ? base.hold.inbound_deg : row->inbound_deg;
    double altitude_ft = row->altitude_ft == 0 ? base.hold.altitude_ft : row->altitude_ft;
    double limit_kias = row->limit_kias == KEPT ? base.hold.limit_kias : row->limit_kias;
    asked_letters(&c, asked);
    good = strcmp(r->hold.fix, row->fix ? row->fix : base.hold.fix) == 0 &&
           r->hold.inbound_deg == inbound_deg && turns_are(row, r, &base) &&
           leg_is(row, r, &base) && r->hold.altitude_ft == altitude_ft &&
           r->hold.limit_kias == limit_kias && r->hold.efc_min == efc &&
           same_letters(asked, row->asks) && ox_case_check(r, NULL, 0) == 0 &&
           (status == OX_ADVISORY) == (c.question_count > 0);
    if (!good)
      print_error("\"%s\" (%s)\n  got fix %s, inbound %g, turns %d, leg %d %g s %g NM, %g ft, "
                  "limit %g, EFC %d, asks \"%s\", wanted \"%s\"\n",
                  row->text, row->source, r->hold.fix, r->hold.inbound_deg, (int)r->hold.turns,
                  (int)r->hold.leg_by, r->hold.leg_s, r->hold.leg_nm, r->hold.altitude_ft,
                  r->hold.limit_kias, r->hold.efc_min, asked, row->asks);
  } else {
    print_error("\"%s\" (%s) was refused\n", row->text, row->source);
  }
  return good;
}

/* A table of rows that is a test of its own: CLEARANCE_TABLE in the array of tests. */
typedef struct {
  const clearance_row *rows;
  size_t count;
  const ox_clearance_options *options; /* NULL: the default */
} clearance_table;

static inline void table_holds(void **state) {
  const clearance_table *table = (const clearance_table *)*state;
  size_t wrong = 0;
  assert_true(table->count > 0);
  for (size_t i = 0; i < table->count; i++)
    wrong += !row_holds(&table->rows[i], table->options);
  assert_int_equal(wrong, 0);
}
#define CLEARANCE_TABLE(what, table_rows, table_options)                                          \
  {what, table_holds, NULL, NULL,                                                                  \
   &(clearance_table){table_rows, sizeof(table_rows) / sizeof *(table_rows), table_options}}

#endif
