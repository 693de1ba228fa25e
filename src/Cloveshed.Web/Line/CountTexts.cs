using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Line;

/// <summary>A fault of a sizer's file in words: file, line, field, value, what was expected, what to do.</summary>
internal static class CountTexts
{
    public static string Of(CountFault fault, string file, Words<LineWord> words)
    {
        string where = fault switch
        {
            { Line: { } line, Field: { } field } => words.Say(LineWord.CountWhereField, file, line, field, fault.Value),
            { Line: { } line } => words.Say(LineWord.CountWhereLine, file, line, fault.Value),
            _ => words.Say(LineWord.CountWhereFile, file),
        };
        return where + " " + words[fault.Kind switch
        {
            CountFaultKind.NoHeader => LineWord.CountNoHeader,
            CountFaultKind.NoWeight => LineWord.CountNoWeight,
            CountFaultKind.TwoUnits => LineWord.CountTwoUnits,
            CountFaultKind.NotANumber => LineWord.CountNotANumber,
            CountFaultKind.OutOfBounds => LineWord.CountOutOfBounds,
            CountFaultKind.NotWhole => LineWord.CountNotWhole,
            CountFaultKind.Cells => LineWord.CountCells,
            _ => LineWord.CountNoBulbs,
        }];
    }
}
