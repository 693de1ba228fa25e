using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>
/// Plays a season week by week under one scenario, by a plan's policy. Each week only what is known by then is used: what came in is weighed,
/// a lot's sizes are as believed until it was first run, its keeping as seen so far and by the law from there, a line's stoppage as the
/// week starts, an order's units once it may ship. Room weeks stay as planned. Pure: the same scenario and plan give the same outcome.
/// </summary>
public static class Replay
{
    /// <param name="rows">Whether the outcome carries the rows of an answer.</param>
    public static ReplayOutcome Of(ReplayShed shed, Scenario scenario, bool rows = false)
    {
        var small = new SmallRuns();
        ReplayOutcome? outcome;
        do outcome = Play(shed, scenario, small, rows); while (outcome is null);
        return outcome;
    }

    // Null where a small run was begun in vain, and the season is to be played again.
    private static ReplayOutcome? Play(ReplayShed shed, Scenario scenario, SmallRuns small, bool rows)
    {
        PlanningInstance instance = shed.Instance;
        var till = new Till(instance.Weeks);
        var troubles = new Troubles();
        var yard = new Yard(shed, scenario, till);
        var worths = new KeepWorths(shed, scenario, yard);
        var sales = new AsItStands(shed, yard, worths, till);
        var moves = new YardMoves(shed, scenario, yard, worths, sales, till, troubles);
        var made = new RunsMade(instance, scenario, yard, till);
        var planned = new PlannedRuns(shed, scenario, yard, made, troubles, small);
        var more = new MoreRuns(shed, yard, worths, made);
        var moreSeed = new MoreSeed(shed, yard, worths, made);
        var demand = new Demand(shed, scenario);
        var shipping = new Shipping(shed, scenario, demand, till);
        var stock = new FinishedStock(instance);
        ReplayRows? record = rows ? new ReplayRows(shed, scenario, yard) : null;
        for (int t = instance.AsOf; t < instance.Weeks; t++)
        {
            var book = new LineBook(instance, scenario, t);
            yard.Arrive(t);
            stock.Begin(t);
            made.Begin(t);
            planned.Begin();
            WeekNeeds needs = demand.Needs(t, stock);
            planned.Seed(t, book, needs);
            planned.Fresh(t, book, needs);
            book.Reserved = double.IsInfinity(instance.People[t]) ? 0 : shed.Policy.CrackPeople[t];
            moreSeed.Make(t, book);
            more.Make(LineMode.Fresh, t, book, needs);
            book.Reserved = 0;
            Beyond(shed, made, demand, t);
            made.SortOut(t);
            planned.Crack(t, book, needs);
            more.Make(LineMode.Crack, t, book, needs);
            made.Close(t, book);
            foreach (WeekRun run in made.Runs)
                foreach ((int q, double mass) in run.Made) stock.Add(q, t, mass);
            shipping.Ship(t, stock);
            sales.Week(t);
            record?.Week(t, made.Runs, book);
            moves.Week(t);
            if (!small.Stand(t, made.Runs, instance, yard)) return null;
            yard.StandTheWeek(t);
            Missing(instance, scenario, demand, troubles, t);
        }
        shipping.Close();
        for (int n = 0; n < instance.SeedNeeds.Length; n++)
            till.Add(MoneyKind.SeedShort, instance.Weeks - 1, Math.Max(0, instance.SeedNeeds[n].Mass - made.SeedMade[n]) * instance.SeedNeeds[n].ShortCost);
        return Outcome(shed, scenario, till, troubles, yard, demand, shipping, record?.Answer(demand, shipping));
    }

    // What runs give beyond what the plan's would, goes to lines that it leaves short and to the market, where that brings more than cracking.
    private static void Beyond(ReplayShed shed, RunsMade made, Demand demand, int week)
    {
        PlanningInstance instance = shed.Instance;
        double[] wanted = demand.Beyond(week), over = new double[instance.Sorts.Length];
        foreach (WeekRun run in made.Runs) if (run.PackFirst is not null && instance.Lines[run.Line].Mode == LineMode.Fresh) for (int k = 0; k < over.Length; k++) over[k] += run.Gives[k];
        for (int k = 0; k < over.Length; k++) over[k] -= shed.Policy.ClassOut[k][week] * (1 + 1e-5);
        for (int q = 0; q < wanted.Length; q++)
        {
            int k = instance.Products[q].Sort;
            if (wanted[q] <= 0 || over[k] <= instance.Products[q].Net || instance.Sorts[k].Clove) continue;
            double left = Math.Min(wanted[q], over[k]);
            foreach (WeekRun run in made.Runs)
            {
                if (left <= 0) break;
                if (instance.Lines[run.Line].Mode != LineMode.Fresh) continue;
                double packed = made.PackFrom(run, q, left);
                left -= packed;
                over[k] -= packed;
            }
        }
    }

    /// <summary>Weeks that a late unit has to come in after all, before it counts as missing. Our choice.</summary>
    private const int WeeksToComeIn = 2;

    // A size is missing where a twentieth of what is due in a week, and was planned to ship by then, is still not shipped two weeks later.
    private static void Missing(PlanningInstance instance, Scenario scenario, Demand demand, Troubles troubles, int week)
    {
        for (int due = week - WeeksToComeIn; due <= (week == instance.Weeks - 1 ? week : week - WeeksToComeIn); due++)
        {
            double[] ordered = new double[instance.Sorts.Length], missing = new double[instance.Sorts.Length];
            for (int i = 0; i < instance.OrderLines.Length; i++)
            {
                InstanceOrderLine line = instance.OrderLines[i];
                if (line.DueWeek != due) continue;
                double net = instance.Products[line.Product].Net;
                ordered[instance.Products[line.Product].Sort] += scenario.OrderUnits[i] * net;
                missing[instance.Products[line.Product].Sort] += Math.Max(0, demand.PlannedOnTime(i) - demand.Shipped[i]) * net;
            }
            for (int k = 0; k < ordered.Length; k++)
                if (missing[k] > 0.05 * ordered[k]) troubles.Add(TroubleKind.Size, instance.Sorts[k].Name, Math.Max(0, due), missing[k]);
        }
    }

    private static ReplayOutcome Outcome(ReplayShed shed, Scenario scenario, Till till, Troubles troubles, Yard yard, Demand demand, Shipping shipping, Answers.PlanAnswer? answer)
    {
        PlanningInstance instance = shed.Instance;
        int sorts = instance.Sorts.Length;
        double[] ordered = new double[sorts], shipped = new double[sorts], onTime = new double[sorts], due = new double[instance.Weeks], dueOnTime = new double[instance.Weeks];
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            InstanceOrderLine line = instance.OrderLines[i];
            double net = instance.Products[line.Product].NetInUnit;
            int k = instance.Products[line.Product].Sort;
            ordered[k] += scenario.OrderUnits[i] * net;
            shipped[k] += demand.Shipped[i] * net;
            onTime[k] += shipping.OnTime[i] * net;
            if (line.DueWeek < 0 || line.DueWeek >= instance.Weeks) continue;
            due[line.DueWeek] += scenario.OrderUnits[i] * net;
            dueOnTime[line.DueWeek] += shipping.OnTime[i] * net;
        }
        double closing = 0;
        for (int r = 0; r < instance.Rows.Length; r++)
            if (scenario.StartWeek[r] < instance.Weeks) closing += yard.RowMass(r);
        foreach (Batch b in yard.Batches) closing -= b.Left + b.Exits.Sum(e => e.Mass);
        return new ReplayOutcome(
            scenario.Number, till.Value * instance.MoneyScale, till.Revenue * instance.MoneyScale, ordered, shipped, onTime, due, dueOnTime,
            [.. till.Cumulative().Select(v => v * instance.MoneyScale)], troubles.All(instance.MassScale), closing * instance.MassScale, answer);
    }
}
