/* The open lesson: owns it, solves the shown case once a change, tells everybody else. */
#include "ox_document.h"

#include <string.h>

struct _OxDocument {
  GObject parent_instance;

  /* owned */
  ox_lesson *lesson;
  char *path;
  char *title;
  ox_flight *flight;
  ox_case *saved; /* the cases as they are in the file */
  size_t saved_count;

  size_t case_index;
  gboolean solved;
  gboolean modified;
  guint solve_count;
};

enum { PROP_0, PROP_MODIFIED, PROP_TITLE, PROP_COUNT };
static GParamSpec *properties[PROP_COUNT];
static guint changed_signal;

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
  ox_lesson_free(self->lesson);
  g_free(self->path);
  g_free(self->title);
  g_free(self->flight);
  g_free(self->saved);
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
}

static void set_modified(OxDocument *self, gboolean modified) {
  if (self->modified == modified) return;
  self->modified = modified;
  g_object_notify_by_pspec(G_OBJECT(self), properties[PROP_MODIFIED]);
}

/* Remembers the cases as saved. */
static void mark_saved(OxDocument *self) {
  g_free(self->saved);
  self->saved_count = self->lesson->case_count;
  self->saved = g_new(ox_case, self->saved_count);
  for (size_t i = 0; i < self->saved_count; i++) self->saved[i] = self->lesson->cases[i].c;
  set_modified(self, FALSE);
}

/* Typed there and back again is no change. A lesson that cannot be saved is for trying things out:
 * there is nothing to lose. */
static void update_modified(OxDocument *self) {
  gboolean same = self->lesson->case_count == self->saved_count;
  for (size_t i = 0; same && i < self->saved_count; i++)
    same = ox_case_equal(&self->saved[i], &self->lesson->cases[i].c);
  set_modified(self, !same && !self->lesson->read_only);
}

/* Titles come from the lesson, else from the name of its file. */
static void update_title(OxDocument *self) {
  char *title;
  if (self->lesson->title[0] != '\0')
    title = g_strdup(self->lesson->title);
  else if (self->path)
    title = g_filename_display_basename(self->path);
  else
    title = g_strdup("Untitled lesson");
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

static void ox_document_init(OxDocument *self) {
  self->flight = g_new0(ox_flight, 1);
  self->lesson = ox_lesson_new();
  if (!self->lesson) g_error("Out of memory");
  update_title(self);
  mark_saved(self);
}

OxDocument *ox_document_new(void) { return g_object_new(OX_TYPE_DOCUMENT, NULL); }

static void emit_changed(OxDocument *self, guint what) {
  self->solved = FALSE;
  g_signal_emit(self, changed_signal, 0, what);
}

void ox_document_take(OxDocument *self, ox_lesson *lesson, const char *path) {
  g_return_if_fail(OX_IS_DOCUMENT(self));
  g_return_if_fail(lesson && lesson->case_count > 0);
  ox_lesson *old = self->lesson;
  self->lesson = lesson;
  self->case_index = 0;
  set_path(self, path);
  update_title(self);
  mark_saved(self);
  emit_changed(self, OX_DOCUMENT_LESSON | OX_DOCUMENT_SELECTION | OX_DOCUMENT_CASE);
  ox_lesson_free(old); /* listeners let go of it while the signal ran */
}

ox_status ox_document_open(OxDocument *self, const char *path, ox_messages *messages) {
  ox_lesson *lesson = NULL;
  ox_status status = ox_lesson_read(path, &lesson, messages);
  if (status != OX_ERROR) ox_document_take(self, lesson, path);
  return status;
}

ox_status ox_document_save(OxDocument *self, const char *path, ox_messages *messages) {
  ox_status status = ox_lesson_write(self->lesson, path, messages);
  if (status == OX_ERROR) return status;
  set_path(self, path);
  update_title(self);
  mark_saved(self);
  return status;
}

const ox_lesson *ox_document_lesson(OxDocument *self) { return self->lesson; }

const char *ox_document_path(OxDocument *self) { return self->path; }

const char *ox_document_title(OxDocument *self) { return self->title; }

gboolean ox_document_modified(OxDocument *self) { return self->modified; }

gboolean ox_document_read_only(OxDocument *self) { return self->lesson->read_only; }

size_t ox_document_case_count(OxDocument *self) { return self->lesson->case_count; }

size_t ox_document_case_index(OxDocument *self) { return self->case_index; }

void ox_document_select(OxDocument *self, size_t index) {
  if (index >= self->lesson->case_count) index = self->lesson->case_count - 1;
  if (index == self->case_index) return;
  self->case_index = index;
  emit_changed(self, OX_DOCUMENT_SELECTION | OX_DOCUMENT_CASE);
}

const ox_case *ox_document_case(OxDocument *self) {
  return &self->lesson->cases[self->case_index].c;
}

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

ox_status ox_document_edit(OxDocument *self, const ox_case *new_case, ox_fault *fault) {
  ox_case *shown = &self->lesson->cases[self->case_index].c;
  ox_fault found;
  if (ox_case_check(new_case, &found, 1) > 0) {
    if (fault) *fault = found;
    return OX_ERROR;
  }
  if (ox_case_equal(shown, new_case)) return OX_OK;
  *shown = *new_case;
  update_modified(self);
  emit_changed(self, OX_DOCUMENT_CASE);
  return OX_OK;
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

guint ox_document_solve_count(OxDocument *self) { return self->solve_count; }
