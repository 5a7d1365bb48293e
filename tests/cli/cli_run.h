/* Runs the command line as a user would, and gives it files in a folder of its own. */
#ifndef OX_TESTS_CLI_RUN_H
#define OX_TESTS_CLI_RUN_H

#include "ox_test.h"

typedef struct {
  int code;
  char *out, *err; /* what was printed; freed by ran_clear */
} ran;

/* run_cli("solve", path, NULL): the arguments after the program's name. */
ran run_cli(const char *argument, ...) __attribute__((sentinel));
void ran_clear(ran *r);
/* The same, failing unless the exit code is as wanted and the messages are empty for 0. */
ran run_cli_for(int code, const char *argument, ...) __attribute__((sentinel));

/* A fresh folder, emptied and removed by folder_remove: cmocka setup and teardown. */
int folder_make(void **state);
int folder_remove(void **state);
/* Path of a file in it; valid until eight more were asked for. */
const char *in_folder(const char *name);
void write_text(const char *path, const char *text);
/* All of a file, nul-terminated; *length may be NULL. NULL when there is no such file. */
char *read_all(const char *path, size_t *length);
/* Files in the folder, whatever their names. */
int folder_count(void);

/* A lesson file with a case for each of the JSON objects (without name: "Case 1"…). */
const char *write_lesson(const char *name, const char *cases);
/* A lesson of the project. */
const char *lesson_path(const char *name);

/* 0, or a failure of setup where the machine lacks the locale. */
int enter_german(void **state);
int leave_german(void **state);

#endif
