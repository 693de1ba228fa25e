using System.Text;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Board;

/// <summary>Where a run's block stands in its line's lane.</summary>
internal readonly record struct BlockPlace(double X, double Width, double Y);

/// <summary>Draws one lot: its thread, its flag, and its turns down to the lines.</summary>
internal sealed class BoardThreads(WeekAxis axis, BoardSize size, double heaviest, Reader reader)
{
    // Layers from the top of the thread down; what is run first tends to be at the bottom.
    private static readonly PlaceKind[] Layers = [PlaceKind.Sealed, PlaceKind.Cold, PlaceKind.Open];

    public void DrawThread(Drawing plot, LotThread lot, double y)
    {
        plot.Line(axis.X(lot.StartWeek), y + 0.5, axis.X(axis.First + axis.Count), y + 0.5, "row-rule");
        foreach (PlaceKind kind in Layers)
        {
            foreach ((string outline, string core) in Stretches(lot, kind, y))
            {
                string name = Name(kind);
                plot.Path(outline, "k-" + name, $"{lot.Lot}: {reader.Kind(kind)}");
                // The core says the kind without colour: none in the open yard, dots in a cold room, a line in a sealed one.
                if (kind != PlaceKind.Open && core.Length > 0)
                {
                    plot.Path(core, "core-" + name);
                }
            }
        }
        if (lot.LastGoodWeek is { } end && end <= axis.First + axis.Count)
        {
            double x = axis.X(end);
            double tall = size.Turns ? 26 : 12;
            string title = reader.Say(Say.LastGoodDayTitle, lot.Lot, reader.Day(DayOf(end)));
            plot.Line(x, y, x, y + tall, "flag-pole");
            plot.Path($"M{N(x)} {N(y)}l{N(tall * .26)} {N(tall * .14)}l{N(-tall * .26)} {N(tall * .14)}z", "flag", title);
        }
    }

    public void DrawTurns(Drawing plot, LotThread lot, double y, Dictionary<(LineId, int, LotId), BlockPlace> blocks, BoardLinks? links)
    {
        foreach (ThreadRun run in lot.Runs)
        {
            if (run.Line is not { } line || run.Mode is not { } mode || !blocks.TryGetValue((line, run.Week, lot.Lot), out BlockPlace block))
            {
                continue;
            }
            double from = y + Height(lot, run.Week);
            double w = Math.Max(1.4, block.Width);
            // Pours out of the thread over the whole week and narrows to the width of its hours on the line.
            double left = axis.X(run.Week) + 1;
            double right = axis.X(run.Week + 1) - 1;
            double to = Math.Min(from + 26, block.Y);
            string title = reader.Say(Say.TurnTitle, lot.Lot, line, reader.Week(run.Week), reader.Mass(run.Mass));
            string outline = $"M{N(left)} {N(from - .5)}C{N(left)} {N(from + 13)} {N(block.X)} {N(from + 10)} {N(block.X)} {N(to)}V{N(block.Y)}h{N(w)}"
                + $"V{N(to)}C{N(block.X + w)} {N(from + 10)} {N(right)} {N(from + 13)} {N(right)} {N(from - .5)}z";
            if (links?.Run(lot.Lot, line, run.Week, false) is { } link)
            {
                plot.Link(link.Href, link.Key, "to-run", null, inside => inside.Path(outline, "turn t-" + Name(mode), title));
            }
            else
            {
                plot.Path(outline, "turn t-" + Name(mode), title);
            }
        }
    }

    public static string Name(PlaceKind kind) => kind switch { PlaceKind.Open => "open", PlaceKind.Cold => "cold", _ => "sealed" };

    public static string Name(LineMode mode) => mode switch { LineMode.Fresh => "fresh", LineMode.Crack => "crack", _ => "seed" };

    private NodaTime.LocalDate DayOf(double week) => reader.Monday(0).PlusDays((int)Math.Floor(week * 7));

    private double Height(LotThread lot, int week) =>
        (lot.Weeks.FirstOrDefault(w => w.Week == week)?.Total ?? 0) / heaviest * size.Thickest;

    // One closed step path for each unbroken run of weeks in which something stands in this kind of place.
    private IEnumerable<(string Outline, string Core)> Stretches(LotThread lot, PlaceKind kind, double y)
    {
        var top = new StringBuilder();
        var core = new StringBuilder();
        var under = new List<(double X1, double X2, double Y)>();
        foreach (ThreadWeek? week in lot.Weeks.Append(null))
        {
            double amount = week?.Of(kind) ?? 0;
            bool joined = under.Count > 0 && week is not null && Math.Abs(under[^1].X2 - axis.X(week.Week)) < 0.01;
            if (under.Count > 0 && (amount <= 0 || !joined))
            {
                for (int i = under.Count - 1; i >= 0; i--)
                {
                    top.Append('V').Append(N(under[i].Y)).Append('H').Append(N(under[i].X1));
                }
                yield return (top.Append('Z').ToString(), core.ToString());
                top.Clear();
                core.Clear();
                under.Clear();
            }
            if (amount <= 0 || week is null)
            {
                continue;
            }
            double above = Layers.TakeWhile(k => k != kind).Sum(week.Of) / heaviest * size.Thickest;
            double tall = Math.Max(1.2, amount / heaviest * size.Thickest);
            double x1 = axis.X(week.Week);
            double x2 = axis.X(week.Week + 1);
            top.Append(under.Count == 0 ? $"M{N(x1)} {N(y + above)}" : $"V{N(y + above)}").Append('H').Append(N(x2));
            if (tall >= 3)
            {
                core.Append('M').Append(N(x1)).Append(' ').Append(N(y + above + tall / 2)).Append('H').Append(N(x2));
            }
            under.Add((x1, x2, y + above + tall));
        }
    }

    private static string N(double value) => MarkupText.Number(value);
}
