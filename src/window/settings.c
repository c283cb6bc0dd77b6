/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/settings.h"

#define MOST_RECENT 10

static char *
settings_path (void)
{
  return g_build_filename (g_get_user_state_dir (), "squab", "window.ini", NULL);
}

GKeyFile *
sq_settings_read (void)
{
  GKeyFile *settings = g_key_file_new ();
  g_autofree char *path = settings_path ();
  g_key_file_load_from_file (settings, path, G_KEY_FILE_NONE, NULL);
  return settings;
}

void
sq_settings_write (GKeyFile *settings)
{
  g_autofree char *path = settings_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  if (g_mkdir_with_parents (folder, 0700) == 0)
    g_key_file_save_to_file (settings, path, NULL);
}

/* --- recent files -------------------------------------------------------------------------- */

GPtrArray *
sq_settings_recent (void)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  GPtrArray *files = g_ptr_array_new_with_free_func (g_object_unref);
  gsize n = 0;
  g_auto (GStrv) uris = g_key_file_get_string_list (settings, SQ_SETTINGS_FILES, "recent", &n,
                                                    NULL);
  for (gsize i = 0; i < n && files->len < MOST_RECENT; i++)
    {
      g_autoptr (GFile) file = g_file_new_for_uri (uris[i]);
      if (g_file_query_exists (file, NULL))
        g_ptr_array_add (files, g_steal_pointer (&file));
    }
  return files;
}

static void
fill_menu (GMenu *menu)
{
  g_autoptr (GPtrArray) files = sq_settings_recent ();
  g_menu_remove_all (menu);
  for (guint i = 0; i < files->len; i++)
    {
      GFile *file = g_ptr_array_index (files, i);
      g_autofree char *path = g_file_get_basename (file);
      g_autofree char *name = g_filename_display_name (path);
      g_auto (GStrv) parts = g_strsplit (name, "_", -1);
      g_autofree char *label = g_strjoinv ("__", parts); /* no mnemonics */
      g_autofree char *uri = g_file_get_uri (file);
      g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);
      g_menu_item_set_action_and_target (item, "win.open-recent", "s", uri);
      g_menu_append_item (menu, item);
    }
}

static GMenu *
recent_menu (void)
{
  static GMenu *menu;
  if (menu == NULL)
    {
      menu = g_menu_new ();
      fill_menu (menu);
    }
  return menu;
}

GMenuModel *
sq_settings_recent_menu (void)
{
  return G_MENU_MODEL (recent_menu ());
}

void
sq_settings_add_recent (GFile *file)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  g_autoptr (GPtrArray) files = sq_settings_recent ();
  g_autoptr (GPtrArray) uris = g_ptr_array_new_with_free_func (g_free);
  g_return_if_fail (G_IS_FILE (file));
  g_ptr_array_add (uris, g_file_get_uri (file));
  for (guint i = 0; i < files->len && uris->len < MOST_RECENT; i++)
    if (!g_file_equal (g_ptr_array_index (files, i), file))
      g_ptr_array_add (uris, g_file_get_uri (g_ptr_array_index (files, i)));
  g_key_file_set_string_list (settings, SQ_SETTINGS_FILES, "recent",
                              (const char *const *) uris->pdata, uris->len);
  sq_settings_write (settings);
  fill_menu (recent_menu ());
}

/* --- colours ------------------------------------------------------------------------------- */

static void
apply_colours (const char *colours)
{
  GtkSettings *desktop = gtk_settings_get_default ();
  if (g_str_equal (colours, "desktop"))
    gtk_settings_reset_property (desktop, "gtk-application-prefer-dark-theme");
  else
    g_object_set (desktop, "gtk-application-prefer-dark-theme", g_str_equal (colours, "dark"),
                  NULL);
}

static void
on_colours (GSimpleAction *action, GVariant *value, gpointer data)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  const char *colours = g_variant_get_string (value, NULL);
  (void) data;
  g_simple_action_set_state (action, value);
  apply_colours (colours);
  g_key_file_set_string (settings, SQ_SETTINGS_WINDOW, "colours", colours);
  sq_settings_write (settings);
}

void
sq_settings_add_colours (GActionMap *application)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  g_autofree char *kept = g_key_file_get_string (settings, SQ_SETTINGS_WINDOW, "colours", NULL);
  gboolean is_known = g_strcmp0 (kept, "light") == 0 || g_strcmp0 (kept, "dark") == 0;
  const char *colours = is_known ? kept : "desktop";
  g_autoptr (GSimpleAction) action = g_simple_action_new_stateful ("colours", G_VARIANT_TYPE_STRING,
                                                                   g_variant_new_string (colours));
  g_signal_connect (action, "change-state", G_CALLBACK (on_colours), NULL);
  g_action_map_add_action (application, G_ACTION (action));
  if (is_known)
    apply_colours (colours);
}
