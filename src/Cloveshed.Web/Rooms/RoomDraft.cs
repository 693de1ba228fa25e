using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Rooms;

/// <summary>Which form of a room's page was sent.</summary>
public enum RoomForm { Reading, Step, File, Figures }

/// <summary>A form as it was typed, so that it can be shown again with what was wrong; and what it says, where it says it rightly.</summary>
/// <param name="Values">By the names of the fields.</param>
/// <param name="Id">The form's fact id; null makes a new one.</param>
public sealed record RoomDraft(RoomForm Form, IReadOnlyDictionary<string, string> Values, Guid? Id)
{
    /// <summary>The step that is none: tests at the door, nothing done.</summary>
    public const string Tests = "tests";

    public static RoomDraft Empty(RoomForm form) => new(form, new Dictionary<string, string>(), null);

    public static RoomDraft Of(RoomForm which, IFormCollection form) =>
        new(which, form.ToDictionary(field => field.Key, field => field.Value.ToString().Trim()), FactDesk.Id(form));

    public string this[string field] => Values.GetValueOrDefault(field, "");

    /// <summary>The id on the page of a field: forms have fields of one name.</summary>
    public string FieldId(string field) => $"{Form.ToString().ToLowerInvariant()}-{field}";

    /// <summary>A number, null where the field is empty; a fault where it is none.</summary>
    public double? Number(string field, string name, List<FormFault> faults, Words<RoomWord> words)
    {
        if (this[field].Length == 0)
        {
            return null;
        }

        if (double.TryParse(this[field], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
        {
            return number;
        }

        faults.Add(new FormFault(FieldId(field), words.Say(RoomWord.FaultNumber, name, this[field]), words[RoomWord.FaultNumberRemedy]));
        return null;
    }

    /// <summary>A moment by the shed's clock; now where the field is empty.</summary>
    public DateTimeOffset? Moment(string field, string name, TimeProvider clock, List<FormFault> faults, Words<RoomWord> words)
    {
        if (this[field].Length == 0)
        {
            return clock.GetLocalNow();
        }

        if (FormMoment.Read(this[field].Replace(' ', 'T'), clock) is { } at)
        {
            if (FormMoment.HasCome(at, clock))
            {
                return at;
            }

            faults.Add(new FormFault(FieldId(field), words.Say(RoomWord.FaultAhead, name), words[RoomWord.FaultAheadRemedy]));
            return null;
        }

        faults.Add(new FormFault(FieldId(field), words.Say(RoomWord.FaultMoment, name, this[field]), words[RoomWord.FaultMomentRemedy]));
        return null;
    }

    /// <summary>A text that must be there.</summary>
    public string Needed(string field, string name, List<FormFault> faults, Words<RoomWord> words)
    {
        if (this[field].Length == 0)
        {
            faults.Add(new FormFault(FieldId(field), words.Say(RoomWord.FaultEmpty, name), words[RoomWord.FaultEmptyRemedy]));
        }

        return this[field];
    }

    /// <summary>Who measured what with what: the tests that have a value, whatever else they lack. The ledger says what a turning over needs.</summary>
    public DoorSaid Door(TimeProvider clock, List<FormFault> faults, Words<RoomWord> words)
    {
        List<GasSaid> tests = [];
        foreach (TestedGas gas in Enum.GetValues<TestedGas>())
        {
            string key = RoomTexts.Of(gas), name = words[RoomNames.Of(gas)];
            if (Number($"value-{key}", name, faults, words) is { } value && Moment($"at-{key}", name, clock, faults, words) is { } at)
            {
                tests.Add(new GasSaid(gas, value, this[$"who-{key}"], this[$"with-{key}"], at));
            }
        }

        return new DoorSaid(tests, this["attendant"], this["locked"] == "yes");
    }

    /// <summary>The room's figures as stored, from the units in which they were typed; an empty field says nothing.</summary>
    /// <param name="before">What the form was filled with.</param>
    public RoomFigures Figures(RoomFigures before, List<FormFault> faults, Words<RoomWord> words)
    {
        RoomUnits units = RoomUnits.Of(this[RoomUnits.Field]);
        Dictionary<RoomFigure, double> given = [];
        foreach (RoomFigureForm form in RoomFigures.Forms)
        {
            if (Number(form.Key, units.Label(form.Figure, words), faults, words) is not { } typed)
            {
                continue;
            }

            double value = units.Read(form.Figure, typed, before[form.Figure]);
            if (value >= form.Least && value <= form.Most)
            {
                given[form.Figure] = value;
            }
            else
            {
                // The ledger refuses it too, in the units in which it keeps it.
                faults.Add(new FormFault(
                    FieldId(form.Key), words.Say(RoomWord.FaultRange, units.Label(form.Figure, words), this[form.Key], units.Typed(form.Figure, form.Least), units.Typed(form.Figure, form.Most)), words[RoomWord.FaultRangeRemedy]));
            }
        }

        return new RoomFigures(given, [.. Enum.GetValues<Neighbour>().Where(neighbour => this["beside-" + RoomTexts.Of(neighbour)] == "yes")]);
    }
}
