using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>What is asked of the direct model. Rooms null: their weeks are chosen too. Mixed: set-ups, least runs, whole units and whole orders as they are.</summary>
internal sealed record DirectQuestion(PlanningInstance Instance, RoomChoice? Rooms, bool Mixed, int? MovesAtMost = null);

/// <summary>
/// The season as one program, written from the contract and not from the planner: a column for every row, every sequence of
/// places and every way out of it. It sees what the planner's parts can only reason about, and so it is for small seasons.
/// Where the contract leaves a doubt it is generous, so that its best is never below that of any plan: a room may be sealed as
/// it stands before the first week, and a run counts as finishing a row that it takes next to nothing of.
/// Without Mixed, a set-up is paid in the proportion of what is run to the most that could be, and a place's weekly cost in that
/// of what stands to what it holds; least runs ask nothing.
/// </summary>
internal sealed partial class DirectModel
{
    private readonly DirectQuestion _question;
    private readonly PlanningInstance _instance;
    private readonly bool _mixed;
    private readonly RoomPlan[][] _plans;
    private readonly DirectProgram _program = new();

    private DirectModel(DirectQuestion question)
    {
        _question = question;
        _instance = question.Instance;
        _mixed = question.Mixed;
        _plans =
        [
            .. Enumerable.Range(0, _instance.Places.Length).Select(p =>
                question.Rooms is { } rooms ? [RoomPlan.Held(_instance, rooms, p)] : RoomPlan.AllOf(_instance, p)),
        ];
        Trade();
        Lines();
        Lots();
        Places();
        for (int row = 0; row < _instance.Rows.Length; row++) Row(row);
    }

    /// <summary>Scaled value of the season's best plan, and what no plan exceeds.</summary>
    internal static DirectResult Solve(DirectQuestion question, double seconds = 60, double gap = 1e-7)
    {
        DirectResult result = new DirectModel(question)._program.Solve(seconds, gap);
        double nothing = -question.Instance.OrderLines.Sum(l => l.Short * l.Mass) - question.Instance.SeedNeeds.Sum(n => n.ShortCost * n.Mass);
        return result with { Value = result.Value + nothing, Bound = result.Bound + nothing };
    }

    /// <summary>Columns that the model would have, about: for choosing seasons that are small enough.</summary>
    internal static int Size(DirectQuestion question)
    {
        var model = new DirectModel(question);
        return model._program.ColumnCount;
    }

    private void Row(int row)
    {
        InstanceRow r = _instance.Rows[row];
        InstanceLot lot = _instance.Lots[r.Lot];
        int all = _program.Equal(r.Mass);
        foreach (Way way in Way.Of(_instance, _plans, row, _question.MovesAtMost))
        {
            (int, double)[] every = [(all, 1), .. Standing(way)];
            double sound = way.Sound(_instance);
            double fresh = way.Mass * r.Fresh * sound, crack = way.Mass * r.Crack * sound;
            void Out(double gain, params ReadOnlySpan<(int, double)> more) =>
                _program.Column(gain - way.MoveCost, double.PositiveInfinity, false, [.. every, .. more]);

            if (way.Week == _instance.Weeks)
            {
                Out(_instance.EndPrice * (fresh + crack));
                continue;
            }
            if (!way.MayLeave) continue;
            Out(0);
            if (lot.Hold) continue;
            // Not before it is ready, as the planner reads the contract.
            if (way.Week >= lot.ReadyWeek && AsIsOf(lot) is var price and >= 0)
                Out(_instance.AsIs[price].Price * way.Mass, (AsIsRow(price, way.Week), way.Mass));
            for (int i = 0; i < _instance.Lines.Length; i++)
            {
                if (RunRowOf(r.Lot, i, way.Week) is not { } run) continue;
                List<(int, double)> mass = [(run.Mass, way.Mass), (_hours[i, way.Week], way.Mass / _instance.Lines[i].Rate)];
                if (_pins.TryGetValue((r.Lot, i, way.Week), out int pin)) mass.Add((pin, -way.Mass));
                if (run.Least >= 0) mass.Add((run.Least, -way.Mass));
                if (run.Taken.TryGetValue(row, out int taken)) mass.Add((taken, -1));
                switch (_instance.Lines[i].Mode)
                {
                    case LineMode.Fresh:
                        Out(0, [.. mass, .. FreshOut(r.Lot, way.Week, fresh * _instance.KeptFresh, crack)]);
                        break;
                    case LineMode.Crack:
                        Out(0, [.. mass, .. Cloves(r.Lot, way.Week, (fresh + crack) * _instance.KeptCrack)]);
                        break;
                    default:
                        foreach (int need in NeedsServed(lot, way.Week)) Out(0, [.. mass, (_served[need], -fresh * _instance.KeptSeed)]);
                        break;
                }
            }
        }
    }

    private static int[] Rows(int count, Func<int, int> make) => [.. Enumerable.Range(0, count).Select(make)];
}
