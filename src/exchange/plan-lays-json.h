/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The lays' part of the plan's JSON, and what is to be bought for them. Internal to the room. */
#pragma once

#include "exchange/json-write.h"
#include "plan/lays.h"

/* Where every piece lies on its cloth, and what could not be laid: "lays". */
void sq_plan_add_lays (SqJsonWriter *json, const SqLays *lays);

/* What to buy of each cloth: "purchase". */
void sq_plan_add_purchase (SqJsonWriter *json, const SqLays *lays);
