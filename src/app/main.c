/* oxbow [LESSON]: the window. Everything is in the library, so that tests can reach it. */
#include "ox_application.h"

#include <locale.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif

#include "oxbow/text.h"

/* Every frame takes and gives back images of megabytes. Left alone, the C library returns each to
 * the system and has it cleared page by page for the next frame, which took longer than drawing. */
static void keep_memory_for_frames(void) {
#ifdef __GLIBC__
  mallopt(M_MMAP_THRESHOLD, 32 << 20);
  mallopt(M_TRIM_THRESHOLD, 128 << 20);
#endif
}

int main(int argc, char **argv) {
  keep_memory_for_frames();
  setlocale(LC_ALL, "");
  ox_text_open(ox_text_folder());
  OxApplication *application = ox_application_new(G_APPLICATION_DEFAULT_FLAGS);
  int status = g_application_run(G_APPLICATION(application), argc, argv);
  g_object_unref(application);
  return status;
}
