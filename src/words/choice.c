/* The words of a lesson file's choices, as people read them. */
#include <string.h>

#include "say.h"

static bool same(const char *a, const char *b) {
  return strcmp(a, b) == 0;
}

/* A word of the table of fields would mean many things alone, so each stands with its context. A
 * test holds this and the table together. */
const char *words_choice(const char *word) {
  if (same(word, "inbound")) return C_("a choice", "inbound");
  if (same(word, "outbound")) return C_("a choice", "outbound");
  if (same(word, "time")) return C_("a choice", "time");
  if (same(word, "distance")) return C_("a choice", "distance");
  if (same(word, "circuits")) return C_("a choice", "circuits");
  if (same(word, "reversal")) return C_("a choice", "reversal");
  if (same(word, "altitude")) return C_("a choice", "altitude");
  if (same(word, "efc")) return C_("a choice", "efc");
  if (same(word, "lesser")) return C_("a choice", "lesser");
  if (same(word, "bank")) return C_("a choice", "bank");
  if (same(word, "heading")) return C_("a choice", "heading");
  if (same(word, "track")) return C_("a choice", "track");
  if (same(word, "exact")) return C_("a choice", "exact");
  if (same(word, "none")) return C_("a choice", "none");
  if (same(word, "degrees")) return C_("a choice", "degrees");
  if (same(word, "turn")) return C_("a choice", "turn");
  if (same(word, "follow")) return C_("a choice", "follow");
  if (same(word, "true")) return C_("a choice", "true");
  if (same(word, "magnetic")) return C_("a choice", "magnetic");
  if (same(word, "abeam_or_level")) return C_("a choice", "abeam or level");
  if (same(word, "abeam")) return C_("a choice", "abeam");
  if (same(word, "level")) return C_("a choice", "level");
  if (same(word, "single")) return C_("a choice", "single");
  if (same(word, "double")) return C_("a choice", "double");
  if (same(word, "triple")) return C_("a choice", "triple");
  if (same(word, "nominal")) return C_("a choice", "nominal");
  if (same(word, "adjust")) return C_("a choice", "adjust");
  if (same(word, "rule")) return C_("a choice", "rule");
  if (same(word, "auto")) return C_("a choice", "auto");
  if (same(word, "direct")) return C_("a choice", "direct");
  if (same(word, "parallel")) return C_("a choice", "parallel");
  if (same(word, "teardrop")) return C_("a choice", "teardrop");
  if (same(word, "lb")) return C_("a choice", "lb");
  if (same(word, "kg")) return C_("a choice", "kg");
  if (same(word, "usgal")) return C_("a choice", "usgal");
  if (same(word, "l")) return C_("a choice", "l");
  if (same(word, "unknown")) return C_("a choice", "unknown");
  if (same(word, "yes")) return C_("a choice", "yes");
  if (same(word, "no")) return C_("a choice", "no");
  if (same(word, "not_shown")) return C_("a choice", "not shown");
  if (same(word, "right")) return C_("a choice", "right");
  if (same(word, "left")) return C_("a choice", "left");
  if (same(word, "north")) return C_("a choice", "north");
  if (same(word, "northeast")) return C_("a choice", "northeast");
  if (same(word, "east")) return C_("a choice", "east");
  if (same(word, "southeast")) return C_("a choice", "southeast");
  if (same(word, "south")) return C_("a choice", "south");
  if (same(word, "southwest")) return C_("a choice", "southwest");
  if (same(word, "west")) return C_("a choice", "west");
  if (same(word, "northwest")) return C_("a choice", "northwest");
  return word;
}
