/* What is drawn over a picture: a second flight by another technique or with a mistake, the
 * illustrated area, the band of many flights. */
#include <stdlib.h>
#include <string.h>

#include "cli_private.h"
#include "oxbow/crosscheck.h"
#include "oxbow/presets.h"
#include "oxbow/text.h"

/* The keys are part of the command line: they stay what they are. */
static const char *const mistake_keys[OX_MISTAKE_COUNT] = {
    [OX_MISTAKE_DRIFT_WRONG_SIDE] = "drift-wrong-side",
    [OX_MISTAKE_CLOCK_AT_FIX] = "clock-at-fix",
    [OX_MISTAKE_TEARDROP_WRONG_SIDE] = "teardrop-wrong-side",
    [OX_MISTAKE_PARALLEL_WRONG_TURN] = "parallel-wrong-turn",
    [OX_MISTAKE_RADIAL_AS_COURSE] = "radial-as-course",
    [OX_MISTAKE_LATE_SPEED] = "late-speed",
};

const char *cli_mistake_key(ox_mistake mistake) {
  return mistake_keys[mistake];
}

bool cli_parse_compare(const char *text, cli_overlay_plan *plan) {
  if (strcmp(text, "shown") == 0) {
    plan->shown = true;
    return true;
  }
  for (size_t i = 0; i < ox_preset_count(); i++) {
    if (strcmp(text, ox_preset_at(i)->key) != 0) continue;
    plan->preset = (int)i;
    return true;
  }
  for (int i = 0; i < OX_MISTAKE_COUNT; i++) {
    if (strcmp(text, mistake_keys[i]) != 0) continue;
    plan->mistake = i;
    return true;
  }
  return false;
}

/* --- one scene ----------------------------------------------------------------------------- */

static bool no_memory(cli_io *io) {
  fputs(_("oxbow-cli: there is not enough memory\n"), io->err);
  return false;
}

static bool cannot_be_flown(cli_io *io, const char *path, const ox_case *c) {
  fprintf(io->err, _("%s: case \"%s\": the comparison cannot be flown\n"), path, c->name);
  return false;
}

static bool add_preset(cli_io *io, const char *path, size_t preset, ox_scene *scene,
                       ox_flight *flight) {
  ox_case c = *scene->c;
  ox_preset_apply(preset, &c);
  if (ox_flight_solve(&c, flight) == OX_ERROR) return cannot_be_flown(io, path, scene->c);
  scene->compare = flight;
  scene->compare_name = _(ox_preset_at(preset)->name);
  return true;
}

/* A mistake that the case has no room for leaves the picture as it is, with a remark. */
static bool add_mistake(cli_io *io, const char *path, ox_mistake mistake, ox_scene *scene,
                        ox_flight *flight) {
  ox_flaws flaws = {.mistakes = 1u << (unsigned)mistake};
  if (!ox_mistake_shows(scene->c, scene->flight, mistake)) {
    fprintf(io->err, _("%s: case \"%s\": the mistake does not show here: %s\n"), path,
            scene->c->name,
            _(ox_mistake_name(mistake)));
    return true;
  }
  if (ox_flight_solve_flawed(scene->c, &flaws, flight) == OX_ERROR)
    return cannot_be_flown(io, path, scene->c);
  scene->compare = flight;
  scene->compare_name = _(ox_mistake_name(mistake));
  return true;
}

/* What the equipment would fly; a remark where that is what was cleared. */
static bool add_shown(cli_io *io, const char *path, ox_scene *scene, ox_flight *flight) {
  ox_crosscheck check;
  if (ox_crosscheck_make(scene->c, &check) == OX_ERROR)
    return cannot_be_flown(io, path, scene->c);
  if (!check.flown_otherwise) {
    fprintf(io->err, _("%s: case \"%s\": the equipment shows no other track\n"), path,
            scene->c->name);
    return true;
  }
  if (ox_flight_solve(&check.flown, flight) == OX_ERROR)
    return cannot_be_flown(io, path, scene->c);
  scene->compare = flight;
  scene->compare_name = _("as the equipment shows it");
  return true;
}

static bool add_compare(cli_io *io, const char *path, const cli_overlay_plan *plan, ox_scene *scene,
                        cli_overlays *out) {
  if (plan->preset < 0 && plan->mistake < 0 && !plan->shown) return true;
  out->compare = malloc(sizeof *out->compare);
  if (!out->compare) return no_memory(io);
  if (plan->shown) return add_shown(io, path, scene, out->compare);
  if (plan->preset >= 0) return add_preset(io, path, (size_t)plan->preset, scene, out->compare);
  return add_mistake(io, path, (ox_mistake)plan->mistake, scene, out->compare);
}

bool cli_overlays_make(cli_io *io, const char *path, const cli_overlay_plan *plan, ox_scene *scene,
                       cli_overlays *out) {
  memset(out, 0, sizeof *out);
  if (!add_compare(io, path, plan, scene, out)) return false;
  if (plan->area) {
    out->area = ox_area_make(scene->c, &scene->flight->setup, 0.0);
    scene->area = &out->area;
  }
  if (plan->spread_runs == 0) return true;
  ox_tolerances tolerances = ox_tolerances_standard();
  if (ox_spread_make(scene->c, &tolerances, plan->seed, plan->spread_runs, 0, &out->spread) ==
      OX_ERROR)
    return no_memory(io);
  scene->spread = &out->spread;
  return true;
}

void cli_overlays_clear(cli_overlays *overlays) {
  free(overlays->compare);
  ox_spread_free(&overlays->spread);
  memset(overlays, 0, sizeof *overlays);
}
