using System.Globalization;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Planning;

/// <summary>
/// Why each run is where it is: the orders that what it makes goes to (first made, first shipped), the clock it beats, and the
/// capacity that binds in its week.
/// </summary>
internal sealed class RunReasons
{
    private readonly AnswerBuilding _building;
    private readonly PlanningInstance _instance;
    private readonly Master _master;
    private readonly Prices _prices;
    private readonly Dictionary<int, List<string>> _served = [];

    internal RunReasons(AnswerBuilding building, PlanningInstance instance, Master master, Prices prices)
    {
        (_building, _instance, _master, _prices) = (building, instance, master, prices);
        Serve();
    }

    /// <summary>Ships what is made first first, within shelf life, and notes which runs an order line drew on.</summary>
    private void Serve()
    {
        for (int q = 0; q < _instance.Products.Length; q++)
        {
            var made = _building.Runs.SelectMany(r => r.Sources.Where(s => s.MadeByProduct.ContainsKey(q)).Select(s => (r.Number, r.Week, Mass: s.MadeByProduct[q]))).OrderBy(m => m.Week).ToList();
            var shipped = _building.Filled.Fills.Where(f => f.Product == q).Select(f => (f.Week, f.Units, Name: _instance.OrderLines[f.Line].Line.Order.Text))
                .Concat(_building.Filled.Sales.Where(s => _instance.Market[s.Market].Product == q).Select(s => (_instance.Market[s.Market].Week, s.Units, Name: ""))).OrderBy(s => s.Item1).ToList();
            int first = 0;
            double[] left = [.. made.Select(m => m.Mass)];
            foreach ((int week, int units, string name) in shipped)
            {
                double need = units * _instance.Products[q].Net;
                while (first < made.Count && (left[first] <= 1e-12 || made[first].Week + _instance.Products[q].Shelf < week)) first++;
                for (int k = first; k < made.Count && need > 1e-12 && made[k].Week <= week; k++)
                {
                    double taken = Math.Min(left[k], need);
                    if (taken <= 0) continue;
                    left[k] -= taken;
                    need -= taken;
                    if (!_served.TryGetValue(made[k].Number, out List<string>? names)) _served[made[k].Number] = names = [];
                    if (!names.Contains(name)) names.Add(name);
                }
            }
        }
    }

    internal string Of(PlannedRun run)
    {
        var said = new List<string>();
        List<string> names = _served.GetValueOrDefault(run.Number) ?? [];
        string[] orders = [.. names.Where(n => n.Length > 0)];
        if (run.SeedCloves.Count > 0)
            said.Add("seed for " + string.Join(", ", run.SeedCloves.Keys.Select(n => $"{_instance.SeedNeeds[n].Need.Variety} by {Day(_instance.SeedNeeds[n].Need.By)}")));
        if (orders.Length > 0) said.Add("serves " + string.Join(", ", orders.Take(3)) + (orders.Length > 3 ? $" and {orders.Length - 3} more" : ""));
        if (names.Contains("")) said.Add(orders.Length > 0 ? "and the market" : "for the market");
        if (said.Count == 0) said.Add(run.Path is null ? "cracks what was sorted out" : "for its cloves and what is sorted out");
        if (run.Path is { } path)
        {
            double life = path.Life[run.Week];
            int last = LastGoodWeek(path, run.Week);
            said.Add(life >= 1 ? $"past its storage life ({Percent(life)} used)"
                : last >= _instance.Weeks ? $"{Percent(life)} of its storage life used" : $"{Percent(life)} of its storage life used, last good week {Day(_instance.Season.Settings.Monday(last))}");
        }
        InstanceLine line = _instance.Lines[run.Line];
        double people = double.IsInfinity(_instance.People[run.Week]) ? 0 : line.Heads * _prices.People[run.Week];
        if (people > 1e-6 * Math.Max(1, line.Cost)) said.Add("hands are short that week");
        else if (_prices.Hour[run.Line, run.Week] - line.Cost - people > 1e-6 * Math.Max(1, line.Cost))
            said.Add(run.OvertimeHours > 0 ? $"{line.Id} is full, overtime included" : $"{line.Id} is full");
        if (run.Path is { } p)
        {
            int spot = p.SpotAt(run.Week);
            InstancePlace place = _instance.Places[_master.SpotsHere[spot].Place];
            if (_prices.Stand[spot, run.Week] > place.StandCost + 1e-6) said.Add($"{place.Id} is full");
            if (_master.Choice.OfPlace[_master.SpotsHere[spot].Place] is { Opened: { } opened } && run.Week >= opened) said.Add($"{place.Id} was opened {Day(_instance.Season.Settings.Monday(opened))}");
        }
        return string.Join("; ", said);
    }

    private int LastGoodWeek(PlannedPath path, int from)
    {
        int week = from;
        while (week + 1 <= _instance.Weeks && path.Life[week + 1] < 1) week++;
        return week;
    }

    private static string Day(LocalDate date) => date.ToString("d MMM uuuu", CultureInfo.InvariantCulture);

    private static string Percent(double share) => Math.Round(share * 100).ToString(CultureInfo.InvariantCulture) + "%";
}
