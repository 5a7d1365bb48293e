/* The picture as something that is dragged. */
#include "ox_drag_picture.h"

#include <glib/gstdio.h>

#include "ox_copy_picture.h"

#define KEPT_S 3600 /* the other program has read it by then */

char *ox_drag_picture_folder(void) {
  return g_build_filename(g_get_user_cache_dir(), "oxbow", "pictures", NULL);
}

static void remove_old(const char *folder) {
  GDir *dir = g_dir_open(folder, 0, NULL);
  const char *name;
  if (!dir) return;
  gint64 now_s = g_get_real_time() / G_USEC_PER_SEC;
  while ((name = g_dir_read_name(dir))) {
    GStatBuf facts;
    char *path = g_build_filename(folder, name, NULL);
    if (g_str_has_suffix(name, ".png") && g_stat(path, &facts) == 0 &&
        now_s - (gint64)facts.st_mtime > KEPT_S)
      g_unlink(path);
    g_free(path);
  }
  g_dir_close(dir);
}

/* NULL: it could not be written. */
static GdkContentProvider *file_of(const ox_export_job *job, ox_palette_id palette,
                                   const char *folder, const char *name) {
  ox_share_choice choice = ox_share_choice_default();
  GdkContentProvider *content = NULL;
  char *error = NULL, *path = g_build_filename(folder, name, NULL);
  choice.palette = palette;
  g_mkdir_with_parents(folder, 0700);
  remove_old(folder);
  if (ox_export_file(job, &choice, path, &error) != OX_ERROR) {
    GFile *file = g_file_new_for_path(path);
    GdkFileList *list = gdk_file_list_new_from_array(&file, 1);
    content = gdk_content_provider_new_typed(GDK_TYPE_FILE_LIST, list);
    g_boxed_free(GDK_TYPE_FILE_LIST, list);
    g_object_unref(file);
  }
  g_free(error);
  g_free(path);
  return content;
}

GdkContentProvider *ox_drag_picture(const ox_export_job *job, ox_palette_id palette,
                                    const char *folder, const char *name, char **error) {
  GdkContentProvider *picture = ox_copy_picture(job, palette, error);
  GdkContentProvider *file = picture ? file_of(job, palette, folder, name) : NULL;
  if (!file) return picture;
  /* The union takes both. Programs that take files get a name with it. */
  GdkContentProvider *forms[] = {file, picture};
  return gdk_content_provider_new_union(forms, G_N_ELEMENTS(forms));
}
