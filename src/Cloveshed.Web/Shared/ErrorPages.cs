using Cloveshed.Ledger;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.DependencyInjection;

namespace Cloveshed.Web.Shared;

/// <summary>
/// Pages for what went wrong. Each is made with parts of its own, since those of the request may be what failed, and keeps the
/// status that it is about.
/// </summary>
internal static class ErrorPages
{
    /// <summary>What threw: 503 where the ledger can't be read, else 500.</summary>
    public static void UseForTrouble(IApplicationBuilder app) => app.UseExceptionHandler(new ExceptionHandlerOptions
    {
        ExceptionHandler = Show<TroublePage>,
        StatusCodeSelector = problem => problem is LedgerFault ? StatusCodes.Status503ServiceUnavailable : StatusCodes.Status500InternalServerError,
    });

    /// <summary>What was answered with a bare status: no such page, or a form that is not ours.</summary>
    public static void UseForStatus(IApplicationBuilder app) => app.UseStatusCodePages(context => Show<NothingHere>(context.HttpContext));

    private static async Task Show<TPage>(HttpContext context)
        where TPage : IComponent
    {
        IServiceProvider parts = context.RequestServices;
        await using AsyncServiceScope own = parts.GetRequiredService<IServiceScopeFactory>().CreateAsyncScope();
        context.RequestServices = own.ServiceProvider;
        // Set once by a page that came to 404 itself, and not to be set twice.
        context.Response.Headers.Remove("blazor-enhanced-nav");
        try
        {
            await new RazorComponentResult<Document>(new Dictionary<string, object?> { [nameof(Document.Page)] = typeof(TPage) }) { StatusCode = context.Response.StatusCode }
                .ExecuteAsync(context);
        }
        finally
        {
            context.RequestServices = parts;
        }
    }
}
