/* The menu of what is laid over the picture. The mistakes it offers are those that show in the
 * case, so that section is filled again when the case makes another choice of them. */
#include "ox_window_private.h"

#include "oxbow/flaws.h"
#include "oxbow/text.h"

#define NEVER_FILLED 0U
#define FILLED (1U << OX_MISTAKE_COUNT)

static void compare_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  ox_overlays_set_compare(OX_WINDOW(data)->overlays, g_variant_get_int32(state));
  int chosen = ox_overlays_compare(OX_WINDOW(data)->overlays);
  g_simple_action_set_state(action, g_variant_new_int32(chosen));
}

static void area_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  ox_overlays_show_area(OX_WINDOW(data)->overlays, g_variant_get_boolean(state));
  g_simple_action_set_state(action, state);
}

static void spread_cb(GSimpleAction *action, GVariant *state, gpointer data) {
  ox_overlays_show_spread(OX_WINDOW(data)->overlays, g_variant_get_boolean(state));
  g_simple_action_set_state(action, state);
}

static const GActionEntry entries[] = {
    {.name = "compare", .parameter_type = "i", .state = "-2", .change_state = compare_cb},
    {.name = "area", .state = "false", .change_state = area_cb},
    {.name = "spread", .state = "false", .change_state = spread_cb},
};

static void append_comparison(GMenu *menu, const char *label, int compare) {
  GMenuItem *item = g_menu_item_new(label, NULL);
  g_menu_item_set_action_and_target(item, "win.compare", "i", compare);
  g_menu_append_item(menu, item);
  g_object_unref(item);
}

/* The one in force is offered even where it does not show: the working panel says why not. */
static guint offered(OxWindow *self) {
  const ox_case *c = ox_document_case(self->document);
  const ox_flight *flight = ox_document_flight(self->document);
  guint bits = FILLED;
  for (int i = 0; i < OX_MISTAKE_COUNT; i++)
    if (ox_mistake_shows(c, flight, (ox_mistake)i) || i == ox_overlays_compare(self->overlays))
      bits |= 1U << (unsigned)i;
  return bits;
}

void ox_window_update_overlays(OxWindow *self) {
  guint bits = offered(self);
  if (bits == self->comparisons_offered) return;
  self->comparisons_offered = bits;
  g_menu_remove_all(self->comparisons);
  append_comparison(self->comparisons, _("_Nothing"), OX_COMPARE_NOTHING);
  append_comparison(self->comparisons, _("_Exact Hold"), OX_COMPARE_EXACT);
  append_comparison(self->comparisons, _("As the E_quipment Shows It"), OX_COMPARE_SHOWN);
  for (int i = 0; i < OX_MISTAKE_COUNT; i++) {
    if (!(bits & 1U << (unsigned)i)) continue;
    char *label = g_strdup_printf(_("Mistake: %s"), _(ox_mistake_name((ox_mistake)i)));
    append_comparison(self->comparisons, label, i);
    g_free(label);
  }
}

void ox_window_add_overlays(OxWindow *self) {
  GMenu *menu = g_menu_new(), *toggles = g_menu_new();
  self->comparisons = g_menu_new();
  self->comparisons_offered = NEVER_FILLED;
  g_menu_append(toggles, _("_Compare Cases"), "win.compare-cases");
  g_menu_append(toggles, _("Protected _Area (Illustration)"), "win.area");
  g_menu_append(toggles, _("_Spread of 500 Flights"), "win.spread");
  g_menu_append(toggles, _("Key _Moments"), "win.moments");
  g_menu_append_section(menu, _("Compare With"), G_MENU_MODEL(self->comparisons));
  g_menu_append_section(menu, NULL, G_MENU_MODEL(toggles));
  g_action_map_add_action_entries(G_ACTION_MAP(self), entries, G_N_ELEMENTS(entries), self);
  gtk_menu_button_set_menu_model(self->show_button, G_MENU_MODEL(menu));
  g_object_unref(toggles);
  g_object_unref(menu);
}
