using System.IO.Compression;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime.Text;

namespace Cloveshed.Web.Setup;

/// <summary>GET /setup/export/…: the season as files for the viewer's day, and the adopted plan's answer.</summary>
internal static class ExportDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/setup/export/season.zip", Season);
        routes.MapGet("/setup/export/plan.zip", Plan);
    }

    private static IResult Season(ShedReading shed)
    {
        if (shed.Season is not { } season)
        {
            return TypedResults.NotFound();
        }

        string day = LocalDatePattern.Iso.Format(shed.Viewer.AsOf?.Day ?? season.Settings.AsOf);
        return Zip(shed.State.Files(), shed.Viewer.AsOf is null ? "season.zip" : $"season-{day}.zip");
    }

    private static IResult Plan(ShedReading shed, ShedLedger ledger) => shed.State.Adopted is { } adopted && ledger.Document(adopted.Document) is { } document
        ? Zip(PlanDocument.Files(document).Where(file => !file.Key.Contains('/', StringComparison.Ordinal)), "plan.zip") : TypedResults.NotFound();

    /// <summary>Packed on the disk and sent from there: a season may be larger than one likes to hold twice.</summary>
    private static IResult Zip(IEnumerable<KeyValuePair<string, ReadOnlyMemory<byte>>> files, string name)
    {
        FileStream packed = new(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 81920, FileOptions.DeleteOnClose);
        using (ZipArchive zip = new(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string file, ReadOnlyMemory<byte> bytes) in files)
            {
                using Stream content = zip.CreateEntry(file, CompressionLevel.Optimal).Open();
                content.Write(bytes.Span);
            }
        }

        packed.Seek(0, SeekOrigin.Begin);
        return TypedResults.Stream(packed, "application/zip", name);
    }
}
