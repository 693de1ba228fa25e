using System.Net;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Cloveshed.Web.Setup;

/// <summary>POST /setup/import/…: a season's files come, are looked at, and are taken as one batch of facts when somebody says yes.</summary>
internal static class ImportDoors
{
    private const string Upload = "/setup/import/upload";

    /// <summary>Bytes of a request with files: those, and a little for what stands around them.</summary>
    private const long MostSent = Arrival.MostBytes + (1024 * 1024);

    /// <summary>What is sent beyond the limit is read and thrown away up to here, so that the browser gets to see the answer.</summary>
    private const long MostDrained = 2L * 1024 * 1024 * 1024;

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost(Upload, Take).WithFormOptions(multipartBodyLengthLimit: MostSent, valueCountLimit: Arrival.MostFiles + 20).WithMetadata(new SentLimit(MostSent));
        routes.MapPost("/setup/import/folder", TakeFolder);
        routes.MapPost("/setup/import/demo", TakeDemo);
        routes.MapPost("/setup/import/{token}/take", Import);
    }

    /// <summary>Says no to what is too large before anything of it is read into a form.</summary>
    public static void Use(IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        if (context.Request.Path == Upload && context.Request.ContentLength > MostSent)
        {
            await Drain(context);
            await ShownAgain.As<ImportPage>(Faults(ArrivalFault.TooLarge, context.RequestServices.GetRequiredService<Viewer>())).ExecuteAsync(context);
            return;
        }

        await next(context);
    });

    /// <summary>Asked from the machine that serves: then its folders may be named.</summary>
    public static bool IsHere(HttpContext context) => context.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from);

    private static Task<IResult> Take(HttpContext context, [FromForm] IFormCollection form, Viewer viewer, FactDesk desk, Arrivals arrivals) =>
        Taken(context, form, viewer, desk, arrivals, arrival => Intake.OfForm(arrival, [.. form.Files.Where(file => file.Length > 0 || Arrival.IsOfSeason(Path.GetFileName(file.FileName)))], context.RequestAborted));

    private static Task<IResult> TakeFolder(HttpContext context, [FromForm] IFormCollection form, Viewer viewer, FactDesk desk, Arrivals arrivals) =>
        Taken(context, form, viewer, desk, arrivals, arrival => IsHere(context) ? Intake.OfFolder(arrival, form["path"].ToString().Trim(), context.RequestAborted) : Task.FromResult(ArrivalFault.NotHere));

    private static async Task<IResult> Taken(HttpContext context, IFormCollection form, Viewer viewer, FactDesk desk, Arrivals arrivals, Func<Arrival, Task<ArrivalFault>> take)
    {
        if (viewer.AsOf is not null)
        {
            return Past(context, form, viewer, desk);
        }

        Arrival arrival = arrivals.Open();
        ArrivalFault fault = await take(arrival);
        if (fault == ArrivalFault.None)
        {
            return new SeeOther("/setup/import/" + arrival.Token);
        }

        arrivals.Leave(arrival);
        return ShownAgain.As<ImportPage>(Faults(fault, viewer));
    }

    private static IResult Import(
        HttpContext context, [FromForm] IFormCollection form, string token, ShedLedger ledger, Viewer viewer, FactDesk desk, Arrivals arrivals, ShedSignals signals, SaidOnce said)
    {
        if (viewer.AsOf is not null)
        {
            return Past(context, form, viewer, desk);
        }

        Words<SetupWord> words = Words.Of<SetupWord>(viewer.Language);
        if (arrivals.Find(token) is not { } arrival)
        {
            // Sent twice: the first time took it, and threw the files away.
            said.Say(context, new Said(false, words[SetupWord.ArrivalTakenOrGone]));
            return new SeeOther("/setup");
        }

        ImportResult result = Into(ledger, arrival.Files(), viewer.FileLanguage, desk, signals);
        if (!result.Taken)
        {
            return new SeeOther("/setup/import/" + token);
        }

        arrivals.Leave(arrival);
        said.Say(context, new Said(false, result.Already ? words[SetupWord.SaidSame] : words.Say(SetupWord.SaidImported, result.Facts.ToString("N0", System.Globalization.CultureInfo.InvariantCulture))));
        return new SeeOther("/setup");
    }

    private static IResult TakeDemo(HttpContext context, [FromForm] IFormCollection form, ShedLedger ledger, ShedReading shed, FactDesk desk, ShedOptions options, ShedSignals signals)
    {
        Words<SetupWord> words = Words.Of<SetupWord>(shed.Viewer.Language);
        if (shed.Viewer.AsOf is not null)
        {
            return Past(context, form, shed.Viewer, desk);
        }

        // The button stands where there is no season; a form kept from then must not put the demo in a season's place.
        if (options.Demo is null || shed.Season is not null)
        {
            // Sent twice: the season that is open is the demo.
            if (options.Demo is { } demo && shed.State.Rows?.Settings == System.Text.Encoding.UTF8.GetString(demo[SeasonTable.SettingsName].Span))
            {
                return desk.Back(context, form, new Said(false, words[SetupWord.SaidSame]));
            }

            return desk.Back(context, form, new Said(true, words[SetupWord.DemoNotNow]));
        }

        ImportResult result = Into(ledger, options.Demo, shed.Viewer.FileLanguage, desk, signals);
        return desk.Back(context, form, new Said(!result.Taken, words.Say(result.Taken ? SetupWord.SaidImported : SetupWord.DemoNotNow, result.Facts.ToString("N0", System.Globalization.CultureInfo.InvariantCulture))));
    }

    private static ImportResult Into(ShedLedger ledger, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, TextLanguage language, FactDesk desk, ShedSignals signals) =>
        signals.Import(() => SeasonImport.Import(ledger, files, desk.Origin("setup"), language), result => result.Already ? "again" : result.Taken ? "accepted" : "refused");

    private static IResult Past(HttpContext context, IFormCollection form, Viewer viewer, FactDesk desk)
    {
        Words<ShellWord> shell = Words.Of<ShellWord>(viewer.Language);
        return desk.Back(context, form, new Said(true, shell[ShellWord.AsOfReadOnly], shell[ShellWord.AsOfReadOnlyRemedy]));
    }

    private static Dictionary<string, object> Faults(ArrivalFault fault, Viewer viewer)
    {
        Words<SetupWord> words = Words.Of<SetupWord>(viewer.Language);
        string limit = (Arrival.MostBytes / 1024 / 1024).ToString(System.Globalization.CultureInfo.InvariantCulture), files = Arrival.MostFiles.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string text = fault switch
        {
            ArrivalFault.NothingSent => words[SetupWord.FaultNothing],
            ArrivalFault.TooLarge => words.Say(SetupWord.FaultTooLarge, limit),
            ArrivalFault.TooMany => words.Say(SetupWord.FaultTooMany, files),
            ArrivalFault.NotAZip => words[SetupWord.FaultNotAZip],
            ArrivalFault.LeadsOut => words[SetupWord.FaultLeadsOut],
            ArrivalFault.Twice => words[SetupWord.FaultTwice],
            ArrivalFault.NoFolder => words[SetupWord.FaultNoFolder],
            ArrivalFault.NotHere => words[SetupWord.FaultNotHere],
            ArrivalFault.CannotRead => words[SetupWord.FaultCannotRead],
            _ => throw new ArgumentOutOfRangeException(nameof(fault)),
        };
        return new Dictionary<string, object> { [nameof(ImportPage.Faults)] = (IReadOnlyList<FormFault>)[new FormFault(null, text)] };
    }

    private static async Task Drain(HttpContext context)
    {
        if (context.Request.ContentLength > MostDrained)
        {
            return;
        }

        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = MostDrained;
        }

        await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted);
    }

    private sealed record SentLimit(long? MaxRequestBodySize) : IRequestSizeLimitMetadata;
}
