using System.Collections.Frozen;
using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using Cloveshed.Pictures.Look;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace Cloveshed.Web.Shared;

/// <summary>
/// A file that pages are made with: its address holds a digest of its bytes, so that a browser may keep it for ever and
/// still gets the new one at once.
/// </summary>
public sealed class Asset
{
    /// <summary>Of 11: within a few percent of the smallest, at a tenth of the time.</summary>
    private const int BrotliQuality = 9;

    private const int BrotliWindow = 22;

    private readonly byte[] bytes;
    private readonly Lazy<byte[]?> brotli;
    private readonly Lazy<byte[]?> gzip;

    internal Asset(string name, string contentType, byte[] bytes)
    {
        this.bytes = bytes;
        ContentType = contentType;
        string digest = Convert.ToHexStringLower(SHA256.HashData(bytes))[..12];
        int dot = name.LastIndexOf('.');
        Path = $"{ShedAssets.Prefix}{name[..dot]}.{digest}{name[dot..]}";
        bool packed = name.EndsWith(".woff2", StringComparison.Ordinal);
        brotli = new(() => packed ? null : Brotli(bytes));
        gzip = new(() => packed ? null : Gzip(bytes));
    }

    /// <summary>The address, from the root.</summary>
    public string Path { get; }

    public string ContentType { get; }

    /// <summary>Writes the file, packed as the browser can take it.</summary>
    public Task Send(HttpContext context)
    {
        HttpResponse response = context.Response;
        response.ContentType = ContentType;
        response.Headers.CacheControl = "public, max-age=31536000, immutable";
        response.Headers.Vary = HeaderNames.AcceptEncoding;
        string accepted = context.Request.Headers.AcceptEncoding.ToString();
        byte[] sent = bytes;
        if (accepted.Contains("br", StringComparison.Ordinal) && brotli.Value is { } tight)
        {
            (sent, response.Headers.ContentEncoding) = (tight, "br");
        }
        else if (accepted.Contains("gzip", StringComparison.Ordinal) && gzip.Value is { } loose)
        {
            (sent, response.Headers.ContentEncoding) = (loose, "gzip");
        }

        response.ContentLength = sent.Length;
        return HttpMethods.IsHead(context.Request.Method) ? Task.CompletedTask : response.Body.WriteAsync(sent, context.RequestAborted).AsTask();
    }

    private static byte[]? Brotli(byte[] bytes)
    {
        byte[] room = new byte[BrotliEncoder.GetMaxCompressedLength(bytes.Length)];
        return BrotliEncoder.TryCompress(bytes, room, out int written, BrotliQuality, BrotliWindow) && written < bytes.Length ? room[..written] : null;
    }

    private static byte[]? Gzip(byte[] bytes)
    {
        using MemoryStream into = new();
        using (GZipStream packing = new(into, CompressionLevel.Optimal, leaveOpen: true))
        {
            packing.Write(bytes);
        }

        return into.Length < bytes.Length ? into.ToArray() : null;
    }
}

/// <summary>
/// All files that pages are made with: the program's own, embedded, nothing from elsewhere. The stylesheets of all places
/// go out as one.
/// </summary>
public static class ShedAssets
{
    public const string Prefix = "/assets/";

    public const string Stylesheet = "shed.css";

    private static readonly Assembly Own = typeof(ShedAssets).Assembly;

    private static readonly FrozenDictionary<string, Asset> ByName = All();

    private static readonly FrozenDictionary<string, Asset> ByPath = ByName.Values.ToFrozenDictionary(asset => asset.Path, StringComparer.Ordinal);

    /// <summary>The address of a file by its name: "shed.css", "Plan/hold.js", "bitter.woff2".</summary>
    public static string Path(string name) => ByName[name].Path;

    public static Asset? Find(string path) => ByPath.GetValueOrDefault(path);

    private static FrozenDictionary<string, Asset> All()
    {
        Dictionary<string, Asset> all = new(StringComparer.Ordinal);
        foreach ((string name, string resource) in new[]
        {
            ("atkinson.woff2", "Fonts/atkinson-hyperlegible-next-latin-wght-normal.woff2"), ("bitter.woff2", "Fonts/bitter-latin-wght-normal.woff2"),
        })
        {
            all[name] = new Asset(name, "font/woff2", Bytes(typeof(Tokens).Assembly, resource));
        }

        foreach (string resource in Own.GetManifestResourceNames().Order(StringComparer.Ordinal))
        {
            string? type = System.IO.Path.GetExtension(resource) switch { ".js" => "text/javascript; charset=utf-8", ".svg" => "image/svg+xml", _ => null };
            if (type is not null)
            {
                all[resource] = new Asset(resource, type, Bytes(Own, resource));
            }
        }

        all[Stylesheet] = new Asset(Stylesheet, "text/css; charset=utf-8", Encoding.UTF8.GetBytes(Sheet(all)));
        return all.ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>Faces, colours, the drawings' meaning, then what every page has (Shared), then the places' own.</summary>
    private static string Sheet(Dictionary<string, Asset> fonts)
    {
        StringBuilder sheet = new();
        sheet.Append(Face("Atkinson Hyperlegible Next", "200 800", fonts["atkinson.woff2"].Path));
        sheet.Append(Face("Bitter", "100 900", fonts["bitter.woff2"].Path));
        sheet.Append(Grounds.ToCss());
        foreach (string ofPictures in new[] { "Look/pictures.css", "Look/stacks.css" })
        {
            sheet.Append(Encoding.UTF8.GetString(Bytes(typeof(Tokens).Assembly, ofPictures)));
        }

        foreach (string resource in Own.GetManifestResourceNames().Where(name => name.EndsWith(".css", StringComparison.Ordinal))
            .OrderByDescending(name => name.StartsWith("Shared/", StringComparison.Ordinal)).ThenBy(name => name, StringComparer.Ordinal))
        {
            sheet.Append('\n').Append(Encoding.UTF8.GetString(Bytes(Own, resource)));
        }

        return sheet.ToString();
    }

    private static string Face(string family, string weights, string path) =>
        $"@font-face{{font-family:'{family}';font-style:normal;font-display:swap;font-weight:{weights};src:url({path}) format('woff2')}}\n";

    private static byte[] Bytes(Assembly assembly, string resource)
    {
        using Stream stream = assembly.GetManifestResourceStream(resource) ?? throw new InvalidOperationException($"The build left out the embedded file {resource}.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
