using Cloveshed.App.Words;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.App.Plans;

/// <summary>A season and a plan of it, from their folders.</summary>
/// <param name="OtherFiles">The plan was made of files that read otherwise than these.</param>
internal sealed record SeasonAndPlan(Season Season, PlanAnswer Plan, bool OtherFiles)
{
    /// <summary>Null where one of them cannot be read: the phrase is said of its folder, then its faults. The season's warnings are told.</summary>
    public static SeasonAndPlan? Read(string folder, string plan, Phrase refused, World world, Phrasebook phrases)
    {
        SeasonReading reading = SeasonReader.Read(folder, phrases.FileLanguage);
        foreach (SeasonWarning warning in reading.Warnings)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, warning));
        }

        if (reading.Season is not { } season)
        {
            world.Error.WriteLine(phrases.Say(refused, folder, reading.FaultCount));
            FaultsTold.Tell(reading.Faults, reading.FaultCount, world, phrases);
            return null;
        }

        AnswerReading answer = AnswerReader.Read(plan, season, phrases.FileLanguage);
        if (answer.Answer is null)
        {
            world.Error.WriteLine(phrases.Say(refused, plan, answer.FaultCount));
            FaultsTold.Tell(answer.Faults, answer.FaultCount, world, phrases);
            return null;
        }

        return new SeasonAndPlan(season, answer.Answer, answer.Answer.Summary.InputDigest != reading.InputDigest);
    }

    /// <summary>Warns where the plan is of other files.</summary>
    public void Warn(World world, Phrasebook phrases)
    {
        if (OtherFiles)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, phrases[Phrase.ShiftOtherPlan]));
        }
    }
}
