/* Latitude and longitude from text. The pieces are split into two halves (by the letters, a comma,
 * a sign, or in the middle) and each half is read as degrees, degrees and minutes, or degrees,
 * minutes and seconds. A half that is one long number is packed: how many figures it has says
 * what they are, with two figures of degrees for a latitude and three for a longitude. */
#include <math.h>
#include <stdbool.h>

#include "coordinates.h"
#include "oxbow/place.h"
#include "oxbow/text.h"
#include "remark.h"

typedef struct {
  const ox_piece *pieces;
  size_t count;
} run;

typedef struct {
  run pieces;
  char letter; /* 0 when signs are used */
  bool is_latitude;
} half;

typedef struct {
  char *remark;
  size_t bytes;
} complaint;

static ox_status refuse(complaint c, const char *sentence) {
  return ox_remark(OX_ERROR, c.remark, c.bytes, "%s", sentence);
}

/* A clause that is marked for translators, and how it should be. */
static ox_status refuse_showing(complaint c, const char *what) {
  /* translators: what is wrong with the coordinates that were typed, as a clause */
  return ox_remark(OX_ERROR, c.remark, c.bytes,
                   _("%s; write for example 42 44.84N 073 48.19W or 42.7473, -73.8032."),
                   _(what));
}

static double power_of_ten(int n) {
  double p = 1;
  while (n-- > 0)
    p *= 10;
  return p;
}

static double number_of(const ox_piece *p) {
  return (double)p->figures / power_of_ten(p->decimals);
}

static run slice(run r, size_t from, size_t to) {
  return (run){r.pieces + from, to - from};
}

/* --- one half --- */

/* DDMM, DDMMSS or DDMMSSss in one number (one more figure of degrees for a longitude). */
static ox_status read_packed(const ox_piece *p, bool is_latitude, double *degrees, complaint c) {
  int after = p->whole - (is_latitude ? 2 : 3);
  if (after != 2 && after != 4 && !(after == 6 && p->decimals == 0))
    return refuse(c, is_latitude ? _("A packed latitude has 2, 4, 6 or 8 figures: 43N, 4245N, "
                                     "424450N or N42445020.")
                                 : _("A packed longitude has 3, 5, 7 or 9 figures: 074W, 07348W, "
                                     "0734811W or W073481147."));
  uint64_t scale = 1;
  for (int i = 0; i < p->decimals; i++)
    scale *= 10;
  uint64_t whole = p->figures / scale;
  double fraction = (double)(p->figures % scale) / (double)scale;
  double minutes, seconds = 0;
  if (after == 2) {
    *degrees = (double)(whole / 100);
    minutes = (double)(whole % 100) + fraction;
  } else {
    uint64_t per_second = after == 6 ? 100 : 1;
    uint64_t per_minute = 100 * per_second, per_degree = 100 * per_minute;
    *degrees = (double)(whole / per_degree);
    minutes = (double)(whole / per_minute % 100);
    seconds = (double)(whole % per_minute) / (double)per_second + fraction;
  }
  if (minutes >= 60 || seconds >= 60)
    return refuse(c, _("Minutes and seconds must be below 60."));
  *degrees += (minutes * 60 + seconds) / 3600;
  return OX_OK;
}

/* One to three numbers with their marks; hyphens and colons stand between two numbers. */
static ox_status collect(half h, const ox_piece *numbers[3], size_t *count, bool *marked,
                         complaint c) {
  bool number_before = false, joined = false;
  *count = 0;
  *marked = false;
  for (size_t i = 0; i < h.pieces.count; i++) {
    const ox_piece *p = &h.pieces.pieces[i];
    if (p->kind == OX_PIECE_NUMBER) {
      if (*count == 3)
        return refuse_showing(c, N_("There are more than degrees, minutes and seconds"));
      numbers[(*count)++] = p;
      number_before = true;
      joined = false;
    } else if (p->kind == OX_PIECE_MARK) {
      if (!number_before || p->unit != (int)*count - 1)
        return refuse_showing(c, N_("A degree, minute or second mark stands in the wrong place"));
      *marked = true;
      number_before = false;
    } else if (p->kind == OX_PIECE_COLON || (p->kind == OX_PIECE_HYPHEN && h.letter)) {
      if (*count == 0 || joined)
        return refuse_showing(c, N_("A sign and a letter together are not read: use one of them"));
      joined = true;
      number_before = false;
    } else {
      return refuse_showing(c, N_("A sign or comma stands in the wrong place"));
    }
  }
  if (*count == 0 || joined) return refuse_showing(c, N_("A number is missing"));
  return OX_OK;
}

static ox_status read_parts(const ox_piece *const numbers[3], size_t count, int most_figures,
                            double *degrees, complaint c) {
  static const double worth[3] = {1, 60, 3600};
  double sum_s = 0;
  for (size_t i = 0; i < count; i++) {
    double value = number_of(numbers[i]);
    if (i + 1 < count && numbers[i]->decimals > 0)
      return refuse(c, _("Only the last part of a latitude or longitude may have decimals."));
    if (i > 0 && (value >= 60 || numbers[i]->whole > 2))
      return refuse(c, _("Minutes and seconds must be below 60."));
    sum_s += value * 3600 / worth[i];
  }
  if (numbers[0]->whole > most_figures)
    return refuse(c, _("Degrees have at most two figures of latitude and three of longitude."));
  *degrees = count == 1 ? number_of(numbers[0]) : sum_s / 3600;
  return OX_OK;
}

static ox_status read_half(half h, double *degrees, complaint c) {
  double sign = h.letter == 'S' || h.letter == 'W' ? -1 : 1;
  if (!h.letter && h.pieces.count > 0) {
    ox_piece_kind kind = h.pieces.pieces[0].kind;
    if (kind == OX_PIECE_HYPHEN) sign = -1;
    if (kind == OX_PIECE_HYPHEN || kind == OX_PIECE_PLUS)
      h.pieces = slice(h.pieces, 1, h.pieces.count);
  }
  const ox_piece *numbers[3] = {0};
  size_t count;
  bool marked;
  int most_figures = h.is_latitude ? 2 : 3;
  if (collect(h, numbers, &count, &marked, c) != OX_OK) return OX_ERROR;
  double value = 0;
  if (count == 1 && !marked && h.letter && numbers[0]->whole > most_figures) {
    if (read_packed(numbers[0], h.is_latitude, &value, c) != OX_OK) return OX_ERROR;
  } else if (read_parts(numbers, count, most_figures, &value, c) != OX_OK) {
    return OX_ERROR;
  }
  if (value > (h.is_latitude ? 90 : 180))
    return refuse(c, h.is_latitude ? _("A latitude is at most 90 degrees.")
                                   : _("A longitude is at most 180 degrees."));
  *degrees = sign * value + 0.0; /* no -0 */
  return OX_OK;
}

/* --- the two halves --- */

static bool is_sign(const ox_piece *p) {
  return p->kind == OX_PIECE_PLUS || p->kind == OX_PIECE_HYPHEN;
}

/* A comma at the seam between the halves belongs to neither. */
static bool drop_comma(half *first, half *second) {
  run *a = &first->pieces, *b = &second->pieces;
  bool at_end = a->count > 0 && a->pieces[a->count - 1].kind == OX_PIECE_COMMA;
  bool at_begin = b->count > 0 && b->pieces[0].kind == OX_PIECE_COMMA;
  if (at_end) *a = slice(*a, 0, a->count - 1);
  if (at_begin) *b = slice(*b, 1, b->count);
  return !(at_end && at_begin);
}

static ox_status split_by_letters(run all, const size_t at[2], half halves[2], complaint c) {
  bool before = at[0] == 0;
  if (before ? at[1] + 1 == all.count : at[1] + 1 != all.count)
    return refuse_showing(c, N_("The letters stand both before or both after the figures"));
  halves[0].letter = all.pieces[at[0]].letter;
  halves[1].letter = all.pieces[at[1]].letter;
  halves[0].pieces = before ? slice(all, 1, at[1]) : slice(all, 0, at[0]);
  halves[1].pieces = before ? slice(all, at[1] + 1, all.count) : slice(all, at[0] + 1, at[1]);
  for (int i = 0; i < 2; i++)
    halves[i].is_latitude = halves[i].letter == 'N' || halves[i].letter == 'S';
  if (halves[0].is_latitude == halves[1].is_latitude)
    return refuse_showing(c, N_("One letter must be N or S and the other E or W"));
  return OX_OK;
}

/* Where the longitude begins when signs are used; 0 when that cannot be told. */
static size_t seam(run all) {
  size_t numbers = 0, seen = 0;
  for (size_t i = 1; i < all.count; i++)
    if (all.pieces[i].kind == OX_PIECE_COMMA) return i;
  for (size_t i = 1; i < all.count; i++)
    if (is_sign(&all.pieces[i])) return i;
  for (size_t i = 0; i < all.count; i++)
    numbers += all.pieces[i].kind == OX_PIECE_NUMBER;
  for (size_t i = 0; i < all.count && numbers % 2 == 0; i++)
    if (all.pieces[i].kind == OX_PIECE_NUMBER && seen++ == numbers / 2) return i;
  return 0;
}

static ox_status split(run all, half halves[2], complaint c) {
  size_t letters = 0, at[2] = {0, 0};
  for (size_t i = 0; i < all.count; i++)
    if (all.pieces[i].kind == OX_PIECE_LETTER) {
      if (letters < 2) at[letters] = i;
      letters++;
    }
  halves[0] = (half){.is_latitude = true};
  halves[1] = (half){.is_latitude = false};
  if (letters == 2) {
    if (split_by_letters(all, at, halves, c) != OX_OK) return OX_ERROR;
  } else if (letters == 0) {
    size_t i = seam(all);
    if (i == 0) return refuse_showing(c, N_("A latitude and a longitude are needed"));
    halves[0].pieces = slice(all, 0, i);
    halves[1].pieces = slice(all, i, all.count);
  } else {
    return refuse_showing(c,
                          N_("Give a letter for the latitude and one for the longitude, or none"));
  }
  if (!drop_comma(&halves[0], &halves[1]))
    return refuse_showing(c, N_("A sign or comma stands in the wrong place"));
  return OX_OK;
}

ox_status ox_latlon_parse(const char *text, ox_latlon *out, char *remark, size_t remark_bytes) {
  complaint c = {remark, remark_bytes};
  ox_piece pieces[OX_PIECES_MAX];
  size_t count = 0;
  half halves[2];
  double first_deg, second_deg;
  if (ox_pieces_read(text, pieces, &count, remark, remark_bytes) != OX_OK) return OX_ERROR;
  if (count == 0) return refuse_showing(c, N_("A latitude and a longitude are needed"));
  if (split((run){pieces, count}, halves, c) != OX_OK) return OX_ERROR;
  if (read_half(halves[0], &first_deg, c) != OX_OK) return OX_ERROR;
  if (read_half(halves[1], &second_deg, c) != OX_OK) return OX_ERROR;
  *out = halves[0].is_latitude ? (ox_latlon){first_deg, second_deg}
                               : (ox_latlon){second_deg, first_deg};
  return ox_no_remark(remark, remark_bytes);
}
