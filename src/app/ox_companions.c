/* The companions: chosen, solved when needed, kept until something changes. */
#include "ox_companions.h"

#include <string.h>

#include "oxbow/text.h"

struct _OxCompanions {
  GObject parent_instance;

  /* owned */
  OxDocument *document;
  ox_case cases[OX_SCENE_OTHERS_MAX];
  ox_flight *flights; /* OX_SCENE_OTHERS_MAX of them */
  ox_scene_other others[OX_SCENE_OTHERS_MAX];
  ox_differences table;

  ox_companion chosen[OX_SCENE_OTHERS_MAX];
  gboolean beside;
  gboolean made, table_made;
  size_t count;
  ox_companion_counts counts;
};

static guint changed_signal;

G_DEFINE_FINAL_TYPE(OxCompanions, ox_companions, G_TYPE_OBJECT)

static void forget(OxCompanions *self) {
  self->made = self->table_made = FALSE;
  ox_differences_clear(&self->table);
}

static void document_changed_cb(OxDocument *document, guint what, OxCompanions *self) {
  /* Another lesson has other cases: what was chosen by its number means nothing there. */
  if (what & OX_DOCUMENT_LESSON)
    for (guint i = 0; i < OX_SCENE_OTHERS_MAX; i++)
      if (self->chosen[i].kind == OX_COMPANION_CASE) self->chosen[i] = (ox_companion){0};
  forget(self);
}

static void finalize(GObject *object) {
  OxCompanions *self = OX_COMPANIONS(object);
  g_clear_object(&self->document);
  g_free(self->flights);
  ox_differences_clear(&self->table);
  G_OBJECT_CLASS(ox_companions_parent_class)->finalize(object);
}

static void ox_companions_class_init(OxCompanionsClass *class) {
  G_OBJECT_CLASS(class)->finalize = finalize;
  changed_signal = g_signal_new("changed", OX_TYPE_COMPANIONS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
}

static void ox_companions_init(OxCompanions *self) {
  self->flights = g_new0(ox_flight, OX_SCENE_OTHERS_MAX);
}

OxCompanions *ox_companions_new(OxDocument *document) {
  OxCompanions *self = g_object_new(OX_TYPE_COMPANIONS, NULL);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "changed", G_CALLBACK(document_changed_cb), self, 0);
  return self;
}

/* ---- choices ---------------------------------------------------------------------------- */

static void emit_changed(OxCompanions *self) {
  forget(self);
  g_signal_emit(self, changed_signal, 0);
}

static gboolean same(ox_companion a, ox_companion b) {
  return a.kind == b.kind && (a.kind == OX_COMPANION_NONE || a.index == b.index);
}

void ox_companions_choose(OxCompanions *self, guint place, ox_companion choice) {
  g_return_if_fail(place < OX_SCENE_OTHERS_MAX);
  if (same(self->chosen[place], choice)) return;
  self->chosen[place] = choice;
  emit_changed(self);
}

ox_companion ox_companions_chosen(OxCompanions *self, guint place) {
  g_return_val_if_fail(place < OX_SCENE_OTHERS_MAX, (ox_companion){0});
  return self->chosen[place];
}

void ox_companions_set_beside(OxCompanions *self, gboolean beside) {
  if (self->beside == !!beside) return;
  self->beside = !!beside;
  emit_changed(self);
}

gboolean ox_companions_beside(OxCompanions *self) { return self->beside; }

/* ---- what they give --------------------------------------------------------------------- */

static gboolean make_case(OxCompanions *self, ox_companion choice, ox_case *out) {
  const ox_case *shown = ox_document_case(self->document);
  const ox_lesson *lesson = ox_document_lesson(self->document);
  switch (choice.kind) {
  case OX_COMPANION_VARIANT:
    if (choice.index >= OX_VARIANT_COUNT ||
        !ox_variant_make((ox_variant)choice.index, shown, ox_document_flight(self->document), out))
      return FALSE;
    g_strlcpy(out->name, _(ox_variant_name((ox_variant)choice.index)), sizeof out->name);
    return TRUE;
  case OX_COMPANION_CASE:
    if (choice.index >= lesson->case_count ||
        choice.index == ox_document_case_index(self->document))
      return FALSE;
    *out = lesson->cases[choice.index].c;
    return TRUE;
  default:
    return FALSE;
  }
}

static void make(OxCompanions *self) {
  self->count = 0;
  for (guint i = 0; i < OX_SCENE_OTHERS_MAX; i++) {
    size_t at = self->count;
    if (i > 0 && same(self->chosen[i], self->chosen[0])) continue; /* once is enough */
    if (!make_case(self, self->chosen[i], &self->cases[at])) continue;
    self->counts.flights++;
    if (ox_flight_solve(&self->cases[at], &self->flights[at]) == OX_ERROR) continue;
    self->others[at] =
        (ox_scene_other){&self->cases[at], &self->flights[at], self->cases[at].name};
    self->count++;
  }
  self->made = TRUE;
}

const ox_scene_other *ox_companions_others(OxCompanions *self, size_t *count) {
  if (!self->made) make(self);
  *count = self->count;
  return self->count ? self->others : NULL;
}

const ox_differences *ox_companions_table(OxCompanions *self) {
  size_t count;
  ox_companions_others(self, &count);
  if (self->table_made) return &self->table;
  self->table_made = TRUE;
  if (count == 0) return &self->table;
  const ox_case *cases[OX_DIFFERENCES_MAX] = {ox_document_case(self->document)};
  const ox_flight *flights[OX_DIFFERENCES_MAX] = {ox_document_flight(self->document)};
  for (size_t i = 0; i < count; i++) {
    cases[i + 1] = &self->cases[i];
    flights[i + 1] = &self->flights[i];
  }
  self->table = ox_differences_make(cases, flights, count + 1);
  self->counts.tables++;
  return &self->table;
}

ox_companion_counts ox_companions_get_counts(OxCompanions *self) { return self->counts; }
