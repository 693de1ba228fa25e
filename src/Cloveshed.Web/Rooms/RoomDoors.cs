using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Rooms;

/// <summary>POST /keep-rooms/…: a reading, a step, what a room is, a record withdrawn. Readings from a file have a door of their own.</summary>
internal static class RoomDoors
{
    public const string Place = "keep";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/keep-rooms/reading", Reading);
        routes.MapPost("/keep-rooms/step", Step);
        routes.MapPost("/keep-rooms/figures", Figures);
        routes.MapPost("/keep-rooms/withdraw", Withdraw);
        ReadingsDoor.Map(routes);
    }

    private static IResult Reading(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, TimeProvider clock, SaidOnce said)
    {
        Words<RoomWord> words = Words.Of<RoomWord>(shed.Viewer.Language);
        RoomDraft draft = RoomDraft.Of(RoomForm.Reading, form);
        List<FormFault> faults = [];
        DateTimeOffset? at = draft.Moment("at", words[RoomWord.At], clock, faults, words);
        AirSaid air = new(
            new PlaceId(draft["place"]), draft.Number("temp_c", words[RoomWord.TempHead], faults, words), draft.Number("rh", words[RoomWord.RhHead], faults, words),
            draft.Number("o2", words[RoomWord.O2Head], faults, words), draft.Number("co2", words[RoomWord.Co2Head], faults, words), ReadingSource.Hand,
            draft.Needed("who", words[RoomWord.Who], faults, words), draft["instrument"]);
        Guid? corrects = Guid.TryParse(draft["corrects"], out Guid was) ? was : null;
        return Put(context, form, shed, desk, said, draft, faults, (origin, id) => RoomBodies.Made(origin with { HappenedAt = at!.Value }, air, corrects, id), words[corrects is null ? RoomWord.ReadingKept : RoomWord.ReadingCorrected]);
    }

    private static IResult Step(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, TimeProvider clock, SaidOnce said)
    {
        Words<RoomWord> words = Words.Of<RoomWord>(shed.Viewer.Language);
        RoomDraft draft = RoomDraft.Of(RoomForm.Step, form);
        List<FormFault> faults = [];
        DateTimeOffset? at = draft.Moment("at", words[RoomWord.At], clock, faults, words);
        string who = draft.Needed("who", words[RoomWord.Answers], faults, words);
        DoorSaid door = draft.Door(clock, faults, words);
        PlaceId place = new(draft["place"]);
        RoomStep? step = RoomTexts.Step(draft["step"]);
        if (step is null && draft["step"] != RoomDraft.Tests)
        {
            faults.Add(new FormFault(draft.FieldId("step"), words[RoomWord.FaultStep], words[RoomWord.FaultStepRemedy]));
        }

        bool saysDoor = door.Tests.Count > 0 || door.Attendant.Length > 0 || door.LockedAndTagged;
        if (draft["step"] == RoomDraft.Tests && door.Tests.Count == 0)
        {
            faults.Add(new FormFault(draft.FieldId("value-" + RoomTexts.Of(TestedGas.Oxygen)), words[RoomWord.FaultNoTest], words[RoomWord.FaultNoTestRemedy]));
        }

        // A form sent again meets the state that it made itself: then the ledger gives the same answer.
        if (faults.Count == 0 && step is { } done && draft["anyway"] != "yes" && shed.Season is { } season && season.Places.FirstOrDefault(one => one.Id == place) is { } room
            && !shed.PlaceLog.StepsOf(place).Any(one => one.Record.Fact == draft.Id))
        {
            RoomState state = RoomSight.Of(season, shed.PlaceLog, room, RoomSight.Moment(clock, shed.Viewer)).State.State;
            if (!RoomStates.FitsIn(done).Contains(state))
            {
                faults.Add(new FormFault(draft.FieldId("anyway"), words.Say(
                    RoomWord.FaultMisstep, words[RoomNames.Of(done)], words[RoomNames.Of(state)], string.Join(", ", RoomStates.FitsIn(done).Select(fits => words[RoomNames.Of(fits)]))), words[RoomWord.FaultMisstepRemedy]));
            }
        }

        return Put(context, form, shed, desk, said, draft, faults, (origin, id) => RoomBodies.Made(
            origin with { HappenedAt = at!.Value }, step is { } taken ? new StepSaid(place, taken, who, draft["note"], saysDoor ? door : null) : new TestSaid(place, who, door), null, id),
            step is { } kept ? words.Say(RoomWord.StepKept, words[RoomNames.Of(kept)]) : words[RoomWord.TestsKept]);
    }

    private static IResult Figures(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, SaidOnce said)
    {
        Words<RoomWord> words = Words.Of<RoomWord>(shed.Viewer.Language);
        RoomDraft draft = RoomDraft.Of(RoomForm.Figures, form);
        List<FormFault> faults = [];
        RoomFigures figures = draft.Figures(shed.PlaceLog.FiguresOf(new PlaceId(draft["place"])), faults, words);
        return Put(context, form, shed, desk, said, draft, faults, (origin, id) => RoomBodies.Made(origin, new RoomIs(new PlaceId(draft["place"]), figures), null, id), words[RoomWord.FiguresKept]);
    }

    private static IResult Withdraw(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<RoomWord> words = Words.Of<RoomWord>(shed.Viewer.Language);
        return Guid.TryParse(form["record"], out Guid record)
            ? desk.Put(context, form, Place, (origin, id) => RoomBodies.Withdrawn(origin, record, form["reason"].ToString().Trim(), id), words[RoomWord.Withdrawn]) : TypedResults.BadRequest();
    }

    private static IResult Put(
        HttpContext context, IFormCollection form, ShedReading shed, FactDesk desk, SaidOnce said, RoomDraft draft, List<FormFault> faults, Func<FactOrigin, Guid, NewFact> make, string done)
    {
        if (draft.Id is not { } id)
        {
            return TypedResults.BadRequest();
        }

        if (desk.OnlyToLookAt(context, form) is { } past)
        {
            return past;
        }

        if (faults.Count == 0)
        {
            if (desk.Append(make(desk.Origin(Place), id)) is not Appended.Refused refused)
            {
                said.Say(context, new Said(false, done));
                return new SeeOther(FactDesk.LocalPath(form[FactDesk.BackField]));
            }

            faults.AddRange(FormFault.Of(refused));
        }

        return Again(shed, draft, faults);
    }

    /// <summary>The room's page with the form as it was typed.</summary>
    public static IResult Again(ShedReading shed, RoomDraft draft, IReadOnlyList<FormFault> faults) => ShownAgain.As<RoomPage>(new Dictionary<string, object>
    {
        [nameof(RoomPage.Name)] = draft["place"].Length > 0 ? draft["place"] : shed.Season?.Places.FirstOrDefault(RoomSight.IsRoom)?.Id.Text ?? "",
        [nameof(RoomPage.Draft)] = draft, [nameof(RoomPage.Faults)] = faults,
    });
}
