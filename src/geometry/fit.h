/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Free curves, ellipses and developed edges become chains of arcs, tangent to each other, once,
 * where they enter the geometry. */
#pragma once

#include "geometry/path.h"

/* A smooth curve for @t from 0 to 1: its point and its derivative by t. */
typedef void (*SqCurve) (double t, SqPoint *at, SqVector *derivative, gconstpointer data);

/* Appends to @nodes (of SqNode) the nodes of a tangent-continuous chain of arcs and lines along
 * the curve, the end point left out, each with @tag; no point of the chain is farther than
 * @within_mm from the curve nor the other way round (checked at close samples). Ends and end directions are exact. The pieces
 * are biarcs, halved until they fit. FALSE (nothing appended) where the curve stands still, is not finite or would need more
 * than 512 pieces. */
gboolean sq_fit_curve (SqCurve curve, gconstpointer data, double within_mm, guint32 tag,
                       GArray *nodes);

/* The same for the cubic with the given control points (a control point may lie on its end).
 * A cubic that is a straight line becomes one line. */
gboolean sq_fit_cubic (const SqPoint control[4], double within_mm, guint32 tag, GArray *nodes);
