/* The strip of key moments: small pictures with the aircraft where it is, and a page of them. Needs
 * cairo and Pango, never GTK. */
#ifndef OXBOW_MOMENTS_PAGE_H
#define OXBOW_MOMENTS_PAGE_H

#include <cairo.h>

#include "oxbow/moments.h"
#include "oxbow/picture.h"

/* Lays out the small picture that all moments of a flight share: track, course and fix, no words.
 * Of the scene only case, flight and palette count, and are borrowed. NULL as ox_picture_new. */
ox_picture *ox_moment_picture_new(const ox_scene *scene, double width, double height);
/* Draws it with the aircraft at t_s and the way flown since from_s in a bold line. */
void ox_moment_picture_draw(ox_picture *picture, cairo_t *cr, double from_s, double t_s);

/* A page of its own, upright or across: title, the hold in a line, a numbered picture a moment
 * with its captions in reading order, and the caution. Size in user units (points on paper),
 * finite and positive; else nothing is drawn. Leaves the context as it found it. */
void ox_moments_page_draw(cairo_t *cr, const ox_scene *scene, const ox_moments *moments,
                          double width, double height);

#endif
