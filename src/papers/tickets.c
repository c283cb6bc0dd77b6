/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cut tickets: what goes with each lay from the roll to the bundles, a part of a page to cut off. Who
 * spreads reads how many plies and how long; who cuts and counts ticks and signs. */
#include "papers/kinds.h"
#include "papers/lay-drawing.h"
#include "papers/tables.h"
#include "words/cautions.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/strip-words.h"
#include "words/text-table.h"
#include "words/ticket-words.h"

#define GAP_MM 2.0
/* Of the drawing: on half a page, and on one that is the ticket's own. */
#define SMALL_DRAWING_MM 24.0
#define LARGE_DRAWING_MM 60.0
#define HALF_PAGE 0.56       /* or a little more: the other ticket may be shorter */
#define LEAST_DRAWING_MM 8.0 /* what would be lower shows nothing */

#define BOX_MM 4.6
#define BOX_ROW_MM 8.6
#define RULE_GAP_MM 1.5

/* Between two tickets. */
#define SNIP_MM 9.0
#define SCISSORS_MM 5.0

static const SqType cloth_type = { 6.4, TRUE, SQ_TONE_INK };
static const SqType plies_type = { 5.2, TRUE, SQ_TONE_INK };

typedef struct
{
  SqPages *pages;
  const SqPaperSpec *spec;
  SqSpreads *spreads;
  char *cautions; /* at the end of each */
} Tickets;

static double
width_mm (const Tickets *tickets)
{
  SqBox area = sq_pages_area (tickets->pages);

  return area.max.x - area.min.x;
}

/* Two texts in a line: @right is short and has the room it wants. */
static void
add_pair (const Tickets *tickets, const SqType *type, const char *left, const char *right)
{
  SqColumn column = sq_pages_block (tickets->pages, sq_type_height_mm (type, 1), 0);
  double right_mm = fmin (sq_text_width_em (right, type->bold) * type->em_mm + 0.01,
                          column.width_mm / 2);
  SqColumn end = { column.left_mm + column.width_mm - right_mm, column.top_mm, right_mm };

  column.width_mm -= right_mm + 2 * type->em_mm;
  sq_set_line (sq_pages_scene (tickets->pages), &column, SQ_ALIGN_START, type, left);
  sq_set_line (sq_pages_scene (tickets->pages), &end, SQ_ALIGN_END, type, right);
}

/* --- the head --------------------------------------------------------------------------------- */

static char *
job_text (const SqJob *job)
{
  g_autofree char *title = sq_words_paper_title (job);
  g_autofree char *customer = sq_text_clean (job->customer != NULL ? job->customer : "");

  if (customer[0] == '\0')
    return g_steal_pointer (&title);
  g_autofree char *for_customer = sq_words_for_customer (customer);
  return g_strdup_printf ("%s · %s", title, for_customer);
}

static void
add_head (const Tickets *tickets, const SqSpread *spread)
{
  const SqJob *job = tickets->spec->lays->plan->job;
  const SqClothLay *own = sq_spread_cloth (spread);
  g_autofree char *cloth = sq_words_cloth (sq_plan_cloth (spread->lays->plan, own->cloth));
  g_autofree char *lay = sq_words_ticket_lay (spread);
  g_autofree char *named = job_text (job);
  g_autofree char *state = sq_words_paper_state (job, tickets->spec->date);
  g_autofree char *plies = sq_words_ticket_plies (spread, &tickets->spec->style);
  g_autofree char *from = sq_words_ticket_from (spread, &tickets->spec->style);
  const char *trim = sq_words_trim_first (spread->lays, own, spread->strip);
  const char *up = sq_words_ticket_up (spread);

  add_pair (tickets, &cloth_type, cloth, lay);
  add_pair (tickets, &sq_type_small, named, state);
  sq_pages_gap (tickets->pages, GAP_MM);
  add_pair (tickets, &plies_type, plies, sq_words_side_up (tickets->spec->wrong_side));
  sq_pages_paragraph (tickets->pages, &sq_type_text, from);
  if (trim != NULL)
    sq_pages_paragraph (tickets->pages, &sq_type_small, trim);
  if (up != NULL)
    sq_pages_paragraph (tickets->pages, &sq_type_text, up);
}

static double
head_height_mm (const Tickets *tickets, const SqSpread *spread)
{
  const char *trim = sq_words_trim_first (spread->lays, sq_spread_cloth (spread), spread->strip);

  return sq_type_height_mm (&cloth_type, 1) + sq_type_height_mm (&sq_type_small, 1) + GAP_MM
         + sq_type_height_mm (&plies_type, 1)
         + sq_type_height_mm (&sq_type_text, sq_words_ticket_up (spread) != NULL ? 2 : 1)
         + (trim != NULL ? sq_paragraph_height_mm (width_mm (tickets), &sq_type_small, trim) : 0);
}

/* --- the lay ---------------------------------------------------------------------------------- */

static SqLaid
laid_of (const Tickets *tickets, const SqSpread *spread)
{
  return (SqLaid){ spread->lays, spread->cloth, spread->strip, spread->ply_mm,
                   tickets->spec->wrong_side };
}

static gboolean
is_drawn (const Tickets *tickets, const SqSpread *spread)
{
  SqLaid laid = laid_of (tickets, spread);

  return sq_lay_drawing_height_mm (&laid, width_mm (tickets), SMALL_DRAWING_MM) >= LEAST_DRAWING_MM;
}

/* With its words and what is free above it, the drawing up to @most_mm. */
static double
drawing_height_mm (const Tickets *tickets, const SqSpread *spread, double most_mm)
{
  SqLaid laid = laid_of (tickets, spread);
  double height_mm = sq_lay_drawing_height_mm (&laid, width_mm (tickets), most_mm);

  return height_mm < LEAST_DRAWING_MM ? 0
                                      : GAP_MM + height_mm + sq_type_height_mm (&sq_type_small, 1);
}

static void
add_drawing (const Tickets *tickets, const SqSpread *spread, double most_mm)
{
  SqLaid laid = laid_of (tickets, spread);
  double whole_mm = drawing_height_mm (tickets, spread, most_mm);

  if (!is_drawn (tickets, spread))
    {
      sq_pages_paragraph (tickets->pages, &sq_type_small, sq_words_ticket_see_layout ());
      return;
    }
  SqColumn column = sq_pages_block (tickets->pages, whole_mm, 0);
  SqSceneBuilder *scene = sq_pages_scene (tickets->pages);
  double line_mm = sq_type_height_mm (&sq_type_small, 1), bottom_mm = column.top_mm - whole_mm;
  SqBox box = { { column.left_mm, bottom_mm + line_mm },
                { column.left_mm + column.width_mm, column.top_mm - GAP_MM } };
  SqColumn below = { column.left_mm, box.min.y, column.width_mm };

  sq_lay_drawing_add (scene, &laid, box);
  sq_set_line (scene, &below, SQ_ALIGN_START, &sq_type_small,
               sq_words_ticket_lie (tickets->spec->wrong_side));
}

/* --- to tick and to sign ---------------------------------------------------------------------- */

/* @word and a rule after it, as far as @right_mm; gives where the next one may begin. */
static double
add_rule (SqSceneBuilder *scene, double left_mm, double top_mm, double right_mm, const char *word)
{
  double word_mm = sq_text_width_em (word, FALSE) * sq_type_text.em_mm + 0.01;
  SqColumn column = { left_mm, top_mm, word_mm };
  double low = top_mm - sq_type_height_mm (&sq_type_text, 1) + 0.6;

  sq_set_line (scene, &column, SQ_ALIGN_START, &sq_type_text, word);
  sq_scene_begin_stroke (scene, SQ_PEN_RULE);
  sq_scene_add_line (scene, sq_point (left_mm + word_mm + RULE_GAP_MM, low),
                     sq_point (right_mm, low));
  return right_mm + 2 * RULE_GAP_MM;
}

/* A box to tick and what it is for; gives where a rule may begin. */
static double
add_box (SqSceneBuilder *scene, double left_mm, double top_mm, SqTicketBox box)
{
  const char *word = sq_words_ticket_box (box);
  SqType bold = sq_type_text;
  bold.bold = TRUE;
  double word_mm = sq_text_width_em (word, TRUE) * bold.em_mm + 0.01;
  double middle_mm = top_mm - sq_type_height_mm (&bold, 1) / 2;
  SqColumn column = { left_mm + BOX_MM + RULE_GAP_MM, top_mm, word_mm };
  g_autoptr (SqPath) square = sq_path_new_rectangle (left_mm, middle_mm - BOX_MM / 2,
                                                     left_mm + BOX_MM, middle_mm + BOX_MM / 2);

  sq_scene_stroke_path (scene, SQ_PEN_RULE, square);
  sq_set_line (scene, &column, SQ_ALIGN_START, &bold, word);
  return column.left_mm + word_mm + RULE_GAP_MM;
}

/* The first-off has a row of its own, with its day; the others share two. */
static void
add_boxes (const Tickets *tickets)
{
  SqColumn column = sq_pages_block (tickets->pages, GAP_MM + 3 * BOX_ROW_MM, 0);
  SqSceneBuilder *scene = sq_pages_scene (tickets->pages);
  double top_mm = column.top_mm - GAP_MM - 1.5, half_mm = column.width_mm / 2;
  double from_mm = add_box (scene, column.left_mm, top_mm, SQ_TICKET_FIRST_OFF);
  double right_mm = column.left_mm + column.width_mm;

  from_mm = add_rule (scene, from_mm, top_mm, right_mm - 0.3 * column.width_mm,
                      sq_words_ticket_by ());
  add_rule (scene, from_mm, top_mm, right_mm, sq_words_ticket_date ());
  for (guint box = SQ_TICKET_SPREAD; box < SQ_N_TICKET_BOXES; box++)
    {
      guint at = box - SQ_TICKET_SPREAD;
      double left_mm = column.left_mm + at % 2 * (half_mm + RULE_GAP_MM);
      double own_mm = top_mm - (at / 2 + 1) * BOX_ROW_MM;
      from_mm = add_box (scene, left_mm, own_mm, (SqTicketBox) box);
      add_rule (scene, from_mm, own_mm, left_mm + half_mm - RULE_GAP_MM, sq_words_ticket_by ());
    }
}

/* --- tickets ---------------------------------------------------------------------------------- */

/* All but the drawing. */
static double
texts_height_mm (const Tickets *tickets, const SqSpread *spread, const SqSheetTable *table)
{
  return head_height_mm (tickets, spread) + sq_pages_table_height_mm (tickets->pages, table)
         + GAP_MM + 3 * BOX_ROW_MM
         + sq_paragraph_height_mm (width_mm (tickets), &sq_type_small, tickets->cautions);
}

/* How high its drawing may be: small where the ticket is about half a page then. */
static double
most_drawing_mm (const Tickets *tickets, const SqSpread *spread, double texts_mm)
{
  SqBox area = sq_pages_area (tickets->pages);
  double small_mm = texts_mm + drawing_height_mm (tickets, spread, SMALL_DRAWING_MM);

  return small_mm <= HALF_PAGE * (area.max.y - area.min.y) ? SMALL_DRAWING_MM : LARGE_DRAWING_MM;
}

/* A dashed line across with a pair of scissors on it, open to the right. */
static void
add_snip (const Tickets *tickets)
{
  SqColumn column = sq_pages_block (tickets->pages, SNIP_MM, 0);
  SqSceneBuilder *scene = sq_pages_scene (tickets->pages);
  SqPoint pivot = { column.left_mm + 0.6 * SCISSORS_MM, column.top_mm - SNIP_MM / 2 };

  sq_scene_begin_stroke (scene, SQ_PEN_SEW);
  sq_scene_add_line (scene, sq_point (column.left_mm + 1.4 * SCISSORS_MM, pivot.y),
                     sq_point (column.left_mm + column.width_mm, pivot.y));
  for (int side = -1; side <= 1; side += 2)
    {
      SqVector blade = sq_turned (sq_point (0.55 * SCISSORS_MM, 0), side * 0.3);
      SqPoint grip = sq_sub (pivot, sq_scale (blade, 0.7));
      sq_scene_begin_stroke (scene, SQ_PEN_INK);
      sq_scene_add_line (scene, grip, sq_add (pivot, blade));
      sq_scene_add_circle (scene, sq_sub (pivot, sq_scale (blade, 0.95)), 0.14 * SCISSORS_MM);
    }
}

/* On the page there is, if it goes there; else on the next. */
static void
add_ticket (const Tickets *tickets, guint i)
{
  const SqSpread *spread = sq_spreads_at (tickets->spreads, i);
  g_autofree char *name = sq_words_ticket_name (spread);
  SqSheetTable table;

  sq_words_ticket_table (&table, tickets->spreads, i);
  double texts_mm = texts_height_mm (tickets, spread, &table);
  double most_mm = most_drawing_mm (tickets, spread, texts_mm);
  double height_mm = texts_mm + drawing_height_mm (tickets, spread, most_mm);
  sq_pages_set_running (tickets->pages, NULL);
  if (i > 0 && sq_pages_room_mm (tickets->pages) >= SNIP_MM + height_mm)
    add_snip (tickets);
  else
    sq_pages_break (tickets->pages);
  sq_pages_bookmark (tickets->pages, name);
  sq_pages_set_running (tickets->pages, name);
  add_head (tickets, spread);
  add_drawing (tickets, spread, most_mm);
  sq_pages_table (tickets->pages, &table);
  add_boxes (tickets);
  sq_pages_paragraph (tickets->pages, &sq_type_small, tickets->cautions);
  sq_sheet_table_clear (&table);
}

/* What no ticket has, after those of its cloth. */
static gboolean
add_unlaid (const Tickets *tickets, guint index)
{
  g_autofree char *text = sq_words_ticket_unlaid (tickets->spreads, index);
  SqType bold = sq_type_text;

  if (text == NULL)
    return FALSE;
  const SqPlan *plan = tickets->spec->lays->plan;
  g_autofree char *cloth = sq_words_cloth (
      sq_plan_cloth (plan, sq_lays_cloth (tickets->spec->lays, index)->cloth));
  bold.bold = TRUE;
  sq_pages_set_running (tickets->pages, NULL);
  sq_pages_gap (tickets->pages, 2 * GAP_MM);
  sq_pages_paragraph (tickets->pages, &bold, cloth);
  sq_pages_paragraph (tickets->pages, &sq_type_text, text);
  return TRUE;
}

static char *
cautions_text (const SqPlan *plan)
{
  g_autoptr (GPtrArray) cautions = sq_words_cutting_cautions (plan);

  g_ptr_array_add (cautions, NULL);
  return g_strjoinv (" ", (char **) cautions->pdata);
}

void
sq_tickets_make (SqPaper *paper, const SqPaperSpec *spec)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  g_autoptr (SqSpreads) spreads = sq_spreads_new (spec->lays);
  g_autofree char *cautions = cautions_text (spec->lays->plan);
  Tickets tickets = { sq_pages_new (spec, FALSE, title), spec, spreads, cautions };
  gboolean any = spreads->all->len > 0;

  for (guint i = 0, next = 0; i < spec->lays->cloths->len; i++)
    {
      for (; next < spreads->all->len && sq_spreads_at (spreads, next)->cloth == i; next++)
        add_ticket (&tickets, next);
      any |= add_unlaid (&tickets, i);
    }
  if (!any)
    {
      sq_pages_heading (tickets.pages, sq_words_paper_kind (SQ_PAPER_TICKETS), 0);
      sq_pages_paragraph (tickets.pages, &sq_type_text, sq_words_no_tickets ());
    }
  sq_pages_end (tickets.pages, paper->pages);
}
