/* Tokens: the text cut into words and numbers. Private to the clearance.
 *
 * Three passes. Lexing cuts the bytes and looks each word up in the lexicon; gathering joins spoken
 * numbers ("two four zero"), points of the compass ("south west") and settles letters that have
 * more than one meaning ("R"); the phrases then work on what is left. */
#ifndef OX_CLEARANCE_TOKENS_H
#define OX_CLEARANCE_TOKENS_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/clearance.h"

typedef enum {
  T_END, /* never in a text; ends a phrase */
  T_OTHER, T_CODE, T_QUOTED, T_FIGURE,
  T_PLACE, /* a latitude and longitude */
  /* parts of spoken numbers, gone after gathering unless they make no number */
  T_FRACTION, T_DIGIT, T_TEEN, T_TENS, T_HUNDRED, T_THOUSAND, T_K, T_HALF, T_POINT, T_MINUS,
  /* letters with several meanings, settled by gathering */
  T_R, T_M, T_D, T_H,
  /* dropped by gathering: articles without a word, filler as ignored */
  T_ARTICLE, T_FILLER,
  /* small words that join others; never reported as ignored */
  T_AND, T_AT, T_FOR, T_FROM, T_IN, T_OF, T_ON, T_OR, T_TO, T_AS, T_HOLD, T_INBOUND, T_OUTBOUND,
  T_LAST_JOINING = T_OUTBOUND,
  /* parts of clock times; outside of one they can be names */
  T_QUARTER, T_TOP, T_BOTTOM, T_OCLOCK, T_DAYPART,
  T_CLOCK, /* a time on the face of a clock: its value as in figures, 130 or 30 past the hour */
  T_DEGREES, T_DIR, T_DIR1, T_LEFT, T_RIGHT, T_ABOVE, T_ADDITIONAL, T_ADJUST, T_AHEAD,
  T_AIRWAY_LETTER, T_AIRWAY_WORD, T_ALTITUDE, T_ANTICIPATE, T_APPROACH, T_ARC, T_BEARING,
  T_BETWEEN, T_CLEARANCE, T_CANCEL, T_CLEARED, T_CLIMB, T_CONTINUE, T_CORRECTION, T_COURSE,
  T_CROSS, T_DELAY, T_DIRECT, T_DME, T_EFC, T_DISTANCE, T_ENROUTE, T_EXCEED, T_EXPECT, T_FEET,
  T_FINAL, T_FL, T_FLIGHT, T_FLY, T_FURTHER, T_HAND, T_HEADING, T_HOUR, T_KNOTS, T_LEAVE, T_LEG,
  T_LENGTH, T_LEVEL, T_LIMIT, T_LOCAL, T_LOCALIZER, T_MAINTAIN, T_MAX, T_MILE, T_MINUTE, T_NO,
  T_NON, T_NONSTANDARD, T_NOT, T_NOW, T_ONWARD, T_PAST, T_PATTERN, T_POINT_TYPE, T_POSITION,
  T_PRESENT, T_PROCEED, T_PUBLISHED, T_QDM, T_QDR, T_RADIAL, T_REDUCE, T_ROUTE, T_SECOND,
  T_SIDE_WORD, T_SPEED, T_STANDARD, T_STATION, T_TERMINAL, T_TIME, T_TRAFFIC, T_TRANSITION,
  T_TURN, T_UNKNOWN, T_UNTIL, T_UTC, T_VIA,
  T_KIND_COUNT
} clr_kind;

typedef struct {
  size_t at, length; /* bytes of the text */
  double value;      /* of a number or part of one; of a direction 0, 45, … 315 */
  clr_kind kind;
  int figures;       /* of a number: how many figures were written or spoken */
  bool breaks;       /* punctuation stands before it */
  bool half_day;     /* of a clock time: 12 hours later can be meant as well */
} clr_token;

/* What a word of the lexicon is. `value` as in the token. */
typedef struct {
  const char *word; /* lower case */
  clr_kind kind;
  int value;
} clr_word;

typedef struct {
  const char *text;
  size_t length;
  bool has_upper, has_lower; /* letters of either size in the text */
  size_t count;
  clr_token tokens[OX_CLEARANCE_BYTES_MAX];
  /* what each byte came to */
  unsigned char mark[OX_CLEARANCE_BYTES_MAX];
} clr_tokens;
enum { CLR_MARK_NONE, CLR_MARK_IGNORED, CLR_MARK_USED };

/* The word in any case, or NULL. */
const clr_word *clr_lookup(const char *bytes, size_t length);
/* The word that one slip of the keys made this of, or NULL: it is too short, or may be two. */
const clr_word *clr_lookup_misspelt(const char *bytes, size_t length);
/* The whole lexicon in alphabetic order. */
const clr_word *clr_lexicon(size_t *count);

/* text is at most OX_CLEARANCE_BYTES_MAX bytes. */
void clr_lex(clr_tokens *t, const char *text, size_t length);
/* Joins and settles; marks filler as ignored. */
void clr_gather(clr_tokens *t);

/* For gathering: a number from token i on, as T_FIGURE; how many tokens, 0 for none. */
size_t clr_gather_number(const clr_tokens *t, size_t i, clr_token *out);
/* A clock time likewise, as T_CLOCK. `expected`: the words before it lead to a time. */
size_t clr_gather_clock(const clr_tokens *t, size_t i, bool expected, clr_token *out);
/* A latitude and longitude likewise, as T_PLACE. */
size_t clr_gather_latlon(const clr_tokens *t, size_t i, clr_token *out);
/* How such a place is written as the name of a fix; false where the words are none. */
bool clr_place_name(const char *bytes, size_t length, char name[OX_FIX_NAME_BYTES]);

#endif
