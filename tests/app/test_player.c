/* The player and its stops, with frame times made here: no clock is read, so the answer is the same
 * on every machine. */
#include "ox_test.h"

#include "ox_player.h"

#define US_PER_S 1e6

static guint moves, stops;
static double stopped_s;

static void moved_cb(OxPlayer *player, gpointer data) { moves++; }

static void stopped_cb(OxPlayer *player, double t_s, gpointer data) {
  stops++;
  stopped_s = t_s;
}

static OxPlayer *player_over(double begin_s, double end_s) {
  OxPlayer *player = ox_player_new();
  ox_player_set_range(player, begin_s, end_s);
  ox_player_seek(player, begin_s);
  g_signal_connect(player, "moved", G_CALLBACK(moved_cb), NULL);
  g_signal_connect(player, "stopped", G_CALLBACK(stopped_cb), NULL);
  moves = stops = 0;
  return player;
}

/* Frames at a rate until it halts; the number of frames, at most `most`. */
static int play_at(OxPlayer *player, double hz, gint64 *now_us, int most) {
  int frames = 0;
  ox_player_set_playing(player, TRUE);
  while (ox_player_playing(player) && frames < most) {
    *now_us += (gint64)llround(US_PER_S / hz);
    ox_player_tick(player, *now_us);
    frames++;
  }
  return frames;
}

static void it_stops_at_the_very_instant_at_every_frame_rate_and_speed(void **state) {
  static const double rates_hz[] = {15, 60, 144};
  static const double at_s[] = {-0.001, 0.0, 61.0987654321, 61.0987654322, 127.5};
  size_t speed_count;
  const guint *speeds = ox_player_speeds(&speed_count);
  for (size_t r = 0; r < G_N_ELEMENTS(rates_hz); r++)
    for (size_t k = 0; k < speed_count; k++) {
      OxPlayer *player = player_over(-20, 200);
      gint64 now_us = 1000000;
      ox_player_set_speed(player, speeds[k]);
      ox_player_set_stops(player, at_s, G_N_ELEMENTS(at_s));
      for (size_t i = 0; i < G_N_ELEMENTS(at_s); i++) {
        assert_true(play_at(player, rates_hz[r], &now_us, 1000000) < 1000000);
        assert_close(ox_player_time_s(player), at_s[i], 0, "the instant");
        assert_close(stopped_s, at_s[i], 0, "what was said");
        assert_int_equal(stops, i + 1);
      }
      play_at(player, rates_hz[r], &now_us, 1000000);
      assert_close(ox_player_time_s(player), 200, 0, "the end");
      assert_int_equal(stops, G_N_ELEMENTS(at_s)); /* the end is no stop */
      g_object_unref(player);
    }
}

static void stops_in_any_order_and_not_finite_ones_are_sorted_out(void **state) {
  static const double at_s[] = {50, (double)NAN, 10, (double)INFINITY, 30, -5};
  static const double expected_s[] = {10, 30, 50};
  OxPlayer *player = player_over(0, 60);
  gint64 now_us = 0;
  ox_player_set_stops(player, at_s, G_N_ELEMENTS(at_s));
  for (size_t i = 0; i < G_N_ELEMENTS(expected_s); i++) {
    play_at(player, 60, &now_us, 100000);
    assert_close(ox_player_time_s(player), expected_s[i], 0, "stop");
  }
  g_object_unref(player);
}

static void seeking_over_a_stop_does_not_stop_and_none_left_plays_to_the_end(void **state) {
  const double at_s[] = {10, 20};
  OxPlayer *player = player_over(0, 60);
  gint64 now_us = 0;
  ox_player_set_stops(player, at_s, 2);
  ox_player_seek(player, 15);
  assert_int_equal(stops, 0);
  play_at(player, 60, &now_us, 100000);
  assert_close(ox_player_time_s(player), 20, 0, "the second");
  ox_player_set_stops(player, NULL, 0);
  ox_player_seek(player, 0);
  play_at(player, 60, &now_us, 100000);
  assert_close(ox_player_time_s(player), 60, 0, "the end");
  assert_int_equal(stops, 1);
  g_object_unref(player);
}

static void a_stop_at_the_end_is_told_once(void **state) {
  const double at_s[] = {60};
  OxPlayer *player = player_over(0, 60);
  gint64 now_us = 0;
  ox_player_set_stops(player, at_s, 1);
  play_at(player, 15, &now_us, 100000);
  assert_close(ox_player_time_s(player), 60, 0, "the end");
  assert_int_equal(stops, 1);
  g_object_unref(player);
}

static void frames_of_the_same_moment_move_nothing(void **state) {
  OxPlayer *player = player_over(0, 60);
  ox_player_set_playing(player, TRUE);
  ox_player_tick(player, 1000);
  ox_player_tick(player, 2000);
  guint before = moves;
  assert_int_equal(before, 1);
  ox_player_tick(player, 2000);
  assert_int_equal(moves, before);
  g_object_unref(player);
}

int main(void) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(it_stops_at_the_very_instant_at_every_frame_rate_and_speed),
      cmocka_unit_test(stops_in_any_order_and_not_finite_ones_are_sorted_out),
      cmocka_unit_test(seeking_over_a_stop_does_not_stop_and_none_left_plays_to_the_end),
      cmocka_unit_test(a_stop_at_the_end_is_told_once),
      cmocka_unit_test(frames_of_the_same_moment_move_nothing),
  };
  return cmocka_run_group_tests_name("player", tests, NULL, NULL);
}
