/* The lesson that a first start shows: compiled in, so that it is there wherever the program is. */
#include "ox_demo.h"

#include <gio/gio.h>

#include "app_id.h"

ox_lesson *ox_demo_lesson(void) {
  ox_lesson *lesson = NULL;
  ox_messages messages = {0};
  GBytes *bytes = g_resources_lookup_data(OX_RESOURCES "/demo.oxbow", 0, NULL);
  if (bytes) {
    size_t length;
    const char *text = g_bytes_get_data(bytes, &length);
    ox_lesson_parse(text, length, "demo.oxbow", &lesson, &messages);
    g_bytes_unref(bytes);
  }
  for (size_t i = 0; i < messages.count; i++) g_warning("%s", messages.text[i]);
  ox_messages_clear(&messages);
  if (!lesson) lesson = ox_lesson_new();
  if (!lesson) g_error("Out of memory");
  return lesson;
}
