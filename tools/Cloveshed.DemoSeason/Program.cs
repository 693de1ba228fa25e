using System.Globalization;
using Cloveshed.DemoSeason;

// Cloveshed.DemoSeason [FOLDER [SEED]]: writes demo-season and demo-truth under FOLDER (default "data").
string root = args.Length > 0 ? args[0] : "data";
ulong seed = args.Length > 1 ? ulong.Parse(args[1], CultureInfo.InvariantCulture) : Scenario.Seed;
foreach ((string path, string text) in Scenario.Files(seed))
{
    string file = Path.Combine(root, path);
    Directory.CreateDirectory(Path.GetDirectoryName(file)!);
    File.WriteAllText(file, text);
    Console.Error.WriteLine(file);
}

return 0;
