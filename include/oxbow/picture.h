/* The picture: one painter for screen, PNG, SVG and PDF. Needs cairo and Pango, never GTK.
 *
 * A picture is laid out once for a scene and a size (viewport, label places, text) and then
 * drawn as often as wanted; only the aircraft and its triangle depend on the time. */
#ifndef OXBOW_PICTURE_H
#define OXBOW_PICTURE_H

#include <cairo.h>
#include <stdbool.h>

#include "oxbow/area.h"
#include "oxbow/case.h"
#include "oxbow/flight.h"
#include "oxbow/ink.h"
#include "oxbow/spread.h"
#include "oxbow/viewport.h"

/* The first four are chosen by name. Those of high contrast are the screen's alone, for a desktop
 * that asks for it. */
typedef enum {
  OX_PALETTE_LIGHT, OX_PALETTE_DARK, OX_PALETTE_PROJECTOR, OX_PALETTE_PRINT,
  OX_PALETTE_CHOICES,
  OX_PALETTE_CONTRAST = OX_PALETTE_CHOICES, OX_PALETTE_CONTRAST_DARK,
  OX_PALETTE_COUNT
} ox_palette_id;
/* "light", "dark", "projector", "print", "contrast", "contrast-dark". */
const char *ox_palette_name(ox_palette_id id);

enum {
  OX_LAYER_SIDES = 1 << 0,     /* holding side tint, non-holding side hatching */
  OX_LAYER_ROSE = 1 << 1,      /* compass rose and entry sectors about the fix */
  OX_LAYER_COURSE = 1 << 2,    /* inbound course and abeam lines */
  OX_LAYER_STILL_AIR = 1 << 3,
  OX_LAYER_TRACK = 1 << 4,     /* arrival, entry and circuits with direction arrows */
  OX_LAYER_AIRCRAFT = 1 << 5,
  OX_LAYER_TRIANGLE = 1 << 6,  /* triangle of velocities */
  OX_LAYER_WIND = 1 << 7,
  OX_LAYER_LABELS = 1 << 8,
  OX_LAYER_FURNITURE = 1 << 9, /* title, scale bar, north, caution line (never off in exports) */
  OX_LAYER_CHART = 1 << 10,    /* inbound time circuit by circuit, where it is adjusted */
  OX_LAYER_ALL = (1 << 11) - 1,
};

/* Another case over the one shown: its track, and a small aircraft that flies in step. The fix of
 * both is the origin. */
typedef struct {
  const ox_case *c;
  const ox_flight *flight;
  const char *name; /* for the legend and the label on its line; may be NULL */
} ox_scene_other;
#define OX_SCENE_OTHERS_MAX 2

/* A place with a symbol and a name. */
typedef enum {
  OX_MARK_POINT,                 /* a named point: the triangle of a fix */
  OX_MARK_STATION,               /* a radio aid */
  OX_MARK_MISSED_APPROACH_POINT,
  OX_MARK_PRESENT_POSITION,
  OX_MARK_GUESS,                 /* where a student says something will be */
  OX_MARK_KIND_COUNT
} ox_mark_kind;
typedef struct {
  ox_vec at_nm;     /* NM from the fix, true */
  const char *name; /* may be NULL */
  ox_mark_kind kind;
} ox_mark;

/* A line through points. */
typedef enum {
  OX_PATH_ROUTE,
  OX_PATH_MISSED,      /* a missed approach: dashed, as charts draw it */
  OX_PATH_ALTERNATIVE, /* another way to fly it */
  OX_PATH_SKETCH,      /* a track as a student expects it */
  OX_PATH_KIND_COUNT
} ox_path_kind;
typedef struct {
  const ox_vec *points_nm; /* NM from the fix, true */
  size_t count;
  ox_path_kind kind;
} ox_path;

/* A typesetter keeps words that were set once, so that the next picture need not set them again.
 * For one thread at a time; shared by as many pictures as wanted, and to be freed after them. */
typedef struct ox_typesetter ox_typesetter;
ox_typesetter *ox_typesetter_new(void);
void ox_typesetter_free(ox_typesetter *typesetter); /* NULL is allowed */

typedef struct ox_picture ox_picture;

/* Places (device units) where something else will lie on the picture, and which labels leave free:
 * asked for whenever labels are placed, when picture knows its map and viewport. at NULL: none.
 * Writes at most `most` points and returns how many. */
#define OX_KEEP_CLEAR_MAX 8
typedef struct {
  size_t (*at)(void *data, const ox_picture *picture, ox_vec *points, size_t most);
  void *data;
  double radius; /* left free about each */
} ox_keep_clear;

/* Where a picture has its map and everything beside it, and the rows of its legend: for the next
 * pictures of the same size and text, whose lines come and go while one of them is dragged. */
typedef struct ox_layout ox_layout;
ox_layout *ox_layout_of(const ox_picture *picture); /* NULL when memory is out */
void ox_layout_free(ox_layout *layout);             /* NULL is allowed */

/* What stays as it is while a hand changes something else. */
typedef struct {
  ox_viewport world;       /* just there, whatever the view says */
  const ox_layout *layout; /* of the furniture; NULL: as the scene asks for */
} ox_held;

/* What to draw. Zeroed members leave a layer out. Everything but title is borrowed until the
 * picture is freed. */
typedef struct {
  const ox_case *c;
  const ox_flight *flight;
  const char *title;   /* of the lesson; may be NULL */
  ox_palette_id palette;
  double text_scale;   /* 1 is normal */
  unsigned layers;     /* OX_LAYER_… */
  /* Overlays, each NULL for none; borrowed like the flight. */
  const ox_flight *compare;  /* a second flight in the comparison's line */
  const char *compare_name;  /* what it is, for the legend and its label */
  const ox_area *area;       /* faint, and labelled as illustrative */
  const ox_spread *spread;   /* a soft band under everything but the tint */
  ox_view view;
  const ox_scene_other *others;
  size_t other_count;        /* more than OX_SCENE_OTHERS_MAX: the first ones */
  const ox_flight *whole;    /* the flight with the route to it and on from it, which aircraft and
                                triangle follow; NULL: the flight */
  const ox_ink *ink;
  const ox_mark *marks;
  size_t mark_count;
  const ox_path *paths;
  size_t path_count;
  bool hide_answer;          /* what is given, and nothing of what is flown after the fix */
  bool no_ground;            /* transparent where nothing is drawn */
  bool framed;               /* title, facts, scale, legend and caution stand around it */
  const ox_fit *fit;         /* a scale shared with other pictures, or NULL for its own */
  const ox_held *held;       /* or NULL */
  bool wind_words_above;     /* the words of the wind stand above its arrow, not below it */
  ox_keep_clear keep_clear;
  ox_typesetter *typesetter; /* or NULL for one of its own */
} ox_scene;

/* Lays out a scene for a size in user units. NULL only when memory is out or the size is not
 * finite and positive. */
ox_picture *ox_picture_new(const ox_scene *scene, double width, double height);
void ox_picture_free(ox_picture *picture); /* NULL is allowed */

/* Draws everything at an instant (s; NAN: without aircraft and triangle). Leaves the context as
 * it found it and never in error. */
void ox_picture_draw(ox_picture *picture, cairo_t *cr, double t_s);
/* The two halves of ox_picture_draw: what never changes with time, and what does. */
void ox_picture_draw_still(ox_picture *picture, cairo_t *cr);
void ox_picture_draw_moving(ox_picture *picture, cairo_t *cr, double t_s);
/* What ox_picture_draw_moving draws, in this order, where the world stands still (see
 * ox_picture_moves): each is small, and the rest of the board need not be drawn again with it. */
void ox_picture_draw_triangle(ox_picture *picture, cairo_t *cr, double t_s);
void ox_picture_draw_aircraft(ox_picture *picture, cairo_t *cr, double t_s);

/* Size of the type of a label (user units) on a board of a size, at text_scale 1. */
double ox_picture_label_size(ox_palette_id palette, double width, double height);

/* Where the world is on the board. In a view that moves with the aircraft or the air this is the
 * place at the instant drawn last (at first, when the fix is crossed). */
ox_viewport ox_picture_viewport(const ox_picture *picture);
/* The same at any instant (s; NAN: as the picture stands without aircraft). */
ox_viewport ox_picture_viewport_at(const ox_picture *picture, double t_s);
/* Whether the world itself moves on the board, so that only furniture is in the still half. */
bool ox_picture_moves(const ox_picture *picture);
/* The rectangle of the board (device units) that shows the world; the rest is furniture. */
void ox_picture_map(const ox_picture *picture, ox_vec *origin, ox_vec *size);
/* The view as it is used: within its limits, and panned no farther than where something of the
 * world is still in the map. Views changed by hand start from here. */
ox_view ox_picture_view(const ox_picture *picture);

/* Where the world of a scene would be at an instant (s), found without laying it out; false where
 * there would be no picture. What a scene holds does not count. */
bool ox_picture_viewport_of(const ox_scene *scene, double width, double height, double t_s,
                            ox_viewport *out);

/* What several scenes need to be shown on one scale, on boards of one size. Only the members that
 * draw something count; a scene's own fit does not. count 0: a fit that changes nothing. */
ox_fit ox_picture_fit_of(const ox_scene *scenes, size_t count, double width, double height);

/* For the page around framed pictures, in user units from x, y down; both return their height, and
 * only measure where cr is NULL. The scale bar with its words in one line. */
double ox_picture_scale_bar(const ox_picture *picture, cairo_t *cr, double x, double y);
/* The legend of all lines in any of the pictures: words beside samples, in lines at most `width`
 * broad. */
double ox_picture_legend(const ox_picture *const *pictures, size_t count, cairo_t *cr, double x,
                         double y, double width);

/* The middle of the wind arrow and how far its tip is from there (device units), for taking hold of
 * it; false where none is drawn. */
bool ox_picture_wind_arrow(const ox_picture *picture, ox_vec *middle, double *reach);

/* Ink rectangle of a placed label (device units), for tests and for hit testing. */
typedef struct {
  const char *text; /* belongs to the picture */
  double x, y, width, height;
  bool dropped; /* no free place was found: not drawn */
} ox_label_box;
size_t ox_picture_label_count(const ox_picture *picture);
ox_label_box ox_picture_label(const ox_picture *picture, size_t index);
/* Line segments that labels must not touch (device units): every drawn line of course, track,
 * still-air shape, rose. index 0..count-1. */
size_t ox_picture_obstacle_count(const ox_picture *picture);
void ox_picture_obstacle(const ox_picture *picture, size_t index, ox_vec *a, ox_vec *b);

#endif
