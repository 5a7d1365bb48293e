/* What cairo leaves out of an SVG: a title, a description, and names that do not change. */
#ifndef PAINT_SVG_WORDS_H
#define PAINT_SVG_WORDS_H

#include <pango/pango.h> /* for its GLib: strings and hash tables */

/* A copy of an SVG with <title> and <desc> after its opening tag and its surfaces numbered from 1
 * in order of appearance. title and description are UTF-8, not yet escaped. Freed by the caller
 * with g_string_free. */
GString *ox_svg_with_words(const GString *svg, const char *title, const char *description);

#endif
