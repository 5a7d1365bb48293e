/* Undo and redo as a list of steps and a place in it. */
#include "ox_history.h"

#include <string.h>

struct ox_history {
  GArray *steps; /* of ox_step */
  guint done;    /* how many of them are in effect */
  size_t bytes;
};

static void step_clear(gpointer data) {
  ox_step *step = data;
  g_free(step->name);
  ox_snapshot_unref(step->before);
  ox_snapshot_unref(step->after);
}

static ox_step *at(const ox_history *self, guint index) {
  return &g_array_index(self->steps, ox_step, index);
}

ox_history *ox_history_new(void) {
  ox_history *self = g_new0(ox_history, 1);
  self->steps = g_array_new(FALSE, FALSE, sizeof(ox_step));
  g_array_set_clear_func(self->steps, step_clear);
  return self;
}

void ox_history_free(ox_history *self) {
  g_array_unref(self->steps);
  g_free(self);
}

static size_t step_bytes(const ox_step *step) {
  return sizeof *step + strlen(step->name) + ox_snapshot_own_bytes(step->after);
}

static void forget(ox_history *self, guint from, guint count) {
  if (count == 0) return;
  for (guint i = from; i < from + count; i++) self->bytes -= step_bytes(at(self, i));
  g_array_remove_range(self->steps, from, count);
  if (self->done > from) self->done -= MIN(count, self->done - from);
}

void ox_history_clear(ox_history *self) { forget(self, 0, self->steps->len); }

static gboolean merges(const ox_step *last, const ox_step *next) {
  return last && last->open_to_more && next->open_to_more &&
         next->at_us - last->at_us <= OX_HISTORY_MERGE_US &&
         last->index_after == next->index_before && strcmp(last->name, next->name) == 0;
}

/* Pressed up and down again: nothing is left to be undone. */
static void merge(ox_history *self, ox_step *last, ox_step *next) {
  self->bytes -= step_bytes(last);
  ox_snapshot_unref(last->after);
  last->after = ox_snapshot_ref(next->after);
  last->index_after = next->index_after;
  last->at_us = next->at_us;
  self->bytes += step_bytes(last);
  step_clear(next);
  if (ox_snapshot_equal(last->before, last->after)) forget(self, self->done - 1, 1);
}

/* The step just made stays, however large it is. */
static void keep_bounds(ox_history *self) {
  guint old = 0;
  size_t bytes = self->bytes;
  while (self->steps->len - old > 1 &&
         (self->steps->len - old > OX_HISTORY_STEPS_MAX || bytes > OX_HISTORY_BYTES_MAX))
    bytes -= step_bytes(at(self, old++));
  forget(self, 0, old);
}

void ox_history_add(ox_history *self, ox_step step) {
  forget(self, self->done, self->steps->len - self->done);
  ox_step *last = self->done > 0 ? at(self, self->done - 1) : NULL;
  if (merges(last, &step)) {
    merge(self, last, &step);
    return;
  }
  self->bytes += step_bytes(&step);
  g_array_append_val(self->steps, step);
  self->done = self->steps->len;
  keep_bounds(self);
}

void ox_history_seal(ox_history *self) {
  if (self->done > 0) at(self, self->done - 1)->open_to_more = FALSE;
}

const ox_step *ox_history_undo_step(const ox_history *self) {
  return self->done > 0 ? at(self, self->done - 1) : NULL;
}

const ox_step *ox_history_redo_step(const ox_history *self) {
  return self->done < self->steps->len ? at(self, self->done) : NULL;
}

void ox_history_go_back(ox_history *self) {
  ox_history_seal(self);
  if (self->done > 0) self->done--;
  ox_history_seal(self);
}

void ox_history_go_forward(ox_history *self) {
  if (self->done < self->steps->len) self->done++;
  ox_history_seal(self);
}

guint ox_history_count(const ox_history *self) { return self->steps->len; }

size_t ox_history_bytes(const ox_history *self) { return self->bytes; }
