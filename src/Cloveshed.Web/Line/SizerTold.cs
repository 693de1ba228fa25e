using Cloveshed.Core.Cuts;
using Cloveshed.Core.Line;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Line;

/// <summary>
/// A setting's figures as they stand on the page, each by the name of its spot: the page is written with them, and a hand that drags
/// gets the same ones, so that the two cannot differ.
/// </summary>
/// <param name="Said">Text by spot: "share-3" is the share of class 3.</param>
/// <param name="Off">Classes whose box is off tolerance.</param>
/// <param name="Regions">Of each box: its class's index and where it begins and ends, g.</param>
/// <param name="Faults">Fields that hold no number.</param>
public sealed record SizerTold(IReadOnlyDictionary<string, string> Said, IReadOnlyList<int> Off, IReadOnlyList<SizerRegion> Regions, IReadOnlyList<string> Faults)
{
    private const string None = "–";

    /// <summary>The text of a spot of a class.</summary>
    public string this[string spot, int k] => Said[$"{spot}-{k}"];

    public string this[string spot] => Said[spot];

    public static SizerTold Of(SizerSight sight, ShedReading shed, Words<LineWord> words)
    {
        Reader reader = shed.Reader;
        double packedKg = sight.PackedKg(SizerSight.KilogramsPerUnit(shed.SeasonOpen));
        Dictionary<string, string> said = new(StringComparer.Ordinal);
        List<int> off = [];
        List<SizerRegion> regions = [];
        Setting setting = sight.Setting.Setting;
        IReadOnlyList<SizeClass> chart = sight.Question.Chart;
        string Name(int k) => chart[k].Id.Text;
        for (int k = 0; k < chart.Count; k++)
        {
            int box = Index(setting, k);
            BoxFound? found = box >= 0 ? setting.Boxes[box] : null;
            bool empty = found is null || found.Share <= 0;
            int into = Holding(setting, k);
            void Put(string spot, string? text) => said[$"{spot}-{k}"] = text ?? None;
            Put("where", found is not null ? "" : into >= 0 ? words.Say(LineWord.GoesInto, Name(setting.Boxes[into].Box.Class)) : words[k < (setting.Boxes.Count > 0 ? setting.Boxes[0].Box.Class : chart.Count) ? LineWord.LeftUnder : LineWord.TakenOff]);
            Put("share", found is null ? null : reader.Percent(found.Share));
            Put("band", found is null ? null : words.Say(LineWord.BandOf, reader.Percent(sight.Setting.Shares[box].Low, 0), reader.Percent(sight.Setting.Shares[box].High, 0)));
            Put("count", found is null ? null : reader.Percent(sight.Setting.CountShares[box]));
            Put("cartons", found is null ? null : reader.Number(Cartons(found, packedKg), 0));
            Put("each", empty ? null : reader.Number(WindowShare.CartonG / found!.MeanG, 0));
            Put("below", empty ? null : reader.Percent(found!.Below));
            Put("above", empty ? null : reader.Percent(found!.Above));
            Put("risk", empty ? null : found!.RefusalRisk is { } risk ? reader.Percent(risk) : null);
            Put("money", found is null ? null : reader.Money(found.Share * found.Paid * packedKg));
            Put("up", found is null ? null : Signed(sight.Setting.Grams[box].Up * packedKg, reader));
            Put("down", found is null ? null : Signed(sight.Setting.Grams[box].Down * packedKg, reader));
            Put("state", empty ? "" : words[found!.Holds ? LineWord.Holds : LineWord.OffTolerance]);
            Put("best", CutOf(sight.Best.Setting, k, reader));
            Put("now", CutOf(sight.Now.Setting, k, reader));
            int best = Index(sight.Best.Setting, k);
            Put("best-share", best < 0 ? null : reader.Percent(sight.Best.Setting.Boxes[best].Share));
            Put("best-cartons", best < 0 ? null : reader.Number(Cartons(sight.Best.Setting.Boxes[best], packedKg), 0));
            Put("best-up", best < 0 ? null : Signed(sight.Best.Grams[best].Up * packedKg, reader));
            Put("best-down", best < 0 ? null : Signed(sight.Best.Grams[best].Down * packedKg, reader));
            if (found is { Holds: false } && !empty)
            {
                off.Add(k);
            }

            if (found is not null)
            {
                regions.Add(new SizerRegion(k, found.Box.MinG, box + 1 < setting.Boxes.Count ? setting.Boxes[box + 1].Box.MinG : setting.OverG));
            }
        }

        double value = setting.Value * packedKg, best2 = sight.Best.Setting.Value * packedKg, now = sight.Now.Setting.Value * packedKg;
        double boxed = setting.Boxes.Sum(found => found.Share), first = setting.Boxes.Count > 0 ? sight.Question.Curve.MassShare(0, setting.Boxes[0].Box.MinG) : 1;
        said["value"] = reader.Money(value);
        said["value-band"] = words.Say(LineWord.BandOf, reader.Money(sight.Setting.Value.Low * packedKg), reader.Money(sight.Setting.Value.High * packedKg));
        said["best-value"] = reader.Money(best2);
        said["now-value"] = reader.Money(now);
        said["gain"] = Signed(best2 - value, reader);
        said["gain-now"] = words.Say(LineWord.BestOverNow, Signed(best2 - now, reader));
        said["gain-setting"] = words.Say(LineWord.SettingOverNow, Signed(value - now, reader));
        said["per-mass"] = reader.PricePerMass(packedKg > 0 && sight.Mass > 0 ? value / sight.Mass : 0);
        said["under"] = reader.Percent(first);
        said["over"] = reader.Percent(Math.Max(0, 1 - boxed - first));
        said["cartons"] = reader.Number(setting.Boxes.Sum(found => Cartons(found, packedKg)), 0);
        said["packed"] = reader.Mass(packedKg * boxed / SizerSight.KilogramsPerUnit(shed.SeasonOpen));
        said["summary"] = Summary(sight, setting, off, reader, words, Name);
        said["wrong"] = sight.OutOfOrder is { } wrong ? words.Say(LineWord.OutOfOrder, Name(wrong)) : sight.Asked.Faults.Count > 0 ? words[LineWord.NotANumber] : "";
        return new(said, off, regions, sight.Asked.Faults);
    }

    /// <summary>30 lb cartons that a box fills.</summary>
    public static double Cartons(BoxFound found, double packedKg) => found.Share * packedKg * 1000 / WindowShare.CartonG;

    private static string Summary(SizerSight sight, Setting setting, List<int> off, Reader reader, Words<LineWord> words, Func<int, string> name)
    {
        if (setting.Boxes.Count == 0)
        {
            return words[LineWord.SummaryNone];
        }

        BoxFound most = setting.Boxes.MaxBy(found => found.Share)!;
        string head = setting.Boxes.Count == 1 ? words.Say(LineWord.SummaryOne, name(most.Box.Class), reader.Percent(most.Share, 0))
            : words.Say(LineWord.Summary, setting.Boxes.Count, name(most.Box.Class), reader.Percent(most.Share, 0));
        string best = sight.Best.Setting.Value < setting.Value - 1e-9 ? " " + words[LineWord.SummaryBestLess] : "";
        return head + " " + (off.Count == 0 ? words.Say(LineWord.SummaryHolds, reader.Percent(sight.Question.Tolerance, 0)) : words.Say(LineWord.SummaryOff, string.Join(", ", off.Select(name)), reader.Percent(sight.Question.Tolerance, 0)) + " " + words[sight.Asked.Off == OffBox.Refused ? LineWord.SummaryRefused : LineWord.SummaryPaid]) + best;
    }

    private static string? CutOf(Setting setting, int k, Reader reader) => Index(setting, k) is >= 0 and var at ? reader.Number(setting.Boxes[at].Box.MinG, 1) : null;

    private static int Index(Setting setting, int k)
    {
        for (int at = 0; at < setting.Boxes.Count; at++)
        {
            if (setting.Boxes[at].Box.Class == k)
            {
                return at;
            }
        }

        return -1;
    }

    private static int Holding(Setting setting, int k)
    {
        for (int at = 0; at < setting.Boxes.Count; at++)
        {
            if (setting.Boxes[at].Box.Class < k && setting.Boxes[at].Box.Last >= k)
            {
                return at;
            }
        }

        return -1;
    }

    private static string Signed(double money, Reader reader) => money >= 0.5 ? "+" + reader.Money(money) : reader.Money(money);
}

/// <summary>Where a box lies on the curve.</summary>
/// <param name="ToG">Null: no upper end.</param>
public sealed record SizerRegion(int Class, double FromG, double? ToG);
