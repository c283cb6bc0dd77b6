/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper-files.h"

#include "exchange/plan-json.h"
#include "exchange/save-file.h"
#include "words/cut-list-csv.h"
#include "words/cut-list.h"
#include "words/lays-csv.h"
#include "words/lengths.h"

#include <glib/gi18n.h>
#include <string.h>

static const struct
{
  const char *title, *sort, *suffix;
} files[] = {
  [SQ_FILE_PDF] = { N_ ("Save as PDF"), N_ ("PDF files"), ".pdf" },
  [SQ_FILE_TABLE] = { N_ ("Save as a table"), N_ ("Tables with commas"), ".csv" },
  [SQ_FILE_TEXT] = { N_ ("Save as text"), N_ ("Text files"), ".txt" },
  [SQ_FILE_POSITIONS] = { N_ ("Save a table of where all lies"), N_ ("Tables with commas"),
                          ".csv" },
  [SQ_FILE_JSON] = { N_ ("Save everything computed"), N_ ("JSON files"), ".json" },
};

const char *
sq_paper_file_title (SqPaperFileKind kind)
{
  return _ (files[kind].title);
}

const char *
sq_paper_file_sort (SqPaperFileKind kind)
{
  return _ (files[kind].sort);
}

const char *
sq_paper_file_suffix (SqPaperFileKind kind)
{
  return files[kind].suffix;
}

SqPaperFile *
sq_paper_file_new (SqPaperFileKind kind, GFile *file, GPtrArray *papers, SqKeptSpec *kept,
                   GError **error)
{
  g_autofree char *path = g_file_get_path (file);
  if (path == NULL)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED,
                           _ ("Files can be saved on this computer only."));
      return NULL;
    }
  SqPaperFile *own = g_new (SqPaperFile, 1);
  own->kind = kind;
  own->path = g_steal_pointer (&path);
  own->papers = papers != NULL ? g_ptr_array_ref (papers) : NULL;
  own->kept = g_atomic_rc_box_acquire (kept);
  return own;
}

void
sq_paper_file_free (SqPaperFile *file)
{
  g_free (file->path);
  g_clear_pointer (&file->papers, g_ptr_array_unref);
  sq_kept_spec_unref (file->kept);
  g_free (file);
}

static GBytes *
bytes_of (const SqPaperFile *file, const SqTask *watch, GError **error)
{
  const SqPaperSpec *spec = &file->kept->spec;
  const SqPlan *plan = spec->lays->plan;
  SqLengthStyle style = sq_words_length_style (plan->job, spec->style.decimal);
  char *text = NULL;
  switch (file->kind)
    {
    case SQ_FILE_PDF:
      return sq_papers_to_pdf (file->papers, NULL, spec, watch, error);
    case SQ_FILE_TABLE:
      text = sq_words_cut_list_csv (plan);
      break;
    case SQ_FILE_TEXT:
      text = sq_words_cut_list (plan, spec->lays, &style);
      break;
    case SQ_FILE_POSITIONS:
      text = sq_words_lays_csv (spec->lays);
      break;
    case SQ_FILE_JSON:
      text = sq_plan_write (spec->lays, 0, FALSE, &style);
      break;
    }
  return g_bytes_new_take (text, strlen (text));
}

gboolean
sq_paper_file_write (gpointer data, const SqTask *watch, GError **error)
{
  const SqPaperFile *file = data;
  g_autoptr (GBytes) bytes = bytes_of (file, watch, error);
  return bytes != NULL
         && sq_file_save (file->path, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes),
                          error);
}
