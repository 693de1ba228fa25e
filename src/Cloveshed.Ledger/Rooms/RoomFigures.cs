using Cloveshed.Core.Keep.Rooms;

namespace Cloveshed.Ledger.Rooms;

/// <summary>A figure of a room that no season's file has.</summary>
public enum RoomFigure
{
    // Metres, and the rules of stacks
    LengthM, WidthM, HeightM, BinLengthM, BinWidthM, BinHeightM, MostHigh, MostHeightM, AisleM, WallGapM, AirAboveM,
    // Heat
    BinKg, WallsWPerC, MachineKw, AirM3PerHour, FansW, PullDownHours,
    // Air and money
    LeakPerDay, ScrubbedTo, PullDownCost,
    // Limits for alarms
    ColdestC, WarmestC, DriestRh, DampestRh, LeastO2, MostO2, LeastCo2, MostCo2, QuietHours,
}

/// <summary>How a figure is stored, and between which ends (both included) it may lie: wide, to catch slips of a unit.</summary>
public sealed record RoomFigureForm(RoomFigure Figure, string Key, double Least, double Most);

/// <summary>The figures of a room that somebody gave, and what else is kept beside the garlic.</summary>
public sealed record RoomFigures(IReadOnlyDictionary<RoomFigure, double> Given, IReadOnlyList<Neighbour> Neighbours)
{
    /// <summary>Nobody said anything.</summary>
    public static RoomFigures None { get; } = new(new Dictionary<RoomFigure, double>(), []);

    /// <summary>Every figure, in the order in which they are asked for.</summary>
    public static IReadOnlyList<RoomFigureForm> Forms { get; } =
    [
        new(RoomFigure.LengthM, "length_m", 0.5, 500), new(RoomFigure.WidthM, "width_m", 0.5, 500), new(RoomFigure.HeightM, "height_m", 0.5, 50),
        new(RoomFigure.BinLengthM, "bin_length_m", 0.2, 5), new(RoomFigure.BinWidthM, "bin_width_m", 0.2, 5), new(RoomFigure.BinHeightM, "bin_height_m", 0.1, 3),
        new(RoomFigure.MostHigh, "most_high", 1, 30), new(RoomFigure.MostHeightM, "most_height_m", 0.1, 50), new(RoomFigure.AisleM, "aisle_m", 0, 50),
        new(RoomFigure.WallGapM, "wall_gap_m", 0, 5), new(RoomFigure.AirAboveM, "air_above_m", 0, 20),
        new(RoomFigure.BinKg, "bin_kg", 0, 500), new(RoomFigure.WallsWPerC, "walls_w_per_c", 0, 1e5), new(RoomFigure.MachineKw, "machine_kw", 0, 1e4),
        new(RoomFigure.AirM3PerHour, "air_m3_per_hour", 0, 1e6), new(RoomFigure.FansW, "fans_w", 0, 1e6), new(RoomFigure.PullDownHours, "pull_down_hours", 1, 2000),
        new(RoomFigure.LeakPerDay, "leak_per_day", 0, 100), new(RoomFigure.ScrubbedTo, "scrubbed_to", 0, 100), new(RoomFigure.PullDownCost, "pull_down_cost", 0, 1e8),
        new(RoomFigure.ColdestC, "coldest_c", -10, 30), new(RoomFigure.WarmestC, "warmest_c", -10, 40), new(RoomFigure.DriestRh, "driest_rh", 0, 100),
        new(RoomFigure.DampestRh, "dampest_rh", 0, 100), new(RoomFigure.LeastO2, "least_o2", 0, 100), new(RoomFigure.MostO2, "most_o2", 0, 100),
        new(RoomFigure.LeastCo2, "least_co2", 0, 100), new(RoomFigure.MostCo2, "most_co2", 0, 100), new(RoomFigure.QuietHours, "quiet_hours", 0.1, 1000),
    ];

    /// <summary>Null where nobody gave it.</summary>
    public double? this[RoomFigure figure] => Given.TryGetValue(figure, out double value) ? value : null;

    /// <summary>The limits for alarms: what was given, else as shipped.</summary>
    public RoomLimits Limits
    {
        get
        {
            RoomLimits shipped = new();
            return new RoomLimits(
                this[RoomFigure.ColdestC] ?? shipped.ColdestC, this[RoomFigure.WarmestC] ?? shipped.WarmestC, this[RoomFigure.DriestRh] ?? shipped.DriestRh,
                this[RoomFigure.DampestRh] ?? shipped.DampestRh, this[RoomFigure.LeastO2] ?? shipped.LeastO2, this[RoomFigure.MostO2] ?? shipped.MostO2,
                this[RoomFigure.LeastCo2] ?? shipped.LeastCo2, this[RoomFigure.MostCo2] ?? shipped.MostCo2, this[RoomFigure.QuietHours] ?? shipped.QuietHours);
        }
    }
}
