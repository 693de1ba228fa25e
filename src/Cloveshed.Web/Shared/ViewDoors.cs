using Cloveshed.Ledger;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Shared;

/// <summary>POST /view and /view/now: how this device wants pages shown. Cookies, no facts.</summary>
internal static class ViewDoors
{
    private static readonly TimeSpan Kept = TimeSpan.FromDays(365);

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/view", Choose);
        routes.MapPost("/view/now", Now);
    }

    private static IResult Choose(HttpContext context, [FromForm] IFormCollection form, Viewer viewer, FactDesk desk)
    {
        string language = form["lang"] == "es" ? "es" : "en";
        Words<ShellWord> words = Words.Of<ShellWord>(language == "es" ? Pictures.Language.Es : Pictures.Language.En);
        string day = form["day"].ToString().Trim();
        AsOf? asOf = Viewer.AsOfNamed(day + (form["known"] == "then" ? "+then" : "+now"));
        if (day.Length > 0 && asOf is null)
        {
            return desk.Back(context, form, new Said(true, words[ShellWord.AsOfBadDay]));
        }

        Keep(context, Viewer.LanguageCookie, language, Kept);
        Keep(context, Viewer.UnitCookie, form["unit"], Kept);
        Keep(context, Viewer.ThemeCookie, form["theme"], Kept);
        LookAt(context, asOf);
        return asOf == viewer.AsOf ? desk.Back(context, form, new Said(false, words[ShellWord.ViewChanged])) : new SeeOther(FactDesk.LocalPath(form[FactDesk.BackField]));
    }

    private static IResult Now(HttpContext context, [FromForm] IFormCollection form)
    {
        LookAt(context, null);
        return new SeeOther(FactDesk.LocalPath(form[FactDesk.BackField]));
    }

    /// <summary>A past day is looked at until the browser closes: nobody should find it still there tomorrow.</summary>
    private static void LookAt(HttpContext context, AsOf? asOf)
    {
        if (asOf is null)
        {
            context.Response.Cookies.Delete(Viewer.AsOfCookie);
        }
        else
        {
            Keep(context, Viewer.AsOfCookie, Viewer.AsOfName(asOf), null);
        }
    }

    private static void Keep(HttpContext context, string name, string? value, TimeSpan? kept) =>
        context.Response.Cookies.Append(name, value ?? "", new CookieOptions
        {
            HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = context.Request.IsHttps, MaxAge = kept, IsEssential = true,
        });
}
