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
