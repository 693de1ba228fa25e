using System.Globalization;
using Cloveshed.Core;
using Microsoft.AspNetCore.Http;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Shared;

/// <summary>Addresses of pages about one thing, whatever signs its name has.</summary>
public static class Paths
{
    public static string Of(LotId lot) => "/keep/" + Uri.EscapeDataString(lot.Text);

    public static string Of(OrderId order) => "/dock/" + Uri.EscapeDataString(order.Text);

    public static string Of(PlaceId place) => "/keep?place=" + Uri.EscapeDataString(place.Text) + "#place";

    /// <summary>A cold room's or sealed room's page.</summary>
    public static string Room(PlaceId place) => "/keep/rooms/" + Uri.EscapeDataString(place.Text);

    /// <summary>What stands before what in a place.</summary>
    public static string Reach(PlaceId place) => "/keep/reach/" + Uri.EscapeDataString(place.Text);

    /// <summary>The name in a route: a slash in it comes as %2F, which the server leaves.</summary>
    public static string Named(string part) => part.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);

    /// <summary>A query with these values, the empty ones left out.</summary>
    public static string Query(string path, params ReadOnlySpan<(string Name, string? Value)> values)
    {
        List<string> parts = [];
        foreach ((string name, string? value) in values)
        {
            if (!string.IsNullOrEmpty(value))
            {
                parts.Add(name + "=" + Uri.EscapeDataString(value));
            }
        }

        return parts.Count == 0 ? path : path + "?" + string.Join('&', parts);
    }

    /// <summary>404 with the page as it is: set when the answer begins, since a page that sets it itself gives way to the general one.</summary>
    public static void Missing(HttpContext context) => context.Response.OnStarting(() =>
    {
        context.Response.StatusCode = StatusCodes.Status404NotFound;
        return Task.CompletedTask;
    });

    /// <summary>A day as addresses and forms have it.</summary>
    public static string Day(LocalDate day) => LocalDatePattern.Iso.Format(day);

    /// <summary>A number as forms have it.</summary>
    public static string Number(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);
}
