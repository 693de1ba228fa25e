using Cloveshed.App.Words;
using Cloveshed.Core.Scenarios;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.App.Plans;

/// <summary>A study in a few lines: what the season brings, what orders get by size, where it breaks first, and which plan to take.</summary>
internal static class ScenariosText
{
    private const int Shown = 6;

    public static string Of(ScenariosTold told, Phrasebook phrases)
    {
        Reader reader = new(told.Season.Settings, new ReportOptions(phrases.Language, told.Season.Settings.MassUnit));
        return TerminalText.Of(string.Join(Environment.NewLine, Lines(told, reader, phrases)));
    }

    /// <summary>What a plan that is compared is called.</summary>
    public static Phrase NameOf(string plan) => plan switch
    {
        "expected" => Phrase.ScenariosExpected,
        "less-garlic" => Phrase.ScenariosLessGarlic,
        "shorter-weeks" => Phrase.ScenariosShorterWeeks,
        "faster-clocks" => Phrase.ScenariosFasterClocks,
        "all-a-little" => Phrase.ScenariosAllALittle,
        "weighted" => Phrase.ScenariosWeighted,
        _ => throw new ArgumentOutOfRangeException(nameof(plan), plan, "No words for this plan."),
    };

    private static IEnumerable<string> Lines(ScenariosTold told, Reader reader, Phrasebook phrases)
    {
        StudyAnswer study = told.Study;
        string Money(double value) => reader.Money(value);
        string Percent(double share) => reader.Percent(share, 1);
        yield return phrases.Say(Phrase.ScenariosHead, study.Count, told.Seed);
        yield return "  " + phrases.Say(Phrase.ScenariosValue, Money(study.Planned.Value), Money(study.Value.P10), Money(study.Value.P50), Money(study.Value.P90), Money(study.Value.WorstTenth));
        yield return "  " + phrases.Say(Phrase.ScenariosFill, Percent(study.Planned.Fill), Percent(study.Fill.P10), Percent(study.Fill.P50), Percent(study.Fill.P90));
        foreach (SizeFill size in study.Sizes)
        {
            yield return "    " + phrases.Say(Phrase.ScenariosSize, size.Name, Percent(size.Planned), Percent(size.Filled.P10), Percent(size.Filled.P50), Percent(size.Filled.P90));
        }

        yield return study.Breaks.Count > 0 ? phrases[Phrase.ScenariosBreaks] : phrases[Phrase.ScenariosNoBreak];
        foreach (FirstBreak one in study.Breaks.Take(Shown))
        {
            yield return "  " + phrases.Say(Phrase.ScenariosBreak, one.Size, Percent(one.Share), reader.WeekYear(one.Middle), reader.WeekYear(one.Earliest));
        }

        TroubleShare[] troubles = [.. study.Troubles.Where(one => one.Kind != TroubleKind.Size && one.Mass > 0).Take(Shown)];
        if (troubles.Length > 0)
        {
            yield return phrases[Phrase.ScenariosTroubles];
        }

        foreach (TroubleShare one in troubles)
        {
            yield return "  " + phrases.Say(WordOf(one.Kind), one.Name, Percent(one.Share), reader.WeekYear(one.Middle), reader.Mass(one.Mass));
        }

        if (told.Choice is { } choice)
        {
            yield return phrases.Say(Phrase.ScenariosJudged, study.Count);
            foreach (ChosenPlan plan in choice.Tried)
            {
                yield return "  " + phrases.Say(Phrase.ScenariosTried, phrases[NameOf(plan.Name)], Money(plan.Value.Mean), Money(plan.Value.WorstTenth), Percent(plan.Fill));
                if (plan.Against is { } against)
                {
                    yield return "    " + phrases.Say(Phrase.ScenariosAgainst, Money(against.Mean), Money(against.Low95), Money(against.High95), Percent(against.ShareBetter));
                }
            }

            yield return phrases.Say(Phrase.ScenariosChosen, phrases[NameOf(choice.OnAverage.Name)], phrases[NameOf(choice.WorstTenth.Name)]);
        }

        yield return phrases[Phrase.ScenariosAssumes];
    }

    private static Phrase WordOf(TroubleKind kind) => kind switch
    {
        TroubleKind.LotLate => Phrase.ScenariosLotLate,
        TroubleKind.LotSpent => Phrase.ScenariosLotSpent,
        TroubleKind.Line => Phrase.ScenariosLine,
        TroubleKind.Place => Phrase.ScenariosPlace,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
