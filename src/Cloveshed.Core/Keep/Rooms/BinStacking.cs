namespace Cloveshed.Core.Keep.Rooms;

/// <summary>A room's floor, its bins, and the rules of its stacks. Metres.</summary>
/// <param name="HeightM">Under the lowest beam, coil or lamp.</param>
/// <param name="WallGapM">Left free along all walls for air; ours 0.15.</param>
/// <param name="AirAboveM">Left free above the top bin for the fans' throw; ours 0.6.</param>
/// <param name="AisleM">Width of one aisle along the length; 0 for a room filled solid from the door.</param>
/// <param name="MostHigh">Bins on one another at most: a rule of the shed, from the bins' maker and local code; null where none was set.</param>
/// <param name="MostHeightM">Height of a stack at most, likewise.</param>
public sealed record StackingQuestion(
    double LengthM, double WidthM, double HeightM, double BinLengthM, double BinWidthM, double BinHeightM,
    int? MostHigh = null, double? MostHeightM = null, double WallGapM = 0.15, double AirAboveM = 0.6, double AisleM = 0);

/// <summary>What limits the height of stacks.</summary>
public enum HeightLimit
{
    /// <summary>The ceiling and the air under it.</summary>
    Ceiling,

    /// <summary>The rule on bins on one another.</summary>
    BinsHigh,

    /// <summary>The rule on the height of a stack.</summary>
    StackHeight,
}

/// <param name="RuleMissing">No rule on height was set: the ceiling is not one. Ask the bins' maker; local codes come first.</param>
/// <summary>Bins along, across and on one another.</summary>
public sealed record StackingAnswer(int Along, int Across, int High, int Bins, HeightLimit LimitedBy, bool RuleMissing);

/// <summary>Capacity of a room in bins by its stacking plan, the better of the two ways to turn a bin.</summary>
public static class BinStacking
{
    /// <summary>Pure. A stack is never higher than its rule, whatever the ceiling allows.</summary>
    public static StackingAnswer Of(StackingQuestion question)
    {
        foreach (double length in (double[])[question.BinLengthM, question.BinWidthM, question.BinHeightM, question.LengthM, question.WidthM, question.HeightM])
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length, nameof(question));
        (int along, int across) = Turned(question, question.BinLengthM, question.BinWidthM);
        (int along2, int across2) = Turned(question, question.BinWidthM, question.BinLengthM);
        if (along2 * across2 > along * across)
            (along, across) = (along2, across2);
        int ceiling = Fit(question.HeightM - question.AirAboveM, question.BinHeightM);
        int high = ceiling;
        HeightLimit by = HeightLimit.Ceiling;
        if (question.MostHigh is { } bins && bins < high)
            (high, by) = (bins, HeightLimit.BinsHigh);
        if (question.MostHeightM is { } metres && Fit(metres, question.BinHeightM) < high)
            (high, by) = (Fit(metres, question.BinHeightM), HeightLimit.StackHeight);
        return new StackingAnswer(along, across, high, along * across * high, by, question.MostHigh is null && question.MostHeightM is null);
    }

    private static (int Along, int Across) Turned(StackingQuestion q, double alongM, double acrossM) =>
        (Fit(q.LengthM - 2 * q.WallGapM, alongM), Fit(q.WidthM - 2 * q.WallGapM - q.AisleM, acrossM));

    // A hair is forgiven, so that 3 x 1.2 m fit into 3.6 m.
    private static int Fit(double room, double each) => Math.Max(0, (int)Math.Floor(room / each + 1e-9));
}
