/* What is said of a fix and of a route. Every course says by which north it is. */
#include <math.h>
#include <stdio.h>

#include "oxbow/journey.h"
#include "oxbow/text.h"
#include "remark.h"

typedef struct {
  char (*lines)[OX_REMARK_BYTES];
  size_t count;
} words;

static char *next_line(words *w) {
  return w->lines[w->count < OX_JOURNEY_WORDS_MAX ? w->count++ : OX_JOURNEY_WORDS_MAX - 1];
}

typedef struct {
  char text[OX_FIGURES_BYTES];
} figure;

static figure number(double value, int decimals) {
  figure f;
  ox_figures(f.text, value, decimals);
  return f;
}

/* "007°M": three figures, north is 360; the letter is the language's. */
static figure course(double true_deg, double variation_deg) {
  figure f;
  int whole = (int)lround(ox_magnetic_deg(true_deg, variation_deg)) % 360;
  snprintf(f.text, sizeof f.text, C_("a magnetic course", "%03d°M"),
           whole == 0 ? 360 : whole);
  return f;
}

static figure minutes(double s) {
  figure f;
  long whole = lround(s);
  snprintf(f.text, sizeof f.text, "%ld:%02ld", whole / 60, whole % 60);
  return f;
}

#define SAY(...) ox_remark(OX_OK, next_line(w), OX_REMARK_BYTES, __VA_ARGS__)

/* --- the route --- */

static void say_arrival(words *w, const ox_journey *j, const ox_case *c) {
  const ox_journey_point *to = &j->points[j->hold];
  figure leg = course(to->course_true_deg, c->variation_deg);
  figure heading = course(j->arriving_heading_true_deg, c->variation_deg);
  SAY(_("The route arrives at %s from %s on %s, %s NM; heading %s holds it in this wind."),
      to->name,
      j->points[j->hold - 1].name, leg.text, number(to->nm, 1).text, heading.text);
  if (j->joined)
    SAY(_("The arrival of this case is the end of that leg."));
  else
    SAY(_("The arrival of this case is not on that leg: it has another track, or begins before "
          "it."));
}

static void say_missed(words *w, const ox_journey *j, const ox_case *c) {
  const ox_journey_point *from = &j->points[j->missed];
  double to_ft = c->hold.altitude_ft;
  if (!j->hold_allowed) {
    SAY(_("The hold belongs to the missed approach: it must be after %s, the missed approach "
          "point."),
        from->name);
    return;
  }
  for (size_t i = (size_t)j->missed + 1; i < j->point_count && (int)i <= j->hold; i++)
    SAY(_("Missed approach: over %s at %s ft, climbing %s ft a minute from %s ft at %s."),
        j->points[i].name, number(j->points[i].altitude_ft, 0).text,
        number(c->hold.climb_ft_min, 0).text, number(from->altitude_ft, 0).text, from->name);
  double short_ft = to_ft - j->points[j->hold].altitude_ft;
  if (short_ft > 0.5)
    SAY(_("That is %s ft below the altitude of the hold: the climb goes on in it."),
        number(short_ft, 0).text);
}

static void say_early(words *w, const ox_journey *j, const ox_case *c) {
  if (j->early_count == 0) return;
  SAY(_("Turning to %s before %s would fly %s instead, up to %s NM off the missed approach, which "
        "is surveyed from %s on: fly to it first."),
      j->points[j->hold].name, j->points[j->missed].name,
      course(j->early_course_true_deg, c->variation_deg).text, number(j->early_off_nm, 1).text,
      j->points[j->missed].name);
}

static void say_onward(words *w, const ox_journey *j, const ox_case *c) {
  if (j->hold + 1 >= (int)j->point_count) return;
  const ox_journey_point *to = &j->points[j->hold + 1];
  /* By the plane: from the fix its bearings are exact. */
  double from_fix_deg = ox_bearing_deg(to->at_nm);
  SAY(_("After the hold: to %s on %s, %s NM, %s."), to->name,
      course(from_fix_deg, c->variation_deg).text, number(to->nm, 1).text, minutes(to->s).text);
}

size_t ox_journey_words(const ox_journey *journey, const ox_case *c,
                        char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES]) {
  words all = {.lines = lines}, *w = &all;
  if (journey->point_count == 0) return 0;
  if (journey->hold < 0) {
    SAY(_("The hold at %s is not at a point of the route."), c->hold.fix);
    return all.count;
  }
  if (journey->hold > 0) say_arrival(w, journey, c);
  if (journey->missed >= 0) say_missed(w, journey, c);
  say_early(w, journey, c);
  say_onward(w, journey, c);
  return all.count;
}

/* --- the fix --- */

double ox_fix_delay_nm(const ox_case *c) {
  double track_deg, gs_kt;
  return ox_fix_arrival(c, &track_deg, &gs_kt) == OX_ERROR ? 0.0 : gs_kt * 10.0 / 3600.0;
}

static void say_cut(words *w, const ox_points *points, const ox_point *point) {
  ox_crossing crossing;
  if (ox_point_crossing(points, point, &crossing, NULL, 0) == OX_ERROR) return;
  SAY(_("The radials cut at %s°, %s and %s NM out: one degree off on each moves the fix %s NM."),
      number(crossing.cut_deg, 0).text, number(crossing.a_nm, 1).text,
      number(crossing.b_nm, 1).text, number(ox_crossing_error_nm(&crossing, 1.0), 2).text);
}

static void say_ahead(words *w, const ox_fix *fix, const ox_case *c) {
  double track_deg = 0.0, gs_kt = 0.0;
  if (fix->kind != OX_FIX_AHEAD_NM && fix->kind != OX_FIX_AHEAD_S) return;
  if (ox_fix_arrival(c, &track_deg, &gs_kt) == OX_ERROR) return;
  SAY(_("The fix is %s NM ahead on track %s, %s s at %s kt over the ground."),
      number(c->arrival.distance_nm, 2).text, course(track_deg, c->variation_deg).text,
      number(gs_kt > 0.0 ? 3600.0 * c->arrival.distance_nm / gs_kt : 0.0, 0).text,
      number(gs_kt, 0).text);
  SAY(_("Each 10 s of delay in setting the hold moves it %s NM farther."),
      number(ox_fix_delay_nm(c), 2).text);
}

size_t ox_fix_words(const ox_points *points, const ox_fix *fix, const ox_case *c,
                    char lines[OX_JOURNEY_WORDS_MAX][OX_REMARK_BYTES]) {
  words all = {.lines = lines}, *w = &all;
  char where[OX_COORDINATES_BYTES], remark[OX_REMARK_BYTES];
  ox_latlon at;
  if (ox_fix_has_place(points, fix, c)) {
    ox_status status = ox_fix_place(points, fix, c, &at, remark, sizeof remark);
    if (status != OX_ERROR && ox_latlon_print(at, OX_FORM_DEG_MIN, where, sizeof where) == OX_OK)
      SAY(_("%s is at %s."), c->hold.fix, where);
    if (status != OX_OK) SAY("%s", remark);
    const ox_point *listed = ox_points_find(points, c->hold.fix);
    if (fix->kind == OX_FIX_POINT && fix->point.kind == OX_POINT_CROSSING)
      say_cut(w, points, &fix->point);
    else if (fix->kind == OX_FIX_NAMED && listed && listed->kind == OX_POINT_CROSSING)
      say_cut(w, points, listed);
  }
  say_ahead(w, fix, c);
  return all.count;
}
