using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Sales;

/// <summary>Cloves for this autumn's own planting, and what the bulk trade gives for garlic as it stands.</summary>
public static class SeedNeeds
{
    public static string File()
    {
        Table t = new("variety", "net", "by", "seed_class", "short_cost");
        t.Row("Early Pale", 150_000, new LocalDate(2026, 9, 18), "A", 2.90m);
        t.Row("Early Pale", 60_000, new LocalDate(2026, 9, 25), "B", 2.50m);
        t.Row("Kiln Red", 75_000, new LocalDate(2026, 10, 2), "B", 2.60m);
        t.Row("Streak", 60_000, new LocalDate(2026, 9, 25), "B", 2.60m);
        t.Row("Late Pale", 170_000, new LocalDate(2026, 10, 16), "A", 3.00m);
        return t.ToString();
    }

    public static string AsIsFile()
    {
        Table t = new("variety", "price", "limit");
        t.Row("Streak", 0.24m, 45_000);
        t.Row("Tall Violet", 0.21m, 40_000);
        t.Row(null, 0.19m, 120_000);
        return t.ToString();
    }
}
