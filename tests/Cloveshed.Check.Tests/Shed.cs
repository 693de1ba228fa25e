using System.Globalization;

namespace Cloveshed.Check.Tests;

/// <summary>
/// A small shed with round figures, on which every scenario builds. Its one lot is 1000 in 10 bins in the yard; of it 0.80 makes grade
/// and 0.15 is sound but fails; by mass half is in class L, 0.30 in M, the rest under. A path loses 0.01 of its start mass and 0.01 of
/// its fresh share each week, so that k weeks on it stands at 1 - 0.01 k and 0.80 - 0.01 k.
/// </summary>
internal static class Shed
{
    public static Folders Bare(int weeks = 4, string asOf = "", string endPrice = "", string unit = "lb") => new Folders()
        .Settings(weeks, asOf, endPrice, unit)
        .Season("sizes.csv", "M,40,55", "L,55,70", "XL,70,")
        .Season("clove-grades.csv", "small,10,16", "big,16,")
        .Season("varieties.csv", "Ridge,,,,medium,,,,,", "Bench,,,,long,,,,,")
        .Season("places.csv", "yard,open,100,0.5,,,", "cold,cold,50,1,20,3,", "room,sealed,20,1.5,,4,2")
        .Season("yields.csv", "fresh,0.95", "crack,0.85", "seed,0.8")
        .Season("lines.csv", "pack,fresh,500,40,10,100,150,5,100,0.5", "cracker,crack,250,40,,80,,2,100,0.25", "drill,seed,200,40,,60,,,,1")
        .Season(
            "products.csv", "L-30,bulb,L,30,2,1,", "M-30,bulb,M,30,2,1,", "L-30-org,bulb,L,30,2,1,yes", "M-10,bulb,M,10,1,1,",
            "XL-30,bulb,XL,30,2,1,", "C-5,clove,big,5,1,2,", "S-5,clove,small,5,1,0,")
        .Season("sell-as-is.csv", ",0.3,500");

    /// <summary>The lot and its shares. Dug before the season unless a date is given.</summary>
    public static Folders WithLot(
        this Folders folders, string lot = "L1", string place = "yard", string harvested = "2026-07-20", double bins = 10, double net = 1000,
        string organic = "", string inhibitor = "", string seedClass = "", string ready = "", string hold = "", bool shares = true)
    {
        folders.Season("lots.csv", string.Create(
            CultureInfo.InvariantCulture,
            $"{lot},{place},Ridge,F1,{harvested},{bins},{net},0.8,0.15,{organic},{inhibitor},{seedClass},,,{ready},{hold}"));
        return shares
            ? folders.Answer(
                "shares.csv", $"{lot},bulb class,M,0.3", $"{lot},bulb class,L,0.5", $"{lot},bulb class,XL,0", $"{lot},bulb class,under,0.2",
                $"{lot},clove grade,small,0.3", $"{lot},clove grade,big,0.6", $"{lot},clove grade,ungraded,0.1")
            : folders;
    }

    /// <summary>A path from a week on; one place per week, the last of them also for the week after the season's last.</summary>
    public static Folders WithPath(this Folders folders, string path, string fromPlace, int start, params string[] places) =>
        folders.WithPathOf("L1", path, fromPlace, start, places);

    public static Folders WithPathOf(this Folders folders, string lot, string path, string fromPlace, int start, params string[] places)
    {
        for (int k = 0; k <= places.Length; k++)
        {
            string place = places[Math.Min(k, places.Length - 1)];
            folders.Answer("paths.csv", string.Create(
                CultureInfo.InvariantCulture,
                $"{path},{lot},{fromPlace},@{start + k},{place},{1 - (0.01 * k):0.00},{0.8 - (0.01 * k):0.00},0.15,{0.02 * k:0.00}"));
        }

        return folders;
    }

    public static Folders InYard(this Folders folders, int start = 0, int weeks = 4) =>
        folders.WithPath("p1", "yard", start, [.. Enumerable.Repeat("yard", weeks - start)]);
}
