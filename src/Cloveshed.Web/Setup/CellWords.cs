using Cloveshed.SeasonFiles;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>The words that cells hold (fresh, sealed, yes) as the reader says them.</summary>
public static class CellWords
{
    private static readonly Dictionary<string, SetupWord> Keys = new(StringComparer.Ordinal)
    {
        ["yes"] = SetupWord.CellYes, ["no"] = SetupWord.CellNo,
        ["short"] = SetupWord.CellShort, ["medium"] = SetupWord.CellMedium, ["long"] = SetupWord.CellLong,
        ["open"] = SetupWord.CellOpen, ["cold"] = SetupWord.CellCold, ["sealed"] = SetupWord.CellSealed,
        ["estimated"] = SetupWord.CellEstimated, ["dug"] = SetupWord.CellDug, ["weighed"] = SetupWord.CellWeighed,
        ["mold"] = SetupWord.CellMold, ["decay"] = SetupWord.CellDecay, ["sprout"] = SetupWord.CellSprout, ["shatter"] = SetupWord.CellShatter,
        ["mechanical"] = SetupWord.CellMechanical, ["skin"] = SetupWord.CellSkin, ["other"] = SetupWord.CellOther, ["none"] = SetupWord.CellNone,
        ["fresh"] = SetupWord.CellFresh, ["crack"] = SetupWord.CellCrack, ["seed"] = SetupWord.CellSeed,
        ["bulb"] = SetupWord.CellBulb, ["clove"] = SetupWord.CellClove,
    };

    /// <summary>Names, classes and units stand for themselves.</summary>
    public static string Say(string word, ColumnGuide guide, Words<SetupWord> words) =>
        guide.Kind is ColumnKind.Word or ColumnKind.YesNo && Keys.TryGetValue(word, out SetupWord key) ? words[key] : word;
}
