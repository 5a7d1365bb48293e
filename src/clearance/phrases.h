/* The grammar: one table of phrases over tokens, and the matcher. Private to the clearance. */
#ifndef OX_CLEARANCE_PHRASES_H
#define OX_CLEARANCE_PHRASES_H

#include <stdint.h>

#include "tokens.h"

/* Elements of a phrase besides the kinds of tokens: sets of kinds, and what takes several. */
enum {
  E_NAME = T_KIND_COUNT, /* a name with its facility */
  E_TAIL,                /* the words of a routing, up to punctuation or the next item */
  E_BOUND,               /* inbound, outbound */
  E_CLOCK,               /* a time in figures or on the face of a clock */
  E_EIGHTH,              /* any point of the compass */
  E_FROM_OF,
  E_GO,                  /* cleared, proceed, direct */
  E_HANDED,              /* turns, hand, pattern */
  E_LENGTH,              /* minutes, seconds, miles */
  E_SIDE,                /* left, right */
  E_SPAN,                /* minutes, hours */
  E_TIME_OF,             /* time, length */
  E_TYPE,                /* station or point */
  E_ZONE,                /* UTC, local */
  E_KIND_COUNT
};
#define E_KIND 0x00ff
#define E_OPTIONAL 0x0100
#define E_CROSSES 0x0200 /* may stand after punctuation */

#define CLR_PHRASE_ELEMENTS 10
#define CLR_NO_ITEM OX_ITEM_KIND_COUNT /* understood, and of no use for the hold */

typedef struct {
  ox_item_kind item;
  bool after_direction; /* only directly after the words of the direction */
  uint16_t elements[CLR_PHRASE_ELEMENTS + 1]; /* T_END last */
} clr_phrase;

const clr_phrase *clr_phrases(size_t *count);

/* What a phrase caught. */
typedef struct {
  const clr_phrase *phrase;
  size_t tokens;      /* how many it took */
  int figure_count;
  clr_token figures[3];
  clr_kind seen[CLR_PHRASE_ELEMENTS]; /* kinds of the elements that matched, in order */
  size_t seen_count;
  double eighth_deg;
  ox_span name;       /* length 0: none */
  bool quoted;
  ox_facility facility;
} clr_catch;

/* Whether a phrase can begin with a token of this kind: most cannot, which is quick to see. */
static inline bool clr_may_begin(const clr_phrase *phrase, clr_kind kind) {
  int first = phrase->elements[0];
  return first >= E_NAME || (clr_kind)first == kind;
}

bool clr_saw(const clr_catch *caught, clr_kind kind);
/* Tries one phrase at token i; false when it does not fit. */
bool clr_try(const clr_tokens *t, size_t i, const clr_phrase *phrase, clr_catch *caught);

/* The item that a catch means; false when the value makes no sense for the phrase, so that another
 * one should be tried. A value out of range makes an item that is not sound. */
bool clr_make_item(const clr_tokens *t, const clr_catch *caught, ox_item *item);

#endif
