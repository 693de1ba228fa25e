using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>Rows of a file that name weeks outside the season: left out, and warned about once per file.</summary>
internal sealed class OutsideSeason(SeasonDraft draft)
{
    private int count, firstLine;

    /// <summary>True when the row is left out.</summary>
    public bool Leaves(Table table, int? week)
    {
        if (week is not { } index || draft.Frame.InSeason(index))
            return false;
        if (count++ == 0)
            firstLine = table.Line;
        return true;
    }

    /// <summary>True when none of the weeks, both ends included, is of the season; the row is then left out.</summary>
    public bool LeavesSpan(Table table, int from, int to)
    {
        if (draft.Frame.FirstWeek is null || draft.Frame.Weeks is not { } weeks || (to >= 0 && from < weeks))
            return false;
        if (count++ == 0)
            firstLine = table.Line;
        return true;
    }

    public void Report(Table table, string column)
    {
        if (count > 0)
            draft.Faults.Warn(WarningRule.OutsideSeason, table.Layout.Name, firstLine, column, count);
    }
}
