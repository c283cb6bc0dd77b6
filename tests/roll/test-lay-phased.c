/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Few pieces whose pattern must fall: what is found is hardly longer than the best of all orders,
 * turns and places in the left-bottom corners of what lies already, looked for here by trying each. */
#include "roll/made-task.h"

#define N_CASES 40
#define MOST_PIECES 6
#define MOST_LONGER 1.03
#define N_STEPS 20

/* mm; rectangles, so that a corner is what it looks like. The pattern recurs every repeat_x and
 * repeat_y (0: nowhere) and must fall on the piece's own left lower corner, off_x and off_y on. */
typedef struct
{
  int l, w;
  int off_x, off_y;
  gboolean quarter; /* may also be turned by a quarter, where it has no pattern */
} Piece;

typedef struct
{
  int width, repeat_x, repeat_y, n;
  Piece pieces[MOST_PIECES];
} Case;

typedef struct
{
  int x, y, l, w;
} Box;

typedef struct
{
  const Case *puzzle;
  Box laid[MOST_PIECES];
  int best;
} Search;

static Case
random_case (guint32 seed)
{
  GRand *chance = g_rand_new_with_seed (seed);
  Case puzzle = { .width = g_rand_int_range (chance, 500, 900) };

  puzzle.n = g_rand_int_range (chance, 3, seed % 8 == 0 ? MOST_PIECES + 1 : MOST_PIECES);
  puzzle.repeat_y = g_rand_int_range (chance, 30, 160);
  puzzle.repeat_x = seed % 2 == 0 ? g_rand_int_range (chance, 40, 200) : 0;
  for (int i = 0; i < puzzle.n; i++)
    {
      Piece *piece = &puzzle.pieces[i];
      piece->l = g_rand_int_range (chance, 100, 500);
      piece->w = g_rand_int_range (chance, 100, 450);
      piece->quarter = g_rand_int_range (chance, 0, 3) == 0 && piece->l <= puzzle.width;
      piece->off_x = g_rand_int_range (chance, 0, 40);
      piece->off_y = g_rand_int_range (chance, 0, 30);
    }
  g_rand_free (chance);
  return puzzle;
}

static SqLayTask *
task_of (const Case *puzzle)
{
  SqLayTask *task = made_task (puzzle->width, 0);

  for (int i = 0; i < puzzle->n; i++)
    {
      const Piece *piece = &puzzle->pieces[i];
      SqLayItemSpec spec = { .tag = (guint) i };
      if (piece->quarter)
        spec.turns = SQ_LAY_UPRIGHT | SQ_LAY_QUARTER;
      else
        {
          spec.anchor = sq_point (-piece->off_x, -piece->off_y);
          spec.repeat_along_mm = puzzle->repeat_x;
          spec.repeat_across_mm = puzzle->repeat_y;
        }
      add_path (task, sq_path_new_rectangle (0, 0, piece->l, piece->w), spec);
    }
  sq_lay_task_seal (task);
  return task;
}

/* The least place >= @from where the pattern falls, @off after a multiple of @repeat. */
static int
next_place (int from, int off, int repeat)
{
  if (repeat == 0)
    return from;
  int k = (from - off) / repeat;
  while (k * repeat + off < from)
    k++;
  while (k > 0 && (k - 1) * repeat + off >= from)
    k--;
  return k * repeat + off;
}

static gboolean
is_free (const Search *search, int n, const Box *box)
{
  if (box->y + box->w > search->puzzle->width)
    return FALSE;
  for (int i = 0; i < n; i++)
    {
      const Box *laid = &search->laid[i];
      if (box->x < laid->x + laid->l && laid->x < box->x + box->l && box->y < laid->y + laid->w
          && laid->y < box->y + box->w)
        return FALSE;
    }
  return TRUE;
}

static void lay_next (Search *search, guint used, int n, int length);

/* At every corner: beside one piece, or at the cut end; above another, or at the edge; the next
 * place for the pattern from there. */
static void
lay_piece (Search *search, guint used, int n, int length, const Piece *piece, gboolean turned)
{
  int repeat_x = piece->quarter ? 0 : search->puzzle->repeat_x;
  int repeat_y = piece->quarter ? 0 : search->puzzle->repeat_y;
  Box box = { .l = turned ? piece->w : piece->l, .w = turned ? piece->l : piece->w };

  for (int i = -1; i < n; i++)
    for (int k = -1; k < n; k++)
      {
        int x = i < 0 ? 0 : search->laid[i].x + search->laid[i].l;
        int y = k < 0 ? 0 : search->laid[k].y + search->laid[k].w;
        box.x = next_place (x, piece->off_x % MAX (repeat_x, 1), repeat_x);
        box.y = next_place (y, piece->off_y % MAX (repeat_y, 1), repeat_y);
        int end = MAX (length, box.x + box.l);
        if (end >= search->best || !is_free (search, n, &box))
          continue;
        search->laid[n] = box;
        lay_next (search, used, n + 1, end);
      }
}

static void
lay_next (Search *search, guint used, int n, int length)
{
  if (n == search->puzzle->n)
    search->best = length;
  for (int i = 0; i < search->puzzle->n; i++)
    {
      const Piece *piece = &search->puzzle->pieces[i];
      if (used & (1u << i))
        continue;
      lay_piece (search, used | 1u << i, n, length, piece, FALSE);
      if (piece->quarter)
        lay_piece (search, used | 1u << i, n, length, piece, TRUE);
    }
}

static void
test_cases (void)
{
  double sum = 0, worst = 0;

  for (guint32 seed = 1; seed <= N_CASES; seed++)
    {
      Case puzzle = random_case (seed);
      Search search = { .puzzle = &puzzle, .best = G_MAXINT };
      lay_next (&search, 0, 0, 0);
      g_autoptr (SqLayTask) task = task_of (&puzzle);
      g_autoptr (SqLay) lay = lay_of (task, N_STEPS);
      double ratio = sq_lay_length (lay, 0) / 1000.0 / search.best;

      g_assert_cmpuint (lay->unlaid->len, ==, 0);
      g_assert_true (sq_lay_is_valid (task, lay));
      if (ratio > MOST_LONGER)
        g_test_message ("case %u: %d mm, %d found here", seed, sq_lay_length (lay, 0) / 1000,
                        search.best);
      sum += ratio;
      worst = MAX (worst, ratio);
    }
  g_test_message ("%.4f of the best of all in the mean, %.4f at worst", sum / N_CASES, worst);
  g_assert_cmpfloat (worst, <=, MOST_LONGER);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-phased/cases", test_cases);
  return g_test_run ();
}
