/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/lay-drawing.h"

#include "drawing/roll-scene.h"
#include "papers/job-papers.h"

static SqScene *
drawn (const SqLaid *laid, SqBox box)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();

  sq_lay_drawing_add (builder, laid, box);
  return sq_scene_builder_end (builder);
}

/* Whether a line of @scene has a node at @p. */
static gboolean
has_node (const SqScene *scene, SqPoint p)
{
  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      for (guint k = 0; item->kind == SQ_ITEM_STROKE && k < item->n_lines; k++)
        {
          const SqSceneLine *line = sq_scene_line (scene, item->first_line + k);
          const SqNode *nodes = sq_scene_nodes (scene, line);
          for (guint n = 0; n < line->n; n++)
            if (sq_distance (nodes[n].at, p) < 1e-6)
              return TRUE;
        }
    }
  return FALSE;
}

/* All corners of what lies on the strip are where its scale puts them, on the wrong side as far from
 * the other edge. */
static void
assert_drawn (const SqLaid *laid, SqBox box)
{
  const SqClothLay *cloth = sq_lays_cloth (laid->lays, laid->cloth);
  double width_mm = sq_lay_task_strip (cloth->task, laid->strip)->width / 1e3;
  double height_mm = sq_lay_drawing_height_mm (laid, box.max.x - box.min.x, box.max.y - box.min.y);
  double scale = height_mm / width_mm;
  g_autoptr (SqScene) scene = drawn (laid, box);

  g_assert_cmpfloat (scale * laid->length_mm, <=, box.max.x - box.min.x + 1e-9);
  g_assert_cmpfloat (height_mm, <=, box.max.y - box.min.y + 1e-9);
  for (guint i = 0; i < cloth->lay->placed->len; i++)
    {
      g_autoptr (SqPath) cut = sq_roll_piece_cut (laid->lays, laid->cloth, i);
      if (sq_lay_placed (cloth->lay, i)->strip != laid->strip)
        continue;
      for (guint n = 0; n < sq_path_n_nodes (cut); n++)
        {
          SqPoint p = sq_sub (sq_path_nodes (cut)[n].at, sq_roll_strip_offset (cloth, laid->strip));
          if (laid->wrong_side)
            p.y = width_mm - p.y;
          g_assert_true (has_node (scene, sq_add (box.min, sq_scale (p, scale))));
        }
    }
}

static guint
count_texts (const SqScene *scene)
{
  guint n = 0;

  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    n += sq_scene_item (scene, i)->kind == SQ_ITEM_TEXT;
  return n;
}

static void
test_samples (void)
{
  const SqBox box = { { 10, 20 }, { 190, 80 } };

  for (guint i = 0; samples[i] != NULL; i++)
    {
      g_autoptr (SqLays) lays = lays_of_sample (samples[i]);
      for (guint k = 0; k < lays->cloths->len; k++)
        for (guint wrong = 0; wrong < 2; wrong++)
          {
            const SqClothLay *cloth = sq_lays_cloth (lays, k);
            SqLaid laid = { lays, k, 0, sq_lay_length (cloth->lay, 0) / 1e3, wrong == 1 };
            assert_drawn (&laid, box);
          }
    }
}

/* On a large drawing every piece has its number; on one that is low none that can't be read. */
static void
test_numbers (void)
{
  g_autoptr (SqLays) lays = lays_of_sample ("bay-seat");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  SqLaid laid = { lays, 0, 0, sq_lay_length (cloth->lay, 0) / 1e3, FALSE };
  g_autoptr (SqScene) large = drawn (&laid, (SqBox){ { 0, 0 }, { 400, 400 } });
  g_autoptr (SqScene) low = drawn (&laid, (SqBox){ { 0, 0 }, { 400, 3 } });

  g_assert_cmpuint (count_texts (large), ==, cloth->lay->placed->len);
  g_assert_cmpuint (count_texts (low), ==, 0);
}

/* The second strip is drawn from its own cut end. */
static void
test_strips (void)
{
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1400,'stock':["
      "{'id':2,'kind':'remnant','length':900,'width':800}]}],"
      "'cushions':[{'id':1,'count':3,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);

  for (guint strip = 0; strip < 2; strip++)
    for (guint wrong = 0; wrong < 2; wrong++)
      {
        SqLaid laid = { lays, 0, strip, sq_lay_length (cloth->lay, strip) / 1e3, wrong == 1 };
        g_assert_cmpfloat (laid.length_mm, >, 0);
        assert_drawn (&laid, (SqBox){ { 5, 5 }, { 150, 60 } });
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/papers/lay-drawing/samples", test_samples);
  g_test_add_func ("/papers/lay-drawing/numbers", test_numbers);
  g_test_add_func ("/papers/lay-drawing/strips", test_strips);
  return g_test_run ();
}
