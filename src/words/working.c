/* The working: rows put together in reading order. */
#include "oxbow/words.h"

#include <stdlib.h>
#include <string.h>

#include "rows.h"

static char *copy(const char *text) {
  size_t bytes = strlen(text) + 1;
  char *out = malloc(bytes);
  if (out) memcpy(out, text, bytes);
  return out;
}

static void row_clear(ox_working_row *row) {
  free(row->label);
  free(row->value);
  free(row->brief);
  free(row->why);
}

static bool make_room(words_rows *r) {
  if (r->w.count < r->capacity) return true;
  size_t capacity = r->capacity ? 2 * r->capacity : 32;
  ox_working_row *rows = realloc(r->w.rows, capacity * sizeof *rows);
  if (!rows) return false;
  r->w.rows = rows;
  r->capacity = capacity;
  return true;
}

void rows_add_labelled(words_rows *r, const char *group, const char *key, const char *label,
                       words_say *value, words_say *why, const char *source) {
  ox_working_row row = {.group = _(group),
                        .key = key,
                        .label = copy(label),
                        .value = words_take(value),
                        .why = words_take(why),
                        .source = _(source)};
  if (row.label && row.value && row.why && make_room(r)) {
    r->w.rows[r->w.count++] = row;
    return;
  }
  row_clear(&row);
  r->failed = true;
}

void rows_add(words_rows *r, const char *group, const char *label, words_say *value, words_say *why,
              const char *source) {
  rows_add_labelled(r, group, label, _(label), value, why, source);
}

void rows_set_brief(words_rows *r, const char *brief) {
  if (r->failed) return;
  ox_working_row *row = &r->w.rows[r->w.count - 1];
  row->brief = copy(brief);
  r->failed = !row->brief;
}

double words_reaction_s(const ox_case *c) {
  return c->technique.reaction_s + c->technique.roll_s;
}

const ox_condition *words_condition_at(const ox_setup *setup, double t_s) {
  size_t at = 0;
  while (at + 1 < setup->condition_count && setup->conditions[at + 1].from_t_s <= t_s)
    at++;
  return &setup->conditions[at];
}

ox_working ox_working_make(const ox_case *c, const ox_flight *flight) {
  words_rows r = {.c = c, .f = flight};
  rows_entry(&r);
  rows_technique(&r);
  rows_headings(&r);
  rows_times(&r);
  rows_station(&r);
  rows_wind(&r);
  rows_turn(&r);
  rows_limits(&r);
  rows_when(&r);
  rows_circuits(&r);
  rows_against_exact(&r);
  if (r.failed) ox_working_clear(&r.w);
  return r.w;
}

void ox_working_clear(ox_working *w) {
  for (size_t i = 0; i < w->count; i++)
    row_clear(&w->rows[i]);
  free(w->rows);
  *w = (ox_working){0};
}
