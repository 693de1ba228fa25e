using Cloveshed.SeasonFiles.Files;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles;

/// <summary>The columns of every file of a season, and the keys of season.json, as a person is asked for them.</summary>
public static class ColumnGuides
{
    private static readonly HashSet<string> Weeks = ["place-weeks.csv week", "line-weeks.csv week", "people.csv week", "stock.csv made", "market.csv week", "shifts.csv week",
        "price-lists.csv from", "price-lists.csv to", "programs.csv from", "programs.csv to", "promotions.csv from", "promotions.csv to"];

    private static readonly HashSet<string> Wholes = ["places.csv run_out_weeks", "products.csv shelf_weeks", "stock.csv units", "orders.csv line", "orders.csv units",
        "programs.csv least", "programs.csv most", "promotions.csv extra"];

    private static readonly Dictionary<string, string> WordsOf = new(StringComparer.Ordinal)
    {
        ["varieties.csv keeps"] = Layouts.Words.Keeps.All, ["places.csv kind"] = Layouts.Words.PlaceKinds.All, ["lots.csv state"] = Layouts.Words.LotStates.All,
        ["lots.csv seed_class"] = Layouts.Words.SeedClasses.All, ["samples.csv defect"] = Layouts.Words.Defects.All, ["yields.csv mode"] = Layouts.Words.LineModes.All,
        ["lines.csv mode"] = Layouts.Words.LineModes.All, ["products.csv form"] = Layouts.Words.ProductForms.All, ["seed-needs.csv seed_class"] = Layouts.Words.SeedClasses.All,
        ["setups.csv kind"] = Layouts.Words.SetupKinds.All, ["shifts.csv kind"] = Layouts.Words.ShiftKinds.All, ["shifts.csv day"] = Layouts.Words.Days.All,
    };

    private static readonly Dictionary<string, string[]> NamesOf = new(StringComparer.Ordinal)
    {
        ["place-weeks.csv place"] = ["places.csv"], ["lots.csv place"] = ["places.csv"], ["lots.csv variety"] = ["varieties.csv"], ["samples.csv lot"] = ["lots.csv"],
        ["line-weeks.csv line"] = ["lines.csv"], ["products.csv from"] = ["sizes.csv", "clove-grades.csv"], ["stock.csv product"] = ["products.csv"],
        ["rooms.csv place"] = ["places.csv"], ["orders.csv product"] = ["products.csv"], ["market.csv product"] = ["products.csv"],
        ["seed-needs.csv variety"] = ["varieties.csv"], ["sell-as-is.csv variety"] = ["varieties.csv"], ["setups.csv line"] = ["lines.csv"],
        ["shifts.csv line"] = ["lines.csv"], ["price-lists.csv product"] = ["products.csv"], ["freight.csv product"] = ["products.csv"], ["programs.csv product"] = ["products.csv"],
        ["promotions.csv product"] = ["products.csv"], ["programs.csv price_list"] = ["price-lists.csv"], ["orders.csv price_list"] = ["price-lists.csv"],
        ["programs.csv destination"] = ["freight.csv"], ["orders.csv destination"] = ["freight.csv"],
    };

    /// <summary>A lot that is packed to the last bin stands nowhere any more, so stock may name one that lots.csv has not.</summary>
    private static readonly Dictionary<string, string> OftenOf = new(StringComparer.Ordinal)
    {
        ["stock.csv lot"] = "lots.csv", ["setups.csv from"] = "varieties.csv", ["setups.csv to"] = "varieties.csv",
    };

    /// <summary>The columns by which a row is known; samples have none, and every one of them counts.</summary>
    private static readonly Dictionary<string, string[]> Keys = new(StringComparer.Ordinal)
    {
        ["sizes.csv"] = ["class"], ["varieties.csv"] = ["variety"], ["places.csv"] = ["place"], ["place-weeks.csv"] = ["place", "week"], ["lots.csv"] = ["lot", "place"],
        ["samples.csv"] = [], ["yields.csv"] = ["mode"], ["lines.csv"] = ["line"], ["line-weeks.csv"] = ["line", "week"], ["people.csv"] = ["week"],
        ["clove-grades.csv"] = ["grade"], ["products.csv"] = ["product"], ["stock.csv"] = ["product", "made", "lot"], ["rooms.csv"] = ["place"],
        ["orders.csv"] = ["order", "line"], ["market.csv"] = ["product", "week"], ["seed-needs.csv"] = ["variety", "by", "seed_class"], ["sell-as-is.csv"] = ["variety"],
        ["setups.csv"] = ["kind", "line", "from", "to"], ["shifts.csv"] = ["kind", "line", "week", "day", "start"],
        ["price-lists.csv"] = ["list", "product", "from"], ["freight.csv"] = ["destination", "product"], ["programs.csv"] = ["program", "product", "from"],
        ["promotions.csv"] = ["promotion", "customer", "product", "from"],
    };

    private static readonly Dictionary<string, ColumnGuide[]> All =
        SeasonFileSet.Tables.ToDictionary(file => file.Layout.Name, file => (ColumnGuide[])[.. file.Layout.Columns.Select(column => Of(file.Layout.Name, column))], StringComparer.Ordinal);

    /// <summary>The keys of season.json, in the contract's order.</summary>
    public static IReadOnlyList<ColumnGuide> Settings { get; } =
    [
        Setting("contract", false, ColumnKind.Whole, SettingsFile.Contracts),
        Setting("name", true, ColumnKind.Text), Setting("first_week", true, ColumnKind.Week), Setting("weeks", true, ColumnKind.Whole, Bounds.SeasonWeeks),
        Setting("mass_unit", true, ColumnKind.Word) with { Words = Layouts.Words.MassUnits.All.Split(", ") }, Setting("currency", true, ColumnKind.Text),
        Setting("as_of", false, ColumnKind.Date), Setting("end_price", false, ColumnKind.Number, Bounds.Money), Setting("seed", false, ColumnKind.Whole, Bounds.Seed),
    ];

    /// <summary>The columns of a file in the contract's order.</summary>
    public static IReadOnlyList<ColumnGuide> Of(string file) =>
        All.TryGetValue(file, out ColumnGuide[]? guides) ? guides : throw new ArgumentException($"{file} is no table of a season.", nameof(file));

    /// <summary>The columns that a file has in a season of a contract. In the first, order lines have no terms, and each has its price in its row.</summary>
    public static IReadOnlyList<ColumnGuide> Of(string file, int contract) => contract > 1 || file != OrdersFile.Layout.Name ? Of(file)
        : [.. Of(file).Where(guide => OrdersFile.OfTerms.All(column => column.Name != guide.Name)).Select(guide => guide.Name == OrdersFile.PriceOfFirst.Name ? guide with { Needed = true } : guide)];

    /// <summary>The columns that together name a row of a file; none where rows have no key.</summary>
    public static IReadOnlyList<string> KeyOf(string file) => Keys[file];

    /// <summary>Every column whose cells name rows of a file.</summary>
    public static IEnumerable<ColumnGuide> Naming(string file) => All.Values.SelectMany(guides => guides).Where(guide => guide.NamedIn.Contains(file));

    private static ColumnGuide Of(string file, Column column)
    {
        string name = $"{file} {column.Name}";
        ColumnKind kind = Weeks.Contains(name) ? ColumnKind.Week
            : Wholes.Contains(name) ? ColumnKind.Whole
            : WordsOf.ContainsKey(name) ? ColumnKind.Word
            : NamesOf.ContainsKey(name) ? ColumnKind.Name
            : column.Shape switch { CellShape.Number => ColumnKind.Number, CellShape.Date => ColumnKind.Date, CellShape.YesNo => ColumnKind.YesNo, _ => ColumnKind.Text };
        return new ColumnGuide(file, column.Name, column.Needed, kind, WordsOf.TryGetValue(name, out string? words) ? words.Split(", ") : [], NamesOf.GetValueOrDefault(name) ?? [])
        {
            Limits = column.Bounds, OftenIn = OftenOf.GetValueOrDefault(name),
        };
    }

    private static ColumnGuide Setting(string name, bool needed, ColumnKind kind, Bounds? limits = null) =>
        new(SettingsFile.FileName, name, needed, kind, [], []) { Limits = limits };
}
