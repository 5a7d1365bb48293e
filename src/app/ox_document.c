/* The open lesson: owns it, solves the shown case once a change, tells everybody else. */
#include "ox_document_private.h"

#include <string.h>

#include "ox_document_places.h"
#include "ox_step_name.h"
#include "oxbow/journey.h"
#include "oxbow/text.h"

/* A pointer at rest for so long has arrived, for the time being. */
#define SETTLES_AFTER_MS 100

enum { PROP_0, PROP_MODIFIED, PROP_TITLE, PROP_COUNT };
static GParamSpec *properties[PROP_COUNT];
static guint changed_signal, settled_signal, history_signal, saved_signal;

G_DEFINE_FINAL_TYPE(OxDocument, ox_document, G_TYPE_OBJECT)

static void get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  OxDocument *self = OX_DOCUMENT(object);
  switch (id) {
  case PROP_MODIFIED:
    g_value_set_boolean(value, self->modified);
    break;
  case PROP_TITLE:
    g_value_set_string(value, self->title);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
  }
}

static void finalize(GObject *object) {
  OxDocument *self = OX_DOCUMENT(object);
  g_clear_handle_id(&self->settling, g_source_remove);
  ox_snapshot_view_clear(&self->view);
  ox_snapshot_unref(self->now);
  g_clear_pointer(&self->saved, ox_snapshot_unref);
  g_clear_pointer(&self->step_before, ox_snapshot_unref);
  g_free(self->step_name);
  ox_history_free(self->history);
  g_free(self->path);
  g_free(self->title);
  g_free(self->flight);
  g_free(self->whole);
  G_OBJECT_CLASS(ox_document_parent_class)->finalize(object);
}

static void ox_document_class_init(OxDocumentClass *class) {
  GObjectClass *object_class = G_OBJECT_CLASS(class);
  object_class->get_property = get_property;
  object_class->finalize = finalize;
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  properties[PROP_MODIFIED] = g_param_spec_boolean("modified", NULL, NULL, FALSE, flags);
  properties[PROP_TITLE] = g_param_spec_string("title", NULL, NULL, NULL, flags);
  g_object_class_install_properties(object_class, PROP_COUNT, properties);
  changed_signal = g_signal_new("changed", OX_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  settled_signal = g_signal_new("settled", OX_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  history_signal = g_signal_new("history", OX_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
  saved_signal = g_signal_new("saved", OX_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 0);
}

/* ---- what follows from the lesson ------------------------------------------------------- */

/* Typed there and back again is no change. A lesson that cannot be saved is for trying things out:
 * there is nothing to lose. */
static void update_modified(OxDocument *self) {
  gboolean same = self->saved && ox_snapshot_equal(self->now, self->saved);
  gboolean modified = !self->view.read_only && !same;
  if (self->modified == modified) return;
  self->modified = modified;
  g_object_notify_by_pspec(G_OBJECT(self), properties[PROP_MODIFIED]);
}

/* Remembers the lesson as saved. */
static void mark_saved(OxDocument *self) {
  ox_snapshot *now = ox_snapshot_ref(self->now);
  g_clear_pointer(&self->saved, ox_snapshot_unref);
  self->saved = now;
  update_modified(self);
}

/* Titles come from the lesson, else from the name of its file. */
static void update_title(OxDocument *self) {
  char *title;
  if (self->view.title[0] != '\0')
    title = g_strdup(self->view.title);
  else if (self->path)
    title = g_filename_display_basename(self->path);
  else
    title = g_strdup(_("Untitled lesson"));
  if (g_strcmp0(title, self->title) == 0) {
    g_free(title);
    return;
  }
  g_free(self->title);
  self->title = title;
  g_object_notify_by_pspec(G_OBJECT(self), properties[PROP_TITLE]);
}

static void set_path(OxDocument *self, const char *path) {
  char *copy = g_strdup(path); /* path may be our own */
  g_free(self->path);
  self->path = copy;
}

/* ---- the object ------------------------------------------------------------------------- */

static ox_snapshot *new_lesson(void) {
  ox_lesson *lesson = ox_lesson_new();
  if (!lesson) g_error("Out of memory");
  ox_snapshot *snapshot = ox_snapshot_new(lesson);
  ox_lesson_free(lesson);
  return snapshot;
}

static void ox_document_init(OxDocument *self) {
  self->flight = g_new0(ox_flight, 1);
  self->history = ox_history_new();
  self->clock_us = -1;
  self->now = new_lesson();
  ox_snapshot_view(self->now, &self->view);
  update_title(self);
  mark_saved(self);
}

OxDocument *ox_document_new(void) { return g_object_new(OX_TYPE_DOCUMENT, NULL); }

/* ---- who need not follow every step of a drag ------------------------------------------- */

static void settle(OxDocument *self) {
  guint what = self->unsettled;
  g_clear_handle_id(&self->settling, g_source_remove);
  self->unsettled = 0;
  if (what) g_signal_emit(self, settled_signal, 0, what);
}

static gboolean settle_cb(gpointer data) {
  OxDocument *self = OX_DOCUMENT(data);
  self->settling = 0; /* this very source, which goes by itself */
  settle(self);
  return G_SOURCE_REMOVE;
}

/* At once, unless a step is under way: then when it pauses. After the frame it goes with: idle. */
static void settle_soon(OxDocument *self, guint what) {
  self->unsettled |= what;
  if (!self->step_before) {
    settle(self);
    return;
  }
  g_clear_handle_id(&self->settling, g_source_remove);
  self->settling =
      g_timeout_add_full(G_PRIORITY_DEFAULT_IDLE, SETTLES_AFTER_MS, settle_cb, self, NULL);
}

/* ---- showing another lesson ------------------------------------------------------------- */

static guint differences(const ox_snapshot *a, size_t index_a, const ox_snapshot *b,
                         size_t index_b) {
  const ox_lesson_case *one = ox_snapshot_case(a, index_a), *other = ox_snapshot_case(b, index_b);
  guint what = 0;
  if (ox_snapshot_case_id(a, index_a) != ox_snapshot_case_id(b, index_b))
    what |= OX_DOCUMENT_SELECTION | OX_DOCUMENT_CASE | OX_DOCUMENT_EXTRAS;
  else if (!ox_case_equal(&one->c, &other->c))
    what |= OX_DOCUMENT_CASE;
  if (index_a != index_b) what |= OX_DOCUMENT_SELECTION;
  if (!ox_snapshot_list_equal(a, b)) what |= OX_DOCUMENT_CASES;
  if (!ox_lesson_case_rest_equal(one, other) ||
      !ox_lesson_head_equal(ox_snapshot_head(a), ox_snapshot_head(b)))
    what |= OX_DOCUMENT_EXTRAS;
  return what;
}

static void show(OxDocument *self, ox_snapshot *next, size_t index, guint what) {
  ox_snapshot *old = self->now;
  self->now = next;
  self->case_index = index;
  ox_snapshot_view(next, &self->view);
  if (what & (OX_DOCUMENT_CASE | OX_DOCUMENT_SELECTION)) self->solved = FALSE;
  self->whole_made = FALSE;
  update_title(self);
  update_modified(self);
  if (what) {
    g_signal_emit(self, changed_signal, 0, what);
    settle_soon(self, what);
  }
  ox_snapshot_unref(old); /* listeners let go of it while the signal ran */
}

void ox_document_show(OxDocument *self, ox_snapshot *next, size_t index) {
  show(self, next, index, differences(self->now, self->case_index, next, index));
}

static void take(OxDocument *self, ox_lesson *lesson, const char *path, gboolean is_saved) {
  ox_snapshot *next = ox_snapshot_new(lesson);
  ox_lesson_free(lesson);
  g_clear_pointer(&self->step_before, ox_snapshot_unref);
  g_clear_pointer(&self->step_name, g_free);
  ox_history_clear(self->history);
  set_path(self, path);
  g_clear_pointer(&self->saved, ox_snapshot_unref);
  self->saved = is_saved ? ox_snapshot_ref(next) : NULL;
  show(self, next, 0,
       OX_DOCUMENT_LESSON | OX_DOCUMENT_SELECTION | OX_DOCUMENT_CASE | OX_DOCUMENT_CASES |
           OX_DOCUMENT_EXTRAS);
  g_signal_emit(self, history_signal, 0);
}

void ox_document_take(OxDocument *self, ox_lesson *lesson, const char *path) {
  g_return_if_fail(OX_IS_DOCUMENT(self));
  g_return_if_fail(lesson && lesson->case_count > 0);
  take(self, lesson, path, TRUE);
}

void ox_document_take_unsaved(OxDocument *self, ox_lesson *lesson, const char *path) {
  g_return_if_fail(OX_IS_DOCUMENT(self));
  g_return_if_fail(lesson && lesson->case_count > 0);
  take(self, lesson, path, FALSE);
}

ox_status ox_document_open(OxDocument *self, const char *path, ox_messages *messages) {
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(path, &lesson, messages);
  if (status != OX_ERROR) ox_document_take(self, lesson, path);
  return status;
}

ox_status ox_document_save(OxDocument *self, const char *path, ox_messages *messages) {
  ox_status status = ox_lesson_write(&self->view, path, messages);
  if (status == OX_ERROR) return status;
  set_path(self, path);
  update_title(self);
  mark_saved(self);
  g_signal_emit(self, saved_signal, 0);
  return status;
}

void ox_document_mark_unsaved(OxDocument *self) {
  g_clear_pointer(&self->saved, ox_snapshot_unref);
  update_modified(self);
}

ox_status ox_document_reload(OxDocument *self, ox_messages *messages) {
  g_return_val_if_fail(self->path && !self->step_before, OX_ERROR);
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(self->path, &lesson, messages);
  if (status == OX_ERROR) return status;
  ox_snapshot *next = ox_snapshot_new(lesson);
  size_t index = MIN(self->case_index, lesson->case_count - 1);
  ox_lesson_free(lesson);
  ox_document_do(self, _("Reload"), next, self->case_index, index, FALSE);
  mark_saved(self);
  g_signal_emit(self, saved_signal, 0);
  return status;
}

/* ---- reading ---------------------------------------------------------------------------- */

const ox_lesson *ox_document_lesson(OxDocument *self) { return &self->view; }

ox_snapshot *ox_document_snapshot(OxDocument *self) { return ox_snapshot_ref(self->now); }

const char *ox_document_path(OxDocument *self) { return self->path; }

const char *ox_document_title(OxDocument *self) { return self->title; }

gboolean ox_document_modified(OxDocument *self) { return self->modified; }

gboolean ox_document_read_only(OxDocument *self) { return self->view.read_only; }

size_t ox_document_case_count(OxDocument *self) { return self->view.case_count; }

size_t ox_document_case_index(OxDocument *self) { return self->case_index; }

void ox_document_select(OxDocument *self, size_t index) {
  if (index >= self->view.case_count) index = self->view.case_count - 1;
  if (index == self->case_index) return;
  ox_history_seal(self->history);
  ox_document_show(self, ox_snapshot_ref(self->now), index);
}

const ox_case *ox_document_case(OxDocument *self) { return &self->view.cases[self->case_index].c; }

const ox_flight *ox_document_flight(OxDocument *self) {
  if (!self->solved) {
    self->solved = TRUE;
    self->solve_count++;
    /* Readers and ox_document_edit let no faulty case in; should one come all the same, the
     * flight has no legs rather than those of another case. */
    if (ox_flight_solve(ox_document_case(self), self->flight) == OX_ERROR)
      memset(self->flight, 0, sizeof *self->flight);
  }
  return self->flight;
}

static gboolean make_whole(OxDocument *self) {
  const ox_route *route = ox_document_route(self);
  if (route->count < 2) return FALSE;
  ox_journey *journey = g_new(ox_journey, 1);
  ox_status status =
      ox_journey_make(ox_document_points(self), route, ox_document_fix(self),
                      ox_document_case(self), ox_document_flight(self), journey, NULL, 0);
  gboolean flown = status != OX_ERROR && journey->leg_count > 0;
  if (flown && !self->whole) self->whole = g_new(ox_flight, 1);
  if (flown) ox_journey_flight(journey, ox_document_flight(self), self->whole);
  g_free(journey);
  return flown;
}

const ox_flight *ox_document_whole_flight(OxDocument *self) {
  if (!self->whole_made) {
    self->has_route = make_whole(self);
    self->whole_made = TRUE;
  }
  return self->has_route ? self->whole : ox_document_flight(self);
}

guint ox_document_solve_count(OxDocument *self) { return self->solve_count; }

/* ---- steps ------------------------------------------------------------------------------ */

static gint64 clock_us(OxDocument *self) {
  return self->clock_us >= 0 ? self->clock_us : g_get_monotonic_time();
}

void ox_document_set_clock(OxDocument *self, gint64 us) { self->clock_us = us; }

void ox_document_do(OxDocument *self, const char *name, ox_snapshot *next, size_t index_before,
                    size_t index_after, gboolean open_to_more) {
  if (index_after == self->case_index && ox_snapshot_equal(self->now, next)) {
    ox_snapshot_unref(next);
    return;
  }
  if (!self->step_before)
    ox_history_add(self->history, (ox_step){.name = g_strdup(name),
                                            .before = ox_snapshot_ref(self->now),
                                            .after = ox_snapshot_ref(next),
                                            .index_before = index_before,
                                            .index_after = index_after,
                                            .at_us = clock_us(self),
                                            .open_to_more = open_to_more});
  ox_document_show(self, next, index_after);
  g_signal_emit(self, history_signal, 0);
}

void ox_document_begin_step(OxDocument *self, const char *name) {
  g_return_if_fail(OX_IS_DOCUMENT(self) && name);
  g_return_if_fail(!self->step_before);
  self->step_before = ox_snapshot_ref(self->now);
  self->step_index_before = self->case_index;
  self->step_name = g_strdup(name);
  g_signal_emit(self, history_signal, 0);
}

void ox_document_end_step(OxDocument *self) {
  if (!self->step_before) return; /* another lesson was taken meanwhile */
  ox_step step = {.name = g_steal_pointer(&self->step_name),
                  .before = g_steal_pointer(&self->step_before),
                  .after = ox_snapshot_ref(self->now),
                  .index_before = self->step_index_before,
                  .index_after = self->case_index,
                  .at_us = clock_us(self)};
  if (ox_snapshot_equal(step.before, step.after)) {
    g_free(step.name);
    ox_snapshot_unref(step.before);
    ox_snapshot_unref(step.after);
  } else {
    ox_history_add(self->history, step);
  }
  settle(self);
  g_signal_emit(self, history_signal, 0);
}

void ox_document_cancel_step(OxDocument *self) {
  if (!self->step_before) return;
  g_clear_pointer(&self->step_name, g_free);
  ox_document_show(self, g_steal_pointer(&self->step_before), self->step_index_before);
  settle(self); /* also where the last edit had led back already */
  g_signal_emit(self, history_signal, 0);
}

gboolean ox_document_in_step(OxDocument *self) { return self->step_before != NULL; }

void ox_document_seal_step(OxDocument *self) { ox_history_seal(self->history); }

gboolean ox_document_can_undo(OxDocument *self) { return ox_document_undo_name(self) != NULL; }

gboolean ox_document_can_redo(OxDocument *self) { return ox_document_redo_name(self) != NULL; }

const char *ox_document_undo_name(OxDocument *self) {
  const ox_step *step = ox_history_undo_step(self->history);
  return step && !self->step_before ? step->name : NULL;
}

const char *ox_document_redo_name(OxDocument *self) {
  const ox_step *step = ox_history_redo_step(self->history);
  return step && !self->step_before ? step->name : NULL;
}

void ox_document_undo(OxDocument *self) {
  const ox_step *step = ox_history_undo_step(self->history);
  if (!step || self->step_before) return;
  ox_snapshot *before = ox_snapshot_ref(step->before);
  size_t index = step->index_before;
  ox_history_go_back(self->history);
  ox_document_show(self, before, index);
  g_signal_emit(self, history_signal, 0);
}

void ox_document_redo(OxDocument *self) {
  const ox_step *step = ox_history_redo_step(self->history);
  if (!step || self->step_before) return;
  ox_snapshot *after = ox_snapshot_ref(step->after);
  size_t index = step->index_after;
  ox_history_go_forward(self->history);
  ox_document_show(self, after, index);
  g_signal_emit(self, history_signal, 0);
}

/* ---- edits ------------------------------------------------------------------------------ */

static ox_status edit(OxDocument *self, const ox_case *c, gboolean open_to_more,
                      ox_fault *fault) {
  ox_fault found;
  ox_case settled = *c;
  /* Where the place of the fix hangs on the arrival, its distance follows. */
  const ox_fix *fix = &self->view.cases[self->case_index].fix;
  if (ox_case_check(c, NULL, 0) == 0 &&
      ox_fix_settle(&self->view.points, fix, &settled, NULL, 0) == OX_ERROR) {
    found =
        (ox_fault){.key = "hold.fix",
                   .value = N_("a fix so far away"),
                   .allowed = N_("within reach: at most 100 NM ahead, a station within 200 NM")};
    if (fault) *fault = found;
    return OX_ERROR;
  }
  c = &settled;
  if (ox_case_check(c, &found, 1) > 0) {
    if (fault) *fault = found;
    return OX_ERROR;
  }
  if (ox_case_equal(ox_document_case(self), c)) return OX_OK;
  char *name = ox_step_name(ox_document_case(self), c);
  ox_snapshot *next = ox_snapshot_with_values(self->now, self->case_index, c);
  ox_document_do(self, name, next, self->case_index, self->case_index, open_to_more);
  g_free(name);
  return OX_OK;
}

ox_status ox_document_edit(OxDocument *self, const ox_case *new_case, ox_fault *fault) {
  return edit(self, new_case, FALSE, fault);
}

ox_status ox_document_edit_more(OxDocument *self, const ox_case *new_case, ox_fault *fault) {
  return edit(self, new_case, TRUE, fault);
}

ox_status ox_document_set_field(OxDocument *self, const ox_field *field, double value,
                                ox_fault *fault) {
  ox_case edited = *ox_document_case(self);
  if (!ox_field_accepts(field, value)) {
    if (fault) {
      g_strlcpy(fault->key, field->key, sizeof fault->key);
      g_ascii_formatd(fault->value, sizeof fault->value, "%.6g", value);
      fault->allowed = field->allowed;
    }
    return OX_ERROR;
  }
  ox_field_set(field, &edited, value);
  return ox_document_edit(self, &edited, fault);
}

void ox_document_replace_case(OxDocument *self, const char *name, const ox_lesson_case *c) {
  ox_document_do(self, name, ox_snapshot_with_case(self->now, self->case_index, c),
                 self->case_index, self->case_index, FALSE);
}

void ox_document_replace_head(OxDocument *self, const char *name, const ox_lesson *head) {
  ox_document_do(self, name, ox_snapshot_with_head(self->now, head), self->case_index,
                 self->case_index, FALSE);
}
