/* Finishing an SVG: its words as words, a title, a description, and names that do not change. */
#ifndef PAINT_SVG_WORDS_H
#define PAINT_SVG_WORDS_H

#include "svg_texts.h"

/* A copy of an SVG by cairo with its texts in place of their marks, with <title> and <desc> after
 * its opening tag, and with its surfaces numbered from 1 in order of appearance. title and
 * description are UTF-8, not yet escaped; language is a tag of BCP 47. Freed by the caller with
 * g_string_free. */
GString *ox_svg_with_words(const GString *svg, const ox_svg_texts *texts, const char *title,
                           const char *description, const char *language);

#endif
