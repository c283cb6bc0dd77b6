/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Inside of the offset: how a closed chain that meets itself divides the plane. Nobody but
 * offset*.c includes this. */
#pragma once

#include "geometry/offset-chain.h"

/* A stretch of a piece between two vertices. */
typedef struct
{
  SqSegment s;
  guint piece;
  double t0, t1; /* its places on the piece */
  guint from, to;
  int weight; /* how many more pieces run this way than the other, > 0 */
  int left;   /* winding number on its left; on its right it is @weight less */
  gboolean is_known;
} SqPlaneEdge;

typedef struct
{
  const GArray *chain; /* of SqOffsetPiece */
  double join_mm;      /* stops nearer than this share a vertex */
  GArray *vertices;    /* of SqPoint */
  GArray *edges;       /* of SqPlaneEdge, sorted by the vertex they leave */
  guint *first_out; /* the edges that leave vertex v are first_out[v] … first_out[v + 1] − 1 */
  guint *n_in;      /* how many edges arrive at it */
} SqPlane;

static inline SqPlaneEdge *
sq_plane_edge (const SqPlane *plane, guint i)
{
  return &g_array_index (plane->edges, SqPlaneEdge, i);
}

/* Cuts @chain (borrowed) into edges at all of its meetings; edges that run over each other become
 * one. */
SqPlane sq_plane_new (const GArray *chain, double join_mm);
void sq_plane_clear (SqPlane *plane);

/* Sorts the edges again, after some were taken out. */
void sq_plane_index (SqPlane *plane);

/* Finds the winding numbers on both sides of all edges. */
void sq_plane_wind (SqPlane *plane);

/* The bulge of the part @t0 … @t1 of @s. */
double sq_plane_part_bulge (const SqSegment *s, double t0, double t1);
