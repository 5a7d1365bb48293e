/* Shared by the tests of the store. */
#include "store_support.h"

#include <dirent.h>

#include "oxbow/fields.h"

const char *lesson_with(const char *case_members) {
  static char text[8192];
  static const struct {
    const char *key, *member;
  } sound[] = {
      {"\"hold\"", "\"hold\": { \"fix\": \"LARCH\", \"inbound_deg\": 240 }"},
      {"\"arrival\"", "\"arrival\": { \"heading_deg\": 290 }"},
      {"\"aircraft\"", "\"aircraft\": { \"ias_kt\": 100 }"},
  };
  size_t at = (size_t)snprintf(text, sizeof text,
                               "{ \"format\": \"oxbow-lesson\", \"version\": 1,"
                               " \"cases\": [ { %s",
                               case_members ? case_members : "\"name\": \"Sound\"");
  for (size_t i = 0; i < sizeof sound / sizeof *sound; i++)
    if (!case_members || !strstr(case_members, sound[i].key))
      at += (size_t)snprintf(text + at, sizeof text - at, ", %s", sound[i].member);
  snprintf(text + at, sizeof text - at, " } ] }");
  return text;
}

ox_lesson *parse_text(const char *text, ox_status *status, ox_messages *messages) {
  ox_lesson *lesson = NULL;
  *status = ox_lesson_parse(text, strlen(text), "x.oxbow", &lesson, messages);
  return lesson;
}

ox_lesson *parse_sound(const char *text, const char *what) {
  ox_messages messages = {0};
  ox_status status;
  ox_lesson *lesson = parse_text(text, &status, &messages);
  for (size_t i = 0; i < messages.count; i++) print_error("%s: %s\n", what, messages.text[i]);
  bool sound = status == OX_OK && messages.count == 0 && lesson;
  ox_messages_clear(&messages);
  if (!sound) print_error("%s: not read as a sound lesson\n", what);
  assert_true(sound);
  return lesson;
}

void assert_lessons_equal(const ox_lesson *a, const ox_lesson *b, const char *what) {
  if (a->case_count != b->case_count) print_error("%s: the number of cases differs\n", what);
  assert_int_equal(a->case_count, b->case_count);
  assert_string_equal(a->title, b->title);
  assert_int_equal(a->read_only, b->read_only);
  for (size_t i = 0; i < a->case_count; i++) {
    bool equal = ox_case_equal(&a->cases[i].c, &b->cases[i].c);
    if (!equal) print_error("%s: case %zu differs\n", what, i + 1);
    assert_true(equal);
  }
}

/* A number in the range: anywhere, at an end, or a round one. */
static double random_number(ox_random *r, double min, double max) {
  switch (ox_random_below(r, 8)) {
    case 0: return min;
    case 1: return max;
    case 2:
    case 3: {
      double whole = floor(ox_random_between(r, min, max));
      return whole < min ? min : whole + 0.0;
    }
    default: return ox_random_between(r, min, max);
  }
}

static void random_field(ox_random *r, const ox_field *field, void *base) {
  if (field->kind == OX_FIELD_NUMBER) {
    bool absent = field->zero_is_absent && ox_random_below(r, 3) == 0;
    ox_field_set(field, base, absent ? 0.0 : random_number(r, field->min, field->max));
  } else {
    int count = (int)(field->max - field->min) + 1;
    ox_field_set(field, base, field->min + ox_random_below(r, count));
  }
}

static void random_wind(ox_random *r, ox_case *c) {
  size_t count;
  const ox_field *fields = ox_wind_fields(&count);
  c->wind_count = ox_random_below(r, 3) == 0 ? ox_random_below(r, OX_WIND_ROWS_MAX + 1)
                                              : ox_random_below(r, 2);
  double altitude_ft = ox_random_between(r, -1500, 4000);
  for (int i = 0; i < c->wind_count; i++) {
    for (size_t f = 0; f < count; f++) random_field(r, &fields[f], &c->wind[i]);
    c->wind[i].altitude_ft = altitude_ft;
    altitude_ft += ox_random_between(r, 1, 4500);
  }
}

static void random_wind_changes(ox_random *r, ox_case *c) {
  size_t count;
  const ox_field *fields = ox_wind_change_fields(&count);
  c->wind_change_count =
      ox_random_below(r, 2) ? 0 : ox_random_below(r, OX_WIND_CHANGES_MAX + 1);
  double at_min = ox_random_between(r, 0.1, 40);
  for (int i = 0; i < c->wind_change_count; i++) {
    for (size_t f = 0; f < count; f++) random_field(r, &fields[f], &c->wind_changes[i]);
    c->wind_changes[i].at_min = at_min;
    at_min += ox_random_between(r, 0.01, 50);
  }
}

/* What belongs to another key only where it plays a part: elsewhere they are not written. */
static void random_station_and_climb(ox_random *r, ox_case *c) {
  ox_case standard = ox_case_default();
  c->hold.station.given = c->hold.leg_by == OX_LEG_BY_DISTANCE &&
                          c->hold.leg_end == OX_LEG_END_OUTBOUND && ox_random_below(r, 4) > 0;
  if (!c->hold.station.given) c->hold.station = standard.hold.station;
  if (c->hold.climb_to_ft == 0.0) c->hold.climb_ft_min = standard.hold.climb_ft_min;
  if (c->technique.lead != OX_LEAD_DEGREES) c->technique.lead_deg = standard.technique.lead_deg;
  if (c->hold.station.limiting_radial_deg == 0.0)
    c->technique.at_radial = standard.technique.at_radial;
}

static int random_time_s(ox_random *r) {
  switch (ox_random_below(r, 3)) {
    case 0: return -1;
    case 1: return ox_random_below(r, 24 * 60) * 60;
    default: return ox_random_below(r, 24 * 3600);
  }
}

static void random_name(ox_random *r, char *out, size_t bytes) {
  static const char *const pieces[] = {"Lake", " ", "\"", "\\", "/", "é", "風",
                                       "𝄞", "7", "…", "left", "'", "{", "}"};
  size_t at = 0;
  for (int i = ox_random_below(r, 12); i >= 0; i--) {
    const char *piece = pieces[ox_random_below(r, (int)(sizeof pieces / sizeof *pieces))];
    if (at + strlen(piece) >= bytes) break;
    memcpy(out + at, piece, strlen(piece));
    at += strlen(piece);
  }
  out[at] = '\0';
}

ox_case random_case(ox_random *r) {
  size_t count;
  const ox_field *fields = ox_fields(&count);
  ox_case c;
  do {
    c = ox_case_default();
    for (size_t i = 0; i < count; i++) random_field(r, &fields[i], &c);
    random_station_and_climb(r, &c);
    random_wind(r, &c);
    random_wind_changes(r, &c);
    random_name(r, c.name, sizeof c.name);
    do random_name(r, c.hold.fix, sizeof c.hold.fix);
    while (c.hold.fix[strspn(c.hold.fix, " ")] == '\0');
    c.hold.efc_min = ox_random_below(r, 2) ? ox_random_below(r, 24 * 60) : -1;
    c.arrival.fix_at_s = random_time_s(r);
    c.lost_radio.eta_min = ox_random_below(r, 2) ? ox_random_below(r, 24 * 60) : -1;
    c.shown.efc_min = ox_random_below(r, 2) ? ox_random_below(r, 24 * 60) : -1;
    if (ox_random_below(r, 2)) random_name(r, c.shown.fix, sizeof c.shown.fix);
  } while (ox_case_check(&c, NULL, 0) != 0);
  return c;
}

char *file_text(const char *path, size_t *length) {
  FILE *file = fopen(path, "rb");
  if (!file) print_error("%s cannot be opened\n", path);
  assert_non_null(file);
  size_t capacity = 1u << 20;
  char *text = malloc(capacity + 1);
  assert_non_null(text);
  *length = fread(text, 1, capacity, file);
  fclose(file);
  text[*length] = '\0';
  return text;
}

static int is_lesson_file(const struct dirent *entry) {
  const char *dot = strrchr(entry->d_name, '.');
  return dot && strcmp(dot, ".oxbow") == 0;
}

int each_lesson(const char *directory, void (*visit)(const char *path, void *context),
                void *context) {
  struct dirent **entries;
  int count = scandir(directory, &entries, is_lesson_file, alphasort);
  for (int i = 0; i < count; i++) {
    char path[4096];
    snprintf(path, sizeof path, "%s/%s", directory, entries[i]->d_name);
    free(entries[i]);
    visit(path, context);
  }
  if (count >= 0) free(entries);
  return count;
}

const char *data_path(const char *file) {
  static char path[4096];
  const char *data = getenv("OXBOW_TEST_DATA");
  assert_non_null(data);
  snprintf(path, sizeof path, "%s/store/%s", data, file);
  return path;
}
