using Cloveshed.Core.Keep.Air;

namespace Cloveshed.Core.Keep.Rooms;

/// <summary>A room as its refrigeration feels it.</summary>
/// <param name="Tonnes">Garlic, of 1000 kg.</param>
/// <param name="BinKg">Of the bins that hold it.</param>
/// <param name="FromC">Temperature of the garlic when it comes in; equal to <paramref name="ToC"/> for holding.</param>
/// <param name="PullDownHours">Over which it is to be cooled; ignored where there is nothing to cool.</param>
/// <param name="WallsWPerC">Heat through walls, floor and ceiling per °C.</param>
/// <param name="Outside">Air outside.</param>
/// <param name="InsideRh">Humidity that is held inside, percent.</param>
/// <param name="AirM3PerHour">Outside air that comes in by doors and leaks.</param>
/// <param name="FansAndLightsW">Motors, lamps, people.</param>
public sealed record RoomHeatQuestion(
    double Tonnes, double BinKg, double FromC, double ToC, double PullDownHours, double WallsWPerC, MoistAir Outside, double InsideRh, double AirM3PerHour, double FansAndLightsW,
    KeepingParameters P);

/// <summary>W each, and water that the coils take out.</summary>
/// <param name="RespirationW">At the middle published rate, at the temperature held.</param>
/// <param name="FieldHeatW">Heat of the garlic and its bins over the pull-down.</param>
/// <param name="OutsideAirW">Of the air that comes in, its water's heat included.</param>
/// <param name="CondensateKgPerDay">From outside air and from the garlic's own loss of water.</param>
public sealed record RoomHeatAnswer(double RespirationW, double FieldHeatW, double WallsW, double OutsideAirW, double FansAndLightsW, double CondensateKgPerDay)
{
    /// <summary>All of it.</summary>
    public double TotalW => RespirationW + FieldHeatW + WallsW + OutsideAirW + FansAndLightsW;

    /// <summary>Tons of refrigeration of 12,000 Btu/h, 3516.85 W (definition).</summary>
    public double Tons => TotalW / 3516.8528;
}

/// <summary>Respiration, field heat, walls and air: what a room's machine has to carry.</summary>
public static class RoomHeat
{
    /// <summary>J per kg and °C above and below freezing, and J per kg to freeze (WFLO Commodity Storage Manual, Garlic, 2018).</summary>
    public const double HeatAbove = 3170, HeatBelow = 2190, HeatToFreeze = 196_000;

    /// <summary>J per kg and °C of dry wood; from memory.</summary>
    private const double BinHeat = 1700;

    /// <summary>Pure. Nothing is frozen: field heat is that above freezing.</summary>
    public static RoomHeatAnswer Of(RoomHeatQuestion question)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(question.Tonnes);
        double kg = question.Tonnes * 1000, fall = Math.Max(0, question.FromC - question.ToC);
        double field = fall > 0 ? (kg * HeatAbove + question.BinKg * BinHeat) * fall / (3600 * question.PullDownHours) : 0;
        if (fall > 0)
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(question.PullDownHours);
        double respiration = question.Tonnes * Respiration.MlCo2PerKgHour(question.ToC).HeatWPerTonne;
        MoistAir inside = MoistAir.Of(question.ToC, question.InsideRh, question.Outside.PressurePa);
        double dryKgPerSecond = question.AirM3PerHour / 3600 / question.Outside.Volume;
        double air = dryKgPerSecond * (question.Outside.Enthalpy - inside.Enthalpy);
        double wet = Math.Max(0, dryKgPerSecond * (question.Outside.HumidityRatio - inside.HumidityRatio)) * 86_400;
        var cured = new KeepingTraits(Seasons.KeepClass.Medium, Inhibitor: false, Cured: true);
        double own = kg * KeepingLaw.WeightLoss(question.P, cured, new Climate(question.ToC, question.InsideRh, KeepingLaw.AirO2, KeepingLaw.AirCo2), 0) / 7;
        return new RoomHeatAnswer(respiration, field, question.WallsWPerC * (question.Outside.TempC - question.ToC), air, question.FansAndLightsW, wet + own);
    }
}
