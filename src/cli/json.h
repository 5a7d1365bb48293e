/* JSON written member by member: commas, indents, strings and numbers. Private to the command
 * line. Errors of the stream are looked at where the program ends. */
#ifndef OX_CLI_JSON_H
#define OX_CLI_JSON_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

typedef struct {
  FILE *out;
  int depth;
  bool first;    /* nothing written yet at this depth */
  int flat_from; /* depth from which everything stands on one line; 0: nowhere */
} json;

/* key is NULL inside an array. */
void json_open(json *j, const char *key, char bracket);
/* The same, its content on one line. */
void json_open_flat(json *j, const char *key, char bracket);
void json_close(json *j, char bracket);
void json_number(json *j, const char *key, double value);
void json_whole(json *j, const char *key, int value);
void json_count(json *j, const char *key, uint64_t value);
/* NULL is written null. */
void json_string(json *j, const char *key, const char *value);

#endif
