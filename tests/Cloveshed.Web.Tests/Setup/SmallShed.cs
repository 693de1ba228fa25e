using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>A shed with the small season, imported in the morning, and what a hand does with its forms.</summary>
internal static partial class SmallShed
{
    public static FactOrigin Origin { get; } = new(new DateTimeOffset(2026, 9, 1, 8, 0, 0, TimeSpan.FromHours(-4.5)), "test", "test", "setup");

    public static Task<ServedShed> Open() => ServedShed.Open(ledger => Assert.True(SeasonImport.Import(ledger, new SmallSeason().Files, Origin).Taken));

    /// <summary>Sends the form of a page as it stands, with some of its fields filled otherwise.</summary>
    public static Task<Got> Fill(this Visitor visitor, Got page, string action, params (string Name, string Value)[] filled)
    {
        Dictionary<string, string> fields = Fields(page, action);
        foreach ((string name, string value) in filled)
        {
            Assert.True(fields.ContainsKey(name) || name is "next", $"The form {action} has no field {name}.");
            fields[name] = value;
        }

        return visitor.Post(action, [.. fields.Select(field => (field.Key, field.Value))]);
    }

    /// <summary>Each field of a form and what it holds.</summary>
    public static Dictionary<string, string> Fields(Got page, string action)
    {
        string form = Forms().Matches(page.Text).Select(match => match.Value).First(text => text.Contains($"action=\"{action}\"", StringComparison.Ordinal));
        Dictionary<string, string> fields = [];
        foreach (Match input in (IEnumerable<Match>)Inputs().Matches(form))
        {
            if (Name().Match(input.Value) is { Success: true } name && !input.Value.Contains("type=\"file\"", StringComparison.Ordinal))
            {
                fields[name.Groups[1].Value] = WebUtility.HtmlDecode(Value().Match(input.Value).Groups[1].Value);
            }
        }

        foreach (Match select in (IEnumerable<Match>)Selects().Matches(form))
        {
            Match[] options = [.. (IEnumerable<Match>)Options().Matches(select.Value)];
            Match chosen = options.FirstOrDefault(option => option.Value.Contains(" selected", StringComparison.Ordinal)) ?? options[0];
            fields[Name().Match(select.Value).Groups[1].Value] = WebUtility.HtmlDecode(
                Value().Match(chosen.Value) is { Success: true } value ? value.Groups[1].Value : chosen.Value.Contains(" value", StringComparison.Ordinal) ? "" : chosen.Groups[1].Value);
        }

        return fields;
    }

    /// <summary>Sends files as a browser does, with their paths in the folder as names.</summary>
    public static async Task<Got> SendFiles(this Visitor visitor, Got page, params (string Path, byte[] Bytes)[] files)
    {
        const string Action = "/setup/import/upload";
        using MultipartFormDataContent content = [];
        foreach ((string name, string value) in Fields(page, Action))
        {
            content.Add(new StringContent(value), name);
        }

        foreach ((string path, byte[] bytes) in files)
        {
            ByteArrayContent file = new(bytes);
            file.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
            content.Add(file, "files", path);
        }

        using HttpResponseMessage answer = await visitor.Client.PostAsync(new Uri(Action, UriKind.Relative), content, TestContext.Current.CancellationToken);
        return new Got(answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer);
    }

    public static void LookAt(this Visitor visitor, ServedShed shed, string asOf) => visitor.Cookies.Add(shed.Root, new Cookie(Viewer.AsOfCookie, asOf));

    /// <summary>The page's text as a person reads it.</summary>
    public static string Read(this Got page) => Spaces().Replace(WebUtility.HtmlDecode(Tags().Replace(page.Text, " ")), " ");

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex("<input[^>]*>")]
    private static partial Regex Inputs();

    [GeneratedRegex("<select.*?</select>", RegexOptions.Singleline)]
    private static partial Regex Selects();

    [GeneratedRegex("<option[^>]*>([^<]*)<")]
    private static partial Regex Options();

    [GeneratedRegex(" name=\"([^\"]*)\"")]
    private static partial Regex Name();

    [GeneratedRegex(" value=\"([^\"]*)\"")]
    private static partial Regex Value();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex("[\\s\u00A0]+")]
    private static partial Regex Spaces();
}
