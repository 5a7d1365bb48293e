/* What is measured in a circuit, and the advice that follows from it. Private to the engine. */
#ifndef OX_ENGINE_MEASURE_H
#define OX_ENGINE_MEASURE_H

#include "outbound.h"

/* After the outbound leg: its times, its end, and the events abeam and clock start. */
void measure_outbound(ox_pilot *k, const ox_outbound_plan *plan, ox_circuit *m, double level_t_s,
                      double timed_to_s);
/* After the circuit, whose legs begin at an index. */
void measure_circuit(ox_pilot *k, ox_circuit *m, size_t first_leg);

#endif
