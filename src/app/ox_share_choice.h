/* What is exported, and how: a plain value, its ranges, and how it is remembered. No GTK. */
#ifndef OX_SHARE_CHOICE_H
#define OX_SHARE_CHOICE_H

#include "ox_handout.h"
#include "oxbow/export.h"

G_BEGIN_DECLS

typedef enum {
  OX_SHARE_PICTURE, /* the shown case */
  OX_SHARE_CASES,   /* a sheet a case */
  OX_SHARE_MOMENTS, /* the key moments of the shown case */
  OX_SHARE_MOVING,  /* its flight as a moving picture */
  OX_SHARE_TRACK,   /* its track for maps */
  OX_SHARE_WORKSHEET, /* chosen cases to fill in */
  OX_SHARE_KEY,       /* the same with the answers */
  OX_SHARE_WHAT_COUNT
} ox_share_what;

typedef enum {
  OX_SHARE_PNG, OX_SHARE_SVG, OX_SHARE_PDF, OX_SHARE_APNG, OX_SHARE_GIF,
  OX_SHARE_GEOJSON, OX_SHARE_KML, OX_SHARE_GPX,
  OX_SHARE_FORMAT_COUNT
} ox_share_format;

typedef enum {
  OX_SHARE_PIXELS, OX_SHARE_CM_150, OX_SHARE_CM_300, OX_SHARE_UNIT_COUNT
} ox_share_unit;

typedef enum {
  OX_SHARE_A4_ACROSS, OX_SHARE_A4_UPRIGHT, OX_SHARE_LETTER_ACROSS, OX_SHARE_LETTER_UPRIGHT,
  OX_SHARE_PAPER_COUNT
} ox_share_paper;

/* Sizes that are remembered apart from each other. */
typedef enum {
  OX_SHARE_SIZE_PIXELS, OX_SHARE_SIZE_CM, OX_SHARE_SIZE_MOVING, OX_SHARE_SIZE_COUNT
} ox_share_size;

typedef struct {
  ox_share_what what;
  ox_share_format format;
  ox_share_unit unit;
  double size[OX_SHARE_SIZE_COUNT][2]; /* width, height: pixels, cm, pixels */
  ox_share_paper paper;                /* of sheets */
  ox_palette_id palette;               /* of pictures */
  ox_palette_id sheet_palette;
  gboolean transparent;                /* a still PNG only */
  gboolean pen_marks;
  double fps, speed;                   /* of a moving picture */
  ox_share_paper handout_paper;
  ox_handout_choice handout;
} ox_share_choice;

#define OX_SHARE_PIXELS_LEAST 100
#define OX_SHARE_PIXELS_MOST 8000
#define OX_SHARE_MOVING_MOST 2000
#define OX_SHARE_CM_LEAST 2
#define OX_SHARE_CM_MOST 60
#define OX_SHARE_FPS_MOST 30
#define OX_SHARE_SPEED_MOST 100

ox_share_choice ox_share_choice_default(void);
/* What was chosen last; what makes no sense is as in the default. */
ox_share_choice ox_share_choice_recall(OxSettings *settings);
void ox_share_choice_remember(const ox_share_choice *choice, OxSettings *settings);

/* The formats that there are of something, the usual one first. Static. */
const ox_share_format *ox_share_formats(ox_share_what what, size_t *count);
/* Puts the usual format in the place of one that there is not. */
void ox_share_choice_settle(ox_share_choice *choice);

const char *ox_share_ending(ox_share_format format); /* ".png" */
/* "Picture (*.png)", for people. */
const char *ox_share_format_name(ox_share_format format);
/* The format of a picture by the ending of a path; FALSE for another ending. */
gboolean ox_share_format_of(const char *path, ox_share_format *format);

/* Which size the choice uses. */
ox_share_size ox_share_choice_size(const ox_share_choice *choice);
gboolean ox_share_is_handout(ox_share_what what);
/* The kind and the paper of a handout. */
ox_sheets_kind ox_share_sheets_kind(ox_share_what what);
ox_paper ox_share_sheets_paper(ox_share_paper paper, gboolean *across);

/* The painter's options, neither for a track nor for a handout. t_s: where the aircraft is drawn; a
 * sheet shows the whole flight, not an instant. */
ox_export_options ox_share_options(const ox_share_choice *choice, double t_s);
ox_palette_id ox_share_palette(const ox_share_choice *choice);

G_END_DECLS

#endif
