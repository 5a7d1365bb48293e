/* What the files of the verb draw share. Private to the command line. */
#ifndef OX_CLI_DRAW_H
#define OX_CLI_DRAW_H

#include "cli_private.h"
#include "oxbow/export.h"
#include "oxbow/placed.h"
#include "oxbow/sheets.h"

/* The options as they were given; NULL where not. */
typedef struct {
  const char *size, *palette, *at, *compare, *spread, *seed, *dpi, *fps, *speed;
  const char *per_page, *paper;
  bool moments, transparent, area, worksheet, key, across;
} draw_wishes;

typedef struct {
  const char *path;
  ox_export_options export;
  ox_palette_id palette;
  bool at_given;
  bool ink;      /* with what was drawn by hand */
  bool numbered; /* the frames of the flight, each as a PNG of its own */
  bool on_sheets;
  ox_sheets_options sheets;
  cli_overlay_plan overlays;
} draw_plan;

/* --- what was asked for (draw_plan.c, draw_sheets.c) ---------------------------------------- */

/* OX_CLI_DONE, or OX_CLI_USAGE after a message. */
int draw_plan_make(cli_io *io, draw_plan *p, const draw_wishes *w);
/* The same for handouts. */
int draw_plan_sheets(cli_io *io, draw_plan *p, const draw_wishes *w);
bool draw_asks_for_sheets(const draw_wishes *w);

/* --- writing (draw.c) ---------------------------------------------------------------------- */

/* Makes the bytes of a file; on OX_ERROR *reason may be a static sentence. */
typedef ox_status (*draw_maker)(const void *what, ox_export_sink sink, void *context,
                                const char **reason);
/* The file is written whole, or stays as it was. */
int draw_to_file(cli_io *io, const char *path, draw_maker make, const void *what);

/* What is drawn of each case. */
typedef struct {
  size_t count;
  ox_flight *flights;
  ox_scene *scenes;
  cli_overlays *overlays;
  ox_placed *placed;
  double *t_s;
} draw_scenes;

int draw_write_sheets(cli_io *io, const draw_plan *p, const draw_scenes *s);

/* --- numbered frames (draw_frames.c) -------------------------------------------------------- */

/* Whether a path has one place for a number ("%d", "%04d") and otherwise ends in .png. *fault is
 * set where it has a '%' that is no such place. */
bool draw_is_numbered(const char *path, bool *fault);
int draw_write_frames(cli_io *io, const draw_plan *p, const draw_scenes *s);

#endif
