/* Labels and where they may stand: candidates with a cost, hard limits, the cheapest free one. */
#ifndef PAINT_LABELS_H
#define PAINT_LABELS_H

#include "geometry.h"
#include "palette.h"
#include "lettering.h"

#define OX_LABELS_MAX 64

typedef struct {
  ox_vec a, b;
} ox_segment;
typedef struct {
  ox_segment *s;
  size_t count, room;
} ox_segments;
void ox_segments_add(ox_segments *list, ox_vec a, ox_vec b);
void ox_segments_add_lines(ox_segments *list, const ox_lines *lines);
void ox_segments_add_rect(ox_segments *list, ox_rect r);
void ox_segments_clear(ox_segments *list);

typedef enum {
  OX_ANCHOR_POINT,   /* round a: nearest free direction */
  OX_ANCHOR_BESIDE,  /* along the stretch a-b, first on the side given */
  OX_ANCHOR_ON_LINE, /* centred on the line from a towards b, as near a as can be */
  OX_ANCHOR_ARC,     /* outside a circle about a, between two device bearings */
  OX_ANCHOR_REGION   /* anywhere on one side of the line through a, as near `wish` as can be;
                        with no side given, anywhere */
} ox_anchor_kind;

typedef struct {
  ox_anchor_kind kind;
  ox_vec a, b;
  ox_vec side;           /* unit: the side preferred (BESIDE) or required (REGION) */
  ox_vec wish;           /* REGION */
  double radius;         /* POINT: of the symbol; ARC: of the circle; ON_LINE: what is to be
                            free before the label for the line's arrow (device units) */
  double inner;            /* ARC: a second circle, inside which a figure may stand too */
  double from_deg, to_deg; /* ARC: a range, its middle preferred; equal: a figure, outside or
                              inside the circles */
} ox_anchor;

typedef struct {
  ox_lettering text;
  ox_lettering narrow; /* the same words in more, shorter lines, tried where text finds no room;
                          takes the place of text when used */
  ox_hue ink;
  int priority;  /* 1 is never to be dropped where there is any room; larger is less important */
  ox_anchor anchor;
  ox_rect box;   /* ink, where placed */
  bool dropped;
  bool has_stay; /* where it stood a moment ago is tried first, in the wording it had then */
  bool stay_narrow;
  ox_vec stay;   /* its centre there */
  bool is_narrow; /* set in the narrow wording */
  bool has_leader;
  ox_vec leader_from, leader_to; /* from the label to what it names */
} ox_label;

/* Where labels may go. */
typedef struct {
  ox_rect bounds;
  double cell, em;
  int columns, rows;
  unsigned char *cells; /* 1: a line touches it */
  unsigned *sum;        /* summed-area table over them; NULL: nothing is free */
  ox_rect taken[OX_LABELS_MAX];
  size_t taken_count;
  ox_segments leaders;
} ox_placer;

/* em: the size of label text, by which gaps are measured. */
void ox_placer_begin(ox_placer *placer, ox_rect bounds, double em, const ox_segments *obstacles);
/* More lines, which were not there for the labels placed so far: those from an index on. */
void ox_placer_add(ox_placer *placer, const ox_segments *obstacles, size_t from);
/* Sets box, or dropped. */
void ox_placer_put(ox_placer *placer, ox_label *label);
void ox_placer_end(ox_placer *placer);

#endif
