namespace Cloveshed.Check.Answer;

// The answer's rows, one type per file. Weeks are counted from the season's first week; Line is the line in the file.

internal sealed record PathRow(
    int Line, string Path, string Lot, string FromPlace, int Week, string Place, double Ratio, double Fresh, double Crack, double Life)
{
    public string Where => $"paths.csv line {Line} (path {Path})";
}

internal sealed record ShareRow(int Line, string Lot, string Kind, string Name, double Share);

internal sealed record RunRow(
    int Line, string Run, int Week, string OnLine, string Mode, bool Sorted, string Lot, string Path, string Place, double MassIn,
    double MassAtStart, double Hours, double Overtime)
{
    public string Where => $"runs.csv line {Line} (run {Run})";
}

internal sealed record SortedRow(int Line, string Run, string Lot, int Week, double Mass)
{
    public string Where => $"sorted.csv line {Line} (run {Run})";
}

internal sealed record MadeRow(int Line, string Run, int Week, string Product, string Lot, double Units, double Mass)
{
    public string Where => $"made.csv line {Line} (run {Run})";
}

internal sealed record FillRow(int Line, string Order, string Number, int Week, string Product, double Units)
{
    public string Where => $"fills.csv line {Line} (order {Order}, line {Number})";
}

internal sealed record SaleRow(int Line, int Week, string Product, double Units)
{
    public string Where => $"sales.csv line {Line}";
}

internal sealed record AsIsRow(int Line, bool Sold, int Week, string Lot, string Path, string Place, double Mass, double MassAtStart)
{
    public string Where => $"as-is.csv line {Line} (path {Path})";
}

internal sealed record ShortRow(int Line, string Order, string Number, double Units);

internal sealed record KeepRow(int Line, int Week, string Lot, string Path, string Place, double Bins, double MassAtStart)
{
    public string Where => $"keeps.csv line {Line} (path {Path})";
}

internal sealed record MoveRow(int Line, int Week, string Lot, string From, string To, double Bins);

/// <summary>Opened null: it stays closed to the season's end.</summary>
internal sealed record RoomRow(int Line, string Place, int Sealed, int? Opened)
{
    public string Where => $"rooms.csv line {Line} (place {Place})";
}

internal sealed record SeedRow(
    int Line, string Run, int Week, string Variety, string Lot, string SeedClass, string NeedClass, DateOnly By, double Cloves)
{
    public string Where => $"seed.csv line {Line} (run {Run})";
}

/// <summary>The figures of summary.json that can be recomputed; null where the key is missing or no finite number.</summary>
internal sealed record SummaryFigures(double? Value, double? Bound, double? Gap, double? GapOfRevenue);
