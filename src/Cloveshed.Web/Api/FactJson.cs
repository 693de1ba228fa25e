using System.Text.Json;
using System.Text.Json.Serialization;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Api;

/// <summary>A fact as it is sent in.</summary>
/// <param name="Id">UUID version 7, made where the fact was made; sent again, it gets the same answer.</param>
/// <param name="Kind">One of the kinds that this document lists.</param>
/// <param name="HappenedAt">With the offset of the place where it happened.</param>
/// <param name="Place">The noun of the place: plan, dock, setup.</param>
/// <param name="Device">Which device or program sends it.</param>
/// <param name="Body">As its kind asks.</param>
/// <param name="Corrects">The fact that this one takes the place of.</param>
public sealed record FactSent(Guid Id, string Kind, DateTimeOffset HappenedAt, string Place, string Device, JsonElement Body, Guid? Corrects = null);

/// <summary>What became of one fact: seq when it is in the ledger for good, else rule, message and remedy.</summary>
public sealed record FactAnswer(Guid Id, long? Seq = null, string? Rule = null, string? Message = null, string? Remedy = null);

/// <summary>A fact as the ledger holds it.</summary>
public sealed record FactRead(
    long Seq, Guid Id, string Kind, DateTimeOffset HappenedAt, DateTimeOffset RecordedAt, string By, string Device, string Place,
    JsonElement Body, Guid? Corrects, Guid Batch, string Prev, string Hash)
{
    /// <summary>The same, to be written out.</summary>
    public static FactRead Of(Fact fact) => new(
        fact.Seq, fact.Id, fact.Kind, fact.HappenedAt, fact.RecordedAt, fact.By, fact.Device, fact.Place, fact.Body, fact.Corrects, fact.Batch, fact.Prev, fact.Hash);
}

/// <summary>How JSON is written and read here: snake_case, nothing guessed. A key that is misspelt is refused, not left out.</summary>
internal static class FactJson
{
    public static void Configure(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower;
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        options.RespectNullableAnnotations = true;
        options.RespectRequiredConstructorParameters = true;
    }
}
