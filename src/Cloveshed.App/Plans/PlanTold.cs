using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Check;
using Cloveshed.Core.Answers;
using Cloveshed.SeasonFiles;

namespace Cloveshed.App.Plans;

/// <summary>Tells a person or a script what came of planning, and turns it into the exit code.</summary>
internal static class PlanTold
{
    /// <summary>Breaches on the screen; the file beside the failed answer has them all.</summary>
    private const int BreachesShown = 20;

    public static int Tell(PlanOutcome outcome, PlanQuestion question, bool json, World world, Phrasebook phrases)
    {
        switch (outcome)
        {
            case PlanOutcome.Written written:
                if (written.Answer.Summary.Status == PlanStatus.Cancelled)
                {
                    world.Error.WriteLine(phrases[Phrase.StoppedEarly]);
                }

                if (json)
                {
                    // The document as it was put into OUT.
                    world.Output.Write(System.Text.Encoding.UTF8.GetString(AnswerWriter.Render(written.Answer, written.Season).Single(file => file.Name == "summary.json").Bytes));
                }
                else
                {
                    PlanSummaryText.Write(written, question, world.Output, phrases);
                }

                return Entry.Done;

            case PlanOutcome.Faulty faulty:
                world.Error.WriteLine(phrases.Say(faulty.Count == 1 ? Phrase.RefusedOnce : Phrase.RefusedFaults, question.Folder, faulty.Count, question.Out));
                FaultsTold.Tell(faulty.Faults, faulty.Count, world, phrases);
                return Entry.Refused;

            case PlanOutcome.NoPlace place:
                world.Error.WriteLine(place.Reason);
                return Entry.Refused;

            case PlanOutcome.NotHolding broken:
                world.Error.WriteLine(phrases[Phrase.NotToBeUsed]);
                foreach (Breach breach in broken.Check.Breaches.Take(BreachesShown))
                {
                    world.Error.WriteLine("  " + phrases.Say(Phrase.BreachLine, breach.Rule, breach.Where, breach.Found, breach.Allowed));
                }

                world.Error.WriteLine(phrases.Say(Phrase.FailedKept, broken.Check.Breaches.Count, broken.KeptIn, question.Out));
                return Entry.Refused;

            default:
                throw new InvalidOperationException($"No words for {outcome.GetType().Name}.");
        }
    }
}
