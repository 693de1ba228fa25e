using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Metrics;
using System.Net;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Cloveshed.Web.Tests;

/// <summary>What the program tells of itself: its own traces and metrics, and OTLP only where it is asked for.</summary>
public sealed class SignalTests
{
    [Fact]
    public async Task An_append_is_counted_by_its_outcome_and_traced_without_what_was_in_it()
    {
        ConcurrentQueue<(string Instrument, double Value, string Tags)> measured = new();
        ConcurrentQueue<string> traced = new();
        await using ServedShed shed = await ServedShed.Open();
        using MeterListener meters = new();
        meters.InstrumentPublished = (instrument, listener) =>
        {
            if (instrument.Meter.Name == ShedSignals.Name && ReferenceEquals(instrument.Meter.Scope, shed.Part<IMeterFactory>()))
            {
                listener.EnableMeasurementEvents(instrument);
            }
        };
        meters.SetMeasurementEventCallback<long>((instrument, value, tags, _) => measured.Enqueue((instrument.Name, value, Text(tags))));
        meters.SetMeasurementEventCallback<double>((instrument, value, tags, _) => measured.Enqueue((instrument.Name, value, Text(tags))));
        meters.Start();
        using ActivityListener traces = new()
        {
            ShouldListenTo = source => source.Name == ShedSignals.Name, Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllData,
            ActivityStopped = activity => traced.Enqueue($"{activity.OperationName} {string.Join(' ', activity.TagObjects)}"),
        };
        ActivitySource.AddActivityListener(traces);

        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/");
        await visitor.Send(page, "/notes", ("text", "secret words"));
        await visitor.Send(page, "/notes", ("text", "secret words"));
        await visitor.Send(page, "/notes", ("text", "other words"));
        Assert.Equal(["outcome=accepted", "outcome=again", "outcome=refused"], measured.Where(one => one.Instrument == "cloveshed.facts").Select(one => one.Tags));
        Assert.All(measured.Where(one => one.Instrument == "cloveshed.append.duration"), one => Assert.InRange(one.Value, 1e-7, 10));
        Assert.Contains(traced, line => line.StartsWith("append", StringComparison.Ordinal));
        Assert.DoesNotContain(traced, line => line.Contains("words", StringComparison.Ordinal));
    }

    /// <summary>OpenTelemetry specification, OTLP/HTTP: traces are posted to {endpoint}/v1/traces, metrics to {endpoint}/v1/metrics.</summary>
    [Fact]
    public async Task Told_where_to_it_sends_traces_and_metrics_there_without_addresses()
    {
        ConcurrentDictionary<string, string> received = new();
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore().UseUrls("http://127.0.0.1:0");
        builder.Services.AddRouting();
        await using WebApplication collector = builder.Build();
        collector.MapPost("/v1/{what}", async (string what, HttpRequest request) =>
        {
            using MemoryStream body = new();
            await request.Body.CopyToAsync(body);
            received[what] = System.Text.Encoding.Latin1.GetString(body.ToArray());
        });
        await collector.StartAsync(TestContext.Current.CancellationToken);
        await using (ServedShed shed = await ServedShed.Open(variables: new Dictionary<string, string?>
        {
            ["OTEL_EXPORTER_OTLP_ENDPOINT"] = collector.Urls.Single(), ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf",
        }))
        {
            using Visitor visitor = shed.Visitor();
            await visitor.Get("/help/somebodys-name");
            await visitor.Send(await visitor.Get("/"), "/notes", ("text", "secret words"));
        }

        Assert.Equal(["metrics", "traces"], received.Keys.Order(StringComparer.Ordinal));
        Assert.Contains("/help/{Name}", received["traces"], StringComparison.Ordinal);
        Assert.Contains("append", received["traces"], StringComparison.Ordinal);
        Assert.Contains("cloveshed.facts", received["metrics"], StringComparison.Ordinal);
        Assert.All(received.Values, text => Assert.DoesNotMatch("somebodys-name|secret words|user_agent|127\\.0\\.0\\.1\u0000", text));
    }

    [Fact]
    public async Task Told_nothing_it_sends_nothing()
    {
        await using ServedShed shed = await ServedShed.Open();
        Assert.False(shed.Part<IServiceProviderIsService>().IsService(typeof(OpenTelemetry.Trace.TracerProvider)));
    }

    private static string Text(ReadOnlySpan<KeyValuePair<string, object?>> tags) => string.Join(' ', tags.ToArray().Select(tag => $"{tag.Key}={tag.Value}"));
}
