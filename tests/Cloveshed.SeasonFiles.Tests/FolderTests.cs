using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

public sealed class FolderTests
{
    [Fact]
    public void A_missing_folder_is_one_fault()
    {
        using TemporaryFolder folder = new();

        Fault fault = Assert.Single(SeasonReader.Read(folder["nowhere"]).Faults);

        Assert.Equal((FaultRule.FolderMissing, folder["nowhere"]), (fault.Rule, fault.File));
    }

    [Fact]
    public void An_empty_folder_is_one_fault()
    {
        using TemporaryFolder folder = new();

        Assert.Equal([FaultRule.FolderEmpty], SeasonReader.Read(folder.Path).Faults.Select(fault => fault.Rule));
    }

    [Fact]
    public void A_folder_reads_as_its_files_do_and_hidden_files_are_passed_over()
    {
        using TemporaryFolder folder = new();
        new SmallSeason().WriteTo(folder.Path);
        File.WriteAllText(folder[".DS_Store"], "x");
        File.WriteAllText(folder["notes.txt"], "x");
        Directory.CreateDirectory(folder["old"]);

        SeasonReading reading = SeasonReader.Read(folder.Path);

        RoundTripTests.AssertSame(new SmallSeason().Read().Season!, reading.Season!);
        Assert.Equal("notes.txt", Assert.Single(reading.Warnings).File);
        Assert.Equal(new SmallSeason().Read().InputDigest, reading.InputDigest);
    }

    [Fact]
    public void Every_missing_file_is_named_and_a_name_in_capitals_is_pointed_out()
    {
        using TemporaryFolder folder = new();
        new SmallSeason().Without("lots.csv").Without("sizes.csv").Without("people.csv").WriteTo(folder.Path);
        File.WriteAllText(folder["Lots.CSV"], "x");

        SeasonReading reading = SeasonReader.Read(folder.Path);

        Assert.Equal([("sizes.csv", FaultRule.FileMissing), ("lots.csv", FaultRule.FileMissing)], reading.Faults.Select(fault => (fault.File, fault.Rule)));
        Assert.Contains("Lots.CSV → lots.csv", reading.Faults[1].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_cannot_be_opened_is_a_fault()
    {
        using TemporaryFolder folder = new();
        new SmallSeason().WriteTo(folder.Path);
        using FileStream held = new(folder["lots.csv"], FileMode.Open, FileAccess.ReadWrite, FileShare.None);

        Fault fault = Assert.Single(SeasonReader.Read(folder.Path).Faults);

        Assert.Equal((FaultRule.FileUnreadable, "lots.csv"), (fault.Rule, fault.File));
    }

    [Fact]
    public void A_file_larger_than_any_season_is_refused_unread()
    {
        using TemporaryFolder folder = new();
        new SmallSeason().WriteTo(folder.Path);
        using (FileStream large = new(folder["lots.csv"], FileMode.Open))
            large.SetLength((SeasonReader.LargestFileMegabytes + 1) * 1024L * 1024L); // sparse: no bytes are written

        Fault fault = Assert.Single(SeasonReader.Read(folder.Path).Faults);

        Assert.Equal((FaultRule.FileTooLarge, "lots.csv"), (fault.Rule, fault.File));
    }

    [Fact]
    public void What_is_written_takes_the_place_of_our_files_and_leaves_others()
    {
        using TemporaryFolder folder = new();
        Season season = new SmallSeason().Read().Season!;
        Directory.CreateDirectory(folder["out"]);
        File.WriteAllText(folder["out/notes.txt"], "mine");
        File.WriteAllText(folder["out/runs.csv"], "old");

        AnswerWriter.Write(AnswerFilesTests.Answer, season, folder["out"], [("report.html", "<p>"u8.ToArray())]);

        Assert.Equal("mine", File.ReadAllText(folder["out/notes.txt"]));
        Assert.Equal("<p>", File.ReadAllText(folder["out/report.html"]));
        Assert.StartsWith("run,week", File.ReadAllText(folder["out/runs.csv"]), StringComparison.Ordinal);
        Assert.Equal([folder["out"]], Directory.GetFileSystemEntries(folder.Path)); // nothing is left beside it
    }

    [Fact]
    public void A_failure_half_way_leaves_the_folder_as_it_was()
    {
        using TemporaryFolder folder = new();
        Season season = new SmallSeason().Read().Season!;
        Directory.CreateDirectory(folder["out/seed.csv"]); // a folder where a file must go: the rename fails, after many have been made
        File.WriteAllText(folder["out/paths.csv"], "old paths");
        File.WriteAllText(folder["out/summary.json"], "old summary");

        Assert.ThrowsAny<Exception>(() => AnswerWriter.Write(AnswerFilesTests.Answer, season, folder["out"]));

        Assert.Equal("old paths", File.ReadAllText(folder["out/paths.csv"]));
        Assert.Equal("old summary", File.ReadAllText(folder["out/summary.json"]));
        Assert.Equal(3, Directory.GetFileSystemEntries(folder["out"]).Length);
        Assert.Equal([folder["out"]], Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void A_file_where_the_folder_should_be_is_left_alone()
    {
        using TemporaryFolder folder = new();
        File.WriteAllText(folder["out"], "mine");

        Assert.ThrowsAny<IOException>(() => AnswerWriter.Write(AnswerFilesTests.Answer, new SmallSeason().Read().Season!, folder["out"]));

        Assert.Equal("mine", File.ReadAllText(folder["out"]));
        Assert.Equal([folder["out"]], Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void Answer_files_that_are_missing_or_spoilt_are_named()
    {
        using TemporaryFolder folder = new();
        Season season = new SmallSeason().Read().Season!;
        AnswerWriter.Write(AnswerFilesTests.Answer, season, folder["out"]);
        File.Delete(folder["out/moves.csv"]);
        File.WriteAllText(folder["out/sales.csv"], "week,product,units\n2026-09-08,M30,1\n");
        File.WriteAllText(folder["out/summary.json"], "{\"value\": 1}");

        AnswerReading reading = AnswerReader.Read(folder["out"], season);

        Assert.Null(reading.Answer);
        Assert.Equal(
            [("summary.json", FaultRule.Json), ("sales.csv", FaultRule.Monday), ("moves.csv", FaultRule.FileMissing)],
            reading.Faults.Select(fault => (fault.File, fault.Rule)));
        Assert.Equal([FaultRule.FolderMissing], AnswerReader.Read(folder["nowhere"], season).Faults.Select(fault => fault.Rule));
    }
}
