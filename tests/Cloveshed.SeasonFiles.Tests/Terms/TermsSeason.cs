namespace Cloveshed.SeasonFiles.Tests;

/// <summary>The small season by contract 2, with every form that buyers' terms have. Weeks: 2026-09-21 is the third, 0-based 2.</summary>
internal static class TermsSeason
{
    public static SmallSeason WithTerms(this SmallSeason season) => season
        .Replace("season.json", "\"contract\": 1", "\"contract\": 2")
        .With(
            "orders.csv",
            "order,line,customer,product,ship_from,due,units,price,firm,late_cost,short_cost,larger_ok,whole,price_list,destination\n" +
            "O1,1,Brask Foods,M30,,2026-09-24,100,45.50,,2,10,yes,,,\nO1,2,Brask Foods,L30,2026-09-14,2026-09-24,50,,no,,,,no,Fall,Port\n")
        .With(
            "price-lists.csv",
            "list,product,from,to,price\nFall,M30,2026-09-07,2026-09-28,44\nFall,M30,2026-10-05,,42\nFall,L30,2026-09-07,,50\n")
        .With("freight.csv", "destination,product,cost\nPort,,3\nPort,L30,4\n")
        .With(
            "programs.csv",
            "program,customer,product,from,to,least,most,price,price_list,destination,late_cost,short_cost,larger_ok\n" +
            "Weekly,Brask Foods,M30,2026-09-21,2026-10-05,20,30,,Fall,Port,,5,yes\nWeekly,Brask Foods,L30,2026-09-21,2026-09-28,0,10,48,,,1,2,\n")
        .With(
            "promotions.csv",
            "promotion,customer,product,from,to,cut,extra\nFair,Brask Foods,M30,2026-09-28,2026-09-28,2,6\nOpening,,L30,2026-09-21,2026-09-21,1,\n");
}
