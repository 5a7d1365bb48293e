/* Legs as stretches of a time line. */
#include "ox_stretches.h"

#include <string.h>

#include <glib.h>

#include "oxbow/text.h"
#include "oxbow/words.h"

#define NOTHING_S 1e-6 /* shorter stretches are not flown */

static ox_stretch_kind kind_of(const ox_leg *leg) {
  switch (leg->kind) {
  case OX_LEG_ADRIFT: return OX_STRETCH_ADRIFT;
  case OX_LEG_ARRIVAL:
  case OX_LEG_ROUTE: return OX_STRETCH_ARRIVAL;
  default: break;
  }
  if (leg->part == OX_PART_ENTRY) return OX_STRETCH_ENTRY;
  switch (leg->kind) {
  case OX_LEG_OUTBOUND_TURN:
  case OX_LEG_OUTBOUND:
  case OX_LEG_REACTION: return OX_STRETCH_OUTBOUND;
  default: return OX_STRETCH_INBOUND;
  }
}

static const char *brief_of(const ox_leg *leg) {
  if (leg->shape == OX_SHAPE_TURN) return C_("a stretch of the time line", "turn");
  switch (leg->kind) {
  case OX_LEG_OUTBOUND:
  case OX_LEG_ENTRY_OUTBOUND: return C_("a stretch of the time line", "out");
  case OX_LEG_INBOUND: return C_("a stretch of the time line", "in");
  default: return _(ox_leg_name(leg->kind));
  }
}

size_t ox_stretches_make(const ox_flight *flight, ox_stretch *out) {
  size_t count = 0;
  for (size_t i = 0; i < flight->leg_count; i++) {
    const ox_leg *leg = &flight->legs[i];
    const char *name = _(ox_leg_name(leg->kind));
    ox_stretch *last = count > 0 ? &out[count - 1] : NULL;
    if (last && last->name == name && last->circuit == leg->circuit) {
      last->t1_s = leg->t1_s;
      continue;
    }
    if (leg->t1_s - leg->t0_s < NOTHING_S) continue;
    out[count++] = (ox_stretch){.kind = kind_of(leg),
                                .turn = leg->shape == OX_SHAPE_TURN,
                                .circuit = leg->circuit,
                                .t0_s = leg->t0_s,
                                .t1_s = leg->t1_s,
                                .name = name,
                                .brief = brief_of(leg)};
  }
  return count;
}

/* What a stretch is part of: a circuit, the route, the arrival or the entry. */
static const char *part_of(const ox_stretch *s) {
  if (s->circuit > 0) return _("circuit");
  if (s->name == _(ox_leg_name(OX_LEG_ROUTE))) return s->name;
  return s->kind == OX_STRETCH_ARRIVAL ? _("arrival") : _("entry");
}

static const char *part_name(const ox_stretch *s, char *name) {
  if (s->circuit > 0)
    g_snprintf(name, OX_PART_NAME_BYTES, _("circuit %d"), s->circuit);
  else
    g_strlcpy(name, part_of(s), OX_PART_NAME_BYTES);
  return name;
}

size_t ox_stretches_parts(const ox_stretch *stretches, size_t count, ox_stretch *out,
                          char (*names)[OX_PART_NAME_BYTES]) {
  size_t parts = 0;
  for (size_t i = 0; i < count; i++) {
    const ox_stretch *s = &stretches[i], *before = i > 0 ? &stretches[i - 1] : NULL;
    if (before && before->circuit == s->circuit && part_of(before) == part_of(s)) {
      out[parts - 1].t1_s = s->t1_s;
      continue;
    }
    out[parts] = *s;
    out[parts].name = part_name(s, names[parts]);
    /* of "circuit 3" the number */
    out[parts].brief = names[parts] + (s->circuit > 0 ? strcspn(names[parts], "0123456789") : 0);
    parts++;
  }
  return parts;
}

const ox_stretch *ox_stretches_at(const ox_stretch *stretches, size_t count, double t_s) {
  for (size_t i = 0; i < count; i++)
    if (t_s < stretches[i].t1_s) return &stretches[i];
  return count > 0 ? &stretches[count - 1] : NULL;
}

void ox_stretches_words(char *out, size_t bytes, const ox_stretch *stretch) {
  char from[24], to[24], lasts[24];
  ox_words_min_s(from, sizeof from, stretch->t0_s);
  ox_words_min_s(to, sizeof to, stretch->t1_s);
  ox_words_min_s(lasts, sizeof lasts, stretch->t1_s - stretch->t0_s);
  /* translators: the name of a leg, from when to when, and how long that is */
  if (stretch->circuit > 0)
    g_snprintf(out, (gulong)bytes, _("%s, circuit %d, %s to %s (%s)"), stretch->name,
               stretch->circuit, from, to, lasts);
  else
    g_snprintf(out, (gulong)bytes, _("%s, %s to %s (%s)"), stretch->name, from, to, lasts);
}

const char *ox_stretches_label(const ox_stretch *stretch, double room,
                               double (*width)(const char *text, void *data), void *data) {
  if (width(stretch->name, data) <= room) return stretch->name;
  if (stretch->brief != stretch->name && width(stretch->brief, data) <= room)
    return stretch->brief;
  return NULL;
}
