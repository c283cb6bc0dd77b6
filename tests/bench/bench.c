/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long the core takes: a table with a row for each thing measured. In milliseconds of the
 * thread's own CPU time; of another program's, user and system together. load is the machine's
 * average over the last minute, for the reader to judge the rest by. */
#define _DEFAULT_SOURCE /* wait4, getloadavg */
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>

#include "drawing/piece-scene.h"
#include "drawing/seat-scene.h"
#include "exchange/defaults-file.h"
#include "exchange/dxf.h"
#include "exchange/hpgl.h"
#include "exchange/job-file.h"
#include "exchange/svg.h"
#include "job/names.h"
#include "papers/paper.h"
#include "plan/lay-tasks.h"
#include "plan/ways.h"
#include "roll/lay-run.h"

#define N_EDITS 4000
#define N_OPENINGS 40
#define N_CUSHIONS 500
#define N_PROGRAMS 60
#define N_LAYS 100
#define N_LARGE_LAYS 5
#define N_COMPARISONS 200
#define N_WAY_PLANS 2000
/* Not counted: caches, and the allocator's. */
#define WARM_UP 50

extern char **environ;

/* ---- the table ----------------------------------------------------------------------------- */

static double
now_ms (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1e3 + (double) t.tv_nsec / 1e6;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

static void
print_row (const char *name, GArray *times)
{
  const double *t = (const double *) (gconstpointer) times->data;
  double load = 0;

  g_array_sort (times, compare_doubles);
  getloadavg (&load, 1);
  printf ("%s\tms\t%u", name, times->len);
  for (guint i = 0; i <= 4; i++)
    {
      static const double parts[] = { 0, 0.5, 0.9, 0.99, 1 };
      printf ("\t%.3f", t[(guint) (parts[i] * (times->len - 1) + 0.5)]);
    }
  printf ("\t%.2f\n", load);
  fflush (stdout);
}

static void
add_time (GArray *times, double begin)
{
  double ms = now_ms () - begin;
  g_array_append_val (times, ms);
}

static GArray *
new_times (void)
{
  return g_array_new (FALSE, FALSE, sizeof (double));
}

/* ---- the jobs ------------------------------------------------------------------------------ */

/* Twelve corners, four arcs, boxed: a window seat with ears, of about 1.4 × 0.8 m at a @scale of 1;
 * @chance shifts its corners by up to 10 mm. */
static SqCushion *
new_cushion (SqId id, double scale, GRand *chance)
{
  static const struct
  {
    double x, y, bow;
  } shape[] = {
    { 0, 0, 20 },      { 420, 0, 0 },    { 700, -40, 15 }, { 980, 0, 0 },
    { 1400, 10, -12 }, { 1410, 300, 0 }, { 1300, 330, 0 }, { 1290, 620, 30 },
    { 900, 780, 0 },   { 480, 790, 0 },  { 110, 610, 0 },  { 100, 320, 0 },
  };
  static const guint size = G_N_ELEMENTS (shape);
  SqCorner corners[G_N_ELEMENTS (shape)];

  for (guint i = 0; i < size; i++)
    corners[i] = (SqCorner){ .id = i + 1,
                             .at = { scale * shape[i].x + g_rand_double_range (chance, -10, 10),
                                     scale * shape[i].y + g_rand_double_range (chance, -10, 10) },
                             .shape = shape[i].bow != 0 ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT,
                             .bow_mm = scale * shape[i].bow };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &size, 1);
  return sq_cushion_new (id, outline);
}

static SqJob *
new_job (guint n_cushions, double scale, GRand *chance)
{
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  SqJob *job = sq_job_new (&defaults);

  for (guint i = 0; i < n_cushions; i++)
    g_ptr_array_add (job->cushions, new_cushion (i + 1, scale, chance));
  return job;
}

/* @job with one corner of its cushion where a small step from @home takes it. */
static SqJob *
edited (const SqJob *job, const SqCushion *home, GRand *chance)
{
  SqId corner = (SqId) g_rand_int_range (chance, 1, 13);
  SqVector step = { g_rand_double_range (chance, -2, 2), g_rand_double_range (chance, -2, 2) };
  g_autoptr (SqOutline) outline = sq_outline_with_corner_moved (home->outline, corner, step);
  g_autoptr (SqCushion) cushion = sq_cushion_with_outline (home, outline);
  return sq_job_with_cushion (job, cushion);
}

/* ---- the live loop ------------------------------------------------------------------------- */

/* What the window shows of a plan: the seat in three layers, every piece in three. */
static void
record (const SqPlan *plan)
{
  const SqCover *cover = sq_plan_cover (plan, 0);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  SqSeatLook seat = { .em_mm = 30, .length = style, .room = sq_box_empty () };
  SqPieceLook look = { 40 };

  for (SqSeatLayer layer = SQ_SEAT_FILL; layer <= SQ_SEAT_DIMENSIONS; layer++)
    sq_scene_unref (sq_seat_scene (cover, sq_plan_cloth (plan, sq_cover_piece (cover, 0)->cloth),
                                   layer, &seat));
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      SqPieceLabel label;
      sq_piece_label_init (&label, cover, i, &style);
      for (SqPieceLayer layer = SQ_PIECE_CLOTH; layer <= SQ_PIECE_LABEL; layer++)
        sq_scene_unref (sq_piece_scene (piece, sq_plan_cloth (plan, piece->cloth), 0xddd3bf, layer,
                                        &label, &look));
      sq_piece_label_clear (&label);
    }
}

static void
bench_edits (GRand *chance)
{
  g_autoptr (SqJob) start = new_job (1, 1, chance);
  g_autoptr (SqJob) job = sq_job_ref (start);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (GArray) plans = new_times ();
  g_autoptr (GArray) drawings = new_times ();

  for (guint i = 0; i < WARM_UP + N_EDITS; i++)
    {
      double begin = now_ms ();
      SqJob *next = edited (job, g_ptr_array_index (start->cushions, 0), chance);
      SqPlan *after = sq_plan_new (next, plan);
      if (i >= WARM_UP)
        add_time (plans, begin);
      begin = now_ms ();
      record (after);
      if (i >= WARM_UP)
        add_time (drawings, begin);
      sq_job_unref (job);
      sq_plan_unref (plan);
      job = next;
      plan = after;
    }
  print_row ("edit to plan, 12 corners", plans);
  print_row ("drawing recorded, 12 corners", drawings);
}

/* A seat of twelve corners that a way of building can be made of: convex and straight, or with four
 * arcs in sides that a wrap can follow. */
static SqCushion *
new_seat_for (SqBuild build, GRand *chance)
{
  static const struct
  {
    double x, y, bow;
  } shape[] = {
    { 0, 0, 0 },      { 1200, 0, 0 },   { 1230, 150, 6 }, { 1245, 300, 6 },
    { 1240, 450, 0 }, { 1220, 600, 0 }, { 1190, 700, 0 }, { 10, 700, 0 },
    { -20, 600, 0 },  { -40, 450, 6 },  { -45, 300, 6 },  { -30, 150, 0 },
  };
  static const guint size = G_N_ELEMENTS (shape);
  SqCorner corners[G_N_ELEMENTS (shape)];

  for (guint i = 0; i < size; i++)
    {
      double a = 2 * G_PI * i / size;
      gboolean wraps = build == SQ_BUILD_WRAPPED_FRONT;
      corners[i] = (SqCorner){
        .id = i + 1,
        .at = { wraps ? shape[i].x : 700 * cos (a), wraps ? shape[i].y : 400 * sin (a) },
        .shape = wraps && shape[i].bow != 0 ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT,
        .bow_mm = wraps ? shape[i].bow : 0
      };
      corners[i].at.x += g_rand_double_range (chance, -2, 2);
      corners[i].at.y += wraps && i < 2 ? 0 : g_rand_double_range (chance, -2, 2);
    }
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &size, 1);
  return sq_cushion_new (1, outline);
}

/* A way of building as the bench asks for it. */
typedef struct
{
  const char *name;
  SqBuild build;
  SqWeltAt welt;
  gboolean mixed;
  SqFilling filling;
} Way;

static SqCushion *
new_cushion_for (const Way *way, GRand *chance)
{
  SqBuild like = way->mixed ? SQ_BUILD_WRAPPED_FRONT : way->build; /* arcs to be boxed */
  SqCushion *cushion = like == SQ_BUILD_BOXED ? new_cushion (1, 1, chance)
                                              : new_seat_for (like, chance);

  cushion->build = way->build;
  cushion->given |= SQ_GIVEN_BUILD;
  cushion->welt.at = way->welt;
  cushion->knife_edge.filling = way->filling;
  cushion->given_way |= SQ_GIVEN_WELT_AT | SQ_GIVEN_FILLING;
  if (way->build == SQ_BUILD_BOLSTER)
    {
      cushion->bolster.diameter_mm = g_rand_double_range (chance, 150, 250);
      cushion->given_way |= SQ_GIVEN_BOLSTER_DIAMETER;
    }
  if (way->mixed)
    {
      SqCorner *corners = sq_outline_dup_corners (cushion->outline, NULL);
      static const guint size = 12;
      for (guint i = 0; i < size; i++)
        if (corners[i].shape != SQ_SHAPE_STRAIGHT)
          {
            corners[i].build = SQ_EDGE_BOXED;
            corners[i].given |= SQ_GIVEN_EDGE_BUILD;
          }
      g_autoptr (SqOutline) outline = sq_outline_new (corners, &size, 1);
      SqCushion *mixed = sq_cushion_with_outline (cushion, outline);
      sq_cushion_unref (cushion);
      g_free (corners);
      return mixed;
    }
  return cushion;
}

/* A plan of one cushion from nothing, for every way. */
static void
bench_way_plans (GRand *chance)
{
  static const Way ways[] = {
    { "plan, boxed", SQ_BUILD_BOXED, SQ_WELT_NONE, FALSE, SQ_FILLING_SOFT },
    { "plan, boxed with welts", SQ_BUILD_BOXED, SQ_WELT_BOTH, FALSE, SQ_FILLING_SOFT },
    { "plan, folded", SQ_BUILD_FOLDED_CORNER, SQ_WELT_NONE, FALSE, SQ_FILLING_SOFT },
    { "plan, folded and boxed", SQ_BUILD_FOLDED_CORNER, SQ_WELT_NONE, TRUE, SQ_FILLING_SOFT },
    { "plan, split side", SQ_BUILD_SPLIT_SIDE, SQ_WELT_BOTH, FALSE, SQ_FILLING_SOFT },
    { "plan, knife edge", SQ_BUILD_KNIFE_EDGE, SQ_WELT_BOTH, FALSE, SQ_FILLING_SOFT },
    { "plan, knife edge over foam", SQ_BUILD_KNIFE_EDGE, SQ_WELT_NONE, FALSE,
      SQ_FILLING_FOAM_SQUARE },
    { "plan, wrapped front", SQ_BUILD_WRAPPED_FRONT, SQ_WELT_NONE, FALSE, SQ_FILLING_SOFT },
    { "plan, bolster", SQ_BUILD_BOLSTER, SQ_WELT_BOTH, FALSE, SQ_FILLING_SOFT },
  };
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);

  for (guint w = 0; w < G_N_ELEMENTS (ways); w++)
    {
      g_autoptr (SqJob) empty = sq_job_new (&defaults);
      g_autoptr (GArray) times = new_times ();
      guint n_made = 0;
      for (guint i = 0; i < WARM_UP + N_WAY_PLANS; i++)
        {
          g_autoptr (SqCushion) cushion = new_cushion_for (&ways[w], chance);
          g_autoptr (SqJob) job = sq_job_with_cushion (empty, cushion);
          double begin = now_ms ();
          g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
          if (i >= WARM_UP)
            add_time (times, begin);
          n_made += sq_plan_cover (plan, 0)->pieces->len > 0 ? 1 : 0;
        }
      g_autofree char *name = g_strdup_printf ("%s (%u %% made)", ways[w].name,
                                               100 * n_made / (WARM_UP + N_WAY_PLANS));
      print_row (name, times);
    }
}

/* ---- opening ------------------------------------------------------------------------------- */

static void
bench_opening (GRand *chance)
{
  g_autoptr (SqJob) job = new_job (N_CUSHIONS, 1, chance);
  g_autofree char *text = sq_job_write (job);
  g_autoptr (GArray) times = new_times ();

  for (guint i = 0; i < N_OPENINGS; i++)
    {
      double begin = now_ms ();
      g_autoptr (SqJob) opened = sq_job_read (text, -1, &job->defaults, NULL);
      g_autoptr (SqPlan) plan = sq_plan_new (opened, NULL);
      add_time (times, begin);
      g_assert_cmpuint (plan->covers->len, ==, N_CUSHIONS);
    }
  print_row ("open and plan 500 cushions", times);
}

/* ---- laying -------------------------------------------------------------------------------- */

/* The first lay of @n_cushions, all different, none wider than the cloth; from the plan on. */
static void
bench_lay (guint n_cushions, guint n_times, GRand *chance)
{
  const SqLayBudget budget = { .seed = 1 };
  g_autoptr (SqJob) job = new_job (n_cushions, 0.5, chance);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (GArray) times = new_times ();

  for (guint i = 0; i < n_times; i++)
    {
      double begin = now_ms ();
      g_autoptr (SqLayTask) task = sq_plan_lay_task (plan, 0);
      g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &budget, NULL);
      add_time (times, begin);
      g_assert_cmpuint (lay->unlaid->len, ==, 0);
    }
  g_autofree char *name = g_strdup_printf ("first lay, %u pieces", sq_plan_figures (plan).pieces);
  print_row (name, times);
}

/* ---- ways of building ---------------------------------------------------------------------- */

/* All ways of a seat of 12 corners side by side, with first lays or without. */
static void
bench_ways (gboolean with_lays, GRand *chance)
{
  g_autoptr (SqJob) job = new_job (1, 0.5, chance);
  g_autoptr (GArray) times = new_times ();

  for (guint i = 0; i < N_COMPARISONS; i++)
    {
      double begin = now_ms ();
      g_autoptr (SqWays) ways = sq_ways_new (job, g_ptr_array_index (job->cushions, 0), with_lays,
                                             NULL);
      add_time (times, begin);
      g_assert_cmpuint (ways->ways->len, >=, 7);
    }
  print_row (with_lays ? "ways compared, with first lays" : "ways compared", times);
}

/* ---- papers --------------------------------------------------------------------------------- */

/* The first page of a paper of @kind as the preview shows it, 700 pixels high. */
static void
bench_first_page (SqPaperKind kind, const SqPaperSpec *spec, guint n_times)
{
  g_autoptr (GArray) times = new_times ();

  for (guint i = 0; i < n_times; i++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 541, 700);
      cairo_t *cr = cairo_create (surface);
      double begin = now_ms ();
      g_autoptr (SqPaper) paper = sq_paper_new (kind, spec);
      sq_paper_paint_page (paper, 0, cr, 700 / sq_paper_page (paper, 0)->height_mm);
      add_time (times, begin);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
  g_autofree char *name = g_strdup_printf ("first preview page, %s, %u pieces",
                                           sq_paper_kind_names[kind],
                                           sq_plan_figures (spec->lays->plan).pieces);
  print_row (name, times);
}

/* The papers of @n_cushions boxed cushions, all different, from the lays on to PDF; and their first
 * pages. */
static void
bench_papers (guint n_cushions, guint n_times, GRand *chance)
{
  const SqLayBudget budget = { .seed = 1 };
  g_autoptr (SqJob) job = new_job (n_cushions, 0.5, chance);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &budget, NULL);
  SqPaperSpec spec = sq_paper_spec (lays, '.', "2026-03-01");
  guint pieces = sq_plan_figures (plan).pieces;

  for (guint kind = 0; kind < SQ_N_PAPER_KINDS; kind++)
    {
      g_autoptr (GArray) times = new_times ();
      for (guint i = 0; i < n_times; i++)
        {
          double begin = now_ms ();
          g_autoptr (GPtrArray) papers = sq_papers_new (1u << kind, &spec);
          g_autoptr (GBytes) pdf = sq_papers_to_pdf (papers, NULL, &spec, NULL, NULL);
          add_time (times, begin);
          g_assert_nonnull (pdf);
        }
      g_autofree char *name = g_strdup_printf ("%s to PDF, %u cushions, %u pieces",
                                               sq_paper_kind_names[kind], n_cushions, pieces);
      print_row (name, times);
    }
  for (guint kind = 0; kind < SQ_N_PAPER_KINDS; kind++)
    bench_first_page ((SqPaperKind) kind, &spec, n_times);
}

/* ---- files for machines ---------------------------------------------------------------------- */

static char *
write_r12 (const SqCutDrawing *drawing)
{
  return sq_dxf_write (drawing, SQ_DXF_R12, SQ_DXF_PLAIN);
}

static char *
write_r2000 (const SqCutDrawing *drawing)
{
  return sq_dxf_write (drawing, SQ_DXF_R2000, SQ_DXF_PLAIN);
}

static char *
write_d6673 (const SqCutDrawing *drawing)
{
  return sq_dxf_write (drawing, SQ_DXF_R12, SQ_DXF_D6673);
}

static char *
write_hpgl (const SqCutDrawing *drawing)
{
  gboolean is_large;

  return sq_hpgl_write (drawing, &is_large);
}

/* The lays of @n_cushions boxed cushions, all different: the drawing and its text. */
static void
bench_machine_files (guint n_cushions, guint n_times, GRand *chance)
{
  static const struct
  {
    const char *name;
    char *(*write) (const SqCutDrawing *drawing);
  } formats[] = { { "DXF R12", write_r12 },
                  { "DXF R2000", write_r2000 },
                  { "DXF D6673", write_d6673 },
                  { "SVG", sq_svg_write },
                  { "HP-GL", write_hpgl } };
  const SqLayBudget budget = { .seed = 1 };
  const SqCutChoice choice = { .of = SQ_CUT_LAYS, .lines = SQ_LINES_ALL };
  g_autoptr (SqJob) job = new_job (n_cushions, 0.5, chance);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &budget, NULL);

  for (guint k = 0; k < G_N_ELEMENTS (formats); k++)
    {
      g_autoptr (GArray) times = new_times ();
      for (guint i = 0; i < n_times; i++)
        {
          double begin = now_ms ();
          g_autoptr (SqCutDrawing) drawing = sq_cut_drawing_new (lays, &choice);
          g_autofree char *text = formats[k].write (drawing);
          add_time (times, begin);
          g_assert_cmpuint (drawing->places->len, >, 0);
        }
      g_autofree char *name = g_strdup_printf ("lays to %s, %u cushions, %u pieces",
                                               formats[k].name, n_cushions,
                                               sq_plan_figures (plan).pieces);
      print_row (name, times);
    }
}

/* ---- squab-cut --------------------------------------------------------------------------------- */

static double
milliseconds (struct timeval t)
{
  return (double) t.tv_sec * 1e3 + (double) t.tv_usec / 1e3;
}

static void
bench_program (void)
{
  char *argv[] = { (char *) SQ_SQUAB_CUT, (char *) SQ_SAMPLES "/bay-seat.squab", NULL };
  posix_spawn_file_actions_t quiet;
  g_autoptr (GArray) times = new_times ();

  posix_spawn_file_actions_init (&quiet);
  posix_spawn_file_actions_addopen (&quiet, 1, "/dev/null", 1 /* O_WRONLY */, 0);
  posix_spawn_file_actions_addopen (&quiet, 2, "/dev/null", 1, 0);
  for (guint i = 0; i < N_PROGRAMS; i++)
    {
      pid_t pid;
      int status;
      struct rusage used;
      if (posix_spawn (&pid, argv[0], &quiet, NULL, argv, environ) != 0
          || wait4 (pid, &status, 0, &used) != pid || !WIFEXITED (status)
          || WEXITSTATUS (status) > 1)
        {
          fprintf (stderr, "bench: %s does not run\n", argv[0]);
          exit (1);
        }
      double ms = milliseconds (used.ru_utime) + milliseconds (used.ru_stime);
      g_array_append_val (times, ms);
    }
  posix_spawn_file_actions_destroy (&quiet);
  print_row ("squab-cut on the sample", times);
}

int
main (void)
{
  GRand *chance = g_rand_new_with_seed (1);

  printf ("name\tunit\tn\tmin\tp50\tp90\tp99\tmax\tload\n");
  bench_edits (chance);
  bench_way_plans (chance);
  bench_opening (chance);
  bench_lay (12, N_LAYS, chance);
  bench_lay (600, N_LARGE_LAYS, chance);
  bench_ways (FALSE, chance);
  bench_ways (TRUE, chance);
  bench_papers (1, N_LAYS, chance);
  bench_papers (40, N_LARGE_LAYS, chance);
  bench_papers (80, N_LARGE_LAYS, chance);
  bench_machine_files (40, N_LAYS, chance);
  bench_machine_files (80, N_LARGE_LAYS, chance);
  bench_program ();
  g_rand_free (chance);
  return 0;
}
