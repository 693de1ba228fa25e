using Cloveshed.Core.Quantities;
using NodaTime;

namespace Cloveshed.Core.Keep.Release;

/// <summary>A lot that will be run: by when it must be, when the plan runs it, and what it is worth by the week.</summary>
/// <param name="RunBy">Day by which it must be run; the early end of its band where being late is dear.</param>
/// <param name="PlannedWeek">Index of the week in which the plan runs it; null where the plan keeps it.</param>
/// <param name="WorthByWeek">What it would bring if run in each week, from week 0 on.</param>
public sealed record ReleaseLot(LotId Lot, LocalDate RunBy, int? PlannedWeek, IReadOnlyList<Money> WorthByWeek);

/// <param name="Place">In the order of run-by days, from 1.</param>
/// <param name="FirstToExpireWeek">When it would be run if the plan's weeks went to lots in the order of their run-by days.</param>
/// <param name="CostOfDiffering">Worth in that week less worth in the planned one: what the plan's order loses (or, negative, gains) on this lot.</param>
/// <param name="Late">The plan runs it in a week that begins after its run-by day.</param>
/// <summary>One lot in the order of release.</summary>
public sealed record ReleaseRow(LotId Lot, int Place, LocalDate RunBy, int? PlannedWeek, int? FirstToExpireWeek, Money CostOfDiffering, bool Late)
{
    /// <summary>The plan's week is not the one that its run-by day would give it.</summary>
    public bool Differs => PlannedWeek != FirstToExpireWeek;
}

/// <summary>Rows in the order of run-by days, and what the plan's order costs against it in all.</summary>
public sealed record ReleaseAnswer(IReadOnlyList<ReleaseRow> Rows, Money CostOfDiffering);

/// <summary>
/// First to expire, and the plan where it differs. The plan weighs sizes, orders and rooms that this order knows nothing of, so a
/// difference is no fault: it is shown with its price.
/// </summary>
public static class ReleaseOrder
{
    /// <summary>Pure. Equal run-by days go by the lot's name, so that the order is one.</summary>
    public static ReleaseAnswer Of(IReadOnlyList<ReleaseLot> lots, LocalDate firstMonday, Currency currency)
    {
        ReleaseLot[] byDay = [.. lots.OrderBy(lot => lot.RunBy).ThenBy(lot => lot.Lot.Text, StringComparer.Ordinal)];
        int[] weeks = [.. lots.Where(lot => lot.PlannedWeek is not null).Select(lot => lot.PlannedWeek!.Value).Order()];
        var rows = new List<ReleaseRow>();
        Money total = Money.From(0, currency);
        for (int place = 0, run = 0; place < byDay.Length; place++)
        {
            ReleaseLot lot = byDay[place];
            // A lot that the plan keeps has no week to give away.
            int? week = lot.PlannedWeek is null ? null : weeks[run++];
            Money cost = week is { } fair && lot.PlannedWeek is { } planned ? lot.WorthByWeek[fair] - lot.WorthByWeek[planned] : Money.From(0, currency);
            total += cost;
            bool late = lot.PlannedWeek is { } at && firstMonday.PlusWeeks(at) > lot.RunBy;
            rows.Add(new ReleaseRow(lot.Lot, place + 1, lot.RunBy, lot.PlannedWeek, week, cost.Rounded(), late));
        }

        return new ReleaseAnswer(rows, total.Rounded());
    }
}
