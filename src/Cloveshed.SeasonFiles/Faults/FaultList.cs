using System.Globalization;
using System.Text;

namespace Cloveshed.SeasonFiles.Faults;

/// <summary>
/// The faults and warnings of one reading. All faults are counted; of each file the first <see cref="KeptPerFile"/> are kept
/// with their texts, because nobody reads more and a file of two million bad rows must not fill the memory.
/// </summary>
internal sealed class FaultList(TextLanguage language)
{
    public const int KeptPerFile = 200;
    private const int ShownCharacters = 80;

    private readonly List<Fault> kept = [];
    private readonly List<SeasonWarning> warnings = [];
    private readonly Dictionary<string, int> perFile = [];
    private readonly Dictionary<string, int> warningsPerFile = [];

    public TextLanguage Language { get; } = language;

    /// <summary>How many faults there are, kept or not.</summary>
    public int Count { get; private set; }

    public void Add(FaultRule rule, string file, int? line, string? column, string? value, params ReadOnlySpan<object?> words)
    {
        Count++;
        int already = perFile.GetValueOrDefault(file);
        if (already >= KeptPerFile)
            return;
        perFile[file] = already + 1;
        (string expected, string remedy) = FaultTexts.Of(rule, Language);
        kept.Add(new Fault(
            rule, file, line, column, value is null ? null : Shown(value),
            string.Format(CultureInfo.InvariantCulture, expected, words), string.Format(CultureInfo.InvariantCulture, remedy, words), Language));
    }

    /// <summary>Faults beyond those named, which are only counted.</summary>
    public void CountMore(int more) => Count += more;

    public void Warn(WarningRule rule, string file, int? line, string? column, params ReadOnlySpan<object?> words)
    {
        int already = warningsPerFile.GetValueOrDefault(file);
        if (already >= KeptPerFile)
            return;
        warningsPerFile[file] = already + 1;
        warnings.Add(new SeasonWarning(file, line, column, string.Format(CultureInfo.InvariantCulture, WarningTexts.Of(rule, Language), words)));
    }

    /// <summary>In the order of the files given, then by line; faults of whole files first.</summary>
    public IReadOnlyList<Fault> InOrder(IReadOnlyList<string> files) =>
        [.. kept.OrderBy(fault => Place(files, fault.File)).ThenBy(fault => fault.Line ?? 0)];

    public IReadOnlyList<SeasonWarning> WarningsInOrder(IReadOnlyList<string> files) =>
        [.. warnings.OrderBy(warning => Place(files, warning.File)).ThenBy(warning => warning.Line ?? 0)];

    private static int Place(IReadOnlyList<string> files, string file)
    {
        for (int at = 0; at < files.Count; at++)
            if (files[at] == file)
                return at;
        return files.Count;
    }

    private static string Shown(string value)
    {
        StringBuilder shown = new();
        foreach (char letter in value)
        {
            if (shown.Length >= ShownCharacters)
                return shown.Append('…').ToString();
            if (letter is '\n')
                shown.Append("\\n");
            else if (letter is '\r')
                shown.Append("\\r");
            else
                shown.Append(char.IsControl(letter) ? '�' : letter);
        }
        return shown.ToString();
    }
}
