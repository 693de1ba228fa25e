using Cloveshed.Check;
using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Seasons.Tests.Planning;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Terms;

/// <summary>Seasons of contract 2: the best plan by hand, the independent check's own reading of the terms, and the same season of contract 1.</summary>
public sealed class TermsPlanTests
{
    private static readonly PlanEffort Effort = new(20, 1e-9);

    /// <summary>
    /// A lot of 500 lb that stands there and one that is dug in week 1: 15 cartons in either week, for cartons do not keep. The program takes 10 to 14 a week at
    /// the list's price, delivered, and 3 more in the first week, when they are 1 cheaper; freight is 2. At the dock: 25 - 1 - 2 = 22 in week 0 and 26 - 2 = 24 in
    /// week 1. An order of 20 by the list, at the dock: 25 - 1 = 24; it is due in week 0, lateness costs it nothing.
    /// </summary>
    private static Season Both => Lowered(
        Shed(2, Lot("A", 500), Lot("B", 500) with { Harvested = Monday.PlusWeeks(1) }),
        new BuyerTerms(
            [new OrderTerms(Order("spot", "M30", 20) with { Price = 0 }, null, List, null)],
            [new ListPrice(List, Medium, 0, 0, 25), new ListPrice(List, Medium, 1, null, 26)],
            [new BuyerProgram(new("weekly"), "customer", Medium, 0, 1, 10, 14, null, List, Port, null, 5, false)],
            [new Promotion("fair", "customer", Medium, 0, 0, 1, 3)],
            [new Freight(Port, null, 2)]));

    private static readonly PriceListId List = new("list");
    private static readonly DestinationId Port = new("port");
    private static readonly ProductId Medium = new("M30");

    /// <summary>
    /// A carton is worth 22 + 5 in the least of week 0, 24 + 5 in that of week 1, 24 + 2 in the order in either week, 22 and 24 in what the program takes
    /// beyond. So week 0 fills 10 of the least and 5 of the order, week 1 the same: 10 x 22 + 5 x 24 + 10 x 24 + 5 x 24, less 2 for each of the 10 that the order lacks.
    /// </summary>
    [Fact]
    public void The_best_plan_is_the_one_worked_out_by_hand()
    {
        PlanAnswer answer = Planner.Need().Plan(Both, Effort);

        Assert.Equal(680, answer.Summary.Value, 0.01);
        Assert.True(answer.Summary.Bound >= 680 - 0.01);
        Judged(Both, answer, result =>
        {
            Assert.Empty(result.Breaches);
            Assert.Equal(680, result.Value!.Value, 0.01);
        });
        (string, string, int)[] filled = [.. answer.Fills.GroupBy(fill => (fill.Order.Text, fill.Line)).Select(line => (line.Key.Text, line.Key.Line, line.Sum(fill => fill.Units))).Order()];
        Assert.Equal([("spot", "1", 10), ("weekly 2030-07-01", "1", 10), ("weekly 2030-07-08", "1", 10)], filled);
        Assert.Equal([("weekly 2030-07-01", 4 + 3), ("weekly 2030-07-08", 4)], answer.Shorts.Where(row => row.Line == "2").Select(row => (row.Order.Text, (int)row.Units)).Order());
    }

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 12)];

    /// <summary>Bound, value and every row are those of the season of contract 1 with the same lines and prices written out.</summary>
    [Theory, MemberData(nameof(Seeds))]
    public void A_season_with_terms_is_the_season_with_the_prices_written_out(int seed)
    {
        Season season = Drawn(seed);
        Season read = SeasonReader.Parse(SeasonWriter.Render(season)).Season!;
        Season written = read with { Settings = read.Settings with { Contract = 1 }, Terms = null, PriceOrigins = new Dictionary<(OrderId, string), PriceOrigin>() };

        PlanAnswer terms = Planner.Need().Plan(read, Effort), plain = Planner.Need().Plan(written, Effort);

        Assert.Equal((plain.Summary.Value, plain.Summary.Bound), (terms.Summary.Value, terms.Summary.Bound));
        Assert.Equal(plain.Fills, terms.Fills);
        Judge.Holds(written, plain);
        Judged(season, terms, result =>
        {
            Assert.Empty(result.Breaches);
            Assert.Equal(terms.Summary.Value, result.Value!.Value, 0.01 + 1e-6 * Math.Abs(terms.Summary.Value));
        });
    }

    /// <summary>What was agreed is read by the check for itself: a plan that fits other terms is told so.</summary>
    [Theory]
    [InlineData("price-lists.csv", "25", "27", "value")]
    [InlineData("freight.csv", ",2", ",1", "value")]
    [InlineData("promotions.csv", ",1,3", ",2,3", "value")]
    [InlineData("promotions.csv", ",1,3", ",1,2", "shorts")]
    [InlineData("programs.csv", ",10,14,", ",9,14,", "fill-over")]
    [InlineData("programs.csv", ",10,14,", ",10,13,", "shorts")]
    [InlineData("programs.csv", "2030-07-01,2030-07-08", "2030-07-01,2030-07-01", "unknown-name")]
    [InlineData("programs.csv", ",5,no", ",6,no", null)]
    [InlineData("season.json", "\"contract\": 2", "\"contract\": 3", "season")]
    [InlineData("price-lists.csv", "2030-07-01,2030-07-01", "2030-07-08,2030-07-08", "season")]
    public void Other_terms_make_another_value_or_a_breach(string file, string old, string by, string? rule)
    {
        PlanAnswer answer = Planner.Need().Plan(Both, Effort);

        Judged(Both, answer, result =>
        {
            // The least is met in both weeks, so that its short cost is no part of the value.
            if (rule is null)
                Assert.Empty(result.Breaches);
            else
                Assert.Contains(result.Breaches, breach => breach.Rule == rule);
        }, files =>
        {
            string text = System.Text.Encoding.UTF8.GetString(files[file].Span);
            Assert.Contains(old, text, StringComparison.Ordinal);
            int at = text.IndexOf(old, StringComparison.Ordinal);
            files[file] = System.Text.Encoding.UTF8.GetBytes(text[..at] + by + text[(at + old.Length)..]);
        });
    }

    [Fact]
    public void A_program_filled_in_a_later_week_is_a_breach()
    {
        PlanAnswer answer = Planner.Need().Plan(Both, Effort);
        PlanAnswer late = answer with { Fills = [.. answer.Fills.Select(fill => fill.Order.Text == "weekly 2030-07-01" ? fill with { Week = 1 } : fill)] };

        Judged(Both, late, result => Assert.Contains(result.Breaches, breach => breach.Rule == "fill-late" && breach.Allowed.Contains("2030-07-01", StringComparison.Ordinal)));
    }

    /// <summary>The same least as one pays for: with a late cost in the row a week's units may go out in the next.</summary>
    [Fact]
    public void With_a_late_cost_a_week_may_be_made_good()
    {
        BuyerProgram patient = new(new("weekly"), "customer", Medium, 0, 0, 10, null, 20, null, null, 3, 15, false);
        Season shut = Shed(2, Lot("A", 1000)) with { LineWeeks = [.. Only(Pack, 1, 2)] };

        Assert.Equal(10 * (20 - 3), Value(Lowered(shut, new BuyerTerms([], [], [patient], [], []))), 0.01);
        Assert.Equal(-10 * 15, Value(Lowered(shut, new BuyerTerms([], [], [patient with { LateCost = null }], [], []))), 0.01);

        static double Value(Season season)
        {
            PlanAnswer answer = Planner.Need().Plan(season, Effort);
            Judged(season, answer, result => Assert.Empty(result.Breaches));
            return answer.Summary.Value;
        }
    }

    /// <summary>An odd small season whose orders get lists, promotions and freight, and which gets two programs.</summary>
    private static Season Drawn(int seed)
    {
        Pcg pcg = new((ulong)seed, 77);
        Season season = Direct.SmallSeasons.Draw((ulong)seed, 6, 4, [PlaceMix.YardOnly, PlaceMix.YardAndCold]);
        int weeks = season.Settings.Weeks, early = season.Orders.Select(line => season.Settings.WeekOf(line.Due)).Append(0).Min(), half = Math.Max(1, weeks / 2);
        ListPrice[] prices =
        [
            .. from product in season.Products from late in new[] { false, true }
               let price = season.Orders.Where(line => line.Product == product.Id).Select(line => line.Price).Append(20).Max() + pcg.Whole(0, 9)
               select new ListPrice(List, product.Id, late ? half : early, late ? null : half - 1, price + 10),
        ];
        return Lowered(season, new BuyerTerms(
            [.. season.Orders.Select(line => pcg.Chance(0.5) ? new OrderTerms(line with { Price = 0 }, line.Price + 6, null, Port) : new OrderTerms(line with { Price = 0 }, null, List, pcg.Chance(0.5) ? Port : null))],
            prices,
            [.. season.Products.Take(2).Select((product, at) => new BuyerProgram(new($"program {at}"), "customer", product.Id, at, weeks, at * 2, at * 2 + 3, at == 0 ? 25 : null, at == 0 ? null : List, Port, null, 4, at == 0))],
            [.. season.Products.Take(1).Select(product => new Promotion("fair", null, product.Id, half, half + 1, 1.5m, 2))],
            [new Freight(Port, null, 3), .. season.Products.Take(1).Select(product => new Freight(Port, product.Id, 4.25m))]));
    }

    private static Season Lowered(Season season, BuyerTerms terms)
    {
        SeasonSettings settings = season.Settings with { Contract = 2 };
        LoweredTerms lowered = TermsLowering.Of(settings, terms);
        Assert.Empty(lowered.Faults);
        return season with { Settings = settings, Terms = terms, Orders = lowered.Orders, PriceOrigins = lowered.Origins };
    }

    /// <summary>The files of the season, spoiled or not, and the answer, to the check that reads both for itself.</summary>
    private static void Judged(Season season, PlanAnswer answer, Action<CheckResult> look, Action<Dictionary<string, ReadOnlyMemory<byte>>>? spoil = null)
    {
        string folder = Directory.CreateTempSubdirectory("cloveshed-terms-").FullName;
        try
        {
            Dictionary<string, ReadOnlyMemory<byte>> files = new(SeasonWriter.Render(season));
            Assert.Equal(season.Orders, SeasonReader.Parse(files).Season!.Orders);
            spoil?.Invoke(files);
            SeasonWriter.Write(files, Path.Combine(folder, "in"));
            AnswerWriter.Write(answer, season, Path.Combine(folder, "out"));
            look(PlanCheck.Check(Path.Combine(folder, "in"), Path.Combine(folder, "out")));
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }
}
