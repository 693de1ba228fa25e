using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Suppose;

/// <summary>Changes, and why one cannot be put to a plan, in words.</summary>
internal static class ChangeWords
{
    public static string Told(SeasonChange change, Words<SupposeWord> words, Reader reader) => change switch
    {
        SeasonChange.OrderCancelled c => words.Say(SupposeWord.ToldCancel, Order(c.Order.Text, c.Number)),
        SeasonChange.OrderResized c => words.Say(SupposeWord.ToldUnits, Order(c.Order.Text, c.Number), reader.Number(c.Units, 0)),
        SeasonChange.OrderMoved c => words.Say(SupposeWord.ToldDue, Order(c.Order.Text, c.Number), reader.DayYear(c.Due)),
        SeasonChange.OrderAdded c => words.Say(SupposeWord.ToldAdd, reader.Number(c.Line.Units, 0), c.Line.Product, reader.Price((double)c.Line.Price), reader.DayYear(c.Line.Due)),
        SeasonChange.LineStopped c when c.First == c.Last => words.Say(SupposeWord.ToldStopOne, c.Line, reader.DayYear(c.First)),
        SeasonChange.LineStopped c => words.Say(SupposeWord.ToldStop, c.Line, reader.DayYear(c.First), reader.DayYear(c.Last)),
        SeasonChange.PeopleThere c => words.Say(SupposeWord.ToldPeople, reader.Number(c.PersonHours, 0), reader.DayYear(c.Day)),
        SeasonChange.LotDugLater c => words.Say(SupposeWord.ToldLater, c.Lot, reader.Number(c.Weeks, 0)),
        SeasonChange.LotKeepsLess c => words.Say(SupposeWord.ToldKeeps, c.Lot, Paths.Number(c.Weeks)),
        SeasonChange.LotWeighsLess c => words.Say(SupposeWord.ToldLighter, c.Lot, Paths.Number(100 * c.Share)),
        SeasonChange.RunDone c => words.Say(c.NoMore ? SupposeWord.ToldRanNoMore : SupposeWord.ToldRan, reader.Mass(c.Mass), c.Lot, c.Line),
        SeasonChange.RoomOpened c => c.Day is { } day ? words.Say(SupposeWord.ToldOpen, c.Place, reader.DayYear(day)) : words.Say(SupposeWord.ToldShut, c.Place),
        _ => throw new InvalidOperationException($"{change.GetType().Name} has no words."),
    };

    public static SupposeWord Of(ChangeFault fault) => fault switch
    {
        ChangeFault.NoSuchOrder => SupposeWord.NoSuchOrder, ChangeFault.NoSuchLine => SupposeWord.NoSuchLine, ChangeFault.NotAhead => SupposeWord.NotAhead, ChangeFault.OrderIsWhole => SupposeWord.OrderIsWhole,
        ChangeFault.NoPeopleCounted => SupposeWord.NoPeopleCounted, ChangeFault.NoSuchProduct => SupposeWord.NoSuchProduct, ChangeFault.NoSuchLot => SupposeWord.NoSuchLot,
        ChangeFault.AlreadyDug => SupposeWord.AlreadyDug, ChangeFault.RoomIsShut => SupposeWord.RoomIsShut, ChangeFault.LifeIsOver => SupposeWord.LifeIsOver,
        ChangeFault.NotSoMuchThere => SupposeWord.NotSoMuchThere, ChangeFault.CannotRun => SupposeWord.CannotRun, ChangeFault.NotSealed => SupposeWord.NotSealed,
        _ => throw new InvalidOperationException($"{fault} has no words."),
    };

    private static string Order(string order, string? number) => number is null ? order : $"{order}/{number}";
}
