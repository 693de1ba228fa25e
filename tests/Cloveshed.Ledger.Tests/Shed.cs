using Cloveshed.Ledger.Store;
using Microsoft.Data.Sqlite;

namespace Cloveshed.Ledger.Tests;

/// <summary>A ledger in a folder of a test's own, gone with it.</summary>
public sealed class Shed : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("cloveshed-ledger-").FullName;

    public Shed(HandClock? clock = null)
    {
        Clock = clock ?? new HandClock();
        Ledger = ShedLedger.Open(Address, Clock);
    }

    public HandClock Clock { get; }

    public ShedLedger Ledger { get; private set; }

    public string File => At("shed.db");

    public LedgerAddress Address => new(At("shed.db"));

    /// <summary>Facts from here and now.</summary>
    public FactOrigin Here => FactOrigin.Now(Clock, "test", "bench", "office");

    public string At(string name) => Path.Combine(root, name);

    /// <summary>A ledger with the small season in it.</summary>
    public static Shed WithSeason()
    {
        Shed shed = new();
        Assert.True(SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here).Taken);
        return shed;
    }

    /// <summary>Takes facts that must be taken.</summary>
    public IReadOnlyList<(Guid Id, long Seq)> Take(params NewFact[] facts) => Assert.IsType<Appended.Accepted>(Ledger.Append(facts)).Facts;

    /// <summary>The one refusal of facts that must be refused, which leave no trace.</summary>
    public Refusal Refuse(params NewFact[] facts)
    {
        LedgerHead before = Ledger.Head();
        Appended.Refused refused = Assert.IsType<Appended.Refused>(Ledger.Append(facts));
        Assert.Equal(before, Ledger.Head());
        Refusal refusal = Assert.Single(refused.Refusals);
        Assert.All(new[] { refusal.Message, refusal.Remedy }, text => Assert.True(text.Length > 10, text));
        return refusal;
    }

    /// <summary>The row of orders.csv with that number.</summary>
    public SeasonRow Order(int row) => Ledger.Now().Rows!.Find("orders.csv", row)!;

    /// <summary>Does something to the file behind the ledger's back.</summary>
    public int Sql(string commands)
    {
        using SqliteConnection connection = new($"Data Source={File};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = commands;
        return command.ExecuteNonQuery();
    }

    /// <summary>One value out of the file.</summary>
    public string Ask(string query)
    {
        using SqliteConnection connection = new($"Data Source={File};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = query;
        return Convert.ToString(command.ExecuteScalar(), System.Globalization.CultureInfo.InvariantCulture)!;
    }

    /// <summary>Ends the ledger and opens it again, as another program run would.</summary>
    public void Reopen()
    {
        Ledger.Dispose();
        Ledger = ShedLedger.Open(Address, Clock);
    }

    internal static SqliteStore Store(string file, string onConnect, int waitSeconds = 20) => new(file, waitSeconds)
    {
        OnConnect = connection =>
        {
            using var command = connection.CreateCommand();
            command.CommandText = onConnect;
            command.ExecuteNonQuery();
        },
    };

    public void Dispose()
    {
        Ledger.Dispose();
        Directory.Delete(root, recursive: true);
    }
}

/// <summary>A clock that stands until it is set, in a place five hours behind UTC.</summary>
public sealed class HandClock : TimeProvider
{
    public DateTimeOffset At { get; set; } = new(2030, 7, 1, 15, 0, 0, TimeSpan.Zero);

    public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("bench", TimeSpan.FromHours(-5), "bench", "bench");

    public override DateTimeOffset GetUtcNow() => At;
}
