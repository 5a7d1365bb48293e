/* The flight's clock: time = start + elapsed × speed, from an anchor that moves with every seek,
 * change of speed and start. */
#include "ox_player.h"

#include <math.h>

static const guint speeds[] = {1, 2, 6, 10, 20};
#define SPEED_COUNT (sizeof speeds / sizeof *speeds)
#define US_PER_S 1e6

struct _OxPlayer {
  GObject parent_instance;
  double begin_s, end_s;
  double time_s;
  gboolean playing;
  guint speed;
  /* Where and when the present stretch of playing began. No time yet: it begins with the next
   * tick, for only the frame clock knows what time it is. */
  double anchor_s;
  gint64 anchor_us;
  gboolean anchored;
  GArray *stops; /* of double, ascending */
};

enum { PROP_0, PROP_PLAYING, PROP_SPEED, PROP_COUNT };
static GParamSpec *properties[PROP_COUNT];
static guint moved_signal, stopped_signal;

G_DEFINE_FINAL_TYPE(OxPlayer, ox_player, G_TYPE_OBJECT)

static void get_property(GObject *object, guint id, GValue *value, GParamSpec *pspec) {
  OxPlayer *self = OX_PLAYER(object);
  switch (id) {
  case PROP_PLAYING:
    g_value_set_boolean(value, self->playing);
    break;
  case PROP_SPEED:
    g_value_set_uint(value, self->speed);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
  }
}

static void set_property(GObject *object, guint id, const GValue *value, GParamSpec *pspec) {
  OxPlayer *self = OX_PLAYER(object);
  switch (id) {
  case PROP_PLAYING:
    ox_player_set_playing(self, g_value_get_boolean(value));
    break;
  case PROP_SPEED:
    ox_player_set_speed(self, g_value_get_uint(value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID(object, id, pspec);
  }
}

static void finalize(GObject *object) {
  g_array_unref(OX_PLAYER(object)->stops);
  G_OBJECT_CLASS(ox_player_parent_class)->finalize(object);
}

static void ox_player_class_init(OxPlayerClass *class) {
  GObjectClass *object_class = G_OBJECT_CLASS(class);
  object_class->get_property = get_property;
  object_class->set_property = set_property;
  object_class->finalize = finalize;
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  properties[PROP_PLAYING] = g_param_spec_boolean("playing", NULL, NULL, FALSE, flags);
  properties[PROP_SPEED] = g_param_spec_uint("speed", NULL, NULL, 1, 20, 6, flags);
  g_object_class_install_properties(object_class, PROP_COUNT, properties);
  moved_signal = g_signal_new("moved", OX_TYPE_PLAYER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 0);
  stopped_signal = g_signal_new("stopped", OX_TYPE_PLAYER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_DOUBLE);
}

static void ox_player_init(OxPlayer *self) {
  self->speed = 6;
  self->stops = g_array_new(FALSE, FALSE, sizeof(double));
}

OxPlayer *ox_player_new(void) { return g_object_new(OX_TYPE_PLAYER, NULL); }

static double clamp_time(OxPlayer *self, double t_s) {
  if (!isfinite(t_s)) return self->begin_s;
  return CLAMP(t_s, self->begin_s, self->end_s);
}

static void move_to(OxPlayer *self, double t_s) {
  if (t_s == self->time_s) return;
  self->time_s = t_s;
  g_signal_emit(self, moved_signal, 0);
}

static void anchor_here(OxPlayer *self) {
  self->anchor_s = self->time_s;
  self->anchored = FALSE;
}

void ox_player_set_range(OxPlayer *self, double begin_s, double end_s) {
  g_return_if_fail(isfinite(begin_s) && isfinite(end_s) && begin_s <= end_s);
  self->begin_s = begin_s;
  self->end_s = end_s;
  double kept_s = clamp_time(self, self->time_s);
  if (kept_s != self->time_s) {
    move_to(self, kept_s);
    anchor_here(self);
  }
  if (begin_s == end_s) ox_player_set_playing(self, FALSE);
}

double ox_player_begin_s(OxPlayer *self) { return self->begin_s; }

double ox_player_end_s(OxPlayer *self) { return self->end_s; }

double ox_player_time_s(OxPlayer *self) { return self->time_s; }

void ox_player_seek(OxPlayer *self, double t_s) {
  move_to(self, clamp_time(self, t_s));
  anchor_here(self);
}

gboolean ox_player_playing(OxPlayer *self) { return self->playing; }

void ox_player_set_playing(OxPlayer *self, gboolean playing) {
  if (self->begin_s == self->end_s) playing = FALSE;
  if (self->playing == playing) return;
  if (playing && self->time_s >= self->end_s) move_to(self, self->begin_s);
  self->playing = playing;
  anchor_here(self);
  g_object_notify_by_pspec(G_OBJECT(self), properties[PROP_PLAYING]);
}

guint ox_player_speed(OxPlayer *self) { return self->speed; }

const guint *ox_player_speeds(size_t *count) {
  *count = SPEED_COUNT;
  return speeds;
}

static size_t speed_index(guint speed) {
  size_t i = 0;
  while (i + 1 < SPEED_COUNT && speeds[i + 1] <= speed) i++;
  return i;
}

void ox_player_set_speed(OxPlayer *self, guint speed) {
  speed = speeds[speed_index(speed)];
  if (speed == self->speed) return;
  self->speed = speed;
  anchor_here(self);
  g_object_notify_by_pspec(G_OBJECT(self), properties[PROP_SPEED]);
}

void ox_player_change_speed(OxPlayer *self, int step) {
  size_t i = speed_index(self->speed);
  if (step > 0 && i + 1 < SPEED_COUNT) ox_player_set_speed(self, speeds[i + 1]);
  if (step < 0 && i > 0) ox_player_set_speed(self, speeds[i - 1]);
}

static int by_time(gconstpointer a, gconstpointer b) {
  double left_s = *(const double *)a, right_s = *(const double *)b;
  return (left_s > right_s) - (left_s < right_s);
}

void ox_player_set_stops(OxPlayer *self, const double *t_s, size_t count) {
  g_array_set_size(self->stops, 0);
  for (size_t i = 0; i < count; i++)
    if (isfinite(t_s[i])) g_array_append_val(self->stops, t_s[i]);
  g_array_sort(self->stops, by_time);
}

/* The first stop after where it is and not after t_s. */
static gboolean stop_on_the_way(OxPlayer *self, double t_s, double *stop_s) {
  for (guint i = 0; i < self->stops->len; i++) {
    *stop_s = g_array_index(self->stops, double, i);
    if (*stop_s > self->time_s) return *stop_s <= t_s;
  }
  return FALSE;
}

void ox_player_tick(OxPlayer *self, gint64 frame_us) {
  if (!self->playing) return;
  if (!self->anchored) {
    self->anchor_us = frame_us;
    self->anchored = TRUE;
    return;
  }
  double elapsed_s = (double)(frame_us - self->anchor_us) / US_PER_S;
  double t_s = self->anchor_s + elapsed_s * self->speed, stop_s;
  if (stop_on_the_way(self, fmin(t_s, self->end_s), &stop_s)) {
    move_to(self, stop_s);
    ox_player_set_playing(self, FALSE);
    g_signal_emit(self, stopped_signal, 0, stop_s);
    return;
  }
  if (t_s >= self->end_s) {
    move_to(self, self->end_s);
    ox_player_set_playing(self, FALSE);
    return;
  }
  move_to(self, clamp_time(self, t_s));
}
