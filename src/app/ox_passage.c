/* How a view goes from where it is to where it belongs. */
#include "ox_passage.h"

#include <math.h>

#include "oxbow/angle.h"

#define PASSAGE_US 300000.0

gboolean ox_passage_may_move(GtkWidget *widget) {
  gboolean animate = FALSE;
  g_object_get(gtk_widget_get_settings(widget), "gtk-enable-animations", &animate, NULL);
  return animate && gtk_widget_get_mapped(widget);
}

double ox_passage_share(gint64 begun_us, gint64 now_us) {
  double share = CLAMP((double)(now_us - begun_us) / PASSAGE_US, 0.0, 1.0);
  return share * share * (3.0 - 2.0 * share);
}

double ox_passage_between(double a, double b, double share) { return a + (b - a) * share; }

static ox_vec turned(ox_vec v, double deg) {
  double s, c;
  ox_sincos_deg(deg, &s, &c);
  return (ox_vec){v.x * c - v.y * s, v.x * s + v.y * c};
}

ox_viewport ox_passage_viewport(const ox_viewport *a, const ox_viewport *b, double share) {
  ox_viewport v = *b;
  ox_vec from = turned(a->centre_nm, a->up_deg), to = turned(b->centre_nm, b->up_deg);
  ox_vec seen = {ox_passage_between(from.x, to.x, share), ox_passage_between(from.y, to.y, share)};
  v.up_deg = a->up_deg + ox_turn_between_deg(a->up_deg, b->up_deg) * share;
  v.dev_per_nm = a->dev_per_nm * pow(b->dev_per_nm / a->dev_per_nm, share);
  v.centre_nm = turned(seen, -v.up_deg);
  return v;
}

gboolean ox_passage_same_viewport(const ox_viewport *a, const ox_viewport *b) {
  ox_vec by = ox_vec_sub(a->centre_nm, b->centre_nm);
  return fabs(a->dev_per_nm - b->dev_per_nm) <= 1e-9 * a->dev_per_nm && a->up_deg == b->up_deg &&
         ox_vec_length(by) * a->dev_per_nm < 0.01;
}
