/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A flow of blocks, one below the other, onto as many pages as they take. Every page has a head
 * after the first, and a foot: whose it is, revision, date, page n of N. Internal to the room. */
#pragma once

#include "papers/paper.h"
#include "papers/typeset.h"

typedef struct _SqPages SqPages;

/* Begins with an empty page of @spec's sheet, upright or lying. @title stands in foots and heads. */
SqPages *sq_pages_new (const SqPaperSpec *spec, gboolean is_lying, const char *title);
/* The same with pages of @size_mm. */
SqPages *sq_pages_new_sized (const SqPaperSpec *spec, SqVector size_mm, const char *title);
/* So many pages follow that are none of these: "Page 1 of n" counts them. */
void sq_pages_set_following (SqPages *pages, guint n_pages);
/* Sets the foots and gives the pages to @out (of SqPage). @pages is gone. */
void sq_pages_end (SqPages *pages, GArray *out);

/* Of the page now: what may be written on, mm from its lower left corner. */
SqBox sq_pages_area (const SqPages *pages);
/* What is still free of it, downwards from the last block. */
double sq_pages_room_mm (const SqPages *pages);
/* Its scene, to add to. Another one after each new page. */
SqSceneBuilder *sq_pages_scene (SqPages *pages);

/* A block across the area, @height_mm high, on a new page if there is no room for it and, below
 * it, for @with_mm of what follows and must not be torn from it. Its column; the next block comes
 * below it. */
SqColumn sq_pages_block (SqPages *pages, double height_mm, double with_mm);
/* Room left empty below the last block; none at a page's head. */
void sq_pages_gap (SqPages *pages, double height_mm);
/* What follows begins on a new page, unless this one is empty. */
void sq_pages_break (SqPages *pages);

/* The page now is where @text, a line, leads in the outline. Copied. */
void sq_pages_bookmark (SqPages *pages, const char *text);

/* What goes on: heads the pages that come while it lasts ("Harbour stripe, continued"). NULL: none.
 * Copied. */
void sq_pages_set_running (SqPages *pages, const char *heading);

/* Blocks of one kind each: a heading; a paragraph, that may go over pages line by line; a fine line
 * across. */
void sq_pages_heading (SqPages *pages, const char *text, double with_mm);
void sq_pages_paragraph (SqPages *pages, const SqType *type, const char *text);
void sq_pages_rule (SqPages *pages);

/* The type that most is set in, and others on the same page. */
extern const SqType sq_type_text, sq_type_small, sq_type_heading, sq_type_title;
