/* oxbow [LESSON]: the window. Everything is in the library, so that tests can reach it. */
#include "ox_application.h"

int main(int argc, char **argv) {
  OxApplication *application = ox_application_new(G_APPLICATION_DEFAULT_FLAGS);
  int status = g_application_run(G_APPLICATION(application), argc, argv);
  g_object_unref(application);
  return status;
}
