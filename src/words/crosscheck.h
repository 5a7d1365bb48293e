/* What follows when the hold is flown as shown, item by item. Private to the words. */
#ifndef OX_WORDS_CROSSCHECK_H
#define OX_WORDS_CROSSCHECK_H

#include "oxbow/crosscheck.h"

/* The inbound course that is shown (magnetic), of a shown course that is there. */
double words_shown_inbound_deg(const ox_shown *shown);
/* Writes row->means of an item that differs. */
void words_check_means(const ox_case *c, const ox_setup *setup, ox_check_item item,
                       ox_check_row *row);

#endif
