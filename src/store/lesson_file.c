/* Lessons from and to files. Reading takes a regular file or a pipe, never more than a lesson may
 * be large; writing goes through the writer that replaces a file whole. */
#include <cJSON.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "errno_text.h"
#include "oxbow/file.h"
#include "oxbow/text.h"
#include "reading.h"
#include "text.h"

/* An open file descriptor, or -1 with the reason in *why. Opening never waits for a pipe's other
 * end; reading does. */
static int open_lesson(const char *path, const char **why) {
  struct stat state;
  int fd = open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
  if (fd < 0) {
    *why = ox_errno_text(errno);
    return -1;
  }
  if (fstat(fd, &state) != 0)
    *why = ox_errno_text(errno);
  else if (S_ISDIR(state.st_mode))
    *why = _("it is a directory");
  else if (!S_ISREG(state.st_mode) && !S_ISFIFO(state.st_mode))
    *why = _("it is neither a file nor a pipe");
  else if (fcntl(fd, F_SETFL, 0) < 0)
    *why = ox_errno_text(errno);
  else
    return fd;
  close(fd);
  return -1;
}

/* All of the file, or one byte more than a lesson may have. False with the reason. */
static bool read_all(int fd, ox_growing *into, const char **why) {
  char block[16384];
  while (into->length <= OX_LESSON_FILE_MAX_BYTES) {
    ssize_t got = read(fd, block, sizeof block);
    if (got == 0) return true;
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) {
      *why = ox_errno_text(errno);
      return false;
    }
    ox_growing_put(into, block, (size_t)got);
    if (into->failed) {
      *why = ox_errno_text(ENOMEM);
      return false;
    }
  }
  return true;
}

/* `why` is a clause as ox_errno_text has it. */
static ox_status cannot_read(ox_messages *messages, const char *path, const char *why) {
  char sentence[240];
  snprintf(sentence, sizeof sentence, _("cannot be read: %s"), why);
  ox_messages_say(messages, path, sentence);
  return OX_ERROR;
}

static ox_status not_written(ox_messages *messages, const char *path, const char *why) {
  char sentence[240];
  snprintf(sentence, sizeof sentence, _("not written: %s"), why);
  ox_messages_say(messages, path, sentence);
  return OX_ERROR;
}

ox_status ox_lesson_read(const char *path, ox_lesson **out, ox_messages *messages) {
  const char *why = "";
  int fd = open_lesson(path, &why);
  if (fd < 0) return cannot_read(messages, path, why);
  ox_growing text = {0};
  bool ok = read_all(fd, &text, &why);
  close(fd);
  ox_status status = ok ? ox_lesson_parse(text.bytes, text.length, path, out, messages)
                        : cannot_read(messages, path, why);
  ox_growing_clear(&text);
  return status;
}

/* What the reader would refuse is not written: a file that cannot be opened again is worse than
 * none. */
static bool check_cases(const ox_lesson *lesson, const char *path, ox_messages *messages) {
  ox_reading r = {.name = path, .messages = messages, .in_case = true};
  for (size_t i = 0; i < lesson->case_count; i++) {
    const ox_case *c = &lesson->cases[i].c;
    ox_fault faults[OX_READING_FIELDS_MAX];
    size_t count = ox_case_check(c, faults, OX_READING_FIELDS_MAX);
    char name[OX_CASE_NAME_BYTES];
    ox_text_line_copy(name, sizeof name, c->name, sizeof c->name);
    r.case_number = i + 1;
    r.case_name = ox_text_is_blank(name) ? NULL : name;
    for (size_t f = 0; f < count && f < OX_READING_FIELDS_MAX; f++) {
      ox_reading_say_fault(&r, &faults[f]);
    }
  }
  return r.fault_count == 0;
}

/* The same of places: a name that leads nowhere, a point counted from itself. */
static bool check_places(const ox_lesson *lesson, const char *path, ox_messages *messages) {
  ox_reading r = {.name = path, .messages = messages};
  char why[OX_REMARK_BYTES];
  ox_latlon unused;
  if (ox_points_check(&lesson->points, &lesson->route, why, sizeof why) == OX_ERROR)
    ox_reading_say(&r, "", "points", why);
  for (size_t i = 0; i < lesson->case_count && r.fault_count == 0; i++) {
    const ox_lesson_case *lc = &lesson->cases[i];
    ox_case settled = lc->c;
    r.in_case = true;
    r.case_number = i + 1;
    if ((ox_fix_has_place(&lesson->points, &lc->fix, &lc->c) &&
         ox_fix_place(&lesson->points, &lc->fix, &lc->c, &unused, why, sizeof why) == OX_ERROR) ||
        ox_fix_settle(&lesson->points, &lc->fix, &settled, why, sizeof why) == OX_ERROR)
      ox_reading_say(&r, "", "hold.fix", why);
  }
  return r.fault_count == 0;
}

static ox_status write_text(const char *text, const char *path, ox_messages *messages) {
  char error[512];
  ox_file_writer *writer = ox_file_begin(path, error, sizeof error);
  ox_status status = OX_ERROR;
  if (writer) {
    ox_file_write(writer, text, strlen(text));
    status = ox_file_commit(writer, error, sizeof error);
  }
  if (status == OX_OK) return OX_OK;
  ox_growing message = {0};
  ox_growing_puts(&message, error);
  ox_messages_add(messages, &message);
  return OX_ERROR;
}

ox_status ox_lesson_write(const ox_lesson *lesson, const char *path, ox_messages *messages) {
  if (lesson->read_only)
    return not_written(messages, path,
                       _("the lesson comes from a newer program and is read-only here"));
  if (!check_cases(lesson, path, messages) || !check_places(lesson, path, messages))
    return OX_ERROR;
  char *text = ox_lesson_to_text(lesson);
  if (!text) return not_written(messages, path, ox_errno_text(ENOMEM));
  ox_status status = OX_ERROR;
  if (strlen(text) > OX_LESSON_FILE_MAX_BYTES)
    not_written(messages, path, _("the lesson is larger than a lesson may be (4 MiB)"));
  else
    status = write_text(text, path, messages);
  cJSON_free(text);
  return status;
}
