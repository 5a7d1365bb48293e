/* Unit suffixes used in every name, and the few conversions between them.
 *
 *   _deg   degrees (bearings clockwise from north)     _s     seconds
 *   _nm    nautical miles (1 852 m exactly)            _ft    feet (0.3048 m exactly)
 *   _kt    knots = NM an hour                          _kias  knots indicated
 *   _min   minutes                                     _deg_s degrees a second
 * A bearing is magnetic unless its name says `true` or the comment says which north. */
#ifndef OXBOW_UNITS_H
#define OXBOW_UNITS_H

#define OX_PI 3.14159265358979323846
#define OX_RAD_PER_DEG (OX_PI / 180.0)
#define OX_FT_PER_NM (1852.0 / 0.3048) /* 6076.1155; both factors are exact by definition */
#define OX_S_PER_H 3600.0

#endif
