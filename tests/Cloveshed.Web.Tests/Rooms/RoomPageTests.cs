using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Web.Rooms;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Rooms;

/// <summary>A room's page and its forms: what is written down counts once, what is wrong is told whole, and nothing gives leave to enter.</summary>
public sealed class RoomPageTests : IAsyncLifetime
{
    private ServedShed? served;

    private ServedShed Shed => served!;

    public async ValueTask InitializeAsync() => served = await ServedShed.OpenDemo(RoomDays.Put);

    public ValueTask DisposeAsync() => Shed.DisposeAsync();

    private PlaceLog Log => Shed.Part<Cloveshed.Web.Shared.RecordShelf<RoomRecord, PlaceLog>>().Of(null);

    [Fact]
    public async Task A_room_shows_its_state_readings_and_alarms_with_what_to_do()
    {
        using Visitor visitor = Shed.Visitor();
        string cold = (await visitor.Get("/keep/rooms/Cold%201")).Read(), shut = (await visitor.Get("/keep/rooms/Sealed%20A")).Read(), aired = (await visitor.Get("/keep/rooms/Sealed%20C")).Read();
        Assert.Contains("Too warm", cold, StringComparison.Ordinal);
        Assert.Contains("Look at doors, fans, defrost and the machine", cold, StringComparison.Ordinal);
        Assert.Contains("Sealed. Since 2026-08-15 10:00, says K7.", shut, StringComparison.Ordinal);
        Assert.Contains("Too much oxygen", shut, StringComparison.Ordinal);
        Assert.DoesNotContain("Too warm", shut, StringComparison.Ordinal);
        Assert.Contains("Being aired: nobody is in it", aired, StringComparison.Ordinal);
        Assert.Contains("Did not fit: the room was \"Being aired: nobody is in it\". It changed nothing.", aired, StringComparison.Ordinal);
        // What stood against opening, by what was written down.
        Assert.All(["Oxygen: 17.50%, past its limit of 19.5%", "not tested: Flammable gas", "Carbon dioxide: nobody, or no instrument, is named"], told => Assert.Contains(told, aired, StringComparison.Ordinal));
    }

    /// <summary>29 CFR 1910.146(b), 1910.1000 table Z-1 and NIOSH figures, as docs/formulas/rooms.md has them.</summary>
    [Theory]
    [InlineData("en", "less than 19.5% oxygen, or more than 23.5%", "5,000 ppm", "Local codes, your permit program and licensed practice come first", "Nothing in this program gives leave to enter")]
    [InlineData("es", "menos de 19.5% de oxígeno, o más de 23.5%", "5,000 ppm", "Las normas locales, su programa de permisos y la práctica con licencia van primero", "Nada en este programa da permiso de entrar")]
    public async Task Before_a_door_the_cautions_stand_open_and_nothing_says_that_it_is_safe(string language, params string[] said)
    {
        using Visitor visitor = Shed.Visitor(language);
        foreach (string path in new[] { "/keep/rooms/Sealed%20A", "/keep/rooms/Sealed%20C" })
        {
            string page = (await visitor.Get(path)).Read();
            Assert.All(said, line => Assert.Contains(line, page, StringComparison.Ordinal));
            Assert.DoesNotContain("safe to", page, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("seguro entrar", page, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task A_reading_is_kept_once_corrected_and_withdrawn()
    {
        using Visitor visitor = Shed.Visitor();
        const string Path = "/keep/rooms/Cold%202";
        Got page = await visitor.Get(Path);
        (string, string)[] typed = [("at", "2026-09-02T09:15"), ("temp_c", "31"), ("rh", "66"), ("who", "K7"), ("instrument", "probe 1")];
        Assert.All([await visitor.Fill(page, "/keep-rooms/reading", typed), await visitor.Fill(page, "/keep-rooms/reading", typed)], answer => Assert.Equal((HttpStatusCode.SeeOther, Path), (answer.Status, answer.Header("Location"))));
        Logged<AirSaid> kept = Assert.Single(Log.AirOf(new PlaceId("Cold 2")));
        Assert.Equal((31.0, 66.0, "K7", "probe 1", ReadingSource.Hand, "2026-09-02 09:15"), (kept.Said.TempC!.Value, kept.Said.Rh!.Value, kept.Said.Who, kept.Said.Instrument, kept.Said.Source, RoomCharts.Written(kept.At)));
        Assert.Equal(TimeSpan.FromHours(-4.5), kept.Record.At.Offset);
        Assert.Contains("Too warm · 31.0 °C", (await visitor.Get(Path)).Read(), StringComparison.Ordinal);

        Got correcting = await visitor.Get($"{Path}?correct={kept.Record.Fact}");
        Assert.Equal("31", SmallShed.Fields(correcting, "/keep-rooms/reading")["temp_c"]);
        await visitor.Fill(correcting, "/keep-rooms/reading", ("temp_c", "0.3"), ("who", "K7"));
        Assert.Equal([0.3], Log.AirOf(new PlaceId("Cold 2")).Select(one => one.Said.TempC!.Value));
        Assert.DoesNotContain("Too warm", (await visitor.Get(Path)).Read(), StringComparison.Ordinal);

        await visitor.Send(await visitor.Get(Path), "/keep-rooms/withdraw", ("reason", "read in the wrong room"));
        Assert.Empty(Log.AirOf(new PlaceId("Cold 2")));
        Assert.Equal(3, Shed.Ledger.Read(kind: FactKinds.AirRead).Count(fact => fact.Body.GetProperty("place").GetString() == "Cold 2") + Shed.Ledger.Read(kind: FactKinds.RecordWithdrawn).Count());
    }

    [Fact]
    public async Task What_is_wrong_with_a_reading_is_told_at_once_and_nothing_typed_is_lost()
    {
        using Visitor visitor = Shed.Visitor();
        long before = Shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/keep/rooms/Cold%202");
        Got refused = await visitor.Fill(page, "/keep-rooms/reading", ("at", "2026-09-03T09:15"), ("temp_c", "warm"), ("rh", "66"), ("who", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.All(["When is a moment that has not come", "Temperature, °C says \"warm\", which is no number", "Who measured (badge or initials) is empty"], fault => Assert.Contains(fault, refused.Read(), StringComparison.Ordinal));
        Assert.Contains("href=\"#reading-temp_c\"", refused.Text, StringComparison.Ordinal);
        Assert.Equal(("warm", "66"), (SmallShed.Fields(refused, "/keep-rooms/reading")["temp_c"], SmallShed.Fields(refused, "/keep-rooms/reading")["rh"]));
        Got empty = await visitor.Fill(page, "/keep-rooms/reading", ("at", "2026-09-02T09:15"), ("temp_c", ""), ("rh", ""), ("who", "K7"));
        Assert.Contains("The reading reads nothing.", empty.Read(), StringComparison.Ordinal);
        Assert.Equal(before, Shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task A_step_that_does_not_fit_is_asked_about_before_it_is_kept()
    {
        using Visitor visitor = Shed.Visitor();
        const string Path = "/keep/rooms/Sealed%20A";
        Got page = await visitor.Get(Path);
        Got asked = await visitor.Fill(page, "/keep-rooms/step", ("step", "emptied"), ("who", "K7"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.Status);
        Assert.Contains("\"Emptied\" does not fit: the room is now \"Sealed\"", asked.Read(), StringComparison.Ordinal);
        Assert.DoesNotContain(Log.StepsOf(RoomDays.SealedA), step => step.Said.Step == RoomStep.Emptied);
        await visitor.Send(asked, "/keep-rooms/step", ("step", "emptied"), ("at", "2026-09-02T10:20"), ("who", "K7"), ("anyway", "yes"));
        Assert.Contains(Log.StepsOf(RoomDays.SealedA), step => step.Said.Step == RoomStep.Emptied);
        Assert.Contains("Sealed. Since", (await visitor.Get(Path)).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_room_is_turned_over_only_by_tests_that_name_who_measured_what()
    {
        using Visitor visitor = Shed.Visitor();
        const string Path = "/keep/rooms/Sealed%20C";
        Got page = await visitor.Get(Path);
        (string, string)[] good = [("value-oxygen", "20.8"), ("who-oxygen", "K7"), ("with-oxygen", "meter 3"), ("value-flammable", "0"), ("who-flammable", "K7"), ("with-flammable", "meter 3"), ("value-carbon-dioxide", "0.06"), ("who-carbon-dioxide", "K7"), ("with-carbon-dioxide", "meter 4")];
        (string, string)[] Turned(params (string, string)[] otherwise) => [("step", "turned-over"), ("who", "A1"), .. good.Where(one => otherwise.All(other => other.Item1 != one.Item1)), .. otherwise];
        Got untested = await visitor.Fill(page, "/keep-rooms/step", ("step", "turned-over"), ("who", "A1"));
        Assert.Contains("A room is turned over by tests that are written down", untested.Read(), StringComparison.Ordinal);
        Got low = await visitor.Send(page, "/keep-rooms/step", Turned(("value-oxygen", "19.4"), ("attendant", "B2"), ("locked", "yes")));
        Assert.Contains("Oxygen was measured as 19.4, past the limit of 19.5. Nobody goes in.", low.Read(), StringComparison.Ordinal);
        Got alone = await visitor.Send(page, "/keep-rooms/step", Turned(("locked", "yes")));
        Assert.Contains("attendant is missing", alone.Read(), StringComparison.Ordinal);
        Assert.Equal(RoomStep.Emptied, Log.StepsOf(RoomDays.SealedC)[^1].Said.Step);
        await visitor.Send(page, "/keep-rooms/step", Turned(("at", "2026-09-02T10:30"), ("attendant", "B2"), ("locked", "yes")));
        string after = (await visitor.Get(Path)).Read();
        Assert.Contains("Turned over, being emptied. Since 2026-09-02 10:30, says A1.", after, StringComparison.Ordinal);
        Assert.Contains("Oxygen: 20.80%, by K7, with meter 3", after, StringComparison.Ordinal);
        Assert.Contains("Nothing in this program gives leave to enter", after, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_loggers_file_is_taken_whole_and_a_longer_one_adds_only_what_is_new()
    {
        using Visitor visitor = Shed.Visitor();
        const string Path = "/keep/rooms/Cold%202";
        string rows = "place,at,temp_c,rh,who\nCold 2,2026-09-01 08:00,0.2,65,K7\nCold 3,2026-09-01 08:00,1.1,67,K7\n";
        Assert.Equal(HttpStatusCode.SeeOther, (await Send(visitor, Path, rows)).Status);
        Assert.Contains("2 readings are kept.", (await visitor.Get(Path)).Read(), StringComparison.Ordinal);
        await Send(visitor, Path, rows);
        Assert.Contains("All 2 readings were there already: nothing was added.", (await visitor.Get(Path)).Read(), StringComparison.Ordinal);
        await Send(visitor, Path, rows + "Cold 2,2026-09-01 09:00,0.3,65,K7\n");
        Assert.Equal([0.2, 0.3], Log.AirOf(new PlaceId("Cold 2")).Select(one => one.Said.TempC!.Value));
        Fact[] last = [.. Shed.Ledger.ReadBack(1)];
        Assert.Equal(("file", 7), (last[0].Body.GetProperty("source").GetString(), last[0].Id.Version));
    }

    [Fact]
    public async Task A_file_with_faults_is_told_whole_and_nothing_of_it_is_taken()
    {
        using Visitor visitor = Shed.Visitor("es");
        long before = Shed.Ledger.Head().Seq;
        Got refused = await Send(visitor, "/keep/rooms/Cold%202", "place,at,temp_c\nCold 2,2026-09-01 08:00,0.2\nCold 9,2026-09-01 08:00,0.2\nCold 2,ayer,68\n", "K7");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.All(
            ["logger.csv, línea 3, columna place: dice \"Cold 9\"", "logger.csv, línea 4, columna at: dice \"ayer\"; se esperaba un día y una hora", "logger.csv, línea 4, columna temp_c: dice \"68\"; se esperaba grados Celsius"],
            fault => Assert.Contains(fault, refused.Read(), StringComparison.Ordinal));
        Assert.Equal(before, Shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task A_device_sends_readings_to_the_api()
    {
        using Visitor visitor = Shed.Visitor();
        string sent = $$"""[{"id":"{{Guid.CreateVersion7()}}","kind":"air.read","happened_at":"2026-09-02T15:00:00Z","place":"keep","device":"probe-7","body":{"place":"Cold 3","temp_c":1.2,"rh":68,"who":"probe-7"} }]""";
        using StringContent content = new(sent, Encoding.UTF8, new MediaTypeHeaderValue("application/json"));
        using HttpResponseMessage answer = await visitor.Client.PostAsync(new Uri("/api/v1/facts", UriKind.Relative), content, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Logged<AirSaid> kept = Assert.Single(Log.AirOf(new PlaceId("Cold 3")));
        Assert.Equal((ReadingSource.Device, "2026-09-02 10:30"), (kept.Said.Source, RoomCharts.Written(kept.At)));
    }

    /// <summary>3 rows of 1.2 m in 3.9 m less 0.15 m at each wall; see BinStacking. 12 x 10 x 4.5 m holds 540 m³.</summary>
    [Fact]
    public async Task What_a_room_is_gives_its_stacking_plan_its_gas_and_its_limits()
    {
        using Visitor visitor = Shed.Visitor();
        const string Path = "/keep/rooms/Sealed%20A";
        visitor.Cookies.Add(Shed.Root, new Cookie("cloveshed-unit", "kg"));
        Got page = await visitor.Get(Path);
        Assert.Contains("No rule on the height of stacks is set", page.Read(), StringComparison.Ordinal);
        await visitor.Fill(page, "/keep-rooms/figures", ("length_m", "12.3"), ("width_m", "3.9"), ("height_m", "4.5"), ("bin_length_m", "1.2"), ("bin_width_m", "1.2"), ("bin_height_m", "0.75"), ("most_high", "4"), ("most_o2", "9"), ("beside-takes-odour", "yes"));
        string after = (await visitor.Get(Path)).Read();
        Assert.Contains("10 along, 3 across, 4 high: 120 bins; the height is limited by the rule on bins on one another", after, StringComparison.Ordinal);
        Assert.DoesNotContain("No rule on the height of stacks is set", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Too much oxygen", after, StringComparison.Ordinal); // 7.2% under the new limit of 9
        Assert.Contains("Garlic's odour spoils it: another room.", after, StringComparison.Ordinal);
        Got wrong = await visitor.Fill(await visitor.Get(Path), "/keep-rooms/figures", ("length_m", "12300"));
        Assert.Contains("Room length, m says 12300; it lies between 0.5 and 500.", wrong.Read(), StringComparison.Ordinal);
    }

    /// <summary>1 ft is 0.3048 m and 1 lb 0.45359237 kg (NIST Special Publication 811): 40 ft are 12.192 m, 100 lb 45.359237 kg, 500 ft³ a minute 849.51 m³ an hour.</summary>
    [Fact]
    public async Task Who_reads_pounds_types_feet_and_facts_hold_metres()
    {
        PlaceId room = new("Cold 3");
        const string Path = "/keep/rooms/Cold%203";
        using Visitor pounds = Shed.Visitor(), kilograms = Shed.Visitor();
        kilograms.Cookies.Add(Shed.Root, new Cookie("cloveshed-unit", "kg"));
        await kilograms.Fill(await kilograms.Get(Path), "/keep-rooms/figures", ("wall_gap_m", "0.15"), ("width_m", "9"));
        Got page = await pounds.Get(Path);
        Assert.Contains("Room length, ft", page.Read(), StringComparison.Ordinal);
        Assert.Equal("0.4921", SmallShed.Fields(page, "/keep-rooms/figures")["wall_gap_m"]);
        await pounds.Fill(page, "/keep-rooms/figures", ("length_m", "40"), ("bin_kg", "100"), ("air_m3_per_hour", "500"));
        RoomFigures held = new PlaceLog(Shed.Ledger.RoomRecords(), Shed.Clock.LocalTimeZone).FiguresOf(room);
        // What was not touched is what it was, not its rounding in feet.
        Assert.Equal((0.15, 9.0), (held[RoomFigure.WallGapM], held[RoomFigure.WidthM]));
        Assert.Equal(12.192, held[RoomFigure.LengthM]!.Value, 1e-9);
        Assert.Equal(45.359237, held[RoomFigure.BinKg]!.Value, 1e-9);
        Assert.Equal(849.505, held[RoomFigure.AirM3PerHour]!.Value, 0.001);
        Assert.Equal("40", SmallShed.Fields(await pounds.Get(Path), "/keep-rooms/figures")["length_m"]);
        Assert.Equal("12.192", SmallShed.Fields(await kilograms.Get(Path), "/keep-rooms/figures")["length_m"]);
        Got wrong = await pounds.Fill(await pounds.Get(Path), "/keep-rooms/figures", ("length_m", "2000"));
        Assert.Contains("Room length, ft says 2000; it lies between 1.6404 and 1640.4199.", wrong.Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Today_says_which_rooms_are_out_of_limits_and_what_to_do()
    {
        using Visitor visitor = Shed.Visitor();
        string today = (await visitor.Get("/")).Read();
        Assert.Contains("Rooms out of their limits: Cold 1 (too warm)", today, StringComparison.Ordinal);
        Assert.Contains("Sealed A: Too much oxygen", today, StringComparison.Ordinal);
        Assert.Contains("Air is getting in: look for the leak from outside", today, StringComparison.Ordinal);
        Assert.Contains("Nobody has ever written down the air of", today, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_past_day_shows_the_room_as_it_was_and_takes_nothing()
    {
        using Visitor visitor = Shed.Visitor();
        Got now = await visitor.Get("/keep/rooms/Cold%201");
        visitor.LookAt(Shed, "2026-08-31+now");
        Got then = await visitor.Get("/keep/rooms/Cold%201");
        Assert.DoesNotContain("Too warm", then.Read(), StringComparison.Ordinal);
        long before = Shed.Ledger.Head().Seq;
        await visitor.Fill(now, "/keep-rooms/reading", ("temp_c", "1"), ("who", "K7"));
        Assert.Equal(before, Shed.Ledger.Head().Seq);
    }

    [Theory]
    [InlineData("/keep/rooms/Open%20yard")]
    [InlineData("/keep/rooms/Cellar")]
    public async Task A_room_that_is_none_says_so(string path)
    {
        using Visitor visitor = Shed.Visitor();
        Got page = await visitor.Get(path);
        Assert.Equal(HttpStatusCode.NotFound, page.Status);
        Assert.Contains("There is no such room", page.Read(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_room_that_the_season_has_sealed_stays_sealed_whatever_slip_comes_after()
    {
        Cloveshed.Core.Seasons.Season season = Shed.Ledger.Now().Season!;
        Cloveshed.Core.Seasons.Place vault = season.Places.First(place => place.Id == RoomDays.SealedA) with { Id = new PlaceId("Sealed B") };
        season = season with { SealedRooms = [new Cloveshed.Core.Seasons.SealedRoom(vault.Id, new NodaTime.LocalDate(2026, 8, 1))] };
        RoomRecord slip = new(Guid.CreateVersion7(), 1, RoomDays.Last.AddDays(-3), RoomDays.Last, "test", "", null, new StepSaid(vault.Id, RoomStep.LoadingBegan, "K7", "", null), "");
        RoomSight sight = RoomSight.Of(season, new PlaceLog([slip], Shed.Clock.LocalTimeZone), vault, new NodaTime.LocalDateTime(2026, 9, 2, 10, 0));
        Assert.Equal((RoomState.Sealed, 1, 2), (sight.State.State, sight.State.Missteps.Count, sight.Assumed));
    }

    private static async Task<Got> Send(Visitor visitor, string path, string rows, string who = "")
    {
        using MultipartFormDataContent content = [];
        foreach ((string name, string value) in SmallShed.Fields(await visitor.Get(path), "/keep-rooms/file"))
        {
            content.Add(new StringContent(name == "who" ? who : value), name);
        }

        content.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(rows)), "file", "logger.csv");
        using HttpResponseMessage answer = await visitor.Client.PostAsync(new Uri("/keep-rooms/file", UriKind.Relative), content, TestContext.Current.CancellationToken);
        return new Got(answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer);
    }
}
