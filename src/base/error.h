/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one error domain. Codes are facts; the message is in English for logs and the command
 * line's one line, src/words makes the sentence a maker reads. */
#pragma once

#include <glib.h>

#define SQ_ERROR (sq_error_quark ())

typedef enum
{
  SQ_ERROR_CANCELLED, /* a task was told to stop; nothing is half done */
  SQ_ERROR_READ,      /* a file could not be opened or read */
  SQ_ERROR_WRITE,     /* a file could not be written; the old one is untouched */
  SQ_ERROR_SYNTAX,    /* text that is not what its format says; message names the place */
  SQ_ERROR_VALUE,     /* well-formed, with a value that is refused; message names the key */
  SQ_ERROR_NEWER,     /* written by a newer program */
  SQ_ERROR_USAGE,     /* a command line that can't be followed */
} SqError;

GQuark sq_error_quark (void);
