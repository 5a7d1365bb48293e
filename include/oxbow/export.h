/* Pictures and sheets out, through a byte sink; the caller writes the bytes somewhere. */
#ifndef OXBOW_EXPORT_H
#define OXBOW_EXPORT_H

#include <stddef.h>

#include "oxbow/picture.h"
#include "oxbow/status.h"

typedef enum {
  OX_EXPORT_PNG, OX_EXPORT_SVG, OX_EXPORT_PDF,
  OX_EXPORT_APNG, /* the whole flight as a moving picture */
  OX_EXPORT_GIF   /* the same in at most 255 colours */
} ox_export_format;

/* Takes `length` bytes; anything but OX_OK stops the export, which then returns OX_ERROR. */
typedef ox_status (*ox_export_sink)(void *context, const void *bytes, size_t length);

typedef struct {
  ox_export_format format;
  double width, height; /* PNG: pixels (1..16384); SVG, PDF: points (1..14400) */
  double dpi;           /* PNG: the resolution that the file names; 0: none */
  bool transparent;     /* PNG: no ground under the picture */
  double fps;           /* moving picture: frames a second, 1..60; GIF: 1..50 */
  double speed;         /* moving picture: times as fast as flown, 0.1..1000 */
  double t_s;           /* where the aircraft is drawn; NAN: none */
  const double *t_s_of; /* one a scene instead of t_s, or NULL */
  /* Moving picture: asked before each frame with the share that is done (0..1); false ends it with
   * OX_ERROR. NULL: it is not asked. */
  bool (*go_on)(void *data, double share);
  void *go_on_data;
  bool moments;         /* the key moments of entry and first circuit instead of the picture */
} ox_export_options;

#define OX_FRAMES_MOST 6000  /* of a moving picture */
#define OX_GIF_FPS_MOST 50.0 /* a GIF counts hundredths, and viewers slow down what is below two */

/* How many frames the moving picture of a flight has. Needs fps and speed. */
size_t ox_export_frame_count(const ox_flight *flight, const ox_export_options *options);
/* The instant (s) that a frame shows, from 0; the end of the flight for the last and beyond. */
double ox_export_frame_s(const ox_flight *flight, const ox_export_options *options, size_t index);

/* One scene for PNG and SVG (the first is taken), a sheet a scene for PDF. The caution is drawn
 * whatever the scenes' layers say. Same input, same bytes. On OX_ERROR error (may be NULL) points
 * to a static sentence. */
ox_status ox_export(const ox_scene *scenes, size_t count, const ox_export_options *options,
                    ox_export_sink sink, void *context, const char **error);

#endif
