/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/making.h"

#include <string.h>

#include "cover/cut-line.h"
#include "cover/report.h"

void
sq_draft_begin (SqDraft *draft, SqPieceRole role, const SqClothChoice *cloth)
{
  draft->piece = sq_piece_new (role);
  draft->piece->cloth = cloth->id;
  draft->run = 0;
  sq_path_builder_init (&draft->ring);
}

guint
sq_draft_run (SqDraft *draft, SqRunRole role, SqId edge, double allowance_mm)
{
  SqRun run = {
    .role = role, .edge = edge, .ring = draft->piece->sew->len, .allowance_mm = allowance_mm
  };

  draft->run = draft->piece->runs->len;
  g_array_append_val (draft->piece->runs, run);
  return draft->run;
}

void
sq_draft_node (SqDraft *draft, SqPoint at, double bulge)
{
  sq_path_builder_add (&draft->ring, at, bulge, draft->run);
}

void
sq_draft_next_ring (SqDraft *draft)
{
  SqPath *ring = sq_path_builder_end (&draft->ring, TRUE);

  g_return_if_fail (ring != NULL);
  g_ptr_array_add (draft->piece->sew, ring);
  sq_path_builder_init (&draft->ring);
}

void
sq_draft_patch (SqDraft *draft, SqPatchKind kind, SqPath *region, SqPoint origin, SqPoint3 at,
                SqPoint3 ex, SqPoint3 ey, double radius_mm)
{
  SqPatch patch = { kind, region, origin, { 1, 0 }, at, ex, ey, radius_mm };
  g_array_append_val (draft->piece->patches, patch);
}

void
sq_draft_flat_patch (SqDraft *draft, const SqPath *outline, gboolean mirrored, double z)
{
  SqPath *region = mirrored ? sq_path_mirrored (outline) : sq_path_ref (outline);

  sq_draft_patch (draft, SQ_PATCH_PLANE, region, sq_point (0, 0), (SqPoint3){ 0, 0, z },
                  (SqPoint3){ mirrored ? -1 : 1, 0, 0 }, (SqPoint3){ 0, 1, 0 }, 0);
}

void
sq_draft_turn_over (SqDraft *draft, double thickness)
{
  SqPiece *piece = draft->piece;
  GArray *nodes = draft->ring.nodes, *runs = piece->runs;
  guint n = nodes->len, n_runs = runs->len;
  g_autofree SqNode *old_nodes = g_memdup2 (nodes->data, n * sizeof (SqNode));
  g_autofree SqRun *old_runs = g_memdup2 (runs->data, n_runs * sizeof (SqRun));

  for (guint i = 0; i < n_runs; i++)
    g_array_index (runs, SqRun, i) = old_runs[n_runs - 1 - i];
  /* The segment from a to b goes from b's image to a's. */
  for (guint i = 0; i < n; i++)
    {
      const SqNode *a = &old_nodes[n - 1 - i], *b = &old_nodes[(n - i) % n];
      g_array_index (nodes, SqNode, i) = (SqNode){ { -b->at.x, b->at.y },
                                                   a->bulge,
                                                   n_runs - 1 - a->tag };
    }
  for (guint i = 0; i < piece->patches->len; i++)
    {
      SqPatch *p = &g_array_index (piece->patches, SqPatch, i);
      SqPath *region = sq_path_mirrored (p->region);
      sq_path_unref (p->region);
      p->region = region;
      p->origin.x = -p->origin.x;
      p->at.z = thickness - p->at.z;
      p->ex = (SqPoint3){ -p->ex.x, -p->ex.y, p->ex.z };
      p->ey.z = -p->ey.z;
    }
}

void
sq_draft_patch_along (SqDraft *draft, SqVector along)
{
  g_array_index (draft->piece->patches, SqPatch, draft->piece->patches->len - 1).along = along;
}

void
sq_piece_measure_runs (SqPiece *piece)
{
  for (guint i = 0; i < piece->runs->len; i++)
    sq_piece_run (piece, i)->length_mm = 0;
  for (guint ring = 0; ring < piece->sew->len; ring++)
    {
      const SqPath *sew = sq_piece_sew (piece, ring);
      const SqNode *nodes = sq_path_nodes (sew);
      guint n = sq_path_n_nodes (sew);
      for (guint i = 0; i < n; i++)
        {
          SqRun *run = sq_piece_run (piece, nodes[i].tag);
          if (i == 0 || nodes[i - 1].tag != nodes[i].tag)
            run->from = i;
          run->to = (i + 1) % n;
          run->length_mm += sq_path_station_mm (sew, i + 1) - sq_path_station_mm (sew, i);
        }
    }
}

void
sq_piece_measure (SqPiece *piece)
{
  g_autoptr (SqPath) turned = sq_path_moved (sq_piece_cut (piece, 0), -piece->grain_rad,
                                             sq_point (0, 0));
  SqBox box = sq_path_box (turned);

  piece->height_mm = box.max.x - box.min.x;
  piece->width_mm = box.max.y - box.min.y;
  piece->area_mm2 = 0;
  for (guint ring = 0; ring < piece->cut->len; ring++)
    piece->area_mm2 += sq_path_area_mm2 (sq_piece_cut (piece, ring));
}

guint
sq_making_add_piece (SqMaking *making, SqDraft *draft)
{
  SqPiece *piece = draft->piece;
  guint index = making->cover->pieces->len;

  if (draft->ring.nodes->len > 0)
    sq_draft_next_ring (draft);
  g_clear_pointer (&draft->ring.nodes, g_array_unref);
  sq_piece_measure_runs (piece);
  if (!sq_piece_make_cut (piece))
    sq_report_piece (making->cover->problems, SQ_PROBLEM_CUT_SPLIT, SQ_FAULT,
                     making->choices.cushion, index);
  g_ptr_array_add (making->cover->pieces, piece);
  draft->piece = NULL;
  return index;
}

SqPiece *
sq_making_piece (SqMaking *making, guint i)
{
  return g_ptr_array_index (making->cover->pieces, i);
}

static double
side_length_mm (const SqCover *cover, const SqSide *side)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  double length = 0;

  for (guint i = 0, run = side->first_run; i < side->n_runs; i++)
    {
      length += sq_piece_run (piece, run)->length_mm;
      run = sq_piece_next_run (piece, run);
    }
  return length;
}

guint
sq_making_add_seam (SqMaking *making, SqSeamKind kind, SqSide a, SqSide b, guint step)
{
  SqCover *cover = making->cover;
  SqSeam seam = { .kind = kind, .a = a, .b = b, .step = step };

  seam.length_a_mm = side_length_mm (cover, &a);
  seam.length_b_mm = side_length_mm (cover, &b);
  g_array_append_val (cover->seams, seam);
  return cover->seams->len - 1;
}

void
sq_piece_add_mark (SqPiece *piece, SqMarkKind kind, guint count, SqPoint at, double angle_rad,
                   double depth_mm, SqPath *line, gint seam, double station_mm)
{
  SqMark mark = { kind, count, at, angle_rad, depth_mm, line, seam, station_mm };
  g_array_append_val (piece->marks, mark);
}

void
sq_piece_add_dart (SqPiece *piece, guint run, SqPoint tip)
{
  const SqRun *r = sq_piece_run (piece, run);
  const SqPath *cut = sq_piece_cut (piece, r->ring);
  SqTrim trim = { .run = run, .ring = r->ring, .why = SQ_WHY_DART, .distance_mm = r->allowance_mm };
  double nearest = INFINITY;

  for (guint i = 0; i < sq_path_n_nodes (cut); i++)
    {
      double d = sq_distance (sq_path_nodes (cut)[i].at, tip);
      if (d < nearest)
        {
          nearest = d;
          trim.from = trim.to = i;
        }
    }
  g_array_append_val (piece->trims, trim);
}

void
sq_piece_remake_cut (SqPiece *piece)
{
  g_autoptr (GPtrArray) cut = piece->cut;
  g_autoptr (GArray) trims = piece->trims;

  piece->cut = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  piece->trims = g_array_new (FALSE, TRUE, sizeof (SqTrim));
  sq_piece_make_cut (piece);
  for (guint i = 0; i < trims->len; i++)
    {
      const SqTrim *trim = &g_array_index (trims, SqTrim, i);
      if (trim->why == SQ_WHY_DART)
        sq_piece_add_dart (piece, trim->run, sq_path_nodes (cut->pdata[trim->ring])[trim->from].at);
    }
}

/* A 64-bit multiply-and-fold hash of whole words; equal pieces only need to be found equal. */
typedef struct
{
  guint64 state;
} Digest;

static void
digest_word (Digest *d, guint64 word)
{
  d->state = (d->state ^ word) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
  d->state ^= d->state >> 32;
}

static void
digest_double (Digest *d, double value)
{
  guint64 word;
  memcpy (&word, &value, sizeof word);
  digest_word (d, word);
}

static void
digest_point (Digest *d, SqPoint p)
{
  digest_double (d, p.x);
  digest_double (d, p.y);
}

static void
digest_path (Digest *d, const SqPath *path)
{
  const SqNode *nodes = sq_path_nodes (path);
  guint n = sq_path_n_nodes (path);

  digest_word (d, n);
  for (guint i = 0; i < n; i++)
    {
      digest_point (d, nodes[i].at);
      digest_double (d, nodes[i].bulge);
      digest_word (d, nodes[i].tag);
    }
}

static void
digest_lists (Digest *d, const SqPiece *piece)
{
  for (guint i = 0; i < piece->runs->len; i++)
    {
      const SqRun *r = sq_piece_run (piece, i);
      digest_word (d, ((guint64) r->role << 32) | r->edge);
      digest_double (d, r->allowance_mm);
    }
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *m = &g_array_index (piece->marks, SqMark, i);
      digest_word (d, ((guint64) m->kind << 40) | ((guint64) m->count << 32) | (guint32) m->seam);
      digest_point (d, m->at);
      digest_double (d, m->angle_rad);
      digest_double (d, m->depth_mm);
      digest_double (d, m->station_mm);
      if (m->line != NULL)
        digest_path (d, m->line);
    }
  for (guint i = 0; i < piece->patches->len; i++)
    {
      const SqPatch *p = &g_array_index (piece->patches, SqPatch, i);
      const SqPoint3 vectors[] = { p->at, p->ex, p->ey };
      digest_word (d, p->kind);
      digest_path (d, p->region);
      for (guint k = 0; k < G_N_ELEMENTS (vectors); k++)
        {
          digest_double (d, vectors[k].x);
          digest_double (d, vectors[k].y);
          digest_double (d, vectors[k].z);
        }
      digest_point (d, p->origin);
      digest_point (d, p->along);
      digest_double (d, p->radius_mm);
    }
  for (guint i = 0; i < piece->corner_notches->len; i++)
    {
      const SqCornerNotch *c = &g_array_index (piece->corner_notches, SqCornerNotch, i);
      digest_word (d, ((guint64) c->corner << 1) | (c->dart ? 1 : 0));
      digest_double (d, c->leg_mm);
    }
  for (guint i = 0; i < piece->skirts->len; i++)
    {
      const SqSkirt *s = &g_array_index (piece->skirts, SqSkirt, i);
      digest_word (d, s->edge);
      digest_double (d, s->depth_mm);
    }
}

static guint64
digest_of (const SqPiece *piece)
{
  Digest d = { 1 };

  digest_word (&d, piece->role);
  digest_word (&d, ((guint64) piece->ordinal << 32) | piece->n_ordinal);
  digest_word (&d, ((guint64) piece->sides << 32) | (piece->hole << 1) | (piece->upper ? 1 : 0));
  digest_word (&d, ((guint64) piece->cloth << 32) | piece->count);
  for (guint i = 0; i < piece->sew->len; i++)
    {
      digest_path (&d, sq_piece_sew (piece, i));
      digest_path (&d, sq_piece_cut (piece, i));
    }
  digest_lists (&d, piece);
  digest_double (&d, piece->grain_rad);
  digest_word (&d, piece->turns);
  digest_word (&d, (piece->phase.along ? 1 : 0) | (piece->phase.across ? 2 : 0));
  digest_point (&d, piece->phase.anchor);
  digest_double (&d, piece->phase.along_mm);
  digest_double (&d, piece->phase.across_mm);
  return d.state;
}

static void
count_ordinals (SqCover *cover)
{
  guint n[SQ_N_PIECE_ROLES] = { 0 };

  for (guint i = 0; i < cover->pieces->len; i++)
    {
      SqPiece *piece = g_ptr_array_index (cover->pieces, i);
      piece->ordinal = n[piece->role]++;
    }
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      SqPiece *piece = g_ptr_array_index (cover->pieces, i);
      piece->n_ordinal = n[piece->role];
    }
}

void
sq_making_seal (SqMaking *making)
{
  SqCover *cover = making->cover;

  count_ordinals (cover);
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      SqPiece *piece = g_ptr_array_index (cover->pieces, i);
      sq_piece_measure (piece);
      piece->digest = digest_of (piece);
      for (guint k = 0; making->before != NULL && k < making->before->pieces->len; k++)
        {
          SqPiece *old = g_ptr_array_index (making->before->pieces, k);
          if (old->digest != piece->digest || old->role != piece->role)
            continue;
          g_ptr_array_index (cover->pieces, i) = sq_piece_ref (old);
          sq_piece_unref (piece);
          break;
        }
    }
}
