/* Leaving the fix at a time: how long the circuits that are left are to last. Private. */
#ifndef OX_ENGINE_LEAVING_H
#define OX_ENGINE_LEAVING_H

#include "outbound.h"

/* Seconds after the first fix passage at which the fix is to be left; 0 when there is no order to,
 * or no time to reckon from. */
double leaving_after_s(ox_pilot *k);

/* The order for the circuit that begins now, so that the last one ends at leave_s; false when the
 * fix is left now. `usual` is the order as the technique would have it. */
bool leaving_order(ox_pilot *k, double leave_s, const ox_circuit_order *usual,
                   ox_circuit_order *order);

#endif
