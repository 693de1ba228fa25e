using Cloveshed.Ledger;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Shared;

/// <summary>
/// Takes a form's fact to the ledger and leads back to the page with what came of it. The form brings the fact's id
/// (<see cref="FactForm"/> puts it in), so that a form that is sent twice is one fact.
/// </summary>
public sealed class FactDesk(ShedLedger ledger, ShedSignals signals, Viewer viewer, TimeProvider clock, SaidOnce said)
{
    /// <summary>Who and what, until people sign in: the office, through the pages.</summary>
    public const string Office = "office", Pages = "pages";

    /// <summary>Names of the hidden fields.</summary>
    public const string FactField = "fact", BackField = "back";

    private Words<ShellWord> Words => Shared.Words.Of<ShellWord>(viewer.Language);

    /// <summary>Appends one fact and redirects (303) to where the form stood.</summary>
    /// <param name="place">The noun of the place: "plan", "dock".</param>
    /// <param name="make">Makes the fact with its origin and the form's id: (origin, id) => origin.Note(text, id).</param>
    /// <param name="done">What the next page says when it was accepted.</param>
    public IResult Put(HttpContext context, IFormCollection form, string place, Func<FactOrigin, Guid, NewFact> make, string done) =>
        PutAll(context, form, place, (origin, id) => [make(origin, id)], done);

    /// <summary>Likewise several facts as one batch: all of them or none. Ids after the first are made of it by <see cref="Following"/>.</summary>
    public IResult PutAll(HttpContext context, IFormCollection form, string place, Func<FactOrigin, Guid, IReadOnlyList<NewFact>> make, string done)
    {
        if (Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        return OnlyToLookAt(context, form) ?? Back(context, form, Append(make(Origin(place), id)) switch
        {
            Appended.Refused refused => new Said(true, string.Join(" ", refused.Refusals.Select(one => one.Message)), string.Join(" ", refused.Refusals.Select(one => one.Remedy).Distinct())),
            _ => new Said(false, done),
        });
    }

    /// <summary>The id of a form's further facts, always the same for a form: its own with a number added into its last, random, digits.</summary>
    public static Guid Following(Guid id, int number)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes, bigEndian: true, out _);
        uint tail = System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(bytes[12..]);
        System.Buffers.Binary.BinaryPrimitives.WriteUInt32BigEndian(bytes[12..], unchecked(tail + (uint)number));
        return new Guid(bytes, bigEndian: true);
    }

    /// <summary>The answer to a form that was sent while a past day is looked at; null where it is now.</summary>
    public IResult? OnlyToLookAt(HttpContext context, IFormCollection form) =>
        viewer.AsOf is null ? null : Back(context, form, new Said(true, Words[ShellWord.AsOfReadOnly], Words[ShellWord.AsOfReadOnlyRemedy]));

    /// <summary>Where facts of the pages come from.</summary>
    public FactOrigin Origin(string place) => FactOrigin.Now(clock, Office, Pages, place);

    /// <summary>
    /// Appends. A form that is sent again is later by the clock than the fact that it made: it is the same fact when all else is the
    /// same, and then gets the same answer.
    /// </summary>
    public Appended Append(NewFact fact) => Append([fact]);

    /// <summary>Likewise the facts of one form, all or none. The first has the form's id, by which a form sent again is known.</summary>
    public Appended Append(IReadOnlyList<NewFact> batch)
    {
        Appended appended = signals.Append(ledger, batch, viewer.FileLanguage);
        return appended is Appended.Refused && batch.Count > 0 && ledger.Find(batch[0].Id) is { } known && known.HappenedAt != batch[0].HappenedAt
            ? signals.Append(ledger, [.. batch.Select(fact => fact with { HappenedAt = known.HappenedAt })], viewer.FileLanguage) : appended;
    }

    /// <summary>The id that the form brought; null where it brought none.</summary>
    public static Guid? Id(IFormCollection form) => Guid.TryParse(form[FactField], out Guid id) ? id : null;

    /// <summary>303 to the page that the form stood on, which says this once.</summary>
    public IResult Back(HttpContext context, IFormCollection form, Said what)
    {
        said.Say(context, what);
        return new SeeOther(LocalPath(form[BackField]));
    }

    /// <summary>A path of this shed; anything else (another host, a scheme) counts as the first page.</summary>
    internal static string LocalPath(string? asked) =>
        asked is ['/', ..] && !asked.StartsWith("//", StringComparison.Ordinal) && !asked.Contains('\\') && !asked.Any(char.IsControl) ? asked : "/";
}

/// <summary>303: the answer to a form is another page, to be fetched with GET, and going back does not send the form again.</summary>
public sealed class SeeOther(string path) : IResult
{
    public Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
        httpContext.Response.Headers.Location = path;
        return Task.CompletedTask;
    }
}
