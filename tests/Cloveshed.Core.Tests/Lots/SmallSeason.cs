using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Tests.Lots;

/// <summary>Small seasons for the tests of lots and keeping: only what these read is filled.</summary>
internal static class SmallSeason
{
    public static readonly LocalDate FirstWeek = new(2026, 6, 29);

    public static readonly MassLaw Law = new(-6.48, 2.646, 0.1);

    public static Season Of(
        IReadOnlyList<LotRow> lots, IReadOnlyList<SampleBulb>? samples = null, IReadOnlyList<Variety>? varieties = null,
        IReadOnlyList<Place>? places = null, IReadOnlyList<PlaceWeek>? placeWeeks = null, IReadOnlyList<SealedRoom>? rooms = null,
        LocalDate? asOf = null, IReadOnlyList<ModeYield>? yields = null) => new(
        new SeasonSettings("test", FirstWeek, 52, MassUnit.Pound, "USD", asOf ?? FirstWeek, 0, null),
        [
            new(new("small"), null, 37, 44), new(new("large"), null, 44, 50), new(new("jumbo"), null, 50, 57),
            new(new("colossal"), null, 57, null),
        ],
        varieties ?? [Variety("Pale"), Variety("Violet")],
        places ?? [], placeWeeks ?? [], lots, samples ?? [], yields ?? [new(LineMode.Crack, 0.8)], [], [], [], [],
        [new(new("big"), 14, null), new(new("middle"), 11, 14)], [], rooms ?? [], [], [], [], []);

    public static Variety Variety(string name) => new(new(name), Law, KeepClass.Medium, 12, 0.4, new MassLaw(-5.5, 2.6, 0.12));

    public static LotRow Lot(
        string id, string variety = "Pale", string place = "Yard", double? mean = null, double? cv = null, double? fresh = null,
        double? crack = null, double net = 1000, LocalDate? harvested = null) => new(
        new(id), new(place), new(variety), "North", harvested ?? FirstWeek, 1, net, null, null, null, false, true, false, fresh, crack,
        null, mean, cv, null, false);

    public static SampleBulb Bulb(string lot, double g, double? mm = null, Defect defect = Defect.None) =>
        new(new(lot), FirstWeek, g, mm, defect);
}
