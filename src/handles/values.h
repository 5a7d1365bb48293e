/* What the files of the handles share. */
#ifndef OX_HANDLES_VALUES_H
#define OX_HANDLES_VALUES_H

#include "oxbow/handles.h"

/* The north that the wind is read in: magnetic where all rows are, else true. Calm air is read in
 * true degrees, as the window's inputs show it. */
ox_north handles_wind_north(const ox_case *c);
/* The wind at the hold's altitude in that north: where it comes from (1..360 as its row says where
 * there is one row) and how strong. */
double handles_wind_from_deg(const ox_case *c, const ox_setup *setup);
double handles_wind_kt(const ox_case *c, const ox_setup *setup);
/* Puts another wind at the hold's altitude (see ox_handle_drag). from_deg in that north. */
void handles_set_wind(ox_case *c, const ox_setup *setup, double from_deg, double kt);

/* 0 is 360, as people write it. */
double handles_circle_deg(double deg);

/* The length of the leg in its unit (s or NM), resolved; and its ends and grids. */
double handles_leg(const ox_case *c, const ox_setup *setup);
void handles_set_leg(ox_case *c, double value);
/* Where the first inbound turn begins; that of the hold in still air where none was flown. */
ox_vec handles_leg_end_nm(const ox_flight *flight);
/* The leg (s or NM, not snapped) whose end lies farthest out where the place does, seen along the
 * outbound course. */
double handles_leg_for_place(const ox_case *base, const ox_flight *flight, ox_vec place_nm,
                             double min, double max, ox_flight *scratch);

#endif
