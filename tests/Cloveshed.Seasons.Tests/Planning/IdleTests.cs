using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>Doing nothing is a plan of every season, and the check says so: where it does not, one of the two has misread the season.</summary>
public sealed class IdleTests
{
    public static TheoryData<string> Names => [.. Oddity.All.Select(o => o.Name)];

    [Theory, MemberData(nameof(Names))]
    public void Doing_nothing_passes_the_check(string name)
    {
        Season season = OddSeasons.Make(Oddity.All.Single(o => o.Name == name), 1);
        Judge.Holds(season, Idle.Answer(season));
    }

    [Fact]
    public void Doing_nothing_passes_the_check_of_seasons_at_large() =>
        OddSeasons.Any.Sample(season => { Judge.Holds(season, Idle.Answer(season)); }, iter: 40);

    [Fact]
    public void Doing_nothing_passes_the_check_of_every_feature() => Assert.All(Feature.All, f => Judge.Holds(f.Season, Idle.Answer(f.Season)));

    [Fact]
    public void A_lot_forgotten_does_not_pass()
    {
        Season season = OddSeasons.Make(Oddity.All[0], 1);
        PlanAnswer answer = Idle.Answer(season);
        Assert.NotEmpty(Judge.Of(season, answer with { AsIs = [.. answer.AsIs.Skip(1)] }).Breaches);
    }
}
