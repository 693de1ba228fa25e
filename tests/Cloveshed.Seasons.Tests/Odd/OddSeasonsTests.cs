using CsCheck;

namespace Cloveshed.Seasons.Tests.Odd;

public sealed class OddSeasonsTests
{
    public static TheoryData<string> Names => [.. Oddity.All.Select(o => o.Name)];

    [Fact]
    public void Draws_are_those_of_the_published_generator()
    {
        // First line of pcg32-demo of the PCG reference implementation (O'Neill), seed 42, stream 54; from memory.
        Pcg pcg = new(42, 54);
        Assert.Equal(
            [0xa15c02b7u, 0x7b47f409u, 0xba1d3330u, 0x83d2f293u, 0xbfa4784bu, 0xcbed606eu],
            Enumerable.Range(0, 6).Select(_ => pcg.Bits()));
    }

    [Theory, MemberData(nameof(Names))]
    public void A_named_season_is_sound_and_shows_what_its_name_says(string name)
    {
        Oddity oddity = Oddity.All.Single(o => o.Name == name);
        for (ulong seed = 1; seed <= 5; seed++)
        {
            var season = OddSeasons.Make(oddity, seed);
            Assert.Empty(Soundness.Faults(season));
            Assert.True(oddity.Shows(season), $"seed {seed}");
        }
    }

    [Fact]
    public void Seasons_at_large_are_sound() =>
        OddSeasons.Any.Sample(season => { Assert.Empty(Soundness.Faults(season)); }, iter: 300, print: s => OddFolder.Text(s)[..400]);

    [Fact]
    public void A_seed_draws_the_same_season_again() =>
        Gen.ULong.Sample(seed => OddFolder.Text(OddSeasons.Mixed(seed)) == OddFolder.Text(OddSeasons.Mixed(seed)), iter: 50);

    [Fact]
    public void Two_seeds_draw_two_seasons() =>
        Assert.NotEqual(OddFolder.Text(OddSeasons.Mixed(1)), OddFolder.Text(OddSeasons.Mixed(2)));
}
