using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using NodaTime;

namespace Cloveshed.Core.Tests.Shift;

/// <summary>When a line works: by hand, and against the check's own minutes.</summary>
public class LineHoursTests
{
    [Fact]
    public void A_day_is_its_shift_without_breaks_and_cleaning()
    {
        LineHours hours = LineHours.Of(HandWeek.Of(), HandWeek.Lines[0]);
        // 06:00-14:30 is 510 minutes, less 15, 30 and 15 of cleaning.
        Assert.Equal(5 * 450, hours.Total);
        Assert.Equal(new ShiftWindow(375, 540), hours.Windows[0]);
        Assert.Equal((375, 376), (hours.StartAt(0), hours.EndAt(1)));
        // The 166th worked minute comes after the break; a run of 165 ends before it.
        Assert.Equal((555, 540), (hours.StartAt(165), hours.EndAt(165)));
    }

    [Fact]
    public void Maintenance_is_of_its_line_and_a_closed_day_of_all()
    {
        ShiftQuestion question = HandWeek.Of() with { Shifts = [.. HandWeek.Shifts, new(ShiftKind.Closed, "Holiday", null, 0, IsoDayOfWeek.Friday, 0, 1440, null)] };
        Assert.Equal(4 * 450, LineHours.Of(question, HandWeek.Lines[0]).Total);
        Assert.Equal((4 * 450) - 120, LineHours.Of(question, HandWeek.Lines[1]).Total);
    }

    [Fact]
    public void A_row_of_another_week_does_not_count() =>
        Assert.Equal(0, LineHours.Of(HandWeek.Of() with { Week = 1, Shifts = [new(ShiftKind.Work, "Day", null, 0, null, 360, 870, null)] }, HandWeek.Lines[0]).Total);

    [Fact]
    public void A_night_shift_of_the_Sunday_before_reaches_into_the_Monday_and_the_last_one_is_cut()
    {
        ShiftQuestion question = HandWeek.Of() with { Setups = [], Shifts = [new(ShiftKind.Work, "Night", null, null, IsoDayOfWeek.Sunday, 1320, 1800, null)] };
        Assert.Equal([new ShiftWindow(0, 360), new ShiftWindow((6 * 1440) + 1320, 7 * 1440)], LineHours.Of(question, HandWeek.Lines[0]).Windows);
    }

    [Fact]
    public void A_seed_line_is_not_cleaned_for_food() =>
        Assert.Equal(5 * 465, LineHours.Of(HandWeek.Of(), new ShiftLine(new LineId("Seed"), LineMode.Seed, 8, 60, 600, 30)).Total);

    [Fact]
    public void The_clock_and_the_count_lead_back_to_each_other_and_agree_with_the_minutes_of_the_check()
    {
        foreach (ShiftLine line in HandWeek.Lines)
        {
            LineHours hours = LineHours.Of(HandWeek.Of(), line);
            MinuteBook book = new(HandWeek.Of(), line);
            for (int worked = 0; worked < hours.Total + 500; worked++)
            {
                Assert.Equal(worked, hours.Worked(hours.StartAt(worked)));
                Assert.Equal(MinuteUse.Work, book[hours.StartAt(worked)]);
                Assert.Equal(worked + 1, hours.Worked(hours.EndAt(worked + 1)));
            }

            Assert.Equal(hours.Total, book.Worked(0, ShiftQuestion.WeekMinutes));
        }
    }
}
