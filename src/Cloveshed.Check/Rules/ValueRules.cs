using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// The value, term by term as the contract lists them, from the figures as they are written. Crumbs: what places cost per week that hold
/// no more than a thousandth of a bin, for a plan may fairly call such a place empty.
/// </summary>
internal sealed record ValueSum(double Value, double Crumbs)
{
    public static ValueSum Of(SeasonData season, AnswerData answer, PathTracks tracks)
    {
        (double standing, double crumbs) = Standing(season, answer);
        double value = Income(season, answer, tracks) - Making(season, answer) - standing - Orders(season, answer) - Seed(season, answer);
        return new ValueSum(value, crumbs);
    }

    private static double Income(SeasonData season, AnswerData answer, PathTracks tracks)
    {
        double fills = answer.Fills.Sum(fill => season.Orders.TryGetValue((fill.Order, fill.Number), out OrderLine? line) ? fill.Units * line.Price : 0);
        double sales = answer.Sales.Sum(sale => season.Market.TryGetValue((sale.Product, sale.Week), out MarketWeek? market) ? sale.Units * market.Price : 0);
        double asIs = answer.AsIs.Where(row => row.Sold).Sum(row => row.Mass * (season.AsIsPriceOf(season.Lots[row.Lot].Variety)?.Price ?? 0));
        double end = tracks.All.Sum(track => track.States[season.Weeks] is PathRow state ? track.End * state.Ratio * (state.Fresh + state.Crack) : 0);
        return fills + sales + asIs + (end * season.EndPrice);
    }

    private static double Making(SeasonData season, AnswerData answer) =>
        answer.Made.Sum(made => made.Units * season.Products[made.Product].UnitCost)
        + answer.Runs.Sum(run => (run.Hours * season.Lines[run.OnLine].CostPerHour) + (run.Overtime * season.Lines[run.OnLine].OvertimeCostPerHour));

    private static (double Cost, double Crumbs) Standing(SeasonData season, AnswerData answer)
    {
        double cost = answer.Moves.Sum(move => move.Bins * season.Places[move.To].MoveInCost);
        double crumbs = 0;
        foreach (IGrouping<(string Place, int Week), KeepRow> kept in answer.Keeps.GroupBy(keep => (keep.Place, keep.Week)))
        {
            Place place = season.Places[kept.Key.Place];
            double bins = kept.Sum(keep => keep.Bins);
            cost += (bins * place.CostPerBinWeek) + (bins > 0 ? place.CostPerWeek : 0);
            crumbs += bins > 0 && bins <= Tolerance.Amount ? place.CostPerWeek : 0;
        }

        return (cost, crumbs);
    }

    private static double Orders(SeasonData season, AnswerData answer)
    {
        double late = 0;
        var filled = new Dictionary<(string, string), double>();
        foreach (FillRow fill in answer.Fills)
        {
            if (season.Orders.TryGetValue((fill.Order, fill.Number), out OrderLine? line))
            {
                late += line.LateCost * fill.Units * Math.Max(0, fill.Week - line.Due);
                filled[(fill.Order, fill.Number)] = filled.GetValueOrDefault((fill.Order, fill.Number)) + fill.Units;
            }
        }

        return late + season.Orders.Values.Where(line => line.Firm)
            .Sum(line => line.ShortCost * Math.Max(0, line.Units - filled.GetValueOrDefault((line.Order, line.Number))));
    }

    private static double Seed(SeasonData season, AnswerData answer)
    {
        var served = new Dictionary<(string, DateOnly, string), double>();
        foreach (SeedRow row in answer.Seed)
        {
            served[(row.Variety, row.By, row.NeedClass)] = served.GetValueOrDefault((row.Variety, row.By, row.NeedClass)) + row.Cloves;
        }

        return season.SeedNeeds.Values.Sum(need => need.ShortCost * Math.Max(0, need.Net - served.GetValueOrDefault((need.Variety, need.By, need.Class))));
    }
}

/// <summary>summary.json: the value is the sum of the answer, not above the bound, and the gap follows from both.</summary>
internal static class ValueRules
{
    private const string File = "summary.json";

    /// <summary>The recomputed value; null where the answer could not be read in full.</summary>
    public static double? Check(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        double? value = answer.Complete ? Value(season, answer, tracks, findings) : null;
        if (answer.Summary is not { Value: double said, Bound: double bound } summary)
        {
            return value;
        }

        if (said > bound + Tolerance.OfMoney(said))
        {
            findings.Over(RuleNames.Bound, File, "value", said, bound);
        }

        double gap = (bound - said) / Math.Max(1, Math.Abs(said));
        if (summary.Gap is double saidGap && !(Math.Abs(saidGap - gap) <= Tolerance.Ratio))
        {
            findings.NotSame(RuleNames.Gap, File, "gap", saidGap, gap);
        }

        return value;
    }

    private static double? Value(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        ValueSum sum = ValueSum.Of(season, answer, tracks);
        if (!double.IsFinite(sum.Value))
        {
            findings.Add(RuleNames.Value, File, "figures that sum to no finite value", "a finite value");
            return null;
        }

        if (answer.Summary?.Value is not double said)
        {
            return sum.Value;
        }

        double tolerance = Tolerance.OfMoney(sum.Value);
        double generous = sum.Value + sum.Crumbs;
        if (Math.Abs(said - sum.Value) <= tolerance)
        {
            return sum.Value;
        }

        if (Math.Abs(said - generous) <= tolerance)
        {
            return generous;
        }

        findings.NotSame(RuleNames.Value, File, "value", said, sum.Value);
        return sum.Value;
    }
}
