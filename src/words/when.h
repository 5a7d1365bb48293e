/* Pieces of sentences about times and fuel. Private to the words. */
#ifndef OX_WORDS_WHEN_H
#define OX_WORDS_WHEN_H

#include "say.h"

/* "1:40" in minutes and seconds, "2 h 05 min" from an hour on. */
words_phrase words_lasting(double lasting_s);
/* "18:25 UTC (13:25 local)" of a minute of the day UTC. */
words_phrase words_minute(const ox_case *c, int minute);
/* "18:25:30 UTC (13:25:30 local)", or without a clock "25:30 after the first crossing". */
words_phrase words_moment(const ox_case *c, double t_s);
/* "22.5 US gal" */
words_phrase words_fuel(const ox_case *c, double amount);

#endif
