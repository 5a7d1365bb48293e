/* Handouts: the cases that are wanted, as scenes for paper. */
#include "ox_handout.h"

#include "ox_case_scene.h"

static const char PROGRAM[] = "Oxbow " OX_VERSION;

struct ox_handout {
  GPtrArray *made;  /* ox_case_scene: what the scenes point into */
  ox_scene *scenes; /* as many */
  ox_sheets_options options;
};

/* ---- the choice ------------------------------------------------------------------------- */

static const char *const per_page_words[] = {"2", "1", "4", NULL};
static const char *const order_words[] = {"lesson", "shuffled", NULL};

ox_handout_choice ox_handout_choice_default(void) {
  return (ox_handout_choice){.per_page = 2, .seed = 1};
}

ox_handout_choice ox_handout_choice_recall(OxSettings *settings) {
  ox_handout_choice c = ox_handout_choice_default();
  const char *per_page = ox_settings_word(settings, "handout-per-page", per_page_words);
  c.per_page = per_page[0] - '0';
  c.shuffled = ox_settings_word(settings, "handout-order", order_words) == order_words[1];
  c.seed = (guint)ox_settings_whole(settings, "handout-seed", 0, OX_HANDOUT_SEED_MOST,
                                    (int)c.seed);
  return c;
}

void ox_handout_choice_remember(const ox_handout_choice *choice, OxSettings *settings) {
  ox_settings_set_whole(settings, "handout-per-page", choice->per_page);
  ox_settings_set_word(settings, "handout-order", order_words[choice->shuffled ? 1 : 0]);
  ox_settings_set_whole(settings, "handout-seed", (int)choice->seed);
}

/* ---- the pages -------------------------------------------------------------------------- */

ox_handout *ox_handout_new(const ox_lesson *lesson, const gboolean *wanted,
                           const ox_handout_choice *choice, ox_sheets_kind kind, ox_paper paper,
                           gboolean across) {
  ox_handout *self = g_new0(ox_handout, 1);
  self->made = g_ptr_array_new_with_free_func(g_free);
  for (size_t i = 0; i < lesson->case_count; i++)
    if (!wanted || wanted[i])
      g_ptr_array_add(self->made, ox_case_scene_new(lesson, i, OX_PALETTE_PRINT, FALSE, NULL));
  self->scenes = g_new(ox_scene, self->made->len);
  for (guint i = 0; i < self->made->len; i++)
    self->scenes[i] = ((ox_case_scene *)g_ptr_array_index(self->made, i))->scene;
  self->options = (ox_sheets_options){.kind = kind,
                                      .paper = paper,
                                      .across = across,
                                      .per_page = choice->per_page,
                                      .shuffled = choice->shuffled,
                                      .seed = choice->seed,
                                      .program = PROGRAM};
  return self;
}

void ox_handout_free(ox_handout *self) {
  if (!self) return;
  g_free(self->scenes);
  g_ptr_array_unref(self->made);
  g_free(self);
}

size_t ox_handout_holds(const ox_handout *self) { return self->made->len; }

size_t ox_handout_pages(const ox_handout *self) {
  return ox_sheets_pages(self->made->len, &self->options);
}

ox_vec ox_handout_size(const ox_handout *self) { return ox_sheets_size(&self->options); }

ox_status ox_handout_draw(const ox_handout *self, cairo_t *cr, size_t page, const char **error) {
  return ox_sheets_draw(cr, self->scenes, self->made->len, &self->options, page, error);
}

ox_status ox_handout_make(const ox_handout *self, ox_export_sink sink, void *context,
                          const char **error) {
  return ox_sheets_make(self->scenes, self->made->len, &self->options, sink, context, error);
}
