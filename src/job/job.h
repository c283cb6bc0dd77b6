/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The maker's job: one immutable value of inputs, shared by reference. An edit makes a new one that
 * shares every cushion it did not touch. */
#pragma once

#include "base/length.h"
#include "job/cushion.h"
#include "job/defaults.h"
#include "job/kept-lay.h"
#include "job/laying.h"
#include "job/papers.h"
#include "job/rates.h"

typedef enum
{
  SQ_GIVEN_FOAM_DENSITY = 1 << 0,
  SQ_GIVEN_FOAM_IFD = 1 << 1,
  SQ_GIVEN_FOAM_PRICE = 1 << 2,
  SQ_GIVEN_FOAM_SHEET_LENGTH = 1 << 3,
  SQ_GIVEN_FOAM_SHEET_WIDTH = 1 << 4,
  SQ_GIVEN_FOAM_KERF = 1 << 5,
} SqFoamGiven;

typedef struct
{
  SqId id;
  SqFoamKind kind;
  double density_kg_m3;
  double ifd_n; /* at 25 % */
  double price; /* of a cubic metre, in the maker's money */
  double sheet_length_mm, sheet_width_mm;
  double kerf_mm; /* what a saw takes between two parts */
  guint32 given;  /* of SqFoamGiven */
  GRefString *unknown, *unknown_sheet;
} SqFoam;

typedef enum
{
  SQ_GIVEN_UNITS = 1 << 0,
  SQ_GIVEN_SHEET = 1 << 1,
  SQ_GIVEN_PAPER_KINDS = 1 << 2,
  SQ_GIVEN_PATTERN_SHEET = 1 << 3,
  SQ_GIVEN_PATTERN_MARGIN = 1 << 4,
  SQ_GIVEN_PATTERN_OVERLAP = 1 << 5,
  SQ_GIVEN_LABEL_COLUMNS = 1 << 16,
  SQ_GIVEN_LABEL_ROWS = 1 << 17,
  SQ_GIVEN_LABEL_SIDE = 1 << 18,
  SQ_GIVEN_LABEL_TOP = 1 << 19,
  SQ_GIVEN_LABEL_ACROSS = 1 << 20,
  SQ_GIVEN_LABEL_ALONG = 1 << 21,
} SqJobGiven;

/* The bit of SqJobGiven that says that a rate is the maker's own. */
#define SQ_GIVEN_RATE(rate) (1U << (8 + (rate)))

/* Immutable once shared: fill a fresh one or a copy, then hand it over. */
typedef struct
{
  gint ref_count;
  SqUnit units;                         /* how lengths are shown, no more */
  guint32 given;                        /* of SqJobGiven */
  GRefString *title, *customer, *notes; /* NULL: none */
  GPtrArray *cushions;                  /* of const SqCushion, owned references */
  GPtrArray *cloths;                    /* of const SqCloth, owned references */
  GArray *foams;                        /* of SqFoam */
  guint revision;                       /* of the papers, from 1: see sq_revision_name */
  SqPapersChoice papers;
  SqLaying laying;
  GArray *pins; /* of SqPin, at most one of each copy; those of a piece or on a piece of cloth
                           that is not there count for nothing */
  GPtrArray *kept_lays; /* of const SqKeptLay, owned references; at most one of each cloth */
  SqRates rates;
  GRefString *unknown_rates;
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

#define sq_job_pin(job, i) (&g_array_index ((job)->pins, SqPin, (i)))

/* Borrowed, or NULL. */
const SqCushion *sq_job_cushion (const SqJob *job, SqId id);
const SqCloth *sq_job_cloth (const SqJob *job, SqId id);
/* The first foam of @kind, or NULL. */
const SqFoam *sq_job_foam (const SqJob *job, SqFoamKind kind);
/* Whether @rate is the maker's own; else the defaults' sample holds. */
gboolean sq_job_has_rate (const SqJob *job, SqRate rate);
double sq_job_rate (const SqJob *job, SqRate rate);
/* The lay of @cloth (0: of none that has an id) that was printed. Borrowed, or NULL. */
const SqKeptLay *sq_job_kept_lay (const SqJob *job, SqId cloth);
/* The sheet of papers that are read: Letter where lengths are in inches and the job names none, else
 * A4. */
SqSheet sq_job_sheet (const SqJob *job);
/* What the job says of patterns and labels, the rest from its sheet and its defaults. */
SqPatternChoice sq_job_pattern_choice (const SqJob *job);
SqLabelSheet sq_job_label_sheet (const SqJob *job);
/* An id that no cushion (cloth) of the job has. */
SqId sq_job_new_cushion_id (const SqJob *job);
SqId sq_job_new_cloth_id (const SqJob *job);

/* Edits: each gives a new job. @cushion takes the place of the one with its id, or comes last. */
SqJob *sq_job_with_cushion (const SqJob *job, const SqCushion *cushion);
/* Its pins go with it. */
SqJob *sq_job_without_cushion (const SqJob *job, SqId id);
/* The cushion @by places further down (up: < 0); NULL where there is no such place. */
SqJob *sq_job_with_cushion_moved (const SqJob *job, SqId id, int by);
SqJob *sq_job_with_cloth (const SqJob *job, const SqCloth *cloth);
/* Its stock, flaws, pins and kept lay go with it; cushions that name it still do. */
SqJob *sq_job_without_cloth (const SqJob *job, SqId id);
/* @lay takes the place of the one kept of its cloth. */
SqJob *sq_job_with_kept_lay (const SqJob *job, const SqKeptLay *lay);
SqJob *sq_job_without_kept_lay (const SqJob *job, SqId cloth);
/* With @value for @rate; NaN: as the defaults have it. */
SqJob *sq_job_with_rate (const SqJob *job, SqRate rate, double value);
/* With @price for a cubic metre of the first foam of @kind, which is added where there is none;
 * NaN: no price. */
SqJob *sq_job_with_foam_price (const SqJob *job, SqFoamKind kind, double price);
