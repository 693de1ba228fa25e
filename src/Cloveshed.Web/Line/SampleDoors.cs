using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Line;

/// <summary>POST /line-facts/sample: weighed bulbs become rows of samples.csv, all or none; what is wrong is shown with everything as it was typed.</summary>
internal static class SampleDoors
{
    private const string File = "samples.csv";

    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/line-facts/sample", Take);

    private static IResult Take(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, SaidOnce said)
    {
        Words<LineWord> words = Words.Of<LineWord>(shed.Viewer.Language);
        if (FactDesk.Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        string lot = form["lot"].ToString(), text = form["bulbs"].ToString(), date = form["date"].ToString().Trim();
        if (shed.Season is not { } season || season.Lots.All(row => row.Lot.Text != lot))
        {
            return desk.Back(context, form, new Said(true, words.Say(LineWord.NoLotLead, lot)));
        }

        SampleText sample = SampleText.Of(text, words);
        List<FormFault> faults = [.. sample.Faults.Take(10).Select(fault => new FormFault("bulbs", words.Say(LineWord.SampleBadLine, fault.Line, fault.Text), words[LineWord.SampleRemedy]))];
        if (faults.Count == 0 && sample.Bulbs.Count is 0 or > SampleText.Most)
        {
            faults.Add(new FormFault("bulbs", sample.Bulbs.Count == 0 ? words[LineWord.SampleNone] : words.Say(LineWord.SampleMany, SampleText.Most)));
        }

        if (shed.Viewer.AsOf is not null)
        {
            Words<ShellWord> shell = Words.Of<ShellWord>(shed.Viewer.Language);
            faults.Add(new FormFault(null, shell[ShellWord.AsOfReadOnly], shell[ShellWord.AsOfReadOnlyRemedy]));
        }

        if (faults.Count == 0)
        {
            FactOrigin origin = desk.Origin(SizerDoors.Place);
            NewFact[] batch = [.. sample.Bulbs.Select((bulb, at) => origin.RowEntered(File, Cells(lot, date, bulb), FactDesk.Following(id, at)))];
            if (desk.Append(batch) is not Appended.Refused refused)
            {
                said.Say(context, new Said(false, words.Say(LineWord.SampleTaken, batch.Length, lot)));
                return new SeeOther(LinePaths.Of(LinePaths.Sample, new LotId(lot)));
            }

            faults.AddRange(FormFault.Of(refused));
        }

        return ShownAgain.As<SamplePage>(new Dictionary<string, object>
        {
            [nameof(SamplePage.Name)] = Uri.EscapeDataString(lot), [nameof(SamplePage.Typed)] = text, [nameof(SamplePage.Day)] = date, [nameof(SamplePage.FormId)] = id, [nameof(SamplePage.Faults)] = (IReadOnlyList<FormFault>)faults,
        });
    }

    private static Dictionary<string, string> Cells(string lot, string date, TypedBulb bulb)
    {
        Dictionary<string, string> cells = new() { ["lot"] = lot, ["date"] = date, ["weight_g"] = bulb.WeightG.ToString(CultureInfo.InvariantCulture) };
        if (bulb.DiameterMm is { } mm)
        {
            cells["diameter_mm"] = mm.ToString(CultureInfo.InvariantCulture);
        }

        if (DefectTexts.Cell(bulb.Defect) is { Length: > 0 } defect)
        {
            cells["defect"] = defect;
        }

        return cells;
    }
}
