/* Reasons to hide a widget, kept with it. */
#include "ox_veil.h"

static GQuark reasons_quark(void) { return g_quark_from_static_string("ox-veil"); }

/* The reasons are kept one higher: 0 says that nobody has asked yet. */
static guint reasons_of(GtkWidget *widget) {
  guint kept = GPOINTER_TO_UINT(g_object_get_qdata(G_OBJECT(widget), reasons_quark()));
  if (kept > 0) return kept - 1;
  return gtk_widget_get_visible(widget) ? 0 : (guint)OX_VEIL_CLOSED;
}

void ox_veil_set(GtkWidget *widget, ox_veil reason, gboolean hidden) {
  guint reasons = reasons_of(widget);
  reasons = hidden ? reasons | (guint)reason : reasons & ~(guint)reason;
  g_object_set_qdata(G_OBJECT(widget), reasons_quark(), GUINT_TO_POINTER(reasons + 1));
  gtk_widget_set_visible(widget, reasons == 0);
}
