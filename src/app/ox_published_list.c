/* Published holds as a list model. */
#include "ox_published_list.h"

#include <stdio.h>
#include <string.h>

#include "oxbow/angle.h"
#include "oxbow/text.h"

struct _OxPublishedRow {
  GObject parent_instance;
  size_t index;
  gboolean read; /* FALSE: the file has been shortened under it */
  ox_published_hold hold;
};

struct _OxPublishedList {
  GObject parent_instance;
  const ox_navdata *data;
  GArray *found; /* guint32: numbers of holds */
  char **words;  /* what is searched for; owned */
};

G_DEFINE_FINAL_TYPE(OxPublishedRow, ox_published_row, G_TYPE_OBJECT)

static void ox_published_row_class_init(OxPublishedRowClass *class) {}

static void ox_published_row_init(OxPublishedRow *self) {}

/* ---- the model -------------------------------------------------------------------------- */

static GType item_type(GListModel *model) { return OX_TYPE_PUBLISHED_ROW; }

static guint item_count(GListModel *model) { return OX_PUBLISHED_LIST(model)->found->len; }

static gpointer item(GListModel *model, guint position) {
  OxPublishedList *self = OX_PUBLISHED_LIST(model);
  if (position >= self->found->len) return NULL;
  OxPublishedRow *row = g_object_new(OX_TYPE_PUBLISHED_ROW, NULL);
  row->index = g_array_index(self->found, guint32, position);
  row->read = ox_navdata_hold(self->data, row->index, &row->hold) == OX_OK;
  return row;
}

static void model_init(GListModelInterface *interface) {
  interface->get_item_type = item_type;
  interface->get_n_items = item_count;
  interface->get_item = item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE(OxPublishedList, ox_published_list, G_TYPE_OBJECT,
                              G_IMPLEMENT_INTERFACE(G_TYPE_LIST_MODEL, model_init))

static void finalize(GObject *object) {
  OxPublishedList *self = OX_PUBLISHED_LIST(object);
  g_array_unref(self->found);
  g_strfreev(self->words);
  G_OBJECT_CLASS(ox_published_list_parent_class)->finalize(object);
}

static void ox_published_list_class_init(OxPublishedListClass *class) {
  G_OBJECT_CLASS(class)->finalize = finalize;
}

static void ox_published_list_init(OxPublishedList *self) {
  self->found = g_array_new(FALSE, FALSE, sizeof(guint32));
  self->words = g_new0(char *, 1);
}

OxPublishedList *ox_published_list_new(void) { return g_object_new(OX_TYPE_PUBLISHED_LIST, NULL); }

/* ---- the search ------------------------------------------------------------------------- */

static gboolean begins(const char *name, const char *word) {
  return g_ascii_strncasecmp(name, word, strlen(word)) == 0;
}

static gboolean matches(const ox_published_hold *h, char **words) {
  for (; *words; words++)
    if (**words && !begins(h->fix.ident, *words) && !begins(h->airport, *words) &&
        !begins(h->procedure, *words) && !begins(h->transition, *words))
      return FALSE;
  return TRUE;
}

static void find(OxPublishedList *self) {
  guint before = self->found->len;
  size_t count = self->data ? ox_navdata_hold_count(self->data) : 0;
  g_array_set_size(self->found, 0);
  for (size_t i = 0; i < count; i++) {
    ox_published_hold hold;
    guint32 index = (guint32)i;
    if (*self->words && (ox_navdata_hold(self->data, i, &hold) != OX_OK ||
                         !matches(&hold, self->words)))
      continue;
    g_array_append_val(self->found, index);
  }
  g_list_model_items_changed(G_LIST_MODEL(self), 0, before, self->found->len);
}

void ox_published_list_set_data(OxPublishedList *self, const ox_navdata *data) {
  self->data = data;
  find(self);
}

void ox_published_list_search(OxPublishedList *self, const char *words) {
  char *stripped = g_strstrip(g_strdup(words));
  g_strfreev(self->words);
  self->words = *stripped ? g_strsplit(stripped, " ", -1) : g_new0(char *, 1);
  g_free(stripped);
  find(self);
}

/* ---- a row ------------------------------------------------------------------------------ */

size_t ox_published_row_index(OxPublishedRow *self) { return self->index; }

const char *ox_published_column_title(ox_published_column column) {
  static const char *const titles[OX_PUBLISHED_COLUMNS] = {
      N_("Airport"), N_("Procedure"), N_("Transition"), N_("Fix"), N_("Inbound"),
      N_("Turns"), N_("Leg"), N_("Altitude"), N_("Speed Limit")};
  return _(titles[column]);
}

/* Published courses are whole degrees or tenths of one. */
static void course_text(const ox_published_hold *h, char *buf, size_t bytes) {
  const char *north = h->inbound_north == OX_NORTH_TRUE ? C_("true north", "T")
                                                        : C_("magnetic north", "M");
  double deg = ox_norm360_deg(h->inbound_deg);
  double tenths = (double)(long)(deg * 10.0 + 0.5);
  if (tenths <= 0.0 || tenths >= 3600.0) tenths = 3600.0;
  gboolean whole = tenths == 10.0 * (double)(long)(tenths / 10.0);
  snprintf(buf, bytes, whole ? "%03.0f° %s" : "%05.1f° %s", tenths / 10.0, north);
}

static void leg_text(const ox_published_hold *h, char *buf, size_t bytes) {
  if (!h->leg_given)
    snprintf(buf, bytes, "%s", "");
  else if (h->leg_by == OX_LEG_BY_TIME)
    snprintf(buf, bytes, _("%g min"), h->leg_s / 60.0);
  else
    snprintf(buf, bytes, _("%g NM"), h->leg_nm);
}

/* A record that is silent about the turns means right ones. */
static void turns_text(const ox_published_hold *h, char *buf, size_t bytes) {
  gboolean left = h->turns == OX_TURNS_LEFT;
  const char *turns = left ? C_("direction of turns", "left") : C_("direction of turns", "right");
  snprintf(buf, bytes, h->turns_given ? "%s" : _("%s (not coded)"), turns);
}

void ox_published_row_text(OxPublishedRow *self, ox_published_column column, char *buf,
                           size_t bytes) {
  const ox_published_hold *h = &self->hold;
  const char *text = NULL;
  buf[0] = '\0';
  if (!self->read) return;
  switch (column) {
  case OX_PUBLISHED_AIRPORT: text = h->airport[0] ? h->airport : _("enroute"); break;
  case OX_PUBLISHED_PROCEDURE: text = h->procedure; break;
  case OX_PUBLISHED_TRANSITION: text = h->transition; break;
  case OX_PUBLISHED_FIX: text = h->fix.ident; break;
  case OX_PUBLISHED_COURSE: course_text(h, buf, bytes); break;
  case OX_PUBLISHED_TURNS: turns_text(h, buf, bytes); break;
  case OX_PUBLISHED_LEG: leg_text(h, buf, bytes); break;
  case OX_PUBLISHED_ALTITUDE: ox_published_altitude_text(h, buf, bytes); break;
  case OX_PUBLISHED_LIMIT:
    if (h->limit_kias > 0) snprintf(buf, bytes, "%.0f KIAS", h->limit_kias);
    break;
  case OX_PUBLISHED_COLUMNS: break;
  }
  if (text) g_strlcpy(buf, text, bytes);
}
