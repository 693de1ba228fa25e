using System.Globalization;

namespace Cloveshed.Web.Shared;

/// <summary>A moment by the shed's clock, as a form's field has it.</summary>
internal static class FormMoment
{
    /// <summary>A browser's clock may run ahead of the shed's by a little.</summary>
    private static readonly TimeSpan Ahead = TimeSpan.FromMinutes(1);

    /// <summary>Null where it is no moment.</summary>
    public static DateTimeOffset? Read(string text, TimeProvider clock) =>
        DateTime.TryParseExact(text, ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local)
            ? new DateTimeOffset(local, clock.LocalTimeZone.GetUtcOffset(local)) : null;

    public static bool HasCome(DateTimeOffset at, TimeProvider clock) => at <= clock.GetLocalNow() + Ahead;
}
