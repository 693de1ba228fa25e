using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace Cloveshed.Core.Tests.Rules;

/// <summary>What holds for every type of the core: it is documented, it does not change, and what it may not use is banned.</summary>
public class CoreRules
{
    private static readonly Assembly Core = typeof(LotId).Assembly;

    private static IEnumerable<Type> PublicTypes => Core.GetExportedTypes();

    [Fact]
    public void Every_public_type_says_what_it_is()
    {
        string file = Path.ChangeExtension(Core.Location, ".xml");
        var summaries = XDocument.Load(file).Descendants("member").ToDictionary(
            member => member.Attribute("name")!.Value, member => string.Concat(member.Elements("summary").Select(summary => summary.Value)).Trim());
        Faults.None(PublicTypes
            .Select(type => "T:" + type.FullName!.Replace('+', '.'))
            .Where(name => !summaries.TryGetValue(name, out string? summary) || summary.Length < 10));
    }

    [Fact]
    public void Nothing_public_can_be_set_after_it_is_made() =>
        Faults.None(PublicTypes
            .SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(property => property.SetMethod is { IsPublic: true } set
                && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)))
            .Select(property => $"{property.DeclaringType}.{property.Name}"));

    [Fact]
    public void No_public_field_can_be_set() =>
        Faults.None(PublicTypes
            .SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(field => !field.IsInitOnly && !field.IsLiteral && !field.IsSpecialName)
            .Select(field => $"{field.DeclaringType}.{field.Name}"));

    /// <summary>A static that changes is a hidden argument. The compiler's own caches are not ours to judge.</summary>
    [Fact]
    public void No_static_state() =>
        Faults.None(Core.GetTypes()
            .SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(field => !field.IsInitOnly && !field.IsLiteral && !field.Name.Contains('<') && !field.DeclaringType!.Name.Contains('<'))
            .Select(field => $"{field.DeclaringType}.{field.Name}"));

    /// <summary>A misspelt entry bans nothing and says nothing, so each is looked up.</summary>
    [Theory, MemberData(nameof(BannedSymbols))]
    public void Every_banned_symbol_exists(string entry)
    {
        string[] halves = entry.Split(';', 2);
        Assert.True(halves.Length == 2 && halves[1].Length > 10, $"'{entry}' gives no reason.");
        string name = halves[0][2..];
        string owner = halves[0][0] == 'T' ? name : name[..name.Split('(')[0].LastIndexOf('.')];
        Type? type = Find(owner);
        Assert.NotNull(type);
        string member = name[owner.Length..].TrimStart('.').Split('(')[0];
        Assert.True(halves[0][0] switch
        {
            'T' => true,
            'P' => type.GetProperty(member) is not null,
            'M' => type.GetMethods().Any(method => method.Name == member),
            _ => false,
        }, $"{halves[0]} does not exist.");
    }

    public static TheoryData<string> BannedSymbols => new(Repository.Lines("src/Cloveshed.Core/BannedSymbols.txt").Where(line => line.Length > 0));

    [Fact]
    public void The_clock_chance_and_the_outside_are_banned_and_a_use_breaks_the_build()
    {
        string[] banned = [.. Repository.Lines("src/Cloveshed.Core/BannedSymbols.txt").Select(line => line.Split(';')[0])];
        Assert.Superset(
            new HashSet<string>
            {
                "P:System.DateTime.Now", "P:System.DateTime.UtcNow", "P:System.DateTime.Today", "P:System.DateTimeOffset.Now",
                "P:System.DateTimeOffset.UtcNow", "P:NodaTime.SystemClock.Instance", "P:System.TimeProvider.System", "T:System.Diagnostics.Stopwatch",
                "T:System.Random", "M:System.Guid.NewGuid", "T:System.IO.File", "T:System.Console", "T:System.Threading.Tasks.Task",
            },
            banned.ToHashSet());
        Assert.Contains("<AdditionalFiles Include=\"BannedSymbols.txt\"", Repository.Text("src/Cloveshed.Core/Cloveshed.Core.csproj"), StringComparison.Ordinal);
        Assert.Contains("<TreatWarningsAsErrors>true<", Repository.Text("Directory.Build.props"), StringComparison.Ordinal);
        Assert.DoesNotContain(Repository.Files.Where(file => Path.GetFileName(file) is ".editorconfig" or "Directory.Build.props" || file.StartsWith("src/Cloveshed.Core/", StringComparison.Ordinal)),
            file => Repository.Text(file).Contains("RS0" + "030", StringComparison.Ordinal));
    }

    private static Type? Find(string name) =>
        Type.GetType(name)
        ?? Type.GetType(name + ", System.Console") ?? Type.GetType(name + ", NodaTime")
        ?? Type.GetType(name + ", System.Runtime") ?? Type.GetType(name + ", System.Net.Http")
        ?? Type.GetType(name + ", System.Diagnostics.Process");
}
