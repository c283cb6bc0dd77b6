/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/wide.h"

#include "cover/hand-made.h"

#include <string.h>

static SqWide *
wide_of (const char *width, gboolean with_lays)
{
  g_autofree char *cushion = g_strdup_printf (
      "'build':'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':%s,'y':0},"
      "{'id':3,'x':%s,'y':600},{'id':4,'x':0,'y':600}]",
      width, width);
  g_autoptr (SqJob) job = job_of (cushion, "'cloths':[{'id':1,'name':'Quay canvas'}],");
  return sq_wide_new (job, g_ptr_array_index (job->cushions, 0), with_lays, NULL);
}

/* As long as nothing is laid an offer says only what is done. */
static void
test_names (void)
{
  static const char *const names[] = { "Two joins", "3 cushions side by side",
                                       "Cloth from side to side", "Cloth 2725" };
  g_autoptr (SqWide) wide = wide_of ("2700", FALSE);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);

  g_assert_cmpuint (wide->ways->len, ==, G_N_ELEMENTS (names));
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *name = sq_words_wide_way (sq_wide_way (wide, i), &style);
      g_autofree char *offer = sq_words_wide_offer (sq_wide_way (wide, i), &style);
      g_assert_cmpstr (offer, ==, name);
      g_assert_true (g_str_has_prefix (name, names[i]));
    }
}

static void
test_laid (void)
{
  g_autoptr (SqWide) wide = wide_of ("1800", TRUE);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autofree char *offer = sq_words_wide_offer (sq_wide_way (wide, SQ_WIDE_TWO_JOINS), &style);
  g_autofree char *summary = sq_words_wide_summary (sq_wide_way (wide, SQ_WIDE_TWO_JOINS), &style);

  g_assert_true (g_str_has_prefix (offer, "Two joins: "));
  g_assert_true (g_str_has_suffix (offer, " m"));
  g_assert_nonnull (strstr (summary, " pieces, seams "));
  /* no price: said, never taken for nothing */
  g_assert_nonnull (strstr (summary, "+ cloth"));
}

static void
test_not_possible (void)
{
  g_autoptr (SqWide) wide = wide_of ("6000", FALSE);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autofree char *offer = sq_words_wide_offer (sq_wide_way (wide, SQ_WIDE_TWO_JOINS), &style);
  g_autofree char *summary = sq_words_wide_summary (sq_wide_way (wide, SQ_WIDE_TWO_JOINS), &style);

  g_assert_cmpstr (offer, ==, "Two joins: not possible");
  g_assert_nonnull (strstr (summary, "two joins don’t bring it into a cloth of 1346"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wide/names", test_names);
  g_test_add_func ("/wide/laid", test_laid);
  g_test_add_func ("/wide/not-possible", test_not_possible);
  return g_test_run ();
}
