using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;

namespace Cloveshed.App.Tests;

/// <summary>The command tree, and the manual's pages beside it.</summary>
internal static class Manual
{
    public static RootCommand Tree() => CommandTree.Build(World.OfThisProcess(), Phrasebook.English);

    public static string Page(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "manual", name + ".md")).ReplaceLineEndings("\n");
}
