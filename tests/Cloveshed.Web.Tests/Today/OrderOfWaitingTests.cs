using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Today;
using CsCheck;

namespace Cloveshed.Web.Tests.Today;

/// <summary>What holds of the order of decisions, whatever they are.</summary>
public sealed class OrderOfWaitingTests
{
    private static readonly Gen<CostPart> Part = Gen.Select(Gen.Int[0, 8], Gen.Double[0, 1e5], Gen.Double[-2, 20], Gen.Double[0, 1],
        (loss, amount, rate, share) => new CostPart((Loss)loss, "x", amount, rate, share));

    private static readonly Gen<Decision[]> Decisions = Gen.Select(Part.Array[0, 4], Part.Array[0, 3], Gen.Int[0, 5], (parts, stakes, until) => (parts, stakes, until)).Array[0, 12]
        .Select(all => all.Select((one, at) => (Decision)new MoveDecision(new PlaceId($"from {at}"), new PlaceId("to"), 1, [], one.parts, one.until) { Stakes = one.stakes }).ToArray());

    [Fact]
    public void Dearer_to_put_off_goes_first_and_then_what_has_more_at_stake() => Decisions.Sample(all =>
    {
        IReadOnlyList<Decision> order = DecisionList.InOrder(all);
        return order.Count == all.Length && order.Zip(order.Skip(1)).All(pair =>
            pair.First.CostOfWaiting > pair.Second.CostOfWaiting
            || (pair.First.CostOfWaiting == pair.Second.CostOfWaiting && (pair.First.AtStake > pair.Second.AtStake || (pair.First.AtStake == pair.Second.AtStake && pair.First.Until <= pair.Second.Until))));
    });

    [Fact]
    public void The_order_does_not_depend_on_how_they_came() => Gen.Select(Decisions, Gen.Int[0, 1000]).Sample((all, seed) =>
    {
        Decision[] other = [.. all];
        new Random(seed).Shuffle(other);
        return DecisionList.InOrder(all).SequenceEqual(DecisionList.InOrder(other));
    });

    [Fact]
    public void One_more_decision_leaves_the_others_in_their_order() => Decisions.Sample(all =>
        all.Length == 0 || DecisionList.InOrder(all).Where(one => one != all[0]).SequenceEqual(DecisionList.InOrder(all.Skip(1))));

    [Fact]
    public void Another_currency_leaves_the_order_as_it_is() => Decisions.Sample(all =>
    {
        // A power of two, so that no product is rounded otherwise.
        Decision[] dear = [.. all.OfType<MoveDecision>().Select(one => new MoveDecision(one.From, one.To, 1, [], Dearer(one.Parts), one.Until!.Value) { Stakes = Dearer(one.Stakes) })];
        return DecisionList.InOrder(all).Select(one => one.Key).SequenceEqual(DecisionList.InOrder(dear).Select(one => one.Key));

        static CostPart[] Dearer(IReadOnlyList<CostPart> parts) => [.. parts.Select(part => part with { Rate = part.Rate * 4 })];
    });

    [Fact]
    public void A_run_in_two_parts_costs_what_it_costs_in_one() => Gen.Double[1, 19_999].Sample(first =>
    {
        double whole = DecisionList.Of(HandDay.Book, 2, _ => false).Runs.Sum(run => run.CostOfWaiting);
        double parted = DecisionList.Of(new PlanBook(HandDay.Season, HandDay.Answer(first, (20_000 - first, "R1"))), 2, _ => false).Runs.Sum(run => run.CostOfWaiting);
        return Math.Abs(whole - parted) < 1e-6;
    });

    [Fact]
    public void More_of_a_run_or_a_dearer_delay_never_costs_less() => Gen.Select(Gen.Double[1, 50_000], Gen.Double[0, 3000], Gen.Int[0, 9], Gen.Int[0, 9]).Sample((mass, more, late, later) =>
        Cost(mass, late) <= Cost(mass + more, late) + 1e-9 && Cost(mass, late) <= Cost(mass, late + later) + 1e-9);

    [Fact]
    public void Worse_air_never_gains_and_never_takes_more_than_all() => Gen.Select(Gen.Double[0, 2.5], Gen.Double[0, 0.3], Gen.Double[0, 0.2]).Sample((then, life, loss) =>
    {
        double lost = Waiting.LostLater(then, life, loss);
        return lost >= loss - 1e-12 && lost <= 1 && lost <= Waiting.LostLater(then, life + 0.01, loss) + 1e-12;
    });

    [Fact]
    public void The_same_air_loses_nothing_and_better_air_gains() => Gen.Double[0.01, 2.5].Sample(then => Waiting.LostLater(then, 0, 0) == 0 && Waiting.LostLater(then, -0.005, -0.001) < 0);

    private static double Cost(double mass, int late)
    {
        Season season = HandDay.Season with { Orders = [.. HandDay.Season.Orders.Select(line => line with { LateCost = late })] };
        return DecisionList.Of(new PlanBook(season, HandDay.Answer(mass)), 2, _ => false).Runs.Sum(run => run.CostOfWaiting);
    }
}
