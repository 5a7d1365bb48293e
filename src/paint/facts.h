/* Words of the lines over the picture. */
#ifndef PAINT_FACTS_H
#define PAINT_FACTS_H

#include "paint_private.h"

void ox_title_words(const ox_picture *p, char *buf, size_t bytes);
/* detail 0..3: the more, the longer. */
void ox_facts_words(const ox_picture *p, char *buf, size_t bytes, int detail);
/* Why the hold cannot be flown as asked, or NULL. Static. */
const char *ox_notice_words(const ox_picture *p);

#endif
