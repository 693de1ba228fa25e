using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Keeping;

/// <summary>
/// The keeping chart: each lot a bar from digging to its last good day, darker with each quarter of its life that is used,
/// thinner when only its longer-lasting parts stand, thin once nothing stands, with its runs marked. The distance from the last mark to the flag is the margin.
/// </summary>
public static class KeepingChart
{
    private const double NamesWidth = 188;
    private const double PlotWidth = 1150;
    private const double Top = 48;
    private const double Pitch = 22;

    /// <param name="page">The address of a lot's page; null where names lead nowhere.</param>
    /// <param name="among">Lots with which these share the axis and the size of marks, so that pictures under each other read as one; null: these alone.</param>
    public static Picture Draw(KeepingFacts facts, Reader reader, Func<LotId, string>? page = null, KeepingFacts? among = null)
    {
        IReadOnlyList<KeepingBar> all = (among ?? facts).Bars;
        // A lot dug long before the season starts at the edge: eight weeks back are enough to see what was dug this summer.
        int first = (int)Math.Floor(Math.Max(-8, Math.Min(0, all.Select(b => b.Dug).DefaultIfEmpty(0).Min())));
        // The weeks end three after the last flag that is drawn, so that bars that end early have the width for it.
        double last = all.Select(b => Math.Max(b.LastGood ?? facts.Settings.Weeks, b.Runs.Select(r => r.Week + 1.0).DefaultIfEmpty(0).Max())).DefaultIfEmpty(facts.Settings.Weeks).Max();
        var axis = new WeekAxis(first, Math.Clamp((int)Math.Ceiling(last) + 3, first + 8, Math.Max(first + 8, facts.Settings.Weeks)) - first, PlotWidth);
        double height = Top + facts.Bars.Count * Pitch + 6;
        var plot = new Drawing(PlotWidth, height);
        var names = new Drawing(NamesWidth, height);
        axis.Draw(plot, Top, height - 4, facts.Settings, reader);
        double heaviest = all.SelectMany(b => b.Runs).Select(r => r.Mass).DefaultIfEmpty(1).Max();
        for (int i = 0; i < facts.Bars.Count; i++)
        {
            double y = Top + i * Pitch;
            DrawBar(plot, facts.Bars[i], y, axis, heaviest, facts.Settings, reader);
            KeepingBar bar = facts.Bars[i];
            void Name(Drawing into) => into.Names(NamesWidth - 10, y + 12, bar.Lot.Text, bar.Variety.Text, "small-name", NamesWidth - 12, 12.5);
            if (page is null)
            {
                Name(names);
            }
            else
            {
                names.Link(page(bar.Lot), bar.Lot.Text, "lot-link", bar.Lot.Text, Name);
            }
        }
        return new Picture(reader.Say(Say.KeepingName), plot, names, [Table(facts, reader)], Summary(facts, reader));
    }

    private static void DrawBar(Drawing plot, KeepingBar bar, double y, WeekAxis axis, double heaviest, SeasonSettings settings, Reader reader)
    {
        double edge = axis.First + axis.Count;
        double from = Math.Max(bar.Dug, axis.First);
        double end = Math.Min(bar.LastGood ?? edge, edge);
        double partCleared = Math.Min(bar.PartClearedAt ?? edge, edge);
        double cleared = Math.Max(partCleared, Math.Min(bar.ClearedAt ?? edge, edge));
        double[] marks = [from, .. bar.LifeAt.Where(l => l > from && l < end), end];
        for (int q = 0; q + 1 < marks.Length; q++)
        {
            // Quarters that were used before the view begins are skipped, so that the shade still says how much.
            int quarter = (bar.LastGood is null ? bar.LifeAt.Count + 1 : 4) - (marks.Length - 2 - q);
            Segment(plot, axis, marks[q], Math.Min(marks[q + 1], partCleared), y, 12, quarter);
            Segment(plot, axis, Math.Max(marks[q], partCleared), Math.Min(marks[q + 1], cleared), y + 3, 6, quarter);
            Segment(plot, axis, Math.Max(marks[q], cleared), marks[q + 1], y + 4.75, 2.5, quarter);
        }
        plot.Rect(axis.X(from), y, axis.X(Math.Min(end, partCleared)) - axis.X(from), 12, "life-edge");
        if (bar.LastGoodElsewhere is { } later && later > end)
        {
            // Leaves room for the day beside the flag.
            plot.Line(Math.Min(axis.X(end) + 54, axis.X(Math.Min(later, edge))), y + 6, axis.X(Math.Min(later, edge)), y + 6, "longer");
        }
        foreach (KeepingRun run in bar.Runs)
        {
            Mark(plot, run, axis.X(run.Week + 0.5), y + 6, 3 + 3.5 * Math.Sqrt(run.Mass / heaviest), reader.Say(
                Say.KeepingRunTitle, bar.Lot, reader.Week(run.Week), Work(run, reader), reader.Mass(run.Mass), reader.Percent(run.LifeUsed, 0)));
        }
        if (bar.LastGood is { } last && last <= edge)
        {
            double x = axis.X(last);
            string day = reader.Day(settings.FirstWeek.PlusDays((int)Math.Floor(last * 7)));
            plot.Line(x, y - 2, x, y + 15, "flag-pole");
            plot.Path($"M{MarkupText.Number(x)} {MarkupText.Number(y - 2)}l6 3.2l-6 3.2z", "flag");
            bool room = x + 50 < axis.Width;
            plot.Text(room ? x + 9 : x - 6, y + (room ? 10 : -4), day, "axis flag-day", room ? "start" : "end");
        }
    }

    private static void Segment(Drawing plot, WeekAxis axis, double from, double to, double y, double height, int quarter) =>
        plot.Rect(axis.X(from), y, axis.X(to) - axis.X(from), height, "life-" + MarkupText.Number(Math.Clamp(quarter, 1, 4)));

    /// <summary>Square: packed fresh; triangle: cracked; circle: seed; cross: sold as is; barred ring: discarded. The area follows the pounds.</summary>
    internal static void Mark(Drawing plot, KeepingRun run, double x, double y, double r, string? title)
    {
        string N(double v) => MarkupText.Number(v);
        switch (run.Mode)
        {
            case LineMode.Fresh:
                plot.Rect(x - r, y - r, 2 * r, 2 * r, "mark b-fresh", title, 1);
                break;
            case LineMode.Crack:
                plot.Path($"M{N(x - r)} {N(y + r)}h{N(2 * r)}l{N(-r)} {N(-2 * r)}z", "mark b-crack", title);
                break;
            case LineMode.Seed:
                plot.Circle(x, y, r, "mark b-seed", title);
                break;
            case null when run.Discarded:
                plot.Circle(x, y, r, "ring", title).Line(x - .7 * r, y + .7 * r, x + .7 * r, y - .7 * r, "cross");
                break;
            default:
                plot.Path($"M{N(x - r)} {N(y - r)}l{N(2 * r)} {N(2 * r)}m0 {N(-2 * r)}l{N(-2 * r)} {N(2 * r)}", "cross", title);
                break;
        }
    }

    private static string Work(KeepingRun run, Reader reader) => run.Mode is { } m ? reader.Mode(m) : reader.Say(run.Discarded ? Say.Discarded : Say.SoldAsIs);

    /// <summary>What the chart says of these lots, in a sentence or two.</summary>
    public static string Summary(KeepingFacts facts, Reader reader)
    {
        KeepingBar[] ending = [.. facts.Bars.Where(b => b.LastGood is not null)];
        KeepingBar? soonest = ending.MinBy(b => b.LastGood);
        string first = ending.Length == 0 ? reader.Say(Say.KeepingSummaryNone)
            : reader.Say(Say.KeepingSummaryFirst, soonest!.Lot, DayYear(soonest.LastGood!.Value, facts, reader));
        double margin = ending.Select(b => b.Margin ?? double.NaN).Where(m => !double.IsNaN(m)).DefaultIfEmpty(double.NaN).Min();
        int past = ending.Count(b => b.Margin < 0);
        string tightest = past > 0 ? " " + reader.Say(Say.KeepingSummaryPast, past)
            : double.IsNaN(margin) ? "" : " " + reader.Say(Say.KeepingSummaryMargin, reader.Number(margin, 1));
        return reader.Say(Say.KeepingSummary, facts.Bars.Count, ending.Length) + " " + first + tightest;
    }

    private static string DayYear(double week, KeepingFacts facts, Reader reader) =>
        reader.DayYear(facts.Settings.FirstWeek.PlusDays((int)Math.Floor(week * 7)));

    private static DataTable Table(KeepingFacts facts, Reader reader) => new(
        reader.Say(Say.KeepingCaption),
        [new(reader.Say(Say.Lot)), new(reader.Say(Say.Variety)), new(reader.Say(Say.MassHead, reader.MassUnitName), true), new(reader.Say(Say.DugHead)),
            new(reader.Say(Say.LastGoodDayHead)), new(reader.Say(Say.ClearedHead)), new(reader.Say(Say.LifeUsedAtLastRunHead), true), new(reader.Say(Say.RunsHead))],
        [.. facts.Bars.Select(b => (IReadOnlyList<Cell>)[b.Lot.Text, b.Variety.Text, reader.MassNumber(b.Net), DayYear(b.Dug, facts, reader),
            b.LastGood is { } last ? DayYear(last, facts, reader) : reader.Say(Say.AfterSeason),
            b.ClearedAt is { } cleared ? DayYear(cleared - 1.0 / 7, facts, reader) : reader.Say(Say.StandsAtEnd),
            b.Runs.All(r => r.Discarded) ? "–" : reader.Percent(b.LifeUsedWhenCleared, 0),
            string.Join("; ", b.Runs.Select(r => reader.Say(Say.RunWords, reader.Week(r.Week), Work(r, reader), reader.Mass(r.Mass))))])]);
}
