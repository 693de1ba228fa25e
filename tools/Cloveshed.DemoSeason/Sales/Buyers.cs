namespace Cloveshed.DemoSeason.Sales;

/// <summary>How a buyer comes: with a standing programme (every Cadence weeks) or now and then.</summary>
/// <param name="Size">How much of a line it takes, against other buyers of the same product.</param>
/// <param name="PriceFactor">What it pays against the usual price.</param>
/// <param name="Products">The products that it ever asks for.</param>
public sealed record Buyer(string Name, int Cadence, double Size, double PriceFactor, IReadOnlyList<string> Products);

/// <summary>Forty buyers, each with a name that no one bears. A cadence of 0 is a buyer of spot lots.</summary>
public static class Buyers
{
    /// <summary>The buyer too many: a programme taken on in the autumn, on top of what the crop can serve.</summary>
    public const string Late = "Hasplock Wholesale";

    private static readonly string[] Large = ["Extra jumbo 30", "Super jumbo 30", "Colossal 30", "Jumbo 30"];
    private static readonly string[] Middle = ["Jumbo 30", "Giant 30", "Large tube 30", "Extra jumbo 30"];
    private static readonly string[] Small = ["Small tube 30", "Medium tube 30", "Large tube 30", "Giant 30"];
    private static readonly string[] Packs = ["Jumbo 10", "Extra jumbo 10", "Giant 5", "Jumbo 30"];
    private static readonly string[] Grown = ["Organic jumbo 30", "Organic extra jumbo 30"];
    private static readonly string[] Peel = ["Peeling stock large", "Peeling stock medium"];
    private static readonly string[] Chop = ["Chopping stock", "Small cloves", "Peeling stock medium", "Seasoning stock"];
    private static readonly string[] Any = ["Extra jumbo 30", "Jumbo 30", "Giant 30", "Large tube 30", "Peeling stock medium", "Chopping stock"];

    public static readonly IReadOnlyList<Buyer> All =
    [
        new("Applewhisk Markets", 1, 1.5, 0.97, Large), new("Bramblecoat Grocers", 1, 1.3, 0.98, Middle),
        new("Cobblespoon Foods", 1, 1.8, 0.96, Peel), new("Dapplefold Kitchens", 1, 1.4, 0.97, Chop),
        new("Fiddlemarl Markets", 1, 0.9, 1.00, Packs), new("Gingerthatch Provisions", 1, 1.0, 0.98, Small),
        new("Jostlewick Markets", 1, 1.1, 0.99, Middle), new("Larchpenny Foods", 1, 1.2, 0.97, Peel),
        new("Hobbinsedge Grocers", 2, 1.2, 0.99, Large), new("Inkleford Organics", 2, 1.2, 1.00, Grown),
        new("Kettlemoss Kitchens", 2, 1.1, 0.98, Chop), new("Mossbuckle Markets", 2, 0.9, 1.01, Packs),
        new("Nettlefob Wholesale", 2, 1.2, 0.96, Small), new("Oatwhistle Foods", 2, 1.3, 0.98, Any),
        new("Pebblecrumb Organics", 2, 0.9, 1.02, Grown), new("Quinceluff Grocers", 2, 1.0, 0.99, Middle),
        new("Rumblesack Wholesale", 0, 1.6, 1.02, Large), new("Thistlebun Bakers", 0, 0.6, 1.04, Chop),
        new("Umberlatch Markets", 0, 0.8, 1.03, Middle), new("Vetchpocket Grocers", 0, 0.7, 1.03, Small),
        new("Wickerplum Foods", 0, 1.1, 1.02, Peel), new("Yarrowjug Provisions", 0, 0.8, 1.04, Any),
        new("Zithermeal Kitchens", 0, 0.9, 1.03, Chop), new("Barleytwitch Markets", 0, 0.7, 1.05, Packs),
        new("Cloverhinge Export", 0, 2.2, 1.00, Large), new("Dumplingway Kitchens", 0, 0.8, 1.04, Peel),
        new("Eavesgarth Grocers", 0, 0.7, 1.03, Middle), new("Flintspoon Foods", 0, 1.0, 1.02, Any),
        new("Gourdlantern Markets", 0, 0.6, 1.06, Grown), new(Late, 1, 0, 1.04, ["Extra jumbo 30", "Jumbo 30", "Peeling stock large"]),
        new("Jugglesprig Provisions", 0, 0.8, 1.03, Small), new("Knollbasket Markets", 0, 0.8, 1.04, Middle),
        new("Loamwhistle Export", 0, 1.9, 1.00, Large), new("Marrowgate Foods", 0, 1.0, 1.03, Chop),
        new("Noodlewharf Kitchens", 0, 0.7, 1.05, Peel), new("Osierpan Wholesale", 0, 1.3, 1.01, Any),
        new("Pantrygrove Markets", 0, 0.7, 1.04, Packs), new("Ropewalkle Provisions", 0, 0.7, 1.03, Small),
        new("Saffronpail Grocers", 0, 0.8, 1.03, Large), new("Tumbleknot Wholesale", 0, 1.2, 1.02, Any),
    ];
}
