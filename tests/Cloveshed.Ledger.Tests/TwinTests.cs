using CsCheck;
using NodaTime;

namespace Cloveshed.Ledger.Tests;

/// <summary>The ledger against a twin that is obviously right: a list of what was handed in, and a dictionary of what it comes to.</summary>
public sealed class TwinTests
{
    private enum Act { Enter, Change, Drop, Note, Again, Otherwise }

    private sealed record Step(Act Act, int Pick, int Units, int DaysAgo, int HoursOn);

    private static readonly Gen<Step> AnyStep = Gen.Select(Gen.Enum<Act>(), Gen.Int[0, 1000], Gen.Int[0, 99], Gen.Int[0, 5], Gen.Int[0, 40])
        .Select((act, pick, units, days, hours) => new Step(act, pick, units, days, hours));

    [Fact]
    public void A_ledger_is_the_list_of_what_was_handed_in() =>
        AnyStep.List[1, 3].List[1, 12].Sample(Compare, iter: 60);

    private static void Compare(List<List<Step>> batches)
    {
        using Shed shed = Shed.WithSeason();
        Twin twin = new(shed.Ledger.Now());
        int order = 0;
        foreach (List<Step> batch in batches)
        {
            shed.Clock.At += TimeSpan.FromHours(batch[0].HoursOn);
            List<NewFact> facts = [];
            Twin trial = twin.Copy();
            bool conflict = false;
            foreach (Step step in batch)
            {
                FactOrigin origin = shed.Here with { HappenedAt = shed.Here.HappenedAt.AddDays(-step.DaysAgo) };
                SeasonRow? row = trial.Current(step.Pick);
                NewFact fact = step.Act switch
                {
                    Act.Change when row is not null => origin.RowChanged(row, new Dictionary<string, string>(row.Cells) { ["units"] = $"{step.Units}" }),
                    Act.Drop when row is not null => origin.RowDropped(row),
                    Act.Enter => origin.RowEntered("orders.csv", SmallSeason.Order($"x{order++}", $"{step.Units}")),
                    Act.Again when trial.Facts.Count > 0 => trial.Facts[step.Pick % trial.Facts.Count].Fact,
                    Act.Otherwise when trial.Facts.Count > 0 => trial.Facts[step.Pick % trial.Facts.Count].Fact with { Device = "another" },
                    _ => origin.Note($"note {step.Units}"),
                };
                conflict |= !trial.Take(fact, shed.Clock.At);
                facts.Add(fact);
            }
            LedgerHead before = shed.Ledger.Head();
            Appended answer = shed.Ledger.Append(facts);
            if (conflict)
            {
                Assert.Equal("fact-changed", Assert.Single(Assert.IsType<Appended.Refused>(answer).Refusals).Rule);
                Assert.Equal(before, shed.Ledger.Head());
                continue;
            }
            Appended.Accepted accepted = Assert.IsType<Appended.Accepted>(answer);
            Assert.Equal(trial.Facts.Count == twin.Facts.Count, accepted.Again);
            twin = trial;
            Assert.Equal(facts.Select(fact => (fact.Id, twin.SeqOf(fact.Id))), accepted.Facts);
            // The same batch once more, as after an answer that was lost.
            Appended.Accepted again = Assert.IsType<Appended.Accepted>(shed.Ledger.Append(facts));
            Assert.True(again.Again);
            Assert.Equal(accepted.Facts, again.Facts);
            Assert.Equal(twin.Orders(_ => true), Orders(shed.Ledger.Now()));
        }
        Assert.Equal(twin.Facts.Select(taken => taken.Fact.Id), shed.Ledger.Read(after: twin.FirstSeq - 1).Select(fact => fact.Id));
        LookBack(shed, twin);
        Assert.Empty(shed.Ledger.Verify().Flaws);
        ShedState kept = shed.Ledger.Now();
        shed.Reopen();
        Assert.Equal(Orders(kept), Orders(shed.Ledger.Now()));
    }

    private static void LookBack(Shed shed, Twin twin)
    {
        LocalDate today = Day(shed.Here.HappenedAt);
        for (int ago = 0; ago <= 12; ago++)
        {
            LocalDate day = today.PlusDays(-ago);
            bool Then(Taken taken) => Day(taken.Fact.HappenedAt) <= day && Day(TimeZoneInfo.ConvertTime(taken.Recorded, shed.Clock.LocalTimeZone)) <= day;
            bool Now(Taken taken) => Day(taken.Fact.HappenedAt) <= day;
            if (day < twin.Opened)
            {
                Assert.Null(shed.Ledger.AsOf(new AsOf(day)).Rows);
                continue;
            }
            Assert.Equal(twin.Orders(Now), Orders(shed.Ledger.AsOf(new AsOf(day, Knowledge.AsKnownNow))));
            Assert.Equal(twin.Orders(Then), Orders(shed.Ledger.AsOf(new AsOf(day, Knowledge.AsKnownThen))));
        }
    }

    private static LocalDate Day(DateTimeOffset time) => new(time.Year, time.Month, time.Day);

    private static IEnumerable<(int Row, string Order, string Units)> Orders(ShedState state) =>
        state.Rows!.Of("orders.csv").Select(row => (row.Row, row.Cells["order"], row.Cells["units"]));

    private sealed record Taken(NewFact Fact, DateTimeOffset Recorded);

    /// <summary>Facts in a list; rows by going through the list.</summary>
    private sealed class Twin
    {
        private readonly List<SeasonRow> imported;

        public Twin(ShedState state)
        {
            imported = [.. state.Rows!.Of("orders.csv")];
            FirstSeq = state.Head.Seq + 1;
            Opened = new LocalDate(2030, 7, 1);
        }

        private Twin(Twin other) => (imported, FirstSeq, Opened, Facts) = (other.imported, other.FirstSeq, other.Opened, [.. other.Facts]);

        public long FirstSeq { get; }

        public LocalDate Opened { get; }

        public List<Taken> Facts { get; } = [];

        public Twin Copy() => new(this);

        public long SeqOf(Guid id) => FirstSeq + Facts.FindIndex(taken => taken.Fact.Id == id);

        /// <summary>False when the id was taken with something else.</summary>
        public bool Take(NewFact fact, DateTimeOffset now)
        {
            if (Facts.Find(taken => taken.Fact.Id == fact.Id) is { } known)
                return known.Fact == fact;
            Facts.Add(new Taken(fact, now));
            return true;
        }

        public SeasonRow? Current(int pick)
        {
            Dictionary<int, SeasonRow> rows = Rows(_ => true);
            return rows.Count == 0 ? null : rows.OrderBy(row => row.Key).ElementAt(pick % rows.Count).Value;
        }

        public IEnumerable<(int Row, string Order, string Units)> Orders(Func<Taken, bool> counts) =>
            Rows(counts).OrderBy(row => row.Key).Select(row => (row.Key, row.Value.Cells["order"], row.Value.Cells["units"]));

        private Dictionary<int, SeasonRow> Rows(Func<Taken, bool> counts)
        {
            Dictionary<int, SeasonRow> rows = imported.ToDictionary(row => row.Row);
            int last = imported.Count;
            foreach (Taken taken in Facts)
            {
                string kind = taken.Fact.Kind;
                if (kind == "order-line.entered")
                    last++;
                if (!counts(taken) || kind == "note")
                    continue;
                int row = kind == "order-line.entered" ? last : taken.Fact.Body.GetProperty("row").GetInt32();
                if (kind == "order-line.dropped")
                    rows.Remove(row);
                else if (kind == "order-line.entered" || rows.ContainsKey(row))
                    rows[row] = new SeasonRow("orders.csv", row, taken.Fact.Body.GetProperty("cells").EnumerateObject().ToDictionary(cell => cell.Name, cell => cell.Value.GetString()!), taken.Fact.Id, 0);
            }
            return rows;
        }
    }
}
