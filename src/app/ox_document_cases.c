/* The list of cases of the open lesson: add, duplicate, delete, move, rename; and the title. */
#include "ox_document_private.h"

#include <string.h>

#include "oxbow/text.h"

/* ---- names ------------------------------------------------------------------------------ */

/* As in a lesson file: something to read, on one line. */
static const char *refuse_line(const char *text, size_t bytes, gboolean needed) {
  if (!g_utf8_validate(text, -1, NULL)) return _("A name is text.");
  char *bare = g_strstrip(g_strdup(text));
  gboolean blank = *bare == '\0';
  g_free(bare);
  if (blank && needed) return _("A name is needed here.");
  if (strlen(text) >= bytes) return _("The name is too long.");
  for (const char *at = text; *at; at = g_utf8_next_char(at))
    if (g_unichar_iscntrl(g_utf8_get_char(at))) return _("A name is one line.");
  return NULL;
}

static gboolean name_is_taken(OxDocument *self, const char *name) {
  for (size_t i = 0; i < self->view.case_count; i++)
    if (strcmp(self->view.cases[i].c.name, name) == 0) return TRUE;
  return FALSE;
}

/* "BASE", "BASE 2", "BASE 3", … whichever is free; a long base is cut at a character. There are
 * fewer cases than numbers tried. */
static void free_name(OxDocument *self, char *name, const char *base) {
  g_strlcpy(name, base, OX_CASE_NAME_BYTES);
  for (int i = 2; i <= OX_LESSON_CASES_MAX + 1 && name_is_taken(self, name); i++) {
    char tail[16];
    g_snprintf(tail, sizeof tail, " %d", i);
    size_t room = OX_CASE_NAME_BYTES - 1 - strlen(tail), length = strlen(base);
    if (length > room) {
      length = room;
      while (length > 0 && ((unsigned char)base[length] & 0xc0) == 0x80) length--;
    }
    g_snprintf(name, OX_CASE_NAME_BYTES, "%.*s%s", (int)length, base, tail);
  }
}

/* "NAME, copy" of "NAME" and of "NAME, copy 2". */
static char *copy_base(const char *name) {
  const char *end = name + strlen(name);
  while (end > name && g_ascii_isdigit(end[-1])) end--;
  if (end > name && end[-1] == ' ') end--;
  /* translators: what the name of a copied case ends in */
  const char *mark = _(", copy");
  size_t length = (size_t)(end - name), tail = strlen(mark);
  if (length > tail && strncmp(end - tail, mark, tail) == 0) return g_strndup(name, length);
  return g_strconcat(name, mark, NULL);
}

/* Text made by the program, cut to what a name may be. */
static char *cut(char *text) {
  if (strlen(text) < OX_CASE_NAME_BYTES) return text;
  size_t length = OX_CASE_NAME_BYTES - 1;
  while (length > 0 && ((unsigned char)text[length] & 0xc0) == 0x80) length--;
  text[length] = '\0';
  return text;
}

/* ---- cases ------------------------------------------------------------------------------ */

static ox_status insert(OxDocument *self, const char *step, size_t index, ox_lesson_case *c,
                        const char *base) {
  if (self->view.case_count >= OX_LESSON_CASES_MAX) return OX_ERROR;
  free_name(self, c->c.name, base);
  ox_document_do(self, step, ox_snapshot_insert(self->now, index, c), self->case_index, index,
                 FALSE);
  return OX_OK;
}

ox_status ox_document_add_case(OxDocument *self, size_t index) {
  if (index >= self->view.case_count) return OX_ERROR;
  ox_lesson_case made = {.c = ox_case_default()};
  return insert(self, _("Add Case"), index + 1, &made, _("New case"));
}

ox_status ox_document_duplicate_case(OxDocument *self, size_t index) {
  if (index >= self->view.case_count) return OX_ERROR;
  ox_lesson_case made = self->view.cases[index]; /* borrowed parts: the snapshot copies them */
  char *base = cut(copy_base(made.c.name));
  ox_status status = insert(self, _("Duplicate Case"), index + 1, &made, base);
  g_free(base);
  return status;
}

ox_status ox_document_delete_case(OxDocument *self, size_t index) {
  size_t count = self->view.case_count, shown = self->case_index;
  if (index >= count || count == 1) return OX_ERROR;
  if (shown > index || shown == count - 1) shown--;
  ox_document_do(self, _("Delete Case"), ox_snapshot_remove(self->now, index), index, shown, FALSE);
  return OX_OK;
}

ox_status ox_document_move_case(OxDocument *self, size_t index, size_t to) {
  if (index >= self->view.case_count || to >= self->view.case_count) return OX_ERROR;
  if (index == to) return OX_OK;
  ox_document_do(self, _("Move Case"), ox_snapshot_move(self->now, index, to), index, to, FALSE);
  return OX_OK;
}

ox_status ox_document_rename_case(OxDocument *self, size_t index, const char *name,
                                  const char **why) {
  if (index >= self->view.case_count) return OX_ERROR;
  const char *refused = refuse_line(name, OX_CASE_NAME_BYTES, TRUE);
  if (refused) {
    if (why) *why = refused;
    return OX_ERROR;
  }
  ox_case renamed = self->view.cases[index].c;
  if (strcmp(renamed.name, name) == 0) return OX_OK;
  g_strlcpy(renamed.name, name, sizeof renamed.name);
  ox_snapshot *next = ox_snapshot_with_values(self->now, index, &renamed);
  ox_document_do(self, _("Case Name"), next, index, index, FALSE);
  return OX_OK;
}

ox_status ox_document_set_title(OxDocument *self, const char *title, const char **why) {
  const char *refused = refuse_line(title, OX_LESSON_TITLE_BYTES, FALSE);
  if (refused) {
    if (why) *why = refused;
    return OX_ERROR;
  }
  ox_lesson head = *ox_snapshot_head(self->now);
  g_strlcpy(head.title, title, sizeof head.title);
  ox_snapshot *next = ox_snapshot_with_head(self->now, &head);
  ox_document_do(self, _("Lesson Title"), next, self->case_index, self->case_index, TRUE);
  return OX_OK;
}
