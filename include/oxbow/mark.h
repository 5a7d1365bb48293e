/* Marks a text for translators where it stands in a table or in the engine, which knows no
 * language: whoever shows it to people says ox_text() of it. */
#ifndef OXBOW_MARK_H
#define OXBOW_MARK_H

#define N_(text) text

#endif
