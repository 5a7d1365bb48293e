/* A case out of a published hold. A value that the case does not accept is left at its default and
 * said; it is never bent to fit. */
#include <stdio.h>
#include <string.h>

#include "index.h"
#include "oxbow/fields.h"
#include "oxbow/text.h"
#include "sentence.h"

typedef struct {
  ox_published_case *out;
  char *remark;
  size_t bytes;
  bool remarked;
} making;

/* The remarks follow each other, separated by a blank. */
static void add_remark(making *m, const char *sentence) {
  m->remarked = true;
  if (!m->remark || m->bytes == 0) return;
  size_t length = strlen(m->remark);
  snprintf(m->remark + length, m->bytes - length, "%s%s", length ? " " : "", sentence);
}

static void set(making *m, const char *key, double value, const char *otherwise) {
  const ox_field *field = ox_field_by_key(key);
  if (field && ox_field_accepts(field, value))
    ox_field_set(field, &m->out->c, value);
  else
    add_remark(m, otherwise);
}

/* Where the fix is, and the variation: its own, that of the station, or the airport's. */
static void place(making *m, const ox_navdata *data, const ox_published_hold *h) {
  ox_published_point p;
  char why[OX_REMARK_BYTES];
  m->out->variation = OX_VARIATION_UNKNOWN;
  if (ox_navdata_point_there(data, &h->fix, &p, why, sizeof why) == OX_OK) {
    m->out->placed = true;
    m->out->at = p.at;
    if (p.variation_given || p.declination_given) {
      m->out->variation = p.variation_given ? OX_VARIATION_OF_FIX : OX_VARIATION_OF_STATION;
      m->out->c.variation_deg = p.variation_given ? p.variation_deg : p.declination_deg;
      return;
    }
  } else {
    add_remark(m, why);
  }
  ox_point_key airport = {.section = {h->section[0] == 'H' ? 'H' : 'P', 'A', '\0'}};
  memcpy(airport.ident, h->airport, sizeof h->airport);
  memcpy(airport.region, h->airport_region, sizeof h->airport_region);
  if (ox_navdata_point_there(data, &airport, &p, NULL, 0) == OX_OK && p.variation_given) {
    m->out->variation = OX_VARIATION_OF_AIRPORT;
    m->out->c.variation_deg = p.variation_deg;
  } else {
    add_remark(m, _("The file gives no variation here: enter it."));
  }
}

static void set_altitude(making *m, const ox_published_hold *h) {
  const char *too_high = _("The altitude is outside what a case takes: enter it.");
  if (h->altitude_kind == OX_ALTITUDE_NONE) return;
  double altitude_ft = h->altitude_kind == OX_ALTITUDE_AT_OR_BELOW ? h->altitude_high_ft
                                                                   : h->altitude_low_ft;
  if (h->terminator == OX_TERMINATOR_HA) {
    /* Where the climb begins is not published. */
    double below_ft = altitude_ft - 1000;
    double from_ft = m->out->c.hold.altitude_ft;
    set(m, "hold.altitude_ft", below_ft < from_ft ? below_ft : from_ft, too_high);
    set(m, "hold.climb_to_ft", altitude_ft, too_high);
    m->out->c.hold.ends = OX_HOLD_TO_ALTITUDE;
    add_remark(m, _("Where the climb begins is not published: enter the altitude at the fix."));
    return;
  }
  set(m, "hold.altitude_ft", altitude_ft, too_high);
}

static void set_leg(making *m, const ox_published_hold *h) {
  const char *odd = _("The leg is outside what a case takes: the standard time is used.");
  if (!h->leg_given) return;
  if (h->leg_by == OX_LEG_BY_TIME) {
    set(m, "hold.leg.s", h->leg_s, odd);
    return;
  }
  set(m, "hold.leg.nm", h->leg_nm, odd);
  if (m->out->c.hold.leg_nm > 0) m->out->c.hold.leg_by = OX_LEG_BY_DISTANCE;
}

static void name(ox_case *c, const ox_published_hold *h) {
  snprintf(c->hold.fix, sizeof c->hold.fix, "%s", h->fix.ident);
  char procedure[sizeof h->airport + sizeof h->procedure + sizeof h->transition + 2];
  snprintf(procedure, sizeof procedure, "%s %s%s%s", h->airport, h->procedure,
           h->transition[0] ? " " : "", h->transition);
  if (h->airport[0] && h->procedure[0])
    /* translators: airport and procedure; the fix */
    snprintf(c->name, sizeof c->name, _("%s, hold at %s"), procedure, h->fix.ident);
  else
    snprintf(c->name, sizeof c->name, _("Hold at %s"), h->fix.ident);
}

ox_status ox_navdata_case(const ox_navdata *data, size_t index, ox_published_case *out,
                          char *remark, size_t remark_bytes) {
  ox_published_hold h;
  if (ox_navdata_hold(data, index, &h) != OX_OK)
    return ox_say(OX_ERROR, remark, remark_bytes,
                  _("That hold cannot be read: the file has been shortened, or there is no such "
                    "number."));
  ox_say(OX_OK, remark, remark_bytes, "%s", "");
  memset(out, 0, sizeof *out);
  out->c = ox_case_default();
  making m = {.out = out, .remark = remark, .bytes = remark_bytes};
  place(&m, data, &h);
  ox_case *c = &out->c;
  name(c, &h);
  c->hold.inbound_deg = h.inbound_north == OX_NORTH_TRUE
                            ? ox_magnetic_deg(h.inbound_deg, c->variation_deg)
                            : h.inbound_deg;
  c->arrival.heading_deg = c->hold.inbound_deg;
  c->hold.turns = h.turns;
  if (h.terminator == OX_TERMINATOR_HF) c->hold.ends = OX_HOLD_REVERSAL;
  set_leg(&m, &h);
  set_altitude(&m, &h);
  if (h.limit_kias > 0)
    set(&m, "hold.limit_kias", h.limit_kias, _("The speed limit is outside what a case takes."));
  return m.remarked ? OX_ADVISORY : OX_OK;
}
