/* Places in the document: its points, its route, and where the fix of the shown case is. Every
 * change is one step of the history; what follows from it in any case (an arrival's distance, a
 * station's radial) is part of the step. Remarks as in oxbow/place.h. */
#ifndef OX_DOCUMENT_PLACES_H
#define OX_DOCUMENT_PLACES_H

#include "ox_document.h"
#include "oxbow/journey.h"

G_BEGIN_DECLS

const ox_points *ox_document_points(OxDocument *self);
const ox_route *ox_document_route(OxDocument *self);
const ox_fix *ox_document_fix(OxDocument *self); /* of the shown case */

/* Other points or another route. OX_ERROR, nothing changed, when a point would have no place, the
 * route would name what is not there, or a case could not be flown. OX_ADVISORY: changed, and
 * something is to be said. */
ox_status ox_document_set_places(OxDocument *self, const char *step, const ox_points *points,
                                 const ox_route *route, char *remark, size_t remark_bytes);
/* The same, of what is typed or pressed in quick succession: it stays one step with what follows
 * under the same name. */
ox_status ox_document_set_places_more(OxDocument *self, const char *step, const ox_points *points,
                                      const ox_route *route, char *remark, size_t remark_bytes);
/* Another fix for the shown case, and with it other values of the case. */
ox_status ox_document_set_fix(OxDocument *self, const char *step, const ox_case *c,
                              const ox_fix *fix, char *remark, size_t remark_bytes);
ox_status ox_document_set_fix_more(OxDocument *self, const char *step, const ox_case *c,
                                   const ox_fix *fix, char *remark, size_t remark_bytes);
/* In the list, the route and every case. */
ox_status ox_document_rename_point(OxDocument *self, const char *name, const char *new_name,
                                   char *remark, size_t remark_bytes);
/* Refused with the names of its users: points, the route, cases. */
ox_status ox_document_remove_point(OxDocument *self, const char *name, char *remark,
                                   size_t remark_bytes);
/* A case of a published hold below the shown one, with the points it brings; and shows it. */
ox_status ox_document_add_placed_case(OxDocument *self, const char *step, const ox_points *points,
                                      const ox_case *c, const ox_fix *fix, char *remark,
                                      size_t remark_bytes);

/* The journey of the shown case; OX_ERROR with the reason when there is none. */
ox_status ox_document_journey(OxDocument *self, ox_journey *out, char *remark,
                              size_t remark_bytes);

G_END_DECLS

#endif
