/* The overlays: computed when they are needed, kept until the case changes. */
#include "ox_overlays.h"

#include <string.h>

#include <gio/gio.h>

#include "ox_overlay_words.h"
#include "oxbow/crosscheck.h"
#include "oxbow/flaws.h"
#include "oxbow/presets.h"
#include "oxbow/text.h"
#include "oxbow/words.h"

#define SPREAD_SEED 1
#define SENTENCE_BYTES 1000

struct _OxOverlays {
  GObject parent_instance;

  /* owned */
  OxDocument *document;
  OxCompanions *companions;
  ox_flight *flight; /* compared with */
  ox_area area;
  ox_spread spread;
  char **sentences; /* NULL: to be put together */

  int compare;
  ox_case said;
  gboolean is_said; /* there is something in it */
  gboolean area_shown, spread_shown;
  gboolean flight_made, flight_there, area_made, spread_made;
  gboolean flying;    /* a worker is on its way */
  guint case_number;  /* counts the changes of the case */
  ox_overlay_counts counts;
};

static guint changed_signal;

G_DEFINE_FINAL_TYPE(OxOverlays, ox_overlays, G_TYPE_OBJECT)

static void emit_changed(OxOverlays *self) {
  g_clear_pointer(&self->sentences, g_strfreev);
  g_signal_emit(self, changed_signal, 0);
}

/* ---- the spread, on its thread ---------------------------------------------------------- */

typedef struct {
  ox_case c;
  guint case_number;
  ox_spread spread;
} spread_job;

static void spread_job_free(gpointer data) {
  spread_job *job = data;
  ox_spread_free(&job->spread);
  g_free(job);
}

static void fly_spread(GTask *task, gpointer source, gpointer data, GCancellable *cancellable) {
  spread_job *job = data;
  ox_tolerances tolerances = ox_tolerances_standard();
  /* One thread: the other processors are the window's. */
  ox_status status =
      ox_spread_make(&job->c, &tolerances, SPREAD_SEED, OX_SPREAD_RUNS, 1, &job->spread);
  g_task_return_boolean(task, status != OX_ERROR);
}

static void start_spread(OxOverlays *self);

static void spread_arrived_cb(GObject *source, GAsyncResult *result, gpointer data) {
  OxOverlays *self = OX_OVERLAYS(source);
  spread_job *job = g_task_get_task_data(G_TASK(result));
  gboolean good = g_task_propagate_boolean(G_TASK(result), NULL);
  self->flying = FALSE;
  self->counts.spreads++;
  if (!self->spread_shown) return;
  if (job->case_number != self->case_number) {
    start_spread(self);
    return;
  }
  self->spread_made = TRUE;
  if (!good) return; /* out of memory: the picture does without */
  ox_spread_free(&self->spread);
  self->spread = job->spread;
  job->spread = (ox_spread){0};
  emit_changed(self);
}

static void start_spread(OxOverlays *self) {
  if (self->flying || self->spread_made || !self->spread_shown) return;
  spread_job *job = g_new0(spread_job, 1);
  job->c = *ox_document_case(self->document);
  job->case_number = self->case_number;
  GTask *task = g_task_new(self, NULL, spread_arrived_cb, NULL);
  g_task_set_task_data(task, job, spread_job_free);
  self->flying = TRUE;
  g_task_run_in_thread(task, fly_spread);
  g_object_unref(task);
}

/* ---- the object ------------------------------------------------------------------------- */

static void case_changed_cb(OxDocument *document, guint what, OxOverlays *self) {
  self->case_number++;
  self->flight_made = self->area_made = self->spread_made = FALSE;
  ox_spread_free(&self->spread);
  g_clear_pointer(&self->sentences, g_strfreev);
  start_spread(self);
}

static void finalize(GObject *object) {
  OxOverlays *self = OX_OVERLAYS(object);
  g_clear_object(&self->companions);
  g_clear_object(&self->document);
  g_free(self->flight);
  g_strfreev(self->sentences);
  ox_spread_free(&self->spread);
  G_OBJECT_CLASS(ox_overlays_parent_class)->finalize(object);
}

static void ox_overlays_class_init(OxOverlaysClass *class) {
  G_OBJECT_CLASS(class)->finalize = finalize;
  changed_signal = g_signal_new("changed", OX_TYPE_OVERLAYS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
}

static void ox_overlays_init(OxOverlays *self) {
  self->flight = g_new0(ox_flight, 1);
  self->compare = OX_COMPARE_NOTHING;
}

OxOverlays *ox_overlays_new(OxDocument *document) {
  OxOverlays *self = g_object_new(OX_TYPE_OVERLAYS, NULL);
  self->document = g_object_ref(document);
  self->companions = ox_companions_new(document);
  g_signal_connect_object(self->companions, "changed", G_CALLBACK(emit_changed), self,
                          G_CONNECT_SWAPPED);
  g_signal_connect_object(document, "changed", G_CALLBACK(case_changed_cb), self, 0);
  return self;
}

/* ---- choices ---------------------------------------------------------------------------- */

void ox_overlays_set_compare(OxOverlays *self, int compare) {
  if (compare < OX_COMPARE_SAID || compare >= OX_MISTAKE_COUNT || compare == self->compare)
    return;
  self->compare = compare;
  self->flight_made = FALSE;
  emit_changed(self);
}

void ox_overlays_set_said(OxOverlays *self, const ox_case *said) {
  gboolean same = said ? self->is_said && ox_case_equal(&self->said, said) : !self->is_said;
  if (same) return;
  self->is_said = said != NULL;
  if (said) self->said = *said;
  if (self->compare != OX_COMPARE_SAID) return;
  self->flight_made = FALSE;
  emit_changed(self);
}

int ox_overlays_compare(OxOverlays *self) { return self->compare; }

void ox_overlays_show_area(OxOverlays *self, gboolean shown) {
  if (shown == self->area_shown) return;
  self->area_shown = shown;
  emit_changed(self);
}

gboolean ox_overlays_area_shown(OxOverlays *self) { return self->area_shown; }

void ox_overlays_show_spread(OxOverlays *self, gboolean shown) {
  if (shown == self->spread_shown) return;
  self->spread_shown = shown;
  start_spread(self);
  emit_changed(self);
}

gboolean ox_overlays_spread_shown(OxOverlays *self) { return self->spread_shown; }

OxCompanions *ox_overlays_companions(OxOverlays *self) { return self->companions; }

/* ---- what they give --------------------------------------------------------------------- */

static gboolean fly_mistake(OxOverlays *self, const ox_case *c) {
  ox_mistake mistake = (ox_mistake)self->compare;
  ox_flaws flaws = {.mistakes = 1U << (unsigned)mistake};
  if (!ox_mistake_shows(c, ox_document_flight(self->document), mistake)) return FALSE;
  return ox_flight_solve_flawed(c, &flaws, self->flight) != OX_ERROR;
}

/* The first preset is the exact hold, looked up by its key all the same. */
static gboolean fly_exact(OxOverlays *self, const ox_case *c) {
  ox_case exact = *c;
  for (size_t i = 0; i < ox_preset_count(); i++)
    if (strcmp(ox_preset_at(i)->key, "exact") == 0 && ox_preset_apply(i, &exact))
      return ox_flight_solve(&exact, self->flight) != OX_ERROR;
  return FALSE;
}

static gboolean fly_shown(OxOverlays *self, const ox_case *c) {
  ox_crosscheck check;
  return ox_crosscheck_make(c, &check) != OX_ERROR && check.flown_otherwise &&
         ox_flight_solve(&check.flown, self->flight) != OX_ERROR;
}

/* Nothing is drawn twice: once the words are used, they are the case. */
static gboolean fly_said(OxOverlays *self, const ox_case *c) {
  return self->is_said && !ox_case_equal(&self->said, c) &&
         ox_flight_solve(&self->said, self->flight) != OX_ERROR;
}

static gboolean fly(OxOverlays *self, const ox_case *c) {
  if (self->compare == OX_COMPARE_SAID) return fly_said(self, c);
  if (self->compare == OX_COMPARE_SHOWN) return fly_shown(self, c);
  return self->compare == OX_COMPARE_EXACT ? fly_exact(self, c) : fly_mistake(self, c);
}

static const char *compare_name(OxOverlays *self) {
  if (self->compare == OX_COMPARE_SAID) return _("as the words say");
  if (self->compare == OX_COMPARE_SHOWN) return _("as the equipment shows it");
  return self->compare == OX_COMPARE_EXACT ? _("exact hold")
                                           : _(ox_mistake_name((ox_mistake)self->compare));
}

static char *words_shown(OxOverlays *self, const ox_case *c, const ox_flight *flight) {
  ox_crosscheck check;
  char text[OX_CROSSCHECK_BYTES];
  if (ox_crosscheck_make(c, &check) == OX_ERROR) return g_strdup("");
  ox_words_crosscheck(text, sizeof text, c, flight, &check);
  return g_strdup_printf(_("Compared with what the equipment shows. %s"), text);
}

static char *words_said(OxOverlays *self) {
  const char *name;
  const char *rest =
      !self->is_said ? _("There is no clearance on the page Words.")
      : ox_overlays_flight(self, &name)
          ? _("The hold of the clearance on the page Words lies over the case, fix on "
              "fix; it is not used yet.")
          : _("The clearance on the page Words says the hold that is shown.");
  return g_strdup_printf(_("Compared with the words. %s"), rest);
}

const ox_flight *ox_overlays_flight(OxOverlays *self, const char **name) {
  if (self->compare == OX_COMPARE_NOTHING) return NULL;
  if (!self->flight_made) {
    const ox_case *c = ox_document_case(self->document);
    self->flight_there = fly(self, c);
    self->flight_made = TRUE;
    self->counts.flights++;
  }
  if (!self->flight_there) return NULL;
  *name = compare_name(self);
  return self->flight;
}

const ox_area *ox_overlays_area(OxOverlays *self) {
  const ox_flight *flight = ox_document_flight(self->document);
  if (!self->area_shown || flight->leg_count == 0) return NULL;
  if (!self->area_made) {
    self->area = ox_area_make(ox_document_case(self->document), &flight->setup, 0);
    self->area_made = TRUE;
    self->counts.areas++;
  }
  return &self->area;
}

const ox_spread *ox_overlays_spread(OxOverlays *self) {
  return self->spread_shown && self->spread_made && self->spread.cells ? &self->spread : NULL;
}

static char **put_together(OxOverlays *self) {
  GPtrArray *all = g_ptr_array_new();
  char text[SENTENCE_BYTES];
  const ox_case *c = ox_document_case(self->document);
  const ox_flight *flight = ox_document_flight(self->document);
  if (self->compare == OX_COMPARE_EXACT) {
    g_ptr_array_add(all, ox_overlay_words_exact(c, flight));
  } else if (self->compare == OX_COMPARE_SHOWN) {
    g_ptr_array_add(all, words_shown(self, c, flight));
  } else if (self->compare == OX_COMPARE_SAID) {
    g_ptr_array_add(all, words_said(self));
  } else if (self->compare != OX_COMPARE_NOTHING) {
    ox_words_mistake(text, sizeof text, c, flight, (ox_mistake)self->compare);
    g_ptr_array_add(all, g_strdup(text));
  }
  if (ox_overlays_area(self)) {
    ox_words_area(text, sizeof text, c, flight);
    g_ptr_array_add(all, g_strdup(text));
  }
  if (self->spread_shown)
    g_ptr_array_add(all, ox_overlay_words_spread(ox_overlays_spread(self), OX_SPREAD_RUNS));
  g_ptr_array_add(all, NULL);
  return (char **)g_ptr_array_free(all, FALSE);
}

const char *const *ox_overlays_sentences(OxOverlays *self) {
  if (!self->sentences) {
    self->sentences = put_together(self);
    self->counts.sentences++;
  }
  return (const char *const *)self->sentences;
}

ox_overlay_counts ox_overlays_get_counts(OxOverlays *self) { return self->counts; }
