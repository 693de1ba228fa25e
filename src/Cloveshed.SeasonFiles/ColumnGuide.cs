using System.Globalization;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles;

/// <summary>What a column's cells are, finer than their look: a week is a date that must be a Monday, a name must be in another file.</summary>
public enum ColumnKind { Text, Number, Whole, Date, Week, YesNo, Word, Name }

/// <summary>
/// One column for whoever asks a person for its cells: what it takes, and how that is said. The reader remains the judge; a test holds
/// each of these against it.
/// </summary>
/// <param name="Needed">Whether the cell must be filled.</param>
/// <param name="Words">The words that it takes, for a column of words.</param>
/// <param name="NamedIn">The files that have the names, in their first columns, for a column of names.</param>
public sealed record ColumnGuide(string File, string Name, bool Needed, ColumnKind Kind, IReadOnlyList<string> Words, IReadOnlyList<string> NamedIn)
{
    /// <summary>The names of this file are often right, though others are too.</summary>
    public string? OftenIn { get; init; }

    /// <summary>For numbers: the bounds, both included unless <see cref="AboveLeast"/>.</summary>
    public double? Least => Limits?.Min;

    /// <summary>For numbers.</summary>
    public double? Most => Limits?.Max;

    /// <summary>Whether the least is itself too little.</summary>
    public bool AboveLeast => Limits?.AboveMin ?? false;

    internal Bounds? Limits { get; init; }

    /// <summary>What is expected, in the reader's words, to stand after a colon.</summary>
    public string Expectation(TextLanguage language) => Kind switch
    {
        ColumnKind.Number => Say(Limits!.Rule, language, RangeTexts.Of(Limits, language)),
        ColumnKind.Whole => Say(FaultRule.Whole, language, RangeTexts.Of(Limits!, language)),
        ColumnKind.Date => Say(FaultRule.Date, language),
        ColumnKind.Week => Say(FaultRule.Monday, language),
        ColumnKind.YesNo => Say(FaultRule.YesNo, language),
        ColumnKind.Word => Say(FaultRule.Word, language, string.Join(", ", Words)),
        ColumnKind.Name => Say(FaultRule.Unknown, language, string.Join(" / ", NamedIn), string.Join(" / ", NamedIn.Select(file => SeasonTable.Of(file)!.Columns[0]))),
        _ => Say(FaultRule.TextTooLong, language, Cells.LongestText),
    };

    private static string Say(FaultRule rule, TextLanguage language, params ReadOnlySpan<object?> words) =>
        string.Format(CultureInfo.InvariantCulture, FaultTexts.Of(rule, language).Expected, words);
}
