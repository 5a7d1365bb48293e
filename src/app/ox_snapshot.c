/* Lessons as values. A list of cases is an array of pointers to counted cases; a changed case is
 * a new one, its neighbours are the same. */
#include "ox_snapshot.h"

#include <string.h>

/* One case. Where only its values were changed, all else belongs to another case, the root. */
typedef struct shared_case {
  gatomicrefcount count;
  guint64 id;
  ox_lesson_case v;
  struct shared_case *root; /* NULL: v owns what it points to */
} shared_case;

typedef struct {
  gatomicrefcount count;
  ox_lesson *lesson; /* without cases */
} shared_head;

struct ox_snapshot {
  gatomicrefcount count;
  shared_head *head;
  size_t own_bytes;
  size_t case_count;
  shared_case *cases[];
};

/* ---- parts ------------------------------------------------------------------------------ */

static guint64 next_id(void) {
  static gsize last;
  return (guint64)g_atomic_pointer_add(&last, 1) + 1;
}

static shared_case *case_ref(shared_case *c) {
  g_atomic_ref_count_inc(&c->count);
  return c;
}

static void case_unref(shared_case *c) {
  if (!g_atomic_ref_count_dec(&c->count)) return;
  if (c->root)
    case_unref(c->root);
  else
    ox_lesson_case_clear(&c->v);
  g_free(c);
}

static shared_case *case_new(const ox_lesson_case *from, guint64 id) {
  shared_case *c = g_new0(shared_case, 1);
  g_atomic_ref_count_init(&c->count);
  c->id = id;
  if (!ox_lesson_case_copy(&c->v, from)) g_error("Out of memory");
  return c;
}

static shared_case *case_with_values(shared_case *from, const ox_case *values) {
  shared_case *c = g_new0(shared_case, 1);
  g_atomic_ref_count_init(&c->count);
  c->id = from->id;
  c->v = from->v;
  c->v.c = *values;
  c->root = case_ref(from->root ? from->root : from);
  return c;
}

static shared_head *head_new(const ox_lesson *lesson) {
  shared_head *head = g_new0(shared_head, 1);
  g_atomic_ref_count_init(&head->count);
  head->lesson = ox_lesson_copy_head(lesson);
  if (!head->lesson) g_error("Out of memory");
  return head;
}

static shared_head *head_ref(shared_head *head) {
  g_atomic_ref_count_inc(&head->count);
  return head;
}

static void head_unref(shared_head *head) {
  if (!g_atomic_ref_count_dec(&head->count)) return;
  ox_lesson_free(head->lesson);
  g_free(head);
}

/* ---- snapshots -------------------------------------------------------------------------- */

/* Room for that many cases, still to be filled; takes the head. */
static ox_snapshot *make(shared_head *head, size_t case_count) {
  size_t bytes = sizeof(ox_snapshot) + case_count * sizeof(shared_case *);
  ox_snapshot *self = g_malloc0(bytes);
  g_atomic_ref_count_init(&self->count);
  self->head = head;
  self->case_count = case_count;
  self->own_bytes = bytes;
  return self;
}

ox_snapshot *ox_snapshot_new(const ox_lesson *lesson) {
  ox_snapshot *self = make(head_new(lesson), lesson->case_count);
  self->own_bytes += ox_lesson_head_bytes(lesson);
  for (size_t i = 0; i < lesson->case_count; i++) {
    self->cases[i] = case_new(&lesson->cases[i], next_id());
    self->own_bytes += ox_lesson_case_bytes(&lesson->cases[i]);
  }
  return self;
}

ox_snapshot *ox_snapshot_ref(ox_snapshot *self) {
  g_atomic_ref_count_inc(&self->count);
  return self;
}

void ox_snapshot_unref(ox_snapshot *self) {
  if (!g_atomic_ref_count_dec(&self->count)) return;
  for (size_t i = 0; i < self->case_count; i++) case_unref(self->cases[i]);
  head_unref(self->head);
  g_free(self);
}

/* The same lesson with one case in another's place; takes the case. */
static ox_snapshot *put_case(ox_snapshot *from, size_t index, shared_case *c, size_t bytes) {
  ox_snapshot *self = make(head_ref(from->head), from->case_count);
  for (size_t i = 0; i < self->case_count; i++)
    self->cases[i] = i == index ? c : case_ref(from->cases[i]);
  self->own_bytes += bytes;
  return self;
}

ox_snapshot *ox_snapshot_with_values(ox_snapshot *from, size_t index, const ox_case *c) {
  g_assert(index < from->case_count);
  return put_case(from, index, case_with_values(from->cases[index], c), sizeof(shared_case));
}

ox_snapshot *ox_snapshot_with_case(ox_snapshot *from, size_t index, const ox_lesson_case *c) {
  g_assert(index < from->case_count);
  return put_case(from, index, case_new(c, from->cases[index]->id), ox_lesson_case_bytes(c));
}

ox_snapshot *ox_snapshot_with_head(ox_snapshot *from, const ox_lesson *head) {
  ox_snapshot *self = make(head_new(head), from->case_count);
  for (size_t i = 0; i < self->case_count; i++) self->cases[i] = case_ref(from->cases[i]);
  self->own_bytes += ox_lesson_head_bytes(head);
  return self;
}

ox_snapshot *ox_snapshot_insert(ox_snapshot *from, size_t index, const ox_lesson_case *c) {
  g_assert(index <= from->case_count);
  ox_snapshot *self = make(head_ref(from->head), from->case_count + 1);
  for (size_t i = 0; i < from->case_count; i++)
    self->cases[i < index ? i : i + 1] = case_ref(from->cases[i]);
  self->cases[index] = case_new(c, next_id());
  self->own_bytes += ox_lesson_case_bytes(c);
  return self;
}

ox_snapshot *ox_snapshot_remove(ox_snapshot *from, size_t index) {
  g_assert(index < from->case_count && from->case_count > 1);
  ox_snapshot *self = make(head_ref(from->head), from->case_count - 1);
  for (size_t i = 0; i < self->case_count; i++)
    self->cases[i] = case_ref(from->cases[i < index ? i : i + 1]);
  return self;
}

ox_snapshot *ox_snapshot_move(ox_snapshot *from, size_t index, size_t to) {
  g_assert(index < from->case_count && to < from->case_count);
  ox_snapshot *self = make(head_ref(from->head), from->case_count);
  size_t next = 0;
  for (size_t i = 0; i < self->case_count; i++) {
    if (next == index) next++;
    self->cases[i] = case_ref(from->cases[i == to ? index : next]);
    if (i != to) next++;
  }
  return self;
}

/* ---- reading ---------------------------------------------------------------------------- */

size_t ox_snapshot_count(const ox_snapshot *self) { return self->case_count; }

const ox_lesson_case *ox_snapshot_case(const ox_snapshot *self, size_t index) {
  return &self->cases[index]->v;
}

guint64 ox_snapshot_case_id(const ox_snapshot *self, size_t index) {
  return self->cases[index]->id;
}

const ox_lesson *ox_snapshot_head(const ox_snapshot *self) { return self->head->lesson; }

static gboolean rest_is_shared(const shared_case *a, const shared_case *b) {
  return (a->root ? a->root : a) == (b->root ? b->root : b);
}

static gboolean cases_equal(const shared_case *a, const shared_case *b) {
  if (a == b) return TRUE;
  if (!ox_case_equal(&a->v.c, &b->v.c)) return FALSE;
  return rest_is_shared(a, b) || ox_lesson_case_rest_equal(&a->v, &b->v);
}

gboolean ox_snapshot_equal(const ox_snapshot *a, const ox_snapshot *b) {
  if (a == b) return TRUE;
  if (a->case_count != b->case_count) return FALSE;
  for (size_t i = 0; i < a->case_count; i++)
    if (!cases_equal(a->cases[i], b->cases[i])) return FALSE;
  return a->head == b->head || ox_lesson_head_equal(a->head->lesson, b->head->lesson);
}

gboolean ox_snapshot_list_equal(const ox_snapshot *a, const ox_snapshot *b) {
  if (a->case_count != b->case_count) return FALSE;
  for (size_t i = 0; i < a->case_count; i++) {
    const shared_case *one = a->cases[i], *other = b->cases[i];
    if (one->id != other->id || strcmp(one->v.c.name, other->v.c.name) != 0) return FALSE;
  }
  return TRUE;
}

/* Whoever holds a pointer to a case of the view may go on using it as long as the number of cases
 * stays what it is. */
void ox_snapshot_view(const ox_snapshot *self, ox_lesson *view) {
  ox_lesson_case *cases = view->cases;
  if (!cases || view->case_count != self->case_count)
    cases = g_renew(ox_lesson_case, cases, self->case_count);
  for (size_t i = 0; i < self->case_count; i++) cases[i] = self->cases[i]->v;
  *view = *self->head->lesson;
  view->cases = cases;
  view->case_count = self->case_count;
}

void ox_snapshot_view_clear(ox_lesson *view) {
  g_free(view->cases);
  memset(view, 0, sizeof *view);
}

size_t ox_snapshot_own_bytes(const ox_snapshot *self) { return self->own_bytes; }
