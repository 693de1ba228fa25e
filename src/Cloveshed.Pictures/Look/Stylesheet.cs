using System.Reflection;

namespace Cloveshed.Pictures.Look;

/// <summary>The stylesheet of the pictures and of the report. Fonts go in as data, so that nothing is fetched.</summary>
public static class Stylesheet
{
    /// <summary>Tokens and what the drawings' classes mean: all that a page needs to show a picture.</summary>
    public static string Pictures { get; } = Tokens.ToCss() + Text("Look/pictures.css");

    /// <summary>Fonts, tokens, pictures and the report's own layout.</summary>
    public static string Report { get; } =
        Face("Atkinson Hyperlegible Next", "200 800", "Fonts/atkinson-hyperlegible-next-latin-wght-normal.woff2")
        + Face("Bitter", "100 900", "Fonts/bitter-latin-wght-normal.woff2") + Pictures + Text("Look/report.css") + Text("Look/stacks.css");

    private static string Face(string family, string weights, string resource) =>
        $"@font-face{{font-family:'{family}';font-style:normal;font-display:block;font-weight:{weights};"
        + $"src:url(data:font/woff2;base64,{Convert.ToBase64String(Bytes(resource))}) format('woff2')}}\n";

    private static string Text(string resource) => System.Text.Encoding.UTF8.GetString(Bytes(resource));

    private static byte[] Bytes(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The build left out the embedded file {resource}.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
