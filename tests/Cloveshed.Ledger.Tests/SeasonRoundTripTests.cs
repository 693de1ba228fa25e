using System.Text;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Odd;
using CsCheck;

namespace Cloveshed.Ledger.Tests;

/// <summary>
/// A season into a ledger and out again, row for row and cell for cell. What went in is read here by a CSV reader of the test's own, a dozen
/// lines by RFC 4180, section 2, that shares nothing with the program's.
/// </summary>
public sealed class SeasonRoundTripTests : IDisposable
{
    private readonly Shed shed = new();

    public void Dispose() => shed.Dispose();

    public static TheoryData<string> Oddities => [.. Oddity.All.Select(oddity => oddity.Name)];

    [Fact]
    public void The_demo_comes_out_as_it_went_in()
    {
        ImportResult result = SeasonImport.Import(shed.Ledger, SourceTree.Demo, shed.Here);
        Assert.Equal((true, 9527), (result.Taken, result.Facts));
        shed.Reopen();
        Assert.Equal(9527, SeasonExport.Export(shed.Ledger.Now(), shed.At("out")));
        string[] names = [.. Directory.EnumerateFiles(SourceTree.Demo).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];
        Assert.Equal(names, Directory.EnumerateFiles(shed.At("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        foreach (string name in names)
            AssertSame(name, File.ReadAllBytes(Path.Combine(SourceTree.Demo, name)), File.ReadAllBytes(Path.Combine(shed.At("out"), name)));
        Assert.Equal(SeasonReader.Read(shed.At("out")).InputDigest, shed.Ledger.Now().InputDigest);
        // What came out is the same season: nothing to take.
        Assert.Equal((true, 0), (SeasonImport.Import(shed.Ledger, shed.At("out"), shed.Here) is var again && again.Already, again.Facts));
    }

    [Theory, MemberData(nameof(Oddities))]
    public void An_odd_season_comes_out_as_it_went_in(string name)
    {
        Oddity oddity = Oddity.All.Single(it => it.Name == name);
        for (ulong seed = 1; seed <= (oddity.Large ? 1u : 2u); seed++)
            RoundTrip(OddSeasons.Make(oddity, seed), new Pcg(seed, 7));
    }

    [Fact]
    public void Seasons_at_large_come_out_as_they_went_in() =>
        Gen.ULong.Sample(seed => RoundTrip(OddSeasons.Mixed(seed), new Pcg(seed, 7)), iter: 40, threads: 1);

    /// <summary>RFC 4180, section 2: quotes, commas and line ends within cells; besides, a byte order mark, CR alone, spaces, and no line end at the end.</summary>
    [Fact]
    public void Cells_keep_every_letter()
    {
        const string Lots = "\uFEFF field ,lot,place,variety,harvested,bins,net,fresh_share,crack_share,mean_g,cv,remark\r"
            + "\"north, \"\"upper\"\"\r\nhalf; west\",\" A \",yard,plain,2030-06-20, 10 ,1000.50,1,0,50,0.02,mine\r"
            + "Ñu🧄,B,yard,plain,2030-06-21,+5,5e2,.9,0,48,0.02,";
        Dictionary<string, ReadOnlyMemory<byte>> files = new(SmallSeason.With(("lots.csv", Lots)));
        ImportResult result = SeasonImport.Import(shed.Ledger, files, shed.Here);
        Assert.True(result.Taken);
        Assert.Contains(result.Warnings, warning => warning is { File: "lots.csv", Column: "remark" });
        SeasonRow[] rows = [.. shed.Ledger.Now().Rows!.Of("lots.csv")];
        Assert.Equal(["north, \"upper\"\r\nhalf; west", " A ", " 10 ", "1000.50"], new[] { "field", "lot", "bins", "net" }.Select(column => rows[0].Cells[column]));
        Assert.Equal(["Ñu🧄", "B", "+5", "5e2", ".9"], new[] { "field", "lot", "bins", "net", "fresh_share" }.Select(column => rows[1].Cells[column]));
        Assert.False(rows[0].Cells.ContainsKey("remark"));
        Assert.Equal([1, 2], rows.Select(row => row.Row));
        Assert.Equal(
            "lot,place,variety,field,harvested,bins,net,fresh_share,crack_share,mean_g,cv\r\n"
            + "\" A \",yard,plain,\"north, \"\"upper\"\"\r\nhalf; west\",2030-06-20,\" 10 \",1000.50,1,0,50,0.02\r\n"
            + "B,yard,plain,Ñu🧄,2030-06-21,+5,5e2,.9,0,48,0.02\r\n",
            Encoding.UTF8.GetString(shed.Ledger.Now().Files()["lots.csv"].Span));
    }

    [Fact]
    public void A_file_with_a_header_alone_comes_out_with_it()
    {
        Assert.True(SeasonImport.Import(shed.Ledger, SmallSeason.With(("orders.csv", "price,units,due,product,customer,line,order\n"), ("people.csv", "week,hours\n")), shed.Here).Taken);
        shed.Reopen();
        ShedState now = shed.Ledger.Now();
        Assert.Equal("order,line,customer,product,due,units,price\r\n", Encoding.UTF8.GetString(now.Files()["orders.csv"].Span));
        Assert.Equal("week,hours\r\n", Encoding.UTF8.GetString(now.Files()["people.csv"].Span));
        Assert.False(now.Files().ContainsKey("market.csv"));
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Fact]
    public void The_same_import_twice_takes_nothing_the_second_time()
    {
        Assert.Equal(SmallSeasonFacts, SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here).Facts);
        LedgerHead head = shed.Ledger.Head();
        ImportResult again = SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here);
        Assert.Equal((true, true, 0, head), (again.Taken, again.Already, again.Facts, shed.Ledger.Head()));
        // Line ends and the order of columns are not what was said.
        string lots = Encoding.UTF8.GetString(SmallSeason.Files()["lots.csv"].Span);
        Assert.True(SeasonImport.Import(shed.Ledger, SmallSeason.With(("lots.csv", lots.Replace("\n", "\r\n", StringComparison.Ordinal))), shed.Here).Already);
    }

    [Fact]
    public void A_season_that_was_changed_since_is_imported_anew()
    {
        SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here);
        shed.Take(shed.Here.RowDropped(shed.Order(1)));
        Assert.Equal(SmallSeasonFacts, SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here).Facts);
        Assert.Equal(["o1", "o2"], shed.Ledger.Now().Season!.Orders.Select(order => order.Order.Text));
        Assert.Equal([1, 2], shed.Ledger.Now().Rows!.Of("orders.csv").Select(row => row.Row));
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Fact]
    public void A_faulty_season_leaves_no_fact()
    {
        ImportResult refused = SeasonImport.Import(shed.Ledger, SmallSeason.With(("orders.csv", "order,line,customer,product,due,units,price\no1,1,X,M31,2030-07-04,thirty,20\n")), shed.Here);
        Assert.Equal((false, 0, 2), (refused.Taken, refused.Facts, refused.FaultCount));
        Assert.Equal(["product", "units"], refused.Faults.Select(fault => fault.Column).Order(StringComparer.Ordinal));
        Assert.False(SeasonImport.Import(shed.Ledger, SmallSeason.With(("lots.csv", null)), shed.Here).Taken);
        Assert.False(SeasonImport.Import(shed.Ledger, shed.At("nowhere"), shed.Here).Taken);
        Assert.Equal(LedgerHead.None, shed.Ledger.Head());
    }

    [Fact]
    public void Changes_come_out_and_a_new_row_stands_last()
    {
        SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here);
        shed.Take(shed.Here.RowDropped(shed.Order(2)), shed.Here.RowEntered("orders.csv", SmallSeason.Order("o3")),
            shed.Here.RowChanged(shed.Order(1), new Dictionary<string, string>(shed.Order(1).Cells) { ["whole"] = "yes", ["units"] = "007" }));
        Assert.Equal([1, 3], shed.Ledger.Now().Rows!.Of("orders.csv").Select(row => row.Row));
        shed.Take(shed.Here.RowDropped(shed.Order(3)), shed.Here.RowEntered("orders.csv", SmallSeason.Order("o4")));
        Assert.Equal([1, 4], shed.Ledger.Now().Rows!.Of("orders.csv").Select(row => row.Row));
        shed.Reopen();
        Assert.Equal(
            "order,line,customer,product,due,units,price,whole\r\no1,1,Brask Foods,M30,2030-07-04,007,20,yes\r\no4,1,Brask Foods,M30,2030-07-10,5,20,\r\n",
            Encoding.UTF8.GetString(shed.Ledger.Now().Files()["orders.csv"].Span));
        // A file that the season had not.
        shed.Take(shed.Here.RowEntered("people.csv", new Dictionary<string, string> { ["week"] = "2030-07-01", ["hours"] = "80" }));
        Assert.Equal("week,hours\r\n2030-07-01,80\r\n", Encoding.UTF8.GetString(shed.Ledger.Now().Files()["people.csv"].Span));
        string settings = shed.Ledger.Now().Rows!.Settings.Replace("USD", "EUR", StringComparison.Ordinal);
        shed.Take(shed.Here.SeasonChanged(settings));
        Assert.Equal("EUR", shed.Ledger.Now().Season!.Settings.Currency);
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Fact]
    public void A_folder_with_a_file_of_another_season_is_named()
    {
        SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here);
        Directory.CreateDirectory(shed.At("out"));
        File.WriteAllText(shed.At("out/samples.csv"), "lot,date,weight_g\n");
        Assert.Equal("samples.csv", SeasonExport.Stray(shed.Ledger.Now(), shed.At("out")));
        Assert.Null(SeasonExport.Stray(shed.Ledger.Now(), shed.At("elsewhere")));
    }

    /// <summary>season.json and the rows of <see cref="SmallSeason"/>.</summary>
    private const int SmallSeasonFacts = 11;

    private static void RoundTrip(Season season, Pcg odd)
    {
        using Shed shed = new();
        Dictionary<string, ReadOnlyMemory<byte>> files = OddFolder.Files(season, odd).ToDictionary(file => file.Key, file => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(file.Value));
        ImportResult result = SeasonImport.Import(shed.Ledger, files, shed.Here);
        Assert.True(result.Taken, string.Join('\n', result.Faults));
        shed.Reopen();
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> exported = shed.Ledger.Now().Files();
        Assert.Equal(files.Keys.Order(StringComparer.Ordinal), exported.Keys.Order(StringComparer.Ordinal));
        foreach ((string name, ReadOnlyMemory<byte> bytes) in files)
            AssertSame(name, bytes.ToArray(), exported[name].ToArray());
        Assert.True(SeasonImport.Import(shed.Ledger, exported, shed.Here).Already);
        Assert.Equal(OddFolder.Text(SeasonReader.Parse(files).Season!), OddFolder.Text(shed.Ledger.Now().Season!));
    }

    /// <summary>season.json to the letter; of tables the same rows in the same order, each with the same cells by column, columns in the contract's order.</summary>
    private static void AssertSame(string name, byte[] given, byte[] got)
    {
        string before = Encoding.UTF8.GetString(given).TrimStart('\uFEFF'), after = Encoding.UTF8.GetString(got);
        if (name == "season.json")
        {
            Assert.Equal(before, after);
            return;
        }
        List<string[]> wanted = Rows(before), found = Rows(after);
        string[] contract = [.. SeasonTable.Of(name)!.Columns.Where(wanted[0].Contains)];
        Assert.Equal(contract, found[0]);
        Assert.Equal(wanted.Count, found.Count);
        int[] places = [.. contract.Select(column => Array.IndexOf(wanted[0], column))];
        for (int at = 1; at < wanted.Count; at++)
            Assert.Equal(places.Select(place => wanted[at][place]), found[at]);
        Assert.DoesNotMatch("(?<!\r)\n$", after);
    }

    private static List<string[]> Rows(string text)
    {
        List<string[]> rows = [];
        List<string> cells = [];
        StringBuilder cell = new();
        bool quoted = false;
        for (int at = 0; at < text.Length; at++)
        {
            char letter = text[at];
            if (quoted && letter == '"' && at + 1 < text.Length && text[at + 1] == '"')
                cell.Append(text[at++]);
            else if (letter == '"')
                quoted = !quoted;
            else if (!quoted && letter is (',' or '\n'))
            {
                cells.Add(cell.ToString());
                cell.Clear();
                if (letter == '\n')
                {
                    rows.Add([.. cells]);
                    cells.Clear();
                }
            }
            else if (quoted || letter != '\r')
                cell.Append(letter);
        }
        return rows;
    }
}
