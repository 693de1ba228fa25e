using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Plan;
using Cloveshed.Web.Rooms;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Today;

/// <summary>A decision in the reader's words: what to do, about how much, why, and where a hand can do something about it.</summary>
internal sealed record DecisionTold(string Title, string About, Cell? Why, IReadOnlyList<(string Path, string Text)> Links)
{
    private const int FewLots = 4;

    public static DecisionTold Of(Decision decision, PlanBook book, Reader reader, Words<TodayWord> words) => decision switch
    {
        RunDecision run => new(
            words.Say(run.FromSorted ? TodayWord.RunSortedTitle : TodayWord.RunTitle, run.Lot, run.Line),
            words.Say(
                TodayWord.RunAbout, reader.Mode(run.Mode), reader.Mass(run.Mass), run.From.Count == 0 ? words[TodayWord.SortedOut] : string.Join(", ", run.From.Select(place => place.Text)),
                reader.Hours(run.Hours + run.Overtime)) + Into(run, book, reader, words),
            reader.Planner(run.Reason),
            [(Paths.Of(run.Lot), words[TodayWord.SeeLot]), (new PlanView("/plan", Run: run.Runs[0], Week: book.Season.Settings.Monday(run.Week)).Href, words[TodayWord.SeePlan])]),
        ClockDecision clock => new(
            words.Say(clock.Past > 0 ? TodayWord.ClockPastTitle : TodayWord.ClockTitle, clock.Lot),
            words.Say(TodayWord.ClockAbout, reader.Mass(clock.Standing), clock.Place, reader.DayYear(LastDay(book.Season.Settings, clock.Ends)),
                clock.Next is { } next ? reader.Week(next) : words[TodayWord.ClockNever]),
            null, [(Paths.Of(clock.Lot) + "#clock", words[TodayWord.SeeMoves]), (new PlanView("/plan", Lot: clock.Lot.Text).Href, words[TodayWord.SeePlan])]),
        MoveDecision move => new(
            words.Say(TodayWord.MoveTitle, reader.Number(move.Bins, 0), move.From, move.To), words.Say(TodayWord.MoveAbout, Lots(move, reader, words)), null,
            [(Paths.Of(move.From), words.Say(TodayWord.SeePlace, move.From)), (Paths.Of(move.To), words.Say(TodayWord.SeePlace, move.To))]),
        SealDecision room => new(
            words.Say(TodayWord.SealTitle, room.Place),
            words.Say(TodayWord.SealAbout, reader.Number(room.Bins, 0), reader.Number(room.Lots, 0), room.Opened is { } opened ? reader.WeekYear(opened) : words[TodayWord.NotThisSeason]), null,
            [(Paths.Of(room.Place), words.Say(TodayWord.SeePlace, room.Place))]),
        OpenDecision room => new(
            words.Say(TodayWord.OpenTitle, room.Place),
            words.Say(TodayWord.OpenAbout, reader.Number(room.Bins, 0), reader.Number(room.Lots, 0), room.EmptyBy is { } by ? reader.DayYear(book.Season.Settings.Monday(by).PlusDays(6)) : words[TodayWord.NoLimit]), null,
            [(Paths.Of(room.Place), words.Say(TodayWord.SeePlace, room.Place))]),
        OrderDecision order => new(
            words.Say(TodayWord.OrderTitle, order.Order, order.Customer),
            string.Join(" · ", Parts(order, reader, words)), order.Why is { Length: > 0 } why ? reader.Planner(why) : null,
            [(Paths.Of(order.Order), words[TodayWord.SeeOrder])]),
        SeedDecision seed => new(
            words.Say(TodayWord.SeedTitle, seed.Need.Variety, seed.Need.Class, reader.DayYear(seed.Need.By)),
            words.Say(TodayWord.SeedAbout, reader.Mass(seed.Need.Net - seed.Kept), reader.Mass(seed.Need.Net)), null, [("/plan", words[TodayWord.SeePlan])]),
        AlarmDecision alarm => OfAlarm(alarm, reader, words),
        _ => throw new ArgumentOutOfRangeException(nameof(decision)),
    };

    /// <summary>What is wrong, with its figures and since when, and what to do.</summary>
    private static DecisionTold OfAlarm(AlarmDecision alarm, Reader reader, Words<TodayWord> words)
    {
        Words<RoomWord> rooms = Words.Of<RoomWord>(reader.Options.Language);
        string figures = RoomNames.Figures(alarm.Alarm, rooms, reader);
        return new DecisionTold(
            words.Say(TodayWord.AlarmTitle, alarm.Place, rooms[RoomNames.Of(alarm.Alarm.Kind)]), words.Say(TodayWord.AlarmAbout, figures, RoomCharts.Written(alarm.Alarm.Since), rooms[RoomNames.Remedy(alarm.Alarm.Kind)]), null,
            [(Paths.Room(alarm.Place), words[TodayWord.SeeRoom])]);
    }

    /// <summary>The last whole day before the life is used up.</summary>
    public static NodaTime.LocalDate LastDay(SeasonSettings settings, double week) => settings.FirstWeek.PlusDays((int)Math.Floor(week * 7));

    private static IEnumerable<string> Parts(OrderDecision order, Reader reader, Words<TodayWord> words)
    {
        if (order.Short > 0)
        {
            yield return words.Say(TodayWord.OrderShort, reader.Number(order.Short, 0));
        }

        if (order.Late > 0)
        {
            yield return words.Say(TodayWord.OrderLate, reader.Number(order.Late, 0));
        }

        yield return words.Say(TodayWord.OrderDue, reader.DayYear(order.Due));
        if (order.Unplanned)
        {
            yield return words[TodayWord.OrderUnplanned];
        }
    }

    private static string Lots(MoveDecision move, Reader reader, Words<TodayWord> words)
    {
        string some = string.Join(", ", move.Lots.Take(FewLots).Select(lot => lot.Text));
        return move.Lots.Count <= FewLots ? some : words.Say(TodayWord.AndMore, some, reader.Number(move.Lots.Count - FewLots, 0));
    }

    /// <summary>What comes of a run, most first: units of products, then seed.</summary>
    public static string Made(RunDecision run, PlanBook book, Reader reader)
    {
        IEnumerable<string> products = run.Runs.SelectMany(number => book.Made[(number, run.Lot)]).GroupBy(row => row.Product).Where(group => group.Sum(row => row.Units) >= 0.5)
            .OrderByDescending(group => group.Sum(row => row.Mass)).Select(group => reader.Say(Say.IntoUnits, reader.Number(group.Sum(row => row.Units), 0), group.Key));
        IEnumerable<string> seed = run.Runs.SelectMany(number => book.Seed[(number, run.Lot)]).GroupBy(row => row.Variety).Select(group => reader.Say(Say.IntoSeed, reader.Mass(group.Sum(row => row.Cloves)), group.Key));
        return string.Join(", ", products.Concat(seed));
    }

    private static string Into(RunDecision run, PlanBook book, Reader reader, Words<TodayWord> words) =>
        Made(run, book, reader) is { Length: > 0 } into ? " " + words.Say(TodayWord.RunInto, into) : "";
}
