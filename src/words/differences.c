/* Cases side by side: the table itself. */
#include "differences.h"

#include <stdlib.h>
#include <string.h>

static void row_clear(ox_difference_row *row) {
  for (size_t i = 0; i < OX_DIFFERENCES_MAX; i++)
    free(row->value[i]);
}

static bool make_room(differences *d) {
  if (d->table.count < d->capacity) return true;
  size_t capacity = d->capacity + 32;
  ox_difference_row *rows = realloc(d->table.rows, capacity * sizeof *rows);
  if (!rows) return false;
  d->table.rows = rows;
  d->capacity = capacity;
  return true;
}

void differences_add(differences *d, bool given, const char *label,
                     words_say texts[OX_DIFFERENCES_MAX]) {
  ox_difference_row row = {.given = given, .label = _(label)};
  bool whole = true;
  for (size_t i = 0; i < d->table.columns; i++) {
    row.value[i] = words_take(&texts[i]);
    whole = whole && row.value[i];
  }
  for (size_t i = 1; whole && i < d->table.columns; i++)
    row.differs = row.differs || strcmp(row.value[i], row.value[0]) != 0;
  bool wanted = row.differs || !given;
  if (!whole || (wanted && !make_room(d))) d->failed = true;
  if (!d->failed && wanted)
    d->table.rows[d->table.count++] = row;
  else
    row_clear(&row);
}

ox_differences ox_differences_make(const ox_case *const *cases, const ox_flight *const *flights,
                                   size_t columns) {
  differences d = {.cases = cases, .flights = flights};
  d.table.columns = columns < OX_DIFFERENCES_MAX ? columns : OX_DIFFERENCES_MAX;
  differences_given(&d);
  differences_flown(&d);
  if (d.failed) ox_differences_clear(&d.table);
  return d.table;
}

void ox_differences_clear(ox_differences *d) {
  for (size_t i = 0; i < d->count; i++)
    row_clear(&d->rows[i]);
  free(d->rows);
  *d = (ox_differences){0};
}
