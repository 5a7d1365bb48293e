/* What the questions are about, for those who do not think in English: the phrase itself stays as
 * it is said on the radio. */
#include "oxbow/text.h"
#include "text.h"

static const char *const meanings[OX_ASK_KIND_COUNT] = {
    [OX_ASK_SAY_AGAIN] = N_("Nothing of a holding clearance was understood."),
    [OX_ASK_FIX] = N_("The holding fix was not said."),
    [OX_ASK_DIRECTION] = N_("The direction of holding was not said."),
    [OX_ASK_LINE] = N_("Neither a radial nor a course was said."),
    [OX_ASK_EFC] = N_("No time was said at which a further clearance can be expected."),
    [OX_ASK_DIRECTION_AGAINST_LINE] =
        N_("The outbound leg does not lie in the direction that was said."),
    [OX_ASK_INBOUND_AGAINST_OUTBOUND] =
        N_("Inbound and outbound course are not opposite to each other."),
    [OX_ASK_INBOUND_AGAINST_LINE] =
        N_("The inbound course does not lie along the radial or course that was said."),
    [OX_ASK_EFC_PAST] = N_("The time that was said is past."),
    [OX_ASK_EFC_AGAINST_NO_DELAY] = N_("A time was said, and that no delay is expected."),
    [OX_ASK_LEG_UNIT] = N_("Without DME or area navigation nothing measures this distance."),
    [OX_ASK_LEG_AGAINST_DME] = N_("The length of the leg does not fit the DME distances."),
    [OX_ASK_SPEED_ABOVE_LIMIT] = N_("The speed is above the holding speed for this altitude."),
    [OX_ASK_FIX_AGAINST_LIMIT] = N_("The holding fix is not the clearance limit."),
    [OX_ASK_EFC_HOUR] = N_("The time can be one of two, twelve hours apart."),
    [OX_ASK_ARC] = N_("An arc is no holding fix: a hold needs a point."),
    /* translators: the name of an item follows these two, as in "Said twice: inbound course." */
    [OX_ASK_TWO_VALUES] = N_("Said twice, and differently"),
    [OX_ASK_OUT_OF_RANGE] = N_("Cannot be as it was said"),
};

bool ox_question_meaning(char *buf, size_t bytes, const ox_question *question) {
  clr_text t = clr_into(buf, bytes);
  if ((unsigned)question->kind >= OX_ASK_KIND_COUNT) return false;
  const char *english = meanings[question->kind], *said = _(english);
  if (said == english) return false;
  bool of_item = question->kind == OX_ASK_TWO_VALUES || question->kind == OX_ASK_OUT_OF_RANGE;
  clr_put(&t, "%s", said);
  if (of_item) clr_put(&t, ": %s.", ox_item_name(question->item));
  return true;
}
