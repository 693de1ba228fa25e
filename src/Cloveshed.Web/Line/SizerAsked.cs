using System.Globalization;
using Cloveshed.Core.Line;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Line;

/// <summary>A setting of the sizer as an address or a form says it; what is not said is taken as usual.</summary>
/// <param name="Cuts">g, class by class; null: as usual.</param>
/// <param name="Uses">What is done with each class.</param>
/// <param name="Prices">Money per mass unit of the season.</param>
/// <param name="Tolerance">Share; null: the grade's.</param>
/// <param name="Outlets">Boxes that can be packed at once.</param>
/// <param name="Pounds">That an inspector looks at; null: none.</param>
/// <param name="Risk">The most that a box may risk being refused; a share.</param>
/// <param name="Mass">To be run, in the season's unit.</param>
/// <param name="BySizer">By what the sizer counted, where it did.</param>
/// <param name="Off">What becomes of a box that is off tolerance.</param>
/// <param name="Faults">Names of fields that hold no number, or one that cannot be.</param>
public sealed record SizerAsked(
    IReadOnlyList<double?> Cuts, IReadOnlyList<ClassUse?> Uses, IReadOnlyList<double?> Prices, double? Tolerance, int? Outlets, double? Pounds, double? Risk,
    double? Mass, bool BySizer, OffBox Off, IReadOnlyList<string> Faults)
{
    public const string Cut = "cut", As = "as", Price = "price", Tol = "tol", Out = "outlets", Lb = "pounds", RiskField = "risk", MassField = "mass", By = "by", OffField = "off", OffRefused = "refused";

    /// <summary>Heavier is no bulb.</summary>
    public const double HeaviestG = 5000;

    public static SizerAsked Of(IQueryCollection query, int classes)
    {
        List<string> faults = [];
        double?[] Many(string name, double most) => [.. Enumerable.Range(0, classes).Select(k => query[name].Count > k ? Number(query[name][k], $"{name}-{k}", 0, most) : null)];
        double? One(string name, double least, double most) => query.TryGetValue(name, out var value) ? Number(value.ToString(), name, least, most) : null;
        double? Number(string? text, string field, double least, double most)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return null;
            }

            if (double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number >= least && number <= most)
            {
                return number;
            }

            faults.Add(field);
            return null;
        }

        double?[] cuts = Many(Cut, HeaviestG), prices = Many(Price, 1e6);
        ClassUse?[] uses = [.. Enumerable.Range(0, classes).Select(k => query[As].Count > k ? UseOf(query[As][k]) : null)];
        double? tolerance = One(Tol, 0, 100) / 100, outlets = One(Out, 1, 100), pounds = One(Lb, 0, 1e5), risk = One(RiskField, 0.01, 99) / 100, mass = One(MassField, 0, 1e9);
        return new(cuts, uses, prices, tolerance, (int?)outlets, pounds > 0 ? pounds : null, risk, mass, query[By] != "known", query[OffField] == OffRefused ? OffBox.Refused : OffBox.PaidAsSmaller, faults);
    }

    /// <summary>As forms and addresses have it.</summary>
    public static string Named(ClassUse use) => use switch { ClassUse.Own => "own", ClassUse.WithSmaller => "merge", _ => "none" };

    /// <summary>The same questions with this setting, as an address.</summary>
    public string With(string path, SizerWish wish)
    {
        List<(string, string?)> values = [];
        for (int k = 0; k < wish.CutG.Count; k++)
        {
            values.Add((Cut, Paths.Number(Math.Round(wish.CutG[k], 1))));
            values.Add((As, Named(wish.Uses[k])));
            if (Prices[k] is { } price)
            {
                values.Add((Price, Paths.Number(price)));
            }
        }

        values.AddRange([(Tol, Text(Tolerance * 100)), (Out, Text(Outlets)), (Lb, Text(Pounds)), (RiskField, Text(Risk * 100)), (MassField, Text(Mass)), (By, BySizer ? null : "known"), (OffField, Off == OffBox.Refused ? OffRefused : null)]);
        return Paths.Query(path, [.. values]);
    }

    private static string? Text(double? number) => number is { } known ? Paths.Number(known) : null;

    private static ClassUse? UseOf(string? name) => name switch { "own" => ClassUse.Own, "merge" => ClassUse.WithSmaller, "none" => ClassUse.NotPacked, _ => null };
}
