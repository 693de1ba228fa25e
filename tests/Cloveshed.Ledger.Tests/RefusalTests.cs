using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;
using NodaTime;

namespace Cloveshed.Ledger.Tests;

/// <summary>Every rule refuses what it is there for, whole, with its name and a remedy, and leaves no trace.</summary>
public sealed class RefusalTests : IDisposable
{
    private static readonly LocalDate FirstMonday = new(2030, 7, 1);

    private readonly Shed shed = Shed.WithSeason();

    public void Dispose() => shed.Dispose();

    private static JsonElement Json(string text) => JsonElement.Parse(text);

    [Fact]
    public void An_id_that_is_not_of_version_7()
    {
        // RFC 9562, appendix A.3: a UUID of version 4.
        Assert.Equal("id-form", shed.Refuse(shed.Here.Note("x") with { Id = Guid.Parse("919108F7-52D1-4320-9BAC-F847DB4148A8") }).Rule);
        Assert.Equal("id-form", shed.Refuse(shed.Here.Note("x") with { Id = Guid.Empty }).Rule);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Note")]
    [InlineData("lot.eaten")]
    [InlineData("note ")]
    public void A_kind_that_is_none(string kind) => Assert.Equal("kind-unknown", shed.Refuse(shed.Here.Note("x") with { Kind = kind }).Rule);

    [Fact]
    public void Words_for_who_and_where_that_are_no_names()
    {
        Assert.Equal("text-length", shed.Refuse(shed.Here.Note("x") with { By = " " }).Rule);
        Assert.Equal("text-length", shed.Refuse(shed.Here.Note("x") with { Place = new string('a', 201) }).Rule);
        Assert.Equal("text-length", shed.Refuse(shed.Here.Note("x") with { Device = "a\nb" }).Rule);
        shed.Take(shed.Here.Note("x") with { Place = new string('a', 200), Device = "" });
    }

    [Fact]
    public void A_time_more_than_a_day_ahead()
    {
        Assert.Equal("time-ahead", shed.Refuse(shed.Here.Note("x") with { HappenedAt = shed.Clock.At.AddDays(1).AddTicks(1) }).Rule);
        shed.Take(shed.Here.Note("x") with { HappenedAt = shed.Clock.At.AddDays(1) });
    }

    [Theory]
    [InlineData("note", "[]")]
    [InlineData("note", "{}")]
    [InlineData("note", """{"text":1}""")]
    [InlineData("note", """{"text":"a","text":"b"}""")]
    [InlineData("note", """{"text":"\ud800"}""")]
    [InlineData("season.changed", """{"text":null}""")]
    [InlineData("season.opened", """{"text":"{}","digest":"abc","name":"x","columns":{}}""")]
    [InlineData("season.opened", """{"text":"{}","digest":"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855","name":"x","columns":{"beds.csv":[]}}""")]
    [InlineData("season.opened", """{"text":"{}","digest":"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855","name":"x","columns":{"lots.csv":["colour"]}}""")]
    [InlineData("season.opened", """{"text":"{}","digest":"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855","name":"x","columns":{"lots.csv":"lot"}}""")]
    [InlineData("order-line.entered", """{"file":"orders.csv","cells":{"colour":"red"}}""")]
    [InlineData("order-line.entered", """{"file":"orders.csv","cells":{"units":5}}""")]
    [InlineData("order-line.entered", """{"file":"orders.csv","cells":["a"]}""")]
    [InlineData("order-line.entered", """{"file":"lots.csv","cells":{}}""")]
    [InlineData("run.pinned", """{"lot":"A","line":"pack","week":"2030-7-1"}""")]
    [InlineData("run.pinned", """{"lot":"A","line":"pack","week":"2030-07-01","unit":"st"}""")]
    [InlineData("run.barred", """{"lot":"A","week":"2030-07-01"}""")]
    [InlineData("plan.asked", """{"name":"x","seconds":"60","gap":0.001,"basis":1}""")]
    [InlineData("plan.asked", """{"name":"x","seconds":60,"gap":0.001,"basis":1.5}""")]
    [InlineData("plan.asked", """{"name":"x","seconds":60,"gap":0.001,"basis":1,"seed":99999999999}""")]
    [InlineData("plan.adopted", """{"plan":"yesterday's"}""")]
    [InlineData("plan.stopped", """{"asked":7}""")]
    public void A_body_that_is_not_of_its_kinds_form(string kind, string body) =>
        Assert.Equal("body-form", shed.Refuse(shed.Here.Note("x") with { Kind = kind, Body = Json(body) }).Rule);

    [Fact]
    public void A_body_of_another_version_or_without_bounds()
    {
        Assert.Equal("body-version", shed.Refuse(shed.Here.Note("x") with { Body = Json("""{"text":"a","v":2}""") }).Rule);
        Assert.Equal("body-size", shed.Refuse(shed.Here.Note(new string('a', 1_000_000))).Rule);
        shed.Take(shed.Here.Note("x") with { Body = Json("""{"text":"without a version it is the first"}""") });
        Assert.Equal(1, shed.Ledger.Read(kind: "note").Single().Body.GetProperty("v").GetInt32());
    }

    [Fact]
    public void An_id_that_was_taken_with_another_content()
    {
        NewFact note = shed.Here.Note("first");
        shed.Take(note);
        NewFact[] others =
        [
            note with { Body = Json("""{"text":"second"}""") }, note with { By = "another" }, note with { Device = "another" }, note with { Place = "another" },
            note with { HappenedAt = note.HappenedAt.AddTicks(1) }, note with { HappenedAt = note.HappenedAt.ToUniversalTime() },
            shed.Here.RunBarred(new LotId("A"), new LineId("pack"), FirstMonday, note.Id),
        ];
        Assert.All(others, other => Assert.Equal("fact-changed", shed.Refuse(other).Rule));
        // Another order of keys is the same content.
        NewFact pin = shed.Here.RunPinned(new LotId("A"), new LineId("pack"), FirstMonday, 5, MassUnit.Pound);
        shed.Take(pin);
        Assert.True(Assert.IsType<Appended.Accepted>(shed.Ledger.Append([pin with { Body = Json("""{ "week":"2030-07-01", "unit":"lb", "v":1, "mass":5.0, "line":"pack", "lot":"A" }""") }])).Again);
    }

    [Fact]
    public void One_bad_fact_refuses_its_whole_batch() =>
        Assert.Equal("kind-unknown", shed.Refuse(shed.Here.Note("a"), shed.Here.Note("b") with { Kind = "x" }, shed.Here.Note("c")).Rule);

    [Fact]
    public void The_same_id_twice_in_a_batch()
    {
        NewFact note = shed.Here.Note("a");
        Assert.Equal("fact-changed", shed.Refuse(note, note with { By = "another" }).Rule);
        Assert.Equal(2, shed.Take(note, note).Count);
        Assert.Single(shed.Ledger.Read(kind: "note"));
    }

    [Fact]
    public void Anything_about_a_season_before_there_is_one()
    {
        using Shed empty = new();
        Assert.Equal("season-none", empty.Refuse(empty.Here.RowEntered("orders.csv", SmallSeason.Order("x"))).Rule);
        Assert.Equal("season-none", empty.Refuse(empty.Here.SeasonChanged("{}")).Rule);
        Assert.Equal("season-none", empty.Refuse(empty.Here.RunBarred(new LotId("A"), new LineId("pack"), FirstMonday)).Rule);
        Assert.Equal("season-none", empty.Refuse(empty.Here.PlanAsked("x", 60, 0.001, null, "en", 0)).Rule);
        empty.Take(empty.Here.Note("a note needs none"));
    }

    [Fact]
    public void A_change_by_somebody_who_saw_an_older_row()
    {
        SeasonRow seen = shed.Order(1);
        Dictionary<string, string> more = new(seen.Cells) { ["units"] = "31" };
        shed.Take(shed.Here.RowChanged(seen, more));
        Assert.Equal("row-moved", shed.Refuse(shed.Here.RowChanged(seen, seen.Cells)).Rule);
        Assert.Equal("row-moved", shed.Refuse(shed.Here.RowDropped(seen)).Rule);
        shed.Take(shed.Here.RowDropped(shed.Order(1)));
        Assert.Equal("row-gone", shed.Refuse(shed.Here.RowChanged(seen, more)).Rule);
        Assert.Equal("row-gone", shed.Refuse(shed.Here.RowDropped(seen with { Row = 99 })).Rule);
        Assert.Equal("row-gone", shed.Refuse(shed.Here.RowDropped(seen with { Row = 0 })).Rule);
        Assert.Equal("corrects-missing", shed.Refuse(shed.Here.RowChanged(shed.Order(2), more) with { Corrects = null }).Rule);
    }

    [Fact]
    public void A_correction_of_nothing()
    {
        Assert.Equal("corrects-unknown", shed.Refuse(shed.Here.Note("x") with { Corrects = Guid.CreateVersion7() }).Rule);
        Guid note = shed.Take(shed.Here.Note("x"))[0].Id;
        shed.Take(shed.Here.Note("no, y") with { Corrects = note });
    }

    [Fact]
    public void A_change_that_would_leave_the_season_unsound()
    {
        SeasonRow row = shed.Order(2);
        NewFact change = shed.Here.RowChanged(row, new Dictionary<string, string>(row.Cells) { ["product"] = "M31" });
        Refusal refusal = shed.Refuse(shed.Here.Note("before it"), change);
        Assert.Equal(("season-unknown", change.Id), (refusal.Rule, refusal.Id));
        Assert.Contains("orders.csv, line 3, column product", refusal.Message, StringComparison.Ordinal);
        Assert.Equal("season-key-twice", shed.Refuse(shed.Here.RowEntered("orders.csv", SmallSeason.Order("o1"))).Rule);
        Assert.Equal("season-cell-empty", shed.Refuse(shed.Here.RowEntered("people.csv", new Dictionary<string, string> { ["week"] = "2030-07-01", ["hours"] = "" })).Rule);
        Assert.Equal("season-json", shed.Refuse(shed.Here.SeasonChanged("{")).Rule);
        Assert.Equal("season-unknown", Assert.IsType<Appended.Refused>(shed.Ledger.Append([shed.Here.RowDropped(shed.Ledger.Now().Rows!.Of("products.csv").Single())])).Refusals[0].Rule);
    }

    [Fact]
    public void Refusals_are_said_in_Spanish_too()
    {
        SeasonRow row = shed.Order(2);
        NewFact change = shed.Here.RowChanged(row, new Dictionary<string, string>(row.Cells) { ["units"] = "doce" });
        Refusal refusal = Assert.Single(Assert.IsType<Appended.Refused>(shed.Ledger.Append([change], null, TextLanguage.Spanish)).Refusals);
        Assert.Contains("orders.csv, línea 3, columna units", refusal.Message, StringComparison.Ordinal);
        Assert.StartsWith("No hay ninguna clase de hecho", Assert.Single(Assert.IsType<Appended.Refused>(
            shed.Ledger.Append([change with { Kind = "x" }], null, TextLanguage.Spanish)).Refusals).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hold_on_what_the_season_has_not()
    {
        LotId a = new("A");
        LineId pack = new("pack");
        Assert.Equal("hold-unknown", shed.Refuse(shed.Here.RunBarred(new LotId("a"), pack, FirstMonday)).Rule);
        Assert.Equal("hold-unknown", shed.Refuse(shed.Here.RunBarred(a, new LineId("pack 2"), FirstMonday)).Rule);
        Assert.Equal("hold-week", shed.Refuse(shed.Here.RunBarred(a, pack, FirstMonday.PlusDays(1))).Rule);
        Assert.Equal("hold-week", shed.Refuse(shed.Here.RunBarred(a, pack, FirstMonday.PlusWeeks(-1))).Rule);
        Assert.Equal("hold-week", shed.Refuse(shed.Here.RunBarred(a, pack, FirstMonday.PlusWeeks(3))).Rule);
        Assert.Equal("hold-mass", shed.Refuse(shed.Here.RunPinned(a, pack, FirstMonday, -1, MassUnit.Pound)).Rule);
        shed.Take(shed.Here.RunBarred(a, pack, FirstMonday.PlusWeeks(2)));
    }

    [Fact]
    public void A_hold_that_is_lifted_twice()
    {
        shed.Take(shed.Here.RunBarred(new LotId("A"), new LineId("pack"), FirstMonday));
        RunHold hold = Assert.Single(shed.Ledger.Now().Holds);
        shed.Take(shed.Here.HoldLifted(hold));
        Assert.Equal("hold-gone", shed.Refuse(shed.Here.HoldLifted(hold)).Rule);
        Assert.Equal("corrects-missing", shed.Refuse(shed.Here.HoldLifted(hold) with { Corrects = null }).Rule);
    }
}
