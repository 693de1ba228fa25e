using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>The best plan that a master has given while its bounds are tried one way and another: begun with the one that it holds.</summary>
internal sealed class BestSeen
{
    /// <summary>A trial changes bounds only, so it starts from the last basis; one that takes longer than this is given up.</summary>
    private const double MostSeconds = 30;

    private readonly Master _master;
    private readonly Season _season;
    private double[] _values;

    internal BestSeen(Master master, Season season)
    {
        (_master, _season, _values) = (master, season, master.Values);
        Plan = new AnswerBuilding(master);
        Worth = Plan.ValueOf(season);
    }

    internal AnswerBuilding Plan { get; private set; }

    /// <summary>In the season's money.</summary>
    internal double Worth { get; private set; }

    /// <summary>Solves with the bounds as they are now. True if the plan is worth more (or as much, where that will do) and breaks no least run: then it is the best.</summary>
    internal bool Try(bool asMuchWillDo)
    {
        if (_master.Solve(LinearMethod.DualSimplex, MostSeconds) != LinearStatus.Optimal) return false;
        var now = new AnswerBuilding(_master);
        double worth = now.ValueOf(_season);
        if (worth < Worth || (worth == Worth && !asMuchWillDo) || now.BreaksALeastRun()) return false;
        (Plan, Worth, _values) = (now, worth, _master.Values);
        return true;
    }

    /// <summary>Puts the best plan's values back into the master.</summary>
    internal void Restore() => _master.Restore(_values);
}
