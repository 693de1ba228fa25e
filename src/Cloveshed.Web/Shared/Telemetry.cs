using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace Cloveshed.Web.Shared;

/// <summary>
/// OpenTelemetry by its standard variables: nothing is gathered or sent unless one of them names where to
/// (OpenTelemetry specification, "OpenTelemetry Protocol Exporter", endpoint options).
/// </summary>
internal static class Telemetry
{
    private const string Everything = "OTEL_EXPORTER_OTLP_ENDPOINT", Traces = "OTEL_EXPORTER_OTLP_TRACES_ENDPOINT", Metrics = "OTEL_EXPORTER_OTLP_METRICS_ENDPOINT";

    public static void Add(IServiceCollection services, IConfiguration variables, string version)
    {
        services.AddMetrics();
        services.AddSingleton<ShedSignals>();
        bool traces = Named(variables, Everything) || Named(variables, Traces), metrics = Named(variables, Everything) || Named(variables, Metrics);
        if (!traces && !metrics)
        {
            return;
        }

        var telemetry = services.AddOpenTelemetry().ConfigureResource(resource => resource.AddService("cloveshed", serviceVersion: version, autoGenerateServiceInstanceId: false));
        if (traces)
        {
            telemetry.WithTracing(tracing => tracing.AddSource(ShedSignals.Name).AddAspNetCoreInstrumentation(pages =>
            {
                pages.Filter = context => !context.Request.Path.StartsWithSegments("/health") && !context.Request.Path.StartsWithSegments("/assets");
                // Paths hold names of lots and orders, and a browser's name is its user's: the route says enough.
                pages.EnrichWithHttpResponse = (activity, _) => activity.SetTag("url.path", null).SetTag("url.query", null).SetTag("user_agent.original", null);
            }).AddOtlpExporter());
        }

        if (metrics)
        {
            telemetry.WithMetrics(measuring => measuring.AddMeter(ShedSignals.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime").AddOtlpExporter());
        }
    }

    private static bool Named(IConfiguration variables, string name) => !string.IsNullOrWhiteSpace(variables[name]);
}
