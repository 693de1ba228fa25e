using Cloveshed.Core.Planning;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>
/// What a row's mass has done up to the start of a week, moves of that week included: where it stood at the end of each week
/// since its start, and what is left of it. Week = Weeks is the end of the season.
/// </summary>
/// <param name="Stood">Place at each week's end, from the row's start to the week before Week.</param>
/// <param name="Plans">By place, which of its ways the path has used; -1 where it never was.</param>
/// <param name="MoveCost">Per scaled mass at the start.</param>
internal sealed record Way(int Row, int Week, int Place, int[] Stood, int[] Plans, double Mass, double Life, double MoveCost, bool MayLeave)
{
    /// <summary>Every way of a row through every place, week by week; with a limit, those of at most so many moves.</summary>
    internal static IEnumerable<Way> Of(PlanningInstance instance, RoomPlan[][] plans, int row, int? movesAtMost)
    {
        InstanceRow r = instance.Rows[row];
        KeepTable table = instance.Tables[r.Table];
        var found = new List<Way>();
        int[] never = [.. Enumerable.Repeat(-1, plans.Length)];
        foreach (int[] used in Using(never, r.Place, 0, arrives: false))
        {
            At(r.Start, r.Place, [], used, 1, r.LifeAtStart, 0, 0);
            if (r.FirstMove <= r.Start) Move(r.Start, r.Place, [], used, 1, r.LifeAtStart, 0, 0);
        }
        return found;

        RoomPlan Plan(int[] used, int place) => plans[place][used[place]];

        void At(int week, int place, int[] stood, int[] used, double mass, double life, double cost, int moves)
        {
            if (week == instance.Weeks)
            {
                found.Add(new Way(row, week, place, stood, used, mass, life, cost, true));
                return;
            }
            RoomPlan plan = Plan(used, place);
            found.Add(new Way(row, week, place, stood, used, mass, life, cost, plan.MayLeave(week)));
            if (!plan.MayStand(week)) return;
            double[][] losses = plan.UnderAtmosphere(week) ? table.SealedLoss : table.Loss;
            double[][] lives = plan.UnderAtmosphere(week) ? table.SealedLife : table.Life;
            int next = week + 1;
            double left = mass * (1 - losses[place][week]), usedUp = life + lives[place][week];
            int[] after = [.. stood, place];
            At(next, place, after, used, left, usedUp, cost, moves);
            if (next >= r.FirstMove && next < instance.Weeks) Move(next, place, after, used, left, usedUp, cost, moves);
        }

        void Move(int week, int from, int[] stood, int[] used, double mass, double life, double cost, int moves)
        {
            if (moves >= (movesAtMost ?? int.MaxValue) || !Plan(used, from).MayLeave(week)) return;
            for (int to = 0; to < plans.Length; to++)
            {
                if (to == from) continue;
                foreach (int[] then in Using(used, to, week, arrives: true))
                    At(week, to, stood, then, mass, life, cost + r.BinsPerMass * instance.Places[to].MoveInCost, moves + 1);
            }
        }

        // Once a path has used a place in one way it uses it in that way again.
        IEnumerable<int[]> Using(int[] used, int place, int week, bool arrives)
        {
            for (int k = 0; k < plans[place].Length; k++)
            {
                if (used[place] >= 0 && used[place] != k) continue;
                if (arrives && !plans[place][k].MayEnter(week)) continue;
                int[] then = [.. used];
                then[place] = k;
                yield return then;
            }
        }
    }

    /// <summary>Part of what was sound at the row's start that is sound now.</summary>
    internal double Sound(PlanningInstance instance) => instance.SoundShare(Life) / instance.SoundShare(instance.Rows[Row].LifeAtStart);
}
