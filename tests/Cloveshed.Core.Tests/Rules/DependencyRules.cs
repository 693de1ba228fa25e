using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Cloveshed.Core.Tests.Rules;

/// <summary>
/// An assembly exists to keep a dependency out. This table is the whole of what each may reference; a new reference is a
/// decision, made here.
/// </summary>
public class DependencyRules
{
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        // Pure: no files, no clock, no network, no solver.
        ["Cloveshed.Core"] = ["NodaTime", "MathNet.Numerics", "Microsoft.CodeAnalysis.BannedApiAnalyzers"],
        ["Cloveshed.SeasonFiles"] = ["Cloveshed.Core"],
        // The only one that knows a solver.
        ["Cloveshed.Solver"] = ["Cloveshed.Core", "Google.OrTools", "Google.Protobuf"],
        // Judges plans, so it shares nothing with what made them.
        ["Cloveshed.Check"] = ["MathNet.Numerics"],
        ["Cloveshed.Pictures"] = ["Cloveshed.Core"],
        // The only one that knows a database.
        ["Cloveshed.Ledger"] = ["Cloveshed.Core", "Cloveshed.SeasonFiles", "Microsoft.EntityFrameworkCore.Sqlite", "Microsoft.EntityFrameworkCore.Design"],
        // Pages over the ledger. The solver comes as an argument.
        ["Cloveshed.Web"] =
        [
            "Cloveshed.Core", "Cloveshed.SeasonFiles", "Cloveshed.Check", "Cloveshed.Pictures", "Cloveshed.Ledger", "Microsoft.AspNetCore.App",
            "Markdig", "Microsoft.AspNetCore.OpenApi", "OpenTelemetry.Exporter.OpenTelemetryProtocol", "OpenTelemetry.Extensions.Hosting",
            "OpenTelemetry.Instrumentation.AspNetCore",
        ],
        ["Cloveshed.App"] =
        [
            "Cloveshed.Core", "Cloveshed.SeasonFiles", "Cloveshed.Solver", "Cloveshed.Check", "Cloveshed.Pictures", "Cloveshed.Ledger", "Cloveshed.Web",
            "System.CommandLine",
        ],
    };

    public static TheoryData<string> SourceProjects =>
        new(Repository.Projects.Where(file => file.StartsWith("src/", StringComparison.Ordinal)));

    [Theory, MemberData(nameof(SourceProjects))]
    public void A_project_references_what_the_table_allows(string project)
    {
        string name = Path.GetFileNameWithoutExtension(project);
        Assert.True(Allowed.TryGetValue(name, out string[]? allowed), $"{name} is not in the table: say what it may reference.");
        Faults.None(References(project).Except(allowed));
    }

    [Fact]
    public void The_table_has_no_assembly_that_is_gone() =>
        Faults.None(Allowed.Keys.Except(Repository.Projects.Select(Path.GetFileNameWithoutExtension)));

    /// <summary>What the compiler made of it: a transitive package used in code would show here, not in the project file.</summary>
    [Fact]
    public void Core_is_built_on_the_base_library_NodaTime_and_MathNet_alone() =>
        Assert.All(
            typeof(LotId).Assembly.GetReferencedAssemblies().Select(assembly => assembly.Name!),
            name => Assert.Matches("^(System|netstandard|mscorlib|NodaTime|MathNet\\.Numerics)($|\\.)", name));

    /// <summary>The whole program is tested as a whole, with seasons; every other assembly by a project named after it.</summary>
    [Theory, MemberData(nameof(SourceProjects))]
    public void Every_assembly_has_a_test_project_that_references_it(string project)
    {
        string name = Path.GetFileNameWithoutExtension(project);
        string tests = name == "Cloveshed.App" ? "Cloveshed.Seasons.Tests" : $"{name}.Tests";
        Assert.Contains($"tests/{tests}/{tests}.csproj", Repository.Projects);
        Assert.Contains(name, References($"tests/{tests}/{tests}.csproj"));
    }

    [Fact]
    public void The_solution_holds_every_project()
    {
        IEnumerable<string> listed = XDocument.Parse(Repository.Text("Cloveshed.slnx")).Descendants("Project").Select(element => element.Attribute("Path")!.Value);
        Assert.Equal(Repository.Projects.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Versions_are_pinned_in_one_place_and_locked()
    {
        Assert.All(Repository.Projects, project =>
        {
            Assert.DoesNotMatch("<PackageReference[^>]*Version", Repository.Text(project));
            Assert.Contains($"{Path.GetDirectoryName(project)!.Replace('\\', '/')}/packages.lock.json", Repository.Files);
        });
        Assert.All(
            Regex.Matches(Repository.Text("Directory.Packages.props"), "<PackageVersion Include=\"([^\"]+)\" Version=\"([^\"]+)\"").Select(match => match.Groups[2].Value),
            version => Assert.Matches(@"^\d+(\.\d+)+$", version));
    }

    /// <summary>Whoever passes the program on must be able to say what is in it.</summary>
    [Fact]
    public void Every_package_is_used_pinned_and_named_in_the_notice()
    {
        string[] used = [.. Repository.Projects.Append("Directory.Build.props").SelectMany(References).Where(name => !name.StartsWith("Cloveshed.", StringComparison.Ordinal)).Distinct()];
        string[] pinned = [.. Regex.Matches(Repository.Text("Directory.Packages.props"), "<PackageVersion Include=\"([^\"]+)\"").Select(match => match.Groups[1].Value)];
        Faults.None(pinned.Except(used).Select(name => $"{name} is pinned and not used."));
        Faults.None(used.Where(name => !Regex.IsMatch(Repository.Text("NOTICE"), $@"(?m)^  {Regex.Escape(name)}\b")).Select(name => $"NOTICE does not name {name}."));
    }

    private static IEnumerable<string> References(string project) =>
        XDocument.Parse(Repository.Text(project)).Descendants()
            .Where(element => element.Name.LocalName is "PackageReference" or "ProjectReference" or "Reference" or "FrameworkReference")
            .Select(element => element.Attribute("Include")!.Value)
            .Select(include => include.EndsWith(".csproj", StringComparison.Ordinal) ? Path.GetFileNameWithoutExtension(include.Replace('\\', '/')) : include);
}
