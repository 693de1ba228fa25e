using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using NodaTime;

namespace Cloveshed.Core.Tests.Shift;

/// <summary>
/// A week by hand: Monday to Friday from 06:00 to 14:30 with a break at 09:00 and one at 12:00, two packing lines and a cracker, all rows of
/// set-up kinds. Each test changes one thing of it.
/// </summary>
internal static class HandWeek
{
    public static readonly SeasonSettings Settings = new("Quillon Flat", new LocalDate(2026, 9, 7), 4, MassUnit.Pound, "USD", new LocalDate(2026, 9, 7), 0, null);

    public static readonly LineId PackOne = new("Pack 1"), PackTwo = new("Pack 2"), Cracker = new("Cracker");

    public static readonly ProductId Jumbo = new("Jumbo 30"), Giant = new("Giant 30");

    public static readonly ShiftLine[] Lines =
    [
        new(PackOne, LineMode.Fresh, 12, 60, 600, 30), new(PackTwo, LineMode.Fresh, 8, 60, 600, 20), new(Cracker, LineMode.Crack, 10, 120, 600, 30),
    ];

    public static readonly SetupRow[] Setups =
    [
        new(SetupKind.Variety, null, null, null, 20, 5, "change"), new(SetupKind.Variety, PackOne, "Sorrel", null, 30, 7, null), new(SetupKind.Variety, PackOne, "Sorrel", "Pale", 40, 9, null),
        new(SetupKind.Organic, null, "conventional", "organic", 60, 100, "clean out"), new(SetupKind.Cuts, null, null, null, 10, 0, null),
        new(SetupKind.Cleaning, null, null, null, 15, 0, null), new(SetupKind.Travel, null, null, null, 5, 0, null), new(SetupKind.Travel, null, "Far room", null, 45, 0, null),
    ];

    public static readonly ShiftRow[] Shifts =
    [
        .. Enumerable.Range(1, 5).Select(day => new ShiftRow(ShiftKind.Work, "Day", null, null, (IsoDayOfWeek)day, 360, 870, 30)),
        new(ShiftKind.Break, "Morning", null, null, null, 540, 555, null), new(ShiftKind.Break, "Meal", null, null, null, 720, 750, null),
        new(ShiftKind.Maintenance, "Sizer", PackTwo, null, IsoDayOfWeek.Tuesday, 360, 480, null), new(ShiftKind.Dock, "Trucks", null, null, null, 420, 840, null),
    ];

    public static ShiftRun Run(
        string id, LineId line, int minutes, string variety = "Pale", bool organic = false, string cuts = "JU", string place = "Yard", ProductId? product = null, double units = 0, params string[] notBefore) =>
        new(id, line, line == Cracker ? LineMode.Crack : LineMode.Fresh, new LotId("lot " + id), new VarietyId(variety), organic, notBefore.Length > 0, [new PlaceId(place)], 1000, 2,
            minutes, cuts, product is { } made ? [new RunMakes(made, units)] : [], notBefore);

    public static ShiftQuestion Of(params ShiftRun[] runs) => new(Settings, 0, Lines, runs, Setups, Shifts, [], []);

    public static DockNeed Need(ProductId product, int minute, double units, double cost = 1) => new(product, minute, units, cost, []);

    public static PlacedRun At(ShiftRun run, int day, int hour, int minute, int length) =>
        new(run.Id, run.Line, (((day * 24) + hour) * 60) + minute, (((day * 24) + hour) * 60) + minute + length);
}
