using System.CommandLine;

namespace Cloveshed.App.CommandLine;

/// <summary>A command with examples for its help; each is a whole command line.</summary>
internal sealed class ShedCommand(string name, string description, params string[] examples) : Command(name, description)
{
    public IReadOnlyList<string> Examples { get; } = examples;
}
