/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program: its windows, its keys, and the files it is given. */
#pragma once

#include <gtk/gtk.h>

#define SQ_TYPE_APPLICATION (sq_application_get_type ())
G_DECLARE_FINAL_TYPE (SqApplication, sq_application, SQ, APPLICATION, GtkApplication)

SqApplication *sq_application_new (void);

/* A window stays, so no other is closed. */
void sq_application_stop_quitting (SqApplication *application);
