using System.Text;

namespace Cloveshed.SeasonFiles.Layouts;

/// <summary>The words that a column may hold and what they mean. Read without regard to case, written as listed.</summary>
internal sealed class WordList<T>(params (string Text, T Value)[] words) where T : struct, Enum
{
    public string All { get; } = string.Join(", ", words.Select(word => word.Text));

    public T? Find(ReadOnlySpan<byte> cell)
    {
        foreach ((string text, T value) in words)
            if (Ascii.EqualsIgnoreCase(cell, text))
                return value;
        return null;
    }

    public string TextOf(T value)
    {
        foreach ((string text, T known) in words)
            if (EqualityComparer<T>.Default.Equals(known, value))
                return text;
        throw new ArgumentOutOfRangeException(nameof(value), value, $"Not one of {All}.");
    }
}
