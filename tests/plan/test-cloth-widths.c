/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/cloth-widths.h"

#include "cover/hand-made.h"

static const double others_mm[] = { 1500, 1200, 1100 };

/* Three seats of 500 × 450 of a cloth 1,100 wide with these further keys. */
static SqJob *
job_of_cloth (const char *cloth)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1100%s}],"
      "'cushions':[{'id':1,'count':3,'thickness':60,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':"
      "500,'y':0},{'id':3,'x':500,'y':450},{'id':4,'x':0,'y':450}]}]}",
      cloth);
  return job_of_text (text);
}

static SqClothWidths *
widths_of (const SqJob *job)
{
  return sq_cloth_widths_new (job, 1, others_mm, G_N_ELEMENTS (others_mm), NULL);
}

/* The narrowest first, its own among them and only once; nothing to match on plain cloth. */
static void
test_plain (void)
{
  g_autoptr (SqJob) job = job_of_cloth ("");
  g_autoptr (SqClothWidths) widths = widths_of (job);

  g_assert_false (widths->has_pattern);
  g_assert_cmpuint (widths->widths->len, ==, 3);
  assert_mm (sq_cloth_width (widths, 0)->width_mm, 1100);
  assert_mm (sq_cloth_width (widths, 1)->width_mm, 1200);
  assert_mm (sq_cloth_width (widths, 2)->width_mm, 1500);
  for (guint i = 0; i < 3; i++)
    {
      const SqClothWidth *width = sq_cloth_width (widths, i);
      g_assert_true (width->is_own == (i == 0));
      g_assert_cmpfloat (width->matched.buy_mm, >, 0);
      assert_mm (width->plain.buy_mm, width->matched.buy_mm);
    }
}

/* Faces and undersides are 525.4 across and 475.4 along. On 1,100 two lie beside each other wherever
 * they fall: three rows and the boxing. Where each face has to have the middle of a stripe that recurs
 * every 900 in its own middle, it lies from 57 to 583 and leaves too little beside it: five rows at
 * least. */
static void
test_matched (void)
{
  g_autoptr (SqJob) job = job_of_cloth (",'repeat':{'across':900},"
                                        "'stripes':[{'at':300,'width':40,'colour':'#203050'}]");
  g_autoptr (SqClothWidths) widths = widths_of (job);
  const SqClothWidth *own = sq_cloth_width (widths, 0);

  g_assert_true (widths->has_pattern && own->is_own);
  g_assert_cmpuint (own->matched.unlaid + own->plain.unlaid, ==, 0);
  g_assert_cmpfloat (own->matched.laid_mm, >, 5 * 475.4);
  g_assert_cmpfloat (own->plain.laid_mm, <, 4.5 * 475.4);
  g_assert_cmpfloat (own->matched.buy_mm - own->plain.buy_mm, >, 400);
  for (guint i = 0; i < widths->widths->len; i++)
    g_assert_cmpfloat (sq_cloth_width (widths, i)->plain.buy_mm, <=,
                       sq_cloth_width (widths, i)->matched.buy_mm);
}

/* What is at hand of the cloth, and where it is flawed, is no matter. */
static void
test_stock (void)
{
  g_autoptr (SqJob) job = job_of_cloth (
      ",'stock':[{'id':1,'length':9000}],'flaws':[{'id':1,'x':0,'y':0,"
      "'length':900,'width':1000}]");
  g_autoptr (SqJob) without = job_of_cloth ("");
  g_autoptr (SqClothWidths) widths = widths_of (job);
  g_autoptr (SqClothWidths) same = widths_of (without);

  for (guint i = 0; i < widths->widths->len; i++)
    assert_mm (sq_cloth_width (widths, i)->matched.buy_mm,
               sq_cloth_width (same, i)->matched.buy_mm);
}

static gboolean
stop (gpointer data)
{
  (void) data;
  return TRUE;
}

static void
test_stopped (void)
{
  const SqTask watch = { stop, NULL, NULL };
  g_autoptr (SqJob) job = job_of_cloth ("");

  g_assert_null (sq_cloth_widths_new (job, 1, others_mm, 2, &watch));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/cloth-widths/plain", test_plain);
  g_test_add_func ("/plan/cloth-widths/matched", test_matched);
  g_test_add_func ("/plan/cloth-widths/stock", test_stock);
  g_test_add_func ("/plan/cloth-widths/stopped", test_stopped);
  return g_test_run ();
}
