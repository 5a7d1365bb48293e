/* Holding clearances: from the words to a case, and from a case back to words.
 *
 * Reading allocates nothing and keeps nothing (it takes about 100 KB of stack); saying returns
 * malloc'd strings that belong to the caller, NULL when memory is out. No function depends on the
 * process locale. What is said on the radio, questions among it, is English whatever the reader's
 * language; names, reasons, briefing, cues and cards are in the reader's (text.h). */
#ifndef OXBOW_CLEARANCE_H
#define OXBOW_CLEARANCE_H

#include "oxbow/case.h"
#include "oxbow/flight.h"
#include "oxbow/status.h"

#define OX_CLEARANCE_BYTES_MAX 2000 /* a longer text is refused */
#define OX_CLEARANCE_ITEMS_MAX 32
#define OX_CLEARANCE_IGNORED_MAX 64
#define OX_CLEARANCE_DEFAULTS_MAX 12
#define OX_CLEARANCE_QUESTIONS_MAX 24
#define OX_CLEARANCE_FIELDS_MAX 12
#define OX_SENTENCE_BYTES 320
#define OX_PRESENT_POSITION "PRESENT POSITION" /* the fix of "hold at present position" */

/* United States: 7110.65 4-6-1, 4-6-4 and AIM 5-3-8. ICAO: Doc 4444 style. */
typedef enum { OX_WORDING_US, OX_WORDING_ICAO } ox_wording;

/* ---- Reading ---- */

/* Bytes `at` to `at + length - 1` of the text. */
typedef struct {
  size_t at, length;
} ox_span;

typedef enum {
  OX_ITEM_LIMIT,     /* clearance limit: name */
  OX_ITEM_DIRECTION, /* from the fix: value = middle of the eighth, 0, 45, … 315 */
  OX_ITEM_FIX,       /* name; unit NM or s: value = so far ahead of the aircraft */
  OX_ITEM_FIX_DME,   /* value = DME of the fix, NM; name = the station where it was said */
  OX_ITEM_DME_RANGE, /* "between 15 and 20 DME": value, value2 = the lower and the higher, NM */
  OX_ITEM_RADIAL,    /* value = degrees 1..360; name = the station where it was said; value2 = 1:
                        to hold on it, "on the …" */
  OX_ITEM_BEARING,   /* bearing FROM the fix or station: value = degrees; name as above */
  OX_ITEM_COURSE,    /* a course or track that is not called inbound or outbound: degrees */
  OX_ITEM_INBOUND,   /* inbound course or track, or a bearing TO: degrees */
  OX_ITEM_OUTBOUND,  /* outbound course or track: degrees */
  OX_ITEM_AIRWAY,    /* name */
  OX_ITEM_LEG,       /* value in the unit (s or NM); value2 = +1 inbound, -1 outbound, 0 not said */
  OX_ITEM_TURNS,     /* value = +1 right, -1 left */
  OX_ITEM_EFC,       /* value in the unit: minute of the day, of the hour, or minutes from now;
                        value2 = 1: "half past one", may be 12 hours later; -1: local time */
  OX_ITEM_ALTITUDE,  /* value = feet; unit FL where it was said as a flight level */
  OX_ITEM_SPEED,     /* value = KIAS, a maximum */
  OX_ITEM_DELAY,     /* value = minutes; 0: none expected; -1: not determined */
  OX_ITEM_PUBLISHED, /* as published */
  OX_ITEM_NOW,       /* the time now: minute of the day or of the hour */
  OX_ITEM_ROUTE,     /* routing by which the clearance goes on; name = its words */
  OX_ITEM_ARC,       /* DME arc: value = NM, 0 not said; value2 = 1: a place; name = station */
  OX_ITEM_KIND_COUNT
} ox_item_kind;

typedef enum {
  OX_UNIT_NONE, OX_UNIT_DEG, OX_UNIT_S, OX_UNIT_NM, OX_UNIT_FT, OX_UNIT_FL, OX_UNIT_KT,
  OX_UNIT_MIN, OX_UNIT_MIN_OF_DAY, OX_UNIT_MIN_OF_HOUR, OX_UNIT_MIN_AHEAD
} ox_item_unit;

/* What a name is said to be: "LARCH VOR" is a station, "LARCH intersection" a point. */
typedef enum { OX_FACILITY_UNSAID, OX_FACILITY_STATION, OX_FACILITY_POINT } ox_facility;

typedef struct {
  ox_item_kind kind;
  ox_span words; /* the words that say it */
  double value, value2;
  ox_item_unit unit;
  ox_facility facility;
  char name[OX_FIX_NAME_BYTES];
  bool sound; /* false: the value is out of its range and was not used */
} ox_item;

/* Something the words left open: which item, and why it is as it is. */
typedef struct {
  ox_item_kind kind;
  char reason[OX_SENTENCE_BYTES];
} ox_item_default;

typedef enum {
  OX_ASK_SAY_AGAIN,                /* nothing of a holding clearance was understood */
  OX_ASK_FIX,                      /* missing */
  OX_ASK_DIRECTION,                /* missing */
  OX_ASK_LINE,                     /* radial, course, bearing or track missing */
  OX_ASK_EFC,                      /* missing */
  OX_ASK_DIRECTION_AGAINST_LINE,   /* the outbound leg does not lie in the eighth named */
  OX_ASK_INBOUND_AGAINST_OUTBOUND, /* not each other's reciprocal */
  OX_ASK_INBOUND_AGAINST_LINE,     /* the inbound course does not lie along the radial or course */
  OX_ASK_EFC_PAST,                 /* EFC before the time now */
  OX_ASK_EFC_AGAINST_NO_DELAY,     /* an EFC, and no delay expected */
  OX_ASK_LEG_UNIT,                 /* miles, or a DME fix, without equipment that measures them */
  OX_ASK_LEG_AGAINST_DME,          /* leg length and DME limits differ */
  OX_ASK_SPEED_ABOVE_LIMIT,        /* speed above the table for the altitude */
  OX_ASK_FIX_AGAINST_LIMIT,        /* hold at one point, cleared to another */
  OX_ASK_TWO_VALUES,               /* one item said twice, differently */
  OX_ASK_OUT_OF_RANGE,             /* a value that cannot be */
  OX_ASK_EFC_HOUR,                 /* the hour of the EFC is one of two, 12 hours apart */
  OX_ASK_ARC,                      /* hold on an arc, and no point of it */
  OX_ASK_KIND_COUNT
} ox_ask_kind;

/* A question to put to the controller, in phraseology. */
typedef struct {
  ox_ask_kind kind;
  ox_item_kind item;   /* what it is about */
  int first, second;   /* indices of the items that clash, -1 where there is none */
  char text[OX_SENTENCE_BYTES];
} ox_question;

typedef enum { OX_EQUIPMENT_UNKNOWN, OX_EQUIPMENT_NO_DISTANCE, OX_EQUIPMENT_DISTANCE } ox_equipment;

typedef struct {
  ox_wording wording;     /* of the questions; also chooses the table of speeds */
  int now_min;            /* minute of the day UTC, -1: not known (a time in the text wins) */
  ox_equipment equipment; /* whether DME or RNAV measures miles */
} ox_clearance_options;

typedef struct {
  size_t item_count;
  ox_item items[OX_CLEARANCE_ITEMS_MAX]; /* in the order of the words */
  size_t ignored_count;
  ox_span ignored[OX_CLEARANCE_IGNORED_MAX]; /* words of no use; articles and the like not listed */
  size_t default_count;
  ox_item_default defaults[OX_CLEARANCE_DEFAULTS_MAX];
  size_t question_count;
  ox_question questions[OX_CLEARANCE_QUESTIONS_MAX];
  size_t field_count;
  const char *fields[OX_CLEARANCE_FIELDS_MAX]; /* keys the words set: "hold.inbound_deg"; static */
  ox_case result; /* the case given with those fields set; ox_case_check finds no fault in it */
} ox_clearance;

/* US, time and equipment not known. */
ox_clearance_options ox_clearance_options_default(void);

/* Understands a clearance. `base` is the case it changes (NULL: ox_case_default); options may be
 * NULL. The words decide fix, inbound course, turns, leg, EFC, speed limit; what a clearance left
 * unsaid means the standard (right turns, leg by altitude, no EFC), but with "as published" it
 * keeps what the base has. An altitude that is not said stays.
 *
 * Meaning: the direction is from the fix. Inbound said outright wins, then outbound. A radial of
 * a station at the fix is the outbound course; where the fix is elsewhere (a DME fix, an
 * intersection, a radial of a station with another name) the direction tells whether the radial
 * or its reciprocal is outbound. Where they clash the radial is taken and a question is asked.
 * Times are UTC. "Half past one" and minutes of an hour are the next such time after the time now,
 * or after the base's arrival.fix_at where the time now is not known.
 *
 * OX_OK; OX_ADVISORY when there are questions; OX_ERROR (*out untouched) when text or out is NULL,
 * the text is longer than OX_CLEARANCE_BYTES_MAX, or ox_case_check finds a fault in the base. */
ox_status ox_clearance_read(const char *text, const ox_case *base,
                            const ox_clearance_options *options, ox_clearance *out);

/* "clearance limit", "radial", … Static, never NULL. */
const char *ox_item_name(ox_item_kind kind);
/* What is in doubt, as a sentence in the reader's language to stand beside the English phrase of
 * the question; false, and "", where that language is English and the phrase says it all. */
bool ox_question_meaning(char *buf, size_t bytes, const ox_question *question);
/* First sound item of a kind, or NULL. */
const ox_item *ox_clearance_find(const ox_clearance *c, ox_item_kind kind);
/* The radial or bearing to hold on, or NULL. */
const ox_item *ox_clearance_line(const ox_clearance *c);
/* The first radials or bearings of two different stations, which cross at the fix; false: there are
 * not two. Either output may be NULL. */
bool ox_clearance_crossing(const ox_clearance *c, const ox_item **first, const ox_item **second);
/* Whether two names mean one place: "Larch" and "LARCH VOR" do. */
bool ox_clearance_same_place(const char *a, const char *b);

/* ---- Saying ---- */

typedef struct {
  ox_wording wording;
  bool spoken;          /* numbers as they are spoken, figure by figure */
  double transition_ft; /* flight levels from here up; 0: 18 000 in the US, else 10 000 */
  const char *callsign; /* NULL: none */
  const ox_clearance *heard; /* the words that the hold came out of; NULL: none */
} ox_say_options;

/* US, in figures, no call sign. */
ox_say_options ox_say_options_default(void);

/* Whether the words tell a hold, and the hold of this case is the one that came out of them. An
 * amendment ("maintain 7000") tells none. */
bool ox_clearance_tells(const ox_clearance *heard, const ox_case *c);
/* The clearance that leads to this case. Courses are said in whole degrees, altitudes in feet,
 * leg times in whole seconds, leg lengths in hundredths of a mile; within that, reading it gives
 * the same case back; the ICAO form names the standard leg time, which comes back as a time. A fix
 * that could be mistaken for other words stands in quotation marks.
 *
 * With `heard`, while ox_clearance_tells, only what they said is
 * said: no altitude that was not assigned, a hold on a radial with the radial (AIM 5-3-8 i 3). */
char *ox_say_clearance(const ox_case *c, const ox_say_options *o);
/* The read-back of it, with the call sign. */
char *ox_say_readback(const ox_case *c, const ox_say_options *o);
/* Reports on reaching and on leaving the fix: time (minute of the day UTC, -1: left out) and
 * altitude. AIM 5-3-8 f, 5-3-3 a1(f), (g). */
char *ox_say_entering(const ox_case *c, int time_min, const ox_say_options *o);
char *ox_say_leaving(const ox_case *c, int time_min, const ox_say_options *o);

/* The hold and its entry for the cockpit. The long form gives reasons, limits and the caution. */
typedef enum { OX_BRIEFING_SHORT, OX_BRIEFING_LONG } ox_briefing;
char *ox_say_briefing(const ox_case *c, const ox_flight *flight, ox_briefing length,
                      const ox_say_options *o);

/* What to do on crossing the fix: turn, time, twist, throttle, talk (common practice). */
#define OX_CUES 5
typedef struct {
  const char *cue; /* static: "Turn" */
  char text[OX_SENTENCE_BYTES];
} ox_cue;
void ox_say_cues(const ox_case *c, const ox_flight *flight, const ox_say_options *o,
                 ox_cue cues[OX_CUES]);

/* Cards for the entry and the first circuit, one for each piece of flight. */
#define OX_STEPS_MAX 24
typedef struct {
  ox_leg_kind leg;
  double heading_deg; /* magnetic, at its end */
  double duration_s;
  int turn;           /* +1 right, -1 left, 0 straight on */
  char text[OX_SENTENCE_BYTES];
} ox_step;
/* Fills at most `max` cards and returns how many. */
size_t ox_say_steps(const ox_case *c, const ox_flight *flight, const ox_say_options *o,
                    ox_step *steps, size_t max);

#endif
