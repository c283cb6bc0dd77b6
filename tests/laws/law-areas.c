/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "base/units.h"
#include "geometry/geos.h"

/* Arcs are flattened so closely for GEOS (mm). */
#define FLAT_MM 0.01
/* GEOS leaves notches out that are less deep than this share of the distance it grows by. */
#define GEOS_SHARE 0.01
#define GRID_MM 1e-4

/* No tip is farther than this many times the allowance: the mitre rule says 2.5, and what is left
 * of one that is cut square has corners of its own, farther out where arcs bend away. */
#define MITRE_LIMIT 4.0

static char *
check_area (const SqPiece *piece)
{
  double area = 0, round_mm = 0;

  for (guint i = 0; i < piece->cut->len; i++)
    {
      area += (i == 0 ? 1 : -1) * geos_area_mm2 (sq_piece_cut (piece, i), FLAT_MM);
      round_mm += sq_path_length_mm (sq_piece_cut (piece, i));
    }
  if (fabs (area - piece->area_mm2) > FLAT_MM * round_mm)
    return g_strdup_printf ("%.9g mm2, GEOS has %.9g", piece->area_mm2, area);
  return NULL;
}

/* Width across the grain and height along it. */
static char *
check_extents (const SqPiece *piece)
{
  g_autoptr (SqPath) flat = sq_path_flattened (sq_piece_cut (piece, 0), FLAT_MM);
  SqVector along = { cos (piece->grain_rad), sin (piece->grain_rad) };
  SqBox box = sq_box_empty ();

  for (guint i = 0; i < sq_path_n_nodes (flat); i++)
    {
      SqPoint p = sq_path_nodes (flat)[i].at;
      box = sq_box_with (box, sq_point (sq_dot (p, along), sq_cross (along, p)));
    }
  double height = box.max.x - box.min.x, width = box.max.y - box.min.y;
  if (fabs (height - piece->height_mm) > 2 * FLAT_MM
      || fabs (width - piece->width_mm) > 2 * FLAT_MM)
    return g_strdup_printf ("%.9g × %.9g mm, by its nodes %.9g × %.9g", piece->width_mm,
                            piece->height_mm, width, height);
  return NULL;
}

static GEOSGeometry *
grown (const SqPath *ring, double by_mm)
{
  GEOSGeometry *polygon = geos_polygon (ring, FLAT_MM);
  GEOSGeometry *result = GEOSBuffer_r (geos_context (), polygon, by_mm, 16);

  GEOSGeom_destroy_r (geos_context (), polygon);
  return result;
}

/* Area of @a that is not of @b, and frees what GEOS made of it. */
static double
area_of_rest (GEOSGeometry *rest)
{
  double area = INFINITY;

  if (rest != NULL)
    GEOSArea_r (geos_context (), rest, &area);
  GEOSGeom_destroy_r (geos_context (), rest);
  return area;
}

/* Whether more than @may_mm2 of @a is not of @b. GEOS goes astray where lines all but lie on each
 * other, unless it works on a grid, which takes longer. */
static gboolean
reaches_beyond (const GEOSGeometry *a, const GEOSGeometry *b, double may_mm2, double *area_mm2)
{
  *area_mm2 = area_of_rest (GEOSDifference_r (geos_context (), a, b));
  if (*area_mm2 > may_mm2)
    *area_mm2 = area_of_rest (GEOSDifferencePrec_r (geos_context (), a, b, GRID_MM));
  return *area_mm2 > may_mm2;
}

/* The cut line keeps outside the sew line grown by the least allowance, and inside what the
 * mitre rule lets it reach. Rings alone: what GEOS fills, such as a pocket, is cloth here, too. */
static char *
check_reach (const SqPiece *piece)
{
  const SqPath *sew = sq_piece_sew (piece, 0), *cut = sq_piece_cut (piece, 0);
  double least = INFINITY, most = 0, round_mm = sq_path_length_mm (cut);
  char *wrong = NULL;

  if (cut == sew)
    return NULL;
  for (guint i = 0; i < piece->runs->len; i++)
    if (sq_piece_run (piece, i)->ring == 0)
      {
        least = fmin (least, sq_piece_run (piece, i)->allowance_mm);
        most = fmax (most, sq_piece_run (piece, i)->allowance_mm);
      }
  GEOSGeometry *cloth = geos_polygon (cut, FLAT_MM);
  GEOSGeometry *inner = grown (sew, least), *outer = grown (sew, MITRE_LIMIT * most + FLAT_MM);
  double may_lack = (GEOS_SHARE * least + 2 * FLAT_MM) * round_mm, area;
  if (reaches_beyond (inner, cloth, may_lack, &area))
    wrong = g_strdup_printf ("%.9g mm2 of the least allowance are cut off", area);
  else if (reaches_beyond (cloth, outer, 2 * FLAT_MM * round_mm, &area))
    wrong = g_strdup_printf ("%.9g mm2 lie farther out than any mitre", area);
  GEOSGeom_destroy_r (geos_context (), cloth);
  GEOSGeom_destroy_r (geos_context (), inner);
  GEOSGeom_destroy_r (geos_context (), outer);
  return wrong;
}

/* ---- foam ---------------------------------------------------------------------------------- */

/* The block is the outline moved out, or in, by half the oversize: its sides exactly, its corners
 * farther. */
static char *
check_block (const SqPath *outline, const SqPath *block, double by_mm)
{
  gboolean any_near = FALSE;

  for (guint i = 0; i < sq_path_n_segments (block); i++)
    for (int k = 0; k < 4; k++)
      {
        SqSegment s = sq_path_segment (block, i);
        SqPoint p = sq_segment_point (&s, k / 4.0);
        double d = sq_path_nearest (outline, p).distance_mm;
        int winding = sq_path_winding (outline, p);
        gboolean in_material = sq_path_area_mm2 (outline) > 0 ? winding != 0 : winding == 0;
        any_near |= d < fabs (by_mm) + 1e-6;
        if (d < fabs (by_mm) - 1e-6 || d > MITRE_LIMIT * fabs (by_mm) + 1e-6
            || (d > 1e-6 && in_material != (by_mm < 0)))
          return g_strdup_printf ("foam is %.9g mm from the outline, not %.9g", d, by_mm);
      }
  /* A crumb of an outline is all corners. */
  return any_near || sq_path_length_mm (outline) < 40 * fabs (by_mm)
             ? NULL
             : g_strdup ("foam is at its distance nowhere");
}

/* A bolster's block stands on its end, and batting goes round it. */
static char *
check_roll (const SqCover *cover, const SqFoamPart *part, const SqPath *block)
{
  guint end = first_piece (cover, SQ_ROLE_DISC);
  double batting = (cover->cushion->given & SQ_GIVEN_FOAM_BATTING) ? cover->cushion->foam.batting_mm
                                                                   : 0;

  if (fabs (part->thickness_mm - (cover->finished->extent.max.x - cover->finished->extent.min.x))
      > 1e-6)
    return g_strdup_printf ("the foam of a bolster is %.9g mm long", part->thickness_mm);
  return check_block (sq_piece_sew (sq_cover_piece (cover, end), 0), block,
                      (part->oversize_mm - batting) / 2);
}

static char *
check_foam (const LawCase *c, const SqCover *cover, const SqFoamPart *part)
{
  const SqFinished *f = cover->finished;
  double area = 0, round_mm = 0, density = c->job->defaults.foam_density_kg_m3;
  char *wrong = NULL;

  for (guint i = 0; i < part->rings->len && wrong == NULL; i++)
    {
      const SqPath *block = part->rings->pdata[i];
      area += (i == 0 ? 1 : -1) * geos_area_mm2 (block, FLAT_MM);
      round_mm += sq_path_length_mm (block);
      if (cover->build == SQ_BUILD_BOLSTER)
        wrong = check_roll (cover, part, block);
      else if (part->rings->len == f->n_rings)
        wrong = check_block (f->rings[i].path, block, part->oversize_mm / 2);
    }
  if (wrong != NULL)
    return wrong;
  double volume = area * part->thickness_mm;
  if (fabs (volume - part->volume_mm3) > FLAT_MM * round_mm * part->thickness_mm)
    return g_strdup_printf ("foam of %.9g mm3, GEOS has %.9g", part->volume_mm3, volume);

  const SqCushion *cushion = cover->cushion;
  SqFoamKind asked = (cushion->given & SQ_GIVEN_FOAM_KIND) ? cushion->foam.kind
                                                           : c->job->defaults.foam_kind;
  const SqFoam *foam = sq_job_foam (c->job, asked);
  if (foam != NULL && (foam->given & SQ_GIVEN_FOAM_DENSITY))
    density = foam->density_kg_m3;
  /* kg/m³ to g/mm3 */
  if (fabs (part->weight_g - part->volume_mm3 * density / 1e6) > 1e-9 * part->weight_g)
    return g_strdup_printf ("foam of %.9g mm3 weighs %.9g g at %.9g kg/m³", part->volume_mm3,
                            part->weight_g, density);
  return NULL;
}

char *
law_areas (const LawCase *c)
{
  for (guint i = 0; i < c->plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (c->plan, i);
      for (guint p = 0; p < cover->pieces->len; p++)
        {
          const SqPiece *piece = sq_cover_piece (cover, p);
          g_autofree char *wrong = check_area (piece);
          if (wrong == NULL)
            wrong = check_extents (piece);
          if (wrong == NULL)
            wrong = check_reach (piece);
          if (wrong != NULL)
            return g_strdup_printf ("cushion %u, piece %u (%s): %s", i, p,
                                    sq_piece_role_name (piece->role), wrong);
        }
      for (guint k = 0; k < cover->foam->len; k++)
        {
          char *wrong = check_foam (c, cover, cover->foam->pdata[k]);
          if (wrong != NULL)
            return wrong;
        }
    }
  return NULL;
}
