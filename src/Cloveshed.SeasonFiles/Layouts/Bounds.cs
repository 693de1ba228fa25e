using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Layouts;

/// <summary>
/// The numbers that a column may hold, both ends included unless <paramref name="AboveMin"/>. They are wide: their purpose is
/// to catch slips of a unit, a point or a key before they become a plan, not to judge a season. None has a source; each says why.
/// </summary>
internal sealed record Bounds(double Min, double Max, FaultRule Rule = FaultRule.Range, bool AboveMin = false)
{
    public bool Hold(double number) => number <= Max && (AboveMin ? number > Min : number >= Min);

    /// <summary>lb or kg in one cell: 45,000 t of garlic are far more than one shed's harvest, let alone one lot's.</summary>
    public static readonly Bounds Mass = new(0, 1e8);
    public static readonly Bounds SomeMass = new(0, 1e8, AboveMin: true);

    /// <summary>A limit in mass per week; no limit is an empty cell, not a huge number.</summary>
    public static readonly Bounds MassLimit = new(0, 1e8, FaultRule.LimitRange);

    /// <summary>A million bins would cover several square kilometres.</summary>
    public static readonly Bounds Bins = new(0, 1e6);

    public static readonly Bounds Share = new(0, 1, FaultRule.ShareRange);
    public static readonly Bounds Percent = new(0, 100, FaultRule.PercentRange);

    /// <summary>Weekly means in °C of any place where garlic is kept; 68 would be °F.</summary>
    public static readonly Bounds Celsius = new(-40, 60, FaultRule.CelsiusRange);

    /// <summary>mm of a bulb or clove: half a metre is no garlic.</summary>
    public static readonly Bounds Millimetres = new(0, 500);
    public static readonly Bounds SomeMillimetres = new(0, 500, AboveMin: true);

    /// <summary>g of one bulb: the heaviest are little over 1 kg (from memory).</summary>
    public static readonly Bounds BulbGrams = new(0, 5000, AboveMin: true);

    /// <summary>Coefficient of variation: at 5 a lognormal mean says nothing any more.</summary>
    public static readonly Bounds Variation = new(0, 5);

    /// <summary>ln g = a + b ln mm: a bulb's mass goes about with the cube of its diameter, so b is near 3 and a near -7.</summary>
    public static readonly Bounds LawIntercept = new(-50, 50);
    public static readonly Bounds LawSlope = new(0, 20, AboveMin: true);
    public static readonly Bounds LawSpread = new(0, 5);

    public static readonly Bounds ClovesPerBulb = new(0, 200, AboveMin: true);

    /// <summary>Mass per hour of one line.</summary>
    public static readonly Bounds Rate = new(0, 1e7, AboveMin: true);

    /// <summary>Hours in a week: a line may stand for several machines, so more than 168 are only warned about.</summary>
    public static readonly Bounds LineHours = new(0, 10_000);

    /// <summary>Minutes of a set-up, of cleaning or of a way: what takes a day is no set-up.</summary>
    public static readonly Bounds Minutes = new(0, 1440);
    public static readonly Bounds PeopleHours = new(0, 1e6, FaultRule.LimitRange);
    public static readonly Bounds Heads = new(0, 1000);

    /// <summary>Money per unit, mass unit, bin, hour or week; wide enough for currencies with small units.</summary>
    public static readonly Bounds Money = new(0, 1e8);

    /// <summary>Units of one row: a year of a large shed in one order line, with room to spare.</summary>
    public static readonly Bounds Units = new(0, 1e7);

    /// <summary>Weeks after making or opening: ten years.</summary>
    public static readonly Bounds ShelfWeeks = new(0, 520);
    public static readonly Bounds RunOutWeeks = new(1, 520, FaultRule.LimitRange);

    public static readonly Bounds OrderLineNumber = new(0, 1e9 - 1);

    /// <summary>Weeks of a season: no garlic keeps for two years, and a plan's size grows with them.</summary>
    public static readonly Bounds SeasonWeeks = new(1, 104);

    public static readonly Bounds Seed = new(int.MinValue, int.MaxValue);

    /// <summary>Numbers of an answer, which are ours: any finite one.</summary>
    public static readonly Bounds Any = new(double.MinValue, double.MaxValue);
    public static readonly Bounds AnyWhole = new(int.MinValue, int.MaxValue);
}
