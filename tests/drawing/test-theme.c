/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/theme.h"

static const SqTheme *
theme_of (int i)
{
  return i == 0 ? sq_theme_light () : i == 1 ? sq_theme_dark () : sq_theme_print ();
}

/* 21 : 1 and the lightest grey that passes 4.5 : 1 on white, as WCAG 2.1's formula has it. */
static void
test_formula (void)
{
  g_assert_cmpfloat_with_epsilon (sq_contrast (0x000000, 0xffffff), 21, 1e-9);
  g_assert_cmpfloat (sq_contrast (0x767676, 0xffffff), >=, 4.5);
  g_assert_cmpfloat (sq_contrast (0x777777, 0xffffff), <, 4.5);
  g_assert_cmpfloat_with_epsilon (sq_luminance (0xff0000), 0.2126, 1e-9);
  g_assert_cmphex (sq_colour_between (0x000000, 0xff8040, 0.5), ==, 0x804020);
}

/* Text is at least 4.5 : 1 on everything it stands on. */
static void
test_text (void)
{
  for (int i = 0; i < 3; i++)
    {
      const SqTheme *theme = theme_of (i);
      guint32 texts[] = { theme->ink, theme->dim, theme->accent_text, theme->good_text };
      guint32 over_dark = sq_colour_between (0x000000, theme->plate, theme->plate_alpha);
      guint32 over_light = sq_colour_between (0xffffff, theme->plate, theme->plate_alpha);
      guint32 grounds[] = { theme->paper,     theme->seat, theme->table, theme->grid,
                            theme->grid_main, over_dark,   over_light };
      /* Figures may stand on a line of the grid: that is thin, 3 : 1 is enough there. */
      for (guint t = 0; t < G_N_ELEMENTS (texts); t++)
        for (guint g = 0; g < G_N_ELEMENTS (grounds); g++)
          g_assert_cmpfloat (sq_contrast (texts[t], grounds[g]), >=, g == 3 || g == 4 ? 3.0 : 4.5);
    }
}

/* Lines that carry meaning are at least 3 : 1 (WCAG 2.1, 1.4.11). */
static void
test_lines (void)
{
  for (int i = 0; i < 3; i++)
    {
      const SqTheme *theme = theme_of (i);
      g_assert_cmpfloat (sq_contrast (theme->accent, theme->paper), >=, 3);
      g_assert_cmpfloat (sq_contrast (theme->accent, theme->table), >=, 3);
      g_assert_cmpfloat (sq_contrast (theme->good, theme->table), >=, 3);
      g_assert_cmpfloat (sq_contrast (theme->hatch, theme->paper), >=, 2);
    }
}

/* Chalk can be read on any cloth: on each of its colours, by itself or by its halo. */
static void
test_chalk (void)
{
  for (int i = 0; i < 2000; i++)
    {
      guint32 a = (guint32) g_test_rand_int_range (0, 0x1000000);
      guint32 b = i % 2 == 0 ? a : (guint32) g_test_rand_int_range (0, 0x1000000);
      gboolean a_lighter = sq_luminance (a) > sq_luminance (b);
      SqGround ground = { TRUE, sq_colour_between (a, b, 0.5), a_lighter ? a : b,
                          a_lighter ? b : a };
      SqChalk chalk = sq_chalk_on (theme_of (i % 3), &ground);
      double worst = fmin (sq_contrast (chalk.line, a), sq_contrast (chalk.line, b));
      if (chalk.halo_alpha == 0)
        g_assert_cmpfloat (worst, >=, 4.5);
      else
        {
          g_assert_cmpfloat (chalk.halo_alpha, >=, 0.8);
          g_assert_cmpfloat (sq_contrast (chalk.line, chalk.halo), >=, 7);
        }
    }
}

static void
test_ink_on_paper (void)
{
  SqGround paper = { FALSE, 0, 0, 0 };
  SqChalk chalk = sq_chalk_on (sq_theme_light (), &paper);
  g_assert_cmphex (chalk.line, ==, sq_theme_light ()->ink);
  g_assert_cmpfloat (chalk.halo_alpha, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/theme/formula", test_formula);
  g_test_add_func ("/drawing/theme/text", test_text);
  g_test_add_func ("/drawing/theme/lines", test_lines);
  g_test_add_func ("/drawing/theme/chalk", test_chalk);
  g_test_add_func ("/drawing/theme/ink-on-paper", test_ink_on_paper);
  return g_test_run ();
}
