/* Cases as scenes, and overlays that are kept. */
#include "ox_case_scene.h"

#include <string.h>

#include "ox_prediction.h"

static void take_shown(ox_scene *scene, const ox_scene *shown, gboolean pen_marks) {
  scene->compare = shown->compare;
  scene->compare_name = shown->compare_name;
  scene->area = shown->area;
  scene->spread = shown->spread;
  scene->others = shown->others;
  scene->other_count = shown->other_count;
  scene->hide_answer = shown->hide_answer;
  scene->view.up = shown->view.up;
  scene->view.air = shown->view.air;
  if (shown->hide_answer) scene->ink = NULL; /* as on the board */
  if (shown->ink && pen_marks) scene->ink = shown->ink;
  if (shown->marks) {
    scene->marks = shown->marks;
    scene->mark_count = shown->mark_count;
  }
  if (shown->paths) {
    scene->paths = shown->paths;
    scene->path_count = shown->path_count;
  }
}

/* The name of a case often tells the answer. */
static void hide_name(ox_case_scene *self, size_t index) {
  char *name = ox_prediction_neutral_name(index);
  self->nameless = *self->scene.c;
  g_strlcpy(self->nameless.name, name, sizeof self->nameless.name);
  self->scene.c = &self->nameless;
  g_free(name);
}

ox_case_scene *ox_case_scene_new(const ox_lesson *lesson, size_t index, ox_palette_id palette,
                                 gboolean pen_marks, const ox_scene *shown) {
  const ox_lesson_case *from = &lesson->cases[index];
  ox_case_scene *self = g_new0(ox_case_scene, 1);
  if (ox_flight_solve(&from->c, &self->flight) == OX_ERROR)
    memset(&self->flight, 0, sizeof self->flight);
  ox_placed_make(&lesson->points, &lesson->route, &from->fix, &from->c, &self->flight,
                 &self->placed);
  self->scene = (ox_scene){
      .c = &from->c,
      .flight = &self->flight,
      .title = lesson->title,
      .palette = palette,
      .text_scale = 1,
      .layers = OX_LAYER_ALL,
      .ink = pen_marks ? from->ink : NULL,
      .marks = self->placed.marks,
      .mark_count = self->placed.mark_count,
      .paths = self->placed.paths,
      .path_count = self->placed.path_count,
  };
  if (shown) take_shown(&self->scene, shown, pen_marks);
  if (self->scene.hide_answer) hide_name(self, index);
  return self;
}

/* ---- overlays that are kept ------------------------------------------------------------- */

struct ox_laid_over {
  ox_scene scene;
  ox_flight *compare;
  char *compare_name;
  ox_area *area;
  ox_spread *spread;
  ox_case cases[OX_SCENE_OTHERS_MAX];
  ox_flight *flights[OX_SCENE_OTHERS_MAX];
  char *names[OX_SCENE_OTHERS_MAX];
  ox_scene_other others[OX_SCENE_OTHERS_MAX];
};

static ox_spread *spread_copy(const ox_spread *spread) {
  const size_t cells = (size_t)OX_SPREAD_CELLS * OX_SPREAD_CELLS;
  ox_spread *copy = g_memdup2(spread, sizeof *spread);
  copy->cells = g_memdup2(spread->cells, cells * sizeof *spread->cells);
  return copy;
}

ox_laid_over *ox_laid_over_copy(const ox_scene *scene) {
  ox_laid_over *self = g_new0(ox_laid_over, 1);
  self->compare = g_memdup2(scene->compare, sizeof *scene->compare);
  self->compare_name = g_strdup(scene->compare_name);
  self->area = g_memdup2(scene->area, sizeof *scene->area);
  if (scene->spread && scene->spread->cells) self->spread = spread_copy(scene->spread);
  self->scene = (ox_scene){.compare = self->compare,
                           .compare_name = self->compare_name,
                           .area = self->area,
                           .spread = self->spread,
                           .others = self->others,
                           .hide_answer = scene->hide_answer,
                           .view = scene->view};
  for (size_t i = 0; i < scene->other_count && i < OX_SCENE_OTHERS_MAX; i++) {
    self->cases[i] = *scene->others[i].c;
    self->flights[i] = g_memdup2(scene->others[i].flight, sizeof(ox_flight));
    self->names[i] = g_strdup(scene->others[i].name);
    self->others[i] = (ox_scene_other){&self->cases[i], self->flights[i], self->names[i]};
    self->scene.other_count = i + 1;
  }
  return self;
}

void ox_laid_over_free(ox_laid_over *self) {
  for (size_t i = 0; i < OX_SCENE_OTHERS_MAX; i++) {
    g_free(self->flights[i]);
    g_free(self->names[i]);
  }
  if (self->spread) g_free(self->spread->cells);
  g_free(self->spread);
  g_free(self->area);
  g_free(self->compare_name);
  g_free(self->compare);
  g_free(self);
}

const ox_scene *ox_laid_over_scene(const ox_laid_over *self) { return &self->scene; }
