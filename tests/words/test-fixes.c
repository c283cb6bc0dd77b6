/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/fixes.h"

#include "hand-made.h"

static void
test_labels (void)
{
  const struct
  {
    SqFix fix;
    const char *label;
  } cases[] = {
    { { SQ_FIX_NONE, 0, 0 }, "" },
    { { SQ_FIX_BUILD, 0, SQ_BUILD_BOXED }, "Box the cushion" },
    { { SQ_FIX_RADIUS, 12, 38.1 }, "Radius 1 1/2 in" },
    { { SQ_FIX_CLEARANCE, 12, 3.175 }, "Clearance 1/8 in" },
    { { SQ_FIX_STRAIGHTEN, 12, 0 }, "Make B–C straight" },
    { { SQ_FIX_SHARPEN, 12, 0 }, "Make corner B sharp" },
    { { SQ_FIX_DROP_CORNER, 14, 0 }, "Remove corner D" },
    { { SQ_FIX_DROP_HOLE, 15, 0 }, "Remove the hole" },
    { { SQ_FIX_THICKNESS, 0, 76.2 }, "Thickness 3 in" },
    { { SQ_FIX_WRAP_DEPTH, 0, 9.525 }, "Wrap 3/8 in deep" },
    { { SQ_FIX_WRAP_STYLE, 0, SQ_WRAP_MITRED }, "Mitre the wrap" },
    { { SQ_FIX_WRAP_STYLE, 0, SQ_WRAP_PLAIN }, "Make the wrap plain" },
    { { SQ_FIX_ZIP_PLACE, 0, SQ_ZIP_UNDERSIDE }, "Put the zip in the underside" },
    { { SQ_FIX_ZIP_EDGE, 14, 0 }, "Put the zip along D–A" },
    { { SQ_FIX_ZIP_EDGE, 0, 0 }, "Choose the zip’s edge by the rules" },
    { { SQ_FIX_ZIP_RULES, 0, 0 }, "Place the zip by the rules" },
    { { SQ_FIX_ALLOWANCES, 0, 0 }, "Take the usual allowances" },
    { { SQ_FIX_CLOTH, 0, 0 }, "Take the first cloth" },
  };
  g_autoptr (SqCushion) cushion = hand_made_cushion ();
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *label = sq_words_fix (&cases[i].fix, cushion, &style);
      g_assert_cmpstr (label, ==, cases[i].label);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/fixes/labels", test_labels);
  return g_test_run ();
}
