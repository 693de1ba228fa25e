using Cloveshed.DemoSeason.Text;

namespace Cloveshed.DemoSeason.Shed;

/// <summary>The size chart, the clove grades and the yields of the lines.</summary>
public static class Sizes
{
    /// <summary>
    /// Lower limits in mm as in the sizing table of the BC Ministry of Agriculture ("Garlic (organic)", p. 10); reading its average
    /// diameters as lower limits is common practice, no source. Its two largest classes are one here.
    /// </summary>
    public static string File()
    {
        Table t = new("class", "code", "min_mm", "max_mm");
        t.Row("Small tube", "ST", 37, 41);
        t.Row("Medium tube", "MT", 41, 44);
        t.Row("Large tube", "LT", 44, 47);
        t.Row("Giant", "GI", 47, 50);
        t.Row("Jumbo", "JU", 50, 55);
        t.Row("Extra jumbo", "XJ", 55, 65);
        t.Row("Super jumbo", "SJ", 65, 70);
        t.Row("Colossal", "CO", 70, null);
        return t.ToString();
    }

    /// <summary>Clove widths about the measured 7.6 to 11.2 mm (Mengistu et al., 2024) and upward for large-cloved kinds. The windows are invented.</summary>
    public static string GradesFile()
    {
        Table t = new("grade", "min_mm", "max_mm");
        t.Row("Seasoning", 6.5m, 9.5m);
        t.Row("Small", 9.5m, 11.5m);
        t.Row("Chopping", 11.5m, 13.5m);
        t.Row("Peeling medium", 13.5m, 16m);
        t.Row("Peeling large", 16m, null);
        return t.ToString();
    }

    public static string YieldsFile()
    {
        Table t = new("mode", "kept_share");
        t.Row("fresh", 0.91m);
        t.Row("crack", 0.80m);
        t.Row("seed", 0.78m);
        return t.ToString();
    }
}
