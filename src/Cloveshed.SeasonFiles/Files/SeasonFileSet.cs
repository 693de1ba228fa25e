using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>One CSV file of a season: its layout, how it is read, how it is written.</summary>
internal sealed record SeasonFile(FileLayout Layout, Action<Table, SeasonDraft> Read, Func<Season, byte[]> Write);

/// <summary>The CSV files of a season, each after those that it refers to.</summary>
internal static class SeasonFileSet
{
    public static readonly IReadOnlyList<SeasonFile> Tables =
    [
        new(SizesFile.Layout, SizesFile.Read, SizesFile.Write),
        new(VarietiesFile.Layout, VarietiesFile.Read, VarietiesFile.Write),
        new(PlacesFile.Layout, PlacesFile.Read, PlacesFile.Write),
        new(PlaceWeeksFile.Layout, PlaceWeeksFile.Read, PlaceWeeksFile.Write),
        new(LotsFile.Layout, LotsFile.Read, LotsFile.Write),
        new(SamplesFile.Layout, SamplesFile.Read, SamplesFile.Write),
        new(YieldsFile.Layout, YieldsFile.Read, YieldsFile.Write),
        new(LinesFile.Layout, LinesFile.Read, LinesFile.Write),
        new(LineWeeksFile.Layout, LineWeeksFile.Read, LineWeeksFile.Write),
        new(PeopleFile.Layout, PeopleFile.Read, PeopleFile.Write),
        new(CloveGradesFile.Layout, CloveGradesFile.Read, CloveGradesFile.Write),
        new(ProductsFile.Layout, ProductsFile.Read, ProductsFile.Write),
        new(StockFile.Layout, StockFile.Read, StockFile.Write),
        new(RoomsFile.Layout, RoomsFile.Read, RoomsFile.Write),
        new(PriceListsFile.Layout, PriceListsFile.Read, PriceListsFile.Write),
        new(FreightFile.Layout, FreightFile.Read, FreightFile.Write),
        new(OrdersFile.Layout, OrdersFile.Read, OrdersFile.Write),
        new(ProgramsFile.Layout, ProgramsFile.Read, ProgramsFile.Write),
        new(PromotionsFile.Layout, PromotionsFile.Read, PromotionsFile.Write),
        new(MarketFile.Layout, MarketFile.Read, MarketFile.Write),
        new(SeedNeedsFile.Layout, SeedNeedsFile.Read, SeedNeedsFile.Write),
        new(SellAsIsFile.Layout, SellAsIsFile.Read, SellAsIsFile.Write),
        new(SetupsFile.Layout, SetupsFile.Read, SetupsFile.Write),
        new(ShiftsFile.Layout, ShiftsFile.Read, ShiftsFile.Write),
    ];

    /// <summary>Every name that a season's folder may hold, season.json first.</summary>
    public static readonly IReadOnlyList<string> Names = [SettingsFile.FileName, .. Tables.Select(file => file.Layout.Name)];

    /// <summary>Whether a season that is written has the file: those of a later contract than its own it has not.</summary>
    public static bool IsOf(SeasonFile file, Season season) => file.Layout.Contract <= season.Settings.Contract;

    public static bool IsNeeded(string name) => name == SettingsFile.FileName || Tables.Any(file => file.Layout.Name == name && file.Layout.Needed);
}
