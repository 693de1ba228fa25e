using System.Diagnostics;
using Cloveshed.Check;
using Cloveshed.Core.Planning;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Highs;

var clock = Stopwatch.StartNew();
SeasonReading reading = SeasonReader.Read(args[1]);
foreach (var w in reading.Warnings.Take(5)) Console.Error.WriteLine(w);
if (reading.Season is null)
{
    foreach (var f in reading.Faults) Console.Error.WriteLine(f);
    return 1;
}
Console.Error.WriteLine($"read {clock.Elapsed.TotalSeconds:0.00} s");
var request = new PlanRequest(reading.Season, Beliefs.Default, args.Length > 3 ? double.Parse(args[3], System.Globalization.CultureInfo.InvariantCulture) : 60, 0.01, 1, 2, SearchDepth.Fine, () => clock.Elapsed.TotalSeconds, "0.1.0", reading.InputDigest, [],
    Progress: p => Console.Error.WriteLine($"{p.Seconds,6:0.0} {p.Stage,-22} {p.Value,14:0} {p.Bound,14:0}  {(p.Bound - p.Value) / p.Value:0.0000%}"));
var answer = new SeasonPlanner(new HighsSolver()).Plan(request);
AnswerWriter.Write(answer, reading.Season, args[2]);
Console.Error.WriteLine($"{clock.Elapsed.TotalSeconds:0.00} s value {answer.Summary.Value:0} bound {answer.Summary.Bound:0} gap {answer.Summary.Gap:0.000%} given {answer.Summary.GapGivenRooms:0.000%}");
var check = PlanCheck.Check(args[1], args[2]);
Console.Error.WriteLine($"check {check.Breaches.Count} breaches, value {check.Value}");
foreach (var b in check.Breaches.Take(15)) Console.Error.WriteLine(b);
return 0;
