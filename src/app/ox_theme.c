/* GTK 4.8 has no property for high contrast: the desktop asks for it by a theme's name. */
#include "ox_theme.h"

#include <string.h>

static gboolean is_of_high_contrast(const char *theme) {
  return strstr(theme, "HighContrast") || g_str_has_suffix(theme, "-hc") ||
         strstr(theme, ":hc") || strstr(theme, "-hc-");
}

gboolean ox_theme_has_high_contrast(GtkWidget *widget) {
  const char *wanted = g_getenv("GTK_THEME"); /* it goes before the setting, as in GTK */
  if (wanted && *wanted) return is_of_high_contrast(wanted);
  char *theme = NULL;
  g_object_get(gtk_widget_get_settings(widget), "gtk-theme-name", &theme, NULL);
  gboolean high = theme && is_of_high_contrast(theme);
  g_free(theme);
  return high;
}

/* Light text means a dark window, whichever theme or setting made it so. */
ox_palette_id ox_theme_palette(GtkWidget *widget) {
  GdkRGBA text;
  gtk_style_context_get_color(gtk_widget_get_style_context(widget), &text);
  gboolean dark = text.red + text.green + text.blue > 1.5F;
  if (ox_theme_has_high_contrast(widget))
    return dark ? OX_PALETTE_CONTRAST_DARK : OX_PALETTE_CONTRAST;
  return dark ? OX_PALETTE_DARK : OX_PALETTE_LIGHT;
}
