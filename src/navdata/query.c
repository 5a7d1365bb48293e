/* Asking an open file: its holds one by one, by name, and the points that they name. */
#include <string.h>

#include "index.h"
#include "oxbow/text.h"
#include "sentence.h"

const ox_navdata_report *ox_navdata_report_of(const ox_navdata *data) { return &data->report; }

size_t ox_navdata_index_bytes(const ox_navdata *data) {
  return sizeof *data + data->hold_room * sizeof *data->holds +
         data->slot_count * sizeof *data->slots;
}

size_t ox_navdata_hold_count(const ox_navdata *data) { return data->report.holds; }

ox_status ox_navdata_hold(const ox_navdata *data, size_t index, ox_published_hold *out) {
  if (index >= data->report.holds || !ox_navdata_whole(data)) return OX_ERROR;
  ox_record r = data->bytes + data->holds[index];
  return ox_record_hold(r, ox_record_kind_of(r), out) ? OX_OK : OX_ERROR;
}

static bool matches(ox_record r, const ox_hold_query *query) {
  bool enroute = ox_record_kind_of(r) == OX_KIND_HOLD;
  if (query->fix && !ox_field_is(r, 30, 34, query->fix)) return false;
  if (query->airport && !ox_field_is(r, 7, 10, query->airport)) return false;
  return !query->procedure || (!enroute && ox_field_is(r, 14, 19, query->procedure));
}

bool ox_navdata_find(const ox_navdata *data, const ox_hold_query *query, size_t from,
                     size_t *found) {
  if (!ox_navdata_whole(data)) return false;
  for (size_t i = from; i < data->report.holds; i++)
    if (matches(data->bytes + data->holds[i], query)) {
      *found = i;
      return true;
    }
  return false;
}

static ox_status refuse_point(const ox_point_key *key, char *remark, size_t bytes) {
  bool airport = key->airport[0] != '\0';
  int section = key->section[1] == ' ' ? 1 : 2; /* "D" rather than "D " */
  if (airport)
    return ox_say(OX_ERROR, remark, bytes,
                  _("%s (section %.*s, region %s, airport %s) is not in the file."), key->ident,
                  section, key->section, key->region, key->airport);
  return ox_say(OX_ERROR, remark, bytes, _("%s (section %.*s, region %s) is not in the file."),
                key->ident, section, key->section, key->region);
}

ox_status ox_navdata_point_there(const ox_navdata *data, const ox_point_key *key,
                                 ox_published_point *out, char *remark, size_t remark_bytes) {
  ox_record r = NULL;
  if (strcmp(key->section, "D ") == 0) {
    ox_packed_key enroute = ox_pack_key(key, "");
    r = ox_index_point(data, &enroute);
  }
  if (!r) {
    ox_packed_key own = ox_pack_key(key, key->airport);
    r = ox_index_point(data, &own);
  }
  if (!r || !ox_record_point(r, ox_record_kind_of(r), out))
    return refuse_point(key, remark, remark_bytes);
  return ox_say(OX_OK, remark, remark_bytes, "%s", "");
}

ox_status ox_navdata_point(const ox_navdata *data, const ox_point_key *key,
                           ox_published_point *out, char *remark, size_t remark_bytes) {
  if (ox_navdata_whole(data))
    return ox_navdata_point_there(data, key, out, remark, remark_bytes);
  return ox_say(OX_ERROR, remark, remark_bytes,
                _("The file has been shortened since it was opened: open it again."));
}
