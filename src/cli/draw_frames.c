/* draw -o frames/%04d.png: every frame of the flight as a PNG of its own, counted from 1. */
#include <stdio.h>
#include <string.h>

#include "draw.h"
#include "oxbow/text.h"

#define NAME_BYTES 4096
#define FIGURES_MOST 9

/* A place for a number: where it begins and ends in the path, and how many figures it has. */
typedef struct {
  size_t begin, end;
  int figures;
} place;

static bool find_place(const char *path, place *out) {
  const char *percent = strchr(path, '%');
  if (!percent) return false;
  const char *at = percent + 1;
  out->begin = (size_t)(percent - path);
  out->figures = 1;
  if (at[0] == '0' && at[1] >= '1' && at[1] <= '0' + FIGURES_MOST) {
    out->figures = at[1] - '0';
    at += 2;
  }
  out->end = (size_t)(at - path) + 1;
  return *at == 'd';
}

bool draw_is_numbered(const char *path, bool *fault) {
  place at;
  if (!strchr(path, '%')) return false;
  if (find_place(path, &at) && !strchr(path + at.end, '%')) return true;
  *fault = true;
  return false;
}

static bool name_of(const char *path, const place *at, size_t number, char *out, size_t bytes) {
  int n = snprintf(out, bytes, "%.*s%0*zu%s", (int)at->begin, path, at->figures, number,
                   path + at->end);
  return n > 0 && (size_t)n < bytes;
}

typedef struct {
  const ox_scene *scene;
  ox_export_options o;
} frame;

static ox_status make(const void *what, ox_export_sink sink, void *context, const char **reason) {
  const frame *f = what;
  return ox_export(f->scene, 1, &f->o, sink, context, reason);
}

/* Every file is whole; one that cannot be written ends it. */
int draw_write_frames(cli_io *io, const draw_plan *p, const draw_scenes *s) {
  frame f = {.scene = &s->scenes[0], .o = p->export};
  size_t count = ox_export_frame_count(s->scenes[0].flight, &f.o);
  char path[NAME_BYTES];
  place at;
  if (!find_place(p->path, &at)) return OX_CLI_USAGE;
  if (count > OX_FRAMES_MOST) {
    fprintf(io->err, _("%s: not written: %zu frames are more than %d: ask for more --speed\n"),
            p->path, count, OX_FRAMES_MOST);
    return OX_CLI_INPUT;
  }
  for (size_t i = 0; i < count; i++) {
    f.o.t_s = ox_export_frame_s(f.scene->flight, &f.o, i);
    f.o.t_s_of = NULL;
    if (!name_of(p->path, &at, i + 1, path, sizeof path)) {
      fprintf(io->err, _("%s: not written: the name is too long\n"), p->path);
      return OX_CLI_INPUT;
    }
    int code = draw_to_file(io, path, make, &f);
    if (code != OX_CLI_DONE) return code;
  }
  return OX_CLI_DONE;
}
