/* The picture in every form a program may ask for; all are made at once, for the lesson may be
 * another one when somebody asks. */
#include "ox_copy_picture.h"

GdkContentProvider *ox_copy_picture(const ox_export_job *job, ox_palette_id palette,
                                    char **error) {
  ox_share_choice choice = ox_share_choice_default();
  choice.palette = palette;
  GError *fault = NULL;
  GBytes *png = ox_export_bytes(job, &choice, error);
  if (!png) return NULL;
  choice.format = OX_SHARE_SVG;
  GBytes *svg = ox_export_bytes(job, &choice, error);
  GdkTexture *texture = svg ? gdk_texture_new_from_bytes(png, &fault) : NULL;
  GdkContentProvider *all = NULL;
  if (texture) {
    /* The union takes the references. The first that has a form is asked for it: the PNG with its
     * words and its resolution goes before the one that GDK would make of the texture. */
    GdkContentProvider *forms[] = {
        gdk_content_provider_new_for_bytes("image/png", png),
        gdk_content_provider_new_for_bytes("image/svg+xml", svg),
        gdk_content_provider_new_typed(GDK_TYPE_TEXTURE, texture),
    };
    all = gdk_content_provider_new_union(forms, G_N_ELEMENTS(forms));
    g_object_unref(texture);
  } else if (svg) {
    *error = g_strdup(fault->message);
    g_error_free(fault);
  }
  g_clear_pointer(&svg, g_bytes_unref);
  g_bytes_unref(png);
  return all;
}
