/* Texts in the reader's language.
 *
 * Every sentence that people read is written in English where it is used, inside _("..."), and that
 * English is the key under which the catalogue in data/po/ has the translation. As long as no
 * catalogue is opened every text is itself, whatever the process locale says: libraries and tests
 * speak English, and only a program that is started by a person opens the catalogue.
 *
 * What machines read is never translated: keys and values of files, of the JSON and CSV that the
 * command line writes, names of options; nor is the phraseology of the radio, which is English by
 * ICAO Annex 10 and Doc 9432 (from memory).
 *
 * Thread-safe once the catalogue is open. */
#ifndef OXBOW_TEXT_H
#define OXBOW_TEXT_H

#include <stdbool.h>
#include <stddef.h>

#include "oxbow/mark.h"

#define OX_TEXT_DOMAIN "oxbow"

/* Opens the catalogue of the process locale (setlocale was called before, for LC_MESSAGES and
 * LC_CTYPE at least) in `folder`, which holds LANGUAGE/LC_MESSAGES/oxbow.mo. NULL closes it. */
void ox_text_open(const char *folder);

/* While it is on, every text of this thread is itself, as if no catalogue were open: for a table or
 * a value that programs read. Returns what was before. */
bool ox_text_english(bool on);

/* Where the catalogues are: $OXBOW_LOCALE, or where they are installed. */
const char *ox_text_folder(void);

/* The translation, or the text itself. Never to be freed. */
const char *ox_text(const char *text) __attribute__((format_arg(1)));

/* The same of a text that would be ambiguous alone: `context` is a word or two for the translator
 * ("the side of a turn"). */
const char *ox_text_in(const char *context, const char *text) __attribute__((format_arg(2)));

/* One of two texts by a number, as the language's plural has it. */
const char *ox_text_count(const char *one, const char *many, unsigned long count)
    __attribute__((format_arg(1), format_arg(2)));

/* What stands between whole and decimals, in figures for people: "." or ",". */
const char *ox_text_decimal(void);

/* The language of the texts as a tag of BCP 47 ("en", "pt-BR"), out of the open catalogue's header;
 * "en" without one, and where its tag has no room in out. */
void ox_text_language(char *out, size_t bytes);

#define _(text) ox_text(text)
#define C_(context, text) ox_text_in(context, text)

#endif
