using Cloveshed.SeasonFiles.Answers;
using Cloveshed.SeasonFiles.Files;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>The manual's page on the files has a row for each, with the columns that are read and written, in that order.</summary>
public sealed class ManualTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Root(), "docs", "manual", "season-files.md"));

    public static TheoryData<string> Rows =>
    [
        .. SeasonFileSet.Tables.Select(file => Row(file.Layout, mark: true)),
        .. new[]
        {
            StandingFiles.Paths.Layout, StandingFiles.Shares.Layout, RunFiles.Runs.Layout, RunFiles.Sorted.Layout, RunFiles.Made.Layout, RunFiles.Fills.Layout,
            RunFiles.Sales.Layout, StandingFiles.AsIs.Layout, RunFiles.Shorts.Layout, StandingFiles.Keeps.Layout, StandingFiles.Moves.Layout,
            StandingFiles.Rooms.Layout, RunFiles.Seed.Layout, StandingFiles.Worths.Layout,
        }.Select(layout => Row(layout, mark: false)),
    ];

    [Theory, MemberData(nameof(Rows))]
    public void The_page_has_the_row(string row) => Assert.Contains($"\n{row} | ", Page, StringComparison.Ordinal);

    [Fact]
    public void Its_limits_are_those_of_the_reader()
    {
        Assert.Contains($"larger than {SeasonReader.LargestFileMegabytes} MB", Page, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"more rows than {FileLayout.ManyRows:N0} (samples {SamplesFile.Layout.RowLimit:N0}, lots {LotsFile.Layout.RowLimit:N0}"), Page, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"more than {Bounds.SeasonWeeks.Max} weeks"), Page, StringComparison.Ordinal);
    }

    private static string Row(FileLayout layout, bool mark) =>
        $"| {layout.Name}{(mark && layout.Needed ? " *" : "")} | {string.Join(", ", layout.Columns.Select(column => column.Name + (column.Needed ? "*" : "")))}";

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Cloveshed.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The repository's root was not found above the tests.");
    }
}
