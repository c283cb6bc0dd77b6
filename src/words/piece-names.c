/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/piece-names.h"

#include "words/names.h"

#include <glib/gi18n.h>

/* A name as it begins a line, and as it stands inside a sentence. */
typedef struct
{
  const char *label, *inside;
} Name;

#define FRONT SQ_SIDE_FRONT
#define RIGHT SQ_SIDE_RIGHT
#define BACK SQ_SIDE_BACK
#define LEFT SQ_SIDE_LEFT

static const Name boxings[] = {
  [0] = { N_ ("Boxing"), NC_ ("in a sentence", "boxing") },
  [FRONT] = { N_ ("Front boxing"), NC_ ("in a sentence", "front boxing") },
  [RIGHT] = { N_ ("Right boxing"), NC_ ("in a sentence", "right boxing") },
  [BACK] = { N_ ("Back boxing"), NC_ ("in a sentence", "back boxing") },
  [LEFT] = { N_ ("Left boxing"), NC_ ("in a sentence", "left boxing") },
  [FRONT | RIGHT] = { N_ ("Front and right boxing"),
                      NC_ ("in a sentence", "front and right boxing") },
  [FRONT | BACK] = { N_ ("Front and back boxing"), NC_ ("in a sentence", "front and back boxing") },
  [FRONT | LEFT] = { N_ ("Left and front boxing"), NC_ ("in a sentence", "left and front boxing") },
  [RIGHT | BACK] = { N_ ("Right and back boxing"), NC_ ("in a sentence", "right and back boxing") },
  [RIGHT | LEFT] = { N_ ("Left and right boxing"), NC_ ("in a sentence", "left and right boxing") },
  [BACK | LEFT] = { N_ ("Back and left boxing"), NC_ ("in a sentence", "back and left boxing") },
  [FRONT | RIGHT | BACK] = { N_ ("Front, right and back boxing"),
                             NC_ ("in a sentence", "front, right and back boxing") },
  [FRONT | RIGHT | LEFT] = { N_ ("Left, front and right boxing"),
                             NC_ ("in a sentence", "left, front and right boxing") },
  [FRONT | BACK | LEFT] = { N_ ("Back, left and front boxing"),
                            NC_ ("in a sentence", "back, left and front boxing") },
  [RIGHT | BACK | LEFT] = { N_ ("Right, back and left boxing"),
                            NC_ ("in a sentence", "right, back and left boxing") },
  [FRONT | RIGHT | BACK | LEFT] = { N_ ("Boxing all round"),
                                    NC_ ("in a sentence", "boxing all round") },
};

static const Name top = { N_ ("Top"), NC_ ("in a sentence", "top") };
static const Name plate = { N_ ("Plate"), NC_ ("in a sentence", "plate") };
static const Name underside = { N_ ("Underside"), NC_ ("in a sentence", "underside") };
static const Name upper_strip = { N_ ("Upper zip strip"),
                                  NC_ ("in a sentence", "upper zip strip") };
static const Name lower_strip = { N_ ("Lower zip strip"),
                                  NC_ ("in a sentence", "lower zip strip") };
static const Name zip_strip = { N_ ("Zip strip"), NC_ ("in a sentence", "zip strip") };
static const Name hole_boxing = { N_ ("Boxing, hole %u"),
                                  NC_ ("in a sentence", "boxing, hole %u") };
static const Name welt = { N_ ("Welt strip"), NC_ ("in a sentence", "welt strip") };
static const Name wrap = { N_ ("Wrap"), NC_ ("in a sentence", "wrap") };
static const Name left_side = { N_ ("Left side"), NC_ ("in a sentence", "left side") };
static const Name right_side = { N_ ("Right side"), NC_ ("in a sentence", "right side") };
static const Name left_end = { N_ ("Left end"), NC_ ("in a sentence", "left end") };
static const Name right_end = { N_ ("Right end"), NC_ ("in a sentence", "right end") };
static const Name tube = { N_ ("Tube"), NC_ ("in a sentence", "tube") };
static const Name let_in = { N_ ("Let-in"), NC_ ("in a sentence", "let-in") };
static const Name part = { N_ ("%s, part %u of %u"), NC_ ("in a sentence", "%s, part %u of %u") };

static const char *
said (const Name *name, gboolean inside)
{
  return inside ? g_dpgettext2 (NULL, "in a sentence", name->inside) : gettext (name->label);
}

char *
sq_words_letters (guint i)
{
  GString *text = g_string_new (NULL);

  for (guint left = i + 1; left > 0; left = (left - 1) / 26)
    g_string_prepend_c (text, (char) ('A' + (left - 1) % 26));
  return g_string_free (text, FALSE);
}

char *
sq_words_corner (const SqCushion *cushion, SqId corner)
{
  guint ring, index;

  if (cushion->outline == NULL
      || sq_outline_corner (cushion->outline, corner, &ring, &index) == NULL)
    return g_strdup ("?");
  for (guint r = 0; r < ring; r++)
    {
      guint n_corners;
      sq_outline_ring (cushion->outline, r, &n_corners);
      index += n_corners;
    }
  return sq_words_letters (index);
}

/* The corner that follows @corner on its ring; 0 if there is no such corner. */
static SqId
next_corner (const SqCushion *cushion, SqId corner)
{
  guint ring, index, n_corners;

  if (cushion->outline == NULL
      || sq_outline_corner (cushion->outline, corner, &ring, &index) == NULL)
    return 0;

  const SqCorner *corners = sq_outline_ring (cushion->outline, ring, &n_corners);
  return corners[(index + 1) % n_corners].id;
}

char *
sq_words_edge_corners (const SqCushion *cushion, SqId corner)
{
  g_autofree char *from = sq_words_corner (cushion, corner);
  g_autofree char *to = sq_words_corner (cushion, next_corner (cushion, corner));

  /* TRANSLATORS: the two corners at the ends of an edge, as in A–B. */
  return g_strdup_printf (_ ("%s–%s"), from, to);
}

static const SqFinishedEdge *
finished_edge (const SqFinished *finished, SqId corner)
{
  for (guint r = 0; finished != NULL && r < finished->n_rings; r++)
    for (guint i = 0; i < finished->rings[r].n_edges; i++)
      if (finished->rings[r].edges[i].id == corner)
        return &finished->rings[r].edges[i];
  return NULL;
}

char *
sq_words_edge (const SqCover *cover, SqId corner)
{
  g_autofree char *corners = sq_words_edge_corners (cover->cushion, corner);
  const SqFinishedEdge *edge = finished_edge (cover->finished, corner);

  /* A bolster's edges are its own: nobody has drawn them. */
  if (edge != NULL && cover->build == SQ_BUILD_BOLSTER)
    return g_strdup (sq_words_side (edge->side));
  if (edge == NULL)
    return g_steal_pointer (&corners);
  switch (edge->side)
    {
    case SQ_SIDE_FRONT:
      return g_strdup_printf (_ ("%s (front)"), corners);
    case SQ_SIDE_RIGHT:
      return g_strdup_printf (_ ("%s (right)"), corners);
    case SQ_SIDE_BACK:
      return g_strdup_printf (_ ("%s (back)"), corners);
    case SQ_SIDE_LEFT:
      return g_strdup_printf (_ ("%s (left)"), corners);
    }
  return g_steal_pointer (&corners);
}

/* Whether the face has skirts, if only some of its panels. */
static gboolean
has_plate (const SqCover *cover)
{
  for (guint i = 0; i < cover->pieces->len; i++)
    if (sq_cover_piece (cover, i)->skirts->len > 0)
      return TRUE;
  return FALSE;
}

static const Name *
name_of (const SqCover *cover, const SqPiece *piece)
{
  switch (piece->role)
    {
    case SQ_ROLE_FACE:
      return has_plate (cover) ? &plate : &top;
    case SQ_ROLE_UNDERSIDE:
      return &underside;
    case SQ_ROLE_ZIP_STRIP:
      return cover->zip.method == SQ_ZIP_SLIT_IN ? &zip_strip
             : piece->upper                      ? &upper_strip
                                                 : &lower_strip;
    case SQ_ROLE_BOXING:
      return piece->hole > 0 ? &hole_boxing
                             : &boxings[piece->sides & (FRONT | RIGHT | BACK | LEFT)];
    case SQ_ROLE_WELT:
      return &welt;
    case SQ_ROLE_WRAP:
      return &wrap;
    case SQ_ROLE_SIDE:
      return piece->sides == SQ_SIDE_LEFT ? &left_side : &right_side;
    case SQ_ROLE_DISC:
      return piece->sides == SQ_SIDE_LEFT ? &left_end : &right_end;
    case SQ_ROLE_TUBE:
      return &tube;
    case SQ_ROLE_LET_IN:
      return &let_in;
    }
  g_return_val_if_reached (&top);
}

static gboolean
share_a_name (const SqCover *cover, const SqPiece *a, const SqPiece *b)
{
  return name_of (cover, a) == name_of (cover, b) && a->hole == b->hole;
}

static char *
piece_name (const SqCover *cover, guint index, gboolean inside)
{
  const SqPiece *piece = sq_cover_piece (cover, index);
  const char *pattern = said (name_of (cover, piece), inside);
  g_autofree char *name = piece->hole > 0 ? g_strdup_printf (pattern, piece->hole)
                                          : g_strdup (pattern);
  guint n_alike = 0, place = 0;

  for (guint i = 0; i < cover->pieces->len; i++)
    {
      if (i == index)
        place = n_alike;
      n_alike += share_a_name (cover, piece, sq_cover_piece (cover, i)) ? 1 : 0;
    }
  if (n_alike == 1)
    return g_steal_pointer (&name);
  return g_strdup_printf (said (&part, inside), name, place + 1, n_alike);
}

char *
sq_words_piece (const SqCover *cover, guint piece)
{
  return piece_name (cover, piece, FALSE);
}

char *
sq_words_piece_inside (const SqCover *cover, guint piece)
{
  return piece_name (cover, piece, TRUE);
}

char *
sq_words_piece_on_plan (const SqCover *cover, guint piece)
{
  g_autofree char *name = sq_words_piece (cover, piece);

  if (sq_cover_piece (cover, piece)->role != SQ_ROLE_UNDERSIDE)
    return g_steal_pointer (&name);
  return g_strdup_printf (_ ("%s (seen right side up)"), name);
}

/* The corner of the seat that two skirts meet at: the end of one edge and the start of the
 * other. */
static SqId
corner_between (const SqCushion *cushion, SqId edge_a, SqId edge_b)
{
  return next_corner (cushion, edge_a) == edge_b ? edge_b : edge_a;
}

static SqId
edge_of_side (const SqCover *cover, const SqSide *side)
{
  return sq_piece_run (sq_cover_piece (cover, side->piece), sq_side_run (cover, side, 0))->edge;
}

/* A seam of a piece with itself. */
static char *
own_seam_name (const SqCover *cover, const SqSeam *seam)
{
  g_autofree char *piece = sq_words_piece (cover, seam->a.piece);

  switch (seam->kind)
    {
    case SQ_SEAM_CORNER:
      {
        SqId between = corner_between (cover->cushion, edge_of_side (cover, &seam->a),
                                       edge_of_side (cover, &seam->b));
        g_autofree char *corner = sq_words_corner (cover->cushion, between);
        return g_strdup_printf (_ ("%s, corner %s"), piece, corner);
      }
    case SQ_SEAM_ZIP:
      return g_strdup_printf (_ ("%s, zip"), piece);
    case SQ_SEAM_JOIN:
    case SQ_SEAM_PERIMETER:
    case SQ_SEAM_WELT:
      return g_strdup_printf (_ ("%s, both ends"), piece);
    }
  g_return_val_if_reached (g_strdup (piece));
}

char *
sq_words_seam (const SqCover *cover, guint i)
{
  const SqSeam *seam = sq_cover_seam (cover, i);

  if (seam->b.n_runs == 0)
    {
      g_autofree char *piece = sq_words_piece (cover, seam->a.piece);
      return g_strdup_printf (_ ("%s, hem"), piece);
    }
  if (seam->a.piece == seam->b.piece)
    return own_seam_name (cover, seam);

  g_autofree char *a = sq_words_piece (cover, seam->a.piece);
  g_autofree char *b = sq_words_piece_inside (cover, seam->b.piece);
  return g_strdup_printf (_ ("%s to %s"), a, b);
}
