/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a window without a job shows: a few figures that make a first cushion, and samples. */
#pragma once

#include <gtk/gtk.h>

#include "job/job.h"

#define SQ_TYPE_START_PAGE (sq_start_page_get_type ())
G_DECLARE_FINAL_TYPE (SqStartPage, sq_start_page, SQ, START_PAGE, GtkWidget)

/* Emits "start" (pointer to SqJob, borrowed) for a new job, and "sample" (GFile) for a sample. */
