/* What is named in the picture, most important first. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "oxbow/text.h"
#include "oxbow/words.h"
#include "paint_private.h"

static const double LEAST_CORRECTION_DEG = 0.5;  /* a smaller one is shown as none */
static const double LEAST_OFFSET_NM = 0.05;      /* below what anybody could fly or see */
static const double SAME_INSTANT_S = 1.0;
static const double LEAST_READABLE = 3.5;        /* size of text below which nothing is written */

ox_label *ox_label_add(ox_picture *p, const char *words, double size, unsigned style, ox_hue ink,
                       int priority, ox_anchor anchor) {
  if (p->label_count == OX_LABELS_MAX) return NULL;
  ox_label *label = &p->labels[p->label_count++];
  ox_lettering_make(&label->text, p->typesetter, words, size, style, 0.0);
  label->ink = ink;
  label->priority = priority;
  label->anchor = anchor;
  label->dropped = true;
  return label;
}

static ox_vec holding_side(const ox_picture *p) {
  const ox_setup *s = &p->scene.flight->setup;
  return ox_dev_unit(ox_dev_bearing(p, s->inbound_true_deg) + 90.0 * s->sense);
}

ox_label *ox_label_beside(ox_picture *p, const ox_leg *leg, ox_vec side, const char *words,
                          double size, unsigned style, ox_hue ink, int priority) {
  ox_anchor a = {.kind = OX_ANCHOR_BESIDE};
  a.a = ox_to_dev(p, leg->p0_nm);
  a.b = ox_to_dev(p, leg->p1_nm);
  if (!ox_rect_clip(p->map, &a.a, &a.b)) return NULL;
  ox_vec d = ox_vec_sub(a.b, a.a);
  double length = ox_vec_length(d);
  ox_vec across = length > 0.0 ? (ox_vec){-d.y / length, d.x / length} : side;
  a.side = ox_vec_dot(across, side) >= 0.0 ? across : ox_vec_scale(across, -1.0);
  return ox_label_add(p, words, size, style | OX_TEXT_CENTRED, ink, priority, a);
}

void ox_label_narrow(ox_picture *p, ox_label *label, const char *words, double size,
                     unsigned style) {
  if (label)
    ox_lettering_make(&label->narrow, p->typesetter, words, size, style | OX_TEXT_CENTRED, 0.0);
}

static void add_at(ox_picture *p, double t_s, const char *words, ox_hue ink, int priority) {
  ox_vec at = ox_to_dev(p, ox_flight_at(p->flown, t_s).p_nm);
  if (!ox_rect_has(p->map, at)) return;
  ox_anchor a = {.kind = OX_ANCHOR_POINT, .a = at, .radius = 1.5 * p->size.track};
  ox_label_add(p, words, p->size.label, OX_TEXT_PLAIN, ink, priority, a);
}

/* A heading, with its correction from the course, or without (NULL). */
static void heading_words(char *buf, size_t bytes, const char *direction, const char *correction) {
  if (correction) /* translators: a heading and, in brackets, its correction as in "8° L" */
    snprintf(buf, bytes, _("hdg %s (%s)"), direction, correction);
  else
    snprintf(buf, bytes, _("hdg %s"), direction);
}

/* Heading, correction from the course where there is one, and the time, beside a leg of the first
 * circuit; the same in more lines for narrow places. `whose` is a line that says which circuit, or
 * empty. */
static void add_leg(ox_picture *p, const ox_leg *leg, ox_vec side, double course_true_deg,
                    const char *whose, const char *time) {
  char direction[16], correction[24], hdg[64], words[160];
  double wca_deg = ox_turn_between_deg(course_true_deg, leg->heading0_true_deg);
  bool corrected = fabs(wca_deg) >= LEAST_CORRECTION_DEG;
  ox_direction_text(p, direction, sizeof direction, leg->heading0_true_deg);
  ox_words_correction(correction, sizeof correction, wca_deg, 0);
  heading_words(hdg, sizeof hdg, direction, corrected ? correction : NULL);
  snprintf(words, sizeof words, "%s%s\n%s", whose, hdg, time);
  ox_label *label =
      ox_label_beside(p, leg, side, words, p->size.key, OX_TEXT_BOLD, OX_HUE_TRACK_TEXT, 1);
  if (!corrected) return;
  heading_words(hdg, sizeof hdg, direction, NULL);
  snprintf(words, sizeof words, "%s%s\n%s\n%s", whose, hdg, correction, time);
  ox_label_narrow(p, label, words, p->size.key, OX_TEXT_BOLD);
}

/* Whether two circuits are flown outbound alike, as far as a label could say. */
static bool outbound_alike(const ox_circuit *a, const ox_circuit *b) {
  double turned_deg = ox_turn_between_deg(a->outbound_heading_true_deg,
                                          b->outbound_heading_true_deg);
  return fabs(turned_deg) < 1.0 && fabs(a->timed_s - b->timed_s) < 2.0;
}

static void add_fix_and_course(ox_picture *p) {
  char words[80];
  if (ox_has_layer(p, OX_LAYER_COURSE)) {
    ox_direction_text(p, words, sizeof words, p->scene.flight->setup.inbound_true_deg);
    ox_anchor line = {.kind = OX_ANCHOR_ON_LINE};
    ox_label_add(p, words, 1.08 * p->size.key, OX_TEXT_BOLD, OX_HUE_TEXT, 1, line);
  }
  const char *name = p->scene.c->hold.fix;
  ox_anchor fix = {.kind = OX_ANCHOR_POINT, .a = ox_to_dev(p, (ox_vec){0, 0})};
  if (!*name || !ox_rect_has(p->map, fix.a)) return;
  fix.radius = 0.6 * p->size.label;
  ox_label *label = ox_label_add(p, "", p->size.key, OX_TEXT_BOLD, OX_HUE_TEXT, 1, fix);
  if (!label) return;
  double most = fmin(12.0 * p->size.key, 0.4 * p->map.width);
  ox_lettering_make(&label->text, p->typesetter, name, p->size.key,
                    OX_TEXT_BOLD | OX_TEXT_ONE_LINE, most);
}

/* The circuit whose headings and times are written; NULL for none. */
static const ox_circuit *named_circuit(const ox_picture *p) {
  int n = p->named.circuit;
  return n >= 1 && (size_t)n <= p->flown->circuit_count ? &p->flown->circuits[n - 1] : NULL;
}

/* A line that says which circuit it is, where another one is something else. */
static void whose_words(const ox_picture *p, bool alike, char *buf, size_t bytes) {
  buf[0] = '\0';
  if (!alike) snprintf(buf, bytes, _("circuit %d\n"), p->named.circuit);
}

/* The side on which an outbound leg lies off another one: the words for it are looked for there
 * first, so that nobody reads them for the other. The holding side where both are one. */
static ox_vec outbound_side(const ox_picture *p, const ox_leg *leg, const ox_leg *other) {
  ox_vec side = holding_side(p);
  if (!other) return side;
  ox_vec a = ox_to_dev(p, ox_vec_scale(ox_vec_add(leg->p0_nm, leg->p1_nm), 0.5));
  ox_vec b = ox_to_dev(p, ox_vec_scale(ox_vec_add(other->p0_nm, other->p1_nm), 0.5));
  return ox_vec_dot(ox_vec_sub(b, a), side) > 0.5 * p->size.track ? ox_vec_scale(side, -1.0) : side;
}

static void add_outbound(ox_picture *p) {
  const ox_flight *f = p->flown;
  const ox_circuit *circuit = named_circuit(p);
  const ox_leg *leg = ox_find_leg(f, OX_LEG_OUTBOUND, p->named.circuit);
  if (!leg || !circuit) return;
  char words[48], whose[24], time[16], nm[16];
  ox_words_min_s(time, sizeof time, circuit->timed_s);
  ox_number_text(nm, sizeof nm, f->setup.goal_value, 1);
  bool by_distance = f->setup.goal == OX_GOAL_OUTBOUND_NM;
  bool alike = outbound_alike(&f->circuits[0], &f->circuits[f->circuit_count - 1]);
  whose_words(p, alike, whose, sizeof whose);
  snprintf(words, sizeof words, "%s%s%s", by_distance ? nm : "", by_distance ? " NM, " : "", time);
  const ox_leg *last = ox_find_leg(f, OX_LEG_OUTBOUND, (int)f->circuit_count);
  ox_vec side = outbound_side(p, leg, alike || p->air >= 0.5 ? NULL : last);
  add_leg(p, leg, side, f->setup.inbound_true_deg + 180.0, whose, words);
}

/* The last circuits, where they settled on something else than the first. */
static void add_last_outbound(ox_picture *p) {
  const ox_flight *f = p->flown;
  if (f->circuit_count < 2 || p->air >= 0.5) return;
  const ox_circuit *last = &f->circuits[f->circuit_count - 1];
  size_t from = f->circuit_count;
  while (from > 1 && outbound_alike(&f->circuits[from - 2], last)) from--;
  const ox_leg *leg = ox_find_leg(f, OX_LEG_OUTBOUND, (int)f->circuit_count);
  if (!leg || from == 1) return;
  char words[160], whose[40], direction[16], correction[24], hdg[64], time[16];
  ox_direction_text(p, direction, sizeof direction, leg->heading0_true_deg);
  double wca_deg = ox_turn_between_deg(f->setup.inbound_true_deg + 180.0, leg->heading0_true_deg);
  bool corrected = fabs(wca_deg) >= LEAST_CORRECTION_DEG;
  ox_words_correction(correction, sizeof correction, wca_deg, 0);
  ox_words_min_s(time, sizeof time, last->timed_s);
  if (from == f->circuit_count)
    snprintf(whose, sizeof whose, _("circuit %zu"), from);
  else
    snprintf(whose, sizeof whose, _("circuits %zu to %zu"), from, f->circuit_count);
  heading_words(hdg, sizeof hdg, direction, corrected ? correction : NULL);
  snprintf(words, sizeof words, "%s\n%s\n%s", whose, hdg, time);
  ox_vec side = outbound_side(p, leg, ox_find_leg(f, OX_LEG_OUTBOUND, 1));
  ox_label_beside(p, leg, side, words, p->size.label, OX_TEXT_PLAIN, OX_HUE_TRACK_TEXT, 2);
}

static void add_inbound(ox_picture *p) {
  const ox_flight *f = p->flown;
  const ox_circuit *circuit = named_circuit(p);
  const ox_leg *leg = ox_find_leg(f, OX_LEG_INBOUND, p->named.circuit);
  if (!leg || !circuit) return;
  char time[16], whose[24];
  double first_s = f->circuits[0].inbound_s, last_s = f->circuits[f->circuit_count - 1].inbound_s;
  ox_words_min_s(time, sizeof time, circuit->inbound_s);
  whose_words(p, fabs(first_s - last_s) < 1.0, whose, sizeof whose);
  add_leg(p, leg, ox_vec_scale(holding_side(p), -1.0), f->setup.inbound_true_deg, whose, time);
}

/* Flown straight to the fix because the course was met beyond it. */
static void add_direct_to_fix(ox_picture *p) {
  const ox_leg *leg = ox_find_leg(p->flown, OX_LEG_DIRECT_TO_FIX, p->named.circuit);
  if (!leg) return;
  char words[64], direction[16];
  ox_direction_text(p, direction, sizeof direction, leg->heading0_true_deg);
  snprintf(words, sizeof words, _("direct to the fix\nhdg %s"), direction);
  ox_label_beside(p, leg, ox_vec_scale(holding_side(p), -1.0), words, p->size.label, OX_TEXT_PLAIN,
             OX_HUE_TRACK_TEXT, 2);
}

static void add_entry(ox_picture *p) {
  const ox_flight *f = p->flown;
  char words[128], heading[16], hdg[64], time[16];
  const ox_leg *leg = ox_find_leg(f, OX_LEG_ENTRY_OUTBOUND, 0);
  if (leg && !ox_stretch_has(&p->named, leg)) return;
  if (leg) {
    ox_direction_text(p, heading, sizeof heading, leg->heading0_true_deg);
    ox_words_min_s(time, sizeof time, p->scene.c->technique.entry_s);
    heading_words(hdg, sizeof hdg, heading, NULL);
    snprintf(words, sizeof words, "%s\n%s\n%s", ox_words_entry_noun(f->flown), hdg, time);
    ox_vec side = holding_side(p);
    if (f->flown == OX_ENTRY_PARALLEL) side = ox_vec_scale(side, -1.0);
    ox_label_beside(p, leg, side, words, p->size.label, OX_TEXT_PLAIN, OX_HUE_ENTRY_TEXT, 2);
    return;
  }
  leg = ox_find_leg(f, OX_LEG_OUTBOUND_TURN, 1);
  if (!leg || !ox_stretch_has(&p->named, leg)) return;
  add_at(p, leg->t0_s + 0.35 * (leg->t1_s - leg->t0_s), ox_words_entry_noun(f->flown),
         OX_HUE_ENTRY_TEXT, 2);
}

/* The arrival's heading, on the part of the line between the map's edge and the rose. */
static void add_arrival(ox_picture *p) {
  const ox_flight *f = p->flown;
  if (f->leg_count == 0 || f->legs[0].part != OX_PART_ARRIVAL) return;
  ox_leg seen = f->legs[0];
  if (!ox_stretch_has(&p->named, &seen)) return;
  double length_nm = ox_vec_length(ox_vec_sub(seen.p1_nm, seen.p0_nm));
  double rose_nm = p->rose_radius / p->view.dev_per_nm;
  if (length_nm > rose_nm) seen.p1_nm = ox_vec_scale(seen.p0_nm, rose_nm / length_nm);
  char words[64], direction[16];
  ox_direction_text(p, direction, sizeof direction, seen.heading0_true_deg);
  heading_words(words, sizeof words, direction, NULL);
  ox_label_beside(p, &seen, (ox_vec){1, 0}, words, p->size.label, OX_TEXT_PLAIN,
                  OX_HUE_ENTRY_TEXT, 2);
}

/* --- the rose ------------------------------------------------------------------------------ */

static void add_sector(ox_picture *p, ox_entry_kind kind, double from_deg, double to_deg) {
  const ox_entry_choice *entry = &p->scene.flight->entry;
  bool flown = kind == entry->kind || (int)kind == entry->also; /* near a boundary: both */
  double lo = fmin(from_deg, to_deg), hi = fmax(from_deg, to_deg);
  double inset = fmin(12.0, 0.2 * (hi - lo));
  ox_anchor arc = {.kind = OX_ANCHOR_ARC, .a = p->rose.centre, .radius = p->rose.radius,
                   .from_deg = lo + inset, .to_deg = hi - inset};
  ox_label_add(p, _(ox_entry_name(kind)), p->size.label, flown ? OX_TEXT_BOLD : OX_TEXT_PLAIN,
               flown ? OX_HUE_ENTRY_TEXT : OX_HUE_QUIET, flown ? 2 : 3, arc);
}

static void add_sectors(ox_picture *p) {
  if (p->rose.radius <= 0.0) return;
  const ox_setup *s = &p->scene.flight->setup;
  double in = ox_dev_bearing(p, s->inbound_true_deg), k = s->sense;
  struct {
    ox_entry_kind kind;
    double from, to;
  } sectors[3] = {{OX_ENTRY_TEARDROP, in - 70.0 * k, in},
                  {OX_ENTRY_PARALLEL, in, in + 110.0 * k},
                  {OX_ENTRY_DIRECT, in + 110.0 * k, in + 290.0 * k}};
  for (int pass = 0; pass < 2; pass++)
    for (int i = 0; i < 3; i++)
      if ((sectors[i].kind == p->scene.flight->entry.kind) == (pass == 0))
        add_sector(p, sectors[i].kind, sectors[i].from, sectors[i].to);
}

static void add_figure(ox_picture *p, double dev_deg, const char *words, unsigned style,
                       ox_hue ink, int priority) {
  ox_anchor arc = {.kind = OX_ANCHOR_ARC, .a = p->rose.centre, .radius = p->rose.radius,
                   .inner = p->rose.inner, .from_deg = dev_deg, .to_deg = dev_deg};
  ox_label_add(p, words, p->size.small, style, ink, priority, arc);
}

static void add_boundaries(ox_picture *p) {
  if (p->rose.radius <= 0.0) return;
  const ox_setup *s = &p->scene.flight->setup;
  const double from_inbound[2] = {-70.0, 110.0};
  for (int i = 0; i < 2; i++) {
    double true_deg = s->inbound_true_deg + s->sense * from_inbound[i];
    char words[4];
    ox_words_bearing(words, ox_magnetic_deg(true_deg, p->scene.c->variation_deg));
    add_figure(p, ox_dev_bearing(p, true_deg), words, OX_TEXT_BOLD, OX_HUE_TEXT, 3);
  }
}

/* North first: it also says which north the rose counts from. */
static void add_rose_north(ox_picture *p) {
  char words[24];
  if (!(p->rose.radius > 0.0)) return;
  snprintf(words, sizeof words, "360 %s", ox_words_magnetic_mark());
  add_figure(p, p->rose.north_deg, words, OX_TEXT_PLAIN, OX_HUE_QUIET, 3);
}

static void add_rose_figures(ox_picture *p) {
  if (p->rose.radius <= 0.0) return;
  int step = p->rose.radius > 4.2 * p->size.small ? 30 : 90;
  for (int deg = step; deg < 360; deg += step) {
    char words[4];
    ox_words_bearing(words, deg);
    add_figure(p, p->rose.north_deg + deg, words, OX_TEXT_PLAIN, OX_HUE_QUIET, 5);
  }
}

/* --- sides and events ---------------------------------------------------------------------- */

static void add_side(ox_picture *p, const char *words, ox_vec side, ox_vec wish) {
  ox_anchor region = {.kind = OX_ANCHOR_REGION, .a = ox_to_dev(p, (ox_vec){0, 0}), .side = side,
                      .wish = wish};
  ox_label_add(p, words, p->size.label, OX_TEXT_PLAIN, OX_HUE_QUIET, 3, region);
}

static void add_sides(ox_picture *p) {
  const ox_setup *s = &p->scene.flight->setup;
  ox_leg still[4];
  ox_still_air_shape(s, still);
  ox_vec side = holding_side(p);
  ox_vec centre = ox_to_dev(p, ox_vec_scale(still[2].p0_nm, 0.5));
  ox_vec course = ox_to_dev(p, ox_vec_scale(still[2].p1_nm, 0.7));
  add_side(p, _("holding side"), side, centre);
  add_side(p, _("non-holding side"), ox_vec_scale(side, -1.0),
           ox_vec_add(course, ox_vec_scale(side, -2.4 * p->size.label)));
}

static void add_events(ox_picture *p) {
  const ox_flight *f = p->flown;
  if (!named_circuit(p)) return;
  const ox_event *abeam = ox_find_event(f, OX_EVENT_ABEAM, p->named.circuit);
  const ox_event *clock = ox_find_event(f, OX_EVENT_CLOCK_START, p->named.circuit);
  bool together = abeam && clock && fabs(abeam->t_s - clock->t_s) < SAME_INSTANT_S;
  bool at_fix = abeam && ox_vec_length(ox_flight_at(f, abeam->t_s).p_nm) * p->view.dev_per_nm <
                             1.5 * p->size.label;
  if (at_fix) abeam = NULL; /* a wide turn begun late: nobody would call the fix itself abeam */
  if (abeam)
    add_at(p, abeam->t_s, together ? _("abeam, timing starts") : C_("at the fix", "abeam"),
           OX_HUE_QUIET, 4);
  if (clock && !together) add_at(p, clock->t_s, _("timing starts"), OX_HUE_QUIET, 4);
}

static void add_offset(ox_picture *p) {
  const ox_flight *f = p->flown;
  const ox_circuit *circuit = named_circuit(p);
  const ox_leg *turn = ox_find_leg(f, OX_LEG_INBOUND_TURN, p->named.circuit);
  if (!turn) turn = ox_find_leg(f, OX_LEG_DIRECT_TURN, p->named.circuit);
  if (!turn || !circuit) return;
  double offset_nm = circuit->rollout_offset_nm;
  if (fabs(offset_nm) < LEAST_OFFSET_NM) return;
  char words[48], nm[16];
  ox_number_text(nm, sizeof nm, fabs(offset_nm), 2);
  snprintf(words, sizeof words, offset_nm < 0 ? _("overshoot %s NM") : _("undershoot %s NM"), nm);
  add_at(p, turn->t1_s, words, OX_HUE_TEXT, 2);
}

/* What is given: nothing here follows from the flight after the fix. */
static void add_given(ox_picture *p) {
  add_fix_and_course(p);
  ox_label_marks(p);
  ox_label_paths(p);
  ox_label_limits(p);
  ox_label_area(p);
  if (ox_has_layer(p, OX_LAYER_TRACK)) add_arrival(p);
  add_rose_north(p);
  if (ox_has_layer(p, OX_LAYER_SIDES)) add_sides(p);
}

static void add_all(ox_picture *p) {
  bool track = ox_has_layer(p, OX_LAYER_TRACK);
  add_fix_and_course(p);
  if (track) add_outbound(p);
  if (track) add_inbound(p);
  ox_label_others(p);
  ox_label_marks(p);
  ox_label_paths(p);
  ox_label_limits(p);
  ox_label_area(p);
  add_sectors(p);
  if (track) add_direct_to_fix(p);
  if (track) add_offset(p);
  if (track) add_entry(p);
  if (track) add_arrival(p);
  if (track) add_last_outbound(p);
  add_boundaries(p);
  add_rose_north(p);
  if (ox_has_layer(p, OX_LAYER_SIDES)) add_sides(p);
  if (track) add_events(p);
}

void ox_label_content(ox_picture *p) {
  if (p->size.small < LEAST_READABLE) return;
  if (!ox_has_layer(p, OX_LAYER_LABELS))
    add_rose_north(p);
  else if (p->scene.hide_answer)
    add_given(p);
  else
    add_all(p);
  add_rose_figures(p);
}
