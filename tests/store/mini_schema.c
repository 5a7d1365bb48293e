/* A small validator of JSON Schema: one function a keyword. */
#include "mini_schema.h"

#include <math.h>
#include <regex.h>
#include <stdlib.h>
#include <string.h>

typedef bool (*keyword_check)(mini_schema *s, const cJSON *schema, const cJSON *argument,
                              const cJSON *value);

static const cJSON *member(const cJSON *object, const char *key) {
  return cJSON_GetObjectItemCaseSensitive(object, key);
}

static bool is_type(const char *type, const cJSON *value) {
  if (strcmp(type, "integer") == 0)
    return cJSON_IsNumber(value) && value->valuedouble == floor(value->valuedouble);
  return (strcmp(type, "number") == 0 && cJSON_IsNumber(value)) ||
         (strcmp(type, "string") == 0 && cJSON_IsString(value)) ||
         (strcmp(type, "object") == 0 && cJSON_IsObject(value)) ||
         (strcmp(type, "array") == 0 && cJSON_IsArray(value)) ||
         (strcmp(type, "null") == 0 && cJSON_IsNull(value));
}

static bool check_note(mini_schema *s, const cJSON *schema, const cJSON *argument,
                       const cJSON *value) {
  return true;
}

static bool check_type(mini_schema *s, const cJSON *schema, const cJSON *argument,
                       const cJSON *value) {
  return is_type(argument->valuestring, value);
}

static bool check_const(mini_schema *s, const cJSON *schema, const cJSON *argument,
                        const cJSON *value) {
  if (cJSON_IsNumber(argument))
    return cJSON_IsNumber(value) && argument->valuedouble == value->valuedouble;
  return cJSON_Compare(argument, value, true);
}

static bool check_enum(mini_schema *s, const cJSON *schema, const cJSON *argument,
                       const cJSON *value) {
  for (const cJSON *choice = argument->child; choice; choice = choice->next)
    if (check_const(s, schema, choice, value)) return true;
  return false;
}

static bool check_bound(mini_schema *s, const cJSON *schema, const cJSON *argument,
                        const cJSON *value) {
  if (!cJSON_IsNumber(value)) return true;
  if (strcmp(argument->string, "minimum") == 0) return value->valuedouble >= argument->valuedouble;
  if (strcmp(argument->string, "maximum") == 0) return value->valuedouble <= argument->valuedouble;
  return value->valuedouble > argument->valuedouble; /* exclusiveMinimum */
}

static size_t characters(const char *text) {
  size_t count = 0;
  for (; *text; text++) count += (*text & 0xc0) != 0x80;
  return count;
}

static bool check_length(mini_schema *s, const cJSON *schema, const cJSON *argument,
                         const cJSON *value) {
  if (!cJSON_IsString(value)) return true;
  double length = (double)characters(value->valuestring);
  return strcmp(argument->string, "minLength") == 0 ? length >= argument->valuedouble
                                                    : length <= argument->valuedouble;
}

/* The pattern with \u00XX put as the character itself, which is how POSIX wants it. */
static char *posix_pattern(const char *pattern) {
  char *out = malloc(strlen(pattern) + 1), *at = out;
  while (out && *pattern) {
    if (strncmp(pattern, "\\u00", 4) == 0) {
      char figures[3] = {pattern[4], pattern[5], '\0'};
      *at++ = (char)strtol(figures, NULL, 16);
      pattern += 6;
    } else {
      *at++ = *pattern++;
    }
  }
  if (out) *at = '\0';
  return out;
}

static bool check_pattern(mini_schema *s, const cJSON *schema, const cJSON *argument,
                          const cJSON *value) {
  regex_t expression;
  if (!cJSON_IsString(value)) return true;
  char *pattern = posix_pattern(argument->valuestring);
  bool compiled = pattern && regcomp(&expression, pattern, REG_EXTENDED | REG_NOSUB) == 0;
  bool matches = compiled && regexec(&expression, value->valuestring, 0, NULL, 0) == 0;
  if (compiled) regfree(&expression);
  free(pattern);
  if (!compiled) s->unknown = "pattern";
  return matches;
}

static bool check_count(mini_schema *s, const cJSON *schema, const cJSON *argument,
                        const cJSON *value) {
  if (!cJSON_IsArray(value)) return true;
  double count = cJSON_GetArraySize(value);
  return strcmp(argument->string, "minItems") == 0 ? count >= argument->valuedouble
                                                   : count <= argument->valuedouble;
}

static bool check_items(mini_schema *s, const cJSON *schema, const cJSON *argument,
                        const cJSON *value) {
  if (!cJSON_IsArray(value)) return true;
  for (const cJSON *item = value->child; item; item = item->next)
    if (!mini_schema_accepts(s, argument, item)) return false;
  return true;
}

static bool check_required(mini_schema *s, const cJSON *schema, const cJSON *argument,
                           const cJSON *value) {
  if (!cJSON_IsObject(value)) return true;
  for (const cJSON *key = argument->child; key; key = key->next)
    if (!member(value, key->valuestring)) return false;
  return true;
}

static bool check_properties(mini_schema *s, const cJSON *schema, const cJSON *argument,
                             const cJSON *value) {
  if (!cJSON_IsObject(value)) return true;
  for (const cJSON *property = argument->child; property; property = property->next) {
    const cJSON *given = member(value, property->string);
    if (given && !mini_schema_accepts(s, property, given)) return false;
  }
  return true;
}

static bool check_any(mini_schema *s, const cJSON *schema, const cJSON *argument,
                      const cJSON *value) {
  bool any = false; /* all are walked, so that no keyword goes unseen */
  for (const cJSON *choice = argument->child; choice; choice = choice->next)
    any = mini_schema_accepts(s, choice, value) || any;
  return any;
}

static bool check_not(mini_schema *s, const cJSON *schema, const cJSON *argument,
                      const cJSON *value) {
  return !mini_schema_accepts(s, argument, value);
}

const cJSON *mini_schema_follow(const mini_schema *s, const cJSON *schema) {
  static const char before[] = "#/$defs/";
  const cJSON *to = member(schema, "$ref");
  if (!cJSON_IsString(to) || strncmp(to->valuestring, before, sizeof before - 1) != 0) return NULL;
  return member(member(s->root, "$defs"), to->valuestring + sizeof before - 1);
}

static bool check_reference(mini_schema *s, const cJSON *schema, const cJSON *argument,
                            const cJSON *value) {
  const cJSON *to = mini_schema_follow(s, schema);
  if (!to) s->unknown = argument->valuestring;
  return to && mini_schema_accepts(s, to, value);
}

static const struct {
  const char *keyword;
  keyword_check check;
} keywords[] = {
    {"$schema", check_note},       {"$defs", check_note},        {"title", check_note},
    {"description", check_note},   {"default", check_note},      {"$ref", check_reference},
    {"type", check_type},          {"const", check_const},       {"enum", check_enum},
    {"minimum", check_bound},      {"maximum", check_bound},     {"exclusiveMinimum", check_bound},
    {"minLength", check_length},   {"maxLength", check_length},  {"pattern", check_pattern},
    {"minItems", check_count},     {"maxItems", check_count},    {"items", check_items},
    {"required", check_required},  {"anyOf", check_any},         {"not", check_not},
    {"properties", check_properties},
};

bool mini_schema_accepts(mini_schema *s, const cJSON *schema, const cJSON *value) {
  if (cJSON_IsBool(schema)) return cJSON_IsTrue(schema);
  bool accepted = true;
  for (const cJSON *argument = schema->child; argument; argument = argument->next) {
    size_t i = 0, count = sizeof keywords / sizeof *keywords;
    while (i < count && strcmp(keywords[i].keyword, argument->string) != 0) i++;
    if (i == count)
      s->unknown = argument->string;
    else
      accepted = keywords[i].check(s, schema, argument, value) && accepted;
  }
  return accepted;
}
