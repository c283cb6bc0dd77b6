/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A lay of an open instance as files have it. All texts are new. */
#pragma once

#include "exchange/instance-file.h"

/* JSON: a list `lays` of this one, as a plan has it, with no cloth and no cushion: `piece` is an
 * item's place in the instance, lengths are in the instance's units. */
char *sq_instance_lay_json (const SqInstance *instance, const SqLay *lay);

/* A picture: the strip, on it every item with its place in the instance, from 0. */
char *sq_instance_lay_svg (const SqInstance *instance, const SqLay *lay);
