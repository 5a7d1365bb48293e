/* What the two files of the verb track share. */
#ifndef OX_CLI_TRACK_H
#define OX_CLI_TRACK_H

#include "cli_private.h"
#include "oxbow/trackout.h"

/* The options as they were given; NULL where not. */
typedef struct {
  const char *step, *format, *path, *fix_at, *date;
} cli_track_wishes;

typedef struct {
  ox_trackout_options options;
  const char *path; /* NULL: standard output */
  bool fix_given;
  ox_latlon fix;
} cli_track_map;

/* OX_CLI_DONE, or OX_CLI_USAGE after a message. */
int cli_track_map_plan(cli_io *io, const cli_track_wishes *wishes, double step_s,
                       cli_track_map *map);
int cli_track_map_put(cli_io *io, const cli_cases *cases, cli_track_map *map);

#endif
