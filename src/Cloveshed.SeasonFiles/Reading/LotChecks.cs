using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Files;
using Cloveshed.SeasonFiles.Layouts;
using NodaTime;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>What lots.csv must satisfy as a whole and together with places.csv and rooms.csv, and what of it the season leaves out.</summary>
internal static class LotChecks
{
    // Bins may be fractional, and sums of tenths are not exact.
    private const double Slack = 1e-9;

    public static void Check(SeasonDraft draft)
    {
        CheckAlike(draft);
        CheckCapacities(draft);
        CheckSealedRooms(draft);
    }

    /// <summary>Rows that start after the season, and the samples of lots that are then left without a row.</summary>
    public static void LeaveOutLateOnes(SeasonDraft draft)
    {
        int left = draft.Lots.RemoveAll(lot =>
        {
            bool late = !StartsInSeason(draft.Frame, lot.Row);
            if (late)
                draft.Faults.Warn(WarningRule.LotAfterSeason, LotsFile.Layout.Name, lot.Line, LotsFile.Harvested.Name, lot.Row.Lot, lot.Row.Place);
            return late;
        });
        if (left == 0)
            return;
        HashSet<LotId> standing = [.. draft.Lots.Select(lot => lot.Row.Lot)];
        int firstLine = draft.Samples.FirstOrDefault(sample => !standing.Contains(sample.Bulb.Lot)).Line;
        int samples = draft.Samples.RemoveAll(sample => !standing.Contains(sample.Bulb.Lot));
        if (samples > 0)
            draft.Faults.Warn(WarningRule.SamplesOfLeftOut, SamplesFile.Layout.Name, firstLine, null, samples);
    }

    private static bool StartsInSeason(SeasonFrame frame, LotRow row) =>
        frame.StartOf(row.Harvested) is not { } start || frame.Weeks is not { } weeks || frame.WeekOf(start) < weeks;

    private static void CheckAlike(SeasonDraft draft)
    {
        Dictionary<LotId, (LotRow Row, int Line)> first = [];
        foreach ((LotRow row, int line) in draft.Lots)
        {
            if (first.TryAdd(row.Lot, (row, line)))
                continue;
            (LotRow model, int modelLine) = first[row.Lot];
            foreach ((Column column, Func<LotRow, string> text) in LotsFile.Alike)
                if (text(row) != text(model))
                    draft.Faults.Add(FaultRule.LotDiffers, LotsFile.Layout.Name, line, column.Name, text(row), text(model), modelLine);
        }
    }

    /// <summary>
    /// No row alone may hold more bins than its place, whenever it starts; and together those that start in the plan's first
    /// week may not, because the plan can move nothing before. Later rows find what the plan has made of the place by then.
    /// </summary>
    private static void CheckCapacities(SeasonDraft draft)
    {
        Dictionary<PlaceId, double> capacities = [];
        foreach (Place place in draft.Places)
            capacities.TryAdd(place.Id, place.CapacityBins);
        Dictionary<PlaceId, double> standing = [];
        int? planStart = draft.Frame.StartOf(LocalDate.MinIsoValue) is { } start ? draft.Frame.WeekOf(start) : null;
        foreach ((LotRow row, int line) in draft.Lots)
        {
            if (!capacities.TryGetValue(row.Place, out double capacity))
                continue;
            if (row.Bins > capacity * (1 + Slack))
                Fault(FaultRule.RowOverfull, NumberText.Of(capacity), row.Place);
            if (planStart is null || draft.Frame.WeekOf(draft.Frame.StartOf(row.Harvested)!.Value) != planStart)
                continue;
            double before = standing.GetValueOrDefault(row.Place), now = before + row.Bins;
            standing[row.Place] = now;
            if (before <= capacity * (1 + Slack) && now > capacity * (1 + Slack) && row.Bins <= capacity * (1 + Slack))
                Fault(FaultRule.PlaceOverfull, NumberText.Of(capacity), row.Place, NumberText.Of(now));

            void Fault(FaultRule rule, params ReadOnlySpan<object?> words) =>
                draft.Faults.Add(rule, LotsFile.Layout.Name, line, LotsFile.Bins.Name, NumberText.Of(row.Bins), words);
        }
    }

    /// <summary>Loading is possible to the end of the week in which a room is sealed; what was harvested later can't stand in it.</summary>
    private static void CheckSealedRooms(SeasonDraft draft)
    {
        Dictionary<PlaceId, LocalDate> rooms = [];
        foreach (SealedRoom room in draft.SealedRooms)
            rooms.TryAdd(room.Place, room.Sealed);
        foreach ((LotRow row, int line) in draft.Lots)
            if (rooms.TryGetValue(row.Place, out LocalDate date) && IsoDate.MondayOf(row.Harvested) > IsoDate.MondayOf(date))
                draft.Faults.Add(
                    FaultRule.HarvestedAfterSealing, LotsFile.Layout.Name, line, LotsFile.Harvested.Name, IsoDate.Text(row.Harvested),
                    row.Place, IsoDate.Text(date));
    }
}
