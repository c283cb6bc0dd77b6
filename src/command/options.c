/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/options.h"

#include "base/error.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

/* Less is finer than any cutter and makes files without end; more is no outline any more (mm). */
#define LEAST_FLATTEN_MM 0.0001
#define MOST_FLATTEN_MM 100.0

/* The command line as it is being read. */
typedef struct
{
  int argc, next;
  char *const *argv;
  gboolean only_files; /* after -- */
} Arguments;

/* Sets @error to @pattern about @argument, as it may be shown on a terminal. Gives FALSE. */
static gboolean
refuse (GError **error, const char *pattern, const char *argument)
{
  g_autofree char *shown = g_filename_display_name (argument);

  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, pattern, shown);
  return FALSE;
}

static gboolean
set_once (const char **place, const char *value, const char *pattern, GError **error)
{
  if (*place != NULL)
    return refuse (error, pattern, value);
  *place = value;
  return TRUE;
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

  if (options->flatten_mm > 0)
    return refuse (error, _ ("--flatten is given twice (%s)"), value);
  if (*end != '\0' || !(mm >= LEAST_FLATTEN_MM && mm <= MOST_FLATTEN_MM))
    return refuse (error, _ ("--flatten wants millimetres from 0.0001 to 100, not “%s”"), value);
  options->flatten_mm = mm;
  return TRUE;
}

static gboolean
read_option (SqOptions *options, Arguments *arguments, const char *argument, GError **error)
{
  g_autofree char *name = g_strndup (argument, strcspn (argument, "="));
  gboolean is_plan = g_str_equal (name, "--plan"), is_save = g_str_equal (name, "--save");

  if (!is_plan && !is_save && !g_str_equal (name, "--flatten"))
    return refuse (error, _ ("unknown option %s; see squab-cut --help"), name);

  const char *value = take_value (arguments, argument, name, error);
  if (value == NULL)
    return FALSE;
  if (is_plan)
    return set_once (&options->plan, value, _ ("--plan is given twice (%s)"), error);
  if (is_save)
    return set_once (&options->save, value, _ ("--save is given twice (%s)"), error);
  return read_flatten (options, value, error);
}

/* Whether what was asked for goes together. */
static gboolean
check (const SqOptions *options, GError **error)
{
  if (options->file == NULL)
    {
      g_set_error_literal (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("which job? see squab-cut --help"));
      return FALSE;
    }
  if (options->flatten_mm > 0 && options->plan == NULL)
    return refuse (error, _ ("%s goes with --plan"), "--flatten");
  if (options->plan != NULL && g_strcmp0 (options->plan, options->save) == 0)
    return refuse (error, _ ("--plan and --save would both write %s"), options->plan);
  return TRUE;
}

gboolean
sq_options_read (SqOptions *options, int argc, char *const *argv, GError **error)
{
  Arguments arguments = { argc, 1, argv, FALSE };

  *options = (SqOptions){ .what = SQ_DO_JOB };
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
      else if (!(is_option ? read_option (options, &arguments, argument, error)
                           : set_once (&options->file, argument,
                                       _ ("one job at a time; what is %s?"), error)))
        return FALSE;
    }
  return check (options, error);
}

const char *
sq_options_help (void)
{
  return _ ("Usage: squab-cut FILE [OPTION…]\n"
            "Prints the cut list of a cushion job.\n"
            "\n"
            "  --plan F      write everything computed to F, as JSON (- is standard output)\n"
            "  --flatten MM  in the plan, straight lines for arcs, at most MM from them\n"
            "  --save F      write the job as it was opened to F, in today’s format\n"
            "  --help        print this\n"
            "  --version     print the version\n"
            "\n"
            "With --plan or --save the cut list is not printed. The exit status is 0 if all\n"
            "went well, 1 if the job has errors in it, 2 if nothing could be done.\n");
}
