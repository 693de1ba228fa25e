using Cloveshed.Core;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Dock;

/// <summary>An order line's state and sources in the reader's words.</summary>
internal static class DockTexts
{
    private const int FewSources = 3;

    public static DockWord Word(LineState state) => state switch
    {
        LineState.OnTime => DockWord.StateOnTime,
        LineState.Late => DockWord.StateLate,
        LineState.Short => DockWord.StateShort,
        _ => DockWord.StateUnplanned,
    };

    public static string Units(DockLine line, Reader reader, Words<DockWord> words)
    {
        List<string> said = [];
        if (line.OnTime > 0)
        {
            said.Add(words.Say(DockWord.UnitsOnTime, reader.Number(line.OnTime, 0)));
        }

        if (line.Late > 0)
        {
            said.Add(words.Say(DockWord.UnitsLate, reader.Number(line.Late, 0)));
        }

        if (line.Short > 0)
        {
            said.Add(words.Say(DockWord.UnitsShort, reader.Number(line.Short, 0)));
        }

        return string.Join(", ", said);
    }

    /// <summary>The sources of all of a line's shipments, most units first: lot and run, or finished stock.</summary>
    public static string From(DockLine line, Reader reader, Words<DockWord> words)
    {
        (string Name, double Units)[] sources = [.. line.Fills.SelectMany(fill => fill.Sources)
            .GroupBy(source => Name(source, words)).Select(group => (Name: group.Key, Units: group.Sum(source => source.Units))).Where(source => source.Units >= 0.5).OrderByDescending(source => source.Units)];
        string some = string.Join(", ", sources.Take(FewSources).Select(source => words.Say(DockWord.FromUnits, reader.Number(source.Units, 0), source.Name)));
        return sources.Length <= FewSources ? some.Length == 0 ? "–" : some : words.Say(DockWord.FromMore, some, reader.Number(sources.Length - FewSources, 0));
    }

    private static string Name(FillSource source, Words<DockWord> words) =>
        source.Run is { } run ? words.Say(DockWord.LotRun, source.Lot, run) : source.Lot is { } lot ? words.Say(DockWord.StockOf, lot) : words[DockWord.Stock];
}
