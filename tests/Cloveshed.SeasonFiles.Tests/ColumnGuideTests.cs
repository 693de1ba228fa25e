using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>What a person is told about a column is what the reader holds its cells to.</summary>
public sealed class ColumnGuideTests
{
    private static readonly IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files = new SmallSeason().WithTerms().Append("rooms.csv", "Room 1,2026-09-01\n")
        .With("place-weeks.csv", "place,week,temp_c,rh\nYard,2026-09-14,18,60\n").Files;

    public static TheoryData<string, string> Columns => [.. SeasonTable.All.SelectMany(table => table.Columns.Select(column => (table.File, column)))];

    public static TheoryData<string> Tables => [.. SeasonTable.All.Select(table => table.File)];

    /// <summary>A probe for each kind, and the rule that only a column of that kind answers it with.</summary>
    [Theory, MemberData(nameof(Columns))]
    public void The_kind_of_a_column_is_what_the_reader_asks_for(string file, string column)
    {
        ColumnGuide guide = ColumnGuides.Of(file).Single(one => one.Name == column);

        Assert.Equal(guide.Needed, Rules(file, column, "").Contains(FaultRule.CellEmpty));
        Assert.Equal(guide.Kind == ColumnKind.Word, Rules(file, column, "zzz").Contains(FaultRule.Word));
        Assert.Equal(guide.Kind == ColumnKind.Name, Rules(file, column, "zzz").Contains(FaultRule.Unknown));
        Assert.Equal(guide.Kind == ColumnKind.YesNo, Rules(file, column, "zzz").Contains(FaultRule.YesNo));
        Assert.Equal(guide.Kind is ColumnKind.Date or ColumnKind.Week, Rules(file, column, "zzz").Contains(FaultRule.Date));
        Assert.Equal(guide.Kind == ColumnKind.Week, Rules(file, column, "2026-09-08").Contains(FaultRule.Monday));
        Assert.Equal(guide.Kind is ColumnKind.Number or ColumnKind.Whole, Rules(file, column, "zzz").Contains(FaultRule.Number));
        Assert.Equal(guide.Kind == ColumnKind.Whole, Rules(file, column, "1.5").Contains(FaultRule.Whole));
        if (guide.Least is { } least && guide.Most is { } most)
        {
            Assert.Contains(Rules(file, column, FormattableString.Invariant($"{most + 1}")), IsRange);
            Assert.Contains(Rules(file, column, FormattableString.Invariant($"{least - 1}")), IsRange);
            Assert.Equal(guide.AboveLeast, Rules(file, column, FormattableString.Invariant($"{least}")).Any(IsRange));
        }
    }

    /// <summary>The file's rows twice over: the reader names the key, or, without one, has nothing against it.</summary>
    [Theory, MemberData(nameof(Tables))]
    public void The_key_of_a_file_is_what_may_stand_once_only(string file)
    {
        string[] twice = [.. Faults(file, rows => [.. rows, .. rows]).Where(fault => fault.File == file && fault.Rule == FaultRule.KeyTwice).Select(fault => fault.Column!).Distinct()];

        IReadOnlyList<string> key = ColumnGuides.KeyOf(file);
        Assert.Equal(key.Count == 0 ? [] : [string.Join(", ", key)], twice);
    }

    [Theory, MemberData(nameof(Columns))]
    public void What_is_expected_is_said_as_the_reader_says_it(string file, string column)
    {
        ColumnGuide guide = ColumnGuides.Of(file).Single(one => one.Name == column);
        if (guide.Kind is ColumnKind.Text or ColumnKind.Week)
        {
            Assert.NotEqual(guide.Expectation(TextLanguage.English), guide.Expectation(TextLanguage.Spanish));
            return;
        }

        // The name that products.csv asks for depends on the form, so both files are said.
        string spoilt = guide.Most is { } most ? guide.Kind == ColumnKind.Whole ? "1.5" : FormattableString.Invariant($"{most + 1}") : "zzz";
        Fault fault = Faults(file, rows => Set(file, rows, column, spoilt)).First(one => one.File == file && one.Column == column);
        if (guide.NamedIn.Count < 2)
        {
            Assert.Equal(fault.Expected, guide.Expectation(TextLanguage.English));
        }
    }

    [Fact]
    public void The_settings_asked_for_are_all_that_the_file_has()
    {
        const string All = """{"contract":1,"name":"A","first_week":"2026-09-07","weeks":10,"mass_unit":"lb","currency":"USD","as_of":"2026-09-08","end_price":0.1,"seed":3}""";
        Assert.Empty(new SmallSeason().With("season.json", All).Read().Warnings);
        Assert.Equal(
            System.Text.Json.JsonDocument.Parse(All).RootElement.EnumerateObject().Select(key => key.Name),
            ColumnGuides.Settings.Select(guide => guide.Name));
        foreach (ColumnGuide guide in ColumnGuides.Settings)
        {
            string without = System.Text.RegularExpressions.Regex.Replace(All, $"\"{guide.Name}\":(\"[^\"]*\"|[0-9.]+),?", "").Replace(",}", "}", StringComparison.Ordinal);
            Assert.Equal(guide.Needed, new SmallSeason().With("season.json", without).Read().Faults.Any(fault => fault.Column == guide.Name));
        }
    }

    [Fact]
    public void In_contract_1_an_order_line_has_no_terms_and_needs_its_price()
    {
        Assert.Equal(["price_list", "destination"], ColumnGuides.Of("orders.csv", 2).Select(guide => guide.Name).Except(ColumnGuides.Of("orders.csv", 1).Select(guide => guide.Name)));
        Assert.True(ColumnGuides.Of("orders.csv", 1).Single(guide => guide.Name == "price").Needed);
        Assert.False(ColumnGuides.Of("orders.csv", 2).Single(guide => guide.Name == "price").Needed);
        Assert.Equal(FaultRule.CellEmpty, Assert.Single(new SmallSeason().Replace("orders.csv", "100,45.50,", "100,,").Read().Faults).Rule);
        Assert.Equal(ColumnGuides.Of("lots.csv", 2), ColumnGuides.Of("lots.csv", 1));
    }

    private static bool IsRange(FaultRule rule) =>
        rule is FaultRule.Range or FaultRule.LimitRange or FaultRule.ShareRange or FaultRule.PercentRange or FaultRule.CelsiusRange;

    /// <summary>What the reader says of the column when its cell in the first row says this.</summary>
    private static IReadOnlyList<FaultRule> Rules(string file, string column, string cell) =>
        [.. Faults(file, rows => Set(file, rows, column, cell)).Where(fault => fault.File == file && fault.Column == column).Select(fault => fault.Rule)];

    private static IReadOnlyList<string?[]> Set(string file, IReadOnlyList<string?[]> rows, string column, string cell)
    {
        int at = SeasonTable.Of(file)!.OrdinalOf(column);
        return [.. rows.Select((row, index) => index > 0 ? row : [.. row.Select((old, ordinal) => ordinal == at ? cell : old)])];
    }

    private static IReadOnlyList<Fault> Faults(string file, Func<IReadOnlyList<string?[]>, IReadOnlyList<string?[]>> spoil)
    {
        SeasonTable table = SeasonTable.Of(file)!;
        EnteredTable entered = table.Read(Files[file]);
        bool[] all = [.. table.Columns.Select(_ => true)];
        return SeasonReader.Parse(new Dictionary<string, ReadOnlyMemory<byte>>(Files) { [file] = table.Write(all, spoil([.. entered.Rows.Select(row => row.Cells.ToArray())])) }).Faults;
    }
}
