using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Shared;

/// <summary>
/// One line in the log for each answer: method, route, status, milliseconds. The route is the pattern (/keep/{lot}), not the
/// address: who asked and for what is not in it. The page's own time goes to the browser as Server-Timing.
/// </summary>
internal static partial class RequestLog
{
    public static void Use(IApplicationBuilder app)
    {
        ILogger log = app.ApplicationServices.GetRequiredService<ILoggerFactory>().CreateLogger("Cloveshed.Web");
        app.Use(async (context, next) =>
        {
            long begun = Stopwatch.GetTimestamp();
            context.Response.OnStarting(() =>
            {
                context.Response.Headers["Server-Timing"] = string.Create(CultureInfo.InvariantCulture, $"shed;dur={Stopwatch.GetElapsedTime(begun).TotalMilliseconds:0.0}");
                return Task.CompletedTask;
            });
            try
            {
                await next(context);
            }
            finally
            {
                Endpoint? reached = context.GetEndpoint() ?? context.Features.Get<IExceptionHandlerFeature>()?.Endpoint;
                string? route = (reached as RouteEndpoint)?.RoutePattern.RawText;
                bool often = context.Request.Path.StartsWithSegments("/assets") || context.Request.Path.StartsWithSegments("/health");
                LogLevel level = context.Response.StatusCode >= StatusCodes.Status500InternalServerError ? LogLevel.Error : often ? LogLevel.Debug : LogLevel.Information;
                double milliseconds = Math.Round(Stopwatch.GetElapsedTime(begun).TotalMilliseconds, 1);
                Answered(log, level, context.Request.Method, route ?? "none", context.Response.StatusCode, milliseconds);
            }
        });
    }

    [LoggerMessage(EventId = 1, Message = "{Method} {Route} {Status} in {Milliseconds} ms")]
    private static partial void Answered(ILogger log, LogLevel level, string method, string route, int status, double milliseconds);
}
