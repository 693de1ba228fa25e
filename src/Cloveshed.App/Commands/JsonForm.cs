using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Cloveshed.App.Commands;

/// <summary>How JSON documents and bare numbers are written: indented, names and words as they are, shortest digits that read back.</summary>
internal static class JsonForm
{
    /// <summary>Not for embedding in HTML, which nothing here does.</summary>
    public static JsonSerializerOptions Indented { get; } = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>On one line.</summary>
    public static JsonSerializerOptions Plain { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
