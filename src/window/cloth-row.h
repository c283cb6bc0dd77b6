/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A row of the values that chooses one of the job's cloths, or goes for another one. */
#pragma once

#include "job/job.h"
#include "window/value-row.h"

/* What "choice" may bring besides the ids of cloths. */
#define SQ_CLOTH_NEW G_MAXUINT
#define SQ_CLOTH_CHANGE (G_MAXUINT - 1)
#define SQ_CLOTH_FROM_SHELF (G_MAXUINT - 2)

GtkWidget *sq_cloth_row_new (const char *name);
/* Offers the cloths of @job; @id: the one that is used, 0: none. */
void sq_cloth_row_show (SqValueRow *row, const SqJob *job, SqId id, gboolean is_given);
