/* The working of the entry: which sector, how near its boundary, and what is flown first. */
#include <math.h>

#include "oxbow/angle.h"
#include "rows.h"

#define GROUP N_("Entry")
#define SOURCE_SECTORS                                                                             \
  N_("AIM 5-3-8 j3 and FIG 5-3-4; ICAO Doc 8168 Vol I Part I Section 6 Chapter 1 (sectors 2, 1, "  \
     "3)")

typedef struct {
  const char *capital; /* "Heading" or "Track", by which the sector is chosen */
  double crossing_true_deg;
  double outbound_true_deg;
  double right_deg; /* crossing less outbound course, right positive */
} crossing;

static crossing crossing_of(const words_rows *r) {
  const ox_setup *s = &r->f->setup;
  bool track = r->c->technique.sector == OX_SECTOR_TRACK;
  crossing x;
  x.capital = track ? C_("the sector goes by it", "Track") : C_("the sector goes by it", "Heading");
  x.crossing_true_deg = track ? s->arrival_track_true_deg : s->arrival_heading_true_deg;
  x.outbound_true_deg = ox_norm360_deg(s->inbound_true_deg + 180.0);
  x.right_deg = ox_turn_between_deg(x.outbound_true_deg, x.crossing_true_deg);
  return x;
}

static void put_position(words_say *s, const words_rows *r, const crossing *x) {
  words_figure at = words_marked(r->c, x->crossing_true_deg);
  words_figure outbound = words_marked(r->c, x->outbound_true_deg);
  /* translators: the first %s is "Heading" or "Track" */
  if (fabs(x->right_deg) < 0.05)
    words_put(s, _("%s %s is the outbound course %s itself"), x->capital, at.text, outbound.text);
  else if (fabs(x->right_deg) > 179.95)
    words_put(s, _("%s %s is the inbound course, opposite to the outbound course %s"), x->capital,
              at.text, outbound.text);
  else
    words_put(s, _("%s %s is %s° %s of the outbound course %s"), x->capital, at.text,
              words_short(fabs(x->right_deg), 1).text, words_side(x->right_deg >= 0),
              outbound.text);
}

static void add_entry(words_rows *r, const crossing *x) {
  words_say value = {0}, why = {0};
  bool by_track = r->c->technique.sector == OX_SECTOR_TRACK;
  words_put(&value, "%s", _(ox_entry_name(r->f->entry.kind)));
  put_position(&why, r, x);
  words_put(&why, "%s",
            r->c->hold.turns == OX_TURNS_LEFT
                ? _("; with left turns 0–70° right of it is teardrop, 0–110° left of it parallel, "
                    "the other 180° direct")
                : _("; with right turns 0–70° left of it is teardrop, 0–110° right of it parallel, "
                    "the other 180° direct"));
  rows_add(r, GROUP, by_track ? N_("Entry by track") : N_("Entry"), &value, &why,
           by_track ? N_("AIM 5-3-8 j3, with the track of an area navigation system as in j7(a)(1)")
                    : SOURCE_SECTORS);
}

static void add_other(words_rows *r) {
  words_say value = {0}, why = {0};
  const ox_entry_choice *e = &r->f->entry;
  bool either = e->also != OX_ENTRY_NONE;
  words_put(&value, "%s", either ? _(ox_entry_name((ox_entry_kind)e->also)) : C_("entry", "none"));
  words_put(&why,
            either ? _("the nearest sector boundary is %s° away, inside the 5° within which either "
                       "entry is accepted")
                   : _("the nearest sector boundary is %s° away, more than the 5° within which "
                       "either entry is accepted"),
            words_short(fabs(e->boundary_deg), 1).text);
  rows_add(r, GROUP, N_("Other entry accepted"), &value, &why,
           N_("AIM 5-3-8 j8(d); ICAO Doc 8168 Vol I: zone of flexibility of 5°"));
}

static void add_boundary(words_rows *r, const crossing *x) {
  words_say value = {0}, why = {0};
  const ox_entry_choice *e = &r->f->entry;
  double at_deg = e->boundary_at_deg;
  double from_outbound_deg = ox_turn_between_deg(x->outbound_true_deg, at_deg);
  words_figure at = words_marked(r->c, at_deg);
  if (fabs(e->boundary_deg) < 0.05)
    words_put(&value, _("on the boundary at %s"), at.text);
  else
    words_put(&value, _("%s° %s of the boundary at %s"), words_short(fabs(e->boundary_deg), 1).text,
              words_side(e->boundary_deg >= 0), at.text);
  if (fabs(from_outbound_deg) < 0.5)
    words_put(&why, _("the boundary is the outbound course"));
  else
    words_put(&why, _("boundary %s %s %s = %s"), words_marked(r->c, x->outbound_true_deg).text,
              from_outbound_deg < 0 ? "−" : "+", words_short(fabs(from_outbound_deg), 0).text,
              at.text);
  words_put(&why, _("; %s on crossing %s"), words_crossing(r->c),
            words_marked(r->c, x->crossing_true_deg).text);
  rows_add(r, GROUP, N_("Distance to the boundary"), &value, &why, SOURCE_GEOMETRY);
}

static void add_flown(words_rows *r) {
  if (r->f->flown == r->f->entry.kind) return;
  words_say value = {0}, why = {0};
  words_put(&value, "%s", _(ox_entry_name(r->f->flown)));
  words_put(&why, _("chosen for this case; the sector gives %s"),
            _(ox_entry_name(r->f->entry.kind)));
  rows_add(r, GROUP, N_("Entry flown"), &value, &why, "AIM 5-3-8 j3(d)");
}

/* The entry leg flown as a track: the heading is the one that makes it good. */
static void put_line(words_say *s, const words_rows *r, double line_true_deg) {
  if (r->c->technique.entry_line != OX_ENTRY_LINE_TRACK) return;
  words_put(
      s, _("; as a track made good, with the wind %s"),
      words_correction(ox_turn_between_deg(line_true_deg, r->f->entry_heading_true_deg)).text);
}

static void add_heading(words_rows *r, const crossing *x) {
  words_say value = {0}, why = {0};
  words_figure outbound = words_marked(r->c, x->outbound_true_deg);
  const char *source = "AIM 5-3-8 j3(c)";
  words_put(&value, "%s", words_marked(r->c, r->f->entry_heading_true_deg).text);
  switch (r->f->flown) {
  case OX_ENTRY_DIRECT:
    words_put(&why, _("turn %s to follow the pattern, onto the outbound heading"),
              ox_words_turns(r->c->hold.turns));
    break;
  case OX_ENTRY_PARALLEL:
    words_put(&why, _("the outbound course %s, flown on the non-holding side"), outbound.text);
    put_line(&why, r, x->outbound_true_deg);
    source = N_("AIM 5-3-8 j3(a); ICAO Doc 8168 Vol I sector 1");
    break;
  case OX_ENTRY_TEARDROP:
    words_put(&why, _("outbound course %s %s 30°, to the holding side"), outbound.text,
              r->f->setup.sense > 0 ? "−" : "+");
    put_line(&why, r, x->outbound_true_deg - 30.0 * r->f->setup.sense);
    source = N_("AIM 5-3-8 j3(b) as a heading; ICAO Doc 8168 Vol I sector 2 as a track");
    break;
  }
  rows_add(r, GROUP, N_("Entry heading"), &value, &why, source);
}

static void add_time(words_rows *r) {
  if (r->f->flown == OX_ENTRY_DIRECT) return;
  words_say value = {0}, why = {0};
  words_put(&value, "%s", words_time(r->c->technique.entry_s).text);
  bool parallel = r->f->flown == OX_ENTRY_PARALLEL;
  words_put(&why, "%s",
            parallel ? _("from wings level on the entry heading, then more than half a circle "
                         "towards the holding side")
                     : _("from wings level on the entry heading, then in the pattern's sense "
                         "towards the inbound course"));
  rows_add(r, GROUP, N_("Entry time"), &value, &why,
           parallel ? N_("AIM 5-3-8 j3(a): one minute") : N_("AIM 5-3-8 j3(b): one minute"));
}

void rows_entry(words_rows *r) {
  crossing x = crossing_of(r);
  add_entry(r, &x);
  add_other(r);
  add_boundary(r, &x);
  add_flown(r);
  add_heading(r, &x);
  add_time(r);
}
