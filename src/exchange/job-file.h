/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The job file: JSON, mm and degrees, described key by key in data/job.schema.json. */
#pragma once

#include "job/job.h"

/* The job in @text, @length bytes (−1: up to its NUL). Keys that are not known are kept where they
 * stood; outer rings come out counter-clockwise and holes clockwise; ids that are absent are given.
 * What is not there follows @defaults, which the job takes a copy of.
 *
 * A new job, or NULL with @error: SQ_ERROR_SYNTAX (not JSON, with line and column, or not a job),
 * SQ_ERROR_NEWER, or SQ_ERROR_VALUE with a message that begins with the key's path, as
 * `cushions[0].outline[2].x: more than 100 m`. Whether a cushion can be made of it is not asked. */
SqJob *sq_job_read (const char *text, gssize length, const SqDefaults *defaults, GError **error);

/* The job in the file @path; also SQ_ERROR_READ. The message begins with the path. */
SqJob *sq_job_load (const char *path, const SqDefaults *defaults, GError **error);

/* @job as text, yours: the same job gives the same text, a line for each corner, only what was
 * given, and after that what was not known. Reading it gives an equal job. */
char *sq_job_write (const SqJob *job);

/* Writes @job to the file @path as sq_file_save() does. */
gboolean sq_job_save (const SqJob *job, const char *path, GError **error);
