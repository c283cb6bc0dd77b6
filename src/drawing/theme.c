/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/theme.h"

const SqTheme *
sq_theme_light (void)
{
  static const SqTheme theme = {
    .paper = 0xe7d9bf,
    .grid = 0xd8c7a6,
    .grid_main = 0xcab58e,
    .seat = 0xf1e7d3,
    .table = 0xf3efe8,
    .ink = 0x2a2723,
    .dim = 0x5f574b,
    .hatch = 0x8a7b63,
    .accent = 0xa8442f,
    .good = 0x3c7a4a,
    .accent_text = 0x963a27,
    .good_text = 0x2c6339,
    .plate = 0xfffdf9,
    .plate_alpha = 0.94,
    .shadow = 0x6b5a3e,
    .shadow_alpha = 0.20,
  };
  return &theme;
}

const SqTheme *
sq_theme_dark (void)
{
  static const SqTheme theme = {
    .paper = 0x3a4046,
    .grid = 0x454c53,
    .grid_main = 0x525a62,
    .seat = 0x434a51,
    .table = 0x222120,
    .ink = 0xf0ebe2,
    .dim = 0xc4c0b7,
    .hatch = 0x8f959b,
    .accent = 0xe08a6d,
    .good = 0x8cc79a,
    .accent_text = 0xf0ad95,
    .good_text = 0x96cfa3,
    .plate = 0x262524,
    .plate_alpha = 0.92,
    .shadow = 0x000000,
    .shadow_alpha = 0.45,
  };
  return &theme;
}

const SqTheme *
sq_theme_print (void)
{
  static const SqTheme theme = {
    .paper = 0xffffff,
    .grid = 0xdddddd,
    .grid_main = 0xbbbbbb,
    .seat = 0xffffff,
    .table = 0xffffff,
    .ink = 0x000000,
    .dim = 0x444444,
    .hatch = 0x666666,
    .accent = 0x8c2d18,
    .good = 0x1f5a2c,
    .accent_text = 0x8c2d18,
    .good_text = 0x1f5a2c,
    .plate = 0xffffff,
    .plate_alpha = 1,
    .shadow = 0xffffff,
    .shadow_alpha = 0,
  };
  return &theme;
}

static double
channel (guint32 rgb, int shift)
{
  return (double) (rgb >> shift & 0xff) / 255;
}

static double
linear (double c)
{
  return c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

double
sq_luminance (guint32 rgb)
{
  return 0.2126 * linear (channel (rgb, 16)) + 0.7152 * linear (channel (rgb, 8))
         + 0.0722 * linear (channel (rgb, 0));
}

double
sq_contrast (guint32 a, guint32 b)
{
  double la = sq_luminance (a), lb = sq_luminance (b);
  return (fmax (la, lb) + 0.05) / (fmin (la, lb) + 0.05);
}

guint32
sq_colour_between (guint32 a, guint32 b, double t)
{
  guint32 rgb = 0;
  for (int shift = 16; shift >= 0; shift -= 8)
    rgb |= (guint32) lround (255 * (channel (a, shift) * (1 - t) + channel (b, shift) * t))
           << shift;
  return rgb;
}

/* Least contrast of a line with everything it runs over. */
static double
worst_contrast (guint32 line, const SqGround *ground)
{
  return fmin (sq_contrast (line, ground->lightest), sq_contrast (line, ground->darkest));
}

SqChalk
sq_chalk_on (const SqTheme *theme, const SqGround *ground)
{
  const guint32 white = 0xfbf8f1, dark = 0x1f1d1a;
  SqChalk chalk = { theme->ink, theme->paper, 0 };
  if (!ground->is_cloth)
    return chalk;
  chalk.line = sq_contrast (white, ground->mean) >= sq_contrast (dark, ground->mean) ? white : dark;
  chalk.halo = chalk.line == white ? dark : white;
  chalk.halo_alpha = worst_contrast (chalk.line, ground) < 4.5 ? 0.85 : 0;
  return chalk;
}
