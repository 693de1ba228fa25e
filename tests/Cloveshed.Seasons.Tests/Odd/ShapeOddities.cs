using Cloveshed.Core.Seasons;
using static Cloveshed.Seasons.Tests.Odd.Oddity;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Odd in how much there is of what.</summary>
internal static class ShapeOddities
{
    public static IReadOnlyList<Oddity> All { get; } =
    [
        OfShape("plain", s => s, _ => true),
        OfShape("one lot", s => s with { Lots = 1 }, s => s.Lots.Select(l => l.Lot).Distinct().Count() == 1),
        OfShape("forty lots", s => s with { Lots = 40, Weeks = 16 }, s => s.Lots.Count >= 40, large: true),
        OfShape("four hundred lots", s => s with { Lots = 400, Weeks = 18, Varieties = 4 }, s => s.Lots.Count >= 400, large: true),
        OfShape("one week", s => s with { Weeks = 1 }, s => s.Settings.Weeks == 1),
        OfShape("three weeks", s => s with { Weeks = 3 }, s => s.Settings.Weeks == 3),
        OfShape("seventy weeks", s => s with { Weeks = 70, Lots = 5 }, s => s.Settings.Weeks == 70, large: true),
        OfShape("kilograms", s => s with { Unit = MassUnit.Kilogram }, s => s.Settings.MassUnit == MassUnit.Kilogram),
        OfShape("one class", s => s with { Chart = Chart.One }, s => s.Sizes.Count == 1),
        OfShape("two classes", s => s with { Chart = Chart.Two }, s => s.Sizes.Count == 2),
        OfShape("fifteen classes", s => s with { Chart = Chart.Fifteen }, s => s.Sizes.Count == 15),
        OfShape("bounded last class", s => s with { Chart = Chart.BoundedLast }, s => s.Sizes[^1].MaxMm is not null),
        OfShape("inches", s => s with { Chart = Chart.Inches }, s => s.Sizes.All(c => Math.Abs(c.MinMm / 25.4 * 16 % 1) < 1e-9)),
        OfShape("yard only", s => s with { Places = PlaceMix.YardOnly }, s => s.Places.All(p => p.Kind == PlaceKind.Open)),
        OfShape("no cold rooms", s => s with { Places = PlaceMix.YardAndRooms },
            s => s.Places.All(p => p.Kind != PlaceKind.Cold) && s.Places.Any(p => p.Kind == PlaceKind.Sealed)),
        OfShape("no sealed rooms", s => s with { Places = PlaceMix.YardAndCold }, s => s.Places.All(p => p.Kind != PlaceKind.Sealed)),
        OfShape("rooms only", s => s with { Places = PlaceMix.RoomsOnly }, s => s.Places.All(p => p.Kind == PlaceKind.Sealed)),
        OfShape("no seed", s => s with { SeedNeeds = false }, s => s.SeedNeeds.Count == 0),
        OfShape("all organic", s => s with { Organic = OrganicMix.All }, s => s.Lots.All(l => l.Organic) && s.Products.All(p => p.Organic)),
        OfShape("no organic", s => s with { Organic = OrganicMix.None }, s => !s.Lots.Any(l => l.Organic) && !s.Products.Any(p => p.Organic)),
        OfShape("fresh line only", s => s with { Lines = LineMix.FreshOnly }, s => s.Lines.All(l => l.Mode == LineMode.Fresh)),
        OfShape("cracker only", s => s with { Lines = LineMix.CrackOnly }, s => s.Lines.All(l => l.Mode == LineMode.Crack)),
        OfShape("seed line only", s => s with { Lines = LineMix.SeedOnly }, s => s.Lines.All(l => l.Mode == LineMode.Seed)),
        OfShape("two lines of each", s => s with { Lines = LineMix.TwoOfEach }, s => s.Lines.Count == 6),
        OfShape("nothing asked", s => s with { Demand = Demand.Nothing, SeedNeeds = false },
            s => s.Orders.Count + s.Market.Count + s.SeedNeeds.Count + s.AsIsPrices.Count == 0),
        OfShape("only market", s => s with { Demand = Demand.MarketOnly }, s => s.Orders.Count == 0 && s.Market.Count > 0),
        OfShape("only orders", s => s with { Demand = Demand.OrdersOnly }, s => s.Market.Count == 0 && s.Orders.Count > 0),
        OfShape("only sale as is", s => s with { Demand = Demand.AsIsOnly, SeedNeeds = false },
            s => s.Orders.Count + s.Market.Count + s.SeedNeeds.Count == 0 && s.AsIsPrices.Count > 0),
        OfShape("no clove grades", s => s with { Grades = Grades.None },
            s => s.CloveGrades.Count == 0 && s.Products.All(p => p.Form == ProductForm.Bulb)),
        OfShape("clove grades with gaps", s => s with { Grades = Grades.Gaps },
            s => Enumerable.Range(1, s.CloveGrades.Count - 1).All(i => s.CloveGrades[i].MinMm > s.CloveGrades[i - 1].MaxMm)),
        OfShape("most cloves ungraded", s => s with { Grades = Grades.Narrow }, s => s.CloveGrades.All(g => g.MaxMm - g.MinMm < 1)),
        OfShape("bounded last clove grade", s => s with { Grades = Grades.BoundedLast }, s => s.CloveGrades[^1].MaxMm is not null),
        OfShape("as of the middle", s => s with { AsOfDay = 7 * 4 + 2, Lots = 16 }, s => s.Settings.AsOfWeek == 4
            && s.Settings.AsOf.DayOfWeek == NodaTime.IsoDayOfWeek.Wednesday && s.Lots.Any(l => l.Harvested < s.Settings.AsOf) && s.Lots.Any(l => l.Harvested > s.Settings.AsOf)),
        OfShape("as of the last week", s => s with { Weeks = 6, AsOfDay = 41 }, s => s.Settings.AsOfWeek == s.Settings.Weeks - 1),
        OfShape("as of long before", s => s with { AsOfDay = -30 }, s => s.Settings.AsOf < s.Settings.FirstWeek),
        OfShape("far too much asked", s => s with { Asked = 20 }, s => s.Orders.Count > 0),
        OfShape("lines far too slow", s => s with { LineRoom = 0.05 },
            s => s.Lines.Sum(l => l.RatePerHour * (l.HoursPerWeek + l.OvertimeHours)) * s.Settings.Weeks < 0.5 * s.Lots.Sum(l => l.Net)),
    ];
}
