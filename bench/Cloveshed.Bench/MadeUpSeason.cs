using System.Globalization;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Bench;

/// <summary>A made-up large season, written as files.</summary>
internal static class MadeUpSeason
{
    public static void Write(string folder, int lots, int orders, string into)
    {
        Season season = SeasonReader.Read(folder).Season ?? throw new ArgumentException($"{folder} does not hold a sound season.");
        Directory.CreateDirectory(into);
        Season large = LargeSeason.Of(season, lots, orders);
        foreach ((string file, ReadOnlyMemory<byte> text) in SeasonWriter.Render(large))
        {
            File.WriteAllBytes(Path.Combine(into, file), text.ToArray());
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{into}: {lots} lots, {orders} orders with {large.Orders.Count:#,##0} lines, {large.Settings.Weeks} weeks"));
    }
}
