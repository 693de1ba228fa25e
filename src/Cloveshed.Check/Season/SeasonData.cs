namespace Cloveshed.Check.Season;

/// <summary>The season as the check reads it, looked up by the files' own keys.</summary>
internal sealed class SeasonData(Calendar calendar, double endPrice, int contract = 1)
{
    /// <summary>1, or 2 where buyers' terms count.</summary>
    public int Contract => contract;

    public Calendar Calendar => calendar;

    public int Weeks => calendar.Weeks;

    /// <summary>Per mass unit of what stands sound after the last week.</summary>
    public double EndPrice => endPrice;

    public List<Window> Sizes { get; } = [];

    public List<Window> Grades { get; } = [];

    public Dictionary<string, Variety> Varieties { get; } = [];

    public Dictionary<string, Place> Places { get; } = [];

    public Dictionary<string, Lot> Lots { get; } = [];

    public Dictionary<(string Lot, string Place), LotRow> LotRows { get; } = [];

    /// <summary>kept_share by mode; a mode without a row is not here.</summary>
    public Dictionary<string, double> KeptShares { get; } = [];

    public Dictionary<string, Line> Lines { get; } = [];

    public Dictionary<(string Line, int Week), (double Hours, double Overtime)> LineWeeks { get; } = [];

    public Dictionary<int, double> People { get; } = [];

    public Dictionary<string, Product> Products { get; } = [];

    public List<StockRow> Stock { get; } = [];

    /// <summary>Rooms already sealed on as_of, with the week in which that was.</summary>
    public Dictionary<string, (int Week, string Date)> SealedRooms { get; } = [];

    public Dictionary<(string Order, string Line), OrderLine> Orders { get; } = [];

    public Dictionary<(string Product, int Week), MarketWeek> Market { get; } = [];

    public Dictionary<(string Variety, DateOnly By, string Class), SeedNeed> SeedNeeds { get; } = [];

    public Dictionary<string, AsIsPrice> AsIsPrices { get; } = [];

    /// <summary>A mode that yields.csv leaves out is taken to lose nothing: what the line gives is then only bounded by what goes in.</summary>
    public double Kept(string mode) => KeptShares.GetValueOrDefault(mode, 1);

    public (double Hours, double Overtime) HoursOf(Line line, int week) =>
        LineWeeks.TryGetValue((line.Name, week), out (double, double) hours) ? hours : (line.Hours, line.Overtime);

    /// <summary>A variety's own row goes before the row for any; null: nothing of it can be sold as is.</summary>
    public AsIsPrice? AsIsPriceOf(string variety) => AsIsPrices.GetValueOrDefault(variety) ?? AsIsPrices.GetValueOrDefault("");
}
