using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Answers;

/// <summary>The answer's files about runs and what comes out of them: runs, sorted, made, fills, sales, shorts, seed.</summary>
internal static class RunFiles
{
    public static readonly AnswerFile<RunRow> Runs = MakeRuns();
    public static readonly AnswerFile<SortedRow> Sorted = MakeSorted();
    public static readonly AnswerFile<MadeRow> Made = MakeMade();
    public static readonly AnswerFile<FillRow> Fills = MakeFills();
    public static readonly AnswerFile<SaleRow> Sales = MakeSales();
    public static readonly AnswerFile<ShortRow> Shorts = MakeShorts();
    public static readonly AnswerFile<SeedRow> Seed = MakeSeed();

    private static AnswerFile<RunRow> MakeRuns()
    {
        FileLayout file = Layout("runs.csv");
        Column run = file.NeededText("run"), week = file.NeededDate("week"), line = file.NeededText("line"), mode = file.NeededText("mode"),
            source = file.NeededText("source"), lot = file.NeededText("lot"), path = file.Text("path"), place = file.Text("place"),
            massIn = file.NeededNumber("mass_in", Bounds.Any), atStart = file.NeededNumber("mass_at_start", Bounds.Any),
            hours = file.NeededNumber("hours", Bounds.Any), overtime = file.NeededNumber("overtime_hours", Bounds.Any), reason = file.Text("reason");
        return new(
            file,
            (text, row, season) => text.Text(row.Run).Date(season.Monday(row.Week)).Text(row.Line.Text)
                .Word(Words.LineModes, (LineMode?)row.Mode).Word(Words.RunSources, (RunSource?)(row.FromSorted ? RunSource.Sorted : RunSource.Lot))
                .Text(row.Lot.Text).Text(row.Path).Text(row.Place?.Text).Number(row.MassIn).Number(row.MassAtStart).Number(row.Hours)
                .Number(row.OvertimeHours).Text(row.Reason),
            (cells, frame) => new RunRow(
                cells.Text(run) ?? "", cells.Week(week, frame) ?? 0, new LineId(cells.Text(line) ?? ""),
                cells.Word(mode, Words.LineModes) ?? default, cells.Word(source, Words.RunSources) == RunSource.Sorted,
                new LotId(cells.Text(lot) ?? ""), cells.Text(path), cells.Text(place) is { } where ? new PlaceId(where) : null,
                cells.Number(massIn) ?? 0, cells.Number(atStart) ?? 0, cells.Number(hours) ?? 0, cells.Number(overtime) ?? 0,
                cells.Text(reason) ?? ""));
    }

    private static AnswerFile<SortedRow> MakeSorted()
    {
        FileLayout file = Layout("sorted.csv");
        Column run = file.NeededText("run"), lot = file.NeededText("lot"), week = file.NeededDate("week"), mass = file.NeededNumber("mass", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Text(row.Run).Text(row.Lot.Text).Date(season.Monday(row.Week)).Number(row.Mass),
            (cells, frame) => new SortedRow(
                cells.Text(run) ?? "", new LotId(cells.Text(lot) ?? ""), cells.Week(week, frame) ?? 0, cells.Number(mass) ?? 0));
    }

    private static AnswerFile<MadeRow> MakeMade()
    {
        FileLayout file = Layout("made.csv");
        Column run = file.NeededText("run"), week = file.NeededDate("week"), product = file.NeededText("product"), lot = file.NeededText("lot"),
            units = file.NeededNumber("units", Bounds.Any), mass = file.NeededNumber("mass", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Text(row.Run).Date(season.Monday(row.Week)).Text(row.Product.Text).Text(row.Lot.Text)
                .Number(row.Units).Number(row.Mass),
            (cells, frame) => new MadeRow(
                cells.Text(run) ?? "", cells.Week(week, frame) ?? 0, new ProductId(cells.Text(product) ?? ""),
                new LotId(cells.Text(lot) ?? ""), cells.Number(units) ?? 0, cells.Number(mass) ?? 0));
    }

    private static AnswerFile<FillRow> MakeFills()
    {
        FileLayout file = Layout("fills.csv");
        Column order = file.NeededText("order"), line = file.NeededText("line"), week = file.NeededDate("week"),
            product = file.NeededText("product"), units = file.NeededNumber("units", Bounds.AnyWhole);
        return new(
            file,
            (text, row, season) => text.Text(row.Order.Text).Text(row.Line).Date(season.Monday(row.Week)).Text(row.Product.Text).Whole(row.Units),
            (cells, frame) => new FillRow(
                new OrderId(cells.Text(order) ?? ""), cells.Text(line) ?? "", cells.Week(week, frame) ?? 0,
                new ProductId(cells.Text(product) ?? ""), cells.Whole(units) ?? 0));
    }

    private static AnswerFile<SaleRow> MakeSales()
    {
        FileLayout file = Layout("sales.csv");
        Column week = file.NeededDate("week"), product = file.NeededText("product"), units = file.NeededNumber("units", Bounds.AnyWhole);
        return new(
            file,
            (text, row, season) => text.Date(season.Monday(row.Week)).Text(row.Product.Text).Whole(row.Units),
            (cells, frame) => new SaleRow(cells.Week(week, frame) ?? 0, new ProductId(cells.Text(product) ?? ""), cells.Whole(units) ?? 0));
    }

    private static AnswerFile<ShortRow> MakeShorts()
    {
        FileLayout file = Layout("shorts.csv");
        Column order = file.NeededText("order"), line = file.NeededText("line"), units = file.NeededNumber("units", Bounds.AnyWhole), why = file.Text("why");
        return new(
            file,
            (text, row, _) => text.Text(row.Order.Text).Text(row.Line).Whole(row.Units).Text(row.Why),
            (cells, _) => new ShortRow(
                new OrderId(cells.Text(order) ?? ""), cells.Text(line) ?? "", cells.Whole(units) ?? 0, cells.Text(why) ?? ""));
    }

    private static AnswerFile<SeedRow> MakeSeed()
    {
        FileLayout file = Layout("seed.csv");
        Column run = file.NeededText("run"), week = file.NeededDate("week"), variety = file.NeededText("variety"), lot = file.NeededText("lot"),
            seedClass = file.NeededText("seed_class"), needClass = file.NeededText("need_class"), by = file.NeededDate("by"),
            cloves = file.NeededNumber("cloves", Bounds.Any);
        return new(
            file,
            (text, row, season) => text.Text(row.Run).Date(season.Monday(row.Week)).Text(row.Variety.Text).Text(row.Lot.Text)
                .Word(Words.SeedClasses, (SeedClass?)row.SeedClass).Word(Words.SeedClasses, (SeedClass?)row.NeedClass).Date(row.By).Number(row.Cloves),
            (cells, frame) => new SeedRow(
                cells.Text(run) ?? "", cells.Week(week, frame) ?? 0, new VarietyId(cells.Text(variety) ?? ""),
                new LotId(cells.Text(lot) ?? ""), cells.Word(seedClass, Words.SeedClasses) ?? default,
                cells.Word(needClass, Words.SeedClasses) ?? default, cells.Date(by) ?? default, cells.Number(cloves) ?? 0));
    }

    private static FileLayout Layout(string name) => new(name, needed: true, rowLimit: int.MaxValue);
}
