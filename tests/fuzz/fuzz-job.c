/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Job files: refused with a reason, or a job whose text reads back to the same text. */
#include "fuzz.h"

#include "base/error.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

#include <string.h>

static void
check_refusal (const GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == SQ_ERROR);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_cmpuint (strlen (error->message), >, 0);
}

/* What was written is read, and written the same. */
static void
check_written (const SqJob *job, const SqDefaults *defaults)
{
  g_autofree char *text = sq_job_write (job);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqJob) again = sq_job_read (text, -1, defaults, &error);
  g_autofree char *text_again = NULL;

  g_assert_no_error (error);
  text_again = sq_job_write (again);
  g_assert_cmpstr (text_again, ==, text);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  SqDefaults defaults, unused;
  g_autoptr (GError) error = NULL;
  g_autoptr (SqJob) job = NULL;

  sq_defaults_builtin (&defaults);
  job = sq_job_read ((const char *) data, (gssize) size, &defaults, &error);
  if (job != NULL)
    check_written (job, &defaults);
  else
    check_refusal (error);
  g_clear_error (&error);
  if (!sq_defaults_read ((const char *) data, (gssize) size, &unused, &error))
    check_refusal (error);
  return 0;
}
