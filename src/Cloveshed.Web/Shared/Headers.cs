using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Shared;

/// <summary>
/// Headers that every answer carries. Pages load what this program serves and nothing else; scripts stand in files, never in
/// the page.
/// </summary>
internal static class Headers
{
    /// <summary>Style attributes are let through: the drawings set their widths by them, and a style attribute runs nothing.</summary>
    public const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static void Use(IApplicationBuilder app) => app.Use((context, next) =>
    {
        context.Response.OnStarting(
            static state =>
            {
                HttpResponse response = ((HttpContext)state).Response;
                IHeaderDictionary headers = response.Headers;
                headers.ContentSecurityPolicy = ContentPolicy;
                headers.XContentTypeOptions = "nosniff";
                headers["Referrer-Policy"] = "same-origin";
                headers["Cross-Origin-Opener-Policy"] = "same-origin";
                headers["Cross-Origin-Resource-Policy"] = "same-origin";
                headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(), payment=(), usb=()";
                headers.Remove("blazor-enhanced-nav"); // of the framework's own navigation, which no page here has
                if (headers.CacheControl.Count == 0)
                {
                    headers.CacheControl = "no-cache, no-store";
                }

                return Task.CompletedTask;
            },
            context);
        return next(context);
    });
}
