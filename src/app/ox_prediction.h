/* Predict, then see: while it is asked for, the answer is hidden, and a student notes numbers and
 * sketches the track; then it is flown, and both are there to compare.
 *
 * A GObject without GTK. The sketch is kept apart from the ink of the lesson and never saved.
 * Another case or another lesson asks anew.
 *
 * Signal "changed": anything of it became different. */
#ifndef OX_PREDICTION_H
#define OX_PREDICTION_H

#include "ox_document.h"
#include "oxbow/guess.h"
#include "oxbow/picture.h"

G_BEGIN_DECLS

typedef enum {
  OX_PREDICTION_OFF,
  OX_PREDICTION_ASKED, /* the answer is hidden */
  OX_PREDICTION_SHOWN, /* the flight stands beside the answers */
} ox_prediction_state;

#define OX_TYPE_PREDICTION (ox_prediction_get_type())
G_DECLARE_FINAL_TYPE(OxPrediction, ox_prediction, OX, PREDICTION, GObject)

/* Holds a reference. */
OxPrediction *ox_prediction_new(OxDocument *document);

ox_prediction_state ox_prediction_get_state(OxPrediction *self);
/* OFF and ASKED forget what was answered and sketched; SHOWN does nothing unless it was asked. */
void ox_prediction_set_state(OxPrediction *self, ox_prediction_state state);
/* Whether the answer must not be seen. self may be NULL. */
gboolean ox_prediction_hides(OxPrediction *self);
/* What stands for the name of the case at index while the answer is hidden, for the name of a case
 * often tells it: "Case 3". Freed by the caller. */
char *ox_prediction_neutral_name(size_t index);
/* What the shown case may be called now: its name, or that. Freed by the caller. */
char *ox_prediction_case_name(OxPrediction *self);

/* Answers and sketch can be given while it is asked for; later they stay as they are. */
ox_guess ox_prediction_guess(OxPrediction *self);
void ox_prediction_set_guess(OxPrediction *self, const ox_guess *guess);
const ox_ink *ox_prediction_sketch(OxPrediction *self); /* never NULL */
void ox_prediction_set_sketch(OxPrediction *self, const ox_ink *sketch);
/* Takes back the change of the sketch made last; FALSE: there is none. */
gboolean ox_prediction_take_back(OxPrediction *self);

/* The answers beside the flight, worked out when first asked for; empty unless SHOWN. */
const ox_guess_report *ox_prediction_report(OxPrediction *self);

/* Hides the answer and the case's name in a scene and puts the sketch into it. It comes after
 * whatever else puts paths into the scene, and is borrowed from until the next scene or "changed".
 * What was drawn before is not in it until the answer is. self may be NULL. */
void ox_prediction_dress(OxPrediction *self, ox_scene *scene);

G_END_DECLS

#endif
