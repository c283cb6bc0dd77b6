/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The pieces' part of the plan's JSON. Internal to the room. */
#pragma once

#include "cover/cover.h"
#include "exchange/json-write.h"

/* The id a piece has in the file, after its index in its cushion: never 0. */
guint sq_plan_piece_id (guint index);

/* @path as [[x, y, bulge], …], lines only where @flatten_mm > 0. */
void sq_plan_add_path (SqJsonWriter *json, const char *key, const SqPath *path, double flatten_mm);

void sq_plan_add_piece (SqJsonWriter *json, const SqCover *cover, guint index, double flatten_mm);
