/* Asking, answering, comparing. */
#include "ox_prediction.h"

#include "oxbow/text.h"

struct _OxPrediction {
  GObject parent_instance;

  /* owned */
  OxDocument *document;
  GPtrArray *sketches; /* ox_ink: the sketch last, before it what it was; never empty */
  GArray *paths;       /* ox_path for the painter: those of the scene, then the strokes */
  ox_guess_report report;

  ox_case nameless; /* the shown case for the painter, while its name is hidden */
  ox_prediction_state state;
  ox_guess guess;
  gboolean reported;
};

G_DEFINE_FINAL_TYPE(OxPrediction, ox_prediction, G_TYPE_OBJECT)

static guint changed_signal;

static void forget_report(OxPrediction *self) {
  ox_guess_report_clear(&self->report);
  self->reported = FALSE;
}

static void tell(OxPrediction *self) {
  forget_report(self);
  g_signal_emit(self, changed_signal, 0);
}

static ox_ink *checked(ox_ink *ink) {
  if (!ink) g_error("Out of memory");
  return ink;
}

static void forget_answers(OxPrediction *self) {
  self->guess = ox_guess_none();
  g_ptr_array_set_size(self->sketches, 0);
  g_ptr_array_add(self->sketches, checked(ox_ink_new()));
}

/* An edit while the answers are compared is seen in the comparison; another case is asked anew. */
static void document_changed_cb(OxDocument *document, guint what, OxPrediction *self) {
  if (self->state == OX_PREDICTION_OFF) return;
  if (what & (OX_DOCUMENT_SELECTION | OX_DOCUMENT_LESSON))
    ox_prediction_set_state(self, OX_PREDICTION_ASKED);
  else if (what & OX_DOCUMENT_CASE)
    tell(self);
}

static void finalize(GObject *object) {
  OxPrediction *self = OX_PREDICTION(object);
  g_clear_object(&self->document);
  g_ptr_array_unref(self->sketches);
  g_array_unref(self->paths);
  ox_guess_report_clear(&self->report);
  G_OBJECT_CLASS(ox_prediction_parent_class)->finalize(object);
}

static void ox_prediction_class_init(OxPredictionClass *class) {
  G_OBJECT_CLASS(class)->finalize = finalize;
  changed_signal = g_signal_new("changed", OX_TYPE_PREDICTION, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
}

static void free_ink(gpointer ink) { ox_ink_free(ink); }

static void ox_prediction_init(OxPrediction *self) {
  self->sketches = g_ptr_array_new_with_free_func(free_ink);
  self->paths = g_array_new(FALSE, FALSE, sizeof(ox_path));
  forget_answers(self);
}

OxPrediction *ox_prediction_new(OxDocument *document) {
  OxPrediction *self = g_object_new(OX_TYPE_PREDICTION, NULL);
  self->document = g_object_ref(document);
  g_signal_connect_object(document, "changed", G_CALLBACK(document_changed_cb), self, 0);
  return self;
}

ox_prediction_state ox_prediction_get_state(OxPrediction *self) { return self->state; }

void ox_prediction_set_state(OxPrediction *self, ox_prediction_state state) {
  g_return_if_fail(OX_IS_PREDICTION(self));
  if (state == OX_PREDICTION_SHOWN && self->state != OX_PREDICTION_ASKED) return;
  if (state == OX_PREDICTION_OFF && self->state == OX_PREDICTION_OFF) return;
  self->state = state;
  if (state != OX_PREDICTION_SHOWN) forget_answers(self);
  tell(self);
}

gboolean ox_prediction_hides(OxPrediction *self) {
  return self && self->state == OX_PREDICTION_ASKED;
}

char *ox_prediction_neutral_name(size_t index) { return g_strdup_printf(_("Case %zu"), index + 1); }

ox_guess ox_prediction_guess(OxPrediction *self) { return self->guess; }

static gboolean same(double a, double b) { return a == b || (a != a && b != b); }

void ox_prediction_set_guess(OxPrediction *self, const ox_guess *guess) {
  g_return_if_fail(OX_IS_PREDICTION(self));
  if (self->state != OX_PREDICTION_ASKED) return;
  if (guess->entry == self->guess.entry &&
      same(guess->first_heading_deg, self->guess.first_heading_deg) &&
      same(guess->outbound_heading_deg, self->guess.outbound_heading_deg) &&
      same(guess->outbound_s, self->guess.outbound_s))
    return;
  self->guess = *guess;
  tell(self);
}

const ox_ink *ox_prediction_sketch(OxPrediction *self) {
  return g_ptr_array_index(self->sketches, self->sketches->len - 1);
}

void ox_prediction_set_sketch(OxPrediction *self, const ox_ink *sketch) {
  g_return_if_fail(OX_IS_PREDICTION(self));
  if (self->state != OX_PREDICTION_ASKED) return;
  if (ox_ink_equal(sketch, ox_prediction_sketch(self))) return;
  g_ptr_array_add(self->sketches, checked(ox_ink_copy(sketch)));
  tell(self);
}

gboolean ox_prediction_take_back(OxPrediction *self) {
  if (self->state != OX_PREDICTION_ASKED || self->sketches->len < 2) return FALSE;
  g_ptr_array_remove_index(self->sketches, self->sketches->len - 1);
  tell(self);
  return TRUE;
}

const ox_guess_report *ox_prediction_report(OxPrediction *self) {
  if (self->state == OX_PREDICTION_SHOWN && !self->reported) {
    self->reported = TRUE;
    self->report = ox_guess_compare(ox_document_case(self->document),
                                    ox_document_flight(self->document), &self->guess,
                                    ox_prediction_sketch(self));
  }
  return &self->report;
}

char *ox_prediction_case_name(OxPrediction *self) {
  return ox_prediction_hides(self)
             ? ox_prediction_neutral_name(ox_document_case_index(self->document))
             : g_strdup(ox_document_case(self->document)->name);
}

static void hide_name(OxPrediction *self, ox_scene *scene) {
  char *name = ox_prediction_case_name(self);
  self->nameless = *scene->c;
  g_strlcpy(self->nameless.name, name, sizeof self->nameless.name);
  scene->c = &self->nameless;
  g_free(name);
}

void ox_prediction_dress(OxPrediction *self, ox_scene *scene) {
  if (!self || self->state == OX_PREDICTION_OFF) return;
  const ox_ink *sketch = ox_prediction_sketch(self);
  scene->hide_answer = self->state == OX_PREDICTION_ASKED;
  if (scene->hide_answer) {
    scene->ink = NULL; /* a clean board to answer on; it comes back */
    hide_name(self, scene);
  }
  if (ox_ink_is_empty(sketch)) return;
  g_array_set_size(self->paths, 0);
  if (scene->path_count > 0)
    g_array_append_vals(self->paths, scene->paths, (guint)scene->path_count);
  for (size_t i = 0; i < sketch->stroke_count; i++) {
    ox_path path = {sketch->strokes[i].points_nm, sketch->strokes[i].count, OX_PATH_SKETCH};
    g_array_append_val(self->paths, path);
  }
  scene->paths = (const ox_path *)(gpointer)self->paths->data;
  scene->path_count = self->paths->len;
}
