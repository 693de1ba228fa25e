using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>Sold as is: at a price of the season, within its weekly limit, and not of a lot on hold. Anything may be discarded.</summary>
internal static class AsIsRules
{
    public static void Check(SeasonData season, AnswerData answer, Findings findings)
    {
        var sold = new Dictionary<(AsIsPrice Price, int Week), double>();
        foreach (AsIsRow row in answer.AsIs.Where(row => row.Sold))
        {
            Lot lot = season.Lots[row.Lot];
            if (lot.Hold)
            {
                findings.Add(RuleNames.AsIsHold, row.Where, $"lot {lot.Name} is sold", "no sale: the lot is on hold");
            }

            if (season.AsIsPriceOf(lot.Variety) is AsIsPrice price)
            {
                sold[(price, row.Week)] = sold.GetValueOrDefault((price, row.Week)) + row.Mass;
            }
            else
            {
                findings.Add(RuleNames.AsIsPrice, row.Where, $"variety {lot.Variety}", "a variety that sell-as-is.csv prices");
            }
        }

        foreach (((AsIsPrice price, int week), double mass) in sold)
        {
            if (price.Limit is double limit && !Tolerance.AtMost(mass, limit, limit))
            {
                string variety = price.Variety.Length == 0 ? "any variety without a row of its own" : $"variety {price.Variety}";
                findings.Over(RuleNames.AsIsLimit, $"as-is.csv week {season.Calendar.Show(week)}, {variety}", "mass", mass, limit);
            }
        }
    }
}
