/* The flight's clock: where on the flight the aircraft is shown, and playing it.
 *
 * A GObject without GTK. While it plays, the time is start + elapsed × speed, worked out afresh
 * from the frame clock at every tick: nothing is added up, so nothing drifts and a slow machine
 * shows fewer pictures of the same flight. Whoever has a frame clock calls ox_player_tick.
 *
 * Instants can be set at which it stops by itself: it halts at the very instant, whatever the frame
 * rate and the speed, and plays on from there.
 *
 * Signal "moved": the time changed. Signal "stopped" (double t_s): it halted at an instant that was
 * set. Properties "playing" and "speed" notify on a real change. */
#ifndef OX_PLAYER_H
#define OX_PLAYER_H

#include <glib-object.h>

G_BEGIN_DECLS

#define OX_TYPE_PLAYER (ox_player_get_type())
G_DECLARE_FINAL_TYPE(OxPlayer, ox_player, OX, PLAYER, GObject)

OxPlayer *ox_player_new(void);

/* The flight's first and last instant (s, begin <= end). The time is kept where it still lies
 * within; playing goes on. */
void ox_player_set_range(OxPlayer *self, double begin_s, double end_s);
double ox_player_begin_s(OxPlayer *self);
double ox_player_end_s(OxPlayer *self);

double ox_player_time_s(OxPlayer *self);
/* Clamped to the range. Playing goes on from there. */
void ox_player_seek(OxPlayer *self, double t_s);

gboolean ox_player_playing(OxPlayer *self);
/* Starting at the end starts over from the beginning; a flight without length never plays. */
void ox_player_set_playing(OxPlayer *self, gboolean playing);

/* Seconds of flight a second: one of 1, 2, 6, 10, 20. */
guint ox_player_speed(OxPlayer *self);
const guint *ox_player_speeds(size_t *count);
/* Other speeds are taken to the nearest slower one offered. */
void ox_player_set_speed(OxPlayer *self, guint speed);
/* The next faster (step > 0) or slower (step < 0) speed, if there is one. */
void ox_player_change_speed(OxPlayer *self, int step);

/* The instants (s) at which playing stops, copied; they need not be in order, and those that are
 * not finite are left out. Replaces what was set before; count 0: none. */
void ox_player_set_stops(OxPlayer *self, const double *t_s, size_t count);

/* The frame clock's time (µs). Stops by itself at the end. Does nothing while paused. */
void ox_player_tick(OxPlayer *self, gint64 frame_us);

G_END_DECLS

#endif
