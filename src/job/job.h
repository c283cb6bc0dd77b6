/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The maker's job: one immutable value of inputs, shared by reference. An edit makes a new one that
 * shares every cushion it did not touch. */
#pragma once

#include "base/length.h"
#include "job/cushion.h"
#include "job/defaults.h"

typedef enum
{
  SQ_GIVEN_FOAM_DENSITY = 1 << 0,
  SQ_GIVEN_FOAM_IFD = 1 << 1,
} SqFoamGiven;

typedef struct
{
  SqId id;
  SqFoamKind kind;
  double density_kg_m3;
  double ifd_n;  /* at 25 % */
  guint32 given; /* of SqFoamGiven */
  GRefString *unknown;
} SqFoam;

/* Immutable once shared: fill a fresh one or a copy, then hand it over. */
typedef struct
{
  gint ref_count;
  SqUnit units; /* how lengths are shown, no more */
  gboolean units_given;
  GRefString *title, *customer, *notes; /* NULL: none */
  GPtrArray *cushions;                  /* of const SqCushion, owned references */
  GPtrArray *cloths;                    /* of const SqCloth, owned references */
  GArray *foams;                        /* of SqFoam */
  SqDefaults defaults;
  GRefString *unknown;
} SqJob;

/* A job without cushions. @defaults is copied. */
SqJob *sq_job_new (const SqDefaults *defaults);
/* A copy to change before sharing it; cushions and cloths are shared. */
SqJob *sq_job_dup (const SqJob *job);
SqJob *sq_job_ref (const SqJob *job);
void sq_job_unref (SqJob *job);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqJob, sq_job_unref)

/* Borrowed, or NULL. */
const SqCushion *sq_job_cushion (const SqJob *job, SqId id);
const SqCloth *sq_job_cloth (const SqJob *job, SqId id);
/* The first foam of @kind, or NULL. */
const SqFoam *sq_job_foam (const SqJob *job, SqFoamKind kind);
/* An id that no cushion (cloth) of the job has. */
SqId sq_job_new_cushion_id (const SqJob *job);
SqId sq_job_new_cloth_id (const SqJob *job);

/* Edits: each gives a new job. @cushion takes the place of the one with its id, or comes last. */
SqJob *sq_job_with_cushion (const SqJob *job, const SqCushion *cushion);
SqJob *sq_job_without_cushion (const SqJob *job, SqId id);
/* The cushion @by places further down (up: < 0); NULL where there is no such place. */
SqJob *sq_job_with_cushion_moved (const SqJob *job, SqId id, int by);
SqJob *sq_job_with_cloth (const SqJob *job, const SqCloth *cloth);
