/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What pieces are laid on, in words. All texts are new and yours to free. */
#pragma once

#include "plan/lays.h"

/* "Remnant 2", counted among its kind in the cloth's stock. */
char *sq_words_stock (const SqCloth *cloth, const SqStock *stock);
/* What strip @strip of @cloth is: "Remnant 2 · 48 × 30 in", "Bolt 1 · 3.28 yd × 54 in", "Roll to
 * buy · 54 in wide". */
char *sq_words_strip (const SqLays *lays, const SqClothLay *cloth, guint strip,
                      const SqLengthStyle *style);
/* The same without its size; its size alone. */
char *sq_words_strip_name (const SqLays *lays, const SqClothLay *cloth, guint strip);
char *sq_words_strip_size (const SqLays *lays, const SqClothLay *cloth, guint strip,
                           const SqLengthStyle *style);
/* Whether strips of @cloth are to be named: there is more than the roll that is bought. */
gboolean sq_words_names_strips (const SqClothLay *cloth);

/* "Nothing lies on Remnant 2, Bolt 1." NULL: something lies on all that is there. */
char *sq_words_unused_stock (const SqLays *lays, const SqClothLay *cloth);

/* How a piece in stock is to be trimmed before one measures on it, as its pattern wants it. NULL: not
 * at all. Static. */
const char *sq_words_trim_first (const SqLays *lays, const SqClothLay *cloth, guint strip);

/* How what is to buy of @cloth came about, and what there is that is laid on before: "Laid on
 * Remnant 1. 1.76 yd laid, …"; "" where nothing lies. */
char *sq_words_reckoned (const SqLays *lays, const SqClothLay *cloth, const SqLengthStyle *style);

/* What hatching on a drawn cloth means. Static. */
const char *sq_words_hatched_flaws (void);

/* That pin @i of those that could not be kept, of @cloth's task, could not. Names the piece, and its
 * cushion where there are several. */
char *sq_words_bad_pin (const SqLays *lays, const SqClothLay *cloth, guint i);
