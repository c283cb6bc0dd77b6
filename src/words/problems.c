/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/problems.h"

#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>
#include <string.h>

/* What a sentence says of its problem, in the order of its %s. */
typedef enum
{
  SAY_NOTHING,
  SAY_CORNER, /* the place */
  SAY_EDGE,
  SAY_PIECE,
  SAY_FIRST, /* the facts, as lengths */
  SAY_SECOND,
  SAY_FIRST_COUNT, /* as whole numbers */
  SAY_BUILD,       /* of the cushion */
} Say;

#define N_SAYS 3

/* Where one code has several sentences, which fits. */
typedef enum
{
  ALWAYS,
  AT_EDGE,        /* the problem's place */
  SECOND_IS_NONE, /* the second fact is 0 or less */
  FIRST_IS_LESS,  /* the first fact, than the second */
  ZIP_IN_BOXING,
} When;

typedef struct
{
  SqProblemCode code;
  const char *key; /* only for problems at this key; NULL: any */
  When when;
  const char *text;
  Say says[N_SAYS];
} Sentence;

/* The first that fits is taken. */
static const Sentence sentences[] = {
  { SQ_PROBLEM_OUTLINE_MISSING,
    NULL,
    ALWAYS,
    N_ ("The outline has too few corners to be a seat. Draw three or more, or two joined by a "
        "curved edge."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_OUTLINE_CROSSES,
    NULL,
    ALWAYS,
    N_ ("The outline meets itself %s to the right and %s to the back of the drawing’s zero point. "
        "Move a corner there, so that no two edges touch."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_OUTLINE_EMPTY,
    NULL,
    ALWAYS,
    N_ ("The outline encloses nothing. Move its corners apart."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_EDGE_TOO_SHORT,
    NULL,
    ALWAYS,
    N_ ("Edge %s is only %s long. Take away one of its corners, or move them apart."),
    { SAY_EDGE, SAY_FIRST } },
  { SQ_PROBLEM_CURVE_UNFIT,
    NULL,
    ALWAYS,
    N_ ("The free curve of edge %s stands still somewhere, so no cloth can follow it. Move its "
        "handles apart, or make the edge straight."),
    { SAY_EDGE } },
  { SQ_PROBLEM_THICKNESS,
    NULL,
    ALWAYS,
    N_ ("A cushion %s thick can’t be made. Give the finished height of its sides, more than "
        "nothing."),
    { SAY_FIRST } },
  { SQ_PROBLEM_ALLOWANCE,
    "allowances.corner",
    ALWAYS,
    N_ ("The corner allowance is below zero. Make it larger, or take the usual allowances."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ALLOWANCE,
    "allowances.perimeter",
    ALWAYS,
    N_ ("The perimeter allowance is below zero. Make it larger, or take the usual allowances."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ALLOWANCE,
    "allowances.zip",
    ALWAYS,
    N_ ("The zip allowance is below zero. Make it larger, or take the usual allowances."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ALLOWANCE,
    "allowances.join",
    ALWAYS,
    N_ ("The join allowance is below zero. Make it larger, or take the usual allowances."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ALLOWANCE,
    "underside_wrap.depth",
    ALWAYS,
    N_ ("The depth of the underside wrap is below zero. Make it larger, or take the usual one."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ALLOWANCE,
    "zip.extension",
    ALWAYS,
    N_ ("The zip’s extension is below zero. Make it larger, or take the usual one."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ALLOWANCE,
    "zip.tuck",
    ALWAYS,
    N_ ("The tuck at the zip’s ends is below zero. Make it larger, or take the usual one."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ALLOWANCE,
    NULL,
    ALWAYS,
    N_ ("An allowance is below zero. Make it larger, or take the usual allowances."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_RADIUS_TOO_LARGE,
    NULL,
    SECOND_IS_NONE,
    N_ ("A radius of %2$s does not fit at corner %1$s, nor does any other. Make the corner sharp."),
    { SAY_CORNER, SAY_FIRST } },
  { SQ_PROBLEM_RADIUS_TOO_LARGE,
    NULL,
    ALWAYS,
    N_ ("A radius of %2$s does not fit at corner %1$s, where the largest is about %3$s. Make it "
        "smaller."),
    { SAY_CORNER, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_CLEARANCE_TOO_LARGE,
    NULL,
    AT_EDGE,
    N_ ("With a clearance of %2$s nothing of edge %1$s is left. Make it smaller."),
    { SAY_EDGE, SAY_FIRST } },
  { SQ_PROBLEM_CLEARANCE_TOO_LARGE,
    NULL,
    ALWAYS,
    N_ ("With clearances of %s nothing of the seat is left. Make them smaller."),
    { SAY_FIRST } },
  { SQ_PROBLEM_HOLE_OUTSIDE,
    NULL,
    ALWAYS,
    N_ ("The hole at corner %s reaches the edge of the seat. Move it inward, or make it smaller."),
    { SAY_CORNER } },
  { SQ_PROBLEM_HOLES_MEET,
    NULL,
    ALWAYS,
    N_ ("The hole at corner %s meets another one. Move them apart, or make one of both."),
    { SAY_CORNER } },
  { SQ_PROBLEM_HOLE_IN_FOLDED,
    NULL,
    ALWAYS,
    N_ ("A hole, here at corner %s, has no cloth for its sides in a cover with folded corners. Box "
        "the cushion, or take the hole away."),
    { SAY_CORNER } },
  { SQ_PROBLEM_CURVE_IN_FOLDED,
    NULL,
    AT_EDGE,
    N_ ("Edge %s is curved, so a folded skirt would not lie flat there. Make it straight, or box "
        "the cushion."),
    { SAY_EDGE } },
  { SQ_PROBLEM_CURVE_IN_FOLDED,
    NULL,
    ALWAYS,
    N_ ("Corner %s is rounded, so a folded skirt would not lie flat there. Make it sharp, or box "
        "the cushion."),
    { SAY_CORNER } },
  { SQ_PROBLEM_REFLEX_IN_FOLDED,
    NULL,
    ALWAYS,
    N_ ("Corner %s turns inward, so there is no cloth for a folded skirt there. Box the cushion."),
    { SAY_CORNER } },
  { SQ_PROBLEM_NOTCH_IS_DART,
    NULL,
    SECOND_IS_NONE,
    N_ ("At corner %s a corner allowance of %s leaves nothing to cut out: fold the corner and sew "
        "it as a dart."),
    { SAY_CORNER, SAY_FIRST } },
  { SQ_PROBLEM_NOTCH_IS_DART,
    NULL,
    ALWAYS,
    N_ ("At corner %s a corner allowance of %s leaves too little to cut out (%s). Cut nothing "
        "there: fold the corner and sew it as a dart."),
    { SAY_CORNER, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_WRAP_SLACK,
    NULL,
    ALWAYS,
    N_ ("A plain wrap %s deep leaves the cover up to %s loose at the underside seam, more than "
        "the foam fills. Make it shallower, or mitre it."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_WRAP_TOO_DEEP,
    NULL,
    ALWAYS,
    N_ ("A wrap %2$s deep uses up the whole of edge %1$s. Keep it under %3$s, or make it plain."),
    { SAY_EDGE, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_ZIP_EDGE_MISSING,
    NULL,
    ALWAYS,
    N_ ("The zip is to follow the edge at corner number %s, which is not there or belongs to a "
        "hole. Choose another edge, or leave the choice to the rules."),
    { SAY_FIRST_COUNT } },
  { SQ_PROBLEM_ZIP_NO_PLACE,
    NULL,
    ALWAYS,
    N_ ("A cover built as “%s” can’t take the zip where it is asked for. Leave the place to the "
        "rules, or build the cover another way."),
    { SAY_BUILD } },
  { SQ_PROBLEM_ZIP_BOXING_LOW,
    NULL,
    ZIP_IN_BOXING,
    N_ ("The boxing is only %s high, and a zip in it is hard to sew under %s. Put the zip in "
        "another "
        "place."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_ZIP_BOXING_LOW,
    NULL,
    ALWAYS,
    N_ ("The boxing is only %s high, too low for a zip, which wants %s. So the zip lies across the "
        "underside."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_ZIP_ALL_SEEN,
    NULL,
    ALWAYS,
    N_ ("The back is too short for the zip, and every other edge is seen. Put the zip in the "
        "underside, or choose an edge for it."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ZIP_FOLD_FOAM,
    NULL,
    ALWAYS,
    N_ ("The zip opens %s and the foam is %s wide. Fold the foam to get it in."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_ZIP_TOO_SHORT,
    NULL,
    ALWAYS,
    N_ ("The zip opens only %s, and the foam does not go in under %s. Make the zip longer, or give "
        "it a longer edge."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_ZIP_TOO_LONG,
    NULL,
    FIRST_IS_LESS,
    N_ ("The zip is to open only %s, too little to sew it in. Make it longer, or leave it to the "
        "rules."),
    { SAY_FIRST } },
  { SQ_PROBLEM_ZIP_TOO_LONG,
    NULL,
    ALWAYS,
    N_ ("The zip is to open %s, and its place has room for %s. Make it shorter, or leave it to the "
        "rules."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_ZIP_OUTSIDE,
    NULL,
    ALWAYS,
    N_ ("The zip’s line misses the underside. Move it in, or leave its place to the rules."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ZIP_ACROSS_HOLE,
    NULL,
    ALWAYS,
    N_ ("Every line for a zip across the underside runs over a hole. Put the zip in the boxing, or "
        "sew the cover shut by hand."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_NO_ZIP,
    NULL,
    ALWAYS,
    N_ ("There is no zip: the cover is sewn shut by hand once the foam is in. Give it one if it is "
        "to come off for washing."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_JOIN_NO_ROOM,
    NULL,
    ALWAYS,
    N_ ("There is no good place for every join of the boxing: some lie in the middle of the front, "
        "or nearer than %s to another, a corner or an end of the zip. Wider cloth would need "
        "fewer."),
    { SAY_FIRST } },
  { SQ_PROBLEM_BOXING_TOO_SHORT,
    NULL,
    ALWAYS,
    N_ ("No strip of boxing of any use fits across the cloth, which is %s wide. Choose wider "
        "cloth."),
    { SAY_FIRST } },
  { SQ_PROBLEM_WIDER_THAN_CLOTH,
    NULL,
    ALWAYS,
    N_ ("The %s is %s wide, and the cloth only %s. Choose wider cloth, or make two cushions of the "
        "seat."),
    { SAY_PIECE, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_CLOTH_MISSING,
    "cloth.face",
    ALWAYS,
    N_ ("The faces are to be cut from cloth number %s, which the job does not have. Choose one "
        "that it has."),
    { SAY_FIRST_COUNT } },
  { SQ_PROBLEM_CLOTH_MISSING,
    "cloth.underside",
    ALWAYS,
    N_ ("The underside is to be cut from cloth number %s, which the job does not have. Choose one "
        "that it has."),
    { SAY_FIRST_COUNT } },
  { SQ_PROBLEM_CLOTH_MISSING,
    NULL,
    ALWAYS,
    N_ ("The sides are to be cut from cloth number %s, which the job does not have. Choose one "
        "that it has."),
    { SAY_FIRST_COUNT } },
  { SQ_PROBLEM_CUT_SPLIT,
    NULL,
    ALWAYS,
    N_ ("The allowances of the %s run into each other, so its cut line closes up. Make them "
        "smaller, or the narrow place wider."),
    { SAY_PIECE } },
  { SQ_PROBLEM_REFLEX_CLIP,
    NULL,
    ALWAYS,
    N_ ("Corner %s turns inward: stay-stitch the faces there, then clip them to the stitches."),
    { SAY_CORNER } },
  { SQ_PROBLEM_STRIPES_SLANT,
    NULL,
    ALWAYS,
    N_ ("Edge %s is not straight, so the stripes of boxing and faces meet only at its middle. Show "
        "it to the customer before you cut."),
    { SAY_EDGE } },
  { SQ_PROBLEM_SKIRTS_FOLLOW,
    NULL,
    ALWAYS,
    N_ ("In one-way cloth only the front skirt runs down: the others follow the plate. Box the "
        "cushion if that should not be seen."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_HOLE_NOT_BUILT,
    NULL,
    ALWAYS,
    N_ ("A cover built as “%s” has no walls for a hole. Box the cushion, or remove the hole."),
    { SAY_BUILD } },
  { SQ_PROBLEM_CORNER_NOT_BUILT,
    NULL,
    AT_EDGE,
    N_ ("Edge %s is curved, and a cover built as “%s” needs it straight. Make it straight, or box "
        "the cushion."),
    { SAY_EDGE, SAY_BUILD } },
  { SQ_PROBLEM_CORNER_NOT_BUILT,
    NULL,
    ALWAYS,
    N_ ("A cover built as “%s” can’t go round corner %s as it is. Change the corner, or box the "
        "cushion."),
    { SAY_BUILD, SAY_CORNER } },
  { SQ_PROBLEM_WELT_THICK,
    NULL,
    ALWAYS,
    N_ ("The welt, cord and cloth, is %s thick: more than the seam allowance of %s can hold. Take "
        "a thinner cord, or widen the allowance."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_WELT_TIGHT,
    NULL,
    AT_EDGE,
    N_ ("Edge %s bends at a radius of %s; this welt needs %s to lie flat. Take a thinner cord, or "
        "round it more."),
    { SAY_EDGE, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_WELT_TIGHT,
    NULL,
    ALWAYS,
    N_ ("Corner %s has a radius of %s; this welt needs %s to go round it. Round the corner more, "
        "or take a thinner cord."),
    { SAY_CORNER, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_WELT_VINYL_BIAS,
    NULL,
    ALWAYS,
    N_ ("Vinyl stretches no better on the bias and wastes much of the width. Cut the welt "
        "straight."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_PROFILE_RADIUS,
    NULL,
    SECOND_IS_NONE,
    N_ ("A front radius of %s can’t be made. Give one above nothing."),
    { SAY_FIRST } },
  { SQ_PROBLEM_PROFILE_RADIUS,
    NULL,
    ALWAYS,
    N_ ("A front radius of %s is too large: half the thickness and the depth leave room for %s."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_FRONT_CURVED,
    NULL,
    ALWAYS,
    N_ ("The front edge %s is not straight, and cloth wraps round a straight front only. Make it "
        "straight, or box the cushion."),
    { SAY_EDGE } },
  { SQ_PROBLEM_SIDE_TURNS_BACK,
    NULL,
    ALWAYS,
    N_ ("Edge %s does not lead away from the front all along, so the wrap can’t follow it. Move "
        "its corners, or box the cushion."),
    { SAY_EDGE } },
  { SQ_PROBLEM_SPLIT_OUTSIDE,
    NULL,
    ALWAYS,
    N_ ("An upper part %s high does not fit a side of %s. Split it somewhere between."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_DRAW_IN_MEETS,
    NULL,
    ALWAYS,
    N_ ("Corner %s drawn in by %s would meet its own tapers; %s is the most it can take. Draw it "
        "in less."),
    { SAY_CORNER, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_STUFFED_SMALLER,
    NULL,
    ALWAYS,
    N_ ("Stuffed, the pad will measure about %s by %s: its faces bow and draw its edges in."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_BOLSTER_DIAMETER,
    NULL,
    ALWAYS,
    N_ ("A bolster needs a diameter, and %s is none. Give it one."),
    { SAY_FIRST } },
  { SQ_PROBLEM_BOLSTER_LENGTH,
    NULL,
    ALWAYS,
    N_ ("A bolster needs a length, and %s is none. Give it one."),
    { SAY_FIRST } },
  { SQ_PROBLEM_BOLSTER_RISE,
    NULL,
    ALWAYS,
    N_ ("A D-shaped bolster can’t stand %s before a back %s high. Give a rise above nothing, and "
        "at most half the back’s height."),
    { SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_SKIRTS_MEET,
    NULL,
    ALWAYS,
    N_ ("The skirt at edge %s lies over another one when the plate is spread flat. Box that side."),
    { SAY_EDGE } },
  { SQ_PROBLEM_LET_IN_NO_ROOM,
    NULL,
    ALWAYS,
    N_ ("Beside an inward corner or a curve the skirt at edge %s must give way by %s, which is all "
        "of its %s. Box that side."),
    { SAY_EDGE, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_EDGE_BUILD_UNUSED,
    NULL,
    ALWAYS,
    N_ ("Edge %s is to be built its own way, but a cover built as “%s” has none."),
    { SAY_EDGE, SAY_BUILD } },
  { SQ_PROBLEM_ONE_RIGHT_WAY,
    NULL,
    ALWAYS,
    N_ ("The seat is not its own mirror image, so this cushion has one right way up: turned over, "
        "it does not fit."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_ACROSS_NO_PLACE,
    NULL,
    ALWAYS,
    N_ ("The %s is %s wide, and two joins don’t bring it into a cloth of %s. Divide the cushion, "
        "or "
        "take a wider cloth."),
    { SAY_PIECE, SAY_FIRST, SAY_SECOND } },
  { SQ_PROBLEM_WRAP_NOT_MITRED,
    NULL,
    ALWAYS,
    N_ ("A mitred wrap can’t turn under beside boxing, so this cover closes at the cushion’s lower "
        "edge. Make the wrap plain if it should go further."),
    { SAY_NOTHING } },
  { SQ_PROBLEM_EDGE_NOT_OPEN,
    NULL,
    ALWAYS,
    N_ ("Edge %s is to stay open, which this program can’t make yet: it is built like the rest."),
    { SAY_EDGE } },
  { SQ_PROBLEM_WELT_NOT_TAKEN,
    NULL,
    ALWAYS,
    N_ ("A cover built as “%s” takes no welt, so none is cut."),
    { SAY_BUILD } },
  { SQ_PROBLEM_ZIP_NOT_PARTED,
    NULL,
    ALWAYS,
    N_ ("The line of the zip doesn’t part the underside in two, so the zip is slit in."),
    { SAY_NOTHING } },
};

static gboolean
holds (When when, const SqProblem *problem, const SqCover *cover)
{
  switch (when)
    {
    case ALWAYS:
      return TRUE;
    case AT_EDGE:
      return problem->place.kind == SQ_AT_EDGE;
    case SECOND_IS_NONE:
      return problem->facts[1] <= 0;
    case FIRST_IS_LESS:
      return problem->facts[0] < problem->facts[1];
    case ZIP_IN_BOXING:
      return cover->zip.place == SQ_ZIP_BOXING;
    }
  g_return_val_if_reached (FALSE);
}

static const Sentence *
sentence_for (const SqProblem *problem, const SqCover *cover)
{
  for (guint i = 0; i < G_N_ELEMENTS (sentences); i++)
    {
      const Sentence *s = &sentences[i];
      if (s->code == problem->code
          && (s->key == NULL || g_strcmp0 (s->key, problem->place.key) == 0)
          && holds (s->when, problem, cover))
        return s;
    }
  return NULL;
}

static char *
said (Say say, const SqProblem *problem, const SqCover *cover, const SqLengthStyle *style)
{
  switch (say)
    {
    case SAY_NOTHING:
      return g_strdup ("");
    case SAY_CORNER:
      return sq_words_corner (cover->cushion, problem->place.item);
    case SAY_EDGE:
      return sq_words_edge (cover, problem->place.item);
    case SAY_PIECE:
      return sq_words_piece_inside (cover, problem->place.item);
    case SAY_FIRST:
      return sq_words_length (problem->facts[0], style);
    case SAY_SECOND:
      return sq_words_length (problem->facts[1], style);
    case SAY_FIRST_COUNT:
      return sq_words_number (problem->facts[0], 0, style);
    case SAY_BUILD:
      return g_strdup (sq_words_build (cover->build));
    }
  g_return_val_if_reached (g_strdup (""));
}

char *
sq_words_problem (const SqProblem *problem, const SqCover *cover, const SqLengthStyle *style)
{
  const Sentence *sentence = sentence_for (problem, cover);
  char *args[N_SAYS];

  g_return_val_if_fail (sentence != NULL, g_strdup (""));
  for (guint i = 0; i < N_SAYS; i++)
    args[i] = said (sentence->says[i], problem, cover, style);

  char *text = g_strdup_printf (gettext (sentence->text), args[0], args[1], args[2]);
  for (guint i = 0; i < N_SAYS; i++)
    g_free (args[i]);
  return text;
}
