/* Places in the document: what is checked before a change, and what follows from it. */
#include "ox_document_places.h"

#include <stdio.h>
#include <string.h>

#include "ox_document_private.h"
#include "oxbow/text.h"

const ox_points *ox_document_points(OxDocument *self) { return &self->view.points; }

const ox_route *ox_document_route(OxDocument *self) { return &self->view.route; }

const ox_fix *ox_document_fix(OxDocument *self) {
  return &self->view.cases[self->case_index].fix;
}

/* Takes the head with other points or route, and every case with what follows. `next` is the
 * cases' state to start from and is taken. NULL when a case could not be flown. */
static ox_snapshot *settled(ox_snapshot *next, const ox_points *points, const ox_route *route,
                            char *remark, size_t bytes) {
  ox_lesson *head = g_new(ox_lesson, 1);
  *head = *ox_snapshot_head(next);
  head->points = *points;
  head->route = *route;
  ox_snapshot *with_head = ox_snapshot_with_head(next, head);
  g_free(head);
  ox_snapshot_unref(next);
  next = with_head;
  for (size_t i = 0; i < ox_snapshot_count(next); i++) {
    ox_lesson_case lc = *ox_snapshot_case(next, i);
    ox_case before = lc.c;
    ox_status status = ox_fix_settle(points, &lc.fix, &lc.c, remark, bytes);
    if (status == OX_ERROR) {
      ox_snapshot_unref(next);
      return NULL;
    }
    if (ox_case_equal(&before, &lc.c)) continue;
    ox_snapshot *with_case = ox_snapshot_with_values(next, i, &lc.c);
    ox_snapshot_unref(next);
    next = with_case;
  }
  return next;
}

/* Every case's own fix must still have a place. */
static ox_status check_cases(const ox_snapshot *cases, const ox_points *points, char *remark,
                             size_t bytes) {
  for (size_t i = 0; i < ox_snapshot_count(cases); i++) {
    const ox_lesson_case *lc = ox_snapshot_case(cases, i);
    ox_latlon unused;
    if (ox_fix_has_place(points, &lc->fix, &lc->c) &&
        ox_fix_place(points, &lc->fix, &lc->c, &unused, remark, bytes) == OX_ERROR)
      return OX_ERROR;
  }
  return OX_OK;
}

static ox_status refuse_read_only(char *remark, size_t bytes) {
  g_strlcpy(remark, _("This lesson is read-only."), bytes);
  return OX_ERROR;
}

/* Does the step. `cases` is taken. */
static ox_status put(OxDocument *self, const char *step, ox_snapshot *cases,
                     const ox_points *points, const ox_route *route, size_t index,
                     gboolean more, char *remark, size_t bytes) {
  ox_snapshot *next = NULL;
  if (ox_points_check(points, route, remark, bytes) != OX_ERROR &&
      check_cases(cases, points, remark, bytes) != OX_ERROR)
    next = settled(ox_snapshot_ref(cases), points, route, remark, bytes);
  ox_snapshot_unref(cases);
  if (!next) return OX_ERROR;
  ox_document_do(self, step, next, self->case_index, index, more);
  remark[0] = '\0';
  return OX_OK;
}

ox_status ox_document_set_places(OxDocument *self, const char *step, const ox_points *points,
                                 const ox_route *route, char *remark, size_t remark_bytes) {
  if (self->view.read_only) return refuse_read_only(remark, remark_bytes);
  return put(self, step, ox_snapshot_ref(self->now), points, route, self->case_index, FALSE,
             remark, remark_bytes);
}

ox_status ox_document_set_places_more(OxDocument *self, const char *step, const ox_points *points,
                                      const ox_route *route, char *remark, size_t remark_bytes) {
  if (self->view.read_only) return refuse_read_only(remark, remark_bytes);
  return put(self, step, ox_snapshot_ref(self->now), points, route, self->case_index, TRUE, remark,
             remark_bytes);
}

static ox_status put_fix(OxDocument *self, const char *step, const ox_case *c, const ox_fix *fix,
                         gboolean more, char *remark, size_t remark_bytes) {
  ox_lesson_case lc = *ox_snapshot_case(self->now, self->case_index);
  const ox_points *points = &self->view.points;
  ox_latlon unused;
  ox_fault fault;
  if (self->view.read_only) return refuse_read_only(remark, remark_bytes);
  lc.c = *c;
  lc.fix = *fix;
  remark[0] = '\0';
  ox_status status = ox_fix_has_place(points, fix, c)
                         ? ox_fix_place(points, fix, c, &unused, remark, remark_bytes)
                         : OX_OK;
  if (status == OX_ERROR) return OX_ERROR;
  char why[OX_REMARK_BYTES];
  if (ox_fix_settle(points, fix, &lc.c, why, sizeof why) == OX_ERROR) {
    g_strlcpy(remark, why, remark_bytes);
    return OX_ERROR;
  }
  if (ox_case_check(&lc.c, &fault, 1) > 0) {
    snprintf(remark, remark_bytes, _("%s: %s is not %s"), fault.key, fault.value,
             _(fault.allowed));
    return OX_ERROR;
  }
  ox_document_do(self, step, ox_snapshot_with_case(self->now, self->case_index, &lc),
                 self->case_index, self->case_index, more);
  return status;
}

ox_status ox_document_set_fix(OxDocument *self, const char *step, const ox_case *c,
                              const ox_fix *fix, char *remark, size_t remark_bytes) {
  return put_fix(self, step, c, fix, FALSE, remark, remark_bytes);
}

ox_status ox_document_set_fix_more(OxDocument *self, const char *step, const ox_case *c,
                                   const ox_fix *fix, char *remark, size_t remark_bytes) {
  return put_fix(self, step, c, fix, TRUE, remark, remark_bytes);
}

ox_status ox_document_rename_point(OxDocument *self, const char *name, const char *new_name,
                                   char *remark, size_t remark_bytes) {
  if (self->view.read_only) return refuse_read_only(remark, remark_bytes);
  ox_points points = self->view.points;
  ox_route route = self->view.route;
  if (strcmp(name, new_name) == 0) return OX_OK;
  if (ox_points_rename(&points, &route, name, new_name, remark, remark_bytes) == OX_ERROR)
    return OX_ERROR;
  ox_snapshot *cases = ox_snapshot_ref(self->now);
  for (size_t i = 0; i < ox_snapshot_count(cases); i++) {
    ox_lesson_case lc = *ox_snapshot_case(cases, i);
    if (!ox_fix_uses(&self->view.points, &lc.fix, &lc.c, name)) continue;
    ox_fix_rename(&self->view.points, &lc.fix, &lc.c, name, new_name);
    ox_snapshot *next = ox_snapshot_with_case(cases, i, &lc);
    ox_snapshot_unref(cases);
    cases = next;
  }
  return put(self, _("Point Name"), cases, &points, &route, self->case_index, FALSE, remark,
             remark_bytes);
}

static void append_user(GString *users, const char *name) {
  if (users->len > 0) g_string_append(users, ", ");
  g_string_append_printf(users, _("case “%s”"), name);
}

ox_status ox_document_remove_point(OxDocument *self, const char *name, char *remark,
                                   size_t remark_bytes) {
  if (self->view.read_only) return refuse_read_only(remark, remark_bytes);
  ox_points points = self->view.points;
  GString *users = g_string_new(NULL);
  for (size_t i = 0; i < self->view.case_count; i++) {
    const ox_lesson_case *lc = &self->view.cases[i];
    if (ox_fix_uses(&points, &lc->fix, &lc->c, name))
      append_user(users, lc->c.name);
  }
  ox_status status = ox_points_remove(&points, &self->view.route, name, users->str, remark,
                                      remark_bytes);
  g_string_free(users, TRUE);
  if (status == OX_ERROR) return OX_ERROR;
  return put(self, _("Delete Point"), ox_snapshot_ref(self->now), &points, &self->view.route,
             self->case_index, FALSE, remark, remark_bytes);
}

ox_status ox_document_add_placed_case(OxDocument *self, const char *step, const ox_points *points,
                                      const ox_case *c, const ox_fix *fix, char *remark,
                                      size_t remark_bytes) {
  ox_lesson_case lc = {.c = *c, .fix = *fix};
  if (self->view.read_only) return refuse_read_only(remark, remark_bytes);
  if (self->view.case_count >= OX_LESSON_CASES_MAX) {
    snprintf(remark, remark_bytes, _("A lesson has at most %d cases."), OX_LESSON_CASES_MAX);
    return OX_ERROR;
  }
  size_t index = self->case_index + 1;
  return put(self, step, ox_snapshot_insert(self->now, index, &lc), points, &self->view.route,
             index, FALSE, remark, remark_bytes);
}

ox_status ox_document_journey(OxDocument *self, ox_journey *out, char *remark,
                              size_t remark_bytes) {
  return ox_journey_make(&self->view.points, &self->view.route, ox_document_fix(self),
                         ox_document_case(self), ox_document_flight(self), out, remark,
                         remark_bytes);
}
