/* Published limits. The rows stand here once; each names its paragraph. */
#include "oxbow/limits.h"

/* AIM 5-3-8 j2, holding speed table: MHA to 6 000 ft 200 KIAS; 6 001 to 14 000 ft 230 KIAS;
 * 14 001 ft and above 265 KIAS. */
double ox_us_speed_limit_kias(double altitude_ft) {
  if (altitude_ft <= 6000.0) return 200.0;
  if (altitude_ft <= 14000.0) return 230.0;
  return 265.0;
}

/* AIM 5-3-8 j4(a): inbound leg 1 minute at or below 14 000 ft MSL, 1 1/2 minutes above. */
double ox_standard_leg_s(double altitude_ft) {
  return altitude_ft <= 14000.0 ? 60.0 : 90.0;
}
