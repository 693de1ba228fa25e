using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Cloveshed.Web.Shared;

/// <summary>Answers a form with its page, filled in as it was sent and with what was wrong: nothing typed is lost.</summary>
public static class ShownAgain
{
    /// <summary>The page with these parameters, as 422.</summary>
    public static IResult As<TPage>(IDictionary<string, object> parameters)
        where TPage : IComponent =>
        new RazorComponentResult<Document>(new Dictionary<string, object?> { [nameof(Document.Page)] = typeof(TPage), [nameof(Document.With)] = parameters })
        {
            StatusCode = StatusCodes.Status422UnprocessableEntity,
        };
}
