using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Sections;

namespace Cloveshed.Pictures.Tests;

public class PlanReportTests
{
    private static string Page(Language language, MassUnit show = MassUnit.Pound) =>
        PlanReport.Render(HandSeason.Make(), HandAnswer.Make(), new ReportOptions(language, show));

    [Theory]
    [InlineData(Language.En)]
    [InlineData(Language.Es)]
    public void It_is_one_page_with_nothing_to_fetch(Language language)
    {
        string page = Page(language);
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http:", page.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("https:", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("default-src 'none'".Replace("'", "&#39;", StringComparison.Ordinal), page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_users_words_are_words_and_never_markup()
    {
        string page = Page(Language.En);
        Assert.Contains("Quillon Flat Garlic &lt;hand season&gt;", page, StringComparison.Ordinal);
        Assert.Contains("Tannery &amp; Sons 1", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<hand season>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>Bold", page, StringComparison.Ordinal);
    }

    /// <summary>29 CFR 1910.146(b): an atmosphere with less than 19.5% or more than 23.5% oxygen is hazardous.</summary>
    [Theory]
    [InlineData(Language.En, "Nothing in this report says that a room is safe to enter", "Local codes")]
    [InlineData(Language.Es, "Nada en este informe dice que sea seguro entrar en un cuarto", "Los reglamentos locales")]
    public void The_room_section_carries_its_cautions(Language language, string notSafe, string codes)
    {
        string page = Page(language);
        string rooms = page[page.IndexOf("id=\"rooms\"", StringComparison.Ordinal)..page.IndexOf("id=\"worths\"", StringComparison.Ordinal)];
        Assert.All(new[] { notSafe, codes, "19.5%", "23.5%", "29 CFR 1910.146", "5,000 ppm", "40,000 ppm" }, said => Assert.Contains(said, rooms, StringComparison.Ordinal));
        // The cautions come before the weeks in which rooms open.
        Assert.True(rooms.IndexOf(notSafe, StringComparison.Ordinal) < rooms.IndexOf("Room 1", StringComparison.Ordinal));
    }

    [Fact]
    public void Reasons_in_English_are_marked_as_such_on_a_Spanish_page()
    {
        Assert.Matches("<td[^>]* lang=\"en\"[^>]*>Serves orders due soon", Page(Language.Es));
        Assert.Matches("<td[^>]*>Serves orders due soon", Page(Language.En));
        Assert.DoesNotMatch("<td[^>]* lang=", Page(Language.En));
    }

    [Fact]
    public void Worths_name_what_is_scarce_and_only_that()
    {
        SeedNeed need = HandSeason.Make().SeedNeeds[0];
        string name = $"{need.Variety} {need.Class} {NodaTime.Text.LocalDatePattern.Iso.Format(need.By)}";
        PlanAnswer answer = HandAnswer.Make() with
        {
            Worths = [new("line", "Pack A", 1, 12), new("place", "Room 1", 1, 0), new("people", "people", 2, 3), new("seed", name, 1, 1.5)],
        };
        string page = PlanReport.Render(HandSeason.Make(), answer, new ReportOptions(Language.En, MassUnit.Pound));
        string worths = page[page.IndexOf("id=\"worths\"", StringComparison.Ordinal)..page.IndexOf("id=\"basis\"", StringComparison.Ordinal)];
        Assert.Contains("Never short enough to be worth anything: Room 1.", worths, StringComparison.Ordinal);
        Assert.DoesNotContain("<td>Room 1</td>", worths, StringComparison.Ordinal);
        Assert.Contains("all lines together", worths, StringComparison.Ordinal);
        Assert.Contains($"{need.Variety}, class {need.Class} or better, by", worths, StringComparison.Ordinal);
        Assert.DoesNotContain(name, worths, StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_by_defaults_are_shown_where_they_were_computed()
    {
        string Basis(double? change)
        {
            PlanAnswer answer = HandAnswer.Make();
            answer = answer with { Summary = answer.Summary with { Defaults = [new("bulb_cv", "0.3", "a guess", change, null)] } };
            string page = PlanReport.Render(HandSeason.Make(), answer, new ReportOptions(Language.En, MassUnit.Pound));
            return page[page.IndexOf("id=\"basis\"", StringComparison.Ordinal)..];
        }
        Assert.DoesNotContain("A fifth less", Basis(null), StringComparison.Ordinal);
        Assert.Contains("A fifth less", Basis(-500), StringComparison.Ordinal);
    }

    [Fact]
    public void Kilograms_are_shown_where_they_are_asked_for()
    {
        string page = Page(Language.En, MassUnit.Kilogram);
        // 240,000 lb at 0.45359237: NIST Special Publication 811 (2008), appendix B.
        Assert.Contains("108,862\u00A0kg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("\u00A0lb", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_order_line_is_on_time_late_or_short_to_the_unit() =>
        Assert.All(OrderOutcome.All(HandSeason.Make(), HandAnswer.Make()), o => Assert.Equal(o.Line.Units, o.OnTime + o.Late + o.Short));

    [Fact]
    public void Shipping_in_the_week_of_the_due_date_is_on_time_and_a_week_later_late()
    {
        Season season = HandSeason.Make();
        OrderLine line = season.Orders[0];
        int due = season.Settings.WeekOf(line.Due);
        FillRow Fill(int week, int units) => new(line.Order, line.Number, week, line.Product, units);
        PlanAnswer answer = HandAnswer.Make() with { Fills = [Fill(due, 5), Fill(due + 1, 3), Fill(due + 2, 2)] };
        OrderOutcome outcome = OrderOutcome.All(season, answer)[0];
        Assert.Equal((5, 5, line.Units - 10, 3 * 1 + 2 * 2), (outcome.OnTime, outcome.Late, outcome.Short, outcome.LateUnitWeeks));
    }

    [Fact]
    public void A_plan_that_does_nothing_still_has_a_report()
    {
        Season season = HandSeason.Make() with { Orders = [], SeedNeeds = [] };
        PlanSummary nothing = HandAnswer.Make().Summary with { Value = 0, Bound = 0, Revenue = 0, Revenues = new Dictionary<string, double>(), Costs = new Dictionary<string, double>(), Defaults = [], Warnings = [] };
        string page = PlanReport.Render(season, new PlanAnswer(nothing, [], [], [], [], [], [], [], [], [], [], [], [], [], []), new ReportOptions(Language.En, MassUnit.Pound));
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
        Assert.Contains("No run is planned", page, StringComparison.Ordinal);
    }
}
