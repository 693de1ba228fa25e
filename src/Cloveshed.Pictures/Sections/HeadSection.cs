using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Flow;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>The head of the report: what the plan is worth, how sure that is, and the season in a few figures that open.</summary>
public static class HeadSection
{
    public static MarkupText Write(Season season, PlanAnswer answer, IReadOnlyList<OrderOutcome> orders, PoundFlowFacts flow, Reader reader)
    {
        PlanSummary plan = answer.Summary;
        var head = new MarkupText();
        head.Open("header", ("class", "head"));
        head.Open("p", ("class", "mark")).Text("clove").Element("b", "shed").Close("p");
        head.Element("h1", season.Settings.Name);
        head.Element("p", reader.Say(Say.HeadDates, reader.WeekYear(0), reader.DayYear(season.Settings.Monday(season.Settings.Weeks).PlusDays(-1)), season.Settings.Weeks,
            reader.DayYear(season.Settings.AsOf)), ("class", "dates"));
        head.Open("p", ("class", "verdict")).Text(reader.Say(Say.HeadValue) + " ").Element("strong", reader.Money(plan.Value), ("data-figure", "value"))
            .Text(". " + Sureness(plan, reader)).Close("p").NewLine();
        head.Open("div", ("class", "figures"));
        decimal worth = orders.Sum(o => o.OnTimeMoney + o.LateMoney + o.ShortMoney);
        long ordered = orders.Sum(o => (long)o.Line.Units);
        long onTime = orders.Sum(o => (long)o.OnTime);
        double costs = plan.Costs.Values.Sum();
        var figures = new HeadFigures(season, answer, orders, flow, reader);
        Figure(head, Say.FigureMoney, reader.Money(plan.Revenue), reader.Say(Say.FigureMoneyOf, reader.Money(costs), reader.Money(plan.Value)), "revenue", figures.Money(), reader);
        Figure(head, Say.FigureOnTime, reader.PercentDone(Share(onTime, ordered)),
            reader.Say(Say.FigureOnTimeOf, reader.Number(onTime, 0), reader.Number(ordered, 0), reader.Money(orders.Sum(o => o.OnTimeMoney)), reader.Money(worth)), "on-time", figures.ByProduct(), reader);
        Figure(head, Say.FigureLate, reader.Number(orders.Sum(o => (long)o.Late), 0),
            reader.Say(Say.FigureLateOf, reader.Money(orders.Sum(o => o.LateMoney)), orders.Count(o => o.Late > 0)), "late", figures.Missed(o => o.Late, o => o.LateMoney, Say.LateHead), reader);
        Figure(head, Say.FigureShort, reader.Number(orders.Sum(o => (long)o.Short), 0),
            reader.Say(Say.FigureShortOf, reader.Money(orders.Sum(o => o.ShortMoney)), orders.Count(o => o.Short > 0)), "short", figures.Missed(o => o.Short, o => o.ShortMoney, Say.ShortHead), reader);
        (double need, double kept) = (season.SeedNeeds.Sum(n => n.Net), SeedSection.Served(season, answer));
        Figure(head, Say.FigureSeed, need <= 0 ? "–" : reader.PercentDone(Share(kept, need)),
            need <= 0 ? reader.Say(Say.FigureSeedNone) : reader.Say(Say.FigureSeedOf, reader.Mass(kept), reader.Mass(need)), "seed", SeedSection.Needs(season, answer, reader).Write(), reader);
        double packed = flow.Nodes.Where(n => n.Stage is FlowStage.Packed or FlowStage.Cloves or FlowStage.Seed or FlowStage.Sale).Sum(n => n.Whole) / reader.ShownPerSeasonUnit;
        Figure(head, Say.FigureIn, reader.Mass(flow.Total), reader.Say(Say.FigureInOf, reader.Tonnes(flow.Total), reader.Mass(packed), reader.Tonnes(packed)), "mass-in", figures.Pounds(), reader);
        head.Close("div").NewLine();
        return head.Close("header").NewLine();
    }

    /// <summary>Revenue and costs, each opening into its kinds.</summary>
    public static MarkupText Money(PlanAnswer answer, Reader reader)
    {
        PlanSummary plan = answer.Summary;
        double costs = plan.Costs.Values.Sum();
        MarkupText money = Section.Begin("money", reader.Say(Say.MoneyTitle));
        money.Lead(reader.Say(Say.MoneyLead, reader.Money(plan.Revenue), reader.Money(costs), reader.Money(plan.Value)));
        IReadOnlyList<Cell> Row(KeyValuePair<string, double> part, double of) => [KindName(part.Key, reader), reader.Money(part.Value), reader.Percent(Share(part.Value, of))];
        Column[] columns = [new(reader.Say(Say.KindHead)), new(reader.Say(Say.MoneyHead), true), new(reader.Say(Say.ShareHead), true)];
        money.Open("div", ("class", "beside"));
        money.Add(new DataTable(reader.Say(Say.RevenueCaption), columns, [.. plan.Revenues.OrderByDescending(r => r.Value).Select(r => Row(r, plan.Revenue))],
            [reader.Say(Say.Total), reader.Money(plan.Revenue), ""]).Write("revenue"));
        money.Add(new DataTable(reader.Say(Say.CostsCaption), columns, [.. plan.Costs.OrderByDescending(r => r.Value).Select(r => Row(r, costs))],
            [reader.Say(Say.Total), reader.Money(costs), ""]).Write("costs"));
        return money.Close("div").End();
    }

    private static string Sureness(PlanSummary plan, Reader reader)
    {
        string gap = reader.Say(Say.HeadProven, reader.Percent(plan.Gap, plan.Gap < 0.001 ? 2 : 1), reader.Money(plan.Bound));
        string given = reader.Say(Say.HeadProvenGivenRooms, reader.Percent(plan.GapGivenRooms, plan.GapGivenRooms < 0.001 ? 2 : 1));
        return gap + " " + given + " " + reader.Say(Say.HeadStatus, reader.Status(plan.Status), reader.Number(plan.Seconds, 0), reader.Percent(plan.GapOfRevenue, 1));
    }

    internal static double Share(double part, double of) => of == 0 ? 0 : part / of;

    /// <summary>A figure that opens into what it is made of.</summary>
    private static void Figure(MarkupText head, Say name, string number, string words, string key, MarkupText parts, Reader reader)
    {
        head.Open("details", ("class", "figure")).Open("summary").Element("span", reader.Say(name), ("class", "label"));
        head.Element("span", number, ("class", "big"), ("data-figure", key)).Element("span", words, ("class", "of")).Close("summary");
        head.Add(parts).Close("details").NewLine();
    }

    /// <summary>Kinds of cost and revenue are the planner's words; the known ones have words in both languages.</summary>
    public static Cell KindName(string kind, Reader reader) =>
        MoneyKinds.TryGetValue(kind.Replace('_', ' '), out Say say) ? reader.Say(say) : new Cell(kind, reader.PlannerLanguage);

    private static readonly Dictionary<string, Say> MoneyKinds = new(StringComparer.OrdinalIgnoreCase)
    {
        ["making"] = Say.CostMaking,
        ["line"] = Say.CostLine,
        ["overtime"] = Say.CostOvertime,
        ["storage"] = Say.CostStorage,
        ["place"] = Say.CostPlace,
        ["moves"] = Say.CostMoves,
        ["late"] = Say.CostLate,
        ["short"] = Say.CostShort,
        ["seed short"] = Say.CostSeedShort,
        ["orders"] = Say.RevenueOrders,
        ["market"] = Say.RevenueMarket,
        ["as is"] = Say.RevenueAsIs,
        ["standing"] = Say.RevenueEnd,
    };
}
