using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;
using NodaTime;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>What buyers' terms come to, against sums made by hand from the rows of <see cref="TermsSeason"/>.</summary>
public sealed class TermsTests
{
    private static readonly Season Season = new SmallSeason().WithTerms().Read().Season!;

    /// <summary>
    /// M30 of the list is 44 to the week of 09-28 and 42 after, less 3 of freight, less 2 in the week of the fair; L30 is 50, less 4, less 1 in the
    /// opening week, and 48 in the program's own row, which says no destination. The fair takes 6 units more than the most.
    /// </summary>
    [Fact]
    public void Each_line_has_its_price_at_the_dock_in_its_week()
    {
        (string, string, string, int, decimal, bool, decimal)[] expected =
        [
            ("O1", "1", "M30", 100, 45.5m, true, 10), ("O1", "2", "L30", 50, 50 - 1 - 4, false, 0),
            ("Weekly 2026-09-21", "1", "M30", 20, 44 - 3, true, 5), ("Weekly 2026-09-21", "2", "M30", 10, 44 - 3, false, 0),
            ("Weekly 2026-09-28", "1", "M30", 20, 44 - 2 - 3, true, 5), ("Weekly 2026-09-28", "2", "M30", 10 + 6, 44 - 2 - 3, false, 0),
            ("Weekly 2026-10-05", "1", "M30", 20, 42 - 3, true, 5), ("Weekly 2026-10-05", "2", "M30", 10, 42 - 3, false, 0),
            ("Weekly 2026-09-21", "4", "L30", 10, 48 - 1, false, 0), ("Weekly 2026-09-28", "4", "L30", 10, 48, false, 0),
        ];

        Assert.Equal(expected, Season.Orders.Select(line => (line.Order.Text, line.Number, line.Product.Text, line.Units, line.Price, line.Firm, line.ShortCost)));
        Assert.All(Season.Orders.Skip(2), line => Assert.Equal(
            (line.Order.Text[^10..], 6L, false), (LocalDatePattern(line.ShipFrom), Period.DaysBetween(line.ShipFrom, line.Due), line.Whole)));
        Assert.All(Season.Orders, line => Assert.Equal(line.Price, Season.PriceOrigins[(line.Order, line.Number)].AtDock));
    }

    /// <summary>Late by a week a unit brings less than nothing, so that no plan ships one; where the row says what lateness costs, that counts.</summary>
    [Fact]
    public void Units_of_a_later_week_do_not_count_unless_the_row_says_what_they_cost()
    {
        foreach (OrderLine line in Season.Orders.Skip(2))
            if (line.Product == new ProductId("L30"))
                Assert.Equal((1, false), (line.LateCost, Season.PriceOrigins[(line.Order, line.Number)].Program!.ThatWeekOnly));
            else
                Assert.True(line.LateCost > line.Price + line.ShortCost && Season.PriceOrigins[(line.Order, line.Number)].Program!.ThatWeekOnly);
    }

    [Fact]
    public void A_price_says_where_it_comes_from()
    {
        PriceOrigin origin = Season.PriceOrigins[(new OrderId("Weekly 2026-09-28"), "2")];

        Assert.Equal((44m, "Fall", "Port", 3m), (origin.Price, origin.List!.Value.Text, origin.Destination!.Value.Text, origin.Freight));
        Assert.Equal(("Fair", 2m), (Assert.Single(origin.Promotions).Name, origin.Promotions[0].Cut));
        Assert.Equal(new ProgramWeek(new ProgramId("Weekly"), 3, IsLeast: false, ThatWeekOnly: true), origin.Program);
    }

    [Fact]
    public void Weeks_that_are_over_and_weeks_after_the_season_have_no_line()
    {
        Season late = new SmallSeason().WithTerms().Replace("season.json", "\"weeks\": 10", "\"as_of\": \"2026-09-30\", \"weeks\": 4").Read().Season!;

        Assert.Equal(["Weekly 2026-09-28"], late.Orders.Skip(2).Select(line => line.Order.Text).Distinct());
    }

    [Fact]
    public void By_contract_1_a_season_is_as_it_was()
    {
        Season plain = new SmallSeason().Read().Season!;

        Assert.Null(plain.Terms);
        Assert.Empty(plain.PriceOrigins);
        Assert.Equal(1, plain.Settings.Contract);
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files = SeasonWriter.Render(plain);
        Assert.DoesNotContain(files.Keys, name => name is "programs.csv" or "price-lists.csv" or "promotions.csv" or "freight.csv");
        Assert.StartsWith("order,line,customer,product,ship_from,due,units,price,firm,late_cost,short_cost,larger_ok,whole\r\n", System.Text.Encoding.UTF8.GetString(files["orders.csv"].Span), StringComparison.Ordinal);
    }

    [Fact]
    public void Files_of_terms_that_say_nothing_are_no_matter_in_contract_1() =>
        Assert.NotNull(new SmallSeason().With("freight.csv", "destination,product,cost\n\n").Read().Season);

    [Fact]
    public void Columns_of_terms_are_left_out_in_contract_1_and_warned_about()
    {
        SeasonReading reading = new SmallSeason()
            .With("orders.csv", new SmallSeason().WithTerms().Text("orders.csv").Replace(",,no,,,,no,Fall,Port", ",52,no,,,,no,Fall,Port", StringComparison.Ordinal)).Read();

        Assert.Equal(52, reading.Season!.Orders[1].Price);
        Assert.Equal(["price_list", "destination"], reading.Warnings.Where(warning => warning.File == "orders.csv").Select(warning => warning.Column));
        Assert.All(reading.Warnings, warning => Assert.Contains("\"contract\": 2", warning.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_promotion_of_nothing_is_warned_about() =>
        Assert.Contains("Opening", Assert.Single(new SmallSeason().WithTerms().Replace("promotions.csv", ",,L30,2026-09-21,2026-09-21", ",,C5,2026-09-21,2026-09-21").Read().Warnings).Text, StringComparison.Ordinal);

    [Fact]
    public void What_is_missing_in_a_list_is_not_said_where_a_row_of_it_was_refused()
    {
        SeasonReading reading = new SmallSeason().WithTerms().Replace("price-lists.csv", ",42", ",much").Read();

        Assert.Equal(FaultRule.Number, Assert.Single(reading.Faults).Rule);
    }

    /// <summary>The files would not say it, and the next reader would not know.</summary>
    [Fact]
    public void Lines_that_were_changed_beside_their_terms_are_not_written()
    {
        Assert.Throws<ArgumentException>(() => SeasonWriter.Render(Season with { Orders = [.. Season.Orders.Skip(1)] }));
        Assert.Equal(Season.Orders.Skip(1), SeasonReader.Parse(SeasonWriter.Render(Season with { Orders = [.. Season.Orders.Skip(1)], Terms = null, Settings = Season.Settings with { Contract = 1 } })).Season!.Orders);
    }

    private static string LocalDatePattern(LocalDate day) => NodaTime.Text.LocalDatePattern.Iso.Format(day);
}
