using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>
/// What a plan's model is made of, and the same with changes in it that are more than other limits: of lots, of room weeks, and orders that come in. Pure. Changes that
/// are other limits of what a model has already are put to it by <see cref="ChangePutting"/>.
/// </summary>
internal sealed record SupposedSeason(Season Season, LotsKnown Known, Beliefs Beliefs, RunWishes Wishes, IReadOnlyList<RoomRow> Rooms)
{
    /// <summary>Lots that are not as they were, whose ways are looked for anew.</summary>
    internal IReadOnlyList<LotId> Lots { get; init; } = [];

    /// <summary>Parts of lots that stand as lots of their own in the model, and the lots that they are of.</summary>
    internal IReadOnlyDictionary<LotId, LotId> Parts { get; init; } = new Dictionary<LotId, LotId>();

    /// <summary>Order lines that came in, as an expense names them.</summary>
    internal IReadOnlyList<string> Asked { get; init; } = [];

    /// <summary>Whether a change is of this kind.</summary>
    internal static bool Takes(SeasonChange change) => change is SeasonChange.OrderAdded or SeasonChange.LotDugLater or SeasonChange.LotKeepsLess or SeasonChange.LotWeighsLess
        or SeasonChange.RunDone or SeasonChange.RoomOpened;

    internal (SupposedSeason? Then, ChangeFault? Fault) With(SeasonChange change) => change switch
    {
        SeasonChange.OrderAdded c => Added(c.Line),
        SeasonChange.LotDugLater c => DugLater(c),
        SeasonChange.LotKeepsLess c => KeepsLess(c),
        SeasonChange.LotWeighsLess c => WeighsLess(c),
        SeasonChange.RunDone c => Done(c),
        SeasonChange.RoomOpened c => Opened(c),
        _ => throw new InvalidOperationException($"{change.GetType().Name} is a matter of limits."),
    };

    private SeasonSettings Settings => Season.Settings;

    private (SupposedSeason?, ChangeFault?) Added(OrderLine line)
    {
        if (Season.Products.All(p => p.Id != line.Product)) return (null, ChangeFault.NoSuchProduct);
        if (Settings.WeekOf(line.Due) < Settings.AsOfWeek || Settings.WeekOf(line.ShipFrom) >= Settings.Weeks) return (null, ChangeFault.NotAhead);
        // A line of an order that is there already would make a whole order of another shape: it gets an order of its own.
        OrderId order = line.Order;
        for (int k = 2; Season.Orders.Any(o => o.Order == order); k++) order = new OrderId($"{line.Order} ({k})");
        return (this with { Season = Season with { Orders = [.. Season.Orders, line with { Order = order, Whole = false }] }, Asked = [.. Asked, $"{order} {line.Number}"] }, null);
    }

    private (SupposedSeason?, ChangeFault?) DugLater(SeasonChange.LotDugLater change)
    {
        if (Rows(change.Lot).Count == 0) return (null, ChangeFault.NoSuchLot);
        if (Rows(change.Lot).All(Dug)) return (null, ChangeFault.AlreadyDug);
        int days = 7 * change.Weeks;
        bool Shut(LotRow row) => Rooms.Any(room => room.Place == row.Place && room.Sealed < Settings.WeekOf(row.Harvested.PlusDays(days)));
        if (Rows(change.Lot).Any(row => !Dug(row) && Shut(row))) return (null, ChangeFault.RoomIsShut);
        return (Changed(change.Lot, row => Dug(row) ? row : row with { Harvested = row.Harvested.PlusDays(days), Ready = row.Ready?.PlusDays(days) }), null);
    }

    private (SupposedSeason?, ChangeFault?) WeighsLess(SeasonChange.LotWeighsLess change)
    {
        if (Rows(change.Lot).Count == 0) return (null, ChangeFault.NoSuchLot);
        double left = 1 - change.Share;
        return (Changed(change.Lot, row => Part(row, left, Dug(row) ? 1 : left)), null);
    }

    private (SupposedSeason?, ChangeFault?) KeepsLess(SeasonChange.LotKeepsLess change)
    {
        if (Rows(change.Lot).Count == 0) return (null, ChangeFault.NoSuchLot);
        var clocks = Beliefs.Clocks.ToDictionary();
        foreach (LotRow row in Rows(change.Lot))
        {
            if (ShorterLife.Of(Season, Beliefs, row, change.Weeks) is not { } faster) return (null, ChangeFault.LifeIsOver);
            clocks[(row.Lot, row.Place)] = faster;
        }
        return (this with { Beliefs = Beliefs with { Clocks = clocks }, Lots = [.. Lots, change.Lot] }, null);
    }

    /// <summary>A run of no more is a part of the lot that is run and can do nothing else, and the rest, which cannot be run there in that week.</summary>
    private (SupposedSeason?, ChangeFault?) Done(SeasonChange.RunDone change)
    {
        LotRow[] there = [.. Rows(change.Lot).Where(row => Settings.StartWeekOf(row) == Settings.AsOfWeek)];
        double stands = there.Sum(row => row.Net);
        if (there.Length == 0) return (null, ChangeFault.NoSuchLot);
        if (Season.Lines.All(line => line.Id != change.Line)) return (null, ChangeFault.NoSuchLine);
        if (!(change.Mass <= stands * (1 + 1e-9))) return (null, ChangeFault.NotSoMuchThere);
        int week = Settings.AsOfWeek;
        if (!change.NoMore) return (this with { Wishes = Wishes with { Pinned = [.. Wishes.Pinned, new PinnedRun(change.Lot, change.Line, week, change.Mass)] }, Lots = [.. Lots, change.Lot] }, null);
        var bar = new BarredRun(change.Lot, change.Line, week);
        RunWishes wishes = Wishes with { Pinned = [.. Wishes.Pinned.Where(pin => (pin.Lot, pin.Line, pin.Week) != (bar.Lot, bar.Line, bar.Week))], Barred = [.. Wishes.Barred, bar] };
        if (change.Mass <= 0) return (this with { Wishes = wishes, Lots = [.. Lots, change.Lot] }, null);
        // A name that no lot of a file can have: files' cells are trimmed.
        var part = new LotId($"{change.Lot} {Parts.Count + 1} ");
        double share = Math.Min(1, change.Mass / stands);
        return (this with
        {
            Season = Season with { Lots = [.. Season.Lots.Select(row => there.Contains(row) ? Part(row, 1 - share, 1 - share) : row), .. there.Select(row => Part(row, share, share) with { Lot = part })] },
            Known = Known with { Lots = new Dictionary<LotId, LotKnowledge>(Known.Lots) { [part] = Known.Lots[change.Lot] } },
            Beliefs = Beliefs with { Clocks = Beliefs.Clocks.Concat(Beliefs.Clocks.Where(c => c.Key.Lot == change.Lot).Select(c => KeyValuePair.Create((part, c.Key.Place), c.Value))).ToDictionary() },
            Wishes = wishes with { Pinned = [.. wishes.Pinned, new PinnedRun(part, change.Line, week, change.Mass)] },
            Parts = new Dictionary<LotId, LotId>(Parts) { [part] = change.Lot }, Lots = [.. Lots, change.Lot, part],
        }, null);
    }

    private (SupposedSeason?, ChangeFault?) Opened(SeasonChange.RoomOpened change)
    {
        int? already = Season.SealedRooms.FirstOrDefault(room => room.Place == change.Place) is { } shut ? Settings.WeekOf(shut.Sealed) : null;
        RoomRow? planned = Rooms.FirstOrDefault(room => room.Place == change.Place);
        if ((already ?? planned?.Sealed) is not { } sealedWeek || Season.Places.All(place => place.Id != change.Place || place.Kind != PlaceKind.Sealed)) return (null, ChangeFault.NotSealed);
        int? week = change.Day is { } day ? Settings.WeekOf(day) : null;
        if (week <= sealedWeek || week < Settings.AsOfWeek || week >= Settings.Weeks) return (null, ChangeFault.NotAhead);
        return (this with { Rooms = [.. Rooms.Where(room => room.Place != change.Place), new RoomRow(change.Place, sealedWeek, week)] }, null);
    }

    private static LotRow Part(LotRow row, double mass, double bins) => row with { Net = row.Net * mass, NetLow = row.NetLow * mass, NetHigh = row.NetHigh * mass, Bins = row.Bins * bins };

    private bool Dug(LotRow row) => row.Harvested < Settings.AsOf;

    private List<LotRow> Rows(LotId lot) => [.. Season.Lots.Where(row => row.Lot == lot && row.Net > 0 && Settings.StartWeekOf(row) < Settings.Weeks)];

    private SupposedSeason Changed(LotId lot, Func<LotRow, LotRow> change) =>
        this with { Season = Season with { Lots = [.. Season.Lots.Select(row => row.Lot == lot ? change(row) : row)] }, Lots = [.. Lots, lot] };
}
