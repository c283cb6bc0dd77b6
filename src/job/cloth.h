/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cloth on the roll: x along the roll from the cut end, y across from the near usable edge. */
#pragma once

#include "base/id.h"

typedef enum
{
  SQ_CLOTH_CANVAS,
  SQ_CLOTH_UPHOLSTERY,
  SQ_CLOTH_LOOSE_WEAVE,
  SQ_CLOTH_VELVET,
  SQ_CLOTH_VINYL,
  SQ_CLOTH_STRETCH,
  SQ_CLOTH_MESH,
} SqClothClass;
#define SQ_N_CLOTH_CLASSES 7

typedef enum
{
  SQ_GIVEN_CLOTH_CLASS = 1 << 0,
  SQ_GIVEN_CLOTH_WIDTH = 1 << 1,
  SQ_GIVEN_CLOTH_THICKNESS = 1 << 2,
  SQ_GIVEN_CLOTH_ONE_WAY = 1 << 3,
  SQ_GIVEN_CLOTH_UP = 1 << 4,
  SQ_GIVEN_CLOTH_COLOUR = 1 << 5,
  SQ_GIVEN_CLOTH_PRICE = 1 << 6,
} SqClothGiven;

/* One band of a striped cloth, along the roll. */
typedef struct
{
  double at_mm, width_mm; /* from the near usable edge, modulo the repeat across */
  guint32 colour;         /* 0xrrggbb */
  GRefString *unknown;
} SqStripe;

typedef enum
{
  SQ_STOCK_BOLT,    /* whole from the shelf, or what is left of one at full width */
  SQ_STOCK_REMNANT, /* left over from other work */
} SqStockKind;
#define SQ_N_STOCK_KINDS (SQ_STOCK_REMNANT + 1)

/* One piece of the cloth that is there already. It is squared so that a repeat of the pattern
 * begins at its near corner: where else a cut piece starts on the pattern nobody could tell. */
typedef struct
{
  SqId id; /* unique in the cloth */
  SqStockKind kind;
  double length_mm; /* along the roll; nothing lies on a piece of 0 */
  double width_mm;  /* usable; 0: the cloth's */
  GRefString *unknown;
} SqStock;

/* Where nothing may be cut: a box, from the cut end and the near usable edge. */
typedef struct
{
  SqId id;    /* unique in the cloth */
  SqId stock; /* the piece it is on; 0: the roll that is to be bought */
  double x_mm, y_mm, along_mm, across_mm;
  GRefString *unknown;
} SqFlaw;

/* Immutable once shared: fill a fresh one, then hand it over. */
typedef struct
{
  gint ref_count;
  SqId id;
  GRefString *name; /* never NULL */
  SqClothClass kind;
  double width_mm; /* usable */
  double thickness_mm;
  gboolean one_way;
  gboolean up_is_start; /* the cloth's up points to the cut end, the roll's start */
  double repeat_across_mm, repeat_along_mm; /* 0: none */
  double drop;                              /* 0 or 0.5 */
  SqStripe *stripes;
  guint n_stripes;
  guint32 colour; /* the ground, 0xrrggbb */
  double price;   /* of a metre, in the maker's money */
  GArray *stock;  /* of SqStock, in the order they are to be used up */
  GArray *flaws;  /* of SqFlaw; those on a piece that is not there any more count for nothing */
  guint32 given;  /* of SqClothGiven */
  GRefString *unknown, *unknown_repeat;
} SqCloth;

/* A cloth of no name, all fields 0, that is yours until shared. */
SqCloth *sq_cloth_new (SqId id);
/* A copy of @cloth to change before sharing it. */
SqCloth *sq_cloth_dup (const SqCloth *cloth);
SqCloth *sq_cloth_ref (const SqCloth *cloth);
void sq_cloth_unref (SqCloth *cloth);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqCloth, sq_cloth_unref)

#define sq_cloth_stock(cloth, i) (&g_array_index ((cloth)->stock, SqStock, (i)))
#define sq_cloth_flaw(cloth, i) (&g_array_index ((cloth)->flaws, SqFlaw, (i)))
/* The piece, the flaw with @id. Borrowed, or NULL. */
const SqStock *sq_cloth_find_stock (const SqCloth *cloth, SqId id);
const SqFlaw *sq_cloth_find_flaw (const SqCloth *cloth, SqId id);

gboolean sq_cloth_is_striped (const SqCloth *cloth);
/* Whether the pattern lies on itself after a half turn (stripes symmetric about some line, or
 * none; not one-way). A motif (repeat along) and a repeat without stripes are taken not to. */
gboolean sq_cloth_allows_half_turn (const SqCloth *cloth);
/* Whether the stripes read the same both ways from the line @at_mm across: a half turn about it lays
 * them on themselves. A cloth without stripes reads the same from anywhere. */
gboolean sq_cloth_is_mirrored_about (const SqCloth *cloth, double at_mm);
/* Whether position on the cloth matters across, along the roll. */
gboolean sq_cloth_has_phase (const SqCloth *cloth, gboolean *across, gboolean *along);
