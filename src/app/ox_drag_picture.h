/* The picture for a program that it is dragged to: in every form that the clipboard has, and as a
 * file with a name that says what it shows. */
#ifndef OX_DRAG_PICTURE_H
#define OX_DRAG_PICTURE_H

#include <gdk/gdk.h>

#include "ox_export_file.h"

G_BEGIN_DECLS

/* Where the files are: $XDG_CACHE_HOME/oxbow/pictures. Freed with g_free. */
char *ox_drag_picture_folder(void);

/* The shown case as PNG, SVG and texture, and as name.png in the folder, which is made if need be;
 * files that were dragged more than an hour ago are removed from it. Where no file can be written
 * the picture comes without one. NULL with *error (freed with g_free). */
GdkContentProvider *ox_drag_picture(const ox_export_job *job, ox_palette_id palette,
                                    const char *folder, const char *name, char **error);

G_END_DECLS

#endif
