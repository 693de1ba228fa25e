namespace Cloveshed.Check.Season;

// The season's rows as far as the check needs them. Weeks are counted from the first week, 0; masses are in the season's unit.

/// <summary>The season's weeks: Monday to Sunday, named by their Monday.</summary>
internal sealed record Calendar(DateOnly FirstWeek, int Weeks, DateOnly AsOf)
{
    /// <summary>The week that the files describe: nothing leaves stock, and no path begins, before it.</summary>
    public int AsOfWeek => Math.Max(0, WeekOf(AsOf));

    /// <summary>The week that holds a date: below 0 before the season.</summary>
    public int WeekOf(DateOnly date)
    {
        int days = date.DayNumber - FirstWeek.DayNumber;
        return days >= 0 ? days / 7 : -((6 - days) / 7);
    }

    public string Show(int week)
    {
        long day = FirstWeek.DayNumber + (7L * week);
        return day >= 0 && day <= DateOnly.MaxValue.DayNumber
            ? DateOnly.FromDayNumber((int)day).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)
            : $"week {week}";
    }
}

/// <summary>A size class by diameter, or a clove grade by width: from Min, inclusive, to Max, exclusive (null: no end), in mm.</summary>
internal sealed record Window(string Name, double Min, double? Max);

/// <summary>ln g = A + B ln mm, with residual standard deviation S.</summary>
internal sealed record MassLaw(double A, double B, double S);

internal sealed record Variety(string Name, MassLaw? Bulb, MassLaw? Clove, double? ClovesPerBulb, double? CloveCv);

internal sealed record Place(
    string Name, string Kind, double CapacityBins, double CostPerBinWeek, double CostPerWeek, double MoveInCost, int? RunOutWeeks)
{
    public bool MayBeSealed => Kind == "sealed";
}

/// <summary>What all rows of a lot share.</summary>
internal sealed record Lot(
    string Name, string Variety, bool Organic, bool Inhibitor, string SeedClass, double? MeanG, double? Cv, DateOnly? Ready, bool Hold);

/// <summary>
/// A row of lots.csv. Start is the week in which its path begins; StoodBefore: it was there before the day from which the row
/// counts, and may therefore move already at the start of that week.
/// </summary>
internal sealed record LotRow(
    Lot Lot, string Place, double Bins, double Net, double? FreshShare, double? CrackShare, int Start, bool StoodBefore)
{
    public string Where => $"lots.csv lot {Lot.Name}, place {Place}";

    /// <summary>Bins that this much of the mass at start stands in: in proportion, shrinking frees none.</summary>
    public double BinsOf(double massAtStart) => Net > 0 ? Bins * massAtStart / Net : 0;
}

internal sealed record Line(
    string Name, string Mode, double RatePerHour, double Hours, double Overtime, double CostPerHour, double OvertimeCostPerHour,
    double Heads, double MinRun, double SetupHours);

internal sealed record Product(
    string Name, string Form, string From, double Net, double UnitCost, int ShelfWeeks, bool Organic)
{
    public bool IsBulb => Form == "bulb";

    public bool SameNetAndForm(Product other) => Form == other.Form && Math.Abs(Net - other.Net) <= Tolerance.Noise * Math.Max(1, Net);
}

internal sealed record StockRow(string Product, int Made, double Units);

internal sealed record OrderLine(
    string Order, string Number, string Product, int ShipFrom, int Due, double Units, double Price, bool Firm, double LateCost,
    double ShortCost, bool LargerOk, bool Whole)
{
    /// <summary>A program's week without a late cost: units of a later week do not count.</summary>
    public bool ThatWeekOnly { get; init; }
}

internal sealed record MarketWeek(double Price, double P50);

internal sealed record SeedNeed(string Variety, double Net, DateOnly By, string Class, double ShortCost);

/// <summary>A row of sell-as-is.csv; Variety empty: any without a row of its own.</summary>
internal sealed record AsIsPrice(string Variety, double Price, double? Limit);
