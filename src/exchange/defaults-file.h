/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The defaults file, data/defaults.json: every value the maker has not given comes from there. */
#pragma once

#include "job/defaults.h"

/* The defaults in @text, @length bytes (−1: up to its NUL), into *@defaults. Every key must be
 * there and no others, but for notes. FALSE with SQ_ERROR_SYNTAX, SQ_ERROR_NEWER or SQ_ERROR_VALUE
 * as for a job; *@defaults is then untouched. */
gboolean sq_defaults_read (const char *text, gssize length, SqDefaults *defaults, GError **error);

/* The defaults that come with the program; they are compiled in, so nothing can go wrong. */
void sq_defaults_builtin (SqDefaults *defaults);
