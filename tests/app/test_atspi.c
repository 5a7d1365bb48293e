/* The program on a real accessibility bus, as a screen reader meets it: found by roles and names,
 * read, and worked by values and actions. Without a bus every test fails.
 *
 *   test_app_atspi OXBOW      (through tests/support/with_bus.sh, at-spi2-core installed) */
#include <gio/gio.h>
#include <signal.h>

#include "ox_test.h"

#define ACCESSIBLE "org.a11y.atspi.Accessible"
#define VALUE "org.a11y.atspi.Value"
#define ACTION "org.a11y.atspi.Action"
#define PROPERTIES "org.freedesktop.DBus.Properties"
#define WAIT_MS 20000
#define DEEPEST 40

typedef struct {
  char *bus, *path; /* NULL: not found */
} node;

static const char *program;
static GSubprocess *oxbow;
static GDBusConnection *bus;

/* ---- the bus ---------------------------------------------------------------------------- */

static GVariant *call(const node *n, const char *interface, const char *method, GVariant *args,
                      const char *reply) {
  GError *error = NULL;
  GVariant *got =
      g_dbus_connection_call_sync(bus, n->bus, n->path, interface, method, args,
                                  reply ? G_VARIANT_TYPE(reply) : NULL, G_DBUS_CALL_FLAGS_NONE,
                                  5000, NULL, &error);
  if (!got && !g_error_matches(error, G_DBUS_ERROR, G_DBUS_ERROR_UNKNOWN_METHOD))
    print_message("# %s.%s: %s\n", interface, method, error->message);
  g_clear_error(&error);
  return got;
}

/* A property, or NULL. */
static GVariant *property(const node *n, const char *interface, const char *name) {
  GVariant *reply = call(n, PROPERTIES, "Get", g_variant_new("(ss)", interface, name), "(v)");
  GVariant *value = NULL;
  if (!reply) return NULL;
  g_variant_get(reply, "(v)", &value);
  g_variant_unref(reply);
  return value;
}

static char *text_of(const node *n, const char *name) {
  GVariant *value = property(n, ACCESSIBLE, name);
  char *text = value ? g_variant_dup_string(value, NULL) : g_strdup("");
  if (value) g_variant_unref(value);
  return text;
}

static double number_of(const node *n, const char *name) {
  GVariant *value = property(n, VALUE, name);
  double number = value ? g_variant_get_double(value) : (double)NAN;
  if (value) g_variant_unref(value);
  return number;
}

static char *role_of(const node *n) {
  GVariant *reply = call(n, ACCESSIBLE, "GetRoleName", NULL, "(s)");
  char *role = NULL;
  if (reply) {
    g_variant_get(reply, "(s)", &role);
    g_variant_unref(reply);
  }
  return role ? role : g_strdup("");
}

static void node_clear(node *n) {
  g_clear_pointer(&n->bus, g_free);
  g_clear_pointer(&n->path, g_free);
}

/* The first below n with a role, and with a name if one is given. */
static node find(const node *n, const char *role, const char *name, int depth) {
  node found = {NULL, NULL};
  char *is_role = role_of(n), *is_name = text_of(n, "Name");
  gboolean here = g_str_equal(is_role, role) && (!name || g_str_equal(is_name, name));
  g_free(is_role);
  g_free(is_name);
  if (here) return (node){g_strdup(n->bus), g_strdup(n->path)};
  GVariant *children = depth < DEEPEST ? call(n, ACCESSIBLE, "GetChildren", NULL, "(a(so))") : NULL;
  if (!children) return found;
  GVariantIter *at;
  node child;
  g_variant_get(children, "(a(so))", &at);
  while (!found.path && g_variant_iter_next(at, "(so)", &child.bus, &child.path)) {
    found = find(&child, role, name, depth + 1);
    node_clear(&child);
  }
  g_variant_iter_free(at);
  g_variant_unref(children);
  return found;
}

static node find_in_program(const char *role, const char *name) {
  static char registry[] = "org.a11y.atspi.Registry";
  static char top[] = "/org/a11y/atspi/accessible/root";
  node root = {registry, top};
  gint64 end_us = g_get_monotonic_time() + WAIT_MS * 1000;
  for (;;) {
    node found = find(&root, role, name, 0);
    if (found.path || g_get_monotonic_time() > end_us) return found;
    g_usleep(100000);
  }
}

static node must_find(const char *role, const char *name) {
  node found = find_in_program(role, name);
  if (!found.path) print_error("no %s named \"%s\" on the bus\n", role, name ? name : "");
  assert_non_null(found.path);
  return found;
}

static gboolean comes_to_say(const node *n, const char *words) {
  gint64 end_us = g_get_monotonic_time() + WAIT_MS * 1000;
  for (;;) {
    char *text = text_of(n, "Description");
    gboolean says = strstr(text, words) != NULL;
    if (!says && g_get_monotonic_time() > end_us)
      print_error("\"%s\" is not in: %s\n", words, text);
    g_free(text);
    if (says || g_get_monotonic_time() > end_us) return says;
    g_usleep(50000);
  }
}

/* ---- the program ------------------------------------------------------------------------ */

static int start(void **state) {
  GError *error = NULL;
  GDBusConnection *session = g_bus_get_sync(G_BUS_TYPE_SESSION, NULL, &error);
  GVariant *reply =
      session ? g_dbus_connection_call_sync(session, "org.a11y.Bus", "/org/a11y/bus",
                                            "org.a11y.Bus", "GetAddress", NULL,
                                            G_VARIANT_TYPE("(s)"), G_DBUS_CALL_FLAGS_NONE, 20000,
                                            NULL, &error)
              : NULL;
  if (!reply) {
    print_error("there is no accessibility bus: %s\n", error->message);
    return -1;
  }
  const char *address;
  g_variant_get(reply, "(&s)", &address);
  bus = g_dbus_connection_new_for_address_sync(
      address,
      G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_CLIENT |
          G_DBUS_CONNECTION_FLAGS_MESSAGE_BUS_CONNECTION,
      NULL, NULL, &error);
  g_variant_unref(reply);
  g_object_unref(session);
  if (!bus) {
    print_error("the accessibility bus does not answer: %s\n", error->message);
    return -1;
  }
  GSubprocessLauncher *launcher = g_subprocess_launcher_new(G_SUBPROCESS_FLAGS_STDOUT_SILENCE);
  g_subprocess_launcher_setenv(launcher, "GTK_A11Y", "atspi", TRUE);
  oxbow = g_subprocess_launcher_spawn(launcher, &error, program, NULL);
  g_object_unref(launcher);
  if (!oxbow) print_error("%s\n", error->message);
  return oxbow ? 0 : -1;
}

static int stop(void **state) {
  if (oxbow) {
    g_subprocess_send_signal(oxbow, SIGTERM);
    g_subprocess_wait(oxbow, NULL, NULL);
  }
  g_clear_object(&oxbow);
  g_clear_object(&bus);
  return 0;
}

/* ---- tests ------------------------------------------------------------------------------ */

static void the_window_and_the_picture_with_its_words_are_there(void **state) {
  node window = must_find("window", NULL);
  node board = must_find("image", "Holding pattern");
  char *title = text_of(&window, "Name");
  assert_non_null(strstr(title, "LARCH"));
  assert_true(comes_to_say(&board, "inbound course 240, right turns"));
  assert_true(comes_to_say(&board, "The picture has true north up"));
  g_free(title);
  node_clear(&window);
  node_clear(&board);
}

static void every_handle_is_there_with_its_name_and_value(void **state) {
  static const struct {
    const char *role, *name, *says;
    double least, most;
  } rows[] = {{"button", "Holding fix", "LARCH", 0, 0},
              {"slider", "Inbound course", "240° magnetic", 1, 360},
              {"slider", "Arrival heading", "° magnetic", 1, 360},
              {"slider", "Wind direction", "true", 1, 360},
              {"slider", "Wind speed", "kt", 0, 250},
              {"slider", "Outbound end", "1:00", 10, 600},
              {"button", "Turn side", "right turns", 0, 0}};
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
    node handle = must_find(rows[i].role, rows[i].name);
    assert_true(comes_to_say(&handle, rows[i].says));
    if (rows[i].most > 0) {
      assert_close(number_of(&handle, "MinimumValue"), rows[i].least, 1e-9, rows[i].name);
      assert_close(number_of(&handle, "MaximumValue"), rows[i].most, 1e-9, rows[i].name);
      assert_true(isfinite(number_of(&handle, "CurrentValue")));
    }
    node_clear(&handle);
  }
}

static void a_value_set_over_the_bus_changes_the_words_of_the_picture(void **state) {
  node handle = must_find("slider", "Inbound course"), board = must_find("image", "Holding pattern");
  assert_close(number_of(&handle, "CurrentValue"), 240, 1e-9, "as it opens");
  GVariant *reply = call(&handle, PROPERTIES, "Set",
                         g_variant_new("(ssv)", VALUE, "CurrentValue", g_variant_new_double(271)),
                         NULL);
  assert_non_null(reply);
  g_variant_unref(reply);
  assert_true(comes_to_say(&board, "inbound course 271"));
  assert_true(comes_to_say(&handle, "271° magnetic"));
  assert_close(number_of(&handle, "CurrentValue"), 271, 1e-9, "as it was set");
  node_clear(&handle);
  node_clear(&board);
}

static void an_action_over_the_bus_flips_the_turns(void **state) {
  node handle = must_find("button", "Turn side"), board = must_find("image", "Holding pattern");
  GVariant *reply = call(&handle, ACTION, "DoAction", g_variant_new("(i)", 0), "(b)");
  assert_non_null(reply);
  g_variant_unref(reply);
  assert_true(comes_to_say(&board, "left turns"));
  assert_true(comes_to_say(&handle, "left turns"));
  node_clear(&handle);
  node_clear(&board);
}

int main(int argc, char **argv) {
  const struct CMUnitTest tests[] = {
      cmocka_unit_test(the_window_and_the_picture_with_its_words_are_there),
      cmocka_unit_test(every_handle_is_there_with_its_name_and_value),
      cmocka_unit_test(a_value_set_over_the_bus_changes_the_words_of_the_picture),
      cmocka_unit_test(an_action_over_the_bus_flips_the_turns),
  };
  if (argc < 2) {
    fprintf(stderr, "usage: %s OXBOW\n", argv[0]);
    return 2;
  }
  program = argv[1];
  return cmocka_run_group_tests_name("atspi", tests, start, stop);
}
