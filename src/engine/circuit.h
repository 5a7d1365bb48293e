/* The legs of the flight: entry and circuits. Private to the engine. */
#ifndef OX_ENGINE_CIRCUIT_H
#define OX_ENGINE_CIRCUIT_H

#include "outbound.h"
#include "pilot.h"

/* From over the fix by a parallel or teardrop entry back to the fix. False when the fix was not
 * regained: the flight has then ended. */
bool entry_fly(ox_pilot *k, ox_entry_kind kind);

/* From a place after the outbound leg, with a turn in a sense, by the inbound course or direct,
 * back over the fix; `direct` asks for the way without the course. turn_kind names the first turn.
 * False when the fix cannot be regained. */
bool return_to_fix(ox_pilot *k, ox_leg_kind turn_kind, int sense, bool direct, double *offset_nm,
                   double *inbound_s);

/* What the next circuit has to go by: the one before it, if any. */
ox_circuit_order circuit_usual_order(const ox_pilot *k);

/* One circuit from fix to fix as ordered; measured values go to the flight. False as above. */
bool circuit_fly(ox_pilot *k, int number, bool direct_entry, const ox_circuit_order *order);

#endif
