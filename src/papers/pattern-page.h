/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A sheet of a pattern as it is printed. Internal to the room. */
#pragma once

#include "papers/pattern.h"

/* Sheet @index of @pattern. New scene. Any thread. */
SqScene *sq_pattern_page_scene (SqPattern *pattern, guint index);
