using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>What the colours, patterns and shapes of a picture mean, in words, above it.</summary>
public static class Legends
{
    public static MarkupText Board(Reader reader)
    {
        var list = new MarkupText().Open("ul", ("class", "legend"));
        Item(list, reader.Say(Say.KindOpen), d => d.Rect(0, 3, 28, 9, "k-open"));
        Item(list, reader.Say(Say.KindCold), d => d.Rect(0, 3, 28, 9, "k-cold").Path("M1 7.5H27", "core-cold"));
        Item(list, reader.Say(Say.KindSealed), d => d.Rect(0, 3, 28, 9, "k-sealed").Path("M0 7.5H28", "core-sealed"));
        Item(list, reader.Say(Say.LegendWindow), d => d.Rect(0, 0, 28, 15, "room-window").Line(0, 0, 0, 15, "room-opens"));
        Item(list, reader.Say(Say.LegendFlag), d => d.Line(12, 0, 12, 15, "flag-pole").Path("M12 0l6 3.2l-6 3.2z", "flag"));
        Item(list, reader.Say(Say.ModeFresh), d => d.Rect(4, 1, 20, 13, "b-fresh"));
        Item(list, reader.Say(Say.ModeCrack), d => d.Rect(4, 1, 20, 13, "b-crack"));
        Item(list, reader.Say(Say.ModeSeed), d => d.Rect(4, 1, 20, 13, "b-seed"));
        Item(list, reader.Say(Say.LegendOther), d => d.Rect(4, 1, 20, 13, "other b-fresh"));
        Item(list, reader.Say(Say.LegendHours), d => d.Rect(0, 6, 28, 3, "hours-free").Rect(0, 6, 16, 3, "hours-used"));
        Item(list, reader.Say(Say.LegendFull), d => d.Rect(0, 6, 20, 3, "hours-full").Rect(20, 4.5, 8, 6, "hours-over"));
        return list.Close("ul").NewLine();
    }

    public static MarkupText Keeping(Reader reader)
    {
        var list = new MarkupText().Open("ul", ("class", "legend"));
        Item(list, reader.Say(Say.LegendLife), d => d.Rect(0, 2, 7, 11, "life-1").Rect(7, 2, 7, 11, "life-2").Rect(14, 2, 7, 11, "life-3").Rect(21, 2, 7, 11, "life-4"));
        Item(list, reader.Say(Say.LegendParts), d => d.Rect(0, 4.5, 28, 6, "life-2"));
        Item(list, reader.Say(Say.LegendThin), d => d.Rect(0, 6.25, 28, 2.5, "life-2"));
        Item(list, reader.Say(Say.LegendFlag), d => d.Line(12, 0, 12, 15, "flag-pole").Path("M12 0l6 3.2l-6 3.2z", "flag"));
        Item(list, reader.Say(Say.LegendLonger), d => d.Line(0, 7.5, 28, 7.5, "longer"));
        foreach ((LineMode? mode, string words) in new (LineMode?, string)[]
            { (LineMode.Fresh, reader.Mode(LineMode.Fresh)), (LineMode.Crack, reader.Mode(LineMode.Crack)), (LineMode.Seed, reader.Mode(LineMode.Seed)), (null, reader.Say(Say.SoldAsIs)) })
        {
            Item(list, words, d => KeepingChart.Mark(d, new KeepingRun(0, mode, 1, 0), 14, 7.5, 5, null));
        }
        Item(list, reader.Say(Say.Discarded), d => KeepingChart.Mark(d, new KeepingRun(0, null, 1, 0, Discarded: true), 14, 7.5, 5, null));
        return list.Close("ul").NewLine();
    }

    public static MarkupText Promise(Reader reader)
    {
        var list = new MarkupText().Open("ul", ("class", "legend"));
        Item(list, reader.Say(Say.LegendShipped), d => d.Rect(4, 1, 20, 13, "b-fresh"));
        Item(list, reader.Say(Say.LegendSold), d => d.Rect(4, 1, 20, 13, "sold").Line(14, 2, 14, 13, "core-sold"));
        Item(list, reader.Say(Say.LegendBeyond), d => d.Rect(4, 2, 20, 12, "free").Line(4, 2, 24, 2, "free-top"));
        Item(list, reader.Say(Say.LegendPrice), d => d.Rect(0, 2, 7, 11, "price-1").Rect(7, 2, 7, 11, "price-2").Rect(14, 2, 7, 11, "price-3").Rect(21, 2, 7, 11, "price-4"));
        return list.Close("ul").NewLine();
    }

    private static void Item(MarkupText list, string words, Action<Drawing> draw)
    {
        var drawing = new Drawing(28, 15);
        draw(drawing);
        list.Open("li").Trusted(drawing.ToSvg("key", null)).Text(words).Close("li");
    }
}
