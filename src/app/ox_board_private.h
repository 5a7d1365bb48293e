/* What the files of the board share. */
#ifndef OX_BOARD_PRIVATE_H
#define OX_BOARD_PRIVATE_H

#include "ox_board.h"
#include "ox_document_places.h"
#include "ox_grip.h"
#include "ox_readout.h"
#include "ox_theme.h"
#include "ox_tiles.h"
#include "oxbow/canvas.h"
#include "oxbow/placed.h"

typedef enum {
  OX_BOARD_AT_REST, OX_BOARD_DRAGS, OX_BOARD_MOVES_POINT, OX_BOARD_PANS
} ox_board_doing;

/* A drag or a pan under way. Everything is worked out from how it began, so that the way to where
 * the pointer is does not matter. */
typedef struct {
  ox_board_doing doing;
  ox_handle handle;
  ox_case base;             /* the case when it began */
  ox_flight *flight;        /* its flight; owned, allocated with the first drag */
  ox_flight *scratch;       /* owned, likewise */
  ox_handle_reach reach;
  ox_viewport viewport;
  ox_view view;             /* of a pan: the view when it began */
  ox_vec pressed, pointer;  /* device */
  ox_vec offset;            /* from the pointer to the handle, device */
  gboolean moved;           /* beyond the slop: a press alone changes nothing */
  gboolean editing;         /* the change being told about is our own */
  gboolean in_step;         /* a step of the document was begun */
} ox_board_drag;

/* The lesson's points while they can be moved (ox_board_points.c). */
typedef struct {
  gboolean shown;
  GPtrArray *grips;         /* borrowed widgets, owned array; by the marks of the picture */
  char dragged[OX_POINT_NAME_BYTES], hovered[OX_POINT_NAME_BYTES], selected[OX_POINT_NAME_BYTES];
  ox_points *base;          /* when the drag began; owned */
  ox_points *focus;         /* when the selected grip took the focus; owned */
  ox_latlon origin;         /* of the picture when the drag began */
  char refusal[OX_REMARK_BYTES]; /* why it stays where it is, or what is to be said */
} ox_board_points;

struct _OxBoard {
  GtkWidget parent_instance;

  /* children */
  GtkWidget *still, *moving, *grips[OX_HANDLE_COUNT], *readout;
  int readout_corner;      /* of its anchor */
  ox_handle readout_told;

  /* owned */
  OxDocument *document;
  OxPlayer *player;
  OxOverlays *overlays;
  OxPrediction *prediction;
  ox_placed *placed;   /* what the picture points to */
  ox_picture *picture; /* NULL: to be laid out on the way to the next frame */
  ox_canvas *canvas;   /* the picture's still half is drawn on it, */
  ox_tiles *tiles;     /* and shown by these */
  ox_typesetter *typesetter; /* words set once stay set while a case is dragged */

  gboolean projector;
  ox_palette_id palette;
  double text_scale;
  double hand_scale; /* of grips and of what a hand must hit: that of the type */
  double label_px; /* 0: by the board's size */
  ox_board_counts counts;
  guint placing;      /* tick callback that places the grips; 0: none */
  guint looks_source; /* waits to tell that the board has another size; 0: none */

  /* how it is looked at (ox_board_view.c) */
  ox_view view;
  ox_held held;        /* the world stays there while a handle is dragged, and settles after it; */
  ox_layout *held_layout; /* the furniture does not settle; owned */
  gboolean is_held;
  ox_viewport settles_from;
  gint64 settle_us;    /* when it began to settle; -1: with the next frame */
  guint settling;      /* tick callback; 0: none */
  gboolean wind_words_above; /* as the wind came from when nothing was dragged */
  ox_fit shared_fit;   /* the scale of all boards that stand side by side */
  gboolean fit_shared;
  double air_from, air_to;
  gint64 passage_us;   /* when the passage to or from the air view began; -1: with the next frame */
  guint passage;       /* tick callback; 0: none */
  ox_view pinch_view;
  ox_viewport pinch_viewport;

  /* handles (ox_board_grips.c, ox_board_drag.c) */
  ox_board_drag drag;
  ox_handle hovered, selected; /* OX_HANDLE_COUNT: none */
  gboolean pointer_inside;
  gboolean showing; /* values are being shown in the grips: not a change by anybody */
  ox_board_points points;
  ox_case focus_case; /* the case when the selected grip took the focus: what Escape restores */
};

/* ox_board.c */
ox_picture *ox_board_current_picture(OxBoard *self);
/* The picture is laid out anew on the way to the next frame. */
void ox_board_forget_picture(OxBoard *self);
/* The same where it is nobody else's concern: the world only goes on settling. */
void ox_board_drop_picture(OxBoard *self);
ox_viewport ox_board_viewport(OxBoard *self);
void ox_board_describe(OxBoard *self);

/* ox_board_grips.c */
void ox_board_add_grips(OxBoard *self);
void ox_board_remove_grips(OxBoard *self);
/* On the way to a frame: puts grips and readout where they belong. */
void ox_board_place_grips(OxBoard *self, int width, int height);
/* The same on the way to the next frame. GTK's own way there would lay out the whole window, which
 * asks the display for the room there is and waits for the answer, at every step of a drag. */
void ox_board_queue_placing(OxBoard *self);
/* The values after a change. */
void ox_board_show_values(OxBoard *self);
/* How grips and readout look, after hovering, selecting, dragging. */
void ox_board_show_looks(OxBoard *self);
/* The Tab key: fix, course, arrival, wind, outbound end, turns. FALSE: beyond the last. */
gboolean ox_board_tab(OxBoard *self, gboolean forwards);
ox_handle_reach ox_board_reach(OxBoard *self);
/* For the painter: where grips will lie on a picture whose labels are being placed. */
size_t ox_board_keep_clear(void *board, const ox_picture *picture, ox_vec *points, size_t most);
/* A device place; outside the part of the board where it would be seen: FALSE. */
gboolean ox_board_handle_at(OxBoard *self, ox_handle handle, ox_vec *place_dev);
/* Where its grip is shown. */
ox_vec ox_board_shown_at(OxBoard *self, ox_handle handle, gboolean *seen);
/* OX_HANDLE_COUNT: none is near. */
ox_handle ox_board_hit(OxBoard *self, double x, double y);

/* ox_board_drag.c */
void ox_board_add_gestures(OxBoard *self);
/* Somebody else changed the case, or the board is going: what was dragged so far stays. */
void ox_board_finish_drag(OxBoard *self);
/* The board has another size: a drag goes on from where it is. */
void ox_board_renew_drag(OxBoard *self);

/* ox_board_points.c */
/* After a change: which points have a grip, and what is said of them. */
void ox_board_renew_points(OxBoard *self);
void ox_board_remove_points(OxBoard *self);
void ox_board_place_points(OxBoard *self, int width, int height);
void ox_board_show_points_looks(OxBoard *self);
/* The name of the point there, until points change; NULL: none is near. */
const char *ox_board_hit_point(OxBoard *self, double x, double y);
/* TRUE: the hovered point is another one now. */
gboolean ox_board_hover_point(OxBoard *self, double x, double y);
void ox_board_begin_point(OxBoard *self, const char *name, ox_vec at);
void ox_board_drag_point(OxBoard *self, gboolean fine);
/* Where the readout belongs; FALSE: it is not about a point. */
gboolean ox_board_point_anchor(OxBoard *self, ox_vec *out);

/* ox_board_view.c */
void ox_board_add_view_gestures(OxBoard *self);
/* Held, the world stays just where it is; let go, it goes to where it would be without, in 0.3 s
 * or at once where animations are off. */
void ox_board_hold_world(OxBoard *self, gboolean hold);
/* From where the world was to where it belongs now. */
void ox_board_settle_from(OxBoard *self, const ox_viewport *from);
/* The world stays held where it was on its way. */
void ox_board_stop_settling(OxBoard *self);
/* At once, if it is on its way there. */
void ox_board_end_settling(OxBoard *self);
void ox_board_end_passage(OxBoard *self);
void ox_board_set_view(OxBoard *self, ox_view view);

#endif
