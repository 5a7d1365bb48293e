/* The legs of the flight: entry and circuits. Private to the engine. */
#ifndef OX_ENGINE_CIRCUIT_H
#define OX_ENGINE_CIRCUIT_H

#include "outbound.h"
#include "pilot.h"

/* From over the fix by a parallel or teardrop entry back to the fix. False when the fix was not
 * regained: the flight has then ended. */
bool entry_fly(ox_pilot *k, ox_entry_kind kind);

/* From a place after the outbound leg, with a turn in a sense, by the inbound course or direct,
 * back over the fix; `direct` asks for the way without the course. turn_kind names the first turn. False when the fix cannot be regained. */
bool return_to_fix(ox_pilot *k, ox_leg_kind turn_kind, int sense, bool direct, double *offset_nm,
                   double *inbound_s);

/* What the circuit after `flown` circuits has to go by. */
ox_circuit_order circuit_order_after(const ox_pilot *k, size_t flown, double total_s);

/* One circuit from fix to fix; measured values go to the flight. total_s > 0: it is to last so
 * long. False as above. */
bool circuit_fly(ox_pilot *k, int number, bool direct_entry, double total_s);

#endif
