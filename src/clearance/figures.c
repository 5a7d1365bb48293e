/* Figures for people: those that are said on the radio, in the words of another language. */
#include "figures.h"

#include <math.h>

#include "oxbow/angle.h"
#include "oxbow/text.h"
#include "reading.h"

static clr_text into(clr_figure *figure) {
  clr_text t = clr_into(figure->text, sizeof figure->text);
  t.for_people = true;
  return t;
}

static clr_figure one(void (*put)(clr_text *, const ox_say_options *, double),
                      const ox_say_options *o, double value) {
  clr_figure figure;
  clr_text t = into(&figure);
  put(&t, o, value);
  return figure;
}

clr_figure clr_bearing(const ox_say_options *o, double bearing_deg) {
  return one(clr_put_bearing, o, bearing_deg);
}

clr_figure clr_whole(const ox_say_options *o, double value) {
  return one(clr_put_whole, o, value);
}

clr_figure clr_decimal(const ox_say_options *o, double value) {
  return one(clr_put_decimal, o, value);
}

clr_figure clr_altitude(const ox_say_options *o, double altitude_ft) {
  return one(clr_put_altitude, o, altitude_ft);
}

clr_figure clr_clock(const ox_say_options *o, int minute) {
  clr_figure figure;
  clr_text t = into(&figure);
  clr_put_clock(&t, o, minute);
  return figure;
}

clr_figure clr_knots(const ox_say_options *o, double kt) {
  clr_figure figure;
  clr_text t = into(&figure);
  clr_put(&t, _("%s knots"), clr_whole(o, kt).text);
  return figure;
}

static void put_seconds(clr_text *t, const ox_say_options *o, int s) {
  clr_put(t, ox_text_count("%s second", "%s seconds", (unsigned long)s), clr_whole(o, s).text);
}

clr_figure clr_duration(const ox_say_options *o, double duration_s) {
  clr_figure figure;
  clr_text t = into(&figure);
  int s = isfinite(duration_s) ? (int)fmax(0, fmin(1e7, round(duration_s))) : 0;
  int minutes = s / 60;
  if (!o->spoken) {
    clr_put(&t, "%d:%02d", minutes, s % 60);
    return figure;
  }
  if (minutes > 0)
    clr_put(&t, ox_text_count("%s minute", "%s minutes", (unsigned long)minutes),
            clr_whole(o, minutes).text);
  if (minutes > 0 && s % 60 == 0) return figure;
  clr_next(&t);
  put_seconds(&t, o, s % 60);
  return figure;
}

clr_figure clr_legs(const ox_say_options *o, double leg_s) {
  clr_figure figure;
  clr_text t = into(&figure);
  int s = isfinite(leg_s) ? (int)fmax(0, fmin(1e6, round(leg_s))) : 0;
  clr_figure minutes = clr_whole(o, s / 60);
  if (s < 60 || s % 30 != 0)
    clr_put(&t, _("%s second legs"), clr_whole(o, s).text);
  else if (s % 60 == 0) /* English has no plural before a noun; other languages do */
    clr_put(&t, ox_text_count("%s minute legs", "%s minute legs", (unsigned long)(s / 60)),
            minutes.text);
  else
    clr_put(&t, o->spoken ? _("%s and one half minute legs") : _("%s 1/2 minute legs"),
            minutes.text);
  return figure;
}

clr_figure clr_holding_speed(const ox_say_options *o, const ox_case *c, const ox_flight *f) {
  clr_figure figure;
  clr_text t = into(&figure);
  double given_kias = c->hold.limit_kias;
  double limit_kias =
      given_kias > 0 ? given_kias : clr_speed_limit_kias(o->wording, c->hold.altitude_ft);
  const char *mach = o->spoken ? _("Mach zero decimal eight tree") : _("Mach 0.83");
  clr_figure limit = clr_knots(o, limit_kias);
  /* translators: two speeds, as in "100 knots indicated, at most 200 knots" */
  clr_put(&t, _("%s indicated, at most %s"), clr_knots(o, f->setup.ias_kt).text,
          limit_kias > 0 ? limit.text : mach);
  return figure;
}

const char *clr_eighth(double bearing_deg) {
  if (!isfinite(bearing_deg)) bearing_deg = 0;
  switch ((int)floor(ox_norm360_deg(bearing_deg) / 45 + 0.5) % 8) {
  case 0: return C_("of a fix or a course", "north");
  case 1: return C_("of a fix or a course", "northeast");
  case 2: return C_("of a fix or a course", "east");
  case 3: return C_("of a fix or a course", "southeast");
  case 4: return C_("of a fix or a course", "south");
  case 5: return C_("of a fix or a course", "southwest");
  case 6: return C_("of a fix or a course", "west");
  default: return C_("of a fix or a course", "northwest");
  }
}
