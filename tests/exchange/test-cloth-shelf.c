/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/cloth-shelf.h"

#include "base/error.h"

#include <glib/gstdio.h>

typedef struct
{
  char *folder, *path; /* the file, two folders down */
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->folder = g_dir_make_tmp ("squab-shelf-XXXXXX", NULL);
  g_assert_nonnull (f->folder);
  f->path = g_build_filename (f->folder, "squab", "cloths.json", NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  g_autofree char *inner = g_path_get_dirname (f->path);
  (void) data;
  g_remove (f->path);
  g_rmdir (inner);
  g_assert_cmpint (g_rmdir (f->folder), ==, 0);
  g_free (f->folder);
  g_free (f->path);
}

static SqCloth *
new_cloth (const char *name, double width_mm)
{
  SqCloth *cloth = sq_cloth_new (5);
  g_ref_string_release (cloth->name);
  cloth->name = g_ref_string_new (name);
  cloth->width_mm = width_mm;
  cloth->price = 24.5;
  cloth->given = SQ_GIVEN_CLOTH_WIDTH | SQ_GIVEN_CLOTH_PRICE;
  cloth->n_stripes = 1;
  cloth->stripes = g_new0 (SqStripe, 1);
  cloth->stripes[0] = (SqStripe){ 12.7, 25.4, 0x2f4b6e, NULL };
  return cloth;
}

/* What is there of a cloth belongs to its job, which keeps it. */
static void
test_no_stock (Fixture *f, gconstpointer data)
{
  g_autoptr (SqCloth) cloth = new_cloth ("Ticking", 1000);
  SqStock stock = { .id = 1, .length_mm = 900 };
  SqFlaw flaw = { .id = 1, .stock = 1, .along_mm = 5, .across_mm = 5 };
  g_autoptr (GError) error = NULL;
  (void) data;

  g_array_append_val (cloth->stock, stock);
  g_array_append_val (cloth->flaws, flaw);
  g_assert_true (sq_cloth_shelf_put (f->path, cloth, &error));
  g_autoptr (GPtrArray) cloths = sq_cloth_shelf_load (f->path, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (((const SqCloth *) g_ptr_array_index (cloths, 0))->stock->len, ==, 0);
  g_assert_cmpuint (((const SqCloth *) g_ptr_array_index (cloths, 0))->flaws->len, ==, 0);
  g_assert_cmpuint (cloth->stock->len, ==, 1);
}

static void
put (const Fixture *f, const char *name, double width_mm)
{
  g_autoptr (SqCloth) cloth = new_cloth (name, width_mm);
  g_autoptr (GError) error = NULL;
  g_assert_true (sq_cloth_shelf_put (f->path, cloth, &error));
  g_assert_no_error (error);
}

/* The names on the shelf and their widths, "Ticking 1000, Sail 900". */
static char *
listing (const Fixture *f)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) cloths = sq_cloth_shelf_load (f->path, &error);
  GString *text = g_string_new (NULL);
  g_assert_no_error (error);
  for (guint i = 0; i < cloths->len; i++)
    {
      const SqCloth *cloth = g_ptr_array_index (cloths, i);
      g_string_append_printf (text, "%s%s %g", i > 0 ? ", " : "", cloth->name, cloth->width_mm);
    }
  return g_string_free (text, FALSE);
}

static void
assert_listing (const Fixture *f, const char *wanted)
{
  g_autofree char *found = listing (f);
  g_assert_cmpstr (found, ==, wanted);
}

static void
test_kept (Fixture *f, gconstpointer data)
{
  (void) data;
  assert_listing (f, "");
  put (f, "Ticking", 1000);
  put (f, "Sail", 900);
  assert_listing (f, "Ticking 1000, Sail 900");
  put (f, "Ticking", 1100);
  assert_listing (f, "Ticking 1100, Sail 900");
  g_autoptr (GPtrArray) cloths = sq_cloth_shelf_load (f->path, NULL);
  const SqCloth *first = g_ptr_array_index (cloths, 0);
  g_assert_cmpfloat (first->price, ==, 24.5);
  g_assert_cmpuint (first->n_stripes, ==, 1);
  g_assert_cmpuint (first->stripes[0].colour, ==, 0x2f4b6e);
  g_assert_cmpuint (first->given, ==, SQ_GIVEN_CLOTH_WIDTH | SQ_GIVEN_CLOTH_PRICE);
}

static void
test_taken_off (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  (void) data;
  g_assert_true (sq_cloth_shelf_take_off (f->path, "Sail", &error));
  g_assert_false (g_file_test (f->path, G_FILE_TEST_EXISTS));
  put (f, "Ticking", 1000);
  put (f, "Sail", 900);
  g_assert_true (sq_cloth_shelf_take_off (f->path, "Ticking", &error));
  g_assert_no_error (error);
  assert_listing (f, "Sail 900");
}

static void
write_text (const Fixture *f, const char *text)
{
  g_autofree char *folder = g_path_get_dirname (f->path);
  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (f->path, text, -1, NULL));
}

/* What another program left there that we do not know stays. */
static void
test_unknown_stays (Fixture *f, gconstpointer data)
{
  g_autofree char *text = NULL;
  (void) data;
  write_text (f, "{\"format\": \"squab cloths\", \"version\": 1, \"sorted\": true, \"cloths\": "
                 "[{\"name\": \"Ticking\", \"bolt\": [1, 2]}]}");
  put (f, "Sail", 900);
  g_assert_true (g_file_get_contents (f->path, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "\"sorted\": true"));
  g_assert_nonnull (strstr (text, "\"bolt\": [1, 2]"));
}

/* A file that can't be read is refused, and not written over. */
static void
test_refused (Fixture *f, gconstpointer data)
{
  const struct
  {
    const char *text;
    int code;
  } wrong[] = {
    { "not cloths", SQ_ERROR_SYNTAX },
    { "{\"format\": \"squab job\", \"version\": 1}", SQ_ERROR_SYNTAX },
    { "{\"format\": \"squab cloths\", \"version\": 2}", SQ_ERROR_NEWER },
    { "{\"format\": \"squab cloths\", \"version\": 1, \"cloths\": [{\"width\": \"wide\"}]}",
      SQ_ERROR_VALUE },
  };
  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GError) error = NULL, again = NULL;
      g_autoptr (SqCloth) cloth = new_cloth ("Sail", 900);
      g_autofree char *text = NULL;
      write_text (f, wrong[i].text);
      g_assert_null (sq_cloth_shelf_load (f->path, &error));
      g_assert_error (error, SQ_ERROR, wrong[i].code);
      g_assert_nonnull (strstr (error->message, "cloths.json: "));
      g_assert_false (sq_cloth_shelf_put (f->path, cloth, &again));
      g_assert_error (again, SQ_ERROR, wrong[i].code);
      g_assert_true (g_file_get_contents (f->path, &text, NULL, NULL));
      g_assert_cmpstr (text, ==, wrong[i].text);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/exchange/cloth-shelf/kept", Fixture, NULL, set_up, test_kept, tear_down);
  g_test_add ("/exchange/cloth-shelf/no-stock", Fixture, NULL, set_up, test_no_stock, tear_down);
  g_test_add ("/exchange/cloth-shelf/taken-off", Fixture, NULL, set_up, test_taken_off, tear_down);
  g_test_add ("/exchange/cloth-shelf/unknown", Fixture, NULL, set_up, test_unknown_stays,
              tear_down);
  g_test_add ("/exchange/cloth-shelf/refused", Fixture, NULL, set_up, test_refused, tear_down);
  return g_test_run ();
}
