using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Board;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Paths;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Tests.Board;

public class SeasonBoardTests
{
    private static readonly Season Season = HandSeason.Make();
    private static readonly PlanAnswer Answer = HandAnswer.Make();
    private static readonly Reader Reader = new(Season.Settings, new ReportOptions(Language.En, MassUnit.Pound));

    /// <summary>keeps.csv says what stands at a week's end; the board must find the same for the next week's start.</summary>
    [Fact]
    public void A_thread_is_as_thick_as_what_is_kept()
    {
        SeasonBoardFacts facts = SeasonBoardFacts.From(Season, Answer);
        var book = new PathBook(Season, Answer);
        foreach (LotThread lot in facts.Lots)
        {
            for (int w = lot.StartWeek + 1; w < Season.Settings.Weeks; w++)
            {
                double kept = Answer.Keeps.Where(k => k.Lot == lot.Lot && k.Week == w - 1).Sum(k => k.MassAtStart * book[k.Path].State(w).MassRatio);
                Assert.Equal(kept, lot.Weeks.FirstOrDefault(x => x.Week == w)?.Total ?? 0, 3);
            }
        }
    }

    [Fact]
    public void Lanes_hold_every_hour_that_is_run_and_no_more()
    {
        SeasonBoardFacts facts = SeasonBoardFacts.From(Season, Answer);
        Assert.Equal(Answer.Runs.Sum(r => r.Hours), facts.Lines.Sum(l => l.Weeks.Sum(w => w.Hours)), 6);
        Assert.Equal(Answer.Runs.Sum(r => r.OvertimeHours), facts.Lines.Sum(l => l.Weeks.Sum(w => w.OvertimeHours)), 6);
        Assert.Equal(Answer.Runs.Sum(r => r.MassIn), facts.Lines.Sum(l => l.Weeks.Sum(w => w.Parts.Sum(p => p.Mass))), 6);
        // line-weeks.csv closes Pack A in week 5; season-files: without hours there is no overtime either.
        LaneWeek closed = facts.Lines.Single(l => l.Line.Text == "Pack A").Weeks[5];
        Assert.Equal((0, 0), (closed.Available, closed.OvertimeAvailable));
    }

    /// <summary>By hand: Reedbank 1 has used 0.04 and uses 1/14 a week, so that it is spent after 13.44 weeks: 94 days after 6 July, 8 October.</summary>
    [Fact]
    public void The_flag_stands_where_the_life_is_used_up()
    {
        LotThread lot = SeasonBoardFacts.From(Season, Answer).Lots.Single(l => l.Lot.Text == "Reedbank 1");
        Assert.Equal(13.44, lot.LastGoodWeek!.Value, 6);
        DataTable table = SeasonBoard.Draw(SeasonBoardFacts.From(Season, Answer), BoardSize.Page, Reader).Tables[0];
        Assert.Equal("8\u00A0Oct\u00A02026", table.Rows.Single(r => r[0].Text == "Reedbank 1")[6].Text);
    }

    [Fact]
    public void The_lots_stand_in_the_order_in_which_a_shed_empties()
    {
        IReadOnlyList<LotThread> lots = SeasonBoardFacts.From(Season, Answer).Lots;
        Assert.Equal(["Reedbank 1", "Sorrel 3", "Sorrel 5", "Tannery & Sons 1"], lots.Take(4).Select(l => l.Lot.Text));
        Assert.Equal(["Old Kiln 7", "Heron 2"], lots.TakeLast(2).Select(l => l.Lot.Text));
    }

    [Fact]
    public void The_top_lots_are_those_of_most_worth() =>
        Assert.Equal(["Reedbank 1", "Heron 2"], SeasonBoardFacts.From(Season, Answer).Top(2).Lots.Select(l => l.Lot.Text));

    /// <summary>Three rooms with the same lots that open in the same weeks: each word has a place of its own, or none.</summary>
    [Fact]
    public void Words_of_rooms_never_stand_over_each_other()
    {
        SeasonBoardFacts facts = SeasonBoardFacts.From(Season, Answer);
        RoomWindow room = Assert.Single(facts.Rooms);
        string drawn = SeasonBoard.Draw(facts with { Rooms = [room, room, room] }, BoardSize.Page, Reader).WriteDrawing().ToString();
        (double X, double Y, bool End)[] words = [.. System.Text.RegularExpressions.Regex.Matches(drawn, "<text class=\"room-word\" x=\"([0-9.]+)\" y=\"([0-9.]+)\"( text-anchor=\"end\")?")
            .Select(word => (double.Parse(word.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), double.Parse(word.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture), word.Groups[3].Success))];
        Assert.InRange(words.Length, 2, 3);
        Assert.Equal(words.Length, words.Distinct().Count());
        Assert.Equal(words.Length, words.Select(word => (word.Y, word.End)).Distinct().Count());
    }

    [Fact]
    public void An_opened_room_is_shaded_for_its_weeks()
    {
        RoomWindow room = Assert.Single(SeasonBoardFacts.From(Season, Answer).Rooms);
        // Opened in week 12 with 4 weeks to empty: it holds nothing at the end of week 15.
        Assert.Equal((new PlaceId("Room 1"), 12, 15), (room.Place, room.OpenedWeek, room.LastWeek));
        string svg = SeasonBoard.Draw(SeasonBoardFacts.From(Season, Answer), BoardSize.Page, Reader).Plot.ToSvg("picture", "x");
        Assert.Equal(2, svg.Split("room-window").Length - 1);
        Assert.Contains("Room 1 opens, 4 weeks to empty it", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_run_of_a_lot_that_is_drawn_turns_down_to_its_line()
    {
        string svg = SeasonBoard.Draw(SeasonBoardFacts.From(Season, Answer), BoardSize.Page, Reader).Plot.ToSvg("picture", "x");
        Assert.Equal(Answer.Runs.Count(r => !r.FromSorted), svg.Split("class=\"turn ").Length - 1);
    }

    [Fact]
    public void The_drawing_is_sound_xml_and_holds_only_numbers_that_are_finite()
    {
        foreach (BoardSize size in new[] { BoardSize.Page, BoardSize.Thin })
        {
            Picture picture = SeasonBoard.Draw(SeasonBoardFacts.From(Season, Answer), size, Reader);
            string svg = picture.Plot.ToSvg("picture", "x") + picture.Labels!.ToSvg("picture", null);
            System.Xml.Linq.XDocument.Parse($"<all>{svg}</all>");
            Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
            Assert.DoesNotContain("∞", svg, StringComparison.Ordinal);
        }
    }
}
