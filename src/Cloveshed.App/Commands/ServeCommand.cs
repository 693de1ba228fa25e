using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Serving;
using Cloveshed.App.Words;
using Cloveshed.Ledger;

namespace Cloveshed.App.Commands;

/// <summary>serve: the web application on a ledger, until it is stopped.</summary>
internal static class ServeCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Option<string> db = Given.Database(phrases);
        Option<string> urls = new("--urls") { Description = phrases.Say(Phrase.ServeUrls, ServeAddress.Default), HelpName = "U" };
        ShedCommand command = new("serve", phrases[Phrase.ServeDoes], "cloveshed serve", "cloveshed serve --db shed.db --urls http://127.0.0.1:9000") { db, urls };
        command.SetAction(parsed =>
        {
            string where = parsed.GetValue(urls) ?? ServeAddress.Default;
            if (ServeAddress.Obstacle(where, phrases) is { } obstacle)
            {
                world.Error.WriteLine(obstacle);
                return Entry.Refused;
            }

            return WebServing.Run(LedgerAddress.Of(parsed.GetValue(db), world.Variable), where, parsed.GetValue<bool>(CommandTree.VerboseName), world, phrases);
        });
        return command;
    }
}
