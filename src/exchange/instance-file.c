/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/instance-file.h"

#include "exchange/fields.h"
#include "exchange/read-file.h"

#include <math.h>
#include <string.h>

#define MOST_ITEMS 10000
#define MOST_CORNERS 5000

/* What a strip may be wide in its own units. */
#define LEAST_HEIGHT 1e-9
#define MOST_HEIGHT 1e9

/* What a strip is made to be wide (mm): from this to ten times as much. */
#define LEAST_WIDTH_MM 1000.0

/* Items keep within this (mm), as the roll's coordinates do. */
#define MOST_MM 500000.0

#define THOUSANDTHS 1000.0

#define FOR_EACH(json, token, at)                                                                  \
  for (guint at = (token) + 1; at < (json)->tokens[token].next; at = (json)->tokens[at].next)

/* One item while it is read. */
typedef struct
{
  GArray *corners; /* of SqNode, mm */
  GArray *poses;   /* of SqGridPose */
  guint demand;
} Item;

static void
item_clear (Item *item)
{
  g_array_unref (item->corners);
  g_array_unref (item->poses);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Item, item_clear)

/* The value of @key in @object, which must be there. */
static gboolean
find (const SqJson *json, guint object, const char *key, SqJsonKind kind, guint *at, GError **error)
{
  if (!sq_read_kind (json, object, SQ_JSON_OBJECT, error))
    return FALSE;
  *at = sq_json_member (json, object, key);
  if (*at != 0)
    return sq_read_kind (json, *at, kind, error);
  g_autofree char *what = g_strdup_printf ("no %s", key);
  return sq_refuse (json, object, error, what);
}

static gboolean
read_corner (const SqJson *json, guint token, double per_unit_mm, GArray *corners, GError **error)
{
  SqNode node = { 0 };

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  if (sq_json_n_values (json, token) != 2)
    return sq_refuse (json, token, error, "not a point as [x, y]");
  if (!sq_read_number (json, token + 1, &node.at.x, error)
      || !sq_read_number (json, token + 2, &node.at.y, error))
    return FALSE;
  node.at = sq_point (node.at.x * per_unit_mm, node.at.y * per_unit_mm);
  if (!(fabs (node.at.x) <= MOST_MM && fabs (node.at.y) <= MOST_MM))
    return sq_refuse (json, token, error, "too far out for a strip this wide");
  g_array_append_val (corners, node);
  return TRUE;
}

/* The last corner may be the first again. */
static gboolean
read_ring (const SqJson *json, guint token, double per_unit_mm, GArray *corners, GError **error)
{
  FOR_EACH (json, token, at)
  if (!read_corner (json, at, per_unit_mm, corners, error))
    return FALSE;
  if (corners->len > 1)
    {
      SqPoint first = g_array_index (corners, SqNode, 0).at;
      SqPoint last = g_array_index (corners, SqNode, corners->len - 1).at;
      if (first.x == last.x && first.y == last.y)
        g_array_set_size (corners, corners->len - 1);
    }
  if (corners->len > MOST_CORNERS)
    return sq_refuse (json, token, error, "more than 5,000 corners");
  return corners->len >= 3 || sq_refuse (json, token, error, "fewer than three corners");
}

/* Degrees as a pose's turn. */
static gint32
turn_of (double degrees)
{
  double turn = fmod (round (fmod (degrees, 360) * THOUSANDTHS), SQ_GRID_WHOLE_TURN);

  return (gint32) (turn < 0 ? turn + SQ_GRID_WHOLE_TURN : turn);
}

static void
add_pose (GArray *poses, SqGridPose pose)
{
  for (guint i = 0; i < poses->len; i++)
    if (sq_grid_pose_equal (g_array_index (poses, SqGridPose, i), pose))
      return;
  g_array_append_val (poses, pose);
}

static gboolean
read_poses (const SqJson *json, guint item, GArray *poses, GError **error)
{
  guint list = sq_json_member (json, item, "allowed_orientations");

  if (list != 0 && sq_json_kind (json, list) != SQ_JSON_NULL)
    {
      if (!sq_read_kind (json, list, SQ_JSON_ARRAY, error))
        return FALSE;
      FOR_EACH (json, list, at)
      {
        double degrees;
        if (!sq_read_number (json, at, &degrees, error))
          return FALSE;
        add_pose (poses, (SqGridPose){ turn_of (degrees), FALSE });
      }
    }
  if (poses->len == 0)
    add_pose (poses, (SqGridPose){ 0, FALSE });
  return poses->len <= SQ_LAY_MOST_POSES
         || sq_refuse (json, list, error, "more than 64 orientations");
}

static double
ring_area (const GArray *corners)
{
  double twice = 0;

  for (guint i = 0; i < corners->len; i++)
    {
      SqPoint a = g_array_index (corners, SqNode, i).at;
      SqPoint b = g_array_index (corners, SqNode, (i + 1) % corners->len).at;
      twice += a.x * b.y - b.x * a.y;
    }
  return fabs (twice) / 2;
}

static gboolean
read_item (const SqJson *json, guint token, double per_unit_mm, Item *item, GError **error)
{
  guint shape, data, demand;

  if (!find (json, token, "shape", SQ_JSON_OBJECT, &shape, error)
      || !find (json, shape, "data", SQ_JSON_ARRAY, &data, error)
      || !read_ring (json, data, per_unit_mm, item->corners, error)
      || !read_poses (json, token, item->poses, error))
    return FALSE;
  item->demand = 1;
  demand = sq_json_member (json, token, "demand");
  return demand == 0 || sq_read_whole (json, demand, 0, SQ_FILE_MOST_COUNT, &item->demand, error);
}

static void
add_item (SqInstance *instance, const Item *item, guint tag)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  SqLayItemSpec spec = {
    .rings = rings,
    .poses = (const SqGridPose *) (gpointer) item->poses->data,
    .n_poses = item->poses->len,
    .demand = item->demand,
    .tag = tag,
  };

  g_ptr_array_add (rings, sq_path_new ((const SqNode *) (gpointer) item->corners->data,
                                       item->corners->len, TRUE));
  instance->area += item->demand * ring_area (item->corners)
                    / (instance->per_unit_mm * instance->per_unit_mm);
  sq_lay_task_add (instance->task, &spec);
}

/* Its width, which is what a unit is measured by. */
static gboolean
read_strip (const SqJson *json, SqInstance *instance, GError **error)
{
  guint token;

  if (!find (json, 0, "strip_height", SQ_JSON_NUMBER, &token, error)
      || !sq_read_number (json, token, &instance->strip_height, error))
    return FALSE;
  if (!(instance->strip_height >= LEAST_HEIGHT && instance->strip_height <= MOST_HEIGHT))
    return sq_refuse (json, token, error, "no width of a strip");
  instance->per_unit_mm = pow (10,
                               -floor (log10 (instance->strip_height / LEAST_WIDTH_MM) + 1e-12));
  double width_um = instance->strip_height * instance->per_unit_mm * SQ_GRID_PER_MM;
  SqLayStrip strip = { .kind = SQ_STRIP_ROLL, .width = (gint32) floor (width_um + 1e-6) };
  sq_lay_task_add_strip (instance->task, &strip);
  return TRUE;
}

static gboolean
read_items (const SqJson *json, SqInstance *instance, GError **error)
{
  guint items, tag = 0;

  if (!find (json, 0, "items", SQ_JSON_ARRAY, &items, error))
    return FALSE;
  if (sq_json_n_values (json, items) > MOST_ITEMS)
    return sq_refuse (json, items, error, "more than 10,000 items");
  FOR_EACH (json, items, at)
  {
    g_auto (Item) item = { g_array_new (FALSE, FALSE, sizeof (SqNode)),
                           g_array_new (FALSE, FALSE, sizeof (SqGridPose)), 0 };
    if (!read_item (json, at, instance->per_unit_mm, &item, error))
      return FALSE;
    add_item (instance, &item, tag++);
  }
  return TRUE;
}

/* Its own name, else the file's without its ending. */
static gboolean
read_name (const SqJson *json, SqInstance *instance, const char *path, GError **error)
{
  guint token = sq_json_member (json, 0, "name");

  if (token != 0)
    {
      if (!sq_read_kind (json, token, SQ_JSON_STRING, error))
        return FALSE;
      instance->name = sq_json_dup_string (json, token);
      return TRUE;
    }
  instance->name = g_filename_display_basename (path);
  if (g_str_has_suffix (instance->name, ".json"))
    instance->name[strlen (instance->name) - strlen (".json")] = '\0';
  return TRUE;
}

SqInstance *
sq_instance_load (const char *path, GError **error)
{
  g_autoptr (SqInstance) instance = g_new0 (SqInstance, 1);
  g_autofree char *text = NULL, *shown = g_filename_display_name (path);
  gsize length;

  instance->task = sq_lay_task_new (0);
  if (!sq_file_load (path, SQ_JSON_MOST_BYTES, &text, &length, error))
    return NULL;
  g_autoptr (SqJson) json = sq_json_scan (text, (gssize) length, error);
  if (json == NULL || !sq_read_kind (json, 0, SQ_JSON_OBJECT, error)
      || !read_name (json, instance, path, error) || !read_strip (json, instance, error)
      || !read_items (json, instance, error))
    {
      g_prefix_error (error, "%s: ", shown);
      return NULL;
    }
  sq_lay_task_seal (instance->task);
  return g_steal_pointer (&instance);
}

void
sq_instance_free (SqInstance *instance)
{
  if (instance == NULL)
    return;
  g_clear_pointer (&instance->task, sq_lay_task_unref);
  g_free (instance->name);
  g_free (instance);
}

double
sq_instance_length (const SqInstance *instance, const SqLay *lay)
{
  return sq_lay_length (lay, 0) / (SQ_GRID_PER_MM * instance->per_unit_mm);
}

/* What is not laid, lies nowhere. */
static double
unlaid_area (const SqInstance *instance, const SqLay *lay)
{
  double area_mm2 = 0;

  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      const SqLayItem *item = sq_lay_task_item (instance->task, unlaid->item);
      area_mm2 += unlaid->count * sq_grid_rings_area_mm2 (item->rings, item->n_rings);
    }
  return area_mm2 / (instance->per_unit_mm * instance->per_unit_mm);
}

double
sq_instance_density (const SqInstance *instance, const SqLay *lay)
{
  double length = sq_instance_length (instance, lay);

  return length > 0
             ? (instance->area - unlaid_area (instance, lay)) / (length * instance->strip_height)
             : 0;
}
