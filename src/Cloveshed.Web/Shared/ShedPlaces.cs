namespace Cloveshed.Web.Shared;

/// <summary>A place of the shed on screen: where it is, its name, and the manual's page that helps there.</summary>
/// <param name="Manual">The page's name under docs/manual, without its ending; help for the place is at /help/{Manual}.</param>
public sealed record ShedPlace(string Path, ShellWord Name, string Manual);

/// <summary>The places that exist, in the order in which they stand in the header.</summary>
public static class ShedPlaces
{
    public static readonly ShedPlace Today = new("/", ShellWord.Today, "today");
    public static readonly ShedPlace Yard = new("/yard", ShellWord.Yard, "yard");
    // docs/manual/keep.md and plan.md are the pages of commands; the places have pages of their own.
    public static readonly ShedPlace Keep = new("/keep", ShellWord.Keep, "keeping");
    public static readonly ShedPlace Line = new("/line", ShellWord.Line, "line");
    public static readonly ShedPlace Plan = new("/plan", ShellWord.Plan, "season-plan");
    public static readonly ShedPlace Dock = new("/dock", ShellWord.Dock, "dock");
    public static readonly ShedPlace Setup = new("/setup", ShellWord.Setup, "setup");

    public static IReadOnlyList<ShedPlace> All { get; } = [Today, Yard, Keep, Line, Plan, Dock, Setup];

    /// <summary>The place that holds a path: /plan/compare is in Plan. Null for pages that are in none.</summary>
    public static ShedPlace? Of(string path) =>
        path == "/" ? Today : All.FirstOrDefault(place => place != Today && (path == place.Path || path.StartsWith(place.Path + "/", StringComparison.Ordinal)));
}
