using Cloveshed.Core.Sizes;
using NodaTime;

namespace Cloveshed.Core.Seasons;

/// <summary>
/// A season as its files describe it: every row that was read, sound and cross-checked, in file order. It is what the
/// person wrote, not what the planner makes of it: empty cells stay null here and are filled, with a note of the default
/// used, by the lot knowledge and the planning instance.
/// All masses are in <see cref="SeasonSettings.MassUnit"/> (lb or kg as entered), money in the season's currency,
/// temperatures in °C, humidities and gases in percent, shares 0 to 1, diameters in mm, single weights in g.
/// </summary>
public sealed record Season(
    SeasonSettings Settings,
    IReadOnlyList<SizeClass> Sizes,
    IReadOnlyList<Variety> Varieties,
    IReadOnlyList<Place> Places,
    IReadOnlyList<PlaceWeek> PlaceWeeks,
    IReadOnlyList<LotRow> Lots,
    IReadOnlyList<SampleBulb> Samples,
    IReadOnlyList<ModeYield> Yields,
    IReadOnlyList<Line> Lines,
    IReadOnlyList<LineWeek> LineWeeks,
    IReadOnlyList<PeopleWeek> People,
    IReadOnlyList<Product> Products,
    IReadOnlyList<CloveGrade> CloveGrades,
    IReadOnlyList<StockRow> Stock,
    IReadOnlyList<SealedRoom> SealedRooms,
    IReadOnlyList<OrderLine> Orders,
    IReadOnlyList<MarketWeek> Market,
    IReadOnlyList<SeedNeed> SeedNeeds,
    IReadOnlyList<AsIsPrice> AsIsPrices)
{
    /// <summary>What sizers saw of lots of which part still stands; one for each lot at most. No file of the season has it: it comes as it is counted.</summary>
    public IReadOnlyList<SizerCounted> SizerCounts { get; init; } = [];

    /// <summary>setups.csv. No plan of the season is made of it: it is for the order of a week's runs.</summary>
    public IReadOnlyList<SetupRow> Setups { get; init; } = [];

    /// <summary>shifts.csv, likewise.</summary>
    public IReadOnlyList<ShiftRow> Shifts { get; init; } = [];

    /// <summary>
    /// What buyers agreed to, as written: a season of contract 2 has it. <see cref="Orders"/> then holds what it comes to, priced at the dock:
    /// plans are made of that, and of nothing in here.
    /// </summary>
    public BuyerTerms? Terms { get; init; }

    /// <summary>How the prices of such order lines came to be; of a season of contract 1 there is none.</summary>
    public IReadOnlyDictionary<(OrderId Order, string Number), PriceOrigin> PriceOrigins { get; init; } = new Dictionary<(OrderId, string), PriceOrigin>();
}

/// <summary>The unit that all masses of a season's files are written in.</summary>
public enum MassUnit { Pound, Kilogram }

/// <summary>season.json. FirstWeek is a Monday; week k is the seven days from FirstWeek + 7k, Monday to Sunday.</summary>
/// <param name="AsOf">What the files describe; FirstWeek where the file gave none.</param>
/// <param name="EndPrice">Per mass unit of what still stands sound after the last week.</param>
/// <param name="Seed">For randomness; null where the file gave none.</param>
public sealed record SeasonSettings(
    string Name, LocalDate FirstWeek, int Weeks, MassUnit MassUnit, string Currency, LocalDate AsOf, decimal EndPrice, int? Seed)
{
    /// <summary>The contract that the files are written by: 1, or 2 where buyers' terms count.</summary>
    public int Contract { get; init; } = 1;

    /// <summary>The index of the week that holds the date: negative before the season, Weeks or more after it.</summary>
    public int WeekOf(LocalDate date)
    {
        int days = Period.DaysBetween(FirstWeek, date);
        return days >= 0 ? days / 7 : -((6 - days) / 7);
    }

    /// <summary>The week in which a lot's row starts: that of its harvest, and of what was dug before the files' day that day's.</summary>
    public int StartWeekOf(LotRow row) => Math.Max(AsOfWeek, WeekOf(row.Harvested));

    /// <summary>The Monday that names a week.</summary>
    public LocalDate Monday(int week) => FirstWeek.PlusDays(7 * week);

    /// <summary>The week that the files describe, never before the first: paths, stock and rooms are as of its start.</summary>
    public int AsOfWeek => Math.Max(0, WeekOf(AsOf));
}
