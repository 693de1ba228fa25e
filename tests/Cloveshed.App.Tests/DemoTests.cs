namespace Cloveshed.App.Tests;

/// <summary>The demo travels in the program; planning it whole is the matter of the tests of whole seasons.</summary>
public sealed class DemoTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    [Fact]
    public void The_season_in_the_program_is_the_one_in_the_sources()
    {
        string sources = Path.Combine(Sources(), "data", "demo-season");
        Assert.Equal(Directory.GetFiles(sources).Select(Path.GetFileName).Order(StringComparer.Ordinal), Demo.DemoSeason.Files.Select(file => file.Name));
        Assert.All(Demo.DemoSeason.Files, file => Assert.Equal(File.ReadAllBytes(Path.Combine(sources, file.Name)), file.Bytes));
    }

    [Fact]
    public void A_trial_that_somebody_edited_is_not_overwritten()
    {
        Directory.CreateDirectory(trial.At("f", "season"));
        File.WriteAllText(trial.At("f", "season", "sizes.csv"), "class,min_mm\nmine,30\n");
        Ended ended = trial.Run("demo", "--folder", trial.At("f"), "--no-serve");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains("sizes.csv in ", ended.Error, StringComparison.Ordinal);
        Assert.Equal("class,min_mm\nmine,30\n", File.ReadAllText(trial.At("f", "season", "sizes.csv")));
        Assert.Single(Directory.GetFiles(trial.At("f", "season")));
    }

    /// <summary>With little time it is a poorer plan, but one that holds; what it says is what it wrote.</summary>
    [Fact]
    public void It_makes_the_season_and_plans_it()
    {
        Ended ended = trial.Run("demo", "--no-serve", "--folder", trial.At("f"), "--seconds", "2", "--json");
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        Assert.Equal(File.ReadAllText(trial.At("f", "plan", "summary.json")), ended.Output);
        Assert.True(File.Exists(trial.At("f", "plan", "report.html")));
        Assert.Equal(0, trial.Run("check-plan", trial.At("f", "season"), trial.At("f", "plan")).Code);
        Assert.Equal(21, Directory.GetFiles(trial.At("f", "season")).Length);
    }

    internal static string Sources()
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Cloveshed.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("Run the tests from a build inside the source tree.");
        }

        return folder.FullName;
    }
}
