using static Cloveshed.Seasons.Tests.Hostile.HostileCase;

namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>Broken in charts, varieties, lots, samples and yields.</summary>
internal static class HostileGarlic
{
    private const string A = "A,yard,white,north,2030-06-20,30,30000,weighed,,,no,yes,no,0.7,0.2,A,55,0.3,,";

    private static HostileCase Lot(string name, string now, string? column) => Swap(name, "lots.csv", A, now, 2, column);

    public static IEnumerable<HostileCase> All =>
    [
        Swap("a gap between classes", "sizes.csv", "large,l,60,", "large,l,61,", 4, "min_mm"),
        Swap("classes that overlap", "sizes.csv", "large,l,60,", "large,l,58,", 4, "min_mm"),
        Swap("a class upside down", "sizes.csv", "large,l,60,", "large,l,60,50", 4, null),
        Swap("an open class before the last", "sizes.csv", "medium,m,45,60", "medium,m,45,", null, null),
        Swap("a class without a width", "sizes.csv", "small,s,30,45", "small,s,,45", 2, "min_mm"),
        Swap("a class twice", "sizes.csv", "large,l,60,", "medium,l,60,", 4, "class"),
        Swap("a width with a decimal comma", "sizes.csv", "small,s,30,45", "small,s,\"30,5\",45", 2, "min_mm"),
        Swap("a variety twice", "varieties.csv", "red,-7.1", "white,-7.1", 3, "variety"),
        Swap("a variety without a name", "varieties.csv", "red,-7.1", ",-7.1", 3, "variety"),
        Swap("keeps for ages", "varieties.csv", "short,8", "ages,8", 3, "keeps"),
        Lot("a lot in a place that is not there", A.Replace("yard", "barn", StringComparison.Ordinal), "place"),
        Lot("a lot of a variety that is not there", A.Replace("white", "blue", StringComparison.Ordinal), "variety"),
        Lot("a lot without a field", A.Replace("north", "", StringComparison.Ordinal), "field"),
        Lot("a date the American way", A.Replace("2030-06-20", "06/20/2030", StringComparison.Ordinal), "harvested"),
        Lot("a day that is not", A.Replace("2030-06-20", "2030-06-31", StringComparison.Ordinal), "harvested"),
        Lot("a net in words", A.Replace("30000", "plenty", StringComparison.Ordinal), "net"),
        Lot("a net below nothing", A.Replace("30000", "-30000", StringComparison.Ordinal), "net"),
        Lot("a net that is not a number", A.Replace("30000", "NaN", StringComparison.Ordinal), "net"),
        Lot("a net without end", A.Replace("30000", "Infinity", StringComparison.Ordinal), "net"),
        Lot("a net beyond all numbers", A.Replace("30000", "1e999", StringComparison.Ordinal), "net"),
        Lot("a net with its thousands parted", A.Replace("30000", "\"30,000\"", StringComparison.Ordinal), "net"),
        Lot("bins below nothing", A.Replace(",30,30000", ",-30,30000", StringComparison.Ordinal), "bins"),
        Lot("more than all of a lot", A.Replace("0.7,0.2", "0.7,0.4", StringComparison.Ordinal), null),
        Lot("a share in percent", A.Replace("0.7,0.2", "70,0.2", StringComparison.Ordinal), "fresh_share"),
        Lot("a share below nothing", A.Replace("0.7,0.2", "0.7,-0.2", StringComparison.Ordinal), "crack_share"),
        Lot("a state of its own", A.Replace("weighed", "guessed", StringComparison.Ordinal), "state"),
        Lot("a seed class of its own", A.Replace("0.2,A,55", "0.2,Z,55", StringComparison.Ordinal), "seed_class"),
        Lot("hold perhaps", A + "perhaps", "hold"),
        Add("a lot twice in a place", "lots.csv", A.Replace("30,30000", "1,1000", StringComparison.Ordinal), "lot"),
        Swap("rows of a lot of two varieties", "lots.csv", "A,cold,white", "A,cold,red", 3, "variety"),
        Swap("rows of a lot of two mean weights", "lots.csv", "0.8,0.1,A,55", "0.8,0.1,A,56", 3, "mean_g"),
        Swap("rows of a lot of two fields", "lots.csv", "A,cold,white,north", "A,cold,white,south", 3, "field"),
        Swap("more bins in a place than it holds", "lots.csv", "2030-06-22,20,20000", "2030-06-22,60,20000", null, null),
        Swap("a sample of a lot that is not there", "samples.csv", "B,2030-07-11,44", "Q,2030-07-11,44", 2, "lot"),
        Swap("a bulb of no weight", "samples.csv", "61.5", "0", 3, "weight_g"),
        Swap("a bulb of no known fault", "samples.csv", "mold", "worms", 3, "defect"),
        Swap("a mode twice", "yields.csv", "crack,0.8", "fresh,0.8", 3, "mode"),
        Swap("more kept than put in", "yields.csv", "seed,0.75", "seed,1.75", 4, "kept_share"),
        Swap("a mode of its own", "yields.csv", "seed,0.75", "braid,0.75", 4, "mode"),
        Swap("a grade twice", "clove-grades.csv", "g2,18,", "g1,18,", 3, "grade"),
        Swap("a grade upside down", "clove-grades.csv", "g1,12,18", "g1,12,8", 2, null),
    ];
}
