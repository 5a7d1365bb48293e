/* An image shown in tiles: of the next image only the tiles that differ are handed to the display
 * anew, so that a frame costs what changes in it. */
#ifndef OX_TILES_H
#define OX_TILES_H

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct ox_tiles ox_tiles;

ox_tiles *ox_tiles_new(void);
void ox_tiles_free(ox_tiles *tiles);

/* What a tile is handed over as: a renderer that draws with OpenGL takes textures as they are,
 * while the one that draws with cairo (GTK 4.8) converts every pixel of a texture by way of
 * floats. */
typedef enum { OX_TILES_TEXTURES, OX_TILES_PICTURES } ox_tiles_kind;
ox_tiles_kind ox_tiles_kind_for(GtkWidget *widget);

/* Takes over what is in the image (CAIRO_FORMAT_ARGB32, opaque), shown over `bounds`. */
void ox_tiles_update(ox_tiles *tiles, cairo_surface_t *image, const graphene_rect_t *bounds,
                     ox_tiles_kind kind);
void ox_tiles_append(ox_tiles *tiles, GtkSnapshot *snapshot);

/* Of how many tiles the last image differed from the one before. */
guint ox_tiles_changed(const ox_tiles *tiles);

G_END_DECLS

#endif
