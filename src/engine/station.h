/* A DME station in the hold's own frame. Private to the engine. */
#ifndef OX_ENGINE_STATION_H
#define OX_ENGINE_STATION_H

#include "frame.h"
#include "oxbow/steady.h"

ox_dme station_in_frame(const ox_frame *f, const ox_dme *dme);

#endif
