using System.Globalization;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Pictures.Reading;

/// <summary>
/// The person that a picture or a report is for: turns the season's numbers into text in their language and unit.
/// Cultures are built here and not taken from the machine, so that the same season reads the same everywhere. Both
/// languages group thousands by comma with a decimal point, as English and Spanish are written in the United States
/// and Mexico.
/// </summary>
public sealed class Reader
{
    private const string Minus = "\u2212";

    private static readonly Dictionary<string, Say> Defaults = Enum.GetValues<Say>().ToDictionary(k => k.ToString(), StringComparer.Ordinal);

    private static readonly Dictionary<string, Say> Assumptions = Enum.GetValues<Say>()
        .Where(k => k.ToString().StartsWith("Assumed", StringComparison.Ordinal)).ToDictionary(k => TextTable.English[k]);

    private readonly TextTable words;
    private readonly SeasonSettings season;
    private readonly CultureInfo culture;
    private readonly LocalDatePattern day;
    private readonly LocalDatePattern dayOfYear;

    public Reader(SeasonSettings season, ReportOptions options)
    {
        this.season = season;
        Options = options;
        words = TextTable.Of(options.Language);
        culture = Culture(words);
        day = LocalDatePattern.Create(words[Reading.Say.DayPattern], culture);
        dayOfYear = LocalDatePattern.Create(words[Reading.Say.DayYearPattern], culture);
    }

    public ReportOptions Options { get; }

    public string LanguageTag => words[Reading.Say.LanguageTag];

    /// <summary>The language of warnings and defaults, and of reasons that are not the planner's own, whatever the reader's.</summary>
    public string? PlannerLanguage => Options.Language == Language.En ? null : "en";

    public string Say(Say key, params ReadOnlySpan<object?> values) =>
        values.Length == 0 ? words[key] : string.Format(culture, words[key], values);

    /// <summary>Season masses per shown mass unit, as a factor.</summary>
    public double ShownPerSeasonUnit => (season.MassUnit, Options.ShowIn) switch
    {
        (MassUnit.Pound, MassUnit.Kilogram) => Core.Quantities.Mass.KilogramsPerPound,
        (MassUnit.Kilogram, MassUnit.Pound) => 1 / Core.Quantities.Mass.KilogramsPerPound,
        _ => 1,
    };

    public string MassUnitName => Options.ShowIn == MassUnit.Pound ? "lb" : "kg";

    /// <summary>A mass in the season's unit, shown in whole lb or kg (half away from zero).</summary>
    public string Mass(double inSeasonUnit) => MassNumber(inSeasonUnit) + "\u00A0" + MassUnitName;

    public string MassNumber(double inSeasonUnit) => Number(inSeasonUnit * ShownPerSeasonUnit, 0);

    /// <summary>Net weights of a unit: up to two decimals, since a carton of 30 lb is 13.61 kg.</summary>
    public string UnitMass(double inSeasonUnit) =>
        Number(inSeasonUnit * ShownPerSeasonUnit, "#,##0.##") + "\u00A0" + MassUnitName;

    /// <summary>Metric tons, one decimal, for the size of a season.</summary>
    public string Tonnes(double inSeasonUnit) =>
        Number(inSeasonUnit * (season.MassUnit == MassUnit.Pound ? Core.Quantities.Mass.KilogramsPerPound : 1) / 1000, 1) + "\u00A0t";

    /// <summary>Whole units of money (half away from zero), for totals.</summary>
    public string Money(double amount) => Money(amount, 0);

    public string Money(decimal amount) => Money((double)amount, 0);

    /// <summary>Money to the currency's minor unit, for prices and worths.</summary>
    public string Price(double amount) => Money(amount, Currency.FromCode(season.Currency).Decimals);

    /// <summary>Money per mass unit of the season, shown per the reader's unit.</summary>
    public string PricePerMass(double perSeasonUnit) =>
        Money(perSeasonUnit / ShownPerSeasonUnit, 3) + "/" + MassUnitName;

    public string Number(double value, int decimals) =>
        Number(value, decimals == 0 ? "#,##0" : "#,##0." + new string('0', decimals));

    /// <summary>A share as percent. Rounded half away from zero.</summary>
    public string Percent(double share, int decimals = 1) => Number(share * 100, decimals) + "%";

    /// <summary>A share of a promise, as percent with one decimal: 100% and 0% only where it is all or nothing.</summary>
    public string PercentDone(double share) => share switch
    {
        >= 1 => "100%",
        > 0.9995 => "99.9%",
        > 0 and < 0.0005 => "0.1%",
        _ => Percent(share),
    };

    public string Hours(double hours) => Number(hours, "#,##0.#") + "\u00A0h";

    /// <summary>A day without its year, kept on one line.</summary>
    public string Day(LocalDate date) => day.Format(date).Replace(' ', '\u00A0');

    public string DayYear(LocalDate date) => dayOfYear.Format(date).Replace(' ', '\u00A0');

    /// <summary>A run's reason, or why a line is short, in the reader's language; words that the planner does not know stay as written.</summary>
    public string Reason(string words) => PlannerWords.Told(words, this) ?? words;

    /// <summary>The same as a cell, begun with a capital; what stays as written is marked as English for other readers.</summary>
    public Cell Planner(string words)
    {
        string? told = words.Length == 0 ? "–" : PlannerWords.Told(words, this);
        string text = told ?? words;
        return new(char.ToUpper(text[0], culture) + text[1..], told is null ? PlannerLanguage : null);
    }

    /// <summary>A default by the name that the answer gives it ("bulb_cv", "keeping: shape"), or that name where it has no words.</summary>
    public Cell Default(string name) =>
        Defaults.TryGetValue("Default" + string.Concat(name.Split(['_', ':', ' '], StringSplitOptions.RemoveEmptyEntries).Select(part => char.ToUpperInvariant(part[0]) + part[1..])), out Say key)
            ? Say(key) : new Cell(name, PlannerLanguage);

    /// <summary>What a default is taken as, or why, in the reader's language where the words are known.</summary>
    public Cell Assumed(string words) => Assumptions.TryGetValue(words, out Say key) ? Say(key) : new Cell(words, words.Any(char.IsLetter) ? PlannerLanguage : null);

    public LocalDate Monday(int week) => season.Monday(week);

    /// <summary>The Monday that names a week.</summary>
    public string Week(int week) => Day(season.Monday(week));

    public string WeekYear(int week) => DayYear(season.Monday(week));

    public string Kind(PlaceKind kind) => Say(kind switch
    {
        PlaceKind.Open => Reading.Say.KindOpen,
        PlaceKind.Cold => Reading.Say.KindCold,
        PlaceKind.Sealed => Reading.Say.KindSealed,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    });

    public string Mode(LineMode mode) => Say(mode switch
    {
        LineMode.Fresh => Reading.Say.ModeFresh,
        LineMode.Crack => Reading.Say.ModeCrack,
        LineMode.Seed => Reading.Say.ModeSeed,
        _ => throw new ArgumentOutOfRangeException(nameof(mode)),
    });

    public string Status(PlanStatus status) => Say(status switch
    {
        PlanStatus.GapReached => Reading.Say.StatusGapReached,
        PlanStatus.TimeReached => Reading.Say.StatusTimeReached,
        PlanStatus.Cancelled => Reading.Say.StatusCancelled,
        _ => throw new ArgumentOutOfRangeException(nameof(status)),
    });

    private string Money(double amount, int decimals)
    {
        string number = Number(Math.Abs(amount), decimals);
        bool zero = number.All(c => c is '0' or '.' or ',');
        string sign = amount < 0 && !zero ? Minus : "";
        return season.Currency switch
        {
            "USD" => sign + "$" + number,
            "EUR" => sign + "€" + number,
            "GBP" => sign + "£" + number,
            string code => sign + code + "\u00A0" + number,
        };
    }

    private string Number(double value, string format)
    {
        string text = Math.Abs(value).ToString(format, culture);
        bool zero = text.All(c => c is '0' or '.' or ',');
        return value < 0 && !zero ? Minus + text : text;
    }

    private static CultureInfo Culture(TextTable words)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        string[] months = words[Reading.Say.Months].Split(' ');
        string[] shortMonths = words[Reading.Say.ShortMonths].Split(' ');
        culture.DateTimeFormat.MonthNames = [.. months, ""];
        culture.DateTimeFormat.MonthGenitiveNames = [.. months, ""];
        culture.DateTimeFormat.AbbreviatedMonthNames = [.. shortMonths, ""];
        culture.DateTimeFormat.AbbreviatedMonthGenitiveNames = [.. shortMonths, ""];
        return CultureInfo.ReadOnly(culture);
    }
}
