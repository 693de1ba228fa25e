using NodaTime;

namespace Cloveshed.Core.Keep.Rooms;

/// <summary>What is tested, in the order in which it is tested: oxygen, flammable gas, poison (from memory).</summary>
public enum TestedGas
{
    /// <summary>Percent by volume.</summary>
    Oxygen,

    /// <summary>Percent of the lower flammable limit.</summary>
    Flammable,

    /// <summary>Percent by volume of carbon dioxide.</summary>
    CarbonDioxide,
}

/// <summary>Who measured what, with what, when.</summary>
public sealed record GasTest(TestedGas Gas, double Value, string Who, string Instrument, LocalDateTime At);

/// <summary>What stands against opening or entering a room. Its absence is not leave to enter: nothing here gives that.</summary>
public enum EntryConcern
{
    /// <summary>Controlled atmosphere, or not yet aired out.</summary>
    RoomState,

    /// <summary>No test of this gas on record.</summary>
    NotTested,

    /// <summary>The test is older than allowed.</summary>
    TestTooOld,

    /// <summary>The test names no person or no instrument.</summary>
    TestUnsigned,

    /// <summary>Tested in another order than oxygen, flammable, poison.</summary>
    TestOrder,

    /// <summary>The value passes its limit.</summary>
    OverLimit,

    /// <summary>Nobody is named who stays outside and watches.</summary>
    NoAttendant,

    /// <summary>Equipment that could start is not locked and tagged (29 CFR 1910.147).</summary>
    NotLockedOut,
}

/// <param name="Gas">Null where the finding is not of a gas.</param>
/// <summary>One finding.</summary>
public sealed record EntryFinding(EntryConcern Concern, TestedGas? Gas, double? Value, double? Limit);

/// <summary>What is known before a room is opened or entered.</summary>
/// <param name="MostMinutes">Age of a test beyond which it counts for nothing; our default of 15.</param>
public sealed record EntryQuestion(RoomState State, IReadOnlyList<GasTest> Tests, string? Attendant, bool LockedAndTagged, LocalDateTime Now, double MostMinutes = 15);

/// <summary>
/// What speaks against it, and what always holds, in this order. There is no answer "yes" here, by intention: who may enter is decided by
/// the employer's permit, local code and licensed practice.
/// </summary>
public sealed record EntryAnswer(IReadOnlyList<EntryFinding> Findings, IReadOnlyList<EntryRule> Always);

/// <summary>Cautions that are shown whenever a door is spoken of.</summary>
public enum EntryRule
{
    /// <summary>Local codes and licensed practice come first.</summary>
    LocalCodeFirst,

    /// <summary>Oxygen under 19.5% or over 23.5% is a hazardous atmosphere.</summary>
    OxygenLimits,

    /// <summary>Carbon dioxide 5,000 ppm over 8 hours, 30,000 short-term, 40,000 immediately dangerous.</summary>
    CarbonDioxideLimits,

    /// <summary>Oxygen first, then flammable gas, then poison, from outside, at all heights.</summary>
    TestOrder,

    /// <summary>Nobody alone; somebody stays outside; nobody goes in after somebody who fell without breathing gear.</summary>
    NobodyAlone,

    /// <summary>Doors locked and tagged until the room is turned over.</summary>
    LockedAndTagged,
}

/// <summary>Asks who measured what, and holds it against the limits.</summary>
public static class RoomEntry
{
    /// <summary>Pure.</summary>
    public static EntryAnswer Of(EntryQuestion question)
    {
        var findings = new List<EntryFinding>();
        if (RoomStates.MayBeDeadly(question.State))
            findings.Add(new EntryFinding(EntryConcern.RoomState, null, null, null));
        var tested = new List<GasTest>();
        foreach (TestedGas gas in Enum.GetValues<TestedGas>())
        {
            GasTest? test = question.Tests.Where(t => t.Gas == gas && t.At <= question.Now).MaxBy(t => t.At);
            if (test is null)
            {
                findings.Add(new EntryFinding(EntryConcern.NotTested, gas, null, null));
                continue;
            }

            double minutes = Period.Between(test.At, question.Now, PeriodUnits.Seconds).Seconds / 60.0;
            if (minutes > question.MostMinutes)
                findings.Add(new EntryFinding(EntryConcern.TestTooOld, gas, minutes, question.MostMinutes));
            if (string.IsNullOrWhiteSpace(test.Who) || string.IsNullOrWhiteSpace(test.Instrument))
                findings.Add(new EntryFinding(EntryConcern.TestUnsigned, gas, null, null));
            if (tested.Any(earlier => earlier.At > test.At))
                findings.Add(new EntryFinding(EntryConcern.TestOrder, gas, null, null));
            tested.Add(test);
            if (Limit(gas, test.Value) is { } limit)
                findings.Add(new EntryFinding(EntryConcern.OverLimit, gas, test.Value, limit));
        }

        if (string.IsNullOrWhiteSpace(question.Attendant))
            findings.Add(new EntryFinding(EntryConcern.NoAttendant, null, null, null));
        if (!question.LockedAndTagged)
            findings.Add(new EntryFinding(EntryConcern.NotLockedOut, null, null, null));
        return new EntryAnswer(findings, Enum.GetValues<EntryRule>());
    }

    /// <summary>The limit that a value passes; null within. A value that is no number passes the first.</summary>
    public static double? Limit(TestedGas gas, double value) => gas switch
    {
        TestedGas.Oxygen => !(value >= AtmosphereLimits.LeastO2) ? AtmosphereLimits.LeastO2 : value > AtmosphereLimits.MostO2 ? AtmosphereLimits.MostO2 : null,
        TestedGas.Flammable => value <= AtmosphereLimits.MostFlammable ? null : AtmosphereLimits.MostFlammable,
        _ => value <= AtmosphereLimits.WorkdayCo2Ppm / 10_000.0 ? null : AtmosphereLimits.WorkdayCo2Ppm / 10_000.0,
    };
}
