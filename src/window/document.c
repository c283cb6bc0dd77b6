/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/document.h"

#include "base/error.h"
#include "exchange/job-file.h"
#include "job/history.h"

#include <glib/gi18n.h>

struct _SqDocument
{
  GObject parent;
  SqHistory *history;
  SqJob *draft; /* NULL: the history's job holds */
  SqPlan *plan;
  GFile *file;
  char *title, *place, *stamp; /* how its file was; NULL: not known */
  gboolean is_symmetric;
};

G_DEFINE_TYPE (SqDocument, sq_document, G_TYPE_OBJECT)

enum
{
  PROP_JOB = 1,
  PROP_TITLE,
  PROP_PLACE,
  PROP_UNDO_WORDS,
  PROP_REDO_WORDS,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_MODIFIED,
  PROP_SYMMETRIC,
  N_PROPS
};
static GParamSpec *props[N_PROPS];
static guint changed_signal;

const SqJob *
sq_document_get_job (SqDocument *document)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), NULL);
  return document->draft != NULL ? document->draft : sq_history_now (document->history);
}

const SqPlan *
sq_document_get_plan (SqDocument *document)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), NULL);
  return document->plan;
}

const SqCover *
sq_document_get_cover (SqDocument *document, SqId cushion, guint *index)
{
  const SqPlan *plan = sq_document_get_plan (document);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      if (cover->cushion->id != cushion)
        continue;
      if (index != NULL)
        *index = i;
      return cover;
    }
  return NULL;
}

GFile *
sq_document_get_file (SqDocument *document)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), NULL);
  return document->file;
}

const char *
sq_document_get_title (SqDocument *document)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), NULL);
  return document->title;
}

const char *
sq_document_get_place (SqDocument *document)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), NULL);
  return document->place;
}

gboolean
sq_document_is_modified (SqDocument *document)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), FALSE);
  return document->draft != NULL || !sq_history_is_saved (document->history);
}

gboolean
sq_document_is_symmetric (SqDocument *document)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), FALSE);
  return document->is_symmetric;
}

void
sq_document_set_symmetric (SqDocument *document, gboolean is_symmetric)
{
  g_return_if_fail (SQ_IS_DOCUMENT (document));
  if (document->is_symmetric == is_symmetric)
    return;
  document->is_symmetric = is_symmetric;
  g_object_notify_by_pspec (G_OBJECT (document), props[PROP_SYMMETRIC]);
}

/* --- what is said of it -------------------------------------------------------------------- */

static char *
file_name (SqDocument *document)
{
  g_autofree char *path = document->file != NULL ? g_file_get_basename (document->file) : NULL;
  return path != NULL ? g_filename_display_name (path) : NULL;
}

static char *
make_title (SqDocument *document)
{
  const SqJob *job = sq_document_get_job (document);
  char *name = NULL;
  if (job->title != NULL && job->title[0] != '\0')
    return g_strdup (job->title);
  name = file_name (document);
  if (name != NULL && g_str_has_suffix (name, ".squab"))
    name[strlen (name) - strlen (".squab")] = '\0';
  return name != NULL ? name : g_strdup (_ ("New job"));
}

static char *
make_place (SqDocument *document)
{
  g_autofree char *name = file_name (document);
  if (name == NULL)
    return g_strdup (_ ("not saved yet"));
  if (sq_document_is_modified (document))
    /* Translators: %s is the name of a file. */
    return g_strdup_printf (_ ("%s · changed"), name);
  return g_strdup_printf (_ ("%s · saved"), name);
}

/* Takes @text. */
static void
set_text (SqDocument *document, char **now, char *text, guint prop)
{
  if (g_strcmp0 (*now, text) == 0)
    {
      g_free (text);
      return;
    }
  g_free (*now);
  *now = text;
  g_object_notify_by_pspec (G_OBJECT (document), props[prop]);
}

/* Tells about the history; cheap enough to do where it may have changed. */
static void
tell_state (SqDocument *document)
{
  GObject *object = G_OBJECT (document);
  set_text (document, &document->title, make_title (document), PROP_TITLE);
  set_text (document, &document->place, make_place (document), PROP_PLACE);
  for (guint i = PROP_UNDO_WORDS; i <= PROP_MODIFIED; i++)
    g_object_notify_by_pspec (object, props[i]);
}

/* The job is another one: its plan follows. */
static void
follow_job (SqDocument *document)
{
  SqPlan *plan = sq_plan_new (sq_document_get_job (document), document->plan);
  g_clear_pointer (&document->plan, sq_plan_unref);
  document->plan = plan;
  g_object_notify_by_pspec (G_OBJECT (document), props[PROP_JOB]);
  g_signal_emit (document, changed_signal, 0);
}

/* --- edits --------------------------------------------------------------------------------- */

void
sq_document_edit (SqDocument *document, const SqJob *job, const char *words, const char *key)
{
  g_return_if_fail (SQ_IS_DOCUMENT (document) && job != NULL && words != NULL);
  g_clear_pointer (&document->draft, sq_job_unref);
  sq_history_push (document->history, job, words, key);
  follow_job (document);
  tell_state (document);
}

void
sq_document_seal (SqDocument *document)
{
  g_return_if_fail (SQ_IS_DOCUMENT (document));
  sq_history_seal (document->history);
}

void
sq_document_try (SqDocument *document, const SqJob *job)
{
  gboolean is_first;
  g_return_if_fail (SQ_IS_DOCUMENT (document) && job != NULL);
  is_first = document->draft == NULL;
  g_clear_pointer (&document->draft, sq_job_unref);
  document->draft = sq_job_ref (job);
  follow_job (document);
  if (is_first)
    tell_state (document);
}

void
sq_document_keep (SqDocument *document, const char *words)
{
  g_return_if_fail (SQ_IS_DOCUMENT (document));
  if (document->draft == NULL)
    return;
  sq_history_seal (document->history);
  sq_history_push (document->history, document->draft, words, NULL);
  g_clear_pointer (&document->draft, sq_job_unref);
  tell_state (document);
}

void
sq_document_drop (SqDocument *document)
{
  g_return_if_fail (SQ_IS_DOCUMENT (document));
  if (document->draft == NULL)
    return;
  g_clear_pointer (&document->draft, sq_job_unref);
  follow_job (document);
  tell_state (document);
}

const char *
sq_document_words (SqDocument *document, int by, gboolean *exists)
{
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), NULL);
  return sq_history_words (document->history, by, exists);
}

void
sq_document_go (SqDocument *document, int by)
{
  g_return_if_fail (SQ_IS_DOCUMENT (document));
  g_clear_pointer (&document->draft, sq_job_unref);
  sq_history_go (document->history, by);
  follow_job (document);
  tell_state (document);
}

void
sq_document_undo (SqDocument *document)
{
  sq_document_go (document, -1);
}

void
sq_document_redo (SqDocument *document)
{
  sq_document_go (document, 1);
}

/* --- files --------------------------------------------------------------------------------- */

SqDocument *
sq_document_new (const SqJob *job, GFile *file)
{
  SqDocument *document;
  g_return_val_if_fail (job != NULL, NULL);
  document = g_object_new (SQ_TYPE_DOCUMENT, NULL);
  document->history = sq_history_new (job);
  document->file = file != NULL ? g_object_ref (file) : NULL;
  document->plan = sq_plan_new (job, NULL);
  document->title = make_title (document);
  document->place = make_place (document);
  return document;
}

SqDocument *
sq_document_new_changed (const SqJob *job, GFile *file)
{
  SqDocument *document = sq_document_new (job, file);
  sq_history_set_unsaved (document->history);
  g_free (document->place);
  document->place = make_place (document);
  return document;
}

/* Jobs are files on this machine, or what the desktop mounts there. */
static char *
local_path (GFile *file, int code, GError **error)
{
  char *path = g_file_get_path (file);
  if (path == NULL)
    {
      g_autofree char *name = g_file_get_parse_name (file);
      g_set_error (error, SQ_ERROR, code, "%s: not a file on this machine", name);
    }
  return path;
}

/* Tells one state of @file from another; NULL where there is none. New text. */
static char *
file_stamp (GFile *file)
{
  static const char *const asked = G_FILE_ATTRIBUTE_TIME_MODIFIED
      "," G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC "," G_FILE_ATTRIBUTE_STANDARD_SIZE;
  g_autoptr (GFileInfo) info = g_file_query_info (file, asked, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  if (info == NULL)
    return NULL;
  return g_strdup_printf (
      "%" G_GUINT64_FORMAT ".%u %" G_GOFFSET_FORMAT,
      g_file_info_get_attribute_uint64 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED),
      g_file_info_get_attribute_uint32 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC),
      g_file_info_get_size (info));
}

gboolean
sq_document_is_file_changed (SqDocument *document)
{
  g_autofree char *now = NULL;
  g_return_val_if_fail (SQ_IS_DOCUMENT (document), FALSE);
  now = document->file != NULL ? file_stamp (document->file) : NULL;
  return now != NULL && document->stamp != NULL && strcmp (now, document->stamp) != 0;
}

SqDocument *
sq_document_load (GFile *file, const SqDefaults *defaults, GError **error)
{
  g_autofree char *path = local_path (file, SQ_ERROR_READ, error);
  g_autofree char *stamp = file_stamp (file); /* before it is read: then nothing is missed */
  g_autoptr (SqJob) job = path != NULL ? sq_job_load (path, defaults, error) : NULL;
  SqDocument *document = job != NULL ? sq_document_new (job, file) : NULL;
  if (document != NULL)
    document->stamp = g_steal_pointer (&stamp);
  return document;
}

gboolean
sq_document_save (SqDocument *document, GFile *file, GError **error)
{
  g_autofree char *path = local_path (file, SQ_ERROR_WRITE, error);
  if (path == NULL || !sq_job_save (sq_history_now (document->history), path, error))
    return FALSE;
  g_set_object (&document->file, file);
  g_free (document->stamp);
  document->stamp = file_stamp (file);
  sq_history_set_saved (document->history);
  tell_state (document);
  return TRUE;
}

/* --- object -------------------------------------------------------------------------------- */

static void
sq_document_get_property (GObject *object, guint id, GValue *value, GParamSpec *spec)
{
  SqDocument *document = SQ_DOCUMENT (object);
  const char *undo = sq_history_undo_words (document->history);
  const char *redo = sq_history_redo_words (document->history);
  switch (id)
    {
    case PROP_JOB:
      g_value_set_pointer (value, (gpointer) sq_document_get_job (document));
      break;
    case PROP_TITLE:
      g_value_set_string (value, document->title);
      break;
    case PROP_PLACE:
      g_value_set_string (value, document->place);
      break;
    case PROP_UNDO_WORDS:
      g_value_set_string (value, undo);
      break;
    case PROP_REDO_WORDS:
      g_value_set_string (value, redo);
      break;
    case PROP_CAN_UNDO:
      g_value_set_boolean (value, undo != NULL);
      break;
    case PROP_CAN_REDO:
      g_value_set_boolean (value, redo != NULL);
      break;
    case PROP_MODIFIED:
      g_value_set_boolean (value, sq_document_is_modified (document));
      break;
    case PROP_SYMMETRIC:
      g_value_set_boolean (value, document->is_symmetric);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
    }
}

static void
sq_document_finalize (GObject *object)
{
  SqDocument *document = SQ_DOCUMENT (object);
  g_clear_pointer (&document->draft, sq_job_unref);
  g_clear_pointer (&document->plan, sq_plan_unref);
  g_clear_pointer (&document->history, sq_history_free);
  g_clear_object (&document->file);
  g_free (document->title);
  g_free (document->place);
  g_free (document->stamp);
  G_OBJECT_CLASS (sq_document_parent_class)->finalize (object);
}

static void
sq_document_class_init (SqDocumentClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  object_class->get_property = sq_document_get_property;
  object_class->finalize = sq_document_finalize;
  props[PROP_JOB] = g_param_spec_pointer ("job", NULL, NULL, flags);
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  props[PROP_PLACE] = g_param_spec_string ("place", NULL, NULL, NULL, flags);
  props[PROP_UNDO_WORDS] = g_param_spec_string ("undo-words", NULL, NULL, NULL, flags);
  props[PROP_REDO_WORDS] = g_param_spec_string ("redo-words", NULL, NULL, NULL, flags);
  props[PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, flags);
  props[PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  props[PROP_SYMMETRIC] = g_param_spec_boolean ("symmetric", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_document_init (SqDocument *document)
{
  (void) document;
}
