/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The foam's part of the plan's JSON. Internal to the room. */
#pragma once

#include "exchange/json-write.h"
#include "plan/lays.h"

/* Where all foam lies on its sheets, and how many of these it takes: "foam_lays". */
void sq_plan_add_foam_lays (SqJsonWriter *json, const SqLays *lays);
