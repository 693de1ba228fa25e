using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>The keys of a file's rows: two rows with one key are a fault, named at the second.</summary>
internal sealed class RowKeys(params Column[] columns)
{
    private readonly Dictionary<string, int> lines = new(StringComparer.Ordinal);

    /// <summary>Parts that are null were empty; where all of a key must be filled the fault is reported already and the key not compared.</summary>
    public void Take(Table table, params ReadOnlySpan<string?> parts)
    {
        for (int at = 0; at < parts.Length; at++)
            if (parts[at] is null && columns[at].Needed)
                return;
        string key = string.Join('\u001f', parts);
        if (lines.TryAdd(key, table.Line))
            return;
        string names = string.Join(", ", columns.Select(column => column.Name));
        table.Fault(FaultRule.KeyTwice, names, string.Join(", ", parts), names, lines[key]);
    }
}
