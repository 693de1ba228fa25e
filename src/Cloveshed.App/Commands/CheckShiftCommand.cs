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
using Cloveshed.SeasonFiles.Weighing;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.App.Commands;

/// <summary>check-shift FOLDER PLAN SCHEDULE: the check of a week in order that may have been made anywhere.</summary>
internal static class CheckShiftCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.ShiftFolder], phrases), plan = Given.Folder("PLAN", phrases[Phrase.ShiftPlan], phrases);
        Argument<string> schedule = Given.Folder("SCHEDULE", phrases[Phrase.CheckShiftFolder], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("check-shift", phrases[Phrase.CheckShiftDoes], "cloveshed check-shift data/demo-season plan week-13", "cloveshed check-shift my-season plan week-13 --json")
        {
            folder, plan, schedule, json,
        };
        command.SetAction(parsed =>
        {
            FileReading<ReadSchedule> reading = ScheduleFiles.Read(parsed.GetRequiredValue(schedule), phrases.FileLanguage);
            if (reading.Value is not { } read)
            {
                FaultsTold.Tell(reading.Faults, reading.FaultCount, world, phrases);
                return Entry.Refused;
            }

            ShiftQuestion? question = WeekQuestion.Read(
                parsed.GetRequiredValue(folder), parsed.GetRequiredValue(plan),
                season =>
                {
                    int week = season.WeekOf(read.Week);
                    if (read.Week.DayOfWeek == IsoDayOfWeek.Monday && week >= 0 && week < season.Weeks)
                    {
                        return week;
                    }

                    world.Error.WriteLine(phrases.Say(Phrase.CheckShiftWeek, LocalDatePattern.Iso.Format(read.Week)));
                    return null;
                },
                world, phrases);
            return question is null ? Entry.Refused : Told(question, read, parsed.GetValue(json), world, phrases);
        });
        return command;
    }

    private static int Told(ShiftQuestion question, ReadSchedule read, bool json, World world, Phrasebook phrases)
    {
        ShiftCosts claimed = new(read.Late, read.Overrun, read.Changeover, 0, 0, 0, []);
        IReadOnlyList<ShiftBreach> breaches = ShiftCheck.Breaches(question, read.Schedule, claimed);
        Reader reader = new(question.Settings, new ReportOptions(phrases.Language, question.Settings.MassUnit));
        WeekTold told = new(question, reader);
        if (json)
        {
            world.Output.WriteLine(new JsonObject
            {
                ["breaches"] = new JsonArray([.. breaches.Select(breach => (JsonNode)new JsonObject
                {
                    ["rule"] = breach.Rule.ToString(), ["line"] = breach.Line?.Text, ["run"] = breach.Run, ["other"] = breach.Other, ["found"] = breach.Found, ["allowed"] = breach.Allowed,
                    ["by"] = breach.By, ["text"] = told.Breach(breach),
                })]),
                ["late"] = read.Late, ["overrun"] = read.Overrun, ["changeover"] = read.Changeover,
            }.ToJsonString(JsonForm.Indented));
        }
        else
        {
            foreach (ShiftBreach breach in breaches)
            {
                world.Output.WriteLine(TerminalText.Of(told.Breach(breach)));
            }

            if (breaches.Count == 0)
            {
                world.Output.WriteLine(TerminalText.Of(phrases.Say(Phrase.CheckShiftHolds, reader.Price(read.Late), reader.Price(read.Overrun), reader.Price(read.Changeover))));
            }
        }

        if (breaches.Count == 0)
        {
            return Entry.Done;
        }

        world.Error.WriteLine(phrases.Say(Phrase.CheckShiftBroken, breaches.Count));
        return Entry.Refused;
    }
}
