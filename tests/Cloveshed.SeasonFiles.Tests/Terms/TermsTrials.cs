using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>Trials of buyers' terms, in <see cref="TermsSeason"/>'s files.</summary>
public static partial class Trials
{
    private static IEnumerable<Trial> Terms()
    {
        foreach ((string file, string text) in new[]
            {
                ("programs.csv", "program\nWeekly\n"), ("price-lists.csv", "list\nFall\n"), ("promotions.csv", "promotion\nFair\n"), ("freight.csv", "destination\nPort\n"),
            })
            yield return new($"{file} in contract 1", it => it.With(file, text), FaultRule.NeedsContract, file, null, null, null);

        yield return new("no price column in contract 1", it => it.Replace("orders.csv", "units,price", "units,prices"), FaultRule.ColumnMissing, "orders.csv", 1, "price", null);
        yield return Of("an order without price or list", "orders.csv", "100,45.50,", "100,,", FaultRule.OneCellOf, 2, "price", "");
        yield return Of("an order with price and list", "orders.csv", "50,,no", "50,52,no", FaultRule.OnlyOneOf, 3, "price_list", "Fall");
        yield return Of("an order by a list that there is not", "orders.csv", "Fall,Port", "Spring,Port", FaultRule.Unknown, 3, "price_list", "Spring");
        yield return Of("an order to a destination that there is not", "orders.csv", "Fall,Port", "Fall,Harbor", FaultRule.Unknown, 3, "destination", "Harbor");
        yield return Of("an order due before its list begins", "price-lists.csv", "L30,2026-09-07", "L30,2026-09-28", FaultRule.NoListPrice, "orders.csv", 3, "price_list", "Fall");
        yield return Of("a program without price or list", "programs.csv", "10,48,", "10,,", FaultRule.OneCellOf, 3, "price", "");
        yield return Of("a program in weeks that its list has not", "price-lists.csv", "Fall,M30,2026-10-05", "Fall,M30,2026-10-12", FaultRule.NoListPrice, "programs.csv", 2, "price_list", "Fall");
        yield return Of("freight of another product only", "freight.csv", "Port,,3", "Port,C5,3", FaultRule.NoFreight, "programs.csv", 2, "destination", "Port");
        yield return Of("freight above the price", "freight.csv", "Port,,3", "Port,,43", FaultRule.BelowNothing, "programs.csv", 2, "price_list", "Fall");
        yield return Of("a cut above the price", "promotions.csv", "2026-09-21,1,", "2026-09-21,47,", FaultRule.BelowNothing, "orders.csv", 3, "price_list", "Fall");
        yield return Of("a program's week that is called as an order", "orders.csv", "O1,1", "Weekly 2026-09-28,1", FaultRule.OrderNameTaken, "programs.csv", 2, "program", "Weekly");
        yield return Of("a least above the most", "programs.csv", "20,30", "31,30", FaultRule.LowAboveHigh, 2, "least", "31");
        yield return Of("a program of two customers", "programs.csv", "Weekly,Brask Foods,L30", "Weekly,Tellin,L30", FaultRule.ProgramDiffers, 3, "customer", "Tellin");
        yield return Of("a program that ends before it begins", "programs.csv", "2026-09-21,2026-10-05", "2026-10-12,2026-10-05", FaultRule.ToBeforeFrom, 2, "to", "2026-10-05");
        yield return Of("a program from a Wednesday", "programs.csv", "2026-09-21,2026-10-05", "2026-09-23,2026-10-05", FaultRule.Monday, 2, "from", "2026-09-23");
        yield return Of("a list with two prices in a week", "price-lists.csv", "Fall,M30,2026-10-05", "Fall,M30,2026-09-28", FaultRule.SpansOverlap, 3, "from", "2026-09-28");
        yield return new(
            "a program that is there twice in a week", it => it.WithTerms().Append("programs.csv", "Weekly,Brask Foods,M30,2026-10-05,2026-10-19,5,,40,,,,,\n"), FaultRule.SpansOverlap, "programs.csv", 4, "from", "2026-10-05");
        yield return new(
            "freight that is there twice", it => it.WithTerms().Append("freight.csv", "Port,,5\n"), FaultRule.KeyTwice, "freight.csv", 4, "destination, product", "Port, ");
        yield return Of("a promotion of nothing", "promotions.csv", "2026-09-21,1,", "2026-09-21,,", FaultRule.OneCellOf, 3, "cut", "");
        yield return Of("a promotion of a product that there is not", "promotions.csv", ",,L30", ",,L40", FaultRule.Unknown, 3, "product", "L40");
        yield return Of("half a unit more", "promotions.csv", "2,6", "2,6.5", FaultRule.Whole, 2, "extra", "6.5");
    }

    private static Trial Of(string name, string file, string old, string by, FaultRule rule, int line, string column, string value) => Of(name, file, old, by, rule, file, line, column, value);

    private static Trial Of(string name, string spoilt, string old, string by, FaultRule rule, string file, int line, string column, string value) =>
        new(name, it => it.WithTerms().Replace(spoilt, old, by), rule, file, line, column, value);
}
