using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Ledger;
using Cloveshed.Pictures.Promise;
using Cloveshed.Web.Plan;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Promises;

/// <summary>What one request sees of promises: the plan that is held to, its model, its strip.</summary>
public sealed class PromiseReading(ShedReading shed, PromiseRoom room, SightShelf sights)
{
    /// <summary>The adopted plan; where none is, the last that was made. Null: there is none, or a past day is looked at.</summary>
    public PlanEntry? Plan => shed.Viewer.AsOf is not null || shed.Season is null ? null : PlanOf(shed.State);

    /// <summary>Begun if nobody asked before; null without a plan.</summary>
    public PromiseStand? Stand() => Plan is not { } plan ? null : room.Of($"{StateKey(shed.State)} {shed.YardLog.LastSeq}", () => Basis(plan));

    /// <summary>
    /// The plan's strip with the next unit's price by the model as it stands. Null where the model is not ready, or where the season's weeks are no longer the plan's.
    /// </summary>
    public PromiseFacts? Strip(PromiseStand stand)
    {
        PlanSight sight = sights.Of(stand.Basis.Plan);
        if (stand.Stage != StandStage.Ready || (sight.Season.Settings.FirstWeek, sight.Season.Settings.Weeks) != (stand.Basis.Season.Settings.FirstWeek, stand.Basis.Season.Settings.Weeks))
        {
            return null;
        }

        Dictionary<(Core.ProductId, int), double> prices = stand.Prices.ToDictionary(price => (price.Product, price.Week), price => price.AtLeast);
        return sight.Promise with
        {
            Rows = [.. sight.Promise.Rows.Select(row => row with
            {
                Weeks = [.. row.Weeks.Select(week => week with { NextPrice = prices.TryGetValue((row.Product, week.Week), out double price) ? price : null })],
            })],
        };
    }

    /// <summary>The plan, and all of the season that a model is made of but what was seen of lots: looks change little, and come one after the other.</summary>
    internal static string StateKey(ShedState state) => $"{PlanOf(state)?.Fact} {state.KnowledgeDigest} {string.Join(',', state.Holds.Select(hold => hold.Fact))};";

    private static PlanEntry? PlanOf(ShedState state) => state.Adopted ?? (state.Plans.Count > 0 ? state.Plans[^1] : null);

    private StandBasis Basis(PlanEntry plan)
    {
        // A room that is no longer in the season has no weeks to hold.
        HashSet<Core.PlaceId> places = [.. shed.SeasonOpen.Places.Select(place => place.Id)];
        RoomRow[] rooms = [.. shed.PlanOf(plan).Rooms.Where(room => places.Contains(room.Place))];
        return new StandBasis(
            $"{StateKey(shed.State)} {shed.YardLog.LastSeq}", plan, shed.SeasonOpen, Beliefs.Default with { Clocks = shed.Clocks.Clocks }, HoldWishes.Of(shed.State.Holds, shed.SeasonOpen.Settings), rooms);
    }
}
