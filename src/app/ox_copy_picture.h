/* The picture for other programs through the clipboard. */
#ifndef OX_COPY_PICTURE_H
#define OX_COPY_PICTURE_H

#include <gdk/gdk.h>

#include "ox_export_file.h"

G_BEGIN_DECLS

/* The shown case in the colours of a palette, on opaque ground, for programs that take pixels (PNG,
 * and whatever GDK makes of a texture) and for those that take drawings (SVG); with pen marks and
 * the caution. NULL with *error (freed with g_free). */
GdkContentProvider *ox_copy_picture(const ox_export_job *job, ox_palette_id palette,
                                    char **error);

G_END_DECLS

#endif
