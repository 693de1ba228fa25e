using static Cloveshed.Seasons.Tests.Hostile.HostileCase;

namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>Broken in products, stock, orders, market, seed and prices as is.</summary>
internal static class HostileTrade
{
    public static IEnumerable<HostileCase> All =>
    [
        Swap("a product of its own form", "products.csv", "box,clove", "box,powder", 4, "form"),
        Swap("a product of a class that is not there", "products.csv", "carton L,bulb,large", "carton L,bulb,jumbo", 3, "from"),
        Swap("bulbs of a clove grade", "products.csv", "carton L,bulb,large", "carton L,bulb,g1", 3, "from"),
        Swap("cloves of a size class", "products.csv", "box,clove,g1", "box,clove,large", 4, "from"),
        new("cloves without grades", HostileFolder.Sound.Without("clove-grades.csv"), new FaultAt("products.csv", 4, "from")),
        Swap("a product of no weight", "products.csv", "box,clove,g1,25", "box,clove,g1,0", 4, "net"),
        Swap("a product twice", "products.csv", "carton L,bulb", "carton M,bulb", 3, "product"),
        Swap("half a week of shelf life", "products.csv", "0.9,0,no", "0.9,0.5,no", 4, "shelf_weeks"),
        Swap("organic perhaps", "products.csv", "0.9,0,no", "0.9,0,perhaps", 4, "organic"),
        Swap("stock of a product that is not there", "stock.csv", "carton L,2030-07-01", "crate,2030-07-01", 3, "product"),
        Swap("stock made on a Wednesday", "stock.csv", "carton L,2030-07-01", "carton L,2030-07-03", 3, "made"),
        Swap("stock below nothing", "stock.csv", "2030-07-01,12", "2030-07-01,-12", 3, "units"),
        Swap("an order of a product that is not there", "orders.csv", "Corner Shop,box", "Corner Shop,crate", 4, "product"),
        Swap("an order without a date", "orders.csv", "2030-07-15,2030-07-24", "2030-07-15,", 4, "due"),
        Swap("an order due some time", "orders.csv", "2030-07-15,2030-07-24", "2030-07-15,soon", 4, "due"),
        Swap("an order of broken units", "orders.csv", "2030-07-24,80,22", "2030-07-24,80.5,22", 4, "units"),
        Swap("an order of less than nothing", "orders.csv", "2030-07-24,80,22", "2030-07-24,-80,22", 4, "units"),
        Swap("an order of more units than can be counted", "orders.csv", "2030-07-24,80,22", "2030-07-24,80000000000000000000,22", 4, "units"),
        Swap("an order without a price", "orders.csv", "2030-07-24,80,22", "2030-07-24,80,", 4, "price"),
        Swap("a price with its currency", "orders.csv", "2030-07-24,80,22", "2030-07-24,80,$22", 4, "price"),
        Swap("a firm maybe", "orders.csv", "80,22,no", "80,22,maybe", 4, "firm"),
        Swap("an order's line twice", "orders.csv", "101,2,", "101,1,", 3, "line"),
        Swap("an order's line without a number", "orders.csv", "101,2,", "101,,", 3, "line"),
        Swap("a market of a product that is not there", "market.csv", "carton M,2030-07-15", "crate,2030-07-15", 3, "product"),
        Swap("a market on a Sunday", "market.csv", "carton M,2030-07-15", "carton M,2030-07-14", 3, "week"),
        Swap("a market twice", "market.csv", "carton M,2030-07-15", "carton M,2030-07-08", 3, "week"),
        Swap("a market below nothing", "market.csv", "19,,25,", "19,,-25,", 3, "p50"),
        Swap("a market without its middle", "market.csv", "19,,25,", "19,,,", 3, "p50"),
        Swap("seed of a variety that is not there", "seed-needs.csv", "red,1000", "blue,1000", 3, "variety"),
        Swap("seed of a class of its own", "seed-needs.csv", "2030-08-20,C", "2030-08-20,D", 3, "seed_class"),
        Swap("seed by no date", "seed-needs.csv", "red,1000,2030-08-20", "red,1000,", 3, "by"),
        Swap("seed below nothing", "seed-needs.csv", "red,1000", "red,-1000", 3, "net"),
        Add("a seed need twice", "seed-needs.csv", "red,500,2030-08-20,C,1", "variety"),
        Swap("as is of a variety that is not there", "sell-as-is.csv", "red,0.08", "blue,0.08", 3, "variety"),
        Add("any variety twice", "sell-as-is.csv", ",0.2,", "variety"),
        Swap("as is below nothing", "sell-as-is.csv", "0.1,20000", "0.1,-20000", 2, "limit"),
    ];
}
