/* Files that are replaced whole or not at all: written beside, synced, renamed. */
#ifndef OXBOW_FILE_H
#define OXBOW_FILE_H

#include <stddef.h>

#include "oxbow/status.h"

typedef struct ox_file_writer ox_file_writer;

/* Opens a writer beside `path` (a symbolic link is followed and kept). On failure returns NULL
 * and puts a sentence into error (error_bytes > 0, always nul-terminated). */
ox_file_writer *ox_file_begin(const char *path, char *error, size_t error_bytes);
/* Appends. Errors stick: later calls do nothing and the commit fails. */
ox_status ox_file_write(ox_file_writer *writer, const void *bytes, size_t length);
/* Syncs and renames over path, or removes the temporary file on any error. Frees the writer. */
ox_status ox_file_commit(ox_file_writer *writer, char *error, size_t error_bytes);
/* Removes the temporary file and frees the writer. NULL is allowed. */
void ox_file_abandon(ox_file_writer *writer);

#endif
