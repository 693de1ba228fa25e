using System.Globalization;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Plan;

/// <summary>A plan asked for, as the form was sent.</summary>
public sealed record PlanAsk(Guid Id, string Name, string Seconds, string Gap)
{
    /// <summary>As the command plan has them: a minute, or a tenth of a percent from the best.</summary>
    public const double SecondsGiven = 60, GapPercent = 0.1;

    /// <summary>A night, in seconds.</summary>
    public const double MostSeconds = 43_200;

    /// <summary>Characters.</summary>
    public const int LongestName = 80;

    public static PlanAsk? Of(IFormCollection form) =>
        FactDesk.Id(form) is { } id ? new(id, form["name"].ToString().Trim(), form["seconds"].ToString().Trim(), form["gap"].ToString().Trim()) : null;

    /// <summary>What was meant, or what is wrong with it.</summary>
    public (double Seconds, double Gap)? Read(Words<PlanWord> words, out IReadOnlyList<FormFault> faults)
    {
        List<FormFault> found = [];
        if (Name.Length is 0 or > LongestName || Name.Any(char.IsControl))
        {
            found.Add(new FormFault("name", words.Say(PlanWord.AgainBadName, LongestName)));
        }

        if (Number(Seconds) is not ({ } seconds and >= 1 and <= MostSeconds))
        {
            (seconds, _) = (0, 0);
            found.Add(new FormFault("seconds", words.Say(PlanWord.AgainBadSeconds, MostSeconds.ToString("#,##0", CultureInfo.InvariantCulture))));
        }

        if (Number(Gap) is not ({ } percent and >= 0 and <= 100))
        {
            percent = 0;
            found.Add(new FormFault("gap", words[PlanWord.AgainBadGap]));
        }

        faults = found;
        return found.Count == 0 ? (seconds, percent / 100) : null;
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;
}
