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
    public IResult Put(HttpContext context, IFormCollection form, string place, Func<FactOrigin, Guid, NewFact> make, string done)
    {
        if (Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        if (viewer.AsOf is not null)
        {
            return Back(context, form, new Said(true, Words[ShellWord.AsOfReadOnly], Words[ShellWord.AsOfReadOnlyRemedy]));
        }

        return Back(context, form, Append(make(Origin(place), id)) switch
        {
            Appended.Refused refused => new Said(true, string.Join(" ", refused.Refusals.Select(one => one.Message)), string.Join(" ", refused.Refusals.Select(one => one.Remedy).Distinct())),
            _ => new Said(false, done),
        });
    }

    /// <summary>Where facts of the pages come from.</summary>
    public FactOrigin Origin(string place) => FactOrigin.Now(clock, Office, Pages, place);

    /// <summary>
    /// Appends. A form that is sent again is later by the clock than the fact that it made: it is the same fact when all else is the
    /// same, and then gets the same answer.
    /// </summary>
    public Appended Append(NewFact fact)
    {
        Appended appended = signals.Append(ledger, [fact], viewer.FileLanguage);
        return appended is Appended.Refused && ledger.Find(fact.Id) is { } known && known.HappenedAt != fact.HappenedAt
            ? signals.Append(ledger, [fact with { HappenedAt = known.HappenedAt }], viewer.FileLanguage) : appended;
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
