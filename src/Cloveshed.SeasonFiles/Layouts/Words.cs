using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.SeasonFiles.Layouts;

/// <summary>Every closed list of words in season and answer files.</summary>
internal static class Words
{
    public static readonly WordList<KeepClass> Keeps = new(("short", KeepClass.Short), ("medium", KeepClass.Medium), ("long", KeepClass.Long));

    public static readonly WordList<PlaceKind> PlaceKinds = new(("open", PlaceKind.Open), ("cold", PlaceKind.Cold), ("sealed", PlaceKind.Sealed));

    public static readonly WordList<LotState> LotStates = new(("estimated", LotState.Estimated), ("dug", LotState.Dug), ("weighed", LotState.Weighed));

    public static readonly WordList<SeedClass> SeedClasses = new(("A", SeedClass.A), ("B", SeedClass.B), ("C", SeedClass.C));

    // An empty cell means none; the word is read too, because a sampler who writes it means the same.
    public static readonly WordList<Defect> Defects = new(
        ("mold", Defect.Mold), ("decay", Defect.Decay), ("sprout", Defect.Sprout), ("shatter", Defect.Shatter),
        ("mechanical", Defect.Mechanical), ("skin", Defect.Skin), ("other", Defect.Other), ("none", Defect.None));

    public static readonly WordList<LineMode> LineModes = new(("fresh", LineMode.Fresh), ("crack", LineMode.Crack), ("seed", LineMode.Seed));

    public static readonly WordList<ProductForm> ProductForms = new(("bulb", ProductForm.Bulb), ("clove", ProductForm.Clove));

    public static readonly WordList<SetupKind> SetupKinds = new(
        ("variety", SetupKind.Variety), ("organic", SetupKind.Organic), ("cuts", SetupKind.Cuts), ("cleaning", SetupKind.Cleaning), ("travel", SetupKind.Travel));

    public static readonly WordList<ShiftKind> ShiftKinds = new(
        ("work", ShiftKind.Work), ("break", ShiftKind.Break), ("maintenance", ShiftKind.Maintenance), ("closed", ShiftKind.Closed), ("dock", ShiftKind.Dock));

    public static readonly WordList<IsoDayOfWeek> Days = new(
        ("monday", IsoDayOfWeek.Monday), ("tuesday", IsoDayOfWeek.Tuesday), ("wednesday", IsoDayOfWeek.Wednesday), ("thursday", IsoDayOfWeek.Thursday),
        ("friday", IsoDayOfWeek.Friday), ("saturday", IsoDayOfWeek.Saturday), ("sunday", IsoDayOfWeek.Sunday));

    public static readonly WordList<MassUnit> MassUnits = new(("lb", MassUnit.Pound), ("kg", MassUnit.Kilogram));

    public static readonly WordList<ShareKind> ShareKinds = new(("bulb class", ShareKind.BulbClass), ("clove grade", ShareKind.CloveGrade));

    public static readonly WordList<PlanStatus> PlanStatuses = new(
        ("gap", PlanStatus.GapReached), ("time", PlanStatus.TimeReached), ("cancelled", PlanStatus.Cancelled));

    public static readonly WordList<RunSource> RunSources = new(("lot", RunSource.Lot), ("sorted", RunSource.Sorted));

    public static readonly WordList<AsIsKind> AsIsKinds = new(("sold", AsIsKind.Sold), ("discarded", AsIsKind.Discarded));
}

/// <summary>runs.csv, source.</summary>
internal enum RunSource { Lot, Sorted }

/// <summary>as-is.csv, kind.</summary>
internal enum AsIsKind { Sold, Discarded }
