/* Pictures and tracks into files and into memory. */
#include "ox_export_file.h"

#include "ox_case_scene.h"
#include "oxbow/file.h"
#include "oxbow/text.h"
#include "oxbow/trackout.h"
#include "oxbow/words.h"

#define TRACK_STEP_S 1.0

/* ---- what is refused -------------------------------------------------------------------- */

char *ox_export_refusal(const ox_export_job *job, ox_share_what what) {
  gboolean hidden = job->shown && job->shown->hide_answer;
  if (hidden && what != OX_SHARE_PICTURE && what != OX_SHARE_WORKSHEET)
    return g_strdup(_("The answer is hidden. Fly it first, then it can be exported."));
  if (what != OX_SHARE_TRACK) return NULL;
  char remark[512] = "";
  ox_latlon place;
  const ox_lesson_case *c = &job->lesson->cases[job->index];
  if (!ox_fix_has_place(&job->lesson->points, &c->fix, &c->c))
    return g_strdup(_("The fix has no latitude and longitude. The page Places gives it one."));
  if (ox_fix_place(&job->lesson->points, &c->fix, &c->c, &place, remark, sizeof remark) == OX_ERROR)
    return g_strdup(remark);
  return NULL;
}

/* ---- pictures --------------------------------------------------------------------------- */

/* The scenes that a choice shows: the shown case, or all of them. */
static GPtrArray *make_scenes(const ox_export_job *job, const ox_share_choice *choice) {
  GPtrArray *made = g_ptr_array_new_with_free_func(g_free);
  gboolean all = choice->what == OX_SHARE_CASES;
  size_t first = all ? 0 : job->index, count = all ? job->lesson->case_count : 1;
  for (size_t i = first; i < first + count; i++)
    g_ptr_array_add(made, ox_case_scene_new(job->lesson, i, ox_share_palette(choice),
                                            choice->pen_marks,
                                            i == job->index ? job->shown : NULL));
  return made;
}

static ox_status draw(const ox_export_job *job, const ox_share_choice *choice, ox_export_sink sink,
                      void *context, char **error) {
  const char *why = NULL;
  ox_export_options options = ox_share_options(choice, job->t_s);
  options.go_on = job->go_on;
  options.go_on_data = job->data;
  GPtrArray *made = make_scenes(job, choice);
  ox_scene *scenes = g_new(ox_scene, made->len);
  for (guint i = 0; i < made->len; i++)
    scenes[i] = ((ox_case_scene *)g_ptr_array_index(made, i))->scene;
  ox_status status = ox_export(scenes, made->len, &options, sink, context, &why);
  if (status == OX_ERROR) *error = g_strdup(why ? why : _("The picture could not be written."));
  g_free(scenes);
  g_ptr_array_unref(made);
  return status;
}

/* ---- handouts --------------------------------------------------------------------------- */

static ox_status make_handout(const ox_export_job *job, const ox_share_choice *choice,
                              ox_export_sink sink, void *context, char **error) {
  const char *why = NULL;
  gboolean across;
  ox_paper paper = ox_share_sheets_paper(choice->handout_paper, &across);
  ox_handout *handout = ox_handout_new(job->lesson, job->wanted, &choice->handout,
                                       ox_share_sheets_kind(choice->what), paper, across);
  ox_status status = ox_handout_make(handout, sink, context, &why);
  if (status == OX_ERROR) *error = g_strdup(why ? why : _("The handout could not be written."));
  ox_handout_free(handout);
  return status;
}

/* ---- tracks ----------------------------------------------------------------------------- */

static ox_status to_file(void *context, const void *bytes, size_t length) {
  return ox_file_write(context, bytes, length);
}

static ox_status write_track(const ox_export_job *job, const ox_share_choice *choice,
                             ox_file_writer *writer, char **error) {
  const ox_lesson_case *from = &job->lesson->cases[job->index];
  char remark[512] = "";
  const char *why = NULL;
  ox_latlon place;
  if (ox_fix_place(&job->lesson->points, &from->fix, &from->c, &place, remark, sizeof remark) ==
      OX_ERROR) {
    *error = g_strdup(remark);
    return OX_ERROR;
  }
  ox_case_scene *scene = ox_case_scene_new(job->lesson, job->index, OX_PALETTE_LIGHT, FALSE, NULL);
  ox_trackout_case one = {.c = &from->c, .flight = &scene->flight, .fix = place};
  ox_trackout_options options = {
      .format = (ox_trackout_format)((int)choice->format - (int)OX_SHARE_GEOJSON),
      .step_s = TRACK_STEP_S,
      .title = job->lesson->title[0] ? job->lesson->title : NULL,
      .caution = ox_words_caution(),
  };
  ox_status status = ox_trackout_write(&one, 1, &options, to_file, writer, &why);
  if (status == OX_ERROR) *error = g_strdup(why ? why : _("The track could not be written."));
  g_free(scene);
  return status;
}

/* ---- files ------------------------------------------------------------------------------ */

ox_status ox_export_file(const ox_export_job *job, const ox_share_choice *choice, const char *path,
                         char **error) {
  char message[512] = "";
  *error = ox_export_refusal(job, choice->what);
  if (*error) return OX_ERROR;
  ox_file_writer *writer = ox_file_begin(path, message, sizeof message);
  if (!writer) {
    *error = g_strdup(message);
    return OX_ERROR;
  }
  ox_status status =
      choice->what == OX_SHARE_TRACK ? write_track(job, choice, writer, error)
      : ox_share_is_handout(choice->what) ? make_handout(job, choice, to_file, writer, error)
                                          : draw(job, choice, to_file, writer, error);
  if (status != OX_OK) {
    ox_file_abandon(writer);
    return status;
  }
  status = ox_file_commit(writer, message, sizeof message);
  if (status == OX_ERROR) *error = g_strdup(message);
  return status;
}

static ox_status to_memory(void *context, const void *bytes, size_t length) {
  g_byte_array_append(context, bytes, (guint)length);
  return OX_OK;
}

GBytes *ox_export_bytes(const ox_export_job *job, const ox_share_choice *choice, char **error) {
  GByteArray *made = g_byte_array_new();
  if (draw(job, choice, to_memory, made, error) == OX_OK) return g_byte_array_free_to_bytes(made);
  g_byte_array_unref(made);
  return NULL;
}
