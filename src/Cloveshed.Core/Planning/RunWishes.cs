namespace Cloveshed.Core.Planning;

/// <summary>A run that the plan must make: at least Mass in (the season's unit; null: the line's least run) of the lot on the line in the week.</summary>
public sealed record PinnedRun(LotId Lot, LineId Line, int Week, double? Mass);

/// <summary>A run that the plan may not make.</summary>
public sealed record BarredRun(LotId Lot, LineId Line, int Week);

/// <summary>
/// What a person has decided about single runs before the plan is made. A pin that can't be kept (no hours, the lot is on hold or gone) is
/// kept as far as it can be: the plan pays <see cref="MissedPin"/> for what is missed, which is not money and not in its value.
/// Wishes for lots, lines or weeks that the season does not have are left out.
/// </summary>
public sealed record RunWishes(IReadOnlyList<PinnedRun> Pinned, IReadOnlyList<BarredRun> Barred)
{
    /// <summary>Scaled money per scaled mass of a pin that is missed: far above any price (the median price is 1), so that pins go first.</summary>
    internal const double MissedPin = 25;

    public static RunWishes None { get; } = new([], []);

    internal IReadOnlyList<InstancePin> Pins(PlanningInstance instance)
    {
        var pins = new SortedDictionary<(int Lot, int Line, int Week), double>();
        foreach (PinnedRun wish in Pinned)
        {
            if (Of(instance, wish.Lot, wish.Line, wish.Week) is not { } run) continue;
            InstanceLine line = instance.Lines[run.Line];
            double least = line.MinRun > 0 ? line.MinRun : line.Rate;
            double mass = Math.Min(instance.Lots[run.Lot].Mass, wish.Mass is { } asked ? asked / instance.MassScale : least);
            pins[run] = Math.Max(pins.GetValueOrDefault(run), mass);
        }
        return [.. pins.Where(p => p.Value > 0).Select(p => new InstancePin(p.Key.Lot, p.Key.Line, p.Key.Week, p.Value))];
    }

    internal HashSet<(int Lot, int Line, int Week)> Bars(PlanningInstance instance) =>
        [.. Barred.Select(b => Of(instance, b.Lot, b.Line, b.Week)).OfType<(int, int, int)>()];

    private static (int Lot, int Line, int Week)? Of(PlanningInstance instance, LotId lot, LineId line, int week)
    {
        int l = Array.FindIndex(instance.Lots, x => x.Id == lot), i = Array.FindIndex(instance.Lines, x => x.Id == line);
        return l < 0 || i < 0 || week < instance.AsOf || week >= instance.Weeks ? null : (l, i, week);
    }
}

/// <summary>A pinned run; Mass scaled, as weighed in its week.</summary>
public sealed record InstancePin(int Lot, int Line, int Week, double Mass);
