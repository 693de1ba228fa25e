using Cloveshed.Core.Answers;

namespace Cloveshed.Core.Planning;

/// <summary>
/// Duals as worths, in the season's currency per unit that people count in: a unit of a product shipped in a week, an hour of a
/// line or of a person, a bin standing in a place at a week's end, a mass unit of a lot at its start, a mass unit of seed.
/// </summary>
internal static class Worths
{
    internal static List<WorthRow> Of(PlanningInstance instance, Master held, Prices prices)
    {
        double money = instance.MoneyScale, mass = instance.MassScale;
        var rows = new List<WorthRow>();
        for (int q = 0; q < instance.Products.Length; q++)
            for (int t = instance.AsOf; t < instance.Weeks; t++)
                if (!double.IsInfinity(prices.Available[q, t]))
                    rows.Add(new WorthRow("product", instance.Products[q].Id.Text, t, prices.Available[q, t] * instance.Products[q].Net * money));
        for (int i = 0; i < instance.Lines.Length; i++)
            for (int t = instance.AsOf; t < instance.Weeks; t++)
            {
                InstanceLine line = instance.Lines[i];
                double people = double.IsInfinity(instance.People[t]) ? 0 : line.Heads * prices.People[t];
                double worth = Math.Max(0, prices.Hour[i, t] - line.Cost - people);
                rows.Add(new WorthRow("line", line.Id.Text, t, worth * money));
            }
        for (int t = instance.AsOf; t < instance.Weeks; t++)
            if (!double.IsInfinity(instance.People[t])) rows.Add(new WorthRow("people", "people", t, prices.People[t] * money));
        for (int s = 0; s < held.SpotsHere.Length; s++)
        {
            InstancePlace place = instance.Places[held.SpotsHere[s].Place];
            for (int t = instance.AsOf; t < instance.Weeks; t++)
                rows.Add(new WorthRow("place", place.Id.Text, t, Math.Max(0, prices.Stand[s, t] - place.StandCost) * money / instance.BinScale));
        }
        // A lot's worth is what one more mass unit of it at its start would add, over its rows by mass.
        for (int l = 0; l < instance.Lots.Length; l++)
        {
            double sum = instance.Lots[l].Rows.Sum(r => held.DualOfRow(r) * instance.Rows[r].Mass);
            rows.Add(new WorthRow("lot", instance.Lots[l].Id.Text, null, sum / instance.Lots[l].Mass * money / mass));
        }
        for (int n = 0; n < instance.SeedNeeds.Length; n++)
        {
            InstanceSeedNeed need = instance.SeedNeeds[n];
            rows.Add(new WorthRow("seed", $"{need.Need.Variety} {need.Class} {need.Need.By:uuuu'-'MM'-'dd}", Math.Clamp(need.ByWeek, 0, instance.Weeks - 1), (need.ShortCost - prices.Seed[n]) * money / mass));
        }
        return rows;
    }
}
