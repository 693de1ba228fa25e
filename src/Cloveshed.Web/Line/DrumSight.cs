using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Drum;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Line;

/// <summary>Keeps the best holes by what was asked: the search takes longer than a hand waits.</summary>
public sealed class DrumShelf
{
    private const int Room = 64;

    private readonly Shelf<DrumAnswer> shelf = new(Room);

    internal DrumAnswer Best(string key, DrumQuestion question) => shelf.Of(key, () => HoleChoosing.Choose(question));
}

/// <summary>A lot on the cracker's drum as a page and its live numbers see it.</summary>
/// <param name="Holes">As asked, small to large.</param>
/// <param name="Flows">What comes out of these holes.</param>
/// <param name="Best">The best holes for the same question.</param>
/// <param name="Loads">Misplaced share with these holes at other loads.</param>
/// <param name="Loop">The cracker's half-cracked bulbs going round; null where they fill the loop without end.</param>
/// <param name="CloveMass">Of the run, in the season's unit.</param>
/// <param name="Faults">Fields that hold no number that can be.</param>
public sealed record DrumSight(
    LotId Lot, LotRow[] Rows, DrumQuestion Question, IReadOnlyList<Zone> Zones, IReadOnlyList<double> Holes, HoleOrder Order, IReadOnlyList<Outflow> Flows, DrumAnswer Best,
    IReadOnlyList<(double Load, double Misplaced)> Loads, LoopQuestion LoopAsked, LoopAnswer? Loop, double Mass, double CloveMass, DrumSetting? InForce, IReadOnlyList<string> Faults, int? OutOfOrder)
{
    public const string Hole = "hole", LoadField = "load", OrderField = "order", Most = "most", Feed = "feed", First = "first", Again = "again", Caught = "caught", Hurt = "hurt", MassField = "mass", StepField = "step";

    /// <summary>Of a cracker that nobody has measured yet: our own figures, no published values.</summary>
    public const double UsualFirst = 0.12, UsualAgain = 0.3, UsualCaught = 0.9, UsualHurt = 0.03;

    private static readonly double[] OtherLoads = [0.5, 0.75, 1, 1.25, 1.5];

    public double Misplaced => Flows.Sum(flow => flow.Share * flow.Contamination);

    /// <summary>Null where there is no such lot, or the season asks for no clove grade.</summary>
    public static DrumSight? Of(ShedReading shed, DrumShelf shelf, LotId lot, IQueryCollection query)
    {
        Season season = shed.SeasonOpen;
        LotRow[] rows = [.. season.Lots.Where(row => row.Lot == lot)];
        if (rows.Length == 0 || season.CloveGrades.Count == 0)
        {
            return null;
        }

        List<string> faults = [];
        double Asked(string name, double usual, double least, double most, double per = 1)
        {
            string text = query[name].ToString().Trim();
            if (text.Length == 0)
            {
                return usual;
            }

            if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number >= least && number <= most)
            {
                return number / per;
            }

            faults.Add(name);
            return usual;
        }

        LotDefaults defaults = LotDefaults.Default;
        LotKnowledge known = shed.Lots.Lots[lot];
        Variety variety = season.Varieties.First(one => one.Id == rows[0].Variety);
        double kept = season.Yields.FirstOrDefault(yield => yield.Mode == LineMode.Crack)?.KeptShare ?? defaults.CrackKeptShare, kg = SizerSight.KilogramsPerUnit(season);
        CloveWidths cloves = CloveWidths.OfBulbs(known.MeanG, kept, variety.ClovesPerBulb ?? defaults.ClovesPerBulb, variety.CloveCv ?? defaults.CloveCv, variety.CloveLaw ?? defaults.CloveLaw);
        double most = Asked(Most, double.NaN, 0, 100, 100), load = Asked(LoadField, 1, 0, 3), step = Asked(StepField, 0.5, 0.05, 5);
        HoleOrder? order = query[OrderField].ToString() switch { "small" => HoleOrder.SmallestFirst, "large" => HoleOrder.LargestFirst, _ => null };
        DrumQuestion question = new(
            cloves, [.. season.CloveGrades.Select(grade => new GradeWanted(grade.Id.Text, grade.MinMm, grade.MaxMm, null, double.IsNaN(most) ? null : most))], DrumNature.Usual, load, step, order);
        DrumAnswer best = shelf.Best(FormattableString.Invariant($"{shed.State.KnowledgeDigest} {lot} {load} {step} {order} {most}"), question);
        IReadOnlyList<Zone> zones = DrumOutflows.Zones(cloves, question.Grades);

        DrumSetting? inForce = shed.State.DrumSettings.FirstOrDefault(setting => setting.Lot == lot && setting.HolesMm.Count == zones.Count - 1);
        HoleOrder ordered = order ?? (inForce is { } set && query[Hole].Count == 0 ? set.LargestFirst ? HoleOrder.LargestFirst : HoleOrder.SmallestFirst : best.Order);
        double[] holes = [.. Enumerable.Range(0, zones.Count - 1).Select(h =>
        {
            double usual = inForce?.HolesMm[h] ?? best.HolesMm[h];
            if (query[Hole].Count <= h || string.IsNullOrWhiteSpace(query[Hole][h]))
            {
                return usual;
            }

            if (double.TryParse(query[Hole][h], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double mm) && mm is > 0 and <= 500)
            {
                return mm;
            }

            faults.Add($"{Hole}-{h}");
            return usual;
        })];
        int outOfOrder = Enumerable.Range(1, Math.Max(0, holes.Length - 1)).FirstOrDefault(h => holes[h] < holes[h - 1]);
        double[] rising = [.. holes.Select((_, h) => holes.Take(h + 1).Max())];
        IReadOnlyList<Outflow> At(double atLoad) => DrumOutflows.Of(cloves, zones, [.. rising.Select(mm => question.Nature.At(mm, atLoad))], ordered);
        double mass = Asked(MassField, ToDump.Of(shed, rows, fresh: false).Mass, 0, 1e9);
        LoopQuestion loop = new(
            Asked(Feed, season.Lines.Where(line => line.Mode == LineMode.Crack).Select(line => line.RatePerHour).FirstOrDefault(1000), 0, 1e7) * kg, Asked(First, UsualFirst, 0, 100, 100), Asked(Again, UsualAgain, 0, 100, 100),
            Asked(Caught, UsualCaught, 0, 100, 100), 1 - kept, Asked(Hurt, UsualHurt, 0, 100, 100));
        double sound = rows.Sum(row => row.Net) is > 0 and var net ? rows.Sum(row => row.Net * (known.SharesOf(row).Fresh + known.SharesOf(row).Crack)) / net : 1;
        return new(
            lot, rows, question, zones, holes, ordered, At(load), best, [.. OtherLoads.Select(other => (other, At(other).Sum(flow => flow.Share * flow.Contamination)))], loop,
            loop.CaughtShare * loop.UncrackedAgain >= 1 ? null : CrackerLoop.At(loop), mass, mass * sound * kept, inForce, faults, outOfOrder == 0 ? null : outOfOrder);
    }

    /// <summary>An address with these holes and the rest as asked.</summary>
    public static string With(string path, IQueryCollection query, IReadOnlyList<double> holes, HoleOrder order)
    {
        List<(string, string?)> values = [.. holes.Select(mm => (Hole, (string?)Paths.Number(mm))), (OrderField, order == HoleOrder.LargestFirst ? "large" : "small")];
        values.AddRange(new[] { LoadField, StepField, Most, Feed, First, Again, Caught, Hurt, MassField }.Select(name => (name, (string?)query[name].ToString())));
        return Paths.Query(path, [.. values]);
    }
}
