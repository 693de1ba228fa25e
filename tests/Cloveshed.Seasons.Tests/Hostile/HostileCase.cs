namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>Where a fault must be named. Line null: the contract does not say which; Column null: likewise.</summary>
internal sealed record FaultAt(string File, int? Line, string? Column);

/// <summary>Broken files and every place in them that must be reported.</summary>
internal sealed record HostileCase(string Name, HostileFolder Folder, params FaultAt[] Faults)
{
    public static IReadOnlyList<HostileCase> All { get; } =
        [.. HostileFiles.All, .. HostileSettings.All, .. HostileGarlic.All, .. HostileShed.All, .. HostileTrade.All];

    /// <summary>A case of one text replaced.</summary>
    internal static HostileCase Swap(string name, string file, string old, string now, int? line, string? column) =>
        new(name, HostileFolder.Sound.With(file, old, now), new FaultAt(file, line, column));

    /// <summary>A case of one row added after the last.</summary>
    internal static HostileCase Add(string name, string file, string row, string? column) =>
        new(name, HostileFolder.Sound.Row(file, row), new FaultAt(file, SoundTexts.All[file].Count(c => c == '\n') + 1, column));
}
