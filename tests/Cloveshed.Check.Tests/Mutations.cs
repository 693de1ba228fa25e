namespace Cloveshed.Check.Tests;

/// <summary>Honest answers with one thing made wrong, and the rule that must say so.</summary>
internal static class Mutations
{
    public static IReadOnlyDictionary<string, (string Rule, Func<Folders> Folders)> All { get; } =
        new Dictionary<string, (string, Func<Folders>)>
        {
            // The files.
            ["a season without its lots"] = ("season", () => Scenarios.FreshRun().SeasonWithText("lots.csv", "lot\nL1\n")),
            ["a season that starts on a Tuesday"] = ("season", () => Scenarios.FreshRun().ChangeSeason("season.json", "@0", "2026-08-04")),
            ["two rows of the season with one key"] = ("season", () => Scenarios.FreshRun().Season("products.csv", "L-30,bulb,L,30,2,1,")),
            ["a quote that never closes"] = ("file-form", () => Scenarios.FreshRun().Answer("worths.csv", "product,\"L-30,@1,2")),
            ["a cell too many"] = ("file-form", () => Scenarios.FreshRun().Change("sales.csv", "M-30,7", "M-30,7,")),
            ["a summary that is no object"] = ("file-form", () => Scenarios.FreshRun().WithText("summary.json", "[329]")),
            ["a summary that is no JSON"] = ("file-form", () => Scenarios.FreshRun().Summary("NaN", "329", "0", "0")),
            ["a column left out"] = ("column-missing", () => Scenarios.FreshRun().WithText("shorts.csv", "order,line,units\n")),
            ["a negative mass"] = ("number", () => Scenarios.AsIs().Change("as-is.csv", "99,100", "-99,-100")),
            ["an endless number"] = ("number", () => Scenarios.FreshRun().Change("runs.csv", "990,1000", "1e999,1000")),
            ["an endless number by name"] = ("number", () => Scenarios.FreshRun().Change("runs.csv", "990,1000", "Infinity,1000")),
            ["no number"] = ("number", () => Scenarios.FreshRun().Change("runs.csv", "990,1000", "NaN,1000")),
            ["a word for a number"] = ("number", () => Scenarios.FreshRun().Change("made.csv", "12,360", "a dozen,360")),
            ["an empty number"] = ("number", () => Scenarios.FreshRun().Change("made.csv", "12,360", ",360")),
            ["unit fractions in a fill"] = ("whole-number", () => Scenarios.FreshRun().Change("fills.csv", "L-30,12", "L-30,11.5")),
            ["a week named by its Tuesday"] = ("week", () => Scenarios.FreshRun().Change("sales.csv", "@1", "2026-08-11")),
            ["a week after the season"] = ("week", () => Scenarios.FreshRun().Change("sales.csv", "@1", "@4")),
            ["a week in another order"] = ("week", () => Scenarios.FreshRun().Change("sales.csv", "@1", "10.8.2026")),
            ["a source of its own"] = ("word", () => Scenarios.FreshRun().Change("runs.csv", "fresh,lot,L1", "fresh,bought,L1")),
            ["a lot of its own"] = ("unknown-name", () => Scenarios.FreshRun().Change("made.csv", "L-30,L1", "L-30,L7")),
            ["an order of its own"] = ("unknown-name", () => Scenarios.FreshRun().Change("fills.csv", "o1,1", "o1,2")),
            ["a size class of its own"] = ("unknown-name", () => Scenarios.FreshRun().Change("shares.csv", "class,L,", "class,Jumbo,")),
            ["a row of keeps twice"] = ("row-twice", () => Scenarios.FreshRun().Answer("keeps.csv", "@0,L1,p1,yard,10,1000")),
            ["a run twice"] = ("row-twice", () => Scenarios.FreshRun().Answer("runs.csv", "r1,@1,pack,fresh,lot,L1,p1,yard,990,1000,2.48,0,")),
            ["a path's week twice"] = ("row-twice", () => Scenarios.FreshRun().Answer("paths.csv", "p1,L1,yard,@2,yard,0.98,0.78,0.15,0.04")),
            ["something made twice"] = ("row-twice", () => Scenarios.FreshRun().Answer("made.csv", "r1,@1,L-30,L1,12,360")),

            // Shares.
            ["shares that sum to more than the lot"] = ("shares-sum", () => Scenarios.FreshRun().Change("shares.csv", "class,L,0.5", "class,L,0.6")),
            ["something made of a lot without shares"] = ("shares-missing", () => Scenarios.FreshRun().WithText("shares.csv", "lot,kind,name,share\n")),

            // Paths.
            ["a path of a lot that is not there"] = ("path-row", () => Scenarios.FreshRun().Answer("paths.csv", "p9,L1,cold,@0,cold,1,0.8,0.15,0")),
            ["a path's row borrowed from another lot"] =
                ("path-row", () => Scenarios.SetUps().Change("paths.csv", "p1,L1,yard,@2", "p1,L2,yard,@2")),
            ["a path's row borrowed from another week"] =
                ("path-weeks", () => Scenarios.FreshRun().Drop("paths.csv", "p1,L1,yard,@2").Answer("paths.csv", "p1,L1,yard,@3,yard,0.98,0.78,0.15,0.04")),
            ["a path that begins before its row"] =
                ("path-weeks", () => Scenarios.AsOf().Answer("paths.csv", "p1,L1,yard,@0,yard,1,0.8,0.15,0")),
            ["a path that starts heavier"] = ("path-start", () => Scenarios.FreshRun().Change("paths.csv", "@0,yard,1.00", "@0,yard,1.05")),
            ["a path that starts sounder"] = ("path-start", () => Scenarios.FreshRun().Change("paths.csv", "1.00,0.80,0.15", "1.00,0.85,0.15")),
            ["a path that loses nothing"] = ("path-loss", () => Scenarios.FreshRun().Change("paths.csv", "@3,yard,0.97", "@3,yard,0.98")),
            ["a path that loses less than 0.05%"] = ("path-loss", () => Scenarios.FreshRun().Change("paths.csv", "@3,yard,0.97", "@3,yard,0.97955")),
            ["a path that gains grade"] = ("path-shares", () => Scenarios.FreshRun().Change("paths.csv", "0.97,0.77,0.15", "0.97,0.79,0.15")),
            ["a path whose crack share rises"] = ("path-shares", () => Scenarios.FreshRun().Change("paths.csv", "0.97,0.77,0.15", "0.97,0.77,0.16")),
            ["a path that grows younger"] = ("path-life", () => Scenarios.FreshRun().Change("paths.csv", "0.97,0.77,0.15,0.06", "0.97,0.77,0.15,0.03")),
            ["a move in the week of digging"] =
                ("path-move", () => Scenarios.Move().Change("paths.csv", "p2,L1,yard,@0,yard", "p2,L1,yard,@0,cold")),
            ["a run of another lot's path"] = ("path-use", () => Scenarios.SetUps().Change("runs.csv", "L1,p2,yard", "L1,p3,yard")),
            ["a run before the path begins"] = ("path-use", () => Scenarios.SetUps()
                .Change("runs.csv", "r1,@1,pack,fresh,lot,L2,p3", "r2,@0,pack,fresh,lot,L2,p3")),
            ["a run from another place"] = ("place-use", () => Scenarios.FreshRun().Change("runs.csv", "p1,yard", "p1,cold")),
            ["kept in another place"] = ("place-use", () => Scenarios.FreshRun().Change("keeps.csv", "p1,yard", "p1,cold")),

            // Pounds, bins, places.
            ["half a lot run and the rest nowhere"] = ("lot-balance", () => Scenarios.FreshRun()
                .Change("runs.csv", "990,1000", "495,500").Change("keeps.csv", "10,1000", "5,500")),
            ["pounds sold twice"] = ("lot-balance", () => Scenarios.AsIs().Change("as-is.csv", "99,100", "198,200")),
            ["a lot that is forgotten"] = ("lot-balance", () => Scenarios.FreshRun().Season("lots.csv", "L8,yard,Ridge,F9,@0,1,10,0.8,0.15,,,,,,,")),
            ["shrink left out"] = ("mass-weighed", () => Scenarios.FreshRun().Change("runs.csv", "990,1000", "1000,1000")),
            ["shrink left out of a sale as is"] = ("mass-weighed", () => Scenarios.AsIs().Change("as-is.csv", "396,400", "400,400")),
            ["sorted-out bulbs that take from the lot again"] =
                ("mass-weighed", () => Scenarios.SortedToCracker().Change("runs.csv", "300,0,1.45", "300,300,1.45")),
            ["a bin in no place"] = ("keeps", () => Scenarios.FreshRun().Drop("keeps.csv", "@0,L1,p1")),
            ["a bin in no place for a week in the middle"] = ("keeps", () => Scenarios.AsIs().Drop("keeps.csv", "@2,L1,p1")),
            ["pounds that still stand after they were run"] = ("keeps", () => Scenarios.FreshRun().Answer("keeps.csv", "@1,L1,p1,yard,10,1000")),
            ["fewer bins than the pounds stand in"] = ("keeps-bins", () => Scenarios.FreshRun().Change("keeps.csv", "10,1000", "9,1000")),
            ["a move that no path makes"] = ("moves", () => Scenarios.Move().Answer("moves.csv", "@2,L1,yard,cold,1")),
            ["a move left out"] = ("moves", () => Scenarios.Move().Drop("moves.csv", "@1,L1")),
            ["a move a week off"] = ("moves", () => Scenarios.Move().Change("moves.csv", "@1", "@2")),
            ["capacity over"] = ("capacity", () => Scenarios.Move().ChangeSeason("places.csv", "cold,cold,50", "cold,cold,5.9")),
            ["a cold room sealed"] = ("room-kind", () => Scenarios.Move().Answer("rooms.csv", "cold,@1,@2")),
            ["a room opened before it is sealed"] = ("room-weeks", () => Scenarios.SealedRoom().Change("rooms.csv", "@1,@3", "@3,@3")),
            ["a room sealed twice"] = ("row-twice", () => Scenarios.SealedRoom().Answer("rooms.csv", "room,@4,@5")),
            ["a sealed room sealed again"] = ("room-already-sealed", () => Scenarios.AlreadySealed().Change("rooms.csv", "@-2", "@0")),
            ["a room loaded after sealing"] = ("room-in", () => Scenarios.SealedRoom().Change("rooms.csv", "@1,@3", "@-1,@3")),
            ["a lot dug into a sealed room"] = ("room-in", () => Scenarios.AlreadySealed().Season("lots.csv", "L2,room,Ridge,F2,2026-08-05,1,10,0.8,0.15,,,,,,,")
                .WithPathOf("L2", "p9", "room", 0, "room", "room", "room", "room")
                .Answer("keeps.csv", "@0,L2,p9,room,1,10", "@1,L2,p9,room,1,10", "@2,L2,p9,room,1,10", "@3,L2,p9,room,1,10")),
            ["a sealed room touched"] = ("room-out", () => Scenarios.SealedRoom().Change("rooms.csv", "@1,@3", "@1,@4")),
            ["a sealed room touched though it is never opened"] = ("room-out", () => Scenarios.AlreadySealed().Drop("rooms.csv", "room")),
            ["a lot moved out of a sealed room"] = ("room-out", () => Scenarios.AlreadySealed().Change("paths.csv", "@1,room", "@1,cold")),
            ["a room that stands too long after opening"] = ("room-run-out", () => Scenarios.SealedRoom().Change("rooms.csv", "@1,@3", "@1,@2")),

            // Runs.
            ["one run on two lines"] = ("run-rows", () => Scenarios.SortedToCracker().Change("runs.csv", "r2,@3", "r1,@3")),
            ["a fresh run on the cracker"] = ("run-mode", () => Scenarios.FreshRun().Change("runs.csv", "pack,fresh", "cracker,fresh")),
            ["sorted-out bulbs packed"] = ("run-mode", () => Scenarios.SortedToCracker().Change("runs.csv", "cracker,crack", "pack,fresh")),
            ["a lot on hold run"] = ("run-hold", () => Scenarios.FreshRun().ChangeSeason("lots.csv", ",,,,,,,", ",,,,,,,yes")),
            ["ready ignored"] = ("run-ready", () => Scenarios.FreshRun().ChangeSeason("lots.csv", ",,,,,,,", ",,,,,,2026-08-17,")),
            ["set-up left out"] = ("hours-short", () => Scenarios.FreshRun().Change("runs.csv", ",2.48,", ",1.98,")),
            ["one set-up for two lots"] = ("hours-short", () => Scenarios.SetUps().Change("runs.csv", ",1.3,", ",0.8,")),
            ["no set-up for sorted-out bulbs"] = ("hours-short", () => Scenarios.SortedToCracker().Change("runs.csv", ",1.45,", ",1.2,")),
            ["hours over"] = ("hours-over", () => Scenarios.Overtime().Change("runs.csv", ",2,0.48,", ",2.48,0,")),
            ["overtime on an idle week"] = ("overtime-over", () => Scenarios.Overtime().ChangeSeason("line-weeks.csv", "pack,@1,2,", "pack,@1,0,")),
            ["people over"] = ("people-over", () => Scenarios.Overtime().ChangeSeason("people.csv", "12.4", "12.3")),
            ["minimum run broken"] = ("min-run", () => Scenarios.FinishingRun()
                .Change("runs.csv", "58.8,60,", "49,50,").Answer("keeps.csv", "@2,L1,p1,yard,0.1,10", "@3,L1,p1,yard,0.1,10")),

            // What comes out.
            ["made in no run"] = ("made-run", () => Scenarios.FreshRun().Change("made.csv", "r1,@1,M-30", "r9,@1,M-30")),
            ["made in another week"] = ("made-run", () => Scenarios.FreshRun().Change("made.csv", "r1,@1,M-30", "r1,@0,M-30")),
            ["clove stock from a fresh line"] = ("made-form", () => Scenarios.FreshRun().Answer("made.csv", "r1,@1,C-5,L1,2,10")),
            ["bulbs from the cracker"] = ("made-form", () => Scenarios.CrackLot().Answer("made.csv", "r1,@0,L-30,L1,2,60")),
            ["cloves from the seed line"] = ("made-form", () => Scenarios.SeedRun().Answer("made.csv", "r1,@2,C-5,L1,2,10")),
            ["light cartons"] = ("made-mass", () => Scenarios.FreshRun().Change("made.csv", "12,360", "13,360")),
            ["a size packed that the lot does not hold"] =
                ("made-size", () => Scenarios.FreshRun().Answer("made.csv", "r1,@1,XL-30,L1,1,30")),
            ["more of a size than there is"] = ("made-size", () => Scenarios.FreshRun().Change("made.csv", "12,360", "12.5,375")),
            ["a size over in two products"] = ("made-size", () => Scenarios.FreshRun().Answer("made.csv", "r1,@1,M-10,L1,2,20")),
            ["waste made food"] = ("made-grade", () => Scenarios.CrackLot().Change("made.csv", "96.9,484.5", "102,510")),
            ["more cloves than sorted-out bulbs give"] = ("made-grade", () => Scenarios.SortedToCracker().Change("made.csv", "30.6,153", "31,155")),
            ["organic from conventional"] = ("organic", () => Scenarios.OrganicTwin().ChangeSeason("lots.csv", "yes", "no")),
            ["sorted out of no fresh run"] = ("sorted-run", () => Scenarios.CrackLot().Answer("sorted.csv", "r1,L1,@0,10")),
            ["waste sorted out"] = ("sorted-amount", () => Scenarios.FreshRun().Change("sorted.csv", ",320", ",370")),
            ["sorted-out bulbs used three weeks later"] = ("sorted-time", () => Scenarios.SortedToCracker()
                .Settings(weeks: 5).Answer("paths.csv", "p1,L1,yard,@5,yard,0.95,0.75,0.15,0.1")
                .Change("runs.csv", "r2,@3", "r2,@4").Change("made.csv", "r2,@3", "r2,@4").ChangeSeason("orders.csv", "C-5,,@3", "C-5,,@4")
                .Change("fills.csv", "o2,1,@3", "o2,1,@4")),
            ["more sorted-out bulbs cracked than there are"] = ("sorted-time", () => Scenarios.SortedToCracker().Change("sorted.csv", ",320", ",299")),
            ["seed from no seed run"] = ("seed-run", () => Scenarios.SeedRun().Change("seed.csv", "r1,@2", "r7,@2")),
            ["seed for no need"] = ("seed-need", () => Scenarios.SeedRun().Change("seed.csv", "A,B,2026-08-20", "A,C,2026-08-20")),
            ["seed of another variety"] = ("seed-need", () => Scenarios.SeedRun().Change("seed.csv", "Ridge", "Bench").ChangeSeason("seed-needs.csv", "Ridge", "Bench")),
            ["seed not as good as needed"] = ("seed-class", () => Scenarios.SeedRun()
                .ChangeSeason("lots.csv", ",A,", ",C,").Change("seed.csv", ",A,B,", ",C,B,")),
            ["seed called better than it is"] = ("seed-class", () => Scenarios.SeedRun().ChangeSeason("lots.csv", ",A,", ",B,")),
            ["seed with inhibitor"] = ("seed-inhibitor", () => Scenarios.SeedRun().ChangeSeason("lots.csv", ",,,A,", ",,yes,A,")),
            ["seed after its day"] = ("seed-late", () => Scenarios.SeedRun()
                .ChangeSeason("seed-needs.csv", "2026-08-20", "2026-08-16").Change("seed.csv", "2026-08-20", "2026-08-16")),
            ["more seed than the run gives"] = ("seed-amount", () => Scenarios.SeedRun().Change("seed.csv", "611.52", "690")),

            // Stock, orders, market, as is.
            ["more shipped than made"] = ("stock", () => Scenarios.FreshRun().Change("made.csv", "12,360", "11.5,345")),
            ["more shipped from stock than stood there"] = ("stock", () => Scenarios.Stock().ChangeSeason("stock.csv", "8.5", "7.9")),
            ["shipped before it is made"] = ("stock", () => Scenarios.LateFill().Change("fills.csv", "@1", "@0")),
            ["shelf life over"] = ("shelf-life", () => Scenarios.Stock().Change("fills.csv", "@0", "@1")),
            ["shelf life over for what was made"] = ("shelf-life", () => Scenarios.LateFill().Change("fills.csv", "@1", "@3")),
            ["an order shipped early"] = ("fill-early", () => Scenarios.FreshRun().ChangeSeason("orders.csv", "L-30,,@1", "L-30,@2,@2")),
            ["an order with no ship_from shipped before its due week"] =
                ("fill-early", () => Scenarios.FreshRun().ChangeSeason("orders.csv", "L-30,,@1", "L-30,,@2")),
            ["an order shipped before the files describe"] = ("fill-early", () => Scenarios.AsOf().Change("fills.csv", "@1", "@0")),
            ["a program's week shipped in the next"] = ("fill-late", () => Scenarios.ProgramWeek().Change("fills.csv", "Buyer weekly @1,1,@1", "Buyer weekly @1,1,@2")),
            ["a smaller size shipped"] = ("fill-product", () => Scenarios.LargerOk().ChangeSeason("orders.csv", "M-30", "L-30")),
            ["a larger size shipped without leave"] = ("fill-product", () => Scenarios.LargerOk().ChangeSeason("orders.csv", ",yes,", ",,")),
            ["two sizes larger shipped"] = ("fill-product", () => Scenarios.LargerOk().ChangeSeason("sizes.csv", "M,40,55", "M,40,50\nML,50,55")),
            ["another net shipped"] = ("fill-product", () => Scenarios.FreshRun().ChangeSeason("orders.csv", "L-30", "M-10")),
            ["conventional shipped to an organic order"] = ("fill-product", () => Scenarios.FreshRun().ChangeSeason("orders.csv", "L-30", "L-30-org")),
            ["more shipped than ordered"] = ("fill-over", () => Scenarios.FreshRun().ChangeSeason("orders.csv", "@1,12,", "@1,11,")),
            ["a whole order split between weeks"] = ("order-whole", () => Scenarios.WholeOrders().Change("fills.csv", "o1,2,@1", "o1,2,@2")),
            ["a whole order in part"] = ("order-whole", () => Scenarios.WholeOrders()
                .Change("fills.csv", "M-30,7", "M-30,6").Answer("shorts.csv", "o1,2,1,")),
            ["one line of a whole order left"] = ("order-whole", () => Scenarios.WholeOrders().Drop("fills.csv", "o1,2").Answer("shorts.csv", "o1,2,7,")),
            ["a short hidden"] = ("shorts", () => Scenarios.WholeOrders().Drop("shorts.csv", "o2,1")),
            ["a short made small"] = ("shorts", () => Scenarios.WholeOrders().Change("shorts.csv", "o2,1,5", "o2,1,4")),
            ["a short of what is filled"] = ("shorts", () => Scenarios.WholeOrders().Answer("shorts.csv", "o1,1,1,")),
            ["more sold than the market is counted on for"] = ("market", () => Scenarios.FreshRun().ChangeSeason("market.csv", "9.5", "6.5")),
            ["sold where there is no market"] = ("market", () => Scenarios.FreshRun().ChangeSeason("market.csv", "M-30", "L-30")),
            ["sold as is without a price"] = ("as-is-price", () => Scenarios.AsIs().ChangeSeason("sell-as-is.csv", ",0.3", "Bench,0.3")),
            ["as is over its limit"] = ("as-is-limit", () => Scenarios.AsIs().ChangeSeason("sell-as-is.csv", "500", "395")),
            ["a lot on hold sold as is"] = ("as-is-hold", () => Scenarios.AsIs().ChangeSeason("lots.csv", ",,,,,,,", ",,,,,,,yes")),

            // The summary.
            ["a value two dollars off"] = ("value", () => Scenarios.FreshRun().Summary(331)),
            ["a value two dollars off the other way"] = ("value", () => Scenarios.FreshRun().Summary(327)),
            ["a bound below the value"] = ("bound", () => Scenarios.FreshRun().Summary("329", "327", "-0.006079027355623101", "0")),
            ["a gap made small"] = ("gap", () => Scenarios.FreshRun().Summary("329", "332.29", "0.001", "0.005")),
            ["a summary without a key"] = ("summary", () => Scenarios.FreshRun().WithText("summary.json", """{"value": 329, "bound": 329, "gap": 0}""")),
            ["a value as text"] = ("summary", () => Scenarios.FreshRun().Summary("\"329\"", "329", "0", "0")),
        };
}
