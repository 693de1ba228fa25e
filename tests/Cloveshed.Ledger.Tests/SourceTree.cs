namespace Cloveshed.Ledger.Tests;

/// <summary>The source tree that this build was made from.</summary>
internal static class SourceTree
{
    public static string Root { get; } = Find();

    public static string Demo => Path.Combine(Root, "data", "demo-season");

    public static string Manual(string page) => File.ReadAllText(Path.Combine(Root, "docs", "manual", page)).ReplaceLineEndings("\n");

    private static string Find()
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Cloveshed.slnx")))
            folder = folder.Parent ?? throw new InvalidOperationException("Run the tests from a build inside the source tree.");
        return folder.FullName;
    }
}
