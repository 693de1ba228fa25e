namespace Cloveshed.Check.Tests;

/// <summary>
/// Honest answers, one per feature of the contract, with the value worked out by hand beside each. 0.95, 0.85 and 0.8 are what the
/// fresh line, the cracker and the seed line keep; rates, costs and set-ups are Shed's.
/// </summary>
internal static class Scenarios
{
    /// <summary>
    /// All 1000 run in week 1, at 990 and 0.79 fresh: 990 x 0.79 x 0.95 = 742.995 fit, of it 371.4975 in L and 222.8985 in M.
    /// 12 cartons of L (360) and 7 of M (210) are made; 742.995 + 990 x 0.15 - 570 = 321.495 may be sorted out, 320 is.
    /// Hours 990/500 + 0.5 = 2.48. Value 12 x 40 + 7 x 20 - 19 x 2 - 2.48 x 100 - 10 x 0.5 = 329.
    /// </summary>
    public static Folders FreshRun() => FreshMade()
        .Season("orders.csv", "o1,1,Buyer,L-30,,@1,12,40,,1.5,4,,")
        .Season("market.csv", "M-30,@1,20,5,9.5,12")
        .Answer("fills.csv", "o1,1,@1,L-30,12")
        .Answer("sales.csv", "@1,M-30,7")
        .Summary(329);

    /// <summary>The run of FreshRun without what is shipped: - 38 - 248 - 5 = -291.</summary>
    public static Folders FreshMade(Folders? shed = null, string l = "L-30") => FreshRunOnly(shed)
        .Answer("made.csv", $"r1,@1,{l},L1,12,360", "r1,@1,M-30,L1,7,210")
        .Answer("sorted.csv", "r1,L1,@1,320")
        .Summary(-291);

    /// <summary>All 1000 dumped in week 1 and nothing made yet: -248 - 5 = -253.</summary>
    public static Folders FreshRunOnly(Folders? shed = null) => (shed ?? Shed.Bare().WithLot()).InYard()
        .Answer("runs.csv", "r1,@1,pack,fresh,lot,L1,p1,yard,990,1000,2.48,0,the order of week 1")
        .Answer("keeps.csv", "@0,L1,p1,yard,10,1000")
        .Summary(-253);

    /// <summary>
    /// FreshRun, and in week 3 300 of what was sorted out in week 1 is cracked: 300 x 0.85 x 0.6 = 153 of big cloves, 30.6 units.
    /// Hours 300/250 + 0.25 = 1.45. Value 329 + 30 x 12 - 30.6 - 1.45 x 80 = 542.4.
    /// </summary>
    public static Folders SortedToCracker() => FreshRun()
        .Season("orders.csv", "o2,1,Buyer,C-5,,@3,30,12,,,,,")
        .Answer("runs.csv", "r2,@3,cracker,crack,sorted,L1,,,300,0,1.45,0,sorted-out bulbs of week 1")
        .Answer("made.csv", "r2,@3,C-5,L1,30.6,153")
        .Answer("fills.csv", "o2,1,@3,C-5,30")
        .Summary(542.4);

    /// <summary>
    /// All cracked in week 0: 1000 x (0.80 + 0.15) x 0.85 x 0.6 = 484.5, 96.9 units. Hours 1000/250 + 0.25 = 4.25.
    /// Value 96 x 12 - 96.9 - 4.25 x 80 = 715.1.
    /// </summary>
    public static Folders CrackLot() => Shed.Bare().WithLot().InYard()
        .Season("orders.csv", "o1,1,Buyer,C-5,,@2,96,12,,,,,")
        .Answer("runs.csv", "r1,@0,cracker,crack,lot,L1,p1,yard,1000,1000,4.25,0,cloves")
        .Answer("made.csv", "r1,@0,C-5,L1,96.9,484.5")
        .Answer("fills.csv", "o1,1,@2,C-5,96")
        .Summary(715.1);

    /// <summary>
    /// Seed run in week 2, the week of Thursday the 20th: 980 x 0.78 x 0.8 = 611.52 cloves for a need of 700 of class B. Hours
    /// 980/200 + 1 = 5.9. Value -5.9 x 60 - 2 x 10 x 0.5 - 88.48 x 5 = -806.4.
    /// </summary>
    public static Folders SeedRun() => Shed.Bare().WithLot(seedClass: "A").InYard()
        .Season("seed-needs.csv", "Ridge,700,2026-08-20,B,5")
        .Answer("runs.csv", "r1,@2,drill,seed,lot,L1,p1,yard,980,1000,5.9,0,seed")
        .Answer("seed.csv", "r1,@2,Ridge,L1,A,B,2026-08-20,611.52")
        .Answer("keeps.csv", "@0,L1,p1,yard,10,1000", "@1,L1,p1,yard,10,1000")
        .Summary(-806.4);

    /// <summary>
    /// In week 1 400 of the start mass is sold as is (396 at 0.3) and 100 discarded; 500 stands to the end: 500 x 0.96 x (0.76 + 0.15) x 0.1
    /// = 43.68. Bins 10, then 5 for three weeks. Value 118.8 + 43.68 - 25 x 0.5 = 149.98.
    /// </summary>
    public static Folders AsIs() => Shed.Bare(endPrice: "0.1").WithLot().InYard()
        .Answer("as-is.csv", "sold,@1,L1,p1,yard,396,400", "discarded,@1,L1,p1,yard,99,100")
        .Answer("keeps.csv", "@0,L1,p1,yard,10,1000", "@1,L1,p1,yard,5,500", "@2,L1,p1,yard,5,500", "@3,L1,p1,yard,5,500")
        .Summary(149.98);

    /// <summary>
    /// Dug in week 0, 6 of 10 bins into the cold in week 1, all to the end: 1000 x 0.96 x 0.91 x 0.1 = 87.36. Bin-weeks 22 in the yard, 18 in the
    /// cold, which costs 20 in each of 3 weeks; moving in 6 x 3. Value 87.36 - 11 - 18 - 60 - 18 = -19.64.
    /// </summary>
    public static Folders Move() => Shed.Bare(endPrice: "0.1").WithLot(harvested: "2026-08-04").InYard()
        .WithPath("p2", "yard", 0, "yard", "cold", "cold", "cold")
        .Answer(
            "keeps.csv", "@0,L1,p1,yard,4,400", "@1,L1,p1,yard,4,400", "@2,L1,p1,yard,4,400", "@3,L1,p1,yard,4,400", "@0,L1,p2,yard,6,600",
            "@1,L1,p2,cold,6,600", "@2,L1,p2,cold,6,600", "@3,L1,p2,cold,6,600")
        .Answer("moves.csv", "@1,L1,yard,cold,6")
        .Summary(-19.64);

    /// <summary>
    /// Stood before, so into the room at once; sealed after week 1, opened in week 3, run out of it in weeks 3 and 4 (485 and 480 in), the last
    /// of the two weeks it has. Value -1.47 x 100 - 1.46 x 100 - 30 x 1.5 - 5 x 1.5 - 10 x 4 = -385.5.
    /// </summary>
    public static Folders SealedRoom() => Shed.Bare(weeks: 6).WithLot().WithPath("p1", "yard", 0, "room", "room", "room", "room", "room", "room")
        .Answer("moves.csv", "@0,L1,yard,room,10")
        .Answer("rooms.csv", "room,@1,@3")
        .Answer("runs.csv", "r1,@3,pack,fresh,lot,L1,p1,room,485,500,1.47,0,", "r2,@4,pack,fresh,lot,L1,p1,room,480,500,1.46,0,")
        .Answer("keeps.csv", "@0,L1,p1,room,10,1000", "@1,L1,p1,room,10,1000", "@2,L1,p1,room,10,1000", "@3,L1,p1,room,5,500")
        .Summary(-385.5);

    /// <summary>Sealed on a Wednesday two weeks before the season, opened and run in week 2: -2.46 x 100 - 2 x 10 x 1.5 = -276.</summary>
    public static Folders AlreadySealed() => Shed.Bare().WithLot(place: "room").WithPath("p1", "room", 0, "room", "room", "room", "room")
        .Season("rooms.csv", "room,2026-07-22")
        .Answer("rooms.csv", "room,@-2,@2")
        .Answer("runs.csv", "r1,@2,pack,fresh,lot,L1,p1,room,980,1000,2.46,0,")
        .Answer("keeps.csv", "@0,L1,p1,room,10,1000", "@1,L1,p1,room,10,1000")
        .Summary(-276);

    /// <summary>12 of M wanted, larger is fine: 7 of M and 5 of L. Value 12 x 30 - 291 = 69.</summary>
    public static Folders LargerOk() => FreshMade()
        .Season("orders.csv", "o1,1,Buyer,M-30,,@1,12,30,,,,yes,")
        .Answer("fills.csv", "o1,1,@1,M-30,7", "o1,1,@1,L-30,5")
        .Summary(69);

    /// <summary>An organic lot packed organic, shipped to a conventional order: 12 x 40 - 291 = 189.</summary>
    public static Folders OrganicTwin() => FreshMade(Shed.Bare().WithLot(organic: "yes"), "L-30-org")
        .Season("orders.csv", "o1,1,Buyer,L-30,,@1,12,40,,,,,")
        .Answer("fills.csv", "o1,1,@1,L-30-org,12")
        .Summary(189);

    /// <summary>
    /// Order o1 ships both lines together in week 1; order o2 not at all, one firm line of 5 short at 4, and one line that is not firm.
    /// Value 480 + 140 - 291 - 20 = 309.
    /// </summary>
    public static Folders WholeOrders() => FreshMade()
        .Season(
            "orders.csv", "o1,1,Buyer,L-30,,@1,12,40,,,4,,yes", "o1,2,Buyer,M-30,,@1,7,20,,,4,,", "o2,1,Buyer,L-30,,@2,5,40,yes,,4,,yes",
            "o2,2,Buyer,M-30,,@2,5,40,no,,4,,")
        .Answer("fills.csv", "o1,1,@1,L-30,12", "o1,2,@1,M-30,7")
        .Answer("shorts.csv", "o2,1,5,no size", "o2,2,5,no size")
        .Summary(309);

    /// <summary>
    /// By contract 2: a program of 10 to 11 L a week at the list's 44, delivered, in week 1 cheaper by 1.5 and with 3 more; freight 2.5. At the dock 40. 10 of
    /// the least and 2 of 4 more ship: -291 + 12 x 40 = 189. The week's order is named by its Monday.
    /// </summary>
    public static Folders ProgramWeek() => FreshMade().Settings(contract: 2)
        .Season("price-lists.csv", "fall,L-30,@0,@0,50", "fall,L-30,@1,,44")
        .Season("freight.csv", "port,,9", "port,L-30,2.5")
        .Season("programs.csv", "Buyer weekly,Buyer,L-30,@1,@1,10,11,,fall,port,,4,")
        .Season("promotions.csv", "fair,,L-30,@1,@2,1.5,3", "other,Nobody,L-30,@1,@2,7,9")
        .Answer("fills.csv", "Buyer weekly @1,1,@1,L-30,10", "Buyer weekly @1,2,@1,L-30,2")
        .Answer("shorts.csv", "Buyer weekly @1,2,2,")
        .Summary(189);

    /// <summary>Due in week 0, may ship from week -1, ships in week 1 at 1.5 a unit and week late: 480 - 18 - 291 = 171.</summary>
    public static Folders LateFill() => FreshMade()
        .Season("orders.csv", "o1,1,Buyer,L-30,@-1,@0,12,40,,1.5,4,,")
        .Answer("fills.csv", "o1,1,@1,L-30,12")
        .Summary(171);

    /// <summary>8.5 cartons stood on the first day, made the week before, good until week 0: 8 x 40 - 4 x 10 x 0.5 = 300.</summary>
    public static Folders Stock() => Shed.Bare().WithLot().InYard()
        .Season("stock.csv", "L-30,@-1,8.5,")
        .Season("orders.csv", "o1,1,Buyer,L-30,,@0,8,40,,,,,")
        .Answer("fills.csv", "o1,1,@0,L-30,8")
        .Answer("keeps.csv", "@0,L1,p1,yard,10,1000", "@1,L1,p1,yard,10,1000", "@2,L1,p1,yard,10,1000", "@3,L1,p1,yard,10,1000")
        .Summary(300);

    /// <summary>Two hours are left of week 1, the line's overtime stands; the people have just enough: -2 x 100 - 0.48 x 150 - 5 - 38 = -315.</summary>
    public static Folders Overtime() => FreshMade()
        .Season("line-weeks.csv", "pack,@1,2,", "cracker,@1,0,")
        .Season("people.csv", "@1,12.4")
        .Change("runs.csv", ",2.48,0,", ",2,0.48,")
        .Summary(-315);

    /// <summary>
    /// Two lots and two paths of one in a single run: one set-up per lot. 500 + 500 of L1 and 400 of L2, dug in week 1: 990 + 400 in, 1390/500 + 2 x 0.5
    /// = 3.78 hours. Value -378 - 5 = -383.
    /// </summary>
    public static Folders SetUps() => Shed.Bare().WithLot().WithLot("L2", harvested: "2026-08-12", bins: 4, net: 400).InYard()
        .WithPath("p2", "yard", 0, "yard", "yard", "yard", "yard")
        .WithPathOf("L2", "p3", "yard", 1, "yard", "yard", "yard")
        .Answer(
            "runs.csv", "r1,@1,pack,fresh,lot,L1,p1,yard,495,500,1.49,0,", "r1,@1,pack,fresh,lot,L1,p2,yard,495,500,0.99,0,",
            "r1,@1,pack,fresh,lot,L2,p3,yard,400,400,1.3,0,")
        .Answer("keeps.csv", "@0,L1,p1,yard,5,500", "@0,L1,p2,yard,5,500")
        .Summary(-383);

    /// <summary>
    /// The pack line wants 100 a run. 940 runs in week 1 (930.6 in, 2.3612 hours); the 60 left may run in week 2 (58.8 in, 0.6176 hours), for they
    /// finish the row. Value -297.88 - 5 - 0.3 = -303.18.
    /// </summary>
    public static Folders FinishingRun() => Shed.Bare().WithLot().InYard()
        .Answer("runs.csv", "r1,@1,pack,fresh,lot,L1,p1,yard,930.6,940,2.3612,0,", "r2,@2,pack,fresh,lot,L1,p1,yard,58.8,60,0.6176,0,")
        .Answer("keeps.csv", "@0,L1,p1,yard,10,1000", "@1,L1,p1,yard,0.6,60")
        .Summary(-303.18);

    /// <summary>
    /// The files describe Wednesday of week 1, so the path starts there and may move at once: into the cold. 8 cartons from stock go in week 1 for an order of
    /// week 0, one week late. The lot is on hold but may move, and be thrown out in week 3. Value 8 x 40 - 8 x 1.5 - 2 x 10 x 1 - 2 x 20 - 10 x 3 = 218.
    /// </summary>
    public static Folders AsOf() => Shed.Bare(asOf: "2026-08-12").WithLot(hold: "yes").WithPath("p1", "yard", 1, "cold", "cold", "cold")
        .Season("stock.csv", "L-30,@0,8,")
        .Season("orders.csv", "o1,1,Buyer,L-30,,2026-08-07,8,40,,1.5,,,")
        .Answer("fills.csv", "o1,1,@1,L-30,8")
        .Answer("moves.csv", "@1,L1,yard,cold,10")
        .Answer("as-is.csv", "discarded,@3,L1,p1,cold,980,1000")
        .Answer("keeps.csv", "@1,L1,p1,cold,10,1000", "@2,L1,p1,cold,10,1000")
        .Summary(218);

    public static IReadOnlyDictionary<string, (Func<Folders> Folders, double Value)> All { get; } =
        new Dictionary<string, (Func<Folders>, double)>
        {
            ["fresh run"] = (FreshRun, 329),
            ["sorted out, cracked two weeks later"] = (SortedToCracker, 542.4),
            ["lot cracked"] = (CrackLot, 715.1),
            ["seed run"] = (SeedRun, -806.4),
            ["as is and discarded"] = (AsIs, 149.98),
            ["move"] = (Move, -19.64),
            ["sealed room and its run-out"] = (SealedRoom, -385.5),
            ["room already sealed"] = (AlreadySealed, -276),
            ["larger class"] = (LargerOk, 69),
            ["organic twin"] = (OrganicTwin, 189),
            ["whole orders"] = (WholeOrders, 309),
            ["late fill"] = (LateFill, 171),
            ["a program's week"] = (ProgramWeek, 189),
            ["stock"] = (Stock, 300),
            ["overtime"] = (Overtime, -315),
            ["set-ups"] = (SetUps, -383),
            ["finishing run"] = (FinishingRun, -303.18),
            ["as of mid-season"] = (AsOf, 218),
            ["kilograms"] = (() => FreshMade(Shed.Bare(unit: "kg").WithLot()), -291),
        };
}
