/* What is drawn over the picture of the shown case, as part of the lesson and its history. */
#include "ox_document.h"

static const ox_lesson_case *shown_case(OxDocument *self) {
  return &ox_document_lesson(self)->cases[ox_document_case_index(self)];
}

const ox_ink *ox_document_ink(OxDocument *self) { return shown_case(self)->ink; }

void ox_document_set_ink(OxDocument *self, const char *name, const ox_ink *ink) {
  g_return_if_fail(OX_IS_DOCUMENT(self));
  ox_lesson_case changed = *shown_case(self);
  /* It is copied, never written to. */
  changed.ink = ox_ink_is_empty(ink) ? NULL : (ox_ink *)(guintptr)ink;
  ox_document_replace_case(self, name, &changed);
}
