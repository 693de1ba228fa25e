using System.Globalization;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Pictures;
using Cloveshed.SeasonFiles.Faults;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;
using NodaTime.Text;

namespace Cloveshed.Web.Shared;

/// <summary>Which ground a screen has; BySystem follows the device.</summary>
public enum Theme { BySystem, Light, Dark }

/// <summary>
/// For whom a page is made: language, unit of mass, ground, and the day whose state is looked at. Chosen in the header of
/// every page and kept in cookies of this device; nothing of it is a fact of the shed.
/// </summary>
/// <param name="Unit">Null: the season's.</param>
/// <param name="AsOf">Null: now.</param>
public sealed record Viewer(Language Language, MassUnit? Unit, Theme Theme, AsOf? AsOf)
{
    public const string LanguageCookie = "cloveshed-lang", UnitCookie = "cloveshed-unit", ThemeCookie = "cloveshed-theme", AsOfCookie = "cloveshed-as-of";

    public string LanguageTag => Language == Language.Es ? "es" : "en";

    /// <summary>The same language, as the season's files name it.</summary>
    public TextLanguage FileLanguage => Language == Language.Es ? TextLanguage.Spanish : TextLanguage.English;

    /// <summary>"light", "dark", or null where the device decides.</summary>
    public string? ThemeName => Theme switch { Theme.Light => "light", Theme.Dark => "dark", _ => null };

    /// <summary>Reads what the request says; a cookie that says something unknown counts as absent.</summary>
    public static Viewer Of(HttpRequest request) => new(
        request.Cookies[LanguageCookie] switch { "en" => Language.En, "es" => Language.Es, _ => Accepted(request) },
        UnitNamed(request.Cookies[UnitCookie]),
        ThemeNamed(request.Cookies[ThemeCookie]),
        AsOfNamed(request.Cookies[AsOfCookie]));

    internal static MassUnit? UnitNamed(string? name) => name switch { "lb" => MassUnit.Pound, "kg" => MassUnit.Kilogram, _ => null };

    internal static Theme ThemeNamed(string? name) => name switch { "light" => Theme.Light, "dark" => Theme.Dark, _ => Theme.BySystem };

    /// <summary>"2026-09-01 then" (as it was known that day) or "2026-09-01 now".</summary>
    internal static AsOf? AsOfNamed(string? text)
    {
        string[] parts = (text ?? "").Split(' ', '+');
        return parts.Length == 2 && LocalDatePattern.Iso.Parse(parts[0]) is { Success: true, Value: var day }
            ? new AsOf(day, parts[1] == "then" ? Knowledge.AsKnownThen : Knowledge.AsKnownNow) : null;
    }

    internal static string AsOfName(AsOf asOf) =>
        string.Create(CultureInfo.InvariantCulture, $"{LocalDatePattern.Iso.Format(asOf.Day)}+{(asOf.Knowledge == Knowledge.AsKnownThen ? "then" : "now")}");

    /// <summary>The first of the browser's languages that is one of ours; English where none is.</summary>
    private static Language Accepted(HttpRequest request)
    {
        IList<StringWithQualityHeaderValue> asked = request.GetTypedHeaders().AcceptLanguage ?? [];
        foreach (string tag in asked.Where(one => one.Quality is not 0).OrderByDescending(one => one.Quality ?? 1).Select(one => one.Value.Value ?? ""))
        {
            string tongue = tag.Split('-')[0];
            if (tongue.Equals("es", StringComparison.OrdinalIgnoreCase))
            {
                return Language.Es;
            }

            if (tongue.Equals("en", StringComparison.OrdinalIgnoreCase) || tongue == "*")
            {
                return Language.En;
            }
        }

        return Language.En;
    }
}
