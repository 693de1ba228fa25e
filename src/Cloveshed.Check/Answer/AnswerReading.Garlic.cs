namespace Cloveshed.Check.Answer;

// Paths, shares, runs and what comes out of them.
internal sealed partial class AnswerReading
{
    private void Garlic(AnswerData answer)
    {
        Each("paths.csv", answer.Paths, row => new PathRow(
                row.Line, row.Name("path"), Lot(row), Place(row, "from_place"), Week(row, "week", season.Weeks), Place(row, "place"),
                row.Amount("mass_ratio"), row.Amount("fresh_share"), row.Amount("crack_share"), row.Amount("life_used")),
            row => (row.Path, row.Week),
            "path", "lot", "from_place", "week", "place", "mass_ratio", "fresh_share", "crack_share", "life_used");

        Each("shares.csv", answer.Shares, row => new ShareRow(
                row.Line, Lot(row), row.OneOf("kind", "bulb class", "clove grade"), row.Name("name"), row.Amount("share")),
            row => (row.Lot, row.Kind, row.Name),
            "lot", "kind", "name", "share");

        Each("runs.csv", answer.Runs, row => new RunRow(
                row.Line, row.Name("run"), Week(row), Known(row, "line", season.Lines, "lines.csv"),
                row.OneOf("mode", "fresh", "crack", "seed"), row.OneOf("source", "lot", "sorted") == "sorted", Lot(row), row.NameOrEmpty("path"),
                row.NameOrEmpty("place"), row.Amount("mass_in"), row.AmountOr("mass_at_start", 0), row.Amount("hours"),
                row.AmountOr("overtime_hours", 0)),
            row => (row.Run, row.Lot, row.Path),
            "run", "week", "line", "mode", "source", "lot", "path", "place", "mass_in", "mass_at_start", "hours", "overtime_hours", "reason");

        Each("sorted.csv", answer.Sorted, row => new SortedRow(row.Line, row.Name("run"), Lot(row), Week(row), row.Amount("mass")),
            row => (row.Run, row.Lot),
            "run", "lot", "week", "mass");

        Each("made.csv", answer.Made, row => new MadeRow(
                row.Line, row.Name("run"), Week(row), Product(row), Lot(row), row.Amount("units"), row.Amount("mass")),
            row => (row.Run, row.Product, row.Lot),
            "run", "week", "product", "lot", "units", "mass");

        Each("seed.csv", answer.Seed, row => new SeedRow(
                row.Line, row.Name("run"), Week(row), row.Name("variety"), Lot(row), row.OneOf("seed_class", "A", "B", "C"),
                row.OneOf("need_class", "A", "B", "C"), row.Date("by"), row.Amount("cloves")),
            row => (row.Run, row.Lot, row.Variety, row.NeedClass, row.By),
            "run", "week", "variety", "lot", "seed_class", "need_class", "by", "cloves");
    }
}
