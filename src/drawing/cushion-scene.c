/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/cushion-scene.h"

#include "base/units.h"
#include "drawing/piece-scene.h"
#include "drawing/theme.h"

#include <math.h>

/* How the cushion is turned before it is looked at, and from how far above. */
#define TURN_RAD 0.42
#define ABOVE_RAD 0.55

/* A bent piece is shown by flat ones, each of this much of the bend. */
#define FACET_RAD 0.15
#define FLATTEN_MM 0.5
/* Their edges are drawn round the bend, by chords of this much of it. */
#define CHORD_RAD 0.03
/* They lie over each other by this share of their width, so that nothing shines through between. */
#define OVERLAP 0.4

/* Light on what faces it, and on what faces away. */
#define BRIGHT 1.0
#define SHADED 0.66

/* An edge this near to the sew line is a seam (mm). */
#define ON_SEAM_MM 0.05

/* Nearly level: what lies on top hides all that stands below it. */
#define LEVEL 0.9

typedef struct
{
  double u, v, near; /* to the right, up, towards the eye */
} Seen;

typedef struct
{
  GArray *flat; /* of SqPoint: in the piece */
  const SqPiece *piece;
  const SqPatch *patch;
  double near;
  gboolean is_top;
  guint32 rgb;
} Facet;

typedef struct
{
  SqVector along; /* of the front */
  GArray *facets;
} Look;

static Seen
see (const Look *look, SqPoint3 p)
{
  double x = p.x * look->along.x + p.y * look->along.y;
  double y = p.y * look->along.x - p.x * look->along.y;
  double u = x * cos (TURN_RAD) - y * sin (TURN_RAD);
  double back = x * sin (TURN_RAD) + y * cos (TURN_RAD);

  return (Seen){ u, back * sin (ABOVE_RAD) + p.z * cos (ABOVE_RAD),
                 p.z * sin (ABOVE_RAD) - back * cos (ABOVE_RAD) };
}

/* ---- facets ----------------------------------------------------------------------------------- */

/* The part of the polygon where (p − origin) · along × sign >= limit × sign. New. */
static GArray *
cut_off (const GArray *polygon, const SqPatch *patch, double limit, double sign)
{
  GArray *part = g_array_new (FALSE, FALSE, sizeof (SqPoint));

  for (guint i = 0; i < polygon->len; i++)
    {
      SqPoint a = g_array_index (polygon, SqPoint, i);
      SqPoint b = g_array_index (polygon, SqPoint, (i + 1) % polygon->len);
      double da = sign * (sq_dot (sq_sub (a, patch->origin), patch->along) - limit);
      double db = sign * (sq_dot (sq_sub (b, patch->origin), patch->along) - limit);
      if (da >= 0)
        g_array_append_val (part, a);
      if ((da > 0 && db < 0) || (da < 0 && db > 0))
        {
          SqPoint cut = sq_moved (a, sq_sub (b, a), da / (da - db));
          g_array_append_val (part, cut);
        }
    }
  return part;
}

static SqPoint
middle_of (const GArray *polygon)
{
  SqVector sum = { 0, 0 };

  for (guint i = 0; i < polygon->len; i++)
    sum = sq_add (sum, g_array_index (polygon, SqPoint, i));
  return sq_scale (sum, 1.0 / polygon->len);
}

/* Out of the right side of the cloth at @p, seen from the eye: .near > 0 faces it. */
static SqPoint3
normal_at (const SqPatch *patch, SqPoint p)
{
  SqPoint3 o = sq_patch_map (patch, p);
  SqPoint3 a = sq_patch_map (patch, sq_moved (p, patch->along, SQ_COINCIDE_MM * 1e5));
  SqPoint3 b = sq_patch_map (patch, sq_moved (p, sq_left (patch->along), SQ_COINCIDE_MM * 1e5));
  SqPoint3 n;

  a = (SqPoint3){ a.x - o.x, a.y - o.y, a.z - o.z };
  b = (SqPoint3){ b.x - o.x, b.y - o.y, b.z - o.z };
  n = (SqPoint3){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
  double length = sqrt (n.x * n.x + n.y * n.y + n.z * n.z);
  return (SqPoint3){ n.x / length, n.y / length, n.z / length };
}

/* Takes @flat. Nothing where it faces away. */
static void
add_facet (Look *look, const SqPiece *piece, const SqPatch *patch, GArray *flat, guint32 rgb)
{
  if (flat->len >= 3)
    {
      SqPoint middle = middle_of (flat);
      SqPoint3 n = normal_at (patch, middle);
      Seen towards = see (look, n);
      double light = SHADED
                     + (BRIGHT - SHADED)
                           * fmax (0, 0.9 * n.z + 0.5 * fmax (0, -towards.u) + 0.2 * towards.near);
      Facet facet = { .flat = flat,
                      .piece = piece,
                      .patch = patch,
                      .near = see (look, sq_patch_map (patch, middle)).near,
                      .is_top = n.z > LEVEL,
                      .rgb = sq_colour_between (0, rgb, fmin (light, BRIGHT)) };
      if (towards.near > 0)
        {
          g_array_append_val (look->facets, facet);
          return;
        }
    }
  g_array_unref (flat);
}

static void
add_patch (Look *look, const SqPiece *piece, const SqPatch *patch, guint32 rgb)
{
  g_autoptr (SqPath) region = sq_path_flattened (patch->region, FLATTEN_MM);
  g_autoptr (GArray) whole = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  double least = INFINITY, most = -INFINITY;

  for (guint i = 0; i < sq_path_n_nodes (region); i++)
    {
      SqPoint p = sq_path_nodes (region)[i].at;
      double s = sq_dot (sq_sub (p, patch->origin), patch->along);
      least = fmin (least, s);
      most = fmax (most, s);
      g_array_append_val (whole, p);
    }
  guint n = patch->kind == SQ_PATCH_CYLINDER
                ? (guint) ceil ((most - least) / fabs (patch->radius_mm) / FACET_RAD)
                : 1;
  n = CLAMP (n, 1, 100);
  for (guint i = 0; i < n; i++)
    {
      double step = (most - least) / n, lap = n > 1 ? OVERLAP * step : 0;
      g_autoptr (GArray) from = cut_off (whole, patch, least + i * step - lap, 1);
      add_facet (look, piece, patch,
                 n == 1 ? g_array_ref (whole)
                        : cut_off (from, patch, least + (i + 1) * step + lap, -1),
                 rgb);
    }
}

/* From far to near; what lies on top of the cushion last. */
static int
compare_facets (gconstpointer a, gconstpointer b)
{
  const Facet *x = a, *y = b;

  if (x->is_top != y->is_top)
    return x->is_top ? 1 : -1;
  return (x->near > y->near) - (x->near < y->near);
}

/* ---- drawing ---------------------------------------------------------------------------------- */

static SqPoint
seen_point (const Look *look, const Facet *facet, SqPoint p)
{
  Seen seen = see (look, sq_patch_map (facet->patch, p));
  return sq_point (seen.u, seen.v);
}

/* Adds to @nodes what is seen from @a up to @b, which is left out, following the bend. */
static void
add_edge (GArray *nodes, const Look *look, const Facet *facet, SqPoint a, SqPoint b)
{
  const SqPatch *patch = facet->patch;
  SqVector way = sq_sub (b, a);
  double bend = patch->kind == SQ_PATCH_CYLINDER
                    ? fabs (sq_dot (way, patch->along) / patch->radius_mm)
                    : 0;
  guint n = 1 + (guint) (bend / CHORD_RAD);

  for (guint i = 0; i < n; i++)
    {
      SqNode node = { .at = seen_point (look, facet, sq_moved (a, way, i / (double) n)) };
      g_array_append_val (nodes, node);
    }
}

static void
add_ring (SqSceneBuilder *builder, const Look *look, const Facet *facet, const SqPoint *points,
          guint n)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  for (guint i = 0; i < n; i++)
    add_edge (nodes, look, facet, points[i], points[(i + 1) % n]);
  sq_scene_add_nodes (builder, (const SqNode *) (gconstpointer) nodes->data, nodes->len, TRUE);
}

static void
add_seam (SqSceneBuilder *builder, const Look *look, const Facet *facet, SqPoint a, SqPoint b)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  SqNode end = { .at = seen_point (look, facet, b) };

  add_edge (nodes, look, facet, a, b);
  g_array_append_val (nodes, end);
  sq_scene_add_nodes (builder, (const SqNode *) (gconstpointer) nodes->data, nodes->len, FALSE);
}

static gboolean
is_on_seam (const SqPiece *piece, SqPoint p)
{
  for (guint i = 0; i < piece->sew->len; i++)
    if (sq_path_nearest (sq_piece_sew (piece, i), p).distance_mm < ON_SEAM_MM + FLATTEN_MM)
      return TRUE;
  return FALSE;
}

/* Holes go through what lies flat. */
static void
add_holes (SqSceneBuilder *builder, const Look *look, const Facet *facet)
{
  for (guint i = 1; facet->is_top && i < facet->piece->sew->len; i++)
    {
      g_autoptr (SqPath) ring = sq_path_flattened (sq_piece_sew (facet->piece, i), FLATTEN_MM);
      guint n = sq_path_n_nodes (ring);
      g_autofree SqPoint *points = g_new (SqPoint, n);
      for (guint k = 0; k < n; k++)
        points[k] = sq_path_nodes (ring)[k].at;
      add_ring (builder, look, facet, points, n);
    }
}

static void
draw_facet (SqSceneBuilder *builder, const Look *look, const Facet *facet)
{
  const SqPoint *points = (const SqPoint *) (gconstpointer) facet->flat->data;
  guint n = facet->flat->len;

  sq_scene_begin_colour (builder, facet->rgb, 1);
  add_ring (builder, look, facet, points, n);
  add_holes (builder, look, facet);
  sq_scene_begin_stroke (builder, SQ_PEN_INK);
  for (guint i = 0; i < n; i++)
    {
      SqPoint a = points[i], b = points[(i + 1) % n];
      if (is_on_seam (facet->piece, sq_scale (sq_add (a, b), 0.5)))
        add_seam (builder, look, facet, a, b);
    }
  add_holes (builder, look, facet);
}

static void
clear_facet (gpointer data)
{
  g_array_unref (((Facet *) data)->flat);
}

SqScene *
sq_cushion_scene (const SqPlan *plan, guint i, guint32 plain)
{
  const SqCover *cover = sq_plan_cover (plan, i);
  SqSceneBuilder *builder = sq_scene_builder_new ();
  Look look = { { 1, 0 }, g_array_new (FALSE, FALSE, sizeof (Facet)) };

  g_array_set_clear_func (look.facets, clear_facet);
  if (cover->finished != NULL)
    look.along = cover->finished->front_dir;
  for (guint k = 0; k < cover->pieces->len; k++)
    {
      const SqPiece *piece = sq_cover_piece (cover, k);
      SqGround ground = sq_cloth_ground (sq_plan_cloth (plan, piece->cloth), plain);
      for (guint p = 0; piece->role != SQ_ROLE_WELT && p < piece->patches->len; p++)
        add_patch (&look, piece, &g_array_index (piece->patches, SqPatch, p), ground.mean);
    }
  g_array_sort (look.facets, compare_facets);
  for (guint k = 0; k < look.facets->len; k++)
    draw_facet (builder, &look, &g_array_index (look.facets, Facet, k));
  g_array_unref (look.facets);
  return sq_scene_builder_end (builder);
}
