using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Markup;

/// <summary>Weeks from left to right: where a week starts, and the dates above. First may be before the season.</summary>
public sealed record WeekAxis(int First, int Count, double Width)
{
    public double Step => Width / Count;

    /// <summary>The left edge of a week, or a part of it: 3.5 is the middle of week 3.</summary>
    public double X(double week) => (week - First) * Step;

    /// <summary>Thin rules at every labelled week, and their Mondays above; the as-of day as a dotted line with its word.</summary>
    public void Draw(Drawing plot, double top, double bottom, SeasonSettings settings, Reader reader)
    {
        // Room for "28 Sep" and a gap: every second week when there is room, else every fourth.
        int every = Step * 2 >= 52 ? 2 : Step * 4 >= 52 ? 4 : 8;
        for (int w = First; w <= First + Count; w++)
        {
            if ((w - First) % every != 0)
            {
                continue;
            }
            plot.Line(X(w), top - 4, X(w), bottom, "grid");
            if (X(w) + 44 <= Width)
            {
                plot.Text(X(w) + 3, top - 10, reader.Week(w), "axis");
            }
        }
        double today = settings.WeekOf(settings.AsOf) + (settings.AsOf.DayOfWeek - NodaTime.IsoDayOfWeek.Monday) / 7.0;
        if (today > First && today < First + Count)
        {
            plot.Line(X(today), top - 4, X(today), bottom, "today");
            plot.Text(X(today) + 4, top - 26, reader.Say(Say.AsOf, reader.Day(settings.AsOf)), "today-word");
        }
    }
}
