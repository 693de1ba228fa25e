using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Core.Answers;
using Cloveshed.Ledger;
using NodaTime;

namespace Cloveshed.App.Demo;

/// <summary>The demo in a ledger beside its folder's season: imported, planned, and the plan adopted, as a person would through the pages.</summary>
internal static class DemoLedger
{
    private const string FileName = "shed.db", By = "command", Device = "demo";

    public static LedgerAddress AddressIn(string folder) => LedgerAddress.Parse(Path.Combine(folder, FileName));

    /// <summary>The ledger holds a plan to work by already, or another season: then it is served as it stands. Says which; null where it is to be filled.</summary>
    public static string? Kept(ShedLedger ledger, LedgerAddress address, string name, Phrasebook phrases)
    {
        ShedState now = ledger.Now();
        return now.Season is { } season && season.Settings.Name != name ? phrases.Say(Phrase.DemoOtherSeason, address)
            : now.Adopted is not null ? phrases.Say(Phrase.DemoKept, address) : null;
    }

    /// <summary>Puts the season in and records the plan as asked, made and adopted; null when all was taken, else why not.</summary>
    public static string? Fill(ShedLedger ledger, PlanOutcome.Written written, PlanQuestion question, TimeProvider clock, Phrasebook phrases)
    {
        FactOrigin origin = FactOrigin.Now(clock, By, Device, "setup");
        // The files describe the shed as of a day: what they say was so from then on, and a past day after it shows it.
        DateTimeOffset described = written.Season.Settings.AsOf.AtMidnight().WithOffset(Offset.FromTimeSpan(origin.HappenedAt.Offset)).ToDateTimeOffset();
        ImportResult import = SeasonImport.Import(ledger, question.Folder, origin with { HappenedAt = described < origin.HappenedAt ? described : origin.HappenedAt }, phrases.FileLanguage);
        if (!import.Taken)
        {
            return import.Refusals is [var first, ..]
                ? phrases.Say(Phrase.DemoNotTaken, first.Message, first.Remedy) : phrases.Say(Phrase.DemoNotTaken, import.Faults[0], "");
        }

        FactOrigin planning = origin with { Place = "plan" };
        PlanSummary summary = written.Answer.Summary;
        long basis = ledger.Head().Seq;
        PlanDocument document = PlanDocument.Of(written.Answer, written.Season);
        NewFact asked = planning.PlanAsked(phrases[Phrase.DemoPlanName], question.Seconds, question.Gap, question.Seed, phrases.Language == Pictures.Language.Es ? "es" : "en", basis);
        string status = summary.Status switch { PlanStatus.GapReached => "gap", PlanStatus.TimeReached => "time", _ => "cancelled" };
        NewFact made = planning.PlanMade(asked.Id, document.Sha256, summary.Value, summary.Bound, summary.Gap, status, basis);
        if (ledger.Append([asked, made], new Dictionary<string, byte[]> { [document.Sha256] = document.Bytes }, phrases.FileLanguage) is Appended.Refused refused)
        {
            return Why(refused, phrases);
        }

        PlanEntry entry = ledger.Now().Plans.Single(plan => plan.Fact == made.Id);
        return ledger.Append([planning.PlanAdopted(entry)], null, phrases.FileLanguage) is Appended.Refused barred ? Why(barred, phrases) : null;
    }

    private static string Why(Appended.Refused refused, Phrasebook phrases) => phrases.Say(Phrase.DemoNotTaken, refused.Refusals[0].Message, refused.Refusals[0].Remedy);
}
