using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Board;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Promise;
using Cloveshed.Pictures.Reading;
using Cloveshed.Pictures.Sections;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Board;

/// <summary>The drawn parts of a plan's page, kept as they were written: by plan, language, unit and view. What is chosen is marked in afterwards.</summary>
public sealed class BoardShelf
{
    /// <summary>Lots that are drawn large; more than a screen's height of them is no picture any more.</summary>
    public const int Few = 14;

    /// <summary>Lots on one page, drawn close together.</summary>
    public const int Many = 120;

    /// <summary>What a screen of 1440 leaves for the weeks between the names and the side.</summary>
    private const double PlotWidth = 812;

    private const int Room = 24;

    private readonly Shelf<string> shelf = new(Room);

    /// <summary>The season board with its links.</summary>
    public string Board(PlanSight sight, PlanView view, Reader reader)
    {
        string board = shelf.Of($"board {Key(sight, reader)} {view.Path} {view.All} {view.From} {view.Week}", () => Drawn(sight, view with { Run = null, Lot = null, To = null }, reader));
        if (sight.Runs.Find(view.Run) is { } run)
        {
            return Marked(board, run.Id, "aria-current");
        }

        return view.Lot is not { } lot ? board
            : sight.Runs.Of(new LotId(lot)).Aggregate(Marked(board, lot, "aria-current"), (drawn, one) => Marked(drawn, one.Id, "data-of-chosen"));
    }

    /// <summary>What stands below the board: promise strip, how sure of each size, worths, seed, rooms with their cautions, what the plan rests on.</summary>
    public string Below(PlanSight sight, Reader reader) => shelf.Of("below " + Key(sight, reader), () => Promise(sight, reader)
        .Add(SizesSection.Write(sight.Season, sight.Answer, reader)).Add(WorthsSection.Write(sight.Season, sight.Answer, reader)).Add(SeedSection.Write(sight.Season, sight.Answer, reader))
        .Add(RoomsSection.Write(sight.Season, sight.Answer, reader)).Add(BasisSection.Write(sight.Answer, reader)).ToString());

    /// <summary>The numbers of board and promise strip as tables.</summary>
    public string Tables(PlanSight sight, Reader reader) => shelf.Of("tables " + Key(sight, reader), () =>
    {
        MarkupText tables = new();
        Picture promise = PromiseStrip.Draw(sight.Promise, reader);
        foreach (DataTable table in SeasonBoard.Draw(sight.Board, BoardSize.Thin, reader).Tables.Concat(promise.Tables))
        {
            tables.Add(table.Write());
        }

        return tables.ToString();
    });

    private static string Key(PlanSight sight, Reader reader) => $"{sight.Entry.Document} {sight.Entry.Basis} {reader.Options.Language} {reader.Options.ShowIn}";

    /// <summary>The board with an attribute, true, on the links of a key.</summary>
    private static string Marked(string board, string key, string attribute)
    {
        // The key's attribute exactly as the drawing wrote it, escaped in the same way.
        string written = new MarkupText().Open("a", ("data-key", key)).ToString()[3..^1];
        return board.Replace(written, $"{written} {attribute}=\"true\"", StringComparison.Ordinal);
    }

    private static string Drawn(PlanSight sight, PlanView view, Reader reader)
    {
        SeasonBoardFacts facts = view.All ? sight.Board with { Lots = [.. sight.Board.Lots.Skip(view.From).Take(Many)] } : sight.Board.Top(Few);
        BoardSize size = (facts.Lots.Count <= Few ? BoardSize.Page : BoardSize.Close) with { PlotWidth = PlotWidth };
        (string, string)? Run(LotId lot, LineId line, int week, bool sorted) => sight.Runs.Find(lot, line, week, sorted) is { } run ? (view.OfRun(run.Id).Href, run.Id) : null;
        Picture board = SeasonBoard.Draw(facts, size, reader, new BoardLinks(lot => view.OfLot(lot.Text).Href, Run));
        return board.WriteDrawing().ToString();
    }

    private static MarkupText Promise(PlanSight sight, Reader reader)
    {
        MarkupText section = new();
        section.Open("section", ("id", "promise"), ("aria-labelledby", "promise-title")).Element("h2", reader.Say(Say.PromiseName), ("id", "promise-title"))
            .Element("p", reader.Say(Say.PromiseLead), ("class", "lead"));
        foreach ((ProductForm form, Say name) in new[] { (ProductForm.Bulb, Say.PromiseBulbs), (ProductForm.Clove, Say.PromiseCloves) })
        {
            PromiseFacts part = sight.Promise with { Rows = [.. sight.Promise.Rows.Where(row => row.Form == form)] };
            if (part.Rows.Count > 0)
            {
                section.Element("h3", reader.Say(name)).Add(PromiseStrip.Draw(part, reader).WriteDrawing());
            }
        }

        return section.Add(Legends.Promise(reader)).Close("section").NewLine();
    }
}
