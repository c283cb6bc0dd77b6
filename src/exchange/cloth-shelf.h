/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shelf: cloths kept for other jobs, in a file of the user's. Its cloths are written as those
 * of a job are. */
#pragma once

#include "job/cloth.h"

/* Where the user's shelf is: squab/cloths.json below the user's data. New text. */
char *sq_cloth_shelf_path (void);

/* The cloths in the file @path, in its order; none where there is no file. New array of SqCloth, or
 * NULL with @error as of sq_job_load(). */
GPtrArray *sq_cloth_shelf_load (const char *path, GError **error);

/* Puts @cloth on the shelf, in the place of the one of the same name, else last; without its stock
 * and flaws, which are a job's: another job may have used them up. The file is read
 * anew, so what another program put there stays, and is written as sq_file_save() does. FALSE with
 * @error: the shelf is as it was. */
gboolean sq_cloth_shelf_put (const char *path, const SqCloth *cloth, GError **error);

/* Takes the cloths called @name off it, in the same way; fine where there is none. */
gboolean sq_cloth_shelf_take_off (const char *path, const char *name, GError **error);
