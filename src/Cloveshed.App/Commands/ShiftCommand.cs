using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Plans;
using Cloveshed.App.Shifts;
using Cloveshed.App.Words;
using Cloveshed.Core.Shift;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;
using Cloveshed.Pictures.Week;
using Cloveshed.SeasonFiles.Shift;

namespace Cloveshed.App.Commands;

/// <summary>shift FOLDER --plan PLAN --week WEEK [--out OUT]: puts a week's runs in order, checks it and only then writes it.</summary>
internal static class ShiftCommand
{
    public const double DefaultSeconds = 10;

    private const double DayInSeconds = 86_400;

    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.ShiftFolder], phrases);
        Option<string> plan = Given.FolderOption("--plan", "PLAN", phrases[Phrase.ShiftPlan], phrases);
        plan.Required = true;
        Option<string> week = Given.Word("--week", "WEEK", phrases[Phrase.ShiftWeek]);
        week.Required = true;
        Option<string> into = Given.FolderOption("--out", "OUT", phrases[Phrase.ShiftOut], phrases);
        Option<double?> seconds = Given.Number("--seconds", "N", phrases[Phrase.ShiftSeconds], 0, DayInSeconds, "10", phrases, lowOpen: true);
        Option<int?> seed = Given.Whole("--seed", "N", phrases[Phrase.ShiftSeed], 0, int.MaxValue, "7", phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("shift", phrases[Phrase.ShiftDoes],
            "cloveshed shift data/demo-season --plan plan --week 2026-09-21", "cloveshed shift my-season --plan plan --week 13 --out week-13 --seconds 30 --json")
        {
            folder, plan, week, into, seconds, seed, json,
        };
        command.SetAction(parsed =>
        {
            string? target = parsed.GetValue(into);
            if (target is not null && AnswerFolder.Obstacle(target, phrases) is { } obstacle)
            {
                world.Error.WriteLine(obstacle);
                return Entry.Refused;
            }

            string named = parsed.GetRequiredValue(week);
            if (WeekQuestion.Read(parsed.GetRequiredValue(folder), parsed.GetRequiredValue(plan), season => WeekQuestion.Week(named, season, world, phrases), world, phrases) is not { } question)
            {
                return Entry.Refused;
            }

            using CancellationTokenSource stop = new();
            using IDisposable stopping = world.OnStop(stop.Cancel);
            ShiftAnswer answer = world.Shifts.Schedule(question, new ShiftSearch(parsed.GetValue(seconds) ?? DefaultSeconds, parsed.GetValue(seed) ?? 1, Cancel: stop.Token));
            if (ShiftCheck.Breaches(question, answer.Schedule, answer.Costs) is { Count: > 0 } breaches)
            {
                WeekTold told = new(question, new Reader(question.Settings, new ReportOptions(phrases.Language, question.Settings.MassUnit)));
                world.Error.WriteLine(phrases[Phrase.ShiftNotHolding]);
                foreach (ShiftBreach breach in breaches)
                {
                    world.Error.WriteLine("  " + told.Breach(breach));
                }

                return Entry.Refused;
            }

            if (target is not null)
            {
                ScheduleFiles.Write(question, answer, target);
            }

            Tell(question, answer, target, parsed.GetValue(json), world, phrases);
            return Entry.Done;
        });
        return command;
    }

    private static void Tell(ShiftQuestion question, ShiftAnswer answer, string? target, bool json, World world, Phrasebook phrases)
    {
        if (json)
        {
            world.Output.WriteLine(Json(question, answer).ToJsonString(JsonForm.Indented));
            return;
        }

        IEnumerable<string> lines = question.Runs.Count == 0 ? [phrases[Phrase.ShiftNoRuns]] : WeekText.Lines(question, answer, phrases);
        foreach (string line in lines.Concat(target is null ? [] : [phrases.Say(Phrase.ShiftFiles, target)]))
        {
            world.Output.WriteLine(TerminalText.Of(line).TrimEnd());
        }
    }

    /// <summary>schedule.json, with the rows of the two tables beside it.</summary>
    private static JsonObject Json(ShiftQuestion question, ShiftAnswer answer)
    {
        JsonObject document = JsonNode.Parse(ScheduleFiles.Render(question, answer).Single(file => file.Name == ScheduleFiles.SummaryName).Bytes)!.AsObject();
        string Moment(int minute) => question.At(minute).ToString("uuuu-MM-dd'T'HH:mm", System.Globalization.CultureInfo.InvariantCulture);
        document["runs"] = new JsonArray([.. answer.Schedule.Runs.OrderBy(run => run.Start).Select(run => (JsonNode)new JsonObject
        {
            ["run"] = run.Run, ["line"] = run.Line.Text, ["start"] = Moment(run.Start), ["end"] = Moment(run.End),
        })]);
        document["short"] = new JsonArray([.. answer.Costs.Shorts.Select(missing => (JsonNode)new JsonObject
        {
            ["product"] = missing.Need.Product.Text, ["dock"] = Moment(missing.Need.Minute), ["units"] = missing.Units, ["cost"] = missing.Cost,
        })]);
        return document;
    }
}
