using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>import, export, ledger, backup and restore as a script uses them; the ledger itself has tests of its own.</summary>
public sealed class LedgerCommandTests : IDisposable
{
    /// <summary>season.json and the rows of the small shed.</summary>
    private const int Facts = 9;

    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    private JsonElement Json(params string[] arguments)
    {
        Ended ended = trial.Run([.. arguments, "--json"]);
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        return JsonElement.Parse(ended.Output);
    }

    private string Imported()
    {
        Assert.Equal(Facts, Json("import", SmallShed.In(trial), "--db", trial.At("shed.db")).GetProperty("facts").GetInt32());
        return trial.At("shed.db");
    }

    [Fact]
    public void A_season_goes_in_and_comes_out_and_the_second_import_takes_nothing()
    {
        string db = Imported();
        JsonElement again = Json("import", trial.At("season"), "--db", db);
        Assert.Equal((0, 0), (again.GetProperty("facts").GetInt32(), again.GetProperty("warnings").GetArrayLength()));
        Assert.Equal(Facts, Json("export", trial.At("out"), "--db", db).GetProperty("facts").GetInt32());
        Assert.All(Directory.EnumerateFiles(trial.At("season")), file => Assert.Equal(File.ReadAllLines(file), File.ReadAllLines(trial.At("out", Path.GetFileName(file)))));
        Assert.Equal(0, Json("import", trial.At("out"), "--db", db).GetProperty("facts").GetInt32());
    }

    [Fact]
    public void The_environment_names_the_ledger_where_the_command_does_not()
    {
        trial.With("CLOVESHED_DB", trial.At("named.db"));
        Assert.Equal(0, trial.Run("import", SmallShed.In(trial)).Code);
        Assert.True(File.Exists(trial.At("named.db")));
        Assert.True(Json("ledger", "verify").GetProperty("ok").GetBoolean());
    }

    [Fact]
    public void A_faulty_season_is_told_fault_by_fault_and_makes_no_ledger()
    {
        string season = SmallShed.In(trial);
        SmallShed.Change(season, "orders.csv", ",30,20", ",thirty,20");
        SmallShed.Change(season, "lots.csv", "plain", "plane");
        Ended ended = trial.Run("import", season, "--db", trial.At("shed.db")), spanish = trial.Run("import", season, "--db", trial.At("shed.db"), "--lang", "es");
        Assert.Equal((1, "", 1), (ended.Code, ended.Output, spanish.Code));
        Assert.Contains("refused for 2 faults. Nothing was imported.", ended.Error, StringComparison.Ordinal);
        Assert.Contains("orders.csv, line 2, column units", ended.Error, StringComparison.Ordinal);
        Assert.Contains("lots.csv, línea 2, columna variety", spanish.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(trial.At("shed.db")));
    }

    [Fact]
    public void Warnings_go_to_the_error_stream_and_into_the_document()
    {
        string season = SmallShed.In(trial);
        SmallShed.Change(season, "sizes.csv", "class,min_mm\nM,10", "class,min_mm,remark\nM,10,mine");
        Ended ended = trial.Run("import", season, "--db", trial.At("shed.db"), "--json");
        Assert.Equal(0, ended.Code);
        Assert.Contains("remark", ended.Error, StringComparison.Ordinal);
        Assert.Contains("sizes.csv", JsonElement.Parse(ended.Output).GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Verify_and_rebuild_say_how_many_whether_and_up_to_where()
    {
        string db = Imported();
        foreach (string what in new[] { "verify", "rebuild" })
        {
            JsonElement answer = Json("ledger", what, "--db", db);
            Assert.Equal((Facts, true), (answer.GetProperty("facts").GetInt32(), answer.GetProperty("ok").GetBoolean()));
            Assert.Matches("^[0-9a-f]{64}$", answer.GetProperty("head").GetString());
            Ended told = trial.Run("ledger", what, "--db", db, "--lang", "es");
            Assert.Equal((0, ""), (told.Code, told.Error));
            Assert.Contains("9 hechos", told.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Show_shows_what_was_asked_for()
    {
        string db = Imported();
        Assert.Equal(Facts, trial.Run("ledger", "show", "--db", db).Output.TrimEnd().Split('\n').Length);
        Assert.Matches(@"^5 2\S+ lot\.entered command \{""cells"":\{.*""lot"":""A""", trial.Run("ledger", "show", "--db", db, "--lot", "A").Output);
        JsonElement answer = Json("ledger", "show", "--db", db, "--kind", "order-line.entered");
        Assert.Equal((1, true), (answer.GetProperty("facts").GetInt32(), answer.GetProperty("ok").GetBoolean()));
        JsonElement fact = answer.GetProperty("shown")[0];
        Assert.Equal("Brask Foods", fact.GetProperty("body").GetProperty("cells").GetProperty("customer").GetString());
        Assert.All(new[] { "seq", "id", "kind", "happened_at", "recorded_at", "by", "device", "place", "corrects", "batch", "prev", "hash" }, key => Assert.True(fact.TryGetProperty(key, out _), key));
        Assert.Equal(0, Json("ledger", "show", "--db", db, "--lot", "Z").GetProperty("facts").GetInt32());
        Ended unknown = trial.Run("ledger", "show", "--db", db, "--kind", "lot.eaten");
        Assert.Equal((1, ""), (unknown.Code, unknown.Output));
        Assert.Contains("lot.eaten", unknown.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_backup_is_restored_into_a_new_ledger()
    {
        string db = Imported();
        JsonElement backup = Json("backup", trial.At("copy.db"), "--db", db), restored = Json("restore", trial.At("copy.db"), "--db", trial.At("new.db"));
        Assert.Equal(backup.GetProperty("head").GetString(), restored.GetProperty("head").GetString());
        Assert.Equal((Facts, Facts), (backup.GetProperty("facts").GetInt32(), restored.GetProperty("facts").GetInt32()));
        Assert.Equal(backup.GetProperty("head").GetString(), Json("ledger", "verify", "--db", trial.At("new.db")).GetProperty("head").GetString());
    }

    [Theory]
    [InlineData("export out --db none.db", "There is no ledger")]
    [InlineData("ledger verify --db none.db", "There is no ledger")]
    [InlineData("ledger rebuild --db none.db", "There is no ledger")]
    [InlineData("ledger show --db none.db", "There is no ledger")]
    [InlineData("backup copy.db --db none.db", "There is no ledger")]
    [InlineData("restore none.db --db new.db", "There is no ledger")]
    [InlineData("import season --db none/shed.db", "The folder of")]
    [InlineData("import season --db season/orders.csv", "is not a ledger of this program")]
    [InlineData("import season --db postgres://db.example/shed", "SQLite file only")]
    [InlineData("backup shed.db --db shed.db", "nothing is written over it")]
    [InlineData("restore shed.db --db shed.db", "nothing is written over it")]
    [InlineData("export out --db empty.db", "holds no season")]
    public void What_cannot_be_done_is_one_line_with_a_remedy(string line, string said)
    {
        Imported();
        Cloveshed.Ledger.ShedLedger.Open(new(trial.At("empty.db")), TimeProvider.System).Dispose();
        string[] named = ["none.db", "new.db", "copy.db", "shed.db", "empty.db", "none/shed.db", "season", "season/orders.csv", "out"];
        Ended ended = trial.Run([.. line.Split(' ').Select(word => named.Contains(word) ? trial.At(word.Split('/')) : word)]);
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
        Assert.Equal(1, ended.Error.Count(letter => letter == '\n'));
    }

    [Fact]
    public void A_ledger_that_does_not_hold_ends_with_1_and_names_where()
    {
        string db = Imported();
        using (Microsoft.Data.Sqlite.SqliteConnection file = new($"Data Source={db};Pooling=False"))
        {
            file.Open();
            using Microsoft.Data.Sqlite.SqliteCommand command = file.CreateCommand();
            command.CommandText = "UPDATE season_rows SET cells = '{}' WHERE file = 'lots.csv'";
            Assert.Equal(1, command.ExecuteNonQuery());
        }
        Ended verified = trial.Run("ledger", "verify", "--db", db), mended = trial.Run("ledger", "rebuild", "--db", db);
        Assert.Equal((1, 1), (verified.Code, mended.Code));
        Assert.StartsWith("fold: season_rows lots.csv 1: found", verified.Output, StringComparison.Ordinal);
        Assert.Contains("ledger rebuild", verified.Error, StringComparison.Ordinal);
        Assert.Contains("made again", mended.Error, StringComparison.Ordinal);
        Assert.Equal(0, trial.Run("ledger", "verify", "--db", db).Code);
    }

    [Theory]
    [InlineData("import", "FOLDER is missing. See cloveshed import --help.")]
    [InlineData("import ", "FOLDER is empty: it names no folder.")]
    [InlineData("import season --db ", "--db is empty: it names no file.")]
    [InlineData("restore shed.db", "--db NEW is missing. See cloveshed restore --help.")]
    [InlineData("backup", "FILE is missing.")]
    [InlineData("ledger verfy", "There is no command verfy. Did you mean verify? See cloveshed ledger --help.")]
    [InlineData("ledger show --lots A", "There is no option --lots. Did you mean --lot? See cloveshed ledger show --help.")]
    [InlineData("ledger verify here", "\"here\" is one argument too many. See cloveshed ledger verify --help.")]
    public void Used_wrongly(string line, string said)
    {
        Ended ended = trial.Run(line.Split(' '));
        Assert.Equal((2, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("verify")]
    [InlineData("rebuild")]
    [InlineData("show")]
    public void A_command_within_ledger_has_help_with_an_example(string command)
    {
        Ended english = trial.Run("ledger", command, "--help"), spanish = trial.Run("ledger", command, "-h", "--lang", "es");
        Assert.Equal((0, 0), (english.Code, spanish.Code));
        Assert.Contains($"\nExample:\n  cloveshed ledger {command}", english.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains($"\nEjemplo:\n  cloveshed ledger {command}", spanish.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains("docs/manual/ledger.md", english.Output, StringComparison.Ordinal);
    }
}
