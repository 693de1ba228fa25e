namespace Cloveshed.Web.Tests;

/// <summary>A clock that goes only when it is told to, in a zone four and a half hours behind UTC so that no date is right by chance.</summary>
public sealed class StillClock(DateTimeOffset start) : TimeProvider
{
    private DateTimeOffset now = start;

    public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("Sorrel", TimeSpan.FromHours(-4.5), "Sorrel", "Sorrel");

    public void Pass(TimeSpan time) => now += time;

    public override DateTimeOffset GetUtcNow() => now;
}
