/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/plan-problem-json.h"

#include "exchange/plan-piece-json.h"
#include "words/problems.h"

/* Where a problem is: "at" says of what kind "id" is. Pieces have the ids of this file. */
static void
add_place (SqJsonWriter *json, const SqPlace *place)
{
  static const char *const names[] = { "job", "cushion", "corner", "edge", "piece", "seam", "key" };

  sq_json_add_string (json, "at", names[place->kind]);
  switch (place->kind)
    {
    case SQ_AT_JOB:
      sq_json_add_text (json, "id", "null");
      break;
    case SQ_AT_CUSHION:
      sq_json_add_integer (json, "id", place->cushion);
      break;
    case SQ_AT_CORNER:
    case SQ_AT_EDGE:
    case SQ_AT_SEAM:
      sq_json_add_integer (json, "id", place->item);
      break;
    case SQ_AT_PIECE:
      sq_json_add_integer (json, "id", sq_plan_piece_id (place->item));
      break;
    case SQ_AT_KEY:
      sq_json_add_string (json, "id", place->key);
      break;
    }
}

void
sq_plan_add_problem (SqJsonWriter *json, const char *key, const SqProblem *problem,
                     const SqCover *cover, const SqLengthStyle *style)
{
  g_autofree char *text = sq_words_problem (problem, cover, style);

  sq_json_open_object (json, key, SQ_JSON_LINE);
  sq_json_add_string (json, "code", sq_problem_code_name (problem->code));
  sq_json_add_string (json, "severity", sq_severity_name (problem->severity));
  add_place (json, &problem->place);
  sq_json_add_string (json, "text", text);
  sq_json_close (json);
}
