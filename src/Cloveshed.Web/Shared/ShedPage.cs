using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Shared;

/// <summary>What every page of a place has: its reader, the shed as read for this request, and the place's words.</summary>
public abstract class ShedPage<TWord> : ComponentBase
    where TWord : struct, Enum
{
    [Inject]
    public required ShedReading Shed { get; init; }

    [Inject]
    public required IHttpContextAccessor Accessor { get; init; }

    protected Viewer Viewer => Shed.Viewer;

    protected HttpContext Context => Accessor.HttpContext ?? throw new InvalidOperationException("Pages are made for a request.");

    protected Words<TWord> Words => Shared.Words.Of<TWord>(Viewer.Language);

    /// <summary>A word of the place, with values in place.</summary>
    protected string Say(TWord key, params ReadOnlySpan<object?> values) => Words.Say(key, values);
}
