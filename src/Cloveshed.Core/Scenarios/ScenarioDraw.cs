using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>Draws scenarios of a season: each a pure function of the assumptions, the seed and the scenario's number.</summary>
public sealed class ScenarioDraw
{
    private const double Z80 = 1.2815515655446004;

    private readonly PlanningInstance instance;
    private readonly ScenarioAssumptions assumed;
    private readonly long seed;
    private readonly LotSpread[] lots;
    private readonly CloveCurves cloves;
    private readonly double[] rowStrength;

    /// <summary>What can be worked out once for all scenarios.</summary>
    public ScenarioDraw(PlanningInstance instance, LotDefaults defaults, ScenarioAssumptions assumed, long seed)
    {
        (this.instance, this.assumed, this.seed) = (instance, assumed, seed);
        cloves = new(instance.Season, defaults);
        lots = [.. instance.Lots.Select(lot => LotSpread.Of(instance.Season, lot, assumed))];
        rowStrength = [.. instance.Rows.Select(row => SoundStrength(instance.Lots[row.Lot].Known, assumed.Sound.Scale))];
    }

    /// <summary>One scenario by its number.</summary>
    public Scenario Draw(int number)
    {
        KeyedChance chance = KeyedChance.Of(seed, number);
        int n = instance.Lots.Length, weeks = instance.Weeks;
        var scenario = new Scenario(
            number, new double[n], [.. instance.Rows.Select(_ => 1.0)], [.. instance.Rows.Select(r => r.Start)], new double[n], new double[n], new double[n], new double[n][], new double[n],
            [.. instance.Rows.Select(r => r.Fresh)], [.. instance.Rows.Select(r => r.Crack)],
            [.. instance.OrderLines.Select(l => l.Line.Units)], [.. instance.Market.Select(m => m.Units)],
            [.. instance.Lines.Select(_ => new double[weeks])]);
        Lots(scenario, chance);
        Rows(scenario, chance);
        Demand(scenario, chance);
        Stoppages(scenario, chance);
        return scenario;
    }

    private void Lots(Scenario s, KeyedChance chance)
    {
        double year = chance.For("yield of the year").Normal(), air = chance.For("keeping of the year").Normal();
        for (int l = 0; l < lots.Length; l++)
        {
            LotSpread spread = lots[l];
            InstanceLot lot = instance.Lots[l];
            KeyedChance own = chance.For("lot").For(lot.Id.Text);
            s.NetFactor[l] = spread.Net(Mixed(own.For("net").Normal(), year, spread.InGround ? assumed.Yield.Common : 0));
            s.LossPower[l] = MeanOne(assumed.Clock.Weight, own.For("weight").Normal());
            s.LifeFactor[l] = MeanOne(assumed.Clock.Life, Mixed(own.For("life").Normal(), air, assumed.Clock.Common));
            Sizes(s, l, own, chance.For("variety").For(lot.Known.Variety.Text).Normal());
        }
    }

    private void Sizes(Scenario s, int l, KeyedChance own, double kind)
    {
        InstanceLot lot = instance.Lots[l];
        LotSpread spread = lots[l];
        if (spread.MeanSd <= 0 && double.IsPositiveInfinity(spread.Strength))
        {
            (s.Sorts[l], s.Under[l]) = (lot.SortShares, lot.Under);
            return;
        }
        LotKnowledge known = lot.Known;
        double common = assumed.Sizes.OfKind * Math.Min(1, known.OfKind);
        double shift = spread.MeanSd * (common * kind + Math.Sqrt(1 - common * common) * own.For("mean").Normal());
        s.MeanShift[l] = double.IsPositiveInfinity(spread.Strength) ? shift : double.NaN;
        int classes = instance.Season.Sizes.Count;
        double[] shares = spread.Shifted(known, instance.Season.Sizes, shift);
        double[] drawn = own.For("classes").Dirichlet(shares, spread.Strength);
        (double[] grades, _) = cloves.Of(instance.Season.Varieties[lot.Variety], known.MeanG * Math.Exp(shift));
        s.Sorts[l] = [.. drawn[..classes], .. grades];
        s.Under[l] = drawn[classes];
    }

    private void Rows(Scenario s, KeyedChance chance)
    {
        SeasonSettings settings = instance.Season.Settings;
        double valley = chance.For("harvest").Normal() * assumed.Harvest.Valley;
        var rows = instance.Season.Lots.ToDictionary(r => (r.Lot, r.Place));
        for (int r = 0; r < instance.Rows.Length; r++)
        {
            InstanceRow row = instance.Rows[r];
            LotRow written = rows[(instance.Lots[row.Lot].Id, instance.Places[row.Place].Id)];
            if (row.FirstMove > row.Start) s.BinsFactor[r] = s.NetFactor[row.Lot];
            KeyedChance own = chance.For("row").For(written.Lot.Text).For(written.Place.Text);
            if (written.State is not LotState.Weighed and not LotState.Dug && settings.WeekOf(written.Harvested) >= settings.AsOfWeek && instance.Places[row.Place].Kind == PlaceKind.Open)
            {
                double field = chance.For("field").For(written.Field).Normal() * assumed.Harvest.Field;
                s.StartWeek[r] = Math.Max(settings.AsOfWeek, row.Start + (int)Math.Round(valley + field));
            }
            double[] sound = own.For("sound").Dirichlet([row.Fresh, row.Crack, Math.Max(0, 1 - row.Fresh - row.Crack)], rowStrength[r]);
            (s.Fresh[r], s.Crack[r]) = (sound[0], sound[1]);
        }
    }

    private void Demand(Scenario s, KeyedChance chance)
    {
        DemandSpread d = assumed.Demand;
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            OrderLine line = instance.OrderLines[i].Line;
            if (line.Firm || d.Forecast <= 0 && d.Product <= 0) continue;
            double off = d.Product * chance.For("demand").For(line.Product.Text).Normal() + d.Forecast * chance.For("order").For(line.Order.Text).For(line.Number).Normal();
            double variance = d.Product * d.Product + d.Forecast * d.Forecast;
            s.OrderUnits[i] = (int)Math.Round(line.Units * Math.Exp(off - variance / 2));
        }
        if (d.Market <= 0) return;
        var market = instance.Season.Market.ToDictionary(m => (m.Product, m.Week));
        for (int m = 0; m < instance.Market.Length; m++)
        {
            ProductId product = instance.Products[instance.Market[m].Product].Id;
            MarketWeek week = market[(product, instance.Market[m].Week)];
            double z = d.Market * Mixed(chance.For("market").For(product.Text).For(week.Week).Normal(), chance.For("market").For(product.Text).Normal(), d.MarketCommon);
            s.MarketUnits[m] = (int)Math.Floor(OfBand(week, z) + 1e-9);
        }
    }

    private void Stoppages(Scenario s, KeyedChance chance)
    {
        for (int i = 0; i < instance.Lines.Length; i++)
            for (int t = instance.AsOf; t < instance.Weeks; t++)
            {
                KeyedChance own = chance.For("line").For(instance.Lines[i].Id.Text).For(t);
                if (own.For("stops").Uniform() >= assumed.Stoppages.Chance) continue;
                s.HoursLost[i][t] = Math.Min(1, -assumed.Stoppages.MeanShare * Math.Log(own.For("share").Uniform()));
            }
    }

    /// <summary>Units at a standard normal: p50 at 0, p10 and p90 at their quantiles, straight between them and beyond, never under 0. A missing band is the point.</summary>
    internal static double OfBand(MarketWeek week, double z) =>
        Math.Max(0, week.P50 + z / Z80 * (z < 0 ? week.P50 - (week.P10 ?? week.P50) : (week.P90 ?? week.P50) - week.P50));

    private static double Mixed(double own, double common, double part) => Math.Sqrt(1 - part) * own + Math.Sqrt(part) * common;

    // Lognormal of mean 1, so that the scenarios lie around what the plan counts on.
    private static double MeanOne(double sd, double z) => Math.Exp(sd * z - sd * sd / 2);

    // The bulbs that make a Dirichlet as wide as the lot's 80% band of what makes grade.
    private static double SoundStrength(LotKnowledge known, double scale)
    {
        double sd = scale * (known.FreshBand.High - known.FreshBand.Low) / (2 * Z80), at = known.FreshShare;
        return sd > 0 && at is > 0 and < 1 ? Math.Max(3, at * (1 - at) / (sd * sd) - 1) : double.PositiveInfinity;
    }
}
