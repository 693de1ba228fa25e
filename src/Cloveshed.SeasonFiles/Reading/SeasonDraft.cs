using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>A season while its files are read: the rows so far, the names that later files refer to, and the faults.</summary>
internal sealed class SeasonDraft(FaultList faults)
{
    /// <summary>Rows of price-lists.csv or of freight.csv were refused: what then seems to be missing may have been in one of them.</summary>
    public bool PricesLost { get; set; }
    public bool FreightLost { get; set; }

    /// <summary>What buyers' terms come to, in a season that has them.</summary>
    public LoweredTerms? Lowered { get; set; }

    /// <summary>As written.</summary>
    public BuyerTerms Terms =>
        new([.. OrderTerms.Select(one => one.Row)], [.. PriceLists.Select(one => one.Row)], [.. Programs.Select(one => one.Row)], [.. Promotions.Select(one => one.Row)], Freight);

    public FaultList Faults { get; } = faults;

    public SeasonFrame Frame { get; set; } = SeasonFrame.Nothing;

    public List<SizeClass> Sizes { get; } = [];
    public List<Variety> Varieties { get; } = [];
    public List<Place> Places { get; } = [];
    public List<PlaceWeek> PlaceWeeks { get; } = [];
    public List<(LotRow Row, int Line)> Lots { get; } = [];
    public List<(SampleBulb Bulb, int Line)> Samples { get; } = [];
    public List<ModeYield> Yields { get; } = [];
    public List<Line> Lines { get; } = [];
    public List<LineWeek> LineWeeks { get; } = [];
    public List<PeopleWeek> People { get; } = [];
    public List<Product> Products { get; } = [];
    public List<CloveGrade> CloveGrades { get; } = [];
    public List<StockRow> Stock { get; } = [];
    public List<SealedRoom> SealedRooms { get; } = [];
    public List<OrderLine> Orders { get; } = [];
    public List<(OrderTerms Row, int Line)> OrderTerms { get; } = [];
    public List<(ListPrice Row, int Line)> PriceLists { get; } = [];
    public List<(BuyerProgram Row, int Line)> Programs { get; } = [];
    public List<(Promotion Row, int Line)> Promotions { get; } = [];
    public List<Freight> Freight { get; } = [];
    public List<MarketWeek> Market { get; } = [];
    public List<SeedNeed> SeedNeeds { get; } = [];
    public List<AsIsPrice> AsIsPrices { get; } = [];
    public List<SetupRow> Setups { get; } = [];
    public List<ShiftRow> Shifts { get; } = [];

    public KnownNames SizeNames { get; } = new("sizes.csv", "class");
    public KnownNames GradeNames { get; } = new("clove-grades.csv", "grade");
    public KnownNames VarietyNames { get; } = new("varieties.csv", "variety");
    public KnownNames PlaceNames { get; } = new("places.csv", "place");
    public KnownNames LotNames { get; } = new("lots.csv", "lot");
    public KnownNames LineNames { get; } = new("lines.csv", "line");
    public KnownNames ModeNames { get; } = new("yields.csv", "mode");
    public KnownNames ProductNames { get; } = new("products.csv", "product");
    public KnownNames PriceListNames { get; } = new("price-lists.csv", "list");
    public KnownNames DestinationNames { get; } = new("freight.csv", "destination");
}
