using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Seasons.Tests.Planning;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>The features as data: sound seasons, a name each, a range that is one.</summary>
public sealed class FeatureTests
{
    public static TheoryData<string> Names => [.. Feature.All.Select(f => f.Name)];

    [Theory, MemberData(nameof(Names))]
    public void A_feature_is_sound_and_its_names_resolve(string name)
    {
        Feature feature = Feature.All.Single(f => f.Name == name);
        Assert.Empty(Soundness.Faults(feature.Season));
        Assert.True(feature.Low <= feature.High);
        Assert.True(feature.Low >= Idle.Value(feature.Season), "doing nothing is worth more than the best plan");
    }
}
