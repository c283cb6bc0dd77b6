/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-nofit.h"

#include <math.h>

/* Cells of a table, about. */
#define N_CELLS 2048

/* Half a cell's diagonal, in cells, and what asking in single precision may be off by. */
#define REACH 0.7074

/* Inside, but not known how deep: told at least (µm). */
#define LEAST_UM 1.0f

/* A sum's edge: inside of it a·x + b·y + c is above 0. A sum's edges follow each other; ends is 1 on
 * the last of them, 2 on the last of a cell. */
typedef struct
{
  gint32 a, b;
  gint64 c;
  float per_length;
  guint ends;
} Edge;

/* Small, as what takes time is fetching it. depth: of its middle in steps of the table's, 0: outside;
 * how it grows along x and y per cell, in 1/SLOPE cells; edges: the first of those that go through
 * it, 0: none. */
typedef struct
{
  guint16 depth;
  gint8 slope_x, slope_y;
  guint32 edges;
} Cell;

#define SLOPE 127.0f

struct _SqLayNofit
{
  SqGridBox box;
  guint nx, ny;
  float cell_um, per_um; /* a cell's side; cells in a µm */
  float step_um;         /* of depth */
  Cell *cells;
  Edge *edges; /* from 1 on */
};

/* ---- sums of convex parts ------------------------------------------------------------------ */

/* The corner a convex part is walked round from: lowest, of these the leftmost. */
static guint
first_corner (const SqLayPart *part)
{
  guint first = 0;

  for (guint i = 1; i < part->n; i++)
    if (part->points[i].y < part->points[first].y
        || (part->points[i].y == part->points[first].y
            && part->points[i].x < part->points[first].x))
      first = i;
  return first;
}

/* @fixed plus @moving turned about: its corners, counter-clockwise. Edges of both by their
 * direction. */
static GArray *
sum_of (const SqLayPart *moving, const SqLayPart *fixed)
{
  g_autofree SqGrid *about = g_new (SqGrid, moving->n);
  GArray *sum = g_array_sized_new (FALSE, FALSE, sizeof (SqGrid), moving->n + fixed->n);
  SqLayPart turned = { about, moving->n };

  for (guint i = 0; i < moving->n; i++)
    about[i] = (SqGrid){ -moving->points[i].x, -moving->points[i].y };
  guint i0 = first_corner (&turned), k0 = first_corner (fixed), i = 0, k = 0;
  while (i < turned.n || k < fixed->n)
    {
      SqGrid p = turned.points[(i0 + i) % turned.n], q = fixed->points[(k0 + k) % fixed->n];
      SqGrid pn = turned.points[(i0 + i + 1) % turned.n];
      SqGrid qn = fixed->points[(k0 + k + 1) % fixed->n];
      SqGrid corner = { p.x + q.x, p.y + q.y };
      gint64 ux = (gint64) pn.x - p.x, uy = (gint64) pn.y - p.y;
      gint64 vx = (gint64) qn.x - q.x, vy = (gint64) qn.y - q.y, cross = ux * vy - uy * vx;
      g_array_append_val (sum, corner);
      if (i == turned.n)
        k++;
      else if (k == fixed->n)
        i++;
      else
        {
          i += cross >= 0;
          k += cross <= 0;
        }
    }
  return sum;
}

static Edge
edge_between (SqGrid from, SqGrid to)
{
  gint64 a = (gint64) from.y - to.y, b = (gint64) to.x - from.x;

  return (Edge){ .a = (gint32) a,
                 .b = (gint32) b,
                 .c = -(a * from.x + b * from.y),
                 .per_length = (float) (1 / hypot ((double) a, (double) b)) };
}

/* ---- making the table ---------------------------------------------------------------------- */

/* A table while it is made. */
typedef struct
{
  SqLayNofit *nofit;
  GArray *edges;   /* of Edge, of the sum that is looked at */
  guint8 *inside;  /* by cell: wholly inside some sum */
  GArray **listed; /* by cell: of Edge, or NULL */
} Making;

static double
middle (gint32 min, guint i, float cell_um)
{
  return min + (i + 0.5) * cell_um;
}

/* Enters the sum in the cell: outside of it, wholly inside, or with the edges that may go
 * through. */
static void
enter_in_cell (Making *making, guint ix, guint iy)
{
  SqLayNofit *nofit = making->nofit;
  guint cell = iy * nofit->nx + ix, first = G_MAXUINT;
  double x = middle (nofit->box.min.x, ix, nofit->cell_um);
  double y = middle (nofit->box.min.y, iy, nofit->cell_um), reach = nofit->cell_um * REACH + 1;

  if (making->inside[cell])
    return;
  for (guint i = 0; i < making->edges->len; i++)
    {
      const Edge *edge = &g_array_index (making->edges, Edge, i);
      if ((edge->a * x + edge->b * y + (double) edge->c) * edge->per_length <= -reach)
        return;
    }
  for (guint i = 0; i < making->edges->len; i++)
    {
      const Edge *edge = &g_array_index (making->edges, Edge, i);
      if ((edge->a * x + edge->b * y + (double) edge->c) * edge->per_length >= reach)
        continue;
      if (making->listed[cell] == NULL)
        making->listed[cell] = g_array_new (FALSE, FALSE, sizeof (Edge));
      first = MIN (first, making->listed[cell]->len);
      g_array_append_val (making->listed[cell], *edge);
    }
  if (first == G_MAXUINT)
    making->inside[cell] = TRUE;
  else
    g_array_index (making->listed[cell], Edge, making->listed[cell]->len - 1).ends = 1;
}

static guint
cell_of (gint64 from_um, float per_um, guint n)
{
  gint64 i = (gint64) ((float) from_um * per_um);
  return (guint) CLAMP (i, 0, (gint64) n - 1);
}

static void
enter_sum (Making *making, const GArray *sum)
{
  SqLayNofit *nofit = making->nofit;
  const SqGridRing ring = { (SqGrid *) (gpointer) sum->data, sum->len };
  SqGridBox box = sq_grid_rings_box (&ring, 1);

  g_array_set_size (making->edges, 0);
  for (guint i = 0; i < sum->len; i++)
    {
      Edge edge = edge_between (ring.points[i], ring.points[(i + 1) % sum->len]);
      if (edge.a != 0 || edge.b != 0)
        g_array_append_val (making->edges, edge);
    }
  guint x0 = cell_of ((gint64) box.min.x - nofit->box.min.x, nofit->per_um, nofit->nx);
  guint x1 = cell_of ((gint64) box.max.x - nofit->box.min.x, nofit->per_um, nofit->nx);
  guint y0 = cell_of ((gint64) box.min.y - nofit->box.min.y, nofit->per_um, nofit->ny);
  guint y1 = cell_of ((gint64) box.max.y - nofit->box.min.y, nofit->per_um, nofit->ny);
  for (guint iy = y0 > 0 ? y0 - 1 : 0; iy <= MIN (y1 + 1, nofit->ny - 1); iy++)
    for (guint ix = x0 > 0 ? x0 - 1 : 0; ix <= MIN (x1 + 1, nofit->nx - 1); ix++)
      enter_in_cell (making, ix, iy);
}

/* ---- depths -------------------------------------------------------------------------------- */

/* One line of squared distances, in cells, to the nearest place whose own is in @f (Felzenszwalb
 * and Huttenlocher 2012, "Distance transforms of sampled functions"). */
static void
transform_line (const float *f, guint n, float *d, guint *v, float *z)
{
  guint k = 0;

  v[0] = 0;
  z[0] = -1e20f;
  z[1] = 1e20f;
  for (guint q = 1; q < n; q++)
    {
      float s;
      for (;;)
        {
          float p = (float) v[k];
          s = ((f[q] + (float) (q * q)) - (f[v[k]] + p * p)) / (2 * ((float) q - p));
          if (s > z[k] || k == 0)
            break;
          k--;
        }
      if (s > z[k])
        k++;
      v[k] = q;
      z[k] = k == 0 ? -1e20f : s;
      z[k + 1] = 1e20f;
    }
  k = 0;
  for (guint q = 0; q < n; q++)
    {
      while (z[k + 1] < (float) q)
        k++;
      float away = (float) q - (float) v[k];
      d[q] = away * away + f[v[k]];
    }
}

/* By cell, with a border of one all round: how far, in cells, its middle is from that of the nearest
 * that lies outside. */
static float *
distances_to_outside (const Making *making, guint width, guint height)
{
  const SqLayNofit *nofit = making->nofit;
  guint longest = MAX (width, height);
  float *all = g_new0 (float, (gsize) width *height);
  g_autofree float *f = g_new (float, longest), *d = g_new (float, longest);
  g_autofree float *z = g_new (float, longest + 1);
  g_autofree guint *v = g_new (guint, longest);

  for (guint iy = 0; iy < nofit->ny; iy++)
    for (guint ix = 0; ix < nofit->nx; ix++)
      {
        guint cell = iy * nofit->nx + ix;
        if (making->inside[cell] || making->listed[cell] != NULL)
          all[(iy + 1) * width + ix + 1] = 1e12f;
      }
  for (guint ix = 0; ix < width; ix++)
    {
      for (guint iy = 0; iy < height; iy++)
        f[iy] = all[iy * width + ix];
      transform_line (f, height, d, v, z);
      for (guint iy = 0; iy < height; iy++)
        all[iy * width + ix] = d[iy];
    }
  for (guint iy = 0; iy < height; iy++)
    {
      for (guint ix = 0; ix < width; ix++)
        f[ix] = all[iy * width + ix];
      transform_line (f, width, d, v, z);
      for (guint ix = 0; ix < width; ix++)
        all[iy * width + ix] = sqrtf (d[ix]);
    }
  return all;
}

static gint8
to_slope (float cells)
{
  return (gint8) lroundf (CLAMP (cells, -1.0f, 1.0f) * SLOPE);
}

static void
finish_cells (Making *making)
{
  SqLayNofit *nofit = making->nofit;
  guint width = nofit->nx + 2, height = nofit->ny + 2;
  g_autofree float *far = distances_to_outside (making, width, height);
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (Edge));
  float most = 1;

  g_array_set_size (edges, 1);
  for (guint i = 0; i < width * height; i++)
    most = MAX (most, far[i]);
  float per_step = 30000 / most;
  nofit->step_um = nofit->cell_um / per_step;
  nofit->cells = g_new0 (Cell, (gsize) nofit->nx * nofit->ny);
  for (guint iy = 0; iy < nofit->ny; iy++)
    for (guint ix = 0; ix < nofit->nx; ix++)
      {
        guint i = iy * nofit->nx + ix, k = (iy + 1) * width + ix + 1;
        Cell *cell = &nofit->cells[i];
        const GArray *listed = making->listed[i];
        if (!making->inside[i] && listed == NULL)
          continue;
        cell->depth = (guint16) MAX (lroundf (far[k] * per_step), 1);
        cell->slope_x = to_slope ((far[k + 1] - far[k - 1]) / 2);
        cell->slope_y = to_slope ((far[k + width] - far[k - width]) / 2);
        if (making->inside[i])
          continue;
        cell->edges = edges->len;
        g_array_append_vals (edges, listed->data, listed->len);
        g_array_index (edges, Edge, edges->len - 1).ends = 2;
      }
  nofit->edges = g_memdup2 (edges->data, edges->len * sizeof (Edge));
}

SqLayNofit *
sq_lay_nofit_new (const SqLayParts *moving, const SqLayParts *fixed)
{
  SqLayNofit *nofit = g_new0 (SqLayNofit, 1);

  nofit->box = (SqGridBox){
    { fixed->box.min.x - moving->box.max.x, fixed->box.min.y - moving->box.max.y },
    { fixed->box.max.x - moving->box.min.x, fixed->box.max.y - moving->box.min.y }
  };
  double width = (double) nofit->box.max.x - nofit->box.min.x;
  double height = (double) nofit->box.max.y - nofit->box.min.y;
  double cell = MAX (sqrt (width * height / N_CELLS), MAX (width, height) / 512);
  nofit->cell_um = (float) cell;
  nofit->per_um = (float) (1 / cell);
  nofit->nx = (guint) (width / cell) + 1;
  nofit->ny = (guint) (height / cell) + 1;

  gsize n = (gsize) nofit->nx * nofit->ny;
  g_autofree guint8 *inside = g_new0 (guint8, n);
  g_autofree GArray **listed = g_new0 (GArray *, n);
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (Edge));
  Making making = { nofit, edges, inside, listed };
  for (guint i = 0; i < moving->parts->len; i++)
    for (guint k = 0; k < fixed->parts->len; k++)
      {
        g_autoptr (GArray) sum = sum_of (sq_lay_part (moving, i), sq_lay_part (fixed, k));
        enter_sum (&making, sum);
      }
  finish_cells (&making);
  for (gsize i = 0; i < n; i++)
    g_clear_pointer (&listed[i], g_array_unref);
  return nofit;
}

void
sq_lay_nofit_free (SqLayNofit *nofit)
{
  if (nofit == NULL)
    return;
  g_free (nofit->cells);
  g_free (nofit->edges);
  g_free (nofit);
}

SqGridBox
sq_lay_nofit_box (const SqLayNofit *nofit)
{
  return nofit->box;
}

/* ---- asking it ----------------------------------------------------------------------------- */

/* The depth in the deepest of the sums whose edges begin with @edge; 0 where it is in none. */
static float
depth_by_edges (const Edge *edge, gint32 dx, gint32 dy)
{
  float deepest = 0, least = G_MAXFLOAT;

  for (;; edge++)
    {
      gint64 side = (gint64) edge->a * dx + (gint64) edge->b * dy + edge->c;
      if (side <= 0)
        {
          while (edge->ends == 0)
            edge++;
          least = 0;
        }
      else
        least = MIN (least, (float) side * edge->per_length);
      if (edge->ends > 0)
        {
          deepest = MAX (deepest, least);
          if (edge->ends > 1)
            return deepest;
          least = G_MAXFLOAT;
        }
    }
}

float
sq_lay_nofit_depth (const SqLayNofit *nofit, gint32 dx, gint32 dy)
{
  const SqGridBox *box = &nofit->box;

  if (dx <= box->min.x || dx >= box->max.x || dy <= box->min.y || dy >= box->max.y)
    return 0;
  float fx = (float) (dx - box->min.x) * nofit->per_um;
  float fy = (float) (dy - box->min.y) * nofit->per_um;
  guint ix = MIN ((guint) fx, nofit->nx - 1), iy = MIN ((guint) fy, nofit->ny - 1);
  const Cell *cell = &nofit->cells[iy * nofit->nx + ix];
  if (cell->depth == 0)
    return 0;
  float by_edges = 0;
  if (cell->edges > 0)
    {
      by_edges = depth_by_edges (&nofit->edges[cell->edges], dx, dy);
      if (by_edges == 0)
        return 0;
    }
  /* That of the cell's middle is to the middle of one outside: up to so much nearer. */
  float along = (fx - (float) ix - 0.5f) * (float) cell->slope_x;
  float across = (fy - (float) iy - 0.5f) * (float) cell->slope_y;
  float less = cell->edges > 0 ? 1.5f : 0.5f;
  float by_cell = (float) cell->depth * nofit->step_um
                  + ((along + across) / SLOPE - less) * nofit->cell_um;
  return MAX (MAX (by_edges, by_cell), LEAST_UM);
}
