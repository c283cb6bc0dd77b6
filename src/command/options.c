/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/options.h"

#include "base/error.h"
#include "base/length.h"
#include "exchange/today.h"
#include "job/names.h"

#include <glib/gi18n.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Less is finer than any cutter and makes files without end; more is no outline any more (mm). */
#define LEAST_FLATTEN_MM 0.0001
#define MOST_FLATTEN_MM 100.0

#define MOST_STEPS 1000000
#define MOST_SECONDS 1e6
#define MOST_THREADS 64

/* The command line as it is being read. */
typedef struct
{
  int argc, next;
  char *const *argv;
  gboolean only_files; /* after -- */
  guint seen;          /* bits: the known options that were there */
} Arguments;

/* Sets @error to @pattern about @argument, as it may be shown on a terminal. Gives FALSE. */
static gboolean
refuse (GError **error, const char *pattern, const char *argument)
{
  g_autofree char *shown = g_filename_display_name (argument);

  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, pattern, shown);
  return FALSE;
}

/* The value of option @name: what follows = in @argument, or the next argument. */
static const char *
take_value (Arguments *arguments, const char *argument, const char *name, GError **error)
{
  const char *equals = strchr (argument, '='), *value = NULL;

  if (equals != NULL)
    value = equals + 1;
  else if (arguments->next < arguments->argc
           && !g_str_has_prefix (arguments->argv[arguments->next], "--"))
    value = arguments->argv[arguments->next++];
  if (value == NULL || value[0] == '\0')
    {
      refuse (error, _ ("%s wants a value after it"), name);
      return NULL;
    }
  return value;
}

static gboolean
read_flatten (SqOptions *options, const char *value, GError **error)
{
  char *end;
  double mm = g_ascii_strtod (value, &end);

  if (*end != '\0' || !(mm >= LEAST_FLATTEN_MM && mm <= MOST_FLATTEN_MM))
    return refuse (error, _ ("--flatten wants millimetres from 0.0001 to 100, not “%s”"), value);
  options->flatten_mm = mm;
  return TRUE;
}

/* A length as it is typed, in millimetres where no unit is named. */
static gboolean
read_length (const char *value, double *mm)
{
  return sq_length_parse (value, SQ_UNIT_MM, '.', mm, NULL) == SQ_LENGTH_OK && *mm >= 0;
}

static gboolean
read_paper (SqOptions *options, const char *value, GError **error)
{
  if (g_str_has_prefix (value, "roll:"))
    return (read_length (value + strlen ("roll:"), &options->roll_mm) && options->roll_mm > 0)
           || refuse (error, _ ("--paper wants a roll’s width as roll:914mm, not “%s”"), value);
  for (guint i = 0; sq_sheet_names[i] != NULL; i++)
    if (g_str_equal (value, sq_sheet_names[i]))
      {
        options->has_sheet = TRUE;
        options->sheet = (SqSheet) i;
        return TRUE;
      }
  return refuse (error,
                 _ ("--paper wants a4 to a0, letter, ansi-b to ansi-e, or roll:914mm, not “%s”"),
                 value);
}

static gboolean
read_side (SqOptions *options, const char *value, GError **error)
{
  options->has_side = TRUE;
  options->wrong_side = g_str_equal (value, sq_marked_on_names[1]);
  return options->wrong_side || g_str_equal (value, sq_marked_on_names[0])
         || refuse (error, _ ("--marked-on wants right or wrong, not “%s”"), value);
}

static gboolean
read_margin (SqOptions *options, const char *value, GError **error)
{
  return read_length (value, &options->margin_mm)
         || refuse (error, _ ("--margin wants a length, as 10 or 3/8in, not “%s”"), value);
}

static gboolean
read_overlap (SqOptions *options, const char *value, GError **error)
{
  return read_length (value, &options->overlap_mm)
         || refuse (error, _ ("--overlap wants a length, as 10 or 3/8in, not “%s”"), value);
}

static gboolean
read_lines (SqOptions *options, const char *value, GError **error)
{
  for (guint i = 0; sq_pattern_lines_names[i] != NULL; i++)
    if (g_str_equal (value, sq_pattern_lines_names[i]))
      {
        options->has_pattern_lines = TRUE;
        options->pattern_lines = (SqPatternLines) i;
        return TRUE;
      }
  return refuse (error, _ ("--lines wants both, cut or sew, not “%s”"), value);
}

static gboolean
read_pieces (SqOptions *options, const char *value, GError **error)
{
  (void) error;
  options->pieces = value;
  return TRUE;
}

static gboolean
read_pages (SqOptions *options, const char *value, GError **error)
{
  (void) error;
  options->pages = value;
  return TRUE;
}

static gboolean
read_label_sheet (SqOptions *options, const char *value, GError **error)
{
  guint columns, rows;
  char after;

  options->label_sheet = value;
  return (sscanf (value, "%3ux%3u%c", &columns, &rows, &after) == 2 && columns > 0 && rows > 0)
         || refuse (error, _ ("--label-sheet wants columns and rows as 2x6, not “%s”"), value);
}

static gboolean
read_skip_labels (SqOptions *options, const char *value, GError **error)
{
  guint64 skipped = 0;

  if (!g_ascii_string_to_unsigned (value, 10, 0, 10000, &skipped, NULL))
    return refuse (error, _ ("--skip-labels wants a whole number, not “%s”"), value);
  options->skipped_labels = (guint) skipped;
  return TRUE;
}

static gboolean
read_date (SqOptions *options, const char *value, GError **error)
{
  options->date = value;
  return sq_is_date (value)
         || refuse (error, _ ("--date wants a day as 2026-03-01, not “%s”"), value);
}

static gboolean
read_seed (SqOptions *options, const char *value, GError **error)
{
  return g_ascii_string_to_unsigned (value, 10, 0, G_MAXINT64, &options->seed, NULL)
         || refuse (error, _ ("--seed wants a whole number, not “%s”"), value);
}

static gboolean
read_steps (SqOptions *options, const char *value, GError **error)
{
  return g_ascii_string_to_unsigned (value, 10, 0, MOST_STEPS, &options->steps, NULL)
         || refuse (error, _ ("--steps wants a whole number up to a million, not “%s”"), value);
}

static gboolean
read_seconds (SqOptions *options, const char *value, GError **error)
{
  char *end;

  options->seconds = g_ascii_strtod (value, &end);
  return (*end == '\0' && options->seconds >= 0 && options->seconds <= MOST_SECONDS)
         || refuse (error, _ ("--seconds wants a number up to a million, not “%s”"), value);
}

static gboolean
read_threads (SqOptions *options, const char *value, GError **error)
{
  guint64 threads = 0;

  if (!g_ascii_string_to_unsigned (value, 10, 0, MOST_THREADS, &threads, NULL))
    return refuse (error, _ ("--threads wants a whole number up to 64, not “%s”"), value);
  options->threads = (guint) threads;
  return TRUE;
}

static gboolean
read_lay (SqOptions *options, const char *value, GError **error)
{
  options->what = SQ_DO_LAY;
  if (options->file != NULL)
    return refuse (error, _ ("one thing at a time; what is %s?"), value);
  options->file = value;
  return TRUE;
}

/* All options but --help and --version; those that neither write nor read are switches. */
static const struct
{
  const char *name;
  gboolean is_out;
  SqOut out;
  gboolean (*read) (SqOptions *options, const char *value, GError **error);
  gsize flag; /* of a switch: its place in SqOptions */
} known[] = {
  { "--plan", TRUE, SQ_OUT_PLAN, NULL, 0 },
  { "--save", TRUE, SQ_OUT_SAVE, NULL, 0 },
  { "--cut-list", TRUE, SQ_OUT_CUT_LIST, NULL, 0 },
  { "--layout", TRUE, SQ_OUT_LAYOUT, NULL, 0 },
  { "--marking", TRUE, SQ_OUT_MARKING, NULL, 0 },
  { "--tickets", TRUE, SQ_OUT_TICKETS, NULL, 0 },
  { "--labels", TRUE, SQ_OUT_LABELS, NULL, 0 },
  { "--pattern", TRUE, SQ_OUT_PATTERN, NULL, 0 },
  { "--everything", TRUE, SQ_OUT_EVERYTHING, NULL, 0 },
  { "--csv", TRUE, SQ_OUT_CSV, NULL, 0 },
  { "--svg", TRUE, SQ_OUT_SVG, NULL, 0 },
  { .name = "--flatten", .read = read_flatten },
  { .name = "--ways", .flag = G_STRUCT_OFFSET (SqOptions, ways) },
  { .name = "--paper", .read = read_paper },
  { .name = "--date", .read = read_date },
  { .name = "--marked-on", .read = read_side },
  { .name = "--pieces", .read = read_pieces },
  { .name = "--pages", .read = read_pages },
  { .name = "--margin", .read = read_margin },
  { .name = "--overlap", .read = read_overlap },
  { .name = "--lines", .read = read_lines },
  { .name = "--corners-only", .flag = G_STRUCT_OFFSET (SqOptions, corners_only) },
  { .name = "--label-sheet", .read = read_label_sheet },
  { .name = "--skip-labels", .read = read_skip_labels },
  { .name = "--seed", .read = read_seed },
  { .name = "--steps", .read = read_steps },
  { .name = "--seconds", .read = read_seconds },
  { .name = "--threads", .read = read_threads },
  { .name = "--lay", .read = read_lay },
  { .name = "--cpu", .flag = G_STRUCT_OFFSET (SqOptions, cpu) },
};

static const char *
out_name (SqOut out)
{
  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    if (known[i].is_out && known[i].out == out)
      return known[i].name;
  g_return_val_if_reached ("");
}

static gboolean
read_option (SqOptions *options, Arguments *arguments, const char *argument, GError **error)
{
  g_autofree char *name = g_strndup (argument, strcspn (argument, "="));
  guint i = 0;

  while (i < G_N_ELEMENTS (known) && !g_str_equal (known[i].name, name))
    i++;
  if (i == G_N_ELEMENTS (known))
    return refuse (error, _ ("unknown option %s; see squab-cut --help"), name);
  if (arguments->seen & 1u << i)
    return refuse (error, _ ("%s is given twice"), name);
  arguments->seen |= 1u << i;

  if (!known[i].is_out && known[i].read == NULL)
    {
      *(gboolean *) (gpointer) ((char *) options + known[i].flag) = TRUE;
      return strchr (argument, '=') == NULL || refuse (error, _ ("%s takes no value"), name);
    }
  const char *value = take_value (arguments, argument, name, error);
  if (value == NULL)
    return FALSE;
  if (!known[i].is_out)
    return known[i].read (options, value, error);
  options->outs[known[i].out] = value;
  return TRUE;
}

/* Whether no two outputs would be written to the same place. */
static gboolean
check_outs (const SqOptions *options, GError **error)
{
  for (guint a = 0; a < SQ_N_OUTS; a++)
    for (guint b = a + 1; b < SQ_N_OUTS; b++)
      if (options->outs[a] != NULL && g_strcmp0 (options->outs[a], options->outs[b]) == 0)
        {
          g_autofree char *shown = g_filename_display_name (options->outs[a]);
          g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("%s and %s would both write %s"),
                       out_name ((SqOut) a), out_name ((SqOut) b), shown);
          return FALSE;
        }
  return TRUE;
}

static gboolean
has_any_out (const SqOptions *options)
{
  for (guint out = 0; out < SQ_N_OUTS; out++)
    if (options->outs[out] != NULL)
      return TRUE;
  return FALSE;
}

/* Whether what was asked for goes with the lay of an instance, or without one. */
static gboolean
check_lay (const SqOptions *options, GError **error)
{
  for (guint out = 0; out < SQ_N_OUTS; out++)
    if (options->outs[out] != NULL && out != SQ_OUT_PLAN && out != SQ_OUT_SVG)
      return refuse (error, _ ("%s does not go with --lay"), out_name ((SqOut) out));
  if (options->flatten_mm > 0)
    return refuse (error, _ ("%s does not go with --lay"), "--flatten");
  if (options->has_sheet)
    return refuse (error, _ ("%s does not go with --lay"), "--paper");
  if (options->date != NULL)
    return refuse (error, _ ("%s does not go with --lay"), "--date");
  return !options->ways || refuse (error, _ ("%s does not go with --lay"), "--ways");
}

/* Whether what was asked for goes together. */
static gboolean
check (const SqOptions *options, GError **error)
{
  const char *const *outs = options->outs;
  gboolean has_papers = FALSE;

  for (guint out = SQ_OUT_CUT_LIST; out <= SQ_OUT_EVERYTHING; out++)
    has_papers = has_papers || outs[out] != NULL;

  if (options->file == NULL)
    {
      g_set_error_literal (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("which job? see squab-cut --help"));
      return FALSE;
    }
  if (options->what == SQ_DO_LAY)
    return check_lay (options, error) && check_outs (options, error);
  if (outs[SQ_OUT_SVG] != NULL)
    return refuse (error, _ ("%s goes with --lay"), "--svg");
  if (options->cpu)
    return refuse (error, _ ("%s goes with --lay"), "--cpu");
  if (options->flatten_mm > 0 && outs[SQ_OUT_PLAN] == NULL)
    return refuse (error, _ ("%s goes with --plan"), "--flatten");
  if ((options->has_sheet || options->roll_mm > 0) && !has_papers)
    return refuse (error, _ ("%s goes with a PDF"), "--paper");
  if (options->pages != NULL && !has_papers)
    return refuse (error, _ ("%s goes with a PDF"), "--pages");
  if (options->roll_mm > 0 && outs[SQ_OUT_PATTERN] == NULL && outs[SQ_OUT_EVERYTHING] == NULL)
    return refuse (error, _ ("%s goes with --pattern"), "--paper roll:");
  if (options->ways && outs[SQ_OUT_PLAN] == NULL && has_any_out (options))
    return refuse (error, _ ("%s goes with --plan, or stands alone"), "--ways");
  return check_outs (options, error);
}

gboolean
sq_options_read (SqOptions *options, int argc, char *const *argv, GError **error)
{
  Arguments arguments = { argc, 1, argv, FALSE, 0 };

  *options = (SqOptions){ .what = SQ_DO_JOB,
                          .seed = 1,
                          .steps = G_MAXUINT64,
                          .seconds = INFINITY,
                          .margin_mm = -1,
                          .overlap_mm = -1 };
  while (arguments.next < argc)
    {
      const char *argument = argv[arguments.next++];
      gboolean is_option = !arguments.only_files && argument[0] == '-' && argument[1] != '\0';
      if (is_option && g_str_equal (argument, "--"))
        arguments.only_files = TRUE;
      else if (is_option && g_str_equal (argument, "--help"))
        {
          options->what = SQ_DO_HELP;
          return TRUE;
        }
      else if (is_option && g_str_equal (argument, "--version"))
        {
          options->what = SQ_DO_VERSION;
          return TRUE;
        }
      else if (is_option && !read_option (options, &arguments, argument, error))
        return FALSE;
      else if (!is_option && options->file != NULL)
        return refuse (error, _ ("one thing at a time; what is %s?"), argument);
      else if (!is_option)
        options->file = argument;
    }
  if (options->steps == G_MAXUINT64 && !isfinite (options->seconds))
    options->steps = 0;
  return check (options, error);
}

gboolean
sq_options_has_standard_output (const SqOptions *options)
{
  for (guint out = 0; out < SQ_N_OUTS; out++)
    if (g_strcmp0 (options->outs[out], "-") == 0)
      return TRUE;
  return FALSE;
}

const char *
sq_options_help (void)
{
  return _ ("Usage: squab-cut FILE [OPTION…]\n"
            "       squab-cut --lay INSTANCE [OPTION…]\n"
            "Prints the cut list of a cushion job, or lays an open instance of nesting.\n"
            "\n"
            "  --cut-list F    write the cut list to F, as PDF\n"
            "  --layout F      the same for the layout of the pieces on the cloth\n"
            "  --marking F     the same for the guide to marking the pieces on the cloth\n"
            "  --tickets F     the same for the tickets that go with each lay\n"
            "  --labels F      the same for labels of all pieces\n"
            "  --pattern F     the same for the patterns in full size\n"
            "  --everything F  all papers in one PDF\n"
            "  --paper SIZE    a4 to a0, letter, ansi-b to ansi-e; for patterns roll:914mm,\n"
            "                  too; else as the job says\n"
            "  --date DAY      the date on papers, as 2026-03-01; else today\n"
            "  --pages LIST    only these pages, as 1,3-5\n"
            "  --pieces LIST   only these numbers of the cut list, on patterns and labels\n"
            "  --marked-on S   right or wrong: the side of the cloth that is marked\n"
            "  --lines L       both, cut or sew: the lines of patterns\n"
            "  --margin L      of a pattern’s sheets; millimetres, or as 3/8in\n"
            "  --overlap L     of two sheets of a pattern, the same\n"
            "  --corners-only  of large straight pieces only the corners in full size\n"
            "  --label-sheet C columns and rows of labels, as 2x6\n"
            "  --skip-labels N leave the first N labels empty\n"
            "  --csv F         write the pieces to cut to F, as a table with commas\n"
            "  --plan F        write everything computed to F, as JSON\n"
            "  --flatten MM    in the plan, straight lines for arcs, at most MM from them\n"
            "  --ways          compare all ways of building; in the plan, too\n"
            "  --save F        write the job as it was opened to F, in today’s format\n"
            "\n"
            "How long to look for better lays; without, the first is taken:\n"
            "  --seconds N     as long as this for each cloth\n"
            "  --steps N       so many tries after the first\n"
            "  --seed N        what chance begins from in these (1)\n"
            "  --threads N     work on so many at once; else as there are processors\n"
            "\n"
            "  --lay INSTANCE  lay the items of INSTANCE, a file as JSON; prints its name,\n"
            "                  the seconds it took, how much of the strip is used in percent\n"
            "                  and the length of it. --plan writes where everything lies\n"
            "  --cpu           these seconds are the processor’s\n"
            "  --svg F         draw it to F\n"
            "\n"
            "  --help          print this\n"
            "  --version       print the version\n"
            "\n"
            "F may be - for standard output. With any F the cut list is not printed. The exit\n"
            "status is 0 if all went well, 1 if the job has errors in it, 2 if nothing could\n"
            "be done.\n");
}
