using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// What a fifth more and a fifth less of each default would change in the plan's value: to first order, at the plan's worths. The paths
/// that the plan takes are valued again with the default changed, everything scarce bought at its worth; what the plan would then do
/// otherwise is of second order and left out.
/// </summary>
internal static class Sensitivity
{
    internal static List<DefaultUsed> Of(Season season, Beliefs beliefs, LotsKnown known, PlanningInstance instance, Master held, Prices prices)
    {
        List<(int Column, double Mass)> taken = [.. Enumerable.Range(0, held.ColumnCount).Where(k => held.Columns[k].Path is not null && held.Values[k] > 1e-9).Select(k => (k, held.Values[k]))];
        double Worth(PlanningInstance under)
        {
            RunCharges charges = RunCharges.ForBound(under);
            var exits = new Dictionary<(int, int), PricedExit[]>();
            double sum = 0;
            foreach ((int k, double mass) in taken)
            {
                PathColumn p = held.Columns[k].Path!;
                InstanceRow r = under.Rows[p.Row];
                if (p.Exit.Kind == ExitKind.Discard) continue;
                PathColumn now = PathStates.Column(under, held.SpotsHere, p.Row, p.Stays, p.Exit);
                if (p.Exit.Kind == ExitKind.Stand)
                {
                    sum += mass * now.MassRatio * (now.Fresh + now.Crack) * under.EndPrice;
                    continue;
                }
                if (!exits.TryGetValue((r.Lot, p.Exit.Week), out PricedExit[]? here)) exits[(r.Lot, p.Exit.Week)] = here = Exits.Of(under, charges, prices, r.Lot, p.Exit.Week);
                foreach (PricedExit x in here)
                    if (x.Exit.Kind == p.Exit.Kind && x.Exit.Line == p.Exit.Line && x.Exit.Need == p.Exit.Need)
                        sum += mass * now.MassRatio * (x.PerMass + now.Fresh * x.PerFresh + now.Crack * x.PerCrack);
            }
            return sum * under.MoneyScale;
        }
        double before = Worth(instance);
        double Change(Beliefs changed, bool lots) =>
            Worth(InstanceBuilding.Build(season, lots ? LotKnowing.Know(season, changed.Lots) : known, changed, instance.Wishes)) - before;

        var used = new List<DefaultUsed>();
        foreach (DefaultTaken d in known.Defaults.Concat(PlaceClimate.DefaultsTaken(season, beliefs.Climate)).Concat(LotTraits.DefaultsTaken(season)))
        {
            if (LotDefaults.Names.Contains(d.Name)) Add(d.Name, d.Value, d.Why, f => Change(beliefs with { Lots = beliefs.Lots.With(d.Name, f) }, true));
            else if (ClimateDefaults.Names.Contains(d.Name)) Add(d.Name, d.Value, d.Why, f => Change(beliefs with { Climate = beliefs.Climate.With(d.Name, f) }, false));
            else used.Add(new DefaultUsed(d.Name, d.Value, d.Why, null, null));
        }
        foreach (var ((lot, place), seen) in beliefs.Clocks.Where(one => one.Value.Looks > 0).OrderBy(one => one.Key.Lot.Text, StringComparer.Ordinal).ThenBy(one => one.Key.Place.Text, StringComparer.Ordinal))
            used.Add(new DefaultUsed($"inspected clock: {lot}, {place}",
                FormattableString.Invariant($"weight x{seen.Weight:0.00}, sprouting x{seen.Sprout:0.00}, decay x{seen.Decay:0.00}, life used {seen.LifeAtStart:0.000}"),
                FormattableString.Invariant($"maximum likelihood with a prior, from {seen.Looks} inspections, the last on {seen.LastLook:uuuu-MM-dd}"), null, null));
        foreach (Dial<KeepingParameters> dial in KeepingParameters.Dials)
            Add("keeping: " + dial.Name, dial.Read(beliefs.Keeping).ToString("R", System.Globalization.CultureInfo.InvariantCulture), dial.Why, f => Change(beliefs with { Keeping = beliefs.Keeping.With(dial.Name, f) }, false));
        return used;

        void Add(string name, string value, string why, Func<double, double> change) =>
            used.Add(new DefaultUsed(name, value, why, Math.Round(change(0.8), 2), Math.Round(change(1.2), 2)));
    }
}
