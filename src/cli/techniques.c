/* techniques: the presets as CSV, for --compare and for whoever wants to know what they rest on. */
#include "cli_private.h"
#include "oxbow/presets.h"
#include "oxbow/text.h"

int cli_techniques(cli_io *io, int argc, char **argv) {
  int files;
  if (!cli_options(io, argc, argv, NULL, 0, &files)) return OX_CLI_USAGE;
  if (files != 0) return cli_wrong(io, _("techniques takes no lesson"));
  fputs("key,name,rule,source\n", io->out);
  for (size_t i = 0; i < ox_preset_count(); i++) {
    const ox_preset *p = ox_preset_at(i);
    const char *const fields[] = {p->key, p->name, p->rule, p->source};
    for (size_t k = 0; k < 4; k++) {
      if (k > 0) fputc(',', io->out);
      cli_put_field(io->out, fields[k]);
    }
    fputc('\n', io->out);
  }
  return OX_CLI_DONE;
}
