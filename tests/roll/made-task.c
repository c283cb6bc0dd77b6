/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/made-task.h"

void
add_strip (SqLayTask *task, SqStripKind kind, double width_mm, double length_mm, gint priority)
{
  SqLayStrip strip = { .kind = kind,
                       .width = sq_grid_from_mm (width_mm),
                       .length = sq_grid_from_mm (length_mm),
                       .priority = priority };
  sq_lay_task_add_strip (task, &strip);
}

SqLayTask *
made_task (double width_mm, double gap_mm)
{
  SqLayTask *task = sq_lay_task_new (sq_grid_from_mm (gap_mm));

  add_strip (task, SQ_STRIP_ROLL, width_mm, 0, 0);
  return task;
}

void
add_path (SqLayTask *task, SqPath *path, SqLayItemSpec spec)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);

  g_ptr_array_add (rings, path);
  spec.rings = rings;
  spec.turns = spec.turns != 0 ? spec.turns : SQ_LAY_UPRIGHT;
  spec.demand = spec.demand != 0 ? spec.demand : 1;
  sq_lay_task_add (task, &spec);
}

void
add_rectangle (SqLayTask *task, double length_mm, double width_mm, guint turns, guint demand)
{
  add_path (task, sq_path_new_rectangle (0, 0, length_mm, width_mm),
            (SqLayItemSpec){ .turns = turns, .demand = demand });
}

SqLay *
lay_of (SqLayTask *task, guint64 steps)
{
  const SqLayBudget budget = { .seed = 1, .steps = steps };

  if (task->digest == 0)
    sq_lay_task_seal (task);
  return sq_lay_run (task, NULL, &budget, NULL);
}

/* ---- by chance ----------------------------------------------------------------------------- */

static double
between (GRand *chance, double from, double to)
{
  return g_rand_double_range (chance, from, to);
}

static gboolean
happens (GRand *chance, double share)
{
  return g_rand_double (chance) < share;
}

/* With its corners rounded; @bulge of an eighth of a turn at 45°. */
static SqPath *
rounded (double l, double w, double radius)
{
  const double bulge = tan (G_PI / 8);
  const struct
  {
    double x, y, bulge;
  } nodes[] = {
    { radius, 0, 0 },     { l - radius, 0, bulge }, { l, radius, 0 },     { l, w - radius, bulge },
    { l - radius, w, 0 }, { radius, w, bulge },     { 0, w - radius, 0 }, { 0, radius, bulge },
  };
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = 0; i < G_N_ELEMENTS (nodes); i++)
    sq_path_builder_add (&builder, sq_point (nodes[i].x, nodes[i].y), nodes[i].bulge, i);
  return sq_path_builder_end (&builder, TRUE);
}

/* Points of one side now and then stand in line. */
static SqPath *
polygon (GRand *chance, double l, double w)
{
  double d = between (chance, 0.05, 0.3) * MIN (l, w);

  switch (g_rand_int_range (chance, 0, 5))
    {
    case 0: /* a plate with its corners cut out */
      {
        const SqPoint p[] = { { d, 0 },     { l - d, 0 },     { l - d, d }, { l, d },
                              { l, w - d }, { l - d, w - d }, { l - d, w }, { d, w },
                              { d, w - d }, { 0, w - d },     { 0, d },     { d, d } };
        return sq_path_new_polygon (p, G_N_ELEMENTS (p));
      }
    case 1: /* with an ear */
      {
        const SqPoint p[] = { { 0, 0 }, { l, 0 }, { l, d }, { d, d }, { d, w }, { 0, w } };
        return sq_path_new_polygon (p, G_N_ELEMENTS (p));
      }
    case 2: /* a pocket to the side and one upwards */
      {
        const SqPoint p[] = {
          { 0, 0 },         { l / 2, 0 },     { l, 0 },       { l, w }, { l - d, w },
          { l - d, d },     { l / 2, d },     { l / 2, w },   { 0, w }, { 0, w - d },
          { l / 3, w - d }, { l / 3, w / 2 }, { 0, w / 2.5 },
        };
        return sq_path_new_polygon (p, G_N_ELEMENTS (p));
      }
    case 3: /* slanted */
      {
        const SqPoint p[] = { { 0, 0 }, { l - d, 0 }, { l, w }, { l / 2, w }, { d, w } };
        return sq_path_new_polygon (p, G_N_ELEMENTS (p));
      }
    default:
      {
        const SqPoint p[] = { { 0, 0 }, { l, w / 3 }, { l / 4, w } };
        return sq_path_new_polygon (p, G_N_ELEMENTS (p));
      }
    }
}

static SqPath *
random_path (GRand *chance, double width)
{
  double l = between (chance, 50, 900), w = between (chance, 40, 0.7 * width);

  if (happens (chance, 0.1))
    return sq_path_new_rectangle (0, 0, l, width); /* exactly as wide as the cloth */
  if (happens (chance, 0.04))
    return sq_path_new_rectangle (0, 0, l, width + 0.001);
  if (happens (chance, 0.1))
    return sq_path_new_rectangle (0, 0, l, between (chance, 0.002, 0.02)); /* a sliver */
  if (happens (chance, 0.3))
    return sq_path_new_rectangle (0, 0, l, w);
  if (happens (chance, 0.3))
    return rounded (l, w, between (chance, 0.05, 0.499) * MIN (l, w));
  if (happens (chance, 0.1))
    return sq_path_new_circle (sq_point (-300, 20), w / 2);
  return polygon (chance, l, w);
}

/* A hole where a piece has room for one. */
static void
add_hole (GRand *chance, GPtrArray *rings)
{
  SqBox box = sq_path_box (g_ptr_array_index (rings, 0));
  double radius = MIN (box.max.x - box.min.x, box.max.y - box.min.y) / 4;
  SqPoint middle = sq_between (box.min, box.max, 0.5);
  SqPoint corners[] = { { middle.x - radius, middle.y },
                        { middle.x, middle.y + radius },
                        { middle.x + radius, middle.y } };

  if (sq_path_n_nodes (g_ptr_array_index (rings, 0)) <= 4 && radius > 10 && happens (chance, 0.5))
    g_ptr_array_add (rings, sq_path_new_polygon (corners, 3));
}

/* Two sides cross. */
static SqPath *
crossed (double l, double w)
{
  const SqPoint p[] = { { 0, 0 }, { l, w }, { l, 0 }, { 0, w } };
  return sq_path_new_polygon (p, G_N_ELEMENTS (p));
}

/* What a task's pieces have in common. */
typedef struct
{
  double width, along, across, drop;
  gboolean free_turns, several_gaps;
} Common;

static void
add_random_item (SqLayTask *task, GRand *chance, const Common *common, guint tag)
{
  static const double turns_rad[] = { 0, G_PI / 2, -G_PI / 2, G_PI, 0.3 };
  static const guint turns[] = { SQ_LAY_UPRIGHT, SQ_LAY_UPRIGHT | SQ_LAY_HALF, 15 };
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  gboolean bound = happens (chance, 0.6), bound_along = happens (chance, 0.6);
  gboolean bound_across = happens (chance, 0.8);

  if (happens (chance, 0.02))
    g_ptr_array_add (rings, crossed (between (chance, 50, 500), between (chance, 50, 500)));
  else
    g_ptr_array_add (rings, random_path (chance, common->width));
  add_hole (chance, rings);
  /* One after another: compilers differ in the order they fill a struct in. */
  SqLayItemSpec spec = { .rings = rings, .tag = tag };
  spec.turn_rad = turns_rad[happens (chance, 0.7) ? 0 : g_rand_int_range (chance, 0, 5)];
  spec.turns = turns[g_rand_int_range (chance, 0, 3)];
  spec.may_mirror = happens (chance, 0.2);
  spec.steps = common->free_turns ? (guint) g_rand_int_range (chance, 0, 9) : 0;
  spec.anchor.x = between (chance, -200, 200);
  spec.anchor.y = between (chance, -200, 200);
  spec.along_mm = between (chance, 0, 100);
  spec.across_mm = between (chance, -50, 100);
  spec.repeat_along_mm = bound && bound_along ? common->along : 0;
  spec.repeat_across_mm = bound && bound_across ? common->across : 0;
  spec.drop_mm = bound && bound_along && bound_across ? common->drop : 0;
  spec.gap_mm = common->several_gaps && happens (chance, 0.5) ? between (chance, 0.001, 9) : 0;
  spec.priority = g_rand_int_range (chance, 0, 3);
  spec.demand = happens (chance, 0.7) ? 1 : (guint) g_rand_int_range (chance, 2, 7);
  sq_lay_task_add (task, &spec);
}

/* With flaws now and then, beyond its edges, too. */
static void
add_random_strip (SqLayTask *task, GRand *chance, SqLayStrip strip)
{
  SqGridBox flaws[4];

  strip.n_flaws = happens (chance, 0.4) ? (guint) g_rand_int_range (chance, 1, 5) : 0;
  strip.flaws = flaws;
  for (guint i = 0; i < strip.n_flaws; i++)
    {
      SqGrid at = { g_rand_int_range (chance, -20000, 2500000), 0 };
      at.y = g_rand_int_range (chance, -20000, strip.width);
      flaws[i].min = at;
      flaws[i].max.x = at.x + g_rand_int_range (chance, 1, happens (chance, 0.3) ? 5 : 200000);
      flaws[i].max.y = at.y + g_rand_int_range (chance, 1, 400000);
    }
  sq_lay_task_add_strip (task, &strip);
}

static void
add_random_strips (SqLayTask *task, GRand *chance, double width)
{
  double narrow = between (chance, 300, width);
  SqLayStrip roll = { .width = sq_grid_from_mm (width), .priority = 1 };

  roll.pattern.x = g_rand_int_range (chance, 0, 90000);
  roll.pattern.y = 12345;
  if (happens (chance, 0.3))
    {
      SqLayStrip remnant = { .kind = SQ_STRIP_REMNANT, .priority = -1 };
      remnant.width = sq_grid_from_mm (narrow);
      remnant.length = g_rand_int_range (chance, 300000, 2000000);
      add_random_strip (task, chance, remnant);
    }
  if (happens (chance, 0.2))
    {
      SqLayStrip bolt = { .width = sq_grid_from_mm (width) };
      bolt.length = g_rand_int_range (chance, 1000000, 5000000);
      add_random_strip (task, chance, bolt);
    }
  if (happens (chance, 0.15)) /* no more than that */
    {
      roll.kind = SQ_STRIP_SHEET;
      roll.length = g_rand_int_range (chance, 500000, 2000000);
      add_random_strip (task, chance, roll);
    }
  add_random_strip (task, chance, roll);
}

/* Without pins and not sealed. */
static SqLayTask *
unpinned_task (guint32 seed)
{
  GRand *chance = g_rand_new_with_seed (seed);
  gboolean pattern = happens (chance, 0.5), motif = pattern && happens (chance, 0.5);
  Common common = { .width = g_rand_int_range (chance, 600, 1600) };
  double least = happens (chance, 0.3) ? 5 : 40;
  SqLayTask *task = sq_lay_task_new (
      happens (chance, 0.25) ? (gint32) g_rand_int_range (chance, 1, 8000) : 0);
  gint n = g_rand_int_range (chance, 1, 14);

  common.across = pattern ? between (chance, least, 300) : 0;
  common.along = motif ? between (chance, 40, 600) : 0;
  common.drop = motif && happens (chance, 0.5) ? common.along / 2 : 0;
  common.free_turns = happens (chance, 0.15);
  common.several_gaps = happens (chance, 0.15);
  add_random_strips (task, chance, common.width);
  for (gint i = 0; i < n; i++)
    add_random_item (task, chance, &common, (guint) i);
  g_rand_free (chance);
  return task;
}

/* Pins copies of @task where they lie in @lay, of the same but for pins, or a little beside it. */
static void
add_random_pins (SqLayTask *task, const SqLay *lay, guint32 seed)
{
  GRand *chance = g_rand_new_with_seed (seed + 77);

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      SqLayPin pin = { placed->item, placed->copy, placed->strip, placed->at, placed->pose };
      if (!happens (chance, 0.3))
        continue;
      if (happens (chance, 0.3))
        pin.at.x += g_rand_int_range (chance, 0, 300000);
      if (happens (chance, 0.1))
        pin.at.y += g_rand_int_range (chance, -9, 10);
      sq_lay_task_add_pin (task, &pin);
    }
  g_rand_free (chance);
}

static SqLayTask *
pinned_task (guint32 seed, gboolean straight)
{
  SqLayTask *task = unpinned_task (seed);

  if (straight)
    sq_lay_task_set_straight (task);
  if (seed % 4 == 0)
    {
      g_autoptr (SqLayTask) before = unpinned_task (seed);
      if (straight)
        sq_lay_task_set_straight (before);
      g_autoptr (SqLay) lay = lay_of (before, 0);
      add_random_pins (task, lay, seed);
    }
  sq_lay_task_seal (task);
  return task;
}

SqLayTask *
random_task (guint32 seed)
{
  return pinned_task (seed, FALSE);
}

SqLayTask *
random_straight_task (guint32 seed)
{
  return pinned_task (seed, TRUE);
}
