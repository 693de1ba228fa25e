using System.Text;
using Cloveshed.DemoSeason;

namespace Cloveshed.Seasons.Tests.Demo;

public sealed class GeneratorTests
{
    [Fact]
    public void The_committed_files_are_the_generators_byte_for_byte()
    {
        IReadOnlyList<(string Path, string Text)> made = Scenario.Files(Scenario.Seed);
        foreach ((string path, string text) in made)
        {
            Assert.True(Committed.Bytes(path).AsSpan().SequenceEqual(Encoding.UTF8.GetBytes(text)), $"{path} is not what the generator makes; run it and commit.");
        }

        // No file lies in the two folders that the generator does not know of: a reader would warn of it.
        string[] lying = [.. new[] { "demo-season", "demo-truth" }.SelectMany(f => Directory.GetFiles(Path.Combine(Committed.Data, f)).Select(p => $"{f}/{Path.GetFileName(p)}"))];
        Assert.Equal(made.Select(m => m.Path).Order(StringComparer.Ordinal), lying.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Another_seed_makes_another_season_of_the_same_shape()
    {
        Dictionary<string, string> one = Scenario.Files(Scenario.Seed).ToDictionary(f => f.Path, f => f.Text, StringComparer.Ordinal);
        Dictionary<string, string> other = Scenario.Files(7).ToDictionary(f => f.Path, f => f.Text, StringComparer.Ordinal);
        Assert.Equal(one.Keys, other.Keys);
        foreach (string path in new[] { "demo-season/lots.csv", "demo-season/samples.csv", "demo-season/orders.csv", "demo-truth/lots.csv" })
        {
            Assert.NotEqual(one[path], other[path]);
            Assert.Equal(one[path].Split('\n')[0], other[path].Split('\n')[0]);
        }
    }

    [Fact]
    public void Every_file_ends_its_lines_with_a_line_feed_alone_and_is_plain_text()
    {
        foreach ((string path, string text) in Scenario.Files(Scenario.Seed))
        {
            Assert.False(text.Contains('\r', StringComparison.Ordinal), path);
            Assert.True(text.EndsWith('\n'), path);
            Assert.True(text.All(char.IsAscii), path);
        }
    }
}
