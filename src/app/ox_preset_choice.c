/* Presets to choose from: their names are sentences, so the button cuts them and the list wraps
 * them, with the rule and its source beneath. */
#include "ox_preset_choice.h"

#include "oxbow/presets.h"
#include "oxbow/text.h"

#define OWN_NAME _("Own technique")
#define OWN_RULE _("Set by hand, input by input; comes by itself when one of them differs.")

static GtkWidget *label_new(void) {
  GtkWidget *label = gtk_label_new(NULL);
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  return label;
}

static const char *name_of(GtkListItem *item) {
  return gtk_string_object_get_string(GTK_STRING_OBJECT(gtk_list_item_get_item(item)));
}

static void button_setup_cb(GtkSignalListItemFactory *factory, GtkListItem *item) {
  GtkWidget *label = label_new();
  gtk_label_set_ellipsize(GTK_LABEL(label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars(GTK_LABEL(label), 8);
  gtk_label_set_max_width_chars(GTK_LABEL(label), 18);
  gtk_list_item_set_child(item, label);
}

static void button_bind_cb(GtkSignalListItemFactory *factory, GtkListItem *item) {
  gtk_label_set_text(GTK_LABEL(gtk_list_item_get_child(item)), name_of(item));
}

static void list_setup_cb(GtkSignalListItemFactory *factory, GtkListItem *item) {
  GtkWidget *box = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *name = label_new(), *rule = label_new();
  gtk_label_set_wrap(GTK_LABEL(rule), TRUE);
  gtk_label_set_max_width_chars(GTK_LABEL(rule), 48);
  gtk_widget_add_css_class(rule, "rule");
  gtk_box_append(GTK_BOX(box), name);
  gtk_box_append(GTK_BOX(box), rule);
  gtk_list_item_set_child(item, box);
}

static void list_bind_cb(GtkSignalListItemFactory *factory, GtkListItem *item) {
  const ox_preset *preset = ox_preset_at(gtk_list_item_get_position(item));
  GtkWidget *name = gtk_widget_get_first_child(gtk_list_item_get_child(item));
  char *rule = preset ? g_strdup_printf("%s\n%s", _(preset->rule), _(preset->source)) : NULL;
  gtk_label_set_text(GTK_LABEL(name), name_of(item));
  gtk_label_set_text(GTK_LABEL(gtk_widget_get_next_sibling(name)), rule ? rule : OWN_RULE);
  g_free(rule);
}

static GtkListItemFactory *factory_new(GCallback setup, GCallback bind) {
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new();
  g_signal_connect(factory, "setup", setup, NULL);
  g_signal_connect(factory, "bind", bind, NULL);
  return factory;
}

GtkWidget *ox_preset_choice_new(void) {
  GtkStringList *names = gtk_string_list_new(NULL);
  for (size_t i = 0; i < ox_preset_count(); i++)
    gtk_string_list_append(names, _(ox_preset_at(i)->name));
  gtk_string_list_append(names, OWN_NAME);
  GtkWidget *choice = gtk_drop_down_new(G_LIST_MODEL(names), NULL);
  GtkListItemFactory *button = factory_new(G_CALLBACK(button_setup_cb), G_CALLBACK(button_bind_cb));
  GtkListItemFactory *list = factory_new(G_CALLBACK(list_setup_cb), G_CALLBACK(list_bind_cb));
  gtk_drop_down_set_factory(GTK_DROP_DOWN(choice), button);
  gtk_drop_down_set_list_factory(GTK_DROP_DOWN(choice), list);
  g_object_unref(button);
  g_object_unref(list);
  return choice;
}
