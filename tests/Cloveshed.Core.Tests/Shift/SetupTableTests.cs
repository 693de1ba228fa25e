using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;

namespace Cloveshed.Core.Tests.Shift;

/// <summary>Set-up by pair, from rows written by hand.</summary>
public class SetupTableTests
{
    private static readonly SetupTable Table = new(HandWeek.Of());

    private static ShiftRun Run(string variety, bool organic = false, string cuts = "JU", LineId? line = null) => HandWeek.Run("R", line ?? HandWeek.PackOne, 60, variety, organic, cuts);

    [Fact]
    public void The_row_that_says_most_counts_line_before_from_before_to()
    {
        Assert.Equal(20, Table.Between(Run("Pale"), Run("Sorrel")).Minutes);
        Assert.Equal(30, Table.Between(Run("Sorrel"), Run("Red")).Minutes);
        Assert.Equal(40, Table.Between(Run("Sorrel"), Run("Pale")).Minutes);
        Assert.Equal(20, Table.Between(Run("Sorrel", line: HandWeek.PackTwo), Run("Pale", line: HandWeek.PackTwo)).Minutes);
    }

    [Fact]
    public void Conventional_before_organic_is_cleaned_out_and_organic_before_conventional_is_not()
    {
        SetUp dirty = Table.Between(Run("Pale"), Run("Pale", organic: true)), clean = Table.Between(Run("Pale", organic: true), Run("Pale"));
        // 60 minutes at 1 a minute, and 100.
        Assert.Equal((60, 160, true), (dirty.Minutes, dirty.Cost, dirty.CleanOut));
        Assert.Equal((0, 0, false), (clean.Minutes, clean.Cost, clean.CleanOut));
    }

    [Fact]
    public void Kinds_that_change_together_add_up_and_what_stays_takes_nothing()
    {
        Assert.Equal(20 + 60 + 10, Table.Between(Run("Pale"), Run("Red", organic: true, cuts: "GI")).Minutes);
        Assert.Equal(0, Table.Between(Run("Pale"), Run("Pale")).Minutes);
    }

    [Fact]
    public void Bins_come_while_the_line_is_set_up_so_the_longer_of_the_two_counts()
    {
        SetUp near = Table.Between(Run("Pale"), Run("Red")), far = Table.Between(Run("Pale"), HandWeek.Run("R", HandWeek.PackOne, 60, "Red", place: "Far room"));
        Assert.Equal((20, 45), (near.Gap, far.Gap));
    }

    [Fact]
    public void Without_rows_the_lines_own_set_up_stands_between_any_two_runs()
    {
        SetUp plain = new SetupTable(HandWeek.Of() with { Setups = [] }).Between(Run("Pale"), Run("Pale"));
        Assert.Equal((30, 30), (plain.Minutes, plain.Cost));
    }
}
