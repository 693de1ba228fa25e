using Cloveshed.Core;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;
using NodaTime;

namespace Cloveshed.Web.Suppose;

/// <summary>
/// What is supposed, as an address has it: changes that were added before, and the fields of one more. The address can be kept and sent to someone; it asks again.
/// </summary>
/// <param name="Typed">Of the one that is added, where something is wrong with it.</param>
public sealed record SupposeForm(IReadOnlyList<SeasonChange> Changes, IReadOnlyList<FormFault> Faults, IReadOnlyDictionary<string, string> Typed)
{
    public const string Change = "c", Kind = "kind";

    /// <summary>Changes that are taken together, at most: an address has an end.</summary>
    public const int MostChanges = 30;

    /// <summary>A field of the form of a kind as it was typed; empty where another form was sent.</summary>
    public string this[string kind, string field] => Typed.GetValueOrDefault(Kind) == kind ? Typed.GetValueOrDefault(field, "") : "";

    /// <param name="perShown">The season's mass unit in what the reader is shown, to divide by.</param>
    public static SupposeForm Of(IQueryCollection query, Season season, double perShown, Words<SupposeWord> words)
    {
        List<FormFault> faults = [];
        List<SeasonChange> changes = [];
        foreach (string? text in query[Change])
        {
            if (ChangeText.Read(text ?? "") is not { } change)
            {
                faults.Add(new FormFault(null, words[SupposeWord.BadChange]));
            }
            else if (!changes.Contains(change))
            {
                changes.Add(change);
            }
        }

        Dictionary<string, string> typed = query.Where(field => field.Key != Change).ToDictionary(field => field.Key, field => field.Value.ToString().Trim());
        int before = faults.Count;
        if (typed.GetValueOrDefault(Kind) is { Length: > 0 } kind && new Typing(typed, season, perShown, words, faults).Of(kind) is { } added && !changes.Contains(added))
        {
            changes.Add(added);
        }

        if (changes.Count > MostChanges)
        {
            changes.RemoveRange(MostChanges, changes.Count - MostChanges);
            faults.Add(new FormFault(null, words.Say(SupposeWord.TooMany, MostChanges)));
        }

        // A way to the page may have a form open, with a field of it filled in.
        if (faults.Count == before && typed.GetValueOrDefault("of") is { Length: > 0 } open)
        {
            typed[Kind] = open;
            return new SupposeForm(changes, faults, typed);
        }

        return new SupposeForm(changes, faults, faults.Count > before ? typed : new Dictionary<string, string>());
    }

    /// <summary>The address of a page with these changes.</summary>
    public static string Path(string page, IEnumerable<SeasonChange> changes)
    {
        string query = string.Join('&', changes.Select(change => $"{Change}={Uri.EscapeDataString(ChangeText.Of(change))}"));
        return query.Length == 0 ? page : $"{page}?{query}";
    }

    /// <summary>One form's fields to a change, or to what is wrong with them.</summary>
    private sealed class Typing(Dictionary<string, string> typed, Season season, double perShown, Words<SupposeWord> words, List<FormFault> faults)
    {
        private string this[string field] => typed.GetValueOrDefault(field, "");

        public SeasonChange? Of(string kind) => kind switch
        {
            "order" => Order(),
            "add" => Added(),
            "stop" => Stopped(),
            "people" => Told<LocalDate>(ChangeText.Day(this["week"]), "people-week", SupposeWord.BadDay) is { } day && Told<double>(ChangeText.Number(this["hours"], 0, SeasonChange.MostPersonHours), "people-hours", SupposeWord.BadHours) is { } hours ? new SeasonChange.PeopleThere(day, hours) : null,
            "lot" => Lot("lot-lot") is { } lot ? OfLot(lot) : null,
            "ran" => Ran(),
            "open" => this["room"].Length == 0 ? Wrong("open-room", SupposeWord.BadRoom)
                : this["week"].Length == 0 || Told<LocalDate>(ChangeText.Day(this["week"]), "open-week", SupposeWord.BadDay) is not null ? new SeasonChange.RoomOpened(new(this["room"]), ChangeText.Day(this["week"])) : null,
            _ => Wrong(null, SupposeWord.BadChange),
        };

        private SeasonChange? Order()
        {
            string text = this["order"];
            OrderLine? line = season.Orders.FirstOrDefault(one => one.Order.Text == text) ?? season.Orders.FirstOrDefault(one => $"{one.Order}/{one.Number}" == text);
            if (line is null)
            {
                OrderLine? like = season.Orders.Count > 0 ? season.Orders[0] : null;
                faults.Add(new FormFault("order-order", words.Say(SupposeWord.BadOrder, like?.Order.Text ?? "-", like is null ? "-" : $"{like.Order}/{like.Number}")));
                return null;
            }

            // Where an order has but one line, the order is enough to say which.
            bool whole = line.Order.Text == text;
            string? number = whole ? null : line.Number;
            string? only = number ?? (season.Orders.Count(one => one.Order == line.Order) == 1 ? line.Number : null);
            return this["what"] switch
            {
                "units" => only is not null && ChangeText.Whole(this["units"], 1, SeasonChange.MostUnits) is { } units ? new SeasonChange.OrderResized(line.Order, only, units) : Wrong("order-units", SupposeWord.BadUnits),
                "due" => Told<LocalDate>(ChangeText.Day(this["due"]), "order-due", SupposeWord.BadDay) is { } due ? new SeasonChange.OrderMoved(line.Order, number, due) : null,
                _ => new SeasonChange.OrderCancelled(line.Order, number),
            };
        }

        private SeasonChange.OrderAdded? Added()
        {
            Product? product = season.Products.FirstOrDefault(one => one.Id.Text == this["product"]);
            if (product is null)
            {
                _ = Wrong("add-product", SupposeWord.BadProduct);
                return null;
            }

            return Told<int>(ChangeText.Whole(this["units"], 1, SeasonChange.MostUnits), "add-units", SupposeWord.BadUnits) is { } units
                && Told<decimal>(ChangeText.Price(this["price"]), "add-price", SupposeWord.BadPrice) is { } price && Told<LocalDate>(ChangeText.Day(this["due"]), "add-due", SupposeWord.BadDay) is { } due
                ? SeasonChange.OrderAdded.Of(product.Id, units, price, due) : null;
        }

        private SeasonChange? Stopped()
        {
            if (Line("stop-line") is not { } line || Told<LocalDate>(ChangeText.Day(this["first"]), "stop-first", SupposeWord.BadDay) is not { } first || Told<LocalDate>(ChangeText.Day(this["last"]), "stop-last", SupposeWord.BadDay) is not { } last)
            {
                return null;
            }

            return last < first ? Wrong("stop-last", SupposeWord.BadWeeks) : new SeasonChange.LineStopped(line, first, last);
        }

        private SeasonChange? OfLot(LotId lot) => this["what"] switch
        {
            "lighter" => Told<double>(ChangeText.Number(this["much"], 0.01, SeasonChange.MostPercentLess), "lot-much", SupposeWord.BadPercent) is { } percent ? new SeasonChange.LotWeighsLess(lot, percent / 100) : null,
            "keeps" => Told<double>(ChangeText.Number(this["much"], 0.01, SeasonChange.MostWeeks), "lot-much", SupposeWord.BadMuch) is { } weeks ? new SeasonChange.LotKeepsLess(lot, weeks) : null,
            _ => Told<int>(ChangeText.Whole(this["much"], 1, SeasonChange.MostWeeks), "lot-much", SupposeWord.BadMuch) is { } weeks ? new SeasonChange.LotDugLater(lot, weeks) : null,
        };

        private SeasonChange? Ran()
        {
            bool noMore = this["no_more"] == "yes";
            return Lot("ran-lot") is { } lot && Line("ran-line") is { } line && Told<double>(ChangeText.Number(this["mass"], 0, 1e12) is { } mass && (noMore || mass > 0) ? mass : null, "ran-mass", SupposeWord.BadMass) is { } shown
                ? new SeasonChange.RunDone(lot, line, shown / perShown, noMore) : null;
        }

        private LotId? Lot(string field)
        {
            if (season.Lots.FirstOrDefault(row => row.Lot.Text == this["lot"]) is { } row)
            {
                return row.Lot;
            }

            faults.Add(new FormFault(field, words.Say(SupposeWord.BadLot, season.Lots.Count > 0 ? season.Lots[0].Lot.Text : "-")));
            return null;
        }

        private LineId? Line(string field)
        {
            if (season.Lines.FirstOrDefault(line => line.Id.Text == this["line"]) is { } line)
            {
                return line.Id;
            }

            _ = Wrong(field, SupposeWord.BadLine);
            return null;
        }

        private T? Told<T>(T? value, string field, SupposeWord wrong)
            where T : struct
        {
            if (value is null)
            {
                _ = Wrong(field, wrong);
            }

            return value;
        }

        private SeasonChange? Wrong(string? field, SupposeWord why)
        {
            faults.Add(new FormFault(field, words[why]));
            return null;
        }
    }
}
