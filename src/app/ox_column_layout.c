/* One child, as narrow as it can be. */
#include "ox_column_layout.h"

struct _OxColumnLayout {
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE(OxColumnLayout, ox_column_layout, GTK_TYPE_LAYOUT_MANAGER)

static GtkSizeRequestMode request_mode(GtkLayoutManager *manager, GtkWidget *widget) {
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void measure(GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                    int for_size, int *minimum, int *natural, int *minimum_baseline,
                    int *natural_baseline) {
  GtkWidget *child = gtk_widget_get_first_child(widget);
  if (!child) return;
  gtk_widget_measure(child, orientation, for_size, minimum, natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL) *natural = *minimum;
}

static void allocate(GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                     int baseline) {
  GtkWidget *child = gtk_widget_get_first_child(widget);
  if (child) gtk_widget_allocate(child, width, height, baseline, NULL);
}

static void ox_column_layout_class_init(OxColumnLayoutClass *class) {
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS(class);
  layout_class->get_request_mode = request_mode;
  layout_class->measure = measure;
  layout_class->allocate = allocate;
}

static void ox_column_layout_init(OxColumnLayout *self) {}
