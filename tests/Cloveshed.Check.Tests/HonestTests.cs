namespace Cloveshed.Check.Tests;

public class HonestTests
{
    public static TheoryData<string> Names => [.. Scenarios.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void An_honest_answer_has_no_breach_and_the_value_worked_out_by_hand(string name)
    {
        (Func<Folders> folders, double value) = Scenarios.All[name];
        CheckResult result = folders().Check();
        Assert.Equal([], result.Breaches);
        Assert.Equal(value, result.Value!.Value, 6);
    }

    [Fact]
    public void Rows_and_columns_may_come_in_any_order_with_others_between()
    {
        CheckResult result = Scenarios.FreshRun()
            .WithText("sales.csv", "\uFEFFnote,units,product,week\r\n\"7, as \"\"promised\"\"\",7,M-30,2026-08-10\r\n\r\n")
            .Check();
        Assert.Equal([], result.Breaches);
    }

    [Fact]
    public void A_room_without_a_row_is_a_cold_place()
    {
        CheckResult result = Scenarios.SealedRoom().Drop("rooms.csv", "room,@1,@3").Check();
        Assert.Equal([], result.Breaches);
    }

    [Fact]
    public void A_room_with_no_end_to_its_run_out_may_stand_after_opening()
    {
        Folders folders = Scenarios.SealedRoom().ChangeSeason("places.csv", "room,sealed,20,1.5,,4,2", "room,sealed,20,1.5,,4,")
            .Change("rooms.csv", "@3", "@2");
        Assert.Equal([], folders.Check().Breaches);
    }

    [Fact]
    public void Files_that_the_season_does_not_need_may_be_missing()
    {
        Folders folders = new Folders()
            .Season("sizes.csv", "M,40,")
            .Season("varieties.csv", "Ridge,,,,,,,,,")
            .Season("places.csv", "yard,open,100,,,,")
            .Season("yields.csv", "fresh,0.9")
            .Season("lines.csv", "pack,fresh,500,40,,,,,,")
            .Season("products.csv", "M-30,bulb,M,30,,,")
            .WithLot(shares: false).InYard()
            .Answer("runs.csv", "r1,@0,pack,fresh,lot,L1,p1,yard,1000,1000,2,0,")
            .Summary(0);
        Assert.Equal(9, folders.SeasonFiles.Count());
        Assert.Equal([], folders.Check().Breaches);
    }

    [Fact]
    public void Names_are_taken_as_they_are_written()
    {
        Folders folders = Scenarios.FreshRun();
        string[] named = ["paths.csv", "shares.csv", "runs.csv", "sorted.csv", "made.csv", "keeps.csv"];
        foreach (string file in named)
        {
            folders.WithText(file, folders.AnswerText(file).Replace("L1", "\" L1, \"\"ajo\"\"\nnº 1 \"", StringComparison.Ordinal));
        }

        folders.SeasonWithText("lots.csv", folders.SeasonText("lots.csv").Replace("L1", "\" L1, \"\"ajo\"\"\nnº 1 \"", StringComparison.Ordinal));
        Assert.Equal([], folders.Check().Breaches);
        Assert.NotEmpty(folders.ChangeSeason("lots.csv", "nº 1 ", "nº 1").Check().Breaches);
    }

    [Fact]
    public void A_room_sealed_in_the_week_of_as_of_may_be_opened_in_it()
    {
        Folders folders = Scenarios.AlreadySealed().ChangeSeason("rooms.csv", "2026-07-22", "2026-08-03").Change("rooms.csv", "@-2,@2", "@0,@0")
            .ChangeSeason("places.csv", "1.5,,4,2", "1.5,,4,3");
        Assert.Equal([], folders.Check().Breaches);
    }

    [Fact]
    public void A_figure_a_hair_below_zero_is_noise()
    {
        Assert.Equal([], Scenarios.FreshRun().Change("runs.csv", ",2.48,0,", ",2.48,-1e-12,").Check().Breaches);
    }

    [Fact]
    public void A_row_that_starts_after_the_season_is_left_out()
    {
        Assert.Equal([], Scenarios.FreshRun().Season("lots.csv", "L9,yard,Ridge,F9,@4,10,1000,0.8,0.15,,,,,,,").Check().Breaches);
    }
}
