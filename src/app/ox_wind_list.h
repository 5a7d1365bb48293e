/* The rows of wind of a case as lists: reading, changing, adding and removing, without a window. */
#ifndef OX_WIND_LIST_H
#define OX_WIND_LIST_H

#include "ox_wind_rows.h"
#include "oxbow/fields.h"

/* Fields of a row, in the order of oxbow/fields.h: when, from, speed, north. */
#define OX_WIND_LIST_FIELDS 4
const ox_field *ox_wind_list_fields(ox_wind_rows_kind kind);

/* Rows to be shown: one wind at every altitude is none by altitude. */
int ox_wind_list_count(const ox_case *c, ox_wind_rows_kind kind);
double ox_wind_list_get(const ox_case *c, ox_wind_rows_kind kind, int row, int field);
/* No check. */
void ox_wind_list_set(ox_case *c, ox_wind_rows_kind kind, int row, int field, double value);
/* Adds a row after the last, with its wind: 3 000 ft higher, or two minutes later. One wind becomes
 * two rows, the first at the hold's altitude. False where there is no room for one. */
bool ox_wind_list_add(ox_case *c, ox_wind_rows_kind kind);
/* The last but one row by altitude leaves one wind at every altitude. */
void ox_wind_list_remove(ox_case *c, ox_wind_rows_kind kind, int row);

#endif
