/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is measured before anything is cut: check squares. Internal to the room. */
#pragma once

#include "papers/pages.h"

/* A square of exactly @side_mm with its lower left corner at @at; @name is its side, and below it, inside,
 * stand @texts (of const char), each a paragraph. */
void sq_set_square (SqSceneBuilder *builder, SqPoint at, double side_mm, const char *name,
                    const GPtrArray *texts);

/* Both squares, 100 mm and 4 in, as blocks of @pages: beside each other where there is room, else one
 * below the other. The first says how to print, the second @texts. @beside (of const char, the first one
 * bold) stands right of them, or below where that is too narrow. */
void sq_pages_squares (SqPages *pages, const GPtrArray *texts, const GPtrArray *beside);
