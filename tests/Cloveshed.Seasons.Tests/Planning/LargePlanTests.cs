using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>Odd seasons of up to 400 lots. A class of its own, so that it runs beside the small ones.</summary>
public sealed class LargePlanTests
{
    public static TheoryData<string> Large => [.. Oddity.All.Where(o => o.Large).Select(o => o.Name)];

    [Theory, MemberData(nameof(Large))]
    public void A_large_odd_season_plans_and_passes_the_check(string name) => OddPlanTests.Sound(OddSeasons.Make(Oddity.All.Single(o => o.Name == name), 1), new(30, 1e-2));
}
