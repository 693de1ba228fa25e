using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Keep;

/// <summary>
/// Bins by week: a row for each place, as high as it is full, with the capacity as a line above; a room's shut weeks carry a bar beneath.
/// </summary>
internal static class PlaceChart
{
    private const double NamesWidth = 188, PlotWidth = 1150, Top = 34, Pitch = 46, Full = 30;

    public static Picture Draw(IReadOnlyList<PlaceUse> places, SeasonSettings settings, Reader reader, Words<KeepWord> words)
    {
        var axis = new WeekAxis(settings.AsOfWeek, settings.Weeks - settings.AsOfWeek, PlotWidth);
        double height = Top + places.Count * Pitch + 4;
        var plot = new Drawing(PlotWidth, height);
        var names = new Drawing(NamesWidth, height);
        axis.Draw(plot, Top, height, settings, reader);
        for (int i = 0; i < places.Count; i++)
        {
            PlaceUse use = places[i];
            double bottom = Top + i * Pitch + Full + 6;
            names.Link(Paths.Of(use.Place.Id), use.Place.Id.Text, "lot-link", use.Place.Id.Text, into => into
                .Text(NamesWidth - 10, bottom - 12, Drawing.Fit(use.Place.Id.Text, NamesWidth - 12, 13), "small-name", "end")
                .Text(NamesWidth - 10, bottom + 2, words.Say(KeepWord.BinsOf, reader.Number(use.Place.CapacityBins, 0)), "axis", "end"));
            for (int week = settings.AsOfWeek; week < use.ByWeek.Count; week++)
            {
                double share = use.Place.CapacityBins > 0 ? use.ByWeek[week] / use.Place.CapacityBins : 0;
                plot.Rect(axis.X(week) + 0.5, bottom - Full * Math.Min(share, 1.2), axis.Step - 1, Full * Math.Min(share, 1.2), share > 1 + 1e-9 ? "hours-over" : Kind(use.Place.Kind),
                    words.Say(KeepWord.BinsTitle, use.Place.Id, reader.Week(week), reader.Number(use.ByWeek[week], 0), reader.Percent(share, 0)));
            }

            plot.Line(0, bottom - Full, PlotWidth, bottom - Full, "row-rule").Line(0, bottom, PlotWidth, bottom, "lane-rule");
            if (use.Room is { } room)
            {
                double from = axis.X(Math.Max(settings.AsOfWeek, room.Sealed + 1)), to = axis.X(room.Opened ?? settings.Weeks);
                plot.Rect(from, bottom + 2, to - from, 3, "hours-used", words.Say(KeepWord.ShutTitle, use.Place.Id, reader.Week(room.Sealed), room.Opened is { } opened ? reader.Week(opened) : words[KeepWord.StaysShut]));
            }
        }

        string summary = string.Join(" ", places.Where(use => use.Fullest is not null && use.Place.CapacityBins > 0).Select(use =>
            words.Say(KeepWord.PlaceSummary, use.Place.Id, reader.Percent(use.ByWeek[use.Fullest!.Value] / use.Place.CapacityBins, 0), reader.Week(use.Fullest.Value))));
        return new Picture(words[KeepWord.BinsName], plot, names, [], summary);
    }

    private static string Kind(PlaceKind kind) => kind switch { PlaceKind.Open => "k-open", PlaceKind.Cold => "k-cold", _ => "k-sealed" };
}
