/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/options.h"

#include "base/error.h"
#include "command/option-values.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

/* The command line as it is being read. */
typedef struct
{
  int argc, next;
  char *const *argv;
  gboolean only_files; /* after -- */
  guint64 seen;        /* bits: the known options that were there */
} Arguments;

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
      sq_options_refuse (error, _ ("%s wants a value after it"), name);
      return NULL;
    }
  return value;
}

#define OUT(name) (1U << SQ_OUT_##name)
#define SHEETS (OUT (TEST_PAGE) | OUT (PATTERN) | OUT (EVERYTHING))
#define PATTERNS (OUT (PATTERN) | OUT (EVERYTHING))
#define LABELS (OUT (LABELS) | OUT (EVERYTHING))
#define PAPERS (OUT (CUT_LIST) | OUT (LAYOUT) | OUT (MARKING) | OUT (TICKETS) | LABELS | SHEETS)
#define FILES (OUT (DXF) | OUT (SVG) | OUT (HPGL))

/* All options but --help and --version; those that neither write nor read are switches. */
static const struct
{
  const char *name;
  gboolean is_out;
  SqOut out;
  gboolean (*read) (SqOptions *options, const char *value, GError **error);
  gsize flag;        /* of a switch: its place in SqOptions */
  guint goes_with;   /* one of these outputs, as bits; 0: whatever there is */
  gboolean with_lay; /* goes with --lay, too */
} known[] = {
  { .name = "--plan", .is_out = TRUE, .out = SQ_OUT_PLAN, .with_lay = TRUE },
  { .name = "--save", .is_out = TRUE, .out = SQ_OUT_SAVE },
  { .name = "--cut-list", .is_out = TRUE, .out = SQ_OUT_CUT_LIST },
  { .name = "--layout", .is_out = TRUE, .out = SQ_OUT_LAYOUT },
  { .name = "--marking", .is_out = TRUE, .out = SQ_OUT_MARKING },
  { .name = "--tickets", .is_out = TRUE, .out = SQ_OUT_TICKETS },
  { .name = "--labels", .is_out = TRUE, .out = SQ_OUT_LABELS },
  { .name = "--pattern", .is_out = TRUE, .out = SQ_OUT_PATTERN },
  { .name = "--test-page", .is_out = TRUE, .out = SQ_OUT_TEST_PAGE },
  { .name = "--everything", .is_out = TRUE, .out = SQ_OUT_EVERYTHING },
  { .name = "--csv", .is_out = TRUE, .out = SQ_OUT_CSV },
  { .name = "--svg", .is_out = TRUE, .out = SQ_OUT_SVG, .with_lay = TRUE },
  { .name = "--dxf", .is_out = TRUE, .out = SQ_OUT_DXF },
  { .name = "--hpgl", .is_out = TRUE, .out = SQ_OUT_HPGL },
  { .name = "--of", .read = sq_option_cut_of, .goes_with = FILES | OUT (CSV) },
  { .name = "--only", .read = sq_option_cut_lines, .goes_with = FILES },
  { .name = "--dxf-release", .read = sq_option_dxf_release, .goes_with = OUT (DXF) },
  { .name = "--layers", .read = sq_option_dxf_layers, .goes_with = OUT (DXF) },
  { .name = "--flatten", .read = sq_option_flatten, .goes_with = FILES | OUT (PLAN) },
  { .name = "--ways", .flag = G_STRUCT_OFFSET (SqOptions, ways) },
  { .name = "--paper", .read = sq_option_paper, .goes_with = PAPERS },
  { .name = "--date", .read = sq_option_date },
  { .name = "--marked-on", .read = sq_option_side, .goes_with = PATTERNS | OUT (MARKING) | FILES },
  { .name = "--pieces", .read = sq_option_pieces, .goes_with = PATTERNS | LABELS | FILES },
  { .name = "--pages", .read = sq_option_pages, .goes_with = PAPERS },
  { .name = "--margin", .read = sq_option_margin, .goes_with = SHEETS },
  { .name = "--overlap", .read = sq_option_overlap, .goes_with = PATTERNS },
  { .name = "--lines", .read = sq_option_lines, .goes_with = PATTERNS },
  { .name = "--corners-only",
    .flag = G_STRUCT_OFFSET (SqOptions, corners_only),
    .goes_with = PATTERNS },
  { .name = "--label-sheet", .read = sq_option_label_sheet, .goes_with = LABELS },
  { .name = "--skip-labels", .read = sq_option_skip_labels, .goes_with = LABELS },
  { .name = "--seed", .read = sq_option_seed, .with_lay = TRUE },
  { .name = "--steps", .read = sq_option_steps, .with_lay = TRUE },
  { .name = "--seconds", .read = sq_option_seconds, .with_lay = TRUE },
  { .name = "--threads", .read = sq_option_threads, .with_lay = TRUE },
  { .name = "--lay", .read = sq_option_lay, .with_lay = TRUE },
  { .name = "--cpu", .flag = G_STRUCT_OFFSET (SqOptions, cpu), .with_lay = TRUE },
};
G_STATIC_ASSERT (G_N_ELEMENTS (known) <= 64 && SQ_N_OUTS <= 32);

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
    return sq_options_refuse (error, _ ("unknown option %s; see squab-cut --help"), name);
  if (arguments->seen & G_GUINT64_CONSTANT (1) << i)
    return sq_options_refuse (error, _ ("%s is given twice"), name);
  arguments->seen |= G_GUINT64_CONSTANT (1) << i;

  if (!known[i].is_out && known[i].read == NULL)
    {
      *(gboolean *) (gpointer) ((char *) options + known[i].flag) = TRUE;
      return strchr (argument, '=') == NULL
             || sq_options_refuse (error, _ ("%s takes no value"), name);
    }
  const char *value = take_value (arguments, argument, name, error);
  if (value == NULL)
    return FALSE;
  if (!known[i].is_out)
    return known[i].read (options, value, error);
  options->outs[known[i].out] = value;
  return TRUE;
}

/* Whether no two outputs would be written to the same place; in a folder they have different names. */
static gboolean
check_outs (const SqOptions *options, GError **error)
{
  for (guint a = 0; a < SQ_N_OUTS; a++)
    for (guint b = a + 1; b < SQ_N_OUTS; b++)
      if (options->outs[a] != NULL && g_strcmp0 (options->outs[a], options->outs[b]) == 0
          && !g_str_has_suffix (options->outs[a], G_DIR_SEPARATOR_S)
          && !g_file_test (options->outs[a], G_FILE_TEST_IS_DIR))
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

/* "--dxf, --svg": those of @outs, bits. New text. */
static char *
out_names (guint outs)
{
  GString *names = g_string_new (NULL);

  for (guint out = 0; out < SQ_N_OUTS; out++)
    if (outs & 1U << out)
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", out_name ((SqOut) out));
  return g_string_free (names, FALSE);
}

/* Whether the option @i, which was given, goes with what is asked for. */
static gboolean
check_option (const SqOptions *options, guint i, GError **error)
{
  guint outs = 0;

  if (options->what == SQ_DO_LAY && !known[i].with_lay)
    return sq_options_refuse (error, _ ("%s does not go with --lay"), known[i].name);
  for (guint out = 0; out < SQ_N_OUTS; out++)
    outs |= options->outs[out] != NULL ? 1U << out : 0;
  if (known[i].goes_with == 0 || outs & known[i].goes_with)
    return TRUE;
  g_autofree char *names = out_names (known[i].goes_with);
  /* TRANSLATORS: an option, and those of which one has to be there with it. */
  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("%s goes with one of %s"), known[i].name, names);
  return FALSE;
}

/* Whether what was asked for goes together. */
static gboolean
check (const SqOptions *options, guint64 seen, GError **error)
{
  const char *const *outs = options->outs;

  if (options->file == NULL)
    {
      g_set_error_literal (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("which job? see squab-cut --help"));
      return FALSE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    if (seen & G_GUINT64_CONSTANT (1) << i && !check_option (options, i, error))
      return FALSE;
  if (options->what != SQ_DO_LAY && options->cpu)
    return sq_options_refuse (error, _ ("%s goes with --lay"), "--cpu");
  if (options->roll_mm > 0 && outs[SQ_OUT_PATTERN] == NULL && outs[SQ_OUT_EVERYTHING] == NULL
      && outs[SQ_OUT_TEST_PAGE] == NULL)
    return sq_options_refuse (error, _ ("%s goes with --pattern"), "--paper roll:");
  if (options->ways && outs[SQ_OUT_PLAN] == NULL && has_any_out (options))
    return sq_options_refuse (error, _ ("%s goes with --plan, or stands alone"), "--ways");
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
        return sq_options_refuse (error, _ ("one thing at a time; what is %s?"), argument);
      else if (!is_option)
        options->file = argument;
    }
  if (options->steps == G_MAXUINT64 && !isfinite (options->seconds))
    options->steps = 0;
  return check (options, arguments.seen, error);
}

gboolean
sq_options_has_standard_output (const SqOptions *options)
{
  for (guint out = 0; out < SQ_N_OUTS; out++)
    if (g_strcmp0 (options->outs[out], "-") == 0)
      return TRUE;
  return FALSE;
}
