/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/choices.h"

#include "cover/report.h"
#include "job/frame.h"

static gboolean
given (const SqCushion *cushion, SqCushionGiven key)
{
  return (cushion->given & key) != 0;
}

/* The middle of the widest band, or of the widest gap between bands, across the repeat. */
static double
pattern_centre_mm (const SqCloth *cloth, SqCentreOn centre_on)
{
  double repeat = cloth->repeat_across_mm, best = -1, centre = repeat / 2;

  for (guint i = 0; i < cloth->n_stripes && centre_on != SQ_CENTRE_MOTIF; i++)
    {
      const SqStripe *s = &cloth->stripes[i];
      double from = s->at_mm, width = s->width_mm;
      if (centre_on == SQ_CENTRE_GAP)
        {
          const SqStripe *next = &cloth->stripes[(i + 1) % cloth->n_stripes];
          from = s->at_mm + s->width_mm;
          width = next->at_mm + (i + 1 == cloth->n_stripes ? repeat : 0) - from;
        }
      if (width > best + SQ_COINCIDE_MM)
        {
          best = width;
          centre = from + width / 2;
        }
    }
  return repeat > 0 ? fmod (centre, repeat) : centre;
}

static SqClothChoice
resolve_cloth (const SqCloth *cloth, const SqDefaults *house, SqCentreOn centre_on)
{
  SqClothChoice c = { .kind = house->cloth_class, .half_turn = TRUE };

  if (cloth != NULL)
    {
      c.id = cloth->id;
      if (cloth->given & SQ_GIVEN_CLOTH_CLASS)
        c.kind = cloth->kind;
      c.one_way = cloth->one_way;
      c.up_is_start = cloth->up_is_start;
      c.half_turn = sq_cloth_allows_half_turn (cloth);
      sq_cloth_has_phase (cloth, &c.phase_across, &c.phase_along);
      c.centre_across_mm = pattern_centre_mm (cloth, centre_on);
      c.centre_along_mm = cloth->repeat_along_mm / 2;
      c.repeat_across_mm = cloth->repeat_across_mm;
    }
  c.width_mm = cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_WIDTH) ? cloth->width_mm
                                                                      : house->cloth_width_mm;
  c.thickness_mm = cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_THICKNESS)
                       ? cloth->thickness_mm
                       : house->cloth_thickness_mm[c.kind];
  return c;
}

static const SqCloth *
find_cloth (const SqJob *job, const SqCushion *cushion, SqCushionGiven key, SqId id,
            const char *name, const SqCloth *otherwise, GArray *problems)
{
  if (!given (cushion, key) || id == 0)
    return otherwise;
  const SqCloth *cloth = sq_job_cloth (job, id);
  if (cloth == NULL)
    {
      SqProblem *p = sq_report_key (problems, SQ_PROBLEM_CLOTH_MISSING, SQ_WARNING, cushion, name);
      p->facts[0] = id;
      p->fixes[0] = (SqFix){ SQ_FIX_CLOTH, 0, 0 };
      return otherwise;
    }
  return cloth;
}

/* A figure that may not be negative. */
static double
allowance (const SqCushion *cushion, SqCushionGiven key, double value, const char *name,
           double otherwise, GArray *problems)
{
  if (!given (cushion, key))
    return otherwise;
  if (value >= 0)
    return value;
  SqProblem *p = sq_report_key (problems, SQ_PROBLEM_ALLOWANCE, SQ_FAULT, cushion, name);
  p->facts[0] = value;
  p->fixes[0] = (SqFix){ SQ_FIX_ALLOWANCES, 0, 0 };
  return otherwise;
}

/* Only these have sides of different builds in one cover. */
static gboolean
mixes (const SqChoices *c)
{
  return c->build == SQ_BUILD_FOLDED_CORNER || c->build == SQ_BUILD_BOXED;
}

/* Where a way of building may have its zip. */
typedef struct
{
  SqZipPlace usual, when_low; /* under the least height of a boxing that takes a zip */
  guint places;               /* a bit of each SqZipPlace */
} ZipPlaces;

#define PLACE(place) (1U << SQ_ZIP_##place)

static const ZipPlaces zip_places[SQ_N_BUILDS] = {
  [SQ_BUILD_FOLDED_CORNER] = { SQ_ZIP_UNDERSIDE, SQ_ZIP_UNDERSIDE,
                               PLACE (NONE) | PLACE (UNDERSIDE) | PLACE (BACK_SEAM) },
  [SQ_BUILD_BOXED] = { SQ_ZIP_BOXING, SQ_ZIP_UNDERSIDE,
                       PLACE (NONE) | PLACE (BOXING) | PLACE (UNDERSIDE) | PLACE (BACK_SEAM) },
  [SQ_BUILD_WRAPPED_FRONT] = { SQ_ZIP_BOXING, SQ_ZIP_BACK_SEAM,
                               PLACE (NONE) | PLACE (BOXING) | PLACE (BACK_SEAM) },
  [SQ_BUILD_SPLIT_SIDE] = { SQ_ZIP_SIDE_SEAM, SQ_ZIP_SIDE_SEAM,
                            PLACE (NONE) | PLACE (SIDE_SEAM) | PLACE (UNDERSIDE) },
  [SQ_BUILD_KNIFE_EDGE] = { SQ_ZIP_BACK_SEAM, SQ_ZIP_BACK_SEAM,
                            PLACE (NONE) | PLACE (BACK_SEAM) | PLACE (UNDERSIDE) },
  [SQ_BUILD_BOLSTER] = { SQ_ZIP_TUBE, SQ_ZIP_TUBE, PLACE (NONE) | PLACE (TUBE) },
};

guint
sq_choices_zip_places (SqBuild build)
{
  return zip_places[build].places;
}

/* The way of building whose zip is in the place asked for, where this one has none there. */
static SqBuild
build_with (SqZipPlace place)
{
  return place == SQ_ZIP_SIDE_SEAM ? SQ_BUILD_SPLIT_SIDE
         : place == SQ_ZIP_TUBE    ? SQ_BUILD_BOLSTER
                                   : SQ_BUILD_BOXED;
}

static void
resolve_zip (SqChoices *c, GArray *problems)
{
  const SqCushion *cushion = c->cushion;
  const SqDefaults *house = c->house;
  SqBuild build = sq_choices_is_mixed (c) ? SQ_BUILD_FOLDED_CORNER : c->build;
  const ZipPlaces *places = &zip_places[build];
  guint allowed = places->places;
  gboolean low = c->thickness_mm < house->zip_boxing_least_mm;
  SqZipPlace usual = low ? places->when_low : places->usual;
  SqProblem *p;

  /* Under a mitred wrap the seam is drawn in at every corner. */
  if (build == SQ_BUILD_FOLDED_CORNER && c->wrap_style == SQ_WRAP_MITRED)
    allowed &= ~PLACE (BACK_SEAM);
  /* A cushion that may be turned over shows no zip on either face. */
  if (c->reversible && c->build == SQ_BUILD_BOXED && low)
    usual = SQ_ZIP_BACK_SEAM;
  c->zip_place = usual;
  if (given (cushion, SQ_GIVEN_ZIP_PLACE))
    {
      c->zip_place = cushion->zip.place;
      if ((allowed & (1U << c->zip_place)) == 0)
        {
          p = sq_report_key (problems, SQ_PROBLEM_ZIP_NO_PLACE, SQ_WARNING, cushion, "zip.place");
          p->fixes[0] = (SqFix){ SQ_FIX_ZIP_PLACE, 0, usual };
          p->fixes[1] = (SqFix){ SQ_FIX_BUILD, 0, build_with (c->zip_place) };
          c->zip_place = usual;
        }
      else if (c->zip_place == SQ_ZIP_BOXING && low)
        {
          p = sq_report_key (problems, SQ_PROBLEM_ZIP_BOXING_LOW, SQ_WARNING, cushion, "zip.place");
          p->facts[0] = c->thickness_mm;
          p->facts[1] = house->zip_boxing_least_mm;
          p->fixes[0] = (SqFix){ SQ_FIX_ZIP_PLACE, 0, places->when_low };
        }
      else if (c->zip_place == SQ_ZIP_NONE)
        {
          p = sq_report_key (problems, SQ_PROBLEM_NO_ZIP, SQ_NOTE, cushion, "zip.place");
          p->fixes[0] = (SqFix){ SQ_FIX_ZIP_PLACE, 0, usual };
        }
    }
  c->zip_method = given (cushion, SQ_GIVEN_ZIP_METHOD) ? cushion->zip.method
                  : c->zip_place == SQ_ZIP_UNDERSIDE   ? SQ_ZIP_SLIT_IN
                                                       : SQ_ZIP_TWO_PART;
  c->zip_extension_mm = allowance (cushion, SQ_GIVEN_ZIP_EXTENSION, cushion->zip.extension_mm,
                                   "zip.extension", house->zip_extension_mm, problems);
  c->zip_tuck_mm = allowance (cushion, SQ_GIVEN_ZIP_TUCK, cushion->zip.tuck_mm, "zip.tuck",
                              house->zip_tuck_mm, problems);
}

static gboolean
given_way (const SqCushion *cushion, SqWayGiven key)
{
  return (cushion->given_way & key) != 0;
}

static void
resolve_welt (SqChoices *c, GArray *problems)
{
  const SqCushion *cushion = c->cushion;
  const SqDefaults *house = c->house;
  SqProblem *p;

  c->welt_at = given_way (cushion, SQ_GIVEN_WELT_AT) ? cushion->welt.at : SQ_WELT_NONE;
  c->welt_cord_mm = house->welt_cord_mm;
  if (given_way (cushion, SQ_GIVEN_WELT_CORD) && cushion->welt.cord_mm > 0)
    c->welt_cord_mm = cushion->welt.cord_mm;
  c->welt_overlap_mm = house->welt_overlap_mm;
  if (given_way (cushion, SQ_GIVEN_WELT_OVERLAP) && cushion->welt.overlap_mm >= 0)
    c->welt_overlap_mm = cushion->welt.overlap_mm;
  c->welt_cut = c->welt.kind != SQ_CLOTH_VINYL && c->welt.phase_across ? SQ_WELT_BIAS
                                                                       : SQ_WELT_STRAIGHT;
  if (given_way (cushion, SQ_GIVEN_WELT_CUT))
    c->welt_cut = cushion->welt.cut;
  if (c->welt_at == SQ_WELT_NONE)
    return;
  if (c->build == SQ_BUILD_FOLDED_CORNER || c->build == SQ_BUILD_WRAPPED_FRONT
      || sq_choices_is_mixed (c))
    {
      sq_report_key (problems, SQ_PROBLEM_WELT_NOT_TAKEN, SQ_NOTE, cushion, "welt.at")->fixes[0]
          = (SqFix){ SQ_FIX_WELT_AT, 0, SQ_WELT_NONE };
      c->welt_at = SQ_WELT_NONE;
      return;
    }
  if (c->welt_cut == SQ_WELT_BIAS && c->welt.kind == SQ_CLOTH_VINYL)
    {
      p = sq_report_key (problems, SQ_PROBLEM_WELT_VINYL_BIAS, SQ_WARNING, cushion, "welt.cut");
      p->fixes[0] = (SqFix){ SQ_FIX_WELT_CUT, 0, SQ_WELT_STRAIGHT };
    }
  double thick = c->welt_cord_mm + 2 * c->welt.thickness_mm;
  if (thick > c->perimeter_mm + SQ_COINCIDE_MM)
    {
      p = sq_report_key (problems, SQ_PROBLEM_WELT_THICK, SQ_FAULT, cushion, "welt.cord");
      p->facts[0] = thick;
      p->facts[1] = c->perimeter_mm;
      p->fixes[0] = (SqFix){ SQ_FIX_WELT_CORD, 0, house->welt_cord_mm };
      p->fixes[1] = (SqFix){ SQ_FIX_WELT_AT, 0, SQ_WELT_NONE };
    }
}

/* Sides that are to be built as this way does not build them. */
static void
check_edge_builds (const SqChoices *c, GArray *problems)
{
  guint n = 0;
  const SqCorner *corners = NULL;

  if (c->outline != NULL && sq_outline_n_rings (c->outline) > 0)
    corners = sq_outline_ring (c->outline, 0, &n);
  for (guint i = 0; i < n; i++)
    {
      gboolean is_open = corners[i].build == SQ_EDGE_OPEN;
      if (!(corners[i].given & SQ_GIVEN_EDGE_BUILD) || (mixes (c) && !is_open))
        continue;
      SqId edge = corners[c->mirrored ? (i + 1) % n : i].id;
      sq_report_edge (problems, is_open ? SQ_PROBLEM_EDGE_NOT_OPEN : SQ_PROBLEM_EDGE_BUILD_UNUSED,
                      is_open ? SQ_WARNING : SQ_NOTE, c->cushion, edge)
          ->fixes[0]
          = (SqFix){ SQ_FIX_EDGE_AS_WAY, edge, 0 };
    }
}

/* What only some ways ask; each way says itself what it can't be made of. */
static void
resolve_way (SqChoices *c)
{
  const SqCushion *cushion = c->cushion;
  double half = c->thickness_mm / 2, depth;

  c->profile = given_way (cushion, SQ_GIVEN_PROFILE)          ? cushion->profile.kind
               : given_way (cushion, SQ_GIVEN_PROFILE_RADIUS) ? SQ_PROFILE_RADIUS
                                                              : SQ_PROFILE_HALF_ROUND;
  c->profile_radius_mm = c->profile == SQ_PROFILE_SQUARE ? 0 : half;
  if (c->profile == SQ_PROFILE_RADIUS && given_way (cushion, SQ_GIVEN_PROFILE_RADIUS))
    c->profile_radius_mm = cushion->profile.radius_mm;
  if (given_way (cushion, SQ_GIVEN_BOLSTER_SECTION))
    c->bolster_section = cushion->bolster.section;
  if (given_way (cushion, SQ_GIVEN_BOLSTER_DIAMETER))
    c->bolster_diameter_mm = cushion->bolster.diameter_mm;
  if (given_way (cushion, SQ_GIVEN_BOLSTER_LENGTH))
    c->bolster_length_mm = cushion->bolster.length_mm;
  else
    sq_outline_extents_mm (c->outline, &c->bolster_length_mm, &depth);
  if (given_way (cushion, SQ_GIVEN_BOLSTER_RISE))
    c->bolster_rise_mm = cushion->bolster.rise_mm;
  c->split_upper_mm = given_way (cushion, SQ_GIVEN_SPLIT_UPPER) ? cushion->split.upper_mm : half;
  if (given_way (cushion, SQ_GIVEN_FILLING))
    c->filling = cushion->knife_edge.filling;
  c->draw_in_mm = given_way (cushion, SQ_GIVEN_DRAW_IN) ? cushion->knife_edge.draw_in_mm
                                                        : c->house->draw_in_mm;
}

static void
resolve_foam (const SqJob *job, SqChoices *c, GArray *problems)
{
  const SqCushion *cushion = c->cushion;

  c->foam_kind = given (cushion, SQ_GIVEN_FOAM_KIND) ? cushion->foam.kind : c->house->foam_kind;
  const SqFoam *foam = sq_job_foam (job, c->foam_kind);
  c->foam_density_kg_m3 = foam != NULL && (foam->given & SQ_GIVEN_FOAM_DENSITY)
                              ? foam->density_kg_m3
                              : c->house->foam_density_kg_m3;
  /* Firm by its figure counts as firm, whatever it is called. */
  if (c->foam_kind == SQ_FOAM_SEAT && foam != NULL && (foam->given & SQ_GIVEN_FOAM_IFD)
      && foam->ifd_n >= c->house->foam_firm_ifd_n)
    c->foam_kind = SQ_FOAM_FIRM;
  c->foam_folds = c->foam_kind == SQ_FOAM_SEAT || c->foam_kind == SQ_FOAM_FAST_DRAINING;
  c->batting_mm = allowance (cushion, SQ_GIVEN_FOAM_BATTING, cushion->foam.batting_mm,
                             "foam.batting", 0, problems);
}

gboolean
sq_choices_resolve (const SqJob *job, const SqCushion *cushion, const SqOutline *outline,
                    gboolean mirrored, SqChoices *c, GArray *problems)
{
  const SqDefaults *house = &job->defaults;

  *c = (SqChoices){ .cushion = cushion, .house = house, .outline = outline, .mirrored = mirrored };
  c->build = given (cushion, SQ_GIVEN_BUILD) ? cushion->build : house->build;
  c->thickness_mm = given (cushion, SQ_GIVEN_THICKNESS) ? cushion->thickness_mm
                                                        : house->thickness_mm;
  c->stripes_run = given (cushion, SQ_GIVEN_STRIPES_RUN) ? cushion->stripes.run
                                                         : house->stripes_run;
  if (given (cushion, SQ_GIVEN_STRIPES_SHIFT))
    c->stripes_shift_mm = mirrored ? -cushion->stripes.shift_mm : cushion->stripes.shift_mm;
  c->centre_on = given (cushion, SQ_GIVEN_CENTRE_ON) ? cushion->stripes.centre_on
                                                     : house->centre_on;

  const SqCloth *first = job->cloths->len > 0 ? g_ptr_array_index (job->cloths, 0) : NULL;
  const SqCloth *face = find_cloth (job, cushion, SQ_GIVEN_CLOTH_FACE, cushion->cloth.face,
                                    "cloth.face", first, problems);
  c->face = resolve_cloth (face, house, c->centre_on);
  c->underside = resolve_cloth (find_cloth (job, cushion, SQ_GIVEN_CLOTH_UNDERSIDE,
                                            cushion->cloth.underside, "cloth.underside", face,
                                            problems),
                                house, c->centre_on);
  c->sides = resolve_cloth (find_cloth (job, cushion, SQ_GIVEN_CLOTH_SIDES, cushion->cloth.sides,
                                        "cloth.sides", face, problems),
                            house, c->centre_on);
  c->welt = resolve_cloth (find_cloth (job, cushion, SQ_GIVEN_CLOTH_WELT, cushion->cloth.welt,
                                       "cloth.welt", face, problems),
                           house, c->centre_on);
  c->reversible = given (cushion, SQ_GIVEN_REVERSIBLE) && cushion->reversible;
  /* Turned over, the underside is the top. */
  if (c->reversible)
    c->underside = c->face;
  c->seams_across = given (cushion, SQ_GIVEN_SEAMS_ACROSS) ? cushion->seams_across : SQ_ACROSS_NONE;

  double perimeter = c->build == SQ_BUILD_FOLDED_CORNER ? house->folded_perimeter_mm
                                                        : house->boxed_perimeter_mm[c->face.kind];
  c->corner_mm = allowance (cushion, SQ_GIVEN_ALLOWANCE_CORNER, cushion->allowance.corner_mm,
                            "allowances.corner", house->corner_allowance_mm, problems);
  c->perimeter_mm = allowance (cushion, SQ_GIVEN_ALLOWANCE_PERIMETER,
                               cushion->allowance.perimeter_mm, "allowances.perimeter", perimeter,
                               problems);
  c->zip_mm = allowance (cushion, SQ_GIVEN_ALLOWANCE_ZIP, cushion->allowance.zip_mm,
                         "allowances.zip", house->zip_allowance_mm, problems);
  c->join_mm = allowance (cushion, SQ_GIVEN_ALLOWANCE_JOIN, cushion->allowance.join_mm,
                          "allowances.join", house->join_allowance_mm, problems);
  c->wrap_depth_mm = allowance (cushion, SQ_GIVEN_WRAP_DEPTH, cushion->wrap.depth_mm,
                                "underside_wrap.depth", house->wrap_depth_mm, problems);
  c->wrap_style = c->wrap_depth_mm >= house->wrap_mitred_from_mm - SQ_COINCIDE_MM ? SQ_WRAP_MITRED
                                                                                  : SQ_WRAP_PLAIN;
  if (given (cushion, SQ_GIVEN_WRAP_STYLE))
    c->wrap_style = cushion->wrap.style;
  resolve_foam (job, c, problems);

  if (!(c->thickness_mm > 0))
    {
      SqProblem *p = sq_report_key (problems, SQ_PROBLEM_THICKNESS, SQ_FAULT, cushion, "thickness");
      p->facts[0] = c->thickness_mm;
      p->fixes[0] = (SqFix){ SQ_FIX_THICKNESS, 0, house->thickness_mm };
      return FALSE;
    }
  resolve_zip (c, problems);
  resolve_welt (c, problems);
  resolve_way (c);
  check_edge_builds (c, problems);
  return TRUE;
}

gboolean
sq_choices_has_welt (const SqChoices *c, gboolean at_top)
{
  return c->welt_at == SQ_WELT_BOTH || c->welt_at == (at_top ? SQ_WELT_TOP : SQ_WELT_UNDERSIDE);
}

double
sq_choices_clearance_mm (const SqChoices *c, const SqCorner *corner)
{
  if (corner->given & SQ_GIVEN_CLEARANCE)
    return corner->clearance_mm;
  /* Soft filling bulges, so it gets more room at a wall. */
  if (corner->kind == SQ_EDGE_WALL
      && (c->batting_mm > 0
          || (c->foam_kind == SQ_FOAM_SEAT && c->thickness_mm > c->house->wall_soft_over_mm)))
    return c->house->wall_clearance_soft_mm;
  /* A lid swings up past the cushion's edge, which must clear it by the whole thickness. */
  if (corner->kind == SQ_EDGE_LID_HINGE)
    return fmax (c->thickness_mm, c->house->clearance_mm[SQ_EDGE_LID_HINGE]);
  return c->house->clearance_mm[corner->kind];
}

gboolean
sq_choices_seen (const SqCorner *corner)
{
  return (corner->given & SQ_GIVEN_SEEN) ? corner->seen : corner->kind == SQ_EDGE_FREE;
}

SqEdgeBuild
sq_choices_edge_build (const SqChoices *c, const SqCorner *corner)
{
  if (mixes (c) && (corner->given & SQ_GIVEN_EDGE_BUILD) && corner->build != SQ_EDGE_OPEN)
    return corner->build;
  return c->build == SQ_BUILD_FOLDED_CORNER || c->build == SQ_BUILD_SPLIT_SIDE ? SQ_EDGE_FOLDED
                                                                               : SQ_EDGE_BOXED;
}

gboolean
sq_choices_is_mixed (const SqChoices *c)
{
  guint n = 0;
  const SqCorner *corners = NULL;

  if (c->outline != NULL && sq_outline_n_rings (c->outline) > 0 && mixes (c))
    corners = sq_outline_ring (c->outline, 0, &n);
  for (guint i = 0; i < n; i++)
    if ((corners[i].given & SQ_GIVEN_EDGE_BUILD) && corners[i].build != SQ_EDGE_OPEN
        && (c->build == SQ_BUILD_FOLDED_CORNER || corners[i].build == SQ_EDGE_FOLDED))
      return TRUE;
  return FALSE;
}

double
sq_choices_oversize_mm (const SqChoices *c, double extent_mm)
{
  const SqDefaults *house = c->house;

  if (given (c->cushion, SQ_GIVEN_FOAM_OVERSIZE))
    return c->cushion->foam.oversize_mm;
  if (c->batting_mm > 0)
    return 0;
  if (c->foam_kind == SQ_FOAM_CLOSED_CELL || c->foam_kind == SQ_FOAM_BONDED
      || c->face.kind == SQ_CLOTH_VINYL)
    return house->oversize_stiff_mm;
  if (c->foam_kind != SQ_FOAM_SEAT)
    return house->oversize_firm_mm;
  for (guint i = 0; i < house->n_oversize_seat; i++)
    if (extent_mm <= house->oversize_seat[i].up_to_mm + SQ_COINCIDE_MM)
      return house->oversize_seat[i].oversize_mm;
  return house->n_oversize_seat > 0 ? house->oversize_seat[house->n_oversize_seat - 1].oversize_mm
                                    : 0;
}
