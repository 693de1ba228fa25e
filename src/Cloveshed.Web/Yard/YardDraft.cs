using System.Globalization;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Yard;

/// <summary>A form of the yard as it was sent, and what is wrong with it. Fields are named on the page by the form's name and theirs.</summary>
internal sealed class YardDraft(IFormCollection form, ShedReading shed)
{
    private static readonly LocalDateTimePattern[] Forms =
        [LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm"), LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss")];

    public IFormCollection Form => form;

    public Words<YardWord> Words { get; } = Shared.Words.Of<YardWord>(shed.Viewer.Language);

    public List<FormFault> Faults { get; } = [];

    public string this[string field] => form[field].ToString().Trim();

    public void Fault(string field, YardWord text, YardWord remedy, params ReadOnlySpan<object?> values) =>
        Faults.Add(new FormFault($"{this["form"]}-{field}", Words.Say(text, values), Words[remedy]));

    public double? Number(string field, YardWord name)
    {
        if (this[field].Length == 0)
        {
            return null;
        }

        if (double.TryParse(this[field], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
        {
            return number;
        }

        Fault(field, YardWord.FaultNumber, YardWord.FaultNumberRemedy, Words[name], this[field]);
        return null;
    }

    public double? Needed(string field, YardWord name)
    {
        if (this[field].Length == 0)
        {
            Fault(field, YardWord.FaultEmpty, YardWord.FaultEmptyRemedy, Words[name]);
        }

        return Number(field, name);
    }

    public string Text(string field, YardWord name)
    {
        if (this[field].Length == 0)
        {
            Fault(field, YardWord.FaultEmpty, YardWord.FaultEmptyRemedy, Words[name]);
        }

        return this[field];
    }

    public string Who() => Text("who", YardWord.Who);

    public LocalDateTime? Moment(string field)
    {
        foreach (LocalDateTimePattern pattern in Forms)
        {
            if (pattern.Parse(this[field].Replace(' ', 'T')) is { Success: true, Value: var at })
            {
                return at;
            }
        }

        Fault(field, YardWord.FaultMoment, YardWord.FaultMomentRemedy, this[field]);
        return null;
    }
}
