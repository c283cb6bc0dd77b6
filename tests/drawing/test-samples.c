/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Scenes of the sample jobs as text, as they were when last looked at. Run with --regen to take
 * them as they are now; look at them first, with `picture`. */
#include <string.h>

#include "drawing/arrange.h"
#include "drawing/seat-scene.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "plan/plan.h"

static gboolean regen;

static void
append_scene (GString *out, const char *head, SqScene *scene)
{
  g_autofree char *dump = sq_scene_dump (scene);
  g_string_append_printf (out, "== %s\n%s", head, dump);
  sq_scene_unref (scene);
}

static void
append_seat (GString *out, const SqCover *cover, const SqCloth *face, const SqLengthStyle *style)
{
  static const char *const layers[] = { "seat fill", "seat lines", "seat dimensions" };
  SqSeatLook look = { .em_mm = 24, .length = *style, .room = sq_box_empty () };
  for (int layer = SQ_SEAT_FILL; layer <= SQ_SEAT_DIMENSIONS; layer++)
    append_scene (out, layers[layer], sq_seat_scene (cover, face, (SqSeatLayer) layer, &look));
}

static void
append_pieces (GString *out, const SqPlan *plan, const SqCover *cover, const SqLengthStyle *style)
{
  static const char *const layers[] = { "cloth", "lines", "label" };
  g_autofree SqPieceLabel *labels = g_new0 (SqPieceLabel, cover->pieces->len);
  SqTable table = { 600, 640, 20, 16, 13 };
  for (guint i = 0; i < cover->pieces->len; i++)
    sq_piece_label_init (&labels[i], cover, i, style);
  g_autoptr (SqArrangement) a = sq_arrangement_new (cover->pieces, labels, &table, NULL);
  SqPieceLook look = { table.em / a->scale };
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      const SqCloth *cloth = sq_plan_cloth (plan, piece->cloth);
      g_string_append_printf (out, "== %s, row %u, at %.1f, %.1f\n", labels[i].name,
                              a->stands[i].row, a->stands[i].offset.x, a->stands[i].offset.y);
      for (int layer = SQ_PIECE_CLOTH; layer <= SQ_PIECE_LABEL; layer++)
        append_scene (out, layers[layer],
                      sq_piece_scene (piece, cloth, plan->job->defaults.cloth_colour,
                                      (SqPieceLayer) layer, &labels[i], &look));
    }
  for (guint i = 0; i < cover->pieces->len; i++)
    sq_piece_label_clear (&labels[i]);
}

/* Says where two texts part. */
static void
assert_same (const char *name, const char *was, const char *is)
{
  g_auto (GStrv) a = g_strsplit (was, "\n", -1);
  g_auto (GStrv) b = g_strsplit (is, "\n", -1);
  for (guint i = 0; a[i] != NULL && b[i] != NULL; i++)
    if (strcmp (a[i], b[i]) != 0)
      {
        g_test_message ("%s, line %u\nwas %s\nis  %s", name, i + 1, a[i], b[i]);
        g_test_fail ();
        return;
      }
  g_assert_cmpuint (g_strv_length (a), ==, g_strv_length (b));
}

static void
test_sample (gconstpointer data)
{
  const char *name = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *job_path = g_test_build_filename (G_TEST_DIST, "..", "data", "samples", name,
                                                     NULL);
  g_autofree char *golden_path = g_test_build_filename (G_TEST_DIST, "drawing", "golden", name,
                                                        NULL);
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (job_path, &defaults, &error);
  g_assert_no_error (error);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  SqLengthStyle style = sq_length_style_default (job->units);
  g_autoptr (GString) out = g_string_new (NULL);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      append_seat (out, cover, sq_plan_cloth (plan, cover->cushion->cloth.face), &style);
      append_pieces (out, plan, cover, &style);
    }
  g_autofree char *text_path = g_strconcat (golden_path, ".scenes", NULL);
  if (regen)
    {
      g_file_set_contents (text_path, out->str, -1, &error);
      g_assert_no_error (error);
      return;
    }
  g_autofree char *golden = NULL;
  g_file_get_contents (text_path, &golden, NULL, &error);
  g_assert_no_error (error);
  assert_same (name, golden, out->str);
}

int
main (int argc, char **argv)
{
  regen = argc > 1 && strcmp (argv[argc - 1], "--regen") == 0;
  if (regen)
    argc--;
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/drawing/samples/bay-seat", "bay-seat.squab", test_sample);
  g_test_add_data_func ("/drawing/samples/folded-stool", "folded-stool.squab", test_sample);
  g_test_add_data_func ("/drawing/samples/round-pad", "round-pad.squab", test_sample);
  return g_test_run ();
}
