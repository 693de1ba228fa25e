namespace Cloveshed.Core;

// One type per thing that a shed numbers or names, so that a lot can never be passed where a place is meant.
// Ids are the user's own words: compared exactly, shown as written.

/// <summary>A lot: garlic of one variety, from one field block, dug in one window.</summary>
public readonly record struct LotId(string Text) { public override string ToString() => Text; }

/// <summary>A place: anywhere that a bin can stand (a yard row, a room).</summary>
public readonly record struct PlaceId(string Text) { public override string ToString() => Text; }

/// <summary>A line: a packing line, a cracker or a seed line.</summary>
public readonly record struct LineId(string Text) { public override string ToString() => Text; }

/// <summary>A product: one form, class or grade, and net weight, as sold.</summary>
public readonly record struct ProductId(string Text) { public override string ToString() => Text; }

/// <summary>An order; its lines are numbered within it.</summary>
public readonly record struct OrderId(string Text) { public override string ToString() => Text; }

/// <summary>A garlic variety.</summary>
public readonly record struct VarietyId(string Text) { public override string ToString() => Text; }

/// <summary>A bin, by its tag.</summary>
public readonly record struct BinId(string Text) { public override string ToString() => Text; }

/// <summary>A size class of the season's size chart.</summary>
public readonly record struct SizeClassId(string Text) { public override string ToString() => Text; }

/// <summary>A clove grade of the season's grade list.</summary>
public readonly record struct CloveGradeId(string Text) { public override string ToString() => Text; }

/// <summary>A price list: what products cost in which weeks.</summary>
public readonly record struct PriceListId(string Text) { public override string ToString() => Text; }

/// <summary>A buyer's program: so many units a week, from one week to another.</summary>
public readonly record struct ProgramId(string Text) { public override string ToString() => Text; }

/// <summary>Where goods are delivered at a price that holds there.</summary>
public readonly record struct DestinationId(string Text) { public override string ToString() => Text; }
