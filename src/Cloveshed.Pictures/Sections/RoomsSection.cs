using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Paths;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>Sealed rooms with the weeks of the plan, and the cautions that stand beside any instruction about them.</summary>
public static class RoomsSection
{
    public static MarkupText Write(Season season, PlanAnswer answer, Reader reader)
    {
        MarkupText section = Section.Begin("rooms", reader.Say(Say.RoomsTitle));
        section.Open("div", ("class", "caution"), ("role", "note"), ("aria-label", reader.Say(Say.CautionTitle)));
        section.Element("h3", reader.Say(Say.CautionTitle)).Open("ul");
        foreach (Say line in new[] { Say.CautionNotSafe, Say.CautionOxygen, Say.CautionCarbonDioxide, Say.CautionEntry, Say.CautionAlone, Say.CautionCodes, Say.CautionStacking, Say.CautionMachines })
        {
            section.Element("li", reader.Say(line));
        }
        section.Close("ul").Close("div").NewLine();
        if (answer.Rooms.Count == 0)
        {
            return section.Element("p", reader.Say(Say.RoomsNone)).End();
        }
        var book = new PathBook(season, answer);
        section.Add(new DataTable(reader.Say(Say.RoomsCaption),
            [new(reader.Say(Say.RoomHead)), new(reader.Say(Say.AirHead)), new(reader.Say(Say.SealedHead)), new(reader.Say(Say.OpenedHead)), new(reader.Say(Say.EmptyByHead)),
                new(reader.Say(Say.LotsHead), true), new(reader.Say(Say.MassHead, reader.MassUnitName), true), new(reader.Say(Say.BinsHead), true)],
            [.. answer.Rooms.OrderBy(r => r.Opened ?? int.MaxValue).Select(r => Room(r, season, answer, book, reader))], Stacks: Stacking.Phone).Write("rooms"));
        return section.End();
    }

    private static Cell[] Room(RoomRow room, Season season, PlanAnswer answer, PathBook book, Reader reader)
    {
        Place? place = season.Places.FirstOrDefault(p => p.Id == room.Place);
        // What is shut in: at the end of the week of sealing; a room sealed before the season, at the start of the first week.
        KeepRow[] shut = [.. answer.Keeps.Where(k => k.Place == room.Place && k.Week == Math.Max(room.Sealed, season.Settings.AsOfWeek))];
        string air = place?.O2 is { } o2 && place.Co2 is { } co2 ? reader.Say(Say.AirWords, reader.Number(o2, 1), reader.Number(co2, 1)) : "–";
        string empty = room.Opened is { } opened && place?.RunOutWeeks is { } weeks
            ? reader.DayYear(season.Settings.Monday(opened + weeks).PlusDays(-1)) : reader.Say(Say.NoLimit);
        return [room.Place.Text, air, reader.Say(Say.EndOfWeek, reader.WeekYear(room.Sealed)),
            room.Opened is { } o ? reader.Say(Say.WeekOf, reader.WeekYear(o)) : reader.Say(Say.StaysClosed), empty,
            reader.Number(shut.Select(k => k.Lot).Distinct().Count(), 0),
            reader.MassNumber(shut.Sum(k => k.MassAtStart * Ratio(book[k.Path], k.Week + 1))), reader.Number(shut.Sum(k => k.Bins), 0)];
    }

    private static double Ratio(PathLine path, int week) => path.Has(week) ? path.State(week).MassRatio : path.State(path.LastState).MassRatio;
}
