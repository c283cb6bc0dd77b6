/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The keys of the job file: which stand on which object, what they mean and which words they
 * take. Internal to the room. */
#pragma once

#include "exchange/fields.h"
#include "job/job.h"

#define SQ_JOB_FORMAT "squab job"
#define SQ_JOB_VERSION 1

/* Records: SqJob, SqCushion, SqCorner, SqCloth, SqStripe, SqFoam, SqKeptLay. */
extern const SqFields sq_job_keys;
extern const SqFields sq_cushion_keys;
extern const SqFields sq_corner_keys;
extern const SqFields sq_cloth_keys;
extern const SqFields sq_stripe_keys;
extern const SqFields sq_foam_keys;
extern const SqFields sq_kept_lay_keys;

/* What is more than one value: job-reader.c and job-writer.c. */
gboolean sq_read_cushions (const SqJson *json, guint token, gpointer job, GError **error);
gboolean sq_read_cloths (const SqJson *json, guint token, gpointer job, GError **error);
gboolean sq_read_foams (const SqJson *json, guint token, gpointer job, GError **error);
gboolean sq_read_stripes (const SqJson *json, guint token, gpointer cloth, GError **error);
gboolean sq_read_bow (const SqJson *json, guint token, gpointer corner, GError **error);
gboolean sq_read_curve (const SqJson *json, guint token, gpointer corner, GError **error);
/* Looks over lists that are read, and gives ids that are absent. */
gboolean sq_check_stock (const SqJson *json, guint token, gpointer cloth, GError **error);
gboolean sq_check_flaws (const SqJson *json, guint token, gpointer cloth, GError **error);
gboolean sq_check_pins (const SqJson *json, guint token, gpointer job, GError **error);
void sq_write_cushions (SqJsonWriter *writer, const char *key, gconstpointer job);
void sq_write_cloths (SqJsonWriter *writer, const char *key, gconstpointer job);
void sq_write_foams (SqJsonWriter *writer, const char *key, gconstpointer job);
void sq_write_stripes (SqJsonWriter *writer, const char *key, gconstpointer cloth);
void sq_write_outline (SqJsonWriter *writer, const char *key, gconstpointer cushion);
void sq_write_holes (SqJsonWriter *writer, const char *key, gconstpointer cushion);
void sq_write_bow (SqJsonWriter *writer, const char *key, gconstpointer corner);
void sq_write_curve (SqJsonWriter *writer, const char *key, gconstpointer corner);

/* The same of what is about papers: job-kept.c. */
gboolean sq_read_revision (const SqJson *json, guint token, gpointer job, GError **error);
gboolean sq_read_paper_kinds (const SqJson *json, guint token, gpointer job, GError **error);
gboolean sq_read_kept_lays (const SqJson *json, guint token, gpointer job, GError **error);
gboolean sq_read_kept_revision (const SqJson *json, guint token, gpointer lay, GError **error);
gboolean sq_read_cut (const SqJson *json, guint token, gpointer piece, GError **error);
void sq_write_revision (SqJsonWriter *writer, const char *key, gconstpointer job);
void sq_write_paper_kinds (SqJsonWriter *writer, const char *key, gconstpointer job);
void sq_write_kept_lays (SqJsonWriter *writer, const char *key, gconstpointer job);
void sq_write_kept_revision (SqJsonWriter *writer, const char *key, gconstpointer lay);
void sq_write_cut (SqJsonWriter *writer, const char *key, gconstpointer piece);
