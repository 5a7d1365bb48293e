/* The pieces that a latitude and longitude are written with. */
#ifndef OX_PLACES_COORDINATES_H
#define OX_PLACES_COORDINATES_H

#include <stddef.h>
#include <stdint.h>

#include "oxbow/status.h"

typedef enum {
  OX_PIECE_NUMBER,
  OX_PIECE_LETTER, /* N, S, E or W */
  OX_PIECE_PLUS,
  OX_PIECE_HYPHEN, /* minus, or a hyphen between figures */
  OX_PIECE_COLON,
  OX_PIECE_MARK,   /* degrees, minutes or seconds */
  OX_PIECE_COMMA,  /* comma, semicolon or stroke: between latitude and longitude */
} ox_piece_kind;

typedef struct {
  ox_piece_kind kind;
  char letter;         /* capital */
  int unit;            /* of a mark: 0 degrees, 1 minutes, 2 seconds */
  uint64_t figures;    /* of a number, without its point */
  int whole, decimals; /* how many of them stand before and after the point */
} ox_piece;

#define OX_PIECES_MAX 32

/* OX_ERROR with a sentence for a character that has no place in coordinates. */
ox_status ox_pieces_read(const char *text, ox_piece pieces[OX_PIECES_MAX], size_t *count,
                         char *remark, size_t remark_bytes);

#endif
