using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Rooms;

/// <summary>
/// The units in which a room's sizes are typed and shown: who reads pounds has feet, pounds and cubic feet, who reads kilograms has metres and cubic metres.
/// Facts hold metres, kilograms and cubic metres whatever was typed, so that a shed has one size in one unit.
/// </summary>
public sealed record RoomUnits(MassUnit Unit)
{
    /// <summary>The field of a form that says in which units its other fields were typed.</summary>
    public const string Field = "units";

    /// <summary>Decimals of a shown size: a tenth of a thousandth of a foot is 0.03 mm.</summary>
    private const int Decimals = 4;

    private const double MetresPerFoot = (double)Core.Quantities.Length.MillimetresPerFoot / 1000, MinutesPerHour = 60;

    public static RoomUnits Of(string field) => new(field == "ft" ? MassUnit.Pound : MassUnit.Kilogram);

    private bool Feet => Unit == MassUnit.Pound;

    /// <summary>m or ft; also what <see cref="Field"/> says.</summary>
    public string Length => Feet ? "ft" : "m";

    public string Volume => Feet ? "ft³" : "m³";

    public string Mass => Feet ? "lb" : "kg";

    public double VolumeOf(double cubicMetres) => Feet ? cubicMetres / Math.Pow(MetresPerFoot, 3) : cubicMetres;

    public double MassOf(double kilograms) => Feet ? kilograms / Core.Quantities.Mass.KilogramsPerPound : kilograms;

    /// <summary>A figure's name with the unit in which it is typed.</summary>
    public string Label(RoomFigure figure, Words<RoomWord> words) => words.Say(RoomNames.Of(figure), figure switch
    {
        RoomFigure.BinKg => Mass,
        RoomFigure.AirM3PerHour => words[Feet ? RoomWord.FlowFeet : RoomWord.FlowMetres],
        _ => Length,
    });

    /// <summary>A stored figure as it is typed in these units.</summary>
    public string Typed(RoomFigure figure, double stored) => Paths.Number(Math.Round(stored / Stored(figure), Decimals));

    /// <summary>
    /// What a typed number is as stored. A field that still says what <paramref name="before"/> was shown as was not touched, so it says that and not its rounding.
    /// </summary>
    public double Read(RoomFigure figure, double typed, double? before) => before is { } was && typed == Math.Round(was / Stored(figure), Decimals) ? was : typed * Stored(figure);

    /// <summary>Stored units in one that is typed.</summary>
    private double Stored(RoomFigure figure) => !Feet ? 1 : figure switch
    {
        RoomFigure.LengthM or RoomFigure.WidthM or RoomFigure.HeightM or RoomFigure.BinLengthM or RoomFigure.BinWidthM or RoomFigure.BinHeightM or RoomFigure.MostHeightM
            or RoomFigure.AisleM or RoomFigure.WallGapM or RoomFigure.AirAboveM => MetresPerFoot,
        RoomFigure.BinKg => Core.Quantities.Mass.KilogramsPerPound,
        RoomFigure.AirM3PerHour => Math.Pow(MetresPerFoot, 3) * MinutesPerHour,
        _ => 1,
    };
}
