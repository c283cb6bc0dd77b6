/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The maker's rates and prices as fields; samples stand there dimly until there are own ones. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

#define SQ_TYPE_RATES_FIELDS (sq_rates_fields_get_type ())
G_DECLARE_FINAL_TYPE (SqRatesFields, sq_rates_fields, SQ, RATES_FIELDS, GtkWidget)

/* Rates of the job, and prices of its cloths and of the foams of its cushions. */
GtkWidget *sq_rates_fields_new (SqDocument *document);
