namespace Cloveshed.Core.Tests.Handbook;

/// <summary>The pages of docs/formulas, so that their numbers are held to the code's.</summary>
internal static class FormulaPage
{
    public static string Read(string name)
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            string path = Path.Combine(at.FullName, "docs", "formulas", name);
            if (File.Exists(path))
                return File.ReadAllText(path);
        }

        throw new FileNotFoundException($"docs/formulas/{name} is not above {AppContext.BaseDirectory}.");
    }
}
