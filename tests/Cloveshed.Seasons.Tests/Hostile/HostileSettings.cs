namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>Broken in season.json; its columns are its keys.</summary>
internal static class HostileSettings
{
    private static HostileCase Of(string name, string old, string now, string? column) => HostileCase.Swap(name, "season.json", old, now, null, column);

    public static IEnumerable<HostileCase> All =>
    [
        Of("not JSON", "{", "", null),
        Of("JSON, but a list", SoundTexts.All["season.json"], "[1, 2]", null),
        Of("another contract", "\"contract\": 1", "\"contract\": 3", "contract"),
        Of("no name", "\"name\"", "\"title\"", "name"),
        Of("first week not a Monday", "2030-07-01", "2030-07-02", "first_week"),
        Of("first week not a date", "2030-07-01", "first of July", "first_week"),
        Of("no weeks", "\"weeks\": 8", "\"weeks\": 0", "weeks"),
        Of("weeks backwards", "\"weeks\": 8", "\"weeks\": -3", "weeks"),
        Of("half a week", "\"weeks\": 8", "\"weeks\": 8.5", "weeks"),
        Of("weeks in words", "\"weeks\": 8", "\"weeks\": \"eight\"", "weeks"),
        Of("a unit of its own", "\"lb\"", "\"stone\"", "mass_unit"),
        Of("a currency of its own", "\"USD\"", "\"Dollars\"", "currency"),
        Of("as_of not a day", "2030-07-03", "2030-02-30", "as_of"),
        Of("end_price not a number", "0.05", "\"cheap\"", "end_price"),
    ];
}
