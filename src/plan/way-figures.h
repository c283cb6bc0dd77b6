/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a way of making a cushion, or several in its stead, takes. Internal to the room. */
#pragma once

#include "plan/ways.h"

/* The job with nothing but @cushions (of SqCushion), nothing that is kept of others, and none of its
 * cloth in stock. */
SqJob *sq_way_job (const SqJob *job, const GPtrArray *cushions);

/* Fills plan, possible, why and where of @way, whose cloths are an empty list, and, where it is
 * possible, all figures; @job is that of the way alone. What follows from lays only @with_lays. FALSE
 * if @watch (may be NULL) stopped it. */
gboolean sq_way_reckon (SqWay *way, const SqJob *job, gboolean with_lays, const SqTask *watch);

void sq_way_clear (SqWay *way);
