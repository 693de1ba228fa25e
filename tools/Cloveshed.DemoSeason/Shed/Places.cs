using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Shed;

/// <summary>The yard and the rooms. Costs are in dollars; a bin holds about a thousand pounds.</summary>
public static class Places
{
    public const string Yard = "Open yard";
    public const string FirstCold = "Cold 1";
    public const string SecondCold = "Cold 2";
    public const string FullRoom = "Sealed D";

    public static string File()
    {
        Table t = new(
            "place", "kind", "capacity_bins", "temp_c", "rh", "o2", "co2", "cost_per_bin_week", "cost_per_week", "move_in_cost", "run_out_weeks");
        t.Row(Yard, "open", 16000, 16m, 58m, null, null, 0.05m, 0, 1.80m, null);
        t.Row(FirstCold, "cold", 2200, 0m, 65m, null, null, 0.34m, 820, 4.20m, null);
        t.Row(SecondCold, "cold", 1800, 0m, 66m, null, null, 0.35m, 700, 4.20m, null);
        t.Row("Cold 3", "cold", 1500, 1m, 68m, null, null, 0.31m, 560, 4.00m, null);
        // Loading is under air; the atmosphere is that of the sealed room. Carbon dioxide stays under the 15 % that may
        // injure in four to six months (Cantwell et al., Acta Horticulturae, controlled atmospheres and sprout growth).
        t.Row("Sealed A", "sealed", 1600, -0.5m, 65m, 1m, 10m, 0.46m, 930, 5.60m, 4);
        t.Row("Sealed B", "sealed", 1600, -0.5m, 65m, 1m, 10m, 0.46m, 930, 5.60m, 4);
        t.Row("Sealed C", "sealed", 1200, -0.5m, 66m, 2m, 8m, 0.48m, 760, 5.80m, 3);
        t.Row(FullRoom, "sealed", 1000, -0.5m, 66m, 2m, 8m, 0.50m, 650, 5.80m, 3);
        return t.ToString();
    }

    public static string RoomsFile()
    {
        Table t = new("place", "sealed");
        t.Row(FullRoom, new LocalDate(2025, 9, 26));
        return t.ToString();
    }
}
