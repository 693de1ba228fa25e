using Cloveshed.Core;
using Cloveshed.Core.Seasons;
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

    /// <summary>How a price came to be, in a sentence: "44.00 by the list Fall, less 3.00 freight to Port, 41.00 at the dock". Null where it stands in its row and that is all.</summary>
    public static string? PriceFrom(PriceOrigin? origin, Reader reader, Words<DockWord> words)
    {
        if (origin is null || (origin.List is null && origin.Promotions.Count == 0 && origin.Freight is null && origin.Program is null))
        {
            return null;
        }

        List<string> said = [origin.List is { } list ? words.Say(DockWord.PriceOfList, reader.Price((double)origin.Price), list) : words.Say(DockWord.PriceAgreed, reader.Price((double)origin.Price))];
        said.AddRange(origin.Promotions.Where(one => one.Cut > 0).Select(one => words.Say(DockWord.PriceCut, reader.Price((double)one.Cut), one.Name)));
        if (origin.Freight is { } freight)
        {
            said.Add(words.Say(DockWord.PriceFreight, reader.Price((double)freight), origin.Destination));
        }

        if (said.Count > 1)
        {
            said.Add(words.Say(DockWord.PriceAtDock, reader.Price((double)origin.AtDock)));
        }

        return string.Join(", ", said);
    }

    /// <summary>Which part of a program's week a line is; null where it is of none.</summary>
    public static string? ProgramPart(PriceOrigin? origin, Words<DockWord> words) => origin?.Program is not { } part ? null
        : words.Say(part.IsLeast ? DockWord.ProgramLeast : DockWord.ProgramMore, part.Program) + (part.ThatWeekOnly ? "; " + words[DockWord.ProgramThatWeek] : "");

    private static string Name(FillSource source, Words<DockWord> words) =>
        source.Run is { } run ? words.Say(DockWord.LotRun, source.Lot, run) : source.Lot is { } lot ? words.Say(DockWord.StockOf, lot) : words[DockWord.Stock];
}
