using System.Net;
using System.Net.Sockets;
using Cloveshed.Ledger;

namespace Cloveshed.App.Tests;

/// <summary>Serving: where it may, what it says, how it stops, and the demo that is served.</summary>
public sealed class ServeTests : IDisposable
{
    private readonly Trial trial = new() { StoppedAtOnce = true };

    public void Dispose() => trial.Dispose();

    [Fact]
    public void It_says_where_it_serves_and_how_to_stop_it_and_ends_when_told()
    {
        Ended ended = trial.Run("serve", "--db", trial.At("shed.db"), "--urls", "http://127.0.0.1:0");
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        Assert.Matches(@"^Serving http://127\.0\.0\.1:\d+ on the ledger .*shed\.db\nStop with Ctrl-C\.\nStopping: what is under way is finished first\.\n$", ended.Output.ReplaceLineEndings("\n"));
        Assert.True(File.Exists(trial.At("shed.db")));
    }

    [Fact]
    public void The_environment_names_the_ledger_when_the_command_does_not()
    {
        Ended ended = trial.With(LedgerAddress.Variable, trial.At("named.db")).Run("serve", "--urls", "http://127.0.0.1:0", "--lang", "es");
        Assert.Equal(0, ended.Code);
        Assert.Contains("Se detiene con Ctrl-C.", ended.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(trial.At("named.db")));
    }

    /// <summary>RFC 1122, 3.2.1.3: 127.0.0.0/8 is this host; RFC 4291, 2.5.3: so is ::1. 0.0.0.0 and :: are every address that it has.</summary>
    [Theory]
    [InlineData("http://0.0.0.0:8080")]
    [InlineData("http://[::]:8080")]
    [InlineData("http://192.0.2.7:8080")]
    [InlineData("http://shed.example:8080")]
    [InlineData("http://*:8080")]
    [InlineData("http://+:8080")]
    [InlineData("http://127.0.0.1:8080;http://192.0.2.7:8080")]
    [InlineData("https://127.0.0.1:8443")]
    [InlineData("127.0.0.1:8080")]
    [InlineData("http://127.0.0.1:8080/shed")]
    [InlineData("http://127.0.0.1:99999")]
    [InlineData("http://localhost:0")]
    [InlineData("")]
    public void An_address_that_others_could_reach_or_that_is_none_is_refused_in_one_sentence(string urls)
    {
        Ended ended = trial.Run("serve", "--db", trial.At("shed.db"), "--urls", urls);
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Matches("^[^\n]+ http://127\\.0\\.0\\.1:8080\\.\r?\n$", ended.Error);
        Assert.False(File.Exists(trial.At("shed.db")));
    }

    [Fact]
    public void A_port_in_use_is_one_clear_line()
    {
        using TcpListener other = new(IPAddress.Loopback, 0);
        other.Start();
        Ended ended = trial.Run("serve", "--db", trial.At("shed.db"), "--urls", $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Matches("^http://127\\.0\\.0\\.1:\\d+ is in use by another program, or by another serve\\. Stop that one, or give another port\\.\r?\n$", ended.Error);
    }

    [Fact]
    public void A_ledger_that_is_none_is_refused_before_anything_is_served()
    {
        File.WriteAllText(trial.At("notes.txt"), "This is a list of things to buy, and no ledger at all.");
        Ended ended = trial.Run("serve", "--db", trial.At("notes.txt"), "--urls", "http://127.0.0.1:0");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains("notes.txt", ended.Error, StringComparison.Ordinal);
        Assert.StartsWith("This is a list", File.ReadAllText(trial.At("notes.txt")), StringComparison.Ordinal);
    }

    /// <summary>Stopped while it plans, the demo still has a plan, a poorer one; then it is served and stopped at once.</summary>
    [Fact]
    public void The_demo_is_recorded_planned_and_adopted_and_found_again()
    {
        string port = FreePort();
        Ended first = trial.Run("demo", "--folder", trial.At("f"), "--seconds", "2", "--port", port);
        Assert.Equal(0, first.Code);
        Assert.Contains($"Serving http://127.0.0.1:{port} on the ledger ", first.Output, StringComparison.Ordinal);
        Assert.Contains("is recorded in the ledger", first.Error, StringComparison.Ordinal);
        LedgerHead head;
        using (ShedLedger ledger = ShedLedger.OpenExisting(LedgerAddress.Parse(trial.At("f", "shed.db")), TimeProvider.System))
        {
            ShedState now = ledger.Now();
            Assert.Equal("Quillon Flat Garlic 2026/27", now.Season!.Settings.Name);
            Assert.Equal(now.Plans.Single(), now.Adopted);
            Assert.Empty(now.Jobs);
            Assert.Equal(now.Adopted!.Value, PlanDocument.Read(ledger.Document(now.Adopted.Document)!).Summary.Value, 1e-6);
            Assert.NotNull(ledger.AsOf(new AsOf(now.Season.Settings.AsOf)).Season);
            Assert.True(ledger.Verify().Ok);
            head = now.Head;
        }

        Ended second = trial.Run("demo", "--folder", trial.At("f"), "--port", port);
        Assert.Equal(0, second.Code);
        Assert.StartsWith("The demo was planned before", second.Error, StringComparison.Ordinal);
        using ShedLedger again = ShedLedger.OpenExisting(LedgerAddress.Parse(trial.At("f", "shed.db")), TimeProvider.System);
        Assert.Equal(head, again.Head());
    }

    private static string FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }
}
