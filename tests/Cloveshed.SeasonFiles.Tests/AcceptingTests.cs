using System.Text;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Files;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>What people's programs write otherwise and is read the same; what is read otherwise than written and is warned about.</summary>
public sealed class AcceptingTests
{
    private static readonly Season Plain = new SmallSeason().Read().Season!, WithTerms = new SmallSeason().WithTerms().Read().Season!;

    public static TheoryData<string, string> EveryFile =>
        new(SeasonFileSet.Names.Where(name => name != "place-weeks.csv").SelectMany(name => new[] { "mark", "crlf", "tail" }, (name, way) => (name, way)));

    [Theory, MemberData(nameof(EveryFile))]
    public void A_byte_order_mark_CRLF_and_empty_lines_at_the_end_change_nothing(string file, string way)
    {
        SmallSeason season = new SmallSeason().WithTerms();
        string text = season.Text(file);
        season.With(file, way switch
        {
            "mark" => "\uFEFF" + text,
            "crlf" => text.Replace("\n", "\r\n", StringComparison.Ordinal),
            _ => text + "\n\n \n" + (file == "season.json" ? "" : ",,\n"),
        });

        SeasonReading reading = season.Read();

        Assert.Empty(reading.Faults);
        Assert.Empty(reading.Warnings);
        RoundTripTests.AssertSame(WithTerms, reading.Season!);
    }

    [Fact]
    public void Columns_are_read_in_any_order_with_spaces_around_their_names()
    {
        SeasonReading reading = new SmallSeason().With("sizes.csv", " max_mm ,min_mm,class,code\n51,38,small,S\n64,51,medium,M\n,64,large,L\n").Read();

        Assert.Equal(Plain.Sizes, reading.Season!.Sizes);
    }

    [Fact]
    public void Optional_columns_and_files_may_be_missing()
    {
        Season season = new SmallSeason().With("yields.csv", "kept_share,mode\n0.88,fresh\n0.8,crack\n").Without("samples.csv").Without("people.csv")
            .Without("market.csv").Without("rooms.csv").Without("stock.csv").Without("seed-needs.csv").Without("sell-as-is.csv").Without("line-weeks.csv")
            .With("orders.csv", "order,line,customer,product,due,units,price\nO1,1,Brask Foods,M30,2026-09-24,100,45.5\n").Read().Season!;

        Assert.Empty(season.Samples);
        Assert.True(season.Orders[0].Firm);
    }

    [Fact]
    public void A_quoted_cell_may_hold_line_ends_and_lines_are_still_counted()
    {
        SmallSeason spoilt = new SmallSeason().Replace("orders.csv", "O1,1,Brask Foods,", "O1,1,\"Brask\r\n\"\"Foods\"\"\nInc, 2\",")
            .Replace("orders.csv", "2026-09-24,50,52", "2026-09-24,x,52");

        Fault fault = Assert.Single(spoilt.Read().Faults);
        Season season = spoilt.Replace("orders.csv", "2026-09-24,x,52", "2026-09-24,50,52").Read().Season!;

        Assert.Equal((5, "units", "x"), (fault.Line, fault.Column, fault.Value));
        Assert.Equal("Brask\r\n\"Foods\"\nInc, 2", season.Orders[0].Customer);
    }

    [Fact]
    public void Shares_that_rounding_brings_a_little_above_1_are_read() =>
        Assert.Equal(0.6666666667, new SmallSeason().Replace("lots.csv", "0.8,0.1,B", "0.6666666667,0.3333333334,B").Read().Season!.Lots[0].FreshShare);

    [Fact]
    public void Words_and_answers_are_read_in_capitals_too()
    {
        Season season = new SmallSeason().Replace("places.csv", "Yard,open", "Yard,Open").Replace("orders.csv", "10,yes,", "10,YES,").Read().Season!;

        Assert.Equal(PlaceKind.Open, season.Places[0].Kind);
        Assert.True(season.Orders[0].LargerOk);
    }

    [Fact]
    public void Unknown_columns_keys_and_files_are_warned_about_once_each()
    {
        IReadOnlyList<SeasonWarning> warnings = new SmallSeason().With("samples.csv", "lot,date,weight_g,colour\nL1,2026-08-01,50,white\nL1,2026-08-02,50,white\n")
            .Replace("season.json", "\"weeks\"", "\"owner\": {\"a\": [1]}, \"weeks\"").With("notes.txt", "buy twine").Read().Warnings;

        Assert.Equal(
            [("season.json", 5, "owner"), ("samples.csv", 1, "colour"), ("notes.txt", (int?)null, null)],
            warnings.Select(warning => (warning.File, warning.Line, warning.Column)));
    }

    [Fact]
    public void Weeks_outside_the_season_are_left_out_and_warned_about_once_per_file()
    {
        SeasonReading reading = new SmallSeason()
            .With("place-weeks.csv", "place,week,temp_c\nYard,2026-08-31,20\nYard,2026-09-07,19\nYard,2026-11-09,5\nYard,2026-11-16,4\n")
            .Append("line-weeks.csv", "Cracker,2026-11-16,0,\n").Append("people.csv", "2026-08-31,1\n").Append("market.csv", "M30,2027-01-04,1,,1,\n").Read();

        Assert.Equal([0, 9], reading.Season!.PlaceWeeks.Select(week => week.Week));
        Assert.Equal(
            [("place-weeks.csv", 2), ("line-weeks.csv", 3), ("people.csv", 3), ("market.csv", 3)],
            reading.Warnings.Select(warning => (warning.File, warning.Line!.Value)));
        Assert.StartsWith("2 rows", reading.Warnings[0].Text, StringComparison.Ordinal);
        Assert.Equal(Plain.Market, reading.Season.Market);
    }

    [Fact]
    public void Lots_that_start_after_the_season_are_left_out_with_their_samples()
    {
        SeasonReading reading = new SmallSeason().Replace("lots.csv", "2026-09-21", "2026-11-16").Read();

        Assert.Equal(["L1", "L1"], reading.Season!.Lots.Select(row => row.Lot.Text));
        Assert.Equal(2, reading.Season.Samples.Count);
        Assert.Equal([("lots.csv", 4), ("samples.csv", 4)], reading.Warnings.Select(warning => (warning.File, warning.Line!.Value)));
        Assert.Equal(3, new SmallSeason().Replace("lots.csv", "2026-09-21", "2026-11-15").Read().Season!.Lots.Count); // the season's last Sunday
    }

    /// <summary>Rows that start later may find room by then; only together in the plan's first week do they count against the place.</summary>
    [Fact]
    public void Bins_that_come_later_are_not_added_to_those_that_stand_there() =>
        Assert.NotNull(new SmallSeason().Replace("places.csv", "open,500", "open,100").Read().Season);

    [Fact]
    public void As_of_moves_the_start_of_what_was_dug_before()
    {
        SmallSeason later = new SmallSeason().Replace("season.json", "\"weeks\"", "\"as_of\": \"2026-09-23\", \"weeks\"").Replace("places.csv", "open,500", "open,159");

        Fault fault = Assert.Single(later.Read().Faults); // on 23 September both L1 and L2 stand in the yard: 60 + 100 bins
        Assert.Equal((FaultRule.PlaceOverfull, 4), (fault.Rule, fault.Line));
    }

    [Fact]
    public void A_lot_dug_in_the_week_of_sealing_may_stand_in_the_room()
    {
        Season season = new SmallSeason().Append("rooms.csv", "Room 1,2026-07-20\n").Replace("lots.csv", "L1,Cold 1", "L1,Room 1").Read().Season!;

        Assert.Equal(new PlaceId("Room 1"), season.Lots[1].Place);
    }

    [Fact]
    public void A_missing_bulb_law_is_that_of_ordinary_garlic_and_warned_about()
    {
        SeasonReading reading = new SmallSeason().Replace("varieties.csv", "Late Sorrel,-7.1,2.9,0.08", "Late Sorrel,,,").Read();

        MassLaw law = reading.Season!.Varieties[1].BulbLaw;
        Assert.Equal(("varieties.csv", 3), (reading.Warnings[0].File, reading.Warnings[0].Line));
        // Taskopru garlic: 46.51 mm and 32.81 g in the mean (Haciseferogullari et al., abstract); the band is our own, for another type.
        Assert.InRange(Math.Exp(law.A + law.B * Math.Log(46.51)), 0.75 * 32.81, 1.5 * 32.81);
    }

    [Fact]
    public void Strange_but_possible_numbers_are_warned_about()
    {
        SeasonReading reading = new SmallSeason().Replace("places.csv", "20,60", "20,0.6").Replace("lines.csv", "6000,40,10", "6000,160,10").Read();

        Assert.NotNull(reading.Season);
        Assert.Equal([("places.csv", 2, "rh"), ("lines.csv", 2, "hours_per_week")], reading.Warnings.Select(it => (it.File, it.Line!.Value, it.Column!)));
    }

    [Fact]
    public void Warnings_are_in_Spanish_too() =>
        Assert.Equal(
            "esta columna no se conoce y se dejó fuera",
            new SmallSeason().Replace("yields.csv", "mode,kept_share\nfresh,0.88\ncrack,0.8\nseed,0.78", "mode,kept_share,x\nfresh,0.88,\ncrack,0.8,\nseed,0.78,")
                .Read(TextLanguage.Spanish).Warnings.Single().Text);

    [Fact]
    public void The_digest_is_of_names_and_bytes()
    {
        string digest = new SmallSeason().Read().InputDigest;

        Assert.Matches("^[0-9a-f]{64}$", digest);
        Assert.Equal(digest, new SmallSeason().Read().InputDigest);
        Assert.Equal(digest, new SmallSeason().With("notes.txt", "x").Read().InputDigest);
        Assert.NotEqual(digest, new SmallSeason().Append("yields.csv", "\n").Read().InputDigest);
        Assert.NotEqual(digest, new SmallSeason().Without("rooms.csv").Read().InputDigest);
        Assert.NotEqual(DigestOf("market.csv"), DigestOf("people.csv"));

        static string DigestOf(string name) =>
            SeasonReader.Parse(new Dictionary<string, ReadOnlyMemory<byte>> { [name] = Encoding.UTF8.GetBytes("week\n") }).InputDigest;
    }
}
