/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dxf-tables.h"

/* $INSUNITS: help.autodesk.com, "INSUNITS (System Variable)". */
#define INSUNITS_MM 4

/* --- sections and blocks -------------------------------------------------------------------- */

void
sq_dxf_begin_section (SqDxfOut *out, const char *name)
{
  sq_dxf_string (out, 0, "SECTION");
  sq_dxf_string (out, 2, name);
}

void
sq_dxf_end_section (SqDxfOut *out)
{
  sq_dxf_string (out, 0, "ENDSEC");
}

void
sq_dxf_begin_block (SqDxfOut *out, guint32 record, const char *layer, const char *name)
{
  sq_dxf_entity (out, "BLOCK", record, layer);
  sq_dxf_subclass (out, "AcDbBlockBegin");
  sq_dxf_string (out, 2, name);
  sq_dxf_integer (out, 70, 0);
  sq_dxf_point (out, 10, sq_point (0, 0), 0);
  sq_dxf_string (out, 3, name);
  sq_dxf_string (out, 1, "");
}

void
sq_dxf_end_block (SqDxfOut *out, guint32 record, const char *layer)
{
  sq_dxf_entity (out, "ENDBLK", record, layer);
  sq_dxf_subclass (out, "AcDbBlockEnd");
}

/* --- header --------------------------------------------------------------------------------- */

static void
add_corner (SqDxfOut *out, const char *variable, SqPoint corner)
{
  sq_dxf_string (out, 9, variable);
  sq_dxf_point (out, 10, corner, 0);
}

static void
add_classes (SqDxfOut *out)
{
  sq_dxf_begin_section (out, "CLASSES");
  sq_dxf_groups (out, "0 CLASS|1 ACDBDICTIONARYWDFLT|2 AcDbDictionaryWithDefault"
                      "|3 ObjectDBX Classes|90 0|280 0|281 0");
  sq_dxf_groups (out, "0 CLASS|1 ACDBPLACEHOLDER|2 AcDbPlaceHolder"
                      "|3 ObjectDBX Classes|90 0|280 0|281 0");
  sq_dxf_groups (out, "0 CLASS|1 LAYOUT|2 AcDbLayout"
                      "|3 ObjectDBX Classes|90 0|280 0|281 0");
  sq_dxf_end_section (out);
}

void
sq_dxf_header (SqDxfOut *out, SqBox box, guint32 next_handle)
{
  gboolean old = out->release == SQ_DXF_R12;

  sq_dxf_begin_section (out, "HEADER");
  sq_dxf_groups (out, old ? "9 $ACADVER|1 AC1009" : "9 $ACADVER|1 AC1015");
  if (!old)
    sq_dxf_groups (out, "9 $DWGCODEPAGE|3 ANSI_1252");
  add_corner (out, "$INSBASE", sq_point (0, 0));
  add_corner (out, "$EXTMIN", box.min);
  add_corner (out, "$EXTMAX", box.max);
  if (!old)
    {
      sq_dxf_groups (out, "9 $MEASUREMENT|70 1|9 $INSUNITS");
      sq_dxf_integer (out, 70, INSUNITS_MM);
      sq_dxf_string (out, 9, "$HANDSEED");
      sq_dxf_handle (out, 5, next_handle);
    }
  sq_dxf_end_section (out);
  if (!old)
    add_classes (out);
}

/* --- tables --------------------------------------------------------------------------------- */

static void
begin_table (SqDxfOut *out, const char *name, guint32 handle, guint n)
{
  sq_dxf_string (out, 0, "TABLE");
  sq_dxf_string (out, 2, name);
  if (out->release != SQ_DXF_R12)
    {
      sq_dxf_handle (out, 5, handle);
      sq_dxf_handle (out, 330, 0);
    }
  sq_dxf_subclass (out, "AcDbSymbolTable");
  sq_dxf_integer (out, 70, (int) n);
}

static void
end_table (SqDxfOut *out)
{
  sq_dxf_string (out, 0, "ENDTAB");
}

/* The start of an entry, as far as its name. */
static void
begin_record (SqDxfOut *out, const char *type, guint32 handle, guint32 table, const char *subclass,
              const char *name)
{
  sq_dxf_string (out, 0, type);
  if (out->release != SQ_DXF_R12)
    {
      sq_dxf_handle (out, table == SQ_DXF_DIMSTYLES ? 105 : 5, handle);
      sq_dxf_handle (out, 330, table);
    }
  sq_dxf_subclass (out, "AcDbSymbolTableRecord");
  sq_dxf_subclass (out, subclass);
  sq_dxf_string (out, 2, name);
}

/* What is seen when the file is opened: all of it. */
static void
add_views (SqDxfOut *out, SqBox box)
{
  begin_table (out, "VPORT", SQ_DXF_VPORTS, 1);
  begin_record (out, "VPORT", SQ_DXF_VPORT, SQ_DXF_VPORTS, "AcDbViewportTableRecord", "*Active");
  sq_dxf_groups (out, "70 0|10 0.0|20 0.0|11 1.0|21 1.0");
  sq_dxf_length (out, 12, (box.min.x + box.max.x) / 2);
  sq_dxf_length (out, 22, (box.min.y + box.max.y) / 2);
  sq_dxf_groups (out, "13 0.0|23 0.0|14 10.0|24 10.0|15 10.0|25 10.0|16 0.0|26 0.0|36 1.0"
                      "|17 0.0|27 0.0|37 0.0");
  sq_dxf_length (out, 40, fmax (fmax (box.max.y - box.min.y, box.max.x - box.min.x), 1));
  sq_dxf_groups (out, "41 1.0|42 50.0|43 0.0|44 0.0|50 0.0|51 0.0|71 0|72 1000|73 1|74 3|75 0"
                      "|76 0|77 0|78 0");
  end_table (out);
}

static void
add_line_types (SqDxfOut *out)
{
  const char *const names[] = { "ByBlock", "ByLayer", "CONTINUOUS" };
  guint first = out->release == SQ_DXF_R12 ? 2 : 0;

  begin_table (out, "LTYPE", SQ_DXF_LTYPES, G_N_ELEMENTS (names) - first);
  for (guint i = first; i < G_N_ELEMENTS (names); i++)
    {
      begin_record (out, "LTYPE", SQ_DXF_LTYPE + i, SQ_DXF_LTYPES, "AcDbLinetypeTableRecord",
                    names[i]);
      sq_dxf_groups (out, "70 0|3 |72 65|73 0|40 0.0");
    }
  end_table (out);
}

static void
add_layer (SqDxfOut *out, const SqDxfLayer *layer)
{
  begin_record (out, "LAYER", out->next_handle++, SQ_DXF_LAYERS, "AcDbLayerTableRecord",
                layer->name);
  sq_dxf_integer (out, 70, 0);
  sq_dxf_integer (out, 62, layer->colour);
  sq_dxf_string (out, 6, "CONTINUOUS");
  if (out->release != SQ_DXF_R12)
    {
      sq_dxf_integer (out, 370, -3);
      sq_dxf_handle (out, 390, SQ_DXF_PLOT_STYLE);
    }
}

/* Layer 0 is there whether anything is on it or not. */
static void
add_layers (SqDxfOut *out, const SqDxfLayer *layers, guint n_layers)
{
  const SqDxfLayer zero = { "0", 7 };

  begin_table (out, "LAYER", SQ_DXF_LAYERS, n_layers + 1);
  add_layer (out, &zero);
  for (guint i = 0; i < n_layers; i++)
    add_layer (out, &layers[i]);
  end_table (out);
}

static void
add_style (SqDxfOut *out)
{
  begin_table (out, "STYLE", SQ_DXF_STYLES, 1);
  begin_record (out, "STYLE", SQ_DXF_STYLE, SQ_DXF_STYLES, "AcDbTextStyleTableRecord", "STANDARD");
  sq_dxf_groups (out, "70 0|40 0.0|41 1.0|50 0.0|71 0|42 2.5|3 txt|4 ");
  end_table (out);
}

static void
add_empty (SqDxfOut *out, const char *name, guint32 handle)
{
  begin_table (out, name, handle, 0);
  end_table (out);
}

static void
add_application (SqDxfOut *out)
{
  begin_table (out, "APPID", SQ_DXF_APPIDS, 1);
  begin_record (out, "APPID", SQ_DXF_APPID, SQ_DXF_APPIDS, "AcDbRegAppTableRecord", "ACAD");
  sq_dxf_integer (out, 70, 0);
  end_table (out);
}

static void
add_dimension_style (SqDxfOut *out)
{
  begin_table (out, "DIMSTYLE", SQ_DXF_DIMSTYLES, 1);
  sq_dxf_subclass (out, "AcDbDimStyleTable");
  sq_dxf_integer (out, 71, 0);
  begin_record (out, "DIMSTYLE", SQ_DXF_DIMSTYLE, SQ_DXF_DIMSTYLES, "AcDbDimStyleTableRecord",
                "STANDARD");
  sq_dxf_integer (out, 70, 0);
  end_table (out);
}

static void
add_block_record (SqDxfOut *out, const char *name, guint32 handle, guint32 layout)
{
  begin_record (out, "BLOCK_RECORD", handle, SQ_DXF_RECORDS, "AcDbBlockTableRecord", name);
  sq_dxf_handle (out, 340, layout);
}

static void
add_block_records (SqDxfOut *out, const GPtrArray *blocks)
{
  begin_table (out, "BLOCK_RECORD", SQ_DXF_RECORDS, blocks->len + 2);
  add_block_record (out, "*Model_Space", SQ_DXF_MODEL, SQ_DXF_MODEL_LAYOUT);
  add_block_record (out, "*Paper_Space", SQ_DXF_PAPER, SQ_DXF_PAPER_LAYOUT);
  for (guint i = 0; i < blocks->len; i++)
    add_block_record (out, g_ptr_array_index (blocks, i), SQ_DXF_PIECES + i, 0);
  end_table (out);
}

void
sq_dxf_tables (SqDxfOut *out, SqBox box, const SqDxfLayer *layers, guint n_layers,
               const GPtrArray *blocks)
{
  sq_dxf_begin_section (out, "TABLES");
  if (out->release != SQ_DXF_R12)
    add_views (out, box);
  add_line_types (out);
  add_layers (out, layers, n_layers);
  add_style (out);
  if (out->release != SQ_DXF_R12)
    {
      add_empty (out, "VIEW", SQ_DXF_VIEWS);
      add_empty (out, "UCS", SQ_DXF_UCSS);
      add_application (out);
      add_dimension_style (out);
      add_block_records (out, blocks);
    }
  sq_dxf_end_section (out);
}

/* --- objects -------------------------------------------------------------------------------- */

static void
begin_object (SqDxfOut *out, const char *type, guint32 handle, guint32 owner)
{
  sq_dxf_string (out, 0, type);
  sq_dxf_handle (out, 5, handle);
  sq_dxf_handle (out, 330, owner);
}

static void
begin_dictionary (SqDxfOut *out, guint32 handle, guint32 owner)
{
  begin_object (out, "DICTIONARY", handle, owner);
  sq_dxf_groups (out, "100 AcDbDictionary|281 1");
}

static void
add_named (SqDxfOut *out, const char *name, guint32 handle)
{
  sq_dxf_string (out, 3, name);
  sq_dxf_handle (out, 350, handle);
}

static void
add_plot_styles (SqDxfOut *out)
{
  begin_object (out, "ACDBDICTIONARYWDFLT", SQ_DXF_PLOTS, SQ_DXF_ROOT);
  sq_dxf_groups (out, "100 AcDbDictionary|281 1");
  add_named (out, "Normal", SQ_DXF_PLOT_STYLE);
  sq_dxf_string (out, 100, "AcDbDictionaryWithDefault");
  sq_dxf_handle (out, 340, SQ_DXF_PLOT_STYLE);
  begin_object (out, "ACDBPLACEHOLDER", SQ_DXF_PLOT_STYLE, SQ_DXF_PLOTS);
}

static void
add_multiline_style (SqDxfOut *out)
{
  begin_object (out, "MLINESTYLE", SQ_DXF_MLINE, SQ_DXF_MLINES);
  sq_dxf_groups (out, "100 AcDbMlineStyle|2 STANDARD|70 0|3 |62 256|51 90.0|52 90.0|71 2"
                      "|49 0.5|62 256|6 BYLAYER|49 -0.5|62 256|6 BYLAYER");
}

/* Model space has plot settings of its own kind: 1024 of their flags. */
static void
add_layout (SqDxfOut *out, const char *name, guint32 handle, guint32 record, SqBox box)
{
  gboolean model = record == SQ_DXF_MODEL;

  begin_object (out, "LAYOUT", handle, SQ_DXF_LAYOUTS);
  sq_dxf_groups (out, "100 AcDbPlotSettings|1 |2 none_device|4 |6 |40 0.0|41 0.0|42 0.0|43 0.0"
                      "|44 0.0|45 0.0|46 0.0|47 0.0|48 0.0|49 0.0|140 0.0|141 0.0|142 1.0|143 1.0");
  sq_dxf_integer (out, 70, model ? 1024 : 0);
  sq_dxf_groups (out, "72 1|73 0|74 5|7 |75 16|147 1.0|148 0.0|149 0.0|100 AcDbLayout");
  sq_dxf_string (out, 1, name);
  sq_dxf_integer (out, 70, 1);
  sq_dxf_integer (out, 71, model ? 0 : 1);
  sq_dxf_groups (out, "10 0.0|20 0.0|11 420.0|21 297.0|12 0.0|22 0.0|32 0.0");
  sq_dxf_point (out, 14, model ? box.min : sq_point (0, 0), 0);
  sq_dxf_point (out, 15, model ? box.max : sq_point (0, 0), 0);
  sq_dxf_groups (out,
                 "146 0.0|13 0.0|23 0.0|33 0.0|16 1.0|26 0.0|36 0.0|17 0.0|27 1.0|37 0.0|76 0");
  sq_dxf_handle (out, 330, record);
}

void
sq_dxf_objects (SqDxfOut *out, SqBox box)
{
  if (out->release == SQ_DXF_R12)
    return;
  sq_dxf_begin_section (out, "OBJECTS");
  begin_dictionary (out, SQ_DXF_ROOT, 0);
  add_named (out, "ACAD_GROUP", SQ_DXF_GROUPS);
  add_named (out, "ACAD_LAYOUT", SQ_DXF_LAYOUTS);
  add_named (out, "ACAD_MLINESTYLE", SQ_DXF_MLINES);
  add_named (out, "ACAD_PLOTSTYLENAME", SQ_DXF_PLOTS);
  begin_dictionary (out, SQ_DXF_GROUPS, SQ_DXF_ROOT);
  begin_dictionary (out, SQ_DXF_LAYOUTS, SQ_DXF_ROOT);
  add_named (out, "Model", SQ_DXF_MODEL_LAYOUT);
  add_named (out, "Layout1", SQ_DXF_PAPER_LAYOUT);
  begin_dictionary (out, SQ_DXF_MLINES, SQ_DXF_ROOT);
  add_named (out, "STANDARD", SQ_DXF_MLINE);
  add_plot_styles (out);
  add_multiline_style (out);
  add_layout (out, "Model", SQ_DXF_MODEL_LAYOUT, SQ_DXF_MODEL, box);
  add_layout (out, "Layout1", SQ_DXF_PAPER_LAYOUT, SQ_DXF_PAPER, box);
  sq_dxf_end_section (out);
}
