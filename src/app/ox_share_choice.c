/* What is exported: formats, sizes, and the settings they are remembered in. */
#include "ox_share_choice.h"

#include "ox_preference.h"

#include <math.h>
#include <string.h>

#include "oxbow/text.h"

#define POINTS_AN_INCH 72.0
#define PIXELS_AN_INCH 96.0 /* of CSS and SVG */
#define CM_AN_INCH 2.54
#define SCREEN_DPI 150.0

/* ---- formats ---------------------------------------------------------------------------- */

static const struct {
  const char *ending, *name;
} formats[OX_SHARE_FORMAT_COUNT] = {
    [OX_SHARE_PNG] = {".png", N_("Picture (*.png)")},
    [OX_SHARE_SVG] = {".svg", N_("Drawing (*.svg)")},
    [OX_SHARE_PDF] = {".pdf", N_("Sheets (*.pdf)")},
    [OX_SHARE_APNG] = {".apng", N_("Moving picture (*.apng)")},
    [OX_SHARE_GIF] = {".gif", N_("GIF, fewer colours (*.gif)")},
    [OX_SHARE_GEOJSON] = {".geojson", N_("GeoJSON (*.geojson)")},
    [OX_SHARE_KML] = {".kml", N_("KML (*.kml)")},
    [OX_SHARE_GPX] = {".gpx", N_("GPX (*.gpx)")},
};

const char *ox_share_ending(ox_share_format format) { return formats[format].ending; }

const char *ox_share_format_name(ox_share_format format) { return _(formats[format].name); }

const ox_share_format *ox_share_formats(ox_share_what what, size_t *count) {
  static const ox_share_format still[] = {OX_SHARE_PNG, OX_SHARE_SVG, OX_SHARE_PDF};
  static const ox_share_format sheets[] = {OX_SHARE_PDF};
  static const ox_share_format moving[] = {OX_SHARE_APNG, OX_SHARE_GIF};
  static const ox_share_format track[] = {OX_SHARE_GEOJSON, OX_SHARE_KML, OX_SHARE_GPX};
  switch (what) {
  case OX_SHARE_CASES:
  case OX_SHARE_WORKSHEET:
  case OX_SHARE_KEY:
    *count = G_N_ELEMENTS(sheets);
    return sheets;
  case OX_SHARE_MOVING:
    *count = G_N_ELEMENTS(moving);
    return moving;
  case OX_SHARE_TRACK:
    *count = G_N_ELEMENTS(track);
    return track;
  default:
    *count = G_N_ELEMENTS(still);
    return still;
  }
}

void ox_share_choice_settle(ox_share_choice *choice) {
  size_t count;
  const ox_share_format *list = ox_share_formats(choice->what, &count);
  for (size_t i = 0; i < count; i++)
    if (list[i] == choice->format) return;
  choice->format = list[0];
}

gboolean ox_share_format_of(const char *path, ox_share_format *format) {
  size_t length = strlen(path), count;
  const ox_share_format *still = ox_share_formats(OX_SHARE_PICTURE, &count);
  for (size_t i = 0; i < count; i++) {
    const char *ending = ox_share_ending(still[i]);
    size_t tail = strlen(ending);
    if (length <= tail || g_ascii_strcasecmp(path + length - tail, ending) != 0) continue;
    *format = still[i];
    return TRUE;
  }
  return FALSE;
}

/* ---- what it comes to ------------------------------------------------------------------- */

ox_share_size ox_share_choice_size(const ox_share_choice *choice) {
  if (choice->what == OX_SHARE_MOVING) return OX_SHARE_SIZE_MOVING;
  return choice->unit == OX_SHARE_PIXELS ? OX_SHARE_SIZE_PIXELS : OX_SHARE_SIZE_CM;
}

ox_palette_id ox_share_palette(const ox_share_choice *choice) {
  return choice->format == OX_SHARE_PDF ? choice->sheet_palette : choice->palette;
}

gboolean ox_share_is_handout(ox_share_what what) {
  return what == OX_SHARE_WORKSHEET || what == OX_SHARE_KEY;
}

ox_sheets_kind ox_share_sheets_kind(ox_share_what what) {
  return what == OX_SHARE_KEY ? OX_SHEETS_KEY : OX_SHEETS_WORKSHEET;
}

ox_paper ox_share_sheets_paper(ox_share_paper paper, gboolean *across) {
  *across = paper == OX_SHARE_A4_ACROSS || paper == OX_SHARE_LETTER_ACROSS;
  return paper == OX_SHARE_A4_ACROSS || paper == OX_SHARE_A4_UPRIGHT ? OX_PAPER_A4
                                                                     : OX_PAPER_LETTER;
}

/* A sheet in points. */
static void paper_size(ox_share_paper paper, ox_export_options *o) {
  static const double points[OX_SHARE_PAPER_COUNT][2] = {
      [OX_SHARE_A4_ACROSS] = {841.89, 595.28},
      [OX_SHARE_A4_UPRIGHT] = {595.28, 841.89},
      [OX_SHARE_LETTER_ACROSS] = {792, 612},
      [OX_SHARE_LETTER_UPRIGHT] = {612, 792},
  };
  o->width = points[paper][0];
  o->height = points[paper][1];
}

ox_export_options ox_share_options(const ox_share_choice *choice, double t_s) {
  const double *size = choice->size[ox_share_choice_size(choice)];
  gboolean cm = ox_share_choice_size(choice) == OX_SHARE_SIZE_CM;
  double dpi = choice->unit == OX_SHARE_CM_300 ? 300.0 : SCREEN_DPI;
  double scale = 1.0;
  ox_export_options o = {.t_s = t_s,
                         .fps = choice->fps,
                         .speed = choice->speed,
                         .moments = choice->what == OX_SHARE_MOMENTS};
  switch (choice->format) {
  case OX_SHARE_PDF:
    o.format = OX_EXPORT_PDF;
    o.t_s = (double)NAN;
    paper_size(choice->paper, &o);
    return o;
  case OX_SHARE_SVG:
    o.format = OX_EXPORT_SVG;
    scale = cm ? POINTS_AN_INCH / CM_AN_INCH : POINTS_AN_INCH / PIXELS_AN_INCH;
    break;
  case OX_SHARE_APNG:
  case OX_SHARE_GIF:
    o.format = choice->format == OX_SHARE_GIF ? OX_EXPORT_GIF : OX_EXPORT_APNG;
    o.dpi = SCREEN_DPI;
    break;
  default:
    o.format = OX_EXPORT_PNG;
    o.transparent = choice->transparent && choice->what == OX_SHARE_PICTURE;
    o.dpi = cm ? dpi : SCREEN_DPI;
    if (cm) scale = dpi / CM_AN_INCH;
  }
  o.width = size[0] * scale;
  o.height = size[1] * scale;
  if (o.format != OX_EXPORT_SVG) {
    o.width = round(o.width);
    o.height = round(o.height);
  }
  return o;
}

/* ---- settings --------------------------------------------------------------------------- */

static const char *const what_words[] = {"picture", "cases", "moments", "moving", "track",
                                         "worksheet", "key", NULL};
static const char *const format_words[] = {"png",     "svg", "pdf", "apng", "gif",
                                           "geojson", "kml", "gpx", NULL};
static const char *const unit_words[] = {"pixels", "cm-150", "cm-300", NULL};
static const char *const paper_words[] = {"a4-across", "a4-upright", "letter-across",
                                          "letter-upright", NULL};
static const char *const no_words[] = {"no", "yes", NULL};
static const char *const yes_words[] = {"yes", "no", NULL};

static const char *const size_keys[OX_SHARE_SIZE_COUNT][2] = {
    {"export-width-px", "export-height-px"},
    {"export-width-mm", "export-height-mm"},
    {"export-moving-width-px", "export-moving-height-px"}};

static const int size_least[] = {OX_SHARE_PIXELS_LEAST, 10 * OX_SHARE_CM_LEAST,
                                 OX_SHARE_PIXELS_LEAST};
static const int size_most[] = {OX_SHARE_PIXELS_MOST, 10 * OX_SHARE_CM_MOST, OX_SHARE_MOVING_MOST};

static double kept_as(int size) { return size == OX_SHARE_SIZE_CM ? 10.0 : 1.0; }

static guint recall(OxSettings *settings, const char *key, const char *const *words) {
  const char *word = ox_settings_word(settings, key, words);
  guint index = 0;
  while (words[index] != word) index++;
  return index;
}

/* Before one was chosen, the sheets of the preferred paper. */
static ox_share_paper recall_paper(OxSettings *settings, const char *key, gboolean across) {
  char *chosen = ox_settings_text(settings, key);
  gboolean letter = ox_preference_paper(settings) == OX_PAPER_LETTER;
  ox_share_paper paper = letter ? across ? OX_SHARE_LETTER_ACROSS : OX_SHARE_LETTER_UPRIGHT
                         : across ? OX_SHARE_A4_ACROSS
                                  : OX_SHARE_A4_UPRIGHT;
  for (int i = 0; chosen && paper_words[i]; i++)
    if (strcmp(paper_words[i], chosen) == 0) paper = (ox_share_paper)i;
  g_free(chosen);
  return paper;
}

static ox_palette_id recall_palette(OxSettings *settings, const char *key,
                                    ox_palette_id otherwise) {
  char *chosen = ox_settings_text(settings, key);
  for (int i = 0; chosen && i < OX_PALETTE_CHOICES; i++)
    if (strcmp(ox_palette_name((ox_palette_id)i), chosen) == 0) otherwise = (ox_palette_id)i;
  g_free(chosen);
  return otherwise;
}

ox_share_choice ox_share_choice_default(void) {
  return (ox_share_choice){
      .size = {{1600, 1200}, {16, 12}, {800, 600}},
      .palette = OX_PALETTE_LIGHT,
      .sheet_palette = OX_PALETTE_PRINT,
      .pen_marks = TRUE,
      .fps = 10,
      .speed = 10,
      .handout_paper = OX_SHARE_A4_UPRIGHT,
      .handout = ox_handout_choice_default(),
  };
}

ox_share_choice ox_share_choice_recall(OxSettings *settings) {
  ox_share_choice c = ox_share_choice_default();
  c.what = (ox_share_what)recall(settings, "export-what", what_words);
  c.format = (ox_share_format)recall(settings, "export-format", format_words);
  c.unit = (ox_share_unit)recall(settings, "export-unit", unit_words);
  c.paper = recall_paper(settings, "export-paper", TRUE);
  c.palette = recall_palette(settings, "export-palette", ox_preference_palette(settings));
  c.sheet_palette = recall_palette(settings, "export-sheet-palette", c.sheet_palette);
  c.transparent = recall(settings, "export-transparent", no_words) == 1;
  c.pen_marks = recall(settings, "export-pen-marks", yes_words) == 0;
  c.fps = ox_settings_whole(settings, "export-fps", 1, OX_SHARE_FPS_MOST, (int)c.fps);
  c.speed = ox_settings_whole(settings, "export-speed", 1, OX_SHARE_SPEED_MOST, (int)c.speed);
  for (int i = 0; i < OX_SHARE_SIZE_COUNT; i++)
    for (int side = 0; side < 2; side++)
      c.size[i][side] = ox_settings_whole(settings, size_keys[i][side], size_least[i],
                                          size_most[i], (int)(c.size[i][side] * kept_as(i))) /
                        kept_as(i);
  c.handout_paper = recall_paper(settings, "handout-paper", FALSE);
  c.handout = ox_handout_choice_recall(settings);
  ox_share_choice_settle(&c);
  return c;
}

void ox_share_choice_remember(const ox_share_choice *c, OxSettings *settings) {
  ox_settings_set_word(settings, "export-what", what_words[c->what]);
  ox_settings_set_word(settings, "export-format", format_words[c->format]);
  ox_settings_set_word(settings, "export-unit", unit_words[c->unit]);
  ox_settings_set_word(settings, "export-paper", paper_words[c->paper]);
  ox_settings_set_word(settings, "export-palette", ox_palette_name(c->palette));
  ox_settings_set_word(settings, "export-sheet-palette", ox_palette_name(c->sheet_palette));
  ox_settings_set_word(settings, "export-transparent", no_words[c->transparent ? 1 : 0]);
  ox_settings_set_word(settings, "export-pen-marks", yes_words[c->pen_marks ? 0 : 1]);
  ox_settings_set_whole(settings, "export-fps", (int)lround(c->fps));
  ox_settings_set_whole(settings, "export-speed", (int)lround(c->speed));
  for (int i = 0; i < OX_SHARE_SIZE_COUNT; i++)
    for (int side = 0; side < 2; side++)
      ox_settings_set_whole(settings, size_keys[i][side],
                            (int)lround(c->size[i][side] * kept_as(i)));
  ox_settings_set_word(settings, "handout-paper", paper_words[c->handout_paper]);
  ox_handout_choice_remember(&c->handout, settings);
}
