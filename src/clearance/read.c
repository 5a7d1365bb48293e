/* Reading a clearance from beginning to end: the longest phrase that fits at each place becomes an
 * item, words of no phrase are left aside, and then the items are made sense of. */
#include <string.h>

#include "oxbow/text.h"
#include "phrases.h"
#include "reading.h"

static void mark(clr_tokens *t, size_t first, size_t count, unsigned char as) {
  const clr_token *last = &t->tokens[first + count - 1];
  for (size_t i = t->tokens[first].at; i < last->at + last->length; i++)
    t->mark[i] = as;
}

/* The longest phrase at token i that makes an item. */
static bool best_phrase(const clr_tokens *t, size_t i, bool after_direction, clr_catch *best,
                        ox_item *item) {
  size_t count;
  const clr_phrase *phrases = clr_phrases(&count);
  best->tokens = 0;
  for (size_t p = 0; p < count; p++) {
    if (!clr_may_begin(&phrases[p], t->tokens[i].kind)) continue;
    if (phrases[p].after_direction && (!after_direction || t->tokens[i].breaks)) continue;
    clr_catch caught;
    ox_item made;
    if (!clr_try(t, i, &phrases[p], &caught) || caught.tokens <= best->tokens) continue;
    if (!clr_make_item(t, &caught, &made)) continue;
    *best = caught;
    *item = made;
  }
  return best->tokens > 0;
}

/* After "correction" what was said before of the same kind no longer counts. */
static void take_back(clr_tokens *t, ox_clearance *out, ox_item_kind kind) {
  size_t kept = 0;
  for (size_t i = 0; i < out->item_count; i++) {
    const ox_item *item = &out->items[i];
    if (item->kind == kind)
      memset(t->mark + item->words.at, CLR_MARK_IGNORED, item->words.length);
    else
      out->items[kept++] = *item;
  }
  out->item_count = kept;
}

static void find_items(clr_tokens *t, clr_reading *r) {
  ox_clearance *out = r->out;
  bool after_direction = false, corrected = false;
  for (size_t i = 0; i < t->count;) {
    clr_catch caught;
    ox_item item;
    if (t->tokens[i].kind == T_HOLD) r->hold_said = true;
    if (t->tokens[i].kind == T_CANCEL) r->cancelled = true;
    if (t->tokens[i].kind == T_LEAVE) r->leaves = true;
    bool found = best_phrase(t, i, after_direction, &caught, &item);
    after_direction = false;
    if (!found) {
      if (t->tokens[i].kind == T_CORRECTION) corrected = true;
      bool counted = i > 0 && t->tokens[i - 1].kind == T_FIGURE; /* "make one turn" */
      if (t->tokens[i].kind == T_TURN && !counted) r->turns_unclear = true;
      bool joins = t->tokens[i].kind >= T_AND && t->tokens[i].kind <= T_LAST_JOINING;
      if (!joins && t->tokens[i].kind != T_CORRECTION) mark(t, i, 1, CLR_MARK_IGNORED);
      i++;
      continue;
    }
    bool useful = item.kind != CLR_NO_ITEM;
    /* "climb to 3000 then climbing right turn to 5000": the first is a step on the way. */
    bool supersedes = item.kind == OX_ITEM_ALTITUDE && clr_saw(&caught, T_TURN);
    if (useful && (corrected || supersedes)) take_back(t, out, item.kind);
    if (useful) corrected = false;
    useful = useful && out->item_count < OX_CLEARANCE_ITEMS_MAX;
    mark(t, i, caught.tokens, useful ? CLR_MARK_USED : CLR_MARK_IGNORED);
    if (useful) {
      const clr_token *last = &t->tokens[i + caught.tokens - 1];
      bool on = i > 0 && t->tokens[i - 1].kind == T_ON && !t->tokens[i].breaks;
      if (on && (item.kind == OX_ITEM_RADIAL || item.kind == OX_ITEM_BEARING)) item.value2 = 1;
      item.words = (ox_span){t->tokens[i].at, last->at + last->length - t->tokens[i].at};
      out->items[out->item_count++] = item;
      after_direction = item.kind == OX_ITEM_DIRECTION;
    }
    i += caught.tokens;
  }
}

/* Words left aside, as ranges that reach over blanks and small words but not over an item. */
static void list_ignored(const clr_tokens *t, ox_clearance *out) {
  bool open = false;
  for (size_t i = 0; i < t->length; i++) {
    if (t->mark[i] == CLR_MARK_USED) open = false;
    if (t->mark[i] != CLR_MARK_IGNORED) continue;
    if (!open) {
      if (out->ignored_count == OX_CLEARANCE_IGNORED_MAX) return;
      out->ignored[out->ignored_count++].at = i;
      open = true;
    }
    ox_span *range = &out->ignored[out->ignored_count - 1];
    range->length = i + 1 - range->at;
  }
}

static void find_firsts(clr_reading *r) {
  for (int k = 0; k < OX_ITEM_KIND_COUNT; k++)
    r->first[k] = -1;
  for (size_t i = r->out->item_count; i-- > 0;)
    if (r->out->items[i].sound) r->first[r->out->items[i].kind] = (int)i;
}

static bool any_item(const ox_clearance *out, const ox_item_kind *kinds, size_t count) {
  for (size_t i = 0; i < out->item_count; i++)
    for (size_t k = 0; k < count; k++)
      if (out->items[i].kind == kinds[k]) return true;
  return false;
}

/* A clearance names a place, a direction or a line, or says to hold; anything less only amends
 * the hold that is flown ("EFC now 1915", "make left turns"). */
static void classify(clr_reading *r) {
  static const ox_item_kind holding[] = {
      OX_ITEM_LIMIT,  OX_ITEM_FIX,     OX_ITEM_FIX_DME, OX_ITEM_DME_RANGE, OX_ITEM_DIRECTION,
      OX_ITEM_RADIAL, OX_ITEM_BEARING, OX_ITEM_COURSE,  OX_ITEM_INBOUND,   OX_ITEM_OUTBOUND,
      OX_ITEM_AIRWAY, OX_ITEM_PUBLISHED};
  r->published = clr_item(r, OX_ITEM_PUBLISHED) != NULL;
  const ox_item *delay = clr_item(r, OX_ITEM_DELAY);
  r->no_delay = delay && delay->value == 0 && !(delay->value2 > 0 && clr_item(r, OX_ITEM_EFC));
  bool about_hold = any_item(r->out, holding + 1, sizeof holding / sizeof *holding - 1);
  r->cancelled = r->cancelled && !r->hold_said && !about_hold;
  r->leaves = r->leaves && !r->hold_said && !about_hold;
  if (r->cancelled || r->leaves) return;
  r->holds = r->hold_said || about_hold || (any_item(r->out, holding, 1) && !r->no_delay);
}

ox_clearance_options ox_clearance_options_default(void) {
  return (ox_clearance_options){.wording = OX_WORDING_US, .now_min = -1};
}

ox_status ox_clearance_read(const char *text, const ox_case *base,
                            const ox_clearance_options *options, ox_clearance *out) {
  if (!text || !out || strnlen(text, OX_CLEARANCE_BYTES_MAX + 1) > OX_CLEARANCE_BYTES_MAX)
    return OX_ERROR;
  ox_case start = base ? *base : ox_case_default();
  if (ox_case_check(&start, NULL, 0) != 0) return OX_ERROR;
  ox_clearance_options fallback = ox_clearance_options_default();
  clr_tokens t;
  clr_lex(&t, text, strlen(text));
  clr_gather(&t);
  out->item_count = out->ignored_count = out->default_count = 0;
  out->question_count = out->field_count = 0;
  out->result = start;
  clr_reading r = {.out = out, .o = options ? options : &fallback, .line_item = -1};
  find_items(&t, &r);
  list_ignored(&t, out);
  find_firsts(&r);
  classify(&r);
  clr_mean(&r);
  clr_doubt(&r);
  return out->question_count > 0 ? OX_ADVISORY : OX_OK;
}

const ox_item *ox_clearance_find(const ox_clearance *c, ox_item_kind kind) {
  for (size_t i = 0; i < c->item_count; i++)
    if (c->items[i].kind == kind && c->items[i].sound) return &c->items[i];
  return NULL;
}

/* Where several were said, of crossing radials for instance, the last that is said to hold on. */
const ox_item *ox_clearance_line(const ox_clearance *c) {
  const ox_item *first = NULL, *on = NULL;
  for (int kind = OX_ITEM_RADIAL; kind <= OX_ITEM_BEARING && !first; kind++)
    for (size_t i = 0; i < c->item_count; i++) {
      const ox_item *item = &c->items[i];
      if (item->kind != (ox_item_kind)kind || !item->sound) continue;
      if (!first) first = item;
      if (item->value2 > 0) on = item;
    }
  return on ? on : first;
}

bool ox_clearance_crossing(const ox_clearance *c, const ox_item **first, const ox_item **second) {
  const ox_item *one = NULL;
  for (size_t i = 0; i < c->item_count; i++) {
    const ox_item *item = &c->items[i];
    bool line = item->kind == OX_ITEM_RADIAL || item->kind == OX_ITEM_BEARING;
    if (!line || !item->sound || !item->name[0]) continue;
    if (!one) one = item;
    if (ox_clearance_same_place(one->name, item->name)) continue;
    if (first) *first = one;
    if (second) *second = item;
    return true;
  }
  return false;
}

const char *clr_item_word(ox_item_kind kind) {
  static const char *const names[OX_ITEM_KIND_COUNT] = {
      [OX_ITEM_LIMIT] = N_("clearance limit"), [OX_ITEM_DIRECTION] = N_("direction of holding"),
      [OX_ITEM_FIX] = N_("holding fix"),       [OX_ITEM_FIX_DME] = N_("DME fix"),
      [OX_ITEM_DME_RANGE] = N_("DME limits"),  [OX_ITEM_RADIAL] = N_("radial"),
      [OX_ITEM_BEARING] = N_("bearing"),       [OX_ITEM_COURSE] = N_("course"),
      [OX_ITEM_INBOUND] = N_("inbound course"), [OX_ITEM_OUTBOUND] = N_("outbound course"),
      [OX_ITEM_AIRWAY] = N_("airway"),         [OX_ITEM_LEG] = N_("leg length"),
      [OX_ITEM_TURNS] = N_("turns"),           [OX_ITEM_EFC] = N_("expect further clearance time"),
      [OX_ITEM_ALTITUDE] = N_("altitude"),     [OX_ITEM_SPEED] = N_("speed"),
      [OX_ITEM_DELAY] = N_("delay"),           [OX_ITEM_PUBLISHED] = N_("as published"),
      [OX_ITEM_NOW] = N_("time now"),          [OX_ITEM_ROUTE] = N_("further routing"),
      [OX_ITEM_ARC] = N_("DME arc")};
  return (unsigned)kind < OX_ITEM_KIND_COUNT ? names[kind] : N_("unknown item");
}

const char *ox_item_name(ox_item_kind kind) { return _(clr_item_word(kind)); }
