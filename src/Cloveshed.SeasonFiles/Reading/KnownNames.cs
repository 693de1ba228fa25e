using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>
/// The names that a file gives, for other files to refer to: also those of faulty rows, so that one fault is reported once.
/// While the file was not read, or rows of it were lost, nothing counts as unknown.
/// </summary>
internal sealed class KnownNames(string file, string column)
{
    private readonly HashSet<string> names = new(StringComparer.Ordinal);

    /// <summary>Every name of the file is here.</summary>
    public bool Complete { get; set; }

    public void Add(string? name)
    {
        if (name is not null)
            names.Add(name);
    }

    /// <summary>Whether the name is known to be missing.</summary>
    public bool Lacks(string name) => Complete && !names.Contains(name);

    /// <summary>A fault where the cell names what the file hasn't.</summary>
    public void Require(Table table, Column cell, string? name)
    {
        if (name is not null && Lacks(name))
            table.Fault(FaultRule.Unknown, cell, file, column);
    }
}
