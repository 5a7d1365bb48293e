/* The yardstick of bench_start.sh: an empty GTK window that quits at its first frame. */
#include <gtk/gtk.h>

static void drawn_cb(GdkFrameClock *clock, GApplication *application) {
  g_application_quit(application);
}

static void activate_cb(GApplication *application, gpointer data) {
  GtkWidget *window = gtk_application_window_new(GTK_APPLICATION(application));
  gtk_window_present(GTK_WINDOW(window));
  g_signal_connect(gtk_widget_get_frame_clock(window), "after-paint", G_CALLBACK(drawn_cb),
                   application);
}

int main(int argc, char **argv) {
  GtkApplication *application =
      gtk_application_new("io.github.oxbow_plotter.Empty", G_APPLICATION_NON_UNIQUE);
  g_signal_connect(application, "activate", G_CALLBACK(activate_cb), NULL);
  int status = g_application_run(G_APPLICATION(application), argc, argv);
  g_object_unref(application);
  return status;
}
