using System.Globalization;
using System.Text;

namespace Cloveshed.SeasonFiles.Faults;

/// <summary>The languages that texts of faults and warnings exist in.</summary>
public enum TextLanguage { English, Spanish }

/// <summary>
/// Something in a season's files that keeps them from being read, named so that a person finds it without a search.
/// </summary>
/// <param name="Line">The physical line, from 1, on which the row starts; null where the fault is of the whole file.</param>
/// <param name="Column">The column, the columns of a key joined by a comma, or the key in season.json.</param>
/// <param name="Value">What was found, shortened to 80 characters, with line ends written as \n.</param>
/// <param name="Expected">What should have been there.</param>
/// <param name="Remedy">What to do.</param>
public sealed record Fault(
    FaultRule Rule, string File, int? Line, string? Column, string? Value, string Expected, string Remedy,
    TextLanguage Language = TextLanguage.English)
{
    /// <summary>One line: where, what was found, what was expected, what to do.</summary>
    public override string ToString()
    {
        bool spanish = Language == TextLanguage.Spanish;
        StringBuilder text = new(File);
        if (Line is { } line)
            text.Append(CultureInfo.InvariantCulture, $", {(spanish ? "línea" : "line")} {line}");
        if (Column is not null)
            text.Append(CultureInfo.InvariantCulture, $", {(spanish ? "columna" : "column")} {Column}");
        text.Append(": ");
        if (Value is not null)
            text.Append(CultureInfo.InvariantCulture, $"{(spanish ? "dice" : "found")} \"{Value}\"; ");
        text.Append(CultureInfo.InvariantCulture, $"{(spanish ? "se esperaba" : "expected")} {Expected}. {Remedy}");
        return text.ToString();
    }
}

/// <summary>Something that was read otherwise than written, or left out, and that a person should know.</summary>
public sealed record SeasonWarning(string File, int? Line, string? Column, string Text)
{
    /// <summary>One line: where, and what.</summary>
    public override string ToString() =>
        File + (Line is { } line ? $":{line.ToString(CultureInfo.InvariantCulture)}" : "") + (Column is null ? "" : $" {Column}") + ": " + Text;
}
