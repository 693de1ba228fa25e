using System.Text.Json;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Shared;

/// <summary>What the next page says after a form was sent: done, or refused with what to do.</summary>
public sealed record Said(bool Refused, string Text, string Remedy = "");

/// <summary>
/// Carries what was said over the redirect to the next page, in a protected cookie that is shown once. Long texts are cut: a
/// list of faults belongs on a page of its own.
/// </summary>
public sealed class SaidOnce(IDataProtectionProvider protection)
{
    private const string Cookie = "cloveshed-said";

    /// <summary>Characters of each text; browsers take about 4,000 bytes a cookie, protected and encoded.</summary>
    private const int Longest = 900;

    private readonly IDataProtector protector = protection.CreateProtector("what a page says after a form");

    public void Say(HttpContext context, Said said)
    {
        string json = JsonSerializer.Serialize(said with { Text = Cut(said.Text), Remedy = Cut(said.Remedy) });
        context.Response.Cookies.Append(Cookie, protector.Protect(json), new CookieOptions
        {
            HttpOnly = true, SameSite = SameSiteMode.Strict, Secure = context.Request.IsHttps, MaxAge = TimeSpan.FromMinutes(2), IsEssential = true,
        });
    }

    /// <summary>What is to be said on this page, or null; it is taken away with this answer.</summary>
    public Said? Take(HttpContext context)
    {
        if (context.Request.Cookies[Cookie] is not { Length: > 0 } sealedText)
        {
            return null;
        }

        context.Response.Cookies.Delete(Cookie);
        try
        {
            return JsonSerializer.Deserialize<Said>(protector.Unprotect(sealedText));
        }
        catch (Exception problem) when (problem is System.Security.Cryptography.CryptographicException or JsonException)
        {
            return null; // of another ledger's keys, or tampered with: then nothing was said
        }
    }

    private static string Cut(string text) => text.Length <= Longest ? text : text[..Longest] + "…";
}
