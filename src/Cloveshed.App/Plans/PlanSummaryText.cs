using Cloveshed.App.Words;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;
using Cloveshed.Pictures.Sections;

namespace Cloveshed.App.Plans;

/// <summary>
/// A plan in one screen or two for the person who runs the shed: what it is worth and how sure that is, money, orders, seed,
/// rooms, what to run in the first week, and where the files are.
/// </summary>
internal static class PlanSummaryText
{
    private const int DearestShown = 5;

    /// <summary>A gap under a millionth is the rounding of the figures, not something left to find.</summary>
    private const double Proven = 1e-6;

    /// <summary>What would read as 0 is left out.</summary>
    private const double ShownFrom = 0.5;

    public static void Write(PlanOutcome.Written written, PlanQuestion question, TextWriter output, Phrasebook phrases)
    {
        SeasonSettings settings = written.Season.Settings;
        Reader reader = new(settings, new ReportOptions(phrases.Language, question.ShowIn ?? settings.MassUnit));
        IEnumerable<string> lines =
        [
            .. Head(written, reader, phrases), "", .. Money(written.Answer.Summary, reader, phrases), "", .. Orders(written, reader, phrases), "",
            .. Seed(written, reader, phrases), "", .. Rooms(written, reader, phrases), "", .. FirstWeekText.Lines(written, reader, phrases), "",
            .. Files(question, phrases),
        ];
        foreach (string line in lines)
        {
            output.WriteLine(TerminalText.Of(line).TrimEnd());
        }
    }

    private static IEnumerable<string> Head(PlanOutcome.Written written, Reader reader, Phrasebook phrases)
    {
        (SeasonSettings settings, PlanSummary plan) = (written.Season.Settings, written.Answer.Summary);
        yield return settings.Name;
        yield return reader.Say(Say.HeadDates, reader.WeekYear(0), reader.DayYear(settings.Monday(settings.Weeks).PlusDays(-1)), settings.Weeks, reader.DayYear(settings.AsOf));
        yield return "";
        yield return $"{reader.Say(Say.HeadValue)} {reader.Money(plan.Value)}.";
        yield return !double.IsFinite(plan.Bound) ? phrases[Phrase.NoBound]
            : plan.Gap < Proven ? phrases[Phrase.ProvenBest]
            : reader.Say(Say.HeadProven, Share(plan.Gap, reader), reader.Money(plan.Bound));
        if (double.IsFinite(plan.GapGivenRooms) && plan.Gap >= Proven && written.Answer.Rooms.Count > 0)
        {
            yield return reader.Say(Say.HeadProvenGivenRooms, Share(plan.GapGivenRooms, reader));
        }

        yield return reader.Say(Say.HeadStatus, reader.Status(plan.Status), reader.Number(plan.Seconds, 0), Share(plan.GapOfRevenue, reader));
        yield return phrases[Phrase.CheckHeld];
    }

    private static IEnumerable<string> Money(PlanSummary plan, Reader reader, Phrasebook phrases)
    {
        double costs = plan.Costs.Values.Sum();
        yield return phrases[Phrase.MoneyHead];
        yield return "  " + reader.Say(Say.MoneyLead, reader.Money(plan.Revenue), reader.Money(costs), reader.Money(plan.Value));
        (string Left, string Right)[] revenues = Kinds(plan.Revenues, reader), spent = Kinds(plan.Costs, reader);
        int name = revenues.Concat(spent).Select(kind => kind.Left.Length).DefaultIfEmpty().Max(), money = revenues.Concat(spent).Select(kind => kind.Right.Length).DefaultIfEmpty().Max();
        foreach ((string title, (string, string)[] kinds) in new[] { (phrases[Phrase.RevenueHead], revenues), (phrases[Phrase.CostsHead], spent) })
        {
            if (kinds.Length > 0)
            {
                yield return "  " + title;
            }

            foreach ((string left, string right) in kinds)
            {
                yield return $"    {left.PadRight(name)}  {right.PadLeft(money)}";
            }
        }
    }

    private static IEnumerable<string> Orders(PlanOutcome.Written written, Reader reader, Phrasebook phrases)
    {
        IReadOnlyList<OrderOutcome> orders = OrderOutcome.All(written.Season, written.Answer);
        long ordered = orders.Sum(o => (long)o.Line.Units), onTime = orders.Sum(o => (long)o.OnTime), late = orders.Sum(o => (long)o.Late), missing = orders.Sum(o => (long)o.Short);
        yield return phrases[Phrase.OrdersHead];
        if (ordered == 0)
        {
            yield return "  " + phrases[Phrase.OrdersNone];
            yield break;
        }

        yield return "  " + phrases.Say(Phrase.OrdersOnTime, reader.Percent((double)onTime / ordered), reader.Number(onTime, 0), reader.Number(ordered, 0));
        yield return "  " + phrases.Say(Phrase.OrdersLate, reader.Number(late, 0), orders.Count(o => o.Late > 0));
        yield return "  " + phrases.Say(Phrase.OrdersShort, reader.Number(missing, 0), orders.Count(o => o.Short > 0), reader.Money(orders.Sum(o => o.ShortMoney)));
        OrderOutcome[] dearest = [.. orders.Where(o => o.Short > 0).OrderByDescending(o => o.ShortMoney + o.ShortCost).Take(DearestShown)];
        if (dearest.Length > 0 && orders.Count(o => o.Short > 0) > dearest.Length)
        {
            yield return "  " + phrases[Phrase.OrdersDearest];
        }

        foreach (OrderOutcome o in dearest)
        {
            yield return "    " + phrases.Say(Phrase.OrderShortLine, o.Line.Order, o.Line.Number, o.Line.Customer, reader.Number(o.Short, 0), reader.Number(o.Line.Units, 0), o.Line.Product, reader.Day(o.Line.Due), reader.Reason(o.Why ?? ""));
        }
    }

    private static IEnumerable<string> Seed(PlanOutcome.Written written, Reader reader, Phrasebook phrases)
    {
        yield return phrases[Phrase.SeedHead];
        if (written.Season.SeedNeeds.Count == 0)
        {
            yield return "  " + reader.Say(Say.FigureSeedNone);
        }

        foreach (SeedNeed need in written.Season.SeedNeeds)
        {
            double kept = written.Answer.Seed.Where(s => s.Variety == need.Variety && s.By == need.By && s.NeedClass == need.Class).Sum(s => s.Cloves);
            yield return "  " + phrases.Say(Phrase.SeedLine, need.Variety, need.Class, reader.Day(need.By), reader.Mass(kept), reader.Mass(need.Net), reader.Percent(need.Net > 0 ? Math.Min(1, kept / need.Net) : 1));
        }
    }

    private static IEnumerable<string> Rooms(PlanOutcome.Written written, Reader reader, Phrasebook phrases)
    {
        yield return phrases[Phrase.RoomsHead];
        if (written.Answer.Rooms.Count == 0)
        {
            yield return "  " + reader.Say(Say.RoomsNone);
            yield break;
        }

        foreach (RoomRow room in written.Answer.Rooms.OrderBy(room => room.Opened ?? int.MaxValue))
        {
            string opened = room.Opened is { } week ? phrases.Say(Phrase.RoomOpens, reader.WeekYear(week)) : reader.Say(Say.StaysClosed);
            yield return "  " + phrases.Say(Phrase.RoomLine, room.Place, reader.WeekYear(room.Sealed), opened);
        }

        // Weeks of opening never stand without these.
        yield return "  " + reader.Say(Say.CautionNotSafe);
        yield return "  " + reader.Say(Say.CautionCodes);
    }

    private static IEnumerable<string> Files(PlanQuestion question, Phrasebook phrases) =>
        [phrases[Phrase.FilesHead], "  " + phrases.Say(Phrase.FilesReport, Path.GetFullPath(Path.Combine(question.Out, AnswerFolder.ReportName))), "  " + phrases.Say(Phrase.FilesAll, Path.GetFullPath(question.Out))];

    private static (string, string)[] Kinds(IReadOnlyDictionary<string, double> money, Reader reader) =>
        [.. money.Where(kind => Math.Abs(kind.Value) >= ShownFrom).OrderByDescending(kind => kind.Value).Select(kind => (MoneyKinds.Name(kind.Key, reader), reader.Money(kind.Value)))];

    private static string Share(double share, Reader reader) => reader.Percent(share, share < Proven ? 0 : share < 0.001 ? 3 : share < 0.01 ? 2 : 1);
}
