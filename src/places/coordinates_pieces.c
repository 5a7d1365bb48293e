/* Coordinates cut into pieces: figures, letters, signs and marks, in whatever characters the
 * keyboard or the chart's text had for them. */
#include <stdbool.h>
#include <string.h>

#include "coordinates.h"
#include "oxbow/text.h"
#include "remark.h"

/* 18 figures fit 64 bits and are more than a double holds. */
enum { FIGURES_MAX = 18, TEXT_MAX = 200 };

typedef struct {
  const char *text;
  ox_piece piece;
} spelling;

static const spelling spellings[] = {
    {"+", {.kind = OX_PIECE_PLUS}},
    {"-", {.kind = OX_PIECE_HYPHEN}},
    {"\xe2\x88\x92", {.kind = OX_PIECE_HYPHEN}}, /* minus sign */
    {"\xe2\x80\x90", {.kind = OX_PIECE_HYPHEN}}, /* hyphen */
    {"\xe2\x80\x93", {.kind = OX_PIECE_HYPHEN}}, /* en dash */
    {":", {.kind = OX_PIECE_COLON}},
    {",", {.kind = OX_PIECE_COMMA}},
    {";", {.kind = OX_PIECE_COMMA}},
    {"/", {.kind = OX_PIECE_COMMA}},
    {"\xc2\xb0", {.kind = OX_PIECE_MARK, .unit = 0}}, /* degree sign */
    {"\xc2\xba", {.kind = OX_PIECE_MARK, .unit = 0}}, /* ordinal o, typed for it */
    {"\xcb\x9a", {.kind = OX_PIECE_MARK, .unit = 0}}, /* ring above, typed for it */
    {"''", {.kind = OX_PIECE_MARK, .unit = 2}},
    {"'", {.kind = OX_PIECE_MARK, .unit = 1}},
    {"\xe2\x80\xb2", {.kind = OX_PIECE_MARK, .unit = 1}}, /* prime */
    {"\xe2\x80\x99", {.kind = OX_PIECE_MARK, .unit = 1}}, /* closing quote */
    {"\"", {.kind = OX_PIECE_MARK, .unit = 2}},
    {"\xe2\x80\xb3", {.kind = OX_PIECE_MARK, .unit = 2}}, /* double prime */
    {"\xe2\x80\x9d", {.kind = OX_PIECE_MARK, .unit = 2}}, /* closing double quote */
};

static const char *const spaces[] = {" ", "\t", "\xc2\xa0", "\xe2\x80\xaf", "\xe2\x80\x89"};

static size_t space_at(const char *text) {
  for (size_t i = 0; i < sizeof spaces / sizeof *spaces; i++)
    if (strncmp(text, spaces[i], strlen(spaces[i])) == 0) return strlen(spaces[i]);
  return 0;
}

static bool is_figure(char c) { return c >= '0' && c <= '9'; }

/* Length of the number at text, 0 when there is none, or more than FIGURES_MAX figures. */
static size_t number_at(const char *text, ox_piece *piece) {
  *piece = (ox_piece){.kind = OX_PIECE_NUMBER};
  size_t i = 0;
  for (; is_figure(text[i]); i++, piece->whole++) {
    if (i >= FIGURES_MAX) return 0;
    piece->figures = piece->figures * 10 + (uint64_t)(text[i] - '0');
  }
  if (piece->whole == 0 || text[i] != '.' || !is_figure(text[i + 1])) return i;
  for (i++; is_figure(text[i]); i++, piece->decimals++) {
    if (piece->whole + piece->decimals >= FIGURES_MAX) return 0;
    piece->figures = piece->figures * 10 + (uint64_t)(text[i] - '0');
  }
  return i;
}

static size_t letter_at(const char *text, ox_piece *piece) {
  static const char letters[] = "NSEWnsew";
  const char *found = *text ? strchr(letters, *text) : NULL;
  if (!found) return 0;
  *piece = (ox_piece){.kind = OX_PIECE_LETTER, .letter = letters[(found - letters) % 4]};
  return 1;
}

static size_t spelling_at(const char *text, ox_piece *piece) {
  for (size_t i = 0; i < sizeof spellings / sizeof *spellings; i++) {
    size_t length = strlen(spellings[i].text);
    if (strncmp(text, spellings[i].text, length) != 0) continue;
    *piece = spellings[i].piece;
    return length;
  }
  return 0;
}

static ox_status refuse_at(const char *text, char *remark, size_t bytes) {
  unsigned char c = (unsigned char)*text;
  if (c >= 0x20 && c < 0x7f && !is_figure(*text))
    return ox_remark(OX_ERROR, remark, bytes,
                     _("'%c' has no place in coordinates; write for example 42 44.84N 073 48.19W."),
                     *text);
  if (is_figure(*text))
    return ox_remark(OX_ERROR, remark, bytes,
                     _("A number in the coordinates has more than %d figures."), FIGURES_MAX);
  return ox_remark(OX_ERROR, remark, bytes,
                   _("A character has no place in coordinates; write for example "
                     "42 44.84N 073 48.19W."));
}

ox_status ox_pieces_read(const char *text, ox_piece pieces[OX_PIECES_MAX], size_t *count,
                         char *remark, size_t remark_bytes) {
  size_t n = 0;
  if (strlen(text) > TEXT_MAX)
    return ox_remark(OX_ERROR, remark, remark_bytes,
                     _("The coordinates are longer than %d characters."), TEXT_MAX);
  while (*text) {
    size_t length = space_at(text);
    if (length == 0) {
      ox_piece piece;
      if (n == OX_PIECES_MAX)
        return ox_remark(OX_ERROR, remark, remark_bytes,
                         _("There are too many parts in the coordinates."));
      length = number_at(text, &piece);
      if (length == 0) length = letter_at(text, &piece);
      if (length == 0) length = spelling_at(text, &piece);
      if (length == 0) return refuse_at(text, remark, remark_bytes);
      pieces[n++] = piece;
    }
    text += length;
  }
  *count = n;
  return OX_OK;
}
