using System.Text.Json;
using Cloveshed.Core;

namespace Cloveshed.Ledger.Folds;

/// <summary>What the line counted and is set to, as texts of the read tables and back: ids have no JSON of their own.</summary>
internal static class LineRecords
{
    public static string Text(SizerCount count) => JsonSerializer.Serialize(new CountRecord(count.Fact, count.Lot.Text, count.File, count.At, count.BinsRun, count.From, [.. count.Counts], count.TooHeavy));

    public static string Text(SizerSetting setting) => JsonSerializer.Serialize(new SizerRecord(setting.Fact, setting.Lot.Text, setting.At, [.. setting.Boxes], setting.OverG));

    public static string Text(DrumSetting setting) => JsonSerializer.Serialize(new DrumRecord(setting.Fact, setting.Lot.Text, setting.At, [.. setting.HolesMm], setting.LargestFirst));

    public static SizerCount Count(string record) => JsonSerializer.Deserialize<CountRecord>(record)!.Count();

    public static SizerSetting Sizer(string record) => JsonSerializer.Deserialize<SizerRecord>(record)!.Setting();

    public static DrumSetting Drum(string record) => JsonSerializer.Deserialize<DrumRecord>(record)!.Setting();

    private sealed record CountRecord(Guid Fact, string Lot, string File, DateTimeOffset At, int BinsRun, int From, long[] Counts, long TooHeavy)
    {
        public SizerCount Count() => new(Fact, new LotId(Lot), File, At, BinsRun, From, Counts, TooHeavy);
    }

    private sealed record SizerRecord(Guid Fact, string Lot, DateTimeOffset At, SetBox[] Boxes, double? OverG)
    {
        public SizerSetting Setting() => new(Fact, new LotId(Lot), At, Boxes, OverG);
    }

    private sealed record DrumRecord(Guid Fact, string Lot, DateTimeOffset At, double[] HolesMm, bool LargestFirst)
    {
        public DrumSetting Setting() => new(Fact, new LotId(Lot), At, HolesMm, LargestFirst);
    }
}
