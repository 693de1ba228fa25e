using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Core.Field;
using Cloveshed.Core.Quantities;

namespace Cloveshed.App.Commands;

/// <summary>seed-need: plants and seed from spacing.</summary>
internal static class SeedNeedCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Option<double?> bed = Needed(Given.Number("--bed-inches", "B", phrases[Phrase.SeedBed], 1, 1000, "40", phrases));
        Option<int?> lines = Given.Whole("--lines", "N", phrases[Phrase.SeedLines], 1, 100, "2", phrases);
        lines.Required = true;
        Option<double?> spacing = Needed(Given.Number("--spacing-inches", "S", phrases[Phrase.SeedSpacing], 0.1, 1000, "3.5", phrases));
        Option<double?> clove = Needed(Given.Number("--clove-g", "G", phrases[Phrase.SeedClove], 0, 100, "4", phrases, lowOpen: true));
        Option<double?> germination = Given.Number("--germination", "X", phrases[Phrase.SeedGermination], 0, 1, "0.95", phrases, lowOpen: true);
        Option<double?> loss = Given.Number("--loss", "X", phrases[Phrase.SeedLoss], 0, 0.99, "0.1", phrases);
        Option<double?> acres = Given.Number("--acres", "A", phrases[Phrase.SeedAcres], 0, 1e6, "120", phrases, lowOpen: true);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("seed-need", phrases[Phrase.SeedDoes],
            "cloveshed seed-need --bed-inches 40 --lines 2 --spacing-inches 3 --clove-g 4", "cloveshed seed-need --bed-inches 40 --lines 4 --spacing-inches 4 --clove-g 4 --germination 0.95 --loss 0.1 --acres 120 --json")
        {
            bed, lines, spacing, clove, germination, loss, acres, json,
        };
        command.SetAction(parsed =>
        {
            SeedNeeded needed = SeedNeeding.Of(new(
                Length.FromInches((decimal)parsed.GetRequiredValue(bed)!.Value), parsed.GetRequiredValue(lines)!.Value, Length.FromInches((decimal)parsed.GetRequiredValue(spacing)!.Value),
                parsed.GetRequiredValue(clove)!.Value, Share.From(parsed.GetValue(germination) ?? 1), Share.From(parsed.GetValue(loss) ?? 0),
                parsed.GetValue(acres) is { } wanted ? Area.FromAcres((decimal)wanted) : null));
            world.Output.WriteLine(parsed.GetValue(json) ? Json(needed).ToJsonString(JsonForm.Indented) : Text(needed, parsed.GetValue(acres), phrases));
            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(SeedNeeded needed) => new()
    {
        ["plants_per_acre"] = needed.PlantsPerAcre,
        ["plants_per_ha"] = needed.PlantsPerHectare,
        ["seed_lb_per_acre"] = PoundsPerAcre(needed),
        ["seed_kg_per_ha"] = needed.SeedKilogramsPerHectare,
        ["seed_lb"] = needed.SeedKilograms / Mass.KilogramsPerPound,
        ["seed_kg"] = needed.SeedKilograms,
    };

    private static string Text(SeedNeeded needed, double? acres, Phrasebook phrases)
    {
        string rates = phrases.Say(Phrase.SeedRates, needed.PlantsPerAcre, needed.PlantsPerHectare, PoundsPerAcre(needed), needed.SeedKilogramsPerHectare);
        return needed.SeedKilograms is { } kilograms ? rates + Environment.NewLine + phrases.Say(Phrase.SeedTotal, acres, kilograms / Mass.KilogramsPerPound, kilograms) : rates;
    }

    private static double PoundsPerAcre(SeedNeeded needed) => needed.SeedKilogramsPerHectare * SeedNeeded.HectaresPerAcre / Mass.KilogramsPerPound;

    private static Option<double?> Needed(Option<double?> option)
    {
        option.Required = true;
        return option;
    }
}
