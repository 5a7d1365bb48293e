/* Hours of playing without growth: the frame clock's times are made here, the player moves and the
 * board's picture is drawn each time, as at 60 Hz. A few minutes in the tests; the long run is
 *   test_app_soak 7200
 * which prints the resident memory at a tenth of the way and at the end. */
#include "app_test.h"

#include <unistd.h>

#define HZ 60
#define SHORT_S 120
#define GROWTH_KB 1024 /* noise of the allocator; a leak of 16 bytes a frame would be 1.7 MB in two
                          hours, of a layout a frame gigabytes */

static int asked_s = SHORT_S;

static long resident_kb(void) {
  long pages = 0;
  FILE *statm = fopen("/proc/self/statm", "r");
  if (!statm) return -1;
  if (fscanf(statm, "%*s %ld", &pages) != 1) pages = -1;
  fclose(statm);
  return pages < 0 ? -1 : pages * (sysconf(_SC_PAGESIZE) / 1024);
}

static void playing_for_long_needs_no_more_memory(void **state) {
  static ox_flight flight;
  OxPlayer *player = ox_player_new();
  ox_case c = ox_case_default();
  c.wind_count = 1;
  c.wind[0] = (ox_wind_row){0, 300, 20, OX_NORTH_TRUE};
  assert_true(ox_flight_solve(&c, &flight) != OX_ERROR);
  ox_scene scene = {.c = &c, .flight = &flight, .text_scale = 1, .layers = OX_LAYER_ALL};
  ox_picture *picture = ox_picture_new(&scene, 640, 480);
  cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 640, 480);
  cairo_t *cr = cairo_create(surface);
  double stop_s = 60;
  ox_player_set_range(player, ox_flight_begin_s(&flight), ox_flight_end_s(&flight));
  ox_player_set_stops(player, &stop_s, 1);
  long frames = (long)asked_s * HZ, early_kb = 0;
  guint starts = 0;
  ox_picture_draw_still(picture, cr);
  for (long i = 0; i < frames; i++) {
    if (!ox_player_playing(player)) {
      ox_player_set_playing(player, TRUE); /* after the stop, and over again after the end */
      starts++;
    }
    ox_player_tick(player, i * G_USEC_PER_SEC / HZ);
    ox_picture_draw_moving(picture, cr, ox_player_time_s(player));
    if (i == frames / 10) early_kb = resident_kb();
  }
  long late_kb = resident_kb();
  print_message("# %d s at %d Hz, %u starts: %ld kB at a tenth, %ld kB at the end\n", asked_s, HZ,
                starts, early_kb, late_kb);
  assert_true(early_kb > 0 && starts > 1);
#ifdef __SANITIZE_ADDRESS__
  /* It holds freed memory back, so that the resident memory says nothing; leaks it finds itself. */
  print_message("# the growth is not checked: the sanitizer holds freed memory back\n");
#else
  assert_true(late_kb - early_kb <= GROWTH_KB);
#endif
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
  ox_picture_free(picture);
  g_object_unref(player);
}

int main(int argc, char **argv) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(playing_for_long_needs_no_more_memory),
  };
  if (argc > 1) asked_s = MAX(SHORT_S, atoi(argv[1]));
  return cmocka_run_group_tests_name("soak", tests, NULL, NULL);
}
