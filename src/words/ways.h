/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The comparison of ways of building, in words: names, times, money. All texts but labels are new and
 * yours to free. */
#pragma once

#include "plan/ways.h"

/* "Boxed with a welt". Static. */
const char *sq_words_way (const SqWay *way);
/* Why it can't be built, as a sentence or two; "" where it can. */
char *sq_words_way_why (const SqWay *way, const SqLengthStyle *style);

/* "1 h 25 min", to the minute. */
char *sq_words_minutes (double minutes);
/* In the maker's money, without a sign of it: "56.20". */
char *sq_words_money (double money, const SqLengthStyle *style);
/* What the way costs and, after @between, what that lacks: "36.26 + cloth". */
char *sq_words_way_cost (const SqWay *way, const char *between, const SqLengthStyle *style);
/* What cloth to buy, or, as long as it is not laid, how much cloth the pieces have: "2 1/4 yd", of
 * several cloths "Slate canvas 1/2 yd" each, @between them. */
char *sq_words_way_cloth (const SqWay *way, const char *between, const SqLengthStyle *style);
/* "1.55 cu ft", or that there is none. */
char *sq_words_way_foam (const SqWay *way, const SqLengthStyle *style);
/* All of it in one line, for those who hear it: name, whether it is in use, figures or why not. */
char *sq_words_way_summary (const SqWay *way, gboolean is_in_use, const SqLengthStyle *style);
/* How cost is reckoned and what it leaves out. Static. */
const char *sq_words_ways_reckoned (void);
/* Says that the rates of @job are samples, or partly; "" where all are the maker's own. Static. */
const char *sq_words_ways_samples (const SqJob *job);

/* What a rate is of, as a label: "Sewing, a metre of seam"; in inches it is a yard. Static. */
const char *sq_words_rate (SqRate rate, SqUnit unit);
/* What a rate in the job is to be multiplied by for that. */
double sq_words_rate_share (SqRate rate, SqUnit unit);

/* The comparison for every cushion of @job, with first lays, as plain text at most about 100 columns
 * wide. Ends with a line end. */
char *sq_words_ways (const SqJob *job, const SqLengthStyle *style);
