namespace Cloveshed.Core.Grading;

/// <summary>What a grade allows, as shares by weight.</summary>
/// <param name="Defects">All defects together, decay among them.</param>
/// <param name="Decay">Decay and mould; null: no limit of its own.</param>
/// <param name="OffSize">Bulbs outside the size stated.</param>
public sealed record GradeRule(string Name, double Defects, double? Decay, double OffSize)
{
    /// <summary>
    /// U.S. No. 1: 10% defects, therein not more than 2% decay; 5% off size, by weight (USDA AMS, Garlic Grades and Standards).
    /// </summary>
    public static GradeRule UsNo1 { get; } = new("U.S. No. 1", 0.10, 0.02, 0.05);

    /// <summary>UNECE FFV-18, Extra: 5% not of the class; 10% off size (from memory).</summary>
    public static GradeRule UneceExtra { get; } = new("UNECE Extra", 0.05, null, 0.10);

    /// <summary>UNECE FFV-18, Class I: 10% not of the class; 10% off size (from memory).</summary>
    public static GradeRule UneceClassI { get; } = new("UNECE Class I", 0.10, null, 0.10);

    /// <summary>UNECE FFV-18, Class II: 10% not of the class; 10% off size (from memory).</summary>
    public static GradeRule UneceClassII { get; } = new("UNECE Class II", 0.10, null, 0.10);
}
