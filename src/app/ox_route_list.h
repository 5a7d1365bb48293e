/* The route of the lesson: its points in order, with buttons to move and remove them, to mark the
 * missed approach point, and to hold at one with the course of the arriving leg. */
#ifndef OX_ROUTE_LIST_H
#define OX_ROUTE_LIST_H

#include <gtk/gtk.h>

#include "ox_document_places.h"

G_BEGIN_DECLS

#define OX_TYPE_ROUTE_LIST (ox_route_list_get_type())
G_DECLARE_FINAL_TYPE(OxRouteList, ox_route_list, OX, ROUTE_LIST, GtkWidget)

/* Holds a reference. */
void ox_route_list_set_document(OxRouteList *self, OxDocument *document);

/* What the buttons do, by the index of a point. Each is one step; a refusal is said below. */
void ox_route_list_add(OxRouteList *self, const char *name);
void ox_route_list_move(OxRouteList *self, size_t index, int by);
void ox_route_list_remove(OxRouteList *self, size_t index);
void ox_route_list_mark_missed(OxRouteList *self, size_t index); /* again: no longer */
void ox_route_list_hold_here(OxRouteList *self, size_t index);
/* The arrival that the route gives: its heading, and its distance where the leg is shorter. */
void ox_route_list_take_arrival(OxRouteList *self);

const char *ox_route_list_words(OxRouteList *self);
const char *ox_route_list_refusal(OxRouteList *self); /* "" */

G_END_DECLS

#endif
