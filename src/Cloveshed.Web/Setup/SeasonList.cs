using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Web.Setup;

/// <summary>One list of the season as Setup shows it: a file of the season by a name that a person knows.</summary>
/// <param name="File">The file, such as line-weeks.csv.</param>
/// <param name="Name">What the list is called.</param>
/// <param name="Need">What it is needed for.</param>
public sealed record SeasonList(string File, SetupWord Name, SetupWord Need)
{
    /// <summary>The file's name without its ending, as it stands in addresses.</summary>
    public string Slug => File[..^4];

    public string Path => "/setup/" + Slug;

    public SeasonTable Table => SeasonTable.Of(File)!;

    public IReadOnlyList<ColumnGuide> Columns => ColumnGuides.Of(File);

    /// <summary>The columns that a row of it is asked for: those of the season's contract, and what the row has beyond them, which stays as it is.</summary>
    public IReadOnlyList<ColumnGuide> Asked(int contract, IReadOnlyDictionary<string, string>? cells)
    {
        IReadOnlyList<ColumnGuide> known = ColumnGuides.Of(File, contract);
        return [.. Columns.Select(guide => known.FirstOrDefault(one => one.Name == guide.Name) ?? (cells?.GetValueOrDefault(guide.Name, "").Length > 0 ? guide : null)).OfType<ColumnGuide>()];
    }

    /// <summary>The cells by which a row is known, as one text: "SO-1001 1". Rows without a key are known by their number.</summary>
    public string KeyText(SeasonRow row)
    {
        string key = string.Join(" ", ColumnGuides.KeyOf(File).Select(column => row.Cells.GetValueOrDefault(column, "")).Where(cell => cell.Length > 0));
        return key.Length > 0 ? key : FormattableString.Invariant($"{row.Row}");
    }
}

/// <summary>Lists that belong together.</summary>
public sealed record ListMatter(SetupWord Name, IReadOnlyList<SeasonList> Lists);

/// <summary>Every list of a season, by matter.</summary>
public static class SeasonLists
{
    public static IReadOnlyList<ListMatter> Matters { get; } =
    [
        new(SetupWord.MatterGarlic, [new("lots.csv", SetupWord.Lots, SetupWord.LotsNeed), new("samples.csv", SetupWord.Samples, SetupWord.SamplesNeed), new("varieties.csv", SetupWord.Varieties, SetupWord.VarietiesNeed)]),
        new(SetupWord.MatterPlaces, [new("places.csv", SetupWord.Places, SetupWord.PlacesNeed), new("place-weeks.csv", SetupWord.PlaceWeeks, SetupWord.PlaceWeeksNeed), new("rooms.csv", SetupWord.Rooms, SetupWord.RoomsNeed)]),
        new(SetupWord.MatterWork, [new("lines.csv", SetupWord.Lines, SetupWord.LinesNeed), new("line-weeks.csv", SetupWord.LineWeeks, SetupWord.LineWeeksNeed), new("people.csv", SetupWord.People, SetupWord.PeopleNeed), new("yields.csv", SetupWord.Yields, SetupWord.YieldsNeed), new("shifts.csv", SetupWord.Shifts, SetupWord.ShiftsNeed), new("setups.csv", SetupWord.Setups, SetupWord.SetupsNeed)]),
        new(SetupWord.MatterGoods, [new("sizes.csv", SetupWord.Sizes, SetupWord.SizesNeed), new("clove-grades.csv", SetupWord.CloveGrades, SetupWord.CloveGradesNeed), new("products.csv", SetupWord.Products, SetupWord.ProductsNeed), new("stock.csv", SetupWord.Stock, SetupWord.StockNeed)]),
        new(SetupWord.MatterDemand, [new("orders.csv", SetupWord.Orders, SetupWord.OrdersNeed), new("programs.csv", SetupWord.Programs, SetupWord.ProgramsNeed), new("price-lists.csv", SetupWord.PriceLists, SetupWord.PriceListsNeed), new("promotions.csv", SetupWord.Promotions, SetupWord.PromotionsNeed), new("freight.csv", SetupWord.Freight, SetupWord.FreightNeed), new("market.csv", SetupWord.Market, SetupWord.MarketNeed), new("seed-needs.csv", SetupWord.SeedNeeds, SetupWord.SeedNeedsNeed), new("sell-as-is.csv", SetupWord.SellAsIs, SetupWord.SellAsIsNeed)]),
    ];

    public static IReadOnlyList<SeasonList> All { get; } = [.. Matters.SelectMany(matter => matter.Lists)];

    /// <summary>Null where no list is called so.</summary>
    public static SeasonList? Named(string slug) => All.FirstOrDefault(list => list.Slug == slug);

    public static SeasonList Of(string file) => All.First(list => list.File == file);
}
