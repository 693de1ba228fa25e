using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Air;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Rooms;

/// <summary>What a room's garlic asks of it: heat, air, money and positions. Null where a figure is missing that nothing can stand in for.</summary>
/// <param name="Tonnes">Of 1000 kg.</param>
/// <param name="HeldC">The temperature that it is held at.</param>
/// <param name="FromC">The temperature that its garlic is brought down from: the open yard's this week.</param>
/// <param name="Outside">The open yard's air this week, or the default of an open yard.</param>
/// <param name="Weeks">Of the stay that its cost is reckoned for.</param>
public sealed record RoomLoads(
    double Tonnes, double HeldC, double FromC, Climate Outside, RoomHeatAnswer Holding, RoomHeatAnswer PullingDown, double PullDownHours, (double Low, double High) Co2M3PerDay, double? FreeM3,
    IReadOnlyList<RoomGasDay>? Gas, double? GasTarget, int Weeks, RoomCostAnswer? Cost, StackingAnswer? Stacking)
{
    /// <summary>Hours in which a room is brought down where nobody said: a day, common practice, no source.</summary>
    public const double UsualPullDownHours = 24;

    /// <summary>Whether its bulbs sweat when they are taken out into the open yard's air of this week.</summary>
    public SweatAnswer Sweat => Sweating.Of(new SweatQuestion(HeldC, MoistAir.Of(Outside.TempC, Outside.Rh)));

    /// <summary>Days of the garlic's own air that are shown.</summary>
    public const int GasDays = 60;

    public static RoomLoads Of(RoomSight room, Season season, PlanBook? book)
    {
        SeasonSettings settings = season.Settings;
        RoomFigures figures = room.Figures;
        int week = room.Week;
        Climate held = PlaceClimate.Of(season, room.Place, week, room.State.State == RoomState.Sealed, ClimateDefaults.Default);
        Place? yard = season.Places.FirstOrDefault(place => place.Kind == PlaceKind.Open);
        Climate outside = PlaceClimate.Of(
            season, yard ?? room.Place with { Kind = PlaceKind.Open, TempC = null, Rh = null }, week, false, ClimateDefaults.Default);
        double tonnes = room.CountedMass * (settings.MassUnit == MassUnit.Pound ? Mass.KilogramsPerPound : 1) / 1000;
        double hours = figures[RoomFigure.PullDownHours] ?? UsualPullDownHours;
        RoomHeatQuestion Heat(double fromC) => new(
            tonnes, room.CountedBins * (figures[RoomFigure.BinKg] ?? 0), fromC, held.TempC, hours, figures[RoomFigure.WallsWPerC] ?? 0, MoistAir.Of(outside.TempC, outside.Rh), held.Rh,
            figures[RoomFigure.AirM3PerHour] ?? 0, figures[RoomFigure.FansW] ?? 0, KeepingParameters.Default);
        double? volume = figures is { } f && f[RoomFigure.LengthM] is { } length && f[RoomFigure.WidthM] is { } width && f[RoomFigure.HeightM] is { } height ? length * width * height : null;
        double? free = volume is { } whole && tonnes * 1000 / RoomGas.BulbDensity < whole ? RoomGas.FreeM3(tonnes, whole) : null;
        RoomGasQuestion? gas = free is null || room.Place.Kind != PlaceKind.Sealed || tonnes <= 0 ? null : new RoomGasQuestion(
            tonnes, volume!.Value, held.TempC, KeepingLaw.AirO2, KeepingLaw.AirCo2, (figures[RoomFigure.LeakPerDay] ?? 0) / 100, figures[RoomFigure.ScrubbedTo]);
        int weeks = WeeksOf(room, book);
        return new RoomLoads(
            tonnes, held.TempC, Math.Max(outside.TempC, held.TempC), outside, RoomHeat.Of(Heat(held.TempC)), RoomHeat.Of(Heat(Math.Max(outside.TempC, held.TempC))), hours,
            RoomGas.CarbonDioxideM3PerDay(tonnes, held.TempC), free, gas is null ? null : RoomGas.Days(gas, GasDays),
            gas is null ? null : RoomGas.DaysToO2(gas, room.Place.O2 ?? ClimateDefaults.Default.SealedO2), weeks, CostOf(room, season, weeks), StackingOf(figures));
    }

    /// <summary>Null until somebody gave the room's and the bins' sizes.</summary>
    public static StackingAnswer? StackingOf(RoomFigures figures)
    {
        if (figures[RoomFigure.LengthM] is not { } length || figures[RoomFigure.WidthM] is not { } width || figures[RoomFigure.HeightM] is not { } height
            || figures[RoomFigure.BinLengthM] is not { } binLength || figures[RoomFigure.BinWidthM] is not { } binWidth || figures[RoomFigure.BinHeightM] is not { } binHeight)
        {
            return null;
        }

        StackingQuestion asked = new(length, width, height, binLength, binWidth, binHeight);
        return BinStacking.Of(asked with
        {
            MostHigh = figures[RoomFigure.MostHigh] is { } high ? (int)high : null, MostHeightM = figures[RoomFigure.MostHeightM], WallGapM = figures[RoomFigure.WallGapM] ?? asked.WallGapM,
            AirAboveM = figures[RoomFigure.AirAboveM] ?? asked.AirAboveM, AisleM = figures[RoomFigure.AisleM] ?? asked.AisleM,
        });
    }

    private static RoomCostAnswer? CostOf(RoomSight room, Season season, int weeks)
    {
        Currency currency = Currency.FromCode(season.Settings.Currency);
        return room.CountedBins <= 0 || room.CountedBins > room.Place.CapacityBins ? null : RoomCost.Of(new RoomCostQuestion(
            room.Place.CapacityBins, room.CountedBins, weeks, Money.From((decimal)(room.Figures[RoomFigure.PullDownCost] ?? 0), currency), Money.From(room.Place.CostPerWeek, currency),
            Money.From(room.Place.CostPerBinWeek, currency)));
    }

    /// <summary>From now to the week in which the plan opens it, or to the last in which it has bins there; at least one.</summary>
    private static int WeeksOf(RoomSight room, PlanBook? book)
    {
        int week = room.Week;
        int? until = book?.Answer.Keeps.Where(keep => keep.Place == room.Place.Id && keep.Bins > 1e-6 && keep.Week >= week).Select(keep => (int?)keep.Week).Max();
        return until is { } last ? last - week + 1 : 1;
    }
}
