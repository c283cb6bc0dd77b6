/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/cloth.h"

typedef struct
{
  double at_mm, width_mm;
  guint32 colour;
} Band;

/* A striped cloth; bands of width 0 end the list. */
static SqCloth *
striped (double repeat_mm, const Band *bands)
{
  SqCloth *cloth = sq_cloth_new (1);

  cloth->repeat_across_mm = repeat_mm;
  while (bands[cloth->n_stripes].width_mm > 0)
    cloth->n_stripes++;
  cloth->stripes = g_new0 (SqStripe, cloth->n_stripes);
  for (guint i = 0; i < cloth->n_stripes; i++)
    {
      cloth->stripes[i].at_mm = bands[i].at_mm;
      cloth->stripes[i].width_mm = bands[i].width_mm;
      cloth->stripes[i].colour = bands[i].colour;
    }
  return cloth;
}

static const struct
{
  const char *name;
  double repeat_mm;
  Band bands[5];
  gboolean allows;
} half_turns[] = {
  { "one band", 100, { { 10, 30, 0xff } }, TRUE },
  { "two colours alternate", 100, { { 0, 50, 1 }, { 50, 50, 2 } }, TRUE },
  { "thin, thick, thin", 100, { { 10, 5, 1 }, { 25, 20, 2 }, { 55, 5, 1 } }, TRUE },
  { "symmetric across the repeat's end", 100, { { 90, 20, 2 }, { 75, 5, 1 }, { 20, 5, 1 } }, TRUE },
  { "two bands, equal gaps", 100, { { 10, 10, 1 }, { 55, 20, 2 } }, TRUE },
  { "two bands, unequal gaps", 100, { { 10, 5, 1 }, { 30, 20, 2 } }, FALSE },
  { "three colours round, one way", 100, { { 0, 20, 1 }, { 20, 20, 2 }, { 40, 20, 3 } }, FALSE },
  { "three bands, unequal gaps", 100, { { 0, 5, 1 }, { 10, 5, 2 }, { 40, 5, 3 } }, FALSE },
  { "over another, in its middle", 100, { { 0, 60, 1 }, { 25, 10, 2 } }, TRUE },
  { "over another, off its middle", 100, { { 0, 60, 1 }, { 10, 10, 2 } }, FALSE },
  { "over its end", 100, { { 0, 40, 1 }, { 30, 20, 2 } }, FALSE },
  { "never recurs", 0, { { 300, 20, 1 }, { 330, 10, 2 }, { 350, 20, 1 } }, TRUE },
  { "never recurs, lopsided", 0, { { 300, 20, 1 }, { 330, 10, 2 }, { 360, 30, 1 } }, FALSE },
  { "a band wider than the repeat", 100, { { 0, 150, 1 } }, TRUE },
  { "places beyond the repeat and below 0",
    100,
    { { -990, 5, 1 }, { 1025, 20, 2 }, { 55, 5, 1 } },
    TRUE },
};

static void
test_half_turn (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (half_turns); i++)
    {
      g_autoptr (SqCloth) cloth = striped (half_turns[i].repeat_mm, half_turns[i].bands);

      g_test_message ("%s", half_turns[i].name);
      g_assert_true (sq_cloth_is_striped (cloth));
      g_assert_cmpint (sq_cloth_allows_half_turn (cloth), ==, half_turns[i].allows);
      cloth->one_way = TRUE;
      g_assert_false (sq_cloth_allows_half_turn (cloth));
    }
}

static void
test_half_turn_plain (void)
{
  g_autoptr (SqCloth) cloth = sq_cloth_new (1);

  g_assert_false (sq_cloth_is_striped (cloth));
  g_assert_true (sq_cloth_allows_half_turn (cloth));
  cloth->repeat_across_mm = 100;
  g_assert_false (sq_cloth_allows_half_turn (cloth));
  cloth->repeat_across_mm = 0;
  cloth->repeat_along_mm = 100;
  g_assert_false (sq_cloth_allows_half_turn (cloth));
}

/* Its axes are the middles of some bands and gaps, not of all. */
static void
test_mirrored_about (void)
{
  const Band two_alike[] = { { 0, 20, 1 }, { 30, 20, 1 }, { 0, 0, 0 } };
  g_autoptr (SqCloth) bands = striped (100, two_alike);
  g_autoptr (SqCloth) plain = sq_cloth_new (1);

  g_assert_true (sq_cloth_is_mirrored_about (bands, 25));
  g_assert_true (sq_cloth_is_mirrored_about (bands, 75));
  g_assert_true (sq_cloth_is_mirrored_about (bands, -325));
  g_assert_false (sq_cloth_is_mirrored_about (bands, 10));
  g_assert_false (sq_cloth_is_mirrored_about (bands, 40));
  g_assert_true (sq_cloth_is_mirrored_about (plain, 7));
}

static void
test_phase (void)
{
  g_autoptr (SqCloth) plain = sq_cloth_new (1);
  g_autoptr (SqCloth) bands = striped (0, half_turns[0].bands);
  gboolean across, along;

  g_assert_false (sq_cloth_has_phase (plain, &across, &along));
  g_assert_false (across || along);
  g_assert_true (sq_cloth_has_phase (bands, &across, &along));
  g_assert_true (across && !along);
  plain->repeat_along_mm = 80;
  g_assert_true (sq_cloth_has_phase (plain, &across, &along));
  g_assert_true (!across && along);
}

static void
test_dup (void)
{
  g_autoptr (SqCloth) cloth = striped (100, half_turns[2].bands);
  g_autoptr (SqCloth) copy = NULL;

  cloth->stripes[1].unknown = g_ref_string_new ("{\"a\": 1}");
  cloth->unknown = g_ref_string_new ("{\"b\": 2}");
  copy = sq_cloth_dup (cloth);
  copy->stripes[0].width_mm = 7;
  g_assert_cmpfloat (cloth->stripes[0].width_mm, ==, 5);
  g_assert_true (copy->stripes[1].unknown == cloth->stripes[1].unknown);
  g_assert_true (copy->unknown == cloth->unknown);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/cloth/half-turn", test_half_turn);
  g_test_add_func ("/job/cloth/half-turn/plain", test_half_turn_plain);
  g_test_add_func ("/job/cloth/mirrored-about", test_mirrored_about);
  g_test_add_func ("/job/cloth/phase", test_phase);
  g_test_add_func ("/job/cloth/dup", test_dup);
  return g_test_run ();
}
