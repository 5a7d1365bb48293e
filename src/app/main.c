/* oxbow [LESSON]: the window. Everything is in the library, so that tests can reach it. */
#include "ox_application.h"

#include <locale.h>

#include "oxbow/text.h"

int main(int argc, char **argv) {
  setlocale(LC_ALL, "");
  ox_text_open(ox_text_folder());
  OxApplication *application = ox_application_new(G_APPLICATION_DEFAULT_FLAGS);
  int status = g_application_run(G_APPLICATION(application), argc, argv);
  g_object_unref(application);
  return status;
}
