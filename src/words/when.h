/* Pieces of sentences about times and fuel. Private to the words. */
#ifndef OX_WORDS_WHEN_H
#define OX_WORDS_WHEN_H

#include "say.h"

/* "1:40" in minutes and seconds, "2 h 05 min" from an hour on. */
void words_put_lasting(words_say *s, double lasting_s);
/* "18:25 UTC (13:25 local)" of a minute of the day UTC. */
void words_put_minute(words_say *s, const ox_case *c, int minute);
/* "18:25:30 UTC (13:25:30 local)", or without a clock "25:30 after the first crossing". */
void words_put_moment(words_say *s, const ox_case *c, double t_s);
/* "22.5 US gal" */
void words_put_fuel(words_say *s, const ox_case *c, double amount);

#endif
