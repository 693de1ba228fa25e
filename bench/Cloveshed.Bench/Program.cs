using Cloveshed.Bench;

// Benches are run by hand, on a quiet machine: dotnet run -c Release --project bench/Cloveshed.Bench -- backends [SEASON] [ROUNDS] [REPEATS]
switch (args)
{
    case ["backends", ..]:
        Backends.Run(args.ElementAtOrDefault(1) ?? "data/demo-season", Number(2, 10), Number(3, 3));
        return 0;
    case ["keeping", ..]:
        KeepingSpeed.Run(Number(1, 2000), Number(2, 60), Number(3, 60), Number(4, 3));
        return 0;
    case ["sizes", ..]:
        Sizing.Run(Number(1, 5));
        return 0;
    case ["cuts", ..]:
        CutBench.Run("data/demo-season", "data/demo-truth/lots.csv", Number(1, 5));
        return 0;
    case ["strength", ..]:
        Strength.Run(args.ElementAtOrDefault(1) ?? "data/demo-season", Number(2, 1), 1e-4);
        return 0;
    case ["suppose", var season, var plan, ..]:
        SupposeSpeed.Run(season, plan, Number(3, 30));
        return 0;
    case ["shift", var season, var plan, ..]:
        WeekOrder.Run(season, plan, Number(3, 10), Number(4, 1));
        return 0;
    case ["season", var season, var into, ..]:
        MadeUpSeason.Write(season, Number(3, 400), Number(4, 900), into);
        return 0;
    case ["scenarios", var season, var plan, ..]:
        ScenarioSpeed.Run(season, plan, Number(3, 200), Number(4, 2), Number(5, 0), Number(6, 20), Number(7, 4));
        return 0;
    case ["pages", var season, var plan, ..]:
        await Pages.Run(season, plan, Number(3, 200), Number(4, 10));
        return 0;
    case ["referee", "why", var kind, ..]:
        Referee.Why(kind, Number(3, 6), Number(4, 10), (ulong)Number(5, 1), Number(6, 600));
        return 0;
    case ["referee", "one", var kind, ..]:
        Referee.One(kind, Number(3, 6), Number(4, 10), (ulong)Number(5, 1), Number(6, 600), Number(7, 2000));
        return 0;
    case ["referee", ..]:
        Referee.All(Number(1, 600));
        return 0;
    default:
        Console.Error.WriteLine("backends [SEASON] [ROUNDS] [REPEATS]   the planner's master program given to every solver at hand");
        Console.Error.WriteLine("keeping [LOTS] [PATHS] [WEEKS] [REPEATS]   weight and soundness of every lot along every path, week by week");
        Console.Error.WriteLine("sizes [REPEATS]                         a sizer's file of ten million bulbs");
        Console.Error.WriteLine("cuts [REPEATS]                          the search for cuts, and what they earn on the demo's lots");
        Console.Error.WriteLine("strength [SEASON] [TIMES]               the linear model over all room weeks, round by round, with TIMES times the lots and orders");
        Console.Error.WriteLine("suppose SEASON PLAN [COUNT]             so many changes put to a standing plan, one after another, each with its bound");
        Console.Error.WriteLine("shift SEASON PLAN [SECONDS] [THREADS]   every week of a plan in order on its lines, beside the greedy sequence");
        Console.Error.WriteLine("season SEASON OUT [LOTS] [ORDERS]       a made-up season of so many lots and orders out of a smaller one");
        Console.Error.WriteLine("scenarios SEASON PLAN [COUNT] [THREADS] [SAMPLE] [SECONDS] [EVERY]   seasons drawn and replayed, and on a sixth of it what that loses against planning anew and hindsight");
        Console.Error.WriteLine("pages SEASON PLAN [REQUESTS] [TIMES]   server time and bytes of every page, of a season with its plan and at TIMES times both");
        Console.Error.WriteLine("referee [SECONDS]                       plans beside the same seasons written as one program, at several sizes; so many seconds for each program");
        Console.Error.WriteLine("referee one KIND LOTS WEEKS SEED [SECONDS] [NODES]   one season of them: tight, rooms (tight, with a room that can be sealed) or demo; so many nodes for the planner's polish");
        Console.Error.WriteLine("referee why KIND LOTS WEEKS SEED [SECONDS]   the same season with one thing at a time made easy");
        return 2;
}

int Number(int at, int otherwise) => args.Length > at ? int.Parse(args[at], System.Globalization.CultureInfo.InvariantCulture) : otherwise;
