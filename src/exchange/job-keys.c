/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/job-keys.h"

#include "job/names.h"

/* Of the roll: the cloth's up points to this end. */
static const char *const up_words[] = { "end", "start", NULL };

#define AT(record, member) .offset = G_STRUCT_OFFSET (record, member)

/* One kind of object; what it does not know is kept in @where. */
#define KEYS(name, list, record, given, where)                                                     \
  const SqFields name = { list, G_N_ELEMENTS (list), G_STRUCT_OFFSET (record, given), TRUE,        \
                          G_STRUCT_OFFSET (record, where) }

static const SqField corner_fields[] = {
  { "id", SQ_FIELD_ID, AT (SqCorner, id), .need = SQ_FIELD_WRITTEN },
  { "x", SQ_FIELD_LENGTH, AT (SqCorner, at.x), .need = SQ_FIELD_REQUIRED },
  { "y", SQ_FIELD_LENGTH, AT (SqCorner, at.y), .need = SQ_FIELD_REQUIRED },
  { "bow", SQ_FIELD_OWN, .read = sq_read_bow, .write = sq_write_bow },
  { "curve", SQ_FIELD_OWN, .read = sq_read_curve, .write = sq_write_curve },
  { "radius", SQ_FIELD_LENGTH, AT (SqCorner, radius_mm), SQ_GIVEN_RADIUS },
  { "clearance", SQ_FIELD_LENGTH, AT (SqCorner, clearance_mm), SQ_GIVEN_CLEARANCE },
  { "kind", SQ_FIELD_WORD, AT (SqCorner, kind), SQ_GIVEN_KIND, .words = sq_edge_kind_names },
  { "seen", SQ_FIELD_SWITCH, AT (SqCorner, seen), SQ_GIVEN_SEEN },
  { "build", SQ_FIELD_WORD, AT (SqCorner, build), SQ_GIVEN_EDGE_BUILD,
    .words = sq_edge_build_names },
  { "front", SQ_FIELD_SWITCH, AT (SqCorner, front) },
  { "note", SQ_FIELD_TEXT, AT (SqCorner, note) },
  { "corner_note", SQ_FIELD_TEXT, AT (SqCorner, corner_note) },
};
KEYS (sq_corner_keys, corner_fields, SqCorner, given, unknown);

static const SqField wrap_fields[] = {
  { "depth", SQ_FIELD_LENGTH, AT (SqCushion, wrap.depth_mm), SQ_GIVEN_WRAP_DEPTH },
  { "style", SQ_FIELD_WORD, AT (SqCushion, wrap.style), SQ_GIVEN_WRAP_STYLE,
    .words = sq_wrap_style_names },
};
static KEYS (wrap_keys, wrap_fields, SqCushion, given, unknown[SQ_ON_WRAP]);

static const SqField allowance_fields[] = {
  { "corner", SQ_FIELD_LENGTH, AT (SqCushion, allowance.corner_mm), SQ_GIVEN_ALLOWANCE_CORNER },
  { "perimeter", SQ_FIELD_LENGTH, AT (SqCushion, allowance.perimeter_mm),
    SQ_GIVEN_ALLOWANCE_PERIMETER },
  { "zip", SQ_FIELD_LENGTH, AT (SqCushion, allowance.zip_mm), SQ_GIVEN_ALLOWANCE_ZIP },
  { "join", SQ_FIELD_LENGTH, AT (SqCushion, allowance.join_mm), SQ_GIVEN_ALLOWANCE_JOIN },
};
static KEYS (allowance_keys, allowance_fields, SqCushion, given, unknown[SQ_ON_ALLOWANCES]);

static const SqField cushion_foam_fields[] = {
  { "material", SQ_FIELD_WORD, AT (SqCushion, foam.kind), SQ_GIVEN_FOAM_KIND,
    .words = sq_foam_kind_names },
  { "oversize", SQ_FIELD_LENGTH, AT (SqCushion, foam.oversize_mm), SQ_GIVEN_FOAM_OVERSIZE },
  { "batting", SQ_FIELD_LENGTH, AT (SqCushion, foam.batting_mm), SQ_GIVEN_FOAM_BATTING },
};
static KEYS (cushion_foam_keys, cushion_foam_fields, SqCushion, given, unknown[SQ_ON_FOAM]);

static const SqField zip_fields[] = {
  { "place", SQ_FIELD_WORD, AT (SqCushion, zip.place), SQ_GIVEN_ZIP_PLACE,
    .words = sq_zip_place_names },
  { "edge", SQ_FIELD_ID, AT (SqCushion, zip.edge), SQ_GIVEN_ZIP_EDGE },
  { "from", SQ_FIELD_LENGTH, AT (SqCushion, zip.from_mm), SQ_GIVEN_ZIP_FROM },
  { "to", SQ_FIELD_LENGTH, AT (SqCushion, zip.to_mm), SQ_GIVEN_ZIP_TO },
  { "at", SQ_FIELD_LENGTH, AT (SqCushion, zip.at_mm), SQ_GIVEN_ZIP_AT },
  { "extension", SQ_FIELD_LENGTH, AT (SqCushion, zip.extension_mm), SQ_GIVEN_ZIP_EXTENSION },
  { "tuck", SQ_FIELD_LENGTH, AT (SqCushion, zip.tuck_mm), SQ_GIVEN_ZIP_TUCK },
  { "method", SQ_FIELD_WORD, AT (SqCushion, zip.method), SQ_GIVEN_ZIP_METHOD,
    .words = sq_zip_method_names },
};
static KEYS (zip_keys, zip_fields, SqCushion, given, unknown[SQ_ON_ZIP]);

static const SqField cushion_cloth_fields[] = {
  { "face", SQ_FIELD_ID, AT (SqCushion, cloth.face), SQ_GIVEN_CLOTH_FACE },
  { "underside", SQ_FIELD_ID, AT (SqCushion, cloth.underside), SQ_GIVEN_CLOTH_UNDERSIDE },
  { "sides", SQ_FIELD_ID, AT (SqCushion, cloth.sides), SQ_GIVEN_CLOTH_SIDES },
  { "welt", SQ_FIELD_ID, AT (SqCushion, cloth.welt), SQ_GIVEN_CLOTH_WELT },
};
static KEYS (cushion_cloth_keys, cushion_cloth_fields, SqCushion, given, unknown[SQ_ON_CLOTH]);

static const SqField cushion_stripes_fields[] = {
  { "run", SQ_FIELD_WORD, AT (SqCushion, stripes.run), SQ_GIVEN_STRIPES_RUN,
    .words = sq_stripes_run_names },
  { "centre_on", SQ_FIELD_WORD, AT (SqCushion, stripes.centre_on), SQ_GIVEN_CENTRE_ON,
    .words = sq_centre_on_names },
  { "shift", SQ_FIELD_LENGTH, AT (SqCushion, stripes.shift_mm), SQ_GIVEN_STRIPES_SHIFT },
};
static KEYS (cushion_stripes_keys, cushion_stripes_fields, SqCushion, given,
             unknown[SQ_ON_STRIPES]);

static const SqField welt_fields[] = {
  { "at", SQ_FIELD_WORD, AT (SqCushion, welt.at), SQ_GIVEN_WELT_AT, .words = sq_welt_at_names },
  { "cord", SQ_FIELD_LENGTH, AT (SqCushion, welt.cord_mm), SQ_GIVEN_WELT_CORD },
  { "cut", SQ_FIELD_WORD, AT (SqCushion, welt.cut), SQ_GIVEN_WELT_CUT, .words = sq_welt_cut_names },
  { "overlap", SQ_FIELD_LENGTH, AT (SqCushion, welt.overlap_mm), SQ_GIVEN_WELT_OVERLAP },
};
static KEYS (welt_keys, welt_fields, SqCushion, given_way, unknown[SQ_ON_WELT]);

static const SqField profile_fields[] = {
  { "kind", SQ_FIELD_WORD, AT (SqCushion, profile.kind), SQ_GIVEN_PROFILE,
    .words = sq_profile_names },
  { "radius", SQ_FIELD_LENGTH, AT (SqCushion, profile.radius_mm), SQ_GIVEN_PROFILE_RADIUS },
};
static KEYS (profile_keys, profile_fields, SqCushion, given_way, unknown[SQ_ON_PROFILE]);

static const SqField bolster_fields[] = {
  { "section", SQ_FIELD_WORD, AT (SqCushion, bolster.section), SQ_GIVEN_BOLSTER_SECTION,
    .words = sq_section_names },
  { "diameter", SQ_FIELD_LENGTH, AT (SqCushion, bolster.diameter_mm), SQ_GIVEN_BOLSTER_DIAMETER },
  { "length", SQ_FIELD_LENGTH, AT (SqCushion, bolster.length_mm), SQ_GIVEN_BOLSTER_LENGTH },
  { "rise", SQ_FIELD_LENGTH, AT (SqCushion, bolster.rise_mm), SQ_GIVEN_BOLSTER_RISE },
};
static KEYS (bolster_keys, bolster_fields, SqCushion, given_way, unknown[SQ_ON_BOLSTER]);

static const SqField split_fields[] = {
  { "upper", SQ_FIELD_LENGTH, AT (SqCushion, split.upper_mm), SQ_GIVEN_SPLIT_UPPER },
};
static KEYS (split_keys, split_fields, SqCushion, given_way, unknown[SQ_ON_SPLIT]);

static const SqField knife_edge_fields[] = {
  { "filling", SQ_FIELD_WORD, AT (SqCushion, knife_edge.filling), SQ_GIVEN_FILLING,
    .words = sq_filling_names },
  { "draw_in", SQ_FIELD_LENGTH, AT (SqCushion, knife_edge.draw_in_mm), SQ_GIVEN_DRAW_IN },
};
static KEYS (knife_edge_keys, knife_edge_fields, SqCushion, given_way, unknown[SQ_ON_KNIFE_EDGE]);

static const SqField cushion_fields[] = {
  { "id", SQ_FIELD_ID, AT (SqCushion, id), .need = SQ_FIELD_WRITTEN },
  { "name", SQ_FIELD_TEXT, AT (SqCushion, name) },
  { "count", SQ_FIELD_COUNT, AT (SqCushion, count), SQ_GIVEN_COUNT },
  { "hand", SQ_FIELD_WORD, AT (SqCushion, hand), SQ_GIVEN_HAND, .words = sq_hand_names },
  { "thickness", SQ_FIELD_LENGTH, AT (SqCushion, thickness_mm), SQ_GIVEN_THICKNESS },
  { "build", SQ_FIELD_WORD, AT (SqCushion, build), SQ_GIVEN_BUILD, .words = sq_build_names },
  { "reversible", SQ_FIELD_SWITCH, AT (SqCushion, reversible), SQ_GIVEN_REVERSIBLE },
  { "seams_across", SQ_FIELD_WORD, AT (SqCushion, seams_across), SQ_GIVEN_SEAMS_ACROSS,
    .words = sq_seams_across_names },
  { "outline", SQ_FIELD_OWN, .write = sq_write_outline },
  { "holes", SQ_FIELD_OWN, .write = sq_write_holes },
  { "underside_wrap", SQ_FIELD_PART, .part = &wrap_keys },
  { "allowances", SQ_FIELD_PART, .part = &allowance_keys },
  { "foam", SQ_FIELD_PART, .part = &cushion_foam_keys },
  { "zip", SQ_FIELD_PART, .part = &zip_keys },
  { "welt", SQ_FIELD_PART, .part = &welt_keys },
  { "front_profile", SQ_FIELD_PART, .part = &profile_keys },
  { "bolster", SQ_FIELD_PART, .part = &bolster_keys },
  { "split_side", SQ_FIELD_PART, .part = &split_keys },
  { "knife_edge", SQ_FIELD_PART, .part = &knife_edge_keys },
  { "cloth", SQ_FIELD_PART, .part = &cushion_cloth_keys },
  { "stripes", SQ_FIELD_PART, .part = &cushion_stripes_keys },
};
KEYS (sq_cushion_keys, cushion_fields, SqCushion, given, unknown[SQ_ON_CUSHION]);

static const SqField stripe_fields[] = {
  { "at", SQ_FIELD_LENGTH, AT (SqStripe, at_mm), .need = SQ_FIELD_REQUIRED },
  { "width", SQ_FIELD_LENGTH, AT (SqStripe, width_mm), .need = SQ_FIELD_REQUIRED },
  { "colour", SQ_FIELD_COLOUR, AT (SqStripe, colour), .need = SQ_FIELD_REQUIRED },
};
KEYS (sq_stripe_keys, stripe_fields, SqStripe, colour, unknown);

static const SqField repeat_fields[] = {
  { "across", SQ_FIELD_LENGTH, AT (SqCloth, repeat_across_mm) },
  { "along", SQ_FIELD_LENGTH, AT (SqCloth, repeat_along_mm) },
  { "drop", SQ_FIELD_HALF, AT (SqCloth, drop), .need = SQ_FIELD_OPTIONAL },
};
static KEYS (repeat_keys, repeat_fields, SqCloth, given, unknown_repeat);

static const SqField stock_fields[] = {
  { "id", SQ_FIELD_ID, AT (SqStock, id), .need = SQ_FIELD_WRITTEN },
  { "kind", SQ_FIELD_WORD, AT (SqStock, kind), .need = SQ_FIELD_WRITTEN,
    .words = sq_stock_kind_names },
  { "length", SQ_FIELD_SIZE, AT (SqStock, length_mm), .need = SQ_FIELD_REQUIRED },
  { "width", SQ_FIELD_SIZE, AT (SqStock, width_mm) },
};
static KEYS (stock_keys, stock_fields, SqStock, unknown, unknown);

static const SqField flaw_fields[] = {
  { "id", SQ_FIELD_ID, AT (SqFlaw, id), .need = SQ_FIELD_WRITTEN },
  { "stock", SQ_FIELD_ID, AT (SqFlaw, stock) },
  { "x", SQ_FIELD_LENGTH, AT (SqFlaw, x_mm), .need = SQ_FIELD_REQUIRED },
  { "y", SQ_FIELD_LENGTH, AT (SqFlaw, y_mm), .need = SQ_FIELD_REQUIRED },
  { "length", SQ_FIELD_SIZE, AT (SqFlaw, along_mm), .need = SQ_FIELD_REQUIRED },
  { "width", SQ_FIELD_SIZE, AT (SqFlaw, across_mm), .need = SQ_FIELD_REQUIRED },
};
static KEYS (flaw_keys, flaw_fields, SqFlaw, unknown, unknown);

static const SqField cloth_fields[] = {
  { "id", SQ_FIELD_ID, AT (SqCloth, id), .need = SQ_FIELD_WRITTEN },
  { "name", SQ_FIELD_TEXT, AT (SqCloth, name) },
  { "class", SQ_FIELD_WORD, AT (SqCloth, kind), SQ_GIVEN_CLOTH_CLASS,
    .words = sq_cloth_class_names },
  { "width", SQ_FIELD_LENGTH, AT (SqCloth, width_mm), SQ_GIVEN_CLOTH_WIDTH },
  { "thickness", SQ_FIELD_LENGTH, AT (SqCloth, thickness_mm), SQ_GIVEN_CLOTH_THICKNESS },
  { "one_way", SQ_FIELD_SWITCH, AT (SqCloth, one_way), SQ_GIVEN_CLOTH_ONE_WAY },
  { "up", SQ_FIELD_WORD, AT (SqCloth, up_is_start), SQ_GIVEN_CLOTH_UP, .words = up_words },
  { "colour", SQ_FIELD_COLOUR, AT (SqCloth, colour), SQ_GIVEN_CLOTH_COLOUR },
  { "price", SQ_FIELD_NUMBER, AT (SqCloth, price), SQ_GIVEN_CLOTH_PRICE },
  { "repeat", SQ_FIELD_PART, .part = &repeat_keys },
  { "stripes", SQ_FIELD_OWN, .read = sq_read_stripes, .write = sq_write_stripes },
  { "stock", SQ_FIELD_LIST, AT (SqCloth, stock), .part = &stock_keys, .read = sq_check_stock },
  { "flaws", SQ_FIELD_LIST, AT (SqCloth, flaws), .part = &flaw_keys, .read = sq_check_flaws },
};
KEYS (sq_cloth_keys, cloth_fields, SqCloth, given, unknown);

static const SqField foam_sheet_fields[] = {
  { "length", SQ_FIELD_SIZE, AT (SqFoam, sheet_length_mm), SQ_GIVEN_FOAM_SHEET_LENGTH },
  { "width", SQ_FIELD_SIZE, AT (SqFoam, sheet_width_mm), SQ_GIVEN_FOAM_SHEET_WIDTH },
};
static KEYS (foam_sheet_keys, foam_sheet_fields, SqFoam, given, unknown_sheet);

static const SqField foam_fields[] = {
  { "id", SQ_FIELD_ID, AT (SqFoam, id), .need = SQ_FIELD_WRITTEN },
  { "material", SQ_FIELD_WORD, AT (SqFoam, kind), .need = SQ_FIELD_WRITTEN,
    .words = sq_foam_kind_names },
  { "density", SQ_FIELD_NUMBER, AT (SqFoam, density_kg_m3), SQ_GIVEN_FOAM_DENSITY },
  { "ifd", SQ_FIELD_NUMBER, AT (SqFoam, ifd_n), SQ_GIVEN_FOAM_IFD },
  { "price", SQ_FIELD_NUMBER, AT (SqFoam, price), SQ_GIVEN_FOAM_PRICE },
  { "sheet", SQ_FIELD_PART, .part = &foam_sheet_keys },
  { "kerf", SQ_FIELD_SIZE, AT (SqFoam, kerf_mm), SQ_GIVEN_FOAM_KERF },
};
KEYS (sq_foam_keys, foam_fields, SqFoam, given, unknown);

static const SqField kept_strip_fields[] = {
  { "width", SQ_FIELD_LENGTH, AT (SqKeptStrip, width_mm), .need = SQ_FIELD_REQUIRED },
  { "length", SQ_FIELD_NUMBER, AT (SqKeptStrip, length_mm), .need = SQ_FIELD_REQUIRED },
};
static KEYS (kept_strip_keys, kept_strip_fields, SqKeptStrip, unknown, unknown);

static const SqField kept_piece_fields[] = {
  { "cushion", SQ_FIELD_ID, AT (SqKeptPiece, cushion), .need = SQ_FIELD_REQUIRED },
  { "mirrored", SQ_FIELD_SWITCH, AT (SqKeptPiece, mirrored) },
  { "piece", SQ_FIELD_WHOLE, AT (SqKeptPiece, piece), .need = SQ_FIELD_REQUIRED },
  { "name", SQ_FIELD_TEXT, AT (SqKeptPiece, name) },
  { "cut", SQ_FIELD_OWN, .need = SQ_FIELD_REQUIRED, .read = sq_read_cut, .write = sq_write_cut },
};
static KEYS (kept_piece_keys, kept_piece_fields, SqKeptPiece, unknown, unknown);

static const SqField kept_placed_fields[] = {
  { "piece", SQ_FIELD_WHOLE, AT (SqKeptPlaced, piece), .need = SQ_FIELD_REQUIRED },
  { "copy", SQ_FIELD_WHOLE, AT (SqKeptPlaced, copy), .need = SQ_FIELD_REQUIRED },
  { "strip", SQ_FIELD_WHOLE, AT (SqKeptPlaced, strip), .need = SQ_FIELD_REQUIRED },
  { "x", SQ_FIELD_NUMBER, AT (SqKeptPlaced, at.x), .need = SQ_FIELD_REQUIRED },
  { "y", SQ_FIELD_NUMBER, AT (SqKeptPlaced, at.y), .need = SQ_FIELD_REQUIRED },
  { "turn", SQ_FIELD_NUMBER, AT (SqKeptPlaced, turn_deg), .need = SQ_FIELD_REQUIRED },
};
static KEYS (kept_placed_keys, kept_placed_fields, SqKeptPlaced, unknown, unknown);

static const SqField kept_unlaid_fields[] = {
  { "piece", SQ_FIELD_WHOLE, AT (SqKeptUnlaid, piece), .need = SQ_FIELD_REQUIRED },
  { "count", SQ_FIELD_WHOLE, AT (SqKeptUnlaid, count), .need = SQ_FIELD_REQUIRED },
  { "why", SQ_FIELD_WORD, AT (SqKeptUnlaid, why), .need = SQ_FIELD_REQUIRED,
    .words = sq_unlaid_why_names },
};
static KEYS (kept_unlaid_keys, kept_unlaid_fields, SqKeptUnlaid, unknown, unknown);

static const SqField kept_lay_fields[] = {
  { "cloth", SQ_FIELD_ID, AT (SqKeptLay, cloth) },
  { "digest", SQ_FIELD_DIGEST, AT (SqKeptLay, digest), .need = SQ_FIELD_REQUIRED },
  { "seed", SQ_FIELD_GREAT, AT (SqKeptLay, seed), .need = SQ_FIELD_WRITTEN },
  { "steps", SQ_FIELD_GREAT, AT (SqKeptLay, steps), .need = SQ_FIELD_WRITTEN },
  { "revision", SQ_FIELD_OWN, .read = sq_read_kept_revision, .write = sq_write_kept_revision },
  { "strips", SQ_FIELD_LIST, AT (SqKeptLay, strips), .need = SQ_FIELD_REQUIRED,
    .part = &kept_strip_keys },
  { "pieces", SQ_FIELD_LIST, AT (SqKeptLay, pieces), .need = SQ_FIELD_REQUIRED,
    .part = &kept_piece_keys },
  { "placed", SQ_FIELD_LIST, AT (SqKeptLay, placed), .need = SQ_FIELD_REQUIRED,
    .part = &kept_placed_keys },
  { "unlaid", SQ_FIELD_LIST, AT (SqKeptLay, unlaid), .part = &kept_unlaid_keys },
};
KEYS (sq_kept_lay_keys, kept_lay_fields, SqKeptLay, unknown, unknown);

static const SqField pattern_fields[] = {
  { "sheet", SQ_FIELD_WORD, AT (SqJob, papers.pattern.sheet), SQ_GIVEN_PATTERN_SHEET,
    .words = sq_sheet_names },
  { "roll", SQ_FIELD_SIZE, AT (SqJob, papers.pattern.roll_mm) },
  { "margin", SQ_FIELD_SIZE, AT (SqJob, papers.pattern.margin_mm), SQ_GIVEN_PATTERN_MARGIN },
  { "overlap", SQ_FIELD_SIZE, AT (SqJob, papers.pattern.overlap_mm), SQ_GIVEN_PATTERN_OVERLAP },
  { "lines", SQ_FIELD_WORD, AT (SqJob, papers.pattern.lines), .words = sq_pattern_lines_names },
  { "corners_only", SQ_FIELD_SWITCH, AT (SqJob, papers.pattern.corners_only) },
};
static KEYS (pattern_keys, pattern_fields, SqJob, given, papers.unknown_pattern);

static const SqField labels_fields[] = {
  { "columns", SQ_FIELD_COUNT, AT (SqJob, papers.labels.columns), SQ_GIVEN_LABEL_COLUMNS },
  { "rows", SQ_FIELD_COUNT, AT (SqJob, papers.labels.rows), SQ_GIVEN_LABEL_ROWS },
  { "side", SQ_FIELD_SIZE, AT (SqJob, papers.labels.side_mm), SQ_GIVEN_LABEL_SIDE },
  { "top", SQ_FIELD_SIZE, AT (SqJob, papers.labels.top_mm), SQ_GIVEN_LABEL_TOP },
  { "across", SQ_FIELD_SIZE, AT (SqJob, papers.labels.across_mm), SQ_GIVEN_LABEL_ACROSS },
  { "along", SQ_FIELD_SIZE, AT (SqJob, papers.labels.along_mm), SQ_GIVEN_LABEL_ALONG },
};
static KEYS (labels_keys, labels_fields, SqJob, given, papers.unknown_labels);

static const SqField papers_fields[] = {
  { "sheet", SQ_FIELD_WORD, AT (SqJob, papers.sheet), SQ_GIVEN_SHEET, .words = sq_sheet_names },
  { "kinds", SQ_FIELD_OWN, .given = SQ_GIVEN_PAPER_KINDS, .read = sq_read_paper_kinds,
    .write = sq_write_paper_kinds },
  { "marked_on", SQ_FIELD_WORD, AT (SqJob, papers.wrong_side), .words = sq_marked_on_names },
  { "pattern", SQ_FIELD_PART, .part = &pattern_keys },
  { "labels", SQ_FIELD_PART, .part = &labels_keys },
};
static KEYS (papers_keys, papers_fields, SqJob, given, papers.unknown);

#define RATE(key, rate)                                                                            \
  {                                                                                                \
    key, SQ_FIELD_NUMBER, AT (SqJob, rates.of[rate]), SQ_GIVEN_RATE (rate)                         \
  }
static const SqField rate_fields[] = {
  RATE ("wage", SQ_RATE_WAGE),     RATE ("cut", SQ_RATE_CUT),           RATE ("sew", SQ_RATE_SEW),
  RATE ("corner", SQ_RATE_CORNER), RATE ("zip", SQ_RATE_ZIP),           RATE ("welt", SQ_RATE_WELT),
  RATE ("foam", SQ_RATE_FOAM),     RATE ("handling", SQ_RATE_HANDLING),
};
static KEYS (rate_keys, rate_fields, SqJob, given, unknown_rates);

static const SqField plies_fields[] = {
  { "most", SQ_FIELD_COUNT, AT (SqJob, laying.most_plies) },
  { "table", SQ_FIELD_SIZE, AT (SqJob, laying.table_mm) },
};
static KEYS (plies_keys, plies_fields, SqJob, given, laying.unknown_plies);

static const SqField laying_fields[] = {
  { "cuts", SQ_FIELD_WORD, AT (SqJob, laying.cuts), .words = sq_cuts_names },
  { "plies", SQ_FIELD_PART, .part = &plies_keys },
};
static KEYS (laying_keys, laying_fields, SqJob, given, laying.unknown);

static const SqField pin_fields[] = {
  { "cloth", SQ_FIELD_ID, AT (SqPin, of.cloth) },
  { "cushion", SQ_FIELD_ID, AT (SqPin, of.cushion), .need = SQ_FIELD_REQUIRED },
  { "mirrored", SQ_FIELD_SWITCH, AT (SqPin, of.mirrored) },
  { "role", SQ_FIELD_WORD, AT (SqPin, of.role), .need = SQ_FIELD_REQUIRED,
    .words = sq_piece_role_names },
  { "ordinal", SQ_FIELD_WHOLE, AT (SqPin, of.ordinal) },
  { "copy", SQ_FIELD_WHOLE, AT (SqPin, of.copy) },
  { "stock", SQ_FIELD_ID, AT (SqPin, stock) },
  { "x", SQ_FIELD_NUMBER, AT (SqPin, at.x), .need = SQ_FIELD_REQUIRED },
  { "y", SQ_FIELD_NUMBER, AT (SqPin, at.y), .need = SQ_FIELD_REQUIRED },
  { "turn", SQ_FIELD_NUMBER, AT (SqPin, turn_deg), .need = SQ_FIELD_REQUIRED },
};
static KEYS (pin_keys, pin_fields, SqPin, unknown, unknown);

static const SqField job_fields[] = {
  { .key = "format", .kind = SQ_FIELD_SKIPPED },
  { .key = "version", .kind = SQ_FIELD_SKIPPED },
  { "units", SQ_FIELD_WORD, AT (SqJob, units), SQ_GIVEN_UNITS, .words = sq_unit_names },
  { "title", SQ_FIELD_TEXT, AT (SqJob, title) },
  { "customer", SQ_FIELD_TEXT, AT (SqJob, customer) },
  { "notes", SQ_FIELD_TEXT, AT (SqJob, notes) },
  { "revision", SQ_FIELD_OWN, .read = sq_read_revision, .write = sq_write_revision },
  { "papers", SQ_FIELD_PART, .part = &papers_keys },
  { "cloths", SQ_FIELD_OWN, .read = sq_read_cloths, .write = sq_write_cloths },
  { "foams", SQ_FIELD_OWN, .read = sq_read_foams, .write = sq_write_foams },
  { "rates", SQ_FIELD_PART, .part = &rate_keys },
  { "cushions", SQ_FIELD_OWN, .read = sq_read_cushions, .write = sq_write_cushions },
  { "laying", SQ_FIELD_PART, .part = &laying_keys },
  { "pins", SQ_FIELD_LIST, AT (SqJob, pins), .part = &pin_keys, .read = sq_check_pins },
  { "kept_lays", SQ_FIELD_OWN, .read = sq_read_kept_lays, .write = sq_write_kept_lays },
};
KEYS (sq_job_keys, job_fields, SqJob, given, unknown);
