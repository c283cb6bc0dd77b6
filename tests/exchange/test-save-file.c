/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/save-file.h"

#include "base/error.h"
#include "exchange/read-file.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct
{
  char *folder;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->folder = g_dir_make_tmp ("squab-save-XXXXXX", NULL);
  g_assert_nonnull (f->folder);
}

static guint
count_files (const char *folder)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  g_dir_close (dir);
  return n;
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  GDir *dir = g_dir_open (f->folder, 0, NULL);
  const char *name;

  (void) data;
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (f->folder, name, NULL);
      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_dir_close (dir);
  g_assert_cmpint (g_rmdir (f->folder), ==, 0);
  g_free (f->folder);
}

static char *
in_folder (const Fixture *f, const char *name)
{
  return g_build_filename (f->folder, name, NULL);
}

static void
assert_content (const char *path, const char *text)
{
  g_autofree char *content = NULL;
  gsize length;
  g_autoptr (GError) error = NULL;

  g_assert_true (sq_file_load (path, 1000, &content, &length, &error));
  g_assert_cmpstr (content, ==, text);
  g_assert_cmpuint (length, ==, strlen (text));
}

static void
save (const char *path, const char *text)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (sq_file_save (path, text, strlen (text), &error));
  g_assert_no_error (error);
}

/* Refused, with the path at the beginning of the message. */
static void
assert_refused (const char *path, const char *text)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (sq_file_save (path, text, strlen (text), &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_WRITE);
  g_assert_true (g_str_has_prefix (error->message, path));
  g_assert_cmpuint (strlen (error->message), >, strlen (path) + 3);
}

static void
test_new_and_again (Fixture *f, gconstpointer data)
{
  g_autofree char *path = in_folder (f, "a bay.squab");

  (void) data;
  save (path, "one");
  assert_content (path, "one");
  save (path, "two and more");
  assert_content (path, "two and more");
  save (path, "");
  assert_content (path, "");
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

static void
test_mode (Fixture *f, gconstpointer data)
{
  g_autofree char *path = in_folder (f, "a");
  struct stat state;
  mode_t before = umask (027);

  (void) data;
  save (path, "one");
  g_assert_cmpint (stat (path, &state), ==, 0);
  g_assert_cmpuint (state.st_mode & 07777, ==, 0640);
  g_assert_cmpint (chmod (path, 0604), ==, 0);
  save (path, "two");
  g_assert_cmpint (stat (path, &state), ==, 0);
  g_assert_cmpuint (state.st_mode & 07777, ==, 0604);
  umask (before);
}

static void
test_links (Fixture *f, gconstpointer data)
{
  g_autofree char *file = in_folder (f, "file");
  g_autofree char *near = in_folder (f, "near");
  g_autofree char *far = in_folder (f, "far");
  g_autofree char *dangling = in_folder (f, "dangling");
  g_autofree char *later = in_folder (f, "later");
  g_autofree char *round = in_folder (f, "round");

  (void) data;
  save (file, "one");
  g_assert_cmpint (symlink ("file", near), ==, 0);
  g_assert_cmpint (symlink (near, far), ==, 0);
  g_assert_cmpint (symlink ("later", dangling), ==, 0);
  g_assert_cmpint (symlink ("round", round), ==, 0);
  save (far, "two");
  assert_content (file, "two");
  g_assert_true (g_file_test (far, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_test (near, G_FILE_TEST_IS_SYMLINK));
  save (dangling, "three");
  assert_content (later, "three");
  g_assert_true (g_file_test (dangling, G_FILE_TEST_IS_SYMLINK));
  assert_refused (round, "four");
}

static void
test_no_place (Fixture *f, gconstpointer data)
{
  g_autofree char *no_folder = in_folder (f, "none/a");
  g_autofree char *file = in_folder (f, "file");
  g_autofree char *below_file = in_folder (f, "file/a");
  g_autofree char *long_name = g_strnfill (300, 'x');
  g_autofree char *too_long = in_folder (f, long_name);

  (void) data;
  save (file, "one");
  assert_refused (no_folder, "two");
  assert_refused (below_file, "two");
  assert_refused (f->folder, "two");
  assert_refused (too_long, "two");
  assert_refused ("", "two");
  assert_content (file, "one");
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

/* A device is written to as it is, and never replaced. */
static void
test_devices (Fixture *f, gconstpointer data)
{
  (void) data;
  (void) f;
  assert_refused ("/dev/full", "text");
  save ("/dev/null", "text");
  g_assert_false (g_file_test ("/dev/null", G_FILE_TEST_IS_REGULAR));
}

/* A disk that is full half way: a limit on the size of files stands for it. */
static void
test_full (Fixture *f, gconstpointer data)
{
  g_autofree char *path = in_folder (f, "a");
  g_autofree char *large = g_strnfill (100000, 'x');
  struct rlimit before, small;

  (void) data;
  save (path, "one");
  signal (SIGXFSZ, SIG_IGN);
  getrlimit (RLIMIT_FSIZE, &before);
  small = before;
  small.rlim_cur = 50000;
  setrlimit (RLIMIT_FSIZE, &small);
  assert_refused (path, large);
  setrlimit (RLIMIT_FSIZE, &before);
  assert_content (path, "one");
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

/* As somebody who may not: a folder, then a file, that can only be read. */
static void
test_read_only (Fixture *f, gconstpointer data)
{
  g_autofree char *path = in_folder (f, "a");
  uid_t me = geteuid ();

  (void) data;
  save (path, "one");
  chmod (path, 0444);
  chmod (f->folder, 0777);
  if (me == 0)
    g_assert_cmpint (seteuid (65534), ==, 0);
  assert_refused (path, "two");
  if (me == 0)
    g_assert_cmpint (seteuid (me), ==, 0);
  chmod (path, 0666);
  chmod (f->folder, 0555);
  if (me == 0)
    g_assert_cmpint (seteuid (65534), ==, 0);
  assert_refused (path, "two");
  if (me == 0)
    g_assert_cmpint (seteuid (me), ==, 0);
  chmod (f->folder, 0755);
  assert_content (path, "one");
  g_assert_cmpuint (count_files (f->folder), ==, 1);
}

static void
assert_unreadable (const char *path, gsize most)
{
  g_autofree char *content = NULL;
  gsize length;
  g_autoptr (GError) error = NULL;

  g_assert_false (sq_file_load (path, most, &content, &length, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_READ);
  g_assert_true (g_str_has_prefix (error->message, path));
  g_assert_null (content);
}

static void
test_load (Fixture *f, gconstpointer data)
{
  g_autofree char *path = in_folder (f, "a");
  g_autofree char *content = NULL;
  gsize length;

  (void) data;
  save (path, "12345");
  g_assert_true (sq_file_load (path, 5, &content, &length, NULL));
  g_assert_cmpuint (length, ==, 5);
  assert_unreadable (path, 4);
  assert_unreadable (f->folder, 100);
  assert_unreadable ("/dev/zero", 1000000);
  g_assert_cmpint (g_unlink (path), ==, 0);
  assert_unreadable (path, 100);
}

#define ADD(name, function)                                                                        \
  g_test_add ("/exchange/save-file/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("new-and-again", test_new_and_again);
  ADD ("mode", test_mode);
  ADD ("links", test_links);
  ADD ("no-place", test_no_place);
  ADD ("devices", test_devices);
  ADD ("full", test_full);
  ADD ("read-only", test_read_only);
  ADD ("load", test_load);
  return g_test_run ();
}
