using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Demo;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>The rough part of a large model. That its bounds hold is in the tests of bounds; here, that it comes to an end.</summary>
public sealed class RoughPricesTests
{
    /// <summary>
    /// 45 lots over half a season: prices solved to a hundredth took paths out and in for ever, a quarter from the bound. Twenty-five rounds are twice what it takes.
    /// </summary>
    [Fact]
    public void A_season_cut_short_comes_to_its_bound_in_few_rounds()
    {
        Season season = LargeSeason.Cut(SeasonReader.Read(Path.Combine(Committed.Data, "demo-season")).Season!, 45, 26);
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        var limits = new GenerationLimits(1e-3, 1e6, 25, SearchDepth.Fine, () => 0, 2, default);
        using Master master = new RoomSearch(instance, new HighsSolver()).NewMaster(RoomChoice.Free(instance), RunCharges.ForBound(instance), []);
        Assert.True(master.IsLarge);

        GenerationResult result = ColumnGeneration.RunNearly(master, limits, double.NegativeInfinity, null);
        Assert.True(result.Gap <= 1e-3, $"gap {result.Gap} after {result.Rounds} rounds");
        Assert.InRange(result.Rounds, 5, 25);
    }
}
