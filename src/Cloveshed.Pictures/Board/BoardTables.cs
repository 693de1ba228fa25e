using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Board;

/// <summary>The board's numbers as rows, and as a paragraph.</summary>
internal static class BoardTables
{
    public static IReadOnlyList<DataTable> Of(SeasonBoardFacts facts, Reader reader) => [Lots(facts, reader), Runs(facts, reader), Lines(facts, reader)];

    public static string Summary(SeasonBoardFacts facts, Reader reader)
    {
        string lines = string.Join("; ", facts.Lines.Select(l => reader.Say(Say.BoardSummaryLine, l.Line,
            reader.Number(l.Weeks.Sum(w => w.Hours + w.OvertimeHours), 0), reader.Number(l.Weeks.Sum(w => w.Available), 0), l.Weeks.Count(w => w.Full))));
        string rooms = string.Join(" ", facts.Rooms.Select(r => r.OpenedWeek is { } o
            ? reader.Say(Say.BoardSummaryRoom, r.Place, reader.Week(r.SealedWeek), reader.Week(o))
            : reader.Say(Say.BoardSummaryRoomClosed, r.Place, reader.Week(r.SealedWeek))));
        return reader.Say(Say.BoardSummary, facts.Lots.Count, reader.Mass(facts.Lots.Sum(l => l.Net)), facts.Settings.Weeks, reader.WeekYear(0), lines) + " " + rooms;
    }

    private static DataTable Lots(SeasonBoardFacts facts, Reader reader) => new(
        reader.Say(Say.BoardLotsCaption),
        [new(reader.Say(Say.Lot)), new(reader.Say(Say.Variety)), new(reader.Say(Say.FieldHead)), new(reader.Say(Say.MassHead, reader.MassUnitName), true), new(reader.Say(Say.WhereHead)),
            new(reader.Say(Say.LastRunHead)), new(reader.Say(Say.LastGoodDayHead)), new(reader.Say(Say.WorthHead), true)],
        [.. facts.Lots.Select(lot => (IReadOnlyList<Cell>)[lot.Lot.Text, lot.Variety.Text, lot.Field, reader.MassNumber(lot.Net),
            string.Join("; ", lot.Stays.Select(s => reader.Say(Say.StayWords, s.Place, reader.Kind(s.Kind), reader.Week(s.From), reader.Week(s.To)))),
            lot.Runs.Count == 0 ? "–" : reader.Week(lot.Runs[^1].Week),
            lot.LastGoodWeek is { } end ? reader.DayYear(facts.Settings.FirstWeek.PlusDays((int)Math.Floor(end * 7))) : reader.Say(Say.AfterSeason),
            reader.PricePerMass(lot.Worth)])],
        [reader.Say(Say.Total), "", "", reader.MassNumber(facts.Lots.Sum(l => l.Net)), "", "", "", ""]);

    private static DataTable Runs(SeasonBoardFacts facts, Reader reader)
    {
        var rows = facts.Lots.SelectMany(lot => lot.Runs.Select(run => (lot, run))).OrderBy(r => r.run.Week).ThenBy(r => r.run.Line?.Text, StringComparer.Ordinal).ToList();
        return new DataTable(
            reader.Say(Say.BoardRunsCaption),
            [new(reader.Say(Say.WeekHead)), new(reader.Say(Say.LineHead)), new(reader.Say(Say.WorkHead)), new(reader.Say(Say.Lot)), new(reader.Say(Say.MassHead, reader.MassUnitName), true),
                new(reader.Say(Say.HoursHead), true)],
            [.. rows.Select(r => (IReadOnlyList<Cell>)[reader.Week(r.run.Week), r.run.Line?.Text ?? "–", r.run.Mode is { } m ? reader.Mode(m) : reader.Say(Say.SoldAsIs),
                r.lot.Lot.Text, reader.MassNumber(r.run.Mass), reader.Number(r.run.Hours, 1)])],
            [reader.Say(Say.Total), "", "", "", reader.MassNumber(rows.Sum(r => r.run.Mass)), reader.Number(rows.Sum(r => r.run.Hours), 1)]);
    }

    private static DataTable Lines(SeasonBoardFacts facts, Reader reader) => new(
        reader.Say(Say.BoardLinesCaption),
        [new(reader.Say(Say.LineHead)), new(reader.Say(Say.WeekHead)), new(reader.Say(Say.HoursHead), true), new(reader.Say(Say.OvertimeHead), true),
            new(reader.Say(Say.AvailableHead), true), new(reader.Say(Say.OvertimeAvailableHead), true), new(reader.Say(Say.FullHead))],
        [.. from lane in facts.Lines
            from week in lane.Weeks
            where week.Hours + week.OvertimeHours > 0
            select (IReadOnlyList<Cell>)[lane.Line.Text, reader.Week(week.Week), reader.Number(week.Hours, 1), reader.Number(week.OvertimeHours, 1),
                reader.Number(week.Available, 1), reader.Number(week.OvertimeAvailable, 1), week.Full ? reader.Say(Say.FullWord) : ""]]);
}
