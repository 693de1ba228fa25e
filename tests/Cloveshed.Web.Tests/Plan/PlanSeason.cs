using System.Text;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>
/// A season of three weeks that a person can plan: two lots of 1,000 lb of fit medium bulbs, of which a packing line that keeps 0.9 makes
/// 30 cartons of 30 lb each, at 1,000 lb and $10 an hour. Ordered are 30 cartons for the first week and 40 for the last, at $20 and $2 for
/// each that is short; cartons keep. Every carton made in the first week can be sold, and bulbs lose weight by waiting, so the best plan
/// packs both lots at once: 60 x 20 - 10 x 2 - 2 x 10 = 1,160, with ten cartons of the second order short.
/// </summary>
internal static class PlanSeason
{
    public const double Worth = 1160;

    public static readonly Dictionary<string, string> Files = new()
    {
        ["season.json"] = """{"contract": 1, "name": "Small shed", "first_week": "2026-08-31", "weeks": 3, "mass_unit": "lb", "currency": "USD"}""" + "\n",
        ["sizes.csv"] = "class,min_mm\nM,10\n",
        ["varieties.csv"] = "variety,mass_a,mass_b,mass_s,keeps\nplain,-7,2.8,0.02,long\n",
        ["places.csv"] = "place,kind,capacity_bins,temp_c,rh\nyard,open,100,15,60\n",
        ["lots.csv"] = "lot,place,variety,field,harvested,bins,net,fresh_share,crack_share,mean_g,cv\nA,yard,plain,north,2026-08-20,10,1000,1,0,50,0.02\nB,yard,plain,south,2026-08-20,10,1000,1,0,50,0.02\n",
        ["yields.csv"] = "mode,kept_share\nfresh,0.9\n",
        ["lines.csv"] = "line,mode,rate_per_hour,hours_per_week,cost_per_hour\npack,fresh,1000,40,10\n",
        ["products.csv"] = "product,form,from,net,unit_cost,shelf_weeks\nM30,bulb,M,30,0,4\n",
        ["orders.csv"] = "order,line,customer,product,due,units,price,short_cost\nfirst,1,Brask Foods,M30,2026-09-03,30,20,2\nlast,1,Tollen Market,M30,2026-09-17,40,20,2\n",
    };

    /// <summary>Makes it the season of a ledger.</summary>
    public static void Import(ShedLedger ledger) => Import(ledger, Files);

    /// <summary>Makes these files the season of a ledger.</summary>
    public static void Import(ShedLedger ledger, IReadOnlyDictionary<string, string> files)
    {
        ImportResult taken = SeasonImport.Import(
            ledger, files.ToDictionary(file => file.Key, file => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(file.Value)), Origin);
        Assert.True(taken.Taken, string.Join('\n', taken.Faults));
    }

    public static FactOrigin Origin => new(new DateTimeOffset(2026, 9, 2, 9, 0, 0, TimeSpan.FromHours(-4.5)), "test", "test", "plan");

    /// <summary>Asks for a plan of the ledger as it is; the id of the job.</summary>
    public static Guid Ask(ShedLedger ledger, string name = "Trial", double seconds = 30)
    {
        NewFact asked = Origin.PlanAsked(name, seconds, 0.0001, null, "en", ledger.Head().Seq);
        Assert.IsType<Appended.Accepted>(ledger.Append([asked]));
        return asked.Id;
    }

    /// <summary>Waits for a job to end, and gives the plan that came of it.</summary>
    public static async Task<PlanEntry> Made(ShedLedger ledger, Guid job)
    {
        ShedState state = await Ended(ledger, job);
        return state.Plans.FirstOrDefault(plan => plan.Asked == job)
            ?? throw new InvalidOperationException("No plan: " + string.Join('\n', state.Ended.Where(end => end.Asked == job).Select(end => end.Stopped ? "stopped" : end.Why)));
    }

    /// <summary>Waits for a job to end.</summary>
    public static async Task<ShedState> Ended(ShedLedger ledger, Guid job) => await When(ledger, state => state.Jobs.All(one => one.Fact != job));

    /// <summary>Waits until the shed is so; a minute is far more than anything here takes.</summary>
    public static async Task<ShedState> When(ShedLedger ledger, Func<ShedState, bool> so)
    {
        for (int tries = 0; tries < 1200; tries++)
        {
            if (ledger.Now() is var state && so(state))
            {
                return state;
            }

            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        throw new TimeoutException("The shed did not come to be so within a minute.");
    }
}
