using System.Globalization;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Setup;

/// <summary>POST /setup/ledger/…: the whole ledger walked and told, and a copy of it to take away.</summary>
internal static class LedgerDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/setup/ledger/verify", Verify);
        routes.MapPost("/setup/ledger/backup", Backup);
    }

    private static IResult Verify(HttpContext context, [FromForm] IFormCollection form, ShedLedger ledger, Viewer viewer, FactDesk desk)
    {
        Words<SetupWord> words = Words.Of<SetupWord>(viewer.Language);
        VerifyResult result = ledger.Verify();
        string facts = result.Facts.ToString("N0", CultureInfo.InvariantCulture);
        return desk.Back(context, form, result.Ok
            ? new Said(false, words.Say(SetupWord.VerifyHolds, facts, result.Head.Hash))
            : new Said(true, words.Say(SetupWord.VerifyBroken, result.Flaws.Count.ToString("N0", CultureInfo.InvariantCulture), result.Flaws[0].Where, result.Flaws[0].Found), words[SetupWord.VerifyRemedy]));
    }

    /// <summary>The copy is made and proved before the first byte is sent, and is gone from here once it is sent.</summary>
    private static IResult Backup([FromForm] IFormCollection form, ShedLedger ledger, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(form);
        string folder = Directory.CreateTempSubdirectory("cloveshed-backup-").FullName, file = Path.Combine(folder, "backup.db");
        BackupResult result;
        try
        {
            result = ledger.Backup(file);
        }
        catch
        {
            Directory.Delete(folder, recursive: true);
            throw;
        }

        FileStream copy = new(file, FileMode.Open, FileAccess.Read, FileShare.Delete, 81920, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        return new SentThenGone(copy, folder, string.Create(CultureInfo.InvariantCulture, $"cloveshed-{clock.GetLocalNow():yyyy-MM-dd}-{result.Facts}.db"));
    }

    private sealed class SentThenGone(FileStream copy, string folder, string name) : IResult
    {
        public async Task ExecuteAsync(HttpContext httpContext)
        {
            try
            {
                await TypedResults.Stream(copy, "application/vnd.sqlite3", name).ExecuteAsync(httpContext);
            }
            finally
            {
                await copy.DisposeAsync();
                Directory.Delete(folder, recursive: true);
            }
        }
    }
}
