using System.Text.Encodings.Web;
using System.Text.Json;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>How JSON is written: for people to read, letters of every script as themselves, line ends as LF everywhere.</summary>
internal static class JsonText
{
    public static readonly JsonWriterOptions Written = new()
    {
        Indented = true,
        NewLine = "\n",
        // The relaxed encoder leaves < and & as they are: the files are never put into a page unescaped.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
}
