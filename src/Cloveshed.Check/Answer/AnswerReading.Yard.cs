namespace Cloveshed.Check.Answer;

// What stands, moves, leaves as it is, and what is shipped.
internal sealed partial class AnswerReading
{
    private void Trade(AnswerData answer)
    {
        Each("fills.csv", answer.Fills, row => new FillRow(
                row.Line, row.Name("order"), row.Text("line"), Week(row), Product(row), row.Whole("units")),
            row => (row.Order, row.Number, row.Week, row.Product),
            "order", "line", "week", "product", "units");

        Each("sales.csv", answer.Sales, row => new SaleRow(row.Line, Week(row), Product(row), row.Whole("units")),
            row => (row.Week, row.Product),
            "week", "product", "units");

        Each("shorts.csv", answer.Shorts, row => new ShortRow(row.Line, row.Name("order"), row.Text("line"), row.Whole("units")),
            row => (row.Order, row.Number),
            "order", "line", "units", "why");
    }

    private void Yard(AnswerData answer)
    {
        Each("as-is.csv", answer.AsIs, row => new AsIsRow(
                row.Line, row.OneOf("kind", "sold", "discarded") == "sold", Week(row), Lot(row), row.Name("path"), Place(row, "place"),
                row.Amount("mass"), row.Amount("mass_at_start")),
            row => (row.Sold, row.Week, row.Path),
            "kind", "week", "lot", "path", "place", "mass", "mass_at_start");

        Each("keeps.csv", answer.Keeps, row => new KeepRow(
                row.Line, Week(row), Lot(row), row.Name("path"), Place(row, "place"), row.Amount("bins"), row.Amount("mass_at_start")),
            row => (row.Week, row.Path),
            "week", "lot", "path", "place", "bins", "mass_at_start");

        Each("moves.csv", answer.Moves, row => new MoveRow(
                row.Line, Week(row), Lot(row), Place(row, "from"), Place(row, "to"), row.Amount("bins")),
            _ => null,
            "week", "lot", "from", "to", "bins");

        Each("rooms.csv", answer.Rooms, row => new RoomRow(
                row.Line, Place(row, "place"), AnyWeek(row, "sealed"), row.Text("opened").Length == 0 ? null : AnyWeek(row, "opened")),
            row => row.Place,
            "place", "sealed", "opened");
    }

    // Worths are dual prices: nothing in the files proves them, so only their form is looked at.
    private void Worths() => Each("worths.csv", new List<double>(), row =>
        {
            _ = row.OneOf("kind", "product", "line", "people", "place", "lot", "seed");
            _ = row.Text("week").Length == 0 ? 0 : AnyWeek(row, "week");
            return row.Finite("value");
        },
        _ => null,
        "kind", "name", "week", "value");
}
