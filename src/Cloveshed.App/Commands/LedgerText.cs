using System.Text.Json.Nodes;
using Cloveshed.App.Words;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.App.Commands;

/// <summary>What a ledger answers with, as JSON documents and lines.</summary>
internal static class LedgerText
{
    public static JsonObject Json(params ReadOnlySpan<(string Key, JsonNode? Value)> members)
    {
        JsonObject json = [];
        foreach ((string key, JsonNode? value) in members)
        {
            json[key] = value;
        }

        return json;
    }

    public static JsonArray Texts(IEnumerable<SeasonWarning> warnings) => [.. warnings.Select(warning => (JsonNode)warning.ToString())];

    public static JsonArray Flaws(IEnumerable<LedgerFlaw> flaws) =>
        [.. flaws.Select(flaw => (JsonNode)Json(("rule", flaw.Rule), ("where", flaw.Where), ("found", flaw.Found), ("expected", flaw.Expected)))];

    /// <summary>A fact as one JSON object, by the names that facts have over HTTP.</summary>
    public static JsonObject Fact(Fact fact) => Json(
        ("seq", fact.Seq), ("id", fact.Id), ("kind", fact.Kind), ("happened_at", fact.HappenedAt), ("recorded_at", fact.RecordedAt), ("by", fact.By),
        ("device", fact.Device), ("place", fact.Place), ("body", JsonNode.Parse(fact.Body.GetRawText())), ("corrects", fact.Corrects), ("batch", fact.Batch),
        ("prev", fact.Prev), ("hash", fact.Hash));

    /// <summary>A fact as one line: number, time, kind, whose word, body, what it corrects.</summary>
    public static string Line(Fact fact) => FormattableString.Invariant(
        $"{fact.Seq} {fact.HappenedAt:yyyy-MM-ddTHH:mm:sszzz} {fact.Kind} {fact.By} {fact.Body.GetRawText()}{(fact.Corrects is { } corrected ? " corrects " + corrected : "")}");

    /// <summary>The first flaws, one a line.</summary>
    public static void WriteFlaws(IEnumerable<LedgerFlaw> flaws, TextWriter output, Phrasebook phrases)
    {
        foreach (LedgerFlaw flaw in flaws)
        {
            output.WriteLine(phrases.Say(Phrase.FlawLine, flaw.Rule, flaw.Where, Brief(flaw.Found), Brief(flaw.Expected)));
        }
    }

    private static string Brief(string text) => text.Length > 120 ? text[..120].ReplaceLineEndings(" ") + "…" : text.ReplaceLineEndings(" ");
}
