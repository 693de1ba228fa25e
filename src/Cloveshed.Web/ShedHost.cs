using System.IO.Compression;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Shift;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Ledger.Yard;
using Cloveshed.Web.Api;
using Cloveshed.Web.Dock;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Looks;
using Cloveshed.Web.Line;
using Cloveshed.Web.Plan;
using Cloveshed.Web.Promises;
using Cloveshed.Web.Suppose;
using Cloveshed.Web.Release;
using Cloveshed.Web.Rooms;
using Cloveshed.Web.Setup;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Today;
using Cloveshed.Web.Yard;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web;

/// <summary>How the shed is served.</summary>
/// <param name="Urls">Where it listens: http://127.0.0.1:8080; port 0 takes any free one.</param>
/// <param name="KeyFolder">Holds the keys that protect cookies and forms, so that both survive a restart; it is no part of the ledger.</param>
/// <param name="Version">Of the program, as plans and pages name it.</param>
/// <param name="Elapsed">Seconds on a clock that never goes back, for planning.</param>
/// <param name="Log">Null: nothing is logged.</param>
/// <param name="Variables">The environment, of which only OpenTelemetry's standard variables are read; null: that of the process.</param>
/// <param name="Demo">The files of a season to look around in, by name; null: none is offered.</param>
public sealed record ShedOptions(
    string Urls, string KeyFolder, string Version, Func<double> Elapsed, Action<ILoggingBuilder>? Log = null, IReadOnlyDictionary<string, string?>? Variables = null,
    IReadOnlyDictionary<string, ReadOnlyMemory<byte>>? Demo = null)
{
    /// <summary>What puts a week in order; null: only hands do.</summary>
    public IShiftScheduler? Shifts { get; init; }
}

/// <summary>
/// The web application, built from what it is given and from nothing that lies around: no settings file, no environment of
/// the machine except what the telemetry's standard variables say.
/// </summary>
public static class ShedHost
{
    /// <summary>Names by which this machine may be asked. A page elsewhere whose name was pointed here is not answered.</summary>
    private static readonly string[] OwnNames = ["localhost", "127.0.0.1", "[::1]"];

    public static WebApplication Build(ShedLedger ledger, ILinearSolver solver, TimeProvider clock, ShedOptions options)
    {
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = "cloveshed", EnvironmentName = Environments.Production, ContentRootPath = AppContext.BaseDirectory,
        });
        if (options.Variables is { } variables)
        {
            builder.Configuration.AddInMemoryCollection(variables);
        }
        else
        {
            builder.Configuration.AddEnvironmentVariables();
        }

        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel => kestrel.AddServerHeader = false).UseUrls(options.Urls.Split(';'));
        options.Log?.Invoke(builder.Logging);
        Telemetry.Add(builder.Services, builder.Configuration, options.Version);
        AddParts(builder.Services, ledger, solver, clock, options);
        WebApplication app = builder.Build();
        Use(app);
        Map(app);
        return app;
    }

    private static void AddParts(IServiceCollection services, ShedLedger ledger, ILinearSolver solver, TimeProvider clock, ShedOptions options)
    {
        services.AddRouting();
        services.AddRazorComponents();
        services.AddHttpContextAccessor();
        services.AddAntiforgery(forms => forms.Cookie.Name = "cloveshed-forms");
        services.AddDataProtection().SetApplicationName("cloveshed").PersistKeysToFileSystem(new DirectoryInfo(options.KeyFolder));
        services.Configure<HostFilteringOptions>(names => names.AllowedHosts = OwnNames);
        services.AddResponseCompression(packing => packing.EnableForHttps = false);
        services.Configure<BrotliCompressionProviderOptions>(brotli => brotli.Level = CompressionLevel.Fastest);
        services.AddOpenApi(FactsApi.DocumentName, FactsApi.Describe);
        services.ConfigureHttpJsonOptions(json => FactJson.Configure(json.SerializerOptions));
        services.AddHealthChecks().AddCheck<LedgerReady>("ledger");

        services.AddSingleton(ledger);
        services.AddSingleton(solver);
        services.AddSingleton(clock);
        services.AddSingleton(options);
        services.AddSingleton<PastShelf>();
        services.AddSingleton(new RecordShelf<RoomRecord, PlaceLog>(ledger, clock, new(ledger.RoomRecords, record => record.Seq, (records, here, when) => new PlaceLog(records, here, when))));
        services.AddSingleton(new RecordShelf<YardRecord, YardLog>(ledger, clock, new(ledger.YardRecords, record => record.Seq, (records, here, when) => new YardLog(records, here, when))));
        services.AddSingleton<ClockShelf>();
        services.AddSingleton<ClockSightShelf>();
        services.AddSingleton<CuringShelf>();
        services.AddSingleton<PlanShelf>();
        services.AddSingleton<LotShelf>();
        services.AddSingleton<BookShelf>();
        services.AddSingleton<DecisionShelf>();
        services.AddSingleton<StandingShelf>();
        services.AddSingleton<ReleaseShelf>();
        services.AddSingleton<LineShelf>();
        services.AddSingleton<SaidOnce>();
        services.AddScoped(parts => Viewer.Of(parts.GetRequiredService<IHttpContextAccessor>().HttpContext!.Request));
        services.AddScoped<ShedReading>();
        services.AddScoped<FactDesk>();
        services.AddSingleton<ListChanges>();
        services.AddSingleton<RowsShelf>();
        services.AddSingleton<SureRoom>();
        services.AddHostedService(parts => parts.GetRequiredService<SureRoom>());
        services.AddSingleton<Arrivals>();
        services.AddSingleton<ArrivalReports>();
        services.AddScoped<RowDesk>();
        PlanParts.Add(services);
        LineParts.Add(services);
        PromiseParts.Add(services);
    }

    private static void Use(WebApplication app)
    {
        Headers.Use(app);
        RequestLog.Use(app);
        app.UseResponseCompression();
        ErrorPages.UseForTrouble(app);
        app.UseHostFiltering();
        ErrorPages.UseForStatus(app);
        app.UseRouting();
        ImportDoors.Use(app);
        app.UseAntiforgery();
    }

    /// <summary>Every address of the shed. Pages are found by their @page.</summary>
    private static void Map(WebApplication app)
    {
        app.MapMethods(ShedAssets.Prefix + "{**name}", [HttpMethods.Get, HttpMethods.Head], static context =>
        {
            if (ShedAssets.Find(context.Request.Path) is { } asset)
            {
                return asset.Send(context);
            }

            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return Task.CompletedTask;
        });
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false });
        app.MapHealthChecks("/health/ready");
        app.MapRazorComponents<Document>();
        ViewDoors.Map(app);
        NoteDoors.Map(app);
        RowDoors.Map(app);
        ImportDoors.Map(app);
        ExportDoors.Map(app);
        LedgerDoors.Map(app);
        SureDoors.Map(app);
        PlanParts.Map(app);
        LineParts.Map(app);
        LotDoors.Map(app);
        LookDoors.Map(app);
        YardDoors.Map(app);
        OrderDoors.Map(app);
        PromiseParts.Map(app);
        SupposeParts.Map(app);
        RoomDoors.Map(app);
        FactsApi.Map(app);
    }
}
