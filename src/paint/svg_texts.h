/* Words in an SVG as words: <text> elements in place of the outlines that cairo writes.
 *
 * Where the painter shows words, a mark is painted instead: an image of one pixel whose address is
 * the number of the words. cairo writes it as one element where the words belong, with the clip
 * that is in force, and afterwards each mark gives way to its words. What is painted later covers
 * them as it covers any line. */
#ifndef PAINT_SVG_TEXTS_H
#define PAINT_SVG_TEXTS_H

#include <cairo.h>

#include "lettering.h"

typedef struct ox_svg_texts ox_svg_texts;

/* Takes the words that are shown on an SVG surface, which must be finished before the texts are
 * freed. */
ox_svg_texts *ox_svg_texts_new(cairo_surface_t *surface);
void ox_svg_texts_free(ox_svg_texts *texts);

/* Appends what cairo wrote, each mark replaced by its words. */
void ox_svg_texts_put(const ox_svg_texts *texts, GString *out, const char *svg);

/* Appends text as XML 1.0 can hold it: escaped, with U+FFFD for what is no character there. The
 * text is UTF-8. Line breaks stay; other control characters become spaces. */
void ox_svg_add_escaped(GString *out, const char *text);

/* Attributes of the root that the words rely on, each after a space. */
extern const char OX_SVG_TEXT_ATTRIBUTES[];

#endif
