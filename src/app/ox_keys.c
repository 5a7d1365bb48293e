/* Every key of the window in one table. Keys without Ctrl that letters and numbers need as well
 * are not accelerators: they work only while board or transport bar has the focus. */
#include "ox_keys.h"

static const ox_key keys[] = {
    {OX_KEYS_EVERYWHERE, "win.new", {"<Control>n"}},
    {OX_KEYS_EVERYWHERE, "win.open", {"<Control>o"}},
    {OX_KEYS_EVERYWHERE, "win.save", {"<Control>s"}},
    {OX_KEYS_EVERYWHERE, "win.save-as", {"<Shift><Control>s"}},
    {OX_KEYS_EVERYWHERE, "win.export", {"<Control>e"}},
    {OX_KEYS_EVERYWHERE, "win.handout", {"<Shift><Control>e"}},
    {OX_KEYS_EVERYWHERE, "win.published", {"<Control>h"}},
    {OX_KEYS_EVERYWHERE, "win.print", {"<Control>p"}},
    {OX_KEYS_EVERYWHERE, "win.undo", {"<Control>z"}},
    {OX_KEYS_EVERYWHERE, "win.redo", {"<Shift><Control>z"}},
    {OX_KEYS_EVERYWHERE, "win.duplicate-case", {"<Control>u"}},
    {OX_KEYS_EVERYWHERE, "win.rename-case", {"F2"}},
    {OX_KEYS_EVERYWHERE, "window.close", {"<Control>w"}},
    {OX_KEYS_EVERYWHERE, "app.quit", {"<Control>q"}},
    {OX_KEYS_EVERYWHERE, "win.compare-cases", {"<Control>d"}},
    {OX_KEYS_EVERYWHERE, "win.page-hold", {"<Alt>1"}},
    {OX_KEYS_EVERYWHERE, "win.page-words", {"<Alt>2"}},
    {OX_KEYS_EVERYWHERE, "win.page-check", {"<Alt>3"}},
    {OX_KEYS_EVERYWHERE, "win.page-time", {"<Alt>4"}},
    {OX_KEYS_EVERYWHERE, "win.page-places", {"<Alt>5"}},
    {OX_KEYS_EVERYWHERE, "win.working", {"F9"}},
    {OX_KEYS_EVERYWHERE, "win.moments", {"F8"}},
    {OX_KEYS_EVERYWHERE, "win.menu", {"F10"}},
    {OX_KEYS_EVERYWHERE, "win.fullscreen", {"F11"}},
    {OX_KEYS_EVERYWHERE, "win.show-help-overlay", {"<Control>question"}},
    {OX_KEYS_EVERYWHERE, "app.help", {"F1"}},
    {OX_KEYS_EVERYWHERE, "app.preferences", {"<Control>comma"}},

    {OX_KEYS_EVERYWHERE, "win.pen", {"F7"}},
    {OX_KEYS_EVERYWHERE, "win.predict", {"<Control>t"}},
    {OX_KEYS_EVERYWHERE, "win.predict-fly", {"<Control>Return"}},

    {OX_KEYS_EVERYWHERE, "win.zoom-in", {"<Control>plus", "<Control>equal"}},
    {OX_KEYS_EVERYWHERE, "win.zoom-out", {"<Control>minus"}},
    {OX_KEYS_EVERYWHERE, "win.zoom-fit", {"<Control>0"}},

    {OX_KEYS_EVERYWHERE, "win.classroom", {"<Shift>F11", "F5"}},

    {OX_KEYS_WINDOW, "win.previous-case", {"Page_Up"}},
    {OX_KEYS_WINDOW, "win.next-case", {"Page_Down"}},
    {OX_KEYS_WINDOW, "win.leave", {"Escape"}},

    {OX_KEYS_CASES, "win.move-case-up", {"<Alt>Up"}},
    {OX_KEYS_CASES, "win.move-case-down", {"<Alt>Down"}},
    {OX_KEYS_CASES, "win.delete-case", {"Delete"}},

    {OX_KEYS_CLASSROOM, "win.show-previous", {"Page_Up"}},
    {OX_KEYS_CLASSROOM, "win.show-next", {"Page_Down"}},
    {OX_KEYS_CLASSROOM, "win.blank", {"b", "period"}},
    {OX_KEYS_CLASSROOM, "win.larger", {"t"}},
    {OX_KEYS_CLASSROOM, "win.smaller", {"<Shift>t"}},

    {OX_KEYS_PICTURE, "win.copy-picture", {"<Control>c"}},
    {OX_KEYS_PICTURE, "win.board-menu", {"Menu", "<Shift>F10"}},

    {OX_KEYS_FLIGHT, "win.play", {"space"}},
    {OX_KEYS_FLIGHT, "win.step-back", {"Left"}},
    {OX_KEYS_FLIGHT, "win.step-forward", {"Right"}},
    {OX_KEYS_FLIGHT, "win.previous-event", {"<Shift>Left"}},
    {OX_KEYS_FLIGHT, "win.next-event", {"<Shift>Right"}},
    {OX_KEYS_FLIGHT, "win.slower", {"bracketleft"}},
    {OX_KEYS_FLIGHT, "win.faster", {"bracketright"}},
    {OX_KEYS_FLIGHT, "win.go-start", {"Home"}},
    {OX_KEYS_FLIGHT, "win.go-end", {"End"}},
    {OX_KEYS_FLIGHT, "win.pan-left", {"<Control>Left"}},
    {OX_KEYS_FLIGHT, "win.pan-right", {"<Control>Right"}},
    {OX_KEYS_FLIGHT, "win.pan-up", {"<Control>Up"}},
    {OX_KEYS_FLIGHT, "win.pan-down", {"<Control>Down"}},
    {OX_KEYS_FLIGHT, "win.next-up", {"u"}},
    {OX_KEYS_FLIGHT, "win.air-view", {"a"}},
    {OX_KEYS_FLIGHT, "win.both-views", {"b"}},
};

const ox_key *ox_keys(size_t *count) {
  *count = G_N_ELEMENTS(keys);
  return keys;
}

void ox_keys_set_accelerators(GtkApplication *application) {
  for (size_t i = 0; i < G_N_ELEMENTS(keys); i++)
    if (keys[i].scope == OX_KEYS_EVERYWHERE)
      gtk_application_set_accels_for_action(application, keys[i].action, keys[i].keys);
}

GtkEventController *ox_keys_add(GtkWidget *widget, ox_keys_scope scope,
                                GtkPropagationPhase phase) {
  GtkEventController *controller = gtk_shortcut_controller_new();
  gtk_event_controller_set_propagation_phase(controller, phase);
  for (size_t i = 0; i < G_N_ELEMENTS(keys); i++) {
    if (keys[i].scope != scope) continue;
    for (const char *const *key = keys[i].keys; *key; key++)
      gtk_shortcut_controller_add_shortcut(
          GTK_SHORTCUT_CONTROLLER(controller),
          gtk_shortcut_new(gtk_shortcut_trigger_parse_string(*key),
                           gtk_named_action_new(keys[i].action)));
  }
  gtk_widget_add_controller(widget, controller);
  return controller;
}
