/* A clearance being read: what the parts of the reader hand to each other. Private. */
#ifndef OX_CLEARANCE_READING_H
#define OX_CLEARANCE_READING_H

#include "oxbow/clearance.h"
#include "text.h"

typedef enum {
  CLR_LINE_NONE,      /* nothing in the words tells the inbound course */
  CLR_LINE_INBOUND,   /* said outright */
  CLR_LINE_OUTBOUND,
  CLR_LINE_STATION,   /* a radial or bearing of a station at the fix */
  CLR_LINE_BARE,      /* of a fix that may or may not be the station: taken as one that is */
  CLR_LINE_ELSEWHERE, /* of a station elsewhere: the direction decides */
  CLR_LINE_COURSE     /* a course of which the direction tells which way is inbound */
} clr_line;

typedef struct {
  ox_clearance *out;
  const ox_clearance_options *o;
  int first[OX_ITEM_KIND_COUNT]; /* first sound item of a kind, or -1 */
  bool holds;                    /* it is about a hold and not an amendment of one */
  bool hold_said;                /* the word was there */
  bool published, no_delay;
  bool turns_unclear;            /* of turns something was said that is no side */
  bool leaves;                   /* it says when to leave the hold that is flown */
  bool cancelled;                /* the hold is called off, and no other is given */
  clr_line line;
  int line_item;                 /* the item that tells the inbound course, or -1 */
  double inbound_deg;            /* where line is not NONE */
  bool on_arc;                   /* to hold on an arc, and no point of it was said */
  int now_min;                   /* minute of the day, or -1 */
  int efc_min;                   /* minute of the day, or -1 */
  char fix[OX_FIX_NAME_BYTES];   /* of the hold, "" where the words name none */
  ox_facility facility;
} clr_reading;

/* First sound item of a kind, or NULL. */
const ox_item *clr_item(const clr_reading *r, ox_item_kind kind);
/* Whether the outbound leg (the reciprocal of the inbound course) lies in an eighth. */
bool clr_outbound_in_eighth(double inbound_deg, double eighth_deg);
/* Degrees between two bearings, 0..180. */
double clr_apart_deg(double a_deg, double b_deg);

/* Finds the inbound course, sets the fields of the case and notes what was left open. */
void clr_mean(clr_reading *r);
/* Whether the hold may be at the DME of a station, or at a point of its name: "of LARCH on the 270
 * radial, 15 DME". */
bool clr_may_be_station(const clr_reading *r);
/* The DME of the fix, NM, where there is one; of two limits that at which the inbound leg ends. */
double clr_fix_dme_nm(const clr_reading *r);
/* Writes the questions. */
void clr_doubt(clr_reading *r);

/* A new question, to be written into; a question too many goes nowhere. */
clr_text clr_ask(clr_reading *r, ox_ask_kind kind, ox_item_kind item, int first, int second);
/* Maximum holding speed (KIAS) of the wording's table; 0 where it is a Mach number. */
double clr_speed_limit_kias(ox_wording wording, double altitude_ft);

#endif
