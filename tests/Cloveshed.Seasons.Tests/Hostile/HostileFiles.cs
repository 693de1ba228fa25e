using System.Text;
using static Cloveshed.Seasons.Tests.Hostile.HostileCase;

namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>Broken as files, before any row means anything.</summary>
internal static class HostileFiles
{
    private static readonly string[] Required =
        ["season.json", "sizes.csv", "varieties.csv", "places.csv", "lots.csv", "yields.csv", "lines.csv", "products.csv", "orders.csv"];

    private static readonly string[] Optional =
        ["place-weeks.csv", "samples.csv", "line-weeks.csv", "people.csv", "stock.csv", "market.csv", "seed-needs.csv", "sell-as-is.csv"];

    private static HostileFolder Sound => HostileFolder.Sound;

    public static IEnumerable<HostileCase> All =>
    [
        .. Required.Select(file => new HostileCase($"{file} missing", Sound.Without(file), new FaultAt(file, null, null))),
        .. Required.Skip(1).Select(file => new HostileCase($"{file} empty", Sound.Whole(file, ""), new FaultAt(file, null, null))),
        Swap("a required column missing", "lots.csv", "bins,net,state", "bins,weight,state", 1, "net"),
        Swap("a column twice", "orders.csv", "units,price,firm", "units,price,price", 1, "price"),
        Swap("a row with a cell too few", "people.csv", "2030-07-08,500", "2030-07-08", 3, null),
        Swap("a row with a cell too many", "people.csv", "2030-07-08,500", "2030-07-08,500,x", 3, null),
        Swap("a quote that never ends", "orders.csv", "102,1,Corner Shop", "102,1,\"Corner Shop", 4, null),
        new("bytes that are not UTF-8", Sound.Bytes("varieties.csv", Encoding.Latin1.GetBytes(SoundTexts.All["varieties.csv"].Replace("red", "rojo ñ", StringComparison.Ordinal))),
            new FaultAt("varieties.csv", null, null)),
        new("faults in several files", Sound.With("lots.csv", "30000", "-1").With("people.csv", "300", "many").With("sizes.csv", "m,45,60", "m,46,60"),
            new("lots.csv", 2, "net"), new("people.csv", 2, "hours"), new("sizes.csv", 3, "min_mm")),
        new("several faults in one row", Sound.With("lots.csv", "B,yard,red,south,2030-07-10,25,24000", "B,barn,blue,south,10 July,x,y"),
            new("lots.csv", 4, "place"), new("lots.csv", 4, "variety"), new("lots.csv", 4, "harvested"), new("lots.csv", 4, "bins"), new("lots.csv", 4, "net")),
        new("a fault after a cell of two lines", Sound.With("orders.csv", "Market Hall", "\"Market\nHall\"").With("orders.csv", "80,22,no", "80,x,no"),
            new FaultAt("orders.csv", 5, "price")),
        new("a fault after Windows line ends", Sound.Each(t => t.Replace("\n", "\r\n", StringComparison.Ordinal)).With("orders.csv", "80,22,no", "80,x,no"),
            new FaultAt("orders.csv", 4, "price")),
    ];

    /// <summary>Unusual and sound: nothing may be reported.</summary>
    public static IReadOnlyDictionary<string, HostileFolder> Fine { get; } = new Dictionary<string, HostileFolder>(StringComparer.Ordinal)
    {
        ["as it is"] = Sound,
        ["an unknown column"] = Sound.Whole("people.csv", "week,remark,hours\n2030-07-01,harvest,300\n"),
        ["an unknown file"] = Sound.Whole("notes.csv", "a,b\n1\n"),
        ["Windows line ends"] = Sound.Each(t => t.Replace("\n", "\r\n", StringComparison.Ordinal)),
        ["no line end at the end"] = Sound.Each(t => t.TrimEnd('\n')),
        ["columns in another order"] = Sound.Whole("people.csv", "hours,week\n300,2030-07-01\n"),
        ["everything quoted"] = Sound.Whole("people.csv", "\"week\",\"hours\"\n\"2030-07-01\",\"300\"\n"),
        ["a cell of two lines"] = Sound.With("orders.csv", "Market Hall", "\"Market\nHall, \"\"north\"\"\""),
        ["the least of season.json"] = Sound.Without("rooms.csv").Without("stock.csv").Whole("season.json",
            """{"contract":1,"name":"n","first_week":"2030-07-01","weeks":8,"mass_unit":"kg","currency":"EUR"}"""),
        ["no optional file"] = Optional.Aggregate(Sound, (folder, file) => folder.Without(file)).Without("rooms.csv"),
        ["optional columns left out"] = Sound
            .Whole("lines.csv", "line,mode,rate_per_hour,hours_per_week\npack,fresh,2000,40\n").Without("line-weeks.csv")
            .Whole("products.csv", "product,form,from,net\ncarton M,bulb,medium,30\ncarton L,bulb,large,30\nbox,clove,g1,25\n")
            .Whole("orders.csv", "order,line,customer,product,due,units,price\n7,1,Market Hall,box,2030-07-12,10,20\n"),
        ["zero rows of orders"] = Sound.Whole("orders.csv", "order,line,customer,product,due,units,price\n"),
        ["orders due outside the season"] = Sound.Row("orders.csv", "103,1,Corner Shop,box,,2030-05-01,5,22,,,,,").Row("orders.csv", "104,1,Corner Shop,box,,2031-05-01,5,22,,,,,"),
        ["a lot dug after the season"] = Sound.Row("lots.csv", "D,yard,white,west,2030-12-01,9,9000,,,,,,,,,,,,,"),
    };
}
