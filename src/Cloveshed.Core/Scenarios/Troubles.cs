namespace Cloveshed.Core.Scenarios;

/// <summary>What goes otherwise than planned: units of a size missing when due, a lot that is late or spent, a line without hours, a place without room.</summary>
public enum TroubleKind { Size, LotLate, LotSpent, Line, Place }

/// <summary>One trouble in a replay: what, which, in which week first, and how much mass in all (scaled inside, the season's unit outside).</summary>
public sealed record Trouble(TroubleKind Kind, string Name, int FirstWeek, double Mass);

/// <summary>Collects the troubles of one replay.</summary>
internal sealed class Troubles
{
    private readonly Dictionary<(TroubleKind, string), (int First, double Mass)> seen = [];

    public void Add(TroubleKind kind, string name, int week, double mass)
    {
        (int First, double Mass) so = seen.GetValueOrDefault((kind, name), (int.MaxValue, 0));
        seen[(kind, name)] = (Math.Min(so.First, week), so.Mass + mass);
    }

    public IReadOnlyList<Trouble> All(double massScale) =>
        [.. seen.Select(s => new Trouble(s.Key.Item1, s.Key.Item2, s.Value.First, s.Value.Mass * massScale)).OrderBy(t => t.FirstWeek).ThenBy(t => t.Kind).ThenBy(t => t.Name, StringComparer.Ordinal)];
}
