using Cloveshed.App.CommandLine;
using Cloveshed.App.Demo;
using Cloveshed.App.Words;
using Cloveshed.Ledger;
using Cloveshed.Web;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Logging;

namespace Cloveshed.App.Serving;

/// <summary>Serves a ledger until somebody stops it: Ctrl-C, or a polite kill.</summary>
internal static class WebServing
{
    /// <summary>Answers that are under way when it is stopped have this long to finish.</summary>
    private static readonly TimeSpan Finishing = TimeSpan.FromSeconds(10);

    /// <summary>Keys stand beside the ledger's file, under its name.</summary>
    private const string KeysEnd = ".keys";

    public static int Run(LedgerAddress address, string urls, bool verbose, World world, Phrasebook phrases)
    {
        using ShedLedger ledger = ShedLedger.Open(address, TimeProvider.System);
        // At a terminal somebody reads: only what went wrong. Into a file goes everything.
        LogLevel least = world.ErrorIsTerminal && !verbose ? LogLevel.Warning : LogLevel.Information;
        using JsonLines log = new(world.Error, TimeProvider.System, least);
        ShedOptions options = new(
            urls, address.File + KeysEnd, CommandTree.Version, world.Elapsed, logging => logging.AddProvider(log),
            Demo: DemoSeason.Files.ToDictionary(file => file.Name, file => new ReadOnlyMemory<byte>(file.Bytes)))
        {
            Shifts = world.Shifts,
        };
        return Serve(ShedHost.Build(ledger, world.Solver, TimeProvider.System, options), address, urls, world, phrases).GetAwaiter().GetResult();
    }

    private static async Task<int> Serve(WebApplication app, LedgerAddress address, string urls, World world, Phrasebook phrases)
    {
        await using (app)
        {
            TaskCompletionSource stop = new(TaskCreationOptions.RunContinuationsAsynchronously);
            using IDisposable stopping = world.OnStop(() => stop.TrySetResult());
            try
            {
                await app.StartAsync();
            }
            catch (IOException problem) when (problem.InnerException is AddressInUseException)
            {
                world.Error.WriteLine(phrases.Say(Phrase.ServePortInUse, urls));
                return Entry.Refused;
            }

            world.Output.WriteLine(phrases.Say(Phrase.ServeHere, string.Join(' ', app.Urls), address.File));
            world.Output.WriteLine(phrases[Phrase.ServeHowToStop]);
            world.Output.Flush();
            await stop.Task;
            world.Output.WriteLine(phrases[Phrase.ServeStopping]);
            using CancellationTokenSource enough = new(Finishing);
            await app.StopAsync(enough.Token);
            return Entry.Done;
        }
    }
}
