/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Papers, and what else is told of a job in words and figures, as files. */
#pragma once

#include <gio/gio.h>

#include "base/task.h"
#include "window/kept-spec.h"

typedef enum
{
  SQ_FILE_PDF,
  SQ_FILE_TABLE,     /* the cut list, with commas */
  SQ_FILE_TEXT,      /* the cut list */
  SQ_FILE_POSITIONS, /* where every copy lies, with commas */
  SQ_FILE_JSON,      /* everything computed */
} SqPaperFileKind;

/* What a dialog for it is called, and what such files are. Static. */
const char *sq_paper_file_title (SqPaperFileKind kind);
const char *sq_paper_file_sort (SqPaperFileKind kind);
/* ".pdf" */
const char *sq_paper_file_suffix (SqPaperFileKind kind);

typedef struct
{
  SqPaperFileKind kind;
  char *path;
  GPtrArray *papers; /* of SqPaper; NULL where it is no PDF */
  SqKeptSpec *kept;
} SqPaperFile;

/* New, with references to @papers and @kept; @file is where it is to be saved. NULL with @error where it
 * is on no disk of this computer. */
SqPaperFile *sq_paper_file_new (SqPaperFileKind kind, GFile *file, GPtrArray *papers,
                                SqKeptSpec *kept, GError **error);
void sq_paper_file_free (SqPaperFile *file);

/* Writes it. FALSE with @error: what was there before is whole. Any thread; an SqSavingWork. */
gboolean sq_paper_file_write (gpointer file, const SqTask *watch, GError **error);
