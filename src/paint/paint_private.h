/* What the layers of one picture share. A layer builds its lines once (ox_build_…) and strokes
 * them as often as the picture is drawn (ox_layer_…). Drawing changes the words of the triangle of
 * velocities; where the world moves, the moving half builds it anew for its instant. */
#ifndef PAINT_PRIVATE_H
#define PAINT_PRIVATE_H

#include <cairo.h>

#include "air.h"
#include "brush.h"
#include "geometry.h"
#include "labels.h"
#include "oxbow/picture.h"
#include "palette.h"
#include "lettering.h"

typedef struct {
  double title, key, label, small;                        /* text sizes */
  double track, later, entry, arrival, still, course, rose, compare; /* line widths */
  double pen_thin, pen_broad;
} ox_sizes;

/* The kinds of line (and one band) that a legend names, in its order. */
typedef enum {
  OX_LINE_TRACK, OX_LINE_LATER, OX_LINE_COMPARE, OX_LINE_OTHER_1, OX_LINE_OTHER_2, OX_LINE_ENTRY,
  OX_LINE_ARRIVAL, OX_LINE_STILL_AIR, OX_LINE_ROUTE, OX_LINE_MISSED, OX_LINE_ALTERNATIVE,
  OX_LINE_SKETCH, OX_LINE_SPREAD, OX_LINE_AREA, OX_LINE_COURSE, OX_LINE_LIMIT, OX_LINE_ABEAM,
  OX_LINE_COUNT
} ox_line_kind;

#define OX_SAME_LINE 0.8 /* of the track's width: nearer legs are the same line */

#define OX_TRIANGLE_ROWS 3
#define OX_CHART_MARKS 8
#define OX_AREA_FILL_ALPHA 0.07 /* of the fill of the protected area */

/* Rows that may be in use, counted before the lines themselves are known; then, once a picture,
 * which of them are, and where they stand. */
typedef struct {
  ox_lettering words[OX_LINE_COUNT];
  ox_line_kind row[OX_LINE_COUNT];
  int count, columns;
  bool used[OX_LINE_COUNT];   /* by kind */
  ox_vec place[OX_LINE_COUNT]; /* by row: its upper left corner */
} ox_legend;

/* Inbound time circuit by circuit. count is 0 where there is nothing to be learnt from it. */
typedef struct {
  int count;
  double s[OX_CIRCUITS_MAX];
  double goal_s, least_s, most_s; /* of the times and the goal */
  ox_lettering head;
  int mark_count;                 /* circuits that are numbered, the first and the last always */
  int mark[OX_CHART_MARKS];
  ox_lettering number[OX_CHART_MARKS], value[OX_CHART_MARKS];
} ox_chart;

/* Everything that is not in the world: texts and the rectangles they stand in. An empty
 * rectangle means that there was no room for the block. */
typedef struct {
  ox_lettering title, facts, notice, caution; /* notice: why the hold cannot be flown as asked */
  ox_rect title_at, facts_at, notice_at, caution_at;
  ox_rect compass_at, wind_at, triangle_at, chart_at, legend_at, scale_at;
  ox_lettering north_true, north_magnetic, variation;
  ox_lettering wind_words, triangle_head, scale_words;
  ox_lettering row[OX_TRIANGLE_ROWS], row_sample; /* changing words; the widest that they can be */
  ox_legend legend;
  ox_chart chart;
  double scale_nm;
} ox_furniture;

typedef struct {
  ox_lines track, later, entry, arrival, still_air;
  ox_lines heads_track, heads_entry; /* direction arrows: closed triangles, three points each */
  ox_lines ticks;                    /* abeam and clock start, across the track */
} ox_track_lines;

/* The flight as the air view shows it at an instant. */
typedef struct {
  ox_lines circuit, entry, arrival, before;
  ox_lines heads_circuit, heads_entry;
} ox_air_lines;

typedef struct {
  ox_vec centre;
  double radius, inner; /* of the ring and of the sectors' band inside it; 0: no rose */
  double north_deg;     /* device bearing of magnetic north */
  ox_lines ring, ticks, spokes;
} ox_rose;

typedef struct {
  ox_vec upstream, downstream; /* ends of the course line within the map */
  ox_lines line, abeam;
  ox_vec head_at;              /* tip of the arrow on the line */
  ox_lines head;
} ox_course;

/* Another flight over the one shown: its line, and the places where it goes its own way. */
typedef struct {
  const ox_flight *flight, *flown; /* as it is; as it is seen now */
  ox_flight *seen;                 /* memory for that, or NULL */
  const char *name;
  ox_line_kind kind;
  ox_hue hue, text_hue;
  bool in_step; /* a case of its own with an aircraft */
  ox_lines line, heads;
} ox_other;
#define OX_OTHERS_MAX (OX_SCENE_OTHERS_MAX + 1)

/* Where a label stood a moment ago: the list of labels is the same from one moment to the next,
 * but for those of another circuit. */
typedef struct {
  int priority;
  ox_anchor_kind kind;
  bool narrow, there;
  ox_vec offset; /* from its anchor's place, turned so that true north is up */
} ox_stay;

/* The protected area: its edge, and the corners of what of it lies in the map. */
typedef struct {
  ox_lines edge;
  ox_vec corner[OX_AREA_SIDES + 4];
  size_t corner_count;
} ox_area_shape;

/* What a DME station sets. */
typedef struct {
  ox_lines radial, distance;
  ox_vec station; /* on the board */
  bool shows_station;
} ox_limits;

struct ox_picture {
  ox_scene scene; /* case, flight and overlays are borrowed */
  char *title;
  const ox_palette *palette;
  const ox_brush *brush; /* NULL: lines are stroked by cairo */
  double width, height;
  ox_sizes size;
  ox_typesetter *typesetter;     /* the scene's, or its own */
  ox_typesetter *own_typesetter;
  ox_furniture furniture;
  ox_rect map; /* where the world is drawn */
  bool upright; /* the blocks stand below it, not beside */
  ox_fit fit;  /* that it would have alone */
  double margin; /* that the fit leaves on each side of the map */
  ox_viewport home; /* at rest: what moves starts from here */
  bool moves, turns; /* the world on the board, with time */
  double air;
  double rose_radius;
  cairo_surface_t *spread; /* one pixel a cell, north up; NULL: nothing to show */
  /* All below is built anew for every instant where the world moves, else once. */
  double laid_t_s; /* NAN: not yet */
  ox_viewport view;
  ox_flight *seen;        /* memory for the flight as it is seen from the air, or NULL */
  const ox_flight *flown; /* the scene's, or that */
  ox_stretch named;       /* whose headings and times are written: the first circuit, or in the
                             air view the one being flown */
  ox_track_lines lines;
  ox_air_lines air_lines;
  ox_rose rose;
  ox_course course;
  ox_other others[OX_OTHERS_MAX];
  size_t other_count;
  ox_area_shape area;
  ox_limits limits;
  ox_lines paths[OX_PATH_KIND_COUNT], path_heads[OX_PATH_KIND_COUNT];
  ox_lines hatch;
  ox_segments obstacles;
  ox_label labels[OX_LABELS_MAX];
  size_t label_count;
  ox_stay stays[OX_LABELS_MAX];
  size_t stay_count;
};

/* --- helpers ------------------------------------------------------------------------------- */

bool ox_has_layer(const ox_picture *p, unsigned layer);
void ox_hue_set(const ox_picture *p, cairo_t *cr, ox_hue ink);
/* Appends polylines to the current path. */
void ox_path_add(cairo_t *cr, const ox_lines *lines);
/* Appends closed triangles (three points each). */
void ox_path_add_heads(cairo_t *cr, const ox_lines *heads);
/* An arrowhead with its tip at p along a device direction. */
void ox_lines_head(ox_lines *lines, ox_vec tip, ox_vec direction, double length);
/* Width, dashes, caps and source of a kind of line, as the legend and the layers draw it. */
void ox_line_style_set(const ox_picture *p, cairo_t *cr, ox_line_kind kind);
/* Strokes lines of a kind, with the picture's brush where it has one. */
void ox_line_stroke(const ox_picture *p, cairo_t *cr, const ox_lines *lines, ox_line_kind kind);
/* Whether an earlier leg of a part of the flight is the same line within so many NM. */
bool ox_flown_before(const ox_flight *flight, ox_part part, size_t index, double within_nm);
/* Whether the leg is the same line as any of the flight's circuits and entry. */
bool ox_flown_at_all(const ox_flight *flight, const ox_leg *leg, double within_nm);
/* Whether any later circuit flies a line of its own. */
bool ox_later_differs(const ox_flight *flight);
/* An arrow at a share of a leg's time, where the leg is long enough to carry one. */
void ox_add_head(ox_picture *p, ox_lines *heads, const ox_leg *leg, double share);
/* Whether the leg ends by a DME station, and by what it may end. */
bool ox_has_limits(const ox_picture *p);
bool ox_has_limiting_radial(const ox_picture *p);
bool ox_has_limiting_distance(const ox_picture *p);
/* A reading with at most one decimal. */
void ox_limit_nm_text(char *buf, size_t bytes, double nm);
/* First leg of a kind in a circuit; NULL when there is none. */
const ox_leg *ox_find_leg(const ox_flight *flight, ox_leg_kind kind, int circuit);
/* First event of a kind in a circuit; NULL when there is none. */
const ox_event *ox_find_event(const ox_flight *flight, ox_event_kind kind, int circuit);
ox_vec ox_to_dev(const ox_picture *p, ox_vec world_nm);
/* Device bearing of a true bearing. */
double ox_dev_bearing(const ox_picture *p, double true_deg);
bool ox_is_finite(ox_vec v);
/* A number with so many decimals (0..2), with the point or comma of the reader's language and
 * nothing of the process locale. */
void ox_number_text(char *buf, size_t bytes, double value, int decimals);
/* "032" from a true bearing, "032 M" where magnetic and true differ. */
void ox_direction_text(const ox_picture *p, char *buf, size_t bytes, double true_deg);
/* "from 360 T" and its like, in the north the case gives the wind in. */
void ox_wind_from_text(const ox_picture *p, char *buf, size_t bytes);

/* --- layout and building, in this order ---------------------------------------------------- */

void ox_build_sizes(ox_picture *p);
void ox_build_others(ox_picture *p); /* which there are */
void ox_build_spread(ox_picture *p); /* needs no view; the legend asks whether there is a band */
void ox_build_furniture(ox_picture *p); /* sets map */
void ox_place_blocks(ox_picture *p, ox_rect *room); /* part of it: column or row of blocks */
bool ox_is_upright(const ox_picture *p); /* the blocks stand below the map */
void ox_furniture_clear(ox_furniture *f);
void ox_build_view(ox_picture *p);      /* sets home and rose_radius */
void ox_build_scale(ox_picture *p);     /* needs home */
/* The scale bar alone, its left end at x and its foot at y. */
void ox_scale_bar_draw(const ox_picture *p, cairo_t *cr, double x, double y);
void ox_build_track(ox_picture *p);
void ox_build_air_track(ox_picture *p, double t_s);
void ox_build_other_lines(ox_picture *p);
void ox_build_paths(ox_picture *p);
void ox_build_area(ox_picture *p);
void ox_build_limits(ox_picture *p);
void ox_build_rose(ox_picture *p);
void ox_build_course_ends(ox_picture *p);
void ox_build_labels(ox_picture *p);    /* builds the course line round its figure too */
void ox_build_course_lines(ox_picture *p, const ox_rect *gap);
void ox_build_hatch(ox_picture *p);     /* last: it leaves the labels free */

/* A time as the picture shows it: within the flight; 0 for none; not beyond the fix where the
 * answer is hidden. */
double ox_instant(const ox_picture *p, double t_s);

/* --- layers -------------------------------------------------------------------------------- */

void ox_layer_tint(const ox_picture *p, cairo_t *cr);
void ox_layer_hatch(const ox_picture *p, cairo_t *cr);
void ox_layer_rose(const ox_picture *p, cairo_t *cr);
void ox_layer_course(const ox_picture *p, cairo_t *cr);
void ox_layer_fix(const ox_picture *p, cairo_t *cr); /* part of the course layer, over the track */
void ox_layer_still_air(const ox_picture *p, cairo_t *cr);
void ox_layer_track(const ox_picture *p, cairo_t *cr);
void ox_layer_others(const ox_picture *p, cairo_t *cr);
void ox_layer_paths(const ox_picture *p, cairo_t *cr);
void ox_layer_marks(const ox_picture *p, cairo_t *cr);
void ox_layer_limits(const ox_picture *p, cairo_t *cr);
/* The symbol of one kind of mark, and how large it is. */
void ox_symbol_draw(const ox_picture *p, cairo_t *cr, ox_vec at, ox_mark_kind kind);
double ox_symbol_radius(const ox_picture *p);
void ox_layer_ink(const ox_picture *p, cairo_t *cr);
bool ox_ink_on_whole_board(const ox_picture *p); /* or in the map alone */
void ox_layer_area(const ox_picture *p, cairo_t *cr);
void ox_layer_spread(const ox_picture *p, cairo_t *cr);
void ox_layer_chart(const ox_picture *p, cairo_t *cr);
void ox_layer_labels(const ox_picture *p, cairo_t *cr);
void ox_layer_furniture(const ox_picture *p, cairo_t *cr);
void ox_layer_wind(const ox_picture *p, cairo_t *cr);
void ox_layer_compass(const ox_picture *p, cairo_t *cr);
void ox_layer_aircraft(const ox_picture *p, cairo_t *cr, double t_s);
void ox_layer_triangle(ox_picture *p, cairo_t *cr, double t_s);

/* Labels, content of the list: adds everything that is to be named, most important first. */
void ox_label_content(ox_picture *p);
/* The same for the overlays, and for marks and paths. */
void ox_label_others(ox_picture *p);
void ox_label_marks(ox_picture *p);
void ox_marks_obstacles(ox_picture *p); /* their symbols */
void ox_label_paths(ox_picture *p);
void ox_label_area(ox_picture *p);
void ox_label_limits(ox_picture *p);
void ox_limits_obstacles(ox_picture *p);
/* Adds one label; NULL when the list is full. */
ox_label *ox_label_add(ox_picture *p, const char *words, double size, unsigned style, ox_hue ink,
                       int priority, ox_anchor anchor);
/* A label along a leg, first on the side given; only the part of the leg in the map counts. NULL
 * also where nothing of it is. */
ox_label *ox_label_beside(ox_picture *p, const ox_leg *leg, ox_vec side, const char *words,
                          double size, unsigned style, ox_hue ink, int priority);
/* The same words in more, shorter lines, for narrow places. NULL for the label is allowed. */
void ox_label_narrow(ox_picture *p, ox_label *label, const char *words, double size,
                     unsigned style);

/* --- the legend and the chart -------------------------------------------------------------- */

typedef struct {
  double width, height;
} ox_extent;

void ox_legend_make(ox_picture *p);
/* Once the lines are there: which rows are drawn, and where. In a view that moves all that may be
 * in use at some instant. */
void ox_legend_settle(ox_picture *p);
/* The rows of a picture before this one, each in its place. */
void ox_legend_hold(ox_picture *p, const ox_legend *held);
void ox_legend_clear(ox_legend *legend);
ox_extent ox_legend_extent(const ox_picture *p);
/* Gives up the row that is needed least; false when there is none that can go. */
bool ox_legend_shorten(ox_picture *p);
/* Whether there is a row for a kind of line, and room for the legend. */
bool ox_legend_names(const ox_picture *p, ox_line_kind kind);
void ox_legend_draw(const ox_picture *p, cairo_t *cr);

/* The held layout, where it is of a board of this size and text; NULL: none. */
const ox_layout *ox_held_layout(const ox_picture *p);
/* Puts map and furniture there, whose words are made already. */
void ox_layout_restore(ox_picture *p, const ox_layout *layout);

void ox_chart_make(ox_picture *p);
void ox_chart_clear(ox_chart *chart);
/* The least room it can do with; 0 by 0 where there is no chart. */
ox_extent ox_chart_extent(const ox_picture *p);

#endif
